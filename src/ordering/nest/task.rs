//! What is asked of a cutting plan, and what it answers.
use super::model::whole;
use crate::units::{Length, Money, sort_lengths};

/// Most sticks a task may have.
pub const MOST_STICKS: u32 = 2000;
/// Most different lengths of sticks a task may have.
pub const MOST_LENGTHS: usize = 200;
/// Most lengths of stock a task may have.
pub const MOST_STOCK: usize = 40;

/// What makes one plan better than another.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Aim {
    /// The least money for the bars.
    #[default]
    LeastCost,
    /// The fewest bars; among those the least money.
    FewestBars,
    /// The shortest longest bar, and so the lightest to carry; among those the least money.
    ShortestBars,
}

/// Sticks that are alike.
#[derive(Clone, Debug, PartialEq)]
pub struct Wanted {
    /// Name on the plan.
    pub mark: String,
    /// Length to be cut; positive.
    pub length: Length,
    /// How many.
    pub count: u32,
}

/// A length of stock.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Offered {
    /// Its length; positive.
    pub length: Length,
    /// Price of one; not negative.
    pub price: Money,
    /// How many there are; as many as wanted where nothing is said.
    pub count: Option<u32>,
}

/// Sticks to be cut out of stock. A set of n sticks fits a bar when the sum of their lengths and n − 1 cuts of the saw
/// is no more than the bar less its trim.
#[derive(Clone, Debug, PartialEq)]
pub struct Task {
    /// Width of the saw's cut.
    pub kerf: Length,
    /// What every bar loses at its ends, both together.
    pub trim: Length,
    /// Sticks.
    pub sticks: Vec<Wanted>,
    /// Stock.
    pub stock: Vec<Offered>,
    /// What is sought.
    pub aim: Aim,
}

/// One bar and what comes out of it.
#[derive(Clone, Debug, PartialEq)]
pub struct CutBar {
    /// Place of its stock in the task.
    pub stock: usize,
    /// Places of its sticks in the task, longest first.
    pub sticks: Vec<usize>,
    /// What is left after trim, sticks and the cuts between them.
    pub left: Length,
}

/// Why a stick is not in the plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Unplaced {
    /// Longer than the longest stock holds, by so much.
    TooLong(Length),
    /// All stock long enough is used up.
    NoneLeft,
}

/// A cutting plan and its proof.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// Bars, longest first.
    pub bars: Vec<CutBar>,
    /// Price of all bars.
    pub cost: Money,
    /// No plan that places as many sticks and meets the aim as well costs less than this.
    pub bound: Money,
    /// Nothing better is there: the whole search was made.
    pub is_proven: bool,
    /// Place of each stick that is not in the plan, and why.
    pub unplaced: Vec<(usize, Unplaced)>,
    /// Steps of work the search took.
    pub work: u64,
}

/// How far a search has come.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Progress {
    /// Steps of work done.
    pub work: u64,
    /// Steps of work it may do.
    pub most_work: u64,
    /// What the best plan so far costs.
    pub best: Money,
    /// What every plan costs at least.
    pub bound: Money,
}

/// Why a task is refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refused(pub String);

impl std::fmt::Display for Refused {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        out.write_str(&self.0)
    }
}

impl Task {
    /// What cannot be worked on.
    ///
    /// # Errors
    /// A sentence that names the fault.
    pub fn check(&self) -> Result<(), Refused> {
        let refuse = |says: String| Err(Refused(says));
        let far = Length::inches(1e5);
        if self.kerf.is_negative() || self.trim.is_negative() || self.kerf > far || self.trim > far {
            return refuse("The saw's cut and the trim must be nothing or more, and less than 100000 in.".to_owned());
        }
        if self.stock.is_empty() {
            return refuse("There is no stock: name at least one length.".to_owned());
        }
        if self.stock.len() > MOST_STOCK {
            return refuse(format!("{} lengths of stock are too many: at most {MOST_STOCK}.", self.stock.len()));
        }
        let n_sticks: u64 = self.sticks.iter().map(|stick| u64::from(stick.count)).sum();
        if n_sticks > u64::from(MOST_STICKS) {
            return refuse(format!("{n_sticks} sticks are too many: at most {MOST_STICKS}."));
        }
        let mut lengths: Vec<Length> = self.sticks.iter().map(|stick| stick.length).collect();
        sort_lengths(&mut lengths);
        lengths.dedup_by_key(|length| whole(*length));
        if lengths.len() > MOST_LENGTHS {
            return refuse(format!(
                "{} different lengths of sticks are too many: at most {MOST_LENGTHS}.",
                lengths.len()
            ));
        }
        for stick in &self.sticks {
            if stick.length <= Length::ZERO || stick.length > far {
                return refuse(format!(
                    "{}: its length must be more than nothing and less than 100000 in.",
                    stick.mark
                ));
            }
        }
        for (place, stock) in self.stock.iter().enumerate() {
            let which = place + 1;
            if stock.length <= Length::ZERO || stock.length > far {
                return refuse(format!("Stock {which}: its length must be more than nothing and less than 100000 in."));
            }
            if !(0..=1_000_000_000).contains(&stock.price.to_cents()) {
                return refuse(format!("Stock {which}: its price must be nothing or more, and at most 10 million."));
            }
        }
        Ok(())
    }
}

//! What is proven of the order, in words; and what comes with each delivery.
use super::order::{Order, OrderLine};
use crate::project::OrderAim;
use crate::units::{Money, Weight};

/// What comes at once.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Delivery {
    /// 1 or 2.
    pub number: usize,
    /// Pieces of stock.
    pub n_pieces: usize,
    /// Green weight.
    pub weight: Weight,
    /// Price.
    pub price: Money,
}

impl Delivery {
    /// "First delivery".
    #[must_use]
    pub const fn name(&self) -> &'static str {
        if self.number == 1 { "First delivery" } else { "Second delivery" }
    }
}

/// Why green timber comes twice (common practice).
pub const WHY_TWICE: &str =
    "Green timber moves while it waits, and a joint cut in it is never so true again: what is cut last comes last.";

impl Order {
    /// What no order of these sticks from these lengths that meets the aim as well costs less than.
    #[must_use]
    pub fn least_price(&self) -> Money {
        self.buying.iter().map(|buying| buying.bound).sum()
    }

    /// Nothing meets the aim better.
    #[must_use]
    pub fn is_proven(&self) -> bool {
        self.buying.iter().all(|buying| buying.is_proven)
    }

    /// The lines of one delivery.
    pub fn lines_of(&self, delivery: usize) -> impl Iterator<Item = &OrderLine> {
        self.lines.iter().filter(move |line| line.delivery == delivery)
    }

    /// What comes with each delivery, the first first.
    #[must_use]
    pub fn deliveries(&self) -> Vec<Delivery> {
        let sum = |number: usize| Delivery {
            number,
            n_pieces: self.lines_of(number).map(|line| line.count).sum(),
            weight: self.lines_of(number).map(|line| line.weight).sum(),
            price: self.lines_of(number).map(|line| line.price).sum(),
        };
        [1, 2].map(sum).into_iter().filter(|delivery| delivery.n_pieces > 0).collect()
    }

    /// Spares in all.
    #[must_use]
    pub fn n_spare(&self) -> usize {
        self.lines.iter().map(|line| line.n_spare).sum()
    }

    /// How far the order is from the best, in words.
    #[must_use]
    pub fn proof_words(&self) -> String {
        let mut says = match self.aim {
            OrderAim::LeastCost => self.price_words(),
            OrderAim::FewestSticks if self.is_proven() => "proven fewest sticks from these lengths".to_owned(),
            OrderAim::FewestSticks => {
                let n_pieces: usize = self.lines.iter().map(|line| line.holds.len()).sum();
                let least: usize = self.buying.iter().map(|buying| buying.least_pieces).sum();
                format!("{n_pieces} sticks from these lengths, and no fewer than {least} will do")
            }
            OrderAim::LightestSticks if self.is_proven() => {
                "proven lightest: each stick in the shortest length that holds it".to_owned()
            }
            OrderAim::LightestSticks => "as light as the lengths that are left allow, not proven lightest".to_owned(),
        };
        match self.lacking.len() {
            0 => {}
            1 => says.push_str(", with one stick left out"),
            n => says.push_str(&format!(", with {n} sticks left out")),
        }
        says
    }

    fn price_words(&self) -> String {
        let costs_nothing = self.price <= Money::ZERO && !self.lines.is_empty();
        match (costs_nothing, self.is_proven()) {
            (true, true) => return "no price is said: proven least wood from these lengths".to_owned(),
            (true, false) => return "no price is said: little wood from these lengths, not proven least".to_owned(),
            (false, true) => return "proven cheapest from these lengths".to_owned(),
            (false, false) => {}
        }
        let least = self.least_price().to_f64();
        let over = (self.price.to_f64() - least).max(0.0) / least.max(0.01);
        let percent = (over * 100.0).ceil().max(1.0);
        format!("within {percent:.0} % of the least from these lengths")
    }
}

//! The least of some lengths missing out of some wood: one section, either way round, and wood that does for all of them.
use super::nest::{Aim, CutBar, Offered, Plan, Task, Wanted, nest_watched};
use crate::project::HAIR;
use crate::units::{Length, Money, sort_by_number};

/// Steps of work for one share: some milliseconds.
const MOST_WORK: u64 = 60_000;

/// Wood that sticks may come out of: whole sticks of a lot, or what is left of one that is begun.
#[derive(Clone, Copy)]
pub(super) struct Wood {
    /// Its length.
    pub length: Length,
    /// How many there are.
    pub count: usize,
    /// Somebody must look whether it is right; where as much is begun, wood that is known to be is taken.
    pub must_be_looked_at: bool,
}

/// The sticks of one section and the wood for them.
pub(super) struct Share<'a> {
    /// The saw's cut.
    pub kerf: Length,
    /// The lengths needed, ends docked.
    pub needed: &'a [Length],
    /// What they may come out of.
    pub wood: &'a [Wood],
}

/// How they are cut; places are those in the share.
pub(super) struct Cut {
    pub bars: Vec<CutBar>,
    pub missing: Vec<usize>,
    pub at_most_more: Length,
}

impl Share<'_> {
    fn needed(&self, place: usize) -> Length {
        self.needed[place]
    }

    fn task(&self, places: &[usize], price: impl Fn(&Wood) -> i64) -> Task {
        let wanted = |place: &usize| Wanted { mark: String::new(), length: self.needed(*place), count: 1 };
        let offered = |wood: &Wood| Offered {
            length: wood.length + HAIR,
            price: Money::cents(price(wood)),
            count: Some(u32::try_from(wood.count).unwrap_or(u32::MAX)),
        };
        Task {
            kerf: self.kerf,
            trim: Length::ZERO,
            sticks: places.iter().map(wanted).collect(),
            stock: self.wood.iter().map(offered).collect(),
            aim: Aim::LeastCost,
        }
    }

    /// As much of their length as can be had.
    pub fn cut(&self) -> Cut {
        let all: Vec<usize> = (0..self.needed.len()).collect();
        if self.wood.is_empty() {
            return Cut { bars: Vec::new(), missing: all, at_most_more: Length::ZERO };
        }
        let Some(plan) = self.most(&all) else { return self.by_eye(&all) };
        let n_lots = self.wood.len();
        let bought = plan.bars.iter().filter(|bar| bar.stock >= n_lots).flat_map(|bar| bar.sticks.clone());
        let missing: Vec<usize> = bought.chain(plan.unplaced.iter().map(|(place, _)| *place)).collect();
        let lack: i64 = missing.iter().map(|place| thousandths(self.needed(*place))).sum();
        let most = if plan.is_proven { 0 } else { (lack - plan.bound.to_cents()).max(0) };
        let placed: Vec<usize> = all.into_iter().filter(|place| !missing.contains(place)).collect();
        let bars = plan.bars.into_iter().filter(|bar| bar.stock < n_lots).collect();
        Cut {
            bars: self.least(&placed).unwrap_or(bars),
            missing,
            at_most_more: Length::millimetres(most as f64 / 1000.0),
        }
    }

    /// The plan that leaves the least length missing: what the pile does not hold is bought, each stick at its own length
    /// and for its own length. Two sticks never are bought in one, for that would cost the saw's cut more.
    fn most(&self, all: &[usize]) -> Option<Plan> {
        let mut task = self.task(all, |_| 0);
        let mut lengths: Vec<Length> = all.iter().map(|place| self.needed(*place)).collect();
        sort_by_number(&mut lengths, |length| length.to_inches());
        lengths.dedup_by_key(|length| thousandths(*length));
        task.stock.extend(lengths.into_iter().map(|length| Offered {
            length: length + HAIR,
            price: Money::cents(thousandths(length)),
            count: None,
        }));
        nest_watched(&task, MOST_WORK, &mut |_| true).ok()
    }

    /// The same sticks out of as little of the pile as is known to do.
    fn least(&self, placed: &[usize]) -> Option<Vec<CutBar>> {
        let price = |wood: &Wood| thousandths(wood.length) + i64::from(wood.must_be_looked_at);
        let task = self.task(placed, price);
        let plan = nest_watched(&task, MOST_WORK, &mut |_| true).ok()?;
        let own = |bar: CutBar| CutBar { sticks: bar.sticks.iter().map(|place| placed[*place]).collect(), ..bar };
        plan.unplaced.is_empty().then(|| plan.bars.into_iter().map(own).collect())
    }

    /// The longest stick first into the stick of the pile it fills best: for more lots and lengths than the search takes.
    fn by_eye(&self, all: &[usize]) -> Cut {
        let mut left: Vec<usize> = self.wood.iter().map(|wood| wood.count).collect();
        let mut order = all.to_vec();
        sort_by_number(&mut order, |place| -self.needed(*place).to_inches());
        let (mut bars, mut missing): (Vec<CutBar>, Vec<usize>) = (Vec::new(), Vec::new());
        for place in order {
            let needed = self.needed(place);
            let begun = bars.iter_mut().filter(|bar| bar.left + HAIR >= needed + self.kerf);
            if let Some(bar) = begun.min_by(|a, b| a.left.to_inches().total_cmp(&b.left.to_inches())) {
                bar.left = (bar.left - needed - self.kerf).max(Length::ZERO);
                bar.sticks.push(place);
                continue;
            }
            let holding = (0..left.len()).filter(|lot| left[*lot] > 0 && self.wood[*lot].length + HAIR >= needed);
            let length = |lot: &usize| self.wood[*lot].length;
            match holding.min_by(|a, b| length(a).to_inches().total_cmp(&length(b).to_inches())) {
                Some(lot) => {
                    left[lot] -= 1;
                    let over = (length(&lot) - needed).max(Length::ZERO);
                    bars.push(CutBar { stock: lot, sticks: vec![place], left: over });
                }
                None => missing.push(place),
            }
        }
        let at_most_more = missing.iter().map(|place| self.needed(*place)).sum();
        Cut { bars, missing, at_most_more }
    }
}

fn thousandths(length: Length) -> i64 {
    (length.to_millimetres() * 1000.0).round() as i64
}

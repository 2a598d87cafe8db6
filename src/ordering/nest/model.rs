//! Sticks and stock in whole numbers: what the search works on.
//!
//! A saw's cut is added to every stick and once to every bar: n sticks with n − 1 cuts fit a bar exactly when their
//! widened sizes fit the widened bar.
use super::task::{Aim, Task};
use crate::units::{Length, sort_with};

/// Sticks of one size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Kind {
    /// Length with one cut, nm.
    pub size: i64,
    /// How many.
    pub count: u32,
}

/// Bars of one length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Stock {
    /// What it holds, with one cut, nm.
    pub room: i64,
    /// What one counts for, in the units of the aim.
    pub price: i64,
    /// How many there are; never more than there are sticks.
    pub most: u32,
    /// There are fewer than there are sticks.
    pub is_limited: bool,
    /// No bar at all: each takes one stick that finds no place.
    pub is_lack: bool,
}

/// One way to cut a bar: its stock, and how many of which kinds.
#[derive(Clone, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub(super) struct Pattern {
    pub stock: usize,
    /// Kind and number, kinds ascending.
    pub cuts: Vec<(usize, u32)>,
}

/// The whole task.
#[derive(Clone, Debug)]
pub(super) struct Model {
    /// Longest first.
    pub kinds: Vec<Kind>,
    /// Least room first; the lack, where there is one, last.
    pub stock: Vec<Stock>,
    /// Every price is a whole multiple of this.
    pub step: i64,
    /// Marks of the sticks of each kind, in the task's order.
    pub marks: Vec<Vec<usize>>,
    /// Place in the task of each stock; none for the lack.
    pub sources: Vec<Option<usize>>,
    /// What one bar more counts for before its price, where fewest bars are sought.
    pub per_bar: i64,
}

/// Whole nanometres: a sixty-fourth of an inch and a millimetre are both whole numbers of them.
pub(super) fn whole(length: Length) -> i64 {
    (length.to_inches() * 25_400_000.0).round() as i64
}

/// Greatest common divisor.
pub(super) fn gcd(a: i64, b: i64) -> i64 {
    if b == 0 { a } else { gcd(b, a % b) }
}

impl Model {
    /// The sticks that some stock of the task holds, and the stock no longer than `longest`.
    pub fn new(task: &Task, longest: Option<Length>) -> Self {
        let (kinds, marks) = kinds(task);
        let n_sticks: u32 = kinds.iter().map(|kind| kind.count).sum();
        let (mut stock, mut sources) = offered(task, n_sticks, longest);
        let dearest = stock.iter().map(|stock| stock.price).max().unwrap_or(0);
        let all = dearest * i64::from(n_sticks) + 1;
        let per_bar = if task.aim == Aim::FewestBars { all } else { 0 };
        stock.iter_mut().for_each(|stock| stock.price += per_bar);
        let step = stock.iter().fold(0, |step, stock| gcd(step, stock.price)).max(1);
        let holds_all = |stock: &Stock| !stock.is_limited && kinds.first().is_none_or(|kind| kind.size <= stock.room);
        if !stock.iter().any(holds_all) {
            let price = ((dearest + per_bar) * i64::from(n_sticks) / step + 1) * step;
            stock.push(Stock { room: i64::MAX, price, most: n_sticks, is_limited: false, is_lack: true });
            sources.push(None);
        }
        Self { kinds, stock, step, marks, sources, per_bar }
    }

    /// How many of each kind.
    pub fn demand(&self) -> Vec<u32> {
        self.kinds.iter().map(|kind| kind.count).collect()
    }

    /// What all of it counts for.
    pub fn price(&self, bars: &[Pattern]) -> i64 {
        bars.iter().map(|bar| self.stock[bar.stock].price).sum()
    }

    /// A bound by length alone: every stick costs at least its share of the bar that is cheapest for its room.
    pub fn by_length(&self) -> f64 {
        let real = self.stock.iter().filter(|stock| !stock.is_lack && stock.room > 0);
        let rate = real.map(|stock| stock.price as f64 / stock.room as f64).fold(f64::INFINITY, f64::min);
        let all: i64 = self.kinds.iter().map(|kind| kind.size * i64::from(kind.count)).sum();
        if rate.is_finite() && !self.stock.iter().any(|stock| stock.is_lack) {
            rate * all as f64 * (1.0 - 1e-9)
        } else {
            0.0
        }
    }

    /// What is taken up by those cuts.
    pub fn filled(&self, cuts: &[(usize, u32)]) -> i64 {
        cuts.iter().map(|(kind, n)| self.kinds[*kind].size * i64::from(*n)).sum()
    }
}

/// Most sums of prices that are looked through.
const MOST_SUMS: i64 = 1_000_000;

/// Which sums of prices there can be.
pub(super) struct Sums {
    step: i64,
    /// A bit for each multiple of the step, set where it is a sum; empty where there would be too many.
    can_be: Vec<u64>,
}

impl Sums {
    /// Only that every sum is a multiple of the step is known.
    pub fn of_step(model: &Model) -> Self {
        Self { step: model.step, can_be: Vec::new() }
    }

    /// All sums up to a price.
    pub fn up_to(model: &Model, price: i64) -> Self {
        let most = price / model.step;
        if most > MOST_SUMS {
            return Self::of_step(model);
        }
        let mut sums = Self { step: model.step, can_be: vec![0; most as usize / 64 + 1] };
        sums.can_be[0] = 1;
        for stock in &model.stock {
            // One more, two more, four more: any number of bars in few steps.
            let mut by = (stock.price / model.step) as usize;
            while by > 0 && by <= most as usize {
                sums.add_shifted(by);
                by *= 2;
            }
        }
        sums
    }

    fn add_shifted(&mut self, by: usize) {
        let (words, bits) = (by / 64, by % 64);
        for at in (words..self.can_be.len()).rev() {
            let low = self.can_be[at - words] << bits;
            let carried = if bits > 0 && at > words { self.can_be[at - words - 1] >> (64 - bits) } else { 0 };
            self.can_be[at] |= low | carried;
        }
    }

    /// The next sum there can be, at or above a bound.
    pub fn round_up(&self, bound: f64) -> i64 {
        if bound <= 0.0 {
            return 0;
        }
        let mut sum = (bound / self.step as f64).ceil() as i64;
        while self.can_be.get(sum as usize / 64).is_some_and(|bits| bits & (1 << (sum % 64)) == 0) {
            sum += 1;
        }
        sum * self.step
    }
}

/// Sticks of a size together, longest first; those too long for any stock are left out.
fn kinds(task: &Task) -> (Vec<Kind>, Vec<Vec<usize>>) {
    let kerf = whole(task.kerf);
    let most = task.stock.iter().filter(|stock| stock.count != Some(0)).map(|stock| room(task, stock.length)).max();
    let mut sizes: Vec<(i64, usize)> = task.sticks.iter().map(|stick| whole(stick.length) + kerf).zip(0..).collect();
    sizes.retain(|(size, _)| most.is_some_and(|most| *size <= most));
    sort_with(&mut sizes, |a, b| b.0.cmp(&a.0));
    let (mut kinds, mut marks): (Vec<Kind>, Vec<Vec<usize>>) = (Vec::new(), Vec::new());
    for (size, place) in sizes.into_iter().filter(|(_, place)| task.sticks[*place].count > 0) {
        let known = kinds.last().is_some_and(|kind| kind.size == size);
        if !known {
            kinds.push(Kind { size, count: 0 });
            marks.push(Vec::new());
        }
        let n = task.sticks[place].count;
        if let (Some(kind), Some(places)) = (kinds.last_mut(), marks.last_mut()) {
            kind.count += n;
            places.extend((0..n).map(|_| place));
        }
    }
    (kinds, marks)
}

/// What a stock length holds, with one cut.
pub(super) fn room(task: &Task, length: Length) -> i64 {
    whole(length) - whole(task.trim) + whole(task.kerf)
}

/// The stock that is worth a look: none that a longer one, always to be had, undersells.
fn offered(task: &Task, n_sticks: u32, longest: Option<Length>) -> (Vec<Stock>, Vec<Option<usize>>) {
    let mut all: Vec<(Stock, usize)> = Vec::new();
    for (place, stock) in task.stock.iter().enumerate() {
        let most = stock.count.unwrap_or(n_sticks).min(n_sticks);
        let is_short = longest.is_none_or(|longest| stock.length <= longest);
        if most > 0 && is_short {
            let is_limited = most < n_sticks;
            let (room, price) = (room(task, stock.length), stock.price.to_cents());
            all.push((Stock { room, price, most, is_limited, is_lack: false }, place));
        }
    }
    sort_with(&mut all, |(a, at), (b, bt)| {
        let rank = |stock: &Stock, place: usize| (stock.room, -stock.price, stock.is_limited, place);
        rank(a, *at).cmp(&rank(b, *bt))
    });
    let mut kept: Vec<(Stock, usize)> = Vec::new();
    for (at, (stock, place)) in all.iter().enumerate() {
        let undersold = all[at + 1..].iter().any(|(other, _)| !other.is_limited && other.price <= stock.price);
        if !undersold {
            kept.push((*stock, *place));
        }
    }
    kept.into_iter().map(|(stock, place)| (stock, Some(place))).unzip()
}

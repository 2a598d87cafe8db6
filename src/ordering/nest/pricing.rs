//! The best way to cut one bar where every stick has a worth: a bounded knapsack, by branch and bound, or by a table over
//! the room where that takes long.
use super::cells::{Cells, is_small};
use crate::units::{sort_by_number, sort_with};

/// One kind of stick on offer.
#[derive(Clone, Copy, Debug)]
pub(super) struct Item {
    pub kind: usize,
    pub size: i64,
    pub worth: f64,
    pub most: u32,
}

/// The search through ways to cut; its buffers are used again.
#[derive(Debug, Default)]
pub(super) struct Knapsack {
    /// Densest first.
    items: Vec<Item>,
    /// Least size among the items from here on.
    least: Vec<i64>,
    taken: Vec<u32>,
    best: Vec<u32>,
    has_found: bool,
    best_worth: f64,
    /// Sizes are whole multiples of this.
    unit: i64,
    /// The largest room there is.
    largest: i64,
    /// The table of the items on offer, once it is made.
    cells: Option<Cells>,
    /// Branch and bound has taken long before: tables are made at once.
    pub is_slow: bool,
    /// Work at which branch and bound gives way to a table.
    patience: u64,
    /// Places looked at.
    pub work: u64,
    /// Places that may be looked at.
    pub most_work: u64,
    /// A search was cut short: what it gave need not be the best.
    pub is_cut: bool,
}

/// Places looked at, at least, before a table is made.
const PATIENCE: u64 = 4_000;

impl Knapsack {
    /// For sizes that are whole multiples of a unit, and rooms up to the largest.
    pub fn new(unit: i64, largest: i64) -> Self {
        Self { unit: unit.max(1), largest, ..Self::default() }
    }

    /// Sets out the items; those worth nothing are left out.
    pub fn offer(&mut self, items: impl Iterator<Item = Item>) {
        self.cells = None;
        self.items.clear();
        self.items.extend(items.filter(|item| item.worth > 1e-12 && item.most > 0));
        let density = |item: &Item| item.worth / item.size as f64;
        sort_with(&mut self.items, |a, b| density(b).total_cmp(&density(a)).then(a.kind.cmp(&b.kind)));
        self.least = vec![i64::MAX; self.items.len() + 1];
        for place in (0..self.items.len()).rev() {
            self.least[place] = self.least[place + 1].min(self.items[place].size);
        }
    }

    /// The way to cut worth most, where it is worth more than `floor`; an empty bar is worth nothing.
    pub fn best(&mut self, room: i64, floor: f64) -> Option<(f64, Vec<(usize, u32)>)> {
        if room < 0 {
            return None;
        }
        self.taken = vec![0; self.items.len()];
        self.best.clear();
        self.has_found = false;
        self.best_worth = floor;
        let cells = (self.largest / self.unit).max(0) as u64;
        let has_table = is_small(self.largest, self.unit);
        self.patience =
            if has_table { self.work + PATIENCE.max(cells * self.items.len() as u64 / 16) } else { u64::MAX };
        if !(has_table && self.is_slow) {
            self.look(0, room, 0.0);
            self.is_slow |= self.work > self.patience;
        }
        if has_table && self.is_slow {
            self.by_table(room, floor);
        }
        if !self.has_found {
            return None;
        }
        let chosen = self.items.iter().zip(&self.best).filter(|(_, n)| **n > 0);
        let mut cuts: Vec<(usize, u32)> = chosen.map(|(item, n)| (item.kind, *n)).collect();
        sort_by_number(&mut cuts, |cut| cut.0 as f64);
        Some((self.best_worth, cuts))
    }

    fn by_table(&mut self, room: i64, floor: f64) {
        let cells = match self.cells.take() {
            Some(cells) => cells,
            None => {
                let (cells, work) = Cells::new(&self.items, self.largest, self.unit);
                self.work += work;
                cells
            }
        };
        let (worth, counts) = cells.best(room, self.unit, self.items.len());
        self.cells = Some(cells);
        self.has_found = worth > floor;
        self.best_worth = worth;
        self.best = counts;
    }

    /// The single stick worth most, where it is worth more than `floor`.
    pub fn single(&self, floor: f64) -> Option<(f64, Vec<(usize, u32)>)> {
        let best = self.items.iter().reduce(|a, b| if b.worth > a.worth { b } else { a });
        match best {
            Some(item) if item.worth > floor => Some((item.worth, vec![(item.kind, 1)])),
            _ => (floor < 0.0).then(|| (0.0, Vec::new())),
        }
    }

    fn look(&mut self, mut place: usize, left: i64, worth: f64) {
        self.work += 1;
        self.is_cut |= self.work > self.most_work;
        if self.is_cut || self.work > self.patience {
            return;
        }
        while place < self.items.len() && self.items[place].size > left {
            place += 1;
        }
        if place == self.items.len() || left < self.least[place] {
            if worth > self.best_worth {
                self.best_worth = worth;
                self.has_found = true;
                self.best.clone_from(&self.taken);
            }
            return;
        }
        if worth + self.upper(place, left) <= self.best_worth + 1e-12 {
            return;
        }
        let item = self.items[place];
        let most = i64::from(item.most).min(left / item.size) as u32;
        for n in (0..=most).rev() {
            self.taken[place] = n;
            self.look(place + 1, left - item.size * i64::from(n), worth + item.worth * f64::from(n));
        }
    }

    /// At most so much is to be had from here on: the densest first, the last one in part.
    fn upper(&self, place: usize, mut left: i64) -> f64 {
        let mut sum = 0.0;
        for item in &self.items[place..] {
            let all = item.size * i64::from(item.most);
            if all > left {
                return sum + item.worth * left as f64 / item.size as f64;
            }
            sum += item.worth * f64::from(item.most);
            left -= all;
        }
        sum
    }
}

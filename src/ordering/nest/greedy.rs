//! A plan by eye: the longest stick left opens a bar, the bar is filled as full as it goes, and of all stock the one
//! that costs least for what it holds is taken.
use super::model::{Model, Pattern};

/// Places looked at to fill one bar, fewer where there are many kinds.
const LOOKS: usize = 400;
const LOOKS_AT_KINDS: usize = 20_000;

/// Fills what is left of a bar.
struct Filling<'a> {
    model: &'a Model,
    demand: &'a [u32],
    taken: Vec<(usize, u32)>,
    best: Vec<(usize, u32)>,
    most: i64,
    looks: usize,
    most_looks: usize,
}

impl Filling<'_> {
    fn look(&mut self, mut kind: usize, left: i64, filled: i64) {
        self.looks += 1;
        if filled > self.most {
            self.most = filled;
            self.best.clone_from(&self.taken);
        }
        while kind < self.demand.len() && (self.demand[kind] == 0 || self.model.kinds[kind].size > left) {
            kind += 1;
        }
        if kind == self.demand.len() || left == 0 {
            return;
        }
        let size = self.model.kinds[kind].size;
        let most = i64::from(self.demand[kind]).min(left / size) as u32;
        for n in (0..=most).rev() {
            if self.looks > self.most_looks {
                return;
            }
            let long = i64::from(n) * size;
            if n > 0 {
                self.taken.push((kind, n));
            }
            self.look(kind + 1, left - long, filled + long);
            if n > 0 {
                self.taken.pop();
            }
        }
    }
}

/// The fullest way found to cut a bar of so much room that holds one of that kind.
pub(super) fn fill(model: &Model, demand: &[u32], first: usize, room: i64) -> Vec<(usize, u32)> {
    let mut left = demand.to_vec();
    left[first] -= 1;
    let most_looks = LOOKS.min(LOOKS_AT_KINDS / demand.len().max(1));
    let mut filling =
        Filling { model, demand: &left, taken: Vec::new(), best: Vec::new(), most: -1, looks: 0, most_looks };
    filling.look(first, room - model.kinds[first].size, 0);
    let mut cuts = filling.best;
    match cuts.iter_mut().find(|(kind, _)| *kind == first) {
        Some((_, n)) => *n += 1,
        None => cuts.insert(0, (first, 1)),
    }
    cuts
}

/// Takes the sticks of a bar off what is wanted; false, and nothing changed, where there are not so many.
pub(super) fn take(demand: &mut [u32], cuts: &[(usize, u32)]) -> bool {
    let fits = cuts.iter().all(|(kind, n)| demand[*kind] >= *n);
    if fits {
        cuts.iter().for_each(|(kind, n)| demand[*kind] -= n);
    }
    fits
}

/// A plan for the sticks wanted out of so many bars of each stock; none where they do not go in.
pub(super) fn greedy(model: &Model, demand: &[u32], most: &[u32]) -> Option<Vec<Pattern>> {
    let (mut demand, mut most) = (demand.to_vec(), most.to_vec());
    let mut bars = Vec::new();
    while let Some(first) = demand.iter().position(|n| *n > 0) {
        let mut best: Option<(f64, Pattern)> = None;
        for (stock, bar) in model.stock.iter().enumerate() {
            if most[stock] == 0 || bar.room < model.kinds[first].size {
                continue;
            }
            let cuts = if bar.is_lack { vec![(first, 1)] } else { fill(model, &demand, first, bar.room) };
            let score = (bar.price as f64 + 1e-6) / model.filled(&cuts) as f64;
            if best.as_ref().is_none_or(|(least, _)| score < *least) {
                best = Some((score, Pattern { stock, cuts }));
            }
        }
        let (_, bar) = best?;
        take(&mut demand, &bar.cuts);
        most[bar.stock] -= 1;
        bars.push(bar);
    }
    Some(bars)
}

/// Sticks, longest first, each into the bar of a given lot that it leaves the least room in.
pub(super) fn snug(model: &Model, demand: &[u32], bars: &[u32]) -> Option<Vec<Pattern>> {
    let lot = bars.iter().enumerate().flat_map(|(stock, n)| (0..*n).map(move |_| stock));
    let mut open: Vec<(i64, Pattern)> =
        lot.map(|stock| (model.stock[stock].room, Pattern { stock, cuts: Vec::new() })).collect();
    for (kind, n) in demand.iter().enumerate() {
        let size = model.kinds[kind].size;
        for _ in 0..*n {
            let fits = |bar: &&mut (i64, Pattern)| {
                bar.0 >= size && (bar.1.cuts.is_empty() || !model.stock[bar.1.stock].is_lack)
            };
            let (left, bar) = open.iter_mut().filter(fits).min_by_key(|bar| bar.0)?;
            *left -= size;
            match bar.cuts.last_mut() {
                Some((last, n)) if *last == kind => *n += 1,
                _ => bar.cuts.push((kind, 1)),
            }
        }
    }
    Some(open.into_iter().map(|(_, bar)| bar).filter(|bar| !bar.cuts.is_empty()).collect())
}

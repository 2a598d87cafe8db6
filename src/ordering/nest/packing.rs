//! Whether the sticks go into a given lot of bars: depth first, the longest stick left opens the next bar.
//!
//! Three things cut the search short: what may be left over in all is known beforehand; the sticks must go in at least
//! in parts; and of two ways to fill a bar, one that a longer stick could still improve is not looked at, since the
//! two sticks can change places (S. Martello and P. Toth, Knapsack Problems, Wiley 1990, ch. 8).
use crate::units::sort_with;
use std::collections::HashSet;

use super::greedy::{greedy, snug, take};
use super::master::{BarLimit, Master, Measure, Relaxed};
use super::model::{Model, Pattern};

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Packed {
    /// They go in like this.
    In(Vec<Pattern>),
    /// They do not.
    Never,
    /// The work ran out.
    Unknown,
}

/// Bars and sticks still to be matched.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
struct State {
    demand: Vec<u32>,
    bars: Vec<u32>,
}

struct Search {
    /// States no way leads out of.
    dead: HashSet<State>,
    /// Work at which it gives up.
    until: u64,
    gave_up: bool,
}

/// Tries to pack what is wanted into so many bars of each stock, with so much work.
pub(super) fn pack(master: &mut Master<'_>, demand: &[u32], bars: &[u32], most_work: u64) -> Packed {
    let until = master.work() + most_work;
    let mut search = Search { dead: HashSet::new(), until, gave_up: false };
    let state = State { demand: demand.to_vec(), bars: bars.to_vec() };
    match search.solve(master, state) {
        Some(plan) => Packed::In(plan),
        None if search.gave_up => Packed::Unknown,
        None => Packed::Never,
    }
}

/// Room over when all is in, a lack counted as just holding its stick; none where a lack makes it unknowable.
fn spare(model: &Model, state: &State) -> Option<i64> {
    let mut room = 0;
    for (stock, n) in model.stock.iter().zip(&state.bars).filter(|(_, n)| **n > 0) {
        if stock.is_lack {
            return None;
        }
        room += stock.room * i64::from(*n);
    }
    let filled: i64 = model.kinds.iter().zip(&state.demand).map(|(kind, n)| kind.size * i64::from(*n)).sum();
    Some(room - filled)
}

impl Search {
    fn solve(&mut self, master: &mut Master<'_>, state: State) -> Option<Vec<Pattern>> {
        let model = master.model;
        let Some(first) = state.demand.iter().position(|n| *n > 0) else { return Some(Vec::new()) };
        let spare = spare(model, &state);
        if spare.is_some_and(|spare| spare < 0) || self.dead.contains(&state) {
            return None;
        }
        if let Some(plan) = snug(model, &state.demand, &state.bars) {
            return Some(plan);
        }
        if master.work() > self.until {
            self.gave_up = true;
            return None;
        }
        let relaxed = in_parts(master, &state);
        if relaxed.bound > 1e-6 {
            self.dead.insert(state);
            return None;
        }
        if let Some(plan) = rounded(master, &state, &relaxed) {
            return Some(plan);
        }
        for bar in self.ways(master, &state, first, spare.unwrap_or(i64::MAX), &relaxed) {
            let mut next = state.clone();
            take(&mut next.demand, &bar.cuts);
            next.bars[bar.stock] -= 1;
            if let Some(mut plan) = self.solve(master, next) {
                plan.push(bar);
                return Some(plan);
            }
            if self.gave_up {
                return None;
            }
        }
        self.dead.insert(state);
        None
    }

    /// Ways to cut a bar with the longest stick left, those the parts speak for first, then the fullest.
    fn ways(
        &mut self,
        master: &Master<'_>,
        state: &State,
        first: usize,
        spare: i64,
        relaxed: &Relaxed,
    ) -> Vec<Pattern> {
        let mut found: Vec<(f64, Pattern)> = Vec::new();
        for (stock, bar) in master.model.stock.iter().enumerate().filter(|(stock, _)| state.bars[*stock] > 0) {
            if bar.is_lack {
                found.push((1.0, Pattern { stock, cuts: vec![(first, 1)] }));
                continue;
            }
            let mut ways = Ways { model: master.model, demand: &state.demand, taken: Vec::new(), found: Vec::new() };
            ways.from(first, bar.room, spare);
            for cuts in ways.found {
                let of = |(at, much): &(usize, f64)| {
                    let column = &master.columns[*at];
                    (column.stock == stock && column.cuts == cuts).then_some(-much)
                };
                let left = (bar.room - master.model.filled(&cuts)) as f64 / bar.room as f64;
                let rank = relaxed.taken.iter().find_map(of).unwrap_or(left);
                found.push((rank, Pattern { stock, cuts }));
            }
            if found.len() > MOST_WAYS {
                self.gave_up = true;
                return Vec::new();
            }
        }
        sort_with(&mut found, |a, b| a.0.total_cmp(&b.0).then_with(|| a.1.cmp(&b.1)));
        found.into_iter().map(|(_, bar)| bar).collect()
    }
}

/// More ways than this to cut one bar are not looked through.
const MOST_WAYS: usize = 20_000;

fn in_parts(master: &mut Master<'_>, state: &State) -> Relaxed {
    let limits: Vec<BarLimit> = state
        .bars
        .iter()
        .enumerate()
        .map(|(stock, n)| BarLimit { mask: 1 << stock, is_least: false, amount: *n })
        .collect();
    master.solve(&state.demand, &limits, Measure::Lacking, 0.0)
}

/// The whole bars of an answer in parts, and the rest by eye.
fn rounded(master: &Master<'_>, state: &State, relaxed: &Relaxed) -> Option<Vec<Pattern>> {
    let mut left = state.clone();
    let mut plan = Vec::new();
    let mut taken = relaxed.taken.clone();
    sort_with(&mut taken, |a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
    for pass in [false, true] {
        for (at, much) in &taken {
            let bar = &master.columns[*at];
            // Whole bars first, then each once more where it goes in whole.
            let n = if pass { 1 } else { (much + 1e-6).floor() as u32 };
            for _ in 0..n {
                if left.bars[bar.stock] > 0 && take(&mut left.demand, &bar.cuts) {
                    left.bars[bar.stock] -= 1;
                    plan.push(bar.clone());
                }
            }
            if pass && let Some(rest) = the_rest(master.model, &left) {
                plan.extend(rest);
                return Some(plan);
            }
        }
        if !pass && let Some(rest) = the_rest(master.model, &left) {
            plan.extend(rest);
            return Some(plan);
        }
    }
    None
}

fn the_rest(model: &Model, left: &State) -> Option<Vec<Pattern>> {
    if spare(model, left).is_some_and(|spare| spare < 0) {
        return None;
    }
    snug(model, &left.demand, &left.bars).or_else(|| greedy(model, &left.demand, &left.bars))
}

/// The ways to cut a bar that no exchange for a longer stick improves.
struct Ways<'a> {
    model: &'a Model,
    demand: &'a [u32],
    taken: Vec<(usize, u32)>,
    found: Vec<Vec<(usize, u32)>>,
}

impl Ways<'_> {
    fn from(&mut self, first: usize, room: i64, spare: i64) {
        let size = self.model.kinds[first].size;
        let most = i64::from(self.demand[first]).min(room / size) as u32;
        for n in (1..=most).rev() {
            self.taken.push((first, n));
            self.look(first + 1, room - i64::from(n) * size, spare);
            self.taken.pop();
        }
    }

    fn look(&mut self, mut kind: usize, left: i64, spare: i64) {
        if self.found.len() > MOST_WAYS {
            return;
        }
        while kind < self.demand.len() && (self.demand[kind] == 0 || self.model.kinds[kind].size > left) {
            kind += 1;
        }
        if kind == self.demand.len() {
            if left <= spare && !self.can_improve(left) {
                self.found.push(self.taken.clone());
            }
            return;
        }
        let size = self.model.kinds[kind].size;
        let most = i64::from(self.demand[kind]).min(left / size) as u32;
        for n in (0..=most).rev() {
            if n > 0 {
                self.taken.push((kind, n));
            }
            self.look(kind + 1, left - i64::from(n) * size, spare);
            if n > 0 {
                self.taken.pop();
            }
        }
    }

    /// Some stick not in the bar would still go in, alone or in the place of the next shorter one that is.
    fn can_improve(&self, left: i64) -> bool {
        let of = |kind: usize| self.taken.iter().find(|(known, _)| *known == kind).map_or(0, |(_, n)| *n);
        let is_free = |kind: &usize| self.demand[*kind] > of(*kind);
        let fits = |kind: usize, room: i64| self.model.kinds[kind].size <= room;
        if (0..self.demand.len()).filter(is_free).any(|kind| fits(kind, left)) {
            return true;
        }
        self.taken
            .iter()
            .any(|(taken, _)| (0..*taken).filter(is_free).any(|kind| fits(kind, left + self.model.kinds[*taken].size)))
    }
}

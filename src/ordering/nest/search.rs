//! The cheapest plan: best first over how many bars of each length are taken.
//!
//! What a plan costs depends on the numbers of bars alone. So the branches fix numbers of bars - of one length, or of a
//! length and all longer ones - until the answer in parts takes whole numbers of them; then the sticks are packed into
//! that lot, which nearly always succeeds. Where it does not, the branch is parted around the lot and goes on.
use crate::units::sort_with;
use std::cmp::Reverse;
use std::collections::BinaryHeap;

use super::greedy::{greedy, take};
use super::master::{BarLimit, Master, Measure, Relaxed};
use super::model::{Model, Pattern, Sums};
use super::packing::{Packed, pack};

/// A number of bars this close to a whole one is whole.
const WHOLE: f64 = 1e-6;

/// So many branches at first, and each so-manieth, are followed down at once.
const DIVES: u32 = 8;

/// After so many branches it pays to know which prices there can be.
const LISTED: u32 = 4;

/// What a search comes to.
#[derive(Clone, Debug)]
pub(super) struct Found {
    pub bars: Vec<Pattern>,
    pub price: i64,
    /// No plan is below this.
    pub bound: i64,
    pub work: u64,
}

/// A branch whose answer in parts is known.
struct Branch {
    limits: Vec<BarLimit>,
    /// Bars of each stock, in parts.
    bars: Vec<f64>,
}

/// Told of every branch: work done, best price, bound. False stops the search.
pub(super) type Watch<'w> = &'w mut dyn FnMut(u64, i64, i64) -> bool;

struct Search<'m> {
    model: &'m Model,
    master: Master<'m>,
    sums: Sums,
    demand: Vec<u32>,
    best: Vec<Pattern>,
    price: i64,
    /// Taken once they are branched on.
    branches: Vec<Option<Branch>>,
    /// Least bound first; among equals the newest.
    open: BinaryHeap<(Reverse<i64>, usize)>,
    /// Least bound of the lots whose packing was given up.
    given_up: i64,
}

/// Searches with at most so much work.
pub(super) fn search(model: &Model, most_work: u64, watch: Watch<'_>) -> Found {
    let demand = model.demand();
    let most: Vec<u32> = model.stock.iter().map(|stock| stock.most).collect();
    let best = greedy(model, &demand, &most).unwrap_or_default();
    let price = model.price(&best);
    let mut search = Search {
        model,
        master: Master::new(model, most_work),
        sums: Sums::of_step(model),
        demand,
        best,
        price,
        branches: Vec::new(),
        open: BinaryHeap::new(),
        given_up: i64::MAX,
    };
    search.master.columns.clone_from(&search.best);
    let bound = search.run(most_work, watch);
    Found { bars: search.best, price: search.price, bound, work: search.master.work() }
}

impl Search<'_> {
    /// The bound when the search ends.
    fn run(&mut self, most_work: u64, watch: Watch<'_>) -> i64 {
        let limited = self.model.stock.iter().enumerate().filter(|(_, stock)| stock.is_limited);
        let limits =
            limited.map(|(at, stock)| BarLimit { mask: 1 << at, is_least: false, amount: stock.most }).collect();
        self.add(self.sums.round_up(self.model.by_length()), limits);
        let mut n_taken = 0_u32;
        while let Some((Reverse(bound), at)) = self.open.pop() {
            if bound >= self.price {
                break;
            }
            n_taken += 1;
            if n_taken == LISTED {
                self.sums = Sums::up_to(self.model, self.price);
            }
            let bound = self.sums.round_up(bound as f64);
            if bound >= self.price {
                continue;
            }
            let lowest = bound.min(self.given_up);
            if self.master.work() > most_work || !watch(self.master.work(), self.price, lowest) {
                return lowest;
            }
            let mut next = self.expand(bound, at, most_work);
            // Down to a whole lot now and then, so that there is a good plan early.
            while (n_taken <= DIVES || n_taken.is_multiple_of(DIVES)) && self.master.work() <= most_work {
                let Some((bound, at)) = next.filter(|(bound, _)| *bound < self.price) else { break };
                next = self.expand(bound, at, most_work);
            }
        }
        self.price.min(self.given_up)
    }

    /// Branches, or packs the lot; gives the better of two branches.
    fn expand(&mut self, bound: i64, at: usize, most_work: u64) -> Option<(i64, usize)> {
        let branch = self.branches.get_mut(at).and_then(Option::take)?;
        let Some((mask, amount)) = self.split(&branch.bars) else {
            self.pack_lot(bound, &branch, most_work);
            return None;
        };
        let mut add = |is_least, amount| self.add_limit(bound, &branch.limits, &[BarLimit { mask, is_least, amount }]);
        let (fewer, more) = (add(false, amount), add(true, amount + 1));
        [fewer, more].into_iter().flatten().min()
    }

    /// The lot of a branch with whole numbers of bars: packed, or parted around.
    fn pack_lot(&mut self, bound: i64, branch: &Branch, most_work: u64) {
        let lot: Vec<u32> = branch.bars.iter().map(|bars| bars.round() as u32).collect();
        let room = most_work.saturating_sub(self.master.work()).min(most_work / 4);
        match pack(&mut self.master, &self.demand, &lot, room) {
            Packed::In(plan) => {
                self.keep(plan);
                if self.price <= bound {
                    return;
                }
            }
            Packed::Unknown => self.given_up = self.given_up.min(bound),
            Packed::Never => {}
        }
        self.part_around(bound, branch, &lot);
    }

    /// Every lot but this one: fewer or more of the longest, or as many and fewer or more of the next, and so on.
    fn part_around(&mut self, bound: i64, branch: &Branch, lot: &[u32]) {
        let mut same: Vec<BarLimit> = Vec::new();
        for (mask, amount) in suffixes(lot.len()).map(|mask| (mask, total(lot, mask))) {
            if let Some(fewer) = amount.checked_sub(1) {
                let mut limits = same.clone();
                limits.push(BarLimit { mask, is_least: false, amount: fewer });
                self.add_limit(bound, &branch.limits, &limits);
            }
            let mut limits = same.clone();
            limits.push(BarLimit { mask, is_least: true, amount: amount + 1 });
            self.add_limit(bound, &branch.limits, &limits);
            same.push(BarLimit { mask, is_least: false, amount });
            same.push(BarLimit { mask, is_least: true, amount });
        }
    }

    fn add_limit(&mut self, bound: i64, limits: &[BarLimit], more: &[BarLimit]) -> Option<(i64, usize)> {
        let mut all = limits.to_vec();
        for limit in more {
            match all.iter_mut().find(|known| known.mask == limit.mask && known.is_least == limit.is_least) {
                Some(known) => {
                    let tighter =
                        if limit.is_least { known.amount.max(limit.amount) } else { known.amount.min(limit.amount) };
                    known.amount = tighter;
                }
                None => all.push(*limit),
            }
        }
        self.add(bound, all)
    }

    /// Solves a branch in parts and keeps it where it may hold something better.
    fn add(&mut self, parent: i64, limits: Vec<BarLimit>) -> Option<(i64, usize)> {
        let n_most = self.demand.iter().sum::<u32>();
        let is_empty = |least: &BarLimit| {
            least.is_least
                && (least.amount > n_most
                    || limits.iter().any(|most| {
                        !most.is_least && most.mask & least.mask == least.mask && most.amount < least.amount
                    }))
        };
        if limits.iter().any(is_empty) {
            return None;
        }
        let relaxed = self.master.solve(&self.demand, &limits, Measure::Price, self.price as f64);
        let bound = self.sums.round_up(relaxed.bound).max(parent);
        if bound >= self.price {
            return None;
        }
        if !relaxed.lacks {
            self.round(&relaxed);
        }
        let mut bars = vec![0.0; self.model.stock.len()];
        for (at, much) in &relaxed.taken {
            bars[self.master.columns[*at].stock] += much;
        }
        self.open.push((Reverse(bound), self.branches.len()));
        self.branches.push(Some(Branch { limits, bars }));
        Some((bound, self.branches.len() - 1))
    }

    /// The whole bars of an answer in parts, the rest by eye.
    fn round(&mut self, relaxed: &Relaxed) {
        let mut demand = self.demand.clone();
        let mut most: Vec<u32> = self.model.stock.iter().map(|stock| stock.most).collect();
        let mut plan: Vec<Pattern> = Vec::new();
        let mut taken = relaxed.taken.clone();
        sort_with(&mut taken, |a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
        for (at, much) in &taken {
            let bar = &self.master.columns[*at];
            for _ in 0..(much + WHOLE).floor() as u32 {
                if most[bar.stock] > 0 && take(&mut demand, &bar.cuts) {
                    most[bar.stock] -= 1;
                    plan.push(bar.clone());
                }
            }
        }
        if let Some(rest) = greedy(self.model, &demand, &most) {
            plan.extend(rest);
            self.keep(plan);
        }
    }

    fn keep(&mut self, mut plan: Vec<Pattern>) {
        plan.retain(|bar| !bar.cuts.is_empty());
        let price = self.model.price(&plan);
        if price < self.price {
            self.price = price;
            self.best = plan;
        }
    }

    /// The bars to branch on and the whole number below theirs: of a length and all longer ones where that is in
    /// parts, else of one length; the one nearest to a half.
    fn split(&self, bars: &[f64]) -> Option<(u64, u32)> {
        let mut best: Option<(f64, u64, u32)> = None;
        let ones = (0..bars.len()).map(|at| 1_u64 << at);
        for mask in suffixes(bars.len()).chain(ones) {
            let sum: f64 = bars.iter().enumerate().filter(|(at, _)| mask & (1 << at) != 0).map(|(_, n)| n).sum();
            let off = (sum - sum.round()).abs();
            if off > WHOLE && best.is_none_or(|(most, _, _)| off > most + 1e-3) {
                best = Some((off, mask, sum.floor() as u32));
            }
        }
        best.map(|(_, mask, amount)| (mask, amount))
    }
}

/// A length and all longer ones, the longest alone first.
fn suffixes(n: usize) -> impl Iterator<Item = u64> {
    (0..n).rev().map(move |from| ((1_u64 << n) - 1) & !((1_u64 << from) - 1))
}

fn total(lot: &[u32], mask: u64) -> u32 {
    lot.iter().enumerate().filter(|(at, _)| mask & (1 << at) != 0).map(|(_, n)| n).sum()
}

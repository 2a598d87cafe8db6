//! The ways to divide the beam that need different lengths of stock.
//!
//! Of the ways that need the same lengths, in whatever order, the one is kept whose scarfs lie best. Places and pieces are
//! those the beam's own search allows: only what is sought differs.
use std::collections::BTreeMap;

use super::beam_line::{Candidate, candidates, own_kinds, piece_stock, scarf_cost};
use super::hinges::most_scarfs;
use super::scarf_place::{Surroundings, judge};
use crate::project::{Mill, ScarfPlace};
use crate::units::{Length, sort_by_number, sort_lengths};

/// For each place of a scarf so many ways that lead to it are followed, the cheapest: a long beam over many posts has more
/// than anyone waits for.
const KEPT: usize = 16;

/// One way to divide the beam.
#[derive(Clone, Debug, PartialEq)]
pub struct Division {
    /// Its scarfs, left to right.
    pub places: Vec<ScarfPlace>,
    /// The stock of each piece, left to right.
    pub stock: Vec<Length>,
}

impl Division {
    /// Stock end to end.
    #[must_use]
    pub fn long(&self) -> Length {
        self.stock.iter().copied().sum()
    }
}

/// The way to a scarf: what it cost, the scarfs, the stock of the pieces before it.
#[derive(Clone)]
struct Way {
    cost: f64,
    cuts: Vec<usize>,
    stock: Vec<Length>,
}

/// Ways by the lengths they need, shortest first, in thousandths of an inch.
type Ways = BTreeMap<Vec<i64>, Way>;

/// The ways to divide the beam out of the mill's lengths, the least stock first, then the best places.
#[must_use]
pub fn divisions(around: &Surroundings, mill: &Mill) -> Vec<Division> {
    let most = most_scarfs(around.posts.len());
    let all = if most == 0 { Vec::new() } else { candidates(around, &own_kinds(around), judge) };
    let mut done = Ways::new();
    if let Some(stock) = piece_stock(around, mill, None, None) {
        keep(&mut done, Way { cost: 0.0, cuts: Vec::new(), stock: vec![stock] });
    }
    let first = |at: usize| {
        let mut ways = Ways::new();
        let judged = all[at].judged(0);
        if let Some((judged, stock)) = judged.zip(piece_stock(around, mill, None, Some(&all[at]))) {
            keep(&mut ways, Way { cost: scarf_cost(judged), cuts: vec![at], stock: vec![stock] });
        }
        ways
    };
    let mut layer: Vec<Ways> = (0..all.len()).map(first).collect();
    // Every scarf lies in a bay of its own, and one bay has none.
    for before in 1..=most {
        for (at, ways) in layer.iter().enumerate().filter(|(_, ways)| !ways.is_empty()) {
            if let Some(stock) = piece_stock(around, mill, Some(&all[at]), None) {
                ways.values().for_each(|way| keep(&mut done, further(way, None, stock)));
            }
        }
        if before == most {
            break;
        }
        layer = (0..all.len()).map(|next| extended((around, mill), &all, &layer, (before, next))).collect();
    }
    let mut found: Vec<Way> = done.into_values().collect();
    sort_by_number(&mut found, |way| way.stock.iter().copied().sum::<Length>().to_feet() + way.cost * 1e-3);
    let division = |way: Way| Division { places: way.cuts.iter().map(|at| all[*at].place).collect(), stock: way.stock };
    found.into_iter().map(division).collect()
}

/// All ways that lead to one scarf more, with so many before it.
fn extended(
    (around, mill): (&Surroundings, &Mill),
    all: &[Candidate],
    layer: &[Ways],
    (n_before, next): (usize, usize),
) -> Ways {
    let mut ways = Ways::new();
    let Some(cost) = all[next].judged(n_before).map(scarf_cost) else { return ways };
    for (at, before) in layer.iter().enumerate().take(next).filter(|(_, before)| !before.is_empty()) {
        if let Some(stock) = piece_stock(around, mill, Some(&all[at]), Some(&all[next])) {
            before.values().for_each(|way| keep(&mut ways, further(way, Some((next, cost)), stock)));
        }
    }
    let rank = |way: &Way| way.cost + way.stock.iter().copied().sum::<Length>().to_feet();
    while ways.len() > KEPT {
        let worst = ways.iter().max_by(|a, b| rank(a.1).total_cmp(&rank(b.1))).map(|(key, _)| key.clone());
        worst.and_then(|key| ways.remove(&key));
    }
    ways
}

fn further(way: &Way, next: Option<(usize, f64)>, stock: Length) -> Way {
    let mut way = way.clone();
    way.stock.push(stock);
    if let Some((cut, cost)) = next {
        way.cuts.push(cut);
        way.cost += cost;
    }
    way
}

/// Lengths from the least to the largest, in thousandths of an inch: the same for two ways that need the same stock.
#[must_use]
pub fn stock_in_order(stock: &[Length]) -> Vec<i64> {
    let mut stock = stock.to_vec();
    sort_lengths(&mut stock);
    stock.iter().map(|length| (length.to_inches() * 1000.0).round() as i64).collect()
}

/// Keeps it where none that needs the same lengths lies better.
fn keep(ways: &mut Ways, way: Way) {
    let key = stock_in_order(&way.stock);
    if ways.get(&key).is_none_or(|known| way.cost < known.cost) {
        ways.insert(key, way);
    }
}

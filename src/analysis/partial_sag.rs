//! How far the stretches of the ledger bend where balanced snow lies whole on some and half on others.
//!
//! A stretch's moment goes straight from one place of its [`SpanEffect`] to the next: the turn and the sag between them are its
//! first and second moments of area by the stiffness (moment-area theorems, from memory). The axis goes along the stretch from
//! its left end, a sag is down.
use super::ledger::LedgerFrame;
use super::partial_snow::{LedgerPattern, SpanEffect};
use crate::units::Length;

/// A piece of a stretch: how long it is, the moments at its left and right end, in inches and pound-inches.
struct Part {
    long: f64,
    left: f64,
    right: f64,
}

/// From place to place: both ends stand first in the list, then the rafters from left to right.
fn parts(effect: &SpanEffect) -> impl Iterator<Item = Part> {
    let all = &effect.moments;
    let place =
        |index: usize| if index + 1 == all.len() { all[1] } else { all[if index == 0 { 0 } else { index + 1 }] };
    (1..all.len()).map(move |index| {
        let ((from, left), (to, right)) = (place(index - 1), place(index));
        Part { long: (to - from).to_inches(), left, right }
    })
}

/// ∫ M dx and ∫ M·(L − x) dx over a whole stretch.
fn areas(parts: impl Iterator<Item = Part>) -> (f64, f64) {
    let (mut area, mut first) = (0.0, 0.0);
    for part in parts {
        // What lies before is carried on over this part.
        first += area * part.long + part.long * part.long * (part.left / 3.0 + part.right / 6.0);
        area += part.long * (part.left + part.right) / 2.0;
    }
    (area, first)
}

/// The largest sag, with its sign, off the line of the ends of a stretch that leaves its left end with that turn; times the
/// stiffness.
fn largest(parts: impl Iterator<Item = Part>, turn: f64) -> f64 {
    let (mut turn, mut sag, mut most) = (turn, 0.0_f64, 0.0_f64);
    for part in parts {
        let rise = (part.right - part.left) / part.long.max(1e-9);
        let turned = |s: f64| turn - part.left * s - rise * s * s / 2.0;
        let sagged = |s: f64| sag + turn * s - part.left * s * s / 2.0 - rise * s * s * s / 6.0;
        let root = (part.left * part.left + 2.0 * rise * turn).max(0.0).sqrt();
        let flat = if rise.abs() > 1e-9 {
            [(-part.left + root) / rise, (-part.left - root) / rise]
        } else {
            [turn / part.left, f64::NAN]
        };
        let inside = flat.into_iter().filter(|s| *s > 0.0 && *s < part.long);
        for found in inside.chain([part.long]).map(sagged) {
            if found.abs() > most.abs() {
                most = found;
            }
        }
        (sag, turn) = (sagged(part.long), turned(part.long));
    }
    most
}

impl LedgerPattern {
    /// The largest sag of each stretch between held ends, or that of its free end, under a pound an inch of roof; `stiffness` is
    /// E·I in lb·in².
    #[must_use]
    pub fn sags(&self, ledger: &LedgerFrame, stiffness: f64) -> Vec<Length> {
        let both: Vec<(f64, f64)> = self.spans.iter().map(|effect| areas(parts(effect))).collect();
        let long = |index: usize| ledger.spans[index].length().to_inches();
        // How a stretch between held ends turns at its left end, and at its right one.
        let left = |index: usize| both.get(index).map_or(0.0, |(_, first)| first / long(index));
        let right = |index: usize| both.get(index).map_or(0.0, |(area, _)| left(index) - area);
        let of = |index: usize| {
            let ((area, first), span) = (both[index], &ledger.spans[index]);
            match (span.held_left, span.held_right) {
                (true, true) => largest(parts(&self.spans[index]), left(index)),
                (false, _) => -left(index + 1) * long(index) - (area * long(index) - first),
                (true, false) => right(index.wrapping_sub(1)) * long(index) - first,
            }
        };
        (0..both.len()).map(|index| Length::inches(of(index) / stiffness)).collect()
    }
}

//! A beam that cannot be divided: why, and what would do.
use super::beam_line::{Sought, divided, piece_weight, scarfs_said};
use super::scarf_place::Surroundings;
use crate::project::{Mill, Problem};
use crate::units::{Length, UnitSystem, Weight};
use crate::wording::{length, weight};

/// Why the beam cannot be divided within that, and what would do.
pub(super) fn no_division(around: &Surroundings, sought: Sought) -> Problem {
    let mill = sought.mill;
    let field = "frame.scarfs.n_pieces";
    if let Some(folding) = divided(around, Sought { most: usize::MAX, ..sought }) {
        return too_many_hinges(around, sought, folding.len());
    }
    let says = format!(
        "The beam cannot be divided so that every piece comes from the mill's lengths (longest {}), weighs at most {}, \
         stands on a post and has its scarf clear of posts, pockets and rafters. Try a shorter lap, shorter brace legs, \
         another count of pieces, or longer stock.",
        length(mill.longest(), around.units),
        weight(mill.heaviest_pick, around.units)
    );
    Problem::stop(field, says)
}

/// It could be divided, but would fold: what else would do.
fn too_many_hinges(around: &Surroundings, sought: Sought, needed: usize) -> Problem {
    let (field, mill, units) = ("frame.scarfs.n_pieces", sought.mill, around.units);
    let (n_posts, most) = (around.posts.len(), sought.most);
    let bears = format!(
        "Each scarf counts as a hinge, and while green braces are slack a beam on {n_posts} posts bears {}: with one in \
         every bay it folds.",
        scarfs_said(most)
    );
    if sought.n_pieces.is_some() && divided(around, Sought { n_pieces: Some(most + 1), ..sought }).is_some() {
        let says = format!("{bears} Ask for {} at most, or set another post.", pieces_said(most + 1));
        return Problem::stop(field, says).nearest_count(most + 1);
    }
    let says = format!(
        "Out of the mill's lengths (longest {}), with pieces of at most {}, the beam would have to have {}. {bears} {}",
        length(mill.longest(), units),
        weight(mill.heaviest_pick, units),
        scarfs_said(needed),
        what_would_do(around, sought)
    );
    Problem::stop(field, says)
}

/// The least lift and the shortest sticks with which it would do, each alone.
fn what_would_do(around: &Surroundings, sought: Sought) -> String {
    let units = around.units;
    let (pick, stick) = match units {
        UnitSystem::Imperial => (Weight::pounds(10.0), Length::feet(2.0)),
        UnitSystem::Metric => (Weight::kilograms(5.0), Length::millimetres(600.0)),
    };
    let sought = Sought { n_pieces: None, ..sought };
    let does = |mill: &Mill| divided(around, Sought { mill, ..sought }).is_some();
    let beam = around.frame.beam_length + sought.mill.trim_each_end * 2.0;
    let lifted = |n: usize| Mill { heaviest_pick: sought.mill.heaviest_pick + pick * n as f64, ..sought.mill.clone() };
    let sawn = |n: usize| {
        let lengths = (1..=n).map(|n| sought.mill.longest() + stick * n as f64);
        Mill { lengths: sought.mill.lengths.iter().copied().chain(lengths).collect(), ..sought.mill.clone() }
    };
    let mut ways = Vec::new();
    let n_picks = (piece_weight(around, around.frame.beam_length) / pick).ceil() as usize;
    if let Some(n) = least(n_picks, |n| does(&lifted(n))) {
        ways.push(format!("a crew that lifts {}", weight(lifted(n).heaviest_pick, units)));
    }
    if let Some(n) = least((beam / stick).ceil() as usize, |n| does(&sawn(n))) {
        ways.push(format!("sticks of {}", length(sawn(n).longest(), units)));
    }
    if ways.is_empty() {
        ways.push("longer sticks and a crew that lifts them".to_owned());
    }
    format!("What would do: {}. Else try another post.", ways.join(", or "))
}

/// The least number up to `most` that does, where each above one that does, does too.
fn least(most: usize, does: impl Fn(usize) -> bool) -> Option<usize> {
    let (mut low, mut high) = (0, most);
    if !does(high) {
        return None;
    }
    while high > low + 1 {
        let middle = (low + high) / 2;
        if does(middle) { high = middle } else { low = middle }
    }
    Some(high)
}

fn pieces_said(n: usize) -> String {
    if n == 1 { "one piece".to_owned() } else { format!("{n} pieces") }
}

//! A force's way as a chain over a drawing: a numbered disc for every link, leaders to their places, arrows the way it acts.
//!
//! Discs and words keep their size on the sheet, so they stand in rows beside their places and never on each other.
use std::fmt::Write;

use super::scene::Anchor;
use super::svg::{LETTER, Sheet, escape, text_width};
use crate::geometry::Point;

/// Radius of a disc, and disc to disc in a row at the closest, px.
const DISC: f64 = 10.0;
pub(super) const APART: f64 = 28.0;
/// Place to the first disc beside it, and disc to its words, px.
pub(super) const OFF: f64 = 22.0;
const WORDS: f64 = DISC + 5.0;

/// The chain.
#[derive(Clone, Debug, PartialEq)]
pub struct Chain {
    /// Its links in two rows: over the roof, and beside what carries the roof.
    pub rows: [ChainRow; 2],
    /// Between the rows the chain follows the line through these two places.
    pub along: (Point, Point),
    /// Whether the force acts from the last link to the first.
    pub is_back: bool,
}

/// Links whose discs stand below each other.
#[derive(Clone, Debug, PartialEq)]
pub struct ChainRow {
    /// Where it stands.
    pub at: Point,
    /// Right of that, px.
    pub right: f64,
    /// Whether it stands upon that place; else it hangs from it.
    pub is_above: bool,
    /// Its words begin at the discs, or end there.
    pub anchor: Anchor,
    /// From top to bottom.
    pub links: Vec<ChainLink>,
}

/// One link.
#[derive(Clone, Debug, PartialEq)]
pub struct ChainLink {
    /// Counted from 1 along the force's way.
    pub number: usize,
    /// Its true place.
    pub at: Point,
    /// Name and figure.
    pub says: String,
    /// The figure alone, for little room.
    pub figure: String,
    /// What is known of it.
    pub state: LinkState,
    /// What a tap on it leads to.
    pub key: String,
}

/// What is known of a link.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LinkState {
    /// It was judged.
    Judged,
    /// Of those that were, it is loaded most.
    Weakest,
    /// It was not judged.
    Open,
}

impl LinkState {
    const fn class(self) -> &'static str {
        match self {
            Self::Judged => "way__link",
            Self::Weakest => "way__link way__link--weakest",
            Self::Open => "way__link way__link--open",
        }
    }
}

type Px = (f64, f64);

/// Where the discs of a row stand.
fn discs(row: &ChainRow, sheet: &Sheet) -> Vec<Px> {
    let (x, edge) = sheet.place(row.at);
    let x = x + row.right;
    let n = row.links.len() as f64;
    let mut next = if row.is_above { edge - OFF - (n - 1.0) * APART } else { edge + OFF };
    let mut found = Vec::new();
    for link in &row.links {
        // Beside its place where that leaves room, else as near below it as the disc before lets it.
        let y = if row.is_above { next } else { next.max(sheet.place(link.at).1) };
        found.push((x, y));
        next = y + APART;
    }
    found
}

/// Prints the chain.
pub(super) fn print(out: &mut String, chain: &Chain, sheet: &Sheet) {
    let rows = chain.rows.each_ref().map(|row| discs(row, sheet));
    for (row, discs) in chain.rows.iter().zip(&rows) {
        for (link, disc) in row.links.iter().zip(discs) {
            leader(out, *disc, sheet.place(link.at), link.state);
        }
    }
    arrows(out, chain, &rows, sheet);
    for (row, discs) in chain.rows.iter().zip(&rows) {
        for (link, disc) in row.links.iter().zip(discs) {
            numbered(out, row, link, *disc, sheet);
        }
    }
}

fn leader(out: &mut String, disc: Px, (x, y): Px, state: LinkState) {
    let class = if state == LinkState::Weakest { "way__lead way__lead--weakest" } else { "way__lead" };
    let _ = write!(
        out,
        "<path class=\"{class}\" d=\"M{:.1} {:.1}L{x:.1} {y:.1}\"/><circle class=\"way__place\" cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"2.5\"/>",
        disc.0, disc.1
    );
}

/// From each disc to the next one, or back.
fn arrows(out: &mut String, chain: &Chain, rows: &[Vec<Px>; 2], sheet: &Sheet) {
    let (a, b) = (sheet.place(chain.along.0), sheet.place(chain.along.1));
    let on_line = |x: f64| (x, a.1 + (b.1 - a.1) * (x - a.0) / (b.0 - a.0));
    let mut ways: Vec<Vec<Px>> = rows.iter().flat_map(|row| row.windows(2).map(<[Px]>::to_vec)).collect();
    if let (Some(from), Some(to)) = (rows[0].last(), rows[1].first()) {
        ways.push(vec![*from, on_line(from.0), on_line(to.0), *to]);
    }
    for mut way in ways {
        if chain.is_back {
            way.reverse();
        }
        arrow(out, &way);
    }
}

/// Through these points, its ends at the rims of the discs there.
fn arrow(out: &mut String, way: &[Px]) {
    let [Some(first), Some(second), Some(before), Some(last)] =
        [Some(0), Some(1), way.len().checked_sub(2), way.len().checked_sub(1)].map(|at| way.get(at?).copied())
    else {
        return;
    };
    let (tip, (ux, uy)) = rim(last, before);
    let mut path = String::new();
    let (x, y) = rim(first, second).0;
    let _ = write!(path, "M{x:.1} {y:.1}");
    for (x, y) in way.iter().skip(1).take(way.len().saturating_sub(2)).copied().chain([tip]) {
        let _ = write!(path, "L{x:.1} {y:.1}");
    }
    let barb = |side: f64| (tip.0 + 6.0 * ux - side * 3.5 * uy, tip.1 + 6.0 * uy + side * 3.5 * ux);
    let (left, right) = (barb(1.0), barb(-1.0));
    let _ = write!(
        out,
        "<path class=\"way__run\" d=\"{path}\"/><path class=\"way__tip\" d=\"M{:.1} {:.1}L{:.1} {:.1}L{:.1} {:.1}Z\"/>",
        left.0, left.1, tip.0, tip.1, right.0, right.1
    );
}

/// A little off the rim of the disc at `disc`, toward a point, and the way there.
fn rim(disc: Px, toward: Px) -> (Px, Px) {
    let (dx, dy) = (toward.0 - disc.0, toward.1 - disc.1);
    let long = dx.hypot(dy).max(1e-6);
    let way = (dx / long, dy / long);
    ((disc.0 + way.0 * (DISC + 1.0), disc.1 + way.1 * (DISC + 1.0)), way)
}

/// The disc with its number and its words: as many of them as there is room for.
fn numbered(out: &mut String, row: &ChainRow, link: &ChainLink, (x, y): Px, sheet: &Sheet) {
    let room = if row.anchor == Anchor::End { x - WORDS } else { sheet.width() - x - WORDS };
    let is_weakest = link.state == LinkState::Weakest;
    let weak = |says: &str| if is_weakest { format!("weakest: {says}") } else { says.to_owned() };
    let all = [weak(&link.says), weak(&link.figure), link.figure.clone()];
    let fits = |says: &&String| text_width(says) * if is_weakest { 1.08 } else { 1.0 } <= room;
    let says = all.iter().find(fits).unwrap_or(&link.figure);
    let (class, key) = (link.state.class(), escape(&link.key));
    let (anchor, at) = if row.anchor == Anchor::End { ("end", x - WORDS) } else { ("start", x + WORDS) };
    let _ = write!(
        out,
        "<g class=\"{class} tappable\" data-link=\"{key}\"><circle class=\"way__disc\" cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"{DISC}\"/>\
         <text class=\"label way__number\" x=\"{x:.1}\" y=\"{:.1}\" text-anchor=\"middle\" font-size=\"{LETTER}\">{}</text>\
         <text class=\"label way__says\" x=\"{at:.1}\" y=\"{:.1}\" text-anchor=\"{anchor}\" font-size=\"{LETTER}\">{}</text></g>",
        y + 4.5,
        link.number,
        y + 4.5,
        escape(says)
    );
}

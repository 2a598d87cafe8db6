//! Purlins: rows up the roof, each of pieces butted on rafters, staggered from row to row.
//!
//! A row's place is its lower edge on the rafters' top edge, measured up the slope from the tail.
use super::cuts::choose_cuts;
use super::rafter::RafterShape;
use crate::project::{Mill, Problem, Roofing};
use crate::units::{Length, UnitSystem};
use crate::wording::length;

/// Where a piece ends inside the roof.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Butt {
    /// Number of the rafter it ends on, from 1.
    pub rafter: usize,
    /// Along the beam's x.
    pub x: Length,
}

/// One stick of a row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PurlinPiece {
    /// Its left end along the beam's x.
    pub start: Length,
    /// Its right end along the beam's x.
    pub end: Length,
    /// The butt at its left; none at the rake.
    pub left: Option<Butt>,
    /// The butt at its right.
    pub right: Option<Butt>,
}

impl PurlinPiece {
    /// End to end.
    #[must_use]
    pub fn length(&self) -> Length {
        self.end - self.start
    }
}

/// One row.
#[derive(Clone, Debug, PartialEq)]
pub struct PurlinRow {
    /// Its number from the eave, from 1.
    pub number: usize,
    /// Tail end to its lower edge, up the rafters' top edge.
    pub from_tail: Length,
    /// Its sticks, left to right.
    pub pieces: Vec<PurlinPiece>,
}

impl PurlinRow {
    /// Mark of the piece at that place from the left: N3a, N3b, … N3z, N3za, N3zb.
    #[must_use]
    pub fn mark(&self, place: usize) -> String {
        let letter = char::from(b'a' + u8::try_from(place % 26).unwrap_or_default());
        format!("N{}{}{letter}", self.number, "z".repeat(place / 26))
    }
}

/// Lays out the rows and divides each into pieces of the mill's lengths.
///
/// Rows are spread evenly between the first and the last, at most the given spacing apart.
///
/// # Errors
/// The sentence that says why a row cannot be made.
pub fn purlin_rows(
    roofing: &Roofing,
    shape: &RafterShape,
    breadth: Length,
    rafters: (&[Length], Length),
    mill: &Mill,
    units: UnitSystem,
) -> Result<Vec<PurlinRow>, Problem> {
    let first = roofing.first_purlin;
    let last = shape.top_edge().length() - roofing.last_purlin - breadth;
    if last < first + breadth {
        let says = "The roof is too short up the slope for two rows of purlins.";
        return Err(Problem::stop("roofing.first_purlin", says));
    }
    let n_spaces = ((last - first) / roofing.purlin_spacing - 1e-9).ceil().max(1.0);
    let step = (last - first) / n_spaces;
    let mut rows = Vec::new();
    let mut butts_before: Vec<usize> = Vec::new();
    for index in 0..=n_spaces as usize {
        let pieces = divide(roofing, rafters, mill, &butts_before).ok_or_else(|| {
            let says = format!(
                "A purlin row cannot be made of the mill's lengths (longest {}) with its butts on rafters.",
                length(mill.longest(), units)
            );
            Problem::stop("mill.lengths", says)
        })?;
        butts_before = pieces.iter().filter_map(|piece| piece.right.map(|butt| butt.rafter)).collect();
        rows.push(PurlinRow { number: index + 1, from_tail: first + step * index as f64, pieces });
    }
    Ok(rows)
}

/// The roof's two edges along the beam's x: the rake past the outer faces of the outer rafters.
#[must_use]
pub fn rakes(roofing: &Roofing, rafters: &[Length], half_breadth: Length) -> (Length, Length) {
    let first = rafters.first().copied().unwrap_or_default();
    let last = rafters.last().copied().unwrap_or_default();
    (first - half_breadth - roofing.rake, last + half_breadth + roofing.rake)
}

/// Feet of stock a butt costs beside its neighbours' butts, and for being there at all.
const STAGGER_COST: f64 = 50.0;
const BUTT_COST: f64 = 1.0;

fn divide(
    roofing: &Roofing,
    (rafters, half_breadth): (&[Length], Length),
    mill: &Mill,
    butts_before: &[usize],
) -> Option<Vec<PurlinPiece>> {
    let (left, right) = rakes(roofing, rafters, half_breadth);
    let inner = rafters.get(1..rafters.len().saturating_sub(1)).unwrap_or_default();
    let cuts = choose_cuts(inner.len(), |previous, next| {
        let start = previous.map_or(left, |index| inner[index]);
        let end = next.map_or(right, |index| inner[index]);
        let n_bays = next.map_or(inner.len() + 1, |index| index + 1) - previous.map_or(0, |index| index + 1);
        // A stick over one bay only is a springboard.
        if n_bays < 2 && rafters.len() > 3 {
            return None;
        }
        let stock = mill.stock_without_trim(end - start)?;
        let butt =
            next.map_or(0.0, |index| BUTT_COST + if butts_before.contains(&(index + 2)) { STAGGER_COST } else { 0.0 });
        Some(stock.to_feet() + butt)
    })?;
    let butts: Vec<Butt> = cuts.into_iter().map(|index| Butt { rafter: index + 2, x: inner[index] }).collect();
    Some(
        (0..=butts.len())
            .map(|index| {
                let before = index.checked_sub(1).map(|before| butts[before]);
                let after = butts.get(index).copied();
                PurlinPiece {
                    start: before.map_or(left, |butt| butt.x),
                    end: after.map_or(right, |butt| butt.x),
                    left: before,
                    right: after,
                }
            })
            .collect(),
    )
}

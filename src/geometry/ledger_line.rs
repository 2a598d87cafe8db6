//! The ledger and its splices: half laps, over a post of the wall where one can be had.
//!
//! Common practice: a splice is clear of the rafters' seats, not in the same bay as a scarf of the beam,
//! and is fixed through both halves; the left piece lies under. Between studs that stand close it keeps clear of them where its
//! halves would have no fixing of their own there.
use super::beam_line::ScarfReport;
use super::cuts::choose_cuts;
use super::ledger_splice::SpliceRoom;
use super::post::bay_of;
use super::scarf_place::Surroundings;
use crate::project::{LedgerFixings, Mill, Problem, Site};
use crate::units::Length;
use crate::wording::length;

/// One piece of the ledger.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LedgerPiece {
    /// Its number from the left, from 1.
    pub number: usize,
    /// Its left end along the beam's x.
    pub start: Length,
    /// Its right end along the beam's x.
    pub end: Length,
    /// It has a splice at its left, where it lies on the other piece.
    pub left_splice: bool,
    /// It has a splice at its right, where it lies under the other piece.
    pub right_splice: bool,
}

impl LedgerPiece {
    /// End to end.
    #[must_use]
    pub fn length(&self) -> Length {
        self.end - self.start
    }
}

/// Divides the ledger, as the user said or into pieces of the mill's lengths; with it the splices the user put where they
/// should not be.
///
/// # Errors
/// The sentence that says why it cannot be divided.
pub fn ledger_line(
    around: &Surroundings,
    (site, fixings): (&Site, &LedgerFixings),
    mill: &Mill,
    scarfs: &[ScarfReport],
) -> Result<(Vec<LedgerPiece>, Vec<Problem>), Problem> {
    let (total, by_hand) = (around.frame.beam_length, &around.frame.ledger_splices);
    let room = SpliceRoom::new(around, site, fixings);
    let half = around.frame.ledger_lap / 2.0;
    if by_hand.is_empty() {
        let candidates = candidates(&room, around, scarfs);
        return Ok((pieces(&propose(around, mill, &candidates)?, half, total), Vec::new()));
    }
    room.in_order(by_hand)?;
    Ok((pieces(by_hand, half, total), room.problems(by_hand, mill)))
}

/// Middles of the splices with which the ledger comes out of the mill's lengths.
fn propose(around: &Surroundings, mill: &Mill, candidates: &[(Length, f64)]) -> Result<Vec<Length>, Problem> {
    let total = around.frame.beam_length;
    let half = around.frame.ledger_lap / 2.0;
    let cuts = choose_cuts(candidates.len(), |previous, next| {
        let start = previous.map_or(Length::ZERO, |index| candidates[index].0 - half);
        let end = next.map_or(total, |index| candidates[index].0 + half);
        // A ledger piece is fixed to two posts of the wall at least; shorter ones only multiply splices.
        if end - start < half * 4.0 || (next.is_some() && end >= total) {
            return None;
        }
        let stock = mill.stock_for(end - start)?;
        Some(stock.to_feet() + next.map_or(0.0, |index| 3.0 + candidates[index].1))
    });
    let Some(cuts) = cuts else {
        let says = format!(
            "The ledger cannot be divided into the mill's lengths (longest {}) with its splices clear of the rafters.",
            length(mill.longest(), around.units)
        );
        return Err(Problem::stop("mill.lengths", says));
    };
    Ok(cuts.into_iter().map(|index| candidates[index].0).collect())
}

fn pieces(centres: &[Length], half: Length, total: Length) -> Vec<LedgerPiece> {
    (0..=centres.len())
        .map(|index| {
            let left = index.checked_sub(1).map(|before| centres[before]);
            let right = centres.get(index).copied();
            LedgerPiece {
                number: index + 1,
                start: left.map_or(Length::ZERO, |centre| centre - half),
                end: right.map_or(total, |centre| centre + half),
                left_splice: left.is_some(),
                right_splice: right.is_some(),
            }
        })
        .collect()
}

/// Places for a splice with what speaks against each: the distance from a wall post, a scarf in the bay.
fn candidates(room: &SpliceRoom, around: &Surroundings, scarfs: &[ScarfReport]) -> Vec<(Length, f64)> {
    let scarf = |x| if scarfs.iter().any(|scarf| shares_bay(around, scarf, x)) { 2.0 } else { 0.0 };
    room.places().into_iter().map(|x| (x, room.wall_cost(x) + scarf(x))).collect()
}

fn shares_bay(around: &Surroundings, scarf: &ScarfReport, x: Length) -> bool {
    let bay = bay_of(around.posts, x);
    bay.is_some() && bay_of(around.posts, scarf.place.centre) == bay
}

/// Centres of the posts of the existing wall behind the ledger.
#[must_use]
pub fn wall_posts(site: &Site, beam_length: Length) -> Vec<Length> {
    if site.wall_post_spacing <= Length::ZERO {
        return Vec::new();
    }
    let n_before = (site.first_wall_post / site.wall_post_spacing).floor().max(0.0);
    let first = site.first_wall_post - site.wall_post_spacing * n_before;
    let n_posts = ((beam_length - first) / site.wall_post_spacing).floor().max(-1.0) as i64;
    (0..=n_posts).map(|n| first + site.wall_post_spacing * n as f64).filter(|x| *x >= Length::ZERO).collect()
}

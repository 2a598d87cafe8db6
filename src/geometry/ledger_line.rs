//! The ledger and its splices: half laps, over a post of the wall where one can be had.
//!
//! Common practice: a splice is clear of the rafters' seats, not in the same bay as a scarf of the beam,
//! and is fixed through both halves; the left piece lies under. Between studs that stand close it keeps clear of them where its
//! halves would have no fixing of their own there.
use super::beam_line::ScarfReport;
use super::cuts::choose_cuts;
use super::ledger_fixings::{fixes_both_halves, ledger_hole};
use super::post::bay_of;
use super::scarf_place::Surroundings;
use crate::project::{LedgerFixings, Mill, Problem, Site};
use crate::units::{Length, sort_by_number};
use crate::wording::length;

/// Studs no farther apart than this carry a ledger whose end stands out past one of them (common practice).
const CLOSE: Length = Length::inches(24.0);

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

/// Divides the ledger into pieces of the mill's lengths.
///
/// # Errors
/// The sentence that says why it cannot be divided.
pub fn ledger_line(
    around: &Surroundings,
    (site, fixings): (&Site, &LedgerFixings),
    mill: &Mill,
    scarfs: &[ScarfReport],
) -> Result<Vec<LedgerPiece>, Problem> {
    let total = around.frame.beam_length;
    let half = around.frame.ledger_lap / 2.0;
    let candidates = candidates(around, site, fixings, scarfs);
    let cuts = choose_cuts(candidates.len(), None, |_, previous, next| {
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
    let centres: Vec<Length> = cuts.into_iter().map(|index| candidates[index].0).collect();
    Ok(pieces(&centres, half, total))
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
fn candidates(
    around: &Surroundings,
    site: &Site,
    fixings: &LedgerFixings,
    scarfs: &[ScarfReport],
) -> Vec<(Length, f64)> {
    let half = around.frame.ledger_lap / 2.0;
    let keep = around.frame.timbers.rafter.ordered.breadth / 2.0 + around.rules.scarf_clear + half;
    let walls = wall_posts(site, around.frame.beam_length);
    let may_lie_over =
        site.wall_post_spacing > CLOSE || fixes_both_halves(fixings, around.frame.timbers.ledger.sawn.depth);
    // Four widths of a fixing, which its end distance asks.
    let beside = fixings.across() / 2.0 + ledger_hole(fixings).unwrap_or_default() * 4.0;
    let middles = |of: &[Length]| of.windows(2).map(|pair| (pair[0] + pair[1]) / 2.0).collect::<Vec<_>>();
    let mut places = [walls.clone(), middles(around.rafters)].concat();
    if !may_lie_over {
        places.extend(middles(&walls));
    }
    sort_by_number(&mut places, |place| place.to_inches());
    places.dedup_by(|a, b| a.is_near(*b, Length::inches(0.01)));
    places
        .into_iter()
        .filter(|x| *x > half && *x < around.frame.beam_length - half)
        .filter(|x| around.rafters.iter().all(|rafter| (*rafter - *x).abs() >= keep))
        .map(|x| {
            let off_wall_post = walls.iter().map(|wall| (*wall - x).abs()).reduce(Length::min);
            let wall = match off_wall_post {
                Some(off) if may_lie_over => f64::from(u8::from(off > half / 2.0)),
                Some(off) if off < half + beside => 3.0,
                _ => 1.0,
            };
            let scarf = if scarfs.iter().any(|scarf| shares_bay(around, scarf, x)) { 2.0 } else { 0.0 };
            (x, wall + scarf)
        })
        .collect()
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

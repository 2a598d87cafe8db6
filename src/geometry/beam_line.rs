//! The beam and its pieces.
//!
//! Sum of the pieces = beam + Σ laps: each piece runs from the far end of the lap at its left to the
//! far end of the lap at its right.
use super::cuts::choose_counted_cuts;
use super::hinges::{folds_at, hinges_of, most_scarfs, moves};
use super::no_division::no_division;
use super::scarf_place::{Forbidden, Place, Surroundings, grid, judge, judge_standing};
use crate::materials::species;
use crate::project::{JointName, Mill, Problem, ScarfKind, ScarfPlace, Side};
use crate::units::{Length, Weight};
use crate::wording::length;

/// One piece of the beam.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BeamPiece {
    /// Its number from the left, from 1.
    pub number: usize,
    /// Its left end along the beam.
    pub start: Length,
    /// Its right end along the beam.
    pub end: Length,
    /// The scarf at its left: its number from 1, and whether this piece lies below.
    pub left: Option<(usize, bool)>,
    /// The scarf at its right.
    pub right: Option<(usize, bool)>,
}

impl BeamPiece {
    /// End to end.
    #[must_use]
    pub fn length(&self) -> Length {
        self.end - self.start
    }
}

/// A scarf of the finished beam.
#[derive(Clone, Debug, PartialEq)]
pub struct ScarfReport {
    /// Its number from the left, from 1.
    pub number: usize,
    /// Where it is and which piece lies below.
    pub place: ScarfPlace,
    /// Its kind.
    pub kind: ScarfKind,
    /// The lap's left end along the beam.
    pub low: Length,
    /// The lap's right end along the beam.
    pub high: Length,
    /// What is known of the place; nothing where the user put it where it should not be.
    pub judged: Option<Place>,
}

impl ScarfReport {
    /// The end of the lap where the lower half leaves its piece.
    #[must_use]
    pub const fn lower_root(&self) -> Length {
        match self.place.lower {
            Side::Left => self.low,
            Side::Right => self.high,
        }
    }

    /// The end where the upper half leaves its own: there the lower one's tip lies.
    #[must_use]
    pub const fn upper_root(&self) -> Length {
        match self.place.lower {
            Side::Left => self.high,
            Side::Right => self.low,
        }
    }
}

/// The beam of the frame.
#[derive(Clone, Debug, PartialEq)]
pub struct BeamLine {
    /// Pieces, left to right.
    pub pieces: Vec<BeamPiece>,
    /// Scarfs, left to right.
    pub scarfs: Vec<ScarfReport>,
    /// The places were proposed by the program.
    pub is_proposed: bool,
}

/// Divides the beam, as the user said or as the mill's lengths and the crew allow.
///
/// # Errors
/// The sentence that says why it cannot be divided.
pub fn beam_line(around: &Surroundings, mill: &Mill) -> Result<BeamLine, Problem> {
    let scarfs = &around.frame.scarfs;
    let (places, is_proposed) =
        if scarfs.by_hand.is_empty() { (propose(around, mill)?, true) } else { (scarfs.by_hand.clone(), false) };
    let lap = scarfs.lap;
    let reports: Vec<ScarfReport> = places
        .iter()
        .enumerate()
        .map(|(index, place)| ScarfReport {
            number: index + 1,
            place: *place,
            kind: around.project.scarf_kind(index + 1),
            low: place.centre - lap / 2.0,
            high: place.centre + lap / 2.0,
            judged: judge(place, around.project.scarf_kind(index + 1), around).ok(),
        })
        .collect();
    refuse_overlaps(around, &reports)?;
    refuse_folding(around, mill, &places)?;
    Ok(BeamLine { pieces: pieces(&reports, around.frame.beam_length), scarfs: reports, is_proposed })
}

/// Proposed scarfs that may not be where they are: those of a kind of their own that found no place lie where one of the frame's
/// kind was proposed, and where every division has a scarf that cannot be closed past a brace, one is proposed all the same.
#[must_use]
pub fn proposal_problems(beam: &BeamLine, around: &Surroundings) -> Vec<Problem> {
    let own = beam.scarfs.iter().filter(|scarf| beam.is_proposed && scarf.judged.is_none());
    let problem = |scarf: &ScarfReport| {
        let why = judge(&scarf.place, scarf.kind, around).err()?.says(around);
        let says = format!("Scarf {}, {}, may not be where it is proposed: {why}.", scarf.number, scarf.kind.name());
        let joint = JointName::Scarf(scarf.number);
        let is_own = around.project.exception_of(joint).is_some_and(|own| own.scarf_kind.is_some());
        let field = if is_own { format!("exceptions.{joint}.scarf_kind") } else { "frame.scarfs.kind".to_owned() };
        Some(Problem::caution(field, says))
    };
    own.filter_map(problem).collect()
}

fn refuse_overlaps(around: &Surroundings, scarfs: &[ScarfReport]) -> Result<(), Problem> {
    let mut before = Length::ZERO;
    for scarf in scarfs {
        let field = format!("frame.scarfs.by_hand.{}.centre", scarf.number - 1);
        if scarf.low < before {
            let says = format!("Scarf {} runs into the one before it or past the beam's left end.", scarf.number);
            return Err(Problem::stop(field, says).nearest(before + around.frame.scarfs.lap / 2.0));
        }
        if scarf.high > around.frame.beam_length {
            let says = format!("Scarf {} runs past the beam's right end.", scarf.number);
            return Err(Problem::stop(field, says).nearest(around.frame.beam_length - around.frame.scarfs.lap / 2.0));
        }
        before = scarf.high;
    }
    Ok(())
}

/// Places put by hand between which the beam folds while its braces are slack, with what cures it.
fn refuse_folding(around: &Surroundings, mill: &Mill, places: &[ScarfPlace]) -> Result<(), Problem> {
    let (posts, hinges) = hinges_of(around.posts, places);
    let Some(folds) = folds_at(&posts, &hinges) else { return Ok(()) };
    let cures = moves(places, around);
    let far = |(index, centre): &&(usize, Length)| (*centre - places[*index].centre).abs().to_inches();
    let nearest = cures.iter().min_by(|a, b| far(a).total_cmp(&far(b)));
    let cure = if nearest.is_some() {
        let say =
            |(index, centre): &(usize, Length)| format!("scarf {} to {}", index + 1, length(*centre, around.units));
        format!("Move {}.", cures.iter().map(say).collect::<Vec<_>>().join(", or "))
    } else {
        let proposed = |found: Vec<ScarfPlace>| {
            format!("No single move cures it; the proposed places do, with {}.", scarfs_said(found.len()))
        };
        propose(around, mill).map_or_else(|problem| problem.says, proposed)
    };
    let says = format!(
        "While green braces are slack the beam folds at scarf {}: each scarf counts as a hinge, and a beam on {} posts bears \
         {} at most, not in any bays. {cure}",
        folds + 1,
        posts.len(),
        scarfs_said(most_scarfs(posts.len()))
    );
    let field = |index: usize| format!("frame.scarfs.by_hand.{index}.centre");
    Err(match nearest {
        Some((index, centre)) => Problem::stop(field(*index), says).nearest(*centre),
        None => Problem::stop(field(folds), says),
    })
}

/// So many scarfs, in words.
pub(super) fn scarfs_said(n: usize) -> String {
    match n {
        0 => "no scarf".to_owned(),
        1 => "one scarf".to_owned(),
        _ => format!("{n} scarfs"),
    }
}

fn pieces(scarfs: &[ScarfReport], beam_length: Length) -> Vec<BeamPiece> {
    (0..=scarfs.len())
        .map(|index| {
            let left = index.checked_sub(1).map(|before| &scarfs[before]);
            let right = scarfs.get(index);
            BeamPiece {
                number: index + 1,
                start: left.map_or(Length::ZERO, |scarf| scarf.low),
                end: right.map_or(beam_length, |scarf| scarf.high),
                left: left.map(|scarf| (scarf.number, scarf.place.lower == Side::Right)),
                right: right.map(|scarf| (scarf.number, scarf.place.lower == Side::Left)),
            }
        })
        .collect()
}

/// What a division is sought within.
#[derive(Clone, Copy)]
pub(super) struct Sought<'a> {
    /// The lengths and the heaviest lift.
    pub mill: &'a Mill,
    /// The count of pieces, where it is asked for.
    pub n_pieces: Option<usize>,
    /// The most scarfs that the beam bears.
    pub most: usize,
}

/// Places from which the beam comes out of the mill's lengths, each piece can be lifted, each stands when it is raised and
/// the whole stands with slack braces.
fn propose(around: &Surroundings, mill: &Mill) -> Result<Vec<ScarfPlace>, Problem> {
    let n_pieces = around.frame.scarfs.n_pieces;
    let sought = Sought { mill, n_pieces, most: most_scarfs(around.posts.len()) };
    divided(around, sought).ok_or_else(|| no_division(around, sought))
}

/// The best places within that; nothing where there are none.
pub(super) fn divided(around: &Surroundings, sought: Sought) -> Option<Vec<ScarfPlace>> {
    let own = own_kinds(around);
    let whole = &own[own.len() - 1..];
    let found = of_kinds(around, sought, candidates(around, &own, judge));
    let has_own = own.len() > 1;
    let found =
        if has_own { found.or_else(|| of_kinds(around, sought, candidates(around, whole, judge))) } else { found };
    found.or_else(|| of_kinds(around, sought, candidates(around, whole, judge_standing)))
}

/// The kind of each scarf from the left as far as some have one of their own, then the frame's, for all the others.
pub(super) fn own_kinds(around: &Surroundings) -> Vec<ScarfKind> {
    let number = |name: &String| match JointName::parse(name) {
        Some(JointName::Scarf(number)) => number,
        _ => 0,
    };
    let last = around.project.exceptions.keys().map(number).max().unwrap_or(0).min(around.posts.len());
    let own = (1..=last).map(|number| around.project.scarf_kind(number));
    own.chain([around.frame.scarfs.kind]).collect()
}

/// The best of these places.
fn of_kinds(around: &Surroundings, sought: Sought, candidates: Vec<Candidate>) -> Option<Vec<ScarfPlace>> {
    let cuts = choose_counted_cuts(candidates.len(), sought.n_pieces, |before, previous, next| {
        // Each lies in a bay of its own, between two posts: the beam folds only where there are too many.
        if next.is_some() && before >= sought.most {
            return None;
        }
        let previous = previous.map(|index| &candidates[index]);
        let next = next.map(|index| &candidates[index]);
        piece_cost(around, sought.mill, before, (previous, next))
    });
    Some(cuts?.into_iter().map(|index| candidates[index].place).collect())
}

/// A place of the grid where a scarf of some kind may be.
pub(super) struct Candidate {
    /// The place.
    pub place: ScarfPlace,
    /// The bay, counted from 0.
    bay: usize,
    /// What is known of it for the first scarf, the second and so on; the last for all further ones.
    judged: Vec<Option<Place>>,
}

impl Candidate {
    /// What is known of it for a scarf with so many to its left; nothing where that one may not be there.
    pub fn judged(&self, before: usize) -> Option<&Place> {
        self.judged.get(before).or(self.judged.last())?.as_ref()
    }
}

/// What is known of a scarf of some kind at some place, or what forbids it.
type Judge = fn(&ScarfPlace, ScarfKind, &Surroundings) -> Result<Place, Forbidden>;

/// Every place of the grid where a scarf of one of those kinds may be, left to right.
pub(super) fn candidates(around: &Surroundings, kinds: &[ScarfKind], judge: Judge) -> Vec<Candidate> {
    let step = grid(around.frame);
    let half = around.frame.scarfs.lap / 2.0;
    let n_steps = (around.frame.beam_length / step).floor() as usize;
    let mut found = Vec::new();
    let mut judged: Vec<Option<Place>> = Vec::with_capacity(kinds.len());
    for low in (0..=n_steps).map(|n| step * n as f64) {
        for lower in [Side::Left, Side::Right] {
            let place = ScarfPlace { centre: low + half, lower };
            judged.clear();
            judged.extend(kinds.iter().map(|kind| judge(&place, *kind, around).ok()));
            if let Some(bay) = judged.iter().flatten().map(|known| known.bay).next() {
                found.push(Candidate { place, bay, judged: judged.clone() });
            }
        }
    }
    found
}

/// What a scarf costs, in feet of stock. It takes a day's work: pieces are not multiplied to save a foot of stock.
const SCARF_COST: f64 = 6.0;

/// What a scarf costs whose middle, the hinge, lies where the uncut beam bends its most: as much as another scarf.
const BENDING_COST: f64 = SCARF_COST;

/// The same of the worst of its ends and middle: the halves are thin there, but the hinge is not.
const WORST_COST: f64 = 1.0;

/// Cost of one piece with so many scarfs before it in feet of stock, with more for the scarf at its right; nothing where the
/// piece cannot be.
fn piece_cost(
    around: &Surroundings,
    mill: &Mill,
    before: usize,
    (previous, next): (Option<&Candidate>, Option<&Candidate>),
) -> Option<f64> {
    let scarf = next.map_or(Some(0.0), |next| next.judged(before).map(scarf_cost))?;
    Some(piece_stock(around, mill, previous, next)?.to_feet() + scarf)
}

/// What a scarf costs, in feet of stock: more where the uncut beam bends, or near a rafter.
pub(super) fn scarf_cost(judged: &Place) -> f64 {
    let crowded = (Length::inches(6.0) - judged.rafter_clear).max(Length::ZERO);
    let place = judged.bends.centre * BENDING_COST + judged.bends.worst() * WORST_COST + crowded.to_inches() * 0.02;
    place + SCARF_COST
}

/// The length of the mill that a piece between two scarfs comes out of; nothing where it is too long, too heavy, or would
/// not stand.
pub(super) fn piece_stock(
    around: &Surroundings,
    mill: &Mill,
    previous: Option<&Candidate>,
    next: Option<&Candidate>,
) -> Option<Length> {
    let half = around.frame.scarfs.lap / 2.0;
    let start = previous.map_or(Length::ZERO, |known| known.place.centre - half);
    let end = next.map_or(around.frame.beam_length, |known| known.place.centre + half);
    if let (Some(a), Some(b)) = (previous, next)
        && b.bay <= a.bay
    {
        return None;
    }
    let n_posts = around.posts.iter().filter(|post| post.stands_under(start, end)).count();
    if n_posts == 0 || piece_weight(around, end - start) > mill.heaviest_pick {
        return None;
    }
    mill.stock_for(end - start)
}

/// Green weight of a piece of the beam before its laps are cut, less half a lap for each scarf it is
/// sure to have.
pub(super) fn piece_weight(around: &Surroundings, piece: Length) -> Weight {
    let area = around.frame.timbers.beam.sawn.area();
    let cut = if piece < around.frame.beam_length { around.frame.scarfs.lap / 2.0 } else { Length::ZERO };
    match species(&around.frame.species) {
        Some(wood) => wood.green_density * (area * (piece - cut)),
        None => Weight::ZERO,
    }
}

//! Whether a scarf may be where it is, and how good the place is.
//!
//! Common practice: never at mid-bay; centred over a knee brace or a little past it, where a loaded
//! beam hardly bends; tips clear of mortises and rafters; a brace pocket only in the lower lap, near its
//! root, with enough wood over it; the lower lap on the piece that reaches past the nearer post.
//! Of the places that are left the best is where the beam, were it not cut, would bend least ([`UncutBeam`]).
use super::brace::{Brace, Pocket};
use super::post::{PostShape, bay_of};
use super::uncut_beam::{Bending, UncutBeam};
use crate::project::{Frame, JoineryRules, Problem, Project, ScarfKind, ScarfPlace, Side};
use crate::units::{Length, UnitSystem};
use crate::wording::length;

/// Share of the bay on each side of its middle where no scarf may have its centre.
const MID_BAY_SHARE: f64 = 0.10;

/// Everything a scarf must keep clear of.
pub struct Surroundings<'a> {
    /// The project, for what single scarfs have of their own.
    pub project: &'a Project,
    /// The frame.
    pub frame: &'a Frame,
    /// The rules.
    pub rules: &'a JoineryRules,
    /// Posts, left to right.
    pub posts: &'a [PostShape],
    /// Braces.
    pub braces: &'a [Brace],
    /// The pocket of each brace in the beam.
    pub pockets: &'a [Pocket],
    /// Centres of the rafters.
    pub rafters: &'a [Length],
    /// The beam before it is cut.
    pub uncut: &'a UncutBeam,
    /// For the sentences.
    pub units: UnitSystem,
}

/// What is known of one place.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    /// The bay, counted from 0; the ends past the outer posts belong to no bay.
    pub bay: usize,
    /// Root of the lower lap.
    pub root: Length,
    /// Tip of the lower lap.
    pub tip: Length,
    /// Face of the nearer post to the root.
    pub root_from_post: Length,
    /// Least distance from a tip to a rafter.
    pub rafter_clear: Length,
    /// How hard the uncut beam bends there.
    pub bends: Bending,
    /// Least wood over a pocket in the lap, where there is one.
    pub wood_over_pocket: Option<Length>,
}

/// Why a scarf may not be at a place: said only where it is asked, since many places are tried.
#[derive(Clone, Debug, PartialEq)]
pub enum Forbidden {
    /// It lies outside the outer posts.
    PastThePosts,
    /// The bay between these two posts has room for less than its lap.
    NoRoom(usize, usize, Length),
    /// Its lap runs onto a post.
    OntoAPost,
    /// It lies at mid-bay.
    MidBay,
    /// Its lower lap belongs to the piece that reaches past the farther post.
    WrongWayRound,
    /// A tip lies too near a rafter.
    NearARafter(Length),
    /// A tip lies in the way of that brace's pocket; braces by their place in the list.
    OntoAPocket(usize),
    /// That brace's pocket would leave so little wood over it.
    LittleWood(usize, Length),
    /// Its ends close endwise, past that brace.
    PastABrace(usize, ScarfKind),
}

impl Forbidden {
    /// The sentence that forbids it.
    #[must_use]
    pub fn says(&self, around: &Surroundings) -> String {
        let (rules, units) = (around.rules, around.units);
        let clear = length(rules.scarf_clear, units);
        let mark = |brace: &usize| around.braces[*brace].mark();
        match self {
            Self::PastThePosts => "it lies outside the outer posts".to_owned(),
            Self::NoRoom(left, right, room) => format!(
                "its lap is longer than the bay between P{left} and P{right} has room for ({})",
                length((*room).max(Length::ZERO), units)
            ),
            Self::OntoAPost => format!("its lap runs onto a post; it must stay {clear} clear"),
            Self::MidBay => "it lies at mid-bay, where the beam bends most".to_owned(),
            Self::WrongWayRound => {
                "its lower lap must belong to the piece that reaches past the nearer post".to_owned()
            }
            Self::NearARafter(gap) => format!(
                "a tip lies {} from a rafter's seat; it must stay {clear} clear",
                length((*gap).max(Length::ZERO), units)
            ),
            Self::OntoAPocket(brace) => format!("a tip lies in the way of brace {}'s pocket", mark(brace)),
            Self::LittleWood(brace, wood) => format!(
                "brace {}'s pocket would leave {} of wood over it; {} is the least",
                mark(brace),
                length((*wood).max(Length::ZERO), units),
                length(rules.wood_over_pocket, units)
            ),
            Self::PastABrace(brace, kind) => format!(
                "the lap lies between brace {0}’s post and its pocket: {1} ends close endwise, and {0} would be in the way",
                mark(brace),
                kind.name()
            ),
        }
    }
}

/// Height of the lower lap's surface above the underside at `from_root`: D − a at the root, a at the tip,
/// straight between them; with a table each half falls more steeply, to the step and from it.
#[must_use]
pub fn lap_height(frame: &Frame, rules: &JoineryRules, kind: ScarfKind, from_root: Length) -> Length {
    let (depth, lap) = (frame.timbers.beam.sawn.depth, frame.scarfs.lap);
    let abutment = abutment(frame, rules, kind);
    let from_root = from_root.clamp(Length::ZERO, lap);
    let is_tabled = kind == ScarfKind::StopSplayedTabled;
    let step = if is_tabled { rules.scarf_table } else { Length::ZERO };
    let fall = (depth - abutment * 2.0 + step) / lap;
    if is_tabled && from_root > lap / 2.0 + rules.scarf_wedge / 2.0 {
        return abutment + (lap - from_root) * fall;
    }
    depth - abutment - from_root * fall
}

/// Least wood between a mortise's floor, `deep` above the underside, and the lap's surface, square to it: the mortise lies
/// between two places measured from the root. A table's step is lowest on the root's side.
#[must_use]
pub fn wood_over(
    frame: &Frame,
    (rules, kind): (&JoineryRules, ScarfKind),
    (near, far): (Length, Length),
    deep: Length,
) -> Length {
    let hair = Length::inches(1e-6);
    let step = frame.scarfs.lap / 2.0 + rules.scarf_wedge / 2.0;
    let (low, high) = (near.min(far), near.max(far));
    let is_over_step = kind == ScarfKind::StopSplayedTabled && low < step && high > step;
    let at = |from_root: Length| lap_height(frame, rules, kind, from_root);
    let least = if is_over_step { at(high).min(at(step)) } else { at(high) };
    let fall = (at(low) - at((low + hair).min(high))) / hair;
    (least - deep) / (1.0 + fall * fall).sqrt()
}

/// Height of the scarf's abutments.
#[must_use]
pub fn abutment(frame: &Frame, rules: &JoineryRules, kind: ScarfKind) -> Length {
    let depth = frame.timbers.beam.sawn.depth;
    match kind {
        ScarfKind::Halved | ScarfKind::HalvedUnderSquinted | ScarfKind::Bladed => depth / 2.0,
        _ => depth * rules.scarf_abutment_share,
    }
}

/// What is known of a scarf of that kind at that place.
///
/// # Errors
/// What forbids it.
pub fn judge(place: &ScarfPlace, kind: ScarfKind, around: &Surroundings) -> Result<Place, Forbidden> {
    let half = around.frame.scarfs.lap / 2.0;
    let stands = judge_standing(place, kind, around)?;
    travels(around, kind, (place.centre - half, place.centre + half))?;
    Ok(stands)
}

/// The same, but for whether it can be closed past what already stands.
///
/// # Errors
/// What forbids it.
pub fn judge_standing(place: &ScarfPlace, kind: ScarfKind, around: &Surroundings) -> Result<Place, Forbidden> {
    let lap = around.frame.scarfs.lap;
    let (low, high) = (place.centre - lap / 2.0, place.centre + lap / 2.0);
    let clear = around.rules.scarf_clear;
    let bay = bay_of(around.posts, place.centre).ok_or(Forbidden::PastThePosts)?;
    let (left, right) = (&around.posts[bay], &around.posts[bay + 1]);
    let room = right.left - left.right - clear * 2.0;
    if lap > room {
        return Err(Forbidden::NoRoom(left.number, right.number, room));
    }
    if low < left.right + clear || high > right.left - clear {
        return Err(Forbidden::OntoAPost);
    }
    let (root, tip, nearer) = match place.lower {
        Side::Left => (low, high, left.right),
        Side::Right => (high, low, right.left),
    };
    let middle = (left.left + right.right) / 2.0;
    let bay_length = right.left - left.left;
    if (place.centre - middle).abs() < bay_length * MID_BAY_SHARE {
        return Err(Forbidden::MidBay);
    }
    if (place.centre < middle) != (place.lower == Side::Left) {
        return Err(Forbidden::WrongWayRound);
    }
    let wood_over_pocket = pockets(around, kind, root, (low, high))?;
    let rafter_clear = rafter_clearance(around, &[low, high]);
    if rafter_clear < clear {
        return Err(Forbidden::NearARafter(rafter_clear));
    }
    Ok(Place {
        bay,
        root,
        tip,
        root_from_post: (root - nearer).abs(),
        rafter_clear,
        bends: bends(place, around),
        wood_over_pocket,
    })
}

/// How hard the uncut beam bends where that scarf is.
fn bends(place: &ScarfPlace, around: &Surroundings) -> Bending {
    let half = around.frame.scarfs.lap / 2.0;
    let (low, high) = (place.centre - half, place.centre + half);
    let (root, tip) = if place.lower == Side::Left { (low, high) } else { (high, low) };
    around.uncut.at_scarf(root, place.centre, tip)
}

/// Wood over the pockets that lie in the lap, or what forbids one.
fn pockets(
    around: &Surroundings,
    kind: ScarfKind,
    root: Length,
    (low, high): (Length, Length),
) -> Result<Option<Length>, Forbidden> {
    let (rules, clear) = (around.rules, around.rules.scarf_clear);
    let mut least: Option<Length> = None;
    for (index, (brace, pocket)) in around.braces.iter().zip(around.pockets).enumerate() {
        let (near, far) = brace.on_beam(pocket);
        if far <= low - clear || near >= high + clear {
            continue;
        }
        if near < low + clear || far > high - clear {
            return Err(Forbidden::OntoAPocket(index));
        }
        let mortise = [pocket.mortise.0, pocket.mortise.1];
        let [one, two] = mortise.map(|along| (brace.place(along, Length::ZERO).x - root).abs());
        let wood = wood_over(around.frame, (rules, kind), (one, two), pocket.housing + pocket.mortise_depth);
        if wood < rules.wood_over_pocket {
            return Err(Forbidden::LittleWood(index, wood));
        }
        least = Some(least.map_or(wood, |known| known.min(wood)));
    }
    Ok(least)
}

/// Ends that close endwise move one piece along the beam: it cannot take the tenon of a brace that stands under the other.
fn travels(around: &Surroundings, kind: ScarfKind, (low, high): (Length, Length)) -> Result<(), Forbidden> {
    let rules = around.rules;
    let travel = match kind {
        ScarfKind::Bladed => rules.scarf_blade,
        _ if kind.is_squinted() => rules.scarf_squint,
        _ => Length::ZERO,
    };
    let is_across = |brace: &Brace, (near, far): (Length, Length)| match brace.side {
        Side::Left => brace.corner_x >= high && far <= low,
        Side::Right => brace.corner_x <= low && near >= high,
    };
    let mut all = around.braces.iter().zip(around.pockets);
    match all.position(|(brace, pocket)| travel > Length::ZERO && is_across(brace, brace.on_beam(pocket))) {
        Some(brace) => Err(Forbidden::PastABrace(brace, kind)),
        None => Ok(()),
    }
}

fn rafter_clearance(around: &Surroundings, tips: &[Length]) -> Length {
    let half = around.frame.timbers.rafter.ordered.breadth / 2.0;
    let gaps = around.rafters.iter().flat_map(|rafter| tips.iter().map(move |tip| (*tip - *rafter).abs() - half));
    gaps.fold(Length::feet(1000.0), Length::min)
}

/// The problem of each scarf the user placed by hand that may not be there.
#[must_use]
pub fn scarf_problems(places: &[ScarfPlace], around: &Surroundings) -> Vec<Problem> {
    let mut problems = Vec::new();
    for (index, place) in places.iter().enumerate() {
        let kind = around.project.scarf_kind(index + 1);
        if let Err(why) = judge(place, kind, around) {
            let field = format!("frame.scarfs.by_hand.{index}.centre");
            let bends = bends(place, around).says();
            let problem = Problem::caution(field, format!("Scarf {}: {}; {bends}.", index + 1, why.says(around)));
            problems.push(match nearest_place(place, kind, around) {
                Some(centre) => problem.nearest(centre),
                None => problem,
            });
        }
    }
    problems
}

/// The nearest centre, in whole grid steps from where it is, with the same lower lap, that may be.
fn nearest_place(place: &ScarfPlace, kind: ScarfKind, around: &Surroundings) -> Option<Length> {
    let step = grid(around.frame);
    let n_steps = (around.frame.beam_length / step).ceil() as i32;
    (1..=n_steps)
        .flat_map(|n| [place.centre - step * f64::from(n), place.centre + step * f64::from(n)])
        .find(|centre| judge(&ScarfPlace { centre: *centre, ..*place }, kind, around).is_ok())
}

/// The step in which places are proposed: whole inches for a beam laid out in sixteenths, else whole
/// centimetres. It depends on the frame alone, never on the units it is shown in.
#[must_use]
pub fn grid(frame: &Frame) -> Length {
    let sixteenths = frame.beam_length.to_inches() * 16.0;
    if (sixteenths - sixteenths.round()).abs() < 1e-6 { Length::inches(1.0) } else { Length::millimetres(10.0) }
}

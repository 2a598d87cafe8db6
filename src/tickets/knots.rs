//! Knots: which zones of a stick want sound wood, and which way to lay its joints on the wood puts them clear.
//!
//! Common practice: no knot and no wane where wood is thin or loaded hard: in tenons and up to 2 in past their shoulders,
//! in the walls of a mortise for a tenon's thickness beside it and 2 in past its ends, in the laps of a scarf or splice,
//! within two diameters of a peg's hole on the two faces it comes out of, and by a bird's mouth on the faces it breaks.
//!
//! A knot is taken as the square around it, on the face it is seen on. What was found is told as the stick lies now; the
//! joints are then laid on the wood in every way its section allows. The stock past the ends stays where it is.
use super::mark::{Mark, MarkKind};
use super::stick::Stick;
use crate::design::Shape;
use crate::materials::Face;
use crate::project::{Knot, Project, Role};
use crate::units::{Length, UnitSystem, sort_by_number};
use crate::wording::length;

/// Sound wood past a shoulder, a mortise's end, a lap's root and a heel.
const PAST: Length = Length::inches(2.0);
/// The farthest a layout is moved along its stock.
const FARTHEST: Length = Length::inches(24.0);
/// What a move of the layout is rounded up to.
const STEP: Length = Length::inches(0.125);
/// Breadth and depth this near to each other let a stick be turned a quarter.
const SQUARE: Length = Length::inches(1.0 / 16.0);

/// A part of one face that wants sound wood.
#[derive(Clone, Debug, PartialEq)]
pub struct Zone {
    /// The face.
    pub face: Face,
    /// From the stick's zero: from, to.
    pub along: (Length, Length),
    /// From the face's upper edge as drawn: from, to.
    pub across: (Length, Length),
    /// What it is part of.
    pub what: String,
}

/// One way to lay the joints on the wood.
#[derive(Clone, Debug, PartialEq)]
pub struct Lay {
    /// Quarter turns about the stick's axis: what is now one face becomes the one drawn that many below it.
    pub turns: usize,
    /// Its ends are swapped, by a half turn about a line square to the face drawn first.
    pub swapped: bool,
    /// What stays in the way.
    pub struck: Vec<Struck>,
}

/// A knot in a zone.
#[derive(Clone, Debug, PartialEq)]
pub struct Struck {
    /// Its place in the list of knots.
    pub knot: usize,
    /// The face it then lies on.
    pub face: Face,
    /// What it lies in.
    pub what: String,
}

/// What the knots ask.
#[derive(Clone, Debug, PartialEq)]
pub struct KnotAnswer {
    /// Every way, the best first; of equal ones the one that moves the stick least.
    pub lays: Vec<Lay>,
    /// Where no way is clear: the shortest move of the layout that makes one clear, toward the high end above zero, and
    /// the place of that way in `lays`.
    pub shift: Option<(usize, Length)>,
}

/// The zones of a stick that want sound wood, in the order of its faces and marks.
#[must_use]
pub fn clear_zones(project: &Project, shape: &Shape, stick: &Stick) -> Vec<Zone> {
    let mut zones = Vec::new();
    for (along, what) in all_round(project, shape, stick) {
        let along = (along.0.max(stick.low), along.1.min(stick.high));
        let faces = stick.faces.iter();
        zones.extend(faces.map(|(face, width)| zone(*face, along, (Length::ZERO, *width), &what)));
    }
    zones.extend(stick.marks.iter().flat_map(|mark| of_mark(project, stick, mark)));
    zones
}

fn zone(face: Face, along: (Length, Length), across: (Length, Length), what: &str) -> Zone {
    Zone { face, along, across, what: what.to_owned() }
}

/// Runs that want sound wood on every face.
fn all_round(project: &Project, shape: &Shape, stick: &Stick) -> Vec<((Length, Length), String)> {
    let number: usize = stick.mark.get(1..).and_then(|text| text.parse().ok()).unwrap_or(0);
    match stick.role {
        Role::Post => vec![((stick.low, PAST), "the tenon".to_owned())],
        Role::Brace => {
            let [at_post, at_beam] = stick.profile_lines[..] else { return Vec::new() };
            let (to, from) = (at_post.0.x.max(at_post.1.x) + PAST, at_beam.0.x.min(at_beam.1.x) - PAST);
            let named = |end: &str| format!("the tenon at the {end}");
            vec![((stick.low, to), named("post")), ((from, stick.high), named("beam"))]
        }
        Role::Beam => {
            let piece = shape.beam.pieces.iter().find(|piece| piece.number == number);
            let ends = piece.into_iter().flat_map(|piece| [piece.left, piece.right].map(|end| (piece.start, end)));
            ends.filter_map(|(start, end)| {
                let scarf = shape.beam.scarfs.get(end?.0.checked_sub(1)?)?;
                let run = (scarf.low - start - PAST, scarf.high - start + PAST);
                Some((run, format!("the lap of scarf {}", scarf.number)))
            })
            .collect()
        }
        Role::Ledger => {
            let lap = project.frame.ledger_lap + PAST;
            let piece = shape.ledger.iter().find(|piece| piece.number == number);
            let left = piece.filter(|piece| piece.left_splice).map(|_| (Length::ZERO, lap));
            let right = piece.filter(|piece| piece.right_splice).map(|_| (stick.high - lap, stick.high));
            left.into_iter().chain(right).map(|run| (run, "the lap of a splice".to_owned())).collect()
        }
        Role::Rafter | Role::Purlin | Role::Block => Vec::new(),
    }
}

fn of_mark(project: &Project, stick: &Stick, mark: &Mark) -> Vec<Zone> {
    let Some(at) = stick.faces.iter().position(|(face, _)| *face == mark.face) else { return Vec::new() };
    let width = stick.faces[at].1;
    let (upper, lower) = stick.across(mark, width);
    let far = mark.far.unwrap_or(mark.near);
    let thick = project.joinery.tenon_thickness;
    match mark.kind {
        MarkKind::Mortise => {
            let thick = thick.max(lower - upper);
            let across = ((upper - thick).max(Length::ZERO), (lower + thick).min(width));
            vec![zone(mark.face, (mark.near - PAST, far + PAST), across, &format!("the walls of the {}", mark.what))]
        }
        MarkKind::Peg => {
            let around = mark.bore.unwrap_or(project.joinery.peg) * 2.0;
            let along = (mark.near - around, mark.near + around);
            let mut zones = vec![zone(mark.face, along, (upper - around, lower + around), &mark.what)];
            // Bored straight through: the face behind is seen from its other edge.
            if let Some((behind, depth)) = stick.faces.get((at + 2) % 4) {
                zones.push(zone(*behind, along, (*depth - lower - around, *depth - upper + around), &mark.what));
            }
            zones
        }
        MarkKind::Housing if stick.role == Role::Rafter => {
            let along = (mark.near - PAST, far + PAST);
            let high = mark.depth.unwrap_or_default() + PAST;
            let mut zones = vec![zone(mark.face, along, (Length::ZERO, width), &mark.what)];
            for (face, depth) in &stick.faces {
                match face {
                    Face::Left => zones.push(zone(*face, along, (*depth - high, *depth), &mark.what)),
                    Face::Right => zones.push(zone(*face, along, (Length::ZERO, high), &mark.what)),
                    _ => (),
                }
            }
            zones
        }
        _ => Vec::new(),
    }
}

/// The ways a stick's joints can be laid on the wood: quarter turns where it is square, half turns otherwise, each with its
/// ends as they are and swapped. A crown that is known comes up, if any turn brings it up; a rafter's that is not is taken to
/// be up as it lies.
fn ways(stick: &Stick, crown: Option<Face>) -> Vec<(usize, bool)> {
    let [(_, one), (_, other), ..] = stick.faces[..] else { return Vec::new() };
    let turns: &[usize] = match stick.role {
        Role::Rafter if crown.is_none() => &[0],
        _ if (one - other).abs() <= SQUARE => &[0, 1, 2, 3],
        _ => &[0, 2],
    };
    let mut all: Vec<(usize, bool)> =
        [false, true].into_iter().flat_map(|swapped| turns.iter().map(move |turns| (*turns, swapped))).collect();
    let is_up = |way: &(usize, bool)| crown.is_some_and(|crown| face_of(stick, crown, *way) == Some(Face::Top));
    if all.iter().any(is_up) {
        all.retain(is_up);
    }
    all
}

/// The face that one of the stick's faces becomes once the joints are laid that way.
fn face_of(stick: &Stick, face: Face, way: (usize, bool)) -> Option<Face> {
    let on_it = Knot { face, from_zero: Length::ZERO, across: Length::ZERO, size: Length::ZERO };
    Some(laid(stick, &on_it, way)?.face)
}

/// A knot as the sheet sees it once the joints are laid that way; nothing on a face the sheet does not have.
fn laid(stick: &Stick, knot: &Knot, (turns, swapped): (usize, bool)) -> Option<Knot> {
    let mut at = stick.faces.iter().position(|(face, _)| *face == knot.face)?;
    let (mut across, mut from_zero) = (knot.across, knot.from_zero);
    if swapped {
        across = stick.faces[at].1 - across;
        from_zero = stick.low + stick.high - from_zero;
        at = (4 - at) % 4;
    }
    let face = stick.faces.get((at + turns) % 4)?.0;
    Some(Knot { face, from_zero, across, size: knot.size })
}

fn is_in(knot: &Knot, zone: &Zone) -> bool {
    let half = knot.size / 2.0;
    let meets = |at: Length, (from, to): (Length, Length)| at + half > from && at - half < to;
    knot.face == zone.face && meets(knot.from_zero, zone.along) && meets(knot.across, zone.across)
}

/// What the knots of a stick ask, with its crown up where it is known; nothing where it has none, or fewer than four faces on
/// its sheet.
#[must_use]
pub fn knot_answer(stick: &Stick, zones: &[Zone], knots: &[Knot], crown: Option<Face>) -> Option<KnotAnswer> {
    if knots.is_empty() || stick.faces.len() != 4 {
        return None;
    }
    let lays = lays(stick, zones, knots, crown);
    let is_clear = lays.first().is_some_and(|lay| lay.struck.is_empty());
    let shift = if is_clear { None } else { shortest_shift(stick, zones, knots, &lays) };
    Some(KnotAnswer { lays, shift })
}

/// Every way to lay a stick, the one that the knots like best first.
pub(super) fn lays(stick: &Stick, zones: &[Zone], knots: &[Knot], crown: Option<Face>) -> Vec<Lay> {
    let lay = |(turns, swapped): (usize, bool)| {
        let mut struck = Vec::new();
        for (place, knot) in knots.iter().enumerate() {
            let Some(knot) = laid(stick, knot, (turns, swapped)) else { continue };
            let hit = zones.iter().find(|zone| is_in(&knot, zone));
            struck.extend(hit.map(|zone| Struck { knot: place, face: knot.face, what: zone.what.clone() }));
        }
        Lay { turns, swapped, struck }
    };
    let mut lays: Vec<Lay> = ways(stick, crown).into_iter().map(lay).collect();
    let width = |lay: &Lay| lay.struck.iter().map(|struck| knots[struck.knot].size.to_inches()).sum::<f64>();
    sort_by_number(&mut lays, width);
    sort_by_number(&mut lays, |lay| lay.struck.len() as f64);
    lays
}

/// The shortest move of the layout along the stock that leaves some way clear.
fn shortest_shift(stick: &Stick, zones: &[Zone], knots: &[Knot], lays: &[Lay]) -> Option<(usize, Length)> {
    let mut best: Option<(usize, Length)> = None;
    for (place, lay) in lays.iter().enumerate() {
        let placed = knots.iter().filter_map(|knot| laid(stick, knot, (lay.turns, lay.swapped)));
        let mut closed: Vec<(Length, Length)> = Vec::new();
        for knot in placed {
            let half = knot.size / 2.0;
            // Wherever it lies along the stick: only the face and the measure across keep them apart.
            let meets = |zone: &&Zone| is_in(&Knot { from_zero: (zone.along.0 + zone.along.1) / 2.0, ..knot }, zone);
            let around = |zone: &Zone| (knot.from_zero - half - zone.along.1, knot.from_zero + half - zone.along.0);
            closed.extend(zones.iter().filter(meets).map(around));
        }
        let is_open = |by: Length| closed.iter().all(|(from, to)| by <= *from || by >= *to);
        let ends = closed.iter().flat_map(|(from, to)| [-((-*from).round_up_to(STEP)), to.round_up_to(STEP)]);
        for by in ends.filter(|by| by.abs() <= FARTHEST && is_open(*by)) {
            if best.is_none_or(|(_, known)| by.abs() < known.abs()) {
                best = Some((place, by));
            }
        }
    }
    best
}

impl KnotAnswer {
    /// What to do, in sentences: how to lay it, what stays in the way, the way out.
    #[must_use]
    pub fn says(&self, stick: &Stick, knots: &[Knot], units: UnitSystem) -> Vec<String> {
        let Some(best) = self.lays.first() else { return Vec::new() };
        if best.struck.is_empty() {
            return vec![format!("{}: every knot is clear.", best.says(stick, knots))];
        }
        let in_it = best
            .struck
            .iter()
            .map(|struck| format!("knot {} is in {}, on the {}", struck.knot + 1, struck.what, struck.face.name()));
        let in_it: Vec<String> = in_it.collect();
        let mut says = vec!["No way to lay it is clear.".to_owned()];
        says.push(format!(
            "Best of {}: {}. Even so {}.",
            self.lays.len(),
            lower(&best.says(stick, knots)),
            in_it.join("; ")
        ));
        says.push(match self.shift.and_then(|(place, by)| Some((self.lays.get(place)?, by))) {
            Some((lay, by)) => format!(
                "Clear if the layout moves {} toward the {}, with this: {}. The stock must have that much more there; \
                 otherwise take another stick.",
                length(by.abs(), units),
                if (by > Length::ZERO) == stick.to_left { "left end" } else { "right end" },
                lower(&lay.says(stick, knots))
            ),
            None => "Moving the layout along does not clear it either: take another stick.".to_owned(),
        });
        says
    }
}

impl Lay {
    /// The face that one of the stick's faces becomes.
    #[must_use]
    pub fn face_of(&self, stick: &Stick, face: Face) -> Option<Face> {
        face_of(stick, face, (self.turns, self.swapped))
    }

    /// How to lay it, by the face that the first knot is on.
    #[must_use]
    pub fn says(&self, stick: &Stick, knots: &[Knot]) -> String {
        let ends = if self.swapped { "ends swapped" } else { "ends as they are" };
        let turn = match (self.turns, self.swapped) {
            (0, false) => return "As it lies now".to_owned(),
            (0, true) => "Swap its ends".to_owned(),
            (2, _) => "Turn it half over".to_owned(),
            _ => "Turn it a quarter".to_owned(),
        };
        let knot =
            knots.first().and_then(|knot| Some((knot.face, laid(stick, knot, (self.turns, self.swapped))?.face)));
        let becomes = match knot {
            Some((now, then)) if now == then => format!(", so that the {} stays the {}", now.name(), then.name()),
            Some((now, then)) => format!(", so that what is now the {} becomes the {}", now.name(), then.name()),
            None => String::new(),
        };
        if self.turns == 0 { format!("{turn}{becomes}") } else { format!("{turn}{becomes}; {ends}") }
    }
}

/// With a small letter at its head.
fn lower(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::project::demo;
    use crate::{design::Built, evaluate};
    use std::sync::Arc;

    fn inches(value: f64) -> Length {
        Length::inches(value)
    }

    fn built() -> (Project, Arc<Built>) {
        let project = demo::wool_barn();
        let built = evaluate(&project).built.unwrap();
        (project, built)
    }

    fn knot(face: Face, from_zero: f64, across: f64, size: f64) -> Knot {
        Knot { face, from_zero: inches(from_zero), across: inches(across), size: inches(size) }
    }

    fn on(face: Face, along: (f64, f64), across: (f64, f64)) -> Zone {
        zone(face, (inches(along.0), inches(along.1)), (inches(across.0), inches(across.1)), "a mortise")
    }

    /// By hand: P2 is square, 8 in. A knot by the mortise of its outer face clears it when that face is turned to the next.
    #[test]
    fn a_square_stick_is_turned_a_quarter() {
        let (_, built) = built();
        let post = built.stick("P2").unwrap();
        let zones = [on(Face::Outer, (20.0, 40.0), (0.0, 8.0))];
        let knots = [knot(Face::Outer, 30.0, 4.0, 2.0)];
        let answer = knot_answer(post, &zones, &knots, None).unwrap();
        assert_eq!(answer.lays.len(), 8);
        let best = &answer.lays[0];
        assert_eq!((best.turns, best.swapped, best.struck.len()), (1, false, 0));
        assert_eq!(
            answer.says(post, &knots, UnitSystem::Imperial),
            [
                "Turn it a quarter, so that what is now the outer face becomes the left face; ends as they are: every knot is \
              clear."
            ]
        );
    }

    /// By hand: swapped about the middle of −3½ … 88½ say, x becomes low + high − x, and across becomes width − across.
    #[test]
    fn swapped_ends_mirror_both_measures_and_the_side_faces() {
        let (_, built) = built();
        let post = built.stick("P2").unwrap();
        let swapped = laid(post, &knot(Face::Left, 10.0, 3.0, 1.0), (0, true)).unwrap();
        assert_eq!(swapped.face, Face::Right);
        assert!((swapped.across - inches(5.0)).abs() < inches(1e-9));
        assert!((swapped.from_zero - (post.low + post.high - inches(10.0))).abs() < inches(1e-9));
        // Twice is back again.
        let again = laid(post, &swapped, (0, true)).unwrap();
        assert_eq!((again.face, again.from_zero, again.across), (Face::Left, inches(10.0), inches(3.0)));
        // Four quarter turns too.
        let turned = laid(post, &laid(post, &again, (3, false)).unwrap(), (1, false)).unwrap();
        assert_eq!(turned.face, Face::Left);
    }

    /// A rafter keeps its crown up: only its ends can be swapped.
    #[test]
    fn a_rafter_is_only_swapped_end_for_end() {
        let (project, built) = built();
        let rafter = built.stick("R1").unwrap();
        assert_eq!(ways(rafter, None), [(0, false), (0, true)]);
        let zones = clear_zones(&project, &built.shape, rafter);
        let heel = zones.iter().find(|zone| zone.what == "beam bird's mouth" && zone.face == Face::Underside).unwrap();
        let at = (heel.along.0 + heel.along.1) / 2.0;
        let knots = [Knot { face: Face::Underside, from_zero: at, across: inches(2.0), size: inches(1.0) }];
        let answer = knot_answer(rafter, &zones, &knots, None).unwrap();
        assert_eq!(answer.lays.len(), 2);
        assert!(answer.lays[0].struck.is_empty() && answer.lays[0].swapped);
    }

    /// By hand: every face has a zone from 10 to 20 and one as far from the other end; a 2 in knot at 19 begins at 18, so the
    /// layout goes 2 in back.
    #[test]
    fn where_no_way_is_clear_the_layout_moves() {
        let (_, built) = built();
        let post = built.stick("P2").unwrap();
        let ends = (post.low + post.high).to_inches();
        let all = |along: (f64, f64)| {
            post.faces.iter().map(move |(face, _)| on(*face, along, (0.0, 8.0))).collect::<Vec<_>>()
        };
        let mut zones = all((10.0, 20.0));
        zones.extend(all((ends - 20.0, ends - 10.0)));
        let knots = [knot(Face::Outer, 19.0, 4.0, 2.0)];
        let answer = knot_answer(post, &zones, &knots, None).unwrap();
        assert!(answer.lays.iter().all(|lay| lay.struck.len() == 1));
        let (_, by) = answer.shift.unwrap();
        assert!((by.abs() - inches(2.0)).abs() < inches(1e-9), "{by:?}");
        let says = answer.says(post, &knots, UnitSystem::Imperial).join(" ");
        assert!(says.contains("moves 2″ toward the left end"), "{says}");
    }

    /// By hand: a peg of 1 in keeps 2 in clear on the face it enters and on the one behind, at the mirrored height.
    #[test]
    fn a_peg_keeps_both_faces_clear() {
        let (project, built) = built();
        let beam = built.stick("B1").unwrap();
        let peg = beam.marks.iter().find(|mark| mark.kind == MarkKind::Peg).unwrap();
        let [front, behind] = &of_mark(&project, beam, peg)[..] else { unreachable!("two faces") };
        let around = project.joinery.peg * 2.0;
        assert_eq!((front.face, behind.face), (Face::Outer, Face::Wall));
        assert_eq!(front.along.1 - front.along.0, around * 2.0);
        let width = beam.faces[1].1;
        assert!((front.across.0 + behind.across.1 - width).abs() < inches(1e-9));
    }
}

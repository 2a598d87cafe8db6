//! One piece for one place: what bars it, and what speaks against it.
use super::defects::{Stand, stand, wrong_heart};
use super::lie::Lie;
use super::place::Place;
use crate::design::Built;
use crate::geometry::Brace;
use crate::materials::Section;
use crate::project::{HAIR, Piece, Project, Role, StockRule};
use crate::tickets::{MarkKind, Stick, seat_in_depth};
use crate::units::{Length, UnitSystem};
use crate::wording::length;

/// Off by less than this nobody sees it.
const SEEN: Length = Length::inches(1.0 / 64.0);
/// What rough sawn stock may be off (common practice).
const ROUGH: Length = Length::inches(0.125);
/// The shortest seat of a rafter.
const LEAST_SEAT: Length = Length::inches(1.5);

/// Something that speaks against it.
#[derive(Clone, Debug, PartialEq)]
pub struct Mind {
    /// How much, in points.
    pub points: f64,
    /// In words.
    pub says: String,
}

/// One piece for one place, without its strength.
#[derive(Clone, Debug, PartialEq)]
pub struct Look {
    /// What bars it; empty where nothing does.
    pub refused: Vec<String>,
    /// What speaks against it.
    pub minds: Vec<Mind>,
    /// How it lies.
    pub lie: Lie,
}

impl Look {
    fn mind(&mut self, points: f64, says: impl Into<String>) {
        let says = says.into();
        match self.minds.iter_mut().find(|known| known.says == says) {
            Some(known) => known.points = known.points.max(points),
            None => self.minds.push(Mind { points, says }),
        }
    }

    fn refuse(&mut self, says: impl Into<String>) {
        let says = says.into();
        if !self.refused.contains(&says) {
            self.refused.push(says);
        }
    }

    /// All points together.
    #[must_use]
    pub fn points(&self) -> f64 {
        self.minds.iter().map(|mind| mind.points).sum()
    }
}

/// Looks at a piece for a place. Where its two ends differ it is also tried turned end for end, and lies so where that is
/// better by more than half a point.
#[must_use]
pub fn look(project: &Project, built: &Built, piece: &Piece, place: &Place) -> Look {
    let as_it_lies = looked(project, built, piece, place, false);
    if piece.near == piece.far || piece.near.is_none() || piece.far.is_none() {
        return as_it_lies;
    }
    let mut turned = looked(project, built, piece, place, true);
    let worth = |look: &Look| (look.refused.len(), look.points());
    let ((n_refused, points), (n_turned, points_turned)) = (worth(&as_it_lies), worth(&turned));
    if n_turned < n_refused || n_turned == n_refused && points_turned + 0.5 < points {
        turned.mind(0.0, "turned end for end: the far end lies where zero is");
        return turned;
    }
    as_it_lies
}

fn looked(project: &Project, built: &Built, piece: &Piece, place: &Place, is_turned: bool) -> Look {
    let lie = Lie::new(piece, place, built, is_turned);
    let mut look = Look { refused: Vec::new(), minds: Vec::new(), lie };
    long_enough(&mut look, project.units, place);
    for (index, stick) in place.sticks(built).enumerate() {
        if look.lie.is_measured {
            large_enough(&mut look, project, built, (index, stick));
        }
        crown(&mut look, project.units, built, piece, stick);
        let wish = project.buying.heart_of(stick.role);
        if !piece.heart.may_serve(wish) {
            let (points, says) = wrong_heart(wish, stick.role);
            look.mind(points, says);
        }
        let spare_in = (look.lie.length - place.net).to_inches();
        for defect in &piece.defects {
            match stand(*defect, stick, built, spare_in) {
                Stand::Refused(says) => look.refuse(says),
                Stand::Costs(points, says) => look.mind(points, says),
            }
        }
    }
    dry(&mut look, piece);
    look
}

/// The finished sticks and the saw's cuts must lie in it; docking may shrink, and what is over is waste.
fn long_enough(look: &mut Look, units: UnitSystem, place: &Place) {
    let spare = look.lie.length - place.net;
    if spare < -HAIR {
        look.refuse(format!("short by {}", length(-spare, units)));
    } else if spare + HAIR < place.docked {
        let each = length(spare / 2.0, units);
        look.mind(2.0, format!("only {each} to dock from each end: look for checks in the ends"));
    } else if look.lie.length > place.stock + HAIR {
        let over = look.lie.length - place.stock;
        look.mind(over.to_feet() * 0.5, format!("{} longer than it need be", length(over, units)));
    }
}

/// Depth of the shallowest housing in a stick: the rules', or a brace's own.
fn least_housing(project: &Project, built: &Built, stick: &Stick) -> Length {
    let by_rules = project.joinery.housing;
    if project.exceptions.is_empty() {
        return by_rules;
    }
    let holds = |brace: &Brace| stick.marks.iter().any(|mark| mark.mate.as_deref() == Some(&*brace.mark()));
    let end = |brace: &Brace| if stick.role == Role::Post { brace.foot.housing } else { brace.head.housing };
    let own = built.shape.braces.iter().filter(|brace| holds(brace)).map(end);
    own.fold(by_rules, Length::min)
}

/// The size the joints need, wherever the stick is cut.
fn large_enough(look: &mut Look, project: &Project, built: &Built, (index, stick): (usize, &Stick)) {
    let units = project.units;
    let is_jointed = matches!(stick.role, Role::Post | Role::Beam);
    let is_trusted = project.joinery.stock == StockRule::TrueStock;
    if is_trusted && !matches!(stick.role, Role::Purlin | Role::Block) {
        if let Some((off, at)) = worst_cut(look, (index, stick), |found| off_true(found, stick.timber.sawn)) {
            look.refuse(format!(
                "{} off its size at the {at}, and the joints trust the stock: {} is the most",
                length(off, units),
                length(ROUGH, units)
            ));
        }
    } else if is_jointed {
        let housing = least_housing(project, built, stick);
        let ordered = stick.timber.ordered;
        let inner = Section::new(ordered.breadth - housing, ordered.depth - housing);
        if let Some((under, at)) = worst_cut(look, (index, stick), |found| under(found, inner) - SEEN) {
            look.refuse(format!(
                "{} under the inner size of {} at the {at}",
                length(under + SEEN, units),
                inner.label(units)
            ));
        }
    }
    let least = look.lie.least(index, stick);
    let thin = under(least, stick.timber.sawn);
    if thin > ROUGH + SEEN {
        look.mind(thin.to_inches() * 8.0, format!("{} under size", length(thin, units)));
    }
    let (low, high) = (look.lie.on_stick(index, stick, stick.low), look.lie.on_stick(index, stick, stick.high));
    let taper = (low.breadth - high.breadth).abs().max((low.depth - high.depth).abs());
    if taper > ROUGH + SEEN {
        look.mind(
            taper.to_inches() * 4.0,
            format!("{} smaller at one end: measure at every joint", length(taper, units)),
        );
    }
    if stick.role == Role::Rafter {
        seats(look, project, built, (index, stick));
    }
}

/// How far a section is under another, at its worst side; below nothing where it is over.
fn under(found: Section, wanted: Section) -> Length {
    (wanted.breadth - found.breadth).max(wanted.depth - found.depth)
}

/// How far past what rough stock may be off.
fn off_true(found: Section, sawn: Section) -> Length {
    let off = (found.breadth - sawn.breadth).abs().max((found.depth - sawn.depth).abs());
    if off > ROUGH + SEEN { off } else { Length::ZERO }
}

/// The cut where `fault` is largest and above nothing, with what is cut there.
fn worst_cut(
    look: &Look,
    (index, stick): (usize, &Stick),
    fault: impl Fn(Section) -> Length,
) -> Option<(Length, String)> {
    let cuts = stick.marks.iter().filter(|mark| !matches!(mark.kind, MarkKind::Chamfer | MarkKind::Seat));
    let edges = cuts.flat_map(|mark| [(mark.near, &mark.what), (mark.far.unwrap_or(mark.near), &mark.what)]);
    let found = edges.map(|(at, what)| (fault(look.lie.on_stick(index, stick, at)), what));
    let worst = found.max_by(|a, b| a.0.to_inches().total_cmp(&b.0.to_inches()))?;
    (worst.0 > Length::ZERO).then(|| (worst.0, worst.1.to_string()))
}

/// A rafter keeps its height above the seats; its own depth moves their length.
fn seats(look: &mut Look, project: &Project, built: &Built, (index, stick): (usize, &Stick)) {
    let (rafter, timbers) = (&built.shape.rafter, &project.frame.timbers);
    let supports =
        [(&rafter.ledger, "ledger", timbers.ledger.sawn.breadth), (&rafter.beam, "beam", timbers.beam.sawn.breadth)];
    for (notch, on, wide) in supports {
        let seat = seat_in_depth(rafter, notch, look.lie.on_stick(index, stick, notch.heel_on_top).depth);
        if seat < LEAST_SEAT - SEEN || seat > wide + SEEN {
            look.refuse(format!(
                "its seat on the {on} would be {} long; {} to {} is right",
                length(seat.max(Length::ZERO), project.units),
                length(LEAST_SEAT, project.units),
                length(wide, project.units)
            ));
        }
    }
}

/// Of what length the crown is one part: up to where nobody minds, and from where it is refused (common practice).
const fn crown_limits(role: Role) -> (f64, f64) {
    match role {
        Role::Rafter | Role::Beam | Role::Ledger => (240.0, 120.0),
        Role::Post | Role::Brace => (480.0, 240.0),
        Role::Purlin | Role::Block => (120.0, 60.0),
    }
}

/// The share of a piece's crown that is in one stick out of it: a bow is a flat arc, so it goes with the length squared.
fn crown(look: &mut Look, units: UnitSystem, built: &Built, piece: &Piece, stick: &Stick) {
    let Some(crown) = piece.crown.filter(|crown| *crown > Length::ZERO) else { return };
    if look.lie.length <= Length::ZERO {
        return;
    }
    let long = stick.net_length();
    let own = crown * (long / look.lie.length).min(1.0).powi(2);
    let (fine, most) = crown_limits(stick.role);
    let says = length(own, units);
    if own > long / most {
        look.refuse(format!("bows {says}: more than a {most:.0}th of its length"));
        return;
    }
    let is_outer = stick.role == Role::Rafter && is_outer(stick, built);
    let weight = if is_outer { 3.0 } else { 1.0 };
    let points = (own / (long / fine)) * weight;
    let up = match stick.role {
        Role::Rafter | Role::Beam => format!("crowns {says}: crown up"),
        Role::Ledger => format!("bows {says}: the wall's fixings draw it straight"),
        Role::Purlin | Role::Block => format!("bows {says}: screw it straight"),
        Role::Post | Role::Brace => format!("bows {says}: lay it out from a snapped line"),
    };
    look.mind(points, up);
}

/// The first or the last rafter, whose line is seen against the rake.
pub(super) fn is_outer(stick: &Stick, built: &Built) -> bool {
    let mut rafters = built.sticks.iter().filter(|other| other.role == Role::Rafter).map(|rafter| &rafter.mark);
    let first = rafters.next();
    first == Some(&stick.mark) || rafters.next_back() == Some(&stick.mark)
}

/// Dry to this many percent it moves no more with the rest.
pub(super) const DRY_PERCENT: f64 = 19.0;

fn dry(look: &mut Look, piece: &Piece) {
    if piece.moisture_percent.is_some_and(|wet| wet <= DRY_PERCENT) {
        look.mind(0.5, "dry already: it will not shrink with the rest");
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::super::place::places;
    use super::*;
    use crate::lay_out;
    use crate::project::{Defect, Heart, demo};
    use std::sync::Arc;

    fn barn() -> (Project, Arc<Built>) {
        let project = demo::wool_barn();
        let built = lay_out(&project).built.unwrap();
        (project, built)
    }

    fn at(project: &Project, built: &Built, mark: &str, change: impl FnOnce(&mut Piece)) -> Look {
        let all = places(project, built);
        let place = all.iter().find(|place| place.marks.iter().any(|known| known == mark)).unwrap();
        let mut piece = Piece::as_ordered(place.section, place.stock);
        change(&mut piece);
        look(project, built, &piece, place)
    }

    fn size(breadth: f64, depth: f64) -> Option<Section> {
        Some(Section::new(Length::inches(breadth), Length::inches(depth)))
    }

    fn check(mark: &str, change: impl FnOnce(&mut Piece), refused: &[&str], minds: &[&str]) {
        let (project, built) = barn();
        let found = at(&project, &built, mark, change);
        assert_eq!(found.refused, refused, "{mark}");
        let says: Vec<&str> = found.minds.iter().map(|mind| mind.says.as_str()).collect();
        assert_eq!(says, minds, "{mark}");
    }

    #[test]
    fn as_ordered_it_does_for_every_place() {
        let (project, built) = barn();
        for place in places(&project, &built) {
            let found = look(&project, &built, &Piece::as_ordered(place.section, place.stock), &place);
            assert!(found.refused.is_empty() && found.minds.is_empty(), "{}: {found:?}", place.name);
        }
    }

    /// By hand: P2 is 89 1/2 long, 95 1/2 with 3 docked from each end; K1R and its three fellows 4 · 53.033 and three cuts
    /// of 1/4 are 212.88.
    #[test]
    fn length_is_finished_length_first_then_docking() {
        let long = |inches: f64| move |piece: &mut Piece| piece.real_length = Some(Length::inches(inches));
        check("P2", long(95.5), &[], &[]);
        check("P2", long(92.0), &[], &["only 1 1⁄4″ to dock from each end: look for checks in the ends"]);
        check("P2", long(89.0), &["short by 1⁄2″"], &[]);
        check("P2", long(100.0), &[], &["4″ longer than it need be"]);
        check("K1R", long(212.5), &["short by 3⁄8″"], &[]);
        check("K1R", long(237.0), &[], &[]);
    }

    /// By hand: inner size of an 8x8 is 7 1/2, of an 8x10 beam 9 1/2 deep; over size is cut down to it.
    #[test]
    fn a_stick_is_as_large_as_its_joints_need() {
        let both = |breadth: f64, depth: f64| {
            move |piece: &mut Piece| (piece.near, piece.far) = (size(breadth, depth), size(breadth, depth))
        };
        check("P2", both(7.5, 8.0), &[], &["1⁄2″ under size"]);
        check("P2", both(8.375, 8.125), &[], &[]);
        let (project, built) = barn();
        let found = at(&project, &built, "P2", both(7.375, 8.0));
        assert!(found.refused[0].starts_with("1⁄8″ under the inner size of 7.5x7.5 at the "), "{found:?}");
        let found = at(&project, &built, "B1", both(8.0, 9.375));
        assert!(found.refused[0].starts_with("1⁄8″ under the inner size of 7.5x9.5 at the "), "{found:?}");
        let mut trusted = project.clone();
        trusted.joinery.stock = StockRule::TrueStock;
        let built = lay_out(&trusted).built.unwrap();
        assert!(at(&trusted, &built, "P2", both(8.125, 8.0)).refused.is_empty());
        let found = at(&trusted, &built, "P2", both(8.1875, 8.0));
        assert!(found.refused[0].starts_with("3⁄16″ off its size at the "), "{found:?}");
    }

    /// The far end is under the inner size at once, but only where nothing is cut: between cuts the size goes straight.
    #[test]
    fn only_the_size_at_the_cuts_counts() {
        let (project, built) = barn();
        let stick = built.stick("B1").unwrap();
        let place = places(&project, &built).into_iter().find(|place| place.name == "B1").unwrap();
        let mut piece = Piece::as_ordered(place.section, place.stock);
        (piece.near, piece.far) = (size(8.0, 10.0), size(8.0, 9.0));
        let lie = Lie::new(&piece, &place, &built, false);
        // 216 long, 3 docked: zero lies 3 - low from the near end; 1 in over 216.
        let zero = 3.0 - stick.low.to_inches();
        let depth = lie.on_stick(0, stick, Length::inches(100.0)).depth.to_inches();
        assert!((depth - (10.0 - (zero + 100.0) / 216.0)).abs() < 1e-9, "{depth}");
        let turned = Lie::new(&piece, &place, &built, true);
        assert!(turned.on_stick(0, stick, stick.low).depth < turned.on_stick(0, stick, stick.high).depth);
        assert_eq!(lie.sizes(0, stick).len(), 2);
    }

    /// By hand: 1/4 in of depth is 1.03 in of seat at 3 in 12: 4x8 with 7 1/2 in sits less than 1 1/2 on the ledger.
    #[test]
    fn a_thin_rafter_loses_its_seat() {
        let thin = |piece: &mut Piece| (piece.near, piece.far) = (size(4.0, 7.5), size(4.0, 7.5));
        let (project, built) = barn();
        let found = at(&project, &built, "R5", thin);
        assert!(found.refused.iter().any(|says| says.starts_with("its seat on the ledger would be ")), "{found:?}");
    }

    /// By hand: a rafter L long out of 168 with 1 in of crown has (L/168)² in of it; an outer one minds three times as much.
    #[test]
    fn the_crown_goes_with_the_square_of_the_length() {
        let (project, built) = barn();
        let crowned = |inches: f64| move |piece: &mut Piece| piece.crown = Some(Length::inches(inches));
        let long = built.stick("R5").unwrap().net_length().to_inches();
        let own = (long / 168.0).powi(2);
        let inner = at(&project, &built, "R5", crowned(1.0));
        assert!((inner.points() - own / (long / 240.0)).abs() < 1e-9);
        assert!((at(&project, &built, "R1", crowned(1.0)).points() - inner.points() * 3.0).abs() < 1e-9);
        assert!((at(&project, &built, "R18", crowned(1.0)).points() - inner.points() * 3.0).abs() < 1e-9);
        // A 120th of a rafter's length.
        let most = long / 120.0 / own;
        assert!(at(&project, &built, "R5", crowned(most * 0.999)).refused.is_empty());
        assert_eq!(at(&project, &built, "R5", crowned(most * 1.001)).refused.len(), 1);
        // A brace is a quarter of its piece: a sixteenth of the bow.
        assert!(at(&project, &built, "K1R", crowned(3.0)).refused.is_empty());
        assert!(!at(&project, &built, "P2", crowned(3.0)).refused.is_empty());
    }

    /// The end posts have one brace, those between two.
    #[test]
    fn a_defect_counts_by_what_the_stick_does() {
        let (project, built) = barn();
        let with = |defect: Defect| move |piece: &mut Piece| piece.defects = vec![defect];
        let bars = |mark: &str, defect| !at(&project, &built, mark, with(defect)).refused.is_empty();
        assert!(!bars("P1", Defect::SpiralGrain) && bars("P2", Defect::SpiralGrain) && bars("B2", Defect::SpiralGrain));
        for mark in ["P1", "B1", "K1R", "R3", "L1", "N1a", "X1"] {
            assert!(bars(mark, Defect::Decay), "{mark}");
        }
        assert!(bars("P1", Defect::Shake) && !bars("R3", Defect::Shake));
        // P1 has 6 1/2 in over its finished length, P3 6 in: neither has a foot to dock; X1's piece need not.
        assert!(bars("P1", Defect::EndSplit) && !bars("X1", Defect::EndSplit));
        let points = |mark: &str, defect| at(&project, &built, mark, with(defect)).points();
        assert!(points("R3", Defect::Wane) > points("P1", Defect::Wane));
        assert!(points("B1", Defect::KnotsAtMiddle) > points("P1", Defect::KnotsAtMiddle));
    }

    /// Posts and beams are asked boxed, braces free of heart; rafters as it falls.
    #[test]
    fn the_wrong_heart_is_said_and_the_right_or_an_unknown_one_is_not() {
        let heart = |heart: Heart| move |piece: &mut Piece| piece.heart = heart;
        check("P2", heart(Heart::Boxed), &[], &[]);
        check("P2", heart(Heart::Either), &[], &[]);
        let free = "free of heart, and boxed heart was asked: it cups and bows more as it dries";
        check("P2", heart(Heart::Free), &[], &[free]);
        let boxed = "boxed heart, and free of heart was asked: a brace checks through to its tenons";
        check("K1R", heart(Heart::Boxed), &[], &[boxed]);
        check("K1R", heart(Heart::Free), &[], &[]);
        check("R2", heart(Heart::Boxed), &[], &[]);
    }
}

//! The crown of a stick that carries across: where it is, and how to lay the stick so that it is up.
//!
//! Common practice: a beam piece, a rafter, a ledger and a purlin are laid with their crown up, for the load brings it down; one
//! that bows down to begin with sags further.
use super::knots::{Zone, knot_answer, lays};
use super::stick::Stick;
use crate::materials::Face;
use crate::project::{Knot, Role};
use crate::units::{Length, UnitSystem};

/// What a stick's crown asks.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CrownAnswer {
    /// It is up as the stick lies.
    pub is_up: bool,
    /// What to do, in a sentence or two.
    pub says: String,
}

/// The faces that a stick's crown may be toward; none where it does not matter.
#[must_use]
pub fn crown_faces(stick: &Stick) -> Vec<Face> {
    match stick.role {
        Role::Beam | Role::Rafter | Role::Ledger => stick.faces.iter().map(|(face, _)| *face).collect(),
        Role::Purlin => vec![Face::Top, Face::Underside],
        Role::Post | Role::Brace | Role::Block => Vec::new(),
    }
}

/// What to do with a stick whose crown is toward that face as it lies now: of the ways that bring it up the one that its knots
/// leave.
#[must_use]
pub fn crown_answer(
    stick: &Stick,
    (zones, knots): (&[Zone], &[Knot]),
    crown: Face,
    (units, is_cut): (UnitSystem, bool),
) -> CrownAnswer {
    if crown == Face::Top {
        return CrownAnswer { is_up: true, says: "Its crown is up, as its sheet has it.".to_owned() };
    }
    let where_it_is = format!("Its crown is toward the {}, not up", crown.name());
    let found = knot_answer(stick, zones, knots, Some(crown)).map(|answer| answer.lays).unwrap_or_default();
    let way = found.into_iter().next().or_else(|| lays(stick, &[], &[], Some(crown)).into_iter().next());
    let says = match way.filter(|lay| lay.face_of(stick, crown) == Some(Face::Top)) {
        _ if is_cut => format!("{where_it_is}, and it is cut: look how far it bows before it goes up."),
        _ if stick.role == Role::Purlin => {
            format!("{where_it_is}. Turn it half over before you mark it.")
        }
        Some(lay) => {
            let on_it = Knot { face: crown, from_zero: Length::ZERO, across: Length::ZERO, size: Length::ZERO };
            format!("{where_it_is}. {}.", lay.says(stick, &[on_it]))
        }
        None => format!(
            "{where_it_is}, and no turn of its {} section brings it up: take another stick for {}.",
            stick.timber.sawn.label(units),
            stick.mark
        ),
    };
    CrownAnswer { is_up: false, says }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::project::demo;
    use crate::tickets::clear_zones;

    fn check(mark: &str, crown: Face, is_cut: bool, expected: (bool, &str)) {
        let built = evaluate(&demo::wool_barn()).built.unwrap();
        let answer = crown_answer(built.stick(mark).unwrap(), (&[], &[]), crown, (UnitSystem::Imperial, is_cut));
        assert_eq!((answer.is_up, answer.says.as_str()), expected, "{mark}, {crown:?}");
    }

    #[test]
    fn a_crown_goes_up() {
        for mark in ["B1", "R3", "L1", "N1a"] {
            check(mark, Face::Top, false, (true, "Its crown is up, as its sheet has it."));
        }
        let over = "Its crown is toward the underside, not up. Turn it half over, so that what is now the underside becomes the \
                    top; ends as they are.";
        check("B1", Face::Underside, false, (false, over));
        check("R3", Face::Underside, false, (false, over));
        let purlin = "Its crown is toward the underside, not up. Turn it half over before you mark it.";
        check("N1a", Face::Underside, false, (false, purlin));
        let no_way = "Its crown is toward the wall face, not up, and no turn of its 8x10 section brings it up: take another stick for B1.";
        check("B1", Face::Wall, false, (false, no_way));
        let cut = "Its crown is toward the underside, not up, and it is cut: look how far it bows before it goes up.";
        check("B1", Face::Underside, true, (false, cut));
    }

    /// A square beam is turned a quarter: its outer face up.
    #[test]
    fn a_square_stick_is_turned_a_quarter() {
        let mut project = demo::wool_barn();
        let beam = &mut project.frame.timbers.beam;
        for section in [&mut beam.ordered, &mut beam.sawn] {
            section.breadth = section.depth;
        }
        project.mill.heaviest_pick = crate::units::Weight::pounds(600.0);
        let built = evaluate(&project).built.unwrap();
        let stick = built.stick("B1").unwrap();
        for crown in [Face::Outer, Face::Wall] {
            let answer = crown_answer(stick, (&[], &[]), crown, (UnitSystem::Imperial, false));
            assert!(answer.says.contains("Turn it a quarter") && answer.says.contains("becomes the top"), "{answer:?}");
        }
    }

    /// With a knot that is in the way with its ends as they are, the crown is brought up with its ends swapped; the knots are
    /// then answered only with ways that have the crown up.
    #[test]
    fn crown_and_knots_are_answered_together() {
        let project = demo::wool_barn();
        let built = evaluate(&project).built.unwrap();
        let stick = built.stick("R3").unwrap();
        let zones = clear_zones(&project, &built.shape, stick);
        // Turned half over, the top is where the notches are.
        let heel = zones.iter().find(|zone| zone.what == "beam bird's mouth" && zone.face == Face::Underside).unwrap();
        let at = (heel.along.0 + heel.along.1) / 2.0;
        let knots = [Knot { face: Face::Top, from_zero: at, across: Length::inches(2.0), size: Length::inches(1.0) }];
        let answer = crown_answer(stick, (&zones, &knots), Face::Underside, (UnitSystem::Imperial, false));
        assert!(answer.says.contains("ends swapped"), "{answer:?}");
        let lays = knot_answer(stick, &zones, &knots, Some(Face::Underside)).unwrap().lays;
        assert_eq!(lays.len(), 2);
        assert!(lays.iter().all(|lay| lay.face_of(stick, Face::Underside) == Some(Face::Top)));
    }
}

//! The sticks as wood: what the sheets weigh is what the solids hold, and no two sticks claim the same wood.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

mod drawn_frames;

use drawn_frames::projects;
use outshot::joinery::{StickBody, bodies};
use outshot::project::{BoreWay, Bores, Project, ScarfKind, StockRule, demo};
use outshot::solid::Surface;
use outshot::units::Length;
use outshot::{Built, lay_out};
use proptest::prelude::*;

/// In cubic inches and inches.
const HAIR: f64 = 1e-6;

fn wood(project: &Project) -> Option<Vec<StickBody>> {
    Some(bodies(project, &lay_out(project).built?.shape))
}

/// Volume and balance of the sheets, by closed forms, against the solids with everything cut.
fn check_wood(project: &Project) {
    let Some(built) = lay_out(project).built else { return };
    for body in bodies(project, &built.shape) {
        check_stick(&built, &body);
    }
}

fn check_stick(built: &Built, body: &StickBody) {
    let bulk = built.stick(&body.mark).unwrap().bulk;
    let (found, expected) = (body.volume().to_cubic_inches(), bulk.volume().to_cubic_inches());
    assert!((found - expected).abs() <= HAIR * expected, "{}: {found} in³ is not {expected}", body.mark);
    let off = (body.balance() - bulk.balance()).to_inches();
    assert!(off.abs() <= HAIR, "{} balances {off} in off", body.mark);
}

fn check_nothing_shared(project: &Project) {
    let all = wood(project).unwrap();
    for (index, one) in all.iter().enumerate() {
        for two in &all[index + 1..] {
            let shared = one.wood.shared(&two.wood).volume().to_cubic_inches();
            assert!(shared < HAIR, "{} and {} share {shared} in³", one.mark, two.mark);
        }
    }
}

#[test]
fn the_examples_hold_what_their_sheets_say() {
    for project in [demo::wool_barn(), demo::log_store()] {
        check_wood(&project);
        check_nothing_shared(&project);
    }
}

#[test]
fn every_scarf_closes_without_a_clash() {
    for kind in ScarfKind::ALL {
        let mut project = demo::wool_barn();
        project.frame.scarfs.kind = kind;
        // Half laps are thinner over a pocket: with shorter legs none lies in a lap.
        project.frame.brace_along = Length::inches(24.0);
        project.frame.brace_down = Length::inches(24.0);
        check_nothing_shared(&project);
    }
}

/// Sticks over size are cut down at their joints, or trusted as they are: either way nothing stands in anything else, and
/// the sheets weigh what the solids hold.
#[test]
fn sticks_over_size_fit_by_either_rule() {
    for stock in StockRule::ALL {
        let mut project = demo::wool_barn();
        project.joinery.stock = stock;
        for timber in [&mut project.frame.timbers.post, &mut project.frame.timbers.beam] {
            timber.sawn.breadth = timber.ordered.breadth + Length::inches(0.25);
            timber.sawn.depth = timber.ordered.depth + Length::inches(0.375);
        }
        check_wood(&project);
        check_nothing_shared(&project);
    }
}

/// Bored for bolts and for lag screws with a step in their hole, whole, half in a splice, and cut by a piece's end: the sheets
/// weigh what is left. Screws of a maker take nothing from either.
#[test]
fn a_bored_ledger_holds_what_its_sheets_say() {
    let mut project = demo::wool_barn();
    for (fastener, length) in [("bolt_5_8", 13.0), ("lag_1_2", 6.0), ("makers_own", 8.0)] {
        for (rows, lowest) in [(1, 5.0), (2, 2.125), (3, 2.5), (1, 9.875)] {
            for (first, spacing) in [(0.0, 16.0), (0.2, 48.0), (7.0, 96.0)] {
                let fixings = &mut project.fixings.ledger;
                (fixings.fastener, fixings.length) = (fastener.to_owned(), Length::inches(length));
                (fixings.rows, fixings.lowest) = (rows, Length::inches(lowest));
                project.site.first_wall_post = Length::inches(first);
                project.site.wall_post_spacing = Length::inches(spacing);
                let built = lay_out(&project).built.unwrap();
                for body in bodies(&project, &built.shape).iter().filter(|body| body.mark.starts_with('L')) {
                    check_stick(&built, body);
                }
            }
        }
    }
}

/// Bored for ties, whole and broken out at a foot, a seat's end or a lap face: the sheets weigh what is left.
#[test]
fn sticks_bored_for_ties_hold_what_their_sheets_say() {
    let inches = Length::inches;
    for (first, way) in [(4.0, BoreWay::AlongBeam), (0.5, BoreWay::Outward), (1.0, BoreWay::AlongBeam)] {
        let mut project = demo::wool_barn();
        // A brace's pocket in a hole's way is told, not weighed.
        for post in &mut project.frame.posts {
            (post.brace_left, post.brace_right) = (false, false);
        }
        let fixings = &mut project.fixings;
        for tie in [&mut fixings.rafter_head, &mut fixings.rafter_seat, &mut fixings.scarf, &mut fixings.post_base] {
            tie.count = 3;
            tie.bores = Some(Bores { diameter: inches(0.5), first: inches(first), apart: inches(1.5), way });
        }
        for kind in ScarfKind::ALL {
            project.frame.scarfs.kind = kind;
            check_wood(&project);
        }
    }
}

#[test]
fn curved_braces_fit_like_straight_ones() {
    let mut project = demo::wool_barn();
    project.frame.brace_rise = Length::inches(1.5);
    check_wood(&project);
    check_nothing_shared(&project);
}

/// The wedges of the outside over the centre of each body fill it again: the outside is whole, with nothing twice.
#[test]
fn the_outside_of_every_stick_is_closed() {
    for body in wood(&demo::wool_barn()).unwrap() {
        let apex = body.wood.centre().unwrap();
        let mut volume = 0.0;
        for patch in Surface::of(&body.wood).patches {
            for pair in patch.corners[1..].windows(2) {
                let (a, b, c) = (patch.corners[0] - apex, pair[0] - apex, pair[1] - apex);
                volume += a.dot(b.cross(c)) / 6.0;
            }
        }
        let expected = body.volume().to_cubic_inches();
        assert!((volume - expected).abs() < 1e-4 * expected, "{}: {volume} in³ is not {expected}", body.mark);
    }
}

/// A brace an eighth too long for its pocket is found by the wood it shares with its post.
#[test]
fn wood_claimed_twice_is_found() {
    let project = demo::wool_barn();
    let all = wood(&project).unwrap();
    let (post, brace) = (&all[0], all.iter().find(|body| body.mark == "K1R").unwrap());
    let by = outshot::solid::Vector::new(-Length::inches(0.125), Length::ZERO, Length::ZERO);
    let shared = post.wood.shared(&brace.wood.moved(by)).volume().to_cubic_inches();
    // The nose and the shoulder run in by the eighth over the housing's height and the tenon over its pocket's end.
    assert!(shared > 1.0 && shared < 10.0, "{shared} in³");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn frames_drawn_at_random_hold_what_their_sheets_say(project in projects()) {
        check_wood(&project);
    }
}

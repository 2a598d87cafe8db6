//! Whether it fits: joints in the same wood, the thinnest wood, and whether each stick can get in.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

mod drawn_frames;

use drawn_frames::projects;
use outshot::joinery::{Fit, Leg, bodies, entries, fit, goes_in};
use outshot::project::{MeasuredSize, Project, ScarfKind, ScarfPlace, Side, demo};
use outshot::solid::Vector;
use outshot::units::Length;
use outshot::{Shape, lay_out};
use proptest::prelude::*;

fn shape(project: &Project) -> Shape {
    lay_out(project).built.unwrap().shape.clone()
}

fn fitted(project: &Project) -> Fit {
    fit(project, &shape(project))
}

fn short_legs(kind: ScarfKind) -> Project {
    let mut project = demo::wool_barn();
    project.frame.scarfs.kind = kind;
    project.frame.brace_along = Length::inches(24.0);
    project.frame.brace_down = Length::inches(24.0);
    project
}

/// The thinnest wood of one joint of one stick.
fn check_wood(fit: &Fit, stick: &str, cut: &str, other: &str, expected: f64) {
    let found = fit.near.iter().find(|near| {
        near.stick == stick && (near.cut == cut && near.other == other || near.cut == other && near.other == cut)
    });
    let wood = found.unwrap_or_else(|| panic!("{stick}: {cut} has no wood to {other}")).wood.to_inches();
    assert!((wood - expected).abs() < 0.001, "{stick}: {wood} is not {expected}");
}

#[test]
fn the_examples_fit_and_go_in() {
    for project in [demo::wool_barn(), demo::log_store()] {
        let fit = fitted(&project);
        assert!(fit.clashes.is_empty(), "{:?}", fit.clashes);
        for entry in &fit.entries {
            assert!(entry.stopped.is_none(), "{entry:?}");
        }
        let n_raised = fit.bodies.iter().filter(|body| !body.mark.starts_with('P')).count();
        assert_eq!(fit.entries.len(), n_raised, "every stick but posts has its way in");
    }
}

#[test]
fn every_scarf_goes_in_from_either_side() {
    for kind in ScarfKind::ALL {
        let fit = fitted(&short_legs(kind));
        for entry in fit.entries.iter().filter(|entry| entry.stick.starts_with('B')) {
            assert!(entry.stopped.is_none(), "{kind:?}: {entry:?}");
        }
    }
}

/// Common practice: an 8 in post, ½ in housings: tenons of 2½ in, in mortises ¼ deeper, leave 8 − 2·(½ + 2¾) = 1½ in of
/// web; 3½ in ones meet.
#[test]
fn opposed_tenons_leave_their_web() {
    let mut project = short_legs(ScarfKind::StopSplayedUnderSquinted);
    check_wood(&fitted(&project), "P2", "mortise of K2L", "mortise of K2R", 1.5);
    project.joinery.brace_tenon = Length::inches(3.5);
    let fit = fitted(&project);
    let web = fit.clashes.iter().find(|clash| clash.says.contains("mortise of K2L and mortise of K2R"));
    let web = web.unwrap_or_else(|| panic!("{:?}", fit.clashes));
    assert!(web.says.starts_with("P2: mortise of K2L and mortise of K2R meet in the same wood"), "{}", web.says);
    // Past each other's length the two mortises clear: 24 in legs, 15¼ to 23 in down.
    let moved = web.clears.unwrap().to_inches().abs();
    assert!((moved - 7.735).abs() < 0.01, "{moved}");
}

/// By hand: cheeks 2 to 4 in from the outer face leave 2 in before a post's mortise in the beam, and 8 − 4 = 4 behind it; on
/// a beam that measures 5¼ in there, 1¼, which is under the 1½ of a wall.
#[test]
fn walls_are_those_of_the_real_stick() {
    let mut project = demo::wool_barn();
    check_wood(&fitted(&project), "B1", "mortise of P1", "the outer face", 2.0);
    let (breadth, depth) = (Length::inches(5.25), Length::inches(10.0));
    let measured = MeasuredSize { from_zero: Length::ZERO, breadth, depth };
    project.progress.sizes.insert("B1".to_owned(), vec![measured]);
    let fit = fitted(&project);
    check_wood(&fit, "B1", "mortise of P1", "the wall face", 1.25);
    let says = "B1: only 1 1⁄4″ of wood between mortise of P1 and the wall face; 1 1⁄2″ is the least.";
    assert!(fit.clashes.iter().any(|clash| clash.says == says), "{:?}", fit.clashes);
    // A wall that the real stick has not at all is told too.
    for breadth in [4.0, 3.75] {
        let measured = MeasuredSize { breadth: Length::inches(breadth), ..measured };
        project.progress.sizes.insert("B1".to_owned(), vec![measured]);
        let gone = "B1: only 0″ of wood between mortise of P1 and the wall face; 1 1⁄2″ is the least.";
        let fit = fitted(&project);
        assert!(fit.clashes.iter().any(|clash| clash.says == gone), "{:?}", fit.clashes);
    }
}

/// By hand: the barn's scarf 1 is 40 in long with 2½ in abutments in a 10 in beam: its face falls 1 in 8. Over the mortise
/// that is 3¼ in deep its wood is least at the nose's side.
#[test]
fn the_wood_over_a_pocket_is_that_of_the_lap() {
    let project = demo::wool_barn();
    let shape = shape(&project);
    let scarf = &shape.beam.scarfs[0];
    // Post P2's right face is at 142, its housed line at 141½; the mortise ends 35 in from there.
    let from_root = 141.5 + 35.0 - scarf.low.to_inches();
    let over = 7.5 - from_root / 8.0 - 3.25;
    let square = over / (1.0 + 1.0 / 64.0_f64).sqrt();
    check_wood(&fit(&project, &shape), "B1", "mortise of K2R", "scarf 1, lower lap", square);
    assert!((scarf.judged.as_ref().unwrap().wood_over_pocket.unwrap().to_inches() - square).abs() < 1e-9);
}

/// A scarf put by hand so that the pocket lies in the thin of the lower lap.
#[test]
fn a_pocket_in_the_thin_of_a_lap_is_found() {
    let mut project = demo::wool_barn();
    let place = shape(&project).beam.scarfs[0].place;
    project.frame.scarfs.by_hand =
        vec![ScarfPlace { centre: place.centre - Length::inches(14.0), ..place }, shape(&project).beam.scarfs[1].place];
    let fit = fitted(&project);
    let thin = fit.clashes.iter().find(|clash| clash.stick == "B1" && clash.says.contains("K2R"));
    let thin = thin.unwrap_or_else(|| panic!("{:?}", fit.clashes));
    assert!(thin.says.contains("of wood between") && thin.says.contains("2″ is the least"), "{}", thin.says);
}

/// Common practice: with 36 in legs a 6 in brace takes 27½ to 36 in of the beam's underside from the post; a lap that ends
/// there is refused in words, whatever wood it leaves.
#[test]
fn a_lap_that_ends_over_a_pocket_is_refused() {
    let mut project = demo::wool_barn();
    let places = shape(&project).beam.scarfs.clone();
    let centre = Length::inches(142.0 + 28.0 + 20.0);
    project.frame.scarfs.by_hand = vec![ScarfPlace { centre, lower: Side::Left }, places[1].place];
    let problems = lay_out(&project).problems;
    let found = problems.iter().find(|problem| problem.field == "frame.scarfs.by_hand.0.centre");
    assert!(found.unwrap().says.contains("a tip lies in the way of brace K2R's pocket"), "{problems:?}");
}

/// Common practice: a brace cannot enter once both of its members are fixed.
#[test]
fn a_brace_after_the_beam_is_stopped() {
    let project = demo::wool_barn();
    let all = bodies(&project, &shape(&project));
    let body = |mark: &str| all.iter().find(|body| body.mark == mark).unwrap();
    let out = |x: f64, z: f64| [Leg { back: Vector::inches(x, 0.0, z) }];
    assert_eq!(goes_in(&body("K2R").wood, &out(24.0, 0.0), &[body("P2")]), None);
    let stopped = goes_in(&body("K2R").wood, &out(24.0, 0.0), &[body("P2"), body("B1")]).unwrap();
    assert_eq!(stopped.by, "B1");
    // Nor from below, nor across at 45°, nor sideways.
    for back in [out(0.0, -24.0), out(17.0, -17.0)] {
        assert!(goes_in(&body("K2R").wood, &back, &[body("P2"), body("B1")]).is_some());
    }
    let sideways = [Leg { back: Vector::inches(0.0, 24.0, 0.0) }];
    assert!(goes_in(&body("K2R").wood, &sideways, &[body("P2")]).is_some());
}

/// An under-squinted scarf cannot drop straight down; with its endwise travel it can.
#[test]
fn a_squinted_scarf_needs_its_travel() {
    let project = demo::wool_barn();
    let all = bodies(&project, &shape(&project));
    let body = |mark: &str| all.iter().find(|body| body.mark == mark).unwrap();
    let down = Leg { back: Vector::inches(0.0, 0.0, 24.0) };
    let stopped = goes_in(&body("B2").wood, &[down], &[body("B1")]).unwrap();
    assert_eq!((stopped.by.as_str(), stopped.leg), ("B1", 0));
    let travel = |x: f64| goes_in(&body("B2").wood, &[Leg { back: Vector::inches(x, 0.0, 0.0) }, down], &[body("B1")]);
    assert!(travel(0.25).is_some(), "less than the squint");
    assert_eq!(travel(0.5), None);
    assert!(travel(-0.5).is_some(), "the wrong way");
}

/// Tongues let into slots hold a bladed scarf together up and down: it closes endwise only, by the tongues' length.
#[test]
fn a_bladed_scarf_travels_by_its_tongues() {
    let fit = fitted(&short_legs(ScarfKind::Bladed));
    let body = |mark: &str| fit.body(mark).unwrap();
    let down = Leg { back: Vector::inches(0.0, 0.0, 24.0) };
    let raised: Vec<&str> =
        fit.entries.iter().map(|entry| entry.stick.as_str()).filter(|mark| mark.starts_with('B')).collect();
    let (first, second) = (body(raised[0]), body(raised[1]));
    let out = (second.wood.centre().unwrap().x - first.wood.centre().unwrap().x).signum();
    let travel = |x: f64| goes_in(&second.wood, &[Leg { back: Vector::inches(x * out, 0.0, 0.0) }, down], &[first]);
    assert!(goes_in(&second.wood, &[down], &[first]).is_some());
    assert!(travel(2.75).is_some(), "less than the tongues");
    assert_eq!(travel(3.0), None);
}

/// Both mates cut as upper laps: they claim the same wood, and the second is stopped.
#[test]
fn two_upper_laps_are_found() {
    let project = demo::wool_barn();
    let mut wrong = shape(&project);
    wrong.beam.pieces[0].right = Some((1, false));
    let fit = fit(&project, &wrong);
    assert!(fit.clashes.iter().any(|clash| clash.stick == "B1" && clash.other.as_deref() == Some("B2")));
    assert!(entries(&project, &wrong, &fit.bodies).iter().any(|entry| entry.stopped.is_some()));
}

/// A middle piece that lies on both its squinted neighbours travels from both: one of them leans out with it.
#[test]
fn a_piece_between_two_squints_is_last_and_a_neighbour_leans() {
    let mut project = short_legs(ScarfKind::StopSplayedUnderSquinted);
    let at = |centre: f64, lower: Side| ScarfPlace { centre: Length::inches(centre), lower };
    project.frame.scarfs.by_hand = vec![at(181.0, Side::Left), at(361.0, Side::Right)];
    let fit = fitted(&project);
    let marks = fit.entries.iter().map(|entry| entry.stick.as_str());
    let order: Vec<&str> = marks.filter(|mark| mark.starts_with('B')).collect();
    assert_eq!(order, ["B1", "B3", "B2"]);
    let last = fit.entries.iter().find(|entry| entry.stick == "B2").unwrap();
    assert_eq!(last.stopped, None);
    assert!(last.way.ends_with("B3 and its posts lean out 1 1⁄4″ meanwhile"), "{}", last.way);
    // With B3 fast it cannot: away from one squint is into the other.
    let body = |mark: &str| fit.body(mark).unwrap();
    let way = [Leg { back: Vector::inches(0.625, 0.0, 0.0) }, Leg { back: Vector::inches(0.0, 0.0, 24.0) }];
    assert_eq!(goes_in(&body("B2").wood, &way, &[body("B1")]), None);
    assert!(goes_in(&body("B2").wood, &way, &[body("B3")]).is_some());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(30))]

    /// Places the program proposes keep the wood the rules ask, and leave every stick a way in.
    #[test]
    fn proposed_scarfs_leave_wood_and_go_in(project in projects()) {
        let Some(built) = lay_out(&project).built else { return Ok(()) };
        // Where no division has a way in, the scarf that has none is told.
        let has_way = built.shape.beam.scarfs.iter().all(|scarf| scarf.judged.is_some());
        if !built.shape.beam.is_proposed || !has_way { return Ok(()) }
        let fit = fit(&project, &built.shape);
        let in_lap = fit.clashes.iter().find(|clash| clash.says.contains("lap") && clash.stick.starts_with('B'));
        prop_assert!(in_lap.is_none(), "{in_lap:?}");
        for entry in fit.entries.iter().filter(|entry| entry.stick.starts_with('B')) {
            prop_assert!(entry.stopped.is_none(), "{entry:?}");
        }
    }
}

/// By hand: a lap of 18 in goes between a post and the pocket of its 36 in brace. The brace stands with its post, its tenon in
/// the piece beyond the scarf: square ends let that piece straight down, squinted ones draw it in endwise past the tenon.
#[test]
fn a_brace_across_a_scarf_that_closes_endwise_is_in_the_way() {
    let mut project = demo::wool_barn();
    project.frame.scarfs.lap = Length::inches(18.0);
    project.frame.scarfs.kind = ScarfKind::StopSplayed;
    let places: Vec<ScarfPlace> = shape(&project).beam.scarfs.iter().map(|scarf| scarf.place).collect();
    project.frame.scarfs.by_hand = places.clone();
    assert!(fitted(&project).entries.iter().all(|entry| entry.stopped.is_none()));
    for kind in ScarfKind::ALL.into_iter().filter(|kind| kind.is_squinted() || *kind == ScarfKind::Bladed) {
        project.frame.scarfs.by_hand = places.clone();
        project.frame.scarfs.kind = kind;
        let entries = fitted(&project).entries;
        let stopped = entries.iter().find(|entry| entry.stick == "B1").unwrap().stopped.as_ref();
        assert_eq!(stopped.map(|stopped| stopped.by.as_str()), Some("K2L"), "{kind:?}");
        let problems = lay_out(&project).problems;
        let said = problems.iter().find(|problem| problem.field == "frame.scarfs.by_hand.0.centre").unwrap();
        assert!(said.says.contains("between brace K2L’s post and its pocket"), "{}", said.says);
        // What the program proposes itself has its way in, or is told.
        project.frame.scarfs.by_hand = Vec::new();
        let is_told = lay_out(&project).problems.iter().any(|problem| problem.field == "frame.scarfs.kind");
        assert_eq!(fitted(&project).entries.iter().any(|entry| entry.stopped.is_some()), is_told, "{kind:?}");
    }
}

/// Laps of 18 in on legs of 36 in: every bay's place lies between a brace's post and its pocket. Ends that close endwise get a
/// caution and a frame all the same; plain halves, which are laid straight down, have none.
#[test]
fn a_beam_without_a_place_that_closes_is_still_proposed() {
    let mut project = demo::wool_barn();
    project.frame.scarfs.kind = ScarfKind::HalvedUnderSquinted;
    project.frame.scarfs.lap = Length::inches(18.0);
    project.frame.scarfs.n_pieces = Some(3);
    (project.frame.brace_along, project.frame.brace_down) = (Length::inches(36.0), Length::inches(36.0));
    let told = |project: &Project| {
        let design = lay_out(project);
        assert!(design.built.is_some());
        design.problems.iter().filter(|problem| problem.field == "frame.scarfs.kind").count()
    };
    assert_eq!(told(&project), 2);
    project.frame.scarfs.kind = ScarfKind::Halved;
    assert_eq!(told(&project), 0);
}

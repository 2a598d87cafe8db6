//! Every stick put together from what its sheet prints, and from nothing else, is the stick.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

mod alike;
mod beam;
mod bench;
mod brace;
#[path = "../drawn_frames/mod.rs"]
mod drawn_frames;
mod pocket;
mod post;
mod rafter;
mod rounding;
mod same;
mod sheet;
mod spoiled;

use drawn_frames::projects;
use outshot::design::Built;
use outshot::geometry::LedgerPiece;
use outshot::joinery::bodies;
use outshot::lay_out;
use outshot::project::{BoreWay, Bores, JointException, Project, ScarfKind, StockRule, demo};
use outshot::solid::Solid;
use outshot::tickets::{Face, MarkKind, Role};
use outshot::units::{Length, UnitSystem};
use proptest::prelude::*;
use same::{on_the_bench, thickest_off};
use sheet::{Row, Sheet};

/// What a length rounded to a sixteenth, or to half a millimetre, may be off, with a hair for the sums.
const OFF: f64 = 1.0 / 32.0 + 1e-6;

/// Puts the stick together from its sheet.
fn rebuilt(sheet: &Sheet) -> Solid {
    match sheet.role {
        Role::Post => post::rebuilt(sheet),
        Role::Beam => beam::rebuilt(sheet),
        Role::Brace => brace::rebuilt(sheet),
        Role::Rafter => rafter::rebuilt(sheet),
        Role::Ledger | Role::Block => beam::plain(sheet, Face::Outer),
        Role::Purlin => beam::plain(sheet, Face::Top),
    }
}

/// A hole whose centre lies past a piece's end stands on the sheet of the piece beside it. The drill goes through both, and nicks
/// this one.
fn with_nicks(mut sheet: Sheet, built: &Built, units: UnitSystem) -> Sheet {
    let mark = |piece: &LedgerPiece| format!("L{}", piece.number);
    let Some(own) = built.shape.ledger.iter().find(|piece| mark(piece) == sheet.mark) else { return sheet };
    for beside in built.shape.ledger.iter().filter(|piece| piece.number.abs_diff(own.number) == 1) {
        let shift = (beside.start - own.start).to_inches();
        let printed = Sheet::printed(built.stick(&mark(beside)).unwrap(), units);
        let holes = printed.of_kind(MarkKind::Fixing).filter(|row| row.note.contains("bore "));
        let shifted = holes.map(|row| Row { near: row.near + shift, ..row.clone() });
        let past = |row: &Row| (-row.near).max(row.near - own.length().to_inches());
        sheet.rows.extend(shifted.filter(|row| (0.0..1.0).contains(&past(row))));
    }
    sheet
}

/// No stick of the frame is anywhere off by more than a rounding.
fn check_frame(project: &Project) {
    let Some(built) = lay_out(project).built else { return };
    let sticks = bodies(project, &built.shape);
    assert_eq!(sticks.len(), built.sticks.len());
    let off = sticks.into_iter().filter_map(|body| {
        let stick = built.stick(&body.mark).unwrap();
        let found = rebuilt(&with_nicks(Sheet::printed(stick, project.units), &built, project.units));
        let (thick, place) = thickest_off(&found, &on_the_bench(&body));
        (thick > OFF).then(|| format!("{}: {thick:.4} in {place}", body.mark))
    });
    let off: Vec<String> = off.collect();
    assert!(off.is_empty(), "{off:#?}");
}

#[test]
fn the_sticks_of_the_examples_are_what_their_sheets_print() {
    for project in [demo::wool_barn(), demo::log_store()] {
        assert!(lay_out(&project).built.is_some());
        check_frame(&project);
    }
}

#[test]
fn both_halves_of_every_scarf_are_what_their_sheets_print() {
    for mut project in [demo::wool_barn(), demo::log_store()] {
        project.frame.brace_along = Length::inches(24.0);
        project.frame.brace_down = Length::inches(24.0);
        for kind in ScarfKind::ALL {
            project.frame.scarfs.kind = kind;
            let built = lay_out(&project).built.unwrap();
            assert!(!built.shape.beam.scarfs.is_empty(), "{kind:?} has no scarf to look at");
            check_frame(&project);
        }
    }
}

/// Sticks that came off the saw larger than they were ordered, by as much as a mill's stick may be.
fn over_size(mut project: Project, over: Length) -> Project {
    let timbers = &mut project.frame.timbers;
    for timber in [&mut timbers.post, &mut timbers.beam, &mut timbers.brace, &mut timbers.rafter, &mut timbers.ledger] {
        timber.sawn.breadth = timber.ordered.breadth + over;
        timber.sawn.depth = timber.ordered.depth + over;
    }
    project
}

#[test]
fn sticks_over_size_are_what_their_sheets_print() {
    for (project, over) in [(demo::wool_barn(), Length::inches(0.25)), (demo::log_store(), Length::millimetres(5.0))] {
        for stock in StockRule::ALL {
            let mut project = over_size(project.clone(), over);
            project.joinery.stock = stock;
            assert!(lay_out(&project).built.is_some());
            check_frame(&project);
        }
    }
}

/// A head, both ends of a brace and a scarf that are not by the rules, in true stock and in stock over size.
#[test]
fn joints_of_their_own_are_what_their_sheets_print() {
    let inches = |value: f64| Some(Length::inches(value));
    let head = JointException {
        tenon_thickness: inches(1.5),
        tenon_offset: inches(1.75),
        tenon_length: inches(5.0),
        peg: inches(0.75),
        drawbore: inches(0.0625),
        ..JointException::default()
    };
    let foot = JointException { housing: inches(0.75), tenon_length: inches(2.25), ..JointException::default() };
    let scarf = JointException { scarf_kind: Some(ScarfKind::Halved), ..JointException::default() };
    for over in [0.0, 0.25] {
        let mut project = over_size(demo::wool_barn(), Length::inches(over));
        for (joint, own) in [("P2", &head), ("K2R foot", &foot), ("K3L head", &foot), ("S1", &scarf)] {
            project.exceptions.insert(joint.to_owned(), own.clone());
        }
        assert!(lay_out(&project).built.is_some());
        check_frame(&project);
    }
}

/// Every tie of the frame bored: posts either way, scarfs of every kind, rafters with a hole over the seat and one beside it.
#[test]
fn sticks_bored_for_ties_are_what_their_sheets_print() {
    for mut project in [demo::wool_barn(), demo::log_store()] {
        let row = |first: f64, way: BoreWay| {
            let inches = Length::inches;
            Some(Bores { diameter: inches(0.375), first: inches(first), apart: inches(2.5), way })
        };
        project.fixings.rafter_head.bores = row(0.0, BoreWay::AlongBeam);
        project.fixings.rafter_seat.bores = row(0.5, BoreWay::AlongBeam);
        project.fixings.scarf.bores = row(3.0, BoreWay::AlongBeam);
        (project.fixings.rafter_head.count, project.fixings.rafter_seat.count) = (2, 2);
        (project.fixings.scarf.count, project.fixings.post_base.count) = (2, 2);
        project.frame.brace_along = Length::inches(24.0);
        project.frame.brace_down = Length::inches(24.0);
        for (kind, way) in ScarfKind::ALL.into_iter().zip([BoreWay::AlongBeam, BoreWay::Outward].into_iter().cycle()) {
            project.frame.scarfs.kind = kind;
            project.fixings.post_base.bores = row(4.0, way);
            let built = lay_out(&project).built.unwrap();
            let n_holes = |mark: &str| {
                let all = built.stick(mark).unwrap().marks.iter();
                all.filter(|mark| mark.kind == MarkKind::Fixing && mark.note.contains("bore ")).count()
            };
            assert_eq!([n_holes("P1"), n_holes("B1"), n_holes("R2")], [2, 4, 4]);
            check_frame(&project);
        }
    }
}

/// A post of the wall just past the end of a piece of the ledger, on either side of a splice.
#[test]
fn a_hole_past_the_end_of_a_ledger_piece_nicks_it() {
    let barn = demo::wool_barn();
    let pieces = lay_out(&barn).built.unwrap().shape.ledger.clone();
    for past in [pieces[0].end + Length::inches(0.125), pieces[1].start - Length::inches(0.125)] {
        let mut project = barn.clone();
        project.site.wall_post_spacing = Length::inches(96.0);
        project.fixings.ledger.columns = 1;
        let spaces = (past / project.site.wall_post_spacing).floor();
        project.site.first_wall_post = past - project.site.wall_post_spacing * spaces;
        // Where the splice is must not move with the posts.
        project.frame.ledger_splices =
            pieces[1..].iter().map(|piece| piece.start + project.frame.ledger_lap / 2.0).collect();
        let built = lay_out(&project).built.unwrap();
        assert_eq!(built.shape.ledger[0].end, pieces[0].end);
        check_frame(&project);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 20, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn sticks_of_random_frames_are_what_their_sheets_print(
        project in projects(), is_metric in any::<bool>(), rise in 0.0..2.0_f64, eighths in 0..4_u32, stock in 0..StockRule::ALL.len()
    ) {
        let mut project = over_size(project, Length::inches(0.125) * f64::from(eighths));
        project.joinery.stock = StockRule::ALL[stock];
        project.frame.brace_rise = Length::inches(rise);
        project.units = if is_metric { UnitSystem::Metric } else { UnitSystem::Imperial };
        check_frame(&project);
    }
}

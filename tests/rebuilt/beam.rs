//! Pieces of the beam, of the ledger and of the purlins, and blocks.
use crate::bench::{Bench, ends};
use crate::pocket;
use crate::sheet::{Row, Sheet, check_near};
use outshot::solid::Solid;
use outshot::tickets::{Face, MarkKind, Waste};

/// A piece of the beam.
pub fn rebuilt(sheet: &Sheet) -> Solid {
    let mut bench = Bench::blank(sheet, Face::Outer);
    square_ends(&mut bench);
    let tips = sheet.rows.iter().filter(|row| row.kind == MarkKind::End && row.what.starts_with("scarf "));
    for tip in tips {
        let number = tip.what.split(',').next().unwrap();
        let rows: Vec<&Row> = sheet.rows.iter().filter(|row| row.what.split(',').next() == Some(number)).collect();
        lap(&mut bench, tip, &rows);
    }
    let is_recess = |row: &&Row| matches!(row.kind, MarkKind::Housing | MarkKind::Mortise);
    for row in sheet.rows.iter().filter(is_recess).filter(|row| !pocket::is_pocket(row)) {
        bench.recess(row);
        if row.kind == MarkKind::Housing {
            row.agrees("leave ", sheet.wide - row.depth.unwrap());
        }
    }
    pocket::cut_all(&mut bench, sheet);
    bench.bore_all();
    bench.drill_all();
    bench.chamfer_all();
    bench.wood
}

/// What is only cut off square, but for its splices: a piece of the ledger, a purlin, a block.
pub fn plain(sheet: &Sheet, front: Face) -> Solid {
    let mut bench = Bench::blank(sheet, front);
    square_ends(&mut bench);
    for row in sheet.of_kind(MarkKind::Housing) {
        bench.recess(row);
    }
    bench.drill_all();
    bench.wood
}

/// The free ends, of which one line is all there is.
fn square_ends(bench: &mut Bench) {
    for row in bench.sheet.of_kind(MarkKind::End).filter(|row| row.across.is_none()) {
        bench.cross_cut(row.near, row.near, row.waste == Waste::Before);
    }
}

/// Everything of a piece's end that is not its half of the scarf goes.
fn lap(bench: &mut Bench, tip: &Row, rows: &[&Row]) {
    let (_, _, from) = tip.across.unwrap();
    let find = |what: &str| rows.iter().find(|row| row.what.contains(what)).copied();
    // Along the stick, and across from the face whose wood stays.
    let mut line = match find("floor of the slot") {
        Some(slot) => bladed(tip, slot, find("shoulder at the tip").unwrap(), find("root").unwrap(), bench.sheet.wide),
        None => splayed(tip, find("root").unwrap(), find("step of the table"), from, bench.sheet.wide),
    };
    let (low, high) = ends(bench.sheet);
    let past = if tip.waste == Waste::Before { low - 1.0 } else { high + 1.0 };
    line.extend([(past, bench.sheet.wide), (past, 0.0)]);
    let outline: Vec<(f64, f64)> = line.into_iter().map(|(x, across)| (x, bench.from(from, across))).collect();
    bench.saw(&outline);
}

/// Abutments at the tip and at the root, and the lap face between them.
fn splayed(tip: &Row, root: &Row, step: Option<&Row>, from: Face, wide: f64) -> Vec<(f64, f64)> {
    // Where the abutment leans, the note says both its ends.
    let outside = |row: &Row| row.said("at the lap face, ").unwrap_or(row.near);
    assert_eq!(tip.edges().0, 0.0, "an abutment runs out at its face");
    check_near(&root.what, root.edges().1, wide);
    let mut line = vec![(outside(tip), 0.0), (tip.near, tip.edges().1)];
    if let Some(step) = step {
        let root_side = step.must_say(&format!("from the {}: ", from.name()));
        let tip_side = step.must_say("on the root's side, ");
        assert_eq!(step.edges(), (root_side.min(tip_side), root_side.max(tip_side)));
        line.extend([(step.near, tip_side), (step.near, root_side)]);
    }
    line.extend([(root.near, root.edges().0), (outside(root), wide)]);
    line
}

/// A tongue at the tip, a slot for the other piece's at the root.
fn bladed(tongue: &Row, slot: &Row, shoulder: &Row, root: &Row, wide: f64) -> Vec<(f64, f64)> {
    let (quarter, half) = tongue.edges();
    let (floor, roof) = slot.edges();
    assert_eq!((half, shoulder.edges(), root.edges().0), (floor, (0.0, quarter), roof), "one line from face to face");
    check_near(&root.what, root.edges().1, wide);
    vec![
        (shoulder.near, 0.0),
        (shoulder.near, quarter),
        (tongue.near, quarter),
        (tongue.near, half),
        (slot.near, floor),
        (slot.near, roof),
        (root.near, root.edges().0),
        (root.near, wide),
    ]
}

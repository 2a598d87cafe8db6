//! Posts.
use crate::bench::{Bench, ends};
use crate::pocket;
use crate::sheet::{Row, Sheet};
use outshot::solid::Solid;
use outshot::tickets::{Face, MarkKind};

pub fn rebuilt(sheet: &Sheet) -> Solid {
    let mut bench = Bench::blank(sheet, Face::Outer);
    let foot = sheet.row("foot, square all round").near;
    bench.cross_cut(foot, foot, false);
    tenon(&mut bench, sheet);
    let is_recess = |row: &&Row| matches!(row.kind, MarkKind::Housing | MarkKind::Mortise);
    for row in sheet.rows.iter().filter(is_recess).filter(|row| !pocket::is_pocket(row)) {
        bench.recess(row);
    }
    pocket::cut_all(&mut bench, sheet);
    bench.bore_all();
    bench.drill_all();
    bench.chamfer_all();
    bench.wood
}

/// Above the shoulder only the wood between the cheeks stays, as long and as wide as the sheet says.
fn tenon(bench: &mut Bench, sheet: &Sheet) {
    let (cheeks, width) = (sheet.row("tenon cheeks"), sheet.row("tenon width"));
    let (end, shoulder) = cheeks.along();
    assert_eq!(cheeks.along(), width.along(), "a tenon is as long on both faces");
    assert_eq!(shoulder, sheet.row("top shoulder").near);
    for peg in sheet.rows.iter().filter(|row| row.what.starts_with("tenon peg")) {
        peg.agrees("tenon hole ", shoulder - peg.near);
    }
    let (y, z) = (bench.across(cheeks), bench.across(width));
    let (thick, wide) = (sheet.thick, sheet.wide);
    bench.cross_cut(end, end, true);
    let up = (ends(sheet).0, shoulder);
    for (y, z) in [
        ((0.0, y.0), (0.0, wide)),
        ((y.1, thick), (0.0, wide)),
        ((0.0, thick), (0.0, z.0)),
        ((0.0, thick), (z.1, wide)),
    ] {
        bench.boxed(up, y, z);
    }
}

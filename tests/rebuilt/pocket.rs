//! The pocket of a brace, in a post's side or in the beam's underside.
use crate::bench::Bench;
use crate::sheet::{Row, Sheet};
use outshot::tickets::MarkKind;

/// A housing that a brace enters says which of its edges is the nose.
pub fn is_pocket(row: &Row) -> bool {
    row.kind == MarkKind::Housing && row.note.contains("edge is the nose")
}

/// Housing and mortise of every pocket of the sheet.
pub fn cut_all(bench: &mut Bench, sheet: &Sheet) {
    for row in sheet.rows.iter().filter(|row| is_pocket(row)) {
        housing(bench, row);
        let is_its = |other: &&Row| other.kind == MarkKind::Mortise && other.mate == row.mate;
        let mortise = sheet.rows.iter().find(is_its).unwrap();
        mortise.agrees("depth from the face; ", mortise.depth.unwrap() - row.depth.unwrap());
    }
}

/// Both ends of a housing lean: at the nose, and with the brace's short edge.
fn housing(bench: &mut Bench, row: &Row) {
    let (near, far) = row.along();
    let is_far = row.note.contains("the far edge is the nose");
    let (corner, nose) = if is_far { (near, far) } else { (far, near) };
    let z = |deep: f64| bench.from(row.face, deep);
    let deep = row.depth.unwrap();
    row.agrees("floor ", z(deep));
    let mut outline = vec![(corner, z(0.0)), (nose, z(0.0))];
    if let Some(above) = row.said("square in to ") {
        outline.push((nose, z(deep - above)));
    }
    outline.push((row.must_say("slopes in to "), z(deep)));
    outline.push((row.must_say("from the other edge to "), z(deep)));
    let across = bench.across(row);
    bench.cut(&crate::bench::plate(&outline, across));
}

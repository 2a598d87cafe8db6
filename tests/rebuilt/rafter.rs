//! Rafters.
use crate::bench::Bench;
use crate::sheet::{Row, Sheet};
use outshot::solid::Solid;
use outshot::tickets::{Face, MarkKind};

pub fn rebuilt(sheet: &Sheet) -> Solid {
    let mut bench = Bench::blank(sheet, Face::Left);
    for (what, is_low_end) in [("wall end", true), ("tail end", false)] {
        let on = |face: Face| sheet.rows.iter().find(|row| row.what == what && row.face == face).unwrap().near;
        bench.cross_cut(on(Face::Top), on(Face::Underside), is_low_end);
    }
    let slope = slope(sheet.row("wall end"));
    for row in sheet.of_kind(MarkKind::Housing) {
        birds_mouth(&mut bench, row, slope);
    }
    bench.wood
}

/// The pitch as the square is set: rise over run.
fn slope(row: &Row) -> f64 {
    let (rise, run) = row.note.strip_prefix("plumb: ").unwrap().split_once(" in ").unwrap();
    let parts = rise.split([' ', '⁄']).map(|part| part.parse::<f64>().unwrap()).collect::<Vec<_>>();
    let rise = match parts[..] {
        [whole] => whole,
        [above, below] => above / below,
        [whole, above, below] => whole + above / below,
        _ => panic!("{rise} is no rise"),
    };
    rise / run.parse::<f64>().unwrap()
}

/// From the two marks on the underside: the heel plumb, the seat level, to where they meet.
fn birds_mouth(bench: &mut Bench, row: &Row, slope: f64) {
    let (seat_end, heel) = row.along();
    let wide = bench.sheet.wide;
    // On the rafter's own axes a plumb line goes back `slope` for one across, a level one `1/slope` forward.
    let up = (heel - seat_end) / (slope + 1.0 / slope);
    bench.saw(&[(seat_end, wide), (seat_end + up / slope, wide - up), (heel, wide)]);
    check_words(row, up, slope);
}

/// The seat, the heel and the depth in the note are the same notch, as far as they are rounded.
fn check_words(row: &Row, up: f64, slope: f64) {
    let level = up * slope.hypot(1.0) / slope;
    for (words, found) in [("seat ", level), ("level, heel ", level * slope), ("plumb, ", up)] {
        let off = row.must_say(words) - found;
        assert!(off.abs() <= 1.5 / 16.0, "{}: {words}{found} is said {off} otherwise", row.what);
    }
}

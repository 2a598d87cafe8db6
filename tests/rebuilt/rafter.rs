//! Rafters.
use crate::bench::Bench;
use crate::sheet::{Row, Sheet, check_near};
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
    bench.drill_all();
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
    // What else the sheet says of it.
    let level = up * slope.hypot(1.0) / slope;
    row.agrees("seat ", level);
    row.agrees("level, heel ", level * slope);
    row.agrees("plumb, ", up);
    check_near(&row.what, row.depth.unwrap(), up);
    let on = row.what.split(' ').next().unwrap();
    let on_top = |underside: f64| underside - wide * slope;
    let (heel_line, seat_line) = (bench.sheet.row(&format!("{on} heel")), bench.sheet.row(&format!("{on} seat end")));
    check_near(&heel_line.what, heel_line.near, on_top(heel));
    check_near(&seat_line.what, seat_line.near, on_top(seat_end));
    heel_line.agrees("measure ", (wide - up) * slope.hypot(1.0));
}

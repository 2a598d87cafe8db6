//! Prints a piece of tape and the wood beside it as SVG. Pens and colours are the style sheet's.
use super::hatch::hatch;
use super::svg::escape;
use super::tape::{Graduation, HALF_WIDTH, Rank, Tape, TapePiece};
use std::fmt::Write;

/// Height of the wood above the tape's edge, and of the tape, px.
const WOOD: f64 = 58.0;
const TAPE: f64 = 84.0;
/// Baseline of the numbers, px below the edge of the tape.
const NUMBERS: f64 = 64.0;
/// Width of one figure of a number, px.
const FIGURE_WIDTH: f64 = 11.5;
/// Numbers nearer to each other than this are drawn smaller, px: three figures must not run into the next three.
const CLOSE: f64 = 40.0;
/// The crow's foot: how wide and how tall, px.
const CROWS_FOOT: (f64, f64) = (11.0, 36.0);
/// A waste narrower than this has no room for a cross, px.
const CROSS_ROOM: f64 = 18.0;
/// Spacing of hatch lines, px.
const HATCH: f64 = 8.0;

/// Length of a stroke, px.
const fn stroke(rank: Rank) -> f64 {
    match rank {
        Rank::Finest => 13.0,
        Rank::Eighth => 19.0,
        Rank::Quarter => 26.0,
        Rank::Half => 34.0,
        Rank::Whole => 43.0,
    }
}

const fn class(rank: Rank) -> &'static str {
    match rank {
        Rank::Finest => "finest",
        Rank::Eighth => "eighth",
        Rank::Quarter => "quarter",
        Rank::Half => "half",
        Rank::Whole => "whole",
    }
}

pub(super) fn print(tape: &Tape, title: &str) -> String {
    let (left, width, height) = (-HALF_WIDTH, HALF_WIDTH * 2.0, WOOD + TAPE);
    let mut out = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"{class}\" viewBox=\"{left} {top} {width} {height}\" width=\"{width}\" \
         height=\"{height}\" role=\"img\" aria-label=\"{title}\">",
        class = if tape.between_numbers < CLOSE { "tape tape--close" } else { "tape" },
        top = -WOOD,
        title = escape(title)
    );
    for piece in &tape.pieces {
        wood(&mut out, piece);
        blade(&mut out, piece);
        crows_feet(&mut out, piece);
    }
    if let [left, right] = tape.pieces.as_slice() {
        torn(&mut out, left.seen.1);
        torn(&mut out, right.seen.0);
    }
    out.push_str("</svg>");
    out
}

fn rectangle(out: &mut String, class: &str, (from, to): (f64, f64), (top, bottom): (f64, f64)) {
    let _ = write!(
        out,
        "<rect class=\"{class}\" x=\"{from:.2}\" y=\"{top:.2}\" width=\"{:.2}\" height=\"{:.2}\"/>",
        to - from,
        bottom - top
    );
}

fn hatched(out: &mut String, (from, to): (f64, f64)) {
    let mut lines = String::new();
    for ((ax, ay), (bx, by)) in hatch(&[(from, -WOOD), (to, -WOOD), (to, 0.0), (from, 0.0)], HATCH) {
        let _ = write!(lines, "M{ax:.1} {ay:.1}L{bx:.1} {by:.1}");
    }
    let _ = write!(out, "<path class=\"tape__hatch\" d=\"{lines}\"/>");
}

fn wood(out: &mut String, piece: &TapePiece) {
    rectangle(out, "tape__rough", piece.seen, (-WOOD, 0.0));
    rectangle(out, "tape__wood", piece.stick, (-WOOD, 0.0));
    for y in [-WOOD * 0.3, -WOOD * 0.62] {
        let _ = write!(
            out,
            "<path class=\"tape__grain\" d=\"M{:.1} {y:.1}Q{:.1} {:.1} {:.1} {y:.1}\"/>",
            piece.stick.0,
            (piece.stick.0 + piece.stick.1) / 2.0,
            y - 7.0,
            piece.stick.1
        );
    }
    if let Some((from, to)) = piece.waste {
        hatched(out, (from, to));
        // Near the line, where the pencil puts it, not in the middle of all that goes.
        let reach = 30.0;
        let at = match (piece.crows_feet.contains(&from), piece.crows_feet.contains(&to)) {
            (true, false) => (from + reach).min((from + to) / 2.0),
            (false, true) => (to - reach).max((from + to) / 2.0),
            _ => (from + to) / 2.0,
        };
        if to - from >= CROSS_ROOM {
            cross(out, at);
        }
    }
    if let Some((from, to)) = piece.seat {
        let _ = write!(
            out,
            "<path class=\"tape__seat\" d=\"M{from:.1} {:.1}L{to:.1} 0M{from:.1} 0L{to:.1} {:.1}\"/>",
            -WOOD, -WOOD
        );
    }
}

fn cross(out: &mut String, x: f64) {
    let (y, arm) = (-WOOD / 2.0, 9.0);
    for class in ["tape__cross-ground", "tape__cross"] {
        let _ = write!(
            out,
            "<path class=\"{class}\" d=\"M{:.1} {:.1}l{d:.1} {d:.1}M{:.1} {:.1}l{d:.1} -{d:.1}\"/>",
            x - arm,
            y - arm,
            x - arm,
            y + arm,
            d = arm * 2.0
        );
    }
}

/// It has a number, and the torn edge does not run through it.
fn has_room(piece: &TapePiece, graduation: &Graduation) -> bool {
    let half = FIGURE_WIDTH * graduation.says.chars().count() as f64 / 2.0;
    let whole = |edge: f64| edge.abs() >= HALF_WIDTH || (graduation.at - edge).abs() > half;
    !graduation.says.is_empty() && whole(piece.seen.0) && whole(piece.seen.1)
}

fn blade(out: &mut String, piece: &TapePiece) {
    rectangle(out, "tape__blade", piece.tape, (0.0, TAPE));
    for rank in Rank::ALL {
        let mut lines = String::new();
        for graduation in piece.graduations.iter().filter(|graduation| graduation.rank == rank) {
            let _ = write!(lines, "M{:.2} 0v{}", graduation.at, stroke(rank));
        }
        let _ = write!(out, "<path class=\"tape__stroke tape__stroke--{}\" d=\"{lines}\"/>", class(rank));
    }
    for graduation in piece.graduations.iter().filter(|graduation| has_room(piece, graduation)) {
        let x = graduation.at;
        let _ = write!(
            out,
            "<text class=\"tape__number\" x=\"{x:.2}\" y=\"{NUMBERS}\" text-anchor=\"middle\">{}</text>",
            graduation.says
        );
        if !graduation.full.is_empty() {
            let half = 5.0 + 3.6 * graduation.full.chars().count() as f64;
            rectangle(out, "tape__flag", (x - half, x + half), (TAPE - 17.0, TAPE));
            let _ = write!(
                out,
                "<text class=\"tape__full\" x=\"{x:.2}\" y=\"{:.1}\" text-anchor=\"middle\">{}</text>",
                TAPE - 4.0,
                graduation.full
            );
        }
    }
    if let Some(zero) = piece.hook {
        rectangle(out, "tape__hook", (zero - 2.0, zero + 2.0), (-8.0, TAPE));
    }
}

/// Two strokes that meet at the edge of the tape, and a hair line down to read it by.
fn crows_feet(out: &mut String, piece: &TapePiece) {
    let (half, tall) = CROWS_FOOT;
    for x in &piece.crows_feet {
        let _ = write!(
            out,
            "<path class=\"tape__crow\" d=\"M{:.2} {:.1}L{x:.2} 0L{:.2} {:.1}\"/><path class=\"tape__hair\" d=\"M{x:.2} 0v{}\"/>",
            x - half,
            -tall,
            x + half,
            -tall,
            stroke(Rank::Whole) + 4.0
        );
    }
}

/// The torn edge between two pieces.
fn torn(out: &mut String, x: f64) {
    let mut line = format!("M{x:.1} {:.1}", -WOOD);
    let teeth = 10;
    for tooth in 1..=teeth {
        let shift = if tooth % 2 == 0 { 0.0 } else { 4.0 };
        let y = -WOOD + (WOOD + TAPE) * f64::from(tooth) / f64::from(teeth);
        let _ = write!(line, "L{:.1} {y:.1}", x + shift);
    }
    let _ = write!(out, "<path class=\"tape__torn\" d=\"{line}\"/>");
}

//! Positions checked by hand: picture place = place of the middle + (value − middle) × scale.
use super::*;
use crate::evaluate;
use crate::project::demo;
use crate::tickets::Face;

/// A real stick of the demo frame, for its ends, and a mark on it.
#[allow(clippy::unwrap_used, reason = "a test stops where the demo has no beam")]
fn drawn(near: f64, far: Option<f64>, waste: Waste, units: UnitSystem) -> (Stick, Tape) {
    let stick = evaluate(&demo::wool_barn()).built.unwrap().stick("B1").unwrap().clone();
    let mut mark = Mark::line("mark", Face::Top, Length::inches(near), MarkKind::Line).waste(waste);
    mark.far = far.map(Length::inches);
    let tape = Tape::of(&stick, &mark, units);
    (stick, tape)
}

fn close(found: f64, expected: f64) {
    assert!((found - expected).abs() < 1e-6, "{found} is not {expected}");
}

#[allow(clippy::unwrap_used, reason = "a number that is not on the tape fails the test")]
fn number(piece: &TapePiece, says: &str) -> Graduation {
    piece.graduations.iter().find(|stroke| stroke.says == says).cloned().unwrap()
}

#[test]
fn the_crows_foot_stands_at_the_value_and_the_strokes_around_it() {
    // 134 9/32 in lies midway between two sixteenths.
    let (_, tape) = drawn(134.28125, None, Waste::None, UnitSystem::Imperial);
    let piece = &tape.pieces[0];
    assert_eq!((tape.pieces.len(), tape.pixels_per_inch), (1, 48.0));
    close(piece.crows_feet[0], 0.0);
    close(number(piece, "134").at, -0.28125 * 48.0);
    close(number(piece, "135").at, 0.71875 * 48.0);
    let nearest = piece.graduations.iter().map(|stroke| stroke.at.abs()).fold(f64::INFINITY, f64::min);
    close(nearest, 48.0 / 32.0);
    // 132 in is the eleventh foot.
    assert_eq!(number(piece, "132").full, "11′");
    assert_eq!(number(piece, "134").full, "");
    // Fourteen inches are drawn, sixteen strokes in each.
    assert_eq!(piece.graduations.len(), 14 * 16);
    assert!(piece.graduations.windows(2).all(|pair| (pair[1].at - pair[0].at - 3.0).abs() < 1e-6));
}

#[test]
fn strokes_have_the_lengths_of_a_tape() {
    let (_, tape) = drawn(134.0, None, Waste::None, UnitSystem::Imperial);
    let of = |rank: Rank| {
        let within = |stroke: &&Graduation| (0.0..48.0 - 1e-6).contains(&stroke.at) && stroke.rank == rank;
        tape.pieces[0].graduations.iter().filter(within).count()
    };
    assert_eq!(Rank::ALL.map(of), [8, 4, 2, 1, 1]);
}

#[test]
fn both_edges_on_one_piece_where_they_fit() {
    let (_, tape) = drawn(134.0, Some(142.0), Waste::Between, UnitSystem::Imperial);
    let piece = &tape.pieces[0];
    assert_eq!((tape.pieces.len(), tape.pixels_per_inch), (1, 32.0));
    // Three figures of each number need more than the 32 px to the next one.
    assert!(tape.print("").contains("tape--close"));
    assert_eq!(piece.crows_feet, [-128.0, 128.0]);
    assert_eq!(piece.waste, Some((-128.0, 128.0)));
    close(number(piece, "138").at, 0.0);
}

#[test]
fn far_edges_get_a_piece_each() {
    let (_, tape) = drawn(6.0, Some(196.0), Waste::None, UnitSystem::Imperial);
    let places: Vec<f64> = tape.pieces.iter().flat_map(|piece| piece.crows_feet.clone()).collect();
    assert_eq!(places, [-OWN_PIECE, OWN_PIECE]);
    close(number(&tape.pieces[0], "6").at, -OWN_PIECE);
    close(number(&tape.pieces[1], "196").at, OWN_PIECE);
}

#[test]
fn metric_in_millimetres_with_numbers_in_centimetres() {
    // 1001 mm: the metre stands one millimetre, 3 px, to the left.
    let (_, tape) = drawn(1001.0 / 25.4, None, Waste::None, UnitSystem::Metric);
    let metre = number(&tape.pieces[0], "100");
    close(metre.at, -3.0);
    assert_eq!(metre.full, "1 m");
    close(number(&tape.pieces[0], "101").at, 27.0);
    close(tape.between_numbers, 30.0);
}

#[test]
fn numbers_that_would_touch_are_left_out_but_every_fifth() {
    // 100 mm apart: drawn at 2.5 px a millimetre, 25 px from number to number.
    let (_, tape) = drawn(1357.0 / 25.4, Some(1457.0 / 25.4), Waste::None, UnitSystem::Metric);
    let says: Vec<&str> = tape.pieces[0].graduations.iter().map(|stroke| stroke.says.as_str()).collect();
    assert!(says.contains(&"140") && says.contains(&"145"));
    assert!(!says.contains(&"141"));
}

#[test]
fn the_tape_begins_at_zero_and_runs_toward_the_mark() {
    let (stick, tape) = drawn(0.0, None, Waste::Before, UnitSystem::Imperial);
    let piece = &tape.pieces[0];
    assert_eq!((piece.tape.0, piece.hook), (0.0, Some(0.0)));
    assert_eq!(piece.graduations[0].says, "0");
    assert_eq!(piece.waste, Some((-HALF_WIDTH, 0.0)));
    close(piece.stick.0, stick.low.to_inches() * 48.0);
    // Up from zero, to the left: the numbers grow away from zero.
    let (_, tape) = drawn(-4.0, Some(0.0), Waste::None, UnitSystem::Imperial);
    let piece = &tape.pieces[0];
    assert_eq!((piece.tape.1, piece.hook), (96.0, Some(96.0)));
    close(number(piece, "4").at, -96.0);
    close(number(piece, "0").at, 96.0);
}

#[test]
fn the_print_has_every_number_and_no_more() {
    let (_, tape) = drawn(134.25, None, Waste::After, UnitSystem::Imperial);
    let svg = tape.print("134 1⁄4″ <on> the tape");
    assert!(svg.contains("aria-label=\"134 1⁄4″ &lt;on&gt; the tape\""));
    for inch in 128..=141 {
        assert_eq!(svg.matches(&format!(">{inch}</text>")).count(), 1, "{inch}");
    }
    assert!(!svg.contains("style="));
}

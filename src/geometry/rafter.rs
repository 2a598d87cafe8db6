//! The rafter's side outline: head, two bird's mouths, tail.
//!
//! Stick coordinates: x along the top edge, downhill positive, zero at the plumb line of the ledger heel;
//! y square down from the top edge into the wood.
//!
//! ```text
//!  head        zero                          tail
//!   /-----------+-----------------------------/   top edge, y = 0
//!  /   h_L      |          h_B |             /
//! /____/‾‾‾‾‾|_________/‾‾‾‾‾|_____________/      underside, y = d
//! ```
//! A plumb line through x on the top edge meets the underside at x + d·tan θ. The seat's inner end is
//! where the underside reaches seat height; the heel is plumb at the support's outer face.
use super::plane::{Point, Polygon};
use super::roof_line::RoofLine;
use crate::project::{Frame, Problem, TailCut};
use crate::units::{Length, Run, Slope, SlopeLength};

/// One bird's mouth, in stick coordinates.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BirdsMouth {
    /// Plumb line of the heel on the top edge.
    pub heel_on_top: Length,
    /// Inner corner of the notch.
    pub corner: Point,
    /// Where the heel meets the underside.
    pub heel_below: Point,
    /// Where the seat meets the underside.
    pub seat_end: Point,
    /// Level length of the seat.
    pub seat: Length,
    /// Seat to the top edge, plumb at the heel.
    pub height_above_seat: Length,
    /// Depth of the notch square to the rafter, s·sin θ.
    pub notch_depth: Length,
    /// Height of the heel, s·tan θ.
    pub heel_height: Length,
}

impl BirdsMouth {
    /// A notch whose heel is plumb under `heel_on_top`, with a level seat of length `seat`, in a rafter
    /// of depth `depth`.
    #[must_use]
    pub fn new(heel_on_top: Length, seat: Length, depth: Length, pitch: Slope) -> Self {
        let height_above_seat = depth / pitch.cos() - seat * pitch.tan();
        let shift = depth * pitch.tan();
        Self {
            heel_on_top,
            corner: Point::new(heel_on_top + height_above_seat * pitch.sin(), height_above_seat * pitch.cos()),
            heel_below: Point::new(heel_on_top + shift, depth),
            seat_end: Point::new(heel_on_top - seat / pitch.cos() + shift, depth),
            seat,
            height_above_seat,
            notch_depth: seat * pitch.sin(),
            heel_height: seat * pitch.tan(),
        }
    }
}

/// The outline every rafter of the frame shares.
#[derive(Clone, Debug, PartialEq)]
pub struct RafterShape {
    /// Depth square to the slope.
    pub depth: Length,
    /// Roof slope.
    pub pitch: Slope,
    /// Head cut: on the top edge, and on the underside.
    pub head: (Point, Point),
    /// Tail cut: on the top edge, and on the underside.
    pub tail: (Point, Point),
    /// Cut of the tail.
    pub tail_cut: TailCut,
    /// The notch on the ledger.
    pub ledger: BirdsMouth,
    /// The notch on the beam.
    pub beam: BirdsMouth,
}

impl RafterShape {
    /// The rafter of this frame.
    #[must_use]
    pub fn new(frame: &Frame, line: &RoofLine) -> Self {
        let depth = frame.timbers.rafter.sawn.depth;
        let pitch = line.pitch;
        let on_top = |y: Length| Run::of(y - line.ledger_heel).along(pitch).length();
        let shift = depth * pitch.tan();
        let head = on_top(frame.wall_gap);
        let tail = on_top(line.beam_heel + frame.tail);
        let tail_below = match frame.tail_cut {
            TailCut::Plumb => tail + shift,
            TailCut::Square => tail,
        };
        Self {
            depth,
            pitch,
            head: (Point::new(head, Length::ZERO), Point::new(head + shift, depth)),
            tail: (Point::new(tail, Length::ZERO), Point::new(tail_below, depth)),
            tail_cut: frame.tail_cut,
            ledger: BirdsMouth::new(Length::ZERO, frame.ledger_seat_length, depth, pitch),
            beam: BirdsMouth::new(on_top(line.beam_heel), frame.beam_seat_length, depth, pitch),
        }
    }

    /// A point of the stick in the section: x out from the wall face, y above the datum.
    #[must_use]
    pub fn place(&self, line: &RoofLine, point: Point) -> Point {
        let (sin, cos) = (self.pitch.sin(), self.pitch.cos());
        Point::new(
            line.ledger_heel + point.x * cos - point.y * sin,
            line.top_edge(line.ledger_heel) - point.x * sin - point.y * cos,
        )
    }

    /// Length of the top edge.
    #[must_use]
    pub fn top_edge(&self) -> SlopeLength {
        SlopeLength::of(self.tail.0.x - self.head.0.x)
    }

    /// Shortest stock it comes out of.
    #[must_use]
    pub fn length(&self) -> Length {
        let (low, high) = self.outline().bounds();
        high.x - low.x
    }

    /// The outline, clockwise from the head's top corner.
    #[must_use]
    pub fn outline(&self) -> Polygon {
        Polygon::new(vec![
            self.head.0,
            self.tail.0,
            self.tail.1,
            self.beam.heel_below,
            self.beam.corner,
            self.beam.seat_end,
            self.ledger.heel_below,
            self.ledger.corner,
            self.ledger.seat_end,
            self.head.1,
        ])
    }
}

/// The frame's rafter, where it has room for its two bird's mouths and its tail.
///
/// # Errors
/// The field to change.
pub fn fitted_rafter(frame: &Frame, line: &RoofLine) -> Result<RafterShape, Problem> {
    let shape = RafterShape::new(frame, line);
    let past_heel = shape.tail.1.x - shape.beam.heel_below.x;
    if past_heel < Length::inches(0.25) {
        let short = (Length::inches(0.25) - past_heel) * line.pitch.cos();
        let says = "The tail is so short that its cut runs into the bird's mouth.";
        return Err(Problem::stop("frame.tail", says).nearest(frame.tail + short));
    }
    if shape.ledger.heel_below.x > shape.beam.seat_end.x {
        let says = "The rafter is shorter than its two seats: the bird's mouths run into each other.";
        return Err(Problem::stop("frame.reach", says).nearest(frame.reach + Length::inches(12.0)));
    }
    for (field, notch) in [("frame.ledger_seat_length", &shape.ledger), ("frame.beam_seat_length", &shape.beam)] {
        if notch.notch_depth > shape.depth / 2.0 {
            let says = "The bird's mouth would cut away more than half of the rafter.";
            let nearest = shape.depth / (line.pitch.sin() * 4.0);
            return Err(Problem::stop(field, says).nearest(nearest));
        }
    }
    Ok(shape)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::project::demo;

    fn check(found: Length, expected: f64, tolerance: f64) {
        assert!((found.to_inches() - expected).abs() <= tolerance, "{found:?} is not {expected}");
    }

    /// By hand: 137.5 level / 0.970143 = 141.732 on the top edge; + 8·0.25 = 143.732 of stock;
    /// the beam heel lies 126/0.970143 = 129.878 from zero.
    #[test]
    fn the_wool_barn_rafter_by_hand() {
        let frame = demo::wool_barn().frame;
        let shape = RafterShape::new(&frame, &RoofLine::resolve(&frame).unwrap());
        check(shape.top_edge().length(), 141.732, 1e-3);
        check(shape.length(), 143.732, 1e-3);
        check(shape.beam.heel_on_top, 129.878, 1e-3);
        check(shape.head.0.x, -3.608, 1e-3);
    }

    /// Notch depth square to the rafter, seat × sin θ: closed form, as tabulated in trade practice
    /// for seats of 4, 5½, 6 and 8 in (derived).
    #[test]
    fn notch_depths_follow_the_table() {
        let table = [(2.0, [0.66, 0.90, 0.99, 1.32]), (3.0, [0.97, 1.33, 1.46, 1.94]), (4.0, [1.27, 1.74, 1.90, 2.53])];
        for (pitch, depths) in table {
            for (seat, depth) in [4.0, 5.5, 6.0, 8.0].into_iter().zip(depths) {
                let notch =
                    BirdsMouth::new(Length::ZERO, Length::inches(seat), Length::inches(12.0), Slope::in_twelve(pitch));
                check(notch.notch_depth, depth, 0.0051);
                check(Length::inches(12.0) - notch.corner.y, depth, 0.0051);
            }
        }
    }

    /// The table of pitches, derived: angle in degrees and slope length of 12 in of run.
    #[test]
    fn pitches_follow_the_table() {
        for (pitch, degrees, along) in [
            (1.0, 4.76, 12.042),
            (2.0, 9.46, 12.166),
            (2.5, 11.77, 12.258),
            (3.0, 14.04, 12.369),
            (3.5, 16.26, 12.500),
            (4.0, 18.43, 12.649),
            (5.0, 22.62, 13.000),
            (6.0, 26.57, 13.416),
        ] {
            let slope = Slope::in_twelve(pitch);
            assert!((slope.to_degrees() - degrees).abs() < 0.0051);
            check(Run::of(Length::inches(12.0)).along(slope).length(), along, 0.000_51);
        }
    }

    #[test]
    fn a_square_tail_needs_no_more_than_the_top_edge() {
        let mut frame = demo::wool_barn().frame;
        frame.tail_cut = TailCut::Square;
        let shape = RafterShape::new(&frame, &RoofLine::resolve(&frame).unwrap());
        assert_eq!(shape.length(), shape.top_edge().length());
    }
}

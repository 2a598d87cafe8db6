//! Pitch, seats and the line of the rafters: the section every rafter shares.
//!
//! Both supports are notched. The heel is the plumb line of a support's outer top arris; the run is the
//! level distance between the two heels. With d the rafter's depth, θ the roof angle and s the level
//! length of a seat, the height above the seat at the heel is h = d/cos θ − s·tan θ, and
//! ledger seat − beam seat = run·tan θ + h_B − h_L = (run + s_L − s_B)·tan θ.
use crate::project::{FixedHeights, Frame, Problem};
use crate::units::{Length, Run, Slope};

/// The flattest and steepest roof that can be drawn, rise per run: ¼ in 12 and 12 in 12.
const PITCHES: (f64, f64) = (0.25 / 12.0, 1.0);

/// The section of the roof.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RoofLine {
    /// Roof slope.
    pub pitch: Slope,
    /// Outer face of the ledger, out from the wall face.
    pub ledger_heel: Length,
    /// Outer face of the beam, out from the wall face.
    pub beam_heel: Length,
    /// Level distance between the two heels.
    pub run: Run,
    /// Top of the ledger above the datum.
    pub ledger_seat: Length,
    /// Top of the beam above the datum.
    pub beam_seat: Length,
    /// Seat to the rafter's top edge, plumb at the ledger heel.
    pub height_above_ledger_seat: Length,
    /// Seat to the rafter's top edge, plumb at the beam heel.
    pub height_above_beam_seat: Length,
}

impl RoofLine {
    /// Works out the third height from the two that are held.
    ///
    /// # Errors
    /// The field to change, where the two do not make a roof.
    pub fn resolve(frame: &Frame) -> Result<Self, Problem> {
        let ledger_heel = frame.ledger_packing + frame.timbers.ledger.sawn.breadth;
        let run = frame.reach - ledger_heel;
        let level = run + frame.ledger_seat_length - frame.beam_seat_length;
        let heights = &frame.heights;
        if run <= frame.timbers.beam.sawn.breadth {
            let least = ledger_heel + frame.timbers.beam.sawn.breadth * 2.0;
            return Err(Problem::stop(
                "frame.reach",
                "The beam would stand in the ledger: the reach is shorter than both timbers.",
            )
            .nearest(least));
        }
        let (pitch, ledger_seat, beam_seat) = match heights.fixed {
            FixedHeights::PitchAndBeam => {
                (heights.pitch, heights.beam_seat + level * heights.pitch.tan(), heights.beam_seat)
            }
            FixedHeights::PitchAndLedger => {
                (heights.pitch, heights.ledger_seat, heights.ledger_seat - level * heights.pitch.tan())
            }
            FixedHeights::LedgerAndBeam => {
                (pitch_of_seats(heights.ledger_seat, heights.beam_seat, level)?, heights.ledger_seat, heights.beam_seat)
            }
        };
        let plumb_depth = frame.timbers.rafter.sawn.depth / pitch.cos();
        Ok(Self {
            pitch,
            ledger_heel,
            beam_heel: frame.reach,
            run: Run::of(run),
            ledger_seat,
            beam_seat,
            height_above_ledger_seat: plumb_depth - frame.ledger_seat_length * pitch.tan(),
            height_above_beam_seat: plumb_depth - frame.beam_seat_length * pitch.tan(),
        })
    }

    /// Height of the rafters' top edge at `y` out from the wall face.
    #[must_use]
    pub fn top_edge(&self, y: Length) -> Length {
        self.ledger_seat + self.height_above_ledger_seat - (y - self.ledger_heel) * self.pitch.tan()
    }

    /// Top of the metal at `y`, over purlins and ribs of that height together.
    #[must_use]
    pub fn top_of_metal(&self, y: Length, purlin_and_rib: Length) -> Length {
        self.top_edge(y) + purlin_and_rib / self.pitch.cos()
    }
}

fn pitch_of_seats(ledger_seat: Length, beam_seat: Length, level: Length) -> Result<Slope, Problem> {
    let drop = ledger_seat - beam_seat;
    let steepest = beam_seat + level * PITCHES.1;
    let flattest = beam_seat + level * PITCHES.0;
    if drop < level * PITCHES.0 {
        return Err(Problem::stop(
            "frame.heights.ledger_seat",
            "The beam seat is as high as the ledger seat or higher: the roof would fall toward the wall.",
        )
        .nearest(flattest));
    }
    if drop > level * PITCHES.1 {
        return Err(
            Problem::stop("frame.heights.ledger_seat", "The roof would be steeper than 12 in 12.").nearest(steepest)
        );
    }
    Ok(Slope::ratio(drop / level))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::project::demo;

    fn check(found: Length, expected: f64) {
        assert!((found.to_inches() - expected).abs() < 1e-3, "{found:?} is not {expected}");
    }

    /// By hand: run 130 − 4 = 126; tan θ = 0.25, cos θ = 0.970143, 8/cos θ = 8.2462;
    /// h_L = 8.2462 − 3·0.25 = 7.4962, h_B = 8.2462 − 4·0.25 = 7.2462;
    /// ledger seat = 100 + 126·0.25 + 7.2462 − 7.4962 = 131.25.
    #[test]
    fn the_wool_barn_by_hand() {
        let line = RoofLine::resolve(&demo::wool_barn().frame).unwrap();
        check(line.run.length(), 126.0);
        check(line.height_above_ledger_seat, 7.4962);
        check(line.height_above_beam_seat, 7.2462);
        check(line.ledger_seat, 131.25);
        check(line.top_edge(line.beam_heel), 107.2462);
    }

    #[test]
    fn any_two_heights_give_the_third() {
        let mut frame = demo::wool_barn().frame;
        let held = RoofLine::resolve(&frame).unwrap();
        frame.heights.ledger_seat = held.ledger_seat;
        frame.heights.fixed = FixedHeights::LedgerAndBeam;
        frame.heights.pitch = Slope::in_twelve(9.0);
        assert!((RoofLine::resolve(&frame).unwrap().pitch.to_in_twelve() - 3.0).abs() < 1e-12);
        frame.heights.fixed = FixedHeights::PitchAndLedger;
        frame.heights.pitch = held.pitch;
        frame.heights.beam_seat = Length::ZERO;
        check(RoofLine::resolve(&frame).unwrap().beam_seat, 100.0);
    }

    #[test]
    fn a_beam_above_the_ledger_is_refused_with_the_nearest_seat() {
        let mut frame = demo::wool_barn().frame;
        frame.heights.fixed = FixedHeights::LedgerAndBeam;
        frame.heights.ledger_seat = Length::inches(90.0);
        let problem = RoofLine::resolve(&frame).unwrap_err();
        assert_eq!(problem.field, "frame.heights.ledger_seat");
        let Some(crate::project::Nearest::Length(nearest)) = problem.nearest else { unreachable!("a length") };
        frame.heights.ledger_seat = nearest;
        assert!(RoofLine::resolve(&frame).is_ok());
    }
}

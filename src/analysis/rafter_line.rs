//! Where a rafter's loads go, by statics.
use crate::design::Shape;
use crate::loads::Spread;
use crate::units::{Length, LineLoad, Slope};

/// A rafter in the section: distances out from the wall face, level.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RafterLine {
    /// Middle of the seat on the ledger.
    pub ledger: Length,
    /// Middle of the seat on the beam.
    pub beam: Length,
    /// End of the roof over its tail.
    pub eave: Length,
    /// Slope.
    pub pitch: Slope,
}

/// What a strip of roof one unit wide hands on, plus down; level, plus away from the wall.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct StripReactions {
    /// To the ledger.
    pub ledger: LineLoad,
    /// To the beam.
    pub beam: LineLoad,
    /// Level part of a load square to the roof; the ledger takes it. Suction pulls away from the wall.
    pub level: LineLoad,
}

impl StripReactions {
    /// Times a factor.
    #[must_use]
    pub fn times(self, factor: f64) -> Self {
        Self { ledger: self.ledger * factor, beam: self.beam * factor, level: self.level * factor }
    }

    /// Both together.
    #[must_use]
    pub fn plus(self, other: Self) -> Self {
        Self { ledger: self.ledger + other.ledger, beam: self.beam + other.beam, level: self.level + other.level }
    }
}

impl RafterLine {
    /// Of this frame, with the roof reaching so far from the wall.
    #[must_use]
    pub fn new(shape: &Shape, roof_length: Length) -> Self {
        let line = &shape.line;
        Self {
            ledger: line.ledger_heel - shape.rafter.ledger.seat / 2.0,
            beam: line.beam_heel - shape.rafter.beam.seat / 2.0,
            eave: roof_length,
            pitch: line.pitch,
        }
    }

    /// Level distance between the seats.
    #[must_use]
    pub fn span(&self) -> Length {
        self.beam - self.ledger
    }

    /// A load down on plan and one square to the roof, to ledger and beam.
    ///
    /// Square to the roof: p·y/cos²θ turns about the ledger seat, since both p and its arm lie along the slope; p on plan is
    /// its upright part and p·tan θ its level part, which the ledger alone takes. The roof falls away from the wall: what
    /// presses on it pushes toward the wall.
    #[must_use]
    pub fn reactions(&self, down: &Spread, square: &Spread) -> StripReactions {
        let turning = |spread: &Spread| {
            let arm = spread.centre().map_or(0.0, |centre| (centre - self.ledger) / self.span());
            spread.total() * arm
        };
        let (cos, tan) = (self.pitch.cos(), self.pitch.tan());
        let beam = turning(down) + turning(square) / (cos * cos);
        let total = down.total() + square.total();
        StripReactions { ledger: total - beam, beam, level: -square.total() * tan }
    }
}

/// How much of the roof each rafter carries along the wall: half way to its neighbours, the outer ones out to the rake.
#[must_use]
pub fn carried_widths(rafters: &[Length], rakes: (Length, Length)) -> Vec<Length> {
    let last = rafters.len().saturating_sub(1);
    let half_way = |index: usize| (rafters[index] + rafters[index + 1]) / 2.0;
    let width = |index: usize| {
        let left = if index == 0 { rakes.0 } else { half_way(index - 1) };
        let right = if index == last { rakes.1 } else { half_way(index) };
        right - left
    };
    (0..rafters.len()).map(width).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::AreaLoad;

    const LINE: RafterLine = RafterLine {
        ledger: Length::inches(12.0),
        beam: Length::inches(132.0),
        eave: Length::inches(156.0),
        pitch: Slope::in_twelve(3.0),
    };

    /// 40 psf on 13 ft of plan: 520 lb a foot, its middle 5.5 ft of 10 from the ledger seat.
    #[test]
    fn a_load_on_plan() {
        let snow = Spread::uniform(Length::ZERO, LINE.eave, AreaLoad::psf(40.0));
        let found = LINE.reactions(&snow, &Spread::default());
        assert!((found.beam.to_plf() - 286.0).abs() < 1e-9, "{found:?}");
        assert!((found.ledger.to_plf() - 234.0).abs() < 1e-9);
        assert_eq!(found.level, LineLoad::ZERO);
    }

    /// Suction of 20 psf square to the roof: as a force on the slope it is 20·13/cos θ, split 0.55 to the beam's seat
    /// square to the rafter; an upright reaction there must be 1/cos θ larger. Level: 260·tan θ = 65, off the wall.
    #[test]
    fn a_load_square_to_the_roof() {
        let wind = Spread::uniform(Length::ZERO, LINE.eave, AreaLoad::psf(-20.0));
        let found = LINE.reactions(&Spread::default(), &wind);
        let cos = LINE.pitch.cos();
        assert!((found.beam.to_plf() + 260.0 * 0.55 / (cos * cos)).abs() < 1e-9, "{found:?}");
        assert!((found.beam.to_plf() + found.ledger.to_plf() + 260.0).abs() < 1e-9);
        assert!((found.level.to_plf() - 65.0).abs() < 1e-9);
    }

    #[test]
    fn widths_add_up_to_the_roof() {
        let at = Length::inches;
        let widths = carried_widths(&[at(2.0), at(26.0), at(50.0)], (at(-6.0), at(58.0)));
        assert_eq!(widths, [at(20.0), at(24.0), at(20.0)]);
        assert_eq!(carried_widths(&[at(5.0)], (at(0.0), at(9.0))), [at(9.0)]);
        assert!(carried_widths(&[], (at(0.0), at(9.0))).is_empty());
    }
}

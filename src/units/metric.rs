//! Prints a length in millimetres or metres, and says how far a printed length may be from the true one.

use super::{Figure, Fineness, Length, UnitSystem, feet_inches};

/// The smallest part of a millimetre that is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum MetricStep {
    /// Whole millimetres: the marks of most tapes.
    Whole,
    /// Half millimetres.
    Half,
    /// Tenths of a millimetre.
    Tenth,
}

impl MetricStep {
    /// Every step, coarse to fine.
    pub const ALL: [Self; 3] = [Self::Whole, Self::Half, Self::Tenth];

    /// Steps in one millimetre.
    #[must_use]
    pub const fn per_millimetre(self) -> u32 {
        match self {
            Self::Whole => 1,
            Self::Half => 2,
            Self::Tenth => 10,
        }
    }

    /// The length of one step.
    #[must_use]
    pub const fn step(self) -> Length {
        Length::millimetres(1.0 / self.per_millimetre() as f64)
    }
}

/// `2243 mm`, `2242.5 mm`: to the nearest step, half away from zero. A half step shows its `.5` only where there is one.
#[must_use]
pub fn millimetres(length: Length, step: MetricStep) -> Figure {
    let value = length.to_millimetres();
    match step {
        MetricStep::Whole => Figure::of(value, 0, " mm"),
        MetricStep::Half => Figure::of((value * 2.0).round() / 2.0, 1, " mm").without_zeros(),
        MetricStep::Tenth => Figure::of(value, 1, " mm"),
    }
}

/// `2.243 m`: to the nearest millimetre, half away from zero.
#[must_use]
pub fn metres(length: Length) -> Figure {
    Figure::of(length.to_metres(), 3, " m")
}

/// The step between two neighbouring printed lengths: a printed length is within half of it of the true one.
#[must_use]
pub const fn display_step(system: UnitSystem, fineness: Fineness, metric_step: MetricStep) -> Length {
    match system {
        UnitSystem::Imperial => fineness.step(),
        UnitSystem::Metric => metric_step.step(),
    }
}

/// The length as the chosen system prints it: feet and inches, or millimetres.
#[must_use]
pub fn show_length(length: Length, system: UnitSystem, fineness: Fineness, metric_step: MetricStep) -> String {
    match system {
        UnitSystem::Imperial => feet_inches(length, fineness).to_string(),
        UnitSystem::Metric => millimetres(length, metric_step).to_string(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(found: Figure, expected: &str) {
        assert_eq!(found.to_string(), expected);
    }

    #[test]
    fn steps() {
        let length = Length::inches(88.3125); // 2243.1375 mm
        check(millimetres(length, MetricStep::Whole), "2243 mm");
        check(millimetres(length, MetricStep::Half), "2243 mm");
        check(millimetres(length, MetricStep::Tenth), "2243.1 mm");
        check(millimetres(Length::millimetres(2242.5), MetricStep::Half), "2242.5 mm");
        check(millimetres(Length::millimetres(2242.5), MetricStep::Whole), "2243 mm");
        check(millimetres(-length, MetricStep::Whole), "−2243 mm");
        check(metres(length), "2.243 m");
        check(metres(Length::millimetres(-7.0)), "−0.007 m");
    }

    #[test]
    fn the_chosen_system() {
        let show = |system| show_length(Length::feet(7.0), system, Fineness::Sixteenth, MetricStep::Half);
        assert_eq!(show(UnitSystem::Imperial), "7′ 0″");
        assert_eq!(show(UnitSystem::Metric), "2133.5 mm");
        let step = |system| display_step(system, Fineness::Quarter, MetricStep::Tenth);
        assert_eq!(step(UnitSystem::Imperial), Length::inches(0.25));
        assert!(step(UnitSystem::Metric).is_near(Length::millimetres(0.1), Length::inches(1e-15)));
    }
}

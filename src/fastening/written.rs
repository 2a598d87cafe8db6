//! Numbers as they stand in a step: three figures or so, whole from a hundred up.
use crate::units::{Area, Force, Length, Stress, fixed};

/// A bare number.
pub(super) fn number(value: f64) -> String {
    match value.abs() {
        size if size >= 100.0 => fixed(value, 0),
        size if size >= 10.0 => fixed(value, 1),
        size if size >= 1.0 => fixed(value, 2),
        _ => fixed(value, 3),
    }
}

/// A length's inches, without the unit.
pub(super) fn inches(value: Length) -> String {
    number(value.to_inches())
}

/// A stress's psi, without the unit.
pub(super) fn psi(value: Stress) -> String {
    fixed(value.to_psi(), 0)
}

/// A force's pounds, without the unit.
pub(super) fn pounds(value: Force) -> String {
    fixed(value.to_pounds(), 0)
}

/// An area's square inches, without the unit.
pub(super) fn square_inches(value: Area) -> String {
    number(value.to_square_inches())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn about_three_figures() {
        for (value, expected) in
            [(45_000.0, "45000"), (3.844, "3.84"), (16.26, "16.3"), (0.371, "0.371"), (-1.5, "-1.50")]
        {
            assert_eq!(number(value), expected);
        }
        assert_eq!(inches(Length::inches(0.5)), "0.500");
        assert_eq!(psi(Stress::psi(87_000.4)), "87000");
        assert_eq!(pounds(Force::pounds(394.2)), "394");
        assert_eq!(square_inches(Area::square_inches(0.785)), "0.785");
    }
}

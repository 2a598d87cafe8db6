//! Numbers in the steps of a working.
use crate::units::{AreaLoad, Force, Length, LineLoad, fixed};
use crate::working::Step;

/// A number with so many decimals, and a true minus.
pub(super) fn num(value: f64, decimals: usize) -> String {
    let text = fixed(value, decimals);
    match text.strip_prefix('-') {
        Some(digits) if digits.chars().all(|letter| letter == '0' || letter == '.') => digits.to_owned(),
        Some(digits) => format!("−{digits}"),
        None => text,
    }
}

/// `25.2 psf`.
pub(super) fn psf(load: AreaLoad) -> String {
    format!("{} psf", num(load.to_psf(), 1))
}

/// `168 lb/ft`.
pub(super) fn plf(load: LineLoad) -> String {
    format!("{} lb/ft", num(load.to_plf(), 1))
}

/// `2.08 ft`.
pub(super) fn feet(length: Length) -> String {
    format!("{} ft", num(length.to_feet(), 2))
}

/// `300 lb`.
pub(super) fn pounds(force: Force) -> String {
    format!("{} lb", num(force.to_pounds(), 0))
}

/// The steps of a part, told apart from those of another by a word: `upper roof: p_f, flat-roof snow`.
pub(super) fn named(part: &'static str, steps: Vec<Step>) -> impl Iterator<Item = Step> {
    steps.into_iter().map(move |step| Step { gives: format!("{part}: {}", step.gives).into(), ..step })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn minus_and_zero() {
        assert_eq!(num(-1.25, 1), "−1.2");
        assert_eq!(num(-0.01, 1), "0.0");
        assert_eq!(psf(AreaLoad::psf(25.2)), "25.2 psf");
    }
}

//! How much the sway of a storey makes itself worse.
use crate::units::{Force, Length};
use crate::working::{Citation, Step, Worked};

/// Up to here the effect is left out.
const LEFT_OUT: f64 = 0.10;
/// Past here the frame is too soft to be judged this way.
const TOO_SOFT: f64 = 0.25;
const SOURCE: Citation = Citation::from_memory("ASCE 7-16", "12.8.7 (equations 12.8-16 and 12.8-17, at service level)");

/// One storey that sways.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Storey {
    /// P: all the weight it carries.
    pub weight: Force,
    /// Δ: its sway under V alone, first order: what weight alone sways an uneven frame is no part of it.
    pub sway: Length,
    /// V: the force along it that makes the sway.
    pub shear: Force,
    /// h: its height.
    pub height: Length,
}

/// What follows from θ.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SecondOrder {
    /// θ = P·Δ ÷ (V·h).
    pub theta: f64,
    /// What moments and sway are multiplied by: 1 up to θ = 0.10, then 1 ÷ (1 − θ).
    pub factor: f64,
}

/// θ = P·Δ/(V·h) of a storey, and the factor for its moments and sway.
///
/// # Errors
/// A sentence, where V or h is nothing or θ is over 0.25: the frame then needs stiffening, not a larger factor.
pub fn second_order(storey: Storey) -> Result<Worked<SecondOrder>, String> {
    let (p, sway) = (storey.weight.to_pounds(), storey.sway.to_inches().abs());
    let (v, h) = (storey.shear.to_pounds().abs(), storey.height.to_inches());
    if !(v > 0.0 && h > 0.0) {
        return Err("Second order: the storey needs a force along it and a height.".to_owned());
    }
    let theta = (p * sway / (v * h)).max(0.0);
    let mut steps = vec![Step::new(
        "θ, share of the sway that weight adds",
        format!("θ = P·Δ/(V·h) = {p:.0}·{sway:.4}/({v:.0}·{h:.1}) = {theta:.4}"),
        SOURCE,
    )];
    if theta > TOO_SOFT {
        return Err(format!(
            "Second order: θ = P·Δ/(V·h) = {p:.0}·{sway:.4}/({v:.0}·{h:.1}) = {theta:.3} is over {TOO_SOFT}: the frame is too soft along its length. Stiffen it (more or longer braces)."
        ));
    }
    let factor = if theta > LEFT_OUT { 1.0 / (1.0 - theta) } else { 1.0 };
    let says = if theta > LEFT_OUT {
        format!("θ > {LEFT_OUT}: 1/(1 − θ) = 1/(1 − {theta:.4}) = {factor:.4}")
    } else {
        format!("θ ≤ {LEFT_OUT}: left out, factor 1")
    };
    steps.push(Step::new("factor on moments and sway", says, SOURCE));
    Ok(Worked::new(SecondOrder { theta, factor }, steps))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    fn storey(weight: f64, sway: f64) -> Storey {
        let (shear, height) = (Force::pounds(500.0), Length::inches(100.0));
        Storey { weight: Force::pounds(weight), sway: Length::inches(sway), shear, height }
    }

    #[test]
    fn left_out_amplified_and_refused() {
        let small = second_order(storey(10_000.0, 0.4)).unwrap();
        assert!((small.value.theta - 0.08).abs() < 1e-12 && small.value.factor == 1.0);
        let large = second_order(storey(10_000.0, -1.0)).unwrap();
        assert!((large.value.factor - 1.25).abs() < 1e-12);
        assert_eq!(large.steps[0].says, "θ = P·Δ/(V·h) = 10000·1.0000/(500·100.0) = 0.2000");
        assert!(second_order(storey(10_000.0, 1.3)).unwrap_err().contains("too soft"));
        let still = Storey { shear: Force::ZERO, ..storey(1.0, 1.0) };
        assert!(second_order(still).is_err());
        // Net uplift cannot help the frame.
        assert_eq!(second_order(storey(-10_000.0, 1.0)).unwrap().value.factor, 1.0);
    }
}

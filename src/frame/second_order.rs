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

impl Storey {
    /// P, Δ, V and h without sign, in lb and in.
    fn numbers(&self) -> [f64; 4] {
        let (p, sway) = (self.weight.to_pounds(), self.sway.to_inches().abs());
        [p, sway, self.shear.to_pounds().abs(), self.height.to_inches()]
    }

    /// θ = P·Δ/(V·h), and the factor for moments and sway.
    ///
    /// # Errors
    /// A sentence, where V or h is nothing or θ is over 0.25: the frame then needs stiffening, not a larger factor.
    pub fn second_order(&self) -> Result<SecondOrder, String> {
        let [p, sway, v, h] = self.numbers();
        if !(v > 0.0 && h > 0.0) {
            return Err("Second order: the storey needs a force along it and a height.".to_owned());
        }
        let theta = (p * sway / (v * h)).max(0.0);
        if theta > TOO_SOFT {
            return Err(format!(
                "Second order: θ = P·Δ/(V·h) = {p:.0}·{sway:.4}/({v:.0}·{h:.1}) = {theta:.3} is over {TOO_SOFT}: the frame is too soft along its length. Stiffen it (more or longer braces)."
            ));
        }
        Ok(SecondOrder { theta, factor: if theta > LEFT_OUT { 1.0 / (1.0 - theta) } else { 1.0 } })
    }

    /// The working of what [`Self::second_order`] found.
    #[must_use]
    pub fn working(&self, found: SecondOrder) -> Worked<SecondOrder> {
        let [p, sway, v, h] = self.numbers();
        let SecondOrder { theta, factor } = found;
        let share = format!("θ = P·Δ/(V·h) = {p:.0}·{sway:.4}/({v:.0}·{h:.1}) = {theta:.4}");
        let says = if theta > LEFT_OUT {
            format!("θ > {LEFT_OUT}: 1/(1 − θ) = 1/(1 − {theta:.4}) = {factor:.4}")
        } else {
            format!("θ ≤ {LEFT_OUT}: left out, factor 1")
        };
        let steps = vec![
            Step::new("θ, share of the sway that weight adds", share, SOURCE),
            Step::new("factor on moments and sway", says, SOURCE),
        ];
        Worked::new(found, steps)
    }
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
        let small = storey(10_000.0, 0.4).second_order().unwrap();
        assert!((small.theta - 0.08).abs() < 1e-12 && small.factor == 1.0);
        let large = storey(10_000.0, -1.0).second_order().unwrap();
        assert!((large.factor - 1.25).abs() < 1e-12);
        let says = |index: usize| storey(10_000.0, -1.0).working(large).steps[index].says.clone();
        assert_eq!(says(0), "θ = P·Δ/(V·h) = 10000·1.0000/(500·100.0) = 0.2000");
        assert_eq!(says(1), "θ > 0.1: 1/(1 − θ) = 1/(1 − 0.2000) = 1.2500");
        assert!(storey(10_000.0, 1.3).second_order().unwrap_err().contains("too soft"));
        let still = Storey { shear: Force::ZERO, ..storey(1.0, 1.0) };
        assert!(still.second_order().is_err());
        // Net uplift cannot help the frame.
        assert_eq!(storey(-10_000.0, 1.0).second_order().unwrap().factor, 1.0);
    }
}

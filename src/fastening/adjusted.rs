//! From the reference value to what may be used: Z′ and W′·p (NDS 2015 Table 11.3.1).
use super::Refused;
use super::refused::above_zero;
use super::written::{inches, number, pounds};
use crate::units::{Force, Length, LineLoad};
use crate::working::{Citation, Step, Worked};

/// The factors of one connection; each is 1 until set.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Factors {
    /// C_D, from [`super::load_duration`].
    pub load_duration: f64,
    /// C_M.
    pub wet: f64,
    /// C_t.
    pub temperature: f64,
    /// C_g; lateral only.
    pub group: f64,
    /// C_Δ; lateral only.
    pub geometry: f64,
    /// C_eg.
    pub end_grain: f64,
    /// C_tn.
    pub slant: f64,
    /// p/8D or p/10D of a screw or nail that is not in fully; lateral only.
    pub penetration: f64,
}

impl Default for Factors {
    fn default() -> Self {
        Self {
            load_duration: 1.0,
            wet: 1.0,
            temperature: 1.0,
            group: 1.0,
            geometry: 1.0,
            end_grain: 1.0,
            slant: 1.0,
            penetration: 1.0,
        }
    }
}

impl Factors {
    fn checked(self) -> Result<Self, Refused> {
        if !(self.load_duration > 0.0 && self.load_duration <= 1.6) {
            return Err(Refused::because("C_D of a connection lies between 0 and 1.6: cap it first."));
        }
        let rest =
            [self.wet, self.temperature, self.group, self.geometry, self.end_grain, self.slant, self.penetration];
        if rest.iter().all(|factor| *factor > 0.0 && *factor <= 1.0 + 1e-9) {
            return Ok(self);
        }
        Err(Refused::because("A factor of a connection other than C_D lies between 0 and 1."))
    }
}

const CITED: Citation = Citation::from_memory("NDS 2015", "Table 11.3.1");

/// Z′ = Z·C_D·C_M·C_t·C_g·C_Δ·C_eg·C_tn, times what the penetration is worth.
///
/// # Errors
/// For factors outside their limits.
pub fn adjusted_lateral(reference: Force, factors: &Factors) -> Result<Worked<Force>, Refused> {
    above_zero("the reference lateral value", reference.to_pounds())?;
    let f = factors.checked()?;
    let all = [f.load_duration, f.wet, f.temperature, f.group, f.geometry, f.end_grain, f.slant, f.penetration];
    let value = reference * all.iter().product::<f64>();
    let says = format!(
        "Z′ = Z·C_D·C_M·C_t·C_g·C_Δ·C_eg·C_tn·(penetration) = {}·{} = {} lb",
        pounds(reference),
        all.map(number).join("·"),
        pounds(value)
    );
    Ok(Worked::new(value, vec![Step::new("Z′, allowable lateral load of one", says, CITED)]))
}

/// W′·p = W·C_D·C_M·C_t·C_eg·C_tn·p, with p the thread or shank that holds.
///
/// # Errors
/// For factors outside their limits and a length that is not above zero.
pub fn adjusted_withdrawal(reference: LineLoad, held: Length, factors: &Factors) -> Result<Worked<Force>, Refused> {
    above_zero("the reference withdrawal value", reference.to_pounds_per_inch())?;
    above_zero("the length of thread or shank that holds", held.to_inches())?;
    let f = factors.checked()?;
    let all = [f.load_duration, f.wet, f.temperature, f.end_grain, f.slant];
    let value = reference * held * all.iter().product::<f64>();
    let says = format!(
        "W′·p = W·C_D·C_M·C_t·C_eg·C_tn·p = {}·{}·{} = {} lb",
        number(reference.to_pounds_per_inch()),
        all.map(number).join("·"),
        inches(held),
        pounds(value)
    );
    Ok(Worked::new(value, vec![Step::new("W′·p, allowable withdrawal of one", says, CITED)]))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    #[test]
    fn factors_multiply() {
        let factors = Factors { load_duration: 1.15, wet: 0.7, geometry: 0.5, group: 0.9, ..Factors::default() };
        let found = adjusted_lateral(Force::pounds(250.0), &factors).unwrap();
        assert!((found.value.to_pounds() - 250.0 * 1.15 * 0.7 * 0.45).abs() < 1e-9);
        assert!(found.steps[0].says.ends_with("= 250·1.15·0.700·1.00·0.900·0.500·1.00·1.00·1.00 = 91 lb"));
        // Neither group nor geometry touches withdrawal: 378·1.15·0.7·3 in.
        let out = adjusted_withdrawal(LineLoad::pounds_per_inch(378.0), Length::inches(3.0), &factors).unwrap();
        assert!((out.value.to_pounds() - 378.0 * 1.15 * 0.7 * 3.0).abs() < 1e-9);
    }

    #[test]
    fn limits() {
        let lateral = |factors: Factors| adjusted_lateral(Force::pounds(250.0), &factors);
        assert!(lateral(Factors { load_duration: 2.0, ..Factors::default() }).is_err());
        assert!(lateral(Factors { wet: 1.2, ..Factors::default() }).is_err());
        assert!(lateral(Factors { slant: 0.0, ..Factors::default() }).is_err());
        assert!(lateral(Factors::default()).is_ok());
        assert!(adjusted_lateral(Force::ZERO, &Factors::default()).is_err());
        let one = LineLoad::pounds_per_inch(100.0);
        assert!(adjusted_withdrawal(one, Length::ZERO, &Factors::default()).is_err());
    }
}

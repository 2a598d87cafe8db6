//! Velocity pressure.
use super::super::say::{feet, num, psf};
use super::super::{Edition, Place, Refused, WindExposure, WindSpeed};
use crate::units::{AreaLoad, Length};
use crate::working::{Step, Worked};

/// K_d of buildings.
const DIRECTIONALITY: f64 = 0.85;
/// G of a stiff structure.
pub(super) const GUST: f64 = 0.85;
/// Lowest height the exposure coefficient is read at, feet.
const LOWEST: f64 = 15.0;
/// Least K_h of components in exposure B (from memory; some chapters ask for it, it is taken for cladding).
const LEAST_CLADDING_B: f64 = 0.70;

/// Least wind: 16 psf on the projected area of an open building, and on cladding either way (ASCE 7, 27.1.5 and 30.2.2,
/// from memory).
pub const MINIMUM_WIND: AreaLoad = AreaLoad::psf(16.0);

/// What K_d multiplies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kd {
    /// 7-16: it is inside q.
    InVelocityPressure,
    /// 7-22: it stands in the pressure equation.
    InPressure,
}

/// q_h at the mean roof height, ready to be turned into pressures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct VelocityPressure {
    /// q_h; by 7-22 without K_d.
    pub q: AreaLoad,
    /// Where K_d stands.
    pub kd: Kd,
}

impl VelocityPressure {
    /// p = q_h·G·C_N by 7-16, q_h·K_d·G·C_N by 7-22; G = 0.85.
    #[must_use]
    pub fn pressure(&self, coefficient: f64) -> AreaLoad {
        let outside = if self.kd == Kd::InPressure { DIRECTIONALITY } else { 1.0 };
        self.q * (outside * GUST * coefficient)
    }

    /// The same, written out: `p = q_h·G·C_N = 26.6·0.85·(−1.90) = −43.0 psf`.
    pub(super) fn says(&self, symbol: &str, coefficient: f64) -> String {
        let (letters, numbers) = if self.kd == Kd::InPressure { ("K_d·", "0.85·") } else { ("", "") };
        let value = num(coefficient, 2);
        let value = if coefficient < 0.0 { format!("({value})") } else { value };
        format!(
            "p = q_h·{letters}G·{symbol} = {}·{numbers}0.85·{value} = {}",
            num(self.q.to_psf(), 1),
            psf(self.pressure(coefficient))
        )
    }
}

/// K_z = c·(z/z_g)^(2/α), z not below 15 ft; c = 2.01 by 7-16, 2.41 by 7-22 (ASCE 7 Table 26.10-1).
///
/// α and z_g of 7-16 agree with a page of low authority; those of 7-22 are from memory.
#[must_use]
pub fn exposure_coefficient(edition: Edition, exposure: WindExposure, height: Length) -> Worked<f64> {
    let (factor, alpha, gradient) = match (edition, exposure) {
        (Edition::Asce7_16, WindExposure::B) => (2.01, 7.0, 1200.0),
        (Edition::Asce7_16, WindExposure::C) => (2.01, 9.5, 900.0),
        (Edition::Asce7_16, WindExposure::D) => (2.01, 11.5, 700.0),
        (Edition::Asce7_22, WindExposure::B) => (2.41, 7.5, 3280.0),
        (Edition::Asce7_22, WindExposure::C) => (2.41, 9.8, 2460.0),
        (Edition::Asce7_22, WindExposure::D) => (2.41, 11.5, 1935.0),
    };
    let z = height.to_feet().max(LOWEST);
    let value: f64 = factor * f64::powf(z / gradient, 2.0 / alpha);
    let says = format!(
        "K_h = {}·(z/z_g)^(2/α) = {}·({}/{})^(2/{}) = {}; h = {}, not below 15 ft",
        num(factor, 2),
        num(factor, 2),
        num(z, 1),
        num(gradient, 0),
        num(alpha, 1),
        num(value, 3),
        feet(height)
    );
    Worked::new(value, vec![Step::new("K_h, exposure at roof height", says, edition.recalled("Table 26.10-1"))])
}

/// K_e = exp(−0.0000362·z_g), z_g the ground above sea level in feet.
#[must_use]
pub fn ground_elevation_factor(edition: Edition, elevation: Length) -> Worked<f64> {
    let value = (-0.000_036_2 * elevation.to_feet()).exp();
    let says = format!("K_e = exp(−0.0000362·{}) = {}", num(elevation.to_feet(), 0), num(value, 3));
    Worked::new(value, vec![Step::new("K_e, thinner air", says, edition.recalled("Table 26.9-1"))])
}

/// q = 0.00256·K·V² psf, V in miles an hour, K the product of all factors (ASCE 7, 26.10-1).
pub(super) fn pressure_of(speed: WindSpeed, factors: f64) -> AreaLoad {
    AreaLoad::psf(0.002_56 * factors * speed.to_mph() * speed.to_mph())
}

/// q_h at the mean roof height, for the main frame.
///
/// # Errors
/// When the wind speed is missing, or the ground shape factor is not above zero.
pub fn velocity_pressure(place: &Place, height: Length) -> Result<Worked<VelocityPressure>, Refused> {
    let k = exposure_coefficient(place.edition, place.wind_exposure, height);
    with_coefficient(place, k)
}

/// q_h for components and cladding: K_h not below 0.70 in exposure B.
pub(super) fn cladding_velocity_pressure(place: &Place, height: Length) -> Result<Worked<VelocityPressure>, Refused> {
    let mut k = exposure_coefficient(place.edition, place.wind_exposure, height);
    if place.wind_exposure == WindExposure::B && k.value < LEAST_CLADDING_B {
        let says = format!("K_h = {} → 0.70, the least for components in exposure B", num(k.value, 3));
        k.steps.push(Step::new("K_h, least", says, place.edition.recalled("Table 26.10-1, note")));
        k.value = LEAST_CLADDING_B;
    }
    with_coefficient(place, k)
}

fn with_coefficient(place: &Place, k: Worked<f64>) -> Result<Worked<VelocityPressure>, Refused> {
    let speed = place.wind_speed()?;
    if !(place.topography.is_finite() && place.topography > 0.0) {
        return Err(Refused::because("the ground shape factor K_zt must be above zero; on level ground it is 1"));
    }
    let air = ground_elevation_factor(place.edition, place.ground_elevation);
    let (kd, inside, letters, numbers) = match place.edition {
        Edition::Asce7_16 => (Kd::InVelocityPressure, DIRECTIONALITY, "K_d·", "0.85·"),
        Edition::Asce7_22 => (Kd::InPressure, 1.0, "", ""),
    };
    let q = pressure_of(speed, k.value * place.topography * inside * air.value);
    let says = format!(
        "q_h = 0.00256·K_h·K_zt·{letters}K_e·V² = 0.00256·{}·{}·{numbers}{}·{}² = {}",
        num(k.value, 3),
        num(place.topography, 2),
        num(air.value, 3),
        num(speed.to_mph(), 0),
        psf(q)
    );
    let mut steps = k.steps;
    steps.extend(air.steps);
    steps.push(Step::new("q_h, velocity pressure", says, place.edition.recalled("26.10-1")));
    Ok(Worked::new(VelocityPressure { q, kd }, steps))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    fn check(found: f64, expected: f64, tolerance: f64) {
        assert!((found - expected).abs() <= tolerance, "{found} is not {expected}");
    }

    /// Unsigned page with ASCE 7-05 constants (low authority): K_z .90, K_d .85, V 100, I 1 prints 19.58 psf.
    #[test]
    fn a_printed_pressure() {
        let speed = WindSpeed::try_mph(100.0).unwrap();
        check(pressure_of(speed, 0.90 * 0.85).to_psf(), 19.58, 0.005);
    }

    /// Computed from the formula with 7-16 and 7-22 constants, at 15 ft.
    #[test]
    fn exposure_at_fifteen_feet() {
        let at = |edition, exposure, height| exposure_coefficient(edition, exposure, Length::feet(height)).value;
        use WindExposure::{B, C, D};
        for (exposure, early, late) in [(B, 0.575, 0.573), (C, 0.849, 0.851), (D, 1.030, 1.035)] {
            check(at(Edition::Asce7_16, exposure, 15.0), early, 5e-4);
            check(at(Edition::Asce7_22, exposure, 15.0), late, 5e-4);
            assert_eq!(at(Edition::Asce7_16, exposure, 9.0), at(Edition::Asce7_16, exposure, 15.0));
            assert!(at(Edition::Asce7_16, exposure, 20.0) > at(Edition::Asce7_16, exposure, 15.0));
        }
    }

    #[test]
    fn thin_air() {
        let at = |feet| ground_elevation_factor(Edition::Asce7_16, Length::feet(feet)).value;
        check(at(0.0), 1.0, 0.0);
        check(at(1000.0), 0.964, 5e-4);
        check(at(3000.0), 0.897, 5e-4);
        check(at(5000.0), 0.834, 5e-4);
    }
}

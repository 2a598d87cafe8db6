//! A fastener pulled out and pushed aside at once (NDS 2015 12.4).
use super::Refused;
use super::fastener::FastenerKind;
use super::refused::above_zero;
use super::written::{number, pounds};
use crate::units::{Angle, Force};
use crate::working::{Citation, Step, Worked};

/// What one fastener may carry each way, factors included.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pull {
    /// W′·p, straight out.
    pub withdrawal: Force,
    /// Z′, aside.
    pub lateral: Force,
}

/// The load on one fastener.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LoadOnOne {
    /// Straight out; what pushes in counts as none.
    pub withdrawal: Force,
    /// Aside.
    pub lateral: Force,
}

/// What the fastener carries at the angle α between the load and the wood's surface.
///
/// Lag and wood screws (12.4-1): (W′p)·Z′/((W′p)·cos²α + Z′·sin²α); nails (12.4-2) with cos α and sin α.
///
/// # Errors
/// For a bolt, an angle outside 0–90° and values not above zero.
pub fn combined(kind: FastenerKind, values: Pull, angle: Angle) -> Result<Worked<Force>, Refused> {
    above_zero("the withdrawal value of the fastener", values.withdrawal.to_pounds())?;
    above_zero("the lateral value of the fastener", values.lateral.to_pounds())?;
    let degrees = angle.to_degrees();
    if !(-1e-9..=90.000_001).contains(&degrees) {
        return Err(Refused::because("The load leaves the surface at 0° (aside) to 90° (straight out)."));
    }
    let Some((out_part, aside_part)) = parts(kind, (angle.sin(), angle.cos())) else {
        return Err(Refused::because("The rule for loads at an angle is for screws and nails; check a bolt each way."));
    };
    let (power, clause) = if kind == FastenerKind::Nail { ("", "12.4-2") } else { ("²", "12.4-1") };
    let (out, aside) = (values.withdrawal, values.lateral);
    let value = out * (aside / (out * aside_part + aside * out_part));
    let says = format!(
        "Z_α′ = (W′p)·Z′/((W′p)·cos{power}α + Z′·sin{power}α) = {}·{}/({}·{} + {}·{}) at α = {}° = {} lb",
        pounds(out),
        pounds(aside),
        pounds(out),
        number(aside_part),
        pounds(aside),
        number(out_part),
        number(degrees),
        pounds(value)
    );
    let citation = Citation::from_memory("NDS 2015", clause);
    Ok(Worked::new(value, vec![Step::new("Z_α′, withdrawal and lateral together", says, citation)]))
}

/// How much of sin α and cos α counts: squared for screws, plain for nails; no rule for a bolt.
fn parts(kind: FastenerKind, (sine, cosine): (f64, f64)) -> Option<(f64, f64)> {
    match kind {
        FastenerKind::Bolt => None,
        FastenerKind::LagScrew | FastenerKind::WoodScrew => Some((sine * sine, cosine * cosine)),
        FastenerKind::Nail => Some((sine, cosine)),
    }
}

/// The greatest of load by capacity together and of each load alone, which is what [`combined_check`] gives, without its
/// working; nothing for a fastener without load.
#[must_use]
pub fn combined_share(kind: FastenerKind, values: Pull, load: LoadOnOne) -> Option<f64> {
    let (out, aside) = (load.withdrawal.max(Force::ZERO).to_pounds(), load.lateral.to_pounds().abs());
    let total = out.hypot(aside);
    if total <= 0.0 {
        return None;
    }
    let (pulled, pushed) = (out / values.withdrawal.to_pounds(), aside / values.lateral.to_pounds());
    if kind == FastenerKind::Bolt {
        return Some(pulled + pushed);
    }
    let (out_part, aside_part) = parts(kind, (out / total, aside / total))?;
    // The load by Z_α′ written out.
    let together = total * (aside_part / values.lateral.to_pounds() + out_part / values.withdrawal.to_pounds());
    Some(together.max(pulled).max(pushed))
}

/// Load by capacity of one fastener under both loads: √(w² + z²)/Z_α′ with tan α = w/z, and each load against its own value.
///
/// The rule for screws can allow more at an angle than aside alone; a load is never helped by another, so the greatest rules.
/// The standard has no rule for a bolt pulled and pushed at once: the sum of both shares is taken, which is on the safe side
/// (common practice).
///
/// # Errors
/// As [`combined`], and for a fastener without load.
pub fn combined_check(kind: FastenerKind, values: Pull, load: LoadOnOne) -> Result<Worked<f64>, Refused> {
    let (out, aside) = (load.withdrawal.to_pounds().max(0.0), load.lateral.to_pounds().abs());
    let total = out.hypot(aside);
    above_zero("the load on the fastener", total)?;
    if kind == FastenerKind::Bolt {
        return bolt_check(values, [out, aside]);
    }
    let found = combined(kind, values, Angle::radians(out.atan2(aside)))?;
    let ratio = Force::pounds(total) / found.value;
    let says = format!("√(w² + z²)/Z_α′ = √({out:.0}² + {aside:.0}²)/{} = {}", pounds(found.value), number(ratio));
    let mut steps = found.steps;
    steps.push(Step::new("load by capacity", says, Citation::from_memory("NDS 2015", "12.4")));
    let (pulled, pushed) = (out / values.withdrawal.to_pounds(), aside / values.lateral.to_pounds());
    let greatest = combined_share(kind, values, load).unwrap_or(ratio).max(ratio);
    if pulled.max(pushed) > ratio {
        let says = format!(
            "one load alone: w/(W′p) = {}, z/Z′ = {}; the greater rules, for neither load helps against the other: {}",
            number(pulled),
            number(pushed),
            number(greatest)
        );
        steps.push(Step::new("load by capacity", says, Citation::from_memory("NDS 2015", "12.2, 12.3")));
    }
    Ok(Worked::new(greatest, steps))
}

/// Both shares of a bolt added up.
fn bolt_check(values: Pull, [out, aside]: [f64; 2]) -> Result<Worked<f64>, Refused> {
    let (most_out, most_aside) = (values.withdrawal.to_pounds(), values.lateral.to_pounds());
    above_zero("what the bolt carries pulled", most_out)?;
    above_zero("the lateral value of the fastener", most_aside)?;
    let ratio = out / most_out + aside / most_aside;
    let says = format!("T/T′ + Z/Z′ = {out:.0}/{most_out:.0} + {aside:.0}/{most_aside:.0} = {}", number(ratio));
    let citation = Citation::common_practice("pull and push on one bolt add up: the NDS has no rule");
    Ok(Worked::new(ratio, vec![Step::new("load by capacity", says, citation)]))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    const VALUES: Pull = Pull { withdrawal: Force::pounds(600.0), lateral: Force::pounds(200.0) };

    fn at(kind: FastenerKind, degrees: f64) -> f64 {
        combined(kind, VALUES, Angle::degrees(degrees)).unwrap().value.to_pounds()
    }

    /// The two ends are the two values; at 45° screws reach 2·600·200/800 = 300, nails 600·200/(800·√½) = 212.1.
    #[test]
    fn the_ends_and_the_middle() {
        for kind in [FastenerKind::LagScrew, FastenerKind::WoodScrew, FastenerKind::Nail] {
            assert!((at(kind, 0.0) - 200.0).abs() < 1e-9);
            assert!((at(kind, 90.0) - 600.0).abs() < 1e-9);
        }
        assert!((at(FastenerKind::LagScrew, 45.0) - 300.0).abs() < 1e-9);
        assert!((at(FastenerKind::Nail, 45.0) - 150.0 * 2.0_f64.sqrt()).abs() < 1e-9);
    }

    /// A nail's rule is the straight line w/W + z/Z; a load on that line is just carried. A screw's rule gives √2 for 300 and
    /// 300, but 300 aside alone is 1.5 of 200.
    #[test]
    fn ratios() {
        let load = |out: f64, aside: f64| LoadOnOne { withdrawal: Force::pounds(out), lateral: Force::pounds(aside) };
        let ratio = |kind, load| combined_check(kind, VALUES, load).unwrap().value;
        assert!((ratio(FastenerKind::Nail, load(300.0, 100.0)) - 1.0).abs() < 1e-9);
        assert!((ratio(FastenerKind::LagScrew, load(300.0, 300.0)) - 1.5).abs() < 1e-9);
        assert!((ratio(FastenerKind::LagScrew, load(-50.0, 100.0)) - 0.5).abs() < 1e-9);
        // A bolt: 300/600 + 100/200 = 1, and a hair more is too much.
        assert!((ratio(FastenerKind::Bolt, load(300.0, 100.0)) - 1.0).abs() < 1e-9);
        assert!(ratio(FastenerKind::Bolt, load(300.0, 101.0)) > 1.0);
        assert!((ratio(FastenerKind::Bolt, load(-300.0, 100.0)) - 0.5).abs() < 1e-9);
    }

    #[test]
    fn limits() {
        assert!(combined(FastenerKind::Bolt, VALUES, Angle::ZERO).is_err());
        assert!(combined(FastenerKind::Nail, VALUES, Angle::degrees(95.0)).is_err());
        assert!(combined(FastenerKind::Nail, Pull { lateral: Force::ZERO, ..VALUES }, Angle::ZERO).is_err());
        let none = LoadOnOne { withdrawal: Force::ZERO, lateral: Force::ZERO };
        assert!(combined_check(FastenerKind::Nail, VALUES, none).is_err());
    }
}

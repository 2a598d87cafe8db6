//! How deep a pier or post that stands by the soil alone must go (IBC 1807.3.2.1, unrestrained at the ground).
use super::Refused;
use super::refused::above_zero;
use super::soil::Soil;
use super::written::{inches, pounds};
use crate::units::{Force, Length};
use crate::working::{Citation, Step, Worked};

/// Enough halvings for a sixteenth of an inch in any depth.
const HALVINGS: u32 = 60;
/// Deeper is no pier.
const DEEPEST_FEET: f64 = 30.0;

/// d = 0.5·A·(1 + √(1 + 4.36·h/A)), A = 2.34·P/(S·b), S the soil's lateral bearing at d/3.
///
/// P pushes at height h above ground on a pier of width b. S grows with depth, so d is found by halving.
///
/// # Errors
/// For parts that are missing and where even 30 ft would not do.
pub fn pole_depth(push: Force, height: Length, width: Length, soil: &Soil) -> Result<Worked<Length>, Refused> {
    above_zero("the push on the pier", push.to_pounds())?;
    above_zero("the width of the pier", width.to_inches())?;
    above_zero("the height of the push", height.to_inches())?;
    let lateral = soil.lateral_a_foot.to_psf();
    above_zero("the lateral bearing of the soil", lateral)?;
    let needed = |depth: f64| {
        let a = 2.34 * push.to_pounds() / (lateral * depth / 3.0 * width.to_feet());
        0.5 * a * (1.0 + (1.0 + 4.36 * height.to_feet() / a).sqrt())
    };
    if needed(DEEPEST_FEET) > DEEPEST_FEET {
        return Err(Refused::because("No pier of 30 ft would hold that push in this soil: brace the frame instead."));
    }
    let (mut low, mut high) = (0.0, DEEPEST_FEET);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        if needed(middle) > middle { low = middle } else { high = middle }
    }
    let depth = Length::feet(high);
    let says = format!(
        "d = 0.5·A·(1 + √(1 + 4.36·h/A)) with P = {} lb at {} in, b = {} in, S = {lateral:.0}·d/3 psf: d = {:.2} ft",
        pounds(push),
        inches(height),
        inches(width),
        high
    );
    Ok(Worked::new(depth, vec![Step::new("depth of the pier", says, Citation::from_memory("IBC", "1807.3.2.1"))]))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::fastening::soil;

    /// The depth found satisfies the equation of the code, and a harder push or softer soil goes deeper.
    #[test]
    fn the_depth_satisfies_its_equation() {
        let (push, height, width) = (500.0, 6.0, 1.0);
        let depth = |push: f64, key: &str| {
            pole_depth(Force::pounds(push), Length::feet(height), Length::feet(width), soil(key).unwrap())
                .unwrap()
                .value
        };
        let found = depth(push, "sand").to_feet();
        let a = 2.34 * push / (150.0 * found / 3.0 * width);
        assert!((found - 0.5 * a * (1.0 + (1.0 + 4.36 * height / a).sqrt())).abs() < 1e-6);
        assert!(depth(800.0, "sand") > depth(push, "sand"));
        assert!(depth(push, "clay") > depth(push, "sand"));
    }

    #[test]
    fn limits() {
        let clay = soil("clay").unwrap();
        let foot = Length::feet(1.0);
        assert!(pole_depth(Force::pounds(1e7), foot, foot, clay).is_err());
        assert!(pole_depth(Force::ZERO, foot, foot, clay).is_err());
        assert!(pole_depth(Force::pounds(1.0), foot, Length::ZERO, clay).is_err());
        assert!(pole_depth(Force::pounds(1.0), Length::ZERO, foot, clay).is_err());
    }
}

//! How far the point must reach into the main member (NDS 2015 12.1.4–12.1.6, 12.3.5).
use super::Refused;
use super::fastener::{Fastener, FastenerKind};
use super::written::{inches, number};
use crate::units::Length;
use crate::working::{Citation, Step, Worked};

/// What a penetration is worth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Penetration {
    /// l_m for the yield equations: at full penetration, or more when the point reaches further.
    pub bearing_length: Length,
    /// What the lateral value at that length is multiplied by.
    pub factor: f64,
}

/// Penetration p of a screw or nail into the main member, the tapered tip of a lag screw not counted.
///
/// Lag screws: at least 4D, full at 8D, p/8D between, l_m = p − E/2. Wood screws and nails: at least 6D, full at 10D.
///
/// # Errors
/// For a bolt, which goes right through, and for less than the least penetration.
pub fn penetration(fastener: &Fastener, depth: Length) -> Result<Worked<Penetration>, Refused> {
    let (least, full, clause) = match fastener.kind {
        FastenerKind::Bolt => {
            return Err(Refused::because("A bolt goes right through: its bearing length is the member's thickness."));
        }
        FastenerKind::LagScrew => (4.0, 8.0, "12.1.4 and 12.3.5.3"),
        FastenerKind::WoodScrew | FastenerKind::Nail => (6.0, 10.0, "12.1.5 and 12.1.6"),
    };
    let needed = fastener.diameter * least;
    if depth + Length::inches(1e-9) < needed {
        return Err(Refused::because(format!(
            "The {} reaches {} in into the main member; it needs at least {least:.0} diameters, {} in.",
            fastener.name,
            inches(depth),
            inches(needed)
        )));
    }
    let whole = fastener.diameter * full;
    let factor = (depth / whole).min(1.0);
    let bearing_length = depth.max(whole) - fastener.tip / 2.0;
    let says = format!("p/{full:.0}D = {}/{} → factor {}", inches(depth), inches(whole), number(factor));
    let citation = Citation::from_memory("NDS 2015", clause);
    let steps = vec![
        Step::new("factor of penetration", says, citation),
        Step::new("l_m, bearing length", format!("l_m = {} in", inches(bearing_length)), citation),
    ];
    Ok(Worked::new(Penetration { bearing_length, factor }, steps))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::fastening::fastener;

    fn factor(key: &str, inches: f64) -> Option<f64> {
        penetration(fastener(key).unwrap(), Length::inches(inches)).ok().map(|found| found.value.factor)
    }

    #[test]
    fn least_and_full() {
        assert_eq!(factor("lag_1_2", 1.9), None);
        assert_eq!(factor("lag_1_2", 2.0), Some(0.5));
        assert_eq!(factor("lag_1_2", 4.0), Some(1.0));
        assert_eq!(factor("lag_1_2", 5.0), Some(1.0));
        assert_eq!(factor("nail_162", 0.9), None);
        assert!((factor("nail_162", 1.296).unwrap() - 0.8).abs() < 1e-12);
        assert_eq!(factor("wood_screw_10", 2.0), Some(1.0));
        assert_eq!(factor("bolt_1_2", 4.0), None);
    }

    #[test]
    fn a_longer_screw_bears_on_more() {
        let length = |inches: f64| penetration(fastener("lag_1_2").unwrap(), Length::inches(inches)).unwrap().value;
        assert_eq!(length(2.0).bearing_length, Length::inches(4.0 - 5.0 / 32.0));
        assert_eq!(length(6.0).bearing_length, Length::inches(6.0 - 5.0 / 32.0));
    }
}

//! The steel of bolts and lag screws pulled along their length, and the washers that hand the pull to the wood.
use std::f64::consts::PI;

use super::Refused;
use super::fastener::{Fastener, FastenerKind};
use super::lag::lag_steel_tension;
use super::refused::above_zero;
use super::written::{inches, pounds, psi, square_inches};
use crate::units::{Area, Force, Length, Stress};
use crate::working::{Citation, Step, Worked};

/// F_u of unmarked bolts and lag screws (ASTM A307 grade A, from memory). Better or stainless steel is not counted on.
const LEAST_STRENGTH: Stress = Stress::psi(60_000.0);
/// Ω of a bolt in tension (AISC 360 J3.6, from memory).
const SAFETY: f64 = 2.0;
/// What the thread leaves of a bolt's body (AISC 360 Table J3.2, from memory).
const THREAD_SHARE: f64 = 0.75;
/// The hole of a washer is this much wider than its bolt.
const ROOM_IN_HOLE: Length = Length::inches(1.0 / 16.0);

/// Allowable pull of the steel of one: F_u/Ω with F_u 60,000 psi and Ω 2, on the root of a lag screw's thread, on ¾ of a bolt's
/// body. No load duration: the steel knows none.
///
/// # Errors
/// For nails and wood screws: their makers state it.
pub fn steel_tension(fastener: &Fastener) -> Result<Worked<Force>, Refused> {
    let allowable = LEAST_STRENGTH / SAFETY;
    let says = format!("F_u/Ω = {}/{SAFETY:.0} = {} psi, unmarked steel", psi(LEAST_STRENGTH), psi(allowable));
    let strength = Step::new("strength of the steel", says, Citation::from_memory("AISC 360", "J3.6; ASTM A307"));
    match fastener.kind {
        FastenerKind::LagScrew => {
            let mut worked = lag_steel_tension(fastener, allowable)?;
            worked.steps.insert(0, strength);
            Ok(worked)
        }
        FastenerKind::Bolt => {
            let body = fastener.diameter * fastener.diameter * (PI / 4.0);
            let force = allowable * body * THREAD_SHARE;
            let says = format!(
                "0.75·F·π·D²/4 = 0.75·{}·π·{}²/4 = {} lb",
                psi(allowable),
                inches(fastener.diameter),
                pounds(force)
            );
            let citation = Citation::from_memory("AISC 360", "Table J3.2");
            Ok(Worked::new(force, vec![strength, Step::new("steel in tension", says, citation)]))
        }
        FastenerKind::WoodScrew | FastenerKind::Nail => Err(Refused::because(format!(
            "What the steel of a {} carries in tension is its maker's to say.",
            fastener.name
        ))),
    }
}

/// The ring of wood under a round washer, W across: π/4·(W² − (D + 1/16 in)²). A square washer is counted as the round one in it.
///
/// # Errors
/// For a washer that is missing or no wider than its hole.
pub fn washer_area(washer: Length, diameter: Length) -> Result<Worked<Area>, Refused> {
    above_zero("the width of the washers", washer.to_inches())?;
    let hole = diameter + ROOM_IN_HOLE;
    if washer <= hole {
        return Err(Refused::because(format!(
            "A washer {} in across is no wider than its hole of {} in: take a wider one.",
            inches(washer),
            inches(hole)
        )));
    }
    let area = (washer * washer - hole * hole) * (PI / 4.0);
    let says = format!(
        "A = π/4·(W² − (D + 1/16)²) = π/4·({}² − {}²) = {} in²",
        inches(washer),
        inches(hole),
        square_inches(area)
    );
    let citation = Citation::common_practice("a washer's hole is 1/16 in wider than its bolt");
    Ok(Worked::new(area, vec![Step::new("ring under the washer", says, citation)]))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::fastening::fastener;

    fn steel(key: &str) -> f64 {
        steel_tension(fastener(key).unwrap()).unwrap().value.to_pounds()
    }

    /// AISC 360 Table 7-2 prints 4.42 kips for a ½ in A307 bolt and 9.94 for ¾ in (from memory); a ½ in lag screw by hand:
    /// 30,000·π·0.371²/4 = 3243 lb.
    #[test]
    fn steel_by_its_threads() {
        assert!((steel("bolt_1_2") - 4417.9).abs() < 0.1);
        assert!((steel("bolt_3_4") - 9940.2).abs() < 0.1);
        assert!((steel("lag_1_2") - 3243.1).abs() < 0.1);
        assert!(steel_tension(fastener("wood_screw_14").unwrap()).is_err());
        assert!(steel_tension(fastener("nail_131").unwrap()).is_err());
    }

    /// 1 3/8 in over a ½ in bolt: π/4·(1.8906 − 0.3164) = 1.2364 in².
    #[test]
    fn rings() {
        let ring = |washer: f64| washer_area(Length::inches(washer), Length::inches(0.5));
        assert!((ring(1.375).unwrap().value.to_square_inches() - 1.2364).abs() < 1e-4);
        assert!(ring(0.5625).is_err() && ring(0.5626).is_ok());
        assert!(ring(0.0).is_err_and(|why| why.sentence().contains("width of the washers")));
    }
}

//! What only lag screws need: length of thread, its steel, and the stepped hole they are driven into.
use std::f64::consts::PI;

use super::Refused;
use super::fastener::{Fastener, FastenerKind};
use super::refused::above_zero;
use super::written::{inches, number, pounds, psi};
use crate::units::{Force, Length, Stress};
use crate::working::{Citation, Step, Worked};

/// Thread length T of a lag screw: half its length and ½ in, at most 6 in; a short one is threaded over its whole length.
#[must_use]
pub fn lag_thread(length: Length) -> Length {
    (length * 0.5 + Length::inches(0.5)).min(Length::inches(6.0)).min(length)
}

/// Thread that holds in the main member: T or what reaches past the side member, the lesser, without the tip E.
///
/// # Errors
/// When it is no lag screw or no thread reaches the main member.
pub fn lag_thread_in_main(lag: &Fastener, length: Length, side: Length) -> Result<Worked<Length>, Refused> {
    if lag.kind != FastenerKind::LagScrew {
        return Err(Refused::because(format!("The {} is no lag screw: its thread is not known.", lag.name)));
    }
    let thread = lag_thread(length);
    let held = thread.min(length - side) - lag.tip;
    if held <= Length::ZERO {
        return Err(Refused::because(format!(
            "A {} {} in long leaves no thread in the main member past {} in: take a longer one.",
            lag.name,
            inches(length),
            inches(side)
        )));
    }
    let says = format!(
        "p = min(T, L − t_s) − E = min({}, {} − {}) − {} = {} in",
        inches(thread),
        inches(length),
        inches(side),
        inches(lag.tip),
        inches(held)
    );
    let citation = Citation::from_memory("NDS 2015", "App. L Table L2");
    Ok(Worked::new(held, vec![Step::new("p, thread in the main member", says, citation)]))
}

/// What the steel carries in tension at the root: F·π·D_r²/4. The allowable tension stress of the steel comes from the
/// screw's maker: no value is built in.
///
/// # Errors
/// When no stress is given.
pub fn lag_steel_tension(lag: &Fastener, allowable: Stress) -> Result<Worked<Force>, Refused> {
    above_zero("the allowable tension stress of the steel, from the maker", allowable.to_psi())?;
    let root = lag.shear_diameter;
    let force = allowable * (root * root * (PI / 4.0));
    let says = format!("F·π·D_r²/4 = {}·π·{}²/4 = {} lb", psi(allowable), inches(root), pounds(force));
    let citation = Citation::from_memory("NDS 2015", "12.2.1, tension at the root");
    Ok(Worked::new(force, vec![Step::new("steel in tension", says, citation)]))
}

/// The stepped hole of a lag screw.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeadHole {
    /// For the smooth shank.
    pub shank: Length,
    /// For the thread, at least.
    pub thread_from: Length,
    /// For the thread, at most.
    pub thread_to: Length,
}

/// Holes for a lag screw: as wide as the shank there; under the thread 40–70 % of it in wood of G ≤ 0.5, 60–75 % up to
/// 0.6, 65–85 % above.
///
/// # Errors
/// When it is no lag screw.
pub fn lag_lead_hole(lag: &Fastener, gravity: f64) -> Result<Worked<LeadHole>, Refused> {
    if lag.kind != FastenerKind::LagScrew {
        return Err(Refused::because(format!("The {} is no lag screw: take the hole its maker names.", lag.name)));
    }
    let (from, to) = match gravity {
        light if light <= 0.5 => (0.40, 0.70),
        middle if middle <= 0.6 => (0.60, 0.75),
        _ => (0.65, 0.85),
    };
    let hole = LeadHole { shank: lag.diameter, thread_from: lag.diameter * from, thread_to: lag.diameter * to };
    let says = format!(
        "G = {}: thread hole {:.0}–{:.0} % of {} in = {}–{} in",
        number(gravity),
        from * 100.0,
        to * 100.0,
        inches(lag.diameter),
        inches(hole.thread_from),
        inches(hole.thread_to)
    );
    Ok(Worked::new(hole, vec![Step::new("lead holes", says, Citation::from_memory("NDS 2015", "12.1.4"))]))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::fastening::fastener;

    fn lag() -> &'static Fastener {
        fastener("lag_1_2").unwrap()
    }

    #[test]
    fn thread_is_half_and_a_half_inch() {
        for (length, thread) in [(1.0, 1.0), (0.5, 0.5), (6.0, 3.5), (11.0, 6.0), (14.0, 6.0)] {
            assert_eq!(lag_thread(Length::inches(length)), Length::inches(thread), "{length}");
        }
    }

    #[test]
    fn the_tip_and_the_side_member_take_from_it() {
        let held = |length: f64, side: f64| lag_thread_in_main(lag(), Length::inches(length), Length::inches(side));
        assert_eq!(held(6.0, 1.5).unwrap().value, Length::inches(3.5 - 0.3125));
        assert_eq!(held(6.0, 3.5).unwrap().value, Length::inches(2.5 - 0.3125));
        assert!(held(4.0, 3.75).is_err());
        assert!(lag_thread_in_main(fastener("bolt_1_2").unwrap(), Length::inches(6.0), Length::inches(1.5)).is_err());
    }

    #[test]
    fn steel_and_holes() {
        let pull = lag_steel_tension(lag(), Stress::psi(20_000.0)).unwrap().value;
        // 20,000·π·0.371²/4 = 2162 lb, by hand.
        assert!((pull.to_pounds() - 2162.1).abs() < 0.1);
        assert!(lag_steel_tension(lag(), Stress::ZERO).is_err());
        let hole = |gravity: f64| lag_lead_hole(lag(), gravity).unwrap().value.thread_to.to_inches();
        assert_eq!([hole(0.5), hole(0.6), hole(0.61)], [0.35, 0.375, 0.425]);
        assert!(lag_lead_hole(fastener("nail_131").unwrap(), 0.5).is_err());
    }
}

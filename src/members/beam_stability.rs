//! `C_L`: a deep beam may roll over sideways (NDS 3.3.3).
use crate::units::{Length, Stress};
use crate::working::{Citation, Step, Worked};

use super::adjusted::{adjusted, bending_before_stability};
use super::figures::{inches, number, psi};
use super::{Member, Property, Refused};

/// The most a beam's slenderness ratio may be.
const SLENDEREST: f64 = 50.0;

/// How a length without side support is loaded (rows of NDS Table 3.3.3).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UnbracedCase {
    /// Cantilever, load spread along it.
    CantileverUniform,
    /// Cantilever, load at its tip.
    CantileverTip,
    /// One span, load spread along it.
    SpanUniform,
    /// One span, load at the middle, not held there.
    SpanCentreFree,
    /// One span, load at the middle, held there.
    SpanCentreHeld,
    /// One span, so many equal loads at equal spaces, held at each: two or more.
    SpanLoadsHeld(usize),
    /// Equal moments at both ends.
    EqualEndMoments,
    /// Anything else.
    Other,
}

/// How the pressed edge of a beam is kept from moving sideways.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Bracing {
    /// Held along its length, its ends kept from rolling.
    Held,
    /// Free over a length, loaded in a way.
    Free {
        /// Distance between points of side support.
        length: Length,
        /// How it is loaded.
        case: UnbracedCase,
    },
}

/// What came out for one beam.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BeamStability {
    /// `C_L`.
    pub factor: f64,
    /// `F_bE`, the stress at which it would roll over; none where it cannot.
    pub critical: Option<Stress>,
}

/// Effective length `l_e` of an unbraced length `l_u` in a beam of depth `d`.
///
/// # Errors
/// For fewer than two held loads, or a length or depth that is not above zero.
pub fn unbraced_length(case: UnbracedCase, length: Length, depth: Length) -> Result<Worked<Length>, Refused> {
    if length <= Length::ZERO || depth <= Length::ZERO {
        return Err(Refused::because("Rolling over needs a length between side supports and a depth above zero."));
    }
    let seen = Citation::seen("NDS as restated in an engineering wiki", "Table 3.3.3");
    let recalled = Citation::from_memory("NDS 2018", "Table 3.3.3");
    let slenderness = length / depth;
    let plus_depth = |short: f64, long: f64| if slenderness < 7.0 { (short, 0.0) } else { (long, 3.0) };
    let ((share, depths), citation) = match case {
        UnbracedCase::CantileverUniform => (plus_depth(1.33, 0.90), seen),
        UnbracedCase::CantileverTip => (plus_depth(1.87, 1.44), seen),
        UnbracedCase::SpanUniform => (plus_depth(2.06, 1.63), seen),
        UnbracedCase::SpanCentreFree => (plus_depth(1.80, 1.37), seen),
        UnbracedCase::SpanCentreHeld => ((1.11, 0.0), seen),
        UnbracedCase::SpanLoadsHeld(2 | 4) => ((1.68, 0.0), seen),
        UnbracedCase::SpanLoadsHeld(3) => ((1.54, 0.0), seen),
        UnbracedCase::SpanLoadsHeld(5) => ((1.73, 0.0), recalled),
        UnbracedCase::SpanLoadsHeld(6) => ((1.78, 0.0), recalled),
        UnbracedCase::SpanLoadsHeld(0 | 1) => {
            return Err(Refused::because("One held load is the row of a load at the middle; ask for that row."));
        }
        UnbracedCase::SpanLoadsHeld(_) => ((1.84, 0.0), recalled),
        UnbracedCase::EqualEndMoments => ((1.84, 0.0), seen),
        UnbracedCase::Other if slenderness > 14.3 => ((1.84, 0.0), seen),
        UnbracedCase::Other => (plus_depth(2.06, 1.63), seen),
    };
    let effective = length * share + depth * depths;
    let depth_words = if depths > 0.0 { format!(" + 3·{}", inches(depth)) } else { String::new() };
    let says = format!(
        "l_e = {}·{}{depth_words} = {} in (l_u/d = {})",
        number(share),
        inches(length),
        inches(effective),
        number(slenderness)
    );
    Ok(Worked::new(effective, vec![Step::new("Effective unbraced length", says, citation)]))
}

/// `C_L` from `F = F_bE/F_b*`: `(1+F)/1.9 − √(((1+F)/1.9)² − F/0.95)` (NDS Eq. 3.3-6, from memory).
#[must_use]
pub fn beam_stability_from_ratio(f: f64) -> f64 {
    let half = (1.0 + f) / 1.9;
    half - (half * half - f / 0.95).sqrt()
}

/// `C_L` of a member, with `R_B = √(l_e·d/b²) ≤ 50` and `F_bE = 1.20·E_min'/R_B²`.
///
/// # Errors
/// Where the slenderness ratio is over 50 or a length is missing.
pub fn beam_stability(member: &Member, bracing: Bracing) -> Result<Worked<BeamStability>, Refused> {
    let recalled = Citation::from_memory("NDS 2018", "3.3.3");
    let one = |why: &str, critical| {
        let step = Step::new("C_L", format!("C_L = 1.0: {why}"), recalled);
        Ok(Worked::new(BeamStability { factor: 1.0, critical }, vec![step]))
    };
    let Bracing::Free { length, case } = bracing else {
        return one("the pressed edge is held along its length", None);
    };
    let section = member.section();
    let effective = unbraced_length(case, length, section.depth)?;
    let (b, d, le) = (section.breadth.to_inches(), section.depth.to_inches(), effective.value.to_inches());
    let ratio = (le * d / (b * b)).sqrt();
    if ratio > SLENDEREST {
        return Err(Refused::because(format!(
            "The beam's slenderness ratio is {}, over the limit of 50: hold it at shorter lengths or make it wider.",
            number(ratio)
        )));
    }
    let stiffness = adjusted(member, Property::LeastStiffness);
    let critical = stiffness.value * (1.2 / (ratio * ratio));
    if d <= b {
        return one("not deeper than wide", Some(critical));
    }
    let f = critical / bending_before_stability(member);
    let factor = beam_stability_from_ratio(f);
    let mut steps = effective.steps;
    let shown = stability_steps(member, effective.value, ratio, stiffness.value, critical);
    steps.extend(stiffness.steps);
    steps.extend(shown);
    Ok(Worked::new(BeamStability { factor, critical: Some(critical) }, steps))
}

/// `R_B`, `F_bE` and `C_L` with their numbers.
fn stability_steps(member: &Member, effective: Length, ratio: f64, stiffness: Stress, critical: Stress) -> [Step; 3] {
    let section = member.section();
    let before = bending_before_stability(member);
    let slenderness = format!(
        "R_B = √(l_e·d/b²) = √({}·{}/{}²) = {}, at most 50",
        inches(effective),
        inches(section.depth),
        inches(section.breadth),
        number(ratio)
    );
    let rolling = format!(
        "F_bE = 1.20·E_min'/R_B² = 1.20·{}/{}² = {} psi",
        psi(stiffness.to_psi()),
        number(ratio),
        psi(critical.to_psi())
    );
    let factor = format!(
        "F = F_bE/F_b* = {}/{} = {}; C_L = (1+F)/1.9 − √(((1+F)/1.9)² − F/0.95) = {}",
        psi(critical.to_psi()),
        psi(before.to_psi()),
        number(critical / before),
        number(beam_stability_from_ratio(critical / before))
    );
    let seen = Citation::seen("university wood course CE 5260, lateral stability", "Eq. 3.3-5");
    [
        Step::new("Slenderness ratio R_B", slenderness, seen),
        Step::new("F_bE", rolling, Citation::from_memory("NDS 2018", "3.3.3")),
        Step::new("C_L", factor, Citation::from_memory("NDS 2018", "Eq. 3.3-6")),
    ]
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::members::test_members::{dry, inches as section};

    fn check(case: UnbracedCase, ratio: f64, expected: f64) {
        let found = unbraced_length(case, Length::inches(10.0 * ratio), Length::inches(10.0)).unwrap().value;
        assert!((found.to_inches() - expected).abs() < 1e-9, "{case:?} at {ratio}: {found:?}");
    }

    /// NDS Table 3.3.3 as restated in an engineering wiki; 5 and more held loads from memory. Depth 10 in.
    #[test]
    fn every_row_of_effective_lengths() {
        use UnbracedCase as Case;
        for (case, short, long, add) in [
            (Case::CantileverUniform, 1.33, 0.90, 30.0),
            (Case::CantileverTip, 1.87, 1.44, 30.0),
            (Case::SpanUniform, 2.06, 1.63, 30.0),
            (Case::SpanCentreFree, 1.80, 1.37, 30.0),
            (Case::SpanCentreHeld, 1.11, 1.11, 0.0),
            (Case::SpanLoadsHeld(2), 1.68, 1.68, 0.0),
            (Case::SpanLoadsHeld(3), 1.54, 1.54, 0.0),
            (Case::SpanLoadsHeld(4), 1.68, 1.68, 0.0),
            (Case::SpanLoadsHeld(5), 1.73, 1.73, 0.0),
            (Case::SpanLoadsHeld(6), 1.78, 1.78, 0.0),
            (Case::SpanLoadsHeld(7), 1.84, 1.84, 0.0),
            (Case::SpanLoadsHeld(12), 1.84, 1.84, 0.0),
            (Case::EqualEndMoments, 1.84, 1.84, 0.0),
            (Case::Other, 2.06, 1.63, 30.0),
        ] {
            check(case, 6.9, short * 69.0);
            check(case, 7.0, long * 70.0 + add);
        }
        check(Case::Other, 14.3, 1.63 * 143.0 + 30.0);
        check(Case::Other, 14.4, 1.84 * 144.0);
        assert!(unbraced_length(Case::SpanLoadsHeld(1), Length::feet(5.0), Length::inches(8.0)).is_err());
        assert!(unbraced_length(Case::Other, Length::ZERO, Length::inches(8.0)).is_err());
    }

    #[test]
    fn held_square_or_too_slender() {
        let free = |feet: f64| Bracing::Free { length: Length::feet(feet), case: UnbracedCase::SpanUniform };
        let plank = dry("Hem-Fir", section(2.0, 12.0));
        assert_eq!(beam_stability(&plank, Bracing::Held).unwrap().value.factor, 1.0);
        assert!(beam_stability(&plank, free(4.0)).unwrap().value.factor < 1.0);
        assert!(beam_stability(&plank, free(60.0)).unwrap_err().0.contains("over the limit of 50"));
        let square = beam_stability(&dry("Hem-Fir", section(6.0, 6.0)), free(12.0)).unwrap().value;
        assert!((square.factor - 1.0).abs() < 1e-12 && square.critical.is_some());
    }
}

//! Deflection: stiffness, creep (NDS 3.5.2) and limits (IBC Table 1604.3).
use crate::units::{Fixed, Length, Stress};
use crate::working::{Citation, Step, Worked};

use super::adjusted::adjusted;
use super::figures::{inches, number};
use super::{Member, Property, Refused, Verdict};

/// What hangs below the roof.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Ceiling {
    /// Plaster.
    Plaster,
    /// Any other ceiling.
    Other,
    /// None: the frame is seen.
    #[default]
    None,
}

/// Which load the limit is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DeflectionCase {
    /// Roof live load.
    Live,
    /// Snow or wind.
    SnowOrWind,
    /// Dead with live.
    DeadAndLive,
}

/// Which part of the roof.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RoofMember {
    /// Rafter, beam.
    Main,
    /// A stick that carries formed metal sheets, no ceiling below.
    UnderMetalSheets,
}

/// How moist the wood is when it goes in and in use.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Drying {
    /// Seasoned and kept dry.
    SeasonedDry,
    /// Green when it goes in, or wet in use.
    GreenOrWet,
}

impl Drying {
    /// `K_cr` and where it stands.
    const fn creep(self) -> (f64, Citation) {
        match self {
            Self::SeasonedDry => (1.5, Citation::from_memory("NDS 2018", "3.5.2")),
            Self::GreenOrWet => (2.0, Citation::from_memory("NDS 2018", "3.5.2")),
        }
    }
}

/// `E'`.
#[must_use]
pub fn stiffness(member: &Member) -> Worked<Stress> {
    adjusted(member, Property::Stiffness)
}

/// The most a roof stick may bend (IBC Table 1604.3, from memory). A cantilever counts as a span of twice its length.
#[must_use]
pub fn deflection_limit(
    span: Length,
    is_cantilever: bool,
    part: RoofMember,
    ceiling: Ceiling,
    case: DeflectionCase,
) -> Worked<Length> {
    let is_total = case == DeflectionCase::DeadAndLive;
    let metal = part == RoofMember::UnderMetalSheets && ceiling == Ceiling::None && case == DeflectionCase::Live;
    let (share, clause): (f64, _) = match ceiling {
        _ if metal => (150.0, "Table 1604.3, note for formed metal roofing"),
        Ceiling::Plaster => (if is_total { 240.0 } else { 360.0 }, "Table 1604.3"),
        Ceiling::Other => (if is_total { 180.0 } else { 240.0 }, "Table 1604.3"),
        Ceiling::None => (if is_total { 120.0 } else { 180.0 }, "Table 1604.3"),
    };
    let length = if is_cantilever { span * 2.0 } else { span };
    let limit = length / share;
    let words = if is_cantilever { "2l" } else { "l" };
    let says = format!("{words}/{share} = {}/{share} = {} in", inches(length), inches(limit), share = Fixed(share, 0));
    Worked::new(limit, vec![Step::new("Deflection allowed", says, Citation::from_memory("IBC 2018", clause))])
}

/// `Δ = K_cr·Δ_long + Δ_short`: what a stick will have bent after years (NDS 3.5.2).
#[must_use]
pub fn long_term_deflection(long: Length, short: Length, drying: Drying) -> Worked<Length> {
    let (creep, citation) = drying.creep();
    let total = long * creep + short;
    let says = format!(
        "Δ = K_cr·Δ_long + Δ_short = {}·{} + {} = {} in",
        number(creep),
        inches(long),
        inches(short),
        inches(total)
    );
    Worked::new(total, vec![Step::new("Deflection after years", says, citation)])
}

/// The deflection to hold against the dead-with-live limit: live, and creep as the immediate deflection from half the dead
/// load (dry when it goes in and in use) or from all of it (IBC Table 1604.3 note d).
#[must_use]
pub fn deflection_for_dead_and_live(dead: Length, live: Length, drying: Drying) -> Worked<Length> {
    let share = match drying {
        Drying::SeasonedDry => 0.5,
        Drying::GreenOrWet => 1.0,
    };
    let total = dead * share + live;
    let says = format!(
        "Δ = {}·Δ_D + Δ_L = {}·{} + {} = {} in",
        number(share),
        number(share),
        inches(dead),
        inches(live),
        inches(total)
    );
    let citation = Citation::seen("AWC FAQ on NDS 3.5", "IBC Table 1604.3 note d");
    Worked::new(total, vec![Step::new("Deflection under dead and live", says, citation)])
}

/// A deflection, up or down, against what is allowed.
///
/// # Errors
/// When the limit is not above zero.
pub fn check_deflection(found: Length, limit: Worked<Length>) -> Result<Worked<Verdict>, Refused> {
    if limit.value <= Length::ZERO {
        return Err(Refused::because("A deflection limit needs a span above zero."));
    }
    Ok(Worked::new(Verdict::length(found.abs(), limit.value), limit.steps))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    fn share(part: RoofMember, ceiling: Ceiling, case: DeflectionCase) -> f64 {
        let limit = deflection_limit(Length::inches(360.0), false, part, ceiling, case);
        360.0 / limit.value.to_inches()
    }

    /// IBC Table 1604.3, roof members, from memory.
    #[test]
    fn every_limit_of_the_table() {
        use DeflectionCase::{DeadAndLive, Live, SnowOrWind};
        for (ceiling, live, snow, total) in [
            (Ceiling::Plaster, 360.0, 360.0, 240.0),
            (Ceiling::Other, 240.0, 240.0, 180.0),
            (Ceiling::None, 180.0, 180.0, 120.0),
        ] {
            for (case, expected) in [(Live, live), (SnowOrWind, snow), (DeadAndLive, total)] {
                assert!((share(RoofMember::Main, ceiling, case) - expected).abs() < 1e-9);
            }
        }
        assert!((share(RoofMember::UnderMetalSheets, Ceiling::None, Live) - 150.0).abs() < 1e-9);
        assert!((share(RoofMember::UnderMetalSheets, Ceiling::None, SnowOrWind) - 180.0).abs() < 1e-9);
        assert!((share(RoofMember::UnderMetalSheets, Ceiling::Other, Live) - 240.0).abs() < 1e-9);
    }

    #[test]
    fn a_cantilever_counts_twice() {
        let limit = |cantilever| {
            deflection_limit(Length::inches(18.0), cantilever, RoofMember::Main, Ceiling::None, DeflectionCase::Live)
                .value
        };
        assert_eq!(limit(true), limit(false) * 2.0);
    }

    #[test]
    fn creep_by_moisture() {
        let (long, short) = (Length::inches(0.2), Length::inches(0.1));
        let years = |drying| long_term_deflection(long, short, drying).value.to_inches();
        assert!((years(Drying::SeasonedDry) - 0.4).abs() < 1e-12);
        assert!((years(Drying::GreenOrWet) - 0.5).abs() < 1e-12);
        let limited = |drying| deflection_for_dead_and_live(long, short, drying).value.to_inches();
        assert!((limited(Drying::SeasonedDry) - 0.2).abs() < 1e-12);
        assert!((limited(Drying::GreenOrWet) - 0.3).abs() < 1e-12);
    }

    #[test]
    fn either_way_counts() {
        let limit =
            || deflection_limit(Length::inches(180.0), false, RoofMember::Main, Ceiling::None, DeflectionCase::Live);
        let verdict = check_deflection(Length::inches(-0.5), limit()).unwrap().value;
        assert!((verdict.ratio - 0.5).abs() < 1e-12);
        let none = deflection_limit(Length::ZERO, false, RoofMember::Main, Ceiling::None, DeflectionCase::Live);
        assert!(check_deflection(Length::ZERO, none).is_err());
    }
}

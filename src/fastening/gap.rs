//! A fastener that crosses a gap between two members: packing that carries nothing, ribs of a cladding.
//!
//! ```text
//!      main |   g   | side
//!   ========|-------|=====o     the dowel bends on its way across: every mode but crushing gives way sooner
//! ```
use super::Refused;
use super::bearing::{Material, dowel_bearing};
use super::dowel::{Dowel, Mode, YieldLoad, least};
use super::fastener::Fastener;
use super::lateral::{LateralValue, Member, single_shear};
use super::written::{inches, number, pounds};
use crate::units::{Force, Length};
use crate::working::{Citation, Step, Worked};

/// AWC Technical Report 12, from memory; at no gap the equations are those of the NDS, which the tests hold them to.
const CITED: Citation = Citation::from_memory("AWC TR12", "general dowel equations, with a gap");

/// The load of a mode across a gap g, before its reduction: P = (−B + √(B² − 4·A·C))/2A with q = F_e·D and M = F_yb·D³/6.
///
/// Mode II: A = 1/4q_s + 1/4q_m, B = l_s/2 + g + l_m/2, C = −q_s·l_s²/4 − q_m·l_m²/4; a member in which the dowel bends
/// has 1/2q, nothing and M in place of 1/4q, l/2 and q·l²/4. Crushing alone does not mind a gap.
#[must_use]
pub fn yield_load_over_gap(dowel: &Dowel, mode: Mode, gap: Length) -> Force {
    let d = dowel.diameter.to_inches();
    let (qm, qs) = (dowel.main_bearing.to_psi() * d, dowel.side_bearing.to_psi() * d);
    let (lm, ls) = (dowel.main_length.to_inches(), dowel.side_length.to_inches());
    let plastic = dowel.bending_yield.to_psi() * d.powi(3) / 6.0;
    // (share of A, share of B, moment) of a member in which the dowel stays straight, and in which it bends.
    let stiff = |q: f64, l: f64| (0.25 / q, l / 2.0, q * l * l / 4.0);
    let bent = |q: f64| (0.5 / q, 0.0, plastic);
    let (main, side) = match mode {
        Mode::II => (stiff(qm, lm), stiff(qs, ls)),
        Mode::IIIm => (stiff(qm, lm), bent(qs)),
        Mode::IIIs => (bent(qm), stiff(qs, ls)),
        Mode::IV => (bent(qm), bent(qs)),
        Mode::Im | Mode::Is | Mode::V => return dowel.yield_load(mode),
    };
    let (a, b, c) = (main.0 + side.0, main.1 + side.1 + gap.to_inches(), -main.2 - side.2);
    Force::pounds(((b * b - 4.0 * a * c).sqrt() - b) / (2.0 * a))
}

/// Z of a fastener through a side member, over a gap, into a main member: one shear plane, the least of six modes.
///
/// Side grain only. The reductions are those of members that touch.
///
/// # Errors
/// As [`single_shear`], for a gap below zero and for a fastener in end grain.
pub fn single_shear_over_gap(
    fastener: &Fastener,
    main: &Member,
    side: &Member,
    gap: Length,
) -> Result<Worked<LateralValue>, Refused> {
    if gap.is_negative() {
        return Err(Refused::because("The gap between two members is zero or more."));
    }
    if main.is_end_grain || side.is_end_grain {
        return Err(Refused::because("Over a gap only fasteners in side grain are worked out."));
    }
    let touching = single_shear(fastener, main, side)?;
    let bearing = |member: &Member| dowel_bearing(member.material, fastener.diameter, angle(member));
    let dowel = Dowel {
        diameter: fastener.shear_diameter,
        bending_yield: fastener.bending_yield,
        main_length: main.bearing_length,
        side_length: side.bearing_length,
        main_bearing: bearing(main)?.value,
        side_bearing: bearing(side)?.value,
    };
    let mut steps = touching.steps;
    let mut modes = Vec::new();
    for YieldLoad { mode, load } in touching.value.modes {
        let share = yield_load_over_gap(&dowel, mode, gap) / yield_load_over_gap(&dowel, mode, Length::ZERO);
        let over = load * share;
        if share < 1.0 {
            let says = format!("g = {} in: {}·{} = {} lb", inches(gap), pounds(load), number(share), pounds(over));
            steps.push(Step::new(format!("Z of mode {mode:?} over the gap"), says, CITED));
        }
        modes.push(YieldLoad { mode, load: over });
    }
    let governing = least(&modes)?;
    let says = format!(
        "Z = {} lb over the gap, mode {:?}: {}",
        pounds(governing.load),
        governing.mode,
        governing.mode.words()
    );
    steps.push(Step::new("Z, reference lateral value", says, CITED));
    Ok(Worked::new(LateralValue { reference: governing.load, mode: governing.mode, modes }, steps))
}

/// Steel and concrete know no grain.
const fn angle(member: &Member) -> crate::units::Angle {
    match member.material {
        Material::Wood { .. } => member.angle,
        Material::SheetSteel | Material::SteelPlate | Material::Concrete => crate::units::Angle::ZERO,
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::fastening::fastener;
    use crate::units::{Angle, Stress};

    const DOWEL: Dowel = Dowel {
        diameter: Length::inches(0.471),
        bending_yield: Stress::psi(45_000.0),
        main_length: Length::inches(5.4),
        side_length: Length::inches(4.0),
        main_bearing: Stress::psi(5600.0),
        side_bearing: Stress::psi(2800.0),
    };
    const MODES: [Mode; 6] = [Mode::Im, Mode::Is, Mode::II, Mode::IIIm, Mode::IIIs, Mode::IV];

    /// Without a gap every mode is that of the NDS equations, which were compared with its printed tables.
    #[test]
    fn no_gap_is_the_printed_equation() {
        for (main_length, side_length) in [(5.4, 4.0), (1.5, 1.5), (3.5, 1.5), (1.0, 6.0)] {
            let dowel =
                Dowel { main_length: Length::inches(main_length), side_length: Length::inches(side_length), ..DOWEL };
            for mode in MODES {
                let (found, printed) = (yield_load_over_gap(&dowel, mode, Length::ZERO), dowel.yield_load(mode));
                assert!((found / printed - 1.0).abs() < 1e-9, "{mode:?}: {found:?} is not {printed:?}");
            }
        }
    }

    /// Over a wide gap two plastic hinges a distance g apart carry 2M/g and no more, and come near to it.
    #[test]
    fn a_wide_gap_is_two_hinges() {
        let gap = 40.0;
        let found = yield_load_over_gap(&DOWEL, Mode::IV, Length::inches(gap)).to_pounds();
        let hinges = 2.0 * (45_000.0 * 0.471_f64.powi(3) / 6.0) / gap;
        assert!(found < hinges && found > hinges * 0.99, "{found} {hinges}");
    }

    #[test]
    fn a_gap_only_weakens() {
        let lag = fastener("lag_5_8").unwrap();
        let main = Member::wood(0.50, Length::inches(5.4), Angle::ZERO);
        let side = Member::wood(0.50, Length::inches(4.0), Angle::RIGHT);
        let at = |gap: f64| single_shear_over_gap(lag, &main, &side, Length::inches(gap)).map(|found| found.value);
        assert_eq!(at(0.0).unwrap().reference, single_shear(lag, &main, &side).unwrap().value.reference);
        let values: Vec<f64> = [0.0, 0.25, 0.75, 1.5].map(|gap| at(gap).unwrap().reference.to_pounds()).to_vec();
        assert!(values.windows(2).all(|pair| pair[1] < pair[0]), "{values:?}");
        assert!(at(-0.1).is_err());
        let end = Member { is_end_grain: true, ..main };
        assert!(single_shear_over_gap(lag, &end, &side, Length::ZERO).is_err());
    }
}

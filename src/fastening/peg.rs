//! A pegged mortise and tenon: the peg as a wooden dowel in double shear, the tenon between the mortise walls.
//!
//! ```text
//!    wall | tenon | wall      l_s, l_m, l_s bearing lengths; the peg runs through all three
//!   ======|=======|======     load along the tenon: along its grain, across the mortised timber's
//! ```
//! TFEC 1 as recalled (its body was not seen). Pegs are thought of in tension of the tenon only: a brace in compression
//! bears on its shoulder.
use std::f64::consts::PI;

use super::Refused;
use super::bearing::hankinson;
use super::dowel::{Dowel, Mode, YieldLoad, least};
use super::lateral::LateralValue;
use super::refused::above_zero;
use super::written::{inches, number, pounds, psi};
use crate::units::{Angle, Force, Length, Stress};
use crate::working::{Citation, Step, Worked};

/// What no value here answers for.
pub const SPLITTING_NOT_COVERED: &str = "Splitting of the mortised timber across its grain is not covered: no design \
    value for tension across the grain is known. Keep the distances to end and edge, and have an engineer look at a pegged \
    joint that hangs a load.";

/// The moisture factor of pegs is missing.
pub const GREEN_PEGS_MISSING: &str = "The moisture factor of pegged joints in green timber is not known here (TFEC 1 was \
    not seen): none is applied, and the value counts for joints that dry slowly around dry pegs.";

const CITED: Citation = Citation::from_memory("TFEC 1-10", "pegs in double shear");

/// One peg through a tenon.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PegJoint {
    /// Diameter of the peg.
    pub diameter: Length,
    /// Specific gravity of the peg, G_p.
    pub peg_gravity: f64,
    /// Specific gravity of the timber, G_t.
    pub timber_gravity: f64,
    /// Thickness of the tenon.
    pub tenon: Length,
    /// Thickness of the mortise wall, the thinner of the two.
    pub wall: Length,
    /// Load to the tenon's grain: 0° when the tenon is pulled out.
    pub tenon_angle: Angle,
    /// Load to the mortised timber's grain: 90° for a square joint.
    pub wall_angle: Angle,
}

impl PegJoint {
    /// A tenon pulled straight out of a timber it meets at a right angle.
    #[must_use]
    pub const fn pulled(diameter: Length, [peg, timber]: [f64; 2], tenon: Length, wall: Length) -> Self {
        let (tenon_angle, wall_angle) = (Angle::ZERO, Angle::RIGHT);
        Self { diameter, peg_gravity: peg, timber_gravity: timber, tenon, wall, tenon_angle, wall_angle }
    }

    fn within(&self) -> Result<(), Refused> {
        if self.diameter < Length::inches(0.75) || self.diameter > Length::inches(1.25) {
            return Err(Refused::because(format!(
                "The values of pegs are for ¾ to 1¼ in; this one is {} in.",
                inches(self.diameter)
            )));
        }
        if !(0.57..=0.73).contains(&self.peg_gravity) {
            return Err(Refused::because(format!(
                "Pegs are straight-grained hardwood of G 0.57 to 0.73; {:.2} is outside.",
                self.peg_gravity
            )));
        }
        if !(0.25..=0.90).contains(&self.timber_gravity) {
            return Err(Refused::because(format!(
                "A specific gravity of {:.2} belongs to no building wood.",
                self.timber_gravity
            )));
        }
        if self.peg_gravity < self.timber_gravity {
            return Err(Refused::because("A peg must not be lighter than the timber it holds: take a denser wood."));
        }
        let allowed = Angle::ZERO..=Angle::degrees(90.000_001);
        if !allowed.contains(&self.tenon_angle) || !allowed.contains(&self.wall_angle) {
            return Err(Refused::because(
                "The load stands at 0° (along the grain) to 90° (across it): give such an angle.",
            ));
        }
        Ok(())
    }

    /// F_vy = 4850·G_p·G_t^0.75: shear of the peg at yield.
    fn shear_yield(&self) -> Stress {
        Stress::psi(4850.0 * self.peg_gravity * self.timber_gravity.powf(0.75))
    }

    /// F_e∥ = 4770·G_p^1.32.
    fn bearing_along(&self) -> Stress {
        Stress::psi(4770.0 * self.peg_gravity.powf(1.32))
    }

    /// F_e⊥ = 4900·G_p·√G_t.
    fn bearing_across(&self) -> Stress {
        Stress::psi(4900.0 * self.peg_gravity * self.timber_gravity.sqrt())
    }

    /// F_yb = 24,850·G_p^1.13, of the 2010 edition.
    fn bending_yield(&self) -> Stress {
        Stress::psi(24_850.0 * self.peg_gravity.powf(1.13))
    }

    fn strengths(&self) -> Vec<Step> {
        let (gp, gt) = (self.peg_gravity, self.timber_gravity);
        let along = format!("F_e∥ = 4770·G_p^1.32 = 4770·{gp:.2}^1.32 = {} psi", psi(self.bearing_along()));
        let across = format!("F_e⊥ = 4900·G_p·√G_t = 4900·{gp:.2}·√{gt:.2} = {} psi", psi(self.bearing_across()));
        let bend = format!("F_yb = 24,850·G_p^1.13 = 24,850·{gp:.2}^1.13 = {} psi", psi(self.bending_yield()));
        let shear = format!("F_vy = 4850·G_p·G_t^0.75 = 4850·{gp:.2}·{gt:.2}^0.75 = {} psi", psi(self.shear_yield()));
        vec![
            Step::new("F_e∥, peg on timber along the grain", along, CITED),
            Step::new("F_e⊥, peg on timber across the grain", across, CITED),
            Step::new("F_yb, bending yield of the peg", bend, CITED),
            Step::new("F_vy, shear yield of the peg", shear, CITED),
        ]
    }
}

/// Z of one peg in double shear: the least of I_m, I_s, III_s and V, Z_V = π·D²·F_vy/(2·R_d).
///
/// R_d is 4K_θ, 4K_θ, 3.2K_θ and 3.5. Mode IV does not occur: a wooden peg shears first. C_D applies, C_g is 1.
///
/// # Errors
/// Outside the range of the recalled standard: peg ¾–1¼ in, G_p 0.57–0.73 and not below the timber's.
pub fn peg_value(joint: &PegJoint) -> Result<Worked<LateralValue>, Refused> {
    joint.within()?;
    let (along, across) = (joint.bearing_along(), joint.bearing_across());
    let dowel = Dowel {
        diameter: joint.diameter,
        bending_yield: joint.bending_yield(),
        main_length: joint.tenon,
        side_length: joint.wall,
        main_bearing: hankinson(along, across, joint.tenon_angle),
        side_bearing: hankinson(along, across, joint.wall_angle),
    };
    dowel.whole()?;
    let k_theta = 1.0 + 0.25 * joint.tenon_angle.max(joint.wall_angle).to_degrees() / 90.0;
    let mut steps = joint.strengths();
    let says = format!("K_θ = 1 + 0.25·(θ/90) = {}; R_d = 4K_θ, 3.2K_θ; 3.5 for shear", number(k_theta));
    steps.push(Step::new("R_d, reduction", says, CITED));
    let modes = [(Mode::Im, 1.0, 4.0 * k_theta), (Mode::Is, 2.0, 4.0 * k_theta), (Mode::IIIs, 2.0, 3.2 * k_theta)];
    let (mut loads, said): (Vec<YieldLoad>, Vec<Step>) =
        modes.map(|(mode, planes, reduction)| dowel.reduced(mode, planes, reduction, CITED)).into_iter().unzip();
    steps.extend(said);
    let shear = joint.shear_yield() * (joint.diameter * joint.diameter * (PI / (2.0 * 3.5)));
    let says = format!(
        "π·D²·F_vy/(2·R_d) = π·{}²·{}/(2·3.5) = {} lb",
        inches(joint.diameter),
        psi(joint.shear_yield()),
        pounds(shear)
    );
    steps.push(Step::new(format!("Z of mode V: {}", Mode::V.words()), says, CITED));
    loads.push(YieldLoad { mode: Mode::V, load: shear });
    let governing = least(&loads)?;
    let says = format!("Z = {} lb, mode {:?}: {}", pounds(governing.load), governing.mode, governing.mode.words());
    steps.push(Step::new("Z of one peg", says, CITED));
    Ok(Worked::new(LateralValue { reference: governing.load, mode: governing.mode, modes: loads }, steps))
}

/// What the pegs of one joint carry together: n·Z·C_D, C_D at most 1.6.
///
/// # Errors
/// As [`peg_value`], and without pegs.
pub fn peg_group(joint: &PegJoint, n_pegs: u32, duration: f64) -> Result<Worked<Force>, Refused> {
    above_zero("the number of pegs", f64::from(n_pegs))?;
    let factor = super::load_duration(duration)?;
    let one = peg_value(joint)?;
    let force = one.value.reference * (f64::from(n_pegs) * factor.value);
    let says =
        format!("n·Z·C_D = {n_pegs}·{}·{} = {} lb", pounds(one.value.reference), number(factor.value), pounds(force));
    let mut steps = one.steps;
    steps.extend(factor.steps);
    steps.push(Step::new("Z′ of the pegs", says, CITED));
    Ok(Worked::new(force, steps))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    fn oak_in_fir() -> PegJoint {
        PegJoint::pulled(Length::inches(1.0), [0.73, 0.50], Length::inches(2.0), Length::inches(3.0))
    }

    #[test]
    fn a_square_joint_by_hand() {
        let found = peg_value(&oak_in_fir()).unwrap().value;
        let load = |mode| found.modes.iter().find(|found| found.mode == mode).unwrap().load.to_pounds();
        // I_m: 1·2·3149/(4·1.25); I_s: 2·1·3·2529/5.
        assert!((load(Mode::Im) - 2.0 * 4770.0 * 0.73_f64.powf(1.32) / 5.0).abs() < 1e-9);
        assert!((load(Mode::Is) - 6.0 * 4900.0 * 0.73 * 0.5_f64.sqrt() / 5.0).abs() < 1e-9);
        assert_eq!(found.modes.len(), 4);
        let least = found.modes.iter().map(|found| found.load.to_pounds()).fold(f64::INFINITY, f64::min);
        assert_eq!(found.reference.to_pounds(), least);
    }

    /// A thin tenon crushes before the peg shears; a thick one does not.
    #[test]
    fn the_governing_mode_changes() {
        let thin = PegJoint { tenon: Length::inches(1.0), ..oak_in_fir() };
        assert_eq!(peg_value(&thin).unwrap().value.mode, Mode::Im);
        let along = PegJoint { tenon: Length::inches(4.0), wall_angle: Angle::ZERO, ..oak_in_fir() };
        assert_eq!(peg_value(&along).unwrap().value.mode, Mode::V);
        let thin_wall = PegJoint { wall: Length::inches(0.5), tenon: Length::inches(4.0), ..oak_in_fir() };
        assert_eq!(peg_value(&thin_wall).unwrap().value.mode, Mode::Is);
    }

    #[test]
    fn limits() {
        let refused = |joint: PegJoint| peg_value(&joint).is_err();
        assert!(refused(PegJoint { diameter: Length::inches(0.7), ..oak_in_fir() }));
        assert!(refused(PegJoint { diameter: Length::inches(1.3), ..oak_in_fir() }));
        assert!(refused(PegJoint { peg_gravity: 0.56, ..oak_in_fir() }));
        assert!(refused(PegJoint { peg_gravity: 0.74, ..oak_in_fir() }));
        assert!(refused(PegJoint { peg_gravity: 0.60, timber_gravity: 0.67, ..oak_in_fir() }));
        assert!(refused(PegJoint { timber_gravity: 0.1, ..oak_in_fir() }));
        assert!(refused(PegJoint { tenon: Length::ZERO, ..oak_in_fir() }));
        assert!(refused(PegJoint { wall_angle: Angle::degrees(100.0), ..oak_in_fir() }));
        assert!(!refused(oak_in_fir()));
    }

    #[test]
    fn several_pegs() {
        let one = peg_value(&oak_in_fir()).unwrap().value.reference;
        let two = peg_group(&oak_in_fir(), 2, 2.0).unwrap();
        assert!((two.value / one - 3.2).abs() < 1e-12);
        assert!(peg_group(&oak_in_fir(), 0, 1.0).is_err());
    }
}

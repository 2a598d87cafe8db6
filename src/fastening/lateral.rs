//! The reference lateral value Z of one bolt, lag screw, wood screw or nail (NDS 2015 12.3.1, Tables 12.3.1A and B).
use super::Refused;
use super::bearing::{Material, dowel_bearing};
use super::dowel::{Dowel, Mode, YieldLoad, least};
use super::fastener::{Fastener, FastenerKind};
use super::written::{inches, number, pounds};
use crate::units::{Angle, Force, Length};
use crate::working::{Citation, Step, Worked};

/// One member of a joint.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Member {
    /// What it is made of.
    pub material: Material,
    /// The length over which the fastener bears: its thickness, or what [`super::penetration`] gives for the point.
    pub bearing_length: Length,
    /// Load to grain: 0° along, 90° across. No matter for metal and concrete.
    pub angle: Angle,
    /// The fastener stands in end grain: the wood is pressed across the grain whatever the angle.
    pub is_end_grain: bool,
}

impl Member {
    /// A wooden member with the fastener in its side grain.
    #[must_use]
    pub const fn wood(gravity: f64, bearing_length: Length, angle: Angle) -> Self {
        Self { material: Material::wood(gravity), bearing_length, angle, is_end_grain: false }
    }

    /// A steel plate or sheet, or concrete.
    #[must_use]
    pub const fn plate(material: Material, thickness: Length) -> Self {
        Self { material, bearing_length: thickness, angle: Angle::ZERO, is_end_grain: false }
    }

    /// The angle that counts.
    fn working_angle(&self) -> Angle {
        match self.material {
            Material::Wood { .. } if self.is_end_grain => Angle::RIGHT,
            Material::Wood { .. } => self.angle,
            Material::SheetSteel | Material::SteelPlate | Material::Concrete => Angle::ZERO,
        }
    }
}

/// The reference lateral value of one fastener.
#[derive(Clone, Debug, PartialEq)]
pub struct LateralValue {
    /// Z, before the factors of the connection.
    pub reference: Force,
    /// The mode that gives way first.
    pub mode: Mode,
    /// Every mode looked at.
    pub modes: Vec<YieldLoad>,
}

/// R_d of Table 12.3.1B, by what happens.
struct Reduction {
    crushing: f64,
    turning: f64,
    bending: f64,
    step: Step,
}

impl Reduction {
    const fn of(&self, mode: Mode) -> f64 {
        match mode {
            Mode::Im | Mode::Is => self.crushing,
            Mode::II => self.turning,
            Mode::IIIm | Mode::IIIs | Mode::IV | Mode::V => self.bending,
        }
    }
}

/// A fastener thin enough at its root to count as a nail keeps K_D, and K_θ as well when its body is ¼ in or more.
fn reduction(fastener: &Fastener, angle: Angle) -> Result<Reduction, Refused> {
    let (diameter, nominal) = (fastener.shear_diameter.to_inches(), fastener.diameter.to_inches());
    if nominal > 1.0 {
        return Err(Refused::because(
            "The reductions of the yield equations end at 1 in diameter: use thinner fasteners.",
        ));
    }
    let citation = Citation::seen("NDS 2015", "Table 12.3.1B, confirmed by Table 12K");
    let k_theta = 1.0 + 0.25 * angle.to_degrees() / 90.0;
    if diameter >= 0.25 {
        let says = format!("K_θ = 1 + 0.25·(θ/90) = {}; R_d = 4K_θ, 3.6K_θ, 3.2K_θ", number(k_theta));
        let step = Step::new("R_d, reduction", says, citation);
        return Ok(Reduction { crushing: 4.0 * k_theta, turning: 3.6 * k_theta, bending: 3.2 * k_theta, step });
    }
    let k_d = if diameter <= 0.17 { 2.2 } else { 10.0 * diameter + 0.5 };
    let d = inches(fastener.shear_diameter);
    let start = if diameter <= 0.17 {
        format!("K_D = 2.2 for D = {d} in ≤ 0.17 in")
    } else {
        format!("K_D = 10·D + 0.5 = 10·{d} + 0.5 = {}", number(k_d))
    };
    if nominal < 0.25 {
        let step = Step::new("R_d, reduction", format!("{start}; R_d = K_D"), citation);
        return Ok(Reduction { crushing: k_d, turning: k_d, bending: k_d, step });
    }
    let both = k_d * k_theta;
    let says = format!("{start}; body ≥ ¼ in: R_d = K_D·K_θ = {}·{} = {}", number(k_d), number(k_theta), number(both));
    Ok(Reduction { crushing: both, turning: both, bending: both, step: Step::new("R_d, reduction", says, citation) })
}

const ONE_PLANE: [Mode; 6] = [Mode::Im, Mode::Is, Mode::II, Mode::IIIm, Mode::IIIs, Mode::IV];

/// Z of a fastener through a side member into a main member: one shear plane, the least of six modes.
///
/// # Errors
/// For a part that is missing or outside the limits of its table.
pub fn single_shear(fastener: &Fastener, main: &Member, side: &Member) -> Result<Worked<LateralValue>, Refused> {
    let cited = Citation::seen("NDS 2015", "12.3-1 to 12.3-6, reproduces Table 12K");
    value(fastener, [main, side], &ONE_PLANE.map(|mode| (mode, 1.0)), cited)
}

/// Z of a fastener through a main member between two equal side members: two shear planes.
///
/// `side` is one of the two; the lesser of unlike ones is given.
///
/// # Errors
/// As [`single_shear`]; and for anything but a bolt, which alone goes right through.
pub fn double_shear(fastener: &Fastener, main: &Member, side: &Member) -> Result<Worked<LateralValue>, Refused> {
    if fastener.kind != FastenerKind::Bolt {
        return Err(Refused::because(
            "Two shear planes are counted for bolts only: a screw or nail is counted with one.",
        ));
    }
    let modes = [(Mode::Im, 1.0), (Mode::Is, 2.0), (Mode::IIIs, 2.0), (Mode::IV, 2.0)];
    value(fastener, [main, side], &modes, Citation::from_memory("NDS 2015", "12.3-7 to 12.3-10"))
}

fn value(
    fastener: &Fastener,
    [main, side]: [&Member; 2],
    modes: &[(Mode, f64)],
    citation: Citation,
) -> Result<Worked<LateralValue>, Refused> {
    let angle = main.working_angle().max(side.working_angle());
    let main_bearing = dowel_bearing(main.material, fastener.diameter, main.working_angle())?;
    let side_bearing = dowel_bearing(side.material, fastener.diameter, side.working_angle())?;
    let dowel = Dowel {
        diameter: fastener.shear_diameter,
        bending_yield: fastener.bending_yield,
        main_length: main.bearing_length,
        side_length: side.bearing_length,
        main_bearing: main_bearing.value,
        side_bearing: side_bearing.value,
    };
    dowel.whole()?;
    let reduction = reduction(fastener, angle)?;
    let mut steps = vec![the_fastener(fastener)];
    steps.extend(named("main member", main_bearing.steps));
    steps.extend(named("side member", side_bearing.steps));
    steps.push(reduction.step.clone());
    let (loads, said): (Vec<YieldLoad>, Vec<Step>) =
        modes.iter().map(|&(mode, planes)| dowel.reduced(mode, planes, reduction.of(mode), citation)).unzip();
    steps.extend(said);
    let governing = least(&loads)?;
    let says = format!("Z = {} lb, mode {:?}: {}", pounds(governing.load), governing.mode, governing.mode.words());
    steps.push(Step::new("Z, reference lateral value", says, citation));
    Ok(Worked::new(LateralValue { reference: governing.load, mode: governing.mode, modes: loads }, steps))
}

fn the_fastener(fastener: &Fastener) -> Step {
    let says = format!(
        "{}: D in shear = {} in, F_yb = {:.0} psi",
        fastener.name,
        inches(fastener.shear_diameter),
        fastener.bending_yield.to_psi()
    );
    let citation = Citation { document: "NDS 2015", clause: "App. I and L", confidence: fastener.confidence };
    Step::new("D and F_yb of the fastener", says, citation)
}

fn named(member: &str, steps: Vec<Step>) -> impl Iterator<Item = Step> {
    steps.into_iter().map(move |step| Step { gives: format!("{member}: {}", step.gives).into(), ..step })
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::fastening::fastener;

    fn fir(inches: f64, degrees: f64) -> Member {
        Member::wood(0.50, Length::inches(inches), Angle::degrees(degrees))
    }

    /// The reductions of NDS Table 12.3.1B on both sides of each of its limits.
    #[test]
    fn reductions() {
        let of = |key: &str, degrees: f64| {
            let found = reduction(fastener(key).unwrap(), Angle::degrees(degrees)).unwrap();
            [found.crushing, found.turning, found.bending]
        };
        assert_eq!(of("bolt_1_2", 0.0), [4.0, 3.6, 3.2]);
        assert_eq!(of("bolt_1_2", 90.0), [5.0, 4.5, 4.0]);
        // ¼ in lag: body ¼ in, root 0.173 in: K_D·K_θ. ⅜ in lag: root 0.265 in: as a bolt.
        assert!(of("lag_1_4", 90.0).iter().all(|found| (found - 2.23 * 1.25).abs() < 1e-12));
        assert_eq!(of("lag_3_8", 0.0), [4.0, 3.6, 3.2]);
        assert_eq!(of("nail_131", 90.0), [2.2; 3]);
        assert!(of("nail_192", 90.0).iter().all(|found| (found - 2.42).abs() < 1e-12));
    }

    /// Thick sides and slender bolts bend in every plane: two planes carry twice what one does (mode IV).
    #[test]
    fn two_planes_carry_twice_the_bending_of_one() {
        let bolt = fastener("bolt_1_2").unwrap();
        let one = single_shear(bolt, &fir(7.5, 0.0), &fir(5.5, 0.0)).unwrap().value;
        let two = double_shear(bolt, &fir(7.5, 0.0), &fir(5.5, 0.0)).unwrap().value;
        assert_eq!((one.mode, two.mode), (Mode::IV, Mode::IV));
        assert!((two.reference.to_pounds() - 2.0 * one.reference.to_pounds()).abs() < 1e-9);
        // A thin main member between them crushes first: D·l_m·F_em/4.
        let thin = double_shear(bolt, &fir(1.0, 0.0), &fir(5.5, 0.0)).unwrap().value;
        assert_eq!(thin.mode, Mode::Im);
        assert!((thin.reference.to_pounds() - 0.5 * 5600.0 / 4.0).abs() < 1e-9);
        assert!(double_shear(fastener("lag_1_2").unwrap(), &fir(3.0, 0.0), &fir(3.0, 0.0)).is_err());
    }

    #[test]
    fn end_grain_is_pressed_across() {
        let bolt = fastener("bolt_1_2").unwrap();
        let end = Member { is_end_grain: true, ..fir(3.5, 0.0) };
        let found = single_shear(bolt, &end, &fir(1.5, 0.0)).unwrap().value;
        let across = single_shear(bolt, &fir(3.5, 90.0), &fir(1.5, 0.0)).unwrap().value;
        assert_eq!(found, across);
        assert!(single_shear(bolt, &fir(0.0, 0.0), &fir(1.5, 0.0)).is_err());
    }

    #[test]
    fn steps_show_the_numbers() {
        let found = single_shear(fastener("bolt_1_2").unwrap(), &fir(1.5, 0.0), &fir(1.5, 0.0)).unwrap();
        let last = found.steps.last().unwrap();
        assert_eq!(last.says, "Z = 483 lb, mode II: the dowel turns in both members");
        assert!(found.steps.iter().any(|step| step.says == "D·l_s·F_es/R_d = 0.500·1.50·5600/4.00 = 1050 lb"));
    }
}

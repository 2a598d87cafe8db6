//! Bending together with a pull or a push (NDS 3.9, and 15.4 for a push off the centre).
use crate::units::{Force, Length, Moment, Stress};
use crate::working::{Citation, Step, Worked};

use super::adjusted::bending_factors;
use super::adjusted::{adjusted, product};
use super::bending::{bending_strength, bending_stress};
use super::figures::{number, psi};
use super::tension::axial_stress;
use super::{
    Bracing, ColumnLengths, Member, NetSection, Property, Refused, Verdict, beam_stability, column_stability,
    compression_strength,
};

const PRINTED: &str = "Hicks, Civil Engineering Formulas";

/// Bending across the depth together with a pull: the worse of `f_t/F_t' + f_b/F_b*` (Eq. 3.9-1) and
/// `(f_b − f_t)/F_b**` (Eq. 3.9-2), both at most 1. `F_b*` is without `C_L`, `F_b**` with it.
///
/// # Errors
/// Where the beam is too slender.
pub fn check_bending_and_tension(
    member: &Member,
    pull: Force,
    moment: Moment,
    net: &NetSection,
    bracing: Bracing,
) -> Result<Worked<Verdict>, Refused> {
    net.belongs_to(member.section())?;
    let tension = adjusted(member, Property::Tension);
    let before = product(member, Property::Bending, "F_b*", &bending_factors(member));
    let strength = bending_strength(member, bracing)?;
    let (ft, ft_step) = axial_stress("f_t", "Tension", pull, net.area(), "3.8.1")?;
    let (fb, fb_step) = bending_stress(moment, net);
    let first = ft / tension.value + fb / before.value;
    let second = ((fb - ft) / strength.value).max(0.0);
    let mut steps = tension.steps;
    steps.extend(before.steps);
    steps.extend(strength.steps);
    steps.extend([ft_step, fb_step]);
    let terms = |value: Stress| psi(value.to_psi());
    steps.push(Step::new(
        "Pull and bending",
        format!(
            "f_t/F_t' + f_b/F_b* = {}/{} + {}/{} = {}",
            terms(ft),
            terms(tension.value),
            terms(fb),
            terms(before.value),
            number(first)
        ),
        Citation::seen(PRINTED, "p. 173 (NDS Eq. 3.9-1)"),
    ));
    steps.push(Step::new(
        "Bending less pull",
        format!("(f_b − f_t)/F_b** = ({} − {})/{} = {}", terms(fb), terms(ft), terms(strength.value), number(second)),
        Citation::seen(PRINTED, "p. 173 (NDS Eq. 3.9-2)"),
    ));
    Ok(Worked::new(Verdict::sum_of_shares(first.max(second)), steps))
}

/// A push with bending.
#[derive(Clone, Debug, PartialEq)]
pub struct BeamColumn {
    /// Push along the stick.
    pub push: Force,
    /// Moment across the depth.
    pub moment_depthwise: Moment,
    /// Moment across the breadth.
    pub moment_breadthwise: Moment,
    /// How far off the centre the push enters, across the depth.
    pub off_centre_depthwise: Length,
    /// The same across the breadth.
    pub off_centre_breadthwise: Length,
    /// The section the moments act on, whole or net.
    pub net: NetSection,
    /// Buckling lengths.
    pub lengths: ColumnLengths,
    /// How the stick is kept from rolling over, bent on edge.
    pub bracing: Bracing,
}

/// One way of bending, its stresses in psi.
struct Axis {
    size: f64,
    bending: f64,
    off_centre: f64,
    strength: f64,
    critical: f64,
}

impl Axis {
    /// `f_c·6e/d`: the edge stress of a push off the centre.
    fn edge(&self, fc: f64) -> f64 {
        fc * 6.0 * self.off_centre / self.size
    }
}

/// A push with bending one or both ways: Eq. 3.9-3, with the edge stress `f_c·(6e/d)·(1 + 0.234·f_c/F_cE)` of a push off
/// the centre (NDS 15.4, from memory), and Eq. 3.9-4; the worse of the two. Where `f_c` reaches `F_cE` or `f_b1` reaches
/// `F_bE` the stick is unstable: then that share is the verdict.
///
/// Axis 1 bends on edge, across the larger size of the section; axis 2 flatwise. The end moments of a push off the
/// centre are taken at the ends, other moments within the length.
///
/// # Errors
/// Where the stick is too slender, or nothing is left of it.
pub fn check_bending_and_compression(member: &Member, demand: &BeamColumn) -> Result<Worked<Verdict>, Refused> {
    demand.net.belongs_to(member.section())?;
    let (on_edge, turned) = on_edge(member, demand);
    let stability = column_stability(&on_edge, &turned.lengths)?.value;
    let rolling = beam_stability(&on_edge, turned.bracing)?.value.critical.map_or(f64::INFINITY, Stress::to_psi);
    let strong = bending_strength(&on_edge, turned.bracing)?;
    let weak = bending_strength(&on_edge.turned(), Bracing::Held)?;
    let compression = compression_strength(&on_edge, &turned.lengths)?;
    let (fc, fc_step) = axial_stress("f_c", "Compression", turned.push, on_edge.section().area(), "3.6.3")?;
    let (fb1, fb1_step) = bending_stress(turned.moment_depthwise, &turned.net);
    let (fb2, fb2_step) = bending_stress(turned.moment_breadthwise, &turned.net.turned());
    let axis = |size: Length, bending: Stress, off: Length, strength: Stress, critical: Option<Stress>| Axis {
        size: size.to_inches(),
        bending: bending.to_psi(),
        off_centre: off.abs().to_inches(),
        strength: strength.to_psi(),
        critical: critical.map_or(f64::INFINITY, Stress::to_psi),
    };
    let section = on_edge.section();
    let first = axis(section.depth, fb1, turned.off_centre_depthwise, strong.value, stability.depthwise);
    let second = axis(section.breadth, fb2, turned.off_centre_breadthwise, weak.value, stability.breadthwise);
    let mut steps = compression.steps;
    steps.extend(strong.steps);
    steps.extend(weak.steps);
    steps.extend([fc_step, fb1_step, fb2_step]);
    let (fc, strength) = (fc.to_psi(), compression.value.to_psi());
    let (unstable, step) = stability_share(fc, &first, &second, rolling);
    steps.push(step);
    if unstable >= 1.0 {
        return Ok(Worked::new(Verdict::sum_of_shares(unstable), steps));
    }
    let (sum, step) = interaction(fc, strength, &first, &second, rolling);
    steps.push(step);
    Ok(Worked::new(Verdict::sum_of_shares(sum.max(unstable)), steps))
}

/// Member and demand turned so that the depth is the larger size.
fn on_edge(member: &Member, demand: &BeamColumn) -> (Member, BeamColumn) {
    if !member.lies_flat() {
        return (member.clone(), demand.clone());
    }
    let lengths = ColumnLengths {
        depthwise: demand.lengths.breadthwise,
        breadthwise: demand.lengths.depthwise,
        is_raising: demand.lengths.is_raising,
    };
    let turned = BeamColumn {
        moment_depthwise: demand.moment_breadthwise,
        moment_breadthwise: demand.moment_depthwise,
        off_centre_depthwise: demand.off_centre_breadthwise,
        off_centre_breadthwise: demand.off_centre_depthwise,
        net: demand.net.turned(),
        lengths,
        ..demand.clone()
    };
    (member.turned(), turned)
}

/// Eq. 3.9-4 with its limits: `f_c < F_cE1`, `f_b1 < F_bE`, `f_c/F_cE2 + (f_b1/F_bE)² < 1`.
fn stability_share(fc: f64, first: &Axis, second: &Axis, rolling: f64) -> (f64, Step) {
    let edge = (first.bending + first.edge(fc)) / rolling;
    let sum = fc / second.critical + edge * edge;
    let worst = sum.max(fc / first.critical).max(edge);
    let says = format!(
        "f_c/F_cE2 + (f_b1/F_bE)² = {}/{} + ({}/{})² = {}; f_c/F_cE1 = {}",
        psi(fc),
        psi(second.critical),
        psi(first.bending + first.edge(fc)),
        psi(rolling),
        number(sum),
        number(fc / first.critical)
    );
    (worst, Step::new("Stability of push and bending", says, Citation::from_memory("NDS 2018", "Eq. 3.9-4")))
}

/// Eq. 3.9-3.
fn interaction(fc: f64, strength: f64, first: &Axis, second: &Axis, rolling: f64) -> (f64, Step) {
    let edge = (first.bending + first.edge(fc)) / rolling;
    let growth1 = 1.0 - fc / first.critical;
    let growth2 = 1.0 - fc / second.critical - edge * edge;
    let numerator1 = first.bending + first.edge(fc) * (1.0 + 0.234 * fc / first.critical);
    let numerator2 = second.bending + second.edge(fc) * (1.0 + 0.234 * fc / second.critical + 0.234 * edge * edge);
    let terms =
        [(fc / strength).powi(2), numerator1 / (first.strength * growth1), numerator2 / (second.strength * growth2)];
    let sum: f64 = terms.iter().sum();
    let says = format!(
        "(f_c/F_c')² + f_b1/[F_b1'·(1 − f_c/F_cE1)] + f_b2/[F_b2'·(1 − f_c/F_cE2 − (f_b1/F_bE)²)] = \
         ({}/{})² + {}/({}·{}) + {}/({}·{}) = {}",
        psi(fc),
        psi(strength),
        psi(numerator1),
        psi(first.strength),
        number(growth1),
        psi(numerator2),
        psi(second.strength),
        number(growth2),
        number(sum)
    );
    let is_off_centre = first.off_centre > 0.0 || second.off_centre > 0.0;
    let citation = if is_off_centre {
        Citation::from_memory("NDS 2018", "15.4")
    } else {
        Citation::seen(PRINTED, "p. 173 (NDS Eq. 3.9-3)")
    };
    (sum, Step::new("Push and bending", says, citation))
}

#[cfg(test)]
#[path = "combined_tests.rs"]
mod tests;

//! The roots of a level half-lap scarf: where each half leaves its full section.
//!
//! ```text
//!    upper piece  ____________________
//!                 ____________        |   each half is d/2 deep over the lap of length l;
//!    lower lap        |_______|_______|   its root is where the other half ends
//! ```
//! No standard gives a design value for a scarf. Each half is a cantilever M = V·a on half the depth, and its re-entrant
//! corner a notch that leaves d/2.
use super::Refused;
use super::refused::above_zero;
use super::written::{inches, pounds, psi};
use crate::materials::Section;
use crate::units::{Force, Length, Stress, Volume};
use crate::working::{Citation, Step, Worked};

/// How the two halves pass the shear to each other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Sharing {
    /// At the far end of the lap: the root carries V·l.
    AtTip,
    /// Evenly along the lap: V·l/2.
    AlongLap,
    /// At a known distance from the root.
    At(Length),
}

/// One root.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScarfRoot {
    /// The solid section.
    pub section: Section,
    /// Depth left at the root: half of it in a half lap, more in a splayed one.
    pub left: Length,
    /// Length of the lap.
    pub lap: Length,
    /// Shear the scarf passes, without sign.
    pub shear: Force,
    /// Where it passes.
    pub sharing: Sharing,
    /// F_b′ of the half.
    pub bending: Stress,
    /// F_v′.
    pub shear_strength: Stress,
}

/// How a root stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RootCheck {
    /// f_b on the depth left.
    pub bending_stress: Stress,
    /// f_b by F_b′.
    pub bending_ratio: f64,
    /// V_r′ of the notched section.
    pub shear_capacity: Force,
    /// V by V_r′.
    pub shear_ratio: f64,
}

impl RootCheck {
    /// The greater ratio.
    #[must_use]
    pub const fn ratio(&self) -> f64 {
        self.bending_ratio.max(self.shear_ratio)
    }
}

const LAP: Citation = Citation::common_practice("a lap as a cantilever of the depth left at its root");

/// f_b = M/S with S = b·d_n²/6 and V_r′ = (2/3·F_v′·b·d_n)·(d_n/d)²; in a half lap d_n = d/2, an eighth of the solid
/// section's.
///
/// # Errors
/// When a part is missing or the shear passes outside the lap.
pub fn scarf_root(root: &ScarfRoot) -> Result<Worked<RootCheck>, Refused> {
    let (breadth, depth) = (root.section.breadth, root.section.depth);
    above_zero("the breadth of the scarfed timber", breadth.to_inches())?;
    above_zero("the depth of the scarfed timber", depth.to_inches())?;
    above_zero("the depth left at the root", root.left.to_inches())?;
    above_zero("the length of the lap", root.lap.to_inches())?;
    above_zero("F_b′ of the half", root.bending.to_psi())?;
    above_zero("F_v′", root.shear_strength.to_psi())?;
    let arm = match root.sharing {
        Sharing::AtTip => root.lap,
        Sharing::AlongLap => root.lap * 0.5,
        Sharing::At(arm) if arm >= Length::ZERO && arm <= root.lap => arm,
        Sharing::At(_) => {
            return Err(Refused::because("The shear passes within the lap: give a distance from its root."));
        }
    };
    let (force, left) = (root.shear.abs(), root.left.min(depth));
    let modulus: Volume = breadth * left * (left * (1.0 / 6.0));
    let moment = force * arm;
    let bending_stress = moment / modulus;
    let shear_capacity = notched_shear(root.section, left, root.shear_strength);
    let check = RootCheck {
        bending_stress,
        bending_ratio: bending_stress / root.bending,
        shear_capacity,
        shear_ratio: force / shear_capacity,
    };
    Ok(Worked::new(check, root_steps(root, arm, &check)))
}

fn notched_shear(section: Section, left: Length, strength: Stress) -> Force {
    let share = left / section.depth;
    strength * (section.breadth * left) * (2.0 / 3.0 * share * share)
}

/// V_r′ = (2/3·F_v′·b·d_n)·(d_n/d)² of the section that a root leaves.
///
/// # Errors
/// When a part is missing.
pub fn root_shear(section: Section, left: Length, strength: Stress) -> Result<Worked<Force>, Refused> {
    above_zero("the breadth of the scarfed timber", section.breadth.to_inches())?;
    above_zero("the depth of the scarfed timber", section.depth.to_inches())?;
    above_zero("the depth left at the root", left.to_inches())?;
    let left = left.min(section.depth);
    let (value, share) = (notched_shear(section, left, strength), left / section.depth);
    let says = format!(
        "V_r′ = (2/3·F_v′·b·d_n)·(d_n/d)² = (2/3·{}·{}·{})·{share:.3}² = {} lb",
        psi(strength),
        inches(section.breadth),
        inches(left),
        pounds(value)
    );
    let steps = vec![
        Step::new("V_r′ at the notch", says, Citation::from_memory("NDS 2015", "3.4-3")),
        Step::new("limit of notches", notch_limit(share), Citation::from_memory("NDS 2015", "4.4.3")),
    ];
    Ok(Worked::new(value, steps))
}

fn root_steps(root: &ScarfRoot, arm: Length, check: &RootCheck) -> Vec<Step> {
    let (b, h) = (inches(root.section.breadth), inches(root.left.min(root.section.depth)));
    let share = root.left.min(root.section.depth) / root.section.depth;
    let force = root.shear.abs();
    let moment = (force * arm).to_pound_inches();
    vec![
        Step::new("M at the root", format!("M = V·a = {}·{} = {moment:.0} lb·in", pounds(force), inches(arm)), LAP),
        Step::new(
            "f_b at the root",
            format!(
                "f_b = M/(b·d_n²/6) = {moment:.0}/({b}·{h}²/6) = {} psi; F_b′ = {} psi; ratio {:.2}",
                psi(check.bending_stress),
                psi(root.bending),
                check.bending_ratio
            ),
            LAP,
        ),
        Step::new(
            "V_r′ at the notch",
            format!(
                "V_r′ = (2/3·F_v′·b·d_n)·(d_n/d)² = (2/3·{}·{b}·{h})·{share:.3}² = {} lb; ratio {:.2}",
                psi(root.shear_strength),
                pounds(check.shear_capacity),
                check.shear_ratio
            ),
            Citation::from_memory("NDS 2015", "3.4-3"),
        ),
        Step::new("limit of notches", notch_limit(share), Citation::from_memory("NDS 2015", "4.4.3")),
    ]
}

fn notch_limit(share: f64) -> &'static str {
    if share < 0.75 - 1e-9 {
        "the cut is deeper than the d/4 a sawn member may be notched at its end: the root needs screws or bolts, or an \
         engineer."
    } else {
        "the cut is no deeper than the d/4 a sawn member may be notched at its end"
    }
}

/// What the shear does to the lap.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LapAction {
    /// In every combination the upper half presses on the lower one.
    Closes,
    /// In at least one combination nothing presses; none opens it.
    Idle,
    /// In at least one combination it is lifted off by at most this much.
    Opens(Force),
}

/// Whether the shear closes the lap in every combination.
///
/// Each force is what the piece with the upper half puts on the lower half, downward above zero; uplift and loads in the
/// far bay make it negative.
///
/// # Errors
/// Without a combination.
pub fn lap_action(onto_lower: &[Force]) -> Result<LapAction, Refused> {
    let least = onto_lower.iter().copied().reduce(Force::min);
    match least {
        None => Err(Refused::because("Give the shear at the scarf in every combination.")),
        Some(force) if force > Force::ZERO => Ok(LapAction::Closes),
        Some(force) if force < Force::ZERO => Ok(LapAction::Opens(-force)),
        Some(_) => Ok(LapAction::Idle),
    }
}

/// What screws or bolts at one root must carry: the whole shear when the notched section does not, since split wood is not
/// counted on (common practice); and what opens the lap in any case. None when the wood carries it and the lap stays closed.
#[must_use]
pub fn root_force(check: &RootCheck, shear: Force, lap: LapAction) -> Force {
    let split = if check.shear_ratio > 1.0 { shear.abs() } else { Force::ZERO };
    match lap {
        LapAction::Opens(force) => split.max(force),
        LapAction::Closes | LapAction::Idle => split,
    }
}

/// How many fasteners carry a force, each its allowable load; never a single one against opening or splitting.
///
/// # Errors
/// When the fastener carries nothing.
pub fn fasteners_needed(force: Force, each: Force) -> Result<Worked<u32>, Refused> {
    above_zero("the allowable load of one fastener", each.to_pounds())?;
    let citation = Citation::common_practice("at least two fasteners at a root");
    if force <= Force::ZERO {
        return Ok(Worked::new(0, vec![Step::new("fasteners", "nothing to carry: none needed", citation)]));
    }
    let exact = force / each;
    if exact > 1000.0 {
        return Err(Refused::because("More than a thousand such fasteners would be needed: take stronger ones."));
    }
    let count = ((exact - 1e-9).ceil() as u32).max(2);
    let says = format!("n = {}/{} = {exact:.2} → {count}", pounds(force), pounds(each));
    Ok(Worked::new(count, vec![Step::new("fasteners", says, citation)]))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    fn root(sharing: Sharing) -> ScarfRoot {
        ScarfRoot {
            section: Section::new(Length::inches(8.0), Length::inches(10.0)),
            left: Length::inches(5.0),
            lap: Length::inches(40.0),
            shear: Force::pounds(1750.0),
            sharing,
            bending: Stress::psi(700.0),
            shear_strength: Stress::psi(195.5),
        }
    }

    #[test]
    fn the_notch_leaves_an_eighth() {
        let found = scarf_root(&root(Sharing::AlongLap)).unwrap().value;
        let solid = 2.0 / 3.0 * 195.5 * 8.0 * 10.0;
        assert!((found.shear_capacity.to_pounds() - solid / 8.0).abs() < 1e-9);
        assert!((found.ratio() - found.bending_ratio).abs() < 1e-12);
    }

    #[test]
    fn the_shear_of_a_root_alone() {
        let asked = root(Sharing::AtTip);
        let found = root_shear(asked.section, asked.left, asked.shear_strength).unwrap();
        assert_eq!(found.value, scarf_root(&asked).unwrap().value.shear_capacity);
        assert!(found.steps[0].says.ends_with("·0.500² = 1303 lb"), "{}", found.steps[0].says);
        assert!(root_shear(asked.section, Length::ZERO, asked.shear_strength).is_err());
    }

    #[test]
    fn where_the_shear_passes() {
        let stress = |sharing| scarf_root(&root(sharing)).map(|found| found.value.bending_stress.to_psi());
        assert!((stress(Sharing::AtTip).unwrap() - 2.0 * stress(Sharing::AlongLap).unwrap()).abs() < 1e-9);
        assert_eq!(stress(Sharing::At(Length::ZERO)), Ok(0.0));
        assert!(stress(Sharing::At(Length::inches(41.0))).is_err());
        assert!(stress(Sharing::At(Length::inches(-1.0))).is_err());
        assert!(scarf_root(&ScarfRoot { lap: Length::ZERO, ..root(Sharing::AtTip) }).is_err());
    }

    #[test]
    fn closing_and_opening() {
        let action = |forces: &[f64]| lap_action(&forces.iter().map(|force| Force::pounds(*force)).collect::<Vec<_>>());
        assert_eq!(action(&[300.0, 20.0]), Ok(LapAction::Closes));
        assert_eq!(action(&[300.0, 0.0]), Ok(LapAction::Idle));
        assert_eq!(action(&[300.0, -120.0, -80.0]), Ok(LapAction::Opens(Force::pounds(120.0))));
        assert!(action(&[]).is_err());
    }

    #[test]
    fn what_the_root_asks_of_fasteners() {
        let check = scarf_root(&root(Sharing::AlongLap)).unwrap().value;
        let shear = Force::pounds(1750.0);
        assert_eq!(root_force(&check, shear, LapAction::Closes), shear);
        let strong = RootCheck { shear_ratio: 0.9, ..check };
        assert_eq!(root_force(&strong, shear, LapAction::Idle), Force::ZERO);
        assert_eq!(root_force(&strong, shear, LapAction::Opens(Force::pounds(80.0))), Force::pounds(80.0));
        assert_eq!(root_force(&check, shear, LapAction::Opens(Force::pounds(80.0))), shear);
        let count =
            |force: f64, each: f64| fasteners_needed(Force::pounds(force), Force::pounds(each)).map(|n| n.value);
        assert_eq!([count(1750.0, 500.0), count(1500.0, 500.0), count(100.0, 500.0)], [Ok(4), Ok(3), Ok(2)]);
        assert_eq!(count(0.0, 500.0), Ok(0));
        assert!(count(100.0, 0.0).is_err());
        assert!(count(1e9, 1.0).is_err());
    }
}

//! What of a post's pull and push the concrete of its pier takes: the anchor's cone, the joint with the footing, the bending.
//!
//! The concrete is the least that may carry, as under the base. The steel of the anchor, its head or hook and the bars' ends are
//! their makers' and the code's matter.
use super::known::known_soil;
use super::pier_top::{LEAST_CONCRETE, area, assumed_concrete, on_top};
use crate::analysis::{Demand, FootForces};
use crate::fastening::{
    AroundAnchor, anchor_breakout, bars_pulled, pier_bending, pier_modulus, pier_moment, plain_tension,
};
use crate::materials::Section;
use crate::members::{Amount, Verdict};
use crate::project::{Pier, Project};
use crate::units::{Fixed, Force, Length};
use crate::unmade::{Input, Unmade};
use crate::working::{Citation, Step, Worked};

/// Name of the check of the anchor: the path of the uplift finds it by this.
pub const ANCHORED: &str = "is held by its concrete";
/// The same of the joint with the footing.
pub const TIED: &str = "hangs together with its footing";

/// The cone around the anchor.
pub(super) fn anchored(
    project: &Project,
    foot: &Demand<FootForces>,
    height: Length,
) -> Result<Worked<Verdict>, Unmade> {
    let (pier, up) = (&project.fixings.pier, foot.value.up);
    if pier.anchor_depth <= Length::ZERO {
        let says = "how deep the anchor is cast into the pier is missing: the concrete around it holds the post down";
        return Err(Unmade::missing(Input::AnchorDepth, says));
    }
    let around = AroundAnchor { edge: pier.pier_width / 2.0, concrete: LEAST_CONCRETE };
    let base = |side: Length| on_top(&Section::new(side, side), pier);
    let depth = pier.anchor_depth.min(height);
    let mut made = anchor_breakout(depth, around, base)?;
    let says =
        "in the middle of the pier, cast in, its steel and its head or hook by their maker: neither is judged here";
    made.steps.insert(0, assumed_concrete());
    made.steps.push(Step::new("anchor, assumed", says, Citation::placeholder("common practice", "one anchor a post")));
    Ok(Worked::new(Verdict::force(up, made.value), made.steps))
}

/// What passes from the pier into the footing: the pull less what the pier weighs.
pub(super) fn tied(project: &Project, foot: &Demand<FootForces>, weight: Force) -> Result<Worked<Verdict>, Unmade> {
    let (pier, up) = (&project.fixings.pier, foot.value.up);
    let rest = (up - weight).max(Force::ZERO);
    let says = format!(
        "{} lb up less 0.6 of the pier\u{2019}s weight, {} lb: {} lb hang on the footing",
        Fixed(up.to_pounds(), 0),
        Fixed(weight.to_pounds(), 0),
        Fixed(rest.to_pounds(), 0)
    );
    let step = Step::new("pull on the footing", says, Citation::from_memory("ASCE 7-16", "2.4.1, 0.6D + 0.6W"));
    if rest == Force::ZERO {
        return Ok(Worked::new(Verdict::force(Force::ZERO, weight), vec![step]));
    }
    if pier.bars == 0 {
        let says = format!(
            "the bars from the pier into its footing are missing: {} hang on the footing, and concrete on concrete holds nothing",
            Amount::Force(rest).text(project.units)
        );
        return Err(Unmade::missing(Input::PierBars, says));
    }
    let bars = bars_pulled(pier.bars, pier.bar)?;
    Ok(Worked::new(Verdict::force(rest, bars.value), [vec![step], bars.steps].concat()))
}

/// The pier over its footing, across and down into the ground.
fn in_ground(pier: &Pier) -> (Length, Length) {
    (pier.pier_width, (pier.depth - pier.footing_thickness).max(Length::inches(1.0)))
}

/// What the push and the pull of a case ask of the concrete, in psi, by numbers alone; of unknown soil the push.
pub(super) fn bending(project: &Project, foot: &Demand<FootForces>, height: Length) -> f64 {
    let (pier, level) = (&project.fixings.pier, foot.value.level);
    let Ok(soil) = known_soil(project) else { return level.to_pounds() };
    let (moment, _) = pier_bending(level, height, in_ground(pier), soil.lateral_a_foot.to_psf());
    let pull = foot.value.up.max(Force::ZERO) / area(pier);
    (moment / pier_modulus(pier.pier_width, pier.is_round) + pull).to_psi()
}

/// The pier bent by the push at its top, with the pull of the same case, as plain concrete.
pub(super) fn bent(project: &Project, foot: &Demand<FootForces>, height: Length) -> Result<Worked<Verdict>, Unmade> {
    let (soil, pier) = (known_soil(project)?, &project.fixings.pier);
    let moment = pier_moment(foot.value.level, height, in_ground(pier), soil.lateral_a_foot.to_psf())?;
    let (modulus, section) = (pier_modulus(pier.pier_width, pier.is_round), area(pier));
    let pull = foot.value.up.max(Force::ZERO);
    let stress = moment.value / modulus + pull / section;
    let says = format!(
        "f = M/S + T/A = {}/{} + {}/{} = {} psi, the pier\u{2019}s bars left out",
        Fixed(moment.value.to_pound_inches(), 0),
        Fixed(modulus.to_cubic_inches(), 0),
        Fixed(pull.to_pounds(), 0),
        Fixed(section.to_square_inches(), 0),
        Fixed(stress.to_psi(), 0)
    );
    let allowed = plain_tension(LEAST_CONCRETE)?;
    let sum = Step::new("tension in the concrete", says, Citation::from_memory("statics", "bending and pull"));
    let steps = [moment.steps, vec![sum, assumed_concrete()], allowed.steps].concat();
    Ok(Worked::new(Verdict::stress(stress, allowed.value), steps))
}

//! An earthquake: the base shear of the whole lean-to. Along the wall the beam line and the ledger each take half; across it the
//! posts lean, and the wall takes all.
use super::beam_cases::{blocks_at_rafters, one_brace};
use super::rafter_line::RafterLine;
use super::roof_cases::{RoofCase, RoofLoads};
use crate::design::Shape;
use crate::geometry::PostShape;
use crate::loads::{Action, SEISMIC_EXEMPTION, SeismicWeight, base_shear, vertical_effect};
use crate::project::Project;
use crate::units::{Force, Length};
use crate::unmade::Unmade;
use crate::working::{Citation, Confidence, Step, weakest};

/// What an earthquake does to one of the two lines, unfactored.
#[derive(Clone, Debug, PartialEq)]
pub struct Shaking {
    /// Half of the base shear.
    pub push: Force,
    /// E_v as a share of the dead load.
    pub vertical: f64,
    /// No surer than what the whole frame weighs, for that is shaken.
    pub sure: Confidence,
    /// How both came about.
    pub steps: Vec<Step>,
}

/// That, of a line which carries so much dead load: rafters and roof stand on both lines alike. Nothing where the user has not given
/// the site's values.
///
/// # Errors
/// The sentence that says why there is no base shear.
#[must_use]
pub fn earthquake_on_line(
    project: &Project,
    shape: &Shape,
    loads: &RoofLoads,
    (line, dead): (&RafterLine, Force),
) -> Option<Result<Shaking, Unmade>> {
    let seismic = project.place.seismic.as_ref()?;
    let (edition, height) = (project.place.edition, loads.lean_to.mean_roof_height());
    let shear = base_shear(edition, seismic, height, &shaken(project, shape, loads, line)).map_err(|refused| {
        let says = format!("{refused}. {SEISMIC_EXEMPTION}");
        Unmade::from(refused).saying(says)
    });
    Some(shear.and_then(|shear| {
        let push = shear.value / 2.0;
        let says = format!("V/2 = {:.0}/2 = {:.0} lb", shear.value.to_pounds(), push.to_pounds());
        let citation = Citation::from_memory("statics", "halves to ledger and beam");
        let half = Step::new("earthquake's push on the beam line, and on the ledger", says, citation);
        let down = vertical_effect(edition, seismic, dead)?;
        let vertical = if dead > Force::ZERO { down.value / dead } else { 0.0 };
        let steps: Vec<Step> = shear.steps.into_iter().chain([half]).chain(down.steps).collect();
        Ok(Shaking { push, vertical, sure: weakest(&steps).max(loads.dead.sure), steps })
    }))
}

/// What the whole lean-to weighs.
fn shaken(project: &Project, shape: &Shape, loads: &RoofLoads, line: &RafterLine) -> SeismicWeight {
    let (dead, timbers) = (&loads.dead, &project.frame.timbers);
    let roof = loads.lean_to.roof_length().length() * loads.lean_to.width;
    let posts: Length = shape.posts.iter().map(PostShape::body).sum();
    let wood = dead.wood.heavy;
    let dead = dead.cover.heavy * roof
        + dead.rafter.heavy * line.eave * shape.rafters.len() as f64
        + wood.line_load(timbers.beam.sawn.area()) * project.frame.beam_length * 2.0
        + wood.line_load(timbers.post.sawn.area()) * posts
        + one_brace(project, shape, wood) * shape.braces.len() as f64
        + blocks_at_rafters(project, shape, wood).into_iter().sum();
    SeismicWeight { dead, flat_snow: loads.flat_snow.unwrap_or_default(), roof }
}

/// It as a case of the roof, for the combinations it stands in: it lays nothing on the roof, and its vertical part is a share of
/// the dead load.
#[must_use]
pub fn earthquake_on_roof(sure: Confidence) -> [RoofCase; 2] {
    let case = |name, action| RoofCase { confidence: sure, ..RoofCase::new(name, action, Vec::new()) };
    [case("earthquake up or down", Action::SeismicDown), case("earthquake sideways", Action::SeismicSideways)]
}

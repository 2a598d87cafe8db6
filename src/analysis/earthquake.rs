//! An earthquake along the wall: the base shear of the whole lean-to, of which the beam line and the ledger each take half.
use super::rafter_line::RafterLine;
use super::roof_cases::{RoofCase, RoofLoads};
use crate::design::Shape;
use crate::geometry::PostShape;
use crate::loads::{Action, SEISMIC_EXEMPTION, SeismicWeight, Spread, base_shear};
use crate::project::Project;
use crate::units::{Force, Length};
use crate::unmade::Unmade;
use crate::working::{Citation, Confidence, Step, Worked, weakest};

/// Half of the base shear, unfactored: of what shakes, rafters and roof stand on both lines alike. Nothing where the user has not
/// given the site's values.
///
/// # Errors
/// The sentence that says why there is no base shear.
#[must_use]
pub fn earthquake_along(
    project: &Project,
    shape: &Shape,
    loads: &RoofLoads,
    line: &RafterLine,
) -> Option<Result<Worked<Force>, Unmade>> {
    let seismic = project.place.seismic.as_ref()?;
    let height = loads.lean_to.mean_roof_height();
    let shear = base_shear(project.place.edition, seismic, height, &shaken(project, shape, loads, line));
    Some(match shear {
        Ok(mut shear) => {
            let half = shear.value / 2.0;
            let says = format!("V/2 = {:.0}/2 = {:.0} lb", shear.value.to_pounds(), half.to_pounds());
            let citation = Citation::from_memory("statics", "halves to ledger and beam");
            shear.steps.push(Step::new("earthquake's push on the beam line, and on the ledger", says, citation));
            Ok(Worked::new(half, shear.steps))
        }
        Err(refused) => {
            let says = format!("{refused}. {SEISMIC_EXEMPTION}");
            Err(Unmade::from(refused).saying(says))
        }
    })
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
        + wood.line_load(timbers.post.sawn.area()) * posts;
    SeismicWeight { dead, flat_snow: loads.flat_snow.unwrap_or_default(), roof }
}

/// How sure that push is: what the whole frame weighs is shaken, so that no case is surer than its weight.
#[must_use]
pub fn sure_of_earthquake(push: &Worked<Force>, loads: &RoofLoads) -> Confidence {
    weakest(&push.steps).max(loads.dead.sure)
}

/// It as a case of the roof, for the combinations it stands in: it lays nothing on the roof, and its vertical part is a share of
/// the dead load.
#[must_use]
pub fn earthquake_on_roof(sure: Confidence) -> [RoofCase; 2] {
    let case = |name: &str, action| RoofCase {
        name: name.to_owned(),
        action,
        snow: None,
        down: Spread::default(),
        square: Spread::default(),
        point: None,
        steps: Vec::new(),
        confidence: sure,
    };
    [case("its vertical part", Action::SeismicDown), case("earthquake along the wall", Action::SeismicSideways)]
}

//! The lean-to as the load standard sees it.
use crate::design::Shape;
use crate::geometry::rakes;
use crate::loads::{LeanTo, Thermal, UpperRoof};
use crate::project::Project;
use crate::units::{Run, SlopeLength};

/// Sizes of the roof and of the roof above it. Distances out from the wall start at its face.
#[must_use]
pub fn lean_to(project: &Project, shape: &Shape) -> LeanTo {
    let (frame, site, roofing, above) = (&project.frame, &project.site, &project.roofing, &project.above);
    let pitch = shape.line.pitch;
    let half_breadth = frame.timbers.rafter.sawn.breadth / 2.0;
    let (left, right) = rakes(roofing, &shape.rafters, half_breadth);
    let eave_overhang = Run::of(frame.tail) + SlopeLength::of(roofing.eave_overhang).level(pitch);
    let eave = frame.reach + eave_overhang.length();
    let ground = (site.ground_left + site.ground_right) / 2.0;
    let purlin_and_rib = frame.timbers.purlin.sawn.depth + roofing.rib;
    LeanTo {
        reach: Run::of(frame.reach),
        eave_overhang,
        slope: pitch,
        width: right - left,
        eave_height: shape.line.top_of_metal(eave, purlin_and_rib) - ground,
        step: site.eave_edge - shape.clearances.top_of_metal_at_wall,
        slippery: true,
        eave_clear: roofing.eave_clear,
        gap: None,
        thermal: Thermal::OpenAir,
        upper: UpperRoof {
            eave_to_ridge: above.eave_to_ridge.map(Run::of),
            upwind_length: above.whole_length.map(Run::of),
            slope: site.upper_pitch,
            slippery: above.slippery,
            snow_guards: above.snow_guards,
            sheds_here: above.sheds_here,
            overhang: Run::of(site.eave_projection),
            exposure: above.exposure,
            thermal: above.thermal,
        },
    }
}

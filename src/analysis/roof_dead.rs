//! What the roof weighs.
use crate::design::Shape;
use crate::loads::{RoofLayer, slope_to_plan};
use crate::materials::species;
use crate::members::density;
use crate::project::{Metal, Project};
use crate::units::{AreaLoad, Density, Length, LineLoad};
use crate::working::{Citation, Confidence, Step};

/// Moisture of wood that holds a roof down: dry, the careful side.
const DRY_PERCENT: f64 = 12.0;

/// Weights at two moistures: green pulls down, dry holds down.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pair<T> {
    /// Green, the heaviest sheet of its kind.
    pub heavy: T,
    /// Dry, the lightest sheet.
    pub light: T,
}

impl<T: Copy> Pair<T> {
    /// The one a combination takes: the light one against uplift.
    #[must_use]
    pub const fn of(&self, is_uplift: bool) -> T {
        if is_uplift { self.light } else { self.heavy }
    }
}

/// Dead load of the roof.
#[derive(Clone, Debug, PartialEq)]
pub struct RoofDead {
    /// Density of the timber.
    pub wood: Pair<Density>,
    /// Sheets and purlins on plan.
    pub cover: Pair<AreaLoad>,
    /// Of the slope that a purlin's weight is spread over in it: all rows over the whole slope.
    pub purlin_every: Length,
    /// One rafter, a length of plan.
    pub rafter: Pair<LineLoad>,
    /// How sure the wood's weight is: a placeholder where its species' row is one.
    pub sure: Confidence,
    /// How it came about.
    pub steps: Vec<Step>,
}

impl RoofDead {
    /// Of this project.
    #[must_use]
    pub fn of(project: &Project, shape: &Shape) -> Self {
        let pitch = shape.line.pitch;
        let wood = densities(project);
        let row = species(&project.frame.species).map_or(Confidence::Medium, |wood| wood.confidence);
        let by_size =
            Citation { confidence: row.max(Confidence::Medium), ..Citation::common_practice("size by density") };
        let layer = layer(project.roofing.metal);
        let (heavy, light) = (layer.heaviest(), layer.lightest());
        let purlin = project.frame.timbers.purlin;
        let purlin_every = shape.rafter.top_edge().length() / shape.purlins.len().max(1) as f64;
        let on_slope = |wood: Density| wood.line_load(purlin.sawn.area()) / purlin_every;
        let purlins = Pair { heavy: on_slope(wood.heavy), light: on_slope(wood.light) };
        let on_plan = slope_to_plan(heavy.value + purlins.heavy, pitch);
        let mut steps = heavy.steps;
        let says =
            format!("{} rows of purlins, green: {:.2} psf of slope", shape.purlins.len(), purlins.heavy.to_psf());
        steps.push(Step::new("weight of the purlins", says, by_size));
        steps.extend(on_plan.steps);
        let cover = Pair { heavy: on_plan.value, light: slope_to_plan(light.value + purlins.light, pitch).value };
        let along = |density: Density| density.line_load(project.frame.timbers.rafter.sawn.area()) / pitch.cos();
        let rafter = Pair { heavy: along(wood.heavy), light: along(wood.light) };
        let says = format!(
            "one rafter, green at {:.1} lb/ft³: {:.2} lb a foot of plan",
            wood.heavy.to_pounds_per_cubic_foot(),
            rafter.heavy.to_plf()
        );
        steps.push(Step::new("weight of a rafter", says, by_size));
        Self { wood, cover, purlin_every, rafter, sure: by_size.confidence, steps }
    }
}

const fn layer(metal: Metal) -> RoofLayer {
    match metal {
        Metal::Ribbed29 => RoofLayer::RibbedSteel29,
        Metal::Ribbed26 => RoofLayer::RibbedSteel26,
        Metal::StandingSeam24 => RoofLayer::StandingSeam24,
    }
}

/// Green as it comes from the mill, and dry.
fn densities(project: &Project) -> Pair<Density> {
    let Some(wood) = species(&project.frame.species) else {
        return Pair { heavy: Density::ZERO, light: Density::ZERO };
    };
    let dry = density(wood.specific_gravity, DRY_PERCENT).map_or(Density::ZERO, |worked| worked.value);
    Pair { heavy: wood.green_density, light: dry.min(wood.green_density) }
}

//! Wood as the sawmill sells it: species and the sizes of a section.
mod face;
mod moisture;
mod section;
mod species;

pub use face::Face;
pub use moisture::{FIBRE_SATURATION_PERCENT, Grain, Water, dried_share, years_to_dry};
pub use section::{Section, Timber};
pub use species::{Confidence, Species, species, species_table};

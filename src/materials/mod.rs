//! Wood as the sawmill sells it: species and the sizes of a section.
mod face;
mod section;
mod species;

pub use face::Face;
pub use section::{Section, Timber};
pub use species::{Confidence, Species, species, species_table};

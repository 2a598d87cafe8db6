//! Snow on the lean-to: balanced, least, rain on it, drifted from the roof above, slid off it, and lying unevenly.
//!
//! Balanced + drift and balanced + sliding are separate cases and never act together. A single slope has no unbalanced
//! case (ASCE 7, 7.6), and an open roof no ice load at the eave (7.4.5 is for warm roofs); both from memory.
mod balanced;
mod cases;
mod drift;
mod factors;
mod partial;
mod sliding;
#[cfg(test)]
mod tests;

pub use balanced::{balanced_snow, density, flat_snow, minimum_snow, rain_on_snow, slope_factor};
pub use cases::{Snow, SnowCase, SnowKind, snow_cases};
pub use drift::{Drift, DriftKind, drift_height, drifts};
pub use factors::{exposure_factor, importance_factor, thermal_factor};
pub use partial::{Pattern, partial_patterns};
pub use sliding::{SlidSnow, sliding_snow};

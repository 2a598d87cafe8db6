//! Actions on a lean-to roof: dead, roof live, snow, wind, earthquake, a person, and how they combine.
//!
//! By ASCE 7-16 or 7-22; the edition is part of [`Place`]. Pure functions over two inputs: [`Place`], what the
//! building authority and the map say, and [`LeanTo`], the size of the roof and what stands above it. What the user has
//! not entered is never guessed: the answer is then a [`Refused`] with the sentence to show.
//!
//! ```text
//!            upper roof        z
//!   ridge ──────╲              │
//!                ╲ eave        │   y: out from the wall, level, 0 at the wall
//!      wall │  step            └── y
//!           │╲ lean-to roof        x: along the wall
//!           │  ╲____ eave
//! ```
//! A load over the roof is a [`Spread`] on plan: pounds a square foot of level ground against y, plus is down.
//! How the rafters hand it to ledger and beam is not worked out here.
mod allowances;
mod combination;
mod dead;
mod duration;
mod lean_to;
mod place;
mod refused;
mod roof_live;
#[cfg(test)]
mod sample;
mod say;
mod seismic;
pub mod snow;
mod spread;
pub mod wind;
mod wind_speed;

pub use allowances::{MAINTENANCE_PERSON, notional_force, person_load, settlement};
pub use combination::{ALLOWABLE_WIND, Action, Combination, combinations, passing_snow};
pub use dead::{RoofLayer, slope_to_plan};
pub use duration::Duration;
pub use lean_to::{LeanTo, UpperRoof};
pub use place::{DesignCategory, Edition, Place, RiskCategory, Seismic, SnowExposure, Terrain, Thermal, WindExposure};
pub use refused::Refused;
pub use roof_live::roof_live;
pub use seismic::{SEISMIC_EXEMPTION, SeismicWeight, base_shear, snow_share, vertical_effect};
pub use spread::{Piece, Spread};
pub use wind_speed::WindSpeed;

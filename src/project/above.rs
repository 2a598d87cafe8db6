//! The roof that stands above the lean-to, as far as snow and wind come from it.
use crate::loads::{SnowExposure, Thermal};
use crate::units::Length;

/// The upper roof. Its slope and the eave over the lean-to are the site's: [`super::Site`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Above {
    /// Level, from the eave above the lean-to to the ridge; nothing until it is measured.
    pub eave_to_ridge: Option<Length>,
    /// Level, the whole upper roof square to the wall, from which snow blows down; nothing until it is measured.
    pub whole_length: Option<Length>,
    /// Metal, slate, glass or smooth membrane.
    pub slippery: bool,
    /// Snow guards hold the snow on it.
    pub snow_guards: bool,
    /// Its eave runs along this wall; otherwise this is a gable wall and its snow comes down elsewhere.
    pub sheds_here: bool,
    /// How the wind reaches it.
    pub exposure: SnowExposure,
    /// What is warm under it.
    pub thermal: Thermal,
}

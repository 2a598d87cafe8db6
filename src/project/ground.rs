//! The soil and the frost, as the local authority gives them.
use crate::units::Length;

/// What the footings stand on.
#[derive(Clone, Debug, PartialEq)]
pub struct Ground {
    /// Key of the soil's class; empty until it is known.
    pub soil: String,
    /// How deep the frost goes; nothing until it is asked.
    pub frost_depth: Option<Length>,
    /// The soil heaves when it freezes: silt, wet clay.
    pub is_frost_prone: bool,
}

//! Reads quantities as a builder types them. Every refusal is a sentence that names what was typed and shows a right form.
//!
//! A comma and a point both part the decimals of a number; only money knows marks between thousands.

mod amount;
mod length;
mod length_error;
mod mixed;
mod money;
mod quantity_error;
mod slope;
mod strength;
mod text;
mod typed;

pub use amount::{parse_area_load, parse_count, parse_number, parse_weight};
pub use length::{LONGEST_LENGTH, parse_length, parse_length_not_negative};
pub use length_error::{LengthError, LengthFault};
pub use money::parse_money;
pub use quantity_error::{QuantityError, QuantityFault};
pub use slope::parse_slope;
pub use strength::{parse_elevation, parse_force, parse_speed, parse_stiffness, parse_stress};

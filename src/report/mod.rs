//! The design as plain text and as JSON, for anyone who checks it from outside.
mod buying;
mod calculation;
mod calculation_inputs;
mod check_sheet;
mod costs;
mod hauled;
mod json;
mod markup;
mod received;
mod strength;
mod text;

pub use calculation::{WAYS, calculation, page};
pub use check_sheet::{
    Curve, STRENGTH_CAUTION, along_sheet, joints, list, load_working, one_check, paths, summary, working,
};
pub use json::json;
pub use markup::Markup;
pub use text::text;

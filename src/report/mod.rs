//! The design as plain text and as JSON, for anyone who checks it from outside.
mod json;
mod strength;
mod text;

pub use json::json;
pub use text::text;

//! Older project files, brought up one version at a time.
//!
//! A step works on the raw JSON and is never changed once it has been released; each has a saved old
//! file in `tests/data`.
mod v2_posts_with_piers;
mod v3_strength;
mod v4_bench_and_fixings;
mod v5_buying;
mod v6_bores_and_splices;
mod v7_piers;

use serde_json::Value;

use super::file::FileError;

/// The body of a file of that version as the current version writes it.
///
/// # Errors
/// The sentence of the step that could not be made.
pub fn to_current(version: u64, project: Value) -> Result<Value, FileError> {
    match version {
        1 => to_current(2, v2_posts_with_piers::migrate(project)?),
        2 => to_current(3, v3_strength::migrate(project)?),
        3 => to_current(4, v4_bench_and_fixings::migrate(project)?),
        4 => to_current(5, v5_buying::migrate(project)?),
        5 => to_current(6, v6_bores_and_splices::migrate(project)?),
        6 => to_current(7, v7_piers::migrate(project)?),
        7 => Ok(project),
        other => Err(FileError::Field(format!("there never was a file version {other}"))),
    }
}

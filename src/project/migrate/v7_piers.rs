//! Version 6 to 7: how deep the anchor of a post's base is cast into its pier, and the bars from the pier to its footing.
//!
//! Version 6 knew neither, nor what a bar costs: nothing is guessed, all is left open.
use serde_json::{Value, json};

use crate::project::file::FileError;

/// The step.
pub fn migrate(mut project: Value) -> Result<Value, FileError> {
    let pier = project.get_mut("fixings").and_then(|fixings| fixings.get_mut("pier")).and_then(Value::as_object_mut);
    let pier = pier.ok_or_else(|| FileError::Field("fixings.pier is missing".to_owned()))?;
    pier.insert("anchor_depth_in".to_owned(), json!(0.0));
    pier.insert("bars".to_owned(), json!(0));
    pier.insert("bar_in".to_owned(), json!(0.5));
    let prices = project.get_mut("buying").and_then(|buying| buying.get_mut("prices")).and_then(Value::as_object_mut);
    let prices = prices.ok_or_else(|| FileError::Field("buying.prices is missing".to_owned()))?;
    prices.insert("pier_bar".to_owned(), Value::Null);
    Ok(project)
}

//! Version 5 to 6: holes bored for ties, the ledger's splices by hand, what a trailer weighs, where a stick's crown is, words of
//! the user's own for the order, ready-mixed concrete.
//!
//! Version 5 knew none of them: nothing is bored, the program places the splices, no crown was looked at, and the trailer's weight
//! and the price are left open.
use serde_json::{Map, Value, json};

use crate::project::file::FileError;

/// The step.
pub fn migrate(mut project: Value) -> Result<Value, FileError> {
    for tie in ["rafter_head", "rafter_seat", "scarf", "post_base"] {
        object(&mut project, &["fixings", tie])?.insert("bores".to_owned(), Value::Null);
    }
    object(&mut project, &["frame"])?.insert("ledger_splices_in".to_owned(), json!([]));
    object(&mut project, &["truck"])?.insert("own_weight_lb".to_owned(), Value::Null);
    object(&mut project, &["progress"])?.insert("crowns".to_owned(), json!({}));
    object(&mut project, &["buying"])?.insert("words".to_owned(), json!([]));
    object(&mut project, &["buying", "prices"])?.insert("concrete_per_cubic_yard".to_owned(), Value::Null);
    Ok(project)
}

fn object<'a>(project: &'a mut Value, path: &[&str]) -> Result<&'a mut Map<String, Value>, FileError> {
    let within = path.iter().try_fold(project, |value, name| value.get_mut(*name));
    within.and_then(Value::as_object_mut).ok_or_else(|| FileError::Field(format!("{} is missing", path.join("."))))
}

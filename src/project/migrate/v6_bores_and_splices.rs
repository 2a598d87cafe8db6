//! Version 5 to 6: holes bored for ties, the ledger's splices by hand, what a trailer weighs, where a stick's crown and its heart
//! are, words of the user's own for the order, ready-mixed concrete.
//!
//! Version 5 knew none of them: nothing is bored, the program places the splices, nobody looked at a heart or a crown, and the
//! trailer's weight and the price are left open.
use serde_json::{Map, Value, json};

use crate::project::file::FileError;

/// The step.
pub fn migrate(mut project: Value) -> Result<Value, FileError> {
    for tie in ["rafter_head", "rafter_seat", "scarf", "post_base"] {
        object(&mut project, &["fixings", tie])?.insert("bores".to_owned(), Value::Null);
    }
    object(&mut project, &["frame"])?.insert("ledger_splices_in".to_owned(), json!([]));
    object(&mut project, &["truck"])?.insert("own_weight_lb".to_owned(), Value::Null);
    let yard = project.get_mut("yard").and_then(Value::as_array_mut).into_iter().flatten();
    yard.filter_map(Value::as_object_mut).for_each(unknown_heart);
    let pieces = object(&mut project, &["progress", "pieces"])?.values_mut();
    pieces.filter_map(Value::as_object_mut).for_each(unknown_heart);
    object(&mut project, &["progress"])?.insert("crowns".to_owned(), json!({}));
    object(&mut project, &["buying"])?.insert("words".to_owned(), json!([]));
    object(&mut project, &["buying", "prices"])?.insert("concrete_per_cubic_yard".to_owned(), Value::Null);
    Ok(project)
}

fn unknown_heart(wood: &mut Map<String, Value>) {
    wood.insert("heart".to_owned(), json!("either"));
}

fn object<'a>(project: &'a mut Value, path: &[&str]) -> Result<&'a mut Map<String, Value>, FileError> {
    let within = path.iter().try_fold(project, |value, name| value.get_mut(*name));
    within.and_then(Value::as_object_mut).ok_or_else(|| FileError::Field(format!("{} is missing", path.join("."))))
}

//! Version 1 to 2: every post got its own pier height and its own braces.
//!
//! Version 1 kept one `pier_top_in` for all posts and their places in `post_places_in`; every inner
//! post had two braces and each end post one, looking inward. It knew neither progress nor a remark.
use serde_json::{Map, Value, json};

use crate::project::file::FileError;

/// The step.
pub fn migrate(mut project: Value) -> Result<Value, FileError> {
    let root = object(Some(&mut project), "project")?;
    root.entry("note").or_insert_with(|| json!(""));
    root.entry("progress").or_insert_with(|| json!({"marked": {}, "cut": {}, "received": []}));
    let frame = object(root.get_mut("frame"), "frame")?;
    let pier_top = frame.remove("pier_top_in").unwrap_or_else(|| json!(0.0));
    let places = match frame.remove("post_places_in") {
        Some(Value::Array(places)) => places,
        _ => return Err(FileError::Field("post_places_in is missing".to_owned())),
    };
    let last = places.len().saturating_sub(1);
    let posts: Vec<Value> = places
        .iter()
        .enumerate()
        .map(|(index, x)| {
            json!({
                "x_in": x,
                "pier_top_in": pier_top,
                "pier_measured": false,
                "brace_left": index > 0,
                "brace_right": index < last,
            })
        })
        .collect();
    frame.insert("posts".to_owned(), Value::Array(posts));
    Ok(project)
}

fn object<'a>(value: Option<&'a mut Value>, name: &str) -> Result<&'a mut Map<String, Value>, FileError> {
    value.and_then(Value::as_object_mut).ok_or_else(|| FileError::Field(format!("{name} is missing")))
}

//! Version 4 to 5: how the timber is bought, hauled and received; the sawyer's yard; joints of their own.
//!
//! Version 4 kept of a stick that came only that it came. Nothing was known of prices but the timber's, of a truck or a
//! yard: prices are left open, the yard empty, and the truck and the crew take what is common.
use serde_json::{Map, Value, json};

use crate::project::file::FileError;

/// The step.
pub fn migrate(mut project: Value) -> Result<Value, FileError> {
    let root = project.as_object_mut().ok_or_else(|| missing("project"))?;
    let mill = root.get_mut("mill").and_then(Value::as_object_mut).ok_or_else(|| missing("mill"))?;
    mill.insert("long_prices".to_owned(), json!([]));
    mill.insert("free_of_heart_more_share".to_owned(), json!(0.3));
    mill.insert("limits".to_owned(), json!([]));
    received(root)?;
    root.insert("buying".to_owned(), buying());
    root.insert("yard".to_owned(), json!([]));
    root.insert("exceptions".to_owned(), json!({}));
    root.insert(
        "truck".to_owned(),
        json!({
            "is_trailer": true, "payload_lb": 2000.0, "bed_in": 192.0, "bed_width_in": 76.0,
            "overhang_in": 48.0,
            "coupling_to_bed_in": 48.0, "bed_to_axle_in": 108.0
        }),
    );
    root.insert("crew".to_owned(), json!({"n_people": 4, "each_lifts_lb": 75.0}));
    Ok(project)
}

fn missing(name: &str) -> FileError {
    FileError::Field(format!("{name} is missing"))
}

fn buying() -> Value {
    let wish = |role: &str, heart: &str| json!({"role": role, "heart": heart});
    json!({
        "aim": "least cost",
        "spares": {"each_section": 0, "one_in": 0},
        "hearts": [wish("post", "boxed"), wish("beam", "boxed"), wish("brace", "free")],
        "second_delivery": [],
        "prices": {},
        "finish": {"coats": 0, "cover_ft2_per_gallon": 100.0}
    })
}

/// A tick named its section in inches, its length in inches and a number: `8x10/192/1`. One that does not is dropped: it
/// ticked nothing.
fn received(root: &mut Map<String, Value>) -> Result<(), FileError> {
    let progress = root.get_mut("progress").and_then(Value::as_object_mut).ok_or_else(|| missing("progress"))?;
    let ticks = progress.remove("received").ok_or_else(|| missing("progress.received"))?;
    let mut pieces = Map::new();
    for key in ticks.as_array().into_iter().flatten().filter_map(Value::as_str) {
        if let Some(piece) = piece(key) {
            pieces.insert(key.to_owned(), piece);
        }
    }
    progress.insert("pieces".to_owned(), Value::Object(pieces));
    Ok(())
}

fn piece(key: &str) -> Option<Value> {
    let mut parts = key.split('/');
    let (section, length, _) = (parts.next()?, parts.next()?, parts.next()?);
    let (small, large) = section.split_once('x')?;
    let number = |text: &str| text.parse::<f64>().ok().filter(|value| value.is_finite() && *value > 0.0);
    let (small, large, length) = (number(small)?, number(large)?, number(length)?);
    Some(json!({
        "section": {"breadth_in": small, "depth_in": large},
        "length_in": length,
        "state": "kept",
        "defects": [],
        "place": "",
        "remark": ""
    }))
}

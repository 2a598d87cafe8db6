//! Version 3 to 4: ledger fixings side by side, their washers, and a maker's own screw; what is found and measured at the
//! bench, how rough stock is treated, curved braces.
//!
//! Version 3 knew one column of fixings at a wall post and no washers: the washer is left open, the rest stands as it was.
//! It knew straight braces only, and reduced every joint to the inner size,
//! and no bladed scarf.
use serde_json::{Map, Value, json};

use crate::project::file::FileError;

/// The step.
pub fn migrate(mut project: Value) -> Result<Value, FileError> {
    let root = project.as_object_mut().ok_or_else(|| missing("project"))?;
    fixings(root)?;
    bench(root)?;
    Ok(project)
}

fn missing(name: &str) -> FileError {
    FileError::Field(format!("{name} is missing"))
}

fn fixings(root: &mut Map<String, Value>) -> Result<(), FileError> {
    let fixings = root.get_mut("fixings").and_then(Value::as_object_mut).ok_or_else(|| missing("fixings"))?;
    let ledger = fixings.get_mut("ledger").and_then(Value::as_object_mut).ok_or_else(|| missing("fixings.ledger"))?;
    ledger.insert("columns".to_owned(), json!(1));
    ledger.insert("column_gap_in".to_owned(), json!(3.0));
    ledger.insert("washer_in".to_owned(), json!(0.0));
    ledger.insert("makers".to_owned(), json!({"diameter_in": 0.375, "sideways_lb": 0.0, "pull_lb": 0.0, "source": ""}));
    Ok(())
}

fn bench(root: &mut Map<String, Value>) -> Result<(), FileError> {
    let mut part = |name: &str, field: &str, value: Value| {
        let part = root.get_mut(name).and_then(Value::as_object_mut).ok_or_else(|| missing(name))?;
        part.insert(field.to_owned(), value);
        Ok(())
    };
    part("frame", "brace_rise_in", json!(0.0))?;
    part("joinery", "stock", json!("inner size"))?;
    part("joinery", "scarf_blade_in", json!(3.0))?;
    for field in ["knots", "sizes", "dry_fits_in"] {
        part("progress", field, json!({}))?;
    }
    Ok(())
}

//! Version 2 to 3: what the strength of the frame hangs on.
//!
//! Version 2 knew no snow, wind, soil, wood or fixing. Nothing of it is guessed: what only the authority or the maker
//! can say is left open, the rest is what a new job starts from.
use serde_json::{Map, Value, json};

use crate::project::file::FileError;

/// The step.
pub fn migrate(mut project: Value) -> Result<Value, FileError> {
    let missing = |name: &str| FileError::Field(format!("{name} is missing"));
    let root = project.as_object_mut().ok_or_else(|| missing("project"))?;
    let roofing = root.get_mut("roofing").and_then(Value::as_object_mut).ok_or_else(|| missing("roofing"))?;
    roofing.insert("metal".to_owned(), json!("ribbed 29 gauge"));
    roofing.insert("eave_clear".to_owned(), json!(true));
    root.insert("place".to_owned(), place());
    root.insert(
        "above".to_owned(),
        json!({
            "eave_to_ridge_in": null, "whole_length_in": null, "slippery": true, "snow_guards": false,
            "sheds_here": true, "exposure": "partial", "thermal": "heated",
        }),
    );
    root.insert("ground".to_owned(), json!({"soil": "", "frost_depth_in": null, "is_frost_prone": true}));
    root.insert("wood".to_owned(), json!({"timber_grade": "No.2", "lumber_grade": "No.2", "is_dry": false, "own": []}));
    root.insert("fixings".to_owned(), fixings());
    Ok(project)
}

fn place() -> Value {
    json!({
        "edition": "ASCE 7-16", "risk": "II", "ground_snow_psf": null, "terrain": "C", "snow_exposure": "partial",
        "winter_wind_share": null, "wind_speed_mph": null, "wind_exposure": "C", "ground_elevation_in": 0.0,
        "topography_factor": 1.0, "member_force_coefficient": null, "seismic": null,
    })
}

fn fixings() -> Value {
    let no_tie = json!({"count": 0, "pull_lb": 0.0, "sideways_lb": 0.0, "source": ""});
    let screws = |length: f64, count: usize| json!({"fastener": "", "length_in": length, "count": count});
    let mut fixings = Map::new();
    for name in ["rafter_head", "rafter_seat", "scarf", "post_base"] {
        fixings.insert(name.to_owned(), no_tie.clone());
    }
    fixings.insert(
        "ledger".to_owned(),
        json!({
            "fastener": "", "length_in": 10.0, "rows": 2, "lowest_in": 2.75, "row_gap_in": 2.5, "wall_species": "",
            "wall_depth_in": 6.0,
        }),
    );
    fixings.insert("purlin".to_owned(), screws(4.5, 2));
    fixings.insert("sheet".to_owned(), json!({"screw": screws(1.5, 1), "spacing_in": 9.0, "pull_over_lb": 0.0}));
    fixings.insert(
        "pier".to_owned(),
        json!({
            "is_round": true, "footing_width_in": 24.0, "footing_thickness_in": 10.0, "pier_width_in": 12.0,
            "depth_in": 48.0,
        }),
    );
    fixings.insert("brace_joint".to_owned(), json!({"pushed_lb_per_in": 50000.0, "pulled_lb_per_in": 20000.0}));
    Value::Object(fixings)
}

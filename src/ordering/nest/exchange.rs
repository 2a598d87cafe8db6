//! A cutting task as text: JSON in, a plan as JSON or as a list out. Units stand in every field's name (inches).
//!
//! `{"kerf_in", "trim_in", "sticks": [{"mark", "length_in", "count"}], "stock": [{"length_in", "price", "count"}]}`; a
//! count of stock that is null or left out is as many as wanted, a count of sticks left out is one. `aim` may be
//! `least_cost` (so where it is left out), `fewest_bars` or `shortest_bars`. A key nobody knows is refused.
mod printing;
mod reading;

pub use reading::read;

use super::nest;

/// Reads a task, works out its plan, and prints it as JSON or as a list.
///
/// # Errors
/// Sentences, one a line: what cannot be read, or what cannot be.
pub fn report(text: &str, json: bool) -> Result<String, String> {
    let task = read(text)?;
    let plan = nest(&task).map_err(|refused| refused.to_string())?;
    Ok(if json { printing::json(&task, &plan) } else { printing::text(&task, &plan) })
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use serde_json::{Value, json};

    fn rafters() -> Value {
        json!({"kerf_in": 0.25, "trim_in": 1,
            "sticks": [{"mark": "R1", "length_in": 143.75, "count": 3}, {"mark": "K1", "length_in": 47, "count": 2}],
            "stock": [{"length_in": 192, "price": 20, "count": null}, {"length_in": 168, "price": 17.5}]})
    }

    /// The sentence after one part of the task is changed.
    fn refused(path: &str, value: Value) -> String {
        let mut task = rafters();
        *task.pointer_mut(path).unwrap() = value;
        report(&task.to_string(), false).unwrap_err()
    }

    /// 143.75 + 0.25 + 47 = 191 = 192 − 1: two rafters share a 192 with a brace, the third takes a 168.
    #[test]
    fn the_answer_has_every_agreed_key() {
        let out: Value = serde_json::from_str(&report(&rafters().to_string(), true).unwrap()).unwrap();
        assert_eq!((out["cost"].as_f64(), out["bound"].as_f64()), (Some(57.5), Some(57.5)));
        assert_eq!(out["proven_optimal"], true);
        assert_eq!(out["bars"][0], json!({"length_in": 192.0, "sticks": ["R1", "K1"], "left_in": 0.0, "price": 20.0}));
        assert_eq!(out["bars"][2], json!({"length_in": 168.0, "sticks": ["R1"], "left_in": 23.25, "price": 17.5}));
        assert_eq!(out["unplaced"], json!([]));
        let text = report(&rafters().to_string(), false).unwrap();
        assert!(text.contains("57.50") && text.contains("proven least"), "{text}");
    }

    #[test]
    fn a_stick_that_finds_no_place_is_named() {
        let mut task = rafters();
        task["sticks"][1]["length_in"] = json!(200.5);
        task["stock"][0]["count"] = json!(1);
        task["stock"][1]["count"] = json!(1);
        let out: Value = serde_json::from_str(&report(&task.to_string(), true).unwrap()).unwrap();
        let unplaced = out["unplaced"].as_array().unwrap();
        assert_eq!(unplaced.len(), 3);
        assert_eq!(unplaced[0]["mark"], "R1");
        assert!(unplaced[0]["says"].as_str().unwrap().contains("no stock is left"), "{}", unplaced[0]);
        assert_eq!((&unplaced[1]["mark"], unplaced[1]["over_in"].as_f64()), (&json!("K1"), Some(9.5)));
        assert!(unplaced[1]["says"].as_str().unwrap().contains("9.5 in longer"), "{}", unplaced[1]);
        let text = report(&task.to_string(), false).unwrap();
        assert!(text.contains("K1") && text.contains("9.5 in longer"), "{text}");
    }

    #[test]
    fn what_cannot_be_is_said_in_words() {
        assert!(refused("/stock", json!([])).contains("no stock"));
        assert!(refused("/sticks/0/length_in", json!(-3)).contains("R1"));
        assert!(refused("/sticks/0/length_in", json!(0)).contains("R1"));
        assert!(refused("/sticks/0/count", json!(-1)).contains("line"));
        assert!(refused("/sticks/0/count", json!(1_000_000)).contains("at most 2000"));
        assert!(refused("/sticks/0/count", json!(4_000_000_000_u32)).contains("at most 2000"));
        assert!(refused("/stock/0/price", json!(-20)).contains("Stock 1"));
        assert!(refused("/stock/0/price", json!(1e30)).contains("Stock 1"));
        assert!(refused("/stock/1/length_in", json!(0)).contains("Stock 2"));
        assert!(refused("/kerf_in", json!(-0.25)).contains("cut"));
        assert!(refused("/stock/0", json!({"lenght_in": 192})).contains("lenght_in"));
        assert!(report("{", false).unwrap_err().contains("cannot be read"));
        let huge = rafters().to_string().replace("143.75", "1e999");
        assert!(report(&huge, false).is_err());
    }
}

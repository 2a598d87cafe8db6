//! Fifty assignment problems against a general solver (scipy), committed values: as many placed, at the same cost.
//!
//! `reference/assign.py` draws and solves them.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

use outshot::ordering::came::assign;
use serde_json::Value;

fn tasks() -> Vec<Value> {
    let all: Value = serde_json::from_str(include_str!("reference/assign.json")).unwrap();
    all["tasks"].as_array().unwrap().clone()
}

fn table(task: &Value) -> Vec<Vec<Option<i64>>> {
    let cost = |value: &Value| value.as_i64().filter(|cost| *cost >= 0);
    let row = |row: &Value| row.as_array().unwrap().iter().map(cost).collect();
    task["costs"].as_array().unwrap().iter().map(row).collect()
}

/// How many are placed, and at what cost; no place twice, no pair that must not be.
fn worth(costs: &[Vec<Option<i64>>], placed: &[Option<usize>]) -> (usize, i64) {
    let mut taken = Vec::new();
    let mut cost = 0;
    for (row, column) in placed.iter().enumerate().filter_map(|(row, column)| Some((row, (*column)?))) {
        assert!(!taken.contains(&column), "place {column} is given twice");
        taken.push(column);
        cost += costs[row][column].unwrap_or_else(|| panic!("row {row} must not have place {column}"));
    }
    (taken.len(), cost)
}

#[test]
fn fifty_tables_cost_what_a_general_solver_says() {
    let tasks = tasks();
    assert_eq!(tasks.len(), 50);
    for task in &tasks {
        let costs = table(task);
        let expected = (task["placed"].as_u64().unwrap() as usize, task["cost"].as_i64().unwrap());
        assert_eq!(worth(&costs, &assign(&costs)), expected, "{} rows", costs.len());
    }
}

/// Negative and very large costs, and the same table with its rows in another order: the same worth.
#[test]
fn the_order_of_the_rows_makes_no_difference() {
    for task in tasks() {
        let costs = table(&task);
        let turned: Vec<_> = costs.iter().rev().cloned().collect();
        assert_eq!(worth(&turned, &assign(&turned)), worth(&costs, &assign(&costs)));
        let moved: Vec<Vec<Option<i64>>> = costs
            .iter()
            .map(|row| row.iter().map(|cost| cost.map(|cost| cost * 100_000 - 40_000_000)).collect())
            .collect();
        let (count, cost) = worth(&costs, &assign(&costs));
        assert_eq!(worth(&moved, &assign(&moved)), (count, cost * 100_000 - 40_000_000 * count as i64));
    }
}

//! Golden drawings: every view of the examples as SVG, compared letter by letter.
//!
//! After a change that is meant, look at the new drawings and keep them with
//! `OUTSHOT_GOLDEN=write cargo test --test drawings`.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

use std::path::PathBuf;

use outshot::drawing::{Scene, elevation, plan, section, stick_sheet, svg};
use outshot::evaluate;
use outshot::project::{Project, demo};

/// Compares a drawing with its golden file, or writes the file where that was asked for.
fn check(name: &str, scene: &Scene) {
    let found = svg::print(scene, 900.0, name);
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/golden").join(format!("{name}.svg"));
    if std::env::var("OUTSHOT_GOLDEN").as_deref() == Ok("write") {
        std::fs::write(&path, &found).unwrap();
    }
    let golden = std::fs::read_to_string(&path).unwrap_or_else(|_| panic!("{} is missing", path.display()));
    assert!(found == golden, "{name}: the drawing is not the golden one");
}

fn check_project(project: &Project, prefix: &str, sheets: &[&str]) {
    let built = evaluate(project).built.unwrap();
    check(&format!("{prefix}-section"), &section(project, &built));
    check(&format!("{prefix}-elevation"), &elevation(project, &built));
    check(&format!("{prefix}-plan"), &plan(project, &built));
    for mark in sheets {
        check(&format!("{prefix}-{mark}"), &stick_sheet(project, built.stick(mark).unwrap()));
    }
}

#[test]
fn the_wool_barn() {
    check_project(&demo::wool_barn(), "wool-barn", &["P2", "B2", "K2L", "R1", "L1", "N1a", "X1"]);
}

#[test]
fn the_log_store() {
    check_project(&demo::log_store(), "log-store", &["P1", "B1", "R1"]);
}

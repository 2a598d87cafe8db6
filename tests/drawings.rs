//! Golden drawings: every view of the examples as SVG, compared letter by letter.
//!
//! After a change that is meant, look at the new drawings and keep them with
//! `OUTSHOT_GOLDEN=write cargo test --test drawings`.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

use std::path::PathBuf;

use outshot::drawing::{
    Eye, Paper, Scene, Shown, TemplateSheets, elevation, exploded, load_way, painted, painted_plain, plan, section,
    stick_sheet, svg, template_file,
};
use outshot::joinery::{StickBody, bodies, joints};
use outshot::project::{Project, ScarfKind, demo};
use outshot::tickets::templates;
use outshot::units::{Length, UnitSystem};
use outshot::{evaluate, lay_out};

fn check(name: &str, scene: &Scene) {
    check_file(name, &svg::print(scene, 900.0, name));
}

/// Compares a drawing with its golden file, or writes the file where that was asked for.
fn check_file(name: &str, found: &str) {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/golden").join(format!("{name}.svg"));
    if std::env::var("OUTSHOT_GOLDEN").as_deref() == Ok("write") {
        std::fs::write(&path, found).unwrap();
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

/// A template of each kind in one piece, in inches or in millimetres; and a sheet of each paper.
#[test]
fn the_templates() {
    let kinds = [
        ("rafter-wall-end", UnitSystem::Imperial),
        ("rafter-beam-end", UnitSystem::Metric),
        ("scarf-lower-lap", UnitSystem::Imperial),
        ("post-head", UnitSystem::Imperial),
        ("post-head-left-end", UnitSystem::Metric),
        ("mortise", UnitSystem::Imperial),
        ("mortise-left-end", UnitSystem::Metric),
        ("brace-post-end", UnitSystem::Imperial),
        ("pocket-post-left-face", UnitSystem::Metric),
        ("pocket-beam-right-of-post", UnitSystem::Imperial),
    ];
    let project = demo::wool_barn();
    let all = templates(&project, &evaluate(&project).built.unwrap().shape);
    for (key, units) in kinds {
        let template = all.iter().find(|template| template.key == key).unwrap();
        check_file(&format!("template-{key}"), &template_file(template, units));
    }
    for paper in Paper::ALL {
        let sheets = TemplateSheets::new(all.iter().find(|one| one.key == "rafter-beam-end").unwrap(), paper).print();
        check_file(&format!("template-sheet-{}", paper.key()), &sheets[0]);
    }
}

fn wood(project: &Project) -> Vec<StickBody> {
    bodies(project, &lay_out(project).built.unwrap().shape)
}

#[test]
fn in_the_round() {
    let frame: Vec<Shown> = wood(&demo::log_store()).iter().map(Shown::standing).collect();
    check("log-store-round", &painted_plain(&frame, &[], Eye::CORNER));
    let barn = wood(&demo::wool_barn());
    for mark in ["P2", "B2", "K2L", "R5"] {
        let body = barn.iter().find(|body| body.mark == mark).unwrap();
        check(&format!("wool-barn-{mark}-round"), &painted(&[Shown::cut(body)], &[], Eye::CORNER));
    }
}

/// One joint of each kind, and each kind of scarf.
#[test]
fn joints_drawn_apart() {
    let barn = wood(&demo::wool_barn());
    let all = joints(&barn);
    for (name, file) in [
        ("Post P2 in beam B1", "post-head"),
        ("Brace K2L in post P2", "brace-in-post"),
        ("Brace K2L in beam B1", "brace-in-beam"),
        ("Rafter R5 over beam B1", "rafter-over-beam"),
        ("Rafter R5 over ledger L1", "rafter-over-ledger"),
        ("Ledger splice: L1 and L2", "ledger-splice"),
    ] {
        let joint = all.iter().find(|joint| joint.name == name).unwrap();
        check(&format!("apart-{file}"), &exploded(&barn, joint));
    }
    for (kind, file) in
        ScarfKind::ALL.into_iter().zip(["halved", "squinted", "bladed", "splayed", "splayed-squinted", "tabled"])
    {
        let mut project = demo::wool_barn();
        project.frame.scarfs.kind = kind;
        project.frame.brace_along = Length::inches(24.0);
        project.frame.brace_down = Length::inches(24.0);
        let sticks = wood(&project);
        let scarf = joints(&sticks).into_iter().find(|joint| joint.name.starts_with("Scarf 1")).unwrap();
        check(&format!("apart-scarf-{file}"), &exploded(&sticks, &scarf));
    }
}

/// The ways of lift and weight over the section, with invented shares: one link open, one the weakest.
#[test]
fn ways_of_the_load() {
    let project = demo::wool_barn();
    let design = evaluate(&project);
    let (built, strength) = (design.built.unwrap(), design.strength.unwrap());
    for (path, file) in strength.paths.iter().zip(["lift-ground", "lift-wall", "weight-ground", "weight-wall"]) {
        let mut path = path.clone();
        for (index, link) in path.links.iter_mut().enumerate() {
            link.ratio = [Some(0.38), None, Some(0.84), Some(0.2), Some(1.14)][index % 5];
        }
        check(&format!("wool-barn-{file}"), &load_way(&project, &built, &path, file));
    }
}

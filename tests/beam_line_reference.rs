//! The beam line of the wool barn against a general structural library (PyNiteFEA).
//!
//! `reference/beam_line.py` builds it from the project file by its own statics; every value agrees to 0.1 % of the largest
//! of its kind in the case.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

use std::sync::Arc;

use outshot::analysis::{BeamCase, BeamLine, BeamLoads, BraceModel, Purpose, Solved};
use outshot::checks::Strength;
use outshot::evaluate;
use outshot::project::{Project, ScarfPlace, Side, file};
use outshot::units::{Force, Length};
use serde_json::Value;

const TOLERANCE: f64 = 0.001;

fn reference() -> Value {
    serde_json::from_str(include_str!("reference/beam_line.json")).unwrap()
}

/// The file leaves the places of its scarfs open; they are a given of the comparison.
fn project() -> Project {
    let mut project = file::read(include_str!("data/version-3.json")).unwrap();
    let place = |x: f64| ScarfPlace { centre: Length::inches(x), lower: Side::Left };
    project.frame.scarfs.by_hand = numbers(&reference()["scarfs_in"]).into_iter().map(place).collect();
    project
}

fn numbers(value: &Value) -> Vec<f64> {
    match value.as_array() {
        Some(rows) => rows.iter().map(|row| row.as_f64().unwrap()).collect(),
        None => vec![value.as_f64().unwrap()],
    }
}

/// The largest of both lists makes the scale.
fn check(what: &str, found: &[f64], expected: &Value, tolerance: f64) {
    let expected = numbers(expected);
    assert_eq!(found.len(), expected.len(), "{what}");
    let scale = expected.iter().chain(found).fold(1e-9_f64, |most, value| most.max(value.abs()));
    for (found, expected) in found.iter().zip(&expected) {
        assert!((found - expected).abs() <= tolerance * scale, "{what}: {found} is not {expected}");
    }
}

fn case_name(load: &str) -> &'static str {
    match load {
        "D" => "D",
        "D+S" => "D + S: balanced snow",
        "0.6D+0.6W" => "0.6D + 0.6W: wind onto the wall, the roof taken as its overhang",
        other => panic!("no case {other}"),
    }
}

fn solved<'a>(line: &'a BeamLine, row: &Value) -> (&'a Solved, &'a BeamCase) {
    let name = case_name(row["load"].as_str().unwrap());
    let braces = row["braces"].as_str().unwrap();
    let wanted = |solved: &Solved, case: &BeamCase| match braces {
        "rigid" => case.name == name && solved.model == BraceModel::Rigid && case.purpose == Purpose::Strength,
        "soft" => case.name == name && solved.model == BraceModel::Sprung(1.0) && case.purpose == Purpose::Strength,
        "slack" => case.name == name && solved.model == BraceModel::Slack && case.purpose == Purpose::Strength,
        _ => case.name == format!("{name}, out of plumb to the right") && solved.model == BraceModel::PushOnly,
    };
    line.strength().find(|(solved, case)| wanted(solved, case)).unwrap_or_else(|| panic!("{name}, {braces}"))
}

fn check_row(strength: &Strength, row: &Value) {
    let line = strength.line.as_ref().unwrap();
    let (solved, case) = solved(line, row);
    let what = |part: &str| format!("{}, {}: {part}", row["load"], row["braces"]);
    let posts = |of: fn(&outshot::analysis::PostPart) -> Force| -> Vec<f64> {
        solved.posts.iter().map(|post| of(post).to_pounds()).collect()
    };
    check(&what("push"), &[case.push.to_pounds()], &row["push_lb"], TOLERANCE);
    check(&what("feet"), &posts(|post| post.foot), &row["foot_lb"], TOLERANCE);
    check(&what("shoulders"), &posts(|post| post.top), &row["shoulder_lb"], TOLERANCE);
    let braces: Vec<f64> = solved.braces.iter().map(|force| force.to_pounds()).collect();
    if solved.model != BraceModel::Slack {
        check(&what("level"), &posts(|post| post.level), &row["level_lb"], TOLERANCE);
        check(&what("braces"), &braces, &row["brace_lb"], TOLERANCE);
    }
    let most = solved.beam.iter().map(|part| part.moment.max.to_pound_inches()).fold(f64::MIN, f64::max);
    let least = solved.beam.iter().map(|part| part.moment.min.to_pound_inches()).fold(f64::MAX, f64::min);
    let range = serde_json::json!([row["moment_most_lb_in"], row["moment_least_lb_in"]]);
    check(&what("extreme moments"), &[most, least], &range, TOLERANCE);
    let nodes: Vec<usize> = line.model.posts.iter().map(|post| post.beam).collect();
    let ends = line.model.beam.iter().zip(&solved.beam).filter(|(stretch, _)| {
        line.model.frame.members.get(stretch.member).is_some_and(|member| nodes.contains(&member.to))
    });
    let over: Vec<f64> = ends.map(|(_, part)| part.end_moments.1.to_pound_inches()).collect();
    let expected = numbers(&row["moment_over_posts_lb_in"]);
    let scale = most.max(-least);
    for (found, expected) in over.iter().zip(&expected) {
        assert!((found - expected).abs() <= TOLERANCE * scale, "{}: {found} {expected}", what("over posts"));
    }
    assert_eq!(over.len(), expected.len());
    if row["braces"] == "pushed only" {
        check(&what("sway"), &[solved.sway.to_inches()], &row["sway_in"], TOLERANCE);
    }
}

#[test]
fn nine_cases_and_a_push() {
    let strength: Arc<Strength> = evaluate(&project()).strength.unwrap();
    let file = reference();
    let rows = file["cases"].as_array().unwrap();
    assert_eq!(rows.len(), 10);
    for row in rows {
        check_row(&strength, row);
    }
}

#[test]
fn places_and_what_the_rafters_bring() {
    let (project, file) = (project(), reference());
    let design = evaluate(&project);
    let (built, strength) = (design.built.unwrap(), design.strength.unwrap());
    let shape = &built.shape;
    let inches = |found: Vec<Length>| -> Vec<f64> { found.into_iter().map(|x| x.to_inches()).collect() };
    let scarfs = shape.beam.scarfs.iter().map(|scarf| scarf.place.centre).collect();
    check("scarfs", &inches(scarfs), &file["scarfs_in"], 1e-9);
    check("rafters", &inches(shape.rafters.clone()), &file["rafters_in"], 1e-9);
    let line = outshot::geometry::BraceLine::of(&project.frame);
    let heads = shape.braces.iter().map(|brace| line.head_x(brace, &shape.posts)).collect();
    check("heads of the braces", &inches(heads), &file["brace_heads_in"], 1e-7);
    let loads = BeamLoads::new(&project, shape, &strength.loads);
    let cases = loads.even_cases(project.place.edition);
    for load in ["D", "D+S", "0.6D+0.6W"] {
        let case = cases.iter().find(|case| case.name == case_name(load)).unwrap();
        let dead = loads.dead(case.is_uplift);
        let found: Vec<f64> =
            case.rafters.iter().zip(dead).map(|(extra, dead)| (*extra + dead * case.dead).to_pounds()).collect();
        check(load, &found, &file["rafter_lb"][load], 1e-5);
    }
}

//! Loads and checks as JSON: fixed keys, pounds, feet and inches.
use serde_json::{Map, Value, json};

use super::check_sheet::source;
use crate::analysis::{ElevationLoad, PlacedForce, RoofCase, RoofLoads, elevation_loads};
use crate::checks::{Check, Input, Outcome, Strength, Waiting, waiting};
use crate::design::Built;
use crate::loads::Action;
use crate::loads::snow::SnowKind;
use crate::loads::wind::velocity_pressure;
use crate::materials::Confidence;
use crate::members::Amount;
use crate::project::Project;
use crate::units::UnitSystem;

/// What acts on the roof.
pub fn loads(project: &Project, built: Option<&Built>, strength: &Strength) -> Value {
    let loads = &strength.loads;
    let (drift, sliding) = (
        beside_balanced(loads, &[SnowKind::LeewardDrift, SnowKind::WindwardDrift]),
        beside_balanced(loads, &[SnowKind::Sliding]),
    );
    let live = loads.cases.iter().find(|case| case.action == Action::RoofLive);
    let wind = velocity_pressure(&project.place, loads.lean_to.mean_roof_height()).ok();
    let cases: Vec<Value> = loads.cases.iter().map(case).collect();
    let along = built.map(|built| elevation_loads(project, &built.shape, loads)).unwrap_or_default();
    json!({
        "edition": project.place.edition.name(),
        "balanced_snow_psf": loads.balanced.map(|load| round(load.to_psf())),
        "drift_peak_psf": drift.map(|(peak, _)| round(peak)),
        "drift_width_ft": drift.map(|(_, width)| round(width)),
        "sliding_snow_psf": sliding.map(|(peak, _)| round(peak)),
        "sliding_width_ft": sliding.map(|(_, width)| round(width)),
        "roof_live_psf": live.map(|case| round(case.down.peak().to_psf())),
        "velocity_pressure_psf": wind.map(|wind| round(wind.value.q.to_psf())),
        "dead_on_plan_psf": round(loads.dead.cover.heavy.to_psf()),
        "mean_roof_height_ft": round(loads.lean_to.mean_roof_height().to_feet()),
        "cases": cases,
        "in_the_elevation": along.iter().map(in_elevation).collect::<Vec<Value>>(),
        "not_judged": loads.not_judged.iter().map(|why| why.says.as_str()).collect::<Vec<_>>(),
    })
}

/// Peak and width of what a snow case brings beside the balanced snow.
fn beside_balanced(loads: &RoofLoads, kinds: &[SnowKind]) -> Option<(f64, f64)> {
    let balanced = loads.balanced?.to_psf();
    let is_it = |case: &&RoofCase| case.snow.is_some_and(|kind| kinds.contains(&kind));
    let case = loads.cases.iter().find(is_it)?;
    let more = |piece: &&crate::loads::Piece| piece.start.to_psf().max(piece.end.to_psf()) > balanced + 1e-9;
    let pieces: Vec<&crate::loads::Piece> = case.down.pieces().iter().filter(more).collect();
    let (first, last) = (pieces.first()?, pieces.last()?);
    Some((case.down.peak().to_psf() - balanced, (last.to - first.from).to_feet()))
}

fn spread(spread: &crate::loads::Spread) -> Vec<Value> {
    let piece = |piece: &crate::loads::Piece| {
        json!({ "from_ft": round(piece.from.to_feet()), "to_ft": round(piece.to.to_feet()),
            "from_psf": round(piece.start.to_psf()), "to_psf": round(piece.end.to_psf()) })
    };
    spread.pieces().iter().map(piece).collect()
}

/// What acts in the plane of the beam line: places along the beam and up, level forces along the wall, the others down.
fn in_elevation(load: &ElevationLoad) -> Value {
    let force = |one: &PlacedForce| {
        json!({ "on": one.what, "x_in": round(one.at.x.to_inches()), "z_in": round(one.at.y.to_inches()),
            "force_lb": round(one.force.to_pounds()), "is_level": one.is_level })
    };
    json!({
        "name": load.name,
        "action": load.action.symbol(),
        "square_to_roof": load.on_roof.as_ref().map(|(pressure, _)| spread(pressure)),
        "from_x_in": load.on_roof.as_ref().map(|(_, left)| round(left.to_inches())),
        "forces": load.forces.iter().map(force).collect::<Vec<Value>>(),
        "working": load.steps.iter().map(step).collect::<Vec<String>>(),
    })
}

fn case(case: &RoofCase) -> Value {
    json!({
        "name": case.name,
        "action": case.action.symbol(),
        "down": spread(&case.down),
        "square_to_roof": spread(&case.square),
        "working": case.steps.iter().map(step).collect::<Vec<String>>(),
    })
}

/// Every check, worst first.
pub fn checks(strength: &Strength) -> Value {
    Value::Array(strength.checks.iter().map(check).collect())
}

/// What checks wait for: the field of each datum that is missing, and how many checks it leaves open.
pub fn missing(strength: &Strength) -> Value {
    let of = |group: &Waiting| {
        let field = group.input?.field();
        Some(json!({ "field": field, "says": group.says(), "checks": group.places.len() }))
    };
    waiting(strength.checks.iter().enumerate()).iter().filter_map(of).collect()
}

fn check(check: &Check) -> Value {
    let mut fields = Map::new();
    let mut put = |name: &str, value: Value| fields.insert(name.to_owned(), value);
    put("member", json!(check.member));
    put("name", json!(check.name));
    put("at", json!(check.at));
    put("combination", json!(check.combination));
    put("says", json!(check.says(UnitSystem::Imperial)));
    put("for_others", json!(check.is_for_others));
    put("of_sizes", json!(check.is_of_sizes));
    if let Outcome::Judged(worked) = &check.outcome {
        let (demand, unit) = amount(worked.value.demand);
        put("demand", json!(demand));
        put("capacity", json!(amount(worked.value.capacity).0));
        put("unit", json!(unit));
        // JSON knows no infinity: nothing is allowed there.
        put("ratio", if worked.value.ratio.is_finite() { json!(round(worked.value.ratio)) } else { Value::Null });
        put("passes", json!(check.passes()));
        put("confidence", json!(check.confidence().map(confidence)));
        put("source", json!(check.sources()));
        put("working", check.working().iter().map(|found| json!(step(found))).collect());
    } else {
        put("passes", json!(false));
        put("ratio", Value::Null);
        put("missing", json!(check.missing().map(Input::field)));
    }
    Value::Object(fields)
}

fn step(step: &crate::working::Step) -> String {
    format!("{}: {} [{}]", step.gives, step.says, source(&step.citation))
}

const fn confidence(confidence: Confidence) -> &'static str {
    match confidence {
        Confidence::High => "high",
        Confidence::Given => "given",
        Confidence::Medium => "medium",
        Confidence::Low => "low",
    }
}

fn amount(amount: Amount) -> (f64, &'static str) {
    match amount {
        Amount::Stress(stress) => (round(stress.to_psi()), "psi"),
        Amount::Force(force) => (round(force.to_pounds()), "lb"),
        Amount::Moment(moment) => (round(moment.to_pound_inches()), "lb-in"),
        Amount::Length(length) => (round(length.to_inches()), "in"),
        Amount::Ratio(ratio) => (round(ratio), "1"),
    }
}

fn round(value: f64) -> f64 {
    (value * 1e4).round() / 1e4
}

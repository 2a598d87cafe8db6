//! What the job takes beside timber and what all of it costs, as JSON.
use serde_json::{Value, json};

use super::json::inches;
use crate::design::Built;
use crate::ordering::hauling::Hauling;
use crate::ordering::{Amount, CostLine, CostPart, Costs, Pegs};
use crate::project::Project;

/// Parts, lines with their amounts, and the total as far as prices are known.
pub fn costs(project: &Project, built: &Built, hauling: &Hauling) -> Value {
    let costs = Costs::of(project, built, hauling);
    let takeoff = &costs.takeoff;
    let parts = CostPart::ALL.map(|part| json!({ "part": part.name(), "cost": costs.of_part(part).to_f64() }));
    json!({
        "total": costs.total().to_f64(),
        "without_a_price": costs.n_unpriced(),
        "parts": parts,
        "lines": costs.lines.iter().map(line).collect::<Vec<Value>>(),
        "concrete_ft3": takeoff.concrete.to_cubic_feet(),
        "finished_ft2": takeoff.finished.to_square_feet(),
        "pegs": takeoff.pegs.iter().map(pegs).collect::<Vec<Value>>(),
    })
}

fn pegs(kind: &Pegs) -> Value {
    json!({ "diameter_in": inches(kind.diameter), "driven": kind.driven, "to_make": kind.to_make() })
}

fn line(line: &CostLine) -> Value {
    let (amount, unit) = match line.amount {
        Amount::Each(count) => (count as f64, "each"),
        Amount::Run(run) => (run.to_feet(), "ft"),
        Amount::Volume(volume) => (volume.to_cubic_feet() / 27.0, "yd3"),
        Amount::Gallons(gallons) => (gallons, "gal"),
    };
    json!({ "part": line.part.name(), "what": line.what, "amount": amount, "unit": unit,
        "cost": line.cost().map(crate::units::Money::to_f64) })
}

//! Loads and the drying wood in the report: everything the pages show of them.
use serde_json::{Value, json};

use super::json::inches;
use crate::design::Built;
use crate::ordering::hauling::{Cargo, Carry, Exchanged, Hauling, Load, hauling_notes, load_words, proof_words};
use crate::project::Project;
use crate::study::{Drying, Movement, Seasoning, Yearly, seasoning};
use crate::units::{Length, UnitSystem, Weight};

fn pounds(weight: Weight) -> f64 {
    (weight.to_pounds() * 1e3).round() / 1e3
}

fn share(value: f64) -> f64 {
    (value * 1e6).round() / 1e6
}

/// How the order comes home: `loads`, `hauling`, `carries`.
pub(super) fn loads(project: &Project, hauling: &Hauling) -> [(&'static str, Value); 3] {
    let stays = hauling
        .left_behind
        .iter()
        .map(|one| json!({ "stick": cargo(&one.cargo), "over_in": one.too_long.map(inches), "says": one.says }));
    let all = json!({
        "n_loads": hauling.loads.len(),
        "bound": hauling.least,
        "proven_optimal": hauling.is_proven(),
        "says": proof_words(hauling),
        "notes": hauling_notes(project, hauling),
        "cannot_go": stays.collect::<Vec<Value>>(),
    });
    [
        ("loads", hauling.loads.iter().map(|one| load(project, one)).collect()),
        ("hauling", all),
        ("carries", hauling.carries.iter().map(carry).collect()),
    ]
}

fn cargo(cargo: &Cargo) -> Value {
    json!({
        "section": cargo.section.label(UnitSystem::Imperial),
        "length_in": inches(cargo.length),
        "green_weight_lb": pounds(cargo.weight),
        "marks": cargo.marks,
    })
}

fn load(project: &Project, load: &Load) -> Value {
    let balance = &load.balance;
    let pieces = load.pieces.iter().map(|one| {
        json!({ "stick": cargo(&one.cargo), "layer": one.layer, "behind_headboard_in": inches(one.behind),
            "stands_out_in": inches(one.stands_out) })
    });
    json!({
        "number": load.number,
        "delivery": load.delivery,
        "green_weight_lb": pounds(load.weight),
        "payload_lb": pounds(project.truck.payload),
        "height_in": inches(load.height()),
        "middle_from_bed_front_in": inches(balance.middle),
        "ends_behind_headboard_in": inches(balance.behind),
        "coupling_share": balance.share.map(share),
        "coupling_share_butted": balance.share_butted.map(share),
        "on_coupling_lb": balance.on_coupling.map(pounds),
        "wanted_middle_in": balance.wanted.map(|(near, far)| [inches(near), inches(far)]),
        "move_back_in": balance.shift.map(inches),
        "before_their_turn": load.before_their_turn,
        "exchanged": load.exchanged.iter().map(exchanged).collect::<Vec<Value>>(),
        "pieces_in_loading_order": pieces.collect::<Vec<Value>>(),
        "says": load_words(project, load),
    })
}

fn exchanged(one: &Exchanged) -> Value {
    json!({ "with_load": one.with, "came": one.came.iter().map(cargo).collect::<Vec<Value>>(),
        "went": one.went.iter().map(cargo).collect::<Vec<Value>>() })
}

fn carry(carry: &Carry) -> Value {
    json!({
        "section": carry.section.label(UnitSystem::Imperial),
        "length_in": inches(carry.length),
        "count": carry.count,
        "green_weight_lb": pounds(carry.weight),
        "people": carry.people,
        "by_machine": carry.by_machine,
        "people_ergonomic": carry.ergonomic,
        "says": carry.words(),
    })
}

/// Shrinkage and weight: nothing where the wood is not known.
pub(super) fn wood(project: &Project, built: &Built) -> Value {
    seasoning(project, built).map_or(Value::Null, |found| seasoned(&found))
}

fn seasoned(found: &Seasoning) -> Value {
    let wood = &found.wood;
    let weights = [0.0, 12.0, 15.0, 19.0, 30.0, 50.0, 70.0, 100.0].map(|percent| {
        json!({ "moisture_percent": percent,
            "pcf": wood.density_at(percent).map(|density| share(density.to_pounds_per_cubic_foot())),
            "per_green_ft3_lb": wood.per_green_volume(percent).map(|density| share(density.to_pounds_per_cubic_foot())) })
    });
    json!({
        "species": wood.key,
        "radial_percent": wood.radial_percent,
        "tangential_percent": wood.tangential_percent,
        "volumetric_percent": wood.water.volumetric_percent,
        "basic_gravity": wood.water.basic_gravity,
        "green_moisture_percent": wood.green_percent().map(share),
        "green_moisture_heart_percent": wood.water.green_heart_percent,
        "green_moisture_sap_percent": wood.water.green_sap_percent,
        "sources": [wood.source, wood.water.source],
        "service_moisture_percent": found.service_percent,
        "weights": weights,
        "sections": found.sections.iter().map(drying).collect::<Vec<Value>>(),
        "movements": found.movements.iter().map(movement).collect::<Vec<Value>>(),
        "foremost": found.foremost().iter().map(|one| one.key).collect::<Vec<_>>(),
        "pitch_in_12_by_year": found.pitch.map(|pitch| share(pitch.to_in_twelve())),
    })
}

fn lengths(of: &Yearly<Length>) -> Vec<f64> {
    of.iter().copied().map(inches).collect()
}

fn drying(of: &Drying) -> Value {
    json!({
        "role": of.role.name(),
        "breadth_in": inches(of.section.breadth),
        "depth_in": inches(of.section.depth),
        "years_to_nine_tenths": share(of.years_to_dry),
        "moisture_percent_by_year": of.percent.map(share),
        "breadth_lost_in_by_year": lengths(&of.breadth_lost),
        "depth_lost_in_by_year": lengths(&of.depth_lost),
        "depth_lost_radial_in": inches(of.depth_range.0),
        "depth_lost_tangential_in": inches(of.depth_range.1),
    })
}

fn movement(of: &Movement) -> Value {
    json!({
        "key": of.key,
        "what": of.what,
        "in_by_year": lengths(&of.sizes),
        "means": of.means,
        "is_short": of.is_short,
        "joint": of.joint().name(),
        "to_do": of.advice,
    })
}

//! The design as JSON: fixed keys, the unit in every name, inches and pounds.
use serde_json::{Map, Value, json};

use super::buying::buying;
use super::strength;
use crate::design::{Built, Design};
use crate::joinery::{Fit, all_own, departures, exception_says, fit, own_joints_of};
use crate::project::{JointName, Nearest, Problem, Project};
use crate::tickets::{Mark, Stick};
use crate::units::{Length, UnitSystem};

/// The whole design.
#[must_use]
pub fn json(project: &Project, design: &Design) -> String {
    let mut root = Map::new();
    root.insert("name".to_owned(), json!(project.name));
    root.insert("note".to_owned(), json!(project.note));
    let fit = design.built.as_ref().map(|built| fit(project, &built.shape));
    // What the solids tell more exactly is not said twice.
    let is_told = |problem: &&Problem| fit.as_ref().is_some_and(|fit| fit.tells(problem));
    let problems = design.problems.iter().filter(|problem| !is_told(problem));
    root.insert("problems".to_owned(), problems.map(problem).collect());
    if let Some(built) = &design.built {
        let sticks: Vec<Value> = built.sticks.iter().map(|item| stick(built, item)).collect();
        root.insert("sticks".to_owned(), Value::Array(sticks));
        root.insert("exceptions".to_owned(), exceptions(project, built));
        root.insert("order".to_owned(), order(built));
        root.insert("buying".to_owned(), buying(project, built, design.strength.as_deref()));
        root.insert("roof".to_owned(), roof(project, built));
        root.insert("geometry".to_owned(), geometry(project, built));
    }
    if let Some(fit) = &fit {
        root.insert("fit".to_owned(), fitted(fit));
    }
    if let Some(found) = &design.strength {
        root.insert("loads".to_owned(), strength::loads(project, design.built.as_deref(), found));
        root.insert("checks".to_owned(), strength::checks(found));
        root.insert("missing".to_owned(), strength::missing(found));
    }
    serde_json::to_string_pretty(&Value::Object(root)).unwrap_or_default()
}

/// What the solids show: joints in each other's way, the thinnest wood at every joint, how every stick gets in.
fn fitted(fit: &Fit) -> Value {
    let clashes = fit.clashes.iter().map(|clash| {
        json!({ "stick": clash.stick, "other": clash.other, "from_zero_in": inches(clash.from_zero), "says": clash.says,
            "clears_in": clash.clears.map(inches), "field": clash.field,
            "alike": clash.alike.iter().map(|(stick, _)| stick).collect::<Vec<_>>() })
    });
    let near = fit.near.iter().map(|near| {
        json!({ "stick": near.stick, "cut": near.cut, "other": near.other, "wood_in": inches(near.wood),
            "least_in": near.least.map(inches) })
    });
    let entries = fit.entries.iter().map(|entry| {
        json!({ "stick": entry.stick, "with": entry.with, "way": entry.way,
            "stopped_by": entry.stopped.as_ref().map(|stopped| stopped.by.clone()) })
    });
    let sticks =
        fit.bodies.iter().map(|body| json!({ "mark": body.mark, "volume_in3": body.volume().to_cubic_inches() }));
    json!({
        "in_the_way": clashes.collect::<Vec<Value>>(),
        "thinnest_wood": near.collect::<Vec<Value>>(),
        "ways_in": entries.collect::<Vec<Value>>(),
        "solids": sticks.collect::<Vec<Value>>(),
    })
}

/// Inches, to a millionth: enough for any check, and free of the last bits of the sums.
pub(super) fn inches(length: Length) -> f64 {
    // A zero has no sign.
    (length.to_inches() * 1e6).round() / 1e6 + 0.0
}

fn problem(problem: &Problem) -> Value {
    let nearest = match problem.nearest {
        Some(Nearest::Length(length)) => json!({ "length_in": inches(length) }),
        Some(Nearest::Slope(slope)) => json!({ "pitch_in_12": slope.to_in_twelve() }),
        Some(Nearest::Count(count)) => json!({ "count": count }),
        None => Value::Null,
    };
    json!({
        "field": problem.field,
        "says": problem.says,
        "nearest": nearest,
        "stops": problem.stops(),
    })
}

fn stick(built: &Built, stick: &Stick) -> Value {
    let ordered = built.order.sticks.iter().find(|asked| asked.mark == stick.mark);
    json!({
        "mark": stick.mark,
        "role": stick.role.name(),
        "section": stick.timber.ordered.label(UnitSystem::Imperial),
        "net_length_in": inches(stick.net_length()),
        "order_length_in": ordered.map(|asked| inches(asked.ordered)),
        "green_weight_lb": (stick.green_weight.to_pounds() * 1e3).round() / 1e3,
        "balance_from_zero_in": inches(stick.bulk.balance()),
        "weighed_as_measured": stick.is_measured,
        "zero": stick.zero,
        "same_as": stick.same_as,
        "marks": stick.marks.iter().map(mark).collect::<Vec<Value>>(),
    })
}

fn mark(mark: &Mark) -> Value {
    json!({
        "what": mark.what,
        "face": mark.face.name(),
        "near_in": inches(mark.near),
        "far_in": mark.far.map(inches),
        "across_in": mark.across.map(|(near, far)| [inches(near), inches(far)]),
        "across_from": mark.across_from.map(|face| face.name()),
        "depth_in": mark.depth.map(inches),
        "bore_in": mark.bore.map(inches),
        "mate": mark.mate,
        "note": mark.note,
    })
}

/// The joints that are not by the rules: what each has of its own, and the sheets that say so.
fn exceptions(project: &Project, built: &Built) -> Value {
    let one = |joint: JointName| {
        let on = built.sticks.iter().filter(|stick| own_joints_of(project, &built.shape, &stick.mark).contains(&joint));
        json!({
            "joint": joint.to_string(),
            "departs_in": departures(project, joint),
            "reason": project.exception_of(joint).map(|own| own.reason.clone()),
            "says": exception_says(project, joint),
            "on": on.map(|stick| stick.mark.clone()).collect::<Vec<_>>(),
        })
    };
    all_own(project, &built.shape).into_iter().map(one).collect()
}

fn order(built: &Built) -> Value {
    let lines = built.order.lines.iter().map(|line| {
        json!({
            "section": line.section.label(UnitSystem::Imperial),
            "length_in": inches(line.length),
            "count": line.count,
            "board_feet": (line.volume.to_board_feet() * 1e3).round() / 1e3,
            "green_weight_lb": (line.weight.to_pounds() * 1e3).round() / 1e3,
            "price": line.price.to_f64(),
            "holds": line.holds,
            "heart": line.heart.name(),
            "delivery": line.delivery,
            "spares": line.n_spare,
            "words": line.words,
        })
    });
    Value::Array(lines.collect())
}

fn roof(project: &Project, built: &Built) -> Value {
    let plan = &built.sheets;
    let ripped: Vec<f64> =
        plan.sheets.iter().filter(|sheet| sheet.is_ripped).map(|sheet| inches(sheet.cover)).collect();
    let rows: Vec<Value> = built
        .shape
        .purlins
        .iter()
        .map(|row| {
            json!({
                "row": row.number,
                "from_tail_in": inches(row.from_tail),
                "butts_on_rafters": row.pieces.iter().filter_map(|piece| piece.right.map(|butt| butt.rafter))
                    .collect::<Vec<usize>>(),
            })
        })
        .collect();
    json!({
        "sheets": [{ "length_in": inches(plan.length.length()), "count": plan.sheets.len() }],
        "cover_in": inches(project.roofing.cover),
        "width_in": inches(plan.width),
        "ripped_covers_in": ripped,
        "purlin_rows": rows.len(),
        "rows": rows,
    })
}

fn geometry(project: &Project, built: &Built) -> Value {
    let shape = &built.shape;
    let (line, room) = (&shape.line, &shape.clearances);
    let scarfs: Vec<Value> = shape
        .beam
        .scarfs
        .iter()
        .map(|scarf| {
            json!({ "low_in": inches(scarf.low), "high_in": inches(scarf.high),
                "lower_lap": if scarf.place.lower == crate::project::Side::Left { "left piece" } else { "right piece" } })
        })
        .collect();
    json!({
        "pitch_in_12": line.pitch.to_in_twelve(),
        "roof_angle_deg": line.pitch.to_degrees(),
        "run_in": inches(line.run.length()),
        "ledger_seat_in": inches(line.ledger_seat),
        "beam_seat_in": inches(line.beam_seat),
        "height_above_seat_ledger_in": inches(line.height_above_ledger_seat),
        "height_above_seat_beam_in": inches(line.height_above_beam_seat),
        "top_of_metal_at_wall_in": inches(room.top_of_metal_at_wall),
        "clear_under_beam_in": inches(room.under_beam),
        "clear_under_eave_in": room.under_eave.map(inches),
        "clear_between_braces_in": room.between_braces.iter().copied().map(inches).collect::<Vec<f64>>(),
        "beam_seat_drop_in": inches(room.beam_seat_drop),
        "ledger_seat_drop_in": inches(room.ledger_seat_drop),
        "rafter_top_edge_in": inches(shape.rafter.top_edge().length()),
        "rafter_spacing_in": inches(project.frame.rafters.spacing),
        "n_rafters": shape.rafters.len(),
        "brace_shoulder_length_in": inches(shape.brace.long_edge()),
        "scarfs": scarfs,
    })
}

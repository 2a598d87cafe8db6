//! The pieces that came, as JSON: what is said of each, the place it is given, what to ask for instead.
use serde_json::{Map, Value, json};

use super::json::inches;
use crate::checks::Strength;
use crate::design::Built;
use crate::ordering::came::ask_text;
use crate::project::{Piece, Project};
use crate::study::{Receiving, Shared, Verdict};
use crate::units::UnitSystem;

/// Adds what is known of the pieces to the fields of the buying.
pub fn add(fields: &mut Map<String, Value>, project: &Project, built: &Built, strength: &Strength) {
    let receiving = Receiving::new(project, built, strength);
    let shared = receiving.share_out();
    let pieces = project.progress.pieces.iter();
    let received: Vec<Value> = pieces.map(|(name, piece)| piece_in(&receiving, &shared, name, piece)).collect();
    fields.insert("received".to_owned(), Value::Array(received));
    let names = |indices: &[usize]| -> Vec<String> {
        indices.iter().filter_map(|index| receiving.places().get(*index)).map(|place| place.name.clone()).collect()
    };
    fields.insert("places_without_a_piece".to_owned(), json!(names(&shared.open)));
    let asks = shared.asks.iter().map(|ask| {
        json!({ "section": ask.section.label(UnitSystem::Imperial), "length_in": inches(ask.length),
            "count": ask.places.len(), "for": names(&ask.places) })
    });
    fields.insert("ask_instead".to_owned(), Value::Array(asks.collect()));
    fields.insert("ask_text".to_owned(), json!(ask_text(project, built, receiving.places(), &shared.asks)));
}

fn piece_in(receiving: &Receiving, shared: &Shared, name: &str, piece: &Piece) -> Value {
    let given = shared.given.iter().find(|given| given.piece == name);
    let left = shared.left.iter().find(|left| left.piece == name);
    let judged = receiving.judge(name, piece);
    let verdict = given.map(|given| &given.verdict).or(judged.own.as_ref());
    let of = |verdict: &Verdict| receiving.places().get(verdict.place);
    let why = given.map(|given| given.why.clone()).or(left.map(|left| left.says.clone()));
    json!({
        "piece": name,
        "state": if piece.is_kept() { "kept" } else { "sent back" },
        "place": given.and_then(|given| of(&given.verdict)).map(|place| place.name.clone()),
        "pinned": given.is_some_and(|given| given.is_pinned),
        "why": why,
        "looked_at_for": verdict.and_then(of).map(|place| place.name.clone()),
        "fits": verdict.map(Verdict::fits),
        "verdict": verdict.and_then(|verdict| Some(verdict.says(&of(verdict)?.short()))),
        "ratio_before": verdict.and_then(|verdict| number(verdict.carries.before)),
        "ratio": verdict.and_then(|verdict| number(verdict.carries.after)),
        "points": verdict.map(|verdict| (verdict.points() * 1e4).round() / 1e4),
        "turned_end_for_end": verdict.map(|verdict| verdict.look.lie.is_turned),
    })
}

/// JSON knows no infinity: nothing is allowed there.
fn number(ratio: Option<f64>) -> Option<f64> {
    ratio.filter(|ratio| ratio.is_finite()).map(|ratio| (ratio * 1e4).round() / 1e4)
}

//! Rafters, braces and scarfs against outlines cut with the geometry library shapely.
//!
//! `reference/outlines.py` builds each outline by cutting the supports out of the stick; here it is
//! listed corner by corner. Areas and places agree to 1e-6 in.
#![allow(clippy::unwrap_used, clippy::panic, clippy::float_cmp, reason = "a test stops at the first surprise")]

use outshot::geometry::{BirdsMouth, BraceShape, Point, Polygon, RafterShape};
use outshot::joinery::ScarfShape;
use outshot::project::{JoineryRules, TailCut, demo};
use outshot::units::{Length, Slope};
use serde_json::Value;

const TOLERANCE: f64 = 1e-6;

fn reference() -> Value {
    serde_json::from_str(include_str!("reference/outlines.json")).unwrap()
}

fn number(value: &Value, key: &str) -> f64 {
    value[key].as_f64().unwrap_or_else(|| panic!("no number {key}"))
}

fn inches(value: &Value, key: &str) -> Length {
    Length::inches(number(value, key))
}

fn check(what: &str, found: f64, expected: f64) {
    assert!((found - expected).abs() <= TOLERANCE, "{what}: {found} is not {expected}");
}

fn check_point(what: &str, found: Point, expected: &Value) {
    check(what, found.x.to_inches(), expected[0].as_f64().unwrap());
    check(what, found.y.to_inches(), expected[1].as_f64().unwrap());
}

/// Every corner of one ring stands in the other, and there are as many.
fn check_ring(what: &str, found: &Polygon, expected: &Value) {
    let expected = expected.as_array().unwrap();
    assert_eq!(found.corners.len(), expected.len(), "{what}: {found:?} is not {expected:?}");
    for corner in &found.corners {
        let is_known = expected.iter().any(|point| {
            (corner.x.to_inches() - point[0].as_f64().unwrap()).abs() <= TOLERANCE
                && (corner.y.to_inches() - point[1].as_f64().unwrap()).abs() <= TOLERANCE
        });
        assert!(is_known, "{what}: {corner:?} is not among {expected:?}");
    }
}

#[test]
fn two_hundred_rafters() {
    let reference = reference();
    let cases = reference["rafters"].as_array().unwrap();
    assert_eq!(cases.len(), 200);
    for case in cases {
        check_rafter(&case["in"], &case["out"]);
    }
}

fn check_rafter(input: &Value, out: &Value) {
    let mut frame = demo::wool_barn().frame;
    frame.timbers.rafter.sawn.depth = inches(input, "depth_in");
    frame.ledger_packing = Length::ZERO;
    frame.timbers.ledger.sawn.breadth = inches(input, "ledger_face_in");
    frame.reach = inches(input, "ledger_face_in") + inches(input, "run_in");
    frame.wall_gap = inches(input, "gap_in");
    frame.tail = inches(input, "tail_in");
    frame.tail_cut = if input["tail_cut"] == "plumb" { TailCut::Plumb } else { TailCut::Square };
    frame.ledger_seat_length = inches(input, "ledger_seat_in");
    frame.beam_seat_length = inches(input, "beam_seat_in");
    frame.timbers.beam.sawn.breadth = inches(input, "beam_width_in");
    frame.heights.fixed = outshot::project::FixedHeights::PitchAndLedger;
    frame.heights.pitch = Slope::in_twelve(number(input, "rise_in_per_12"));
    frame.heights.ledger_seat = inches(input, "ledger_seat_height_in");
    let line = outshot::geometry::RoofLine::resolve(&frame).unwrap();
    check("beam seat", line.beam_seat.to_inches(), number(out, "beam_seat_height_in"));
    let shape = RafterShape::new(&frame, &line);
    let outline = shape.outline();
    check("area", outline.area().to_square_inches(), number(out, "area_in2"));
    check_point("centroid", outline.centroid(), &out["centroid_in"]);
    check("stock", shape.length().to_inches(), number(out, "bounding_length_in"));
    check("top edge", shape.top_edge().length().to_inches(), number(out, "top_edge_in"));
    let points = &out["points_in"];
    for (key, notch) in [("ledger", &shape.ledger), ("beam", &shape.beam)] {
        let BirdsMouth { corner, heel_below, seat_end, .. } = *notch;
        for (index, point) in [seat_end, corner, heel_below].into_iter().enumerate() {
            check_point(key, point, &points[key][index]);
        }
    }
    for (key, end) in [("head", shape.head), ("tail", shape.tail)] {
        check_point(key, end.0, &points[key][0]);
        check_point(key, end.1, &points[key][1]);
    }
}

#[test]
fn two_hundred_braces() {
    let reference = reference();
    let cases = reference["braces"].as_array().unwrap();
    assert_eq!(cases.len(), 200);
    for case in cases {
        check_brace(&case["in"], &case["out"]);
    }
}

fn check_brace(input: &Value, out: &Value) {
    let brace = BraceShape {
        rise: Length::ZERO,
        along: inches(input, "leg_beam_in"),
        down: inches(input, "leg_post_in"),
        width: inches(input, "width_in"),
        post_housing: inches(input, "housing_post_in"),
        beam_housing: inches(input, "housing_beam_in"),
        tenon_at_post: Length::inches(2.5),
        tenon_at_beam: Length::inches(2.5),
    };
    let outline = brace.outline();
    check("long edge", brace.long_edge().to_inches(), number(out, "long_edge_in"));
    check("area", outline.area().to_square_inches(), number(out, "area_in2"));
    check_point("centroid", outline.centroid(), &out["centroid_in"]);
    check_ring("brace", &outline, &out["vertices_in"]);
    // The pocket's corner edge carries the rules' clearance; without it the edges are the brace's own.
    let rules = JoineryRules { pocket_clearance: Length::ZERO, ..JoineryRules::inch_defaults() };
    let (post, beam) = (brace.post_pocket(&rules, brace.post_housing), brace.beam_pocket(&rules, brace.beam_housing));
    check("post face, long edge", post.nose_on_face.to_inches(), number(out, "post_face_long_edge_in"));
    check("post face, short edge", post.corner.to_inches(), number(out, "post_face_short_edge_in"));
    check("beam face, long edge", beam.nose_on_face.to_inches(), number(out, "beam_face_long_edge_in"));
    check("beam face, short edge", beam.corner.to_inches(), number(out, "beam_face_short_edge_in"));
    check("post line, short edge", post.mortise.0.to_inches(), number(out, "post_line_short_edge_in"));
    check("beam line, short edge", beam.mortise.0.to_inches(), number(out, "beam_line_short_edge_in"));
}

#[test]
fn two_hundred_scarfs() {
    let reference = reference();
    let cases = reference["scarfs"].as_array().unwrap();
    assert_eq!(cases.len(), 200);
    let stub = inches(&reference, "stub_in");
    for case in cases {
        check_scarf(&case["in"], &case["out"], stub);
    }
}

fn check_scarf(input: &Value, out: &Value, stub: Length) {
    let scarf = ScarfShape {
        blade: Length::ZERO,
        depth: inches(input, "depth_in"),
        lap: inches(input, "length_in"),
        abutment: inches(input, "abutment_in"),
        squint: inches(input, "squint_in"),
        table: (input["kind"] == "tabled").then(|| (inches(input, "table_step_in"), inches(input, "wedge_gap_in"))),
    };
    let (lower, upper) = (scarf.lower(stub), scarf.upper(stub));
    let stub_area = stub.to_inches() * scarf.depth.to_inches();
    check("lower", lower.area().to_square_inches() - stub_area, number(out, "lower_area_in2"));
    check("upper", upper.area().to_square_inches() - stub_area, number(out, "upper_area_in2"));
    check_ring("lower", &lower, &out["lower_in"]);
    check_ring("upper", &upper, &out["upper_in"]);
    let whole = scarf.lap.to_inches() * scarf.depth.to_inches() + 2.0 * stub_area;
    let both = lower.area().to_square_inches() + upper.area().to_square_inches();
    check("hole", whole - both, number(out, "hole_in2") - number(out, "overlap_in2"));
}

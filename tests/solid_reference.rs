//! Solids against those cut with the solid library manifold3d.
//!
//! `reference/solids.py` puts each stick together by boolean operations on half-spaces; here it is made as the app makes
//! it. Volumes agree to 1e-6 of themselves, centres to 1e-6 in, wood that two claim to 1e-6 in³.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

use outshot::geometry::{Point, Polygon};
use outshot::joinery::bodies;
use outshot::lay_out;
use outshot::project::{ScarfPlace, Side, file};
use outshot::solid::{Axis, Convex, Facet, Plane, Skin, Solid, Vector, cuboid, cylinder, prism, swept};
use outshot::units::Length;
use serde_json::Value;

const HAIR: f64 = 1e-6;

fn reference() -> Value {
    serde_json::from_str(include_str!("reference/solids.json")).unwrap()
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("{value} is no number"))
}

fn numbers(value: &Value) -> Vec<f64> {
    value.as_array().map(|all| all.iter().map(number).collect()).unwrap_or_default()
}

fn vector(numbers: &[f64]) -> Vector {
    Vector::inches(numbers[0], numbers[1], numbers[2])
}

fn check_volume(what: &str, found: f64, expected: f64) {
    assert!((found - expected).abs() <= HAIR * expected.max(1.0), "{what}: {found} in³ is not {expected}");
}

fn check_wood(what: &str, wood: &Solid, expected: &Value) {
    check_volume(what, wood.volume().to_cubic_inches(), number(&expected["volume_in3"]));
    let off = (wood.centre().unwrap() - vector(&numbers(&expected["centre_in"]))).norm();
    assert!(off <= HAIR, "{what}: the centre is {off} in off");
}

/// The same wood claimed twice, and the same answer to whether any is.
fn check_shared(what: &str, shared: f64, expected: f64) {
    assert_eq!(shared > HAIR, expected > HAIR, "{what}: {shared} in³ against {expected}");
    check_volume(what, shared, expected);
}

// ---- bodies turned into their place

type Turn = [Vector; 3];

/// Rows of the matrix of a quaternion w, x, y, z of any length.
fn turn(value: &Value) -> Turn {
    let q = numbers(value);
    let norm = q.iter().map(|part| part * part).sum::<f64>().sqrt();
    let (w, x, y, z) = (q[0] / norm, q[1] / norm, q[2] / norm, q[3] / norm);
    [
        Vector::inches(1.0 - 2.0 * (y * y + z * z), 2.0 * (x * y - w * z), 2.0 * (x * z + w * y)),
        Vector::inches(2.0 * (x * y + w * z), 1.0 - 2.0 * (x * x + z * z), 2.0 * (y * z - w * x)),
        Vector::inches(2.0 * (x * z - w * y), 2.0 * (y * z + w * x), 1.0 - 2.0 * (x * x + y * y)),
    ]
}

fn turned(place: Vector, by: &Turn) -> Vector {
    Vector::inches(by[0].dot(place), by[1].dot(place), by[2].dot(place))
}

fn placed(body: &Convex, by: &Turn, shift: Vector) -> Convex {
    let facets = body.facets().iter().map(|facet| {
        let corners: Vec<Vector> = facet.corners.iter().map(|corner| turned(*corner, by) + shift).collect();
        Facet { plane: Plane::through(corners[0], turned(facet.plane.normal, by)), corners, skin: facet.skin }
    });
    Convex::new(facets.collect())
}

fn bodies_of(value: &Value) -> Vec<Convex> {
    let all = |key: &str| numbers(&value[key]);
    if value["box"].is_array() {
        return cuboid(vector(&all("box")), vector(&all("box")[3..]));
    }
    if value["hole"].is_array() {
        return cylinder(vector(&all("hole")), vector(&all("hole")[3..]), Length::inches(all("hole")[6]));
    }
    let axis = match value["axis"].as_str() {
        Some("x") => Axis::X,
        Some("y") => Axis::Y,
        _ => Axis::Z,
    };
    let corners = value["outline"].as_array().unwrap().iter().map(numbers);
    let outline = Polygon::new(corners.map(|at| Point::inches(at[0], at[1])).collect());
    let depths = all("depths");
    prism(&outline, axis, Length::inches(depths[0]), Length::inches(depths[1]))
}

/// A stick cut where it stands: stock and tools are turned first.
fn stick(value: &Value, place: impl Fn(Convex) -> Convex) -> Solid {
    let each = |key: &str| value[key].as_array().unwrap().iter().flat_map(bodies_of).map(&place).collect::<Vec<_>>();
    let mut wood = Solid::new(each("stock"));
    for tool in each("cuts") {
        wood.cut(&tool);
    }
    wood
}

fn joint(case: &Value) -> (Solid, Solid) {
    let (by, shift) = (turn(&case["turn"]), vector(&numbers(&case["move"])));
    let twist = case.get("twist").map(turn);
    let slip = case.get("slip").map_or(Vector::ZERO, |slip| vector(&numbers(slip)));
    let one = stick(&case["sticks"][0], |body| placed(&body, &by, shift));
    let two = stick(&case["sticks"][1], |body| {
        let slipped = twist.as_ref().map_or_else(|| body.moved(slip), |twist| placed(&body, twist, slip));
        placed(&slipped, &by, shift)
    });
    (one, two)
}

// ---- the comparisons

#[test]
fn every_stick_of_the_example() {
    let example = &reference()["example"];
    let mut project = file::read(include_str!("data/version-3.json")).unwrap();
    // The search has moved on since; the reference took the scarfs where they were.
    let scarf = |centre: f64| ScarfPlace { centre: Length::inches(centre), lower: Side::Left };
    project.frame.scarfs.by_hand = numbers(&example["given"]["scarfs_in"]).into_iter().map(scarf).collect();
    // Nor does it bore the ledger.
    project.fixings.ledger.fastener.clear();
    let shape = lay_out(&project).built.unwrap().shape.clone();
    check_given(&shape, &example["given"]);
    let all = bodies(&project, &shape);
    assert_eq!(all.len(), example["sticks"].as_object().unwrap().len());
    for body in all {
        check_wood(&body.mark, &body.wood, &example["sticks"][&body.mark]);
    }
}

/// The places that the reference takes as they are.
fn check_given(shape: &outshot::design::Shape, given: &Value) {
    let inches = |places: &mut dyn Iterator<Item = Length>| places.map(Length::to_inches).collect::<Vec<_>>();
    let scarfs = &shape.beam.scarfs;
    assert_eq!(inches(&mut scarfs.iter().map(|scarf| scarf.place.centre)), numbers(&given["scarfs_in"]));
    for (scarf, on_left) in scarfs.iter().zip(given["lower_on_left"].as_array().unwrap()) {
        assert_eq!(scarf.place.lower == Side::Left, *on_left);
    }
    let splices = shape.ledger.windows(2).map(|pair| (pair[0].end + pair[1].start) / 2.0);
    assert_eq!(inches(&mut splices.into_iter()), numbers(&given["ledger_splices_in"]));
    for (row, butts) in shape.purlins.iter().zip(given["purlin_butts_in"].as_array().unwrap()) {
        assert_eq!(inches(&mut row.pieces.iter().filter_map(|piece| piece.right.map(|butt| butt.x))), numbers(butts));
    }
}

#[test]
fn two_hundred_joints() {
    let reference = reference();
    let cases = reference["joints"].as_array().unwrap();
    assert_eq!(cases.len(), 200);
    for (index, case) in cases.iter().enumerate() {
        let what = format!("joint {index}, {}", case["in"]["kind"]);
        let (one, two) = joint(&case["in"]);
        check_wood(&what, &one, &case["out"]["sticks"][0]);
        check_wood(&what, &two, &case["out"]["sticks"][1]);
        let shared = number(&case["out"]["overlap_in3"]);
        check_shared(&what, one.shared(&two).volume().to_cubic_inches(), shared);
        check_shared(&what, two.shared(&one).volume().to_cubic_inches(), shared);
        // What the other stick claims is cut away: the rest shares nothing with it.
        let mut rest = one.clone();
        for tool in two.bodies() {
            rest.cut(tool);
        }
        check_volume(&what, one.volume().to_cubic_inches() - rest.volume().to_cubic_inches(), shared);
        check_shared(&what, rest.shared(&two).volume().to_cubic_inches(), 0.0);
    }
}

#[test]
fn fifty_bodies_moved_through_a_room() {
    let reference = reference();
    let cases = reference["sweeps"].as_array().unwrap();
    assert_eq!(cases.len(), 50);
    for (index, case) in cases.iter().enumerate() {
        let (what, input, out) = (format!("sweep {index}"), &case["in"], &case["out"]);
        let by = turn(&input["turn"]);
        let body = placed(&trimmed(input), &by, Vector::ZERO);
        check_volume(&what, body.volume(), number(&out["body_in3"]));
        let room = swept(&body, turned(vector(&numbers(&input["by"])), &by));
        check_volume(&what, room.volume(), number(&out["room_in3"]));
        let other = bodies_of(&input["other"]).remove(0);
        let other = placed(&other, &turn(&input["other_turn"]), vector(&numbers(&input["other_move"])));
        let shared = room.shared(&other).map_or(0.0, |shared| shared.volume());
        check_shared(&what, shared, number(&out["overlap_in3"]));
    }
}

fn trimmed(input: &Value) -> Convex {
    let mut body = bodies_of(&input["body"]).remove(0);
    for plane in input["planes"].as_array().unwrap() {
        let normal = vector(&numbers(&plane["normal"])).unit().unwrap();
        let plane = Plane::through(vector(&numbers(&plane["place"])), normal);
        body = body.cut(&plane, Skin::Cut).0.unwrap();
    }
    body
}

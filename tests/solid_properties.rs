//! Solids where they are hardest: planes that lie in a face, through an edge, a hair beside either; many cuts in a few
//! planes; slivers thinner than the width two places count as one; everything turned.
//!
//! A body is closed where the areas of its facets, as vectors out of it, come to nothing. What a cut may lose is a layer
//! as thin as `NEAR` over the face it lies in.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use outshot::geometry::{Point, Polygon};
use outshot::solid::{Axis, Convex, Facet, NEAR, Plane, Skin, Solid, Vector, cuboid, cylinder, prism, swept};
use outshot::units::Length;
use proptest::prelude::*;

fn area(facet: &Facet) -> Vector {
    let fan = facet.corners[1..].windows(2).map(|pair| (pair[0] - facet.corners[0]).cross(pair[1] - facet.corners[0]));
    fan.fold(Vector::ZERO, |sum, part| sum + part) * 0.5
}

fn surface(body: &Convex) -> f64 {
    body.facets().iter().map(|facet| area(facet).norm()).sum()
}

fn check_closed(body: &Convex, within: f64) {
    let open = body.facets().iter().map(area).fold(Vector::ZERO, |sum, part| sum + part).norm();
    assert!(open <= within, "open by {open} in² of {}", surface(body));
}

/// Both sides are closed, lie on their side of the plane, and together are the whole.
fn check_cut(body: &Convex, plane: &Plane) -> (Option<Convex>, Option<Convex>) {
    let (inside, outside) = body.cut(plane, Skin::Cut);
    for (side, sign) in [(&inside, 1.0), (&outside, -1.0)] {
        let Some(side) = side else { continue };
        check_closed(side, 1e-9);
        assert!(side.corners().all(|corner| plane.outside(corner) * sign <= NEAR));
        let bulges =
            side.facets().iter().any(|facet| side.corners().any(|corner| facet.plane.outside(corner) > 2.0 * NEAR));
        assert!(!bulges, "a corner lies outside a facet's plane");
    }
    let volume = |side: &Option<Convex>| side.as_ref().map_or(0.0, Convex::volume);
    let lost = (volume(&inside) + volume(&outside) - body.volume()).abs();
    assert!(lost <= NEAR * surface(body), "{lost} in³ lost of {}", body.volume());
    (inside, outside)
}

// ---- bodies and planes drawn at random

type Turn = [Vector; 3];

fn direction() -> impl Strategy<Value = Vector> {
    (-1.0..1.0_f64, -1.0..1.0_f64, -1.0..1.0_f64)
        .prop_map(|(x, y, z)| Vector::inches(x, y, z))
        .prop_filter_map("no direction", |way| (way.norm() > 0.1).then(|| way.unit()).flatten())
}

/// Upright, or any way at all.
fn turns() -> impl Strategy<Value = Turn> {
    let upright = [Vector::inches(1.0, 0.0, 0.0), Vector::inches(0.0, 1.0, 0.0), Vector::inches(0.0, 0.0, 1.0)];
    let any = (direction(), direction()).prop_filter_map("one direction twice", |(one, other)| {
        let two = one.cross(other).unit()?;
        Some([one, two, one.cross(two)])
    });
    prop_oneof![1 => Just(upright), 3 => any]
}

fn turned(body: &Convex, by: &Turn, shift: Vector) -> Convex {
    let place = |at: Vector| by[0] * at.x + by[1] * at.y + by[2] * at.z;
    let facets = body.facets().iter().map(|facet| {
        let corners: Vec<Vector> = facet.corners.iter().map(|corner| place(*corner) + shift).collect();
        Facet { plane: Plane::through(corners[0], place(facet.plane.normal)), corners, skin: facet.skin }
    });
    Convex::new(facets.collect())
}

/// Nothing, or a hundredth to a ten-thousand-millionth of an inch either way.
fn hairs() -> impl Strategy<Value = f64> {
    prop_oneof![1 => Just(0.0), 2 => (-10.0..-2.0_f64).prop_map(|power| 10.0_f64.powf(power)),
        1 => (-10.0..-2.0_f64).prop_map(|power| -(10.0_f64.powf(power)))]
}

fn convex() -> impl Strategy<Value = Convex> {
    let corners = proptest::collection::vec(0.0..0.5_f64, 3..12);
    (corners, 0.5..20.0_f64, turns(), direction(), 0.0..300.0_f64).prop_map(|(corners, deep, turn, way, far)| {
        let slice = std::f64::consts::TAU / corners.len() as f64;
        let corner = |(index, off): (usize, &f64)| {
            let (sin, cos) = ((index as f64 + off) * slice).sin_cos();
            Point::inches(5.0 * cos, 4.0 * sin)
        };
        let outline = Polygon::new(corners.iter().enumerate().map(corner).collect());
        turned(&prism(&outline, Axis::Z, Length::ZERO, Length::inches(deep))[0], &turn, way * far)
    })
}

/// What a plane is put through: how, which facet and corners, a hair aside, a direction where it is free.
type Aim = (usize, [usize; 3], f64, Vector);

fn aims() -> impl Strategy<Value = Vec<Aim>> {
    proptest::collection::vec((0..6_usize, any::<[usize; 3]>(), hairs(), direction()), 1..12)
}

fn aimed(body: &Convex, (how, which, hair, way): &Aim) -> Option<Plane> {
    let facet = &body.facets()[which[0] % body.facets().len()];
    let count = facet.corners.len();
    let (a, b) = (facet.corners[which[1] % count], facet.corners[(which[1] + 1) % count]);
    let far: Vec<Vector> = body.corners().collect();
    let c = far[which[2] % far.len()];
    let (normal, place) = match how {
        // Beside a facet; through an edge, any way; through an edge and a corner; a facet tilted; a corner; anywhere.
        0 => (Some(facet.plane.normal), a),
        1 => ((b - a).cross(*way).unit(), a),
        2 => ((b - a).cross(c - a).unit(), a),
        3 => ((facet.plane.normal + *way * *hair).unit(), (a + b) * 0.5),
        4 => (Some(*way), a),
        _ => (Some(*way), a * 0.6 + c * 0.4),
    };
    normal.map(|normal| Plane::through(place + normal * *hair, normal))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1500))]

    #[test]
    fn a_cut_loses_nothing_and_leaves_closed_bodies(body in convex(), aims in aims()) {
        let mut body = body;
        for plane in aims.iter().filter_map(|aim| aimed(&body, aim)).collect::<Vec<_>>() {
            let (inside, outside) = check_cut(&body, &plane);
            let sides = [inside, outside].into_iter().flatten();
            let Some(larger) = sides.max_by(|a, b| a.volume().total_cmp(&b.volume())) else { break };
            body = larger;
        }
    }

    /// Room = body + its shadow along the move × the length of the move, for moves along faces and edges and a hair aside.
    #[test]
    fn a_sweep_is_the_body_and_its_shadow(body in convex(), aims in aims(), way in direction(), hair in hairs(), how in 0..3_usize) {
        let mut body = body;
        for plane in aims.iter().filter_map(|aim| aimed(&body, aim)).collect::<Vec<_>>() {
            let (inside, outside) = body.cut(&plane, Skin::Cut);
            let sides = [inside, outside].into_iter().flatten();
            body = sides.max_by(|a, b| a.volume().total_cmp(&b.volume())).unwrap();
        }
        let facet = &body.facets()[0];
        let by = match how {
            0 => facet.corners[1] - facet.corners[0],
            1 => (facet.corners[1] - facet.corners[0]) * 0.7 + (facet.corners[2] - facet.corners[0]) * 1.3,
            _ => way * 7.0,
        } + way * hair;
        let Some(along) = by.unit() else { return Ok(()) };
        let shadow: f64 = body.facets().iter().map(|facet| area(facet).dot(along).max(0.0)).sum();
        let room = swept(&body, by);
        check_closed(&room, 1e-9);
        let bulges = room.facets().iter().any(|facet| room.corners().any(|corner| facet.plane.outside(corner) > 3.0 * NEAR));
        prop_assert!(!bulges, "a corner lies outside a facet's plane");
        let off = (room.volume() - body.volume() - shadow * by.norm()).abs();
        prop_assert!(off <= NEAR * surface(&room), "{off} in³ of {}", room.volume());
    }
}

/// A tool of a stick riddled in a few planes: two corners on a grid, a hair off it, or a round hole through.
fn tools() -> impl Strategy<Value = Vec<Convex>> {
    let corner = || (0..12_u8, 0..6_u8, 0..6_u8, hairs().prop_map(|hair| hair * 1e-3));
    let tool = (corner(), corner(), 0.2..3.0_f64, 0..10_u8).prop_map(|(a, b, wide, kind)| {
        let place =
            |at: (u8, u8, u8, f64)| Vector::inches(f64::from(at.0) + at.3, f64::from(at.1), f64::from(at.2) - at.3);
        let (a, b) = (place(a), place(b));
        if kind < 3 {
            return cylinder(Vector { y: -1.0, ..a }, Vector { y: 7.0, ..a }, Length::inches(wide));
        }
        cuboid(a, b)
    });
    proptest::collection::vec(tool, 4..16).prop_map(|tools| tools.into_iter().flatten().collect())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    /// Wood = stock − what each tool met, and no tool finds any in its place afterwards.
    #[test]
    fn many_cuts_take_what_they_meet(tools in tools(), turn in turns(), way in direction()) {
        let placed = |body: &Convex| turned(body, &turn, way * 200.0);
        let mut wood = Solid::new(vec![placed(&cuboid(Vector::ZERO, Vector::inches(12.0, 6.0, 6.0))[0])]);
        let mut taken = 0.0;
        for tool in &tools {
            let tool = placed(tool);
            let shared = |wood: &Solid| wood.shared(&Solid::new(vec![tool.clone()])).volume().to_cubic_inches();
            taken += shared(&wood);
            wood.cut(&tool);
            prop_assert!(shared(&wood) < 1e-6);
            wood.bodies().iter().for_each(|body| check_closed(body, 1e-9));
        }
        let lost = 12.0 * 36.0 - taken - wood.volume().to_cubic_inches();
        prop_assert!(lost.abs() < 1e-5, "{lost} in³ lost");
    }
}

// ---- named cases

fn block(x: f64, y: f64, z: f64) -> Convex {
    cuboid(Vector::ZERO, Vector::inches(x, y, z)).remove(0)
}

#[test]
fn a_plane_in_a_face_cuts_nothing() {
    let body = block(8.0, 8.0, 10.0);
    for facet in body.facets() {
        assert!(matches!(body.cut(&facet.plane, Skin::Cut), (Some(_), None)));
        assert!(matches!(body.cut(&facet.plane.flipped(), Skin::Cut), (None, Some(_))));
    }
}

/// By hand: along two opposite edges a block falls into two wedges of half its 640 in³.
#[test]
fn a_plane_along_two_edges_halves_a_block() {
    let body = block(8.0, 8.0, 10.0);
    let normal = Vector::inches(1.0, -1.0, 0.0).unit().unwrap();
    let (inside, outside) = check_cut(&body, &Plane::through(Vector::ZERO, normal));
    for half in [inside, outside].into_iter().flatten() {
        assert!((half.volume() - 320.0).abs() < 1e-9);
        assert_eq!(half.facets().len(), 5);
    }
}

/// The top of a wide block falls away by two hairs' breadth to the right of its middle. A plane that follows neither half
/// leaves no hole, whichever corners it counts as its own.
#[test]
fn faces_a_hair_from_one_plane_stay_closed() {
    let middle = Vector::inches(10.0, 0.0, 1.0);
    for first in [1e-8, 4e-8, 2e-7, 1e-6] {
        let fall = Plane::through(middle, Vector::inches(first, 0.0, 1.0).unit().unwrap());
        let body = check_cut(&block(20.0, 10.0, 1.0), &fall).0.unwrap();
        for (x, second, across) in [(0.0, 2e-8, 0.0), (15.0, -3e-8, 1e-8), (20.0, 5e-8, -4e-8), (3.0, 1e-7, 1e-7)] {
            let normal = Vector::inches(second, across, 1.0).unit().unwrap();
            check_cut(&body, &Plane::through(Vector::inches(x, 5.0, 1.0), normal));
        }
    }
}

/// Thinner than NEAR is nothing; a little thicker is wood, on both sides of the cut.
#[test]
fn a_sliver_is_wood_or_nothing() {
    let body = block(8.0, 8.0, 10.0);
    let level = |z: f64| Plane::through(Vector::inches(0.0, 0.0, z), Vector::inches(0.0, 0.0, 1.0));
    assert!(matches!(body.cut(&level(10.0 - NEAR / 2.0), Skin::Cut), (Some(_), None)));
    let (rest, sliver) = check_cut(&body, &level(10.0 - NEAR * 3.0));
    assert!((sliver.unwrap().volume() - 64.0 * NEAR * 3.0).abs() < 1e-9);
    // What is left can be cut on.
    check_cut(&rest.unwrap(), &level(10.0 - NEAR * 5.0));
}

//! A post put together from what its sheet prints, and from nothing else, is the post.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

mod drawn_frames;

use drawn_frames::projects;
use outshot::geometry::{Point, Polygon};
use outshot::joinery::bodies;
use outshot::lay_out;
use outshot::project::{Project, demo};
use outshot::solid::{Axis, Convex, Plane, Solid, Vector, cuboid, cylinder, prism};
use outshot::tickets::{Face, Mark, MarkKind, Stick};
use outshot::units::{Length, UnitSystem, parse_length};
use proptest::prelude::*;

/// What a length rounded to a sixteenth, or to half a millimetre, may be off, with a hair for the two sums.
const OFF: f64 = 1.0 / 32.0 + 1e-6;

/// The length as it stands on the sheet.
fn printed(length: Length, units: UnitSystem) -> f64 {
    let step = if units == UnitSystem::Imperial { Length::inches(0.0625) } else { Length::millimetres(0.5) };
    length.round_to(step).to_inches()
}

/// A post on its own axes: x from the left face, y in from the outer face, z up from the shoulder.
struct Bench<'a> {
    stick: &'a Stick,
    units: UnitSystem,
    wood: Solid,
}

impl Bench<'_> {
    fn at(&self, length: Length) -> f64 {
        printed(length, self.units)
    }

    fn across(&self, mark: &Mark) -> (f64, f64) {
        let (near, far) = mark.across.unwrap();
        (self.at(near), self.at(far))
    }

    fn along(&self, mark: &Mark) -> (f64, f64) {
        (-self.at(mark.far.unwrap()), -self.at(mark.near))
    }

    fn cut(&mut self, tools: &[Convex]) {
        for tool in tools {
            self.wood.cut(tool);
        }
    }

    fn boxed(&mut self, x: (f64, f64), y: (f64, f64), z: (f64, f64)) {
        self.cut(&cuboid(Vector::inches(x.0, y.0, z.0), Vector::inches(x.1, y.1, z.1)));
    }

    /// From a side face, how deep it goes along the breadth: near face first.
    fn depth(&self, mark: &Mark) -> (f64, f64) {
        let (deep, breadth) = (self.at(mark.depth.unwrap()), self.stick.timber.sawn.breadth.to_inches());
        if mark.face == Face::Left { (0.0, deep) } else { (breadth, breadth - deep) }
    }

    /// A housing's end slopes in at the nose; its other end runs to the mortise's edge on the floor.
    fn housing(&mut self, mark: &Mark, mortise: &Mark) {
        let (low, high) = self.along(mark);
        let nose = mark.note.split("slopes in to ").nth(1).unwrap().split(" on the floor").next().unwrap();
        let nose = -parse_length(nose, self.units).unwrap().to_inches();
        let (face, floor) = self.depth(mark);
        let corner = self.along(mortise).1;
        let outline = [(face, high), (face, low), (floor, nose), (floor, corner)];
        let outline = Polygon::new(outline.map(|(x, z)| Point::inches(x, z)).to_vec());
        let (from, to) = self.across(mark);
        self.cut(&prism(&outline, Axis::Y, Length::inches(from), Length::inches(to)));
    }

    fn bore(&mut self, mark: &Mark, peg: Length) {
        let (x, z) = (self.across(mark).0, -self.at(mark.near));
        let x = if mark.across_from == Some(Face::Left) { x } else { panic!("a peg is measured from the left") };
        let deep = self.stick.timber.sawn.depth.to_inches();
        self.cut(&cylinder(Vector::inches(x, 0.0, z), Vector::inches(x, deep, z), peg));
    }
}

/// Puts the post together from its marks.
fn rebuilt(stick: &Stick, project: &Project) -> Solid {
    let (breadth, depth) = (stick.timber.sawn.breadth.to_inches(), stick.timber.sawn.depth.to_inches());
    let find = |what: &str| stick.marks.iter().find(|mark| mark.what.starts_with(what)).unwrap();
    let units = project.units;
    let foot = -printed(find("foot").near, units);
    let head = -printed(find("tenon cheeks").near, units);
    let stock = cuboid(Vector::inches(0.0, 0.0, foot), Vector::inches(breadth, depth, head));
    let mut bench = Bench { stick, units, wood: Solid::new(stock) };
    let (cheeks, width) = (bench.across(find("tenon cheeks")), bench.across(find("tenon width")));
    let up = (0.0, head);
    for (x, y) in [
        ((0.0, breadth), (0.0, cheeks.0)),
        ((0.0, breadth), (cheeks.1, depth)),
        ((0.0, width.0), (0.0, depth)),
        ((width.1, breadth), (0.0, depth)),
    ] {
        bench.boxed(x, y, up);
    }
    for mark in &stick.marks {
        let is_pocket = matches!(mark.face, Face::Left | Face::Right);
        match mark.kind {
            MarkKind::Mortise => {
                let (x, y, z) = (bench.depth(mark), bench.across(mark), bench.along(mark));
                bench.boxed((x.0.min(x.1), x.0.max(x.1)), y, z);
            }
            MarkKind::Housing if is_pocket => {
                let is_its = |other: &&Mark| other.kind == MarkKind::Mortise && other.mate == mark.mate;
                bench.housing(mark, stick.marks.iter().find(is_its).unwrap());
            }
            MarkKind::Peg => bench.bore(mark, project.joinery.peg),
            _ => {}
        }
    }
    bench.wood
}

/// The least width of a body, square to one of its facets.
fn thickness(body: &Convex) -> f64 {
    body.facets().iter().map(|facet| -body.reach(&facet.plane).0).fold(f64::INFINITY, f64::min)
}

/// What one has and the other has not is nowhere thicker than a rounding.
fn check_same(mark: &str, one: &Solid, two: &Solid) {
    let mut left = one.clone();
    for body in two.bodies() {
        left.cut(body);
    }
    for rest in left.bodies() {
        let (thick, within) = (thickness(rest), rest.within());
        assert!(thick <= OFF, "{mark}: {thick} in too much or too little at {within:?}");
    }
}

fn check_posts(mut project: Project) {
    // An arris taken off is a chisel's matter: its width alone is printed.
    project.joinery.chamfer = Length::ZERO;
    let Some(built) = lay_out(&project).built else { return };
    for body in bodies(&project, &built.shape).into_iter().filter(|body| body.mark.starts_with('P')) {
        let stick = built.stick(&body.mark).unwrap();
        // Onto the bench: the outer face is y = 0 and y runs into the wood, as on the sheet.
        let moved = body.wood.moved(-body.zero);
        let outer = Plane { normal: Vector::inches(0.0, 1.0, 0.0), offset: 0.0 };
        let turned = Solid::new(moved.bodies().iter().map(|body| body.mirrored(&outer)).collect());
        let found = rebuilt(stick, &project);
        check_same(&body.mark, &found, &turned);
        check_same(&body.mark, &turned, &found);
    }
}

#[test]
fn the_posts_of_the_examples_are_what_their_sheets_print() {
    check_posts(demo::wool_barn());
    check_posts(demo::log_store());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(20))]

    #[test]
    fn posts_of_random_frames_are_what_their_sheets_print(project in projects()) {
        check_posts(project);
    }
}

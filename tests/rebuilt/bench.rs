//! A stick on the bench: x along it from its zero, y into the wood from the face its outline is drawn on, z across that face.
use crate::sheet::{Row, Sheet};
use outshot::geometry::{Point, Polygon};
use outshot::solid::{Axis, Convex, Solid, Vector, cylinder, prism, wedge};
use outshot::tickets::{Face, MarkKind};
use outshot::units::Length;

/// Which way a face looks on the bench.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Side {
    /// y = 0.
    Front,
    /// y = the thickness.
    Back,
    /// z = 0.
    Upper,
    /// z = the width.
    Lower,
}

/// The faces of every kind of stick as its sheet says that it lies.
pub fn side(face: Face, front: Face) -> Side {
    match face {
        _ if face == front => Side::Front,
        Face::Left | Face::Top | Face::LongEdge => Side::Upper,
        Face::Underside | Face::ShortEdge => Side::Lower,
        // A post lies on its wall face, a rafter on its right one.
        Face::Right if front == Face::Outer => Side::Lower,
        Face::Wall | Face::Right => Side::Back,
        Face::Outer => panic!("the outer face is always in front"),
    }
}

/// The stick while it is worked.
pub struct Bench<'a> {
    pub sheet: &'a Sheet,
    /// The face its outline is drawn on.
    pub front: Face,
    pub wood: Solid,
}

/// An outline of that face drawn out between two depths below it.
pub fn plate(corners: &[(f64, f64)], (from, to): (f64, f64)) -> Vec<Convex> {
    let outline = Polygon::new(corners.iter().map(|(x, z)| Point::inches(*x, *z)).collect());
    prism(&outline, Axis::Y, Length::inches(from), Length::inches(to))
}

impl<'a> Bench<'a> {
    /// A blank that is longer at both ends than anything marked on it.
    pub fn blank(sheet: &'a Sheet, front: Face) -> Self {
        let (low, high) = ends(sheet);
        let corners = [(low, 0.0), (high, 0.0), (high, sheet.wide), (low, sheet.wide)];
        Self { sheet, front, wood: Solid::new(plate(&corners, (0.0, sheet.thick))) }
    }

    pub fn cut(&mut self, tools: &[Convex]) {
        for tool in tools {
            self.wood.cut(tool);
        }
    }

    /// Through the whole thickness.
    pub fn saw(&mut self, corners: &[(f64, f64)]) {
        self.cut(&plate(corners, (0.0, self.sheet.thick)));
    }

    pub fn boxed(&mut self, x: (f64, f64), y: (f64, f64), z: (f64, f64)) {
        self.cut(&plate(&[(x.0, z.0), (x.1, z.0), (x.1, z.1), (x.0, z.1)], y));
    }

    /// Cuts an end off along the line from `upper` on the upper edge to `lower` on the lower one.
    pub fn cross_cut(&mut self, upper: f64, lower: f64, is_low_end: bool) {
        let (low, high) = ends(self.sheet);
        let past = if is_low_end { low - 1.0 } else { high + 1.0 };
        self.saw(&[(upper, 0.0), (past, 0.0), (past, self.sheet.wide), (lower, self.sheet.wide)]);
    }

    /// A place across the face from where the sheet measures it, as y or z of the bench.
    pub fn from(&self, face: Face, value: f64) -> f64 {
        match side(face, self.front) {
            Side::Front | Side::Upper => value,
            Side::Back => self.sheet.thick - value,
            Side::Lower => self.sheet.wide - value,
        }
    }

    /// Both edges across, as y or z of the bench.
    pub fn across(&self, row: &Row) -> (f64, f64) {
        let (near, far, from) = row.across.unwrap_or_else(|| panic!("{} is not measured across", row.what));
        (self.from(from, near), self.from(from, far))
    }

    /// A square recess; one without a depth goes right through.
    pub fn recess(&mut self, row: &Row) {
        let (x, across) = (row.along(), self.across(row));
        let side = side(row.face, self.front);
        let is_front = matches!(side, Side::Front | Side::Back);
        let through = if is_front { self.sheet.thick } else { self.sheet.wide };
        let deep = (self.from(row.face, 0.0), self.from(row.face, row.depth.unwrap_or(through)));
        if is_front { self.boxed(x, deep, across) } else { self.boxed(x, across, deep) }
    }

    /// Bores every hole from the front right through.
    pub fn bore_all(&mut self) {
        for row in self.sheet.of_kind(MarkKind::Peg) {
            assert_eq!(row.face, self.front, "{} is bored from the front", row.what);
            let from = row.across.map(|(_, _, from)| from).unwrap();
            let (z, diameter) = (self.from(from, row.place()), Length::inches(row.must_say("")));
            let at = |y: f64| Vector::inches(row.near, y, z);
            self.cut(&cylinder(at(0.0), at(self.sheet.thick), diameter));
        }
    }

    /// Bores for the fixings square to their face: right through, or wide to a depth and narrower on.
    pub fn drill_all(&mut self) {
        let bored = self.sheet.of_kind(MarkKind::Fixing).filter(|row| row.note.contains("bore "));
        for row in bored {
            let across = self.from(row.across.map(|(_, _, from)| from).unwrap(), row.place());
            let is_front = matches!(side(row.face, self.front), Side::Front | Side::Back);
            let through = if is_front { self.sheet.thick } else { self.sheet.wide };
            let at = |deep: f64| {
                let deep = self.from(row.face, deep);
                if is_front { Vector::inches(row.near, deep, across) } else { Vector::inches(row.near, across, deep) }
            };
            let drill = |diameter, from, to| cylinder(at(from), at(to), Length::inches(diameter));
            let tools = match row.said("to a depth of ") {
                None => drill(row.must_say("bore "), 0.0, through),
                Some(deep) => {
                    let mut both = drill(row.must_say("bore "), 0.0, deep);
                    both.extend(drill(row.must_say("then "), deep, through));
                    both
                }
            };
            self.cut(&tools);
        }
    }

    /// Takes both arrises of a face off between two places, running out at 45°.
    pub fn chamfer_all(&mut self) {
        for row in self.sheet.of_kind(MarkKind::Chamfer) {
            assert!(row.note.contains("on each face, both arrises") && row.note.contains("run out at 45°"));
            let (size, (near, far)) = (row.must_say(""), row.along());
            let corners = match side(row.face, self.front) {
                Side::Front => [(0.0, 0.0), (0.0, self.sheet.wide)],
                Side::Lower => [(0.0, self.sheet.wide), (self.sheet.thick, self.sheet.wide)],
                other => panic!("a chamfer on {other:?}"),
            };
            for (y, z) in corners {
                let into = |at: f64, whole: f64| if at > whole / 2.0 { -size } else { size };
                let (dy, dz) = (into(y, self.sheet.thick), into(z, self.sheet.wide));
                let line = |short: f64, dy: f64, dz: f64| {
                    (Vector::inches(near + short, y + dy, z + dz), Vector::inches(far - short, y + dy, z + dz))
                };
                let tool = wedge([line(0.0, 0.0, 0.0), line(size, dy, 0.0), line(size, 0.0, dz)]);
                self.cut(&tool.into_iter().collect::<Vec<_>>());
            }
        }
    }
}

/// How far the blank reaches: past every mark by a foot.
pub fn ends(sheet: &Sheet) -> (f64, f64) {
    let places = || sheet.rows.iter().flat_map(|row| [Some(row.near), row.far]).flatten();
    (places().fold(0.0, f64::min) - 12.0, places().fold(0.0, f64::max) + 12.0)
}

//! One load of the roof, drawn on the section it acts on.
use super::scene::{Anchor, Drawn, Layer, Scene, Text};
use super::section::section;
use crate::analysis::RoofCase;
use crate::design::Built;
use crate::geometry::{Point, Polygon};
use crate::loads::Spread;
use crate::project::Project;
use crate::units::{AreaLoad, Length, show_area_load};

/// Height of the largest load drawn.
const TALLEST: Length = Length::inches(26.0);
/// Roof to the foot of the load, and arrow to arrow.
const OFF: Length = Length::inches(5.0);
const ARROWS: Length = Length::inches(14.0);

/// The section with that load over its roof: straight down, or square to the roof where it is wind.
#[must_use]
pub fn load_section(project: &Project, built: &Built, case: &RoofCase) -> Scene {
    let plain = section(project, built);
    let mut scene = Scene { parts: Vec::new(), ..plain };
    let kept = plain.parts.into_iter().filter(|part| !matches!(part.drawn, Drawn::Dimension(_) | Drawn::Text(_)));
    scene.parts.extend(kept.map(|mut part| {
        part.field = None;
        part
    }));
    let is_square = !case.square.pieces().is_empty();
    let spread = if is_square { &case.square } else { &case.down };
    let most = spread
        .pieces()
        .iter()
        .flat_map(|piece| [piece.start.abs(), piece.end.abs()])
        .fold(AreaLoad::psf(1.0), AreaLoad::max);
    let draw = Draw { project, built, is_square, most };
    draw.area(&mut scene, spread);
    scene
}

struct Draw<'a> {
    project: &'a Project,
    built: &'a Built,
    is_square: bool,
    most: AreaLoad,
}

impl Draw<'_> {
    /// A point over the roof at `y` from the wall, at a height above the metal.
    fn over(&self, y: Length, high: Length) -> Point {
        let line = &self.built.shape.line;
        let lift = self.project.frame.timbers.purlin.sawn.depth + self.project.roofing.rib;
        let metal = line.top_of_metal(y, lift);
        if self.is_square {
            Point::new(y + high * line.pitch.sin(), metal + high * line.pitch.cos())
        } else {
            Point::new(y, metal + high)
        }
    }

    fn high(&self, load: AreaLoad) -> Length {
        OFF + TALLEST * (load.abs() / self.most)
    }

    fn area(&self, scene: &mut Scene, spread: &Spread) {
        for piece in spread.pieces() {
            let outline = Polygon::new(vec![
                self.over(piece.from, OFF),
                self.over(piece.from, self.high(piece.start)),
                self.over(piece.to, self.high(piece.end)),
                self.over(piece.to, OFF),
            ]);
            scene.area(Layer::Room, outline);
            self.arrows(scene, piece);
            for (y, load) in [(piece.from, piece.start), (piece.to, piece.end)] {
                self.figure(scene, y, load);
            }
        }
    }

    fn arrows(&self, scene: &mut Scene, piece: &crate::loads::Piece) {
        let length = piece.to - piece.from;
        let mut y = piece.from + ARROWS / 2.0;
        while y < piece.to {
            let share = (y - piece.from) / length;
            let load = piece.start + (piece.end - piece.start) * share;
            let (tip, tail) = (self.over(y, OFF), self.over(y, self.high(load)));
            let (tip, tail) = if load.is_negative() { (tail, tip) } else { (tip, tail) };
            scene.line(Layer::Room, tail, tip);
            let (dx, dy) = ((tail.x - tip.x).to_inches(), (tail.y - tip.y).to_inches());
            let long = dx.hypot(dy).max(1e-6);
            let (ux, uy) = (dx / long, dy / long);
            for side in [-1.0, 1.0] {
                let barb = Point::inches(
                    tip.x.to_inches() + 3.0 * ux - side * 1.6 * uy,
                    tip.y.to_inches() + 3.0 * uy + side * 1.6 * ux,
                );
                scene.line(Layer::Room, tip, barb);
            }
            y += ARROWS;
        }
    }

    fn figure(&self, scene: &mut Scene, y: Length, load: AreaLoad) {
        let says = show_area_load(load, self.project.units).to_string();
        let at = self.over(y, self.high(load));
        scene.words(Text { at, says, anchor: Anchor::Middle, turned: 0.0, shift: (0.0, -6.0), room: None });
    }
}

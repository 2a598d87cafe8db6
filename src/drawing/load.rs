//! One load of the roof, drawn on the section it acts on; one of the beam line, or one of its cases, on the elevation.
use super::elevation::elevation;
use super::scene::{Anchor, Drawn, Layer, Scene, Text};
use super::section::section;
use crate::analysis::{BeamCase, ElevationLoad, PlacedForce, RoofCase};
use crate::design::Built;
use crate::geometry::{Point, Polygon};
use crate::loads::Spread;
use crate::project::Project;
use crate::units::{AreaLoad, Force, Length, UnitSystem, show_area_load, show_force};
use crate::wording::length;

/// Height of the largest load drawn.
const TALLEST: Length = Length::inches(26.0);
/// Roof to the foot of the load, and arrow to arrow.
const OFF: Length = Length::inches(5.0);
const ARROWS: Length = Length::inches(14.0);

/// The section with that load over its roof: straight down, or square to the roof where it is wind.
#[must_use]
pub fn load_section(project: &Project, built: &Built, case: &RoofCase) -> Scene {
    let mut scene = bare(section(project, built));
    let is_square = !case.square.pieces().is_empty();
    let spread = if is_square { &case.square } else { &case.down };
    let draw = Draw { project, built, is_square, most: largest(spread) };
    draw.area(&mut scene, spread);
    if let Some((y, force)) = case.point {
        let tip = draw.over(y, OFF);
        let tail = Point::new(tip.x, tip.y + TALLEST);
        arrow(&mut scene, tail, tip);
        figure(&mut scene, tail, show_force(force, project.units).to_string());
    }
    scene
}

/// The elevation with what a case puts on the beam line beside its dead load: each rafter's force, the push along the wall, the
/// post that sinks.
#[must_use]
pub fn load_elevation(project: &Project, built: &Built, case: &BeamCase) -> Scene {
    let mut scene = bare(elevation(project, built));
    let say = |force: Force| show_force(force.abs(), project.units).to_string();
    let largest = case.rafters.iter().fold(Force::pounds(1.0), |most, force| most.max(force.abs()));
    let seat = built.shape.line.beam_seat;
    let foot = built.shape.rafter.place(&built.shape.line, built.shape.rafter.tail.0).y.max(seat) + OFF;
    // Equal forces side by side are said once, in their middle.
    let mut run: Vec<Length> = Vec::new();
    for (index, (x, force)) in built.shape.rafters.iter().zip(&case.rafters).enumerate() {
        let high = foot + TALLEST * (force.abs() / largest);
        let (tail, tip) = (Point::new(*x, high), Point::new(*x, foot));
        if *force != Force::ZERO {
            if force.is_negative() { arrow(&mut scene, tip, tail) } else { arrow(&mut scene, tail, tip) }
        }
        run.push(*x);
        let text = say(*force);
        if case.rafters.get(index + 1).is_none_or(|next| say(*next) != text) {
            let says = if run.len() > 1 { format!("{} \u{d7} {text}", run.len()) } else { text };
            let middle = (run[0] + *x) / 2.0;
            if *force != Force::ZERO {
                figure(&mut scene, Point::new(middle, high), says);
            }
            run.clear();
        }
    }
    if case.push != Force::ZERO {
        let middle = seat - project.frame.timbers.beam.sawn.depth / 2.0;
        let end = if case.push.is_negative() { project.frame.beam_length + OFF } else { -OFF };
        let reach = TALLEST * if case.push.is_negative() { 1.0 } else { -1.0 };
        let (tail, tip) = (Point::new(end + reach, middle), Point::new(end, middle));
        arrow(&mut scene, tail, tip);
        figure(&mut scene, Point::new(end + reach / 2.0, middle), say(case.push));
    }
    if let Some((post, by)) = case.sinks.and_then(|(post, by)| Some((built.shape.posts.get(post)?, by))) {
        let tail = Point::new(post.right + OFF, post.foot + TALLEST);
        arrow(&mut scene, tail, Point::new(tail.x, post.foot));
        figure(&mut scene, tail, length(by, project.units));
    }
    scene
}

/// The elevation with a load that acts in its plane: wind on the roof over the eave, forces at their places with what they act on.
#[must_use]
pub fn load_in_elevation(project: &Project, built: &Built, load: &ElevationLoad) -> Scene {
    let mut scene = bare(elevation(project, built));
    let (line, rafter) = (&built.shape.line, &built.shape.rafter);
    let lift = project.frame.timbers.purlin.sawn.depth + project.roofing.rib;
    let top = line.top_of_metal(project.frame.wall_gap, lift).max(rafter.place(line, rafter.tail.0).y) + OFF;
    if let Some((spread, left)) = &load.on_roof {
        let most = largest(spread);
        let high = |load: AreaLoad| top + TALLEST * (load.abs() / most);
        for piece in spread.pieces() {
            let (from, to) = (*left + piece.from, *left + piece.to);
            scene.area(
                Layer::Room,
                Polygon::new(vec![
                    Point::new(from, top),
                    Point::new(from, high(piece.start)),
                    Point::new(to, high(piece.end)),
                    Point::new(to, top),
                ]),
            );
            let middle = (from + to) / 2.0;
            let load = (piece.start + piece.end) * 0.5;
            let (tail, tip) = (Point::new(middle, high(load)), Point::new(middle, top));
            if load.is_negative() {
                arrow(&mut scene, tip, tail)
            } else {
                arrow(&mut scene, tail, tip)
            }
            figure(&mut scene, tail, show_area_load(load, project.units).to_string());
        }
    }
    let most = load.forces.iter().fold(Force::pounds(1.0), |most, one| most.max(one.force.abs()));
    let mut said: Vec<String> = Vec::new();
    for one in &load.forces {
        let reach = OFF * 2.0 + (TALLEST - OFF * 2.0) * (one.force.abs() / most);
        let tail =
            if one.is_level { Point::new(one.at.x - reach, one.at.y) } else { Point::new(one.at.x, one.at.y + reach) };
        arrow(&mut scene, tail, one.at);
        let at = if one.is_level { Point::new((tail.x + one.at.x) / 2.0, tail.y) } else { tail };
        let says = force_says(one, project.units);
        // Braces stand close together, and one is as another.
        if !said.contains(&says) {
            figure(&mut scene, at, says.clone());
            said.push(says);
        }
    }
    scene
}

fn force_says(one: &PlacedForce, units: UnitSystem) -> String {
    let what = if one.what.starts_with('K') { "each brace" } else { &one.what };
    format!("{what} {}", show_force(one.force, units))
}

/// The largest pressure of a load, without sign.
fn largest(spread: &Spread) -> AreaLoad {
    let ends = spread.pieces().iter().flat_map(|piece| [piece.start.abs(), piece.end.abs()]);
    ends.fold(AreaLoad::psf(1.0), AreaLoad::max)
}

/// A drawing without dimensions, words and fields: what acts has their room.
pub(super) fn bare(drawn: Scene) -> Scene {
    let mut scene = Scene { parts: Vec::new(), ..drawn };
    for mut part in drawn.parts {
        if !matches!(part.drawn, Drawn::Dimension(_) | Drawn::Text(_)) {
            part.field = None;
            scene.parts.push(part);
        }
    }
    scene
}

/// From tail to tip.
fn arrow(scene: &mut Scene, tail: Point, tip: Point) {
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
}

fn figure(scene: &mut Scene, at: Point, says: String) {
    scene.words(Text { at, says, anchor: Anchor::Middle, turned: 0.0, shift: (0.0, -6.0), room: None });
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
            arrow(scene, tail, tip);
            y += ARROWS;
        }
    }

    fn figure(&self, scene: &mut Scene, y: Length, load: AreaLoad) {
        figure(scene, self.over(y, self.high(load)), show_area_load(load, self.project.units).to_string());
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::analysis::section_loads;
    use crate::evaluate;
    use crate::project::demo;

    fn words(scene: &Scene) -> Vec<String> {
        let said = scene.parts.iter().filter_map(|part| match &part.drawn {
            Drawn::Text(text) => Some(text.says.clone()),
            _ => None,
        });
        said.collect()
    }

    #[test]
    fn every_load_of_the_section_is_drawn_with_its_size() {
        let project = demo::wool_barn();
        let design = evaluate(&project);
        let (built, strength) = (design.built.unwrap(), design.strength.unwrap());
        let all = section_loads(&project, &strength.loads);
        for wanted in ["dead load", "roof live load", "wind on components, lifting", "a person between wall and beam"] {
            assert!(all.iter().any(|case| case.name == wanted), "{wanted}");
        }
        for case in &all {
            let said = words(&load_section(&project, &built, case));
            assert!(!said.is_empty() && said.iter().any(|says| !says.starts_with("0 ")), "{}: {said:?}", case.name);
        }
    }

    /// Every force with its stick and its size, every pressure; in millimetres too.
    #[test]
    fn every_load_of_the_elevation_is_drawn_with_its_size() {
        for project in [demo::wool_barn(), demo::log_store()] {
            let design = evaluate(&project);
            let (built, strength) = (design.built.unwrap(), design.strength.unwrap());
            let all = crate::analysis::elevation_loads(&project, &built.shape, &strength.loads);
            assert!(all.len() > 4);
            for load in &all {
                let said = words(&load_in_elevation(&project, &built, load));
                for one in &load.forces {
                    assert!(said.contains(&force_says(one, project.units)), "{}: {said:?}", load.name);
                }
                let pieces = load.on_roof.as_ref().map_or(0, |(spread, _)| spread.pieces().len());
                let braces = load.forces.iter().filter(|one| one.what.starts_with('K')).count();
                let once = braces.saturating_sub(1);
                assert_eq!(said.len(), load.forces.len() - once + pieces, "{}", load.name);
            }
        }
    }

    #[test]
    fn what_acts_along_the_beam_is_drawn_with_its_size() {
        let project = demo::wool_barn();
        let design = evaluate(&project);
        let (built, strength) = (design.built.unwrap(), design.strength.unwrap());
        let line = strength.line.as_ref().unwrap();
        for case in &line.cases {
            let said = words(&load_elevation(&project, &built, case));
            let holds = |force: Force| {
                said.iter().any(|says| says.ends_with(&show_force(force.abs(), project.units).to_string()))
            };
            for force in case.rafters.iter().filter(|force| **force != Force::ZERO) {
                assert!(holds(*force), "{}: {force:?} in {said:?}", case.name);
            }
            assert!(case.push == Force::ZERO || holds(case.push), "{}: {said:?}", case.name);
            if let Some((_, by)) = case.sinks {
                assert!(said.contains(&length(by, project.units)), "{}: {said:?}", case.name);
            }
        }
    }
}

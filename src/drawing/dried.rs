//! A post's head under the beam with its brace, as cut and as dried, the shrinking drawn larger than it is.
//!
//! Along the grain nothing moves. Across it every stick is drawn nearer to what holds it: a post to its middle, the beam to the
//! posts' shoulders, a brace to its long edge.
use super::scene::{Anchor, Layer, Margins, Scene, Text};
use crate::design::Built;
use crate::geometry::{Brace, Pocket, Point, Polygon, PostShape, beam_housing};
use crate::project::{Project, Role, Side};
use crate::study::{Seasoning, small_length};
use crate::units::Length;

/// How many times larger the shrinking can be drawn.
const TIMES: [f64; 6] = [50.0, 20.0, 10.0, 5.0, 2.0, 1.0];
/// As it is drawn, the beam sinks no farther than this.
const MOST: Length = Length::inches(2.5);
/// Wood drawn past the joint.
const PAST: Length = Length::inches(9.0);

/// How many times larger gaps and drops are drawn.
#[must_use]
pub fn dried_times(found: &Seasoning) -> f64 {
    let last = found.movement("beam_seat_drop").map_or(Length::ZERO, |movement| movement.last());
    TIMES.into_iter().find(|times| last * *times <= MOST).unwrap_or(1.0)
}

/// One joint and how it shrinks.
struct Joint<'a> {
    project: &'a Project,
    built: &'a Built,
    post: &'a PostShape,
    brace: Option<&'a Brace>,
    /// What post, beam and brace lose of an inch, as drawn.
    lost: [f64; 3],
}

/// The drawing, at one of the times of [`Seasoning`]; nothing where there is no post.
#[must_use]
pub fn dried(project: &Project, built: &Built, found: &Seasoning, at: usize) -> Option<Scene> {
    let shape = &built.shape;
    let on_right =
        |post: &PostShape| shape.braces.iter().find(|brace| brace.post == post.number && brace.side == Side::Right);
    // One inside the line, with a brace at its right, where there is one.
    let braced = shape.posts.iter().filter(|post| on_right(post).is_some()).min_by_key(|post| post.end.is_some());
    let post = braced.or_else(|| shape.posts.first())?;
    let times = dried_times(found);
    let lost = [Role::Post, Role::Beam, Role::Brace].map(|role| {
        let own = found.sections.iter().find(|one| one.role == role);
        own.and_then(|own| Some(*own.depth_lost.get(at)? / own.section.depth)).unwrap_or(0.0) * times
    });
    let joint = Joint { project, built, post, brace: on_right(post), lost };
    let mut scene = Scene { margins: Margins { above: 18.0, below: 0.0, right: 0.0 }, ..Scene::default() };
    joint.draw(&mut scene, true);
    joint.draw(&mut scene, false);
    joint.label(&mut scene, found, at);
    Some(scene)
}

impl Joint<'_> {
    /// All three sticks: as dried in wood, as cut in broken lines.
    fn draw(&self, scene: &mut Scene, is_dry: bool) {
        let [post, beam, brace] = if is_dry { self.lost } else { [0.0; 3] };
        let layer = if is_dry { Layer::Wood } else { Layer::Hidden };
        let middle = self.post.middle();
        let narrow = |point: Point| Point::new(middle + (point.x - middle) * (1.0 - post), point.y);
        let shoulder = self.post.shoulder;
        let low = |point: Point| Point::new(point.x, shoulder + (point.y - shoulder) * (1.0 - beam));
        scene.area(layer, Polygon::new(self.post_outline().into_iter().map(narrow).collect()));
        scene.area(layer, Polygon::new(self.beam_outline().into_iter().map(low).collect()));
        if let Some(own) = self.brace {
            let shape = &own.form;
            let thin = |point: Point| own.place_stick(Point::new(point.x, point.y * (1.0 - brace)));
            scene.area(layer, shape.outline().map(thin));
        }
    }

    /// The pocket's outline from the corner to the nose, as places along its housed line and out from its floor.
    fn into_pocket(pocket: &Pocket) -> Vec<Point> {
        let mut outline = pocket.housing_outline();
        outline[1..].reverse();
        outline
    }

    fn post_outline(&self) -> Vec<Point> {
        let post = self.post;
        let down = self.brace.map_or(self.project.frame.brace_down, |brace| brace.form.down);
        let foot = (post.shoulder - down - PAST).max(post.foot);
        let mut outline = vec![Point::new(post.left, post.shoulder), Point::new(post.right, post.shoulder)];
        if let Some(brace) = self.brace {
            let pocket = brace.post_pocket(&self.project.frame);
            let place = |at: Point| Point::new(brace.corner_x + at.y, brace.corner_z - at.x);
            outline.extend(Self::into_pocket(&pocket).into_iter().map(place));
        }
        outline.extend([Point::new(post.right, foot), Point::new(post.left, foot)]);
        outline
    }

    fn beam_outline(&self) -> Vec<Point> {
        let (post, frame) = (self.post, &self.project.frame);
        let housing = beam_housing(frame, &self.project.joinery);
        let (seat, under) = (self.built.shape.line.beam_seat, post.shoulder - housing);
        let (left, right) =
            (post.left - PAST, post.right + self.brace.map_or(frame.brace_along, |brace| brace.form.along) + PAST);
        let mut outline = vec![Point::new(left, under), Point::new(post.left, under)];
        outline.extend([Point::new(post.left, post.shoulder), Point::new(post.right, post.shoulder)]);
        outline.push(Point::new(post.right, under));
        if let Some(brace) = self.brace {
            let pocket = brace.beam_pocket(frame);
            let place = |at: Point| Point::new(brace.corner_x + at.x, brace.corner_z - at.y);
            outline.extend(Self::into_pocket(&pocket).into_iter().map(place));
        }
        outline.extend([Point::new(right, under), Point::new(right, seat), Point::new(left, seat)]);
        outline
    }

    fn label(&self, scene: &mut Scene, found: &Seasoning, at: usize) {
        let frame = &self.project.frame;
        let mut say = |point: Point, before: &str, key: &str, share: f64, anchor: Anchor| {
            if let Some(size) = found.movement(key).and_then(|movement| movement.sizes.get(at)) {
                let says = format!("{before} {}", small_length(*size * share, self.project.units));
                scene.words(Text { at: point, says, anchor, turned: 0.0, shift: (0.0, -5.0), room: None });
            }
        };
        let seat = self.built.shape.line.beam_seat;
        say(Point::new(self.post.middle() + PAST, seat), "sinks", "beam_seat_drop", 1.0, Anchor::Start);
        let (post, down) = (self.post, frame.brace_down);
        say(
            Point::new(post.left - Length::inches(1.0), post.shoulder - down / 2.0),
            "back",
            "post_in_housing",
            0.5,
            Anchor::End,
        );
        if self.brace.is_some() {
            let foot = Point::new(post.right + Length::inches(2.0), post.shoulder - down - Length::inches(3.0));
            say(foot, "slack", "brace_slack", 1.0, Anchor::Start);
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::drawing::Drawn;
    use crate::lay_out;
    use crate::project::demo;
    use crate::study::{YEARS, seasoning};

    fn outlines(scene: &Scene, layer: Layer) -> Vec<(Point, Point)> {
        let of = scene.parts.iter().filter(|part| part.layer == layer);
        of.filter_map(|part| if let Drawn::Area(outline) = &part.drawn { Some(outline.bounds()) } else { None })
            .collect()
    }

    /// As drawn, the beam's top stands lower by the drop times the factor, the post is narrower, and at the start nothing has moved.
    #[test]
    fn it_is_drawn_so_many_times_larger() {
        for project in [demo::wool_barn(), demo::log_store()] {
            let built = lay_out(&project).built.unwrap();
            let found = seasoning(&project, &built).unwrap();
            let times = dried_times(&found);
            let scene = dried(&project, &built, &found, YEARS).unwrap();
            let (dry, cut) = (outlines(&scene, Layer::Wood), outlines(&scene, Layer::Hidden));
            assert_eq!((dry.len(), cut.len()), (3, 3));
            let sunk = cut[1].1.y - dry[1].1.y;
            let expected = found.movement("beam_seat_drop").unwrap().last() * times;
            assert!(sunk.is_near(expected, Length::inches(1e-6)), "{sunk:?} {expected:?}");
            let narrower = (cut[0].1.x - cut[0].0.x) - (dry[0].1.x - dry[0].0.x);
            let expected = found.movement("post_in_housing").unwrap().last() * times;
            assert!(narrower.is_near(expected, Length::inches(1e-6)), "{narrower:?} {expected:?}");
            let start = dried(&project, &built, &found, 0).unwrap();
            assert_eq!(outlines(&start, Layer::Wood), outlines(&start, Layer::Hidden));
        }
    }
}

//! How far one post or scarf stands from what is beside it: drawn into the elevation while it is moved.
use super::scene::{Drawn, Layer, Scene};
use crate::design::Built;
use crate::geometry::Point;
use crate::project::Project;
use crate::units::Length;
use crate::wording::length;

/// Share of a post's height at which these dimensions stand: over the hand that moves its foot.
const HEIGHT: f64 = 0.6;

/// From a post's centre to its neighbours', or to the beam's end.
pub fn post_apart(scene: &mut Scene, project: &Project, built: &Built, index: usize) {
    let posts = &project.frame.posts;
    let (Some(post), Some(shape)) = (posts.get(index), built.shape.posts.get(index)) else { return };
    let before = index.checked_sub(1).and_then(|before| posts.get(before)).map_or(Length::ZERO, |post| post.x);
    let after = posts.get(index + 1).map_or(project.frame.beam_length, |post| post.x);
    let z = shape.foot + shape.body() * HEIGHT;
    spans(scene, project, [before, post.x, after], z);
}

/// From a scarf's middle to the centres of the posts beside it, or to the beam's end.
pub fn scarf_apart(scene: &mut Scene, project: &Project, built: &Built, index: usize) {
    let Some(scarf) = built.shape.beam.scarfs.get(index) else { return };
    let centre = scarf.place.centre;
    let posts = project.frame.posts.iter().map(|post| post.x);
    let before = posts.clone().filter(|x| *x <= centre).fold(Length::ZERO, Length::max);
    let after = posts.filter(|x| *x > centre).fold(project.frame.beam_length, Length::min);
    let bottom = built.shape.line.beam_seat - project.frame.timbers.beam.sawn.depth;
    let foot = built.shape.posts.first().map_or(Length::ZERO, |post| post.foot);
    let z = foot + (bottom - foot) * HEIGHT;
    scene.line(Layer::Room, Point::new(centre, bottom), Point::new(centre, z));
    spans(scene, project, [before, centre, after], z);
}

fn spans(scene: &mut Scene, project: &Project, at: [Length; 3], z: Length) {
    for pair in at.windows(2) {
        let says = length(pair[1] - pair[0], project.units);
        scene.add(Layer::Fine, Drawn::Span(Point::new(pair[0], z), Point::new(pair[1], z), says));
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::super::elevation;
    use super::*;
    use crate::lay_out;
    use crate::project::demo;

    fn added(apart: fn(&mut Scene, &Project, &Built, usize), index: usize) -> Vec<String> {
        let project = demo::wool_barn();
        let built = lay_out(&project).built.unwrap();
        let mut scene = elevation(&project, &built);
        let n_before = scene.parts.len();
        apart(&mut scene, &project, &built, index);
        let says = |drawn: &Drawn| if let Drawn::Span(_, _, says) = drawn { Some(says.clone()) } else { None };
        scene.parts[n_before..].iter().filter_map(|part| says(&part.drawn)).collect()
    }

    /// The two bays beside a post, and the beam's end beside an outer one.
    #[test]
    fn a_post_says_its_two_bays() {
        let project = demo::wool_barn();
        let posts = &project.frame.posts;
        let say = |value| length(value, project.units);
        assert_eq!(added(post_apart, 1), [say(posts[1].x - posts[0].x), say(posts[2].x - posts[1].x)]);
        assert_eq!(added(post_apart, 0), [say(posts[0].x), say(posts[1].x - posts[0].x)]);
        assert!(added(post_apart, 9).is_empty());
    }

    /// The two together are the bay it lies in.
    #[test]
    fn a_scarf_says_the_posts_beside_it() {
        let project = demo::wool_barn();
        let built = lay_out(&project).built.unwrap();
        let scarf = &built.shape.beam.scarfs[0];
        let bay = scarf.judged.as_ref().unwrap().bay;
        let (left, right) = (project.frame.posts[bay].x, project.frame.posts[bay + 1].x);
        let say = |value| length(value, project.units);
        assert_eq!(added(scarf_apart, 0), [say(scarf.place.centre - left), say(right - scarf.place.centre)]);
        assert!(added(scarf_apart, 9).is_empty());
    }
}

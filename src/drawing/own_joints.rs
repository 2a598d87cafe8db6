//! Joints that are not by the rules, ringed on the beam line.
use super::scene::{Anchor, Drawn, Layer, Scene, Text};
use crate::design::Built;
use crate::geometry::Point;
use crate::joinery::all_own;
use crate::project::{JointName, Project};
use crate::units::Length;

/// Across a ring: seen on a phone, and smaller than the room between two joints.
const RING: Length = Length::inches(12.0);

/// A ring with a word at every such joint; a tap leads to what it has of its own.
pub fn ring_own_joints(scene: &mut Scene, project: &Project, built: &Built) {
    for joint in all_own(project, &built.shape) {
        let Some(at) = place_of(built, joint) else { continue };
        let field = format!("exceptions.{joint}");
        scene.add(Layer::Own, Drawn::Hole(at, RING)).of_field(&field);
        let says = "own".to_owned();
        // Past the beam's right end stands the height of the last post.
        let is_last = at.x > project.frame.beam_length - RING * 2.0;
        let (anchor, along) = if is_last { (Anchor::End, -8.0) } else { (Anchor::Start, 8.0) };
        let text = Text { at, says, anchor, turned: 0.0, shift: (along, 16.0), room: None };
        scene.add(Layer::Own, Drawn::Text(text)).of_field(&field);
    }
}

fn place_of(built: &Built, joint: JointName) -> Option<Point> {
    let shape = &built.shape;
    let brace = |post, side| shape.braces.iter().find(|brace| (brace.post, brace.side) == (post, side));
    match joint {
        JointName::PostHead(number) => {
            let post = shape.posts.iter().find(|post| post.number == number)?;
            Some(Point::new(post.middle(), post.shoulder + post.tenon_length / 2.0))
        }
        JointName::BraceFoot(post, side) => {
            let brace = brace(post, side)?;
            Some(brace.place(Length::ZERO, brace.form.down - brace.form.width / 2.0))
        }
        JointName::BraceHead(post, side) => {
            let brace = brace(post, side)?;
            Some(brace.place(brace.form.along - brace.form.width / 2.0, Length::ZERO))
        }
        JointName::Scarf(number) => {
            let scarf = shape.beam.scarfs.iter().find(|scarf| scarf.number == number)?;
            let depth = shape.line.beam_seat - shape.posts.first()?.shoulder;
            Some(Point::new(scarf.place.centre, shape.line.beam_seat - depth / 2.0))
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::drawing::elevation;
    use crate::lay_out;
    use crate::project::{JointException, ScarfKind, demo};

    /// By hand, the barn's P2: its ring lies on its middle, half of its tenon over its shoulder.
    #[test]
    fn only_a_joint_of_its_own_is_ringed() {
        let mut project = demo::wool_barn();
        let ringed = |project: &Project| {
            let scene = elevation(project, &lay_out(project).built.unwrap());
            let own = scene.parts.into_iter().filter(|part| part.layer == Layer::Own);
            own.filter_map(|part| match part.drawn {
                Drawn::Hole(at, _) => Some((part.field.unwrap_or_default(), at)),
                _ => None,
            })
            .collect::<Vec<_>>()
        };
        assert_eq!(ringed(&project), []);
        let peg = Some(Length::inches(0.75));
        for joint in ["P2", "K1R foot", "K1R head"] {
            project.exceptions.insert(joint.to_owned(), JointException { peg, ..JointException::default() });
        }
        let scarf_kind = Some(ScarfKind::Halved);
        project.exceptions.insert("S1".to_owned(), JointException { scarf_kind, ..JointException::default() });
        let found = ringed(&project);
        let fields: Vec<&str> = found.iter().map(|(field, _)| field.as_str()).collect();
        assert_eq!(fields, ["exceptions.P2", "exceptions.K1R foot", "exceptions.K1R head", "exceptions.S1"]);
        let built = lay_out(&project).built.unwrap();
        let post = &built.shape.posts[1];
        assert_eq!(found[0].1, Point::new(post.middle(), post.shoulder + Length::inches(2.0)));
    }
}

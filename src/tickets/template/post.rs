//! The post's head on two faces: outer at the right of the fold, left face at the left of it; head up.
use super::{Stroke, Template, cheeks, grouped};
use crate::design::Shape;
use crate::geometry::{Point, Polygon, PostShape};
use crate::joinery::{head_peg_height, head_peg_places};
use crate::project::{JointName, Project, Side};
use crate::units::{Fineness, Length};
use crate::wording::tape;

/// Post drawn below the shoulder, and rough wood past the tenon's end.
const STUB: Length = Length::inches(2.0);
const ROUGH: Length = Length::inches(0.5);

/// One for the posts between, one for each end post, and one for each head that is not by the rules.
pub fn templates(project: &Project, shape: &Shape) -> Vec<Template> {
    let edges = |post: &&PostShape| vec![post.tenon.0 - post.left, post.tenon.1 - post.left, post.tenon_length];
    let (by_rules, own): (Vec<&PostShape>, Vec<&PostShape>) =
        shape.posts.iter().partition(|post| post.rules == project.joinery);
    let mut all: Vec<Template> =
        grouped(by_rules, |post| edges(post)).into_iter().filter_map(|group| head(project, &group)).collect();
    for post in own {
        let joint = JointName::PostHead(post.number);
        all.extend(head(project, &[post]).map(|template| template.own(project, joint)));
    }
    all
}

fn head(project: &Project, group: &[&PostShape]) -> Option<Template> {
    let post = *group.first()?;
    // Where no end post is shouldered, they are all cut alike.
    let is_alone = group.iter().all(|other| other.end == post.end);
    let (key, name) = match post.end {
        Some(Side::Left) if is_alone => ("post-head-left-end", "Post head, left end post"),
        Some(Side::Right) if is_alone => ("post-head-right-end", "Post head, right end post"),
        _ => ("post-head", "Post head"),
    };
    let serves = group.iter().map(|post| format!("P{}", post.number)).collect();
    let lies = "post's outer face right of the fold, its left face left of it; head up";
    let mut template = Template::new(key, name, serves, lies);
    outer_face(project, post, &mut template);
    left_face(project, post, &mut template);
    pegs(project, post, &mut template);
    let top = post.tenon_length + ROUGH;
    template.line(
        Stroke::Fold,
        Point::new(Length::ZERO, -STUB),
        Point::new(Length::ZERO, top),
        "▲△ fold over the reference arris",
    );
    template.note("Square the shoulder round first, lay zero to it, undercut it a little inside the line.");
    Some(template)
}

/// Shoulder, tenon's end and its two edges.
fn outer_face(project: &Project, post: &PostShape, template: &mut Template) {
    let say = |value: Length| tape(value, project.units, Fineness::Sixteenth);
    let (breadth, top) = (project.frame.timbers.post.sawn.breadth, post.tenon_length + ROUGH);
    let (from, to) = (post.tenon.0 - post.left, post.tenon.1 - post.left);
    let place = Point::new;
    let long = post.tenon_length;
    template.wood.push(Polygon::rectangle(place(Length::ZERO, -STUB), place(breadth, Length::ZERO)));
    template.wood.push(Polygon::rectangle(place(from, Length::ZERO), place(to, long)));
    template.waste.push(Polygon::rectangle(place(Length::ZERO, long), place(breadth, top)));
    for (a, b, edge) in [(Length::ZERO, from, from), (to, breadth, to)] {
        if b - a > Length::inches(1e-6) {
            template.waste.push(Polygon::rectangle(place(a, Length::ZERO), place(b, long)));
            template.line(Stroke::Cut, place(edge, Length::ZERO), place(edge, long), "tenon's edge");
        }
    }
    template.line(Stroke::Cut, place(Length::ZERO, Length::ZERO), place(breadth, Length::ZERO), "shoulder: zero");
    let says = format!("tenon's end, {} above the shoulder", say(long));
    template.line(Stroke::Cut, place(Length::ZERO, long), place(breadth, long), says);
    template.line(Stroke::Edge, place(breadth, -STUB), place(breadth, top), "right arris");
    template.line(Stroke::RunsOn, place(Length::ZERO, -STUB), place(breadth, -STUB), "outer face; the post runs on");
}

/// Shoulder, end and the cheeks, measured from the outer face at the fold.
fn left_face(project: &Project, post: &PostShape, template: &mut Template) {
    let rules = &post.rules;
    let say = |value: Length| tape(value, project.units, Fineness::Sixteenth);
    let (depth, top) = (project.frame.timbers.post.sawn.depth, post.tenon_length + ROUGH);
    let place = |across: Length, y: Length| Point::new(-across, y);
    let long = post.tenon_length;
    let near = rules.tenon_offset;
    let far = (near + rules.tenon_thickness).min(depth);
    template.wood.push(Polygon::rectangle(place(depth, -STUB), place(Length::ZERO, Length::ZERO)));
    template.wood.push(Polygon::rectangle(place(far, Length::ZERO), place(near, long)));
    template.waste.push(Polygon::rectangle(place(depth, long), place(Length::ZERO, top)));
    for (a, b) in [(Length::ZERO, near), (far, depth)] {
        if b - a > Length::inches(1e-6) {
            template.waste.push(Polygon::rectangle(place(b, Length::ZERO), place(a, long)));
        }
    }
    for cheek in cheeks(near, far, depth) {
        let says = format!("cheek, {} in", say(cheek));
        template.line(Stroke::Cut, place(cheek, Length::ZERO), place(cheek, long), says);
    }
    template.line(Stroke::Cut, place(depth, Length::ZERO), place(Length::ZERO, Length::ZERO), "shoulder: zero");
    template.line(Stroke::Cut, place(depth, long), place(Length::ZERO, long), "tenon's end");
    template.line(Stroke::Edge, place(depth, -STUB), place(depth, top), "arris to the wall face");
    template.line(Stroke::RunsOn, place(depth, -STUB), place(Length::ZERO, -STUB), "left face; the post runs on");
}

fn pegs(project: &Project, post: &PostShape, template: &mut Template) {
    let rules = &post.rules;
    let say = |value: Length| tape(value, project.units, Fineness::Sixteenth);
    for (index, x) in head_peg_places(post).into_iter().enumerate() {
        let up = head_peg_height(post, index) - rules.drawbore;
        let says = format!("{} hole, {} up", say(rules.peg), say(up));
        template.holes.push(super::Bore { at: Point::new(x, up), diameter: rules.peg, says });
    }
    template.note(format!(
        "Holes in the tenon lie {} nearer the shoulder than the beam's: the drawbore. Bore them last, through the sawn tenon.",
        tape(rules.drawbore, project.units, Fineness::ThirtySecond)
    ));
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::project::demo;

    /// By hand, post 8x8, tenon 4 long, 2 off and 2 thick, end posts shouldered 2: between two posts the pegs stand
    /// at a quarter of 8, 2 and 6 in, 1½ and 2 up less the drawbore of ⅛; at the left end the tenon runs 2 to 8,
    /// pegs at 3½ and 6½.
    #[test]
    fn heads_by_hand() {
        let project = demo::wool_barn();
        let all = templates(&project, &evaluate(&project).built.unwrap().shape);
        let holes = |key: &str| -> Vec<(f64, f64)> {
            let template = all.iter().find(|template| template.key == key).unwrap();
            template.holes.iter().map(|hole| (hole.at.x.to_inches(), hole.at.y.to_inches())).collect()
        };
        assert_eq!(holes("post-head"), [(2.0, 1.375), (6.0, 1.875)]);
        assert_eq!(holes("post-head-left-end"), [(3.5, 1.375), (6.5, 1.875)]);
        let head = all.iter().find(|template| template.key == "post-head").unwrap();
        let cheeks: Vec<f64> = head
            .lines
            .iter()
            .filter(|line| line.says.starts_with("cheek"))
            .map(|line| line.from.x.to_inches())
            .collect();
        assert_eq!(cheeks, [-2.0, -4.0]);
        assert_eq!(head.serves, ["P2", "P3"]);
        // Shoulder to tenon's end by the two faces' outlines: 2 in of post, 4 of tenon, ½ of rough wood.
        let (low, high) = head.bounds();
        assert_eq!((low.x.to_inches(), low.y.to_inches()), (-8.0, -2.0));
        assert_eq!((high.x.to_inches(), high.y.to_inches()), (8.0, 4.5));
    }
}

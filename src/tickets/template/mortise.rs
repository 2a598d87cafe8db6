//! A post's mortise in the beam on two faces: outer face above the fold, underside below it.
//!
//! x runs along the beam from the post's left face to the right, as the beam is seen from outside.
use super::{Bore, Stroke, Template, grouped, runs};
use crate::design::Shape;
use crate::geometry::{Point, Polygon, PostShape, beam_housing, laid_out, reduced_beam_depth};
use crate::joinery::{head_peg_height, head_peg_places, posts_of};
use crate::project::{JointName, Project, Side};
use crate::units::{Fineness, Length};
use crate::wording::tape;

/// Beam drawn past the post along the stick, past its housing across it, and past the mortise's floor.
const STUB: Length = Length::inches(0.9);
const BESIDE: Length = Length::inches(0.4);

/// One for the posts between, one for each end post, one for each that is not by the rules; like the heads that go in.
pub fn templates(project: &Project, shape: &Shape) -> Vec<Template> {
    let sizes = |post: &PostShape| {
        vec![post.right - post.left, post.tenon.0 - post.left, post.tenon.1 - post.left, post.tenon_length]
    };
    let (by_rules, own): (Vec<&PostShape>, Vec<&PostShape>) =
        shape.posts.iter().partition(|post| post.rules == project.joinery);
    let groups = grouped(by_rules, |post| sizes(post)).into_iter();
    let mut all: Vec<Template> = groups.filter_map(|group| mortise(project, shape, &group)).collect();
    for post in own {
        let template = mortise(project, shape, &[post]);
        all.extend(template.map(|one| one.own(project, JointName::PostHead(post.number))));
    }
    all
}

fn mortise(project: &Project, shape: &Shape, group: &[&PostShape]) -> Option<Template> {
    let post = *group.first()?;
    let is_alone = group.iter().all(|other| other.end == post.end);
    let (key, name) = match post.end {
        Some(Side::Left) if is_alone => ("mortise-left-end", "Mortise over the left end post"),
        Some(Side::Right) if is_alone => ("mortise-right-end", "Mortise over the right end post"),
        _ => ("mortise", "Mortise over a post"),
    };
    let holds = shape
        .beam
        .pieces
        .iter()
        .filter(|piece| posts_of(shape, piece).any(|under| group.iter().any(|post| post.number == under.number)));
    let serves = holds.map(|piece| format!("B{}", piece.number)).collect();
    let lies = "beam's outer face above the fold, its underside below it; beam as seen from outside, top up";
    let mut template = Template::new(key, name, serves, lies);
    let cut = Cut::new(project, post);
    cut.outer_face(&mut template);
    cut.underside(&mut template);
    cut.lines_of_both(&mut template);
    let marks: Vec<String> = group.iter().map(|post| format!("P{}", post.number)).collect();
    let top = cut.say(reduced_beam_depth(&project.frame, &project.joinery));
    template.note(format!("For {}. Lay the left line to the post's left mark on the beam's sheet.", runs(&marks)));
    template.note(format!(
        "The housing's floor is {top} from the top: where the beam is not as sawn, lay the paper to that, not to the fold. \
         Mortise {} below it.",
        cut.say(cut.deep)
    ));
    Some(template)
}

/// The mortise's measures, on the template's own axes.
struct Cut<'a> {
    project: &'a Project,
    post: &'a PostShape,
    /// Depth of the housing below the underside as sawn; nothing where it takes no wood.
    housing: Length,
    /// Depth of the mortise below the housing's floor.
    deep: Length,
    /// The post's right face, and the mortise's two ends.
    right: Length,
    ends: (Length, Length),
    /// Across the underside, from the outer face: the housing's edge, and the mortise's cheeks.
    wide: Length,
    cheeks: (Length, Length),
    /// How far the paper goes below the fold and above it.
    below: Length,
    above: Length,
}

impl<'a> Cut<'a> {
    fn new(project: &'a Project, post: &'a PostShape) -> Self {
        let rules = &post.rules;
        let housing = beam_housing(&project.frame, rules).max(Length::ZERO);
        let deep = post.tenon_length + rules.blind_clearance;
        let wide = laid_out(&project.frame.timbers.post, rules).depth.min(project.frame.timbers.beam.sawn.breadth);
        Self {
            project,
            post,
            housing,
            deep,
            right: post.right - post.left,
            ends: (post.tenon.0 - post.left, post.tenon.1 - post.left),
            wide,
            cheeks: (rules.tenon_offset, rules.tenon_offset + rules.tenon_thickness),
            below: wide + BESIDE,
            above: housing + deep + BESIDE,
        }
    }

    fn say(&self, value: Length) -> String {
        tape(value, self.project.units, Fineness::Sixteenth)
    }

    fn is_housed(&self) -> bool {
        self.housing > Length::inches(1e-6)
    }

    /// The housing as it breaks through the outer face, the mortise inside, the pegs' holes.
    fn outer_face(&self, template: &mut Template) {
        let (at, zero) = (Point::new, Length::ZERO);
        let (start, end) = (-STUB, self.right + STUB);
        let opening = [at(zero, zero), at(zero, self.housing), at(self.right, self.housing), at(self.right, zero)];
        let mut wood = vec![at(start, zero)];
        if self.is_housed() {
            wood.extend(opening);
            template.waste.push(Polygon::new(opening.to_vec()));
            for (pair, says) in opening.windows(2).zip(["", "floor of the housing", ""]) {
                template.line(Stroke::Cut, pair[0], pair[1], says);
            }
        }
        wood.extend([at(end, zero), at(end, self.above), at(start, self.above)]);
        template.wood.push(Polygon::new(wood));
        let ((near, far), floor) = (self.ends, self.housing + self.deep);
        for (a, b, says) in [
            (at(near, self.housing), at(near, floor), ""),
            (at(near, floor), at(far, floor), "mortise's floor, inside"),
            (at(far, floor), at(far, self.housing), ""),
        ] {
            template.line(Stroke::Hidden, a, b, says);
        }
        let rules = &self.post.rules;
        for (index, x) in head_peg_places(self.post).into_iter().enumerate() {
            let up = head_peg_height(self.post, index);
            let says = format!("{} hole, {} from the floor", self.say(rules.peg), self.say(up));
            template.holes.push(Bore { at: at(x, self.housing + up), diameter: rules.peg, says });
        }
        template.words.push((at(self.right * 0.15, self.above - BESIDE * 2.0), "outer face".to_owned()));
    }

    /// Edges of the housing and of the mortise, measured from the outer face at the fold.
    fn underside(&self, template: &mut Template) {
        let at = |x: Length, across: Length| Point::new(x, -across);
        let zero = Length::ZERO;
        template.wood.push(Polygon::rectangle(at(-STUB, zero), at(self.right + STUB, self.below)));
        let (near, far) = self.cheeks;
        let (from, to) = self.ends;
        if self.is_housed() {
            template.waste.push(Polygon::rectangle(at(zero, zero), at(self.right, self.wide)));
            let across = format!("housing, {} deep, {} in", self.say(self.housing), self.say(self.wide));
            template.line(Stroke::Cut, at(zero, self.wide), at(self.right, self.wide), across);
        } else {
            template.waste.push(Polygon::rectangle(at(from, near), at(to, far)));
        }
        let stroke = if self.is_housed() { Stroke::Cut } else { Stroke::Carried };
        for (x, says) in [(zero, "post's left face"), (self.right, "post's right face")] {
            template.line(stroke, at(x, zero), at(x, self.wide), says);
        }
        for (cheek, says) in [(near, "cheek"), (far, "cheek")] {
            template.line(Stroke::Cut, at(from, cheek), at(to, cheek), format!("{says}, {} in", self.say(cheek)));
        }
        for x in [from, to] {
            template.line(Stroke::Cut, at(x, near), at(x, far), "");
        }
        template.words.push((at((from * 2.0 + to) / 3.0, (near + far) / 2.0), "mortise".to_owned()));
        template.words.push((at(self.right * 0.15, self.below - BESIDE * 0.35), "underside".to_owned()));
    }

    /// The arris, the paper's ends, and the middle of the post.
    fn lines_of_both(&self, template: &mut Template) {
        let at = Point::new;
        let (start, end) = (-STUB, self.right + STUB);
        let arris = (at(start, Length::ZERO), at(end, Length::ZERO));
        template.line(Stroke::Fold, arris.0, arris.1, "fold over the arris to the outer face △");
        for x in [start, end] {
            template.line(Stroke::RunsOn, at(x, -self.below), at(x, self.above), "");
        }
        let middle = self.right / 2.0;
        // Its words stand where nothing else does.
        let cheek = self.cheeks.1.min(self.wide);
        template.line(Stroke::Carried, at(middle, -self.wide), at(middle, -cheek), "middle of the post");
        template.line(Stroke::Carried, at(middle, -self.below), at(middle, -self.wide), "");
        template.line(Stroke::Carried, at(middle, -cheek), at(middle, self.above), "");
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::project::{StockRule, demo};

    fn all(project: &Project) -> Vec<Template> {
        templates(project, &evaluate(project).built.unwrap().shape)
    }

    fn of(project: &Project, key: &str) -> Template {
        all(project).into_iter().find(|template| template.key == key).unwrap()
    }

    /// Corners of the lines to cut on the underside that run along the beam: from, to, and how far in.
    fn along(template: &Template) -> Vec<(f64, f64, f64)> {
        let level = template.lines.iter().filter(|line| line.stroke == Stroke::Cut && line.from.y == line.to.y);
        let below = level.filter(|line| line.from.y < Length::ZERO);
        below.map(|line| (line.from.x.to_inches(), line.to.x.to_inches(), -line.from.y.to_inches())).collect()
    }

    /// By hand, post 8x8, tenon 4 long, 2 off and 2 thick, end posts shouldered 2, housing ½ below the beam's 10: the mortise
    /// runs 0 to 8 between, 2 to 8 at the left end, 0 to 6 at the right one; cheeks 2 and 4 in from the outer face; pegs a
    /// quarter of its length in, 1½ and 2 over the floor, so 2 and 2½ over the underside.
    #[test]
    fn mortises_by_hand() {
        let project = demo::wool_barn();
        let holes = |template: &Template| -> Vec<(f64, f64)> {
            template.holes.iter().map(|hole| (hole.at.x.to_inches(), hole.at.y.to_inches())).collect()
        };
        let (between, left, right) =
            (of(&project, "mortise"), of(&project, "mortise-left-end"), of(&project, "mortise-right-end"));
        assert_eq!(along(&between), [(0.0, 8.0, 8.0), (0.0, 8.0, 2.0), (0.0, 8.0, 4.0)]);
        assert_eq!(along(&left), [(0.0, 8.0, 8.0), (2.0, 8.0, 2.0), (2.0, 8.0, 4.0)]);
        assert_eq!(along(&right), [(0.0, 8.0, 8.0), (0.0, 6.0, 2.0), (0.0, 6.0, 4.0)]);
        assert_eq!(holes(&between), [(2.0, 2.0), (6.0, 2.5)]);
        assert_eq!(holes(&left), [(3.5, 2.0), (6.5, 2.5)]);
        assert_eq!(holes(&right), [(1.5, 2.0), (4.5, 2.5)]);
    }

    /// Each tenon lies in its mortise: the same edges along the beam and the same cheeks; its holes are the drawbore lower.
    #[test]
    fn every_head_has_its_mortise() {
        for project in [demo::wool_barn(), demo::log_store()] {
            let shape = &evaluate(&project).built.unwrap().shape;
            let (heads, mortises) = (super::super::post::templates(&project, shape), templates(&project, shape));
            assert_eq!(heads.len(), mortises.len());
            let housing = beam_housing(&project.frame, &project.joinery);
            for (head, mortise) in heads.iter().zip(&mortises) {
                assert_eq!(head.holes.len(), mortise.holes.len());
                for (tenon, beam) in head.holes.iter().zip(&mortise.holes) {
                    assert!((tenon.at.x - beam.at.x).abs().to_inches() < 1e-9);
                    let drawn = beam.at.y - housing - tenon.at.y;
                    assert!((drawn - project.joinery.drawbore).abs().to_inches() < 1e-9);
                }
            }
        }
    }

    /// Stock trusted as true with no housing: nothing but the mortise goes, and the post's faces are only carried.
    #[test]
    fn without_a_housing_only_the_mortise_is_cut() {
        let mut project = demo::wool_barn();
        (project.joinery.stock, project.joinery.housing) = (StockRule::TrueStock, Length::ZERO);
        let built = evaluate(&project).built.unwrap();
        let found = templates(&project, &built.shape).into_iter().find(|one| one.key == "mortise").unwrap();
        assert_eq!(along(&found), [(0.0, 8.0, 2.0), (0.0, 8.0, 4.0)]);
        assert!((found.waste[0].area().to_square_inches() - 16.0).abs() < 1e-9);
    }

    #[test]
    fn it_names_the_pieces_over_its_posts() {
        let project = demo::wool_barn();
        let built = evaluate(&project).built.unwrap();
        for template in templates(&project, &built.shape) {
            assert!(!template.serves.is_empty());
            for mark in &template.serves {
                let marks = &built.stick(mark).unwrap().marks;
                assert!(marks.iter().any(|mark| mark.what.starts_with("mortise of P")), "{mark}");
            }
        }
    }
}

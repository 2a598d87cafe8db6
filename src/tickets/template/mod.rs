//! Templates at true size: one for each kind of joint of this frame, to lay on the wood and prick through.
//!
//! A template lies in a plane of its own, in inches, x to the right and y up as the paper is read. Where two faces
//! of a stick are marked from one joint, both stand on the paper with the arris between them as a fold. What is
//! drawn beyond the joint is a stub: the stick runs on there.
mod brace;
mod mortise;
mod pocket;
mod post;
mod rafter;
mod scarf;

use super::mark::sixty_fourths;
use crate::design::Shape;
use crate::geometry::{Point, Polygon};
use crate::joinery::exception_says;
use crate::project::{JointName, Project};
use crate::units::Length;

/// What a line of a template is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stroke {
    /// A line to cut to: pricked through at both ends.
    Cut,
    /// An edge of the paper that is laid to an arris or to a reference face.
    Reference,
    /// The arris the paper is folded over.
    Fold,
    /// A line to measure from or to carry across, nothing to cut.
    Carried,
    /// What lies inside the wood.
    Hidden,
    /// An edge of the stick that needs no mark.
    Edge,
    /// Where the template ends and the stick runs on.
    RunsOn,
}

/// A straight line with its words.
#[derive(Clone, Debug, PartialEq)]
pub struct TemplateLine {
    /// What it is for.
    pub stroke: Stroke,
    /// One end.
    pub from: Point,
    /// The other end.
    pub to: Point,
    /// What stands along it; nothing where the line speaks for itself.
    pub says: String,
}

/// A hole to bore.
#[derive(Clone, Debug, PartialEq)]
pub struct Bore {
    /// Its centre.
    pub at: Point,
    /// Its diameter.
    pub diameter: Length,
    /// What it is.
    pub says: String,
}

/// One template.
#[derive(Clone, Debug, PartialEq)]
pub struct Template {
    /// A short name for its file: `rafter-wall-end`.
    pub key: String,
    /// Its name.
    pub name: String,
    /// Marks of the sticks it serves.
    pub serves: Vec<String>,
    /// How the stick lies under it: the face in sight, and what is up.
    pub lies: String,
    /// What to know before it is used.
    pub notes: Vec<String>,
    /// Wood that stays.
    pub wood: Vec<Polygon>,
    /// Wood that goes.
    pub waste: Vec<Polygon>,
    /// Lines.
    pub lines: Vec<TemplateLine>,
    /// Holes.
    pub holes: Vec<Bore>,
    /// Words at a place.
    pub words: Vec<(Point, String)>,
}

impl Template {
    fn new(key: impl Into<String>, name: impl Into<String>, serves: Vec<String>, lies: impl Into<String>) -> Self {
        Self {
            key: key.into(),
            name: name.into(),
            serves,
            lies: lies.into(),
            notes: Vec::new(),
            wood: Vec::new(),
            waste: Vec::new(),
            lines: Vec::new(),
            holes: Vec::new(),
            words: Vec::new(),
        }
    }

    fn line(&mut self, stroke: Stroke, from: Point, to: Point, says: impl Into<String>) {
        self.lines.push(TemplateLine { stroke, from, to, says: says.into() });
    }

    fn note(&mut self, says: impl Into<String>) {
        self.notes.push(says.into());
    }

    /// The template of one joint that is not by the rules.
    fn own(mut self, project: &Project, joint: JointName) -> Self {
        self.key = format!("{}-of-{}", self.key, joint.to_string().to_lowercase().replace(' ', "-"));
        self.name = format!("{}: {} alone", self.name, joint.words());
        self.notes.extend(exception_says(project, joint));
        self
    }

    /// Everything put through `place`; by reference, for one copy of the code serves every turn.
    #[must_use]
    pub fn map(mut self, place: &dyn Fn(Point) -> Point) -> Self {
        for outline in self.wood.iter_mut().chain(&mut self.waste) {
            *outline = outline.map(place);
        }
        for line in &mut self.lines {
            (line.from, line.to) = (place(line.from), place(line.to));
        }
        for hole in &mut self.holes {
            hole.at = place(hole.at);
        }
        for (at, _) in &mut self.words {
            *at = place(*at);
        }
        self
    }

    /// The template of the other hand.
    #[must_use]
    fn mirrored(self) -> Self {
        self.map(&|point| Point::new(-point.x, point.y))
    }

    /// Lowest and highest corner of the box around its outlines and lines.
    #[must_use]
    pub fn bounds(&self) -> (Point, Point) {
        let outlines = self.wood.iter().chain(&self.waste).flat_map(|outline| outline.corners.iter().copied());
        let lines = self.lines.iter().flat_map(|line| [line.from, line.to]);
        Polygon { corners: outlines.chain(lines).collect() }.bounds()
    }

    /// `serves R1–R18, P2`.
    #[must_use]
    pub fn serves_words(&self) -> String {
        format!("serves {}", runs(&self.serves))
    }
}

/// Every template this frame needs, each joint once a kind, from the roof down.
#[must_use]
pub fn templates(project: &Project, shape: &Shape) -> Vec<Template> {
    let mut all = rafter::templates(project, shape);
    all.extend(scarf::templates(project, shape));
    all.extend(post::templates(project, shape));
    all.extend(mortise::templates(project, shape));
    all.extend(brace::templates(project, shape));
    all.extend(pocket::templates(project, shape));
    all
}

/// Marks with neighbours drawn together: `R1–R18, P2`.
#[must_use]
pub fn runs(marks: &[String]) -> String {
    let number = |mark: &String| {
        let (head, digits) = mark.split_at(mark.find(|c: char| c.is_ascii_digit())?);
        digits.parse::<usize>().ok().map(|number| (head.to_owned(), number))
    };
    let mut words: Vec<String> = Vec::new();
    let mut at = 0;
    while at < marks.len() {
        let mut end = at;
        while let (Some(this), Some(Some(next))) = (number(&marks[end]), marks.get(end + 1).map(number))
            && next.0 == this.0
            && next.1 == this.1 + 1
        {
            end += 1;
        }
        match end - at {
            0 => words.push(marks[at].clone()),
            1 => words.extend([marks[at].clone(), marks[end].clone()]),
            _ => words.push(format!("{}–{}", marks[at], marks[end])),
        }
        at = end + 1;
    }
    words.join(", ")
}

/// What is alike to a sixty-fourth goes into one group, in the order it first comes.
fn grouped<T>(all: impl IntoIterator<Item = T>, sizes: impl Fn(&T) -> Vec<Length>) -> Vec<Vec<T>> {
    let mut groups: Vec<(Vec<i64>, Vec<T>)> = Vec::new();
    for one in all {
        let key: Vec<i64> = sizes(&one).into_iter().map(sixty_fourths).collect();
        match groups.iter_mut().find(|(known, _)| *known == key) {
            Some((_, group)) => group.push(one),
            None => groups.push((key, vec![one])),
        }
    }
    groups.into_iter().map(|(_, group)| group).collect()
}

/// The lines of an outline from corner to corner, without closing it.
fn chain(template: &mut Template, stroke: Stroke, points: &[Point], says: &[&str]) {
    for (index, pair) in points.windows(2).enumerate() {
        template.line(stroke, pair[0], pair[1], says.get(index).copied().unwrap_or_default());
    }
}

/// Two cheeks as places across, without what lies on the far arris or past it.
fn cheeks(near: Length, far: Length, width: Length) -> Vec<Length> {
    [near, far].into_iter().filter(|place| *place < width - Length::inches(1e-6)).collect()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::project::demo;

    fn all(project: &Project) -> Vec<Template> {
        templates(project, &evaluate(project).built.unwrap().shape)
    }

    #[test]
    fn marks_are_drawn_together() {
        let check = |marks: &[&str], expected: &str| {
            assert_eq!(runs(&marks.iter().map(|mark| (*mark).to_owned()).collect::<Vec<_>>()), expected);
        };
        check(&["R1", "R2", "R3", "R4"], "R1–R4");
        check(&["P1", "P2", "P4"], "P1, P2, P4");
        check(&["K1R", "K2R"], "K1R, K2R");
        check(&[], "");
    }

    /// Every kind of joint of the barn has one template, with sticks of the frame and its own key.
    #[test]
    fn each_joint_once_a_kind() {
        let project = demo::wool_barn();
        let built = evaluate(&project).built.unwrap();
        let all = templates(&project, &built.shape);
        let keys: Vec<&str> = all.iter().map(|template| template.key.as_str()).collect();
        let expected = [
            "rafter-wall-end",
            "rafter-beam-end",
            "scarf-lower-lap",
            "scarf-upper-lap",
            "post-head-left-end",
            "post-head",
            "post-head-right-end",
            "mortise-left-end",
            "mortise",
            "mortise-right-end",
            "brace-post-end",
            "brace-beam-end",
            "pocket-post-right-face",
            "pocket-post-left-face",
            "pocket-beam-right-of-post",
            "pocket-beam-left-of-post",
        ];
        assert_eq!(keys, expected);
        for template in &all {
            assert!(!template.serves.is_empty() && !template.lies.is_empty(), "{}", template.key);
            assert!(template.serves.iter().all(|mark| built.stick(mark).is_some()), "{}", template.key);
            assert!(template.lines.iter().any(|line| line.stroke == Stroke::Cut), "{}", template.key);
            assert!(
                template.lines.iter().any(|line| matches!(line.stroke, Stroke::Reference | Stroke::Fold)),
                "{}",
                template.key
            );
            assert!(template.waste.iter().all(|waste| waste.area().to_square_inches() > 0.0), "{}", template.key);
        }
    }

    #[test]
    fn no_template_for_what_the_frame_does_not_have() {
        let mut project = demo::wool_barn();
        for post in &mut project.frame.posts {
            (post.brace_left, post.brace_right) = (false, false);
        }
        assert!(
            all(&project).iter().all(|template| !template.key.contains("brace") && !template.key.contains("pocket"))
        );
    }

    /// A corner of the barn's roof is cut alike however the lengths are shown.
    #[test]
    fn the_units_shown_change_no_outline() {
        let inches = demo::wool_barn();
        let mut millimetres = inches.clone();
        millimetres.units = crate::units::UnitSystem::Metric;
        for (a, b) in all(&inches).iter().zip(all(&millimetres)) {
            assert_eq!(a.wood, b.wood);
            assert_eq!(a.waste, b.waste);
        }
    }
}

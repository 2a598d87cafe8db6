//! Knee braces: one shape for all that follow the rules, and where each one meets its post and the beam.
//!
//! Elevation coordinates of one brace: the corner C is the meeting of the housed lines of post and
//! beam; the leg g_h runs from C along the beam, g_v down the post. The long edge joins the two leg
//! ends; the brace's width lies on the corner side of it. The shoulders lie on the housed lines. The
//! real faces stand out from the housed lines by the housings p (post) and q (beam): there each toe is
//! cut off square to the long edge, so that the thrust bears square on the pocket's end.
//!
//! Stick coordinates: x along the long edge from the post's shoulder, y square into the wood.
use super::plane::{Point, Polygon};
use super::post::{PostShape, beam_housing, laid_out, post_housing};
use crate::project::{Frame, JoineryRules, JointName, Project, Side};
use crate::units::Length;

/// Where a brace lies in the face of a post or of the beam, all measured from the corner C along the
/// housed line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pocket {
    /// Corner-side edge of the housing, its clearance included.
    pub corner: Length,
    /// Nose edge on the real face.
    pub nose_on_face: Length,
    /// Nose edge on the floor of the housing.
    pub nose_on_floor: Length,
    /// The leg: the theoretical toe on the housed line.
    pub leg: Length,
    /// Depth of the housing below the real face.
    pub housing: Length,
    /// Mortise along the housed line: corner side and nose side.
    pub mortise: (Length, Length),
    /// Depth of the mortise below the housed line.
    pub mortise_depth: Length,
    /// Out from the floor, where the nose of the brace ends: its own housing, whatever the real face is.
    nose: Length,
}

impl Pocket {
    /// The housing seen from the side: x along the housed line from the corner C, y out from the floor. Past the nose's end
    /// its edge goes straight out, so that the brace can enter.
    #[must_use]
    pub fn housing_outline(&self) -> Vec<Point> {
        let mut outline = vec![Point::new(self.corner, self.housing), Point::new(self.nose_on_face, self.housing)];
        outline.extend(self.square_from().map(|above| Point::new(self.nose_on_face, above)));
        outline.extend([Point::new(self.nose_on_floor, Length::ZERO), Point::new(self.mortise.0, Length::ZERO)]);
        outline
    }

    /// How far above the floor the housing's end turns from the nose's lean to square, where it is deeper than the nose.
    #[must_use]
    pub fn square_from(&self) -> Option<Length> {
        (self.housing > self.nose).then_some(self.nose)
    }

    /// The peg's place along the housed line: midway along the tenon.
    #[must_use]
    pub fn peg(&self) -> Length {
        (self.mortise.0 + self.nose_on_floor) / 2.0
    }
}

/// The hollow of a curved brace keeps this far from its noses.
const HOLLOW_FROM_NOSE: Length = Length::inches(4.0);

/// The shape of a brace.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BraceShape {
    /// Leg along the beam.
    pub along: Length,
    /// Leg down the post.
    pub down: Length,
    /// Width in the plane of the frame.
    pub width: Length,
    /// Housing in the post.
    pub post_housing: Length,
    /// Housing in the beam.
    pub beam_housing: Length,
    /// Length of the tenon at the post, from the housed line.
    pub tenon_at_post: Length,
    /// Length of the tenon at the beam, from the housed line.
    pub tenon_at_beam: Length,
    /// How far the long edge is hollowed at its middle; zero for a straight brace.
    pub rise: Length,
}

impl BraceShape {
    /// The brace of this frame at the sizes sawn.
    #[must_use]
    pub fn new(frame: &Frame, rules: &JoineryRules) -> Self {
        Self {
            along: frame.brace_along,
            down: frame.brace_down,
            width: frame.timbers.brace.sawn.depth,
            post_housing: rules.housing,
            beam_housing: rules.housing,
            tenon_at_post: rules.brace_tenon,
            tenon_at_beam: rules.brace_tenon,
            rise: frame.brace_rise,
        }
    }

    /// A brace whose ends have rules of their own: it keeps the line of the others, and a deeper housing takes a longer leg.
    ///
    /// With housings deeper by u at the post and v at the beam the corner C moves by u and v; the line through both toes,
    /// x/g_h + z/g_v = 1 from the old corner, meets the new housed lines at g_h·k and g_v·k from the new one, with
    /// k = 1 + u/g_h + v/g_v.
    #[must_use]
    pub fn with_ends(frame: &Frame, rules: &JoineryRules, (foot, head): (&JoineryRules, &JoineryRules)) -> Self {
        let of_rules = Self::new(frame, rules);
        let at_post = (foot.housing - rules.housing) / of_rules.along;
        let at_beam = (head.housing - rules.housing) / of_rules.down;
        let longer = 1.0 + at_post + at_beam;
        Self {
            along: of_rules.along * longer,
            down: of_rules.down * longer,
            post_housing: foot.housing,
            beam_housing: head.housing,
            tenon_at_post: foot.brace_tenon,
            tenon_at_beam: head.brace_tenon,
            ..of_rules
        }
    }

    /// Where the hollow of a curved brace begins and ends on its long edge: a hand's breadth in from the noses (common
    /// practice: 3 to 6 in).
    #[must_use]
    pub fn hollow_ends(&self) -> (Length, Length) {
        let [post_nose, beam_nose, ..] = self.corners();
        (post_nose.x + HOLLOW_FROM_NOSE, beam_nose.x - HOLLOW_FROM_NOSE)
    }

    /// Radius of the hollow's arc: (c² + r²)/2r over half a chord c with a rise r. Zero for a straight brace.
    #[must_use]
    pub fn hollow_radius(&self) -> Length {
        if self.rise <= Length::ZERO {
            return Length::ZERO;
        }
        let (low, high) = self.hollow_ends();
        let (half, rise) = (((high - low) / 2.0).to_inches(), self.rise.to_inches());
        Length::inches((half * half + rise * rise) / (2.0 * rise))
    }

    /// Depth of the hollow below the long edge at a place along it: an arc of a circle through both its ends.
    #[must_use]
    pub fn hollow_at(&self, x: Length) -> Length {
        let (low, high) = self.hollow_ends();
        if self.rise <= Length::ZERO || x <= low || x >= high {
            return Length::ZERO;
        }
        let (radius, rise) = (self.hollow_radius().to_inches(), self.rise.to_inches());
        let off = (x - (low + high) / 2.0).to_inches();
        Length::inches((radius * radius - off * off).sqrt() - (radius - rise))
    }

    /// The wood hollowed out of the long edge, as a chain of sixteen chords; nothing for a straight brace.
    #[must_use]
    pub fn hollow(&self) -> Option<Polygon> {
        const CHORDS: u32 = 16;
        let (low, high) = self.hollow_ends();
        if self.rise <= Length::ZERO || high <= low {
            return None;
        }
        let place = |step: u32| low + (high - low) * (f64::from(step) / f64::from(CHORDS));
        let arc = (0..=CHORDS).map(|step| Point::new(place(step), self.hollow_at(place(step))));
        Some(Polygon::new(arc.collect()))
    }

    /// Shoulder to shoulder along the long edge: √(g_h² + g_v²).
    #[must_use]
    pub fn long_edge(&self) -> Length {
        self.along.hypot(self.down)
    }

    /// Sine and cosine of the angle between the long edge and the post.
    fn at_post(&self) -> (f64, f64) {
        (self.along / self.long_edge(), self.down / self.long_edge())
    }

    /// The body between the shoulders, without tenons.
    #[must_use]
    pub fn outline(&self) -> Polygon {
        Polygon::new(self.corners().to_vec())
    }

    /// Corners of the body: post nose and beam nose on the long edge, beam nose on its shoulder, beam and
    /// post shoulder on the short edge, post nose on its shoulder.
    #[must_use]
    pub fn corners(&self) -> [Point; 6] {
        let (sin, cos) = self.at_post();
        let (tan_post, tan_beam) = (sin / cos, cos / sin);
        let length = self.long_edge();
        let post_nose = self.post_housing / sin;
        let beam_nose = self.beam_housing / cos;
        [
            Point::new(post_nose, Length::ZERO),
            Point::new(length - beam_nose, Length::ZERO),
            Point::new(length - beam_nose, beam_nose * tan_beam),
            Point::new(length - self.width / tan_beam, self.width),
            Point::new(self.width / tan_post, self.width),
            Point::new(post_nose, post_nose * tan_post),
        ]
    }

    /// Tenon at the post end, in stick coordinates: its nose edge square to the post, its other edge
    /// the brace's short edge run on.
    #[must_use]
    pub fn post_tenon(&self) -> Polygon {
        let (sin, cos) = self.at_post();
        let nose = self.down - self.post_housing * (cos / sin + sin / cos);
        let corner = self.down - self.width / sin;
        let slip = self.tenon_at_post * (cos / sin);
        let end = corner.max(Length::ZERO) + slip;
        // Points as (depth into the post, distance below C), turned into stick coordinates.
        let place = |depth: Length, below: Length| {
            let (x, z) = (-depth, self.down - below);
            Point::new(x * sin + z * cos, z * sin - x * cos)
        };
        Polygon::new(vec![
            place(Length::ZERO, nose),
            place(self.tenon_at_post, nose),
            place(self.tenon_at_post, end.min(nose)),
            place(Length::ZERO, corner),
        ])
    }

    /// Tenon at the beam end, in stick coordinates.
    #[must_use]
    pub fn beam_tenon(&self) -> Polygon {
        let turned = Self {
            along: self.down,
            down: self.along,
            post_housing: self.beam_housing,
            beam_housing: self.post_housing,
            tenon_at_post: self.tenon_at_beam,
            tenon_at_beam: self.tenon_at_post,
            ..*self
        };
        let length = self.long_edge();
        turned.post_tenon().map(|point| Point::new(length - point.x, point.y))
    }

    /// Both ends from zero, tenons included. The theoretical toes are inside, cut away or not: the layout
    /// is measured from them, so the stock must reach them.
    #[must_use]
    pub fn ends(&self) -> (Length, Length) {
        let (low, _) = self.post_tenon().bounds();
        let (_, high) = self.beam_tenon().bounds();
        (low.x.min(Length::ZERO), high.x.max(self.long_edge()))
    }

    /// The pocket in the post, measured down from C, in a face that stands `housing` out from the housed line.
    #[must_use]
    pub fn post_pocket(&self, rules: &JoineryRules, housing: Length) -> Pocket {
        let (sin, cos) = self.at_post();
        pocket(self.down, self.width / sin, cos / sin, (self.post_housing, housing), rules)
    }

    /// The pocket in the beam, measured along from C, in an underside that stands `housing` out.
    #[must_use]
    pub fn beam_pocket(&self, rules: &JoineryRules, housing: Length) -> Pocket {
        let (sin, cos) = self.at_post();
        pocket(self.along, self.width / cos, sin / cos, (self.beam_housing, housing), rules)
    }
}

/// `across`: the brace's width measured on the housed line; `lean`: how far the brace moves along the
/// line for each inch away from it. The nose is cut at the rule's housing; the edges on the face follow
/// the real one.
fn pocket(leg: Length, across: Length, lean: f64, (rule, real): (Length, Length), rules: &JoineryRules) -> Pocket {
    let nose_on_floor = leg - rule * lean - rule / lean;
    // The nose leans out from the floor to the brace's own long edge, a rule's depth out; there it ends.
    let out = if rule > Length::ZERO { (real / rule).clamp(0.0, 1.0) } else { 1.0 };
    let nose_on_face = nose_on_floor + (leg - rule * lean - nose_on_floor) * out;
    Pocket {
        corner: leg - across - real * lean - rules.pocket_clearance,
        nose_on_face,
        nose_on_floor,
        leg,
        housing: real,
        mortise: (leg - across - rules.pocket_clearance, nose_on_floor),
        mortise_depth: rules.brace_tenon + rules.blind_clearance,
        nose: rule,
    }
}

/// Wood left between the mortises of two braces opposed in one post, by the rules of their feet; below nothing where they
/// meet.
#[must_use]
pub fn web_between(frame: &Frame, (one, other): (&JoineryRules, &JoineryRules)) -> Length {
    let deep = |rules: &JoineryRules| rules.housing + rules.brace_tenon + rules.blind_clearance;
    laid_out(&frame.timbers.post, one).breadth - (deep(one) + deep(other))
}

/// The longest brace tenon that leaves the least web between two opposed mortises; what it is too long by is shared by both.
#[must_use]
pub fn tenon_for_web(frame: &Frame, rules: &JoineryRules) -> Length {
    rules.brace_tenon - (rules.least_web - web_between(frame, (rules, rules))) / 2.0
}

/// One brace in its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Brace {
    /// Number of its post, from 1.
    pub post: usize,
    /// Which side of the post it stands on.
    pub side: Side,
    /// The corner C: x of the post's housed line.
    pub corner_x: Length,
    /// The corner C: height of the beam's housed line, the post's shoulder where its head follows the rules.
    pub corner_z: Length,
    /// Its shape: that of all braces, but for what its ends have of their own.
    pub form: BraceShape,
    /// The rules of its end in the post.
    pub foot: JoineryRules,
    /// The rules of its end in the beam.
    pub head: JoineryRules,
}

impl Brace {
    /// `K2L`: the brace on the left of post 2.
    #[must_use]
    pub fn mark(&self) -> String {
        let side = match self.side {
            Side::Left => 'L',
            Side::Right => 'R',
        };
        format!("K{}{side}", self.post)
    }

    /// Its pocket in the post, down from C.
    #[must_use]
    pub fn post_pocket(&self, frame: &Frame) -> Pocket {
        self.form.post_pocket(&self.foot, post_housing(frame, &self.foot, self.side))
    }

    /// Its pocket in the beam, along from C.
    #[must_use]
    pub fn beam_pocket(&self, frame: &Frame) -> Pocket {
        self.form.beam_pocket(&self.head, beam_housing(frame, &self.head))
    }

    /// A point at `along` the beam and `down` the post from C, in the elevation (x, z).
    #[must_use]
    pub fn place(&self, along: Length, down: Length) -> Point {
        let x = match self.side {
            Side::Left => self.corner_x - along,
            Side::Right => self.corner_x + along,
        };
        Point::new(x, self.corner_z - down)
    }

    /// A point of the stick's own coordinates, in the elevation (x, z).
    #[must_use]
    pub fn place_stick(&self, point: Point) -> Point {
        let shape = &self.form;
        let length = shape.long_edge();
        let (sin, cos) = (shape.along / length, shape.down / length);
        let along = point.x * sin - point.y * cos;
        let up = point.x * cos + point.y * sin;
        self.place(along, shape.down - up)
    }

    /// What it takes of the beam's underside on the real face, low x first: corner side to nose.
    #[must_use]
    pub fn on_beam(&self, pocket: &Pocket) -> (Length, Length) {
        let near = self.place(pocket.corner, Length::ZERO).x;
        let far = self.place(pocket.nose_on_face, Length::ZERO).x;
        (near.min(far), near.max(far))
    }
}

/// Every brace of the frame, left to right.
#[must_use]
pub fn braces(project: &Project, posts: &[PostShape]) -> Vec<Brace> {
    let (frame, rules) = (&project.frame, &project.joinery);
    let mut found = Vec::new();
    for (post, shape) in frame.posts.iter().zip(posts) {
        let sides = [(post.brace_left, Side::Left), (post.brace_right, Side::Right)];
        for (_, side) in sides.into_iter().filter(|(wanted, _)| *wanted) {
            let foot = project.rules_of(JointName::BraceFoot(shape.number, side));
            let head = project.rules_of(JointName::BraceHead(shape.number, side));
            let corner_x = match side {
                Side::Left => shape.left + foot.housing,
                Side::Right => shape.right - foot.housing,
            };
            let corner_z = shape.shoulder + (head.housing - rules.housing);
            let form = BraceShape::with_ends(frame, rules, (&foot, &head));
            found.push(Brace { post: shape.number, side, corner_x, corner_z, form, foot, head });
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shape(along: f64, down: f64) -> BraceShape {
        BraceShape {
            along: Length::inches(along),
            down: Length::inches(down),
            width: Length::inches(6.0),
            post_housing: Length::inches(0.5),
            beam_housing: Length::inches(0.5),
            tenon_at_post: Length::inches(2.5),
            tenon_at_beam: Length::inches(2.5),
            rise: Length::ZERO,
        }
    }

    fn check(found: Length, expected: f64) {
        assert!((found.to_inches() - expected).abs() < 1e-3, "{found:?} is not {expected}");
    }

    /// Leg × √2 (derived), as framing squares list it: 24, 30, 36, 42 and 48 in legs.
    #[test]
    fn equal_legs_follow_the_table() {
        for (leg, length) in [(24.0, 33.941), (30.0, 42.426), (36.0, 50.912), (42.0, 59.397), (48.0, 67.882)] {
            check(shape(leg, leg).long_edge(), length);
        }
    }

    /// By hand at 45°: 6·√2 = 8.485, so the brace takes 36 − 8.485 = 27.515 to 36 on the housed line;
    /// on the face, ½ in out, 27.015 to 35.5; the nose goes ½ in deep at 45° and meets the floor at 35.
    #[test]
    fn a_pocket_by_hand() {
        let rules = JoineryRules::inch_defaults();
        let pocket = shape(36.0, 36.0).post_pocket(&rules, rules.housing);
        check(pocket.corner, 27.015 - 0.25);
        check(pocket.nose_on_face, 35.5);
        check(pocket.nose_on_floor, 35.0);
        check(pocket.mortise.0, 27.515 - 0.25);
        check(pocket.mortise_depth, 2.75);
    }

    /// Tenon ends: at 45° a point ½·√2·(depth ± below) along the long edge. The nose corner at the end
    /// of a 2.5 in tenon, 35 below C, lies (−2.5 + 1)·0.7071 = −1.061 from zero.
    #[test]
    fn tenons_reach_past_the_shoulders() {
        let brace = shape(36.0, 36.0);
        let (low, _) = brace.post_tenon().bounds();
        check(low.x, -1.061);
        let (from, to) = brace.ends();
        check(to - from, 50.912 + 2.0 * 1.061);
    }

    /// By hand: noses at 0.707 and 50.205, so the hollow runs from 4.707 to 46.205, 41.498 long; with 1½ in of rise its
    /// radius is (20.749² + 1.5²)/3 = 144.257, and a quarter along, 10.374 off the middle, it is 1.126 deep.
    #[test]
    fn a_curved_brace_by_hand() {
        let brace = BraceShape { rise: Length::inches(1.5), ..shape(36.0, 36.0) };
        let (low, high) = brace.hollow_ends();
        check(low, 4.707);
        check(high, 46.205);
        check(brace.hollow_at((low + high) / 2.0), 1.5);
        check(brace.hollow_at(low + (high - low) / 4.0), 1.126);
        // A flat arc's segment is near two thirds of its chord by its rise: 41.5 in².
        let area = brace.hollow().map_or(0.0, |hollow| hollow.area().to_square_inches());
        assert!((area - 41.5).abs() < 0.3, "{area}");
        assert!(shape(36.0, 36.0).hollow().is_none());
    }

    #[test]
    fn both_ends_are_alike_when_the_legs_are() {
        let brace = shape(30.0, 30.0);
        let length = brace.long_edge();
        for (a, b) in brace.post_tenon().corners.iter().zip(brace.beam_tenon().corners) {
            check(a.x - (length - b.x), 0.0);
            check(a.y - b.y, 0.0);
        }
    }
}

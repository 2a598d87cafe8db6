//! The beam line as a plane frame.
//!
//! ```text
//!   z      b ─────── h ──┬── s ──── h ─────── b     b beam over a post, h head of a brace, s scarf
//!   |      ┃      ╱           ╲      ┃     the beam on its centre line
//!   |      t    ╱               ╲    t     t post's shoulder: a rigid link hangs from b, the post is hinged to it
//!   |      ┃  ╱                   ╲  ┃
//!   |      k                         k     k foot of the braces, on the post's centre line
//!   |      ┃                         ┃
//!   +--x   f                         f     f foot: pinned
//! ```
//! x along the beam from its left end, z up from the datum. A brace acts on its centre line, pinned at both ends.
use crate::design::Shape;
use crate::frame::{ActsIn, Frame, Inertia, Member, Support};
use crate::geometry::{Brace, BraceLine, PostShape, ScarfReport};
use crate::project::{BraceJoint, Project, Side};
use crate::units::{Length, Stress};
use crate::wording::length;

/// How the braces are taken to act. Green braces go slack, and the answer changes a great deal with it, so several are
/// worked and the worst of them counts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BraceModel {
    /// Pinned and rigid: what is least kind to posts and braces.
    Rigid,
    /// With joints as stiff as the project says, times a factor.
    Sprung(f64),
    /// They carry no weight: what is least kind to the beam. The wall holds the line upright meanwhile.
    Slack,
    /// Only those that are pushed act, with their joints' stiffness: for loads along the wall.
    PushOnly,
}

impl BraceModel {
    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Rigid => "braces rigid",
            Self::Sprung(_) => "braces with soft joints",
            Self::Slack => "braces slack",
            Self::PushOnly => "pushed braces only",
        }
    }
}

/// Stiffness of the wood in the frame.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stiffnesses {
    /// Beam, E'.
    pub beam: Stress,
    /// Posts, E'.
    pub post: Stress,
    /// Braces, E'.
    pub brace: Stress,
}

/// A stretch of the beam between two nodes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stretch {
    /// Its member in the frame.
    pub member: usize,
    /// Its left end along the beam.
    pub from: Length,
    /// Its right end along the beam.
    pub to: Length,
}

/// One post in the frame.
#[derive(Clone, Debug, PartialEq)]
pub struct PostParts {
    /// Node of its foot.
    pub foot: usize,
    /// Node of the beam over it.
    pub beam: usize,
    /// Its members, from the foot up.
    pub members: Vec<usize>,
    /// Foot to shoulder.
    pub height: Length,
    /// Foot to the braces' centre lines; nothing where it has no brace.
    pub knee: Option<Length>,
}

/// The frame with what its parts are.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BeamModel {
    /// The frame.
    pub frame: Frame,
    /// Stretches of the beam, left to right.
    pub beam: Vec<Stretch>,
    /// Posts, left to right.
    pub posts: Vec<PostParts>,
    /// For each brace the two edges of its pocket in the beam: the stretch and the place in it.
    pub pockets: Vec<[(usize, Length); 2]>,
    /// For each scarf the end of its lap where the upper half leaves its piece: the stretch, the place in it, and whether that is
    /// the lap's right end.
    pub laps: Vec<(usize, Length, bool)>,
    /// For each brace its members: none where it carries nothing, two where push and pull are unlike.
    pub braces: Vec<Vec<usize>>,
}

/// Two places nearer than this are one node.
const SAME_PLACE: Length = Length::inches(0.05);

/// The beam, cut at its scarfs, on its posts: what the frame is for each model of its braces.
pub struct Unbraced<'a> {
    builder: Builder<'a>,
    nodes: Row,
    model: BeamModel,
    /// The members that end in a scarf's hinge.
    cut: Vec<usize>,
}

impl<'a> Unbraced<'a> {
    /// Builds it.
    #[must_use]
    pub fn new(project: &'a Project, shape: &'a Shape, stiffness: &'a Stiffnesses) -> Self {
        let builder = Builder { project, shape, stiffness, line: BraceLine::of(&project.frame) };
        let mut model = BeamModel::default();
        let (nodes, cut) = builder.add_beam(&mut model);
        model.pockets = builder.pockets(&model.beam);
        model.laps = builder.laps(&model.beam);
        builder.add_posts(&mut model, &nodes);
        Self { builder, nodes, model, cut }
    }

    /// The frame with its braces; without `hinged` the beam is one stick.
    #[must_use]
    pub fn with(&self, braces: BraceModel, hinged: bool) -> BeamModel {
        let mut model = self.model.clone();
        if !hinged {
            self.cut.iter().for_each(|member| model.frame.members[*member].hinge_to = false);
        }
        self.builder.add_braces(&mut model, &self.nodes, braces);
        if braces == BraceModel::Slack {
            let held = self.nodes.first().map_or(0, |(_, node)| *node);
            model.frame.supports.push(Support { node: held, x: true, z: false, rotation: false });
        }
        model
    }
}

struct Builder<'a> {
    project: &'a Project,
    shape: &'a Shape,
    stiffness: &'a Stiffnesses,
    line: BraceLine,
}

/// Nodes of the beam with their places, left to right.
type Row = Vec<(Length, usize)>;

fn nearest(nodes: &Row, x: Length) -> usize {
    let far = |place: Length| (place - x).abs().to_inches();
    nodes.iter().min_by(|a, b| far(a.0).total_cmp(&far(b.0))).map_or(0, |(_, node)| *node)
}

/// The first stretch that holds a place, and where on it; the last one where none does.
fn place_in(beam: &[Stretch], x: Length, holds: impl Fn(&Stretch) -> bool) -> (usize, Length) {
    let index = beam.iter().position(holds).unwrap_or(beam.len().saturating_sub(1));
    let from = beam.get(index).map_or(Length::ZERO, |stretch| stretch.from);
    (index, (x - from).max(Length::ZERO))
}

impl Builder<'_> {
    fn axis(&self) -> Length {
        self.shape.line.beam_seat - self.project.frame.timbers.beam.sawn.depth / 2.0
    }

    /// Its nodes, and the members that end in a hinge.
    fn add_beam(&self, model: &mut BeamModel) -> (Row, Vec<usize>) {
        let shape = self.shape;
        let mut places = vec![Length::ZERO, self.project.frame.beam_length];
        places.extend(shape.posts.iter().map(PostShape::middle));
        places.extend(shape.braces.iter().map(|brace| self.line.head_x(brace, &shape.posts)));
        places.extend(shape.beam.scarfs.iter().map(|scarf| scarf.place.centre));
        places.retain(|x| *x >= Length::ZERO && *x <= self.project.frame.beam_length);
        crate::units::sort_lengths(&mut places);
        places.dedup_by(|a, b| (*a - *b).abs() < SAME_PLACE);
        let axis = self.axis();
        let row: Row = places.iter().map(|x| (*x, model.frame.add_node(self.beam_name(*x, "at"), *x, axis))).collect();
        let section = self.project.frame.timbers.beam.sawn;
        let inertia = Inertia::rectangle(section.breadth, section.depth);
        let mut cut = Vec::new();
        for pair in row.windows(2) {
            let [(from, a), (to, b)] = *pair else { continue };
            let is_hinge = shape.beam.scarfs.iter().any(|scarf| (scarf.place.centre - to).abs() < SAME_PLACE);
            let stick =
                Member::elastic(self.beam_name(from, "from"), (a, b), self.stiffness.beam, section.area(), inertia);
            let member = model.frame.add_member(stick.hinged(false, is_hinge));
            model.beam.push(Stretch { member, from, to });
            cut.extend(is_hinge.then_some(member));
        }
        (row, cut)
    }

    /// `B2 from 7′ 6″`, in the user's units.
    fn beam_name(&self, x: Length, word: &str) -> String {
        let scarfs = self.shape.beam.scarfs.iter();
        let piece = 1 + scarfs.filter(|scarf| scarf.place.centre <= x + SAME_PLACE).count();
        format!("B{piece} {word} {}", length(x, self.project.units))
    }

    /// Of a right end the place just past it, of a left end that just before.
    fn laps(&self, beam: &[Stretch]) -> Vec<(usize, Length, bool)> {
        let end = |scarf: &ScarfReport| {
            let (x, is_right) = (scarf.upper_root(), scarf.place.lower == Side::Left);
            let holds = |stretch: &Stretch| if is_right { x < stretch.to } else { x <= stretch.to };
            let (stretch, place) = place_in(beam, x, holds);
            (stretch, place, is_right)
        };
        self.shape.beam.scarfs.iter().map(end).collect()
    }

    fn pockets(&self, beam: &[Stretch]) -> Vec<[(usize, Length); 2]> {
        let place = |x: Length| place_in(beam, x, |stretch| x <= stretch.to);
        let edges = |brace: &Brace| {
            let (low, high) = brace.on_beam(&brace.beam_pocket(&self.project.frame));
            [place(low), place(high)]
        };
        self.shape.braces.iter().map(edges).collect()
    }

    fn add_posts(&self, model: &mut BeamModel, row: &Row) {
        let section = self.project.frame.timbers.post.sawn;
        let inertia = Inertia::rectangle(section.depth, section.breadth);
        let knee_height = self.axis() - self.line.foot;
        for post in &self.shape.posts {
            let mark = format!("post P{}", post.number);
            let x = post.middle();
            let has_brace = self.shape.braces.iter().any(|brace| brace.post == post.number);
            let knee = has_brace.then_some(knee_height).filter(|z| *z > post.foot && *z < post.shoulder);
            let foot = model.frame.add_node(format!("foot of {mark}"), x, post.foot);
            let middle = knee.map(|z| model.frame.add_node(format!("knee of {mark}"), x, z));
            let top = model.frame.add_node(format!("shoulder of {mark}"), x, post.shoulder);
            let beam = nearest(row, x);
            let stick = |part: &str, ends, hinge| {
                let stick =
                    Member::elastic(format!("{mark}{part}"), ends, self.stiffness.post, section.area(), inertia);
                stick.hinged(false, hinge)
            };
            let members = match middle {
                Some(knee) => {
                    let lower = model.frame.add_member(stick("", (foot, knee), false));
                    vec![lower, model.frame.add_member(stick(", head", (knee, top), true))]
                }
                None => vec![model.frame.add_member(stick("", (foot, top), true))],
            };
            model.frame.add_member(Member::rigid(format!("shoulder of {mark}"), (beam, top)));
            model.frame.supports.push(Support::pinned(foot));
            let knee = knee.map(|z| z - post.foot);
            model.posts.push(PostParts { foot, beam, members, height: post.body(), knee });
        }
    }

    fn add_braces(&self, model: &mut BeamModel, row: &Row, braces: BraceModel) {
        let section = self.project.frame.timbers.brace.sawn;
        let inertia = Inertia::rectangle(section.breadth, section.depth);
        let BraceJoint { pushed, pulled } = self.project.fixings.brace_joint;
        for brace in &self.shape.braces {
            let head = nearest(row, self.line.head_x(brace, &self.shape.posts));
            let parts = model.posts.get(brace.post.saturating_sub(1)).filter(|post| post.knee.is_some());
            let Some(foot) = parts.and_then(|post| model.frame.members.get(post.members[0])).map(|lower| lower.to)
            else {
                model.braces.push(Vec::new());
                continue;
            };
            let stick = |how: &str| {
                let name = format!("brace {}{how}", brace.mark());
                let stick = Member::elastic(name, (foot, head), self.stiffness.brace, section.area(), inertia);
                stick.hinged(true, true)
            };
            let sticks = match braces {
                BraceModel::Slack => Vec::new(),
                BraceModel::Rigid => vec![stick("")],
                BraceModel::PushOnly => vec![stick("").acting(ActsIn::Compression).sprung(pushed)],
                BraceModel::Sprung(factor) => vec![
                    stick(", pushed").acting(ActsIn::Compression).sprung(pushed.times(factor)),
                    stick(", pulled").acting(ActsIn::Tension).sprung(pulled.times(factor)),
                ],
            };
            let members = sticks.into_iter().map(|stick| model.frame.add_member(stick)).collect();
            model.braces.push(members);
        }
    }
}

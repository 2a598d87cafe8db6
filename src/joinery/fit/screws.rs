//! Screws of purlins that end on one rafter: too little wood for them, in each other's way, or out of the rafter.
use super::super::body::StickBody;
use super::super::butt_screws::{ButtScrews, Driven, butt_screws, driven};
use super::TOUCH;
use super::alike::{Found, told_together};
use super::clash::Clash;
use crate::design::Shape;
use crate::project::Project;
use crate::solid::{Convex, Plane, Skin, Solid, Vector};
use crate::units::{Length, UnitSystem};
use crate::wording::length;

/// Everything that is wrong with the screws at butts.
pub(super) fn screws_at_butts(project: &Project, shape: &Shape, bodies: &[StickBody]) -> Vec<Clash> {
    let Some(screws) = butt_screws(project) else { return Vec::new() };
    let body = |mark: &str| bodies.iter().find(|body| body.mark == mark);
    let mut found = Vec::new();
    for butt in shape.purlins.iter().flat_map(|row| driven(project, shape, row, &screws)) {
        let Some(first) = butt.first() else { continue };
        let (piece, rafter) = (body(&first.piece), body(&format!("R{}", first.rafter)));
        let Some((piece, rafter)) = piece.zip(rafter) else { continue };
        let here = Butt { project, screws: &screws, all: &butt, piece, rafter };
        found.extend([here.short(), here.meet(), here.come_out()].into_iter().flatten());
    }
    told_together(found, "butts of purlins")
}

struct Butt<'a> {
    project: &'a Project,
    screws: &'a ButtScrews,
    all: &'a [Driven],
    /// The piece on the left.
    piece: &'a StickBody,
    rafter: &'a StickBody,
}

impl Butt<'_> {
    fn say(&self, value: Length) -> String {
        length(value.round_up_to(self.step()), self.project.units)
    }

    fn step(&self) -> Length {
        if self.project.units == UnitSystem::Metric { Length::millimetres(1.0) } else { Length::inches(0.0625) }
    }

    fn found(&self, tools: &[Convex], says: String) -> Found {
        let at = Solid::new(tools.to_vec()).centre().unwrap_or(Vector::ZERO);
        let right = self.all.iter().map(|screw| &screw.piece).find(|piece| **piece != self.piece.mark);
        let with = right.map_or_else(String::new, |right| format!("with {right} "));
        Found {
            stick: self.piece.mark.clone(),
            other: Some(self.rafter.mark.clone()),
            at,
            from_zero: self.piece.from_zero(at),
            what: "the butt",
            which: format!("{with}on {}", self.rafter.mark),
            says,
            clears: None,
        }
    }

    /// Half of the rafter's breadth is less than the end and the rafter's side ask together.
    fn short(&self) -> Option<Found> {
        let ButtScrews { screw, bearing, room, .. } = self.screws;
        let tools = &self.all.first()?.above;
        self.screws.is_short().then(|| {
            let says = format!(
                "each piece lies only {} on its rafter; its {}, bored first, asks {} to the butt's end and {} to the rafter's \
                 side. A rafter {} wide, or doubled there, clears it; or let the pieces pass each other side by side, or slant \
                 the screws toward the rafter's middle.",
                length(*bearing, self.project.units),
                screw.name,
                self.say(room.end_bored),
                self.say(room.edge),
                self.say(self.screws.asked() * 2.0)
            );
            self.found(tools, says)
        })
    }

    /// Two screws in the same wood.
    fn meet(&self) -> Option<Found> {
        let tools = |screw: &Driven| Solid::new([screw.above.clone(), screw.below.clone()].concat());
        let shares = |one: &Driven, two: &Driven| tools(one).shared(&tools(two)).volume().to_cubic_inches() > TOUCH;
        let pairs = self
            .all
            .iter()
            .enumerate()
            .flat_map(|(index, one)| self.all[index + 1..].iter().map(move |two| (one, two)));
        let (one, two) = pairs.into_iter().find(|(one, two)| shares(one, two))?;
        let (apart, what) = if one.piece == two.piece {
            let breadth = self.project.frame.timbers.purlin.sawn.breadth;
            (breadth / self.screws.from_lower_edge.len() as f64, "fewer or thinner ones clear it")
        } else {
            (self.screws.from_end * 2.0, "stagger them, or double the rafter there")
        };
        let says = format!(
            "two screws stand {} apart from centre to centre and are {} thick: they meet; {what}.",
            length(apart, self.project.units),
            length(self.screws.screw.diameter, self.project.units)
        );
        Some(self.found(&one.above, says))
    }

    /// A point that comes out of the rafter, underneath or in one of its notches. Its sides are [`Self::short`]'s matter.
    fn come_out(&self) -> Option<Found> {
        if self.screws.is_short() {
            return None;
        }
        let out = |screw: &Driven, shorter: f64| {
            let mut left = Solid::new(shortened(screw, shorter));
            for part in self.rafter.wood.bodies() {
                left.cut(part);
            }
            left.volume().to_cubic_inches()
        };
        let screw = self.all.iter().find(|screw| out(screw, 0.0) > TOUCH)?;
        let (mut low, mut high) = (0.0, self.project.fixings.purlin.length.to_inches());
        while high - low > 1.0 / 256.0 {
            let middle = f64::midpoint(low, high);
            if out(screw, middle) > TOUCH { low = middle } else { high = middle }
        }
        let says =
            format!("its screws come out of the rafter; {} shorter they do not.", self.say(Length::inches(high)));
        Some(self.found(&screw.below, says))
    }
}

/// What stands in the rafter of a screw that is so much shorter.
fn shortened(screw: &Driven, by: f64) -> Vec<Convex> {
    let middle = |tools: &[Convex]| Solid::new(tools.to_vec()).centre().unwrap_or(Vector::ZERO);
    let Some(way) = (middle(&screw.below) - middle(&screw.above)).unit() else { return Vec::new() };
    let reach = |body: &Convex| body.corners().map(|corner| corner.dot(way)).fold(f64::NEG_INFINITY, f64::max);
    let point = screw.below.iter().map(reach).fold(f64::NEG_INFINITY, f64::max);
    let end = Plane { normal: way, offset: point - by };
    screw.below.iter().filter_map(|body| body.cut(&end, Skin::End).0).collect()
}

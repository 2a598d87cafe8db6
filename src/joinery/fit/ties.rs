//! Holes bored for ties that stand in another joint's wood, nearer an end, a side or each other than the rules of fasteners
//! let them, under a rafter, or beside the seat they are bored for.
//!
//! The makers' loads are for wood that is split by nothing, so the full distances are asked (NDS 2015 12.5.1, from memory): to
//! an end the load pulls toward seven diameters, five in hardwood; from one to the next four; to a side one and a half, at a
//! post's foot four, as it is pushed any way. Fasteners thinner than ¼ in have none. A bolt is 1/16 in thinner than its hole
//! (12.1.3, from memory); screws are taken as thick as theirs. To another joint's cut one diameter is asked (common practice).
use super::super::body::{Cut, CutKind, StickBody};
use super::super::tie_holes::{TieHole, TieJoint, post_holes, rafter_holes, scarf_holes};
use super::alike::{Found, told_together};
use super::clash::{Clash, shared_by, smallest_move};
use crate::design::Shape;
use crate::fastening::{Direction, Distance, Edge, EndLoad, Placing, RowSpacing, distances};
use crate::materials::{Face, species};
use crate::project::{Project, Role};
use crate::solid::{Convex, between};
use crate::units::{Length, UnitSystem};
use crate::wording::length;

/// Less wood than this between two cuts is none, in inches.
const TOUCHES: f64 = 1.0 / 128.0;

/// Everything that is wrong with the holes of ties.
pub(super) fn tie_holes(project: &Project, shape: &Shape, bodies: &[StickBody]) -> Vec<Clash> {
    let mut found = Vec::new();
    for body in bodies {
        let number = body.mark.get(1..).and_then(|number| number.parse::<usize>().ok());
        let index = number.unwrap_or_default().wrapping_sub(1);
        let holes = match body.role {
            Role::Post => shape.posts.get(index).map(|post| post_holes(project, post)),
            Role::Beam => shape.beam.pieces.get(index).map(|piece| scarf_holes(project, shape, piece)),
            Role::Rafter => Some(rafter_holes(project, &shape.rafter)),
            _ => None,
        };
        for hole in holes.unwrap_or_default() {
            let Some(cut) = body.cuts.iter().find(|cut| cut.what == hole.what) else { continue };
            Here { project, shape, body, cut, hole: &hole }.judge(&mut found);
        }
    }
    told_together(found, "holes")
}

/// One hole in its stick.
struct Here<'a> {
    project: &'a Project,
    shape: &'a Shape,
    body: &'a StickBody,
    cut: &'a Cut,
    hole: &'a TieHole,
}

impl Here<'_> {
    fn say(&self, value: Length) -> String {
        length(value, self.project.units)
    }

    /// Rounded up to what a rule shows, so that a move as told is enough.
    fn up(&self, value: Length) -> String {
        let metric = self.project.units == UnitSystem::Metric;
        let step = if metric { Length::millimetres(1.0) } else { Length::inches(0.0625) };
        self.say(value.round_up_to(step))
    }

    fn judge(&self, found: &mut Vec<Found>) {
        found.extend(self.meets());
        found.extend(self.too_near());
        found.extend(self.beside_its_seat());
        found.extend(self.under_a_rafter());
    }

    /// How thick what goes through it is.
    fn fastener(&self) -> Length {
        let room = if self.hole.joint == TieJoint::PostBase { 1.0 / 16.0 } else { 0.0 };
        self.hole.diameter - Length::inches(room)
    }

    fn found(&self, says: String, clears: Option<Length>) -> Found {
        let (before, rest) = self.hole.what.split_once("hole ").unwrap_or_default();
        let scarf = before.strip_suffix(", ").map_or_else(String::new, |scarf| format!(" in {scarf}"));
        let middle = self.cut.tools.iter().map(|tool| tool.within()).next();
        let at = middle.map_or(self.body.zero, |within| (within.low + within.high) * 0.5);
        Found {
            stick: self.body.mark.clone(),
            other: None,
            at,
            from_zero: self.hole.near,
            what: "the hole",
            which: format!("number {rest}{scarf}"),
            says,
            clears,
        }
    }

    fn moved(&self, by: Length) -> String {
        let way = match (self.hole.joint == TieJoint::PostBase, by > Length::ZERO) {
            (true, true) => "lower",
            (true, false) => "higher",
            (false, true) => "away from the stick's zero",
            (false, false) => "toward the stick's zero",
        };
        format!("moved {} {way} clears it", self.up(by.abs()))
    }

    /// The nearest cut of another joint, where it has wood of this hole or lies nearer than one diameter.
    fn meets(&self) -> Option<Found> {
        let least = self.hole.diameter.to_inches() - 1e-6;
        let mut worst: Option<(f64, &Cut)> = None;
        for other in self.body.cuts.iter().filter(|other| self.is_of_another_joint(other)) {
            let is_shared = shared_by(&self.cut.tools, &other.tools).is_some();
            let wood = if is_shared { 0.0 } else { apart(&self.cut.tools, &other.tools) };
            if wood < worst.map_or(least, |(wood, _)| wood) {
                worst = Some((wood, other));
            }
        }
        let (wood, other) = worst?;
        let clear = |a: &Convex, b: &Convex| a.shared(b).is_none() && between(a, b).0 >= least;
        let clears = smallest_move(self.body, other, self.cut, clear);
        let mut says = if wood > TOUCHES {
            let (wood, least) = (self.say(Length::inches(wood)), self.say(self.hole.diameter));
            format!("only {wood} of wood to {}; {least} is the least", other.what)
        } else {
            format!("it meets {} in the same wood", other.what)
        };
        says.push_str(&clears.map_or_else(|| ".".to_owned(), |by| format!("; {}.", self.moved(by))));
        Some(Found { other: other.mate.clone(), ..self.found(says, clears) })
    }

    fn is_of_another_joint(&self, other: &Cut) -> bool {
        match other.kind {
            // Its own row is a matter of spacing; in a lap both halves have it, and the one whose tip it is speaks.
            CutKind::Bored => self.hole.is_at_end && row_of(&other.what) != row_of(&self.cut.what),
            // It goes through its own joint, and the ends of a rafter have distances of their own.
            CutKind::Lap | CutKind::BirdsMouth => other.mate != self.cut.mate,
            CutKind::Shaping => self.body.role != Role::Rafter,
            CutKind::Chamfer => false,
            CutKind::Housing | CutKind::Mortise | CutKind::PegHole => true,
        }
    }

    /// To the end, to the sides and to the next hole of its row.
    fn too_near(&self) -> Vec<Found> {
        let fastener = self.fastener();
        let wood = species(&self.project.frame.species);
        let toward = EndLoad::toward_end(wood.is_some_and(|wood| wood.is_hardwood));
        let (end, way) = self.end().unzip();
        // On the middle of its face, it is as far from both sides.
        let side = self.hole.across;
        let is_foot = self.hole.joint == TieJoint::PostBase;
        let speaks = self.hole.is_at_end || !matches!(self.hole.joint, TieJoint::Scarf(_));
        let apart = self.apart().filter(|_| speaks && self.hole.index == 1);
        let placing = Placing {
            diameter: fastener,
            direction: if is_foot { Direction::Across } else { Direction::Along },
            bearing_length: fastener,
            end: end.map(|end| (end, toward)),
            edge: Some(Edge { loaded: side, unloaded: side }),
            in_row: apart.map(|spacing| RowSpacing { spacing, attached_needs: Some(fastener * 4.0) }),
            between_rows: None,
        };
        let short = distances(&placing).into_iter().filter(|one| one.actual < one.full - Length::inches(1e-6));
        let mut told: Vec<Found> = Vec::new();
        for Distance { what, actual, full, .. } in short {
            // At a foot the loaded edge asks more than the other one, which is as near.
            if what == "unloaded edge distance" {
                continue;
            }
            let by = full - actual;
            let (to, clears) = match what {
                "end distance" => ("from its centre to the end", way.map(|way| by * way)),
                "spacing in the row" => ("from the hole before it", Some(by * self.on())),
                _ => ("from its centre to the side", None),
            };
            let way_out = clears.map_or_else(|| "take a thinner one".to_owned(), |by| self.moved(by));
            let says =
                format!("only {} {to}; {} is the least; {way_out}.", self.say(actual.max(Length::ZERO)), self.up(full));
            told.push(self.found(says, clears));
        }
        told
    }

    /// Distance to the end its load pulls it toward, and which way along the stick leads off that end.
    fn end(&self) -> Option<(Length, f64)> {
        let (near, rafter) = (self.hole.near, &self.shape.rafter);
        let is_first = self.hole.index == 0;
        match self.hole.joint {
            TieJoint::PostBase => is_first.then_some((self.hole.measured, -1.0)),
            TieJoint::Scarf(_) => (is_first && self.hole.is_at_end).then_some((self.hole.measured, self.on())),
            TieJoint::RafterHead => Some((near - rafter.head.0.x.max(rafter.head.1.x), 1.0)),
            TieJoint::RafterSeat => Some((rafter.tail.0.x.min(rafter.tail.1.x) - near, -1.0)),
        }
    }

    /// Which way the row runs along the stick.
    fn on(&self) -> f64 {
        let middle = (self.scarf_middle()).unwrap_or_default();
        match self.hole.joint {
            TieJoint::Scarf(_) if self.hole.near < middle => 1.0,
            _ => -1.0,
        }
    }

    /// The middle of the lap the hole is in, from the stick's zero.
    fn scarf_middle(&self) -> Option<Length> {
        let TieJoint::Scarf(number) = self.hole.joint else { return None };
        let scarf = self.shape.beam.scarfs.get(number.checked_sub(1)?)?;
        let piece = self.shape.beam.pieces.iter().find(|piece| self.body.mark == format!("B{}", piece.number))?;
        Some(scarf.place.centre - piece.start)
    }

    /// From one of its row to the next.
    fn apart(&self) -> Option<Length> {
        let fixings = &self.project.fixings;
        let tie = match self.hole.joint {
            TieJoint::PostBase => &fixings.post_base,
            TieJoint::Scarf(_) => &fixings.scarf,
            TieJoint::RafterHead => &fixings.rafter_head,
            TieJoint::RafterSeat => &fixings.rafter_seat,
        };
        tie.bores.map(|bores| bores.apart)
    }

    /// It comes out of the rafter where nothing lies under it.
    fn beside_its_seat(&self) -> Option<Found> {
        let rafter = &self.shape.rafter;
        let (notch, under) = match self.hole.joint {
            TieJoint::RafterHead => (&rafter.ledger, "the ledger"),
            TieJoint::RafterSeat => (&rafter.beam, "the beam"),
            TieJoint::PostBase | TieJoint::Scarf(_) => return None,
        };
        let half = self.hole.diameter / 2.0;
        let (low, high) = (notch.seat_end.x + half, notch.corner.x - half);
        if low > high {
            return Some(self.found(format!("it is wider than the seat on {under}; take a thinner one."), None));
        }
        let by = self.hole.near.clamp(low, high) - self.hole.near;
        (by.abs() > Length::inches(1e-6)).then(|| {
            self.found(format!("it comes out beside the seat and misses {under}; {}.", self.moved(by)), Some(by))
        })
    }

    /// A rafter stands on the beam over it.
    fn under_a_rafter(&self) -> Option<Found> {
        if self.hole.face != Face::Top || !matches!(self.hole.joint, TieJoint::Scarf(_)) {
            return None;
        }
        let x = self.cut.tools.first().map(|tool| tool.within()).map(|within| (within.low.x + within.high.x) / 2.0)?;
        let room = (self.project.frame.timbers.rafter.ordered.breadth + self.hole.diameter) / 2.0;
        let off = |rafter: &Length| Length::inches(x) - *rafter;
        let (index, over) = self.shape.rafters.iter().enumerate().find(|(_, rafter)| off(rafter).abs() < room)?;
        let by = if off(over) < Length::ZERO { -(room + off(over)) } else { room - off(over) };
        let says = format!("R{} stands on it: sink its head, or {}.", index + 1, self.moved(by));
        Some(Found { other: Some(format!("R{}", index + 1)), ..self.found(says, Some(by)) })
    }
}

/// The row a hole is of: what is said of it but its number.
fn row_of(what: &str) -> (&str, &str) {
    let (before, rest) = what.split_once("hole ").unwrap_or((what, ""));
    (before, rest.split_once(' ').map_or("", |(_, rest)| rest))
}

/// The least wood between two cuts.
fn apart(one: &[Convex], two: &[Convex]) -> f64 {
    let pairs = one.iter().flat_map(|a| two.iter().map(move |b| between(a, b).0));
    pairs.fold(f64::INFINITY, f64::min)
}

//! Fixings of the ledger that stand in a splice, under a rafter's heel, or nearer an end, an edge or each other than the rules of
//! fasteners let them.
//!
//! The distances are those of the checks of strength, for rafters that press down: what asks them is always there. Heads stand
//! out by one width of the fixing, its washer with them (common practice).
use super::super::body::StickBody;
use super::TOUCH;
use super::alike::{Found, told_together};
use super::clash::Clash;
use crate::design::Shape;
use crate::fastening::{Distance, Edge, Fastener, FastenerKind, distances};
use crate::geometry::{
    FixingPlace, LedgerPiece, fixes_both_halves, fixing_places, heights_within, ledger_hole, placing_in_ledger,
};
use crate::project::{LedgerFixings, Project, Role};
use crate::solid::{Solid, Vector, cylinder};
use crate::units::{Length, UnitSystem};
use crate::wording::length;

/// Everything that is wrong with where the ledger's fixings stand.
pub(super) fn ledger_fixings(project: &Project, shape: &Shape, bodies: &[StickBody]) -> Vec<Clash> {
    let fixings = &project.fixings.ledger;
    let (Some(one), Some(hole)) = (fixings.chosen(), ledger_hole(fixings)) else { return Vec::new() };
    let rafters: Vec<&StickBody> = bodies.iter().filter(|body| body.role == Role::Rafter).collect();
    let row = Row { project, fixings, one: &one, hole, top: shape.line.ledger_seat };
    let places = fixing_places(project);
    let mut found = Vec::new();
    for piece in &shape.ledger {
        found.extend(places.iter().flat_map(|place| row.in_piece(piece, place)));
    }
    found.extend(row.too_close(shape, &places));
    found.extend(places.iter().filter_map(|place| row.under_a_heel(shape, place, &rafters)));
    told_together(found, "fixings")
}

/// What is the same for every fixing.
struct Row<'a> {
    project: &'a Project,
    fixings: &'a LedgerFixings,
    one: &'a Fastener,
    hole: Length,
    top: Length,
}

impl Row<'_> {
    fn units(&self) -> UnitSystem {
        self.project.units
    }

    fn say(&self, value: Length) -> String {
        length(value, self.units())
    }

    /// Rounded up to what a rule shows, so that a move as told is enough.
    fn step(&self) -> Length {
        if self.units() == UnitSystem::Metric { Length::millimetres(1.0) } else { Length::inches(0.0625) }
    }

    fn depth(&self) -> Length {
        self.project.frame.timbers.ledger.sawn.depth
    }

    fn centre(&self, place: &FixingPlace) -> Vector {
        let sawn = self.project.frame.timbers.ledger.sawn;
        let middle = self.project.frame.ledger_packing + sawn.breadth / 2.0;
        Vector::new(place.x, middle, self.top - sawn.depth + place.up)
    }

    fn found(&self, piece: &LedgerPiece, place: &FixingPlace, says: String) -> Found {
        Found {
            stick: format!("L{}", piece.number),
            other: None,
            at: self.centre(place),
            from_zero: place.x - piece.start,
            what: "the fixing",
            which: format!("at the {}", place.name(self.fixings)),
            says,
            clears: None,
        }
    }

    /// One fixing in one piece.
    fn in_piece(&self, piece: &LedgerPiece, place: &FixingPlace) -> Vec<Found> {
        let half = self.hole / 2.0;
        let is_out = place.x <= piece.start - half || place.x >= piece.end + half;
        // A row that stands out of the ledger is told with its own field.
        if is_out || place.up <= Length::ZERO || place.up >= self.depth() {
            return Vec::new();
        }
        let lap = self.project.frame.ledger_lap;
        let middle = self.depth() / 2.0;
        let is_left = piece.left_splice && place.x < piece.start + lap;
        let is_right = piece.right_splice && place.x > piece.end - lap;
        let (low, high) = match (is_left, is_right) {
            (false, false) => (Length::ZERO, self.depth()),
            (true, _) => (middle, self.depth()),
            (_, true) => (Length::ZERO, middle),
        };
        if (is_left || is_right) && (place.up - middle).abs() < half {
            // Both pieces have it: the left one speaks.
            return is_right.then(|| self.in_the_splice(piece, place)).into_iter().collect();
        }
        if place.up < low || place.up > high {
            return Vec::new();
        }
        let mut found: Vec<Found> = self.edges(piece, place, (low, high)).into_iter().collect();
        found.extend(self.end(piece, place));
        found
    }

    /// Bored on the line between two halves.
    fn in_the_splice(&self, piece: &LedgerPiece, place: &FixingPlace) -> Found {
        let other = format!("L{}", piece.number + 1);
        let mut says = format!("it stands on the line between the halves of the splice with {other} and holds neither");
        let middle = self.depth() / 2.0;
        let moved =
            [(Length::ZERO, middle), (middle, self.depth())].into_iter().filter_map(|wood| self.move_into(place, wood));
        let moved = moved.min_by(|a, b| a.abs().to_inches().total_cmp(&b.abs().to_inches()));
        if fixes_both_halves(self.fixings, self.depth()) {
            says.push_str("; the other rows hold both: leave it out there.");
        } else if let Some(by) = moved {
            says.push_str(&format!("; {}, and another row in the other half.", self.row_moved(by)));
        } else {
            let lap = (piece.end - self.project.frame.ledger_lap, piece.end);
            let room = self.one.diameter * 2.0;
            let by = (place.x - lap.0 + room).min(lap.1 - place.x + room);
            says.push_str(&format!("; the splice moved {} along clears it.", self.say(by.round_up_to(self.step()))));
        }
        Found { other: Some(other), ..self.found(piece, place, says) }
    }

    /// How far its row must go up to keep the edges of that wood; nothing where no height does.
    fn move_into(&self, place: &FixingPlace, wood: (Length, Length)) -> Option<Length> {
        let (low, high) = heights_within(self.fixings, wood)?;
        (low <= high).then(|| place.up.clamp(low, high) - place.up)
    }

    fn row_moved(&self, by: Length) -> String {
        let way = if by > Length::ZERO { "higher" } else { "lower" };
        format!("its row {} {way} clears it", self.say(by.abs().round_up_to(self.step())))
    }

    /// Short of the wood's top or bottom, which in a lap is the line between its halves.
    fn edges(&self, piece: &LedgerPiece, place: &FixingPlace, (low, high): (Length, Length)) -> Option<Found> {
        let edge = Edge { loaded: high - place.up, unloaded: place.up - low };
        let short = self.shorts(None, edge).into_iter().find(|short| short.what.ends_with("edge distance"))?;
        let is_over = short.what == "loaded edge distance";
        let whose = if high - low < self.depth() { "the half it is in" } else { "the ledger" };
        let mut says = format!(
            "only {} from its centre to the {} of {whose}; {} is the least",
            self.say(short.actual),
            if is_over { "top" } else { "bottom" },
            self.say(short.least)
        );
        match self.move_into(place, (low, high)) {
            Some(by) => says.push_str(&format!("; {}.", self.row_moved(by))),
            None => says.push_str("; no height in this wood keeps both its edges: take a thinner one."),
        }
        Some(self.found(piece, place, says))
    }

    /// Short of the end of its piece.
    fn end(&self, piece: &LedgerPiece, place: &FixingPlace) -> Option<Found> {
        let (before, after) = (place.x - piece.start, piece.end - place.x);
        let edge = Edge { loaded: self.depth(), unloaded: self.depth() };
        let short =
            self.shorts(Some(before.min(after)), edge).into_iter().find(|short| short.what == "end distance")?;
        let by = short.least - short.actual;
        let (way, clears) = if before < after { ("away from", by) } else { ("toward", -by) };
        let says = format!(
            "only {} from its centre to the end; {} is the least; moved {} {way} the stick's zero clears it.",
            self.say(short.actual.max(Length::ZERO)),
            self.say(short.least),
            self.say(by.round_up_to(self.step()))
        );
        Some(Found { clears: Some(clears), ..self.found(piece, place, says) })
    }

    fn shorts(&self, end: Option<Length>, edge: Edge) -> Vec<Distance> {
        let placing = placing_in_ledger(self.fixings, self.one.diameter, self.bearing(), (end, edge));
        distances(&placing).into_iter().filter(Distance::is_short).collect()
    }

    /// The lesser of what it bears on in the ledger and in the wall's post.
    fn bearing(&self) -> Length {
        let (side, packing) = (self.project.frame.timbers.ledger.sawn.breadth, self.project.frame.ledger_packing);
        let in_wall = match self.one.kind {
            FastenerKind::Bolt => self.fixings.wall_depth,
            _ => (self.fixings.length - side - packing).min(self.fixings.wall_depth),
        };
        side.min(in_wall.max(Length::inches(0.1)))
    }

    /// Rows and columns nearer to each other than the rules let them: the same at every post.
    fn too_close(&self, shape: &Shape, places: &[FixingPlace]) -> Vec<Found> {
        let (Some(piece), Some(place)) = (shape.ledger.first(), places.first()) else { return Vec::new() };
        let edge = Edge { loaded: self.depth(), unloaded: self.depth() };
        let spacings = self.shorts(None, edge).into_iter().filter(|short| short.what.starts_with("spacing"));
        let told = |short: Distance| {
            let from = if short.what == "spacing in the row" { "row to row" } else { "side to side" };
            let says = format!("only {} from {from}; {} is the least.", self.say(short.actual), self.say(short.least));
            let which = "at every post of the wall".to_owned();
            Found { what: "the fixings", which, ..self.found(piece, place, says) }
        };
        spacings.map(told).collect()
    }

    /// A head, or its washer, in the wood of a rafter that comes down before the ledger's face.
    fn under_a_heel(&self, shape: &Shape, place: &FixingPlace, rafters: &[&StickBody]) -> Option<Found> {
        let piece = shape.ledger.iter().find(|piece| place.x >= piece.start && place.x <= piece.end)?;
        let front = self.project.frame.ledger_packing + self.project.frame.timbers.ledger.sawn.breadth;
        let wide = if self.fixings.washer > Length::ZERO { self.fixings.washer } else { self.one.diameter * 2.0 };
        let centre = self.centre(place);
        let head = |lower: f64| {
            let at = |y: Length| Vector::inches(centre.x, y.to_inches(), centre.z - lower);
            Solid::new(cylinder(at(front), at(front + self.one.diameter), wide))
        };
        let box_of = head(0.0).within();
        let near: Vec<&&StickBody> = rafters.iter().filter(|body| body.wood.within().meets(&box_of)).collect();
        let is_in = |body: &StickBody, lower: f64| head(lower).shared(&body.wood).volume().to_cubic_inches() > TOUCH;
        let rafter = near.into_iter().find(|body| is_in(body, 0.0))?;
        let (mut low, mut high) = (0.0, self.depth().to_inches());
        while high - low > 1.0 / 256.0 {
            let middle = f64::midpoint(low, high);
            if is_in(rafter, middle) { low = middle } else { high = middle }
        }
        let says = format!("its head stands in the heel of a rafter; {}.", self.row_moved(-Length::inches(high)));
        Some(Found { other: Some(rafter.mark.clone()), ..self.found(piece, place, says) })
    }
}

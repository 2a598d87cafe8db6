//! Proof that it goes in: the room each stick sweeps over on its way into its place is free of what already stands.
//!
//! Common practice: a brace's foot goes into its post first; the beam comes down on post and brace tenons together, the
//! piece with the lower lap before the one that lies on it; an under-squinted scarf needs an endwise travel, made by the
//! new piece together with its posts, which lean out with their feet free; rafters come down on ledger and beam, then the
//! blocks between them, purlins on the rafters; a piece of the ledger goes straight to the wall.
use super::super::beam_piece::posts_of;
use super::super::body::StickBody;
use super::super::scarf::ScarfShape;
use super::TOUCH;
use crate::design::Shape;
use crate::geometry::{BeamPiece, Brace};
use crate::project::{Project, Role, Side};
use crate::solid::{Solid, Vector, swept};
use crate::units::{Length, UnitSystem};
use crate::wording::length;

/// How far a stick is taken to come from, in inches: farther than any joint is deep.
const APPROACH: f64 = 24.0;
/// Travel past the squint or the tongues, so that the tip clears its arris (common practice).
const CLEARANCE: Length = Length::inches(0.125);

/// One straight part of a stick's way, from where it ends back to where it begins.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leg {
    /// From the end of this part back to its beginning.
    pub back: Vector,
}

/// Where and by what a stick is stopped.
#[derive(Clone, Debug, PartialEq)]
pub struct Stopped {
    /// The stick in the way.
    pub by: String,
    /// Which part of the way, counted from its end, from 0.
    pub leg: usize,
    /// Where, in the frame.
    pub at: Vector,
    /// How much wood is in the way, in cubic inches.
    pub wood: f64,
}

/// How one stick gets in.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// The stick.
    pub stick: String,
    /// The sticks that come with it.
    pub with: Vec<String>,
    /// In words, as it is done.
    pub way: String,
    /// What is in the way; nothing where the way is free.
    pub stopped: Option<Stopped>,
}

impl Entry {
    /// What the way does not say, wherever it is shown.
    pub const CAUTION: &'static str = "this proves room, not a safe lift: brace what stands both ways, nobody under a load, \
         no hand under a timber coming down.";
}

/// Whether some wood comes free out of its place along those parts of a way, the last one first, past all that stands.
#[must_use]
pub fn goes_in(wood: &Solid, way: &[Leg], standing: &[&StickBody]) -> Option<Stopped> {
    let mut here = wood.clone();
    for (leg, part) in way.iter().enumerate() {
        for body in here.bodies() {
            let room = Solid::new(vec![swept(body, part.back)]);
            for other in standing {
                let shared = room.shared(&other.wood);
                let amount = shared.volume().to_cubic_inches();
                if amount > TOUCH {
                    let at = shared.centre().unwrap_or(Vector::ZERO);
                    return Some(Stopped { by: other.mark.clone(), leg, at, wood: amount });
                }
            }
        }
        here = here.moved(part.back);
    }
    None
}

/// How every stick gets in, in the order they go up.
#[must_use]
pub fn entries(project: &Project, shape: &Shape, bodies: &[StickBody]) -> Vec<Entry> {
    let yard = Yard { project, shape, bodies };
    let mut all = yard.ledger();
    all.extend(yard.braces());
    all.extend(yard.beam());
    all.extend(yard.rafters());
    all.extend(yard.blocks());
    all.extend(yard.purlins());
    all
}

struct Yard<'a> {
    project: &'a Project,
    shape: &'a Shape,
    bodies: &'a [StickBody],
}

impl<'a> Yard<'a> {
    fn body(&self, mark: &str) -> Option<&'a StickBody> {
        self.bodies.iter().find(|body| body.mark == mark)
    }

    fn all(&self, role: Role) -> Vec<&'a StickBody> {
        self.bodies.iter().filter(|body| body.role == role).collect()
    }

    fn entry(&self, mark: &str, way: &str, legs: &[Leg], standing: &[&StickBody]) -> Option<Entry> {
        let body = self.body(mark)?;
        let stopped = goes_in(&body.wood, legs, standing);
        Some(Entry { stick: mark.to_owned(), with: Vec::new(), way: way.to_owned(), stopped })
    }

    fn ledger(&self) -> Vec<Entry> {
        let legs = [Leg { back: Vector::inches(0.0, APPROACH, 0.0) }];
        let mut standing: Vec<&StickBody> = Vec::new();
        let mut all = Vec::new();
        for body in self.all(Role::Ledger) {
            all.extend(self.entry(&body.mark, "straight to the wall", &legs, &standing));
            standing.push(body);
        }
        all
    }

    /// Each brace into its post along the beam, before the beam is there.
    fn braces(&self) -> Vec<Entry> {
        let one = |brace: &Brace| {
            let out = if brace.side == Side::Right { APPROACH } else { -APPROACH };
            let legs = [Leg { back: Vector::inches(out, 0.0, 0.0) }];
            let post = self.body(&format!("P{}", brace.post))?;
            self.entry(&brace.mark(), "its foot into the post, square to its face, before the beam", &legs, &[post])
        };
        self.shape.braces.iter().filter_map(one).collect()
    }

    /// The beam's pieces, each lower lap before the piece that lies on it.
    fn beam(&self) -> Vec<Entry> {
        let mut standing: Vec<&BeamPiece> = Vec::new();
        let mut all = Vec::new();
        for piece in raising_order(&self.shape.beam.pieces) {
            all.extend(self.piece(piece, &standing));
            standing.push(piece);
        }
        all
    }

    fn piece(&self, piece: &BeamPiece, standing: &[&BeamPiece]) -> Option<Entry> {
        let mark = format!("B{}", piece.number);
        let body = self.body(&mark)?;
        let under = self.under(piece);
        let down = Leg { back: Vector::inches(0.0, 0.0, APPROACH) };
        let travel = self.travel(piece, standing);
        // Onto its own posts and braces, which lean out with it.
        let mut stopped = goes_in(&body.wood, &[down], &under);
        // Past what stands: the last part of its way is endwise, together with its posts and braces.
        for other in standing {
            // A brace under what stands may hold this piece too.
            let there: Vec<&StickBody> =
                self.body(&format!("B{}", other.number)).into_iter().chain(self.under(other)).collect();
            let leg = travel.away_from(other.number).map(|x| Leg { back: Vector::inches(x, 0.0, 0.0) });
            let way: Vec<Leg> = leg.into_iter().chain([down]).collect();
            stopped = stopped.or_else(|| goes_in(&body.wood, &way, &there));
            if let Some(leg) = leg {
                stopped = stopped.or_else(|| under.iter().find_map(|own| goes_in(&own.wood, &[leg], &there)));
            }
        }
        let with = under.iter().map(|body| body.mark.clone()).collect();
        Some(Entry { stick: mark, with, way: travel.way(self.project.units), stopped })
    }

    /// The posts under a piece that no piece before it stands on, and their braces.
    fn under(&self, piece: &BeamPiece) -> Vec<&'a StickBody> {
        let mut all = Vec::new();
        for post in posts_of(self.shape, piece) {
            all.extend(self.body(&format!("P{}", post.number)));
            let braces = self.shape.braces.iter().filter(|brace| brace.post == post.number);
            all.extend(braces.filter_map(|brace| self.body(&brace.mark())));
        }
        all
    }

    /// The endwise travel squinted or bladed scarfs ask of the piece that closes them. Between two pieces that stand, one of them,
    /// with nothing beyond it yet, leans out twice as far with its posts, and both are drawn in.
    fn travel(&self, piece: &BeamPiece, standing: &[&BeamPiece]) -> Travel {
        let mut travel = Travel { by: Length::ZERO, left: None, right: None, leans: None };
        let asks = |end: Option<(usize, bool)>| {
            let scarf = end.and_then(|(number, _)| self.shape.beam.scarfs.get(number - 1));
            scarf.map_or(Length::ZERO, |scarf| ScarfShape::of(self.project, scarf).travel())
        };
        let (at_left, at_right) = (asks(piece.left), asks(piece.right));
        let stands = |number: usize| standing.iter().any(|known| known.number == number);
        let is_held = |by: Length, stands: bool| by > Length::ZERO && stands;
        travel.left = is_held(at_left, stands(piece.number - 1)).then(|| piece.number - 1);
        travel.right = is_held(at_right, stands(piece.number + 1)).then_some(piece.number + 1);
        let by = |held: Option<usize>, asked: Length| held.map_or(Length::ZERO, |_| asked);
        travel.by = by(travel.left, at_left).max(by(travel.right, at_right)) + CLEARANCE;
        if let (Some(left), Some(right)) = (travel.left, travel.right) {
            let is_free =
                |number: usize, beyond: Option<usize>| beyond.is_none_or(|beyond| !stands(beyond)).then_some(number);
            travel.leans = is_free(right, Some(right + 1)).or_else(|| is_free(left, left.checked_sub(1)));
            if travel.leans.is_none() {
                travel.right = None;
            }
        }
        travel
    }

    fn rafters(&self) -> Vec<Entry> {
        let legs = [Leg { back: Vector::inches(0.0, 0.0, APPROACH) }];
        let mut below = self.all(Role::Ledger);
        below.extend(self.all(Role::Beam));
        below.extend(self.all(Role::Post));
        let all = self.all(Role::Rafter);
        all.iter().filter_map(|body| self.entry(&body.mark, "down on ledger and beam", &legs, &below)).collect()
    }

    /// Each block between two rafters that are fixed: from above if it can, otherwise up from below past the beam's face, or in
    /// from outside.
    fn blocks(&self) -> Vec<Entry> {
        let mut standing = self.all(Role::Rafter);
        for role in [Role::Ledger, Role::Beam, Role::Post, Role::Brace] {
            standing.extend(self.all(role));
        }
        let mut all = Vec::new();
        for body in self.all(Role::Block) {
            let ways = [
                ("down between its rafters onto the beam", Vector::inches(0.0, 0.0, APPROACH)),
                ("in from outside between its rafters", Vector::inches(0.0, APPROACH, 0.0)),
                ("up from below between its rafters", Vector::inches(0.0, 0.0, -APPROACH)),
            ];
            let tried = ways.map(|(way, back)| self.entry(&body.mark, way, &[Leg { back }], &standing));
            let mut tried: Vec<Entry> = tried.into_iter().flatten().collect();
            let free = tried.iter().position(|entry| entry.stopped.is_none()).unwrap_or(0);
            all.extend((free < tried.len()).then(|| tried.swap_remove(free)));
            standing.push(body);
        }
        all
    }

    fn purlins(&self) -> Vec<Entry> {
        let pitch = self.shape.line.pitch;
        let off = Vector::inches(0.0, pitch.sin(), pitch.cos()) * APPROACH;
        let mut below = self.all(Role::Rafter);
        below.extend(self.all(Role::Block));
        let all = self.all(Role::Purlin);
        let one = |body: &&StickBody| self.entry(&body.mark, "down on the rafters", &[Leg { back: off }], &below);
        all.iter().filter_map(one).collect()
    }
}

/// An endwise travel away from the pieces that stand at the left and at the right.
struct Travel {
    by: Length,
    left: Option<usize>,
    right: Option<usize>,
    leans: Option<usize>,
}

impl Travel {
    /// How far it comes away from that piece, along the wall, on its way out; nothing where it does not travel from it.
    fn away_from(&self, number: usize) -> Option<f64> {
        let by = self.by.to_inches();
        if self.left == Some(number) {
            return Some(by);
        }
        // Without a neighbour that leans, it can only travel from one of them.
        (self.right == Some(number)).then_some(-by)
    }

    fn way(&self, units: UnitSystem) -> String {
        if self.left.or(self.right).is_none() {
            return "straight down on its tenons".to_owned();
        }
        let by = length(self.by, units);
        let mut way =
            format!("down on its tenons with its posts leaning out {by} and their feet free, then drawn in endwise");
        if let Some(number) = self.leans {
            way.push_str(&format!("; B{number} and its posts lean out {} meanwhile", length(self.by * 2.0, units)));
        }
        way
    }
}

/// The order in which the pieces go up: each lower lap before the piece that lies on it, and from left to right otherwise.
/// Pieces whose laps wait for each other in a ring come last.
#[must_use]
pub fn raising_order(pieces: &[BeamPiece]) -> Vec<&BeamPiece> {
    let mut waiting: Vec<&BeamPiece> = pieces.iter().collect();
    let mut order: Vec<&BeamPiece> = Vec::new();
    while !waiting.is_empty() {
        let stands = |number: usize| order.iter().any(|known: &&BeamPiece| known.number == number);
        let waits = |piece: &BeamPiece| {
            let for_left = piece.left.is_some_and(|(_, is_lower)| !is_lower) && !stands(piece.number - 1);
            let for_right = piece.right.is_some_and(|(_, is_lower)| !is_lower) && !stands(piece.number + 1);
            for_left || for_right
        };
        let next = waiting.iter().position(|piece| !waits(piece)).unwrap_or(0);
        order.push(waiting.remove(next));
    }
    order
}

//! The ledger as a beam between the posts of the wall it is fixed to.
//!
//! ```text
//!        R   R   R   R          rafters
//!   -----+---+---+---+-----     a piece; its ends past the outer wall posts hang free
//!      ^       ^       ^        posts of the wall
//! ```
//! Each piece stands by itself: a splice hands no moment on, and where it lies over a post of the wall both pieces are held
//! there. A rafter loads the piece on whose side of the splice's middle it stands.
use crate::frame::{Factorised, Frame, FrameError, Inertia, LoadCase, Member, MemberLoad, Solution, Support};
use crate::geometry::LedgerPiece;
use crate::materials::Section;
use crate::units::{Force, Length, LineLoad, Stress, most};

/// Shorter than any stretch worth a member.
const HAIR: Length = Length::inches(1e-3);

/// A stretch of a piece: between two posts of the wall, or free past the outer one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LedgerSpan {
    /// The piece's number from the left, from 1.
    pub piece: usize,
    /// Its left end along the beam's x.
    pub from: Length,
    /// Its right end.
    pub to: Length,
    /// Held at its left end.
    pub held_left: bool,
    /// Held at its right end.
    pub held_right: bool,
}

impl LedgerSpan {
    /// How long it is.
    #[must_use]
    pub fn length(&self) -> Length {
        self.to - self.from
    }

    /// It hangs free at one end.
    #[must_use]
    pub const fn is_overhang(&self) -> bool {
        !(self.held_left && self.held_right)
    }
}

/// A post of the wall that holds the ledger.
#[derive(Clone, Debug, PartialEq)]
pub struct WallPost {
    /// Its centre along the beam's x.
    pub x: Length,
    /// To the nearest end of a piece fixed to it.
    pub from_end: Length,
    nodes: Vec<usize>,
}

/// What one combination asks of the ledger.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct LedgerLoads {
    /// Of a unit width of roof, down.
    pub strip: LineLoad,
    /// Of each rafter's own weight, down.
    pub rafter: Force,
    /// Of the ledger's own weight.
    pub own: LineLoad,
    /// Of a person over the head of one rafter.
    pub person: Force,
}

/// The ledger of one frame. A span's place in its list is its member's place in the frame.
#[derive(Clone, Debug, PartialEq)]
pub struct LedgerFrame {
    /// The frame to solve.
    pub frame: Frame,
    /// Its members.
    pub spans: Vec<LedgerSpan>,
    /// What holds it, left to right.
    pub posts: Vec<WallPost>,
    /// Each rafter: its member, its place on it, the roof's width it carries.
    seats: Vec<(usize, Length, Length)>,
    /// The rafter a person asks most of the ledger at: nearest to the middle of the longest stretch.
    under_person: Option<usize>,
}

impl LedgerFrame {
    /// Of these pieces, with each rafter's place and the width of roof it carries.
    ///
    /// # Errors
    /// The sentence that says what does not hold the ledger.
    pub fn new(
        pieces: &[LedgerPiece],
        posts: &[Length],
        rafters: &[(Length, Length)],
        (section, stiffness): (Section, Stress),
    ) -> Result<Self, String> {
        let post = |x: &Length| WallPost { x: *x, from_end: Length::feet(1000.0), nodes: Vec::new() };
        let posts = posts.iter().map(post).collect();
        let mut ledger =
            Self { frame: Frame::default(), spans: Vec::new(), posts, seats: Vec::new(), under_person: None };
        for piece in pieces {
            ledger.add_piece(piece, section, stiffness)?;
        }
        ledger.posts.retain(|post| !post.nodes.is_empty());
        for (index, piece) in pieces.iter().enumerate() {
            let middle = |left: Option<&LedgerPiece>, right: Option<&LedgerPiece>| match (left, right) {
                (Some(left), Some(right)) => Some((left.end + right.start) / 2.0),
                _ => None,
            };
            let before = index.checked_sub(1).and_then(|before| pieces.get(before));
            let low = middle(before, Some(piece));
            let high = middle(Some(piece), pieces.get(index + 1));
            let stands = |x: Length| low.is_none_or(|low| x >= low) && high.is_none_or(|high| x < high);
            for (x, width) in rafters.iter().filter(|(x, _)| stands(*x)) {
                ledger.seat(piece, x.clamp(piece.start, piece.end), *width);
            }
        }
        ledger.under_person = ledger.seat_of_person();
        Ok(ledger)
    }

    fn add_piece(&mut self, piece: &LedgerPiece, section: Section, stiffness: Stress) -> Result<(), String> {
        let holds = |post: &&mut WallPost| post.x >= piece.start - HAIR && post.x <= piece.end + HAIR;
        let mut places: Vec<(Length, bool)> = Vec::new();
        let first_node = self.frame.nodes.len();
        let held: Vec<&mut WallPost> = self.posts.iter_mut().filter(holds).collect();
        if held.len() < 2 {
            let number = piece.number;
            return Err(format!(
                "L{number} reaches fewer than two posts of the wall: it would turn about the one it has"
            ));
        }
        for post in held {
            if places.is_empty() && post.x - piece.start > HAIR {
                places.push((piece.start, false));
            }
            post.nodes.push(first_node + places.len());
            post.from_end = post.from_end.min((post.x - piece.start).min(piece.end - post.x).max(Length::ZERO));
            places.push((post.x, true));
        }
        if places.last().is_some_and(|(x, _)| piece.end - *x > HAIR) {
            places.push((piece.end, false));
        }
        let mut is_pinned = false;
        for (index, (x, is_held)) in places.iter().enumerate() {
            let node = self.frame.add_node(format!("L{}, place {}", piece.number, index + 1), *x, Length::ZERO);
            if *is_held {
                self.frame.supports.push(if is_pinned { Support::roller(node) } else { Support::pinned(node) });
                is_pinned = true;
            }
        }
        let inertia = Inertia::rectangle(section.breadth, section.depth);
        for (index, pair) in places.windows(2).enumerate() {
            let ends = (first_node + index, first_node + index + 1);
            let name = format!("L{}, stretch {}", piece.number, index + 1);
            self.frame.add_member(Member::elastic(name, ends, stiffness, section.area(), inertia));
            let [(from, held_left), (to, held_right)] = [pair[0], pair[1]];
            self.spans.push(LedgerSpan { piece: piece.number, from, to, held_left, held_right });
        }
        Ok(())
    }

    fn seat(&mut self, piece: &LedgerPiece, x: Length, width: Length) {
        let on = |span: &LedgerSpan| span.piece == piece.number && span.from - HAIR <= x && x <= span.to + HAIR;
        if let Some(member) = self.spans.iter().position(on) {
            let span = &self.spans[member];
            self.seats.push((member, (x - span.from).clamp(Length::ZERO, span.length()), width));
        }
    }

    /// Far from both held ends, or from the one of an overhang, which counts twice.
    fn seat_of_person(&self) -> Option<usize> {
        let lever = |(member, at, _): &(usize, Length, Length)| {
            let span = &self.spans[*member];
            match (span.held_left, span.held_right) {
                (true, true) => at.min(span.length() - *at),
                (true, false) => *at * 2.0,
                _ => (span.length() - *at) * 2.0,
            }
        };
        let levers = self.seats.iter().map(|seat| lever(seat).to_inches()).enumerate();
        most(levers, |(_, lever)| *lever).map(|(place, _)| place)
    }

    /// Each rafter: its member, its place on it, the roof's width it carries.
    pub(super) fn seats(&self) -> &[(usize, Length, Length)] {
        &self.seats
    }

    /// The loads of one combination on the frame.
    #[must_use]
    pub fn case(&self, loads: &LedgerLoads) -> LoadCase {
        let rafter = |(member, at, width): &(usize, Length, Length)| {
            MemberLoad::down(*member, *at, loads.strip * *width + loads.rafter)
        };
        let mut members: Vec<MemberLoad> = self.seats.iter().map(rafter).collect();
        for (member, span) in self.spans.iter().enumerate() {
            members.push(MemberLoad::even(member, Length::ZERO, span.length(), loads.own));
        }
        if let Some((member, at, _)) = self.under_person.and_then(|place| self.seats.get(place)) {
            members.push(MemberLoad::down(*member, *at, loads.person));
        }
        LoadCase { members, ..LoadCase::default() }
    }

    /// All of it together, down.
    #[must_use]
    pub fn total(&self, loads: &LedgerLoads) -> Force {
        let rafters: Force = self.seats.iter().map(|(_, _, width)| loads.strip * *width + loads.rafter).sum();
        rafters + loads.person + self.spans.iter().map(|span| loads.own * span.length()).sum()
    }

    /// What the posts of the wall give, up, in their order.
    #[must_use]
    pub fn reactions(&self, solution: &Solution) -> Vec<Force> {
        let of = |post: &WallPost| post.nodes.iter().map(|node| solution.reaction(*node).z).sum();
        self.posts.iter().map(of).collect()
    }
}

/// What each post of the wall gives to a unit of each load: any combination's reactions are their sum.
#[derive(Clone, Debug, PartialEq)]
pub struct WallShares {
    /// Width of roof that falls to each post.
    pub width: Vec<Length>,
    /// Number of rafters that falls to it.
    pub rafters: Vec<f64>,
    /// Length of ledger that falls to it.
    pub own: Vec<Length>,
}

impl WallShares {
    /// Of a ledger ready to be solved.
    ///
    /// # Errors
    /// Where the numbers are too far apart for an answer.
    pub fn new(ledger: &LedgerFrame, solved: &Factorised) -> Result<Self, FrameError> {
        let (one, none) = (LineLoad::pounds_per_inch(1.0), LedgerLoads::default());
        let of = |loads: LedgerLoads| {
            let solution = solved.solve(&ledger.case(&loads))?;
            Ok::<Vec<f64>, FrameError>(ledger.reactions(&solution).into_iter().map(Force::to_pounds).collect())
        };
        let inches = |values: Vec<f64>| values.into_iter().map(Length::inches).collect::<Vec<Length>>();
        Ok(Self {
            width: inches(of(LedgerLoads { strip: one, ..none })?),
            rafters: of(LedgerLoads { rafter: Force::pounds(1.0), ..none })?,
            own: inches(of(LedgerLoads { own: one, ..none })?),
        })
    }

    /// Width of roof on all of them.
    #[must_use]
    pub fn roof(&self) -> Length {
        self.width.iter().copied().sum()
    }

    /// What a post gives up under a combination. A person is taken whole by any one of them.
    #[must_use]
    pub fn reaction(&self, post: usize, loads: &LedgerLoads) -> Force {
        let at = |list: &[Length]| list.get(post).copied().unwrap_or_default();
        let rafters = self.rafters.get(post).copied().unwrap_or_default();
        loads.strip * at(&self.width) + loads.rafter * rafters + loads.own * at(&self.own) + loads.person
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    const SECTION: Section = Section::new(Length::inches(4.0), Length::inches(10.0));

    fn piece(number: usize, start: f64, end: f64) -> LedgerPiece {
        let (start, end) = (Length::inches(start), Length::inches(end));
        LedgerPiece { number, start, end, left_splice: false, right_splice: false }
    }

    fn ledger(pieces: &[LedgerPiece], posts: &[f64], rafters: &[(f64, f64)]) -> Result<LedgerFrame, String> {
        let posts: Vec<Length> = posts.iter().copied().map(Length::inches).collect();
        let rafters: Vec<(Length, Length)> =
            rafters.iter().map(|(x, width)| (Length::inches(*x), Length::inches(*width))).collect();
        LedgerFrame::new(pieces, &posts, &rafters, (SECTION, Stress::psi(1.1e6)))
    }

    fn near(found: f64, expected: f64) {
        assert!((found - expected).abs() <= 1e-6 * expected.abs().max(1.0), "{found} is not {expected}");
    }

    /// Posts at 10 and 110, rafters at 0, 60 and 110: 24 in of 2 lb/in, 48 lb each. Left 48·1.1 + 24 = 76.8 lb, right
    /// 48 − 4.8 + 24 = 67.2; the overhang bends −480 lb-in; under the middle one (76.8 − 48)·50 − 48·10 = 960.
    #[test]
    fn one_piece_by_hand() {
        let found =
            ledger(&[piece(1, 0.0, 110.0)], &[10.0, 110.0], &[(0.0, 24.0), (60.0, 24.0), (110.0, 24.0)]).unwrap();
        assert_eq!(found.spans.len(), 2);
        assert!(found.spans[0].is_overhang() && !found.spans[1].is_overhang());
        let loads = LedgerLoads { strip: LineLoad::pounds_per_inch(2.0), ..LedgerLoads::default() };
        let solved = found.frame.factorise(&found.frame.all_active()).unwrap();
        let solution = solved.solve(&found.case(&loads)).unwrap();
        let reactions = found.reactions(&solution);
        near(reactions[0].to_pounds(), 76.8);
        near(reactions[1].to_pounds(), 67.2);
        near(solution.moment(0).extremes().min.to_pound_inches(), -480.0);
        near(solution.moment(1).extremes().max.to_pound_inches(), 960.0);
        near(found.total(&loads).to_pounds(), 144.0);
        let shares = WallShares::new(&found, &solved).unwrap();
        near(shares.reaction(0, &loads).to_pounds(), 76.8);
        // A person of 300 lb in the middle: 150 lb to each, but each post is asked for all of it.
        let person = LedgerLoads { person: Force::pounds(300.0), ..LedgerLoads::default() };
        let solution = solved.solve(&found.case(&person)).unwrap();
        near(solution.moment(1).extremes().max.to_pound_inches(), 150.0 * 50.0);
        near(shares.reaction(1, &person).to_pounds(), 300.0);
        assert_eq!(found.posts[1].from_end, Length::ZERO);
        assert_eq!(found.posts[0].from_end, Length::inches(10.0));
    }

    /// Two pieces spliced over the post at 100: each is a simple span of its own, the post takes both.
    #[test]
    fn a_splice_over_a_post() {
        let pieces = [piece(1, 0.0, 104.0), piece(2, 96.0, 200.0)];
        let found = ledger(&pieces, &[0.0, 100.0, 200.0], &[(50.0, 1.0), (150.0, 1.0)]).unwrap();
        let solved = found.frame.factorise(&found.frame.all_active()).unwrap();
        let shares = WallShares::new(&found, &solved).unwrap();
        let loads = LedgerLoads { strip: LineLoad::pounds_per_inch(80.0), ..LedgerLoads::default() };
        let of = |post| shares.reaction(post, &loads).to_pounds();
        near(of(0), 40.0);
        near(of(1), 80.0);
        near(of(2), 40.0);
        near(shares.rafters.iter().sum::<f64>(), 2.0);
        near(shares.own.iter().map(|own| own.to_inches()).sum::<f64>(), 208.0);
    }

    #[test]
    fn a_piece_needs_two_posts() {
        let refused = ledger(&[piece(1, 0.0, 90.0)], &[10.0, 110.0], &[(50.0, 1.0)]);
        assert!(refused.is_err_and(|why| why.contains("L1 reaches fewer than two posts of the wall")));
    }
}

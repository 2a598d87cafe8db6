//! The beam: bending whole and at its mortises, shear, movement, seats on the posts, twist.
use super::beam_pull::check_pull;
use super::check::{Check, Under, Way};
use super::governing::{BendingStrength, hardest, most};
use super::wood::Woods;
use crate::analysis::{BeamCase, BeamLine, Purpose, Solved};
use crate::design::Shape;
use crate::frame::Extremes;
use crate::geometry::{self, BeamPiece, Brace, PostShape, bay_of};
use crate::loads::Duration;
use crate::materials::Section;
use crate::members::{
    Bracing, Ceiling, DeflectionCase, Member, NetSection, Pocket, RoofMember, Seat, ShearPlace, UnbracedCase, Verdict,
    check_bearing_across, check_bending, check_deflection, check_shear, deflection_limit,
};
use crate::project::{JoineryRules, Project, Used};
use crate::units::{Force, Length, Moment};
use crate::working::{Citation, Step, Worked};

/// Name of the checks of bending.
pub(super) const BENDS: &str = "bends";

/// What the checks of the beam line share.
#[derive(Clone, Copy)]
pub struct BeamChecks<'a> {
    /// The project.
    pub project: &'a Project,
    /// Its frame.
    pub shape: &'a Shape,
    /// Its beam line, worked out.
    pub line: &'a BeamLine,
    /// Its wood.
    pub woods: &'a Woods<'a>,
    /// Only the cases in which the roof presses on the beam line, or lifts it; nothing for all.
    way: Option<Way>,
    /// How the beam is bent.
    pub(super) bent: BendingStrength,
}

/// A case's name with the model of its braces.
pub(super) fn named(solved: &Solved, case: &BeamCase) -> String {
    format!("{} ({})", case.name, solved.model.words())
}

/// Every check of the beam.
#[must_use]
pub fn check_beam(with: &BeamChecks) -> Vec<Check> {
    let mut checks = Vec::new();
    for piece in &with.shape.beam.pieces {
        checks.extend(with.piece(piece));
    }
    checks.extend(with.over_posts());
    checks.extend(with.at_pockets());
    checks.extend(with.movements());
    checks.extend(with.seats());
    checks.extend(with.twist());
    checks.extend(check_pull(with));
    checks
}

impl<'a> BeamChecks<'a> {
    /// Of every case.
    #[must_use]
    pub fn new(project: &'a Project, shape: &'a Shape, line: &'a BeamLine, woods: &'a Woods<'a>) -> Self {
        let bracing = [false, true].map(|is_hogging| bracing(project, shape, is_hogging));
        let bent = BendingStrength::new(woods.member(Used::Beam, Duration::TenYears), bracing);
        Self { project, shape, line, woods, way: None, bent }
    }

    /// Of the cases that go one way.
    pub(super) const fn going(&self, way: Way) -> Self {
        Self { way: Some(way), ..*self }
    }
}

impl BeamChecks<'_> {
    /// The answers that judge strength, of the cases that count.
    pub(super) fn strength(&self) -> impl Iterator<Item = (&Solved, &BeamCase)> {
        let counts = |case: &BeamCase| self.way.is_none_or(|way| self.line.lifts(case) == (way == Way::Up));
        self.line.strength().filter(move |(_, case)| counts(case))
    }

    /// The combination of a case, and which way the roof goes in it.
    pub(super) fn under(&self, solved: &Solved, case: &BeamCase) -> Under {
        let way = Some(Way::of(self.line.lifts(case)));
        Under::from_origin(named(solved, case), way, self.line.origin(solved, case))
    }

    fn wood(&self, duration: Duration) -> Result<Member, String> {
        self.woods.member(Used::Beam, duration)
    }

    /// Piece by piece, counted to the middle of its laps.
    fn stretches(&self, piece: &BeamPiece) -> Vec<usize> {
        let centre = |scarf: Option<(usize, bool)>, end: Length| {
            let found =
                scarf.and_then(|(number, _)| self.shape.beam.scarfs.iter().find(|scarf| scarf.number == number));
            found.map_or(end, |scarf| scarf.place.centre)
        };
        let (low, high) = (centre(piece.left, piece.start), centre(piece.right, piece.end));
        let inside = |index: &usize| {
            let stretch = &self.line.model.beam[*index];
            let middle = (stretch.from + stretch.to) / 2.0;
            middle > low && middle < high
        };
        (0..self.line.model.beam.len()).filter(inside).collect()
    }

    pub(super) fn bracing(&self, is_hogging: bool) -> Bracing {
        bracing(self.project, self.shape, is_hogging)
    }

    fn piece(&self, piece: &BeamPiece) -> Vec<Check> {
        let mark = format!("B{}", piece.number);
        let stretches = self.stretches(piece);
        let mut checks: Vec<Check> = self.bends(&mark, &stretches).into_iter().collect();
        let shears = self.strength().flat_map(|(solved, case)| {
            let parts = stretches
                .iter()
                .filter_map(|index| Some((self.line.model.beam.get(*index)?, solved.beam.get(*index)?)));
            parts.map(move |(stretch, part)| {
                let Extremes { min, min_at, max, max_at } = part.shear;
                let (shear, at) = if max.abs() > min.abs() { (max, max_at) } else { (min, min_at) };
                (shear.to_pounds(), case.duration, (shear, stretch.from + at, solved, case))
            })
        });
        if let Some((_, duration, (shear, x, solved, case))) = hardest(shears) {
            let made = self
                .wood(duration)
                .and_then(|wood| check_shear(&wood, shear.abs(), &ShearPlace::Whole).map_err(|refused| refused.0));
            checks.push(
                Check::new(&mark, "shears", self.place(x), self.under(solved, case).asks("V", shear.abs()), made)
                    .at_x(x),
            );
        }
        checks
    }

    /// Bending of a piece, the worse of both ways: they are not held sideways alike.
    fn bends(&self, mark: &str, stretches: &[usize]) -> Option<Check> {
        let moments = self.strength().flat_map(|(solved, case)| {
            let parts = stretches
                .iter()
                .filter_map(|index| Some((self.line.model.beam.get(*index)?, solved.beam.get(*index)?)));
            parts.flat_map(move |(stretch, part)| {
                let Extremes { min, min_at, max, max_at } = part.moment;
                let both = [(max.max(Moment::ZERO), max_at, false), ((-min).max(Moment::ZERO), min_at, true)];
                both.map(|(moment, at, is_hogging)| (moment, stretch.from + at, is_hogging, solved, case))
            })
        });
        let stress = |of: &(Moment, Length, bool, &Solved, &BeamCase)| self.share_of(of.4.duration, of.0, of.2);
        let (moment, x, is_hogging, solved, case) = most(moments, stress)?;
        let made = self.wood(case.duration).and_then(|wood| {
            let whole = NetSection::whole(wood.section()).map_err(|refused| refused.0)?;
            check_bending(&wood, moment, &whole, self.bracing(is_hogging)).map_err(|refused| refused.0)
        });
        Some(Check::new(mark, BENDS, self.place(x), self.under(solved, case).asks("M", moment), made).at_x(x))
    }

    /// A moment over F_b', by numbers alone: of one section the case with the most of it governs.
    fn share_of(&self, duration: Duration, moment: Moment, is_hogging: bool) -> f64 {
        moment.abs().to_pound_inches() / self.bent.of(duration, is_hogging)
    }

    /// Bending of every piece and over every post, to be asked of the cases in which the roof lifts.
    pub(super) fn bent_upward(&self) -> Vec<Check> {
        let whole = |piece: &BeamPiece| self.bends(&format!("B{}", piece.number), &self.stretches(piece));
        let mut checks: Vec<Check> = self.shape.beam.pieces.iter().filter_map(whole).collect();
        checks.extend(self.over_posts().into_iter().filter(|check| check.name == BENDS));
        checks
    }

    /// Where a place is, in words.
    fn place(&self, x: Length) -> String {
        let near = self.shape.posts.iter().find(|post| x > post.left - NEAR && x < post.right + NEAR);
        match (near, bay_of(&self.shape.posts, x)) {
            (Some(post), _) => format!("over P{}", post.number),
            (None, Some(bay)) => format!("in bay {}", bay + 1),
            (None, None) => "past the outer post".to_owned(),
        }
    }

    /// The beam's underside over a post: its housing and the mortise above it.
    pub(super) fn over_post(&self, post: &PostShape, wood: &Member) -> Result<NetSection, String> {
        let (rules, section) = (&post.rules, wood.section());
        let housing = geometry::beam_housing(&self.project.frame, rules);
        let mortise = post.tenon_length + rules.blind_clearance;
        cut(rules, section, (Length::ZERO, section.breadth), housing, mortise)
    }

    fn over_posts(&self) -> Vec<Check> {
        let mut checks = Vec::new();
        for (index, post) in self.shape.posts.iter().enumerate() {
            let (left, right) = self.beside_post(index);
            let at = |solved: &Solved| {
                let of_left =
                    left.and_then(|index| solved.beam.get(index)).map(|part| (part.end_moments.1, part.end_shears.1));
                let of_right =
                    right.and_then(|index| solved.beam.get(index)).map(|part| (part.end_moments.0, part.end_shears.0));
                let none = (Moment::ZERO, Force::ZERO);
                let (a, b) = (of_left.unwrap_or(none), of_right.unwrap_or(none));
                (if b.0.abs() > a.0.abs() { b.0 } else { a.0 }, a.1.abs().max(b.1.abs()))
            };
            let place = format!("at the mortise of P{}", post.number);
            let mark = self.piece_at(post.middle());
            checks.extend(self.at_a_cut(&mark, &place, post.middle(), at, |wood| self.over_post(post, wood)));
        }
        checks
    }

    /// What the pocket of a brace's head leaves of a section whose underside it is cut in.
    pub(super) fn at_pocket(&self, brace: &Brace, section: Section) -> Result<NetSection, String> {
        let (rules, pocket) = (&brace.head, brace.beam_pocket(&self.project.frame));
        let across = self.project.frame.timbers.brace.sawn.breadth;
        let from_left = (section.breadth - rules.tenon_offset - rules.tenon_thickness).min(section.breadth - across);
        cut(rules, section, (from_left.max(Length::ZERO), across), pocket.housing, pocket.mortise_depth)
    }

    fn at_pockets(&self) -> Vec<Check> {
        let mut checks = Vec::new();
        for (index, brace) in self.shape.braces.iter().enumerate() {
            let (low, high) = brace.on_beam(&brace.beam_pocket(&self.project.frame));
            // In a lap there is half a beam, which the checks of the scarf judge.
            if self.shape.beam.scarfs.iter().any(|scarf| low < scarf.high && high > scarf.low) {
                continue;
            }
            let net = |wood: &Member| self.at_pocket(brace, wood.section());
            let at = |solved: &Solved| {
                let found = solved.pockets.get(index).copied();
                found.map_or((Moment::ZERO, Force::ZERO), |(moment, shear)| (moment, shear.abs()))
            };
            let place = format!("at the pocket of {}", brace.mark());
            let middle = (low + high) / 2.0;
            checks.extend(self.at_a_cut(&self.piece_at(middle), &place, middle, at, net));
        }
        checks
    }

    /// Bending and shear on what a cut leaves.
    fn at_a_cut(
        &self,
        mark: &str,
        place: &str,
        x: Length,
        at: impl Fn(&Solved) -> (Moment, Force),
        net: impl Fn(&Member) -> Result<NetSection, String>,
    ) -> Vec<Check> {
        let moments = self.strength().map(|(solved, case)| (at(solved).0, solved, case));
        let bends = most(moments, |(moment, _, case)| self.share_of(case.duration, *moment, moment.is_negative()));
        let bends = bends.map(|(moment, solved, case)| {
            let made = self.wood(case.duration).and_then(|wood| {
                let bracing = self.bracing(moment.is_negative());
                check_bending(&wood, moment.abs(), &net(&wood)?, bracing).map_err(|refused| refused.0)
            });
            Check::new(mark, BENDS, place, self.under(solved, case).asks("M", moment.abs()), made).at_x(x)
        });
        let shears = self.strength().map(|(solved, case)| {
            let (_, shear) = at(solved);
            (shear.to_pounds(), case.duration, (shear, solved, case))
        });
        let shears = hardest(shears).map(|(_, duration, (shear, solved, case))| {
            let made = self
                .wood(duration)
                .and_then(|wood| check_shear(&wood, shear, &ShearPlace::Net(net(&wood)?)).map_err(|refused| refused.0));
            Check::new(mark, "shears", place, self.under(solved, case).asks("V", shear), made).at_x(x)
        });
        bends.into_iter().chain(shears).collect()
    }

    /// Mark of the piece that lies at a place; in a lap, of the one that begins first.
    pub(super) fn piece_at(&self, x: Length) -> String {
        let found = self.shape.beam.pieces.iter().find(|piece| x <= piece.end);
        found.map_or_else(|| "beam".to_owned(), |piece| format!("B{}", piece.number))
    }

    fn movements(&self) -> Vec<Check> {
        let kinds = [
            (Purpose::LiveMovement, DeflectionCase::SnowOrWind, "sags under snow, wind or people"),
            (Purpose::TotalMovement, DeflectionCase::DeadAndLive, "sags in the end, creep counted"),
        ];
        let mut checks = Vec::new();
        for (purpose, kind, words) in kinds {
            let mut worst: Option<Moved> = None;
            for (solved, case) in self.line.purpose(purpose) {
                for (stretch, part) in self.line.model.beam.iter().zip(&solved.beam) {
                    let middle = (stretch.from + stretch.to) / 2.0;
                    let (Some(moves), Some(bay)) = (part.movement, bay_of(&self.shape.posts, middle)) else { continue };
                    let Some(span) = self.bay_span(bay) else { continue };
                    let by = moves.farthest();
                    let ratio = by.abs().to_inches() / span.to_inches();
                    if worst.as_ref().is_none_or(|known| ratio > known.0) {
                        worst = Some((ratio, by, span, bay, (solved, case)));
                    }
                }
            }
            if let Some((_, sag, span, bay, (solved, case))) = worst {
                let limit = deflection_limit(span, false, RoofMember::Main, Ceiling::None, kind);
                let place = format!("in bay {}", bay + 1);
                let made = check_deflection(sag, limit);
                let middle = self.shape.posts[bay].middle() + span / 2.0;
                let under = self.under(solved, case).no_way().asks("Δ", sag.abs());
                checks.push(Check::new(self.piece_at(middle), words, place, under, made).at_x(middle));
            }
        }
        checks
    }

    fn bay_span(&self, bay: usize) -> Option<Length> {
        Some(self.shape.posts.get(bay + 1)?.middle() - self.shape.posts.get(bay)?.middle())
    }

    /// The underside on each post's shoulder, less the mortise. F_c⊥ knows no load duration.
    fn seats(&self) -> Vec<Check> {
        let timbers = &self.project.frame.timbers;
        let check = |(index, post): (usize, &PostShape)| {
            let loads = self.strength().filter_map(|(solved, case)| Some((solved.posts.get(index)?.top, solved, case)));
            let (push, solved, case) = most(loads, |(push, ..)| push.to_pounds())?;
            let along = timbers.post.sawn.breadth;
            let across = timbers.post.sawn.depth.min(timbers.beam.sawn.breadth);
            let tenon = (post.tenon.1 - post.tenon.0) * post.rules.tenon_thickness;
            let from_end = post.left.min(self.project.frame.beam_length - post.right).max(Length::ZERO);
            let seat = Seat { area: along * across - tenon, length: along, from_end };
            let made = self.wood(case.duration).and_then(|wood| {
                check_bearing_across(&wood, push.max(Force::ZERO), &seat).map_err(|refused| refused.0)
            });
            let place = format!("on the shoulder of P{}", post.number);
            let under = self.under(solved, case).asks("P", push.max(Force::ZERO));
            let check = Check::new(self.piece_at(post.middle()), "is pressed", place, under, made);
            Some(check.at_x(post.middle()))
        };
        self.shape.posts.iter().enumerate().filter_map(check).collect()
    }

    /// Rafters sit off the beam's middle by half of what their seats leave free; the posts' heads hold the twist. All that
    /// comes to a post from one side twists the beam beside it.
    fn twist(&self) -> Option<Check> {
        let section = self.project.frame.timbers.beam.sawn;
        let off = (section.breadth - self.shape.rafter.beam.seat) / 2.0;
        let sides: Vec<_> = (0..self.shape.posts.len()).map(|post| self.beside_post(post)).collect();
        let twisted = self.strength().filter_map(|(solved, case)| {
            let beside = |(left, right): (Option<usize>, Option<usize>)| {
                let of_left = left.and_then(|index| solved.beam.get(index)).map(|part| part.end_shears.1.abs());
                let of_right = right.and_then(|index| solved.beam.get(index)).map(|part| part.end_shears.0.abs());
                of_left.unwrap_or_default().max(of_right.unwrap_or_default())
            };
            let posts = sides.iter().map(|sides| beside(*sides)).enumerate();
            let (at, largest) = most(posts, |(_, shear)| shear.to_pounds())?;
            Some((largest.to_pounds(), case.duration, (largest, at, solved, case)))
        });
        let (_, duration, (shear, post, solved, case)) = hardest(twisted)?;
        let made = self.wood(duration).map(|wood| torsion(&wood, shear, off));
        let place = format!("beside P{}", post + 1);
        let x = self.shape.posts.get(post).map_or(Length::ZERO, PostShape::middle);
        let under = self.under(solved, case).asks("V", shear);
        Some(Check::new(self.piece_at(x), "twists under rafters off its middle", place, under, made).at_x(x))
    }

    /// The stretches of the beam that end and begin over a post.
    pub(super) fn beside_post(&self, post: usize) -> (Option<usize>, Option<usize>) {
        let Some(node) = self.line.model.posts.get(post).map(|parts| parts.beam) else { return (None, None) };
        let members = &self.line.model.frame.members;
        let ends = |end: fn(&crate::frame::Member) -> usize| {
            let stretch = &self.line.model.beam;
            stretch.iter().position(|stretch| members.get(stretch.member).is_some_and(|member| end(member) == node))
        };
        (ends(|member| member.to), ends(|member| member.from))
    }
}

/// Held sideways by the rafters on top; where the underside is pressed, by the posts only.
fn bracing(project: &Project, shape: &Shape, is_hogging: bool) -> Bracing {
    let bays = shape.posts.windows(2).map(|pair| pair[1].middle() - pair[0].middle());
    let length = if is_hogging { bays.fold(Length::ZERO, Length::max) } else { project.frame.rafters.spacing };
    Bracing::Free { length: length.max(Length::inches(1.0)), case: UnbracedCase::Other }
}

/// Share of the span, movement, span, bay, and the answer it is of.
type Moved<'a> = (f64, Length, Length, usize, (&'a Solved, &'a BeamCase));

/// A place this near a post's face counts as over it.
const NEAR: Length = Length::inches(4.0);

/// τ = 3·T/(b²·d)·(1 + 0.6·b/d), b the smaller size (Roark's formulas, rectangle, from memory), with the 3·V/(2·b·d) of the
/// same shear: on one face they add up. Against F_v′.
fn torsion(wood: &Member, shear: Force, off: Length) -> Worked<Verdict> {
    let section = wood.section();
    let (b, d) = (section.breadth.min(section.depth), section.breadth.max(section.depth));
    let strength = crate::members::adjusted(wood, crate::members::Property::Shear);
    let torque = shear * off;
    let twisting = torque / (b * b * d) * (3.0 * (1.0 + 0.6 * (b / d)));
    let shearing = shear / (b * d) * 1.5;
    let mut steps = strength.steps;
    let says = format!(
        "T = V·e = {:.0}·{:.2} = {:.0} lb·in; τ = 3·T/(b²·d)·(1 + 0.6·b/d) = {:.0} psi; with 3·V/(2·b·d) = {:.0} psi",
        shear.to_pounds(),
        off.to_inches(),
        torque.to_pound_inches(),
        twisting.to_psi(),
        shearing.to_psi()
    );
    steps.push(Step::new(
        "twist beside the post",
        says,
        Citation::from_memory("Roark, Formulas for Stress", "rectangle in torsion"),
    ));
    Worked::new(Verdict::stress(twisting + shearing, strength.value), steps)
}

/// What a housing and a mortise of those rules leave of a section.
fn cut(
    rules: &JoineryRules,
    section: Section,
    (from_left, breadth): (Length, Length),
    housing: Length,
    mortise: Length,
) -> Result<NetSection, String> {
    let mut net = NetSection::whole(section).map_err(|refused| refused.0)?;
    if housing > Length::ZERO {
        let pocket = Pocket { from_left, breadth, from_bottom: Length::ZERO, depth: housing };
        net = net.without(pocket).map_err(|refused| refused.0)?;
    }
    let offset = section.breadth - rules.tenon_offset - rules.tenon_thickness;
    let pocket = Pocket { from_left: offset, breadth: rules.tenon_thickness, from_bottom: housing, depth: mortise };
    net.without(pocket).map_err(|refused| refused.0)
}

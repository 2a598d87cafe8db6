//! Purlins: sticks over the rafters, each row with its strip of the roof.
//!
//! ```text
//!   P (person)        w even
//!  a |    L      L
//! ---^------^------^---     a: rake overhang, from the outer rafter's middle
//! ```
//! A piece is counted as one span, or as two alike of its longest: more spans, shorter neighbours and snow on some of them
//! only ask less. Formulas of simple, two-span and overhanging beams.
use super::loading::Loading;
use super::roof_cases::RoofCase;
use super::roof_dead::{Pair, RoofDead};
use crate::design::Shape;
use crate::frame::Inertia;
use crate::geometry::{PurlinPiece, PurlinRow};
use crate::loads::Spread;
use crate::project::Project;
use crate::units::{Force, Length, LineLoad, Moment, Slope, Stress};

/// Noise of the geometry.
const HAIR: Length = Length::inches(1e-6);

/// A purlin's worst piece as it is counted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PurlinBeam {
    /// Longest distance between two rafters, middle to middle.
    pub span: Length,
    /// It runs over a rafter between two others.
    pub is_continuous: bool,
    /// From the outer rafter's middle to its end at the rake.
    pub overhang: Length,
}

/// The pieces that may govern: the longest span of those over one bay, and of those over more.
#[must_use]
pub fn purlin_beams(rows: &[PurlinRow], rafters: &[Length]) -> Vec<PurlinBeam> {
    let mut found: [Option<PurlinBeam>; 2] = [None, None];
    for beam in rows.iter().flat_map(|row| &row.pieces).filter_map(|piece| beam(piece, rafters)) {
        let slot = &mut found[usize::from(beam.is_continuous)];
        let before = slot.unwrap_or(beam);
        let (span, overhang) = (before.span.max(beam.span), before.overhang.max(beam.overhang));
        *slot = Some(PurlinBeam { span, overhang, ..beam });
    }
    found.into_iter().flatten().collect()
}

/// Nothing where the piece lies on fewer than two rafters.
fn beam(piece: &PurlinPiece, rafters: &[Length]) -> Option<PurlinBeam> {
    let on = |x: &&Length| **x >= piece.start - HAIR && **x <= piece.end + HAIR;
    let seats: Vec<Length> = rafters.iter().filter(on).copied().collect();
    let (first, last) = (seats.first()?, seats.last()?);
    let span = seats.windows(2).map(|pair| pair[1] - pair[0]).reduce(Length::max)?;
    let overhang = (*first - piece.start).max(piece.end - *last);
    Some(PurlinBeam { span, is_continuous: seats.len() > 2, overhang })
}

impl PurlinBeam {
    /// The largest moment, without sign, of an even load and a person in the middle of a span or at the rake's end; and
    /// where it is, in words.
    #[must_use]
    pub fn moment(&self, even: LineLoad, person: Force) -> (Moment, &'static str) {
        let (w, l, a) = (even.abs(), self.span, self.overhang);
        let whole = w * l * l;
        let (over, between) = if self.is_continuous {
            (whole / 8.0 + person * l * (3.0 / 32.0), whole / 16.0 + person * l * (13.0 / 64.0))
        } else {
            (Moment::ZERO, whole / 8.0 + person * l / 4.0)
        };
        let rake = w * a * a / 2.0 + person * a;
        if rake > over.max(between) {
            (rake, "at the rake")
        } else if over > between {
            (over, "over a rafter")
        } else {
            (between, "between rafters")
        }
    }

    /// The largest shear, without sign, of an even load and a person beside a rafter.
    #[must_use]
    pub fn shear(&self, even: LineLoad, person: Force) -> Force {
        let share = if self.is_continuous { 0.625 } else { 0.5 };
        even.abs() * (self.span * share).max(self.overhang) + person
    }

    /// The largest reaction on one rafter of an even load, with its sign.
    #[must_use]
    pub fn reaction(&self, even: LineLoad) -> Force {
        let inner = self.span * if self.is_continuous { 1.25 } else { 1.0 };
        let reach = self.span + self.overhang;
        even * inner.max(reach * (reach / self.span) / 2.0)
    }

    /// How far it bends between two rafters under an even load, without sign: 5wL⁴/384EI, of two spans wL⁴/185EI.
    #[must_use]
    pub fn sag(&self, even: LineLoad, stiffness: Stress, inertia: Inertia) -> Length {
        let share = if self.is_continuous { 1.0 / 185.0 } else { 5.0 / 384.0 };
        let l = self.span.to_inches();
        Length::inches(bent(even, stiffness, inertia) * l.powi(4) * share)
    }

    /// How far its end at the rake bends under an even load on the overhang alone: wa³(L/6 + a/8)/EI; the turning over
    /// the outer rafter is that of a single span, the larger one.
    #[must_use]
    pub fn rake_sag(&self, even: LineLoad, stiffness: Stress, inertia: Inertia) -> Length {
        let (l, a) = (self.span.to_inches(), self.overhang.to_inches());
        Length::inches(bent(even, stiffness, inertia) * a.powi(3) * (l / 6.0 + a / 8.0))
    }
}

/// w/EI, in inches to the minus third.
fn bent(even: LineLoad, stiffness: Stress, inertia: Inertia) -> f64 {
    even.abs().to_pounds_per_inch() / (stiffness.to_psi() * inertia.to_inches_4())
}

/// A row's strip of the roof: half way to its neighbours, the outer rows out to the roof's edges.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PurlinStrip {
    /// The row's number from the eave, from 1.
    pub number: usize,
    /// Edge toward the wall, out from the wall face.
    pub from: Length,
    /// Edge toward the eave.
    pub to: Length,
    /// Slope.
    pub pitch: Slope,
    /// Own weight of the purlin: green, and dry.
    own: (LineLoad, LineLoad),
    /// Up the slope: what the roof's dead load spreads a purlin over.
    gap: Length,
}

/// What one combination does to a length of one row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PurlinLoad {
    /// Square to the roof, plus presses.
    pub across: LineLoad,
    /// Down the slope.
    pub along: LineLoad,
    /// A person, upright.
    pub person: Force,
}

/// The strips of all rows, from the eave up.
#[must_use]
pub fn purlin_strips(project: &Project, shape: &Shape, dead: &RoofDead, roof_length: Length) -> Vec<PurlinStrip> {
    let (pitch, timber) = (shape.line.pitch, project.frame.timbers.purlin);
    let tail = shape.line.beam_heel + project.frame.tail;
    let place = |row: &PurlinRow| tail - (row.from_tail + timber.sawn.breadth / 2.0) * pitch.cos();
    let places: Vec<Length> = shape.purlins.iter().map(place).collect();
    let half_way = |lower: usize| (places[lower] + places[lower + 1]) / 2.0;
    let last = places.len().saturating_sub(1);
    let own = |density: crate::units::Density| density.line_load(timber.sawn.area());
    let strip = |(index, row): (usize, &PurlinRow)| PurlinStrip {
        number: row.number,
        from: if index == last { Length::ZERO } else { half_way(index) },
        to: if index == 0 { roof_length } else { half_way(index - 1) },
        pitch,
        own: (own(dead.wood.heavy), own(dead.wood.light)),
        gap: dead.purlin_every,
    };
    shape.purlins.iter().enumerate().map(strip).collect()
}

impl PurlinStrip {
    /// Its width up the slope.
    #[must_use]
    pub fn width(&self) -> Length {
        (self.to - self.from) / self.pitch.cos()
    }

    /// What of a load on plan falls on it.
    fn share(&self, spread: &Spread) -> LineLoad {
        spread.cut_at(self.to).total() - spread.cut_at(self.from).total()
    }

    /// A load down on plan, upright.
    #[must_use]
    pub fn down(&self, case: &RoofCase) -> LineLoad {
        self.share(&case.down)
    }

    /// A load square to the roof.
    #[must_use]
    pub fn square(&self, case: &RoofCase) -> LineLoad {
        self.share(&case.square) / self.pitch.cos()
    }

    /// Sheets over the strip and one purlin, upright.
    #[must_use]
    pub fn dead(&self, dead: &RoofDead, is_uplift: bool) -> LineLoad {
        let own = if is_uplift { self.own.1 } else { self.own.0 };
        dead.cover.of(is_uplift) * (self.to - self.from) + own * (1.0 - self.width() / self.gap)
    }

    /// Its lines of every case, worked out once.
    #[must_use]
    pub fn lines(&self, cases: &[RoofCase], dead: &RoofDead) -> StripLines {
        let of = |case: &RoofCase| {
            let person = case.point.map_or(Force::ZERO, |(_, force)| force);
            CaseLine { down: self.down(case), square: self.square(case), person }
        };
        let dead = Pair { heavy: self.dead(dead, false), light: self.dead(dead, true) };
        StripLines { strip: *self, dead, cases: cases.iter().map(of).collect() }
    }
}

/// One case on a row.
#[derive(Clone, Copy, Debug, PartialEq)]
struct CaseLine {
    down: LineLoad,
    square: LineLoad,
    person: Force,
}

/// A row with its lines of every case: a combination is their sum.
#[derive(Clone, Debug, PartialEq)]
pub struct StripLines {
    /// The row's strip.
    pub strip: PurlinStrip,
    /// Sheets and purlin, upright.
    pub dead: Pair<LineLoad>,
    cases: Vec<CaseLine>,
}

impl StripLines {
    /// A combination of the same cases.
    #[must_use]
    pub fn load(&self, loading: &Loading) -> PurlinLoad {
        let mut upright = self.dead.of(loading.is_uplift) * loading.dead;
        let (mut square, mut person) = (LineLoad::ZERO, Force::ZERO);
        for (factor, index) in &loading.parts {
            let case = &self.cases[*index];
            upright += case.down * *factor;
            square += case.square * *factor;
            person += case.person * *factor;
        }
        let (sin, cos) = (self.strip.pitch.sin(), self.strip.pitch.cos());
        PurlinLoad { across: upright * cos + square, along: upright * sin, person }
    }

    /// One case square to the roof.
    #[must_use]
    pub fn across(&self, case: usize) -> LineLoad {
        let found = &self.cases[case];
        found.down * self.strip.pitch.cos() + found.square
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::analysis::roof_loads;
    use crate::evaluate;
    use crate::project::demo;

    const ONE: PurlinBeam =
        PurlinBeam { span: Length::inches(24.0), is_continuous: false, overhang: Length::inches(8.0) };
    const TWO: PurlinBeam = PurlinBeam { is_continuous: true, ..ONE };

    fn near(found: f64, expected: f64) {
        assert!((found - expected).abs() <= 1e-9 * expected.abs().max(1.0), "{found} is not {expected}");
    }

    /// 60 plf = 5 lb/in on 24 in: wL²/8 = 360; 300 lb in the middle PL/4 = 1800, of two spans 13/64·PL = 1462.5 with 180;
    /// at the rake 5·64/2 + 300·8 = 2560.
    #[test]
    fn moments_and_their_places() {
        let (w, person) = (LineLoad::plf(60.0), Force::pounds(300.0));
        let long = |beam: PurlinBeam| PurlinBeam { overhang: Length::inches(2.0), ..beam };
        let check = |beam: PurlinBeam, person: Force, expected: f64, place: &str| {
            let (found, at) = beam.moment(w, person);
            near(found.to_pound_inches(), expected);
            assert_eq!(at, place);
        };
        check(ONE, Force::ZERO, 360.0, "between rafters");
        check(TWO, Force::ZERO, 360.0, "over a rafter");
        check(ONE, person, 2560.0, "at the rake");
        check(long(ONE), person, 2160.0, "between rafters");
        check(long(TWO), person, 1642.5, "between rafters");
        near(long(TWO).moment(-w, Force::ZERO).0.to_pound_inches(), 360.0);
    }

    /// 5 lb/in: shear 5·15 = 75 of two spans; reaction 1.25·24·5 = 150, between two single spans 120; of an
    /// outer rafter with 12 in past it (24 + 12)²/48·5 = 135.
    #[test]
    fn shears_and_reactions() {
        let w = LineLoad::plf(60.0);
        near(TWO.shear(w, Force::ZERO).to_pounds(), 75.0);
        near(ONE.shear(w, Force::pounds(300.0)).to_pounds(), 360.0);
        near(TWO.reaction(-w).to_pounds(), -150.0);
        near(ONE.reaction(w).to_pounds(), 120.0);
        near(PurlinBeam { overhang: Length::inches(12.0), ..ONE }.reaction(w).to_pounds(), 135.0);
    }

    /// EI = 1.2e6·4·8/12: 5·24⁴·5/384/EI, and the overhang by its closed form.
    #[test]
    fn sags() {
        let (e, i) = (Stress::psi(1.2e6), Inertia::rectangle(Length::inches(4.0), Length::inches(2.0)));
        let w = LineLoad::pounds_per_inch(5.0);
        near(ONE.sag(w, e, i).to_inches(), 5.0 * 5.0 * 331_776.0 / 384.0 / 3.2e6);
        near(TWO.sag(-w, e, i).to_inches(), 5.0 * 331_776.0 / 185.0 / 3.2e6);
        near(ONE.rake_sag(w, e, i).to_inches(), 5.0 * 512.0 * (4.0 + 1.0) / 3.2e6);
    }

    #[test]
    fn the_worst_pieces_are_found() {
        let piece = |start: f64, end: f64| PurlinPiece {
            start: Length::inches(start),
            end: Length::inches(end),
            left: None,
            right: None,
        };
        let rafters = [0.0, 24.0, 48.0, 78.0].map(Length::inches);
        let rows =
            [PurlinRow { number: 1, from_tail: Length::ZERO, pieces: vec![piece(-6.0, 48.0), piece(48.0, 84.0)] }];
        let found = purlin_beams(&rows, &rafters);
        let (six, of) = (Length::inches(6.0), Length::inches);
        assert_eq!(
            found,
            [
                PurlinBeam { span: of(30.0), is_continuous: false, overhang: six },
                PurlinBeam { span: of(24.0), is_continuous: true, overhang: six }
            ]
        );
        assert!(purlin_beams(&rows, &rafters[..1]).is_empty());
    }

    /// What the rows carry of every load makes up the load of the whole roof.
    #[test]
    fn strips_share_out_the_whole_roof() {
        let project = demo::wool_barn();
        let built = evaluate(&project).built.unwrap();
        let loads = roof_loads(&project, &built.shape);
        let length = loads.lean_to.roof_length().length();
        let strips = purlin_strips(&project, &built.shape, &loads.dead, length);
        assert_eq!(strips.len(), built.shape.purlins.len());
        for case in &loads.cases {
            let down: LineLoad = strips.iter().map(|strip| strip.down(case)).sum();
            near(down.to_plf(), case.down.total().to_plf());
            let square: LineLoad = strips.iter().map(|strip| strip.square(case)).sum();
            near(square.to_plf(), case.square.total().to_plf() / built.shape.line.pitch.cos());
        }
        // Seven purlins of 8 in² at 50 pcf, 2.78 plf each, and sheets of 29 gauge over 138.97/cos θ = 143.25 in: of the roof's dead
        // load what is no purlin, seven of them on 141.73 in of rafter.
        let dead: f64 = strips.iter().map(|strip| strip.dead(&loads.dead, false).to_plf()).sum();
        let own = 50.0 * 8.0 / 144.0;
        let sheet = loads.dead.cover.heavy.to_psf() * strips[0].pitch.cos() - own * 7.0 / (141.731_756 / 12.0);
        assert!((dead - 7.0 * own - sheet * 143.247 / 12.0).abs() < 1e-3, "{dead}");
    }
}

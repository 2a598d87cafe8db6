//! Balanced snow whole on one part of a continuous stick and half on another (ASCE 7, 7.5, from memory): along a rafter, whose
//! tail is a span, and along the ledger between the posts of the wall.
use super::ledger::{LedgerFrame, LedgerSpan};
use super::rafter_line::RafterLine;
use super::roof_cases::{RoofCase, RoofLoads};
use crate::loads::snow::{Pattern, partial_patterns};
use crate::loads::{Action, Spread};
use crate::units::Length;

/// Share of the balanced snow that stays where half is gone.
const HALF: f64 = 0.5;

/// How the name of the first of the partial cases of a rafter ends.
pub const HALF_ON_TAIL: &str = "half on the tail";

/// Half of the snow is gone from the tail, or from between the seats. Nothing where the roof ends over the beam, or where
/// there is no snow.
#[must_use]
pub fn partial_on_rafters(line: &RafterLine, loads: &RoofLoads) -> Option<[RoofCase; 2]> {
    let whole = balanced(loads).filter(|_| line.eave > line.beam)?;
    let inside = whole.down.cut_at(line.beam);
    let outside = whole.down.plus(&inside.times(-1.0));
    let case = |name: &str, down: Spread| RoofCase {
        name: format!("{}, {name}", whole.name),
        snow: None,
        down,
        ..whole.without_steps()
    };
    Some([
        case(HALF_ON_TAIL, inside.plus(&outside.times(HALF))),
        case("half between the seats", inside.times(HALF).plus(&outside)),
    ])
}

/// The balanced snow, which stands first of the snow.
fn balanced(loads: &RoofLoads) -> Option<&RoofCase> {
    loads.balanced?;
    loads.cases.iter().find(|case| case.action == Action::Snow)
}

/// One way the snow lies on the ledger, and what a strip of roof with a pound an inch of it then does, by the theorem of three
/// moments: each piece is a continuous beam of one section.
#[derive(Clone, Debug, PartialEq)]
pub struct LedgerPattern {
    /// Where the snow is whole, counted by the spans of each piece.
    pub name: String,
    /// For each span of [`LedgerFrame::spans`].
    pub spans: Vec<SpanEffect>,
    /// Up at each post of the wall, in pounds for a pound an inch.
    pub reactions: Vec<f64>,
}

/// What a pound an inch does to one span: the bending moments at its places, in pound-inches, plus where the underside is
/// stretched, and the shear beside its ends, in pounds, plus where the left part is pushed up.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SpanEffect {
    /// Place from the span's left end, and the moment there: at both ends and under each rafter.
    pub moments: Vec<(Length, f64)>,
    /// Beside the left end and beside the right one.
    pub shears: [f64; 2],
}

/// A load on a span: place from its left end and size, in inches and pounds.
type Point = (f64, f64);

/// The loads of a span and the share of them that lies there.
type Loaded<'a> = (&'a [Point], f64);

impl LedgerFrame {
    /// Every way balanced snow may lie partly on the pieces. Pieces do not hand on moments: the patterns of all are laid side by
    /// side, so that one list serves each.
    #[must_use]
    pub fn snow_patterns(&self) -> Vec<LedgerPattern> {
        let pieces: Vec<Vec<usize>> = self.pieces();
        let of_piece: Vec<Vec<Pattern>> = pieces.iter().map(|spans| self.patterns_of(spans)).collect();
        let points = self.points();
        let most = of_piece.iter().map(Vec::len).max().unwrap_or_default();
        let row = |index: usize| {
            let mut shares = vec![1.0; self.spans.len()];
            let mut name = String::new();
            for (spans, patterns) in pieces.iter().zip(&of_piece) {
                let Some(pattern) = patterns.get(index).or(patterns.last()) else { continue };
                if patterns.len() == most {
                    name.clone_from(&pattern.name);
                }
                for (span, share) in spans.iter().zip(&pattern.shares) {
                    shares[*span] = *share;
                }
            }
            self.under(name, &shares, &pieces, &points)
        };
        (0..most).map(row).collect()
    }

    /// The spans of each piece, left to right.
    fn pieces(&self) -> Vec<Vec<usize>> {
        let mut pieces: Vec<Vec<usize>> = Vec::new();
        for (index, span) in self.spans.iter().enumerate() {
            match pieces
                .last_mut()
                .filter(|piece| piece.last().is_some_and(|last| self.spans[*last].piece == span.piece))
            {
                Some(piece) => piece.push(index),
                None => pieces.push(vec![index]),
            }
        }
        pieces
    }

    fn patterns_of(&self, spans: &[usize]) -> Vec<Pattern> {
        let hangs = |index: Option<&usize>| index.is_some_and(|index| self.spans[*index].is_overhang());
        let (left, right) = (hangs(spans.first()), hangs(spans.last()));
        let between = spans.len().saturating_sub(usize::from(left) + usize::from(right));
        partial_patterns(left, between, right)
    }

    /// What a pound an inch on the whole roof puts on each span.
    fn points(&self) -> Vec<Vec<Point>> {
        let mut points: Vec<Vec<Point>> = vec![Vec::new(); self.spans.len()];
        for (member, at, width) in self.seats() {
            points[*member].push((at.to_inches(), width.to_inches()));
        }
        points
    }

    /// What these shares of a pound an inch do.
    fn under(&self, name: String, shares: &[f64], pieces: &[Vec<usize>], points: &[Vec<Point>]) -> LedgerPattern {
        let mut found = LedgerPattern { name, spans: Vec::new(), reactions: vec![0.0; self.posts.len()] };
        for piece in pieces {
            let spans: Vec<&LedgerSpan> = piece.iter().map(|index| &self.spans[*index]).collect();
            let loads: Vec<Loaded> = piece.iter().map(|index| (points[*index].as_slice(), shares[*index])).collect();
            let at_ends = end_moments(&spans, &loads);
            for ((span, load), ends) in spans.iter().zip(&loads).zip(at_ends) {
                let effect = span_effect(span.length().to_inches(), *load, ends);
                self.add_reactions(&mut found.reactions, span, effect.shears);
                found.spans.push(effect);
            }
        }
        found
    }

    fn add_reactions(&self, reactions: &mut [f64], span: &LedgerSpan, [left, right]: [f64; 2]) {
        let mut add = |x: Length, is_held: bool, force: f64| {
            let nearest = self.posts.iter().position(|post| is_held && post.x.is_near(x, Length::inches(0.01)));
            if let Some(post) = nearest {
                reactions[post] += force;
            }
        };
        add(span.from, span.held_left, left);
        add(span.to, span.held_right, -right);
    }
}

/// Moments at the left and right end of each span of a piece: M_l·L_l + 2·M·(L_l + L_r) + M_r·L_r = −Σ P·a(L² − a²)/L of both
/// sides, with a from the far support of each side (theorem of three moments, from memory).
fn end_moments(spans: &[&LedgerSpan], loads: &[Loaded]) -> Vec<[f64; 2]> {
    let length = |index: usize| spans[index].length().to_inches();
    let n = spans.len();
    // Moment at each end of a span, left to right; what an overhang hands to the outer post is known.
    let mut at = vec![0.0; n + 1];
    let first = usize::from(!spans[0].held_left);
    let last = n - usize::from(!spans[n - 1].held_right);
    if first == 1 {
        at[1] = -loads[0].1 * loads[0].0.iter().map(|(a, p)| p * (length(0) - a)).sum::<f64>();
    }
    if last < n {
        at[last] = -loads[n - 1].1 * loads[n - 1].0.iter().map(|(a, p)| p * a).sum::<f64>();
    }
    // Elimination downward and back: the unknowns are the moments over the posts between the outer two.
    let (mut factors, mut rest) = (vec![0.0; n + 1], vec![0.0; n + 1]);
    rest[first] = at[first];
    for support in first + 1..last {
        let (left, right) = (length(support - 1), length(support));
        let before = loads[support - 1].0.iter().map(|(a, p)| p * a * (left * left - a * a) / left);
        let beyond = loads[support].0.iter().map(|(a, p)| (right - a, p));
        let beyond = beyond.map(|(b, p)| p * b * (right * right - b * b) / right);
        let from_left = loads[support - 1].1 * before.sum::<f64>();
        let from_right = loads[support].1 * beyond.sum::<f64>();
        let pivot = 2.0 * (left + right) - left * factors[support - 1];
        factors[support] = right / pivot;
        rest[support] = (-from_left - from_right - left * rest[support - 1]) / pivot;
    }
    for support in (first + 1..last).rev() {
        at[support] = rest[support] - factors[support] * at[support + 1];
    }
    (0..n).map(|index| [at[index], at[index + 1]]).collect()
}

/// Moments and shears of one span from its end moments and its loads; a free end has neither.
fn span_effect(length: f64, (load, share): Loaded, [left, right]: [f64; 2]) -> SpanEffect {
    let total = share * load.iter().map(|(_, p)| p).sum::<f64>();
    let turning = share * load.iter().map(|(a, p)| p * a).sum::<f64>();
    let start = total - turning / length + (right - left) / length;
    let moment = |x: f64| {
        let loads: f64 = load.iter().filter(|(a, _)| *a < x).map(|(a, p)| p * (x - a)).sum();
        left + start * x - share * loads
    };
    let places = [0.0, length].into_iter().chain(load.iter().map(|(a, _)| *a));
    let moments = places.map(|x| (Length::inches(x), moment(x))).collect();
    SpanEffect { moments, shears: [start, start - total] }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::analysis::{LedgerLoads, WallShares, roof_loads};
    use crate::evaluate;
    use crate::geometry::LedgerPiece;
    use crate::materials::Section;
    use crate::project::demo;
    use crate::units::{LineLoad, Stress};

    fn ledger(pieces: &[(f64, f64)], posts: &[f64], rafters: &[f64]) -> LedgerFrame {
        let piece = |(index, (start, end)): (usize, &(f64, f64))| LedgerPiece {
            number: index + 1,
            start: Length::inches(*start),
            end: Length::inches(*end),
            left_splice: false,
            right_splice: false,
        };
        let pieces: Vec<LedgerPiece> = pieces.iter().enumerate().map(piece).collect();
        let posts: Vec<Length> = posts.iter().copied().map(Length::inches).collect();
        let rafters: Vec<(Length, Length)> =
            rafters.iter().map(|x| (Length::inches(*x), Length::inches(20.0))).collect();
        let section = Section::new(Length::inches(4.0), Length::inches(10.0));
        LedgerFrame::new(&pieces, &posts, &rafters, (section, Stress::psi(1.1e6))).unwrap()
    }

    fn near(found: f64, expected: f64) {
        assert!((found - expected).abs() <= 1e-6 * expected.abs().max(1.0), "{found} is not {expected}");
    }

    /// Whole snow by three moments is what the frame solves, in every span and at every post: pieces with and without overhangs,
    /// a splice over a post, uneven spans.
    #[test]
    fn three_moments_agree_with_the_frame() {
        for (pieces, posts) in [
            (vec![(0.0, 300.0)], vec![10.0, 90.0, 200.0, 280.0]),
            (vec![(0.0, 154.0), (146.0, 300.0)], vec![0.0, 70.0, 150.0, 230.0, 290.0]),
            (vec![(0.0, 300.0)], vec![5.0, 260.0]),
        ] {
            let ledger = ledger(&pieces, &posts, &[3.0, 33.0, 66.0, 99.0, 132.0, 165.0, 198.0, 231.0, 264.0, 297.0]);
            let solved = ledger.frame.factorise(&ledger.frame.all_active()).unwrap();
            let strip = LineLoad::pounds_per_inch(1.0);
            let solution = solved.solve(&ledger.case(&LedgerLoads { strip, ..LedgerLoads::default() })).unwrap();
            let found = ledger.under(String::new(), &vec![1.0; ledger.spans.len()], &ledger.pieces(), &ledger.points());
            for (index, effect) in found.spans.iter().enumerate() {
                for (at, moment) in &effect.moments {
                    near(*moment, solution.moment(index).at(*at).to_pound_inches());
                }
                let shear = solution.shear(index);
                near(effect.shears[0], shear.at(Length::inches(1e-6)).to_pounds());
                near(effect.shears[1], shear.at(ledger.spans[index].length() - Length::inches(1e-6)).to_pounds());
            }
            // 4x10 of E 1.1e6 psi, and free ends as well as stretches between posts.
            let sags = found.sags(&ledger, 1.1e6 * 4000.0 / 12.0);
            for ((index, span), sag) in ledger.spans.iter().enumerate().zip(sags) {
                let expected = if span.is_overhang() {
                    solution.deflection(index).at(if span.held_left { span.length() } else { Length::ZERO })
                } else {
                    solution.deflection_from_chord(index).extremes().farthest()
                };
                assert!(
                    (sag.abs() - expected.abs()).is_near(Length::ZERO, Length::inches(1e-7)),
                    "{sag:?} {expected:?}"
                );
            }
            let width = WallShares::new(&ledger, &solved).unwrap().width;
            for (reaction, width) in found.reactions.iter().zip(width) {
                near(*reaction, width.to_inches());
            }
        }
    }

    /// Two spans of 100 in with a rafter of 20 lb amid each: over the middle post −3PL/16 whole, and 3PL/32 a span. Half gone from
    /// the right one: −3/32·2000·1.5 = −281.25; the left middle 500 − 140.625.
    #[test]
    fn half_on_a_span_by_hand() {
        let ledger = ledger(&[(0.0, 200.0)], &[0.0, 100.0, 200.0], &[50.0, 150.0]);
        let patterns = ledger.snow_patterns();
        assert_eq!(patterns.len(), 2);
        assert_eq!(patterns[0].name, "full on span 1, half elsewhere");
        let at = |x: f64| {
            let found =
                patterns[0].spans[0].moments.iter().find(|(at, _)| at.is_near(Length::inches(x), Length::inches(1e-9)));
            found.unwrap().1
        };
        near(at(100.0), -281.25);
        near(at(50.0), 500.0 - 140.625);
        near(patterns[0].reactions.iter().sum(), 30.0);
        near(patterns[0].reactions[0], 10.0 - 2.8125);
    }

    /// The same two spans: 20 lb amid a simple span of 100 in sag 20·100³/48 = 416,667 over EI, and the moment of −281.25 over
    /// the post lifts its middle by 281.25·100²/16 = 175,781; 10 lb amid the other, 208,333 less 175,781. The largest lies a
    /// little off the middle: 1 % more at most.
    #[test]
    fn a_stretch_sags_more_when_its_neighbour_lies_half_bare() {
        let ledger = ledger(&[(0.0, 200.0)], &[0.0, 100.0, 200.0], &[50.0, 150.0]);
        let stiff = 1e6;
        let sags = ledger.snow_patterns()[0].sags(&ledger, stiff);
        let by_hand = (416_666.7 - 175_781.25) / stiff;
        assert!(sags[0].to_inches() >= by_hand && sags[0].to_inches() < by_hand * 1.03, "{sags:?} {by_hand}");
        // Whole on both: −375 over the post, 416,667 − 234,375.
        assert!(sags[0].to_inches() > 1.25 * (416_666.7 - 234_375.0) / stiff);
    }

    /// One span and no overhang: nothing can lie half.
    #[test]
    fn one_span_has_no_patterns() {
        assert_eq!(ledger(&[(0.0, 100.0)], &[0.0, 100.0], &[50.0]).snow_patterns(), []);
    }

    /// Whole less half of the tail, and whole less half of what lies between: together they miss half of all.
    #[test]
    fn rafters_lose_half_of_a_part() {
        let project = demo::wool_barn();
        let built = evaluate(&project).built.unwrap();
        let loads = roof_loads(&project, &built.shape);
        let line = RafterLine::new(&built.shape, loads.lean_to.roof_length().length());
        let whole = loads.balanced.unwrap();
        let [tail, inside] = &partial_on_rafters(&line, &loads).unwrap();
        let load = |case: &RoofCase, y: Length| case.down.at(y).to_psf() / whole.to_psf();
        let (amid, out) = ((line.ledger + line.beam) / 2.0, (line.beam + line.eave) / 2.0);
        near(load(tail, amid), 1.0);
        near(load(tail, out), 0.5);
        near(load(inside, amid), 0.5);
        near(load(inside, out), 1.0);
        assert_eq!(tail.name, "balanced snow, half on the tail");
        let ledger = |case: &RoofCase| line.reactions(&case.down, &case.square).ledger;
        assert!(ledger(tail) > ledger(&loads.cases[1]), "half off the tail asks more of the ledger");
        let over = RafterLine { eave: line.beam, ..line };
        assert_eq!(partial_on_rafters(&over, &loads), None);
    }
}

//! How hard the beam would bend at each place were it one stick: by that the places of its scarfs are chosen.
//!
//! A beam of one section over its real posts, with a pound on it at each rafter. Taken twice, as green braces may be
//! either: slack, on the posts alone, and rigid, propped at the heads of its braces as well. Every span loaded, and the
//! patterns of partial snow. Between rafters and supports the moment is a straight line, so that it is known
//! everywhere from its values there. What is used is a share of the greatest moment: neither the load nor the wood counts, so
//! that pushes along the wall, soft joints and posts that sink, which are measured in both, are left to the check of the scarf.
use super::brace::Brace;
use super::brace_line::BraceLine;
use super::post::PostShape;
use super::spans::Spans;
use crate::frame::{Frame, FrameError, Inertia, LoadCase, Member, MemberLoad, Support};
use crate::project;
use crate::units::{Area, Force, Length, Moment, Stress, sort_by_number};

/// Supports nearer than this are one: a prop beside a post adds nothing, and spans too unlike are not solved well.
const SAME_SUPPORT: Length = Length::inches(1.0);

/// Moment of the uncut beam where a scarf is, as a share of the beam's greatest: 0 to 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bending {
    /// At the root of the lower lap.
    pub root: f64,
    /// At its middle, where it counts as a hinge.
    pub centre: f64,
    /// At the tip of the lower lap.
    pub tip: f64,
}

impl Bending {
    /// The greatest of the three.
    #[must_use]
    pub const fn worst(&self) -> f64 {
        self.root.max(self.centre).max(self.tip)
    }

    /// In words.
    #[must_use]
    pub fn says(&self) -> String {
        let [worst, middle] = [self.worst(), self.centre].map(|share| share * 100.0);
        format!("at its worst point the uncut beam bends {worst:.0} % of its most, at its middle {middle:.0} %")
    }
}

/// Moments of the beam without scarfs, case by case.
#[derive(Clone, Debug, PartialEq)]
pub struct UncutBeam {
    /// Ends, supports and rafters, left to right.
    knots: Vec<Length>,
    /// Moment at each knot, one list a case.
    cases: Vec<Vec<Moment>>,
    /// The greatest of them all, without sign.
    greatest: Moment,
}

impl UncutBeam {
    /// Of this frame.
    ///
    /// # Errors
    /// A beam that the frame solver refuses.
    pub fn new(
        frame: &project::Frame,
        posts: &[PostShape],
        braces: &[Brace],
        rafters: &[Length],
    ) -> Result<Self, FrameError> {
        let line = BraceLine::of(frame);
        let middles: Vec<Length> = posts.iter().map(PostShape::middle).collect();
        let heads: Vec<Length> = braces.iter().map(|brace| line.head_x(brace, posts)).collect();
        Self::over(frame.beam_length, &middles, &heads, rafters)
    }

    fn over(beam: Length, posts: &[Length], heads: &[Length], rafters: &[Length]) -> Result<Self, FrameError> {
        let is_on = |x: &Length| *x >= Length::ZERO && *x <= beam;
        let mut knots: Vec<Length> = [Length::ZERO, beam].into_iter().collect();
        knots.extend([posts, heads, rafters].concat().into_iter().filter(is_on));
        sort_by_number(&mut knots, |knot| knot.to_inches());
        knots.dedup();
        let spans = Spans::between(posts.to_vec(), beam);
        let mut patterns = vec![vec![1.0; spans.count()]];
        patterns.extend(spans.partial().into_iter().map(|pattern| pattern.shares));
        let mut cases = Vec::new();
        let props: &[&[Length]] = if heads.is_empty() { &[&[]] } else { &[&[], heads] };
        for props in props {
            let model = Model::new(beam, posts, props);
            let by_span = model.moments(&spans, rafters, &knots)?;
            cases.extend(patterns.iter().map(|pattern| sum(pattern, &by_span, knots.len())));
        }
        let greatest = cases.iter().flatten().map(|moment| moment.abs()).fold(Moment::ZERO, Moment::max);
        Ok(Self { knots, cases, greatest })
    }

    /// What it does where a scarf would be.
    #[must_use]
    pub fn at_scarf(&self, root: Length, centre: Length, tip: Length) -> Bending {
        Bending { root: self.share(root), centre: self.share(centre), tip: self.share(tip) }
    }

    /// The greatest moment at `x` in any case, as a share of the greatest along the beam: 0 to 1. Nothing bends past
    /// the beam's ends.
    #[must_use]
    pub fn share(&self, x: Length) -> f64 {
        if self.greatest <= Moment::ZERO {
            return 0.0;
        }
        let after = self.knots.partition_point(|knot| *knot < x);
        let (Some(to), Some(from)) = (self.knots.get(after), self.knots.get(after.saturating_sub(1))) else {
            return 0.0;
        };
        let along = if after == 0 { 0.0 } else { (x - *from) / (*to - *from) };
        let here = |case: &Vec<Moment>| {
            let (a, b) = (case[after.saturating_sub(1)], case[after]);
            (a + (b - a) * along).abs()
        };
        self.cases.iter().map(here).fold(Moment::ZERO, Moment::max) / self.greatest
    }
}

/// Each span's moments times its share, added up.
fn sum(shares: &[f64], by_span: &[Vec<Moment>], n_knots: usize) -> Vec<Moment> {
    let at = |knot: usize| shares.iter().zip(by_span).map(|(share, moments)| moments[knot] * *share).sum();
    (0..n_knots).map(at).collect()
}

/// The beam on one set of supports.
struct Model {
    frame: Frame,
    /// Places of the nodes; member i runs from node i to the next.
    nodes: Vec<Length>,
}

impl Model {
    fn new(beam: Length, posts: &[Length], props: &[Length]) -> Self {
        let is_prop = |x: &&Length| {
            let is_new = posts.iter().all(|post| (*post - **x).abs() > SAME_SUPPORT);
            is_new && **x > SAME_SUPPORT && **x < beam - SAME_SUPPORT
        };
        let mut supports: Vec<Length> = posts.iter().chain(props.iter().filter(is_prop)).copied().collect();
        sort_by_number(&mut supports, |support| support.to_inches());
        supports.dedup_by(|a, b| (*a - *b).abs() <= SAME_SUPPORT);
        let mut nodes = supports.clone();
        if nodes.first().is_none_or(|first| *first > Length::ZERO) {
            nodes.insert(0, Length::ZERO);
        }
        if nodes.last().is_none_or(|last| *last < beam) {
            nodes.push(beam);
        }
        let mut frame = Frame::default();
        for (index, x) in nodes.iter().enumerate() {
            let node = frame.add_node(format!("place {index} of the beam"), *x, Length::ZERO);
            if supports.contains(x) {
                let is_first = frame.supports.is_empty();
                frame.supports.push(if is_first { Support::pinned(node) } else { Support::roller(node) });
            }
        }
        let (modulus, area, inertia) = (Stress::psi(1e6), Area::square_inches(100.0), Inertia::inches_4(1000.0));
        for from in 0..nodes.len() - 1 {
            frame.add_member(Member::elastic(
                format!("stretch {from} of the beam"),
                (from, from + 1),
                modulus,
                area,
                inertia,
            ));
        }
        Self { frame, nodes }
    }

    fn member_at(&self, x: Length) -> (usize, Length) {
        let after = self.nodes.partition_point(|node| *node < x).clamp(1, self.nodes.len() - 1);
        (after - 1, x - self.nodes[after - 1])
    }

    /// Moments at the knots with the rafters of one span loaded, span by span.
    fn moments(&self, spans: &Spans, rafters: &[Length], knots: &[Length]) -> Result<Vec<Vec<Moment>>, FrameError> {
        let split = self.frame.factorise(&self.frame.all_active())?;
        let mut by_span = Vec::with_capacity(spans.count());
        for span in 0..spans.count() {
            let on_it = rafters.iter().filter(|rafter| spans.holding(**rafter) == span);
            let load = |rafter: &Length| {
                let (member, at) = self.member_at(*rafter);
                MemberLoad::down(member, at, Force::pounds(1.0))
            };
            let case = LoadCase { members: on_it.map(load).collect(), ..LoadCase::default() };
            let solution = split.solve(&case)?;
            let diagrams: Vec<_> = (0..self.nodes.len() - 1).map(|member| solution.moment(member)).collect();
            let read = |knot: &Length| {
                let (member, at) = self.member_at(*knot);
                diagrams[member].at(at)
            };
            by_span.push(knots.iter().map(read).collect());
        }
        Ok(by_span)
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    fn inches(list: &[f64]) -> Vec<Length> {
        list.iter().map(|x| Length::inches(*x)).collect()
    }

    /// A rafter every inch, half an inch off the ends: as good as a pound an inch spread evenly.
    fn even(beam: usize, posts: &[f64], heads: &[f64]) -> UncutBeam {
        let rafters: Vec<Length> = (0..beam).map(|n| Length::inches(n as f64 + 0.5)).collect();
        UncutBeam::over(Length::inches(beam as f64), &inches(posts), &inches(heads), &rafters).unwrap()
    }

    fn moment(uncut: &UncutBeam, case: usize, x: f64) -> f64 {
        let at = uncut.knots.iter().position(|knot| (knot.to_inches() - x).abs() < 1e-9).unwrap();
        uncut.cases[case][at].to_pound_inches()
    }

    fn check(what: &str, found: f64, expected: f64, tolerance: f64) {
        assert!((found - expected).abs() <= tolerance, "{what}: {found} is not {expected}");
    }

    /// w·L²/8 over the middle support, w·L²·9/128 at 3/8 L, nothing at L/4 from the middle support. Half the load on one
    /// span: w·(1 + ½)·L²/16.
    #[test]
    fn two_even_spans() {
        let uncut = even(240, &[0.0, 120.0, 240.0], &[]);
        // The even case, then each span full with the other half loaded.
        assert_eq!(uncut.cases.len(), 3);
        let support = 120.0_f64.powi(2) / 8.0;
        check("over the support", moment(&uncut, 0, 120.0), -support, 1.0);
        check("the greatest", uncut.greatest.to_pound_inches(), support, 1.0);
        check("span", moment(&uncut, 0, 45.5), 120.0_f64.powi(2) * 9.0 / 128.0, 1.0);
        assert!(moment(&uncut, 0, 89.5) > 0.0 && moment(&uncut, 0, 90.5) < 0.0);
        check("at a quarter", moment(&uncut, 0, 90.5) + moment(&uncut, 0, 89.5), 0.0, 3.0);
        for case in [1, 2] {
            check("half on one", moment(&uncut, case, 120.0), -1.5 * 120.0_f64.powi(2) / 16.0, 1.0);
        }
        check("share over the support", uncut.share(Length::inches(120.0)), 1.0, 1e-9);
        for end in [0.0, 240.0, -5.0, 300.0] {
            check("past the ends", uncut.share(Length::inches(end)), 0.0, 1e-9);
        }
        // One span with q and the other with half or twice that: M(x) = (q·L/2 − 1½·w·L/16)·x − q·x²/2.
        let partial = |q: f64| (q / 2.0 - 1.5 / 16.0) * 120.0 * 90.5 - q * 90.5_f64.powi(2) / 2.0;
        check("full on it", moment(&uncut, 1, 90.5), partial(1.0), 1.0);
        check("half on it", moment(&uncut, 2, 90.5), partial(0.5), 1.0);
        check("its share", uncut.share(Length::inches(90.5)), partial(0.5).abs().max(partial(1.0)) / support, 2e-3);
    }

    /// Three spans a, b, a: over the inner supports −w·(a³ + b³)/(4·(2a + 3b)). With slack braces one span b + 2a, w·L²/8.
    #[test]
    fn braces_slack_and_rigid() {
        let uncut = even(160, &[0.0, 160.0], &[40.0, 120.0]);
        assert_eq!(uncut.cases.len(), 2);
        check("slack", moment(&uncut, 0, 80.5), 160.0_f64.powi(2) / 8.0, 1.0);
        check("rigid", moment(&uncut, 1, 40.0), -(40.0_f64.powi(3) + 80.0_f64.powi(3)) / (4.0 * 320.0), 1.0);
        // The slack one governs everywhere: w·x·(L − x)/2 by w·L²/8.
        check("share", uncut.share(Length::inches(40.0)), 0.75, 1e-3);
        check("between two knots", uncut.share(Length::inches(40.2)), 40.2 * 119.8 / 6400.0, 1e-3);
    }

    /// An end that reaches out is a span of its own: w·c²/2 over its post, whatever the other spans carry.
    #[test]
    fn an_end_that_reaches_out() {
        let uncut = even(200, &[50.0, 150.0], &[]);
        for case in 0..uncut.cases.len() {
            let over = moment(&uncut, case, 50.0) / -1250.0;
            assert!((over - 1.0).abs() < 1e-9 || (over - 0.5).abs() < 1e-9, "{over}");
        }
        check("share", uncut.share(Length::inches(50.0)), 1.0, 1e-9);
    }

    /// Props beside a post, beside each other or off the beam make no support of their own.
    #[test]
    fn props_that_are_none() {
        let plain = even(240, &[10.0, 120.0, 230.0], &[60.0]);
        let more = even(240, &[10.0, 120.0, 230.0], &[60.0, 60.5, 120.5, -20.0, 239.9]);
        for x in [30.0, 60.0, 100.0, 119.0, 170.0] {
            check("share", more.share(Length::inches(x)), plain.share(Length::inches(x)), 1e-9);
        }
    }
}

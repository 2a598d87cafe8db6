//! Balanced snow that lies whole on some spans of the ledger and half on others.
use super::governing::most;
use super::ledger::{Asked, Ledger};
use crate::analysis::{LedgerPattern, SpanEffect};
use crate::loads::Action;
use crate::units::{Force, Length, Moment};

/// Every such way, with what the dead load does at the same places.
pub(super) struct Patches {
    /// Place of the combination of the whole snow among those asked.
    whole: usize,
    /// The snow alone, in pounds an inch of ledger.
    strip: f64,
    patterns: Vec<LedgerPattern>,
    dead: Vec<SpanEffect>,
    dead_reactions: Vec<Force>,
}

/// The hardest of a kind: the pattern, the span, the value and its place on the span.
pub(super) struct Hardest<'a, Q> {
    pub(super) asked: &'a Asked,
    pub(super) pattern: &'a str,
    pub(super) span: usize,
    pub(super) value: Q,
    pub(super) at: Length,
}

impl Patches {
    /// Nothing where there is no snow, or where no piece is continuous.
    ///
    /// # Errors
    /// Where the numbers are too far apart for an answer.
    pub(super) fn new(ledger: &Ledger) -> Result<Option<Self>, String> {
        let balanced = ledger.roof.cases.iter().position(|case| case.action == Action::Snow);
        let is_whole = |asked: &Asked| matches!(asked.loading.parts[..], [(_, index)] if Some(index) == balanced);
        let whole = ledger.asked.iter().position(|asked| !asked.loading.is_uplift && is_whole(asked));
        let dead = ledger.asked.iter().find(|asked| asked.loading.parts.is_empty());
        let (Some(whole), Some(dead)) = (whole, dead) else { return Ok(None) };
        let patterns = ledger.frame.snow_patterns();
        let Some(first) = patterns.first() else { return Ok(None) };
        let solution = ledger.solved.solve(&ledger.frame.case(&dead.loads)).map_err(|error| error.to_string())?;
        let at_places = |(index, effect): (usize, &SpanEffect)| {
            let (moment, shear) = (solution.moment(index), solution.shear(index));
            let moments = effect.moments.iter().map(|(at, _)| (*at, moment.at(*at).to_pound_inches())).collect();
            let length = ledger.frame.spans[index].length();
            SpanEffect { moments, shears: [shear.at(Length::ZERO), shear.at(length)].map(Force::to_pounds) }
        };
        let of_dead = first.spans.iter().enumerate().map(at_places).collect();
        let posts = 0..ledger.frame.posts.len();
        Ok(Some(Self {
            whole,
            strip: (ledger.asked[whole].loads.strip - dead.loads.strip).to_pounds_per_inch(),
            dead: of_dead,
            dead_reactions: posts.map(|post| ledger.shares.reaction(post, &dead.loads)).collect(),
            patterns,
        }))
    }

    /// Each way with the snow's strip, in pounds an inch of ledger.
    pub(super) fn patterns(&self) -> impl Iterator<Item = (&LedgerPattern, f64)> {
        self.patterns.iter().map(|pattern| (pattern, self.strip))
    }

    /// The largest moment under the rafters and over the posts; the ledger's own weight between them is too little to move it.
    pub(super) fn moment<'a>(&'a self, ledger: &'a Ledger) -> Option<Hardest<'a, Moment>> {
        let all = self.patterns.iter().flat_map(|pattern| {
            pattern.spans.iter().zip(&self.dead).enumerate().flat_map(move |(span, (snow, dead))| {
                let places = snow.moments.iter().zip(&dead.moments);
                places.map(move |((at, snow), (_, dead))| (pattern, span, dead + snow * self.strip, *at))
            })
        });
        let (pattern, span, value, at) = most(all, |(_, _, value, _)| value.abs())?;
        Some(self.hardest(ledger, pattern, span, (Moment::pound_inches(value), at)))
    }

    /// The largest shear beside a post.
    pub(super) fn shear<'a>(&'a self, ledger: &'a Ledger) -> Option<Hardest<'a, Force>> {
        let all = self.patterns.iter().flat_map(|pattern| {
            pattern.spans.iter().zip(&self.dead).enumerate().flat_map(move |(span, (snow, dead))| {
                let of = &ledger.frame.spans[span];
                let ends = [(of.held_left, Length::ZERO, 0), (of.held_right, of.length(), 1)];
                let held = ends.into_iter().filter(|(held, _, _)| *held);
                held.map(move |(_, at, end)| (pattern, span, dead.shears[end] + snow.shears[end] * self.strip, at))
            })
        });
        let (pattern, span, value, at) = most(all, |(_, _, value, _)| value.abs())?;
        Some(self.hardest(ledger, pattern, span, (Force::pounds(value), at)))
    }

    fn hardest<'a, Q>(
        &'a self,
        ledger: &'a Ledger,
        pattern: &'a LedgerPattern,
        span: usize,
        (value, at): (Q, Length),
    ) -> Hardest<'a, Q> {
        Hardest { asked: &ledger.asked[self.whole], pattern: &pattern.name, span, value, at }
    }

    /// The largest reaction at each post of the wall, down, with its pattern and the combination of the whole snow.
    pub(super) fn reactions<'a>(
        &'a self,
        ledger: &'a Ledger,
    ) -> impl Iterator<Item = (usize, Force, &'a str, &'a Asked)> {
        let worst = move |post: usize| {
            let of = |pattern: &&LedgerPattern| pattern.reactions.get(post).copied().unwrap_or_default();
            let pattern = most(self.patterns.iter(), of)?;
            let reaction = self.dead_reactions[post] + Force::pounds(of(&pattern) * self.strip);
            Some((post, reaction, pattern.name.as_str(), &ledger.asked[self.whole]))
        };
        (0..self.dead_reactions.len()).filter_map(worst)
    }
}

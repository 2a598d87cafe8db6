//! What the rafters hand to ledger and beam under each combination, by statics alone.
use super::loading::Loading;
use super::rafter_line::{RafterLine, StripReactions};
use super::roof_cases::RoofCase;
use super::roof_dead::{Pair, RoofDead};
use crate::loads::Spread;
use crate::units::{AreaLoad, Force, Length};

/// One rafter's own weight on its two seats.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OwnWeight {
    /// On the ledger.
    pub ledger: Force,
    /// On the beam.
    pub beam: Force,
}

/// Every case as a strip of roof one unit wide hands it on, and the weights: a combination is then a sum.
#[derive(Clone, Debug, PartialEq)]
pub struct RafterHand {
    cases: Vec<StripReactions>,
    cover: Pair<StripReactions>,
    own: Pair<OwnWeight>,
}

impl RafterHand {
    /// Of one rafter line under these cases. A force at one place of one stick is no part of it.
    #[must_use]
    pub fn new(line: &RafterLine, dead: &RoofDead, cases: &[RoofCase]) -> Self {
        let even = |load: AreaLoad| line.reactions(&Spread::uniform(Length::ZERO, line.eave, load), &Spread::default());
        // Weight a length of plan over a strip of a foot gives the share of the seats.
        let foot = Length::feet(1.0);
        let own = |weight: crate::units::LineLoad| {
            let shares = even(weight / foot);
            OwnWeight { ledger: shares.ledger * foot, beam: shares.beam * foot }
        };
        Self {
            cases: cases.iter().map(|case| line.reactions(&case.down, &case.square)).collect(),
            cover: Pair { heavy: even(dead.cover.heavy), light: even(dead.cover.light) },
            own: Pair { heavy: own(dead.rafter.heavy), light: own(dead.rafter.light) },
        }
    }

    /// A unit width of roof, the rafters' own weight left out.
    #[must_use]
    pub fn strip(&self, loading: &Loading) -> StripReactions {
        let dead = self.cover.of(loading.is_uplift).times(loading.dead);
        let of = |(factor, index): &(f64, usize)| self.cases[*index].times(*factor);
        loading.parts.iter().map(of).fold(dead, StripReactions::plus)
    }

    /// One rafter's own weight.
    #[must_use]
    pub fn own(&self, loading: &Loading) -> OwnWeight {
        let own = self.own.of(loading.is_uplift);
        OwnWeight { ledger: own.ledger * loading.dead, beam: own.beam * loading.dead }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::analysis::{RafterBeam, loadings, rafter_frame, roof_loads};
    use crate::evaluate;
    use crate::project::demo;
    use crate::units::Stress;

    /// Statics gives the same seats as the frame that solves the rafter, in every combination.
    #[test]
    fn statics_agrees_with_the_frame() {
        let project = demo::wool_barn();
        let built = evaluate(&project).built.unwrap();
        let loads = roof_loads(&project, &built.shape);
        let line = RafterLine::new(&built.shape, loads.lean_to.roof_length().length());
        let frame = rafter_frame(&line, project.frame.timbers.rafter.sawn, Stress::psi(1.1e6));
        let beam = RafterBeam::new(line, &frame).unwrap();
        let hand = RafterHand::new(&line, &loads.dead, &loads.cases);
        let width = Length::inches(24.0);
        for loading in loadings(project.place.edition, &loads.cases, loads.dead.sure) {
            let solved = beam.forces(&loading, &loads.cases, &loads.dead, width).unwrap();
            let (strip, own) = (hand.strip(&loading), hand.own(&loading));
            let found = [strip.ledger * width + own.ledger, strip.beam * width + own.beam];
            for (found, solved) in found.into_iter().zip([solved.ledger, solved.beam]) {
                assert!((found - solved).abs().to_pounds() < 1e-6, "{}: {found:?} {solved:?}", loading.name);
            }
        }
    }
}

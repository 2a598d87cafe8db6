//! The ties of the rafters in an earthquake across the wall, as far as the user has given the site's values.
//!
//! Across the wall the posts only lean: the whole base shear goes through the rafters into the ledger, and what stands on the beam
//! line comes to the rafters there, no more than half of it. Toward the wall the heels bear; away from it the ties hold alone.
use super::check::Check;
use super::rafter::widest_rafter;
use super::ties::{AT_BEAM, AT_LEDGER, hardest, unknown};
use crate::analysis::{
    Demand, Found, Loading, Origin, RafterHand, RafterLine, RoofLoads, Shaking, earthquake_on_line, earthquake_on_roof,
    loadings,
};
use crate::design::Shape;
use crate::loads::Action;
use crate::project::Project;
use crate::units::{Fixed, Force, Length};
use crate::working::{Citation, Step};

/// Name of both checks.
const PULLS_ACROSS: &str = "pulls on its ties in an earthquake across the wall";

/// Both ties of the rafter that carries most; nothing where the site has no values of earthquakes.
#[must_use]
pub fn check_ties_across(project: &Project, shape: &Shape, loads: &RoofLoads) -> Vec<Check> {
    if project.place.seismic.is_none() {
        return Vec::new();
    }
    let (widest, width) = widest_rafter(project, shape);
    let mark = format!("R{}", widest + 1);
    let line = RafterLine::new(shape, loads.lean_to.roof_length().length());
    let carried = loads.dead.cover.heavy * width + loads.dead.rafter.heavy;
    let Some(shaking) = earthquake_on_line(project, shape, loads, (&line, carried * line.eave)) else {
        return Vec::new();
    };
    let check = |at| match &shaking {
        Ok(shaking) => Shaken { project, loads, line: &line, width, shaking }.check(&mark, at),
        Err(why) => Some(unknown((&mark, PULLS_ACROSS, at), why.clone())),
    };
    [AT_LEDGER, AT_BEAM].into_iter().filter_map(check).collect()
}

/// One rafter, its share of the roof, and what shakes it.
struct Shaken<'a> {
    project: &'a Project,
    loads: &'a RoofLoads,
    line: &'a RafterLine,
    width: Length,
    shaking: &'a Shaking,
}

impl Shaken<'_> {
    fn check(&self, mark: &str, at: &'static str) -> Option<Check> {
        let cases = earthquake_on_roof(self.shaking.sure);
        let hand = RafterHand::new(self.line, &self.loads.dead, &cases);
        let all = loadings(self.project.place.edition, &cases, self.loads.dead.sure).into_iter();
        let demands = all.filter_map(|loading| {
            let across = loading.factor(&cases, Action::SeismicSideways).abs();
            let dead = loading.dead + loading.factor(&cases, Action::SeismicDown) * self.shaking.vertical;
            let loading = Loading { dead, ..loading };
            let (strip, own) = (hand.strip(&loading), hand.own(&loading));
            let presses = match at {
                AT_LEDGER => strip.ledger * self.width + own.ledger,
                _ => strip.beam * self.width + own.beam,
            };
            (across > 0.0).then(|| Demand {
                value: (-presses, self.push(at) * across),
                combination: loading.name.clone(),
                duration: loading.duration,
                origin: Origin::of(&loading, Found::Formula("moments about the seats")),
            })
        });
        hardest((mark, PULLS_ACROSS, at), self.project, demands, |pull, level| self.steps(at, pull, level))
    }

    /// What comes to this rafter, unfactored: of the whole at the ledger, of the beam line's half at the beam.
    fn push(&self, at: &str) -> Force {
        let lines = if at == AT_LEDGER { 2.0 } else { 1.0 };
        self.shaking.push * lines * (self.width / self.loads.lean_to.width)
    }

    fn steps(&self, at: &str, pull: Force, level: Force) -> Vec<Step> {
        let whole =
            if at == AT_LEDGER { "all of the base shear" } else { "the half of the base shear on the beam line" };
        let presses = if pull.is_negative() { "pressed down" } else { "lifted" };
        let says = format!(
            "{whole}, by the roof carried {}/{} of it: {} lb, with the factor of the combination {} lb; {presses} by {} lb at once",
            Fixed(self.width.to_inches(), 1),
            Fixed(self.loads.lean_to.width.to_inches(), 1),
            Fixed(self.push(at).to_pounds(), 0),
            Fixed(level.to_pounds(), 0),
            Fixed(pull.abs().to_pounds(), 0)
        );
        let step = Step::new(
            "pull off the wall of one rafter",
            says,
            Citation::from_memory("statics", "posts lean, the wall holds"),
        );
        self.shaking.steps.iter().cloned().chain([step]).collect()
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::analysis::roof_loads;
    use crate::evaluate;
    use crate::loads::{DesignCategory, Seismic};
    use crate::project::demo;
    use crate::units::UnitSystem;

    fn checks(category: DesignCategory) -> Vec<Check> {
        let mut barn = demo::wool_barn();
        barn.place.seismic = Some(Seismic { s_ds: 2.0, category, importance: 1.0 });
        let built = evaluate(&barn).built.unwrap();
        check_ties_across(&barn, &built.shape, &roof_loads(&barn, &built.shape))
    }

    /// The base shear of 11,926 lb of the ledger's fixings: 24 of 420 in of it are 681.5 lb, 0.7 of that 477 lb on two ties that
    /// hold 300 lb sideways each, times 1.6; at the beam half of it. The roof presses both seats down.
    #[test]
    fn the_barn_by_hand() {
        let found = checks(DesignCategory::C);
        let [head, seat] = &found[..] else { unreachable!("both ends of the rafter") };
        for (check, push) in [(head, 11_926.0), (seat, 11_926.0 / 2.0)] {
            let level = 0.7 * push * 24.0 / 420.0;
            assert!(
                check.combination.ends_with("0.7E_h: earthquake up or down, earthquake sideways"),
                "{}",
                check.combination
            );
            assert!((check.ratio().unwrap() - level / (2.0 * 300.0 * 1.6)).abs() < 1e-4, "{check:?}");
            assert!(check.steps().iter().any(|step| step.says.contains("pressed down by ")), "{check:?}");
        }
        assert_eq!((head.at.as_ref(), seat.at.as_ref()), (AT_LEDGER, AT_BEAM));
    }

    #[test]
    fn without_values_nothing_and_without_a_shear_no_answer() {
        let calm = demo::wool_barn();
        let built = evaluate(&calm).built.unwrap();
        assert!(check_ties_across(&calm, &built.shape, &roof_loads(&calm, &built.shape)).is_empty());
        let open = checks(DesignCategory::D);
        assert_eq!(open.len(), 2);
        assert!(open.iter().all(|check| check.says(UnitSystem::Imperial).contains("categories D to F")));
    }
}

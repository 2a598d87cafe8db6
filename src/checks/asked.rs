//! What is asked of a check before the wood comes in, and what that rests on.
use super::check::{Under, Way};
use crate::analysis::{Demand, FootForces, Found, Loading, Origin};
use crate::loads::Duration;
use crate::members::Amount;
use crate::units::{Force, UnitSystem};
use crate::working::{Citation, Confidence, Step};

/// Amounts that are asked, and where they come from. Its text is made when it is read.
#[derive(Clone, Debug, PartialEq)]
pub struct Asked {
    /// Symbol or word, and amount.
    pub amounts: Vec<(&'static str, Amount)>,
    /// Where they come from.
    pub origin: Origin,
}

/// Name of the step.
pub const WHAT_IS_ASKED: &str = "what is asked";
/// Heading of the list of all cases of the beam line in the calculation.
pub const CASES_OF_THE_LINE: &str = "The beam line, case by case";

impl Asked {
    /// The first step of the check's working: the amounts, the combination, the parts.
    #[must_use]
    pub fn step(&self, combination: &str) -> Step {
        let amounts: Vec<String> =
            self.amounts.iter().map(|(of, amount)| format!("{of} = {}", says(*amount))).collect();
        let amounts = amounts.join(", ");
        // A movement knows no load duration.
        let is_movement = self.amounts.iter().all(|(_, amount)| matches!(amount, Amount::Length(_)));
        let factor = if is_movement { String::new() } else { format!(", C_D = {:.2}", self.origin.duration.factor()) };
        let under = if combination.is_empty() { "no load".to_owned() } else { combination.to_owned() };
        let text = format!("{amounts} under {under}{factor}{}{}", self.parts(), self.doubts());
        let (document, clause) = match self.origin.found {
            Found::BeamLine { .. } => ("statics", "plane frame by the stiffness method"),
            Found::Rafter { .. } => ("statics", "stiffness method, span and tail as one stick"),
            Found::Formula(clause) => ("statics", clause),
        };
        Step::new(WHAT_IS_ASKED, text, Citation { document, clause, confidence: self.origin.confidence() })
    }

    fn parts(&self) -> String {
        let of = |force: Force| says(Amount::Force(force));
        match self.origin.found {
            Found::BeamLine { row, dead, roof, push, piers } => {
                let mut text =
                    format!("; on the line {} of the roof's dead load, {} of its other loads", of(dead), of(roof));
                if push != Force::ZERO {
                    text += &format!(", {} along it", of(push));
                }
                if let Some(piers) = piers {
                    let way = if piers.is_negative() { "down" } else { "up" };
                    text += &format!("; with beam and posts the piers hold {way} {}", of(piers.abs()));
                }
                match row {
                    Some(row) => text + &format!("; case {row} of \u{201c}{CASES_OF_THE_LINE}\u{201d}"),
                    None => text + "; the beam taken as one stick, without its scarfs",
                }
            }
            Found::Rafter { width, dead, ledger, beam } => format!(
                "; {:.1} in of roof, its dead load times {dead:.2}; the ledger holds up {}, the beam {}",
                width.to_inches(),
                of(ledger),
                of(beam)
            ),
            Found::Formula(_) => String::new(),
        }
    }

    fn doubts(&self) -> String {
        let mut text = String::new();
        if self.origin.loads == Confidence::Low {
            text += "; a load in it rests on a placeholder, marked among the loads of the calculation";
        }
        if self.origin.is_sprung {
            text += "; it hangs on the stiffness of the braces' joints, a placeholder";
        }
        text
    }
}

/// As the steps that follow write it.
fn says(amount: Amount) -> String {
    match amount {
        Amount::Moment(moment) => crate::members::moment_text(moment),
        other => other.text(UnitSystem::Imperial),
    }
}

impl Under {
    /// A combination on one stick.
    pub(super) fn of(loading: &Loading, found: Found) -> Self {
        Self::from_origin(loading.name.clone(), None, Origin::of(loading, found))
    }

    /// One load by itself.
    pub(super) fn alone(name: impl Into<String>, sure: Confidence, found: Found) -> Self {
        Self::from_origin(name.into(), None, Origin::alone(sure, Duration::TwoMonths, found))
    }

    pub(super) const fn from_origin(combination: String, way: Option<Way>, origin: Origin) -> Self {
        Self { combination, way, asked: Some(Asked { amounts: Vec::new(), origin }) }
    }

    /// Of that amount.
    pub(super) fn asks(mut self, of: &'static str, amount: impl Into<Amount>) -> Self {
        if let Some(asked) = &mut self.asked {
            asked.amounts.push((of, amount.into()));
        }
        self
    }

    /// The way is not told.
    pub(super) fn no_way(self) -> Self {
        Self { way: None, ..self }
    }
}

/// What the amounts of a demand are called.
pub(super) trait Amounts {
    fn named(&self, under: Under) -> Under;
}

impl Amounts for Force {
    fn named(&self, under: Under) -> Under {
        under.asks("P", *self)
    }
}

impl Amounts for FootForces {
    fn named(&self, under: Under) -> Under {
        under.asks("up", self.up).asks("level", self.level)
    }
}

impl<Q: Amounts> From<&Demand<Q>> for Under {
    fn from(demand: &Demand<Q>) -> Self {
        demand.value.named(Self::from_origin(demand.combination.clone(), None, demand.origin))
    }
}

/// A demand that a test gives, of loads that are a placeholder.
#[cfg(test)]
pub(super) fn given<Q>(value: Q, combination: &str, duration: Duration) -> Demand<Q> {
    let origin = Origin::alone(Confidence::Low, duration, Found::Formula("given"));
    Demand { value, combination: combination.to_owned(), duration, origin }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::checks::{Check, Outcome, Strength, WEAKEST_LINK};
    use crate::evaluate;
    use crate::project::{Project, demo};
    use crate::units::Moment;

    fn strength(project: &Project) -> std::sync::Arc<Strength> {
        evaluate(project).strength.unwrap()
    }

    fn found<'a>(strength: &'a Strength, member: &str, name: &str, at: &str) -> &'a Check {
        let is_it = |check: &&Check| check.member == member && check.name == name && check.at == at;
        strength.checks.iter().find(is_it).unwrap()
    }

    fn pounds(check: &Check) -> (f64, f64, f64) {
        let Found::BeamLine { dead, roof, piers, .. } = check.asked.as_ref().unwrap().origin.found else {
            unreachable!("{check:?}")
        };
        (dead.to_pounds(), roof.to_pounds(), piers.unwrap().to_pounds())
    }

    /// A chain is of checks that say it themselves; the sizes of joints are asked by nothing.
    #[test]
    fn every_check_of_a_load_says_what_is_asked() {
        for project in [demo::wool_barn(), demo::log_store()] {
            let strength = strength(&project);
            let judged = strength.checks.iter().filter(|check| check.ratio().is_some() && check.hangs_on_loads);
            for check in judged.filter(|check| check.name != WEAKEST_LINK && !check.combination.is_empty()) {
                let first = check.working().remove(0);
                assert_eq!(first.gives, WHAT_IS_ASKED, "{check:?}");
                assert!(!check.asked.as_ref().unwrap().amounts.is_empty(), "{check:?}");
                assert!(first.says.contains(&check.combination), "{first:?}");
            }
        }
    }

    /// Snow of 33.6 psf on 138.97 in, of which the beam takes (69.485 − 2.5)/125.5, on 408 + 2·6 in of wall: 7,269 lb. It presses on 8x10
    /// of 133.33 in³: f_b = M/S is what the check weighs. With slack braces 71,519 lb·in over P3 (`tests/reference/beam_line.json`).
    #[test]
    fn the_beam_s_parts_by_hand() {
        let strength = strength(&demo::wool_barn());
        let check = found(&strength, "B2", "bends", "over P3");
        let (dead, roof, piers) = pounds(check);
        let snow = 33.6 * 138.970_143 / 12.0 * (69.485_071 - 2.5) / 125.5 * 420.0 / 12.0;
        assert!((roof / snow - 1.0).abs() < 1e-4, "{roof} {snow}");
        let asked = check.asked.as_ref().unwrap();
        let [("M", Amount::Moment(moment))] = asked.amounts[..] else { unreachable!("{asked:?}") };
        let Outcome::Judged(worked) = &check.outcome else { unreachable!("{check:?}") };
        let Amount::Stress(stress) = worked.value.demand else { unreachable!("{check:?}") };
        let modulus = moment.to_pound_inches() / stress.to_psi();
        assert!((modulus - 800.0 / 6.0).abs() < 1e-6, "{modulus}");
        // Its row is the case it is of, and holds that moment.
        let line = strength.line.as_ref().unwrap();
        let Found::BeamLine { row: Some(row), .. } = asked.origin.found else { unreachable!("{asked:?}") };
        let solved = &line.solved[row - 1];
        assert_eq!(check.combination, format!("{} ({})", line.cases[solved.case].name, solved.model.words()));
        let sizes = solved.beam.iter().map(|part| part.moment.max.max(-part.moment.min));
        let most = sizes.fold(Moment::ZERO, Moment::max);
        assert_eq!(most, moment);
        assert!((solved.weight.to_pounds() - piers).abs() < 1e-9);
        // The weight of beam and posts is the same in every case with the whole dead load.
        let other = pounds(found(&strength, "B1", "bends", "at the pocket of K1R"));
        assert!((piers - dead - roof - (other.2 - other.0 - other.1)).abs() < 1e-3, "{other:?}");
        let says = asked.step(&check.combination).says;
        assert!(says.starts_with("M = 71,519 lb-in under D + S: balanced snow (braces slack), C_D = 1.15;"), "{says}");
        assert!(says.contains(&format!("case {row} of \u{201c}{CASES_OF_THE_LINE}\u{201d}")), "{says}");
    }

    /// Soft joints, wind on components and what hangs on them are placeholders; slack braces under snow are not.
    #[test]
    fn a_check_is_no_surer_than_what_is_asked() {
        let strength = strength(&demo::wool_barn());
        let sure = |member, name, at| {
            let check = found(&strength, member, name, at);
            let Outcome::Judged(worked) = &check.outcome else { unreachable!("{check:?}") };
            (worked.confidence(), check.confidence().unwrap())
        };
        let (own, all) = sure("B3", "bends", "in bay 3");
        assert!(own < Confidence::Low && all == Confidence::Low);
        let (own, all) = sure("R2", "is pressed on its seat", "on the beam");
        assert!(own < Confidence::Low && all == Confidence::Low);
        assert!(sure("B1", "bends", "at the pocket of K1R").1 < Confidence::Low);
        assert!(sure("R2", "bends", "between ledger and beam").1 < Confidence::Low);
        // A chain is no surer than its links.
        let path = strength.checks.iter().find(|check| check.name == WEAKEST_LINK && check.ratio().is_some());
        assert!(path.is_none_or(|path| path.confidence() == Some(Confidence::Low)), "{path:?}");
    }
}

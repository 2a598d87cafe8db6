//! One check and what came of it.
use std::sync::Arc;

use super::asked::Asked;
use super::governing::most;
use super::part::Part;
use crate::analysis::Demand;
use crate::members::{Amount, Verdict};
use crate::units::{Length, UnitSystem};
use crate::unmade::{Input, Unmade};
use crate::working::{Confidence, Step, Worked};

/// What came of a check.
#[derive(Clone, Debug, PartialEq)]
pub enum Outcome {
    /// Demand against capacity, with the working.
    Judged(Arc<Worked<Verdict>>),
    /// It could not be made.
    NotJudged(NotJudged),
}

/// Why a check could not be made.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotJudged {
    /// What is missing, in a sentence.
    pub why: String,
    /// The reason alone, the same for all that cannot be made because of it.
    pub cause: String,
    /// The datum it waits for, where it is one the user can give.
    pub missing: Option<Input>,
}

/// What the lean-to leans on, which no check of ours can judge.
pub const EXISTING_WALL: &str = "existing wall";

/// Which way the roof takes what holds it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Pressed.
    Down,
    /// Lifted.
    Up,
}

impl Way {
    /// By whether it lifts.
    #[must_use]
    pub const fn of(lifts: bool) -> Self {
        if lifts { Self::Up } else { Self::Down }
    }
}

/// The combination a check was made under.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Under {
    /// Its name with its cases; empty where it is of none.
    pub combination: String,
    /// Which way the roof goes in it; nothing where it is not told.
    pub way: Option<Way>,
    /// What it asks, where loads ask it.
    pub asked: Option<Asked>,
}

impl From<String> for Under {
    fn from(combination: String) -> Self {
        Self { combination, way: None, asked: None }
    }
}

impl From<&String> for Under {
    fn from(combination: &String) -> Self {
        combination.clone().into()
    }
}

impl From<&str> for Under {
    fn from(combination: &str) -> Self {
        combination.to_owned().into()
    }
}

/// One check of one stick, joint or part.
#[derive(Clone, Debug, PartialEq)]
pub struct Check {
    /// Mark of the stick, or the part: `B2`, `R7`, `scarf 1`, `footing of P2`.
    pub member: String,
    /// What is checked, as a verb phrase that reads on after the member: `bends`, `pulls on its screws`.
    pub name: String,
    /// Where on it, in words; empty where it is everywhere alike.
    pub at: String,
    /// Place along the beam's x, where it has one: the drawings colour it there.
    pub x: Option<Length>,
    /// The combination that governs.
    pub combination: String,
    /// The part that it is about.
    pub part: Part,
    /// Whether it says nothing while a load is not known; a check of sizes alone holds all the same.
    pub hangs_on_loads: bool,
    /// Whether it is of sizes and distances alone: kept or not, they are no work of a stick.
    pub is_of_sizes: bool,
    /// Which way the roof takes what is checked in that combination; nothing where it is not told.
    pub way: Option<Way>,
    /// Asked of the combinations of its way alone: a link of that way and no more, since another check asks more.
    pub is_link: bool,
    /// Whether someone else must judge it, whatever is known here: a standing word, not a gap that an answer would close.
    pub is_for_others: bool,
    /// What is asked before the wood comes in; nothing of a check of sizes alone.
    pub asked: Option<Asked>,
    /// What came of it.
    pub outcome: Outcome,
}

impl Check {
    /// A check that was made, or the sentence that says why not.
    pub fn new<E: Into<Unmade>>(
        member: impl Into<String>,
        name: impl Into<String>,
        at: impl Into<String>,
        under: impl Into<Under>,
        made: Result<Worked<Verdict>, E>,
    ) -> Self {
        let under = under.into();
        let outcome = match made {
            Ok(worked) => Outcome::Judged(Arc::new(worked)),
            Err(why) => {
                let Unmade { says, missing } = why.into();
                let cause = says.strip_prefix(NOT_JUDGED).unwrap_or(&says).to_owned();
                Outcome::NotJudged(NotJudged { why: format!("{NOT_JUDGED}{cause}"), cause, missing })
            }
        };
        Self {
            member: member.into(),
            name: name.into(),
            at: at.into(),
            x: None,
            combination: under.combination,
            way: under.way,
            is_link: false,
            is_for_others: false,
            asked: under.asked,
            part: Part::default(),
            hangs_on_loads: true,
            is_of_sizes: false,
            outcome,
        }
    }

    /// A check that cannot be made.
    pub fn not_judged(member: impl Into<String>, name: impl Into<String>, why: impl Into<Unmade>) -> Self {
        Self::new(member, name, "", "", Err::<Worked<Verdict>, Unmade>(why.into()))
    }

    /// The check of that demand among many that asks most of its capacity; nothing where there is no demand.
    ///
    /// `judge` gives the verdict of one demand; an error of one is the answer for all.
    pub fn worst<Q, E: Into<Unmade>>(
        member: &str,
        name: &str,
        at: &str,
        demands: &[Demand<Q>],
        judge: impl Fn(&Demand<Q>) -> Result<Worked<Verdict>, E>,
    ) -> Option<Self>
    where
        for<'a> Under: From<&'a Demand<Q>>,
    {
        let made = demands.iter().map(|demand| Self::new(member, name, at, demand, judge(demand)));
        Self::worst_of(made)
    }

    /// At a place along the beam.
    #[must_use]
    pub fn at_x(mut self, x: Length) -> Self {
        self.x = Some(x);
        self
    }

    /// Of that part.
    #[must_use]
    pub fn part(mut self, part: Part) -> Self {
        self.part = part;
        self
    }

    /// A check of sizes, whatever the loads are.
    #[must_use]
    pub fn of_sizes(mut self) -> Self {
        self.hangs_on_loads = false;
        self.of_distances()
    }

    /// A check of distances that some load asks for.
    #[must_use]
    pub fn of_distances(mut self) -> Self {
        self.is_of_sizes = true;
        self
    }

    /// The same check, not made for that reason; `beside` is what is known all the same.
    #[must_use]
    pub(super) fn unmade(&self, why: &Unmade, beside: &str) -> Self {
        let mut check = Self::new(&self.member, &self.name, &self.at, "", Err::<Worked<Verdict>, _>(why));
        if let Outcome::NotJudged(not) = &mut check.outcome {
            not.why = format!("{}. {beside}", not.why.trim_end_matches('.'));
        }
        Self { x: self.x, way: self.way, is_link: self.is_link, part: self.part, ..check }
    }

    /// In that combination the roof goes this way.
    #[must_use]
    pub fn going(mut self, way: Way) -> Self {
        self.way = Some(way);
        self
    }

    /// Of the combinations of one way alone.
    #[must_use]
    pub fn only(self, way: Way) -> Self {
        Self { is_link: true, ..self.going(way) }
    }

    /// The worst of some; nothing where there is none.
    #[must_use]
    pub fn worst_of(checks: impl IntoIterator<Item = Self>) -> Option<Self> {
        most(checks.into_iter(), Self::rank)
    }

    /// Demand by capacity; nothing where it was not judged.
    #[must_use]
    pub fn ratio(&self) -> Option<f64> {
        match &self.outcome {
            Outcome::Judged(worked) => Some(worked.value.ratio),
            Outcome::NotJudged(_) => None,
        }
    }

    /// The datum it waits for; nothing where it was made, or could not be for another reason.
    #[must_use]
    pub fn missing(&self) -> Option<Input> {
        match &self.outcome {
            Outcome::Judged(_) => None,
            Outcome::NotJudged(not) => not.missing,
        }
    }

    /// Whether it is of sizes and distances alone, and they are kept.
    #[must_use]
    pub fn is_kept(&self) -> bool {
        self.is_of_sizes && self.passes()
    }

    /// How hard a stick works by it: its ratio, but of a size that is kept, which is no work.
    #[must_use]
    pub fn effort(&self) -> Option<f64> {
        self.ratio().filter(|_| !self.is_kept())
    }

    /// Order of badness: over one, then not judged, then by ratio; then sizes that are kept; last what is for others to judge.
    #[must_use]
    pub fn rank(&self) -> f64 {
        match self.ratio() {
            _ if self.is_for_others => -2.0,
            Some(ratio) if self.is_kept() => ratio - 1.0 - 1e-6,
            ratio => ratio.unwrap_or(1.0),
        }
    }

    /// The same, for others to judge.
    #[must_use]
    pub fn for_others(self) -> Self {
        Self { is_for_others: true, ..self }
    }

    /// Whether it was made and holds.
    #[must_use]
    pub fn passes(&self) -> bool {
        matches!(&self.outcome, Outcome::Judged(worked) if worked.value.passes())
    }

    /// Its whole working: what is asked, then the steps that led there.
    #[must_use]
    pub fn working(&self) -> Vec<Step> {
        let asked = self.asked.iter().map(|asked| asked.step(&self.combination));
        asked.chain(self.steps().iter().cloned()).collect()
    }

    /// As sure as the weakest it rests on, what is asked counted; nothing where it was not judged.
    #[must_use]
    pub fn confidence(&self) -> Option<Confidence> {
        let Outcome::Judged(worked) = &self.outcome else { return None };
        let asked = self.asked.as_ref().map_or(Confidence::High, |asked| asked.origin.confidence());
        Some(worked.confidence().max(asked))
    }

    /// The steps that led there from what is asked.
    #[must_use]
    pub fn steps(&self) -> &[Step] {
        match &self.outcome {
            Outcome::Judged(worked) => &worked.steps,
            Outcome::NotJudged(_) => &[],
        }
    }

    /// Documents and clauses its working names, each once.
    #[must_use]
    pub fn sources(&self) -> String {
        let mut named: Vec<String> = Vec::new();
        for Step { citation, .. } in self.working() {
            let source = citation.place();
            if !named.contains(&source) {
                named.push(source);
            }
        }
        named.join("; ")
    }

    /// `B2 bends over post 2: 84 % of what it may, under D + S: leeward drift`.
    #[must_use]
    pub fn says(&self, units: UnitSystem) -> String {
        let Self { member, name, at, combination, .. } = self;
        let place = if at.is_empty() { String::new() } else { format!(" {at}") };
        match &self.outcome {
            Outcome::NotJudged(not) => {
                let why = not.why.trim_end_matches('.');
                let amounts = self.asked.iter().filter(|_| not.missing.is_some()).flat_map(|asked| &asked.amounts);
                let amounts: Vec<String> =
                    amounts.map(|(of, amount)| format!("{of} = {}", amount.text(units))).collect();
                if amounts.is_empty() {
                    return format!("{member} {name}{place}: {}", not.why);
                }
                format!("{member} {name}{place}: {why}; it has to take {} under {combination}", amounts.join(", "))
            }
            Outcome::Judged(worked) => {
                let under = if combination.is_empty() { String::new() } else { format!(", under {combination}") };
                format!("{member} {name}{place}: {}{under}", share_text(&worked.value, self.is_of_sizes, units))
            }
        }
    }
}

/// `84 % of what it may`, of sizes `84 % of the limit`, or the amounts where nothing is allowed at all.
fn share_text(verdict: &Verdict, is_of_sizes: bool, units: UnitSystem) -> String {
    if verdict.ratio == 0.0 {
        return "nothing is asked".to_owned();
    }
    if verdict.ratio.is_finite() && is_of_sizes {
        return format!("{:.0} % of the limit", verdict.ratio * 100.0);
    }
    if verdict.ratio.is_finite() {
        return format!("{:.0} % of what it may", verdict.ratio * 100.0);
    }
    let allowed = match verdict.capacity {
        Amount::Ratio(_) => "nothing".to_owned(),
        amount => amount.text(units),
    };
    format!("asks {} where {allowed} is allowed", verdict.demand.text(units))
}

/// How the sentence of a check that was not made begins.
const NOT_JUDGED: &str = "not judged: ";

#[cfg(test)]
mod tests {
    use super::*;
    use crate::loads::Duration;
    use crate::units::Force;

    fn demand(pounds: f64, combination: &str) -> Demand<Force> {
        crate::checks::asked::given(Force::pounds(pounds), combination, Duration::TwoMonths)
    }

    fn judge(demand: &Demand<Force>) -> Result<Worked<Verdict>, String> {
        Ok(Worked::new(Verdict::force(demand.value, Force::pounds(100.0)), Vec::new()))
    }

    #[test]
    fn the_worst_speaks_plainly() {
        let demands = [demand(50.0, "D"), demand(84.0, "D + S: leeward drift")];
        let check = Check::worst("R7", "pulls on its screws", "at the beam", &demands, judge);
        let check = check.unwrap_or_else(|| Check::not_judged("R7", "pulls", "no demand"));
        assert_eq!(
            check.says(UnitSystem::Imperial),
            "R7 pulls on its screws at the beam: 84 % of what it may, under D + S: leeward drift"
        );
        assert!(check.passes());
        // What is asked stands first, and the check is no surer than it.
        assert_eq!(
            check.working()[0].says,
            "P = 84 lb under D + S: leeward drift, C_D = 1.15; a load in it rests on a placeholder, marked among the loads of the calculation"
        );
        assert_eq!(check.confidence(), Some(Confidence::Low));
        assert_eq!(Check::worst::<Force, String>("R7", "pulls", "", &[], judge), None);
    }

    #[test]
    fn what_is_missing_does_not_pass() {
        let check = Check::not_judged("footing of P1", "presses on the soil", "the soil is missing");
        assert!(!check.passes());
        assert_eq!(check.ratio(), None);
        assert_eq!(
            check.says(UnitSystem::Imperial),
            "footing of P1 presses on the soil: not judged: the soil is missing"
        );
    }
}

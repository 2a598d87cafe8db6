//! A project with its whole answer, and whether another one is no worse.
use std::sync::Arc;

use crate::checks::{Check, Strength};
use crate::design::Built;
use crate::evaluate;
use crate::project::{Problem, Project};
use crate::units::{Money, Weight};

/// A project that can be built, with its frame and its checks.
#[derive(Clone, Debug)]
pub struct Judged {
    /// The project.
    pub project: Project,
    /// Its frame.
    pub built: Arc<Built>,
    /// Its checks.
    pub strength: Arc<Strength>,
    /// What to look at.
    pub problems: Vec<Problem>,
}

/// Most checks that are named where some would fail.
const SAID: usize = 3;

/// Why a change is not offered.
#[derive(Clone, Debug)]
pub enum Refusal {
    /// The frame cannot be built with it, or can move.
    Stops,
    /// It brings a problem that was not there.
    Problem,
    /// A check that holds now would fail, or more checks would: the frame with it, and those checks in words.
    Weaker(Box<Judged>, Vec<String>),
}

impl Judged {
    /// Works a project out; nothing where it cannot be built.
    #[must_use]
    pub fn of(project: Project) -> Option<Self> {
        let design = evaluate(&project);
        let (built, strength) = (design.built?, design.strength?);
        Some(Self { project, built, strength, problems: design.problems })
    }

    /// The project with a change, where nothing is worse with it than it is here.
    ///
    /// # Errors
    /// What would be worse.
    pub fn changed(&self, project: Project) -> Result<Self, Refusal> {
        let after = Self::of(project).ok_or(Refusal::Stops)?;
        if self.has_new_problem(&after.problems) {
            return Err(Refusal::Problem);
        }
        if self.is_less_known(&after) {
            return Err(Refusal::Stops);
        }
        let falls = self.falls(&after);
        if falls.is_empty() { Ok(after) } else { Err(Refusal::Weaker(Box::new(after), falls)) }
    }

    /// More checks cannot be made: too many hinges, so that the beam line can move.
    fn is_less_known(&self, after: &Self) -> bool {
        let n_open = |judged: &Self| judged.strength.not_judged().count();
        n_open(after) > n_open(self)
    }

    /// Some field has more problems than here.
    fn has_new_problem(&self, after: &[Problem]) -> bool {
        let of = |all: &[Problem], field: &str| all.iter().filter(|problem| problem.field == field).count();
        after.iter().any(|problem| of(after, &problem.field) > of(&self.problems, &problem.field))
    }

    /// The checks there that fail and held here, or are new; none where no more fail there than here and all that hold stay.
    fn falls(&self, after: &Self) -> Vec<String> {
        let (before, then) = (&self.strength.checks, &after.strength.checks);
        let n_failing = |checks: &[Check]| checks.iter().filter(|check| !check.passes()).count();
        let same = |a: &Check, b: &Check| (&a.member, &a.name) == (&b.member, &b.name);
        let is = |check: &Check, holds: bool| before.iter().any(|known| same(known, check) && known.passes() == holds);
        let falls = |check: &&Check| !check.passes() && is(check, true) && !is(check, false);
        let is_new = |check: &&Check| !check.passes() && !is(check, false);
        let mut all: Vec<&Check> = then.iter().filter(falls).collect();
        let more = n_failing(then).saturating_sub(n_failing(before));
        if more > 0 && all.is_empty() {
            all.extend(then.iter().filter(is_new));
        }
        if more > 0 && all.is_empty() {
            all.extend(then.iter().filter(|check| !check.passes()));
        }
        let more = all.len().saturating_sub(SAID);
        let mut said: Vec<String> = all.iter().take(SAID).map(|check| check.says(self.project.units)).collect();
        said.extend((more > 0).then(|| format!("and {more} more")));
        said
    }

    /// Price of the timber.
    #[must_use]
    pub fn price(&self) -> Money {
        self.built.order.price
    }

    /// The heaviest piece of the beam, its mark and its green weight.
    #[must_use]
    pub fn heaviest_piece(&self) -> (String, Weight) {
        let pieces = self.built.sticks.iter().filter(|stick| stick.role == crate::tickets::Role::Beam);
        let heaviest = pieces.max_by(|a, b| a.green_weight.to_pounds().total_cmp(&b.green_weight.to_pounds()));
        heaviest.map_or((String::new(), Weight::ZERO), |stick| (stick.mark.clone(), stick.green_weight))
    }

    /// The greatest ratio among the checks of members of that kind.
    #[must_use]
    pub fn worst(&self, is_asked: impl Fn(&str) -> bool) -> Option<f64> {
        let asked = self.strength.checks.iter().filter(|check| is_asked(&check.member));
        asked.filter_map(Check::ratio).reduce(f64::max)
    }

    /// The greatest ratio among the checks of all scarfs.
    #[must_use]
    pub fn worst_scarf(&self) -> Option<f64> {
        self.worst(|member| member.starts_with("scarf "))
    }
}

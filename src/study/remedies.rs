//! Single changes that would make a failing check hold, each tried on the whole project.
use std::sync::Arc;

use super::changes::{Ladder, Try};
use super::stepper::{Progress, Stepper};
use super::way_in::{no_fit, no_way_in};
use crate::checks::{Check, Input, NOTCHED_IN_PULL, Part, Strength, WEAKEST_LINK, roof_checks, strength};
use crate::design::{Built, Design};
use crate::lay_out;
use crate::ordering::Costs;
use crate::ordering::hauling::Hauling;
use crate::project::{Problem, Project};
use crate::units::Money;

/// One change that helps.
#[derive(Clone, Debug, PartialEq)]
pub struct Remedy {
    /// What is changed, in words.
    pub says: String,
    /// The project with it.
    pub project: Project,
    /// The share the same kind of check comes to then; of a way, that of its weakest known link.
    pub ratio: f64,
    /// The member that is asked most of then and its share, where it could be judged.
    pub worst: Option<(String, f64)>,
    /// What the job costs then ([`price`]).
    pub price: Money,
}

/// Most remedies that are offered for one check.
const MOST: usize = 3;
/// Most checks that may fall for a change that is offered all the same.
const MOST_FALLS: usize = 1;

/// Up to three single changes, each of another kind, after which no check of that kind fails, and no more checks than before;
/// cheapest first. Of changes of one kind the smallest that helps is taken, and kinds are tried from the cheap
/// to the dear until three help. Changes that leave a stick without a way in, bring a problem, or make a check fail that held say so, and are offered
/// only where too few others are found.
#[must_use]
pub fn remedies(project: &Project, strength: &Arc<Strength>, failing: &Check) -> Vec<Remedy> {
    let mut helps = Helps::new(project, strength, failing);
    while !helps.next_step().is_done() {}
    helps.found()
}

/// Whether there is anything to look for: a check that fails, one that waits for fasteners which can be worked out, or a notch for
/// which there is no rule in sticks that thick.
#[must_use]
pub fn can_be_helped(check: &Check) -> bool {
    !check.passes()
        && (check.ratio().is_some() || check.missing() == Some(Input::Scarf) || check.name == NOTCHED_IN_PULL)
}

/// The search for [`remedies`], one change a step.
pub struct Helps {
    before: Before,
    /// Kinds that are still to be tried, of the one in hand the changes that are left; each kind the last change first.
    waiting: Vec<Ladder>,
    /// Of the kind in hand the smallest change that helps, but.
    but: Option<Remedy>,
    found: Vec<Remedy>,
    stuck: Vec<Remedy>,
    done: usize,
}

impl Helps {
    /// The search for what helps that check of a project; `strength` is its own.
    #[must_use]
    pub fn new(project: &Project, strength: &Arc<Strength>, failing: &Check) -> Self {
        let mut waiting = ladders(project, strength, failing);
        waiting.retain(|ladder| !ladder.is_empty());
        waiting.iter_mut().for_each(|ladder| ladder.reverse());
        waiting.reverse();
        let before = Before {
            project: project.clone(),
            strength: Arc::clone(strength),
            failing: failing.clone(),
            laid: lay_out(project),
        };
        Self { before, waiting, but: None, found: Vec::new(), stuck: Vec::new(), done: 0 }
    }

    /// What was found so far, as [`remedies`] has it.
    #[must_use]
    pub fn found(&self) -> Vec<Remedy> {
        let sorted = |all: &[Remedy]| {
            let mut all = all.to_vec();
            crate::units::sort_by_number(&mut all, |remedy| remedy.price.to_f64());
            all
        };
        let mut all = sorted(&self.found);
        all.extend(sorted(&self.stuck));
        all.truncate(MOST);
        all
    }

    /// The kind in hand is done with.
    fn next_kind(&mut self) {
        self.done += self.waiting.pop().map_or(0, |left| left.len());
        self.stuck.extend(self.but.take());
        if self.found.len() == MOST {
            self.waiting.clear();
        }
    }
}

impl Stepper for Helps {
    fn next_step(&mut self) -> Progress {
        if let Some((says, changed)) = self.waiting.last_mut().and_then(Vec::pop) {
            self.done += 1;
            match self.before.tried(says, changed, self.but.is_none()) {
                Some((remedy, true)) => {
                    self.found.push(remedy);
                    self.but = None;
                    self.next_kind();
                }
                Some((remedy, false)) => self.but = self.but.take().or(Some(remedy)),
                None => {}
            }
        }
        if self.waiting.last().is_some_and(Vec::is_empty) {
            self.next_kind();
        }
        Progress { done: self.done, of: self.done + self.waiting.iter().map(Vec::len).sum::<usize>() }
    }
}

/// What the job costs without hauling, as far as its prices are known.
#[must_use]
pub fn price(project: &Project, built: &Built) -> Money {
    let at_the_yard = Hauling { loads: Vec::new(), least: 0, left_behind: Vec::new(), carries: Vec::new() };
    Costs::of(project, built, &at_the_yard).total()
}

/// What a change is held against.
struct Before {
    project: Project,
    strength: Arc<Strength>,
    failing: Check,
    laid: Design,
}

impl Before {
    /// The change, where it helps, and whether nothing speaks against it; one that something speaks against only where `may_but`.
    /// What costs least is asked first.
    fn tried(&self, mut says: String, changed: Project, may_but: bool) -> Option<(Remedy, bool)> {
        let Design { problems, built, .. } = lay_out(&changed);
        let built = built?;
        let is_own_kind = self.failing.part == Part::Scarf
            && changed.frame.scarfs.kind == self.project.frame.scarfs.kind
            && changed.exceptions != self.project.exceptions;
        let problem = self.new_problem(&problems);
        if problem.is_some() && (is_own_kind || !may_but) || !self.may_hold(&changed, &built) {
            return None;
        }
        let after = strength(&changed, &built.shape);
        let share = if is_own_kind { of_member(&after, &self.failing) } else { worst_alike(&after, &self.failing) };
        let ratio = share.filter(|ratio| *ratio <= 1.0)?;
        let falls = falls(&self.strength, &after).filter(|falls| may_but || falls.is_empty())?;
        let mut against = match &self.laid.built {
            Some(own) if self.failing.part == Part::Pegs => {
                no_fit((&self.project, &own.shape), (&changed, &built.shape))
            }
            _ => no_way_in(&changed, &built.shape),
        };
        against.extend(falls.iter().map(|check| check.says(changed.units)));
        against.extend(problem.map(|problem| problem.says.trim_end_matches('.').to_owned()));
        against.iter().for_each(|why| says.push_str(&format!("; but {why}")));
        let worst = after.hardest().map(|(check, ratio)| (check.member.clone(), ratio));
        let price = price(&changed, &built);
        Some((Remedy { says, project: changed, ratio, worst, price }, against.is_empty()))
    }

    /// What asks nothing of the beam line is looked at without it.
    fn may_hold(&self, changed: &Project, built: &Built) -> bool {
        let failing = &self.failing;
        let is_roof = matches!(
            failing.part,
            Part::Rafter
                | Part::RafterHead
                | Part::RafterSeat
                | Part::Purlin
                | Part::PurlinScrews
                | Part::SheetScrews
                | Part::Ledger
                | Part::LedgerFixings
        );
        if !is_roof || failing.name == WEAKEST_LINK {
            return true;
        }
        let over = |check: &Check| is_alike(check, failing) && check.ratio().is_some_and(|ratio| ratio > 1.0);
        !roof_checks(changed, &built.shape).iter().any(over)
    }

    /// A field that has more problems than before.
    fn new_problem<'p>(&self, after: &'p [Problem]) -> Option<&'p Problem> {
        let n = |all: &[Problem], field: &str| all.iter().filter(|problem| problem.field == field).count();
        after.iter().find(|problem| n(after, &problem.field) > n(&self.laid.problems, &problem.field))
    }
}

/// Checks of one kind: the same of one part; of ways each for itself.
fn is_alike(a: &Check, b: &Check) -> bool {
    a.name == b.name && if a.name == WEAKEST_LINK { a.member == b.member } else { a.part == b.part }
}

/// The checks of a kind that held before and fails then; nothing where they are many, or more checks fail than before.
fn falls<'a>(before: &Strength, after: &'a Strength) -> Option<Vec<&'a Check>> {
    let open = |all: &Strength| all.checks.iter().filter(|check| !check.passes()).count();
    let failed = |check: &Check| before.checks.iter().any(|known| !known.passes() && is_alike(known, check));
    let falls: Vec<&Check> = after.checks.iter().filter(|check| !check.passes() && !failed(check)).collect();
    (falls.len() <= MOST_FALLS && open(after) <= open(before)).then_some(falls)
}

/// The worst ratio of the checks of that name on the same member.
fn of_member(strength: &Strength, failing: &Check) -> Option<f64> {
    let same = strength.checks.iter().filter(|check| (&check.member, &check.name) == (&failing.member, &failing.name));
    same.filter_map(Check::ratio).reduce(f64::max)
}

/// The worst ratio of the checks of the same kind that could be made; nothing where none could, or one of them still waits
/// for what this one waits for. A way is as its weakest link.
fn worst_alike(strength: &Strength, failing: &Check) -> Option<f64> {
    if let Some(way) = strength.paths.iter().find(|path| path.name == failing.member) {
        return way.weakest()?.ratio;
    }
    let alike = || strength.checks.iter().filter(|check| is_alike(check, failing));
    let waits = failing.missing().is_some_and(|missing| alike().any(|check| check.missing() == Some(missing)));
    alike().filter_map(Check::ratio).reduce(f64::max).filter(|_| !waits)
}

/// Kinds of changes worth trying, the cheap ones first.
fn ladders(project: &Project, strength: &Strength, failing: &Check) -> Vec<Ladder> {
    let to = Try { project };
    let member = failing.member.as_str();
    match failing.part {
        Part::Whole => Vec::new(),
        Part::Rafter if failing.name == NOTCHED_IN_PULL => vec![to.thinner_rafters()],
        Part::Rafter => to.for_rafter(),
        Part::RafterHead => {
            vec![to.more_ties("each rafter on the ledger", |f| &mut f.rafter_head), to.rafters_closer()]
        }
        Part::RafterSeat => vec![to.more_ties("each rafter on the beam", |f| &mut f.rafter_seat), to.rafters_closer()],
        Part::Beam => to.for_beam(),
        Part::Scarf => to.for_scarf(strength, member),
        Part::Post => to.for_post(),
        Part::Pegs => to.for_pegs(strength, &failing.name),
        Part::PostBase => to.for_base(),
        Part::Footing => to.for_footing(&failing.name),
        Part::Brace => to.for_brace(),
        Part::Purlin => {
            vec![to.purlins_closer(), to.larger_purlins(), to.rafters_closer()]
        }
        Part::PurlinScrews => to.for_purlin_screws(),
        Part::SheetScrews => to.for_sheet_screws(),
        Part::Ledger => to.for_ledger(),
        Part::LedgerFixings => to.for_ledger_fixings(),
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::project::{JointException, ScarfKind, demo};
    use crate::units::AreaLoad;

    fn first_failing(project: &Project, wanted: Part) -> (Arc<Strength>, Check) {
        let strength = evaluate(project).strength.unwrap();
        let fails = |check: &&Check| check.ratio().is_some_and(|ratio| ratio > 1.0) && check.part == wanted;
        let check = strength.checks.iter().find(fails).unwrap().clone();
        (strength, check)
    }

    #[test]
    fn each_remedy_makes_the_check_hold() {
        let mut project = demo::wool_barn();
        for (wanted, snow) in [(Part::Beam, 90.0), (Part::Scarf, 40.0)] {
            project.place.ground_snow = Some(AreaLoad::psf(snow));
            let (strength, check) = first_failing(&project, wanted);
            let found = remedies(&project, &strength, &check);
            assert!(!found.is_empty() && found.len() <= MOST, "{wanted:?}");
            for remedy in found {
                let after = evaluate(&remedy.project).strength.unwrap();
                assert_eq!(
                    remedy.worst.map(|(_, ratio)| ratio),
                    after.hardest().map(|(_, ratio)| ratio),
                    "{}",
                    remedy.says
                );
                assert!(falls(&strength, &after).is_some(), "{}", remedy.says);
            }
        }
    }

    /// Three pieces of 8x12 weigh a fifth more than of 8x10: 450 lb to lift becomes 540, without which only four would do, and
    /// they fold. The next deeper beam is still tried.
    #[test]
    fn a_deeper_beam_may_want_a_stronger_crew() {
        let project = demo::wool_barn();
        let deeper = Try { project: &project }.larger_beam();
        let (says, changed) = &deeper[0];
        assert_eq!(says, "beam of 8x12, with a crew that lifts 540 lb");
        assert_eq!(evaluate(changed).built.unwrap().shape.beam.scarfs.len(), 2);
    }

    /// A scarf too thin at its roots gets the plainest kind that holds, alone, where it stands: by hand, the abutments of a
    /// stop-splayed one leave three quarters of the depth where a halved one leaves half.
    #[test]
    fn one_scarf_may_be_of_a_kind_of_its_own() {
        let mut project = demo::wool_barn();
        let places = evaluate(&project).built.unwrap().shape.beam.scarfs.iter().map(|scarf| scarf.place).collect();
        project.frame.scarfs.by_hand = places;
        project.frame.scarfs.kind = ScarfKind::Halved;
        let strength = evaluate(&project).strength.unwrap();
        let is_it = |check: &&Check| check.member == "scarf 2" && check.name.contains("thin") && !check.passes();
        let check = strength.checks.iter().find(is_it).unwrap().clone();
        let found = remedies(&project, &strength, &check);
        let own: Vec<_> = found.iter().filter(|remedy| remedy.says.contains(" alone ")).collect();
        let says: Vec<&str> = found.iter().map(|remedy| remedy.says.as_str()).collect();
        assert_eq!(own.len(), 1, "{says:?}");
        assert!(own[0].says.starts_with("scarf 2 alone stop-splayed"), "{says:?}");
        let after = &own[0].project;
        assert_eq!((after.scarf_kind(1), after.scarf_kind(2)), (ScarfKind::Halved, ScarfKind::StopSplayed));
        assert_eq!(after.frame, project.frame);
        let strength = evaluate(after).strength.unwrap();
        assert_eq!(of_member(&strength, &check), Some(own[0].ratio));
        assert!(own[0].ratio <= 1.0);
        for remedy in &found {
            let built = evaluate(&remedy.project).built.unwrap();
            let no_way = no_way_in(&remedy.project, &built.shape);
            assert!(no_way.iter().all(|why| remedy.says.contains(why.as_str())), "{}", remedy.says);
        }
    }

    /// The same change made again is the frame's own kind: nothing of the joint's own is left over.
    #[test]
    fn a_scarf_goes_back_to_the_kind_of_the_frame() {
        let mut project = demo::wool_barn();
        let own = JointException { scarf_kind: Some(ScarfKind::Halved), ..JointException::default() };
        project.exceptions.insert("S1".to_owned(), own);
        let strength = evaluate(&project).strength.unwrap();
        let all = Try { project: &project }.own_scarf_kind(&strength, "scarf 1");
        let back = all.iter().find(|(says, _)| says.ends_with(ScarfKind::StopSplayedUnderSquinted.name())).unwrap();
        assert!(back.1.exceptions.is_empty());
        let whole = Try { project: &project }.scarf_kind();
        assert!(whole[0].1.exceptions.is_empty());
    }
}

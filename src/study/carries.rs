//! Whether a stick still carries at the size it came in: the checks made again with every stick of its role that small.
//!
//! All sticks of the role are taken that small, not the one alone: the answer asks too much of the others, never too little
//! of this one.
use std::cell::RefCell;
use std::rc::Rc;

use crate::checks::{Check, Strength};
use crate::design::Built;
use crate::evaluate::evaluate;
use crate::materials::Section;
use crate::project::{HAIR, Problem, Progress, Project, Role};
use crate::tickets::Stick;

/// What came of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Carries {
    /// The worst share of what it may, at the size the frame was reckoned with; nothing where no check of it was made.
    pub before: Option<f64>,
    /// The same at its own size.
    pub after: Option<f64>,
    /// No check that held before fails, or can no longer be made.
    pub holds: bool,
    /// In words; empty where it is as large as the frame was reckoned with.
    pub says: String,
}

type Answer = Rc<Result<Strength, String>>;

/// The answers so far, by role and size: pieces of one size are worked out once.
pub(super) struct Reckoned<'a> {
    project: &'a Project,
    built: &'a Built,
    strength: &'a Strength,
    known: RefCell<Vec<(Role, Section, Answer)>>,
}

impl<'a> Reckoned<'a> {
    pub(super) const fn new(project: &'a Project, built: &'a Built, strength: &'a Strength) -> Self {
        Self { project, built, strength, known: RefCell::new(Vec::new()) }
    }

    /// A stick of that size, the smallest it measures.
    pub(super) fn at(&self, stick: &Stick, section: Section) -> Carries {
        let before = worst(self.of(stick, self.strength)).and_then(Check::ratio);
        let sawn = stick.timber.sawn;
        if section.breadth + HAIR >= sawn.breadth && section.depth + HAIR >= sawn.depth {
            return Carries { before, after: before, holds: true, says: String::new() };
        }
        let answer = self.answer(stick.role, section);
        match answer.as_ref() {
            Err(why) => {
                let says = format!("with all {} that small the frame cannot be laid out: {why}", stick.role.plural());
                Carries { before, after: None, holds: false, says }
            }
            Ok(strength) => self.compare(stick, strength, before),
        }
    }

    fn answer(&self, role: Role, section: Section) -> Answer {
        let known = self.known.borrow().iter().find(|(of, size, _)| *of == role && *size == section).cloned();
        if let Some((_, _, answer)) = known {
            return answer;
        }
        let mut project = Project { progress: Progress::default(), ..self.project.clone() };
        project.frame.timbers.of_mut(role).sawn = section;
        let design = evaluate(&project);
        let answer: Answer = Rc::new(match design.strength {
            Some(strength) => Ok((*strength).clone()),
            None => {
                let stop = design.problems.iter().find(|problem: &&Problem| problem.stops());
                Err(stop.map_or_else(String::new, |problem| problem.says.trim_end_matches('.').to_owned()))
            }
        });
        self.known.borrow_mut().push((role, section, answer.clone()));
        answer
    }

    fn compare(&self, stick: &Stick, found: &Strength, before: Option<f64>) -> Carries {
        let units = self.project.units;
        let held = |failing: &Check| {
            let same = |check: &&Check| check.name == failing.name && check.at == failing.at;
            self.of(stick, self.strength).find(same).is_none_or(Check::passes)
        };
        // A check that held and cannot be made any more holds no longer.
        let fails = |check: &&Check| !check.passes() && held(check);
        let worst_now = worst(self.of(stick, found));
        let after = worst_now.and_then(Check::ratio);
        let broken = worst(self.of(stick, found).filter(fails));
        let percent = |ratio: f64| format!("{:.0} %", ratio * 100.0);
        let small = format!("with all {} that small", stick.role.plural());
        let says = match (broken, worst_now, before, after) {
            (Some(check), ..) if check.ratio().is_none() => {
                format!("whether it carries is not known: {small}, {}", check.says(units))
            }
            (Some(check), ..) => format!("it does not carry: {small}, {}", check.says(units)),
            (None, Some(check), Some(before), Some(after)) => {
                let (does, see) = if after > 1.0 { ("", ": see Strength") } else { ("it carries: ", "") };
                let (member, name) = (&check.member, &check.name);
                let (now, then) = (percent(after), percent(before));
                format!("{does}{small} {member} {name}, {now} of what it may, {then} as drawn{see}")
            }
            (None, Some(check), ..) => format!("whether it carries is not judged: {}", check.says(units)),
            (None, None, ..) => "no check asks anything of it".to_owned(),
        };
        Carries { before, after, holds: broken.is_none(), says }
    }

    /// The checks of a stick: its own, and those made once for all that are alike, or for the joints at its ends.
    fn of<'s>(&self, stick: &Stick, strength: &'s Strength) -> impl Iterator<Item = &'s Check> {
        let names = names(stick, self.built);
        strength.checks.iter().filter(move |check| names.contains(&check.member))
    }
}

/// The names its checks go by.
fn names(stick: &Stick, built: &Built) -> Vec<String> {
    let of_role = || built.sticks.iter().filter(|other| other.role == stick.role).map(|other| other.mark.clone());
    match stick.role {
        // One rafter and one ledger piece stand for all; a row of purlins has the mark of its pieces without the letter.
        Role::Rafter | Role::Ledger => of_role().collect(),
        Role::Purlin => of_role().map(|mark| mark.trim_end_matches(char::is_alphabetic).to_owned()).collect(),
        Role::Beam => {
            let number = of_role().position(|mark| mark == stick.mark).map_or(0, |place| place + 1);
            let scarfs = [number.saturating_sub(1), number].map(|scarf| format!("scarf {scarf}"));
            [stick.mark.clone()].into_iter().chain(scarfs).collect()
        }
        Role::Post | Role::Brace | Role::Block => vec![stick.mark.clone()],
    }
}

/// The one that asks most; one that was not made only where none was.
fn worst<'s>(checks: impl Iterator<Item = &'s Check>) -> Option<&'s Check> {
    let rank = |check: &&Check| check.ratio().unwrap_or(-1.0);
    checks.max_by(|a, b| rank(a).total_cmp(&rank(b)))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::checks::Outcome;
    use crate::project::demo;

    /// The rafters' bending held in the barn: where it can no longer be judged nobody may say that the rafter carries.
    #[test]
    fn a_check_that_can_no_longer_be_made_does_not_hold() {
        let project = demo::wool_barn();
        let design = evaluate(&project);
        let (built, strength) = (design.built.unwrap(), design.strength.unwrap());
        let reckoned = Reckoned::new(&project, &built, &strength);
        let rafter = built.stick("R1").unwrap();
        assert!(reckoned.compare(rafter, &strength, Some(0.5)).holds);
        let mut found = (*strength).clone();
        let bends =
            found.checks.iter_mut().find(|check| check.member.starts_with('R') && check.name == "bends").unwrap();
        assert!(bends.passes());
        let open = Check::not_judged(bends.member.clone(), bends.name.clone(), "a value is missing");
        assert!(matches!(open.outcome, Outcome::NotJudged(_)));
        bends.outcome = open.outcome;
        let carries = reckoned.compare(rafter, &found, Some(0.5));
        assert!(!carries.holds && carries.says.starts_with("whether it carries is not known"), "{}", carries.says);
    }
}

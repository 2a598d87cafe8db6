//! What another length of the mill would change: each usual length it does not list put on the list, and each it lists taken
//! off, with the price of the order and every joint that moves. Where the beam cannot be divided then, laps of other lengths are
//! tried.
use super::beam_pieces::{other_laps, with_lap};
use super::judged::{Judged, Refusal};
use super::moved::{Moves, moves};
use super::stepper::{Progress, Stepper};
use crate::lay_out;
use crate::project::{Problem, Project, usual_lengths};
use crate::units::{Length, Money, sort_by_number};

/// Lengths closer than this are the same.
const SAME: Length = Length::inches(0.05);

/// What one length does.
#[derive(Clone, Debug, PartialEq)]
pub struct LengthAnswer {
    /// The length.
    pub length: Length,
    /// The mill lists it: it is taken off; it is put on otherwise.
    pub is_listed: bool,
    /// The frame with the other list; nothing where there is none.
    pub then: Option<LengthThen>,
    /// Why there is none, or what is wrong with it that is not now.
    pub trouble: Vec<String>,
}

/// The frame with another list of lengths.
#[derive(Clone, Debug, PartialEq)]
pub struct LengthThen {
    /// The project with it.
    pub project: Project,
    /// The scarfs' laps are to be that long, for with their own the beam cannot be divided; nothing where they stay.
    pub lap: Option<Length>,
    /// Price of the whole order of timber.
    pub price: Money,
    /// Sticks that no length holds then.
    pub unplaced: Vec<String>,
    /// What moves, joint by joint.
    pub moves: Moves,
}

/// The study: one length a step.
pub struct MillLengths {
    own: Judged,
    lengths: Vec<(Length, bool)>,
    found: Vec<LengthAnswer>,
}

impl MillLengths {
    /// The study of a project; nothing where it cannot be built.
    #[must_use]
    pub fn new(project: &Project) -> Option<Self> {
        let own = Judged::of(project.clone())?;
        let listed = &project.mill.lengths;
        let mut lengths: Vec<(Length, bool)> = listed.iter().map(|length| (*length, true)).collect();
        let others = usual_lengths(project.units).into_iter();
        lengths.extend(others.filter(|one| !has(listed, *one)).map(|length| (length, false)));
        sort_by_number(&mut lengths, |(length, _)| length.to_inches());
        Some(Self { own, lengths, found: Vec::new() })
    }

    /// The lengths so far, shortest first.
    #[must_use]
    pub fn found(&self) -> &[LengthAnswer] {
        &self.found
    }

    /// Price of the order as it is.
    #[must_use]
    pub fn own_price(&self) -> Money {
        self.own.price()
    }

    fn answer(&self, length: Length, is_listed: bool) -> LengthAnswer {
        let mut project = self.own.project.clone();
        let list = &mut project.mill.lengths;
        if is_listed {
            list.retain(|one| !one.is_near(length, SAME));
        } else {
            list.push(length);
            sort_by_number(list, |one| one.to_inches());
        }
        let found = self.own.changed(project.clone());
        let is_stopped = || Judged::of(project.clone()).is_none();
        if matches!(found, Err(Refusal::Stops))
            && is_stopped()
            && let Some(judged) = self.by_other_laps(&project)
        {
            let lap = Some(judged.project.frame.scarfs.lap);
            return LengthAnswer { length, is_listed, then: Some(self.then(judged, lap)), trouble: Vec::new() };
        }
        let (judged, trouble) = match found {
            Ok(judged) => (Some(judged), Vec::new()),
            Err(Refusal::Weaker(judged, falls)) => (Some(*judged), falls),
            Err(Refusal::Stops | Refusal::Problem) => {
                let problems = lay_out(&project).problems;
                let trouble = self.new_problems(&problems);
                let judged = Judged::of(project);
                let open = "with it some checks can no longer be made: see Strength".to_owned();
                (judged, if trouble.is_empty() { vec![open] } else { trouble })
            }
        };
        LengthAnswer { length, is_listed, then: judged.map(|judged| self.then(judged, None)), trouble }
    }

    fn then(&self, judged: Judged, lap: Option<Length>) -> LengthThen {
        LengthThen {
            lap,
            price: judged.price(),
            unplaced: judged.built.order.unplaced.iter().map(|(mark, _)| mark.clone()).collect(),
            moves: moves(&self.own, &judged),
            project: judged.project,
        }
    }

    /// With another lap the frame may come out of the list: the first that is no worse.
    fn by_other_laps(&self, project: &Project) -> Option<Judged> {
        if !project.frame.scarfs.by_hand.is_empty() {
            return None;
        }
        other_laps(project).into_iter().find_map(|lap| self.own.changed(with_lap(project, lap)).ok())
    }

    fn new_problems(&self, problems: &[Problem]) -> Vec<String> {
        let is_new = |problem: &&Problem| !self.own.problems.contains(problem);
        problems.iter().filter(is_new).map(|problem| problem.says.clone()).collect()
    }
}

fn has(lengths: &[Length], one: Length) -> bool {
    lengths.iter().any(|length| length.is_near(one, SAME))
}

impl Stepper for MillLengths {
    fn next_step(&mut self) -> Progress {
        if let Some((length, is_listed)) = self.lengths.get(self.found.len()).copied() {
            let answer = self.answer(length, is_listed);
            self.found.push(answer);
        }
        Progress { done: self.found.len(), of: self.lengths.len() }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::geometry::ledger_splices;
    use crate::project::{Mill, demo};

    /// Every listed and every other usual length once; each answer is what the whole program says of the other list.
    #[test]
    fn each_length_is_the_project_with_another_list() {
        for project in [demo::wool_barn(), demo::log_store()] {
            let mut study = MillLengths::new(&project).unwrap();
            while !study.next_step().is_done() {}
            let n_listed = study.found().iter().filter(|answer| answer.is_listed).count();
            assert_eq!(n_listed, project.mill.lengths.len());
            let lengths: Vec<Length> = study.found().iter().map(|answer| answer.length).collect();
            assert!(usual_lengths(project.units).iter().all(|usual| has(&lengths, *usual)));
            for answer in study.found() {
                let Some(then) = &answer.then else {
                    assert!(!answer.trouble.is_empty());
                    continue;
                };
                let n = project.mill.lengths.len();
                assert_eq!(then.project.mill.lengths.len(), if answer.is_listed { n - 1 } else { n + 1 });
                let order = &lay_out(&then.project).built.unwrap().order;
                assert_eq!((order.price, order.unplaced.len()), (then.price, then.unplaced.len()));
            }
        }
    }

    /// Out of 4 m alone the log store's beam of 9.6 m comes with laps of 720 mm and not with its own of 960. What its piers carry
    /// is left open, for three pieces ask more of them.
    #[test]
    fn a_list_that_fails_may_do_with_other_laps() {
        let mut project = demo::log_store();
        let [four, six] = [4000.0, 6000.0].map(Length::millimetres);
        project.mill.lengths = vec![four, six];
        project.ground.soil.clear();
        // Three pieces, and the ledger's, as they would be: else its splices come into the scarfs' bays, a new problem.
        project.frame.scarfs.n_pieces = Some(3);
        let short = with_lap(&project, Length::millimetres(720.0));
        let short = Project { mill: Mill { lengths: vec![four], ..short.mill.clone() }, ..short };
        let shape = lay_out(&short).built.unwrap().shape.clone();
        project.frame.ledger_splices =
            ledger_splices(&short, &shape.ledger, &shape.rafters).iter().map(|splice| splice.middle).collect();
        let study = MillLengths::new(&project).unwrap();
        let answer = study.answer(six, true);
        let own = Judged::of(Project { mill: Mill { lengths: vec![four], ..project.mill.clone() }, ..project.clone() });
        assert!(own.is_none());
        let then = answer.then.unwrap();
        assert!(then.lap.unwrap().is_near(Length::millimetres(720.0), Length::inches(1e-9)));
        assert_eq!(then.project.frame.scarfs.lap, then.lap.unwrap());
        assert!(answer.trouble.is_empty() && lay_out(&then.project).built.is_some());
    }
}

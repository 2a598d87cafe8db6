//! Changes of the frame after which all of it comes out of the sawyer's pile, or nearer to it: single ones, and pairs where no
//! single one does.
//!
//! Each is worked out whole. None is offered that brings a problem, or with which a check fails that holds now. Sticks of a
//! section the pile has nothing of must be bought in any case: what is sought is that all others come out.
use super::beam_pieces::{divided, divisions_of};
use super::judged::Judged;
use super::moved::{Moves, moves};
use super::stepper::{Progress, Stepper};
use super::yard_change::{Change, candidates};
use crate::lay_out;
use crate::ordering::{Missing, PileAnswer, from_yard, same_section};
use crate::project::{Lot, Mill, Project};
use crate::tickets::Role;
use crate::units::{Length, Money, Weight};

/// Most changes that only come nearer that are shown.
const MOST_NEARER: usize = 3;
/// Pairs are made of so many single changes that help, the best.
const MOST_PAIRED: usize = 7;
/// Most divisions of the beam that are tried.
const MOST_DIVISIONS: usize = 10;

/// One change and what it does.
#[derive(Clone, Debug, PartialEq)]
pub struct YardChange {
    /// What is changed, in words.
    pub says: String,
    /// The project with it.
    pub project: Project,
    /// What the pile gives then.
    pub pile: PileAnswer,
    /// Price of the whole order at the mill's prices.
    pub price: Money,
    /// Green weight of the whole order.
    pub weight: Weight,
    /// The heaviest piece of the beam, its mark and its green weight.
    pub heaviest: (String, Weight),
    /// The member that is asked most of then, and its share, where it could be judged.
    pub worst: Option<(String, f64)>,
    /// What moves, joint by joint.
    pub moves: Moves,
}

impl YardChange {
    /// All that the pile has a section for comes out of it.
    #[must_use]
    pub fn comes_out(&self) -> bool {
        self.pile.short().next().is_none()
    }
}

/// The study: one change a step.
pub struct YardChanges {
    own: Judged,
    pile: PileAnswer,
    waiting: Vec<Vec<Change>>,
    next: usize,
    is_paired: bool,
    /// Single changes that help, with how many sticks are missing then.
    helping: Vec<(usize, Change)>,
    /// Single changes after which all comes out.
    solved: Vec<Change>,
    found: Vec<YardChange>,
    /// Changes that help and were left out, since something else would be worse.
    n_refused: usize,
}

impl YardChanges {
    /// The study of a project; nothing where it cannot be built.
    #[must_use]
    pub fn new(project: &Project) -> Option<Self> {
        let own = Judged::of(project.clone())?;
        let pile = from_yard(project, &own.built.order.sticks);
        let is_lacking = |role: Role, of_any: bool| {
            let mut sticks = own.built.sticks.iter().filter(|stick| stick.role == role);
            let counts = |missing: &&Missing| of_any || missing.longest.is_some();
            sticks.any(|stick| pile.missing.iter().filter(counts).any(|missing| missing.mark == stick.mark))
        };
        let mut waiting: Vec<Change> = Vec::new();
        if is_lacking(Role::Beam, false) {
            waiting.extend(beam_divisions(&own));
        }
        waiting.extend(candidates(&own, &|role| is_lacking(role, false), &|role| is_lacking(role, true)));
        let waiting = waiting.into_iter().map(|change| vec![change]).collect();
        let (helping, solved, found) = (Vec::new(), Vec::new(), Vec::new());
        Some(Self { own, pile, waiting, next: 0, is_paired: false, helping, solved, found, n_refused: 0 })
    }

    /// Changes so far: those after which all comes out first, then those that come nearest; the cheaper first.
    #[must_use]
    pub fn found(&self) -> &[YardChange] {
        &self.found
    }

    /// Changes that help and were left out, since a check or something else would be worse.
    #[must_use]
    pub const fn n_refused(&self) -> usize {
        self.n_refused
    }

    /// Price of the order as it is.
    #[must_use]
    pub fn own_price(&self) -> Money {
        self.own.price()
    }

    /// Looks at one change, or two at once.
    fn try_out(&mut self, changes: &[Change]) {
        // Of changes of one kind the smallest that does is enough.
        if let [change] = changes
            && self.solved.iter().any(|known| known.is_kind_of(change))
        {
            return;
        }
        let mut project = self.own.project.clone();
        changes.iter().for_each(|change| change.apply(&mut project));
        let Some(built) = lay_out(&project).built else { return };
        let pile = from_yard(&project, &built.order.sticks);
        let missing = pile.missing.len();
        if missing >= self.pile.missing.len() {
            return;
        }
        if let [change] = changes {
            self.helping.push((missing, change.clone()));
        }
        let Ok(judged) = self.own.changed(project) else {
            self.n_refused += 1;
            return;
        };
        let says: Vec<String> = changes.iter().map(|change| change.says(self.own.project.units)).collect();
        if let ([change], None) = (changes, pile.short().next()) {
            self.solved.push(change.clone());
        }
        self.found.push(YardChange {
            says: says.join(", and "),
            pile,
            price: judged.price(),
            weight: judged.built.order.weight,
            heaviest: judged.heaviest_piece(),
            worst: judged.strength.hardest().map(|(check, ratio)| (check.member.clone(), ratio)),
            moves: moves(&self.own, &judged),
            project: judged.project,
        });
        self.sort();
    }

    fn sort(&mut self) {
        crate::units::sort_with(&mut self.found, |a, b| {
            let rank = |change: &YardChange| (!change.comes_out(), change.pile.missing.len(), change.price);
            rank(a).cmp(&rank(b))
        });
        let n_out = self.found.iter().filter(|change| change.comes_out()).count();
        self.found.truncate(n_out + MOST_NEARER);
    }

    /// Two at once of the changes that help, each the best of its kind.
    fn pair_up(&mut self) {
        self.is_paired = true;
        if self.found.iter().any(YardChange::comes_out) {
            return;
        }
        crate::units::sort_by_number(&mut self.helping, |(missing, _)| *missing as f64);
        let mut best: Vec<Change> = Vec::new();
        for (_, change) in &self.helping {
            if best.len() < MOST_PAIRED && !best.iter().any(|known| known.is_kind_of(change)) {
                best.push(change.clone());
            }
        }
        for (place, second) in best.iter().enumerate() {
            self.waiting.extend(best[..place].iter().map(|first| vec![first.clone(), second.clone()]));
        }
    }
}

/// Divisions of the beam out of the lengths that lie in the pile.
fn beam_divisions(own: &Judged) -> Vec<Change> {
    let project = &own.project;
    let beam = project.frame.timbers.beam.ordered;
    let heart = project.buying.heart_of(Role::Beam);
    let does = |lot: &&Lot| lot.count > 0 && same_section(lot.section, beam) && lot.heart.may_serve(heart);
    let of_beam = project.yard.iter().filter(does);
    let mut lengths: Vec<Length> = of_beam.map(|lot| lot.length).collect();
    lengths.dedup();
    if lengths.is_empty() {
        return Vec::new();
    }
    let mill = Mill { lengths, ..project.mill.clone() };
    let all = divisions_of(own, &mill).into_iter().take(MOST_DIVISIONS);
    all.map(|division| Change::Divided {
        scarfs: divided(project, &division.places).frame.scarfs,
        stock: division.stock,
    })
    .collect()
}

impl Stepper for YardChanges {
    fn next_step(&mut self) -> Progress {
        if let Some(changes) = self.waiting.get(self.next).cloned() {
            self.next += 1;
            self.try_out(&changes);
        }
        if self.next == self.waiting.len() && !self.is_paired {
            self.pair_up();
        }
        Progress { done: self.next, of: self.waiting.len() }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::checks::Check;
    use crate::evaluate;
    use crate::project::demo;

    /// The whole order of the frame as a pile.
    fn bought(project: &Project) -> Vec<Lot> {
        let order = &lay_out(project).built.unwrap().order;
        let lot = |line: &crate::ordering::OrderLine| Lot {
            section: line.section,
            length: line.length,
            count: line.count,
            heart: line.heart,
            remark: String::new(),
        };
        order.lines.iter().map(lot).collect()
    }

    fn through(project: &Project) -> YardChanges {
        let mut study = YardChanges::new(project).unwrap();
        while !study.next_step().is_done() {}
        study
    }

    fn check(project: &Project, study: &YardChanges) {
        let before = evaluate(project);
        let failing = |checks: &[Check]| checks.iter().filter(|check| !check.passes()).count();
        let n_failing = failing(&before.strength.as_ref().unwrap().checks);
        for change in study.found() {
            let design = evaluate(&change.project);
            let built = design.built.as_ref().unwrap();
            assert_eq!(built.order.price, change.price, "{}", change.says);
            assert_eq!(from_yard(&change.project, &built.order.sticks), change.pile);
            assert!(failing(&design.strength.as_ref().unwrap().checks) <= n_failing, "{}", change.says);
            assert!(design.problems.len() <= before.problems.len(), "{}: {:?}", change.says, design.problems);
        }
    }

    /// What was ordered comes out of itself, and nothing is tried.
    #[test]
    fn the_order_comes_out_of_itself() {
        for mut project in [demo::wool_barn(), demo::log_store()] {
            project.yard = bought(&project);
            let built = lay_out(&project).built.unwrap();
            assert!(from_yard(&project, &built.order.sticks).comes_out());
            let mut study = YardChanges::new(&project).unwrap();
            assert!(study.next_step().is_done() && study.found().is_empty());
        }
    }

    /// The barn's rafters need 11 ft 7 in or so and with 6 in docked a 14-footer: out of 12-footers they come with less docked
    /// or a shorter tail.
    #[test]
    fn shorter_tails_make_rafters_come_out() {
        let mut project = demo::wool_barn();
        project.yard = bought(&project);
        let rafter = project.frame.timbers.rafter.ordered;
        let built = lay_out(&project).built.unwrap();
        let net = built.stick("R1").unwrap().net_length();
        let long = net + project.mill.trim_each_end * 2.0 - Length::inches(1.5);
        for lot in project.yard.iter_mut().filter(|lot| same_section(lot.section, rafter)) {
            lot.length = long;
        }
        let study = through(&project);
        check(&project, &study);
        let out: Vec<&str> =
            study.found().iter().filter(|change| change.comes_out()).map(|change| change.says.as_str()).collect();
        assert!(out.contains(&"only 1 1⁄2″ docked from each end"), "{out:?}");
        // An inch and a half along a slope of 3 in 12 is a little less on the level: two inches do, one does not.
        assert!(out.contains(&"tails of 6″"), "{out:?}");
        assert!(!out.contains(&"tails of 5″"), "{out:?}");
    }

    /// Two different things are short at once: only two changes together do.
    #[test]
    fn pairs_are_tried_where_no_single_change_does() {
        let mut project = demo::wool_barn();
        project.yard = bought(&project);
        let rafter = project.frame.timbers.rafter.ordered;
        let post = project.frame.timbers.post.ordered;
        project.mill.trim_each_end = Length::ZERO;
        let built = lay_out(&project).built.unwrap();
        let half = Length::inches(0.5);
        let posts = built.sticks.iter().filter(|stick| stick.role == Role::Post);
        let longest_post = posts.map(|stick| stick.net_length()).reduce(Length::max).unwrap();
        let rafter_net = built.stick("R1").unwrap().net_length();
        for lot in &mut project.yard {
            for (section, net) in [(rafter, rafter_net), (post, longest_post)] {
                if same_section(lot.section, section) {
                    lot.length = net - half;
                }
            }
        }
        let study = through(&project);
        check(&project, &study);
        let out: Vec<&YardChange> = study.found().iter().filter(|change| change.comes_out()).collect();
        assert!(!out.is_empty() && out.iter().all(|change| change.says.contains(", and ")), "{out:?}");
    }
}

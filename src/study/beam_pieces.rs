//! The pieces of the beam as part of the choice: divisions that need other lengths of stock, with what each does to the price,
//! to the scarfs and to strength.
//!
//! A division is offered only where nothing is worse with it: no new problem, no check that holds now and fails then. Those
//! that only a check forbids are shown with that check. Where the mill's lengths fail by a few inches with the laps as they
//! are, laps three, four and five times as long as the beam is deep are tried too (common practice for a scarf's length).
use super::judged::{Judged, Refusal};
use super::moved::{Moves, moves};
use super::stepper::{Progress, Stepper};
use crate::geometry::{Division, Pocket, Surroundings, UncutBeam, divisions, stock_in_order};
use crate::project::{Mill, Project, ScarfPlace};
use crate::tickets::Role;
use crate::units::{Length, Money, Weight, sort_by_number};

/// Most divisions that are worked out whole, those of the least stock first.
const MOST: usize = 24;

/// Most divisions with laps of another length that are worked out whole, for each such length.
const MOST_OF_A_LAP: usize = 6;
/// Lengths of a scarf's lap in depths of the beam (common practice).
const LAPS: [f64; 3] = [3.0, 4.0, 5.0];
/// What a lap may be at all.
const LAP_RANGE: (Length, Length) = (Length::inches(12.0), Length::inches(96.0));

/// One division of the beam, worked out whole.
#[derive(Clone, Debug, PartialEq)]
pub struct PiecesAnswer {
    /// The project with it.
    pub project: Project,
    /// Its scarfs, left to right.
    pub places: Vec<ScarfPlace>,
    /// Length of the scarfs' laps with it.
    pub lap: Length,
    /// The stock that each piece asks for, left to right.
    pub stock: Vec<Length>,
    /// Price of the whole order of timber.
    pub price: Money,
    /// The heaviest piece, its mark and its green weight.
    pub heaviest: (String, Weight),
    /// The greatest ratio among the checks of its scarfs; nothing where it has none, or none could be judged.
    pub worst_scarf: Option<f64>,
    /// The member that is asked most of in the whole frame, and its share.
    pub worst: Option<(String, f64)>,
    /// What moves, joint by joint.
    pub moves: Moves,
    /// It is how the beam is divided now.
    pub is_own: bool,
    /// Checks that hold now and would fail with it, in words: it is not offered then.
    pub falls: Vec<String>,
}

/// The study: one division a step.
pub struct BeamPieces {
    own: Judged,
    waiting: Vec<(Project, Division)>,
    next: usize,
    /// Laps that are still to be looked at, after the divisions with the frame's own.
    laps: Vec<Length>,
    n_laps: usize,
    /// Lengths of stock that some division asks for already.
    seen: Vec<Vec<i64>>,
    own_long: Length,
    /// Divisions that stand, the cheapest first.
    found: Vec<PiecesAnswer>,
    /// How many were left out for a problem that is no check.
    n_refused: usize,
}

/// The frame's own surroundings of its scarfs, put to use.
fn with_surroundings<T>((project, judged): (&Project, &Judged), work: impl FnOnce(&Surroundings) -> T) -> Option<T> {
    let shape = &judged.built.shape;
    let (frame, rules) = (&project.frame, &project.joinery);
    let uncut = UncutBeam::new(frame, &shape.posts, &shape.braces, &shape.rafters).ok()?;
    let pockets: Vec<Pocket> = shape.braces.iter().map(|brace| brace.beam_pocket(frame)).collect();
    let around = Surroundings {
        project,
        frame,
        rules,
        posts: &shape.posts,
        braces: &shape.braces,
        pockets: &pockets,
        rafters: &shape.rafters,
        uncut: &uncut,
        units: project.units,
    };
    Some(work(&around))
}

/// The ways to divide the beam of a frame out of a mill's lengths, the least stock first.
#[must_use]
pub(super) fn divisions_of(judged: &Judged, mill: &Mill) -> Vec<Division> {
    divisions_with(&judged.project, judged, mill)
}

/// The same of a project that is another in its laps only.
fn divisions_with(project: &Project, judged: &Judged, mill: &Mill) -> Vec<Division> {
    with_surroundings((project, judged), |around| divisions(around, mill)).unwrap_or_default()
}

/// Lengths a lap may have other than its own, the nearest to it first.
pub(super) fn other_laps(project: &Project) -> Vec<Length> {
    let (own, depth) = (project.frame.scarfs.lap, project.frame.timbers.beam.sawn.depth);
    let mut laps: Vec<Length> = LAPS.iter().map(|times| depth * *times).collect();
    laps.retain(|lap| *lap >= LAP_RANGE.0 && *lap <= LAP_RANGE.1 && !lap.is_near(own, Length::inches(0.5)));
    sort_by_number(&mut laps, |lap| (*lap - own).abs().to_inches());
    laps
}

/// The project with laps of that length.
pub(super) fn with_lap(project: &Project, lap: Length) -> Project {
    let mut changed = project.clone();
    changed.frame.scarfs.lap = lap;
    changed
}

/// The project with its beam divided so.
#[must_use]
pub(super) fn divided(project: &Project, places: &[ScarfPlace]) -> Project {
    let mut changed = project.clone();
    changed.frame.scarfs.by_hand = places.to_vec();
    if places.is_empty() {
        changed.frame.scarfs.n_pieces = Some(1);
    }
    changed
}

/// The stock of each piece of the beam, left to right.
fn stock_of(judged: &Judged) -> Vec<Length> {
    let mill = &judged.project.mill;
    let pieces = judged.built.sticks.iter().filter(|stick| stick.role == Role::Beam);
    pieces.map(|stick| mill.stock_for(stick.net_length()).unwrap_or(stick.net_length())).collect()
}

impl BeamPieces {
    /// The study of a project; nothing where it cannot be built.
    #[must_use]
    pub fn new(project: &Project) -> Option<Self> {
        let own = Judged::of(project.clone())?;
        let own_stock = stock_of(&own);
        let all = divisions_of(&own, &project.mill);
        let mut seen: Vec<Vec<i64>> = all.iter().map(|division| stock_in_order(&division.stock)).collect();
        seen.push(stock_in_order(&own_stock));
        let others = all.into_iter().filter(|division| stock_in_order(&division.stock) != stock_in_order(&own_stock));
        let waiting = others.take(MOST).map(|division| (project.clone(), division)).collect();
        let laps = other_laps(project);
        let mut study = Self {
            own,
            waiting,
            next: 0,
            n_laps: laps.len(),
            laps,
            seen,
            own_long: own_stock.into_iter().sum(),
            found: Vec::new(),
            n_refused: 0,
        };
        let own = study.answer(&study.own, Vec::new());
        study.found.push(PiecesAnswer { is_own: true, ..own });
        Some(study)
    }

    /// The divisions so far, the frame's own among them, the cheapest first.
    #[must_use]
    pub fn found(&self) -> &[PiecesAnswer] {
        &self.found
    }

    /// How many divisions were left out since the frame could not be built with them, or brought a new problem.
    #[must_use]
    pub const fn n_refused(&self) -> usize {
        self.n_refused
    }

    fn answer(&self, judged: &Judged, falls: Vec<String>) -> PiecesAnswer {
        PiecesAnswer {
            places: judged.built.shape.beam.scarfs.iter().map(|scarf| scarf.place).collect(),
            lap: judged.project.frame.scarfs.lap,
            stock: stock_of(judged),
            price: judged.price(),
            heaviest: judged.heaviest_piece(),
            worst_scarf: judged.worst_scarf(),
            worst: judged.strength.hardest().map(|(check, ratio)| (check.member.clone(), ratio)),
            moves: moves(&self.own, judged),
            project: judged.project.clone(),
            is_own: false,
            falls,
        }
    }

    /// Puts those on the list that come out of lengths no division with other laps comes out of, and of no more stock than now.
    fn look_at_lap(&mut self, lap: Length) {
        let project = with_lap(&self.own.project, lap);
        let all = divisions_with(&project, &self.own, &project.mill).into_iter();
        let hair = Length::inches(0.01);
        let fits = |division: &Division| division.long() <= self.own_long + hair;
        let new = all.filter(|division| fits(division) && !self.seen.contains(&stock_in_order(&division.stock)));
        let new: Vec<Division> = new.take(MOST_OF_A_LAP).collect();
        self.seen.extend(new.iter().map(|division| stock_in_order(&division.stock)));
        self.waiting.extend(new.into_iter().map(|division| (project.clone(), division)));
    }

    fn try_out(&mut self, project: &Project, division: &Division) {
        let answer = match self.own.changed(divided(project, &division.places)) {
            Ok(judged) => self.answer(&judged, Vec::new()),
            Err(Refusal::Weaker(judged, falls)) => self.answer(&judged, falls),
            Err(Refusal::Stops | Refusal::Problem) => {
                self.n_refused += 1;
                return;
            }
        };
        // Those that are offered come first.
        let rank = |answer: &PiecesAnswer| (!answer.falls.is_empty(), answer.price, answer.stock.len());
        let place = self.found.partition_point(|known| rank(known) <= rank(&answer));
        self.found.insert(place, answer);
    }
}

impl Stepper for BeamPieces {
    fn next_step(&mut self) -> Progress {
        if let Some((project, division)) = self.waiting.get(self.next).cloned() {
            self.next += 1;
            self.try_out(&project, &division);
        } else if !self.laps.is_empty() {
            let lap = self.laps.remove(0);
            self.look_at_lap(lap);
        }
        Progress { done: self.next + self.n_laps - self.laps.len(), of: self.waiting.len() + self.n_laps }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::checks::Strength;
    use crate::lay_out;
    use crate::project::demo;

    fn through(project: &Project) -> BeamPieces {
        let mut study = BeamPieces::new(project).unwrap();
        let mut done = 0;
        loop {
            let progress = study.next_step();
            assert!(progress.done <= progress.of && (progress.is_done() || progress.done == done + 1));
            done = progress.done;
            if progress.is_done() {
                return study;
            }
        }
    }

    /// What is said of each division is what the whole program says of the project with it; none is worse than the frame.
    #[test]
    fn every_division_is_a_frame_no_worse() {
        for project in [demo::wool_barn(), demo::log_store()] {
            let before = Judged::of(project.clone()).unwrap();
            let study = through(&project);
            let found = study.found();
            assert!(found.len() > 1, "{:?}", study.n_refused());
            assert_eq!(found.iter().filter(|answer| answer.is_own).count(), 1);
            let offered: Vec<_> = found.iter().filter(|answer| answer.falls.is_empty()).collect();
            assert!(offered.windows(2).all(|pair| pair[0].price <= pair[1].price));
            let failing = |strength: &Strength| strength.checks.iter().filter(|check| !check.passes()).count();
            for answer in &offered {
                let after = Judged::of(answer.project.clone()).unwrap();
                assert!(failing(&after.strength) <= failing(&before.strength));
            }
            for answer in found {
                let design = lay_out(&answer.project);
                let built = design.built.unwrap();
                assert_eq!(built.order.price, answer.price);
                let places: Vec<ScarfPlace> = built.shape.beam.scarfs.iter().map(|scarf| scarf.place).collect();
                assert_eq!(places, answer.places);
                assert!(built.shape.beam.scarfs.iter().all(|scarf| scarf.judged.is_some()));
                assert!(design.problems.len() <= before.problems.len(), "{:?}", design.problems);
                assert!(answer.heaviest.1 <= project.mill.heaviest_pick);
                // A piece and both docked ends come out of the stock it is said to need, and out of nothing shorter.
                for (stock, piece) in answer.stock.iter().zip(&built.shape.beam.pieces) {
                    assert_eq!(project.mill.stock_for(piece.length()), Some(*stock));
                }
            }
            let lengths: Vec<Vec<i64>> = found.iter().map(|answer| stock_in_order(&answer.stock)).collect();
            assert!(lengths.iter().enumerate().all(|(at, one)| !lengths[..at].contains(one)));
            for answer in found.iter().filter(|answer| answer.lap != project.frame.scarfs.lap) {
                let own = project.frame.timbers.beam.sawn.depth;
                assert!(LAPS.iter().any(|times| answer.lap.is_near(own * *times, Length::inches(1e-9))));
                assert!(answer.moves.also.iter().any(|says| says.contains("lap ")), "{:?}", answer.moves);
            }
        }
    }

    /// The search of the beam itself is among the divisions: with the same lengths none lies better.
    #[test]
    fn the_proposed_division_is_one_of_them() {
        for project in [demo::wool_barn(), demo::log_store()] {
            let own = Judged::of(project.clone()).unwrap();
            let all = divisions_of(&own, &project.mill);
            let stock = stock_of(&own);
            let like = all.iter().find(|division| stock_in_order(&division.stock) == stock_in_order(&stock)).unwrap();
            let places: Vec<ScarfPlace> = own.built.shape.beam.scarfs.iter().map(|scarf| scarf.place).collect();
            assert_eq!(like.places, places);
        }
    }

    /// The log store's beam is 9.6 m long and 240 mm deep, with laps of 960: a 6 m and a 5 m piece have 100 mm docked each, so that
    /// the scarf's middle would be within 5900 - 480 and 9600 - 4900 + 480 of the left end, and no place there will do. With laps of
    /// 3 · 240 = 720 mm it is within 5900 - 360 and 4700 + 360, and one does: a cheaper order than two of 6 m.
    #[test]
    fn a_shorter_lap_makes_do_with_less_stock() {
        let project = demo::log_store();
        let metres = |stock: &[Length]| stock.iter().map(|one| (one.to_millimetres()).round()).collect::<Vec<_>>();
        let own = Judged::of(project.clone()).unwrap();
        let all = divisions_of(&own, &project.mill);
        let wanted = stock_in_order(&[Length::millimetres(5000.0), Length::millimetres(6000.0)]);
        assert!(all.iter().all(|division| stock_in_order(&division.stock) != wanted));
        let study = through(&project);
        let answer = study.found().iter().find(|answer| stock_in_order(&answer.stock) == wanted).unwrap();
        assert!(answer.lap.is_near(Length::millimetres(720.0), Length::inches(1e-9)));
        assert_eq!(metres(&answer.stock), [6000.0, 5000.0]);
        let centre = answer.places[0].centre.to_millimetres();
        assert!((5060.0..=5540.0).contains(&centre), "{centre}");
        let as_it_is = study.found().iter().find(|answer| answer.is_own).unwrap();
        assert!(answer.price < as_it_is.price);
        // Cut elsewhere, the beam is forced more where a post sinks, and that is said.
        assert!(answer.falls.iter().all(|falls| falls.contains(" sunk ")), "{:?}", answer.falls);
        assert!(answer.moves.also[0].contains("720 mm long instead of 960 mm"), "{:?}", answer.moves.also);
    }
}

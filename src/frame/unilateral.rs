//! Members that act one way only: dropped and taken back until nothing is asked of them that they cannot give.
//!
//! The state belongs to one load case: answers with one-way members are never added up.
use std::sync::Arc;

use super::assembly::Factorised;
use super::error::FrameError;
use super::load::LoadCase;
use super::loaded::{Loaded, PlacedLoads};
use super::model::{ActsIn, Frame};
use super::rigid::Bodies;
use super::solution::Solution;
use super::solve::{State, WORST_RESIDUAL};
use crate::units::Moment;

/// An axial force below this share of the largest one counts as none.
const NO_FORCE: f64 = 1e-9;
/// Changes of state before giving up.
const MOST_CHANGES: usize = 100;
/// The share of their stiffness left to slack members while a state is sought one change at a time: no state on the
/// way is then a mechanism.
const TRACE: f64 = 1e-6;
/// How far equilibrium may miss on the way: a frame held by traces alone moves a million times too far, and only the
/// signs of its movements are read.
const ROUGH: f64 = 1e-2;
/// Changes of one member each: there the search must end, but nobody knows how soon.
const MOST_SINGLE_CHANGES: usize = 5_000;

/// Solves load cases of one frame, keeping the matrices it has split.
///
/// All members in a wrong state change at once; this nearly always ends in a few rounds. Where it runs in a ring or
/// into a mechanism, the first wrong member alone changes, with a trace of stiffness left to the slack ones. For such
/// a problem (one answer for every load) that rule never comes back to a state: K. Murty, "Note on a Bard-type scheme
/// for solving the complementarity problem", Opsearch 11 (1974), from memory. The state found is then solved without
/// the trace.
#[derive(Clone, Debug)]
pub struct Solver<'a> {
    frame: &'a Frame,
    bodies: Option<Arc<Bodies>>,
    /// A few states in most frames.
    known: Vec<Factorised<'a>>,
}

impl<'a> Solver<'a> {
    /// A solver for this frame.
    #[must_use]
    pub fn new(frame: &'a Frame) -> Self {
        Self { frame, bodies: None, known: Vec::new() }
    }

    /// Solves one load case with the one-way members in the state that fits it.
    ///
    /// # Errors
    /// Faults of the input, a mechanism, or one-way members that settle in no state.
    pub fn solve(&mut self, case: &LoadCase) -> Result<Solution, FrameError> {
        let loads = self.place(case)?;
        self.solve_loaded(&loads.0, Factorised::solution)
    }

    /// Sets a load case on the members and nodes, to be solved on this frame and on frames of the same shape.
    ///
    /// # Errors
    /// Faults of the input.
    pub fn place(&mut self, case: &LoadCase) -> Result<PlacedLoads, FrameError> {
        self.bodies()?;
        self.frame.load(case).map(|loads| PlacedLoads(Arc::new(loads)))
    }

    /// The same with loads that were set on a frame whose members lie alike.
    ///
    /// # Errors
    /// Those of [`Self::solve`]; and where the loads were set on a frame of another shape.
    pub fn solve_placed(&mut self, loads: &PlacedLoads) -> Result<Solution, FrameError> {
        self.check_shape(loads)?;
        self.solve_loaded(&loads.0, Factorised::solution)
    }

    /// Of the same answer the moments alone, just inside each member's `to` end, signed as [`Solution::moment`] is.
    ///
    /// # Errors
    /// Those of [`Self::solve_placed`].
    pub fn moments_at_ends(&mut self, loads: &PlacedLoads) -> Result<Vec<Moment>, FrameError> {
        self.check_shape(loads)?;
        self.solve_loaded(&loads.0, Factorised::moments_at_ends)
    }

    fn check_shape(&mut self, loads: &PlacedLoads) -> Result<(), FrameError> {
        self.bodies()?;
        if loads.0.fits(self.frame) {
            return Ok(());
        }
        Err(FrameError::Input(vec!["These loads were set on a frame of another shape.".to_owned()]))
    }

    /// `read` takes from the state that fits what is asked.
    fn solve_loaded<T>(
        &mut self,
        loads: &Arc<Loaded>,
        read: impl Fn(&Factorised<'a>, &Arc<Loaded>, State) -> T,
    ) -> Result<T, FrameError> {
        match self.all_at_once(loads, self.frame.all_active(), &read) {
            Err(FrameError::NotConverged(_) | FrameError::Mechanism(_)) if has_one_way(self.frame) => {
                let start = self.one_at_a_time(loads)?;
                self.all_at_once(loads, start, &read)
            }
            answer => answer,
        }
    }

    fn all_at_once<T>(
        &mut self,
        loads: &Arc<Loaded>,
        start: Vec<bool>,
        read: &impl Fn(&Factorised<'a>, &Arc<Loaded>, State) -> T,
    ) -> Result<T, FrameError> {
        let mut active = start;
        let mut seen = Vec::new();
        for _ in 0..MOST_CHANGES {
            let at = self.in_state(&active)?;
            let split = &self.known[at];
            let moved = split.moved(loads)?;
            let mut wrong = wrong(split, &moved.movements);
            if wrong.is_empty() {
                let state = split.settle(WORST_RESIDUAL, loads, moved)?;
                if state.is_improved {
                    wrong = self::wrong(split, &state.movements);
                }
                if wrong.is_empty() {
                    return Ok(read(split, loads, state));
                }
            }
            if seen.contains(&active) {
                return Err(self.not_converged(&wrong, "keep changing from one state to another and back"));
            }
            seen.push(active.clone());
            for member in wrong {
                active[member] = !active[member];
            }
        }
        Err(self.not_converged(&[], "find no state that fits"))
    }

    fn one_at_a_time(&mut self, loads: &Loaded) -> Result<Vec<bool>, FrameError> {
        let bodies = self.bodies()?;
        let mut active = self.frame.all_active();
        for _ in 0..MOST_SINGLE_CHANGES {
            let split = self.frame.factorise_bodies(&bodies, &active, TRACE)?;
            let state = split.settle(ROUGH, loads, split.moved(loads)?)?;
            let Some(first) = wrong(&split, &state.movements).first().copied() else { return Ok(active) };
            active[first] = !active[first];
        }
        Err(self.not_converged(&[], "find no state that fits"))
    }

    fn bodies(&mut self) -> Result<Arc<Bodies>, FrameError> {
        if let Some(bodies) = &self.bodies {
            return Ok(bodies.clone());
        }
        let bodies = self.frame.bodies()?;
        self.bodies = Some(bodies.clone());
        Ok(bodies)
    }

    /// Where the matrix of that state is kept.
    fn in_state(&mut self, active: &[bool]) -> Result<usize, FrameError> {
        match self.known.iter().position(|split| split.active == active) {
            Some(at) => Ok(at),
            None => {
                let split = self.bodies().and_then(|bodies| self.frame.factorise_bodies(&bodies, active, 0.0));
                self.known.push(split.map_err(|error| self.with_dropped(error, active))?);
                Ok(self.known.len() - 1)
            }
        }
    }

    fn name(&self, member: usize) -> &str {
        self.frame.members.get(member).map_or("?", |member| member.name.as_str())
    }

    fn not_converged(&self, wrong: &[usize], what: &str) -> FrameError {
        let names: Vec<&str> = wrong.iter().map(|member| self.name(*member)).collect();
        let whose = if names.is_empty() { String::new() } else { format!(" ({})", names.join(", ")) };
        FrameError::NotConverged(format!(
            "The members that act one way only{whose} {what} under this load: no answer is given."
        ))
    }

    /// A mechanism that only stands once members have let go says so.
    fn with_dropped(&self, error: FrameError, active: &[bool]) -> FrameError {
        let names: Vec<&str> =
            (0..active.len()).filter(|index| !active[*index]).map(|index| self.name(index)).collect();
        match error {
            FrameError::Mechanism(mut mechanism) if !names.is_empty() => {
                mechanism.says = format!("{} It happens once {} let go.", mechanism.says, names.join(", "));
                FrameError::Mechanism(mechanism)
            }
            error => error,
        }
    }
}

fn has_one_way(frame: &Frame) -> bool {
    frame.members.iter().any(|member| member.acts_in != ActsIn::Both)
}

/// Members in a state that does not fit how the nodes move, in their order in the frame.
fn wrong(split: &Factorised<'_>, movements: &[[f64; 3]]) -> Vec<usize> {
    if !has_one_way(split.frame) {
        return Vec::new();
    }
    let forces = split.called_for(movements);
    let at_work = forces.iter().zip(&split.active).filter(|(_, is_active)| **is_active);
    let tolerance = NO_FORCE * at_work.map(|(force, _)| force.abs()).fold(0.0, f64::max);
    let is_wrong = |index: &usize| {
        let force = forces[*index];
        force.abs() > tolerance && split.frame.members[*index].acts_in.resists(force) != split.active[*index]
    };
    (0..forces.len()).filter(is_wrong).collect()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::frame::{Inertia, Member, MemberLoad, NodeLoad, Support};
    use crate::units::{Area, Force, Length, Moment, Stress};

    /// A pinned square of 100 in with two diagonals that act one way, pushed at the top left.
    fn square(acts_in: ActsIn) -> Frame {
        let mut frame = Frame::default();
        let at = |x, z| (Length::inches(x), Length::inches(z));
        let corners = [at(0.0, 0.0), at(100.0, 0.0), at(0.0, 100.0), at(100.0, 100.0)];
        let nodes: Vec<usize> =
            corners.iter().enumerate().map(|(i, (x, z))| frame.add_node(format!("n{i}"), *x, *z)).collect();
        frame.supports = vec![Support::pinned(nodes[0]), Support::pinned(nodes[1])];
        let bar = |name: &str, a, b| {
            let inertia = Inertia::inches_4(10.0);
            Member::elastic(name, (a, b), Stress::psi(1e6), Area::square_inches(10.0), inertia).hinged(true, true)
        };
        for (name, a, b) in [("left", 0, 2), ("right", 1, 3), ("top", 2, 3)] {
            frame.add_member(bar(name, nodes[a], nodes[b]));
        }
        frame.add_member(bar("rising", nodes[0], nodes[3]).acting(acts_in));
        frame.add_member(bar("falling", nodes[2], nodes[1]).acting(acts_in));
        frame
    }

    fn push(x: f64) -> LoadCase {
        let load = NodeLoad { node: 2, x: Force::pounds(x), z: Force::ZERO, moment: Moment::ZERO };
        LoadCase { nodes: vec![load], ..LoadCase::default() }
    }

    #[test]
    fn the_diagonal_that_cannot_act_lets_go() {
        for (acts_in, force, dropped) in [
            (ActsIn::Tension, 1000.0, vec![4]),
            (ActsIn::Tension, -1000.0, vec![3]),
            (ActsIn::Compression, 1000.0, vec![3]),
            (ActsIn::Compression, -1000.0, vec![4]),
            (ActsIn::Both, 1000.0, vec![]),
        ] {
            let frame = square(acts_in);
            let solution = Solver::new(&frame).solve(&push(force)).unwrap();
            assert_eq!(solution.dropped(), dropped, "{acts_in:?} {force}");
            // Alone, a diagonal at 45° carries the push times √2.
            for member in [3, 4].into_iter().filter(|_| acts_in != ActsIn::Both) {
                let axial = solution.axial(member).extremes().max.to_pounds().abs();
                let expected = if dropped.contains(&member) { 0.0 } else { 1000.0 * 2.0_f64.sqrt() };
                assert!((axial - expected).abs() < 1e-6, "{axial} is not {expected}");
            }
        }
    }

    #[test]
    fn matrices_are_kept_between_cases() {
        let frame = square(ActsIn::Tension);
        let mut solver = Solver::new(&frame);
        for force in [1.0, 2.0, -3.0, 4.0] {
            assert!(solver.solve(&push(force)).is_ok());
        }
        assert!(solver.known.len() <= 3, "{}", solver.known.len());
    }

    #[test]
    fn placed_loads_are_solved_on_frames_of_the_same_shape_alone() {
        let (one, mut other) = (square(ActsIn::Tension), square(ActsIn::Both));
        // The other has a stiff corner at its top right.
        (other.members[1].hinge_to, other.members[2].hinge_to) = (false, false);
        let mut case = push(1000.0);
        case.members.push(MemberLoad::down(2, Length::inches(40.0), Force::pounds(10.0)));
        let placed = Solver::new(&one).place(&case).unwrap();
        let solution = Solver::new(&other).solve_placed(&placed).unwrap();
        assert_eq!(solution, Solver::new(&other).solve(&case).unwrap());
        let moments = Solver::new(&other).moments_at_ends(&placed).unwrap();
        assert_eq!(moments.len(), other.members.len());
        assert!(moments[2].abs() > Moment::pound_inches(1.0), "{moments:?}");
        for (member, moment) in moments.into_iter().enumerate() {
            let curve = solution.moment(member);
            let at_end = curve.breaks().last().map(|end| curve.at(*end)).unwrap();
            assert!((moment - at_end).abs() < Moment::pound_inches(1e-6), "{member}: {moment:?} is not {at_end:?}");
        }
        // The last members bear no load: without them the loads still fit, and are the same.
        other.members.truncate(4);
        let fewer = Solver::new(&other).solve_placed(&placed).unwrap();
        assert_eq!(fewer.reactions, Solver::new(&other).solve(&case).unwrap().reactions);
        let refuses = |frame: &Frame| Solver::new(frame).solve_placed(&placed).is_err();
        assert!(!refuses(&one));
        // A loaded member that turned round, one more member than was loaded, another node.
        let mut turned = one.clone();
        (turned.members[2].from, turned.members[2].to) = (3, 2);
        assert!(refuses(&turned));
        let mut more = one.clone();
        more.members.push(one.members[0].clone());
        assert!(refuses(&more));
        let mut further = one.clone();
        further.add_node("beside".to_owned(), Length::inches(200.0), Length::ZERO);
        assert!(refuses(&further));
    }

    #[test]
    fn nothing_left_to_hold_is_a_mechanism_that_says_when() {
        let mut frame = square(ActsIn::Tension);
        frame.members.remove(3);
        let error = Solver::new(&frame).solve(&push(1000.0)).unwrap_err();
        assert!(
            matches!(error, FrameError::Mechanism(_)) && error.to_string().contains("once falling let go"),
            "{error}"
        );
    }

    #[test]
    fn a_load_on_a_member_that_let_go_still_arrives() {
        let frame = square(ActsIn::Tension);
        let mut case = push(1000.0);
        case.members.push(MemberLoad::down(4, Length::inches(50.0), Force::pounds(10.0)));
        let solution = Solver::new(&frame).solve(&case).unwrap();
        assert_eq!(solution.dropped(), vec![4]);
        let up: f64 = (0..4).map(|node| solution.reaction(node).z.to_pounds()).sum();
        assert!((up - 10.0).abs() < 1e-9, "{up}");
    }
}

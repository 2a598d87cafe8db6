//! One load case on a factorised frame: movements, then forces, then the proof of equilibrium.
use std::sync::Arc;

use super::assembly::Factorised;
use super::element::{Basic, Element};
use super::error::FrameError;
use super::load::LoadCase;
use super::loaded::{Loaded, add};
use super::numbering::Slot;
use super::solution::{MemberState, Solution};
use crate::units::Moment;

/// A share of the largest force that equilibrium may miss by before the answer is refused.
pub(super) const WORST_RESIDUAL: f64 = 1e-7;
/// Above this the answer is improved by the forces it leaves out of balance. Frames with stiff parts keep 1e-12 to 1e-9 of rounding
/// in their movements, which no improvement takes away.
const GOOD_RESIDUAL: f64 = 1e-9;
const MOST_IMPROVEMENTS: usize = 2;

/// Movements as the matrix gives them.
pub(super) struct Moved {
    /// Of each member with its ends held fast.
    held: Vec<Basic>,
    unknowns: Vec<f64>,
    /// Of every node.
    pub(super) movements: Vec<[f64; 3]>,
}

/// A state of movement and what it means.
pub(super) struct State {
    pub(super) movements: Vec<[f64; 3]>,
    basics: Vec<Basic>,
    /// Forces of members and springs on a node less its loads, gathered at the leaders: what supports must give.
    unbalanced: Vec<[f64; 3]>,
    residual: f64,
    /// Whether the movements are no longer those the matrix gave first.
    pub(super) is_improved: bool,
}

impl Factorised<'_> {
    /// Solves one load case.
    ///
    /// # Errors
    /// Faults of the load case, or numbers too far apart for a trusted answer.
    pub fn solve(&self, case: &LoadCase) -> Result<Solution, FrameError> {
        self.solve_within(WORST_RESIDUAL, case)
    }

    /// The same; equilibrium may miss by another share.
    pub(super) fn solve_within(&self, worst: f64, case: &LoadCase) -> Result<Solution, FrameError> {
        let loaded = Arc::new(self.frame.load(case)?);
        let state = self.settle(worst, &loaded, self.moved(&loaded)?)?;
        Ok(self.solution(&loaded, state))
    }

    /// How far the loads move everything, before that is proved by equilibrium.
    pub(super) fn moved(&self, loaded: &Loaded) -> Result<Moved, FrameError> {
        self.check_moments(loaded)?;
        let parts = self.elements.iter().zip(&loaded.beams);
        let held: Vec<Basic> = parts.map(|(element, beam)| element.held_fast(beam)).collect();
        let still = vec![0.0; self.factors.order()];
        let unknowns = self.improved(&still, &self.unbalanced_at_rest(loaded, &held, &still));
        let movements = self.movements(loaded, &unknowns);
        Ok(Moved { held, unknowns, movements })
    }

    /// Where the frame comes to rest.
    pub(super) fn settle(&self, worst: f64, loaded: &Loaded, moved: Moved) -> Result<State, FrameError> {
        let Moved { held, mut unknowns, movements } = moved;
        let mut state = self.state(loaded, &held, movements);
        for _ in 0..MOST_IMPROVEMENTS {
            if state.residual <= GOOD_RESIDUAL {
                break;
            }
            let next = self.improved(&unknowns, &state.unbalanced);
            let better = self.state(loaded, &held, self.movements(loaded, &next));
            if better.residual >= state.residual {
                break;
            }
            (unknowns, state) = (next, State { is_improved: true, ..better });
        }
        if state.residual > worst {
            return Err(FrameError::Unreliable(format!(
                "The stiffest and the softest part of this frame are too far apart: equilibrium misses by {:.1e} of the largest force.",
                state.residual
            )));
        }
        Ok(state)
    }

    /// The forces at leaders that are out of balance while no unknown moves.
    fn unbalanced_at_rest(&self, loaded: &Loaded, held: &[Basic], unknowns: &[f64]) -> Vec<[f64; 3]> {
        if loaded.imposed.iter().any(|moved| *moved != [0.0; 3]) {
            return self.state(loaded, held, self.movements(loaded, unknowns)).unbalanced;
        }
        // Where nothing moves, only loads press on anything.
        let mut at_nodes: Vec<[f64; 3]> = loaded.nodes.iter().map(|load| minus(*load)).collect();
        for ((element, beam), held) in self.elements.iter().zip(&loaded.beams).zip(held) {
            if !beam.is_bare() {
                let forces = element.end_forces(*held, beam);
                add(&mut at_nodes[element.from], three(&forces, 0));
                add(&mut at_nodes[element.to], three(&forces, 3));
            }
        }
        self.at_leaders(&at_nodes)
    }

    /// Forces at nodes, gathered at the leaders of their bodies.
    fn at_leaders(&self, at_nodes: &[[f64; 3]]) -> Vec<[f64; 3]> {
        let leader = self.bodies.leader.as_slice();
        let mut gathered = vec![[0.0; 3]; at_nodes.len()];
        let at_leaders = gathered.as_mut_slice();
        for (node, force) in at_nodes.iter().enumerate() {
            add(&mut at_leaders[leader[node]], self.bodies.gather_force(node, *force));
        }
        gathered
    }

    /// The unknowns after forces that are out of balance are let go.
    fn improved(&self, unknowns: &[f64], unbalanced: &[[f64; 3]]) -> Vec<f64> {
        let mut change = self.equations(unbalanced);
        self.factors.solve(&mut change);
        for (du, u) in change.iter_mut().zip(unknowns) {
            *du = u - *du;
        }
        change
    }

    /// A moment needs something that turns.
    fn check_moments(&self, loaded: &Loaded) -> Result<(), FrameError> {
        let mut faults = Vec::new();
        for node in loaded.turned.iter().copied() {
            if self.numbering.slots[self.bodies.leader[node]][2] == Slot::None {
                let name = &self.frame.nodes[node].name;
                faults.push(format!(
                    "A moment acts on node {name}, where every member end is hinged: nothing resists it."
                ));
            }
        }
        if faults.is_empty() { Ok(()) } else { Err(FrameError::Input(faults)) }
    }

    /// The part of forces at leaders that belongs to the unknowns.
    fn equations(&self, forces: &[[f64; 3]]) -> Vec<f64> {
        let mut out = vec![0.0; self.factors.order()];
        for (slots, force) in self.numbering.slots.iter().zip(forces) {
            for (slot, value) in slots.iter().zip(force) {
                if let Slot::Equation(equation) = slot {
                    out[*equation] = *value;
                }
            }
        }
        out
    }

    fn movements(&self, loaded: &Loaded, unknowns: &[f64]) -> Vec<[f64; 3]> {
        let (slots, imposed) = (self.numbering.slots.as_slice(), loaded.imposed.as_slice());
        let mut movements = Vec::with_capacity(slots.len());
        for (node, leader) in self.bodies.leader.iter().copied().enumerate() {
            let mut own = [0.0; 3];
            for direction in 0..3 {
                own[direction] = match slots[leader][direction] {
                    Slot::Equation(equation) => unknowns[equation],
                    Slot::Held => imposed[leader][direction],
                    Slot::None => 0.0,
                };
            }
            movements.push(self.bodies.carry(node, own));
        }
        movements
    }

    fn state(&self, loaded: &Loaded, held: &[Basic], movements: Vec<[f64; 3]>) -> State {
        let mut basics = Vec::with_capacity(self.elements.len());
        let mut scale = Scale::default();
        let mut list = vec![[0.0; 3]; loaded.nodes.len()];
        let at_nodes = list.as_mut_slice();
        for (at_node, load) in at_nodes.iter_mut().zip(&loaded.nodes) {
            *at_node = minus(*load);
            scale.see(*load);
        }
        let beams = loaded.beams.as_slice();
        for (index, element) in self.elements.iter().enumerate() {
            let basic = element.moved(held[index], &six(&movements, element.from, element.to));
            let forces = element.end_forces(basic, &beams[index]);
            let (from, to) = (three(&forces, 0), three(&forces, 3));
            add(&mut at_nodes[element.from], from);
            add(&mut at_nodes[element.to], to);
            scale.see(from);
            scale.see(to);
            raise(&mut scale.longest, element.length);
            basics.push(basic);
        }
        if !self.frame.springs.is_empty() {
            for (node, stiffness) in self.ground.iter().enumerate() {
                let force = [0, 1, 2].map(|direction| stiffness[direction] * movements[node][direction]);
                add(&mut at_nodes[node], force);
                scale.see(force);
            }
        }
        let unbalanced = self.at_leaders(at_nodes);
        let residual = self.residual(&unbalanced, &scale);
        State { movements, basics, unbalanced, residual, is_improved: false }
    }

    /// What is out of balance in the free directions, as a share of the largest force (or moment).
    fn residual(&self, unbalanced: &[[f64; 3]], scale: &Scale) -> f64 {
        let mut worst = 0.0_f64;
        let moment = scale.moment.max(scale.force * scale.longest);
        for (slots, force) in self.numbering.slots.iter().zip(unbalanced) {
            for (direction, slot) in slots.iter().enumerate() {
                let largest = if direction < 2 { scale.force } else { moment };
                if matches!(slot, Slot::Equation(_)) && force[direction] != 0.0 {
                    let share = (force[direction] / largest).abs();
                    // Not a number must not pass as small.
                    raise(&mut worst, if share.is_nan() { f64::INFINITY } else { share });
                }
            }
        }
        worst
    }

    /// The axial force each member's change of length calls for, were it at work.
    pub(super) fn called_for(&self, movements: &[[f64; 3]]) -> Vec<f64> {
        let force = |element: &Element| element.axial * element.lengthening(&six(movements, element.from, element.to));
        self.elements.iter().map(force).collect()
    }

    /// All that a state means.
    pub(super) fn solution(&self, loaded: &Arc<Loaded>, mut state: State) -> Solution {
        self.fill_rigid_links(loaded, &mut state);
        let turns = |node: usize| self.numbering.slots[self.bodies.leader[node]][2] != Slot::None;
        let reaction = |node: usize| {
            let slots = self.numbering.slots[node];
            [0, 1, 2].map(|direction| {
                let held = if slots[direction] == Slot::Held { state.unbalanced[node][direction] } else { 0.0 };
                held - self.ground[node][direction] * state.movements[node][direction]
            })
        };
        let n = self.frame.nodes.len();
        let reactions: Vec<[f64; 3]> = (0..n).map(reaction).collect();
        let has_rotation = (0..n).map(turns).collect();
        let whole = self.whole_balance(loaded, &reactions);
        let parts = self.elements.iter().zip(state.basics);
        let members = parts.map(|(element, basic)| MemberState::new(element, basic, &state.movements)).collect();
        Solution {
            loaded: loaded.clone(),
            active: self.active.clone(),
            movements: state.movements,
            has_rotation,
            reactions,
            members,
            residual: state.residual.max(whole),
        }
    }

    /// Of all that the moments just inside each member's `to` end.
    pub(super) fn moments_at_ends(&self, loaded: &Arc<Loaded>, mut state: State) -> Vec<Moment> {
        self.fill_rigid_links(loaded, &mut state);
        state.basics.iter().map(|basic| Moment::pound_inches(basic.moments.1)).collect()
    }

    /// Forces in the rigid links from the nodes they carry, outermost first.
    fn fill_rigid_links(&self, loaded: &Loaded, state: &mut State) {
        if self.bodies.links.is_empty() {
            return;
        }
        let mut wanted = vec![[0.0; 3]; self.frame.nodes.len()];
        for (node, force) in wanted.iter_mut().enumerate() {
            add(force, loaded.nodes[node]);
            if !self.frame.springs.is_empty() {
                let spring = |direction: usize| -self.ground[node][direction] * state.movements[node][direction];
                add(force, [0, 1, 2].map(spring));
            }
        }
        let take = |wanted: &mut [[f64; 3]], node: usize, force: [f64; 3]| {
            add(&mut wanted[node], minus(force));
        };
        for ((element, beam), basic) in self.elements.iter().zip(&loaded.beams).zip(&state.basics) {
            if !element.is_rigid {
                let forces = element.end_forces(*basic, beam);
                take(&mut wanted, element.from, three(&forces, 0));
                take(&mut wanted, element.to, three(&forces, 3));
            }
        }
        for link in self.bodies.links.iter().rev() {
            let element = &self.elements[link.member];
            let beam = &loaded.beams[link.member];
            let (at_child, is_from) = (wanted[link.child], element.from == link.child);
            // What the loads alone ask of the ends of a simple beam, and what is left to pass along.
            let simple = Basic { axial: beam.push_from, moments: (0.0, 0.0) };
            let loads = element.end_forces(simple, beam);
            let (own, other) =
                if is_from { (three(&loads, 0), three(&loads, 3)) } else { (three(&loads, 3), three(&loads, 0)) };
            let passed = [0, 1, 2].map(|direction| at_child[direction] - own[direction]);
            let (c, s) = element.direction;
            let (x, z) = if is_from {
                (-element.length * c, -element.length * s)
            } else {
                (element.length * c, element.length * s)
            };
            // The child lies at (x, z) from the parent end: its forces turn about the parent.
            let back = [-passed[0], -passed[1], -(passed[2] + x * passed[1] - z * passed[0])];
            let at_parent = [0, 1, 2].map(|direction| back[direction] + other[direction]);
            let (from, to) = if is_from { (at_child, at_parent) } else { (at_parent, at_child) };
            state.basics[link.member] = element.basic_of(from, to);
            let parent = if is_from { element.to } else { element.from };
            take(&mut wanted, parent, at_parent);
        }
    }

    /// Loads and reactions of the whole frame against each other, as a share of their sizes.
    fn whole_balance(&self, loaded: &Loaded, reactions: &[[f64; 3]]) -> f64 {
        let place = |node: usize| (self.frame.nodes[node].x.to_inches(), self.frame.nodes[node].z.to_inches());
        let (mut sum, mut size) = ([0.0; 3], [0.0; 3]);
        let centre = place(0);
        let mut gather = |node: usize, force: [f64; 3]| {
            let (x, z) = (place(node).0 - centre.0, place(node).1 - centre.1);
            let (own, up, along) = (force[2], x * force[1], -z * force[0]);
            add(&mut sum, [force[0], force[1], own + up + along]);
            let turning = own.abs() + up.abs() + along.abs();
            let (along, up) = (force[0].abs(), force[1].abs());
            add(&mut size, [along + up, along + up, turning]);
        };
        for (node, (load, reaction)) in loaded.nodes.iter().zip(reactions).enumerate() {
            gather(node, *load);
            gather(node, *reaction);
        }
        for (element, beam) in self.elements.iter().zip(&loaded.beams) {
            let simple = Basic { axial: beam.push_from, moments: (0.0, 0.0) };
            let forces = element.end_forces(simple, beam);
            gather(element.from, minus(three(&forces, 0)));
            gather(element.to, minus(three(&forces, 3)));
        }
        let share =
            |direction: usize| if size[direction] > 0.0 { (sum[direction] / size[direction]).abs() } else { 0.0 };
        (0..3).map(share).fold(0.0, f64::max)
    }
}

/// Sizes that make a residual a share.
#[derive(Default)]
struct Scale {
    force: f64,
    moment: f64,
    longest: f64,
}

impl Scale {
    #[inline(always)]
    fn see(&mut self, force: [f64; 3]) {
        raise(&mut self.force, force[0].abs());
        raise(&mut self.force, force[1].abs());
        raise(&mut self.moment, force[2].abs());
    }
}

/// The larger of both; not a number changes nothing. Compared here, since WebAssembly calls a function for the larger of two.
#[inline(always)]
fn raise(largest: &mut f64, value: f64) {
    if value > *largest {
        *largest = value;
    }
}

#[inline(always)]
fn minus(force: [f64; 3]) -> [f64; 3] {
    [-force[0], -force[1], -force[2]]
}

#[inline(always)]
fn three(forces: &[f64; 6], begin: usize) -> [f64; 3] {
    [forces[begin], forces[begin + 1], forces[begin + 2]]
}

#[inline(always)]
fn six(movements: &[[f64; 3]], from: usize, to: usize) -> [f64; 6] {
    let (a, b) = (movements[from], movements[to]);
    [a[0], a[1], a[2], b[0], b[1], b[2]]
}

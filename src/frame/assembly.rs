//! The stiffness matrix of a frame in one state of its one-way members, split once for many load cases.
use std::sync::Arc;

use super::element::Element;
use super::error::{FrameError, Mechanism};
use super::model::Frame;
use super::numbering::{Numbering, Slot};
use super::rigid::Bodies;
use super::skyline::{Factors, Skyline};

/// A sound frame keeps below this: how much the scaled matrix can swell an even load. Past it rounding eats the answer.
const WORST_SWELLING: f64 = 1e13;

/// A frame ready to be solved for any number of load cases.
#[derive(Clone, Debug)]
pub struct Factorised<'a> {
    pub(super) frame: &'a Frame,
    pub(super) active: Vec<bool>,
    pub(super) bodies: Arc<Bodies>,
    pub(super) numbering: Numbering,
    pub(super) elements: Vec<Element>,
    pub(super) factors: Factors,
    /// Stiffness of the springs to the ground, by node: x, z, rotation.
    pub(super) ground: Vec<[f64; 3]>,
}

impl Frame {
    /// Builds and splits the stiffness matrix with these members at work (one entry a member).
    ///
    /// # Errors
    /// Faults of the input, or the mechanism with the member and node that can move.
    pub fn factorise(&self, active: &[bool]) -> Result<Factorised<'_>, FrameError> {
        self.factorise_bodies(&self.bodies()?, active, 0.0)
    }

    /// Its rigid bodies, once it is known to be valid: the same in every state of its one-way members.
    pub(super) fn bodies(&self) -> Result<Arc<Bodies>, FrameError> {
        self.validate().and_then(|()| Bodies::new(self)).map(Arc::new).map_err(FrameError::Input)
    }

    /// The matrix of these bodies, with a trace of their axial stiffness left to the members that let go.
    pub(super) fn factorise_bodies(
        &self,
        bodies: &Arc<Bodies>,
        active: &[bool],
        trace: f64,
    ) -> Result<Factorised<'_>, FrameError> {
        if active.len() != self.members.len() {
            return Err(FrameError::Input(vec!["The list of members at work does not fit the frame.".to_owned()]));
        }
        let numbering = Numbering::new(self, bodies, active);
        let elements: Vec<Element> =
            active.iter().enumerate().map(|(index, is_active)| Element::new(self, index, *is_active, trace)).collect();
        let mut ground = vec![[0.0; 3]; self.nodes.len()];
        for spring in &self.springs {
            let place = &mut ground[spring.node];
            place[0] += spring.x.to_pounds_per_inch();
            place[1] += spring.z.to_pounds_per_inch();
            place[2] += spring.rotation.to_pound_inches_per_radian();
        }
        let (matrix, diagonal) = assemble(&elements, &ground, bodies, &numbering);
        let report = |mode: &[f64]| mechanism(self, active, bodies, &numbering, mode);
        let factors = matrix.factorise().map_err(|loose| report(&loose.mode))?;
        if let Some(mode) = swelling(&factors, &diagonal) {
            return Err(report(&mode).into());
        }
        let bodies = bodies.clone();
        Ok(Factorised { frame: self, active: active.to_vec(), bodies, numbering, elements, factors, ground })
    }
}

/// The equations a node's movement depends on: leader's slots, and how the three movements follow them.
#[inline(always)]
fn shares(node: usize, bodies: &Bodies, numbering: &Numbering) -> [Slot; 3] {
    numbering.slots.as_slice()[bodies.leader.as_slice()[node]]
}

/// Turns a block between two nodes into one between their leaders: Tᵀ·K·T.
fn to_leaders(mut block: [[f64; 3]; 3], row: usize, column: usize, bodies: &Bodies) -> [[f64; 3]; 3] {
    let offset = bodies.offset.as_slice();
    let (a, b) = offset[column];
    for line in &mut block {
        line[2] += a * line[1] - b * line[0];
    }
    let (a, b) = offset[row];
    let [x, z, mut turn] = block;
    for index in 0..3 {
        turn[index] = turn[index] + a * z[index] - b * x[index];
    }
    [x, z, turn]
}

fn assemble(elements: &[Element], ground: &[[f64; 3]], bodies: &Bodies, numbering: &Numbering) -> (Skyline, Vec<f64>) {
    let mut first: Vec<usize> = (0..numbering.count).collect();
    for element in elements.iter().filter(|element| element.resists()) {
        let slots = [element.from, element.to].map(|node| shares(node, bodies, numbering));
        let equations = || slots.iter().flatten().filter_map(|slot| equation(*slot));
        if let Some(lowest) = equations().min() {
            equations().for_each(|row| first[row] = first[row].min(lowest));
        }
    }
    for slots in &numbering.slots {
        let equations = || slots.iter().filter_map(|slot| equation(*slot));
        if let Some(lowest) = equations().min() {
            equations().for_each(|row| first[row] = first[row].min(lowest));
        }
    }
    let mut sum = Sum { matrix: Skyline::new(first), diagonal: vec![0.0; numbering.count], bodies, numbering };
    for element in elements.iter().filter(|element| element.resists()) {
        let k = element.stiffness();
        let ends = [element.from, element.to];
        for (i, row) in ends.iter().copied().enumerate() {
            for (j, column) in ends.iter().copied().enumerate() {
                let part = |a: usize| [k[3 * i + a][3 * j], k[3 * i + a][3 * j + 1], k[3 * i + a][3 * j + 2]];
                sum.add(row, column, [part(0), part(1), part(2)]);
            }
        }
    }
    for (node, [x, z, rotation]) in ground.iter().enumerate().filter(|(_, stiffness)| **stiffness != [0.0; 3]) {
        sum.add(node, node, [[*x, 0.0, 0.0], [0.0, *z, 0.0], [0.0, 0.0, *rotation]]);
    }
    (sum.matrix, sum.diagonal)
}

#[inline(always)]
fn equation(slot: Slot) -> Option<usize> {
    if let Slot::Equation(equation) = slot { Some(equation) } else { None }
}

struct Sum<'a> {
    matrix: Skyline,
    diagonal: Vec<f64>,
    bodies: &'a Bodies,
    numbering: &'a Numbering,
}

impl Sum<'_> {
    /// Adds a block; entries above the diagonal are left to their mirror image.
    fn add(&mut self, row: usize, column: usize, block: [[f64; 3]; 3]) {
        let rows = shares(row, self.bodies, self.numbering);
        let columns = shares(column, self.bodies, self.numbering);
        let last = rows.iter().rev().find_map(|row| equation(*row));
        let first = columns.iter().find_map(|column| equation(*column));
        if last.is_none() || first.is_none() || last < first {
            return;
        }
        let block = to_leaders(block, row, column, self.bodies);
        for (i, row) in rows.iter().enumerate() {
            let Some(row) = equation(*row) else { continue };
            for (j, column) in columns.iter().enumerate() {
                let Some(column) = equation(*column).filter(|column| *column <= row) else { continue };
                self.matrix.add(row, column, block[i][j]);
                if row == column {
                    self.diagonal.as_mut_slice()[row] += block[i][j];
                }
            }
        }
    }
}

/// A movement that an even load swells past all measure: a mechanism that rounding hid from the pivots.
///
/// The matrix is scaled to a unit diagonal; the load has signs that repeat in no frame's pattern.
fn swelling(factors: &Factors, diagonal: &[f64]) -> Option<Vec<f64>> {
    if factors.order() == 0 {
        return None;
    }
    let root: Vec<f64> = diagonal.iter().map(|value| value.sqrt()).collect();
    let sign = |index: usize| if (index * 7919 + index * index) % 5 < 2 { -1.0 } else { 1.0 };
    let mut movement: Vec<f64> = root.iter().enumerate().map(|(index, root)| sign(index) * root).collect();
    factors.solve(&mut movement);
    let norm = movement.iter().zip(&root).map(|(u, root)| (u * root) * (u * root)).sum::<f64>().sqrt();
    let is_worst = norm.is_nan() || norm > WORST_SWELLING * (factors.order() as f64).sqrt();
    is_worst.then_some(movement)
}

/// Names the node that moves most and a member at it that moves too.
fn mechanism(frame: &Frame, active: &[bool], bodies: &Bodies, numbering: &Numbering, mode: &[f64]) -> Mechanism {
    let movement = |node: usize| {
        let leader = bodies.leader[node];
        let own = numbering.slots[leader].map(|slot| equation(slot).map_or(0.0, |equation| mode[equation]));
        bodies.carry(node, own)
    };
    let reach = |node: usize| {
        let [x, z, _] = movement(node);
        x.abs().max(z.abs())
    };
    let turn = |node: usize| movement(node)[2].abs();
    let largest = |size: &dyn Fn(usize) -> f64| {
        (0..frame.nodes.len())
            .map(|node| (node, size(node)))
            .fold((0, 0.0), |best, next| if next.1 > best.1 { next } else { best })
    };
    let longest = (0..frame.members.len()).map(|index| frame.length(index).to_inches()).fold(1.0, f64::max);
    let (moved, by) = largest(&reach);
    let (turned, angle) = largest(&turn);
    // A turn without a movement of its own counts: a lever on one pin.
    let (node, direction) = if by > 1e-9 * angle * longest {
        let [x, z, _] = movement(moved);
        (moved, if x.abs() >= z.abs() { "along x" } else { "along z" })
    } else if angle > 0.0 {
        (turned, "by turning")
    } else {
        let place = mode.iter().position(|value| *value != 0.0).and_then(|equation| numbering.place(equation));
        (place.map_or(0, |place| place.0), "freely")
    };
    let is_at =
        |index: &usize| active[*index] && (frame.members[*index].from == node || frame.members[*index].to == node);
    let member = (0..frame.members.len()).find(is_at);
    let name = &frame.nodes[node].name;
    let says = match member {
        Some(index) => format!(
            "Member {} can move: nothing holds node {name} {direction}. A support, a brace or a stiff joint is missing.",
            frame.members[index].name
        ),
        None => format!("Node {name} can move {direction}: no member at work holds it."),
    };
    Mechanism { node, member, says }
}

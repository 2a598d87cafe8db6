//! The loads of one case on the parts of a frame, whichever of its members are at work and however stiff they are.
use std::sync::Arc;

use super::error::FrameError;
use super::load::LoadCase;
use super::model::Frame;
use super::simple_beam::{Room, SimpleBeam};
use crate::units::Moment;

/// Loads of one case on the frame's parts.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Loaded {
    /// Where each member lies.
    lines: Vec<Line>,
    /// What lies on each member.
    pub(super) beams: Vec<SimpleBeam>,
    pub(super) nodes: Vec<[f64; 3]>,
    /// Where moments act, each as it was given: they need something that turns.
    pub(super) turned: Vec<usize>,
    pub(super) imposed: Vec<[f64; 3]>,
}

/// Where a member lies: its nodes, its length, its direction (cosine, sine).
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Line {
    pub(super) from: usize,
    pub(super) to: usize,
    pub(super) length: f64,
    pub(super) direction: (f64, f64),
}

/// A load case set on a frame by its [`Solver`](super::Solver), to be solved on it and on frames with the same nodes whose loaded
/// members are the same: stiffness and hinges may differ, and the members behind them.
#[derive(Clone, Debug)]
pub struct PlacedLoads(pub(super) Arc<Loaded>);

impl Frame {
    /// Where a member of a frame without faults lies.
    pub(super) fn line(&self, member: usize) -> Line {
        let member = &self.members[member];
        let (a, b) = (&self.nodes[member.from], &self.nodes[member.to]);
        let (x, z) = ((b.x - a.x).to_inches(), (b.z - a.z).to_inches());
        let length = x.hypot(z);
        Line { from: member.from, to: member.to, length, direction: (x / length, z / length) }
    }

    /// The case on the parts of a frame without faults.
    pub(super) fn load(&self, case: &LoadCase) -> Result<Loaded, FrameError> {
        self.check_case(case).map_err(FrameError::Input)?;
        // Each member's first load, and from each load the next on its member.
        let mut first = vec![None; self.members.len()];
        let mut next = vec![None; case.members.len()];
        for (index, load) in case.members.iter().enumerate().rev() {
            next[index] = first[load.member()].replace(index);
        }
        let mut room = Room::default();
        let lines: Vec<Line> = (0..self.members.len()).map(|member| self.line(member)).collect();
        let of_member = |(line, first): (&Line, &Option<usize>)| {
            let loads = std::iter::successors(*first, |index| next[*index]).map(|index| &case.members[index]);
            SimpleBeam::new(loads, line.length, line.direction, &mut room)
        };
        let beams: Vec<SimpleBeam> = lines.iter().zip(&first).map(of_member).collect();
        let mut nodes = vec![[0.0; 3]; self.nodes.len()];
        for load in &case.nodes {
            add(&mut nodes[load.node], [load.x.to_pounds(), load.z.to_pounds(), load.moment.to_pound_inches()]);
        }
        let turning = case.nodes.iter().filter(|load| load.moment != Moment::ZERO);
        let turned = turning.map(|load| load.node).collect();
        let mut imposed = vec![[0.0; 3]; self.nodes.len()];
        for moved in &case.settlements {
            add(&mut imposed[moved.node], [moved.x.to_inches(), moved.z.to_inches(), moved.rotation.to_radians()]);
        }
        Ok(Loaded { lines, beams, nodes, turned, imposed })
    }
}

impl Loaded {
    /// Whether they can be solved on this frame without faults: each member that bears a load lies where it lay, and those past
    /// its last one bear none.
    pub(super) fn fits(&self, frame: &Frame) -> bool {
        let n_members = frame.members.len();
        let lies_alike = |member: usize| self.beams[member].is_bare() || self.lines[member] == frame.line(member);
        self.nodes.len() == frame.nodes.len()
            && self.beams.len() >= n_members
            && self.beams[n_members..].iter().all(SimpleBeam::is_bare)
            && (0..n_members).all(lies_alike)
    }
}

#[inline(always)]
pub(super) fn add(sum: &mut [f64; 3], force: [f64; 3]) {
    sum[0] += force[0];
    sum[1] += force[1];
    sum[2] += force[2];
}

//! Bodies of nodes joined by rigid links.
//!
//! Each body is a tree with a leading node (the supported one, where there is one). A follower at the offset (a, b)
//! from its leader moves by x − θ·b along x, z + θ·a along z, and turns by θ.
use super::model::{Frame, Stiffness};
use super::narrow::narrow_order;

/// One rigid link, seen from its body's leader.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Link {
    pub(super) member: usize,
    /// The end farther from the leader.
    pub(super) child: usize,
}

/// Which node leads which.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Bodies {
    pub(super) leader: Vec<usize>,
    /// The offset of each node from its leader.
    pub(super) offset: Vec<(f64, f64)>,
    /// Whether a node's body has more than one node.
    pub(super) is_body: Vec<bool>,
    /// Links from the leaders outward.
    pub(super) links: Vec<Link>,
    /// Leaders in an order that keeps the matrix narrow, whichever members have let go.
    pub(super) order: Vec<usize>,
}

impl Bodies {
    /// The bodies of a frame whose members name existing nodes; faults in words where links close a ring or hold a
    /// body at two supports, where the forces in them could not be told apart.
    pub(super) fn new(frame: &Frame) -> Result<Self, Vec<String>> {
        let n = frame.nodes.len();
        let mut bodies =
            Self { leader: (0..n).collect(), offset: vec![(0.0, 0.0); n], is_body: vec![false; n], ..Self::default() };
        let mut at_node: Vec<Vec<usize>> = vec![Vec::new(); n];
        let is_rigid = |member: usize| frame.members[member].stiffness == Stiffness::Rigid;
        for member in (0..frame.members.len()).filter(|member| is_rigid(*member)) {
            at_node[frame.members[member].from].push(member);
            at_node[frame.members[member].to].push(member);
        }
        let mut is_held = vec![false; n];
        for support in &frame.supports {
            is_held[support.node] = true;
        }
        let mut faults = Vec::new();
        let mut is_seen = vec![false; n];
        let starts: Vec<usize> =
            (0..n).filter(|node| is_held[*node]).chain((0..n).filter(|node| !is_held[*node])).collect();
        for start in starts {
            if !is_seen[start] && !at_node[start].is_empty() {
                bodies.gather(frame, start, &at_node, &is_held, &mut is_seen, &mut faults);
            }
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        bodies.order = narrow_order(frame, &bodies.leader);
        Ok(bodies)
    }

    fn gather(
        &mut self,
        frame: &Frame,
        start: usize,
        at_node: &[Vec<usize>],
        is_held: &[bool],
        is_seen: &mut [bool],
        faults: &mut Vec<String>,
    ) {
        let place = |node: usize| (frame.nodes[node].x.to_inches(), frame.nodes[node].z.to_inches());
        let mut waiting = vec![(start, usize::MAX)];
        is_seen[start] = true;
        let mut next = 0;
        while let Some(&(node, came_by)) = waiting.get(next) {
            next += 1;
            self.leader[node] = start;
            self.is_body[node] = true;
            self.offset[node] = (place(node).0 - place(start).0, place(node).1 - place(start).1);
            for &member in at_node[node].iter().filter(|member| **member != came_by) {
                let ends = &frame.members[member];
                let child = if ends.from == node { ends.to } else { ends.from };
                if is_seen[child] {
                    let says = format!("Rigid links close a ring at {}: take one of them out.", ends.name);
                    if !faults.contains(&says) {
                        faults.push(says);
                    }
                    continue;
                }
                is_seen[child] = true;
                if is_held[child] {
                    let (a, b) = (&frame.nodes[start].name, &frame.nodes[child].name);
                    faults
                        .push(format!("Rigid links join the supports {a} and {b}: their shares cannot be told apart."));
                }
                self.links.push(Link { member, child });
                waiting.push((child, member));
            }
        }
    }

    /// A node's movement from that of its leader.
    #[inline(always)]
    pub(super) fn carry(&self, node: usize, leader: [f64; 3]) -> [f64; 3] {
        let (a, b) = self.offset.as_slice()[node];
        [leader[0] - leader[2] * b, leader[1] + leader[2] * a, leader[2]]
    }

    /// Forces at a node as forces at its leader.
    #[inline(always)]
    pub(super) fn gather_force(&self, node: usize, force: [f64; 3]) -> [f64; 3] {
        let (a, b) = self.offset.as_slice()[node];
        [force[0], force[1], force[2] + a * force[1] - b * force[0]]
    }
}

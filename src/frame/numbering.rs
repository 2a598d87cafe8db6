//! Which unknown belongs to which node and direction, in an order that keeps the matrix narrow.
use super::model::{Frame, Stiffness};
use super::rigid::Bodies;

/// What happens with one direction of a node.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Slot {
    /// An unknown: its equation.
    Equation(usize),
    /// Held: its movement is imposed.
    Held,
    /// Nothing turns here: every member end is hinged. Or a follower: its leader has the unknown.
    None,
}

/// The unknowns of a frame: x, z, rotation of each node.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Numbering {
    pub(super) slots: Vec<[Slot; 3]>,
    pub(super) count: usize,
}

impl Numbering {
    pub(super) fn new(frame: &Frame, bodies: &Bodies, active: &[bool]) -> Self {
        let n = frame.nodes.len();
        let mut held = vec![[false; 3]; n];
        for support in &frame.supports {
            held[support.node] = [support.x, support.z, support.rotation];
        }
        let turns = turning(frame, bodies, active);
        let mut slots = vec![[Slot::None; 3]; n];
        let mut count = 0;
        for node in reverse_cuthill_mckee(&neighbours(frame, bodies, active)) {
            if bodies.leader[node] != node {
                continue;
            }
            for direction in 0..3 {
                slots[node][direction] = if held[node][direction] {
                    Slot::Held
                } else if direction < 2 || turns[node] {
                    count += 1;
                    Slot::Equation(count - 1)
                } else {
                    Slot::None
                };
            }
        }
        Self { slots, count }
    }

    /// The node and direction of an equation.
    pub(super) fn place(&self, equation: usize) -> Option<(usize, usize)> {
        let wanted = Slot::Equation(equation);
        let of_node = |slots: &[Slot; 3]| slots.iter().position(|slot| *slot == wanted);
        self.slots.iter().enumerate().find_map(|(node, slots)| of_node(slots).map(|direction| (node, direction)))
    }
}

/// Whether a leading node can be turned by anything.
fn turning(frame: &Frame, bodies: &Bodies, active: &[bool]) -> Vec<bool> {
    let mut turns = bodies.is_body.clone();
    for spring in &frame.springs {
        turns[spring.node] |= spring.rotation.to_pound_inches_per_radian() > 0.0;
    }
    for (member, is_active) in frame.members.iter().zip(active) {
        if *is_active {
            turns[member.from] |= !member.hinge_from;
            turns[member.to] |= !member.hinge_to;
        }
    }
    turns
}

/// The nodes joined to each node, least first: one list for all, and where each node's part of it begins.
struct Neighbours {
    begins: Vec<usize>,
    nodes: Vec<usize>,
}

impl Neighbours {
    /// Of pairs of joined nodes; a pair may come twice.
    fn of(count: usize, pairs: impl Iterator<Item = (usize, usize)> + Clone) -> Self {
        let mut begins = vec![0; count + 1];
        for (a, b) in pairs.clone() {
            begins[a + 1] += 1;
            begins[b + 1] += 1;
        }
        for node in 0..count {
            begins[node + 1] += begins[node];
        }
        let mut nodes = vec![0; begins[count]];
        let mut filled = begins.clone();
        for (a, b) in pairs {
            for (node, other) in [(a, b), (b, a)] {
                nodes[filled[node]] = other;
                filled[node] += 1;
            }
        }
        for node in 0..count {
            nodes[begins[node]..begins[node + 1]].sort_unstable();
        }
        Self { begins, nodes }
    }

    fn count(&self) -> usize {
        self.begins.len() - 1
    }

    /// Those of a node; twice where two members join the same two.
    fn at(&self, node: usize) -> &[usize] {
        &self.nodes[self.begins[node]..self.begins[node + 1]]
    }
}

fn neighbours(frame: &Frame, bodies: &Bodies, active: &[bool]) -> Neighbours {
    let joins = frame.members.iter().zip(active).filter_map(|(member, is_active)| {
        let (a, b) = (bodies.leader[member.from], bodies.leader[member.to]);
        (*is_active && member.stiffness != Stiffness::Rigid && a != b).then_some((a, b))
    });
    Neighbours::of(frame.nodes.len(), joins)
}

/// Breadth first from a node at the edge, least joined neighbours first, then turned round.
///
/// E. Cuthill, J. McKee, "Reducing the bandwidth of sparse symmetric matrices", ACM national conference 1969; turned
/// round after A. George, 1971; the edge found by the widest of repeated levels (N. Gibbs and others, 1976). From memory.
fn reverse_cuthill_mckee(neighbours: &Neighbours) -> Vec<usize> {
    let count = neighbours.count();
    let mut order = Vec::with_capacity(count);
    let mut is_placed = vec![false; count];
    for start in 0..count {
        if is_placed[start] {
            continue;
        }
        // Two sweeps: the last node of the first one lies at an edge of the component.
        let sweep = breadth_first(neighbours, start);
        let edge = sweep.last().copied().unwrap_or(start);
        for node in breadth_first(neighbours, edge) {
            is_placed[node] = true;
            order.push(node);
        }
    }
    order.reverse();
    order
}

fn breadth_first(neighbours: &Neighbours, start: usize) -> Vec<usize> {
    let mut order = Vec::with_capacity(neighbours.count());
    order.push(start);
    let mut is_seen = vec![false; neighbours.count()];
    is_seen[start] = true;
    let mut next = 0;
    while next < order.len() {
        let fresh = order.len();
        for node in neighbours.at(order[next]) {
            if !std::mem::replace(&mut is_seen[*node], true) {
                order.push(*node);
            }
        }
        order[fresh..].sort_by_key(|node| neighbours.at(*node).len());
        next += 1;
    }
    order
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_chain_named_at_random_comes_out_in_line() {
        // 3 - 0 - 4 - 1 - 2.
        let order = reverse_cuthill_mckee(&Neighbours::of(5, [(3, 0), (0, 4), (4, 1), (1, 2)].into_iter()));
        assert!(order == [2, 1, 4, 0, 3] || order == [3, 0, 4, 1, 2], "{order:?}");
    }

    #[test]
    fn every_part_is_numbered() {
        let order = reverse_cuthill_mckee(&Neighbours::of(5, [(0, 1), (3, 4)].into_iter()));
        let mut sorted = order.clone();
        sorted.sort_unstable();
        assert_eq!(sorted, vec![0, 1, 2, 3, 4]);
    }
}

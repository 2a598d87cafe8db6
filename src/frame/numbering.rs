//! Which unknown belongs to which node and direction.
use super::model::Frame;
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
        for node in bodies.order.iter().copied() {
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

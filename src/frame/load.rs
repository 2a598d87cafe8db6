//! Loads on a frame: one case is everything that acts at the same time.
use super::model::{Frame, Stiffness};
use crate::units::{Angle, Density, Force, Length, LineLoad, Moment};

/// A load on a member. Distances run along the member from its `from` end; directions are those of the frame (x, z up).
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum MemberLoad {
    /// A force at one place.
    Point {
        /// The member.
        member: usize,
        /// Where, from the `from` end.
        at: Length,
        /// Along x.
        x: Force,
        /// Along z: a weight is negative.
        z: Force,
    },
    /// A load spread from one place to another, changing evenly, per length of member.
    Spread {
        /// The member.
        member: usize,
        /// Where it begins.
        from: Length,
        /// Where it ends.
        to: Length,
        /// Along x, at its begin and its end.
        x: (LineLoad, LineLoad),
        /// Along z, at its begin and its end.
        z: (LineLoad, LineLoad),
    },
}

impl MemberLoad {
    /// A downward point load.
    #[must_use]
    pub fn down(member: usize, at: Length, force: Force) -> Self {
        Self::Point { member, at, x: Force::ZERO, z: -force }
    }

    /// A downward load, even along a stretch of the member.
    #[must_use]
    pub fn even(member: usize, from: Length, to: Length, down: LineLoad) -> Self {
        Self::Spread { member, from, to, x: (LineLoad::ZERO, LineLoad::ZERO), z: (-down, -down) }
    }

    /// The member it acts on.
    #[must_use]
    pub const fn member(&self) -> usize {
        match self {
            Self::Point { member, .. } | Self::Spread { member, .. } => *member,
        }
    }
}

/// Forces and a moment on a node.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NodeLoad {
    /// The node.
    pub node: usize,
    /// Along x.
    pub x: Force,
    /// Along z.
    pub z: Force,
    /// Counter-clockwise.
    pub moment: Moment,
}

/// A movement imposed on a support, in directions it holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Settlement {
    /// The node.
    pub node: usize,
    /// Along x.
    pub x: Length,
    /// Along z: sinking is negative.
    pub z: Length,
    /// Counter-clockwise.
    pub rotation: Angle,
}

/// Everything that acts on the frame at the same time.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LoadCase {
    /// On members.
    pub members: Vec<MemberLoad>,
    /// On nodes.
    pub nodes: Vec<NodeLoad>,
    /// Imposed on supports.
    pub settlements: Vec<Settlement>,
}

impl LoadCase {
    /// Adds the weight of one elastic member along its whole length. A rigid link has no section and no weight.
    pub fn add_self_weight(&mut self, frame: &Frame, member: usize, density: Density) {
        let Some(stiffness) = frame.members.get(member).map(|member| member.stiffness) else { return };
        if let Stiffness::Elastic { area, .. } = stiffness {
            let weight = density.line_load(area);
            self.members.push(MemberLoad::even(member, Length::ZERO, frame.length(member), weight));
        }
    }

    /// The sum of this case and another one, each times its factor.
    #[must_use]
    pub fn combined(&self, factor: f64, other: &Self, other_factor: f64) -> Self {
        let mut sum = self.scaled(factor);
        let other = other.scaled(other_factor);
        sum.members.extend(other.members);
        sum.nodes.extend(other.nodes);
        sum.settlements.extend(other.settlements);
        sum
    }

    /// This case times a factor.
    #[must_use]
    pub fn scaled(&self, factor: f64) -> Self {
        let member = |load: &MemberLoad| match *load {
            MemberLoad::Point { member, at, x, z } => MemberLoad::Point { member, at, x: x * factor, z: z * factor },
            MemberLoad::Spread { member, from, to, x, z } => MemberLoad::Spread {
                member,
                from,
                to,
                x: (x.0 * factor, x.1 * factor),
                z: (z.0 * factor, z.1 * factor),
            },
        };
        let node = |load: &NodeLoad| NodeLoad {
            node: load.node,
            x: load.x * factor,
            z: load.z * factor,
            moment: load.moment * factor,
        };
        let settlement = |moved: &Settlement| Settlement {
            node: moved.node,
            x: moved.x * factor,
            z: moved.z * factor,
            rotation: moved.rotation * factor,
        };
        Self {
            members: self.members.iter().map(member).collect(),
            nodes: self.nodes.iter().map(node).collect(),
            settlements: self.settlements.iter().map(settlement).collect(),
        }
    }
}

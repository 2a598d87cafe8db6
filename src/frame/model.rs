//! What a plane frame is made of. Nodes and members are known to each other by their place in the lists.
use super::quantities::{Inertia, Spring, TurnSpring};
use crate::units::{Area, Length, Stress};

/// A point where members meet.
#[derive(Clone, Debug, PartialEq)]
pub struct Node {
    /// Its name, for messages and reports.
    pub name: String,
    /// Along the frame.
    pub x: Length,
    /// Up.
    pub z: Length,
}

/// Directions in which a node is held.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Support {
    /// The node.
    pub node: usize,
    /// Held along x.
    pub x: bool,
    /// Held along z.
    pub z: bool,
    /// Held against turning.
    pub rotation: bool,
}

impl Support {
    /// Held along x and z, free to turn.
    #[must_use]
    pub const fn pinned(node: usize) -> Self {
        Self { node, x: true, z: true, rotation: false }
    }

    /// Held along z only.
    #[must_use]
    pub const fn roller(node: usize) -> Self {
        Self { node, x: false, z: true, rotation: false }
    }

    /// Held in every direction.
    #[must_use]
    pub const fn fixed(node: usize) -> Self {
        Self { node, x: true, z: true, rotation: true }
    }
}

/// Springs between a node and the ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NodeSpring {
    /// The node.
    pub node: usize,
    /// Along x.
    pub x: Spring,
    /// Along z.
    pub z: Spring,
    /// Against turning.
    pub rotation: TurnSpring,
}

/// How a member resists.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Stiffness {
    /// A straight elastic member of one section.
    Elastic {
        /// Modulus of elasticity.
        modulus: Stress,
        /// Area of the section.
        area: Area,
        /// Second moment of area about the axis square to the frame's plane.
        inertia: Inertia,
    },
    /// A link that does not deform: its two nodes move as one body.
    Rigid,
}

/// The kinds of axial force a member can carry.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum ActsIn {
    /// Push and pull.
    #[default]
    Both,
    /// Push only: it lets go when its ends move apart.
    Compression,
    /// Pull only: it goes slack when its ends come together.
    Tension,
}

impl ActsIn {
    /// Whether a change of length of this sign (lengthening positive) is resisted.
    pub(super) fn resists(self, lengthening: f64) -> bool {
        match self {
            Self::Both => true,
            Self::Compression => lengthening < 0.0,
            Self::Tension => lengthening > 0.0,
        }
    }
}

/// A straight member between two nodes.
#[derive(Clone, Debug, PartialEq)]
pub struct Member {
    /// Its name, for messages and reports.
    pub name: String,
    /// The node it starts from.
    pub from: usize,
    /// The node it goes to.
    pub to: usize,
    /// How it resists.
    pub stiffness: Stiffness,
    /// No moment passes at the `from` end.
    pub hinge_from: bool,
    /// No moment passes at the `to` end.
    pub hinge_to: bool,
    /// The axial forces it can carry. When it lets go, loads on it still reach its nodes as from a simple beam.
    pub acts_in: ActsIn,
    /// An axial spring at each end, in series with the member.
    pub end_spring: Option<Spring>,
}

impl Member {
    /// A member of one section, stiffly joined at both ends.
    #[must_use]
    pub fn elastic(
        name: impl Into<String>,
        ends: (usize, usize),
        modulus: Stress,
        area: Area,
        inertia: Inertia,
    ) -> Self {
        let stiffness = Stiffness::Elastic { modulus, area, inertia };
        let (from, to) = ends;
        Self {
            name: name.into(),
            from,
            to,
            stiffness,
            hinge_from: false,
            hinge_to: false,
            acts_in: ActsIn::Both,
            end_spring: None,
        }
    }

    /// A link that does not deform.
    #[must_use]
    pub fn rigid(name: impl Into<String>, ends: (usize, usize)) -> Self {
        let (one_psi, one_inch_2) = (Stress::psi(1.0), Area::square_inches(1.0));
        let elastic = Self::elastic(name, ends, one_psi, one_inch_2, Inertia::inches_4(1.0));
        Self { stiffness: Stiffness::Rigid, ..elastic }
    }

    /// The same member with hinges.
    #[must_use]
    pub fn hinged(self, hinge_from: bool, hinge_to: bool) -> Self {
        Self { hinge_from, hinge_to, ..self }
    }

    /// The same member, acting one way only.
    #[must_use]
    pub fn acting(self, acts_in: ActsIn) -> Self {
        Self { acts_in, ..self }
    }

    /// The same member with an axial spring at each end.
    #[must_use]
    pub fn sprung(self, spring: Spring) -> Self {
        Self { end_spring: Some(spring), ..self }
    }
}

/// A plane frame without its loads.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Frame {
    /// Where members meet.
    pub nodes: Vec<Node>,
    /// What holds them.
    pub supports: Vec<Support>,
    /// Springs to the ground.
    pub springs: Vec<NodeSpring>,
    /// The members.
    pub members: Vec<Member>,
}

impl Frame {
    /// Adds a node and gives its place in the list.
    pub fn add_node(&mut self, name: impl Into<String>, x: Length, z: Length) -> usize {
        self.nodes.push(Node { name: name.into(), x, z });
        self.nodes.len() - 1
    }

    /// Adds a member and gives its place in the list.
    pub fn add_member(&mut self, member: Member) -> usize {
        self.members.push(member);
        self.members.len() - 1
    }

    /// How long a member is; zero where it names a node that is not there.
    #[must_use]
    pub fn length(&self, member: usize) -> Length {
        let ends = self.members.get(member).and_then(|m| Some((self.nodes.get(m.from)?, self.nodes.get(m.to)?)));
        ends.map_or(Length::ZERO, |(a, b)| (b.x - a.x).hypot(b.z - a.z))
    }

    /// Every member at work: the state to start from.
    #[must_use]
    pub fn all_active(&self) -> Vec<bool> {
        vec![true; self.members.len()]
    }
}

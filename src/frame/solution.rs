//! The answer for one load case: movements, reactions and the four diagrams of every member.
use std::sync::Arc;

use super::diagram::{Diagram, Piece};
use super::element::{Basic, Element};
use super::loaded::Loaded;
use super::polynomial::Polynomial;
use super::quantities::Measured;
use super::simple_beam::{SimpleBeam, Stretch};
use crate::units::{Angle, Force, Length, Moment};

/// How a node moved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Movement {
    /// Along x.
    pub x: Length,
    /// Along z.
    pub z: Length,
    /// Counter-clockwise; `None` where every member end is hinged and the node has no rotation of its own.
    pub rotation: Option<Angle>,
}

/// What the ground gives to a node, through supports and springs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reaction {
    /// Along x.
    pub x: Force,
    /// Along z.
    pub z: Force,
    /// Counter-clockwise.
    pub moment: Moment,
}

/// One member's forces and end movements.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct MemberState {
    length: f64,
    axial: f64,
    /// End moments, positive when they stretch the right-hand side.
    moments: (f64, f64),
    /// Movement of the ends to the left of the member.
    ends: (f64, f64),
    /// 1 ÷ (E·I); zero for a rigid link.
    flexibility: f64,
}

impl MemberState {
    pub(super) fn new(element: &Element, basic: Basic, movements: &[[f64; 3]]) -> Self {
        let (c, s) = element.direction;
        let left = |node: usize| movements[node][1] * c - movements[node][0] * s;
        Self {
            length: element.length,
            axial: basic.axial,
            moments: (-basic.moments.0, basic.moments.1),
            ends: (left(element.from), left(element.to)),
            flexibility: if element.is_rigid { 0.0 } else { 1.0 / element.bending },
        }
    }

    fn axial(&self, beam: &SimpleBeam) -> Vec<Piece> {
        self.pieces(beam, |stretch, curve| {
            for (entry, pushed) in curve.iter_mut().zip(stretch.pushed_curve()) {
                *entry = -pushed;
            }
            curve[0] += self.axial;
        })
    }

    fn axial_at_start(&self, beam: &SimpleBeam) -> f64 {
        self.axial - beam.stretches.first().map_or(0.0, |stretch| stretch.pushed)
    }

    fn shear(&self, beam: &SimpleBeam) -> Vec<Piece> {
        let couple = (self.moments.1 - self.moments.0) / self.length;
        self.pieces(beam, |stretch, curve| {
            curve[..3].copy_from_slice(&stretch.shear_curve());
            curve[0] += couple;
        })
    }

    fn moment(&self, beam: &SimpleBeam) -> Vec<Piece> {
        self.pieces(beam, |stretch, curve| curve[..4].copy_from_slice(&self.moment_curve(stretch)))
    }

    fn moment_curve(&self, stretch: &Stretch) -> [f64; 4] {
        let couple = (self.moments.1 - self.moments.0) / self.length;
        let mut curve = stretch.moment_curve();
        curve[0] += self.moments.0 + couple * stretch.start;
        curve[1] += couple;
        curve
    }

    /// The movement off the straight line between two given end movements.
    fn deflection(&self, beam: &SimpleBeam, ends: (f64, f64)) -> Vec<Piece> {
        let (mut slope, mut offset) = (0.0, 0.0);
        let mut pieces = self.pieces(beam, |stretch, curve| {
            let m = self.moment_curve(stretch).map(|coefficient| coefficient * self.flexibility);
            *curve = [offset, slope, m[0] / 2.0, m[1] / 6.0, m[2] / 12.0, m[3] / 20.0];
            let t = stretch.length;
            offset += t * (slope + t * (m[0] / 2.0 + t * (m[1] / 6.0 + t * (m[2] / 12.0 + t * m[3] / 20.0))));
            slope += t * (m[0] + t * (m[1] / 2.0 + t * (m[2] / 3.0 + t * m[3] / 4.0)));
        });
        // Turned so that both ends lie where the nodes went.
        let turn = (ends.1 - ends.0 - offset) / self.length;
        for piece in &mut pieces {
            piece.curve[0] += ends.0 + turn * piece.start;
            piece.curve[1] += turn;
        }
        pieces
    }

    fn pieces(&self, beam: &SimpleBeam, mut fill: impl FnMut(&Stretch, &mut Polynomial)) -> Vec<Piece> {
        let bare = [Stretch::bare(self.length)];
        let stretches = if beam.stretches.is_empty() { &bare } else { beam.stretches.as_slice() };
        let piece = |stretch: &Stretch| {
            let mut curve = [0.0; super::polynomial::N];
            fill(stretch, &mut curve);
            Piece { start: stretch.start, length: stretch.length, curve }
        };
        stretches.iter().map(piece).collect()
    }
}

/// The answer for one load case. Nodes and members go by their place in the frame's lists; a place that is not there
/// reads as zero.
#[derive(Clone, Debug, PartialEq)]
pub struct Solution {
    pub(super) loaded: Arc<Loaded>,
    pub(super) active: Vec<bool>,
    pub(super) movements: Vec<[f64; 3]>,
    pub(super) has_rotation: Vec<bool>,
    pub(super) reactions: Vec<[f64; 3]>,
    pub(super) members: Vec<MemberState>,
    pub(super) residual: f64,
}

impl Solution {
    /// How a node moved.
    #[must_use]
    pub fn movement(&self, node: usize) -> Movement {
        let [x, z, rotation] = self.movements.get(node).copied().unwrap_or_default();
        let has_rotation = self.has_rotation.get(node).copied().unwrap_or(false);
        let rotation = has_rotation.then(|| Angle::radians(rotation));
        Movement { x: Length::inches(x), z: Length::inches(z), rotation }
    }

    /// What the ground gives to a node.
    #[must_use]
    pub fn reaction(&self, node: usize) -> Reaction {
        let [x, z, moment] = self.reactions.get(node).copied().unwrap_or_default();
        Reaction { x: Force::pounds(x), z: Force::pounds(z), moment: Moment::pound_inches(moment) }
    }

    fn part(&self, member: usize) -> Option<(&MemberState, &SimpleBeam)> {
        self.members.get(member).zip(self.loaded.beams.get(member))
    }

    fn diagram<Q: Measured>(
        &self,
        member: usize,
        pieces: impl Fn(&MemberState, &SimpleBeam) -> Vec<Piece>,
    ) -> Diagram<Q> {
        Diagram::new(self.part(member).map(|(state, beam)| pieces(state, beam)).unwrap_or_default())
    }

    /// The members that let go in this case.
    #[must_use]
    pub fn dropped(&self) -> Vec<usize> {
        (0..self.active.len()).filter(|index| !self.active[*index]).collect()
    }

    /// Whether a member let go.
    #[must_use]
    pub fn is_dropped(&self, member: usize) -> bool {
        self.active.get(member).is_some_and(|is_active| !is_active)
    }

    /// Axial force along a member, tension positive.
    #[must_use]
    pub fn axial(&self, member: usize) -> Diagram<Force> {
        self.diagram(member, MemberState::axial)
    }

    /// Axial force just inside a member's `from` end, tension positive.
    #[must_use]
    pub fn axial_at_start(&self, member: usize) -> Force {
        Force::pounds(self.part(member).map_or(0.0, |(state, beam)| state.axial_at_start(beam)))
    }

    /// Shear along a member: how the moment changes.
    #[must_use]
    pub fn shear(&self, member: usize) -> Diagram<Force> {
        self.diagram(member, MemberState::shear)
    }

    /// Bending moment along a member, positive when it stretches the right-hand side (the underside, left to right).
    #[must_use]
    pub fn moment(&self, member: usize) -> Diagram<Moment> {
        self.diagram(member, MemberState::moment)
    }

    /// Movement of a member's axis square to it, toward its left (up, left to right).
    #[must_use]
    pub fn deflection(&self, member: usize) -> Diagram<Length> {
        self.diagram(member, |state, beam| state.deflection(beam, state.ends))
    }

    /// The same, off the straight line between the moved ends.
    #[must_use]
    pub fn deflection_from_chord(&self, member: usize) -> Diagram<Length> {
        self.diagram(member, |state, beam| state.deflection(beam, (0.0, 0.0)))
    }

    /// By how much equilibrium misses, as a share of the largest force: at every node and for the whole frame.
    #[must_use]
    pub const fn equilibrium_residual(&self) -> f64 {
        self.residual
    }
}

//! One member in the frame: its geometry, its stiffness and its forces.
//!
//! Six movements at its ends in the order x, z, rotation at `from`, then at `to`. They change three basic amounts: its
//! length e, and the turning φ of each end against the chord; D (3 × 3) gives the axial force and the two end moments,
//! counter-clockwise on the member. K = Bᵀ·D·B with B (3 × 6), after W. McGuire, R. Gallagher, R. Ziemian, "Matrix
//! Structural Analysis", 2nd edition (hinges by condensation; from memory).
use super::loaded::Line;
use super::model::{Frame, Stiffness};
use super::simple_beam::SimpleBeam;

/// A member ready for assembly. One that has let go keeps its loads and no stiffness.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Element {
    pub(super) from: usize,
    pub(super) to: usize,
    pub(super) length: f64,
    /// Cosine and sine of its direction.
    pub(super) direction: (f64, f64),
    pub(super) is_rigid: bool,
    pub(super) is_active: bool,
    /// The share of its axial stiffness that is left: 1 at work; after it let go 0, or a trace while a state is sought.
    share: f64,
    /// E·A ÷ L of the member alone, its springs and both in series.
    own_axial: f64,
    spring: Option<f64>,
    pub(super) axial: f64,
    /// E·I; zero for a rigid link.
    pub(super) bending: f64,
    hinges: (bool, bool),
    /// The end moments from the end rotations: the 2 × 2 part of D.
    turning: [[f64; 2]; 2],
}

/// Forces that define the state of a member beside its loads.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Basic {
    /// Axial force just inside the `from` end, tension positive.
    pub(super) axial: f64,
    /// End moments, counter-clockwise on the member.
    pub(super) moments: (f64, f64),
}

impl Element {
    pub(super) fn new(frame: &Frame, index: usize, is_active: bool, trace: f64) -> Self {
        let member = &frame.members[index];
        let Line { from, to, length, direction } = frame.line(index);
        let spring = member.end_spring.map(super::quantities::Spring::to_pounds_per_inch);
        let (own_axial, bending) = match member.stiffness {
            Stiffness::Elastic { modulus, area, inertia } => {
                (modulus.to_psi() * area.to_square_inches() / length, modulus.to_psi() * inertia.to_inches_4())
            }
            Stiffness::Rigid => (0.0, 0.0),
        };
        let hinges = (member.hinge_from || !is_active, member.hinge_to || !is_active);
        Self {
            from,
            to,
            length,
            direction,
            is_rigid: member.stiffness == Stiffness::Rigid,
            is_active,
            share: if is_active { 1.0 } else { trace },
            own_axial,
            spring,
            axial: spring.map_or(own_axial, |spring| 1.0 / (1.0 / own_axial + 2.0 / spring)),
            bending,
            hinges,
            turning: turning(bending / length, hinges),
        }
    }

    /// Whether it has any stiffness of its own.
    #[inline(always)]
    pub(super) fn resists(&self) -> bool {
        !self.is_rigid && self.share > 0.0
    }

    /// B: change of length and the two end rotations from the six movements.
    fn compatibility(&self) -> [[f64; 6]; 3] {
        let (c, s) = self.direction;
        let (c_l, s_l) = (c / self.length, s / self.length);
        [[-c, -s, 0.0, c, s, 0.0], [-s_l, c_l, 1.0, s_l, -c_l, 0.0], [-s_l, c_l, 0.0, s_l, -c_l, 1.0]]
    }

    /// K, 6 × 6; all zero for a rigid link and a member that has let go.
    pub(super) fn stiffness(&self) -> [[f64; 6]; 6] {
        let mut k = [[0.0; 6]; 6];
        if !self.resists() {
            return k;
        }
        let (b, [[m11, m12], [m21, m22]]) = (self.compatibility(), self.turning);
        for (row, k_row) in k.iter_mut().enumerate() {
            for (column, entry) in k_row.iter_mut().enumerate() {
                let from = m11 * b[1][column] + m12 * b[2][column];
                let to = m21 * b[1][column] + m22 * b[2][column];
                *entry = b[0][row] * self.share * self.axial * b[0][column] + b[1][row] * from + b[2][row] * to;
            }
        }
        k
    }

    /// Forces when both ends are held fast: the state the loads alone make.
    pub(super) fn held_fast(&self, beam: &SimpleBeam) -> Basic {
        // Held by springs in series the push is shared by flexibilities; without them by the lever rule.
        let axial = match self.spring {
            Some(spring) if self.is_active => {
                let (own, joint) = (1.0 / self.own_axial, 1.0 / spring);
                (beam.push * joint + beam.push_from * own) / (own + 2.0 * joint)
            }
            _ => beam.push_from,
        };
        let (a, b) = beam.moment_areas;
        let length = self.length;
        let moments = match self.hinges {
            (false, false) => ((4.0 * a - 2.0 * b) / length, -(4.0 * b - 2.0 * a) / length),
            (true, false) => (0.0, -3.0 * b / length),
            (false, true) => (3.0 * a / length, 0.0),
            (true, true) => (0.0, 0.0),
        };
        Basic { axial, moments }
    }

    /// Change of length from the six movements.
    #[inline(always)]
    pub(super) fn lengthening(&self, u: &[f64; 6]) -> f64 {
        let (c, s) = self.direction;
        (u[3] - u[0]) * c + (u[4] - u[1]) * s
    }

    /// Forces from the six movements, added to those of the held state.
    pub(super) fn moved(&self, held: Basic, u: &[f64; 6]) -> Basic {
        if !self.resists() {
            return held;
        }
        let (c, s) = self.direction;
        let chord = ((u[4] - u[1]) * c - (u[3] - u[0]) * s) / self.length;
        let (from, to) = (u[2] - chord, u[5] - chord);
        let [[m11, m12], [m21, m22]] = self.turning;
        Basic {
            axial: held.axial + self.share * self.axial * self.lengthening(u),
            moments: (held.moments.0 + m11 * from + m12 * to, held.moments.1 + m21 * from + m22 * to),
        }
    }

    /// The six forces the nodes put on the member.
    pub(super) fn end_forces(&self, basic: Basic, beam: &SimpleBeam) -> [f64; 6] {
        let (c, s) = self.direction;
        let couple = (basic.moments.0 + basic.moments.1) / self.length;
        let (shear_from, shear_to) = (beam.reactions.0 + couple, beam.reactions.1 - couple);
        let axial_to = basic.axial - beam.push;
        [
            -basic.axial * c - shear_from * s,
            -basic.axial * s + shear_from * c,
            basic.moments.0,
            axial_to * c - shear_to * s,
            axial_to * s + shear_to * c,
            basic.moments.1,
        ]
    }

    /// The basic forces of a rigid link from the forces on its two ends.
    pub(super) fn basic_of(&self, from: [f64; 3], to: [f64; 3]) -> Basic {
        let (c, s) = self.direction;
        Basic { axial: -(from[0] * c + from[1] * s), moments: (from[2], to[2]) }
    }
}

fn turning(k: f64, hinges: (bool, bool)) -> [[f64; 2]; 2] {
    match hinges {
        (false, false) => [[4.0 * k, 2.0 * k], [2.0 * k, 4.0 * k]],
        (true, false) => [[0.0, 0.0], [0.0, 3.0 * k]],
        (false, true) => [[3.0 * k, 0.0], [0.0, 0.0]],
        (true, true) => [[0.0; 2]; 2],
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::frame::simple_beam::Room;
    use crate::frame::{Member, Spring};
    use crate::units::{Area, Length, Stress};

    fn sloped(hinges: (bool, bool)) -> Element {
        let mut frame = Frame::default();
        let a = frame.add_node("a", Length::ZERO, Length::ZERO);
        let b = frame.add_node("b", Length::inches(60.0), Length::inches(80.0));
        let inertia = crate::frame::Inertia::inches_4(50.0);
        let member = Member::elastic("m", (a, b), Stress::psi(1e6), Area::square_inches(10.0), inertia);
        frame.add_member(member.hinged(hinges.0, hinges.1).sprung(Spring::pounds_per_inch(2e5)));
        Element::new(&frame, 0, true, 0.0)
    }

    #[test]
    fn moving_as_a_body_makes_no_force() {
        for hinges in [(false, false), (true, false), (false, true), (true, true)] {
            let k = sloped(hinges).stiffness();
            // Along x, along z, and a small turn about the `from` end.
            for movement in
                [[1.0, 0.0, 0.0, 1.0, 0.0, 0.0], [0.0, 1.0, 0.0, 0.0, 1.0, 0.0], [0.0, 0.0, 1.0, -80.0, 60.0, 1.0]]
            {
                for row in k {
                    let force: f64 = row.iter().zip(movement).map(|(k, u)| k * u).sum();
                    assert!(force.abs() < 1e-7, "{hinges:?}: {force}");
                }
            }
        }
    }

    #[test]
    fn stiffness_and_forces_agree() {
        let element = sloped((false, true));
        let beam = SimpleBeam::new([].iter(), element.length, element.direction, &mut Room::default());
        let u = [0.1, -0.2, 0.01, 0.3, 0.15, -0.02];
        let forces = element.end_forces(element.moved(Basic::default(), &u), &beam);
        for (row, force) in element.stiffness().iter().zip(forces) {
            let expected: f64 = row.iter().zip(u).map(|(k, u)| k * u).sum();
            assert!((force - expected).abs() < 1e-9 * expected.abs().max(1.0), "{force} is not {expected}");
        }
    }

    #[test]
    fn springs_stand_in_series() {
        // EA/L = 1e5, two springs of 2e5: 1/(1e-5 + 2·0.5e-5) = 5e4.
        assert!((sloped((true, true)).axial - 5e4).abs() < 1e-6);
    }
}

//! The extremes over many load cases, and which case rules.
use super::diagram::{Diagram, Extremes};
use super::quantities::Measured;
use super::solution::Solution;
use crate::units::{Force, Length, Moment};

/// An extreme value, where it stands and the case that makes it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ruling<Q> {
    /// The value.
    pub value: Q,
    /// Where, from the member's `from` end.
    pub at: Length,
    /// The case, by its place in the order they were added.
    pub case: usize,
}

/// The smallest and the largest value of one quantity on one member.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range<Q> {
    /// The smallest.
    pub min: Ruling<Q>,
    /// The largest.
    pub max: Ruling<Q>,
}

impl<Q: Measured> Range<Q> {
    fn of(extremes: &Extremes<Q>, case: usize) -> Self {
        Self {
            min: Ruling { value: extremes.min, at: extremes.min_at, case },
            max: Ruling { value: extremes.max, at: extremes.max_at, case },
        }
    }

    /// Widened by another; where both reach as far, the earlier case rules.
    fn widened(self, other: Self) -> Self {
        Self {
            min: if other.min.value < self.min.value { other.min } else { self.min },
            max: if other.max.value > self.max.value { other.max } else { self.max },
        }
    }

    /// The end of the range that is farther from zero.
    #[must_use]
    pub fn largest(&self) -> Ruling<Q> {
        if -self.min.value.bare() > self.max.value.bare() { self.min } else { self.max }
    }
}

/// The ranges of one member.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Governing {
    /// Axial force.
    pub axial: Range<Force>,
    /// Shear.
    pub shear: Range<Force>,
    /// Bending moment.
    pub moment: Range<Moment>,
    /// Movement square to the member.
    pub deflection: Range<Length>,
    /// The same off the line between its ends.
    pub deflection_from_chord: Range<Length>,
}

impl Governing {
    fn of(solution: &Solution, member: usize, case: usize) -> Self {
        Self {
            axial: Range::of(&solution.axial(member).extremes(), case),
            shear: Range::of(&solution.shear(member).extremes(), case),
            moment: Range::of(&solution.moment(member).extremes(), case),
            deflection: Range::of(&solution.deflection(member).extremes(), case),
            deflection_from_chord: Range::of(&solution.deflection_from_chord(member).extremes(), case),
        }
    }

    fn widened(self, other: Self) -> Self {
        Self {
            axial: self.axial.widened(other.axial),
            shear: self.shear.widened(other.shear),
            moment: self.moment.widened(other.moment),
            deflection: self.deflection.widened(other.deflection),
            deflection_from_chord: self.deflection_from_chord.widened(other.deflection_from_chord),
        }
    }
}

/// Exact extremes of every member over the cases added so far.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Envelope {
    members: Vec<Governing>,
    n_cases: usize,
}

impl Envelope {
    /// No cases yet.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds a case of the same frame; gives the number it will be named by.
    pub fn add(&mut self, solution: &Solution) -> usize {
        let case = self.n_cases;
        self.n_cases += 1;
        for member in 0..solution.members.len() {
            let own = Governing::of(solution, member, case);
            match self.members.get_mut(member) {
                Some(known) => *known = known.widened(own),
                None => self.members.push(own),
            }
        }
        case
    }

    /// What governs a member; `None` before the first case.
    #[must_use]
    pub fn member(&self, member: usize) -> Option<&Governing> {
        self.members.get(member)
    }
}

/// The range of one quantity at one place over many cases, both sides of a jump counted.
///
/// `None` when there is no case.
pub fn range_at<'a, Q: Measured + 'a>(
    diagrams: impl IntoIterator<Item = &'a Diagram<Q>>,
    at: Length,
) -> Option<Range<Q>> {
    let of_case = |(case, diagram): (usize, &Diagram<Q>)| {
        let (before, after) = diagram.sides(at);
        let (min, max) = if after < before { (after, before) } else { (before, after) };
        Range { min: Ruling { value: min, at, case }, max: Ruling { value: max, at, case } }
    };
    diagrams.into_iter().enumerate().map(of_case).reduce(Range::widened)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::frame::{Frame, Inertia, LoadCase, Member, MemberLoad, Support};
    use crate::units::{Area, Stress};

    #[test]
    fn the_case_that_rules_is_named_with_its_place() {
        let mut frame = Frame::default();
        let a = frame.add_node("a", Length::ZERO, Length::ZERO);
        let b = frame.add_node("b", Length::inches(100.0), Length::ZERO);
        let inertia = Inertia::inches_4(100.0);
        frame.add_member(Member::elastic("m", (a, b), Stress::psi(1e6), Area::square_inches(10.0), inertia));
        frame.supports = vec![Support::pinned(a), Support::roller(b)];
        let factorised = frame.factorise(&frame.all_active()).unwrap();
        let mut envelope = Envelope::new();
        let mut moments = Vec::new();
        for (at, force) in [(50.0, 10.0), (25.0, -30.0), (75.0, 12.0)] {
            let load = MemberLoad::down(0, Length::inches(at), Force::pounds(force));
            let solution = factorised.solve(&LoadCase { members: vec![load], ..LoadCase::default() }).unwrap();
            envelope.add(&solution);
            moments.push(solution.moment(0));
        }
        let moment = envelope.member(0).unwrap().moment;
        // P·a·b/L: 250 in the middle, −562.5 at the quarter, 225 at the three quarters.
        assert!((moment.max.value.to_pound_inches() - 250.0).abs() < 1e-9);
        assert_eq!((moment.max.case, moment.min.case), (0, 1));
        assert!((moment.min.value.to_pound_inches() + 562.5).abs() < 1e-9);
        assert!((moment.min.at.to_inches() - 25.0).abs() < 1e-9);
        assert_eq!(moment.largest().case, 1);
        let here = range_at(&moments, Length::inches(75.0)).unwrap();
        assert_eq!((here.max.case, here.min.case), (2, 1));
        assert!((here.max.value.to_pound_inches() - 225.0).abs() < 1e-9);
        assert!(range_at::<Moment>([], Length::ZERO).is_none());
    }
}

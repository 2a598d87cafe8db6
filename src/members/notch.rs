//! Where and how deep a bending stick may be notched (NDS 3.2.3, 4.4.3, from memory).
use crate::units::Length;
use crate::working::{Citation, Step, Worked};

use super::figures::inches;
use super::size_class::NEAR;
use super::{Member, Refused, Verdict};

/// Ordered thickness from which on the pulled face may be cut at the ends only; 3½ in is 4 in dressed.
const THICK: Length = Length::inches(3.5);

/// Which face is cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotchFace {
    /// The face that is pulled when the stick bends.
    Pulled,
    /// The face that is pressed.
    Pressed,
}

/// Where along the stick.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NotchPlace {
    /// At the end, over its bearing.
    End,
    /// Away from the ends.
    Within {
        /// From the nearer support to the end of the notch that is nearer to the middle of the span.
        from_support: Length,
        /// The span.
        span: Length,
    },
}

/// A notch across the full breadth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Notch {
    /// Where it is.
    pub place: NotchPlace,
    /// In which face.
    pub face: NotchFace,
    /// How deep, square to the stick.
    pub depth: Length,
    /// How long, along the stick.
    pub length: Length,
}

/// Every limit of a notch: one verdict each. A ratio without bound means that no notch is allowed there.
///
/// # Errors
/// When a size is below zero or the span is not above zero.
pub fn check_notch_limits(member: &Member, notch: &Notch) -> Result<Vec<Worked<Verdict>>, Refused> {
    if notch.depth.is_negative() || notch.length.is_negative() {
        return Err(Refused::because("A notch has a depth and a length of zero or more."));
    }
    let d = member.section().depth;
    let line = |gives: &'static str, found: Length, limit: Length, rule: &str| {
        let says = format!("{} in, at most {} in: {rule}", inches(found), inches(limit));
        let step = Step::new(gives, says, Citation::from_memory("NDS 2018", "4.4.3"));
        Worked::new(Verdict::length(found, limit), vec![step])
    };
    let NotchPlace::Within { from_support, span } = notch.place else {
        return Ok(vec![line("Depth of the end notch", notch.depth, d / 4.0, "d/4 at an end over its bearing")]);
    };
    if span <= Length::ZERO {
        return Err(Refused::because("A notch within a span needs the span."));
    }
    let (thickness, _) = member.ordered_sizes();
    if notch.face == NotchFace::Pulled && thickness + NEAR >= THICK {
        let rule = "the pulled face of stock 4 in and thicker is cut at the ends only";
        return Ok(vec![line("Depth of the notch", notch.depth, Length::ZERO, rule)]);
    }
    Ok(vec![
        line("Depth of the notch", notch.depth, d / 6.0, "d/6 away from the ends"),
        line("Length of the notch", notch.length, d / 3.0, "d/3 away from the ends"),
        line("Place of the notch", from_support.abs(), span / 3.0, "in the outer thirds of the span"),
    ])
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::members::test_members::{dry, inches as section};

    fn ratios(thick: f64, place: NotchPlace, face: NotchFace, depth: f64, length: f64) -> Vec<f64> {
        let notch = Notch { place, face, depth: Length::inches(depth), length: Length::inches(length) };
        let member = dry("Hem-Fir", section(thick, 12.0));
        check_notch_limits(&member, &notch).unwrap().iter().map(|limit| limit.value.ratio).collect()
    }

    fn within(from_support: f64) -> NotchPlace {
        NotchPlace::Within { from_support: Length::inches(from_support), span: Length::inches(120.0) }
    }

    #[test]
    fn at_the_end_a_quarter() {
        assert_eq!(ratios(6.0, NotchPlace::End, NotchFace::Pulled, 3.0, 9.0), [1.0]);
        assert!(ratios(2.0, NotchPlace::End, NotchFace::Pressed, 3.1, 9.0)[0] > 1.0);
    }

    #[test]
    fn elsewhere_a_sixth_a_third_and_the_outer_thirds() {
        assert_eq!(ratios(2.0, within(40.0), NotchFace::Pulled, 2.0, 4.0), [1.0, 1.0, 1.0]);
        assert_eq!(ratios(2.0, within(20.0), NotchFace::Pulled, 1.0, 8.0), [0.5, 2.0, 0.5]);
        assert_eq!(ratios(8.0, within(60.0), NotchFace::Pressed, 2.0, 4.0), [1.0, 1.0, 1.5]);
    }

    #[test]
    fn thick_stock_is_never_cut_in_its_pulled_face() {
        assert_eq!(ratios(4.0, within(20.0), NotchFace::Pulled, 0.5, 2.0), [f64::INFINITY]);
        assert_eq!(ratios(3.5, within(20.0), NotchFace::Pulled, 0.5, 2.0), [f64::INFINITY]);
        assert_eq!(ratios(4.0, within(20.0), NotchFace::Pulled, 0.0, 0.0), [0.0]);
        assert_eq!(ratios(3.0, within(20.0), NotchFace::Pulled, 1.0, 2.0).len(), 3);
    }

    #[test]
    fn sizes_below_zero_are_refused() {
        let member = dry("Hem-Fir", section(4.0, 8.0));
        let mut notch = Notch {
            place: NotchPlace::End,
            face: NotchFace::Pulled,
            depth: Length::inches(-1.0),
            length: Length::ZERO,
        };
        assert!(check_notch_limits(&member, &notch).is_err());
        notch.depth = Length::ZERO;
        notch.place = NotchPlace::Within { from_support: Length::ZERO, span: Length::ZERO };
        assert!(check_notch_limits(&member, &notch).is_err());
    }
}

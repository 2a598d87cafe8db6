//! The shear a beam must carry at a support (NDS 3.4.3.1, from memory).
use crate::units::{Force, Length, LineLoad};
use crate::working::{Citation, Step, Worked};

use super::figures::{force, inches};

/// A point load near a support.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PointNearSupport {
    /// The load, positive where it adds to the shear at the support.
    pub load: Force,
    /// Face of the support to the load.
    pub from_support: Length,
}

/// Shear at a support and what stands next to it.
#[derive(Clone, Debug, PartialEq)]
pub struct ShearAtSupport {
    /// Shear at the face of the support, all loads counted.
    pub full: Force,
    /// The load spread over at least one depth beside the support, positive where it adds to the shear.
    pub uniform: LineLoad,
    /// Point loads beside the support.
    pub points: Vec<PointNearSupport>,
    /// The stick bears on the whole of its opposite face. Not where it hangs on a tenon, a ledge or fasteners.
    pub bears_fully: bool,
    /// A notch or a mortise is there: nothing may be left out.
    pub is_cut: bool,
}

/// The shear to check: loads spread within one depth left out, point loads there × x/d; all of it where the stick is
/// cut or does not bear fully. A load that lessens the shear is always counted.
#[must_use]
pub fn shear_to_carry(depth: Length, at: &ShearAtSupport) -> Worked<Force> {
    let citation = Citation::from_memory("NDS 2018", "3.4.3.1");
    let full = at.full.abs();
    if at.is_cut || !at.bears_fully {
        let why = if at.is_cut { "the stick is cut there" } else { "it does not bear on its whole face" };
        let says = format!("V = {}, nothing left out: {why}", force(full));
        return Worked::new(full, vec![Step::new("Shear to carry", says, citation)]);
    }
    let spread = (at.uniform * depth).max(Force::ZERO);
    let points: Force = at
        .points
        .iter()
        .filter(|point| point.from_support < depth)
        .map(|point| (point.load * (1.0 - point.from_support.max(Length::ZERO) / depth)).max(Force::ZERO))
        .sum();
    let left = (full - spread - points).max(Force::ZERO);
    let says = format!(
        "V = {} − {} spread within d = {} in − {} of point loads there (each × x/d) = {}",
        force(full),
        force(spread),
        inches(depth),
        force(points),
        force(left)
    );
    Worked::new(left, vec![Step::new("Shear to carry", says, citation)])
}

#[cfg(test)]
mod tests {
    use super::*;

    fn point(load: f64, from_support: f64) -> PointNearSupport {
        PointNearSupport { load: Force::pounds(load), from_support: Length::inches(from_support) }
    }

    fn check(uniform: f64, points: Vec<PointNearSupport>, bears_fully: bool, is_cut: bool, expected: f64) {
        let at = ShearAtSupport {
            full: Force::pounds(-2000.0),
            uniform: LineLoad::plf(uniform),
            points,
            bears_fully,
            is_cut,
        };
        let found = shear_to_carry(Length::inches(10.0), &at).value.to_pounds();
        assert!((found - expected).abs() < 1e-9, "{found} is not {expected}");
    }

    #[test]
    fn what_may_be_left_out() {
        check(120.0, vec![], true, false, 1900.0);
        check(120.0, vec![point(500.0, 4.0)], true, false, 1600.0);
        check(120.0, vec![point(500.0, 10.0), point(300.0, 24.0)], true, false, 1900.0);
        check(120.0, vec![point(500.0, 4.0)], false, false, 2000.0);
        check(120.0, vec![point(500.0, 4.0)], true, true, 2000.0);
        check(-120.0, vec![point(-500.0, 4.0)], true, false, 2000.0);
        check(120.0, vec![point(9000.0, 0.0)], true, false, 0.0);
    }
}

//! Shear in a net section: the largest `Q/(I·t)` over its depth, exact.
use crate::units::Area;

use super::{NetSection, Refused};

/// The area `A_v` for which shear stress is `V/A_v`: the least `I·t/Q`. Two thirds of `b·d` in a whole rectangle.
///
/// `Q` is the first moment of the wood below a level about the axis, `t` the breadth there. Within a band of one breadth
/// the stress is largest at the axis or at the edge nearest to it, so bands' edges and the axis are all that need looking at.
///
/// # Errors
/// For a section in two parts, or of which nothing is left.
pub fn shear_area(net: &NetSection) -> Result<Area, Refused> {
    let axis = net.axis_height().to_inches();
    let mut levels = net.levels();
    levels.push(axis);
    levels.sort_unstable_by(f64::total_cmp);
    levels.dedup_by(|a, b| (*a - *b).abs() < 1e-9);
    let mut below = 0.0;
    let mut worst: f64 = 0.0;
    let mut has_gap = false;
    let mut has_wood = false;
    for pair in levels.windows(2) {
        let (low, high) = (pair[0], pair[1]);
        let breadth = net.breadth_at((low + high) / 2.0);
        let above = below + breadth * (high - low) * (axis - (low + high) / 2.0);
        if breadth > 1e-9 {
            if has_gap && has_wood {
                return Err(Refused::because("A pocket cuts the section into two parts: check each part by itself."));
            }
            has_wood = true;
            has_gap = false;
            worst = worst.max(below / breadth).max(above / breadth);
        } else {
            has_gap = true;
        }
        below = above;
    }
    if worst <= 0.0 {
        return Err(Refused::because("Nothing is left of the section to carry shear."));
    }
    Ok(Area::square_inches(net.second_moment().to_inches4() / worst))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::members::Pocket;
    use crate::members::test_members::inches;
    use crate::units::Length;

    fn with(from_left: f64, breadth: f64, from_bottom: f64, depth: f64) -> Result<f64, Refused> {
        let pocket = Pocket {
            from_left: Length::inches(from_left),
            breadth: Length::inches(breadth),
            from_bottom: Length::inches(from_bottom),
            depth: Length::inches(depth),
        };
        let net = NetSection::whole(inches(8.0, 10.0)).unwrap().without(pocket).unwrap();
        shear_area(&net).map(Area::to_square_inches)
    }

    /// Rectangles: 2/3·b·d, whole, slotted and notched.
    #[test]
    fn rectangles() {
        let whole = shear_area(&NetSection::whole(inches(8.0, 10.0)).unwrap()).unwrap();
        assert!((whole.to_square_inches() - 160.0 / 3.0).abs() < 1e-9);
        assert!((with(3.0, 2.0, 0.0, 10.0).unwrap() - 40.0).abs() < 1e-9);
        assert!((with(0.0, 8.0, 0.0, 4.0).unwrap() - 32.0).abs() < 1e-9);
    }

    /// A blind mortise 2 in wide, 4 in deep from the bottom of 8x10. Axis 16/3, I 576. In the legs at 4 in:
    /// Q = 24·(16/3 − 2) = 80, Q/t = 13.33; at the axis Q = 8·(14/3)²/2 = 87.1, Q/t = 10.9. The legs govern: 576/13.33 = 43.2.
    #[test]
    fn a_blind_mortise_governs_in_its_legs() {
        assert!((with(3.0, 2.0, 0.0, 4.0).unwrap() - 43.2).abs() < 1e-9);
    }

    #[test]
    fn a_section_in_two_parts_is_refused() {
        assert!(with(0.0, 8.0, 4.0, 2.0).unwrap_err().0.contains("two parts"));
    }
}

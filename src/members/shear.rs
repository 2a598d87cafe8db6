//! Shear along the grain (NDS 3.4).
use crate::units::{Force, Length};
use crate::working::{Citation, Step, Worked};

use super::adjusted::adjusted;
use super::figures::{force, inches, number, psi};
use super::net_shear::shear_area;
use super::{Member, NetSection, Property, Refused, Verdict};

/// Where along a stick the shear is carried, and by how much of it.
#[derive(Clone, Debug, PartialEq)]
pub enum ShearPlace {
    /// By the whole section.
    Whole,
    /// Over a notch in the pulled face at the support.
    TensionNotch {
        /// Depth left over the notch, `d_n`.
        left: Length,
    },
    /// Over a notch in the pressed face at the support.
    CompressionNotch {
        /// Depth left, `d_n`.
        left: Length,
        /// How far the notch reaches inside the inner edge of the support, `e`.
        reach: Length,
    },
    /// Where fasteners or a tenon bring the force in.
    Connection {
        /// From the loaded edge's opposite face to the farthest fastener, `d_e`.
        effective: Length,
        /// From the end of the stick.
        from_end: Length,
    },
    /// Through a mortise or housing in a stretch away from any notch.
    Net(NetSection),
}

/// `V_r'`: the shear a stick may carry at a place.
///
/// # Errors
/// When a depth is not within the stick, or a pocket parts it.
pub fn shear_strength(member: &Member, place: &ShearPlace) -> Result<Worked<Force>, Refused> {
    let mut strength = adjusted(member, Property::Shear);
    let (b, d) = (member.section().breadth, member.section().depth);
    let within = |size: Length, what: &str| {
        if size > Length::ZERO && size <= d {
            Ok(())
        } else {
            Err(Refused::because(format!("{what} must be above zero and no more than the stick's depth.")))
        }
    };
    let plane = |depth: Length| strength.value * (b * depth) * (2.0 / 3.0);
    let fv = psi(strength.value.to_psi());
    let start = format!("V_r' = 2/3·F_v'·b·d = 2/3·{fv}·{}·", inches(b));
    let recalled = |clause| Citation::from_memory("NDS 2018", clause);
    let (value, says, citation) = match place {
        ShearPlace::Whole => {
            let value = plane(d);
            (value, format!("{start}{} = {}", inches(d), force(value)), recalled("Eq. 3.4-2"))
        }
        ShearPlace::TensionNotch { left } => {
            within(*left, "The depth left over a notch")?;
            let (value, says) = squared("d_n", &fv, b, *left, d, plane(*left));
            (value, says, recalled("Eq. 3.4-3"))
        }
        ShearPlace::CompressionNotch { left, reach } => {
            within(*left, "The depth left under a notch")?;
            if reach.is_negative() {
                return Err(Refused::because("A notch reaches inside its support by zero or more."));
            }
            let (value, says) = pressed_notch(&fv, b, *left, d, *reach, plane);
            (value, says, recalled("Eq. 3.4-5"))
        }
        ShearPlace::Connection { effective, from_end } => {
            within(*effective, "The depth to the farthest fastener")?;
            if *from_end < d * 5.0 {
                let (value, says) = squared("d_e", &fv, b, *effective, d, plane(*effective));
                (value, says, recalled("3.4.3.3 (a)"))
            } else {
                let value = plane(*effective);
                let says = format!("{start}d_e with d_e = {} in: {}", inches(*effective), force(value));
                (value, says, recalled("3.4.3.3 (b)"))
            }
        }
        ShearPlace::Net(net) => {
            net.belongs_to(member.section())?;
            let area = shear_area(net)?;
            let value = strength.value * area;
            let says = format!("V_r' = F_v'·I·t/Q = {fv}·{:.2} in² = {}", area.to_square_inches(), force(value));
            (value, says, recalled("Eq. 3.4-1"))
        }
    };
    strength.steps.push(Step::new("Shear it may carry", says, citation));
    Ok(Worked::new(value, strength.steps))
}

/// `(2/3·F_v'·b·d_n)·(d_n/d)²`.
fn squared(name: &str, fv: &str, b: Length, left: Length, d: Length, plane: Force) -> (Force, String) {
    let share = left / d;
    let value = plane * (share * share);
    let says = format!(
        "V_r' = (2/3·F_v'·b·{name})·({name}/d)² = (2/3·{fv}·{}·{n})·({n}/{})² = {}",
        inches(b),
        inches(d),
        force(value),
        n = inches(left)
    );
    (value, says)
}

/// `2/3·F_v'·b·[d − ((d − d_n)/d_n)·e]`; `d_n` alone where the notch reaches in farther than `d_n`.
fn pressed_notch(
    fv: &str,
    b: Length,
    left: Length,
    d: Length,
    reach: Length,
    plane: impl Fn(Length) -> Force,
) -> (Force, String) {
    let depth = if reach > left { left } else { d - reach * ((d - left) / left) };
    let value = plane(depth);
    let how = if reach > left {
        "d_n, as e is more than d_n".to_owned()
    } else {
        format!("d − ((d − d_n)/d_n)·e with d_n/d = {}, e = {}", number(left / d), inches(reach))
    };
    let says =
        format!("V_r' = 2/3·F_v'·b·depth = 2/3·{fv}·{}·{} = {}; depth = {how}", inches(b), inches(depth), force(value));
    (value, says)
}

/// Shear at a place against what it may carry. At a connection far from the end check [`ShearPlace::Whole`] as well.
///
/// # Errors
/// When the place is not within the stick.
pub fn check_shear(member: &Member, demand: Force, place: &ShearPlace) -> Result<Worked<Verdict>, Refused> {
    let strength = shear_strength(member, place)?;
    Ok(Worked::new(Verdict::force(demand.abs(), strength.value), strength.steps))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::members::LoadDuration;
    use crate::members::test_members::{dry, inches as section};

    fn strength(place: &ShearPlace) -> f64 {
        // F_v' = 140 psi; 2/3·140·8·10 = 7,466.7 lb whole.
        let beam = dry("Hem-Fir", section(8.0, 10.0)).during(LoadDuration::TenYears);
        shear_strength(&beam, place).unwrap().value.to_pounds()
    }

    fn check(place: &ShearPlace, share: f64) {
        let found = strength(place);
        let expected = 2.0 / 3.0 * 140.0 * 80.0 * share;
        assert!((found - expected).abs() < 1e-6, "{place:?}: {found} is not {expected}");
    }

    #[test]
    fn shares_of_the_whole() {
        let inch = Length::inches;
        check(&ShearPlace::Whole, 1.0);
        check(&ShearPlace::TensionNotch { left: inch(8.0) }, 0.8 * 0.64);
        check(&ShearPlace::TensionNotch { left: inch(10.0) }, 1.0);
        // d − ((d − d_n)/d_n)·e = 10 − 0.25·4 = 9.
        check(&ShearPlace::CompressionNotch { left: inch(8.0), reach: inch(4.0) }, 0.9);
        check(&ShearPlace::CompressionNotch { left: inch(8.0), reach: inch(8.0) }, 0.8);
        check(&ShearPlace::CompressionNotch { left: inch(8.0), reach: inch(8.1) }, 0.8);
        check(&ShearPlace::Connection { effective: inch(6.0), from_end: inch(49.9) }, 0.6 * 0.36);
        check(&ShearPlace::Connection { effective: inch(6.0), from_end: inch(50.0) }, 0.6);
        check(&ShearPlace::Net(NetSection::whole(section(8.0, 10.0)).unwrap()), 1.0);
    }

    #[test]
    fn depths_outside_the_stick_are_refused() {
        let beam = dry("Hem-Fir", section(8.0, 10.0));
        let refused = |place| check_shear(&beam, Force::pounds(1.0), &place).is_err();
        assert!(refused(ShearPlace::TensionNotch { left: Length::inches(10.1) }));
        assert!(refused(ShearPlace::TensionNotch { left: Length::ZERO }));
        assert!(refused(ShearPlace::Net(NetSection::whole(section(6.0, 10.0)).unwrap())));
        assert!(refused(ShearPlace::CompressionNotch { left: Length::inches(8.0), reach: Length::inches(-1.0) }));
        assert!(refused(ShearPlace::Connection { effective: Length::inches(11.0), from_end: Length::ZERO }));
    }

    #[test]
    fn the_verdict_compares_forces() {
        let beam = dry("Hem-Fir", section(8.0, 10.0));
        let verdict = check_shear(&beam, Force::pounds(-3_733.333_333_333), &ShearPlace::Whole).unwrap().value;
        assert!((verdict.ratio - 0.5).abs() < 1e-9);
    }
}

//! An anchor cast into a pier, the bars that tie the pier to its footing, and the pier bent as plain concrete.
//!
//! ```text
//!      | |   anchor, h_ef deep        a cone of concrete, 1.5·h_ef wide on each side, comes out with it;
//!   ___|_|___                         a slender pier cuts the cone off
//!  |   |_|   |  pier
//!  |  |   |  |  bars into the footing
//! ```
use super::Refused;
use super::refused::above_zero;
use super::written::{inches, number, pounds, psi, square_inches};
use crate::units::{Area, Force, Length, Moment, Stress, Volume};
use crate::working::{Citation, Step, Worked};

/// φ of a breakout that no bars cross, an anchor cast in (ACI 318-14 17.3.3, from memory).
const PHI_BREAKOUT: f64 = 0.70;
/// 0.9D + 1.0W asks less than twice what 0.6D + 0.6W asks, wherever the wind is half again as much as the weight.
const TO_SERVICE: f64 = 2.0;
/// φ and factor of plain concrete in bending (ACI 318-14 14.5.2.1 and 21.2, from memory).
const PHI_PLAIN: f64 = 0.60;
/// The largest factor on a load that pushes aside: earthquake 1.0 for 0.7, wind 1.0 for 0.6.
const PUSH_FACTOR: f64 = 1.0 / 0.6;
/// Bars of grade 40 and 50 at service load (ACI 318-99 A.3.2, from memory).
const BAR_STRESS: Stress = Stress::psi(20_000.0);

/// The pier around an anchor that stands in its middle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AroundAnchor {
    /// From the anchor's axis to the pier's side.
    pub edge: Length,
    /// f′c.
    pub concrete: Stress,
}

/// What the concrete around one anchor holds of a pull, at service level: φ·N_cb/2 with N_cb = A_Nc/A_Nco·ψ_ed·ψ_c·N_b,
/// N_b = 24·√f′c·h_ef^1.5 in lb and in (ACI 318-14 17.4.2). The concrete is taken as cracked. In a pier narrower than the cone on
/// every side h_ef counts as c/1.5 (17.4.2.3). `base` is what a square cone of that width finds of concrete: its side is handed
/// over, three times the depth that counts.
///
/// # Errors
/// For an anchor without depth and a pier without width.
pub fn anchor_breakout(
    depth: Length,
    around: AroundAnchor,
    base: impl Fn(Length) -> Area,
) -> Result<Worked<Force>, Refused> {
    above_zero("the depth of the anchor", depth.to_inches())?;
    above_zero("the edge distance of the anchor", around.edge.to_inches())?;
    above_zero("f′c of the concrete", around.concrete.to_psi())?;
    let counts = depth.min(around.edge / 1.5);
    let full = (counts * 3.0) * (counts * 3.0);
    let found = base(counts * 3.0).min(full);
    let edge = (0.7 + 0.3 * (around.edge / (counts * 1.5))).min(1.0);
    let single = 24.0 * around.concrete.to_psi().sqrt() * counts.to_inches().powf(1.5);
    let strength = Force::pounds(single * (found / full) * edge);
    let allowed = strength * (PHI_BREAKOUT / TO_SERVICE);
    let source = |clause| Citation::from_memory("ACI 318-14", clause);
    let steps = vec![
        Step::new(
            "h_ef, depth that counts",
            format!("h_ef = min({}, c/1.5 = {}/1.5) = {} in", inches(depth), inches(around.edge), inches(counts)),
            source("17.4.2.3"),
        ),
        Step::new(
            "A_Nc, the cone\u{2019}s base in the pier",
            format!("{} in² of 9·h_ef² = {} in²; ψ_ed = {}", square_inches(found), square_inches(full), number(edge)),
            source("17.4.2.1 and 17.4.2.5"),
        ),
        Step::new(
            "N_cb, the cone breaks out",
            format!(
                "A_Nc/A_Nco·ψ_ed·24·√f′c·h_ef^1.5 = {}·{}·24·√{}·{}^1.5 = {} lb, cracked",
                number(found / full),
                number(edge),
                psi(around.concrete),
                inches(counts),
                pounds(strength)
            ),
            source("17.4.2.2"),
        ),
        Step::new(
            "what the concrete holds",
            format!(
                "φ·N_cb/2 = 0.70·{}/2 = {} lb: 0.9D + 1.0W stands for 0.6D + 0.6W",
                pounds(strength),
                pounds(allowed)
            ),
            source("17.3.3"),
        ),
    ];
    Ok(Worked::new(allowed, steps))
}

/// What bars of one size hold of a pull at service level: n·π·D²/4·20,000 psi.
///
/// # Errors
/// Without bars.
pub fn bars_pulled(n: usize, bar: Length) -> Result<Worked<Force>, Refused> {
    above_zero("the number of bars", n as f64)?;
    above_zero("the thickness of a bar", bar.to_inches())?;
    let area = bar * bar * (std::f64::consts::FRAC_PI_4 * n as f64);
    let force = BAR_STRESS * area;
    let says = format!(
        "n·π·D²/4·F_s = {n}·π·{}²/4·{} = {} lb, grade 40 or better, held or lapped full length at both ends",
        inches(bar),
        psi(BAR_STRESS),
        pounds(force)
    );
    Ok(Worked::new(force, vec![Step::new("bars in tension", says, Citation::from_memory("ACI 318-99", "A.3.2"))]))
}

/// M of [`pier_moment`] with z₀, by numbers alone, to weigh many cases.
#[must_use]
pub fn pier_bending(
    push: Force,
    height: Length,
    (width, depth): (Length, Length),
    lateral_a_foot: f64,
) -> (Moment, Length) {
    let reach = Length::feet((2.0 * push.to_pounds() / (lateral_a_foot * width.to_feet())).sqrt());
    let zero = reach.min(depth);
    (push * (height + zero * (2.0 / 3.0)), zero)
}

/// The largest bending of a pier that the ground holds: M = P·(h + ⅔·z₀), where the soil's lateral bearing, growing by S a foot,
/// has taken up the push at z₀ = √(2P/(S·b)), or at its foot where that comes first.
///
/// # Errors
/// For parts that are missing.
pub fn pier_moment(
    push: Force,
    height: Length,
    (width, depth): (Length, Length),
    lateral_a_foot: f64,
) -> Result<Worked<Moment>, Refused> {
    above_zero("the width of the pier", width.to_inches())?;
    above_zero("the lateral bearing of the soil", lateral_a_foot)?;
    let (moment, zero) = pier_bending(push, height, (width, depth), lateral_a_foot);
    let says = format!(
        "z₀ = √(2P/(S·b)) = √(2·{}/({lateral_a_foot:.0}·{:.2})) ft, at most to the footing: {} in; M = P·(h + ⅔·z₀) = {}·({} + ⅔·{}) = \
         {:.0} lb·in",
        pounds(push),
        width.to_feet(),
        inches(zero),
        pounds(push),
        inches(height),
        inches(zero),
        moment.to_pound_inches()
    );
    let source = Citation::common_practice("the ground takes the push up as its lateral bearing grows");
    Ok(Worked::new(moment, vec![Step::new("M in the pier", says, source)]))
}

/// What plain concrete carries of tension in bending at service level: φ·5·√f′c·0.6 (ACI 318-14 14.5.2.1).
///
/// # Errors
/// Without concrete.
pub fn plain_tension(concrete: Stress) -> Result<Worked<Stress>, Refused> {
    above_zero("f′c of the concrete", concrete.to_psi())?;
    let strength = 5.0 * concrete.to_psi().sqrt();
    let allowed = Stress::psi(PHI_PLAIN * strength / PUSH_FACTOR);
    let says = format!("φ·5·√f′c/(1/0.6) = 0.60·5·√{}·0.6 = {} psi: 1.0W stands for 0.6W", psi(concrete), psi(allowed));
    let source = Citation::from_memory("ACI 318-14", "14.5.2.1 and 21.2.1");
    Ok(Worked::new(allowed, vec![Step::new("plain concrete in tension", says, source)]))
}

/// Section modulus of a pier, round or square.
#[must_use]
pub fn pier_modulus(width: Length, is_round: bool) -> Volume {
    width * width * (width * if is_round { std::f64::consts::PI / 32.0 } else { 1.0 / 6.0 })
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    fn around(edge: f64) -> AroundAnchor {
        AroundAnchor { edge: Length::inches(edge), concrete: Stress::psi(2500.0) }
    }

    /// 4 in deep in the middle of 18 in square: nothing is cut off. 24·50·8 = 9,600 lb, 0.35 of it 3,360.
    #[test]
    fn a_whole_cone() {
        let square = |side: Length| {
            let side = side.min(Length::inches(18.0));
            side * side
        };
        let found = anchor_breakout(Length::inches(4.0), around(9.0), square).unwrap().value;
        assert!((found.to_pounds() - 3360.0).abs() < 1e-9);
    }

    /// 12 in deep in a round pier of 12 in: c/1.5 = 4 in count, of whose 144 in² the pier has π·36.
    #[test]
    fn a_slender_pier_cuts_the_cone_off() {
        let round = |side: Length| {
            let circle = Area::square_inches(std::f64::consts::PI * 36.0);
            circle.min(side * side)
        };
        let found = |depth| anchor_breakout(Length::inches(depth), around(6.0), round).unwrap().value.to_pounds();
        let expected = 0.35 * 24.0 * 50.0 * 8.0 * std::f64::consts::PI * 36.0 / 144.0;
        assert!((found(12.0) - expected).abs() < 1e-9 && (found(4.0) - expected).abs() < 1e-9);
        assert!(found(3.0) < expected);
        assert!(anchor_breakout(Length::ZERO, around(6.0), round).is_err());
    }

    /// Four ½ in bars: 4·0.19635·20,000 = 15,708 lb.
    #[test]
    fn bars_by_hand() {
        assert!((bars_pulled(4, Length::inches(0.5)).unwrap().value.to_pounds() - 15_707.963).abs() < 1e-3);
        assert!(bars_pulled(0, Length::inches(0.5)).is_err());
    }

    /// 600 lb 6 in above ground on 12 in in sand of 150 psf a foot: z₀ = √(1200/150) = 2.828 ft, 600·(6 + 22.63) = 17,176 lb·in.
    /// A pier of 2 ft in that soil: 600·(6 + 16). 90 psi of plain concrete: 0.6·250·0.6.
    #[test]
    fn a_pier_bends() {
        let of = |depth: f64| {
            let size = (Length::inches(12.0), Length::feet(depth));
            pier_moment(Force::pounds(600.0), Length::inches(6.0), size, 150.0).unwrap().value.to_pound_inches()
        };
        assert!((of(5.0) - 600.0 * (6.0 + 8.0 * 8.0_f64.sqrt())).abs() < 1e-6);
        assert!((of(2.0) - 600.0 * 22.0).abs() < 1e-6);
        assert!((plain_tension(Stress::psi(2500.0)).unwrap().value.to_psi() - 90.0).abs() < 1e-9);
        assert!((pier_modulus(Length::inches(12.0), false).to_cubic_inches() - 288.0).abs() < 1e-9);
    }
}

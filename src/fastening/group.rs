//! The fasteners of one row do not share alike: the end ones carry more (NDS 2015 11.3.6).
use super::Refused;
use super::refused::above_zero;
use super::written::{inches, number};
use crate::units::{Area, Force, Length, Stress};
use crate::working::{Citation, Step, Worked};

/// A member's stiffness along the row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GroupMember {
    /// Modulus of elasticity.
    pub modulus: Stress,
    /// Gross area of its section; of all side members together.
    pub area: Area,
}

impl GroupMember {
    fn stiffness(self) -> Force {
        self.modulus * self.area
    }
}

/// A row of fasteners in the direction of the load.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GroupRow {
    /// Fasteners in the row.
    pub n_fasteners: u32,
    /// Spacing within the row.
    pub spacing: Length,
    /// Diameter as sold.
    pub diameter: Length,
    /// Steel side plates rather than wood.
    pub has_metal_side: bool,
}

/// C_g, Eq. 11.3-1. One for a single fastener and for those thinner than ¼ in.
///
/// # Errors
/// For a row without fasteners, spacing or stiffness.
pub fn group_factor(row: GroupRow, main: GroupMember, side: GroupMember) -> Result<Worked<f64>, Refused> {
    let citation = Citation::from_memory("NDS 2015", "11.3-1");
    above_zero("the number of fasteners in a row", f64::from(row.n_fasteners))?;
    if row.n_fasteners == 1 || row.diameter < Length::inches(0.25) {
        let says = if row.n_fasteners == 1 { "one in the row" } else { "D < ¼ in" };
        let step = Step::new("C_g, group action", format!("C_g = 1.00 ({says})"), citation);
        return Ok(Worked::new(1.0, vec![step]));
    }
    above_zero("the spacing in the row", row.spacing.to_inches())?;
    let (main, side) = (main.stiffness().to_pounds(), side.stiffness().to_pounds());
    above_zero("the stiffness E·A of the main member", main)?;
    above_zero("the stiffness E·A of the side members", side)?;
    let stiffness_ratio = (side / main).min(main / side);
    let slip = if row.has_metal_side { 270_000.0 } else { 180_000.0 } * row.diameter.to_inches().powf(1.5);
    let u = 1.0 + slip * row.spacing.to_inches() / 2.0 * (1.0 / main + 1.0 / side);
    let m = u - (u * u - 1.0).sqrt();
    let n = f64::from(row.n_fasteners);
    let (once, twice) = (m.powf(n), m.powf(2.0 * n));
    let first = m * (1.0 - twice) / (n * ((1.0 + stiffness_ratio * once) * (1.0 + m) - 1.0 + twice));
    let value = first * (1.0 + stiffness_ratio) / (1.0 - m);
    let steps = vec![
        Step::new("R_EA, ratio of stiffness", format!("R_EA = {}", number(stiffness_ratio)), citation),
        Step::new(
            "m",
            format!(
                "γ = {slip:.0} lb/in; u = 1 + γ·(s/2)·(1/E_mA_m + 1/E_sA_s) = 1 + {slip:.0}·({}/2)·(1/{main:.0} + 1/{side:.0}) = {u:.4}; m = u − √(u² − 1) = {m:.4}",
                inches(row.spacing)
            ),
            citation,
        ),
        Step::new(
            "C_g, group action",
            format!("C_g for n = {} in a row = {}", row.n_fasteners, number(value)),
            citation,
        ),
    ];
    Ok(Worked::new(value, steps))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    const BEAM: GroupMember = GroupMember { modulus: Stress::psi(1_600_000.0), area: Area::square_inches(50.0) };
    const PLANK: GroupMember = GroupMember { modulus: Stress::psi(1_600_000.0), area: Area::square_inches(25.0) };

    fn row(n_fasteners: u32) -> GroupRow {
        let (spacing, diameter) = (Length::inches(4.0), Length::inches(0.5));
        GroupRow { n_fasteners, spacing, diameter, has_metal_side: false }
    }

    fn factor(row: GroupRow) -> f64 {
        group_factor(row, BEAM, PLANK).unwrap().value
    }

    /// Eq. 11.3-1 with n = 1 reduces to one; the shortcut must meet what a row of two approaches from below.
    #[test]
    fn more_in_a_row_share_worse() {
        assert_eq!(factor(row(1)), 1.0);
        let found: Vec<f64> = (1..9).map(|n| factor(row(n))).collect();
        assert!(found.windows(2).all(|pair| pair[1] < pair[0]), "{found:?}");
        assert!(found[1] > 0.98);
        assert_eq!(factor(GroupRow { diameter: Length::inches(0.2), ..row(8) }), 1.0);
        let metal = GroupRow { has_metal_side: true, ..row(8) };
        assert!(factor(metal) < factor(row(8)));
    }

    /// The row as springs: n equal fastener springs between two elastic bars, solved here node by node, share the
    /// load as Eq. 11.3-1 says: C_g = mean by greatest fastener load.
    #[test]
    fn it_is_the_row_of_springs() {
        let (n, slip, spacing) = (5_usize, 180_000.0 * 0.5_f64.powf(1.5), 4.0);
        let (main, side) = (1_600_000.0 * 50.0, 1_600_000.0 * 25.0);
        // Slip of fastener k: δ_{k+1} − δ_k = s·(side force/EA_side − main force/EA_main); loads follow slips.
        let end_force = |first: f64| -> (f64, Vec<f64>) {
            let (mut slip_now, mut passed, mut loads) = (first, 0.0, Vec::new());
            for _ in 0..n {
                loads.push(slip * slip_now);
                passed += slip * slip_now;
                // Load 1 enters the main member at the first fastener and leaves through the side.
                slip_now += spacing * (passed / side - (1.0 - passed) / main);
            }
            (passed, loads)
        };
        let (mut low, mut high) = (0.0, 1.0 / slip * 2.0);
        for _ in 0..200 {
            let middle = 0.5 * (low + high);
            if end_force(middle).0 > 1.0 { high = middle } else { low = middle }
        }
        let loads = end_force(low).1;
        let greatest = loads.iter().copied().fold(0.0, f64::max);
        let share = 1.0 / (n as f64 * greatest);
        assert!((factor(row(5)) - share).abs() < 1e-6, "{} is not {share}", factor(row(5)));
    }

    #[test]
    fn nothing_is_refused() {
        assert!(group_factor(row(0), BEAM, PLANK).is_err());
        assert!(group_factor(GroupRow { spacing: Length::ZERO, ..row(2) }, BEAM, PLANK).is_err());
        assert!(group_factor(row(2), GroupMember { area: Area::ZERO, ..BEAM }, PLANK).is_err());
        assert!(group_factor(row(2), BEAM, GroupMember { area: Area::ZERO, ..PLANK }).is_err());
    }
}

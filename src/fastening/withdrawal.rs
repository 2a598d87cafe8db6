//! Pulling out along the fastener: thread or shank from side grain, and the head through the side member (NDS 2015 12.2).
use std::f64::consts::PI;

use super::Refused;
use super::fastener::{Fastener, FastenerKind};
use super::refused::above_zero;
use super::written::{inches, number, pounds};
use crate::units::{Force, Length, LineLoad};
use crate::working::{Citation, Step, Worked};

fn gravity_within(gravity: f64) -> Result<(), Refused> {
    if (0.25..=0.90).contains(&gravity) {
        return Ok(());
    }
    Err(Refused::because(format!("A specific gravity of {gravity:.2} belongs to no building wood (0.25–0.90).")))
}

/// Reference withdrawal W of a lag screw, wood screw or smooth nail, a length of thread or shank in side grain.
///
/// Lag screw 1800·G^1.5·D^0.75 (12.2-1), wood screw 2850·G²·D (12.2-2), smooth nail 1380·G^2.5·D (12.2-3), in pounds an inch.
/// The tip of a lag screw does not count; its steel must carry the pull as well ([`super::lag_steel_tension`]).
///
/// # Errors
/// For a bolt, whose washer carries the pull, a lag screw over 1 in, and a gravity no building wood has.
pub fn withdrawal(fastener: &Fastener, gravity: f64) -> Result<Worked<LineLoad>, Refused> {
    gravity_within(gravity)?;
    let (size, d) = (fastener.diameter.to_inches(), inches(fastener.diameter));
    let (value, formula, clause) = match fastener.kind {
        FastenerKind::Bolt => {
            return Err(Refused::because(
                "A bolt is held by its washers, not by its shank: it has no withdrawal value.",
            ));
        }
        FastenerKind::LagScrew if size > 1.0 => {
            return Err(Refused::because("Withdrawal values of lag screws end at 1 in diameter."));
        }
        FastenerKind::LagScrew => (
            1800.0 * gravity.powf(1.5) * size.powf(0.75),
            format!("1800·G^1.5·D^0.75 = 1800·{gravity:.2}^1.5·{d}^0.75"),
            "12.2-1 and Table 12.2A",
        ),
        FastenerKind::WoodScrew => {
            (2850.0 * gravity * gravity * size, format!("2850·G²·D = 2850·{gravity:.2}²·{d}"), "12.2-2")
        }
        FastenerKind::Nail => {
            (1380.0 * gravity.powf(2.5) * size, format!("1380·G^2.5·D = 1380·{gravity:.2}^2.5·{d}"), "12.2-3")
        }
    };
    Ok(an_inch(value, &formula, Citation::seen("NDS 2015", clause)))
}

/// Reference withdrawal of a nail with a deformed shank (2018 edition on): 1800·G²·D, in pounds an inch.
///
/// # Errors
/// For a diameter not above zero and a gravity no building wood has.
pub fn deformed_nail_withdrawal(diameter: Length, gravity: f64) -> Result<Worked<LineLoad>, Refused> {
    gravity_within(gravity)?;
    above_zero("the diameter of the nail", diameter.to_inches())?;
    let value = 1800.0 * gravity * gravity * diameter.to_inches();
    let formula = format!("1800·G²·D = 1800·{gravity:.2}²·{}", inches(diameter));
    Ok(an_inch(value, &formula, Citation::from_memory("NDS 2018", "12.2.3, deformed shanks")))
}

fn an_inch(value: f64, formula: &str, citation: Citation) -> Worked<LineLoad> {
    let says = format!("W = {formula} = {} lb/in", number(value));
    Worked::new(LineLoad::pounds_per_inch(value), vec![Step::new("W, reference withdrawal", says, citation)])
}

/// Pulling a round head through the side member (NDS 2018 12.2.5): W_H = 690·π·D_H·G²·t up to t = 2.5·D_H,
/// 1725·π·D_H²·G² beyond.
///
/// # Errors
/// For a head or a side member of no size, and a gravity no building wood has.
pub fn head_pull_through(head: Length, gravity: f64, side_thickness: Length) -> Result<Worked<Force>, Refused> {
    gravity_within(gravity)?;
    above_zero("the diameter of the head", head.to_inches())?;
    above_zero("the thickness of the side member", side_thickness.to_inches())?;
    let (d, t) = (head.to_inches(), side_thickness.to_inches());
    let is_thin = side_thickness <= head * 2.5;
    let value = if is_thin { 690.0 * PI * d * gravity.powi(2) * t } else { 1725.0 * PI * d * d * gravity.powi(2) };
    let force = Force::pounds(value);
    let says = if is_thin {
        let (head, side) = (inches(head), inches(side_thickness));
        format!("W_H = 690·π·D_H·G²·t = 690·π·{head}·{gravity:.2}²·{side} = {} lb", pounds(force))
    } else {
        let head = inches(head);
        format!("t > 2.5·D_H: W_H = 1725·π·D_H²·G² = 1725·π·{head}²·{gravity:.2}² = {} lb", pounds(force))
    };
    let citation = Citation::from_memory("NDS 2018", "12.2.5");
    Ok(Worked::new(force, vec![Step::new("W_H, head pull-through", says, citation)]))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::fastening::fastener;

    #[test]
    fn bolts_and_strange_woods_are_refused() {
        assert!(withdrawal(fastener("bolt_1_2").unwrap(), 0.5).is_err());
        assert!(withdrawal(fastener("lag_1_2").unwrap(), 0.1).is_err());
        assert!(withdrawal(fastener("lag_1_2").unwrap(), f64::NAN).is_err());
        assert!(deformed_nail_withdrawal(Length::ZERO, 0.5).is_err());
    }

    /// 1800·0.25·0.148 = 66.6, by hand: above the 36 lb/in of the smooth shank.
    #[test]
    fn a_deformed_shank_holds_better() {
        let found = deformed_nail_withdrawal(Length::inches(0.148), 0.5).unwrap().value;
        assert!((found.to_pounds_per_inch() - 66.6).abs() < 1e-9);
    }

    /// Both formulas meet at t = 2.5·D_H: 690·2.5 = 1725.
    #[test]
    fn pull_through_is_continuous_and_then_level() {
        let pull =
            |thickness: f64| head_pull_through(Length::inches(0.5), 0.5, Length::inches(thickness)).unwrap().value;
        assert!((pull(1.25).to_pounds() - 1725.0 * PI * 0.25 * 0.25).abs() < 1e-9);
        assert!((pull(0.625).to_pounds() * 2.0 - pull(1.25).to_pounds()).abs() < 1e-9);
        assert!((pull(3.0) - pull(1.25)).abs() < Force::pounds(1e-9));
        assert!(head_pull_through(Length::ZERO, 0.5, Length::inches(1.0)).is_err());
        assert!(head_pull_through(Length::inches(0.5), 0.5, Length::ZERO).is_err());
    }
}

//! The ledger on the wall: each fixing carries the rafters' reaction aside, and is pulled because the reaction stands off
//! the wall.
//!
//! ```text
//!   wall |o  | R     e: wall face to the line of the reaction
//!        |o  |_v_    z: a fixing's height over the edge that presses on the wall
//!        |___|  <- pressed edge
//! ```
use super::Refused;
use super::combined::{LoadOnOne, Pull, combined_check};
use super::fastener::FastenerKind;
use super::refused::above_zero;
use super::written::{inches, number, pounds};
use crate::units::{Force, Length, LineLoad};
use crate::working::{Citation, Step, Worked};

/// Where the rule for the pull comes from.
const PRESSED_EDGE: Citation = Citation::from_memory("statics", "R·e = ΣT·z about the pressed edge");

/// Why the table of deck ledgers has no place here.
#[must_use]
pub const fn deck_table_sentence() -> &'static str {
    "The ledger table of the residential code (R507.9.1.3(1)) is for deck floors of 40 psf and rests on tests: its 375 lb \
     for a ½ in lag screw is more than the NDS gives for the same joint. It says nothing of snow or uplift: it is not used here."
}

/// One level row of fixings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FixingRow {
    /// Height over the pressed edge.
    pub height: Length,
    /// Fixings in the row that share the reaction.
    pub count: u32,
}

/// What a group of fixings holds.
#[derive(Clone, Debug, PartialEq)]
pub struct LedgerLoad {
    /// Reaction, without sign. Downward it presses the lower edge on the wall, upward the upper one.
    pub reaction: Force,
    /// e: wall face to the line of the reaction.
    pub eccentricity: Length,
    /// Any pull straight off the wall beside that, from wind or a sloping rafter; none or more.
    pub outward: Force,
    /// Any push along the wall at the same time, without sign; it acts in the face of the wall, all fixings alike.
    pub along: Force,
    /// The rows.
    pub rows: Vec<FixingRow>,
}

/// The most loaded fixing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LedgerFixing {
    /// Its load.
    pub load: LoadOnOne,
    /// Load by capacity.
    pub ratio: f64,
}

/// The most pulled fixing: shear R/n; pull T = R·e·z/Σz² of its row (R·e/z for one row), and its share of the outward pull.
///
/// # Errors
/// Without fixings or a reaction, with a fixing at or below the pressed edge.
pub fn fixing_load(load: &LedgerLoad) -> Result<Worked<LoadOnOne>, Refused> {
    let in_face = Force::pounds(load.reaction.to_pounds().hypot(load.along.to_pounds()));
    above_zero("the reaction on the ledger", in_face.to_pounds())?;
    if load.eccentricity.is_negative() || load.outward.is_negative() {
        return Err(Refused::because("The stand-off of the reaction and the outward pull are zero or more."));
    }
    let count: u32 = load.rows.iter().map(|row| row.count).sum();
    above_zero("the number of fixings", f64::from(count))?;
    for row in &load.rows {
        above_zero("the height of a fixing over the pressed edge", row.height.to_inches())?;
    }
    let n = f64::from(count);
    let squares: f64 = load.rows.iter().map(|row| f64::from(row.count) * row.height.to_inches().powi(2)).sum();
    let top = load.rows.iter().filter(|row| row.count > 0).map(|row| row.height).fold(Length::ZERO, Length::max);
    let moment = load.reaction.abs() * load.eccentricity;
    let pull = Force::pounds(moment.to_pound_inches() * top.to_inches() / squares) + load.outward / n;
    let shear = in_face / n;
    let sheared = if load.along == Force::ZERO {
        format!("Z = R/n = {}/{count} = {} lb", pounds(load.reaction.abs()), pounds(shear))
    } else {
        let (down, along) = (pounds(load.reaction.abs()), pounds(load.along.abs()));
        format!("Z = √(R² + A²)/n = √({down}² + {along}²)/{count} = {} lb", pounds(shear))
    };
    let on_one = LoadOnOne { withdrawal: pull, lateral: shear };
    let steps = vec![
        Step::new("shear of one fixing", sheared, PRESSED_EDGE),
        Step::new(
            "pull of the highest fixing",
            format!(
                "T = R·e·z/Σz² + H/n = {}·{}·{}/{} + {}/{count} = {} lb",
                pounds(load.reaction.abs()),
                inches(load.eccentricity),
                inches(top),
                number(squares),
                pounds(load.outward),
                pounds(pull)
            ),
            PRESSED_EDGE,
        ),
    ];
    Ok(Worked::new(on_one, steps))
}

/// The most pulled fixing, its load against what it carries.
///
/// # Errors
/// As [`fixing_load`], and for values not above zero.
pub fn ledger_fixing(kind: FastenerKind, load: &LedgerLoad, values: Pull) -> Result<Worked<LedgerFixing>, Refused> {
    let Worked { value: load, mut steps } = fixing_load(load)?;
    let ratio = combined_check(kind, values, load)?;
    steps.extend(ratio.steps);
    Ok(Worked::new(LedgerFixing { load, ratio: ratio.value }, steps))
}

/// What a fastener at this spacing carries of a load along the ledger.
///
/// # Errors
/// For a spacing that is not above zero.
pub fn load_a_fastener(load: LineLoad, spacing: Length) -> Result<Worked<Force>, Refused> {
    above_zero("the spacing of the fixings", spacing.to_inches())?;
    let force = load * spacing;
    let says = format!("w·s = {} plf·{}/12 ft = {} lb", number(load.to_plf()), inches(spacing), pounds(force));
    Ok(Worked::new(force, vec![Step::new("load of one fixing", says, Citation::from_memory("statics", "w·s"))]))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    const VALUES: Pull = Pull { withdrawal: Force::pounds(900.0), lateral: Force::pounds(300.0) };

    fn load(rows: &[(f64, u32)]) -> LedgerLoad {
        LedgerLoad {
            reaction: Force::pounds(600.0),
            eccentricity: Length::inches(2.0),
            outward: Force::ZERO,
            along: Force::ZERO,
            rows: rows.iter().map(|&(height, count)| FixingRow { height: Length::inches(height), count }).collect(),
        }
    }

    fn fixing(load: &LedgerLoad) -> Result<LedgerFixing, Refused> {
        ledger_fixing(FastenerKind::LagScrew, load, VALUES).map(|found| found.value)
    }

    /// One row: T = R·e/z = 600·2/6 = 200 lb on two fixings, 100 each; shear 300 each.
    #[test]
    fn one_row() {
        let found = fixing(&load(&[(6.0, 2)])).unwrap();
        assert!((found.load.withdrawal.to_pounds() - 100.0).abs() < 1e-9);
        assert!((found.load.lateral.to_pounds() - 300.0).abs() < 1e-9);
        // 12.4-1 with cos²α = 0.9: 900·300/(900·0.9 + 300·0.1) = 321.4 for √(100² + 300²) = 316.2; 300 aside of 300 rules.
        assert!((found.ratio - 1.0).abs() < 1e-9);
    }

    /// Two rows at 2 and 6 in: T = 1200·6/(4 + 36) = 180 lb, and the moments of both rows make 1200 lb·in again.
    #[test]
    fn two_rows_balance_the_moment() {
        let found = fixing(&load(&[(2.0, 1), (6.0, 1)])).unwrap().load.withdrawal.to_pounds();
        assert!((found - 180.0).abs() < 1e-9);
        assert!((found * 6.0 + found / 3.0 * 2.0 - 1200.0).abs() < 1e-9);
        let pulled = LedgerLoad { outward: Force::pounds(100.0), ..load(&[(2.0, 1), (6.0, 1)]) };
        assert!((fixing(&pulled).unwrap().load.withdrawal.to_pounds() - 230.0).abs() < 1e-9);
    }

    /// 600 lb down and 800 along are 1000 in the face of the wall: 500 each; the pull is that of the 600 down.
    #[test]
    fn a_push_along_the_wall_adds_in_its_face() {
        let found = fixing(&LedgerLoad { along: Force::pounds(800.0), ..load(&[(6.0, 2)]) }).unwrap().load;
        assert!((found.lateral.to_pounds() - 500.0).abs() < 1e-9);
        assert!((found.withdrawal.to_pounds() - 100.0).abs() < 1e-9);
    }

    #[test]
    fn limits() {
        assert!(fixing(&load(&[])).is_err());
        assert!(fixing(&load(&[(0.0, 2)])).is_err());
        assert!(fixing(&LedgerLoad { reaction: Force::ZERO, ..load(&[(6.0, 2)]) }).is_err());
        assert!(fixing(&LedgerLoad { eccentricity: Length::inches(-1.0), ..load(&[(6.0, 2)]) }).is_err());
        assert!(fixing(&LedgerLoad { outward: Force::pounds(-1.0), ..load(&[(6.0, 2)]) }).is_err());
        assert!(load_a_fastener(LineLoad::plf(300.0), Length::ZERO).is_err());
    }
}

//! Wood that tears around bolts and pegs (NDS 2015 Appendix E): net tension, plugs sheared out behind a row, and the block
//! between rows of a tenon. From memory. What it leaves open is said in [`super::SPLITTING_NOT_COVERED`].
use super::Refused;
use super::refused::above_zero;
use super::written::{inches, pounds, psi, square_inches};
use crate::units::{Area, Force, Length, Stress};
use crate::working::{Citation, Step, Worked};

/// Tension on what the holes leave: Z′_NT = F_t′·A_net (E.2).
///
/// `holes` is the width of all holes in the section together, `width` and `thickness` those of the tenon.
///
/// # Errors
/// When the holes leave nothing, or no strength is given.
pub fn net_tension(tension: Stress, width: Length, holes: Length, thickness: Length) -> Result<Worked<Force>, Refused> {
    above_zero("the tension strength F_t′", tension.to_psi())?;
    above_zero("the thickness of the tenon", thickness.to_inches())?;
    above_zero("the width the holes leave", (width - holes).to_inches())?;
    let net = (width - holes) * thickness;
    let force = tension * net;
    let says = format!(
        "Z′_NT = F_t′·A_net = {}·({} − {})·{} = {} lb",
        psi(tension),
        inches(width),
        inches(holes),
        inches(thickness),
        pounds(force)
    );
    let citation = Citation::from_memory("NDS 2015", "E.2");
    Ok(Worked::new(force, vec![Step::new("Z′_NT, net tension at the holes", says, citation)]))
}

/// A row of pegs or bolts along the grain.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PegRow {
    /// How many in the row.
    pub n: u32,
    /// Thickness of the tenon.
    pub thickness: Length,
    /// From the last one to the end: the relish.
    pub end: Length,
    /// From one to the next, for more than one.
    pub spacing: Option<Length>,
}

impl PegRow {
    fn critical(&self) -> Result<Length, Refused> {
        above_zero("the number in the row", f64::from(self.n))?;
        above_zero("the thickness of the tenon", self.thickness.to_inches())?;
        above_zero("the relish", self.end.to_inches())?;
        match self.spacing {
            Some(spacing) => {
                above_zero("the spacing in the row", spacing.to_inches())?;
                Ok(self.end.min(spacing))
            }
            None if self.n > 1 => Err(Refused::because("Give the spacing of the row: there is more than one in it.")),
            None => Ok(self.end),
        }
    }
}

/// The plugs behind one row shear out: Z′_RT = n·F_v′·t·s, s the lesser of relish and spacing (E.3).
///
/// # Errors
/// When a part is missing.
pub fn row_tear_out(shear: Stress, row: PegRow) -> Result<Worked<Force>, Refused> {
    above_zero("the shear strength F_v′", shear.to_psi())?;
    let critical = row.critical()?;
    let force = shear * (row.thickness * critical) * f64::from(row.n);
    let says = format!(
        "Z′_RT = n·F_v′·t·s = {}·{}·{}·{} = {} lb",
        row.n,
        psi(shear),
        inches(row.thickness),
        inches(critical),
        pounds(force)
    );
    let citation = Citation::from_memory("NDS 2015", "E.3");
    Ok(Worked::new(force, vec![Step::new("Z′_RT, row tear-out", says, citation)]))
}

/// The block between the outer rows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GroupTear {
    /// One outer row.
    pub first: PegRow,
    /// The other.
    pub last: PegRow,
    /// Area in tension between the outer rows, holes taken off.
    pub net_between: Area,
}

/// The block between two rows tears out: Z′_GT = Z′_RT1/2 + Z′_RTn/2 + F_t′·A_between (E.4).
///
/// # Errors
/// When a part is missing.
pub fn group_tear_out(shear: Stress, tension: Stress, group: GroupTear) -> Result<Worked<Force>, Refused> {
    above_zero("the tension strength F_t′", tension.to_psi())?;
    above_zero("the net area between the rows", group.net_between.to_square_inches())?;
    let (first, last) = (row_tear_out(shear, group.first)?, row_tear_out(shear, group.last)?);
    let force = first.value * 0.5 + last.value * 0.5 + tension * group.net_between;
    let says = format!(
        "Z′_GT = Z′_RT1/2 + Z′_RTn/2 + F_t′·A = {}/2 + {}/2 + {}·{} = {} lb",
        pounds(first.value),
        pounds(last.value),
        psi(tension),
        square_inches(group.net_between),
        pounds(force)
    );
    let mut steps = first.steps;
    steps.extend(last.steps);
    steps.push(Step::new("Z′_GT, block tear-out", says, Citation::from_memory("NDS 2015", "E.4")));
    Ok(Worked::new(force, steps))
}

/// Rows alike, side by side across wood that is pulled along its grain.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AlikeRows {
    /// Each of them.
    pub row: PegRow,
    /// How many.
    pub n: usize,
    /// Width of the wood, and what all holes side by side take of it.
    pub width: Length,
    /// See `width`.
    pub holes: Length,
    /// Wood between the outer two rows, the holes taken off; nothing where no block stands between two.
    pub between: Option<Length>,
}

/// The ways in which that wood gives.
#[derive(Clone, Debug, PartialEq)]
pub struct TornOut {
    /// At the holes.
    pub net: Worked<Force>,
    /// Behind one row.
    pub row: Worked<Force>,
    /// Behind all rows.
    pub rows: Force,
    /// The block between the outer rows, its last step alone.
    pub block: Option<Worked<Force>>,
}

impl TornOut {
    /// What the wood holds: the way that gives first.
    #[must_use]
    pub fn least(&self) -> Force {
        let block = self.block.iter().map(|block| block.value);
        block.fold(self.net.value.min(self.rows), Force::min)
    }
}

/// Every way of NDS Appendix E in which the wood around such rows gives (2015, from memory).
///
/// # Errors
/// When a part is missing.
pub fn torn_out(shear: Stress, tension: Stress, all: AlikeRows) -> Result<TornOut, Refused> {
    let AlikeRows { row, n, width, holes, between } = all;
    let net = net_tension(tension, width, holes, row.thickness)?;
    let one = row_tear_out(shear, row)?;
    let block = |between: Length| {
        let group = GroupTear { first: row, last: row, net_between: between * row.thickness };
        let whole = group_tear_out(shear, tension, group)?;
        Ok(Worked::new(whole.value, whole.steps.into_iter().last().into_iter().collect()))
    };
    Ok(TornOut { net, rows: one.value * n as f64, row: one, block: between.map(block).transpose()? })
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    const SHEAR: Stress = Stress::psi(170.0);
    const TENSION: Stress = Stress::psi(675.0);

    fn row(n: u32, end: f64, spacing: Option<f64>) -> PegRow {
        PegRow { n, thickness: Length::inches(2.0), end: Length::inches(end), spacing: spacing.map(Length::inches) }
    }

    /// By hand: 675·(7.5 − 1)·2 = 8775 lb; 170·2·4 = 1360 lb; two in a row 3 in apart 2·170·2·3 = 2040 lb.
    #[test]
    fn by_hand() {
        let net = |holes: f64| net_tension(TENSION, Length::inches(7.5), Length::inches(holes), Length::inches(2.0));
        assert_eq!(net(1.0).unwrap().value, Force::pounds(8775.0));
        assert!(net(7.5).is_err());
        let plug = |row| row_tear_out(SHEAR, row).map(|found| found.value.to_pounds());
        assert_eq!(plug(row(1, 4.0, None)), Ok(1360.0));
        assert_eq!(plug(row(2, 4.0, Some(3.0))), Ok(2040.0));
        assert_eq!(plug(row(2, 2.5, Some(3.0))), Ok(1700.0));
        // 1360/2 + 1360/2 + 675·5 = 4735 lb.
        let between = Area::square_inches(5.0);
        let group = GroupTear { first: row(1, 4.0, None), last: row(1, 4.0, None), net_between: between };
        assert_eq!(group_tear_out(SHEAR, TENSION, group).unwrap().value, Force::pounds(4735.0));
        assert!(group_tear_out(SHEAR, TENSION, GroupTear { net_between: Area::ZERO, ..group }).is_err());
    }

    #[test]
    fn parts_that_are_missing() {
        for bad in [row(0, 4.0, None), row(2, 4.0, None), row(1, 0.0, None), row(2, 4.0, Some(0.0))] {
            assert!(row_tear_out(SHEAR, bad).is_err());
        }
        assert!(row_tear_out(Stress::ZERO, row(1, 4.0, None)).is_err());
    }
}

//! `C_F`: a large stick is weaker by the square inch.
use std::sync::OnceLock;

use crate::units::Length;
use crate::working::Citation;

use super::super::figures::{inches, number};
use super::super::size_class::NEAR;
use super::super::{Member, Property};
use super::Factor;

/// Depth from which on a timber's bending value falls.
const DEEP: Length = Length::inches(12.0);

/// Ordered thickness from which on the column for 4 in stock holds (3½ in is 4 in dressed).
const FOUR_THICK: Length = Length::inches(3.5);

/// `C_F` on `F_b`, `F_t`, `F_c`.
///
/// Timbers: `(12/d)^(1/9)` on `F_b` for a depth `d` over 12 in, as sawn (NDS 4.3.6.2). Dimension lumber: Table 4A by the
/// ordered width; between two rows the lower value. Southern pine of 2 to 4 in has its size in the value (Table 4B).
#[must_use]
pub fn size(member: &Member, property: Property) -> Factor {
    if member.values.size_class.is_timber() {
        return of_timber(member.section().depth, property);
    }
    if member.is_southern_dimension() {
        let citation = Citation::from_memory("NDS Supplement 2018", "Table 4B");
        return Factor::new("C_F", 1.0, "the size is in the value", citation);
    }
    of_dimension(member, property)
}

fn of_timber(depth: Length, property: Property) -> Factor {
    if property == Property::Bending && depth > DEEP {
        let value = (DEEP / depth).powf(1.0 / 9.0);
        let reason = format!("(12/{})^(1/9) = {}, deeper than 12 in", inches(depth), number(value));
        return Factor::new("C_F", value, reason, Citation::seen("NDS as restated in an engineering wiki", "4.3.6.2"));
    }
    let reason = if property == Property::Bending { "at most 12 in deep" } else { "a timber" };
    Factor::new("C_F", 1.0, reason, Citation::from_memory("NDS 2018", "4.3.6.2"))
}

struct Row {
    width: Length,
    bending_thin: f64,
    bending_thick: f64,
    tension: f64,
    compression: f64,
}

fn rows() -> &'static [Row] {
    static ROWS: OnceLock<Vec<Row>> = OnceLock::new();
    ROWS.get_or_init(|| include_str!("../tables/size_factors.csv").lines().skip(1).filter_map(read).collect())
}

fn read(line: &str) -> Option<Row> {
    let cells: Vec<f64> = line.split(',').map(|cell| cell.parse().ok()).collect::<Option<_>>()?;
    let [width, bending_thin, bending_thick, tension, compression] = cells[..] else { return None };
    Some(Row { width: Length::inches(width), bending_thin, bending_thick, tension, compression })
}

fn of_dimension(member: &Member, property: Property) -> Factor {
    let recalled = Citation::from_memory("NDS Supplement 2018", "Table 4A size factors");
    let (thickness, width) = member.ordered_sizes();
    let is_thick = thickness + NEAR >= FOUR_THICK;
    let Some(row) = rows().iter().find(|row| width <= row.width + NEAR).or_else(|| rows().last()) else {
        return Factor::new("C_F", 0.9, "no size table: the least of it", Citation::placeholder("NDS", "Table 4A"));
    };
    let value = match property {
        Property::Bending if is_thick => row.bending_thick,
        Property::Bending => row.bending_thin,
        Property::Tension => row.tension,
        Property::Compression => row.compression,
        _ => 1.0,
    };
    let is_eight = row.width == Length::inches(8.0) && matches!(property, Property::Bending | Property::Tension);
    let citation = match (is_eight, is_thick) {
        (true, false) => Citation::seen("university course example, NDS 2001", "Table 4A size factors"),
        (true, true) if property == Property::Bending => {
            Citation::seen("Breyer et al., Design of Wood Structures, ch. 6 problems", "Table 4A size factors")
        }
        _ => recalled,
    };
    let reason = format!("{} in wide, {} in thick as ordered", inches(width), inches(thickness));
    Factor::new("C_F", value, reason, citation)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::members::test_members::{dry, inches as section};

    fn check(thick: f64, wide: f64, bending: f64, tension: f64, compression: f64) {
        let member = dry("Hem-Fir", section(thick, wide));
        assert_eq!(size(&member, Property::Bending).value, bending, "{thick}x{wide}");
        assert_eq!(size(&member, Property::Tension).value, tension, "{thick}x{wide}");
        assert_eq!(size(&member, Property::Compression).value, compression, "{thick}x{wide}");
        assert_eq!(size(&member, Property::Shear).value, 1.0);
    }

    /// Table 4A, from memory; 2x8 and 4x8 as the published problems print them.
    #[test]
    fn dimension_lumber() {
        assert_eq!(rows().len(), include_str!("../tables/size_factors.csv").lines().count() - 1);
        check(2.0, 4.0, 1.5, 1.5, 1.15);
        check(2.0, 5.0, 1.4, 1.4, 1.1);
        check(2.0, 6.0, 1.3, 1.3, 1.1);
        check(2.0, 8.0, 1.2, 1.2, 1.05);
        check(4.0, 8.0, 1.3, 1.2, 1.05);
        check(3.0, 10.0, 1.1, 1.1, 1.0);
        check(4.0, 10.0, 1.2, 1.1, 1.0);
        check(4.0, 12.0, 1.1, 1.0, 1.0);
        check(4.0, 16.0, 1.0, 0.9, 0.9);
        check(2.0, 14.0, 0.9, 0.9, 0.9);
        check(2.0, 7.0, 1.2, 1.2, 1.05);
        check(3.5, 7.25, 1.3, 1.2, 1.05);
    }

    /// Southern pine has its size in the value; a timber of 13.5 in has 0.987 (computed by the formula of NDS 4.3.6.2).
    #[test]
    fn timbers_and_southern_pine() {
        assert_eq!(size(&dry("Southern Pine", section(2.0, 8.0)), Property::Bending).value, 1.0);
        assert_eq!(size(&dry("Hem-Fir", section(8.0, 12.0)), Property::Bending).value, 1.0);
        let deep = dry("Hem-Fir", section(8.0, 13.5));
        assert!((size(&deep, Property::Bending).value - 0.987).abs() < 0.000_5);
        assert_eq!(size(&deep, Property::Tension).value, 1.0);
    }
}

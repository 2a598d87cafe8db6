//! `C_fu`: a stick loaded on its wide face.
use std::sync::OnceLock;

use crate::units::Length;
use crate::working::Citation;

use super::super::figures::inches;
use super::super::size_class::NEAR;
use super::super::{Grade, Member, Property, SizeClass};
use super::Factor;

/// `C_fu` (NDS Supplement Tables 4A and 4D, from memory).
///
/// Dimension lumber: on `F_b`. Beams and Stringers: on `F_b`, and on `E` for No.1. Southern pine of 2 to 4 in: no
/// factor is carried here, so 1.0.
#[must_use]
pub fn flat_use(member: &Member, property: Property) -> Factor {
    let is_stiffness = matches!(property, Property::Stiffness | Property::LeastStiffness);
    let recalled = |clause| Citation::from_memory("NDS Supplement 2018", clause);
    if !member.lies_flat() {
        return Factor::new("C_fu", 1.0, "not loaded on the wide face", recalled("flat use factor"));
    }
    match member.values.size_class {
        SizeClass::BeamsStringers => {
            let value = match (member.values.grade, property, is_stiffness) {
                (Grade::SelectStructural, Property::Bending, _) => 0.86,
                (Grade::No1, Property::Bending, _) => 0.74,
                (Grade::No1, _, true) => 0.9,
                _ => 1.0,
            };
            Factor::new("C_fu", value, "loaded on the wide face", recalled("Table 4D"))
        }
        SizeClass::PostsTimbers | SizeClass::FiveAndLarger => {
            Factor::new("C_fu", 1.0, "none is listed for this size", recalled("Table 4D"))
        }
        SizeClass::Dimension if member.is_southern_pine() => {
            Factor::new("C_fu", 1.0, "not carried for southern pine", recalled("Table 4B"))
        }
        SizeClass::Dimension => of_dimension(member, property),
    }
}

fn rows() -> &'static [[f64; 3]] {
    static ROWS: OnceLock<Vec<[f64; 3]>> = OnceLock::new();
    ROWS.get_or_init(|| include_str!("../tables/flat_use_factors.csv").lines().skip(1).filter_map(read).collect())
}

fn read(line: &str) -> Option<[f64; 3]> {
    let cells: Vec<f64> = line.split(',').map(|cell| cell.parse().ok()).collect::<Option<_>>()?;
    cells.try_into().ok()
}

fn of_dimension(member: &Member, property: Property) -> Factor {
    let (thickness, width) = member.ordered_sizes();
    let citation = Citation::from_memory("NDS Supplement 2018", "Table 4A flat use factors");
    if property != Property::Bending {
        return Factor::new("C_fu", 1.0, "on bending only", citation);
    }
    // Between two rows the lower factor: the widest row that is not wider than the stick.
    let row = rows().iter().rev().find(|row| Length::inches(row[0]) <= width + NEAR);
    let column = if thickness + NEAR >= Length::inches(3.5) { 2 } else { 1 };
    let value = row.map_or(1.0, |row| row[column]);
    Factor::new("C_fu", value, format!("loaded on the wide face of {} in", inches(width)), citation)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::members::test_members::{dry, inches as section};

    /// Table 4A, from memory.
    #[test]
    fn dimension_lumber() {
        for (wide, thin, thick) in
            [(3.0, 1.0, 1.0), (4.0, 1.1, 1.0), (5.0, 1.1, 1.05), (6.0, 1.15, 1.05), (8.0, 1.15, 1.05), (12.0, 1.2, 1.1)]
        {
            assert_eq!(flat_use(&dry("Hem-Fir", section(wide, 2.0)), Property::Bending).value, thin, "{wide}");
            if wide > 4.0 {
                assert_eq!(flat_use(&dry("Hem-Fir", section(wide, 4.0)), Property::Bending).value, thick, "{wide}");
            }
        }
        assert_eq!(flat_use(&dry("Hem-Fir", section(2.0, 8.0)), Property::Bending).value, 1.0);
        assert_eq!(flat_use(&dry("Hem-Fir", section(8.0, 2.0)), Property::Stiffness).value, 1.0);
        assert_eq!(flat_use(&dry("Southern Pine", section(8.0, 2.0)), Property::Bending).value, 1.0);
    }

    /// Table 4D, from memory: Beams and Stringers by grade.
    #[test]
    fn beams_by_grade() {
        for (grade, bending, stiffness) in
            [(Grade::SelectStructural, 0.86, 1.0), (Grade::No1, 0.74, 0.9), (Grade::No2, 1.0, 1.0)]
        {
            let mut member = dry("Hem-Fir", section(10.0, 6.0));
            member.values.grade = grade;
            assert_eq!(flat_use(&member, Property::Bending).value, bending);
            assert_eq!(flat_use(&member, Property::LeastStiffness).value, stiffness);
            assert_eq!(flat_use(&member, Property::Shear).value, 1.0);
        }
        assert_eq!(flat_use(&dry("Hem-Fir", section(8.0, 6.0)), Property::Bending).value, 1.0);
    }
}

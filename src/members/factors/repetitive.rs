//! `C_r`: joists side by side help each other.
use crate::units::Length;
use crate::working::Citation;

use super::super::Member;
use super::Factor;

/// `C_r` (NDS 4.3.9, from memory): 1.15 on bending of dimension lumber, three or more, at most 24 in apart,
/// joined by something that spreads the load. Never for timbers.
#[must_use]
pub fn repetitive(member: &Member) -> Factor {
    let (value, reason) = match member.conditions.repetitive {
        _ if member.values.size_class.is_timber() => (1.0, "not for timbers"),
        None => (1.0, "each stick by itself"),
        Some(row) if row.count < 3 => (1.0, "fewer than three side by side"),
        Some(row) if row.spacing > Length::inches(24.0) => (1.0, "more than 24 in apart"),
        Some(row) if !row.shares_load => (1.0, "nothing spreads the load among them"),
        Some(_) => (1.15, "three or more share the load, at most 24 in apart"),
    };
    Factor::new("C_r", value, reason, Citation::from_memory("NDS 2018", "4.3.9"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::members::Repetitive;
    use crate::members::test_members::{dry, inches};

    #[test]
    fn only_where_every_condition_holds() {
        let full = Repetitive { count: 3, spacing: Length::inches(24.0), shares_load: true };
        let check = |thick: f64, row, expected: f64| {
            let mut member = dry("Hem-Fir", inches(thick, 8.0));
            member.conditions.repetitive = row;
            assert_eq!(repetitive(&member).value, expected, "{row:?}");
        };
        check(4.0, Some(full), 1.15);
        check(6.0, Some(full), 1.0);
        check(4.0, None, 1.0);
        check(4.0, Some(Repetitive { count: 2, ..full }), 1.0);
        check(4.0, Some(Repetitive { spacing: Length::inches(24.1), ..full }), 1.0);
        check(4.0, Some(Repetitive { shares_load: false, ..full }), 1.0);
    }
}

//! What keeps a deep stick from rolling over, by rule of thumb (NDS 4.4.1.2, from memory).
use crate::units::Length;
use crate::working::{Citation, Step, Worked};

use super::figures::number;
use super::{Member, Refused};

/// What must be held.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Holding {
    /// Nothing.
    Nothing,
    /// The ends, by full-depth blocking or the like.
    Ends,
    /// The pressed edge along its length, and the ends.
    PressedEdge,
    /// The same, with bridging or blocking at most 8 ft apart.
    Bridging,
    /// Both edges along their length.
    BothEdges,
}

impl Holding {
    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Nothing => "nothing need be held",
            Self::Ends => "hold the ends upright with blocks of full depth",
            Self::PressedEdge => "hold the pressed edge along its length, and the ends",
            Self::Bridging => "hold the pressed edge and the ends, with bridging at most 8 ft apart",
            Self::BothEdges => "hold both edges along their length",
        }
    }
}

/// What a bending stick asks for by depth over breadth, as ordered.
///
/// # Errors
/// Over 7 to 1, where the rule has no row.
pub fn holding_needed(member: &Member) -> Result<Worked<Holding>, Refused> {
    let ordered = member.timber.ordered;
    if ordered.breadth <= Length::ZERO {
        return Err(Refused::because("A stick needs a breadth above zero."));
    }
    let ratio = ordered.depth / ordered.breadth;
    let holding = match ratio {
        r if r <= 2.0 => Holding::Nothing,
        r if r <= 4.0 => Holding::Ends,
        r if r <= 5.0 => Holding::PressedEdge,
        r if r <= 6.0 => Holding::Bridging,
        r if r <= 7.0 => Holding::BothEdges,
        _ => {
            return Err(Refused::because(
                "Deeper than seven times its breadth: the rule against rolling over has no row.",
            ));
        }
    };
    let says = format!("d/b = {}: {}", number(ratio), holding.words());
    let step = Step::new("Against rolling over", says, Citation::from_memory("NDS 2018", "4.4.1.2"));
    Ok(Worked::new(holding, vec![step]))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::members::test_members::{dry, inches};

    #[test]
    fn every_row() {
        for (depth, expected) in [
            (4.0, Holding::Nothing),
            (4.1, Holding::Ends),
            (8.0, Holding::Ends),
            (10.0, Holding::PressedEdge),
            (12.0, Holding::Bridging),
            (14.0, Holding::BothEdges),
        ] {
            let found = holding_needed(&dry("Hem-Fir", inches(2.0, depth))).unwrap();
            assert_eq!(found.value, expected, "{depth}");
            assert!(found.steps[0].says.contains(expected.words()));
        }
        assert!(holding_needed(&dry("Hem-Fir", inches(2.0, 14.1))).is_err());
    }
}

//! The part of the frame that a check is about, for what would help it.
use super::check::Check;

/// The part that is asked too much where a check fails.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Part {
    /// No part alone: the loads, the existing wall.
    #[default]
    Whole,
    /// A rafter, or what its seats press on.
    Rafter,
    /// What ties the rafters to the ledger.
    RafterHead,
    /// What ties the rafters to the beam.
    RafterSeat,
    /// A piece of the beam.
    Beam,
    /// A scarf.
    Scarf,
    /// A post, or the posts' sway.
    Post,
    /// The pegs of post heads and braces.
    Pegs,
    /// A post's base, and the foot bored for it.
    PostBase,
    /// Pier and footing.
    Footing,
    /// A brace.
    Brace,
    /// A purlin.
    Purlin,
    /// What fixes the purlins.
    PurlinScrews,
    /// What fixes the sheets, and the sheet at its screws.
    SheetScrews,
    /// The ledger.
    Ledger,
    /// What fixes the ledger.
    LedgerFixings,
}

impl Part {
    /// Those checks, as this part's where they name none themselves.
    pub(super) fn of(self, mut checks: Vec<Check>) -> Vec<Check> {
        checks.iter_mut().filter(|check| check.part == Self::Whole).for_each(|check| check.part = self);
        checks
    }
}

//! Sticks for the tests of this room.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
use crate::materials::{Section, Timber};
use crate::units::Length;

use super::{Conditions, Grade, Member};

pub(super) fn inches(breadth: f64, depth: f64) -> Section {
    Section::new(Length::inches(breadth), Length::inches(depth))
}

/// A dry No.2 stick, sawn full.
pub(super) fn dry(class: &str, section: Section) -> Member {
    Member::listed(class, Grade::No2, Timber::full(section), Conditions::default()).unwrap()
}

/// A wet No.2 stick, sawn full.
pub(super) fn wet(class: &str, section: Section) -> Member {
    let mut member = dry(class, section);
    member.conditions.wet_service = true;
    member
}

//! What a post hands to its foot.
use super::loading::Demand;
use crate::loads::Duration;
use crate::units::Force;

/// Pull and push of one solved case: what holds a foot takes both at once.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct FootForces {
    /// Up off the pier, what weight holds down already taken off; nothing where the foot stands.
    pub up: Force,
    /// Level, along the wall, without a sign.
    pub level: Force,
}

/// The forces of every combination that may govern at one post's foot, all as sizes without a sign.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PostDemands {
    /// The post's number from the left, from 1.
    pub post: usize,
    /// Down on the pier.
    pub down: Vec<Demand<Force>>,
    /// Up off it and level.
    pub feet: Vec<Demand<FootForces>>,
}

impl PostDemands {
    /// The cases that pull at the foot.
    pub fn pulled(&self) -> impl Iterator<Item = &Demand<FootForces>> + Clone {
        self.feet.iter().filter(|one| one.value.up > Force::ZERO)
    }

    /// Of them those with wind or earthquake: snow on one bay may lift a far post as well, but does not lift the roof.
    pub fn lifted(&self) -> impl Iterator<Item = &Demand<FootForces>> + Clone {
        self.pulled().filter(|one| one.duration == Duration::TenMinutes)
    }
}

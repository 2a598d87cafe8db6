//! What a post hands to its foot.
use super::loading::Demand;
use crate::units::Force;

/// The forces of every combination that may govern at one post's foot, all as sizes without a sign.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PostDemands {
    /// The post's number from the left, from 1.
    pub post: usize,
    /// Down on the pier.
    pub down: Vec<Demand<Force>>,
    /// Up off the pier, what weight holds down already taken off.
    pub up: Vec<Demand<Force>>,
    /// Level, along the wall or out from it.
    pub level: Vec<Demand<Force>>,
}

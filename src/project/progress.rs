//! What is already done: marks made, sticks cut, sticks received.
use std::collections::{BTreeMap, BTreeSet};

/// Ticks, kept by the stick's mark.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Progress {
    /// Marks already made on a stick, each by what and where it is: a mark that moves is a mark to be made.
    pub marked: BTreeMap<String, BTreeSet<String>>,
    /// Sticks that are cut, each with the layout it was cut to.
    pub cut: BTreeMap<String, String>,
    /// Lines of the order that came off the truck, by section, length and number.
    pub received: BTreeSet<String>,
}

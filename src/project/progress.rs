//! What is already done: marks made, sticks cut, sticks received.
use std::collections::{BTreeMap, BTreeSet};

use crate::materials::Face;
use crate::units::Length;

/// A knot on a face of the rough stick, as it lies on the horses.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Knot {
    /// The face it is seen on, by the faces of the sheet.
    pub face: Face,
    /// Its middle, from the stick's zero as it lies now.
    pub from_zero: Length,
    /// Its middle across the face, from the edge that is drawn uppermost.
    pub across: Length,
    /// How wide it is.
    pub size: Length,
}

/// The size of a real stick at one place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeasuredSize {
    /// From the stick's zero.
    pub from_zero: Length,
    /// Breadth, as of its section.
    pub breadth: Length,
    /// Depth, as of its section.
    pub depth: Length,
}

/// Ticks, kept by the stick's mark.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Progress {
    /// Marks already made on a stick, each by what and where it is: a mark that moves is a mark to be made.
    pub marked: BTreeMap<String, BTreeSet<String>>,
    /// Sticks that are cut, each with the layout it was cut to.
    pub cut: BTreeMap<String, String>,
    /// Knots found, by the stick's mark.
    pub knots: BTreeMap<String, Vec<Knot>>,
    /// Sizes measured along a stick, by its mark.
    pub sizes: BTreeMap<String, Vec<MeasuredSize>>,
    /// How much longer than drawn the beam came out over a scarf in the dry fit, by the scarf's number; shorter below zero.
    pub dry_fits: BTreeMap<String, Length>,
    /// Lines of the order that came off the truck, by section, length and number.
    pub received: BTreeSet<String>,
}

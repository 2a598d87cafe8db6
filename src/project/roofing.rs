//! The ribbed metal roof and the purlins under it.
use crate::units::Length;

/// How the sheets share out the roof's width.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SheetLayout {
    /// Whole sheets from the left, the last one ripped.
    FromLeft,
    /// Whole sheets from the right, the first one ripped.
    FromRight,
    /// The first and the last ripped alike.
    EqualRips,
}

/// The sheets' metal.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Metal {
    /// Ribbed steel, 29 gauge.
    Ribbed29,
    /// Ribbed steel, 26 gauge.
    Ribbed26,
    /// Standing-seam steel, 24 gauge.
    StandingSeam24,
}

/// Sheets and purlins.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Roofing {
    /// Width one sheet covers.
    pub cover: Length,
    /// Height of its ribs.
    pub rib: Length,
    /// Longest sheet that can be brought.
    pub longest_sheet: Length,
    /// Past the rafter tails, along the slope.
    pub eave_overhang: Length,
    /// Rafter heads to the top of the sheets, along the slope.
    pub top_gap: Length,
    /// Purlins past the outer faces of the outer rafters.
    pub rake: Length,
    /// Widest purlin spacing, centre to centre.
    pub purlin_spacing: Length,
    /// Tail end to the lower edge of the first purlin, along the top edge.
    pub first_purlin: Length,
    /// Rafter head to the upper edge of the last purlin, along the top edge.
    pub last_purlin: Length,
    /// How the sheets share out the width.
    pub layout: SheetLayout,
    /// What they are made of.
    pub metal: Metal,
    /// Nothing at the eave holds the snow: no gutter lip or guard, and room below for it to fall.
    pub eave_clear: bool,
}

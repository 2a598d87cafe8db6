//! What the sawmill has, what it asks, and what the crew can lift.
use super::LongPrice;
use crate::materials::Section;
use crate::units::{Length, Money, UnitSystem, Weight};

/// A price that departs from the mill's general one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SectionPrice {
    /// Section as ordered.
    pub section: Section,
    /// Price of a board foot.
    pub per_board_foot: Money,
}

/// The sawmill, as far as the first order needs it.
#[derive(Clone, Debug, PartialEq)]
pub struct Mill {
    /// Lengths it offers, in any order.
    pub lengths: Vec<Length>,
    /// Docked from each end before the first mark.
    pub trim_each_end: Length,
    /// Width of the saw's cut, counted when short sticks come out of one long one.
    pub kerf: Length,
    /// Price of a board foot.
    pub per_board_foot: Money,
    /// Sections with a price of their own.
    pub section_prices: Vec<SectionPrice>,
    /// What long sticks cost more.
    pub long_prices: Vec<LongPrice>,
    /// What sticks free of heart cost more, as a share of their price.
    pub free_of_heart_more: f64,
    /// Heaviest single stick the crew can put up.
    pub heaviest_pick: Weight,
}

/// Rounding that a sum of lengths may carry: a stick exactly as long as its stock fits.
pub const HAIR: Length = Length::inches(0.001);

/// Lengths mills commonly saw to (common practice): 6 to 24 ft by two, 2.4 to 7.2 m by 0.6.
#[must_use]
pub fn usual_lengths(units: UnitSystem) -> Vec<Length> {
    match units {
        UnitSystem::Imperial => (3..=12).map(|pair| Length::feet(2.0 * f64::from(pair))).collect(),
        UnitSystem::Metric => (4..=12).map(|half| Length::millimetres(600.0 * f64::from(half))).collect(),
    }
}

/// The shortest of the lengths that holds so much.
#[must_use]
pub fn shortest_holding(stock: &[Length], needed: Length) -> Option<Length> {
    stock.iter().copied().filter(|offered| *offered + HAIR >= needed).reduce(Length::min)
}

impl Mill {
    /// The shortest length offered that a finished stick of length `net` comes out of, docked at both ends.
    #[must_use]
    pub fn stock_for(&self, net: Length) -> Option<Length> {
        self.stock_without_trim(net + self.trim_each_end * 2.0)
    }

    /// The shortest length offered that a stick of length `net` comes out of undocked, as purlins do.
    #[must_use]
    pub fn stock_without_trim(&self, net: Length) -> Option<Length> {
        shortest_holding(&self.lengths, net)
    }

    /// The longest length offered.
    #[must_use]
    pub fn longest(&self) -> Length {
        self.lengths.iter().copied().fold(Length::ZERO, Length::max)
    }

    /// Price of a board foot of that section.
    #[must_use]
    pub fn price_of(&self, section: Section) -> Money {
        let special = self.section_prices.iter().find(|price| price.section == section);
        special.map_or(self.per_board_foot, |price| price.per_board_foot)
    }
}

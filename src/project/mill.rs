//! What the sawmill has, what it asks, and what the crew can lift.
use super::{Heart, LongPrice};
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

/// A length of one section of which the mill has only so many.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LengthLimit {
    /// Section as ordered.
    pub section: Section,
    /// Length.
    pub length: Length,
    /// How many there are.
    pub count: usize,
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
    /// Lengths of which there are only so many; as many as wanted where nothing is said.
    pub limits: Vec<LengthLimit>,
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

/// Lengths of the mill closer than this are the same.
pub const SAME_LENGTH: Length = Length::inches(0.05);

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

    /// What a board foot of a stick so long costs beside the common price: of all prices of long sticks, the one that
    /// begins last below its length.
    #[must_use]
    pub fn long_more(&self, length: Length) -> Money {
        let reached = self.long_prices.iter().filter(|price| length > price.over + HAIR);
        let last = reached.max_by(|a, b| a.over.to_inches().total_cmp(&b.over.to_inches()));
        last.map_or(Money::ZERO, |price| price.more)
    }

    /// Price of a board foot of a stick of that section and length, heart as it falls.
    #[must_use]
    pub fn rate_of(&self, section: Section, length: Length) -> Money {
        self.price_of(section) + self.long_more(length)
    }

    /// Price of so many sticks: board feet × the price for section and length, more where they are free of heart; to the cent
    /// once for all of them.
    #[must_use]
    pub fn price_of_sticks(&self, section: Section, length: Length, heart: Heart, count: usize) -> Money {
        let more = if heart == Heart::Free { self.free_of_heart_more } else { 0.0 };
        let volume = section.area() * length * count as f64;
        self.rate_of(section, length) * (volume.to_board_feet() * (1.0 + more))
    }

    /// How many sticks of that section and length there are, where that is known.
    #[must_use]
    pub fn limit_of(&self, section: Section, length: Length) -> Option<usize> {
        let of_it = |limit: &&LengthLimit| limit.section == section && limit.length.is_near(length, SAME_LENGTH);
        self.limits.iter().filter(of_it).map(|limit| limit.count).min()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::demo;

    /// 8x8 of 8 ft is 42⅔ board feet. At 1.40: 59.73; free of heart at 30 % more: 77.65. Two of 16 ft at 1.40 + 0.20 over
    /// 14 ft: 170⅔ board feet × 1.60 = 273.07; over 16 ft is not reached by a stick of 16 ft.
    #[test]
    fn prices_by_section_length_and_heart() {
        let section = Section::new(Length::inches(8.0), Length::inches(8.0));
        let mut mill = demo::wool_barn().mill;
        let price = |mill: &Mill, feet, heart, count| mill.price_of_sticks(section, Length::feet(feet), heart, count);
        assert_eq!(price(&mill, 8.0, Heart::Boxed, 1), Money::of(59.73));
        assert_eq!(price(&mill, 8.0, Heart::Free, 1), Money::of(77.65));
        let long = |feet, more| LongPrice { over: Length::feet(feet), more: Money::of(more) };
        mill.long_prices = vec![long(16.0, 0.5), long(14.0, 0.2)];
        assert_eq!(price(&mill, 14.0, Heart::Either, 2), Money::of(209.07));
        assert_eq!(price(&mill, 16.0, Heart::Either, 2), Money::of(273.07));
        assert_eq!(price(&mill, 18.0, Heart::Either, 1), Money::of(182.4));
        mill.section_prices.push(SectionPrice { section, per_board_foot: Money::of(2.0) });
        assert_eq!(price(&mill, 16.0, Heart::Free, 1), Money::of(244.05));
    }

    #[test]
    fn a_limit_is_of_one_section_and_length() {
        let (post, beam) = (Length::inches(8.0), Length::inches(10.0));
        let mut mill = demo::wool_barn().mill;
        let limit = |count| LengthLimit { section: Section::new(post, beam), length: Length::feet(16.0), count };
        mill.limits = vec![limit(4), limit(3)];
        assert_eq!(mill.limit_of(Section::new(post, beam), Length::millimetres(4876.8)), Some(3));
        assert_eq!(mill.limit_of(Section::new(post, beam), Length::feet(14.0)), None);
        assert_eq!(mill.limit_of(Section::new(post, post), Length::feet(16.0)), None);
    }
}

//! What each length of the mill counts for beside the others, in whole numbers as small as they go.
use crate::materials::Section;
use crate::project::{Mill, SAME_LENGTH};
use crate::units::Length;

/// A length of the mill for one section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Offer {
    pub length: Length,
    /// What one counts for: its price in some unit, its length where the section has no price.
    pub cost: i64,
    /// How many are left; as many as wanted where nothing is said.
    pub count: Option<usize>,
}

/// Largest number that `nest` takes for a price.
const MOST: f64 = 1e9;

/// The mill's lengths for a section, in the mill's order. Heart and area are the same for all of them and left out.
pub(super) fn offers(mill: &Mill, section: Section) -> Vec<Offer> {
    let mut offered: Vec<Length> = Vec::new();
    for length in &mill.lengths {
        if !offered.iter().any(|known| known.is_near(*length, SAME_LENGTH)) {
            offered.push(*length);
        }
    }
    let rates: Vec<i64> = offered.iter().map(|length| mill.rate_of(section, *length).to_cents().max(0)).collect();
    let lengths: Vec<i64> = offered.iter().map(|length| (length.to_millimetres() * 1e3).round() as i64).collect();
    let rate_step = rates.iter().copied().fold(0, gcd);
    let length_step = lengths.iter().copied().fold(0, gcd).max(1);
    // Among lengths that cost nothing the wood decides; beside lengths with a price it counts for next to nothing.
    let some_free = rates.contains(&0);
    let rate = |cents: i64| match rate_step {
        0 => 1.0,
        step if some_free => ((cents / step) as f64 * 1000.0).max(1.0),
        step => (cents / step) as f64,
    };
    let raw = |place: usize| (lengths[place] / length_step) as f64 * rate(rates[place]);
    let most = (0..lengths.len()).map(raw).fold(0.0, f64::max);
    let shrink = (most / MOST).max(1.0);
    let offer = |(place, length): (usize, &Length)| {
        let cost = ((raw(place) / shrink).round() as i64).max(1);
        Offer { length: *length, cost, count: mill.limit_of(section, *length) }
    };
    offered.iter().enumerate().map(offer).collect()
}

/// Without the lengths that a longer one, always to be had, undersells; the others, shortest first, cost ever more.
pub(super) fn worth_buying(offers: &[Offer]) -> Vec<Offer> {
    let undersold = |offer: &Offer| offers.iter().any(|other| other.length > offer.length && other.cost < offer.cost);
    offers.iter().filter(|offer| !undersold(offer)).copied().collect()
}

fn gcd(a: i64, b: i64) -> i64 {
    if b == 0 { a } else { gcd(b, a % b) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::{LongPrice, demo};
    use crate::units::Money;

    fn check(change: impl Fn(&mut Mill), expected: &[i64]) {
        let mut mill = Mill { lengths: [8.0, 10.0, 16.0].map(Length::feet).to_vec(), ..demo::wool_barn().mill };
        change(&mut mill);
        let section = Section::new(Length::inches(4.0), Length::inches(8.0));
        assert_eq!(offers(&mill, section).iter().map(|offer| offer.cost).collect::<Vec<_>>(), expected);
    }

    /// Feet in twos, cents in their common step: 1.40 alone is one; 1.40 and 1.60 are seven and eight.
    #[test]
    fn costs_are_in_proportion() {
        let long = |more| vec![LongPrice { over: Length::feet(10.0), more: Money::of(more) }];
        check(|_| (), &[4, 5, 8]);
        check(|mill| mill.per_board_foot = Money::ZERO, &[4, 5, 8]);
        check(|mill| mill.long_prices = long(0.2), &[28, 35, 64]);
        let free = |mill: &mut Mill| (mill.per_board_foot, mill.long_prices) = (Money::ZERO, long(0.2));
        check(free, &[4, 5, 8000]);
        check(|mill| mill.per_board_foot = Money::of(9e9), &[4, 5, 8]);
    }

    #[test]
    fn a_longer_one_that_costs_less_is_bought_instead() {
        let offer = |feet, cost| Offer { length: Length::feet(feet), cost, count: None };
        let kept = worth_buying(&[offer(8.0, 9), offer(10.0, 7), offer(12.0, 8), offer(14.0, 8)]);
        assert_eq!(kept, [offer(10.0, 7), offer(12.0, 8), offer(14.0, 8)]);
    }
}

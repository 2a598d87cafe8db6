//! Whether a packing takes the least wood there can be, and one that does where it does not.
//!
//! A board foot of one section has one price, so that of its packings the one with the least length of stock is the
//! cheapest. The packing by eye is kept where nothing is cheaper: it is the one a sawyer expects.
use super::nest::{Aim, Offered, Task, Unplaced, Wanted, nest_watched};
use super::stock::{Bar, pack, part};
use crate::project::HAIR;
use crate::units::{Length, Money};

/// Steps of work for one section: a millisecond or so, since every edit waits for it.
const MOST_WORK: u64 = 12_000;

/// A packing and what is known of the least.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Least {
    pub bars: Vec<Bar>,
    pub unplaced: Vec<(String, Length)>,
    /// No packing takes less stock than this, end to end.
    pub bound: Length,
}

/// Packs sticks, each with its length (allowance included), into stock with as little stock as is known to do.
pub(super) fn least(wanted: &[(String, Length)], stock: &[Length], kerf: Length) -> Least {
    let (bars, unplaced) = pack(wanted, stock, kerf);
    let all = total(&bars);
    let placed: Vec<&(String, Length)> =
        wanted.iter().filter(|(mark, _)| unplaced.iter().all(|(missing, _)| missing != mark)).collect();
    if is_one_a_bar(&placed, stock, kerf) {
        return Least { bars, unplaced, bound: all };
    }
    let task = Task {
        kerf,
        trim: Length::ZERO,
        sticks: placed.iter().map(|(mark, length)| Wanted { mark: mark.clone(), length: *length, count: 1 }).collect(),
        // The price is the length itself, in thousandths of a millimetre.
        stock: stock
            .iter()
            .map(|length| Offered { length: *length + HAIR, price: Money::cents(thousandths(*length)), count: None })
            .collect(),
        aim: Aim::LeastCost,
    };
    let Ok(plan) = nest_watched(&task, MOST_WORK, &mut |_| true) else {
        let wood = placed.iter().map(|(_, length)| *length).sum();
        return Least { bars, unplaced, bound: wood };
    };
    let bound = Length::millimetres(plan.bound.to_cents() as f64 / 1000.0);
    if plan.cost.to_cents() >= thousandths(all) || plan.unplaced.iter().any(|(_, why)| *why == Unplaced::NoneLeft) {
        return Least { bars, unplaced, bound: bound.min(all) };
    }
    let length_of = |place: &usize| placed[*place].1;
    let cut = plan.bars.iter().map(|bar| {
        let length = stock[bar.stock];
        let used: Length = bar.sticks.iter().map(length_of).sum();
        let cuts = kerf * bar.sticks.len().saturating_sub(1) as f64;
        let sticks = bar.sticks.iter().map(|place| placed[*place].0.clone()).collect();
        Bar { length, sticks, left: length - used - cuts }
    });
    let known = |mark: &str| placed.iter().find(|(known, _)| known == mark).map_or(Length::ZERO, |(_, length)| *length);
    let bars: Vec<Bar> = cut.flat_map(|bar| part(bar, stock, known)).collect();
    let bound = bound.min(total(&bars));
    Least { bars, unplaced, bound }
}

fn total(bars: &[Bar]) -> Length {
    bars.iter().map(|bar| bar.length).sum()
}

fn thousandths(length: Length) -> i64 {
    (length.to_millimetres() * 1000.0).round() as i64
}

/// The two shortest do not go into the longest stock together: each stick has its own, and no packing is better.
fn is_one_a_bar(placed: &[&(String, Length)], stock: &[Length], kerf: Length) -> bool {
    let longest = stock.iter().copied().fold(Length::ZERO, Length::max);
    let mut lengths: Vec<f64> = placed.iter().map(|(_, length)| length.to_inches()).collect();
    lengths.sort_unstable_by(f64::total_cmp);
    match lengths[..] {
        [first, second, ..] => Length::inches(first + second) + kerf > longest + HAIR,
        _ => true,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(wanted: &[(f64, usize)], stock_ft: &[f64], by_eye_ft: f64, least_ft: f64) {
        let wanted: Vec<(String, Length)> = wanted
            .iter()
            .flat_map(|(length, count)| (0..*count).map(move |n| (format!("{length}-{n}"), Length::inches(*length))))
            .collect();
        let stock: Vec<Length> = stock_ft.iter().map(|feet| Length::feet(*feet)).collect();
        let kerf = Length::inches(0.25);
        assert!(total(&pack(&wanted, &stock, kerf).0).is_near(Length::feet(by_eye_ft), HAIR));
        let found = least(&wanted, &stock, kerf);
        assert!(total(&found.bars).is_near(Length::feet(least_ft), HAIR), "{}", total(&found.bars).to_feet());
        assert!(found.bound.is_near(Length::feet(least_ft), HAIR), "{}", found.bound.to_feet());
        let mut marks: Vec<&String> = found.bars.iter().flat_map(|bar| &bar.sticks).collect();
        marks.sort();
        marks.dedup();
        assert_eq!(marks.len(), wanted.len());
        assert!(found.bars.iter().all(|bar| bar.left + HAIR >= Length::ZERO));
    }

    #[test]
    fn the_packing_by_eye_is_kept_or_beaten() {
        // One a bar, and three a bar, by eye: nothing better.
        check(&[(150.0, 2)], &[8.0, 14.0, 16.0], 28.0, 28.0);
        check(&[(60.0, 6)], &[8.0, 16.0], 32.0, 32.0);
        // Longest first puts 80 + 75 and 70 + 60 + 51 1/2 together and opens a third for 46 1/2; 80 + 60 + 51 1/2 and
        // 75 + 70 + 46 1/2 are both 191 1/2, with two cuts 192.
        check(&[(80.0, 1), (75.0, 1), (70.0, 1), (60.0, 1), (51.5, 1), (46.5, 1)], &[16.0], 48.0, 32.0);
    }
}

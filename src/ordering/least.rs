//! Whether a packing is the best there can be, and one that is where it is not.
//!
//! A packing by eye, for the least wood, is kept where nothing is cheaper: it is the one a sawyer expects. Where the mill has only
//! so many of a length, the packing without that limit is kept if it stays within it, for a limit makes nothing cheaper.
use super::limited::limited;
use super::nest::{Aim, CutBar, Offered, Plan, Task, Wanted, nest_watched};
use super::offers::{Offer, worth_buying};
use super::stock::{Bar, pack, part};
use crate::project::{HAIR, OrderAim, shortest_holding};
use crate::units::{Length, Money};

/// Steps of work for one group of sticks: a millisecond or so, since every edit waits for it.
const MOST_WORK: u64 = 12_000;

/// Sticks that may come out of the same stock, and that stock.
pub(super) struct Wish<'a> {
    /// Each with its length, allowance included.
    pub wanted: &'a [(String, Length)],
    pub offers: &'a [Offer],
    pub kerf: Length,
    pub aim: OrderAim,
    /// No other group takes of the same stock.
    pub is_alone: bool,
}

/// A packing and what is known of the best.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Least {
    pub bars: Vec<Bar>,
    /// Longer than any length.
    pub unplaced: Vec<(String, Length)>,
    /// All that is long enough is used up.
    pub lacking: Vec<(String, Length)>,
    /// No packing that meets the aim as well counts less.
    pub bound: i64,
    /// No packing has fewer bars.
    pub least_bars: usize,
    /// Nothing meets the aim better.
    pub is_proven: bool,
}

/// Packs sticks into stock as the aim asks, as well as is known to do.
pub(super) fn least(wish: &Wish<'_>) -> Least {
    let open: Vec<Offer> = wish.offers.iter().map(|offer| Offer { count: None, ..*offer }).collect();
    let unlimited = Wish { offers: &open, ..*wish };
    let free = match wish.aim {
        OrderAim::LeastCost => cheapest(&unlimited),
        OrderAim::FewestSticks => fewest(&unlimited),
        OrderAim::LightestSticks => one_each(&unlimited),
    };
    let is_within = |offer: &Offer| offer.count.is_none_or(|count| n_of(&free.bars, offer) <= count);
    if wish.offers.iter().all(is_within) { free } else { limited(wish, free) }
}

/// The least price.
fn cheapest(wish: &Wish<'_>) -> Least {
    let stock = worth_buying(wish.offers);
    let lengths: Vec<Length> = stock.iter().map(|offer| offer.length).collect();
    let (by_eye, unplaced) = pack(wish.wanted, &lengths, wish.kerf);
    let bars = one_by_one(wish, by_eye, &lengths);
    let cost = cost_of(&bars, wish.offers);
    let proven = |bars: Vec<Bar>, unplaced: Vec<(String, Length)>, bound| {
        let least_bars = fractional(wish, &unplaced);
        let is_proven = cost_of(&bars, wish.offers) <= bound;
        Least { bars, unplaced, lacking: Vec::new(), bound, least_bars, is_proven }
    };
    let placed = placed(wish, &unplaced);
    if is_one_a_bar(&placed, &lengths, wish.kerf) {
        let least_bars = bars.len();
        return Least { least_bars, ..proven(bars, unplaced, cost) };
    }
    let Some(plan) = planned(wish, &placed, &stock, Aim::LeastCost) else {
        return proven(bars, unplaced, 0);
    };
    let bound = plan.bound.to_cents();
    if plan.cost.to_cents() >= cost || !plan.unplaced.is_empty() {
        return proven(bars, unplaced, bound.min(cost));
    }
    let bars = one_by_one(wish, cut(&plan, &placed, &stock, wish.kerf), &lengths);
    proven(bars, unplaced, bound)
}

/// The fewest bars; among those the least price known.
fn fewest(wish: &Wish<'_>) -> Least {
    let cheap = cheapest(wish);
    if cheap.bars.len() <= cheap.least_bars {
        return Least { is_proven: true, ..cheap };
    }
    let placed = placed(wish, &cheap.unplaced);
    let Some(plan) = planned(wish, &placed, wish.offers, Aim::FewestBars) else {
        return Least { is_proven: false, ..cheap };
    };
    let least_bars = if plan.is_proven { plan.bars.len() } else { cheap.least_bars };
    let known = (cheap.bars.len(), cost_of(&cheap.bars, wish.offers));
    let is_better = plan.unplaced.is_empty() && (plan.bars.len(), plan.cost.to_cents()) < known;
    let bars = if is_better { cut(&plan, &placed, wish.offers, wish.kerf) } else { cheap.bars };
    let is_proven = bars.len() <= least_bars;
    // A plan proven in both counts for its own bound; one proven in bars alone may be dearer than it need be.
    let bound = if plan.is_proven { cost_of(&bars, wish.offers) } else { cheap.bound };
    Least { bars, bound, least_bars, is_proven, ..cheap }
}

/// Each stick alone in the shortest length that holds it: nothing lighter holds it.
fn one_each(wish: &Wish<'_>) -> Least {
    let lengths: Vec<Length> = wish.offers.iter().map(|offer| offer.length).collect();
    let (mut bars, mut unplaced) = (Vec::new(), Vec::new());
    for (mark, needed) in wish.wanted {
        match shortest_holding(&lengths, *needed) {
            Some(length) => bars.push(Bar { length, sticks: vec![mark.clone()], left: length - *needed }),
            None => unplaced.push((mark.clone(), *needed)),
        }
    }
    let bound = cost_of(&bars, wish.offers);
    Least { least_bars: fractional(wish, &unplaced), bars, unplaced, lacking: Vec::new(), bound, is_proven: true }
}

/// The sticks that some length holds.
pub(super) fn placed<'a>(wish: &Wish<'a>, unplaced: &[(String, Length)]) -> Vec<&'a (String, Length)> {
    wish.wanted.iter().filter(|(mark, _)| unplaced.iter().all(|(missing, _)| missing != mark)).collect()
}

/// A plan for those sticks; none where there are too many of them.
pub(super) fn planned(wish: &Wish<'_>, placed: &[&(String, Length)], stock: &[Offer], aim: Aim) -> Option<Plan> {
    let task = Task {
        kerf: wish.kerf,
        trim: Length::ZERO,
        sticks: placed.iter().map(|(mark, length)| Wanted { mark: mark.clone(), length: *length, count: 1 }).collect(),
        stock: stock
            .iter()
            .map(|offer| {
                let count = offer.count.map(|count| u32::try_from(count).unwrap_or(u32::MAX));
                Offered { length: offer.length + HAIR, price: Money::cents(offer.cost), count }
            })
            .collect(),
        aim,
    };
    nest_watched(&task, MOST_WORK, &mut |_| true).ok()
}

/// The bars of a plan.
pub(super) fn cut(plan: &Plan, placed: &[&(String, Length)], stock: &[Offer], kerf: Length) -> Vec<Bar> {
    let bar = |bar: &CutBar| {
        let length = stock[bar.stock].length;
        let used: Length = bar.sticks.iter().map(|place| placed[*place].1).sum();
        let cuts = kerf * bar.sticks.len().saturating_sub(1) as f64;
        let sticks = bar.sticks.iter().map(|place| placed[*place].0.clone()).collect();
        Bar { length, sticks, left: length - used - cuts }
    };
    plan.bars.iter().map(bar).collect()
}

/// Sticks that cost no more one by one come one by one: they are lighter to haul.
fn one_by_one(wish: &Wish<'_>, bars: Vec<Bar>, lengths: &[Length]) -> Vec<Bar> {
    let of = |mark: &str| wish.wanted.iter().find(|(known, _)| known == mark).map_or(Length::ZERO, |known| known.1);
    if bars.iter().all(|bar| bar.sticks.len() == 1) {
        return bars;
    }
    bars.into_iter().flat_map(|bar| part(bar, lengths, of, |length| cost(length, wish.offers))).collect()
}

/// What a length counts for.
fn cost(length: Length, offers: &[Offer]) -> i64 {
    offers.iter().filter(|offer| offer.length == length).map(|offer| offer.cost).min().unwrap_or(0)
}

pub(super) fn cost_of(bars: &[Bar], offers: &[Offer]) -> i64 {
    bars.iter().map(|bar| cost(bar.length, offers)).sum()
}

/// How many of the bars are of that length.
pub(super) fn n_of(bars: &[Bar], offer: &Offer) -> usize {
    bars.iter().filter(|bar| bar.length == offer.length).count()
}

/// Fewer bars than this do not hold the sticks, were they cut in any parts: each takes its length and one cut.
fn fractional(wish: &Wish<'_>, unplaced: &[(String, Length)]) -> usize {
    let longest = wish.offers.iter().map(|offer| offer.length).fold(Length::ZERO, Length::max);
    let all: Length = placed(wish, unplaced).iter().map(|(_, length)| *length + wish.kerf).sum();
    (all / (longest + wish.kerf + HAIR) - 1e-9).ceil().max(0.0) as usize
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

    const KERF: Length = Length::inches(0.25);

    fn sticks(wanted: &[(f64, usize)]) -> Vec<(String, Length)> {
        let each = |(length, count): &(f64, usize)| {
            let length = *length;
            (0..*count).map(move |n| (format!("{length}-{n}"), Length::inches(length)))
        };
        wanted.iter().flat_map(each).collect()
    }

    /// Lengths in feet, what each counts for, and how many there are.
    fn stock(all: &[(f64, i64, Option<usize>)]) -> Vec<Offer> {
        all.iter()
            .map(|(feet, cost, count)| Offer { length: Length::feet(*feet), cost: *cost, count: *count })
            .collect()
    }

    fn found(wanted: &[(String, Length)], offers: &[Offer], aim: OrderAim) -> Least {
        let found = least(&Wish { wanted, offers, kerf: KERF, aim, is_alone: true });
        let held = found.bars.iter().flat_map(|bar| &bar.sticks);
        let out = found.unplaced.iter().chain(&found.lacking).map(|(mark, _)| mark);
        let mut marks: Vec<&String> = held.chain(out).collect();
        marks.sort();
        marks.dedup();
        assert_eq!(marks.len(), wanted.len());
        assert!(found.bars.iter().all(|bar| bar.left + HAIR >= Length::ZERO));
        found
    }

    fn feet(found: &Least) -> Vec<f64> {
        let mut all: Vec<f64> = found.bars.iter().map(|bar| bar.length.to_feet()).collect();
        all.sort_unstable_by(f64::total_cmp);
        all
    }

    fn check(wanted: &[(f64, usize)], stock_ft: &[f64], by_eye_ft: f64, least_ft: f64) {
        let wanted = sticks(wanted);
        let offers: Vec<Offer> = stock(&stock_ft.iter().map(|feet| (*feet, *feet as i64, None)).collect::<Vec<_>>());
        let lengths: Vec<Length> = offers.iter().map(|offer| offer.length).collect();
        let by_eye: Length = pack(&wanted, &lengths, KERF).0.iter().map(|bar| bar.length).sum();
        assert!(by_eye.is_near(Length::feet(by_eye_ft), HAIR));
        let found = found(&wanted, &offers, OrderAim::LeastCost);
        assert_eq!(feet(&found).iter().sum::<f64>(), least_ft);
        assert!(found.is_proven && found.bound == least_ft as i64, "{}", found.bound);
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

    /// Four sticks of 7 ft: two 16s at 2 a foot would be 64, four 8s at 1 a foot are 32. Where long stock costs no more a foot,
    /// four 8s are as cheap as two 16s and lighter; the fewest are the two 16s.
    #[test]
    fn long_prices_part_what_would_share() {
        let wanted = sticks(&[(84.0, 4)]);
        let dear = stock(&[(8.0, 8, None), (16.0, 32, None)]);
        let even = stock(&[(8.0, 8, None), (16.0, 16, None)]);
        assert_eq!(feet(&found(&wanted, &dear, OrderAim::LeastCost)), [8.0; 4]);
        assert_eq!(feet(&found(&wanted, &even, OrderAim::LeastCost)), [8.0; 4]);
        let few = found(&wanted, &dear, OrderAim::FewestSticks);
        assert_eq!((feet(&few), few.is_proven), (vec![16.0, 16.0], true));
    }

    /// Three sticks of 5 ft: one 16 holds them; 10 and 8, at 1 a foot, cost 18; each alone takes an 8, and none is lighter.
    #[test]
    fn the_lightest_are_one_by_one() {
        let wanted = sticks(&[(60.0, 3)]);
        let offers = stock(&[(16.0, 16, None), (8.0, 8, None), (10.0, 10, None)]);
        assert_eq!(feet(&found(&wanted, &offers, OrderAim::LeastCost)), [16.0]);
        let light = found(&wanted, &offers, OrderAim::LightestSticks);
        assert_eq!((feet(&light), light.is_proven), (vec![8.0; 3], true));
        let two = stock(&[(16.0, 16, None), (8.0, 8, Some(2)), (10.0, 10, None)]);
        let light = found(&wanted, &two, OrderAim::LightestSticks);
        assert_eq!((feet(&light), light.is_proven), (vec![8.0, 8.0, 10.0], false));
    }

    /// Four of 13 ft 4 in, and only one 14: the others take 16s. With two 16s beside it one stays without. A limit that is
    /// not reached changes nothing.
    #[test]
    fn so_many_and_no_more() {
        let wanted = sticks(&[(160.0, 4)]);
        let limited = |fourteens, sixteens| stock(&[(14.0, 14, fourteens), (16.0, 16, sixteens)]);
        let one = found(&wanted, &limited(Some(1), None), OrderAim::LeastCost);
        assert_eq!((feet(&one), one.is_proven, one.bound), (vec![14.0, 16.0, 16.0, 16.0], true, 62));
        for aim in OrderAim::ALL {
            let short = found(&wanted, &limited(Some(1), Some(2)), aim);
            assert_eq!((feet(&short), short.lacking.len()), (vec![14.0, 16.0, 16.0], 1), "{aim:?}");
        }
        let many = found(&wanted, &limited(Some(4), Some(0)), OrderAim::LeastCost);
        assert_eq!(many, found(&wanted, &limited(None, None), OrderAim::LeastCost));
        let none = found(&wanted, &limited(Some(0), Some(0)), OrderAim::LeastCost);
        assert_eq!((none.bars.len(), none.lacking.len()), (0, 4));
    }
}

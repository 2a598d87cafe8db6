//! The packing where the mill has only so many of a length.
use super::least::{Least, Wish, cost_of, cut, n_of, placed, planned};
use super::nest::Aim;
use super::offers::Offer;
use super::stock::Bar;
use crate::project::{HAIR, OrderAim};
use crate::units::{Length, sort_by_number};

/// Packs into what there is; `free` is the packing without limits, which no other meets the aim better than.
pub(super) fn limited(wish: &Wish<'_>, free: Least) -> Least {
    let sticks = placed(wish, &free.unplaced);
    let aim = match wish.aim {
        OrderAim::LeastCost => Aim::LeastCost,
        OrderAim::FewestSticks => Aim::FewestBars,
        OrderAim::LightestSticks => {
            let light = one_each(wish, &sticks, &free);
            if light.lacking.is_empty() {
                return light;
            }
            Aim::ShortestBars
        }
    };
    let Some(plan) = planned(wish, &sticks, wish.offers, aim) else { return cropped(wish, free) };
    let bars = cut(&plan, &sticks, wish.offers, wish.kerf);
    let lacking: Vec<(String, Length)> = plan.unplaced.iter().map(|(place, _)| sticks[*place].clone()).collect();
    let cost = cost_of(&bars, wish.offers);
    let is_free_met = lacking.is_empty()
        && match wish.aim {
            OrderAim::LeastCost => cost <= free.bound,
            OrderAim::FewestSticks => bars.len() <= free.least_bars,
            OrderAim::LightestSticks => false,
        };
    // Groups that take of the same stock are packed one after the other: a plan for one alone proves nothing of both.
    let is_proven = is_free_met || (wish.is_alone && plan.is_proven && wish.aim != OrderAim::LightestSticks);
    let bound = match wish.aim {
        _ if is_proven => cost,
        OrderAim::LeastCost if wish.is_alone => {
            plan.bound.to_cents().max(if lacking.is_empty() { free.bound } else { 0 })
        }
        _ if lacking.is_empty() => free.bound,
        _ => 0,
    };
    let least_bars = if is_proven && wish.aim == OrderAim::FewestSticks { bars.len() } else { free.least_bars };
    Least { bars, unplaced: free.unplaced, lacking, bound: bound.min(cost), least_bars, is_proven }
}

/// Each stick alone, the longest first, in the shortest length that holds it and is left. As many are placed as can be one by
/// one: a length that holds a stick holds every shorter one.
fn one_each(wish: &Wish<'_>, sticks: &[&(String, Length)], free: &Least) -> Least {
    let mut left: Vec<Offer> = wish.offers.to_vec();
    sort_by_number(&mut left, |offer| offer.length.to_inches());
    let mut order = sticks.to_vec();
    sort_by_number(&mut order, |stick| -stick.1.to_inches());
    let (mut bars, mut lacking) = (Vec::new(), Vec::new());
    for (mark, needed) in order {
        let fits = |offer: &&mut Offer| offer.length + HAIR >= *needed && offer.count != Some(0);
        match left.iter_mut().find(fits) {
            Some(offer) => {
                offer.count = offer.count.map(|count| count - 1);
                bars.push(Bar { length: offer.length, sticks: vec![mark.clone()], left: offer.length - *needed });
            }
            None => lacking.push((mark.clone(), *needed)),
        }
    }
    Least { bars, lacking, is_proven: false, ..free.clone() }
}

/// The packing without limits, less the bars there are not.
fn cropped(wish: &Wish<'_>, free: Least) -> Least {
    let (mut bars, mut lacking): (Vec<Bar>, Vec<(String, Length)>) = (Vec::new(), Vec::new());
    for bar in free.bars {
        let offer = wish.offers.iter().find(|offer| offer.length == bar.length);
        let is_left = offer.is_none_or(|offer| offer.count.is_none_or(|count| n_of(&bars, offer) < count));
        if is_left {
            bars.push(bar);
        } else {
            lacking.extend(wish.wanted.iter().filter(|(mark, _)| bar.sticks.contains(mark)).cloned());
        }
    }
    Least { bars, lacking, bound: 0, is_proven: false, unplaced: free.unplaced, ..Least::default() }
}

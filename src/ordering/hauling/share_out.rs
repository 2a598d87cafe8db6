//! Sticks shared out on the fewest loads, in the order of raising as far as that allows.
use crate::ordering::nest::{Aim, Offered, Task, Wanted, nest_watched};
use crate::units::{Length, Money, Weight};

/// Steps of work the search for the fewest loads may do: some ten milliseconds.
const MOST_WORK: u64 = 1_000_000;
/// Rounding that a sum of weights may carry.
const HAIR: Weight = Weight::pounds(1e-6);

/// Loads as places in the list of weights, and what is known of the fewest there can be.
#[derive(Clone, Debug, PartialEq)]
pub struct Shares {
    /// Places of each load's sticks, first load first.
    pub loads: Vec<Vec<usize>>,
    /// No way of loading takes fewer.
    pub least: usize,
}

/// Shares out sticks that stand in the order they are needed; none is heavier than the payload.
///
/// Where as few loads will do, each is a stretch of that order. Else the fewest loads go before the order: sticks are exchanged
/// between loads until no exchange brings one nearer its turn.
#[must_use]
pub fn share_out(weights: &[Weight], turns: &[usize], payload: Weight) -> Shares {
    let all: Weight = weights.iter().sum();
    let by_sum = if weights.is_empty() { 0 } else { (((all - HAIR) / payload).ceil() as usize).max(1) };
    let in_turn = in_turn(weights, payload);
    if in_turn.len() <= by_sum {
        return Shares { loads: in_turn, least: by_sum };
    }
    let (packed, least) = fewest(weights, payload).unwrap_or((Vec::new(), by_sum));
    let least = least.max(by_sum);
    let fewest = if packed.is_empty() { in_turn.len() } else { packed.len() };
    let first_fit = first_fit(weights, payload);
    let mut loads = match (in_turn.len() <= fewest, first_fit.len() <= fewest) {
        (true, _) => in_turn,
        (false, true) => first_fit,
        (false, false) => packed,
    };
    bring_nearer(&mut loads, weights, turns, payload);
    Shares { loads, least }
}

/// Each stick onto the load that stands at the ramp.
fn in_turn(weights: &[Weight], payload: Weight) -> Vec<Vec<usize>> {
    let mut loads: Vec<Vec<usize>> = Vec::new();
    let mut on = Weight::ZERO;
    for (place, weight) in weights.iter().enumerate() {
        match loads.last_mut() {
            Some(load) if on + *weight <= payload + HAIR => {
                load.push(place);
                on += *weight;
            }
            _ => {
                loads.push(vec![place]);
                on = *weight;
            }
        }
    }
    loads
}

/// Each stick onto the first load with room for it.
fn first_fit(weights: &[Weight], payload: Weight) -> Vec<Vec<usize>> {
    let mut loads: Vec<Vec<usize>> = Vec::new();
    for (place, weight) in weights.iter().enumerate() {
        match loads.iter_mut().find(|load| sum(load, weights) + *weight <= payload + HAIR) {
            Some(load) => load.push(place),
            None => loads.push(vec![place]),
        }
    }
    loads
}

fn sum(load: &[usize], weights: &[Weight]) -> Weight {
    load.iter().map(|place| weights[*place]).sum()
}

/// The fewest loads, as the cutting plan that packs weights as if they were lengths; nothing where that refuses.
fn fewest(weights: &[Weight], payload: Weight) -> Option<(Vec<Vec<usize>>, usize)> {
    let as_length = |weight: Weight| Length::inches(weight.to_pounds());
    let sticks = weights.iter().map(|weight| Wanted { mark: String::new(), length: as_length(*weight), count: 1 });
    let price = Money::cents(100);
    let task = Task {
        kerf: Length::ZERO,
        trim: Length::ZERO,
        sticks: sticks.collect(),
        stock: vec![Offered { length: as_length(payload), price, count: None }],
        aim: Aim::FewestBars,
    };
    let plan = nest_watched(&task, MOST_WORK, &mut |_| true).ok()?;
    let loads: Vec<Vec<usize>> = plan.bars.into_iter().map(|bar| bar.sticks).collect();
    let n_loads = loads.len();
    let least = if plan.is_proven { n_loads } else { (plan.bound.to_f64() / price.to_f64()).ceil() as usize };
    plan.unplaced.is_empty().then_some((loads, least.min(n_loads)))
}

/// Orders the loads by when they are needed, then exchanges or moves sticks while that brings earlier ones forward.
fn bring_nearer(loads: &mut Vec<Vec<usize>>, weights: &[Weight], turns: &[usize], payload: Weight) {
    crate::units::sort_by_number(loads, |load| mean(load, turns));
    let n_loads = loads.len();
    for early in 0..n_loads {
        for late in early + 1..n_loads {
            while exchange(loads, (early, late), weights, turns, payload) {}
        }
    }
    for load in loads {
        load.sort_unstable();
    }
}

fn mean(load: &[usize], turns: &[usize]) -> f64 {
    load.iter().map(|place| turns[*place] as f64).sum::<f64>() / load.len().max(1) as f64
}

/// One exchange of a stick of the earlier load for one of the later that is needed sooner, the farthest apart first. Every
/// exchange lowers the sum of the earlier load's turns: it ends.
fn exchange(
    loads: &mut [Vec<usize>],
    (early, late): (usize, usize),
    weights: &[Weight],
    turns: &[usize],
    payload: Weight,
) -> bool {
    let (on_early, on_late) = (sum(&loads[early], weights), sum(&loads[late], weights));
    let mut best: Option<(usize, usize, usize)> = None;
    for (at, one) in loads[early].iter().enumerate() {
        for (other_at, other) in loads[late].iter().enumerate() {
            let more = weights[*other] - weights[*one];
            let fits = on_early + more <= payload + HAIR && on_late - more <= payload + HAIR;
            let gain = turns[*one].saturating_sub(turns[*other]);
            if fits && gain > best.map_or(0, |(gain, ..)| gain) {
                best = Some((gain, at, other_at));
            }
        }
    }
    let Some((_, at, other_at)) = best else { return false };
    let one = loads[early][at];
    loads[early][at] = loads[late][other_at];
    loads[late][other_at] = one;
    true
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(pounds: &[f64], payload: f64, n_loads: usize) -> Shares {
        let weights: Vec<Weight> = pounds.iter().copied().map(Weight::pounds).collect();
        let turns: Vec<usize> = (0..weights.len()).collect();
        let shares = share_out(&weights, &turns, Weight::pounds(payload));
        assert_eq!((shares.loads.len(), shares.least), (n_loads, n_loads), "{shares:?}");
        let mut all: Vec<usize> = shares.loads.iter().flatten().copied().collect();
        all.sort_unstable();
        assert_eq!(all, turns);
        assert!(shares.loads.iter().all(|load| sum(load, &weights) <= Weight::pounds(payload) + HAIR));
        shares
    }

    #[test]
    fn as_few_loads_as_can_be_and_in_turn_where_that_costs_none() {
        check(&[], 1000.0, 0);
        check(&[400.0, 300.0], 1000.0, 1);
        // In turn: 600 + 400, 500 + 500: two, as the sum asks.
        assert_eq!(check(&[600.0, 400.0, 500.0, 500.0], 1000.0, 2).loads, [vec![0, 1], vec![2, 3]]);
        // In turn it would be three: 600, 600, 400 + 400; two hold all, and of the two sixes the first goes first.
        assert_eq!(check(&[600.0, 600.0, 400.0, 400.0], 1000.0, 2).loads, [vec![0, 2], vec![1, 3]]);
    }

    /// By hand: six of 350 lb on a payload of 1000 take three loads of two, though the sum, 2100, would say three as well; seven
    /// take four, though the sum says three.
    #[test]
    fn what_no_two_fit_beside_is_proven() {
        check(&[350.0; 6], 1000.0, 3);
        check(&[350.0; 7], 1000.0, 4);
        // 510 lb each: no two on one load, whatever the sum says.
        check(&[510.0; 5], 1000.0, 5);
    }

    /// Against every way of loading, tried one after the other, for eight sticks.
    #[test]
    fn no_other_way_of_loading_takes_fewer() {
        let mut seed = 7_u64;
        for _ in 0..60 {
            let mut next = || {
                seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
                f64::from((seed >> 40) as u32 % 60) * 10.0 + 50.0
            };
            let pounds: Vec<f64> = (0..8).map(|_| next()).collect();
            check(&pounds, 700.0, by_trial(&pounds, 700.0, &mut Vec::new(), 0));
        }
    }

    fn by_trial(pounds: &[f64], payload: f64, loads: &mut Vec<f64>, at: usize) -> usize {
        if at == pounds.len() {
            return loads.len();
        }
        let mut least = usize::MAX;
        for load in 0..loads.len() {
            if loads[load] + pounds[at] <= payload {
                loads[load] += pounds[at];
                least = least.min(by_trial(pounds, payload, loads, at + 1));
                loads[load] -= pounds[at];
            }
        }
        loads.push(pounds[at]);
        least = least.min(by_trial(pounds, payload, loads, at + 1));
        loads.pop();
        least
    }
}

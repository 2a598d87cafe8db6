//! What every cutting plan keeps: more stock never costs more, the order of sticks is nothing, the same task has the same
//! plan, and no way of sharing few sticks out by hand is cheaper.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use outshot::ordering::nest::{Aim, Offered, Plan, Progress, Task, Wanted, nest, nest_watched};
use outshot::units::{Length, Money};
use proptest::prelude::*;

fn wanted(sixteenths: u32, count: u32) -> Wanted {
    Wanted { mark: sixteenths.to_string(), length: Length::inches(f64::from(sixteenths) / 16.0), count }
}

fn offered(feet: u32, cents: i64, count: Option<u32>) -> Offered {
    Offered { length: Length::feet(f64::from(feet)), price: Money::cents(cents), count }
}

/// Sticks of 1 to 15 ft; stock of 16 to 24 ft, the first always to be had.
fn tasks(most_kinds: usize, most_count: u32) -> impl Strategy<Value = Task> {
    let sticks = prop::collection::vec((192_u32..2880, 1..=most_count), 1..=most_kinds);
    let stock = prop::collection::vec((16_u32..25, 500_i64..4000, prop::option::of(1_u32..6)), 1..5);
    (sticks, stock, 0_u32..5).prop_map(|(sticks, stock, kerf)| Task {
        kerf: Length::inches(f64::from(kerf) / 16.0),
        trim: Length::inches(1.0),
        sticks: sticks.into_iter().map(|(length, count)| wanted(length, count)).collect(),
        stock: stock
            .into_iter()
            .enumerate()
            .map(|(at, (feet, cents, count))| offered(feet, cents, count.filter(|_| at > 0)))
            .collect(),
        aim: Aim::LeastCost,
    })
}

fn proven(task: &Task) -> Plan {
    let plan = nest(task).unwrap();
    assert!(plan.is_proven && plan.unplaced.is_empty());
    plan
}

/// Least cost by trying every way to share the sticks out, each share in the cheapest stock that holds it.
fn by_hand(task: &Task, sticks: &[f64], bars: &mut Vec<(f64, usize)>, place: usize) -> Option<Money> {
    if place == sticks.len() {
        let price = |(long, n): &(f64, usize)| {
            let needed = long + task.kerf.to_inches() * (*n as f64 - 1.0) + task.trim.to_inches();
            let holds = task.stock.iter().filter(|stock| stock.length.to_inches() + 1e-9 >= needed);
            holds.map(|stock| stock.price).min()
        };
        return bars.iter().map(price).sum::<Option<Cents>>().map(|sum| sum.0);
    }
    let mut best: Option<Money> = None;
    for at in 0..=bars.len() {
        if at == bars.len() {
            bars.push((0.0, 0));
        }
        bars[at] = (bars[at].0 + sticks[place], bars[at].1 + 1);
        let found = by_hand(task, sticks, bars, place + 1);
        best = best.into_iter().chain(found).min();
        bars[at] = (bars[at].0 - sticks[place], bars[at].1 - 1);
        if bars[at].1 == 0 {
            bars.pop();
        }
    }
    best
}

/// A sum of prices, nothing where one is missing.
struct Cents(Money);

impl std::iter::Sum<Money> for Cents {
    fn sum<I: Iterator<Item = Money>>(items: I) -> Self {
        Self(items.sum())
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 120, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn sharing_out_by_hand_is_never_cheaper(mut task in tasks(6, 1)) {
        task.stock.iter_mut().for_each(|stock| stock.count = None);
        let sticks: Vec<f64> = task.sticks.iter().map(|stick| stick.length.to_inches()).collect();
        let least = by_hand(&task, &sticks, &mut Vec::new(), 0).unwrap();
        prop_assert_eq!(proven(&task).cost, least);
    }

    #[test]
    fn more_stock_never_costs_more(task in tasks(6, 6), feet in 8_u32..25, cents in 100_i64..4000) {
        let before = proven(&task).cost;
        let mut more = task.clone();
        more.stock.push(offered(feet, cents, None));
        prop_assert!(proven(&more).cost <= before);
        let mut unlimited = task.clone();
        unlimited.stock.iter_mut().for_each(|stock| stock.count = None);
        prop_assert!(proven(&unlimited).cost <= before);
    }

    #[test]
    fn the_order_of_sticks_and_stock_is_nothing(task in tasks(7, 4)) {
        let plan = proven(&task);
        prop_assert_eq!(&plan, &proven(&task));
        let mut turned = task.clone();
        turned.sticks.reverse();
        turned.stock.reverse();
        prop_assert_eq!(plan.cost, proven(&turned).cost);
    }

    #[test]
    fn fewer_sticks_and_a_finer_saw_never_cost_more(task in tasks(6, 5)) {
        let before = proven(&task).cost;
        let mut fewer = task.clone();
        fewer.sticks[0].count -= 1;
        prop_assert!(proven(&fewer).cost <= before);
        let mut finer = task.clone();
        finer.kerf = Length::ZERO;
        prop_assert!(proven(&finer).cost <= before);
    }
}

/// A task that takes some branching: a dozen lengths, prices that are no multiples of each other.
fn long_task() -> Task {
    let sticks =
        [1300, 1411, 1523, 1637, 1741, 1850, 1963, 2077, 2183, 2291, 1201, 997].map(|length| wanted(length, 3));
    let stock =
        vec![offered(16, 1613, None), offered(18, 1873, None), offered(20, 2137, None), offered(22, 2399, None)];
    Task { kerf: Length::inches(0.25), trim: Length::inches(1.0), sticks: sticks.to_vec(), stock, aim: Aim::LeastCost }
}

#[test]
fn the_search_tells_how_far_it_is_and_can_be_stopped() {
    let task = long_task();
    let mut seen: Vec<Progress> = Vec::new();
    let whole = nest_watched(&task, 3_000_000, &mut |progress| {
        seen.push(*progress);
        true
    });
    let whole = whole.unwrap();
    assert!(whole.is_proven && seen.len() > 1, "{} branches", seen.len());
    for pair in seen.windows(2) {
        assert!(pair[1].work >= pair[0].work && pair[1].best <= pair[0].best && pair[1].bound >= pair[0].bound);
    }
    assert!(seen.iter().all(|progress| progress.bound <= whole.cost && whole.cost <= progress.best));
    let stopped = nest_watched(&task, 3_000_000, &mut |_| false).unwrap();
    assert!(!stopped.is_proven && stopped.bound <= whole.cost && whole.cost <= stopped.cost);
    let starved = nest_watched(&task, 1, &mut |_| true).unwrap();
    assert!(starved.bound <= whole.cost && whole.cost <= starved.cost);
}

//! A thousand cutting tasks against a general integer solver (HiGHS), committed values, and cutting examples in print.
//!
//! `reference/nest.py` draws and solves them. Costs are compared to the cent, numbers of bars exactly.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

use outshot::ordering::nest::{Aim, Offered, Plan, Task, Unplaced, Wanted, nest};
use outshot::units::{Length, Money};
use serde_json::Value;

const SIXTY_FOURTH: f64 = 1.0 / 64.0;

fn whole(value: &Value) -> i64 {
    value.as_i64().unwrap_or_else(|| panic!("{value} is no whole number"))
}

fn sixty_fourths(value: &Value) -> Length {
    Length::inches(whole(value) as f64 * SIXTY_FOURTH)
}

fn task(row: &Value, aim: Aim) -> Task {
    let sticks = row[2].as_array().unwrap().iter().enumerate().map(|(place, stick)| Wanted {
        mark: format!("S{place}"),
        length: sixty_fourths(&stick[0]),
        count: whole(&stick[1]) as u32,
    });
    let stock = row[3].as_array().unwrap().iter().map(|stock| Offered {
        length: sixty_fourths(&stock[0]),
        price: Money::cents(whole(&stock[1])),
        count: u32::try_from(whole(&stock[2])).ok(),
    });
    let (kerf, trim) = (sixty_fourths(&row[0]), sixty_fourths(&row[1]));
    Task { kerf, trim, sticks: sticks.collect(), stock: stock.collect(), aim }
}

/// No bar over its length, no stock over its count, every stick once, the cost the sum of its bars.
fn check_plan(task: &Task, plan: &Plan) {
    let mut seen = vec![0_u32; task.sticks.len()];
    let mut used = vec![0_u32; task.stock.len()];
    let mut cost = Money::ZERO;
    for bar in &plan.bars {
        let wood: f64 = bar.sticks.iter().map(|place| task.sticks[*place].length.to_inches()).sum();
        let cuts = task.kerf.to_inches() * (bar.sticks.len() - 1) as f64;
        let room = (task.stock[bar.stock].length - task.trim).to_inches();
        assert!(wood + cuts <= room + 1e-9, "{wood} and {cuts} in {room}");
        assert!((room - wood - cuts - bar.left.to_inches()).abs() < 1e-9);
        bar.sticks.iter().for_each(|place| seen[*place] += 1);
        used[bar.stock] += 1;
        cost += task.stock[bar.stock].price;
    }
    plan.unplaced.iter().for_each(|(place, _)| seen[*place] += 1);
    assert_eq!(seen, task.sticks.iter().map(|stick| stick.count).collect::<Vec<u32>>());
    for (stock, used) in task.stock.iter().zip(used) {
        assert!(stock.count.is_none_or(|count| used <= count));
    }
    assert_eq!(cost, plan.cost);
    assert!(plan.bound <= plan.cost);
}

fn tasks() -> Vec<Value> {
    let file: Value = serde_json::from_str(include_str!("reference/nest.json")).unwrap();
    file["tasks"].as_array().unwrap().clone()
}

fn n_lacking(plan: &Plan) -> i64 {
    plan.unplaced.iter().filter(|(_, why)| *why == Unplaced::NoneLeft).count() as i64
}

#[test]
fn least_cost_is_that_of_the_general_solver() {
    let (mut n_proven, mut n) = (0, 0);
    for (at, row) in tasks().iter().enumerate() {
        let task = task(row, Aim::LeastCost);
        let plan = nest(&task).unwrap();
        check_plan(&task, &plan);
        let says = format!("task {at}");
        assert_eq!((n_lacking(&plan), plan.cost), (whole(&row[4][1]), Money::cents(whole(&row[4][0]))), "{says}");
        assert!(!plan.is_proven || plan.bound == plan.cost, "{says}");
        n_proven += usize::from(plan.is_proven);
        n += 1;
    }
    assert_eq!(n, 1000);
    assert!(n_proven >= 990, "{n_proven} proven");
}

#[test]
fn fewest_bars_are_those_of_the_general_solver() {
    for (at, row) in tasks().iter().enumerate().step_by(2) {
        let task = task(row, Aim::FewestBars);
        let plan = nest(&task).unwrap();
        check_plan(&task, &plan);
        let found = (n_lacking(&plan), plan.bars.len() as i64);
        assert_eq!(found, (whole(&row[4][1]), whole(&row[4][2])), "task {at}");
        assert!(plan.cost >= Money::cents(whole(&row[4][0])), "task {at}: fewer bars never cost less than least");
    }
}

/// The least longest bar by trying: the answer is what least cost gives with no longer stock on offer.
#[test]
fn the_longest_bar_is_the_shortest_that_will_do() {
    for (at, row) in tasks().iter().enumerate().step_by(10) {
        let all = task(row, Aim::ShortestBars);
        let plan = nest(&all).unwrap();
        check_plan(&all, &plan);
        let mut lengths: Vec<Length> = all.stock.iter().map(|stock| stock.length).collect();
        lengths.sort_by(|a, b| a.partial_cmp(b).unwrap());
        let by_trying = lengths.iter().find_map(|longest| {
            let mut fewer = task(row, Aim::LeastCost);
            fewer.stock.retain(|stock| stock.length <= *longest);
            let tried = nest(&fewer).unwrap();
            (tried.unplaced.len() == plan.unplaced.len()).then_some(tried)
        });
        assert_eq!(by_trying.unwrap().cost, plan.cost, "task {at}");
    }
}

/// One stock length at a price of 1, no cut, no trim; the number of bars.
fn check_printed(stock: f64, rows: &[(f64, u32)], n_bars: usize) {
    let wanted = |(length, count): &(f64, u32)| Wanted {
        mark: length.to_string(),
        length: Length::millimetres(*length),
        count: *count,
    };
    let offered = Offered { length: Length::millimetres(stock), price: Money::of(1.0), count: None };
    let sticks = rows.iter().map(wanted).collect();
    let task = Task { kerf: Length::ZERO, trim: Length::ZERO, sticks, stock: vec![offered], aim: Aim::LeastCost };
    let plan = nest(&task).unwrap();
    check_plan(&task, &plan);
    assert_eq!((plan.bars.len(), plan.is_proven), (n_bars, true));
}

/// Data and answers from memory.
#[test]
fn examples_in_print() {
    // V. Chvátal, Linear Programming, Freeman 1983, ch. 13: 452.25 raws in parts, 453 whole.
    check_printed(100.0, &[(45.0, 97), (36.0, 610), (31.0, 395), (14.0, 211)], 453);
    // R. Fourer, D. M. Gay, B. W. Kernighan, AMPL, 2nd ed. 2003, section 15.3: 46.25 rolls in parts, 47 whole.
    check_printed(110.0, &[(20.0, 48), (45.0, 35), (50.0, 24), (55.0, 10), (75.0, 8)], 47);
    // A paper machine's rolls of 5,600 mm, much printed as an exercise: 73 rolls.
    let rolls = [(1380.0, 22), (1520.0, 25), (1560.0, 12), (1710.0, 14), (1820.0, 18), (1880.0, 18), (1930.0, 20)];
    let more = [(2000.0, 10), (2050.0, 12), (2100.0, 14), (2140.0, 16), (2150.0, 18), (2200.0, 20)];
    check_printed(5600.0, &[&rolls[..], &more[..]].concat(), 73);
}

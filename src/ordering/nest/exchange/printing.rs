//! The plan as JSON and as a list.
use std::fmt::Write;

use serde::Serialize;

use crate::ordering::nest::{Plan, Task, Unplaced};
use crate::units::Length;

#[derive(Serialize)]
struct Out<'a> {
    cost: f64,
    bound: f64,
    proven_optimal: bool,
    bars: Vec<BarOut<'a>>,
    unplaced: Vec<UnplacedOut<'a>>,
    /// Steps of work the search took.
    work: u64,
}

#[derive(Serialize)]
struct BarOut<'a> {
    length_in: f64,
    sticks: Vec<&'a str>,
    left_in: f64,
    price: f64,
}

#[derive(Serialize)]
struct UnplacedOut<'a> {
    mark: &'a str,
    length_in: f64,
    /// By how much it is longer than the longest stock holds; null where stock only ran out.
    over_in: Option<f64>,
    says: String,
}

/// Inches to a millionth: free of the last bits of the sums.
fn inches(length: Length) -> f64 {
    (length.to_inches() * 1e6).round() / 1e6
}

fn unplaced<'a>(task: &'a Task, (place, why): &(usize, Unplaced)) -> UnplacedOut<'a> {
    let stick = &task.sticks[*place];
    let length_in = inches(stick.length);
    let (over_in, says) = match why {
        Unplaced::TooLong(over) => {
            let over = inches(*over);
            (Some(over), format!("{} is {over} in longer than the longest stock holds.", stick.mark))
        }
        Unplaced::NoneLeft => (None, format!("{} finds no place: no stock is left that holds it.", stick.mark)),
    };
    UnplacedOut { mark: &stick.mark, length_in, over_in, says }
}

fn out<'a>(task: &'a Task, plan: &Plan) -> Out<'a> {
    let bars = plan.bars.iter().map(|bar| BarOut {
        length_in: inches(task.stock[bar.stock].length),
        sticks: bar.sticks.iter().map(|place| task.sticks[*place].mark.as_str()).collect(),
        left_in: inches(bar.left),
        price: task.stock[bar.stock].price.to_f64(),
    });
    Out {
        cost: plan.cost.to_f64(),
        bound: plan.bound.to_f64(),
        proven_optimal: plan.is_proven,
        bars: bars.collect(),
        unplaced: plan.unplaced.iter().map(|lost| unplaced(task, lost)).collect(),
        work: plan.work,
    }
}

/// The plan as JSON.
pub(super) fn json(task: &Task, plan: &Plan) -> String {
    serde_json::to_string_pretty(&out(task, plan)).unwrap_or_default()
}

/// The plan as a list: bars that are cut alike once, with how many there are.
pub(super) fn text(task: &Task, plan: &Plan) -> String {
    let out = out(task, plan);
    let mut text = String::new();
    let mut alike: Vec<(&BarOut<'_>, usize)> = Vec::new();
    for bar in &out.bars {
        match alike.iter_mut().find(|(known, _)| known.length_in == bar.length_in && known.sticks == bar.sticks) {
            Some((_, n)) => *n += 1,
            None => alike.push((bar, 1)),
        }
    }
    for (bar, n) in alike {
        let sticks = bar.sticks.join(" + ");
        let _ = writeln!(text, "{n:>4} x {:>9.3} in  {sticks}, {:.3} in left", bar.length_in, bar.left_in);
    }
    for lost in &out.unplaced {
        let _ = writeln!(text, "  {}", lost.says);
    }
    let proof = if out.proven_optimal {
        "proven least".to_owned()
    } else {
        format!("not proven: no plan is below {:.2}", out.bound)
    };
    let _ = write!(text, "in all {} bars, {:.2}, {proof}", out.bars.len(), out.cost);
    text
}

//! How long a cutting plan takes, natively: `cargo bench --bench nest`. The tasks are those of `reference/nest.json`.
use outshot::evaluate;
use outshot::ordering::nest::{Aim, Offered, Task, Wanted, nest};
use outshot::ordering::order;
use outshot::project::examples;
use outshot::units::{Length, Money};
use serde_json::Value;

fn main() {
    divan::main();
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or(0.0)
}

fn tasks() -> Vec<Task> {
    let file: Value = serde_json::from_str(include_str!("../reference/nest.json")).unwrap_or_default();
    let length = |value: &Value| Length::inches(number(value) / 64.0);
    let rows = |value: &Value| value.as_array().cloned().unwrap_or_default();
    let task = |row: &Value| {
        let sticks = rows(&row[2]).into_iter();
        let stock = rows(&row[3]).into_iter();
        Task {
            kerf: length(&row[0]),
            trim: length(&row[1]),
            sticks: sticks
                .map(|s| Wanted { mark: String::new(), length: length(&s[0]), count: number(&s[1]) as u32 })
                .collect(),
            stock: stock
                .map(|s| {
                    let count = (number(&s[2]) >= 0.0).then(|| number(&s[2]) as u32);
                    Offered { length: length(&s[0]), price: Money::cents(number(&s[1]) as i64), count }
                })
                .collect(),
            aim: Aim::LeastCost,
        }
    };
    rows(&file["tasks"]).iter().map(task).collect()
}

/// All thousand, one after the other.
#[divan::bench(sample_count = 5, sample_size = 1)]
fn a_thousand_tasks(bencher: divan::Bencher) {
    let tasks = tasks();
    bencher.bench(|| tasks.iter().map(|task| nest(task).map_or(0, |plan| plan.bars.len())).sum::<usize>());
}

/// The task in the middle when they stand in the order of their work.
#[divan::bench]
fn the_median_task(bencher: divan::Bencher) {
    let mut tasks = tasks();
    tasks.sort_by_cached_key(|task| nest(task).map_or(0, |plan| plan.work));
    let task = tasks.swap_remove(tasks.len() / 2);
    bencher.bench(|| nest(&task));
}

/// All sticks of the wool barn out of lengths of 8 to 20 ft, as if they were of one section.
#[divan::bench]
fn the_sticks_of_the_wool_barn(bencher: divan::Bencher) {
    let project = examples::wool_barn();
    let Some(built) = evaluate(&project).built else { return };
    let wanted =
        |stick: &outshot::tickets::Stick| Wanted { mark: stick.mark.clone(), length: stick.net_length(), count: 1 };
    let stock = project.mill.lengths.iter().map(|length| Offered {
        length: *length,
        price: Money::of(length.to_feet() * 1.5),
        count: None,
    });
    let task = Task {
        kerf: project.mill.kerf,
        trim: Length::ZERO,
        sticks: built.sticks.iter().map(wanted).collect(),
        stock: stock.collect(),
        aim: Aim::LeastCost,
    };
    bencher.bench(|| nest(&task));
}

/// The order of the wool barn: what every edit waits for, the packing of all sections with its proof included.
#[divan::bench]
fn the_order_of_the_wool_barn(bencher: divan::Bencher) {
    let project = examples::wool_barn();
    let Some(built) = evaluate(&project).built else { return };
    bencher.bench(|| order(&project, &built.sticks));
}

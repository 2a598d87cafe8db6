//! From JSON to a task.
use serde::Deserialize;

use crate::ordering::nest::{Aim, Offered, Task, Wanted};
use crate::units::{Length, Money};

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TaskIn {
    #[serde(default)]
    kerf_in: f64,
    #[serde(default)]
    trim_in: f64,
    sticks: Vec<StickIn>,
    stock: Vec<StockIn>,
    #[serde(default)]
    aim: AimIn,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct StickIn {
    mark: String,
    length_in: f64,
    #[serde(default = "one")]
    count: u32,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct StockIn {
    length_in: f64,
    price: f64,
    count: Option<u32>,
}

#[derive(Clone, Copy, Default, Deserialize)]
#[serde(rename_all = "snake_case")]
enum AimIn {
    #[default]
    LeastCost,
    FewestBars,
    ShortestBars,
}

fn one() -> u32 {
    1
}

/// Keeps every fault.
struct Reader {
    faults: Vec<String>,
}

impl Reader {
    fn length(&mut self, inches: f64, whose: &str) -> Length {
        Length::try_inches(inches).unwrap_or_else(|| {
            self.faults.push(format!("{whose}: {inches} is not a length to work with."));
            Length::ZERO
        })
    }

    fn price(&mut self, amount: f64, whose: &str) -> Money {
        Money::try_of(amount).unwrap_or_else(|| {
            self.faults.push(format!("{whose}: {amount} is not a price to work with."));
            Money::ZERO
        })
    }
}

/// Reads a task; what can be read and still cannot be is found by [`Task::check`].
///
/// # Errors
/// Sentences, one a line.
pub fn read(text: &str) -> Result<Task, String> {
    let file: TaskIn = serde_json::from_str(text).map_err(|error| format!("The task cannot be read: {error}."))?;
    let mut reader = Reader { faults: Vec::new() };
    let kerf = reader.length(file.kerf_in, "kerf_in");
    let trim = reader.length(file.trim_in, "trim_in");
    let mut sticks = Vec::new();
    for stick in file.sticks {
        let length = reader.length(stick.length_in, &format!("Stick {}", stick.mark));
        sticks.push(Wanted { mark: stick.mark, length, count: stick.count });
    }
    let mut stock = Vec::new();
    for (at, bar) in file.stock.iter().enumerate() {
        let whose = format!("Stock {}", at + 1);
        let (length, price) = (reader.length(bar.length_in, &whose), reader.price(bar.price, &whose));
        stock.push(Offered { length, price, count: bar.count });
    }
    let aim = match file.aim {
        AimIn::LeastCost => Aim::LeastCost,
        AimIn::FewestBars => Aim::FewestBars,
        AimIn::ShortestBars => Aim::ShortestBars,
    };
    if reader.faults.is_empty() { Ok(Task { kerf, trim, sticks, stock, aim }) } else { Err(reader.faults.join("\n")) }
}

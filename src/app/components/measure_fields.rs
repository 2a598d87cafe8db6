//! Slopes, weights and prices.
use super::entry::Entry;
use super::field::{Field, entry_field};
use super::stepper::{Steps, next_multiple};
use crate::app::Lens;
use crate::project::Nearest;
use crate::units::{
    Money, Slope, UnitSystem, Weight, in_twelve, parse_money, parse_slope, parse_weight, show_slope, show_weight,
    slope_degrees, slope_percent,
};
use leptos::prelude::*;

/// A slope, with steps of a quarter inch in twelve, or half a degree.
pub fn slope_field(field: Lens<Slope>, label: impl Into<Signal<String>>) -> Field {
    let read = field.clone();
    let entry = Entry::new(&field, show_slope, |text, units| parse_slope(text, units).map_err(|why| why.to_string()))
        .reading(move |project| {
            let slope = read.get(project)?;
            Some(match project.units {
                UnitSystem::Imperial => {
                    format!("{} · {} · {}", in_twelve(slope), slope_degrees(slope), slope_percent(slope))
                }
                UnitSystem::Metric => {
                    format!("{} · {} · {}", slope_degrees(slope), slope_percent(slope), in_twelve(slope))
                }
            })
        })
        .take(&field, |nearest| match nearest {
            Nearest::Slope(slope) => Some(slope),
            _ => None,
        })
        .step(&field, stepped);
    entry_field(entry, label.into()).steps(Steps::of(0.25, 0.5))
}

fn stepped(slope: Slope, step: f64, units: UnitSystem) -> Slope {
    let next = match units {
        UnitSystem::Imperial => Slope::try_ratio(next_multiple(slope.to_in_twelve(), step).max(0.0) / 12.0),
        UnitSystem::Metric => Slope::try_degrees(next_multiple(slope.to_degrees(), step).clamp(0.0, 89.0)),
    };
    next.unwrap_or(slope)
}

/// A weight.
pub fn weight_field(field: Lens<Weight>, label: impl Into<Signal<String>>) -> Field {
    let read = field.clone();
    let parse = |text: &str, units| parse_weight(text, units).map_err(|why| why.to_string());
    let entry = Entry::new(&field, |weight, units| show_weight(weight, units).to_string(), parse)
        .reading(move |project| {
            let weight = read.get(project)?;
            let (pounds, kilograms) =
                (show_weight(weight, UnitSystem::Imperial), show_weight(weight, UnitSystem::Metric));
            Some(format!("{pounds} · {kilograms}"))
        })
        .step(&field, |weight: Weight, step, units| {
            let next = match units {
                UnitSystem::Imperial => Weight::try_pounds(next_multiple(weight.to_pounds(), step).max(0.0)),
                UnitSystem::Metric => Weight::try_kilograms(next_multiple(weight.to_kilograms(), step).max(0.0)),
            };
            next.unwrap_or(weight)
        });
    entry_field(entry, label.into())
}

/// A price; the currency's sign belongs in the label.
pub fn money_field(field: Lens<Money>, label: impl Into<Signal<String>>) -> Field {
    let print = |money: Money, _| format!("{:.2}", money.to_f64());
    let parse = |text: &str, _| parse_money(text).map_err(|why| why.to_string());
    let entry = Entry::new(&field, print, parse).step(&field, |money: Money, step, _| {
        Money::try_of(next_multiple(money.to_f64(), step).max(0.0)).unwrap_or(money)
    });
    entry_field(entry, label.into()).decimal_keys()
}

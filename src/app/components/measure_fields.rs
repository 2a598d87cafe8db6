//! Slopes, weights and prices.
use super::entry::Entry;
use super::field::EntryField;
use super::stepper::{Steps, next_multiple};
use crate::app::Lens;
use crate::project::Nearest;
use crate::units::{
    Money, Slope, UnitSystem, Weight, in_twelve, parse_money, parse_slope, parse_weight, show_slope, show_weight,
    slope_degrees, slope_percent,
};
use leptos::prelude::*;

/// A slope, with steps of a quarter inch in twelve, or half a degree.
#[component]
pub fn SlopeField(
    /// The field of the project.
    field: Lens<Slope>,
    /// The label.
    #[prop(into)]
    label: Signal<String>,
    /// A few words under the label.
    #[prop(optional, into)]
    hint: Signal<String>,
) -> impl IntoView {
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
    view! { <EntryField entry label hint steps=Steps::of(0.25, 0.5)/> }
}

fn stepped(slope: Slope, step: f64, units: UnitSystem) -> Slope {
    let next = match units {
        UnitSystem::Imperial => Slope::try_ratio(next_multiple(slope.to_in_twelve(), step).max(0.0) / 12.0),
        UnitSystem::Metric => Slope::try_degrees(next_multiple(slope.to_degrees(), step).clamp(0.0, 89.0)),
    };
    next.unwrap_or(slope)
}

/// A weight.
#[component]
pub fn WeightField(
    /// The field of the project.
    field: Lens<Weight>,
    /// The label.
    #[prop(into)]
    label: Signal<String>,
    /// A few words under the label.
    #[prop(optional, into)]
    hint: Signal<String>,
    /// Steps in pounds and kilograms.
    #[prop(optional)]
    steps: Option<Steps>,
) -> impl IntoView {
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
    match steps {
        Some(steps) => view! { <EntryField entry label hint steps/> }.into_any(),
        None => view! { <EntryField entry label hint/> }.into_any(),
    }
}

/// A price; the currency's sign belongs in the label.
#[component]
pub fn MoneyField(
    /// The field of the project.
    field: Lens<Money>,
    /// The label.
    #[prop(into)]
    label: Signal<String>,
    /// A few words under the label.
    #[prop(optional, into)]
    hint: Signal<String>,
    /// Steps, in whole money.
    #[prop(optional)]
    steps: Option<Steps>,
) -> impl IntoView {
    let print = |money: Money, _| format!("{:.2}", money.to_f64());
    let parse = |text: &str, _| parse_money(text).map_err(|why| why.to_string());
    let entry = Entry::new(&field, print, parse).step(&field, |money: Money, step, _| {
        Money::try_of(next_multiple(money.to_f64(), step).max(0.0)).unwrap_or(money)
    });
    match steps {
        Some(steps) => view! { <EntryField entry label hint steps decimal_keys=true/> }.into_any(),
        None => view! { <EntryField entry label hint decimal_keys=true/> }.into_any(),
    }
}

//! What the rafters' spacing does: three curves and the same figures as a table.
use super::curve::{Curve, draw};
use crate::app::components::{fractions, show_length_fine};
use crate::study::SpacingPoint;
use crate::units::{UnitSystem, show_money, show_weight};
use leptos::prelude::*;

/// What of a point is drawn upward.
type Value = fn(&SpacingPoint, UnitSystem) -> f64;

/// Number and weight of the rafters and price of the order over the spacing.
#[component]
pub fn SpacingCharts(
    /// The points, close to wide.
    points: Vec<SpacingPoint>,
    /// How lengths and weights are shown.
    units: UnitSystem,
    /// Sign of the currency.
    currency: String,
) -> impl IntoView {
    let (across, heavy) = match units {
        UnitSystem::Imperial => ("inches", "lb"),
        UnitSystem::Metric => ("mm", "kg"),
    };
    let curves: [(String, Value); 3] = [
        ("How many rafters".to_owned(), |point, _| point.n_rafters as f64),
        (format!("All rafters, green, {heavy}"), |point, units| match units {
            UnitSystem::Imperial => point.rafter_weight.to_pounds(),
            UnitSystem::Metric => point.rafter_weight.to_kilograms(),
        }),
        (format!("The whole order, {currency}"), |point, _| point.order_price.to_f64()),
    ];
    let figures = curves
        .into_iter()
        .map(|(caption, value)| {
            let svg = draw(&curve(&points, units, value));
            view! {
                <figure class="chart">
                    <figcaption class="chart__caption">{caption} ", over the spacing in " {across}</figcaption>
                    <div class="chart__place" inner_html=svg></div>
                </figure>
            }
        })
        .collect_view();
    view! {
        <div class="charts">{figures}</div>
        <p class="charts__key">"The ring is the spacing as it is now."</p>
        <Table points units currency/>
    }
}

fn curve(points: &[SpacingPoint], units: UnitSystem, value: Value) -> Curve {
    let across = |point: &SpacingPoint| match units {
        UnitSystem::Imperial => point.spacing.to_inches(),
        UnitSystem::Metric => point.spacing.to_millimetres(),
    };
    Curve {
        points: points.iter().map(|point| (across(point), value(point, units))).collect(),
        own: points.iter().position(|point| point.is_own),
        decimals: 0,
    }
}

#[component]
fn Table(points: Vec<SpacingPoint>, units: UnitSystem, currency: String) -> impl IntoView {
    let rows = points
        .into_iter()
        .map(|point| {
            let spacing = show_length_fine(point.spacing, units);
            view! {
                <tr class:table__own=point.is_own>
                    <th scope="row">{fractions(&spacing)} {point.is_own.then_some(" now")}</th>
                    <td>{point.n_rafters}</td>
                    <td>{show_weight(point.rafter_weight, units).to_string()}</td>
                    <td>{show_money(point.order_price, &currency).to_string()}</td>
                </tr>
            }
        })
        .collect_view();
    view! {
        <div class="table-box" tabindex="0" role="group" aria-label="Rafter spacing, the figures">
            <table class="table table--figures">
                <thead>
                    <tr>
                        <th scope="col">"Spacing"</th>
                        <th scope="col">"Rafters"</th>
                        <th scope="col">"Their weight"</th>
                        <th scope="col">"Order"</th>
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
    }
}

//! What the rafters' spacing does: three curves and the same figures as a table.
use super::curve::{Curve, draw};
use crate::app::components::{figures, fractions, show_length_fine};
use crate::app::dom::{Tag, parts, tag};
use crate::study::SpacingPoint;
use crate::units::{UnitSystem, show_money, show_weight};

/// What of a point is drawn upward.
type Value = fn(&SpacingPoint, UnitSystem) -> f64;

/// Number and weight of the rafters and price of the order over the spacing.
pub fn spacing_charts(points: Vec<SpacingPoint>, units: UnitSystem, currency: String) -> Tag {
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
            tag("figure")
                .class("chart")
                .child(
                    tag("figcaption")
                        .class("chart__caption")
                        .child(caption)
                        .child(", over the spacing in ")
                        .child(across),
                )
                .child(tag("div").class("chart__place").html(&svg))
        })
        .collect::<Vec<_>>();
    parts()
        .child(tag("div").class("charts").child(figures))
        .child(tag("p").class("charts__key").child("The ring is the spacing as it is now."))
        .child(table(points, units, currency))
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

fn table(points: Vec<SpacingPoint>, units: UnitSystem, currency: String) -> Tag {
    let rows = points
        .into_iter()
        .map(|point| {
            let spacing = show_length_fine(point.spacing, units);
            tag("tr")
                .class_if("table__own", point.is_own)
                .child(tag("th").attr("scope", "row").child(fractions(&spacing)).child(point.is_own.then_some(" now")))
                .child(tag("td").child(point.n_rafters))
                .child(tag("td").child(show_weight(point.rafter_weight, units).to_string()))
                .child(tag("td").child(show_money(point.order_price, &currency).to_string()))
        })
        .collect::<Vec<_>>();
    figures("Rafter spacing, the figures", &["Spacing", "Rafters", "Their weight", "Order"], rows)
}

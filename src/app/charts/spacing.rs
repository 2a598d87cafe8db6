//! What the rafters' spacing does: three curves and the same figures as a table.
use super::curve::{Curve, draw};
use crate::app::components::{figures, fractions, show_length_fine};
use crate::app::dom::{Tag, parts, tag};
use crate::study::{HeldPoint, SpacingPoint};
use crate::units::{Length, UnitSystem, show_money, show_weight};

/// What of a point is drawn upward.
type Value = fn(&SpacingPoint, UnitSystem) -> f64;

/// Number and weight of the rafters and price of the order over the spacing.
pub fn spacing_charts(points: Vec<SpacingPoint>, units: UnitSystem, currency: String) -> Tag {
    let heavy = match units {
        UnitSystem::Imperial => "lb",
        UnitSystem::Metric => "kg",
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
            let values = points.iter().map(|point| (point.spacing, value(point, units)));
            over_spacing(caption, values, points.iter().position(|point| point.is_own), units)
        })
        .collect::<Vec<_>>();
    parts()
        .child(tag("div").class("charts").child(figures))
        .child(tag("p").class("charts__key").child("The ring is the spacing as it is now."))
        .child(table(points, units, currency))
}

/// Price of the order over the spacing, where rafters and purlins carry.
pub fn held_chart(points: &[HeldPoint], units: UnitSystem, currency: &str) -> Tag {
    let values = points.iter().map(|point| (point.spacing, point.order_price.to_f64()));
    over_spacing(format!("The whole order, {currency}"), values, points.iter().position(|point| point.is_own), units)
}

fn over_spacing(
    caption: String,
    values: impl Iterator<Item = (Length, f64)>,
    own: Option<usize>,
    units: UnitSystem,
) -> Tag {
    let (across, in_units): (_, fn(Length) -> f64) = match units {
        UnitSystem::Imperial => ("inches", Length::to_inches),
        UnitSystem::Metric => ("mm", Length::to_millimetres),
    };
    let points = values.map(|(spacing, value)| (in_units(spacing), value)).collect();
    let svg = draw(&Curve { points, own, decimals: 0 });
    tag("figure")
        .class("chart")
        .child(tag("figcaption").class("chart__caption").child(caption).child(", over the spacing in ").child(across))
        .child(tag("div").class("chart__place").html(&svg))
}

fn table(points: Vec<SpacingPoint>, units: UnitSystem, currency: String) -> Tag {
    let rows = points
        .into_iter()
        .map(|point| {
            spacing_row(point.spacing, point.is_own, units)
                .child(tag("td").child(point.n_rafters))
                .child(tag("td").child(show_weight(point.rafter_weight, units).to_string()))
                .child(tag("td").child(show_money(point.order_price, &currency).to_string()))
        })
        .collect::<Vec<_>>();
    figures("Rafter spacing, the figures", &["Spacing", "Rafters", "Their weight", "Order"], rows)
}

/// A row of a table over the spacing, its first cell made.
pub fn spacing_row(spacing: Length, is_own: bool, units: UnitSystem) -> Tag {
    let spacing = show_length_fine(spacing, units);
    tag("tr")
        .class_if("table__own", is_own)
        .child(tag("th").attr("scope", "row").child(fractions(&spacing)).child(is_own.then_some(" now")))
}

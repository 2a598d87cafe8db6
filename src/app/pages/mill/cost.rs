//! What the whole job costs, part by part, and the prices that make it up.
use crate::app::cached::{Cached, text_of};
use crate::app::charts::draw_parts;
use crate::app::components::{
    COVERAGE, CUBIC_YARDS, FieldRow, GALLON_PRICE, Of, PRICE, RUN_PRICE, VOLUME_PRICE, field_table, figures, group,
    late_fold, word,
};
use crate::app::dom::{Tag, parts, tag};
use crate::app::use_store;
use crate::at;
use crate::ordering::hauling::haul;
use crate::ordering::{Amount, CostPart, Costs, LITRES_A_GALLON as LITRES};
use crate::units::{Length, Money, UnitSystem, show_money};

const PRICES: &[FieldRow] = &[
    FieldRow::new("Roof sheet", "by its length", Of::Price(at!(buying.prices.sheet_100_feet), &RUN_PRICE)),
    FieldRow::new("Trim", "by its length", Of::Price(at!(buying.prices.trim_100_feet), &RUN_PRICE)),
    FieldRow::new("Roof screw", "each", Of::Price(at!(buying.prices.roof_screw), &PRICE)),
    FieldRow::new("Purlin screw", "each", Of::Price(at!(buying.prices.purlin_screw), &PRICE)),
    FieldRow::new("Ledger fixing", "each, with its washers", Of::Price(at!(buying.prices.ledger_fixing), &PRICE)),
    FieldRow::new("Tie", "each screw or strap of rafters and scarfs", Of::Price(at!(buying.prices.tie), &PRICE)),
    FieldRow::new("Peg", "each, whatever its diameter", Of::Price(at!(buying.prices.peg), &PRICE)),
    FieldRow::new("Post base", "each", Of::Price(at!(buying.prices.post_base), &PRICE)),
    FieldRow::new("Bag of concrete", "80 lb, 36 kg", Of::Price(at!(buying.prices.concrete_bag), &PRICE)),
    FieldRow::new(
        "Ready-mixed concrete",
        "by volume, where it is too much for bags",
        Of::Price(at!(buying.prices.concrete_yard), &VOLUME_PRICE),
    ),
    FieldRow::new("Bar of a pier", "each, into its footing", Of::Price(at!(buying.prices.pier_bar), &PRICE)),
    FieldRow::new("A load", "hauled to the place", Of::Price(at!(buying.prices.load), &PRICE)),
    FieldRow::new("Finish", "oil or stain", Of::Price(at!(buying.prices.finish_gallon), &GALLON_PRICE)),
    FieldRow::new("Coats of finish", "", Of::Count(at!(buying.finish.coats))),
    FieldRow::new(
        "What the finish covers",
        "once, on rough wood: half of what the tin says of planed",
        Of::Measured(at!(buying.finish.cover_ft2_per_gallon), &COVERAGE),
    ),
];

/// The whole job; nothing of it is reckoned before it is opened.
pub fn cost_fold() -> Tag {
    let summary = text_of(|| "timber, roof, fasteners and the rest".to_owned());
    late_fold("What the whole job costs", summary, || {
        let store = use_store();
        let costs = Cached::new(move || {
            let good = store.drawn()?;
            let hauling = haul(&good.project, &good.built, &good.built.order.lines);
            let costs = Costs::of(&good.project, &good.built, &hauling);
            Some((costs, good.project.units, good.project.currency.clone()))
        });
        parts()
            .child(word(
                "Timber from the order, and all else counted off the frame: by the rules of the trade, with a tenth \
                 more concrete and finish, and a peg in four to spare. Finish: the four faces and both ends of every post, brace, \
                 rafter and piece of beam and ledger as sawn, tenons with them; not what a joint opens, and no purlins or \
                 blocks. Tools, hours and the permit are not in it.",
            ))
            .live(move || costs.get().map(|(costs, units, currency)| shown(&costs, units, &currency)))
            .child(group("Prices of the rest", field_table(PRICES)))
    })
}

fn shown(costs: &Costs, units: UnitSystem, currency: &str) -> Tag {
    let bars: Vec<(&str, f64)> =
        CostPart::ALL.into_iter().map(|part| (part.name(), costs.of_part(part).to_f64())).collect();
    let caption = format!("Where the money goes, {currency}");
    let chart = tag("figure")
        .class("chart chart--parts")
        .child(tag("figcaption").class("chart__caption").child(caption))
        .child(tag("div").class("chart__place").html(&draw_parts(&bars)));
    let money = |price: Money| show_money(price, currency).to_string();
    let timber = row("timber", "the order".to_owned(), money(costs.timber), String::new());
    let lines = costs.lines.iter().map(|line| {
        let price =
            line.price.map_or_else(|| "not known yet".to_owned(), |price| money(one(line.amount, price, units)));
        row(&line.what, amount(line.amount, units), line.cost().map_or_else(|| "—".to_owned(), money), price)
    });
    let open = match costs.n_unpriced() {
        0 => String::new(),
        1 => ", without the one that has no price yet".to_owned(),
        n => format!(", without the {n} that have no price yet"),
    };
    let rows = std::iter::once(timber).chain(lines).collect::<Vec<_>>();
    parts()
        .child(chart)
        .child(figures("The whole job, the figures", &["What", "How much", "Comes to", "Price of one"], rows))
        .child(tag("p").class("costs__total").child(format!("In all {}{open}.", money(costs.total()))))
}

fn row(what: &str, much: String, cost: String, price: String) -> Tag {
    tag("tr")
        .child(tag("th").attr("scope", "row").child(what.to_owned()))
        .child(tag("td").child(much))
        .child(tag("td").child(cost))
        .child(tag("td").child(price))
}

fn amount(amount: Amount, units: UnitSystem) -> String {
    match (amount, units) {
        (Amount::Each(count), _) => count.to_string(),
        (Amount::Run(run), UnitSystem::Imperial) => format!("{:.0} ft", run.to_feet()),
        (Amount::Run(run), UnitSystem::Metric) => format!("{:.1} m", run / Length::metres(1.0)),
        (Amount::Volume(volume), UnitSystem::Imperial) => format!("{:.2} yd³", volume.to_cubic_feet() / 27.0),
        (Amount::Volume(volume), UnitSystem::Metric) => format!("{:.2} m³", volume.to_cubic_metres()),
        (Amount::Gallons(gallons), UnitSystem::Imperial) => format!("{gallons:.0} gal"),
        (Amount::Gallons(gallons), UnitSystem::Metric) => format!("{:.0} l", gallons * LITRES),
    }
}

/// The price of one foot, metre, gallon or litre.
fn one(amount: Amount, price: Money, units: UnitSystem) -> Money {
    let share = match (amount, units) {
        (Amount::Each(_), _) | (Amount::Gallons(_) | Amount::Volume(_), UnitSystem::Imperial) => 1.0,
        (Amount::Volume(_), UnitSystem::Metric) => CUBIC_YARDS,
        (Amount::Run(_), UnitSystem::Imperial) => 1.0 / 100.0,
        (Amount::Run(_), UnitSystem::Metric) => 1.0 / 30.48,
        (Amount::Gallons(_), UnitSystem::Metric) => 1.0 / LITRES,
    };
    price * share
}

//! The mill: what to order, what it weighs and costs, and what has come off the truck.
mod clipboard;
mod hand_out;
mod lengths;
mod order_list;
mod prices;
mod spacing;
mod truck;

use super::drawn::{fact, long};
use crate::app::components::{Caution, DrawingView, Fact, Facts, Fold, LengthField, Page, Steps, WeightField};
use crate::app::route::Place;
use crate::app::use_store;
use crate::drawing;
use crate::lens;
use crate::materials::{Confidence, species};
use crate::ordering::Order;
use crate::units::{show_density, show_weight};
use hand_out::HandOut;
use lengths::Lengths;
use leptos::prelude::*;
use order_list::OrderList;
use prices::Prices;
use spacing::SpacingFold;
use std::sync::Arc;
use truck::Truck;

/// Mill.
#[component]
pub fn MillPage() -> impl IntoView {
    let about = fact(|built, project| {
        let lengths = project.mill.lengths.len();
        let n_sticks = crate::ordering::n_pieces(&built.order);
        Some(format!("{n_sticks} pieces of stock for {} sticks, out of {lengths} lengths", built.sticks.len()))
    });
    view! {
        <Page place=Place::Mill title="Mill" about lead=|| view! { <Stock/> }>
            <OrderList/>
            <HandOut/>
            <Truck/>
            <TheMill/>
            <Prices/>
            <Lifting/>
            <SpacingFold/>
            <Wood/>
            <Caution text="Green timber rolls and slides: chock the load, strap it, keep feet and fingers out from under."/>
        </Page>
    }
}

/// The order of the last good frame; it tells its readers only when it changes itself.
fn order_memo() -> Memo<Option<Arc<Order>>> {
    let store = use_store();
    Memo::new(move |_| store.built().map(|built| Arc::new(built.order.clone())))
}

/// The sticks of stock with what comes out of them.
#[component]
fn Stock() -> impl IntoView {
    let store = use_store();
    let title = "The order at one scale: each stick of stock with what comes out of it, waste hatched";
    let draw = move |width: f64| {
        store.drawn().map_or_else(String::new, |good| {
            drawing::svg::print(&drawing::stock(&good.project, &good.built, width), width, title)
        })
    };
    view! { <DrawingView draw label=title/> }
}

/// What the mill has and how it is cut.
#[component]
fn TheMill() -> impl IntoView {
    let store = use_store();
    let summary = Signal::derive(move || format!("{} lengths", store.project().mill.lengths.len()));
    view! {
        <Fold title="What the mill has" summary open=true>
            <Lengths/>
            <LengthField
                field=lens!(mill.trim_each_end) label="Docked from each end" hint="before the first mark; checks and dirt go with it"
                steps=Steps::of(0.5, 10.0)
            />
            <LengthField
                field=lens!(mill.kerf) label="Width of the saw’s cut" hint="counted where short sticks come out of one long one"
                steps=Steps::of(0.0625, 1.0)
            />
        </Fold>
    }
}

/// What the crew can lift.
#[component]
fn Lifting() -> impl IntoView {
    let summary = {
        let store = use_store();
        Signal::derive(move || {
            let project = store.project();
            format!("up to {}", show_weight(project.mill.heaviest_pick, project.units))
        })
    };
    let heaviest = fact(|built, project| {
        let stick = built.heaviest()?;
        Some(format!("{}, {}", stick.mark, show_weight(stick.green_weight, project.units)))
    });
    let off_the_truck = fact(|built, project| {
        let each = built.order.lines.iter().map(|line| (line, line.weight / line.count.max(1) as f64));
        let (line, weight) = each.max_by(|a, b| a.1.to_pounds().total_cmp(&b.1.to_pounds()))?;
        Some(format!("{}, {}", line.section.label(project.units), show_weight(weight, project.units)))
    });
    view! {
        <Fold title="What the crew can lift" summary>
            <WeightField
                field=lens!(mill.heaviest_pick) label="Heaviest piece you can put up"
                hint="the beam is parted so that no piece is heavier" steps=Steps::of(25.0, 10.0)
            />
            <Facts>
                <Fact name="Heaviest stick, cut" value=heaviest/>
                <Fact name="Heaviest stock off the truck" value=off_the_truck/>
            </Facts>
            <Caution text="These are computed weights of green wood: wetter logs are heavier. Weigh one before you plan a lift on them."/>
        </Fold>
    }
}

/// Where the weights come from.
#[component]
fn Wood() -> impl IntoView {
    let store = use_store();
    let summary = Signal::derive(move || {
        species(&store.project().frame.species).map_or_else(String::new, |wood| wood.name.clone())
    });
    let words = move || {
        let project = store.project();
        let wood = species(&project.frame.species)?;
        let trust = match wood.confidence {
            Confidence::High => "compared with a printed source",
            Confidence::Medium => "recalled from a printed source, not compared",
            Confidence::Low => "a placeholder: ask locally",
        };
        let density = show_density(wood.green_density, project.units);
        Some(format!("{} weighs {density} as it comes green from the mill ({trust}). {}.", wood.name, wood.source))
    };
    view! {
        <Fold title="Where the weights come from" summary>
            <p class="page__word">{words}</p>
            <p class="page__word">
                "A board foot is 144 cubic inches: a foot of a plank 12 by 1 in. A cubic metre is 423.776 of them. Weights are
                section × length × green weight; the order is reckoned at the ordered size."
            </p>
        </Fold>
    }
}

/// How much is docked from a stick, in words.
fn docked() -> Signal<String> {
    long(|project| project.mill.trim_each_end, "")
}

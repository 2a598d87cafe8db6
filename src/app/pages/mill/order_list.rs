//! The order, a card for each line, with the sticks that come out of it.
use super::{docked, order_memo};
use crate::app::cached::text_of;
use crate::app::components::{facts, figures, fold, fractions, show_length_fine, word};
use crate::app::dom::{Tag, live, parts, tag};
use crate::app::route::Route;
use crate::app::use_store;
use crate::ordering::{
    Delivery, Order, OrderLine, StickOrder, WHY_TWICE, asked_length, full_words, n_pieces, piece_name, sawn_words,
    ways_out,
};
use crate::units::{show_money, show_weight, show_wood_volume};
use crate::wording::length;
use leptos::prelude::*;
use std::collections::BTreeSet;
use std::sync::Arc;

/// The order.
pub fn order_list() -> Tag {
    let store = use_store();
    let order = order_memo();
    let summary = text_of(move || {
        let price = order.with(|order| order.as_ref().map(|order| order.price));
        price.map(|price| show_money(price, &store.project().currency).to_string()).unwrap_or_default()
    });
    // What stands open stays open when the order changes.
    let open = RwSignal::new(BTreeSet::new());
    let cards = move || {
        let order = order.get()?;
        let deliveries = order.deliveries();
        let is_parted = deliveries.len() > 1;
        let list = |delivery: Delivery| {
            let lines = order.lines_of(delivery.number).cloned();
            let lines = lines.map(|line| card(line, order.clone(), open)).collect::<Vec<_>>();
            parts().child(is_parted.then(|| heading(delivery))).child(tag("ol").class("order").child(lines))
        };
        let lists = deliveries.into_iter().map(list).collect::<Vec<_>>();
        Some(parts().child(is_parted.then(|| word(WHY_TWICE))).child(lists))
    };
    let notes = move || {
        let project = store.project();
        let mut says = vec![full_words(project.units).to_owned()];
        says.extend(sawn_words(&project));
        says.into_iter().map(|says| tag("p").class("order__note").child(fractions(&says))).collect::<Vec<_>>()
    };
    fold("The order", summary, true, || {
        parts().child(unplaced()).live(cards).live(notes).live(move || order.get().map(totals))
    })
}

/// "First delivery", with what it weighs and costs.
fn heading(delivery: Delivery) -> Tag {
    let store = use_store();
    let says = move || {
        let project = store.project();
        let (heavy, price) =
            (show_weight(delivery.weight, project.units), show_money(delivery.price, &project.currency));
        format!("{} sticks · {heavy} · {price}", delivery.n_pieces)
    };
    tag("h3")
        .class("order__delivery")
        .child(tag("span").child(delivery.name()))
        .child(tag("span").class("order__figures").live_text(says))
}

fn totals(order: Arc<Order>) -> Tag {
    let store = use_store();
    let (pieces, volume, weight, price) = (n_pieces(&order), order.volume, order.weight, order.price);
    let wood = move || show_wood_volume(volume, store.units()).to_string();
    let heavy = move || show_weight(weight, store.units()).to_string();
    let money = move || show_money(price, &store.project().currency).to_string();
    let proof = order.proof_words();
    let spares = match order.n_spare() {
        0 => "none".to_owned(),
        n => format!("{n} among them"),
    };
    facts(&[
        ("Pieces of stock", pieces.to_string().into()),
        ("Spares", spares.into()),
        ("Wood in all", text_of(wood)),
        ("Weight in all, green", text_of(heavy)),
        ("Price in all", text_of(money)),
        ("That is", proof.into()),
    ])
}

/// Sticks longer than anything the mill has, and what can be done; sticks for which nothing is left.
fn unplaced() -> Tag {
    let store = use_store();
    let order = order_memo();
    live(move || {
        let order = order.get()?;
        let units = store.units();
        let (longest, built) = (store.project().mill.longest(), store.built()?);
        let sentences = order
            .unplaced
            .iter()
            .map(|(mark, needed)| {
                format!(
                    "{mark} needs {} with both ends docked, {} more than the mill’s longest. {}",
                    length(*needed, units),
                    length(*needed - longest, units),
                    ways_out(&built.sticks, mark)
                )
            })
            .chain(order.lacking.iter().map(|(mark, needed)| {
                format!("{mark} needs {} with both ends docked, and none so long is left.", length(*needed, units))
            }))
            .map(|says| tag("li").class("order__missing").child(fractions(&says)))
            .collect::<Vec<_>>();
        let head = if order.unplaced.is_empty() { "The mill has too few" } else { "No length is long enough" };
        (!sentences.is_empty()).then(|| {
            tag("div")
                .class("problem problem--stop")
                .child(tag("p").class("problem__says").child(tag("strong").class("problem__word").child(head)))
                .child(tag("ul").class("order__list").child(sentences))
        })
    })
}

fn card(line: OrderLine, order: Arc<Order>, open: RwSignal<BTreeSet<String>>) -> Tag {
    let key = piece_name(&line, 1);
    let is_open = open.with_untracked(|open| open.contains(&key));
    let turn = move |event: web_sys::Event| {
        let opened = event_target::<web_sys::Element>(&event).has_attribute("open");
        open.update(|open| {
            let _ = if opened { open.insert(key.clone()) } else { open.remove(&key) };
        });
    };
    let store = use_store();
    let asked = {
        let line = line.clone();
        move || {
            let units = store.units();
            fractions(&format!("{} × {}", line.section.label(units), asked_length(line.length, units)))
        }
    };
    let figures = {
        let line = line.clone();
        move || {
            let project = store.project();
            format!(
                "{} · {} · {}",
                show_wood_volume(line.volume, project.units),
                show_weight(line.weight, project.units),
                show_money(line.price, &project.currency)
            )
        }
    };
    let n_sticks: usize = line.holds.iter().map(Vec::len).sum();
    let head = match n_sticks {
        1 => "The stick that comes out of it".to_owned(),
        _ => format!("The {n_sticks} sticks that come out"),
    };
    tag("li")
        .class("order__line")
        .child(
            tag("p")
                .class("order__asked")
                .child(tag("span").class("order__count").child(line.count))
                .child(tag("span").class("order__size").live(asked)),
        )
        .child(tag("p").class("order__figures").live_text(figures))
        .child(
            line.spare_words()
                .map(|says| tag("p").class("order__spare").child(format!("{says}: no stick comes out of it yet"))),
        )
        .child(tag("p").class("order__grade").child(line.words.join(", ")))
        .child(
            tag("details")
                .class("order__sticks")
                .attr("open", is_open)
                .on("toggle", turn)
                .child(tag("summary").class("order__more").child(head))
                .child(sticks(line, order)),
        )
}

/// Net length and what is ordered for each stick of a line.
fn sticks(line: OrderLine, order: Arc<Order>) -> Tag {
    let find = |mark: &String| order.sticks.iter().find(|stick| stick.mark == *mark).cloned();
    let rows = line
        .holds
        .iter()
        .flat_map(|marks| {
            let n_out = marks.len();
            marks.iter().filter_map(find).map(move |stick| row(stick, n_out)).collect::<Vec<_>>()
        })
        .collect::<Vec<_>>();
    parts().child(figures("Sticks of this line", &["Stick", "Net", "Docked", "Ordered"], rows)).child(
        tag("p")
            .class("order__note")
            .child("Docked: ")
            .live(move || fractions(&docked().get()))
            .child(" from each end; purlins and blocks are not."),
    )
}

fn row(stick: StickOrder, n_out: usize) -> Tag {
    let store = use_store();
    let say = move |value| move || fractions(&show_length_fine(value, store.units()));
    let shared = (n_out > 1).then(|| format!(" share of {n_out}"));
    let (href, mark) = (Route::bench(&stick.mark).hash(), stick.mark.clone());
    tag("tr")
        .child(tag("th").attr("scope", "row").child(tag("a").class("order__stick").attr("href", href).child(mark)))
        .child(tag("td").live(say(stick.net)))
        .child(tag("td").live(say(stick.allowance)))
        .child(tag("td").live(say(stick.ordered)).child(shared))
}

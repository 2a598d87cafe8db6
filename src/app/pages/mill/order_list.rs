//! The order, a card for each line, with the sticks that come out of it.
use super::{docked, order_memo};
use crate::app::components::{Fact, Facts, Fold, fractions, show_length_fine};
use crate::app::route::Route;
use crate::app::use_store;
use crate::ordering::{Order, OrderLine, StickOrder, asked_length, n_pieces};
use crate::units::{show_money, show_weight, show_wood_volume};
use crate::wording::length;
use leptos::prelude::*;
use std::sync::Arc;

/// The order.
#[component]
pub fn OrderList() -> impl IntoView {
    let store = use_store();
    let order = order_memo();
    let total = Signal::derive(move || {
        let order = order.get()?;
        Some(show_money(order.price, &store.project().currency).to_string())
    });
    let summary = Signal::derive(move || total.get().unwrap_or_default());
    let cards = move || {
        let order = order.get()?;
        let lines = order.lines.iter().cloned().map(|line| view! { <Line line order=order.clone()/> }).collect_view();
        Some(view! { <ol class="order">{lines}</ol> })
    };
    view! {
        <Fold title="The order" summary open=true>
            <Unplaced/>
            {cards}
            {move || order.get().map(|order| view! { <Totals order/> })}
        </Fold>
    }
}

#[component]
fn Totals(order: Arc<Order>) -> impl IntoView {
    let store = use_store();
    let (pieces, volume, weight, price) = (n_pieces(&order), order.volume, order.weight, order.price);
    let wood = move || show_wood_volume(volume, store.units()).to_string();
    let heavy = move || show_weight(weight, store.units()).to_string();
    let money = move || show_money(price, &store.project().currency).to_string();
    view! {
        <Facts>
            <Fact name="Pieces of stock" value=pieces.to_string()/>
            <Fact name="Wood in all" value=Signal::derive(wood)/>
            <Fact name="Weight in all, green" value=Signal::derive(heavy)/>
            <Fact name="Price in all" value=Signal::derive(money)/>
        </Facts>
    }
}

/// Sticks longer than anything the mill has, and what can be done.
#[component]
fn Unplaced() -> impl IntoView {
    let store = use_store();
    let order = order_memo();
    move || {
        let order = order.get()?;
        let units = store.units();
        let sentences = order
            .unplaced
            .iter()
            .map(|(mark, needed)| {
                let says = format!(
                    "{mark} needs {} with both ends docked, and no length of the mill holds it. Ask for a longer one, dock less, \
                     or shorten the stick.",
                    length(*needed, units)
                );
                view! { <li class="order__missing">{fractions(&says)}</li> }
            })
            .collect_view();
        (!order.unplaced.is_empty()).then(|| {
            view! {
                <div class="problem problem--stop">
                    <p class="problem__says"><strong class="problem__word">"No length is long enough"</strong></p>
                    <ul class="order__list">{sentences}</ul>
                </div>
            }
        })
    }
}

#[component]
fn Line(line: OrderLine, order: Arc<Order>) -> impl IntoView {
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
    view! {
        <li class="order__line">
            <p class="order__asked">
                <span class="order__count">{line.count}</span>
                <span class="order__size">{asked}</span>
            </p>
            <p class="order__figures">{figures}</p>
            <details class="order__sticks">
                <summary class="order__more">{head}</summary>
                <Sticks line order/>
            </details>
        </li>
    }
}

/// Net length and what is ordered for each stick of a line.
#[component]
fn Sticks(line: OrderLine, order: Arc<Order>) -> impl IntoView {
    let find = |mark: &String| order.sticks.iter().find(|stick| stick.mark == *mark).cloned();
    let rows = line
        .holds
        .iter()
        .flat_map(|marks| {
            let n_out = marks.len();
            marks.iter().filter_map(find).map(move |stick| view! { <Row stick n_out/> }).collect::<Vec<_>>()
        })
        .collect_view();
    view! {
        <div class="table-box" tabindex="0" role="group" aria-label="Sticks of this line">
            <table class="table table--figures">
                <thead>
                    <tr>
                        <th scope="col">"Stick"</th>
                        <th scope="col">"Net"</th>
                        <th scope="col">"Docked"</th>
                        <th scope="col">"Ordered"</th>
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
        <p class="order__note">"Docked: " {move || fractions(&docked().get())} " from each end; purlins and blocks are not."</p>
    }
}

#[component]
fn Row(stick: StickOrder, n_out: usize) -> impl IntoView {
    let store = use_store();
    let say = move |value| move || fractions(&show_length_fine(value, store.units()));
    let shared = (n_out > 1).then(|| format!(" share of {n_out}"));
    let (href, mark) = (Route::bench(&stick.mark).hash(), stick.mark.clone());
    view! {
        <tr>
            <th scope="row"><a class="order__stick" href=href>{mark}</a></th>
            <td>{say(stick.net)}</td>
            <td>{say(stick.allowance)}</td>
            <td>{say(stick.ordered)} {shared}</td>
        </tr>
    }
}

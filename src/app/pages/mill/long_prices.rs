//! What long sticks cost more.
use super::prices::twin;
use crate::app::cached::text_of;
use crate::app::components::{Steps, length_field, money_field};
use crate::app::dom::{Item, Tag, button, parts, tag};
use crate::app::{Lens, use_store};
use crate::project::{LongPrice, Project};
use crate::units::{Length, Money};

/// Where long sticks commonly begin to cost more (common practice).
const LONG: Length = Length::feet(16.0);

/// The prices, each with the length it begins at.
pub fn long_prices() -> Tag {
    let store = use_store();
    let n_prices = store.slice(|project| project.mill.long_prices.len());
    let rows = move || (0..n_prices.get()).map(|index| Item::new(index.to_string(), move || one(index))).collect();
    let add = move |_| {
        store.edit(|project| {
            let prices = &mut project.mill.long_prices;
            let last = prices.iter().map(|price| price.over).fold(LONG - Length::feet(2.0), Length::max);
            prices.push(LongPrice { over: last + Length::feet(2.0), more: Money::cents(10) });
        });
    };
    tag("div")
        .class("prices")
        .child(tag("h3").class("group__title").child("Long sticks"))
        .each(rows)
        .child(button("button button--small", add).child("Long sticks cost more"))
}

fn one(index: usize) -> Tag {
    let store = use_store();
    let over = Lens::maybe(
        format!("mill.long_prices.{index}.over"),
        move |project: &Project| project.mill.long_prices.get(index).map(|price| price.over),
        move |project: &mut Project, over| {
            if let Some(price) = project.mill.long_prices.get_mut(index) {
                price.over = over;
            }
        },
    );
    let more = Lens::maybe(
        format!("mill.long_prices.{index}.more"),
        move |project: &Project| project.mill.long_prices.get(index).map(|price| price.more),
        move |project: &mut Project, more| {
            if let Some(price) = project.mill.long_prices.get_mut(index) {
                price.more = more;
            }
        },
    );
    let read = more.clone();
    let hint = text_of(move || {
        let project = store.project();
        read.get(&project).map_or_else(String::new, |price| twin(price, &project))
    });
    let label = text_of(move || format!("More for each board foot, {}", store.project().currency));
    let remove = move |_| {
        store.edit(|project| {
            if index < project.mill.long_prices.len() {
                project.mill.long_prices.remove(index);
            }
        });
    };
    tag("div").class("prices__one").child(
        parts()
            .child(
                length_field(over, "Longer than")
                    .hint("a stick just so long is not; the last that is reached counts")
                    .steps(Steps::of(12.0, 300.0)),
            )
            .child(money_field(more, label).hint(hint).steps(Steps::both(0.05)))
            .child(button("button button--small", remove).child("Take this price away")),
    )
}

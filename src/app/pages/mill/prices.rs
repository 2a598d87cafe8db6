//! What the mill asks: one price, and sections with a price of their own.
use super::long_prices::long_prices;
use super::order_memo;
use crate::app::cached::{Cached, text_of};
use crate::app::components::{Field, Steps, fold, money_field, number_field, path_problems, text_field};
use crate::app::dom::{Item, Tag, button, parts, tag};
use crate::app::{Lens, use_store};
use crate::lens;
use crate::materials::Section;
use crate::ordering::per_cubic_metre;
use crate::project::{Project, SectionPrice};
use crate::units::{Money, UnitSystem, show_money};

/// The price of a board foot with its twin, the price of a cubic metre.
pub(super) fn twin(price: Money, project: &Project) -> String {
    format!("{} a cubic metre", show_money(per_cubic_metre(price), &project.currency))
}

/// Prices.
pub fn prices() -> Tag {
    let store = use_store();
    let price = move || {
        let project = store.project();
        let each = project.mill.per_board_foot;
        match project.units {
            UnitSystem::Imperial => format!("{} a board foot", show_money(each, &project.currency)),
            UnitSystem::Metric => twin(each, &project),
        }
    };
    let hint = text_of(move || {
        let project = store.project();
        format!("{}, the same price", twin(project.mill.per_board_foot, &project))
    });
    let label = text_of(move || format!("Price of a board foot, {}", store.project().currency));
    fold("Prices", text_of(price), false, || {
        parts()
            .child(money_field(lens!(mill.per_board_foot), label).hint(hint).steps(Steps::both(0.1)))
            .child(sections())
            .child(long_prices())
            .child(free_of_heart())
            .child(text_field(lens!(currency), "Sign of the currency", 4).hint("shown before every price"))
    })
}

/// What sticks free of heart cost more.
fn free_of_heart() -> Field {
    let field = Lens::new(
        "mill.free_of_heart_more",
        |project: &Project| (project.mill.free_of_heart_more * 1e4).round() / 100.0,
        |project: &mut Project, percent: f64| project.mill.free_of_heart_more = percent / 100.0,
    );
    number_field(field, "Free of heart costs more, %", 0.0, 300.0, 5.0)
        .hint("on the price of the stick; some lists ask about 30 (common practice)")
}

/// Sections of the order, and those that have a price whether ordered or not.
fn sections() -> Tag {
    let store = use_store();
    let order = order_memo();
    let priced =
        store.slice(|project| project.mill.section_prices.iter().map(|price| price.section).collect::<Vec<_>>());
    let sections = Cached::new(move || {
        let mut all = priced.get();
        for line in order.get().iter().flat_map(|order| &order.lines) {
            if !all.contains(&line.section) {
                all.push(line.section);
            }
        }
        all
    });
    let rows = move || {
        let n_priced = priced.with(Vec::len);
        sections
            .get()
            .into_iter()
            .enumerate()
            .map(|(index, section)| {
                let name = section.label(UnitSystem::Imperial);
                if index < n_priced {
                    Item::new(format!("{index} {name}"), move || {
                        tag("div").class("prices__one").child(own(index, section))
                    })
                } else {
                    Item::new(name, move || common(section))
                }
            })
            .collect()
    };
    tag("div")
        .class("prices")
        .attr("id", "mill.section_prices")
        .attr("tabindex", "-1")
        .child(tag("h3").class("group__title").child("Sections with a price of their own"))
        .child(path_problems("mill.section_prices"))
        .each(rows)
}

fn own(index: usize, section: Section) -> Tag {
    let store = use_store();
    let field = Lens::maybe(
        format!("mill.section_prices.{index}.per_board_foot"),
        move |project: &Project| project.mill.section_prices.get(index).map(|price| price.per_board_foot),
        move |project: &mut Project, value| {
            if let Some(price) = project.mill.section_prices.get_mut(index) {
                price.per_board_foot = value;
            }
        },
    );
    let read = field.clone();
    let hint = text_of(move || {
        let project = store.project();
        read.get(&project).map_or_else(String::new, |price| format!("a board foot; {}", twin(price, &project)))
    });
    let label = text_of(move || format!("{}, {}", section.label(store.units()), store.project().currency));
    let remove = move |_| {
        store.edit(|project| {
            if index < project.mill.section_prices.len() {
                project.mill.section_prices.remove(index);
            }
        });
    };
    parts().child(money_field(field, label).hint(hint).steps(Steps::both(0.1))).child(
        button("button button--small", remove)
            .live(move || format!("{} at the common price", section.label(store.units()))),
    )
}

fn common(section: Section) -> Tag {
    let store = use_store();
    let give = move |_| {
        store.edit(|project| {
            let per_board_foot = project.mill.per_board_foot;
            project.mill.section_prices.push(SectionPrice { section, per_board_foot });
        });
    };
    button("button button--small", give).live(move || format!("Own price for {}", section.label(store.units())))
}

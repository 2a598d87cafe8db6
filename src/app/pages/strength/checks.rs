//! The list of checks; a tap opens the working and, where one fails, what would help.
use crate::app::cached::Cached;
use crate::app::components::{print_alone, word};
use crate::app::dom::{Tag, button, tag};
use crate::app::focus::go_to_field;
use crate::app::route::{Place, Router, use_router};
use crate::app::{Store, Strong, use_store};
use crate::checks::Check;
use crate::report::{self, Markup};
use crate::study::{Remedy, price, remedies};
use crate::units::show_money;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// Checks that stand in the list before all are asked for, at least those that fail.
const FIRST: usize = 14;

/// The remedies of the check that was opened last, by its place.
type Offered = StoredValue<Vec<(usize, Remedy)>>;

/// The checks, worst first, or those of the stick in hand.
pub fn checks() -> Tag {
    let store = use_store();
    let router = use_router();
    let all = RwSignal::new(false);
    let offered: Offered = StoredValue::new(Vec::new());
    let print_sheet = print_alone();
    let places = Cached::new(move || {
        store.strong().map(|strong| shown(&strong, router.stick().as_deref(), all.get())).unwrap_or_default()
    });
    let html = Cached::new(move || {
        store
            .strong()
            .map_or_else(String::new, |strong| report::list(&strong.strength, &places.get(), strong.good.project.units))
    });
    let tap = move |event: web_sys::Event| {
        if let (Some(strong), Some(element)) = (untrack(move || store.strong()), target(&event)) {
            match printed(&element).and_then(|place| strong.strength.checks.get(place)) {
                Some(check) => print_sheet(report::one_check(&strong.good.project, check)),
                None => tapped(store, router, &element, &strong, offered),
            }
        }
    };
    let heading = move || match router.stick() {
        Some(mark) => format!("Checks of {mark}"),
        None => "Checks, worst first".to_owned(),
    };
    let n_more = Cached::new(move || {
        let n = store.strong().map_or(0, |strong| strong.strength.checks.len());
        if router.stick().is_some() { 0 } else { n.saturating_sub(places.get().len()) }
    });
    let more = move || {
        let n = n_more.get();
        (n > 0).then(|| button("button", move |_| all.set(true)).child(format!("Show {n} more")))
    };
    let back = move || {
        router
            .stick()
            .map(|_| word(tag("a").class("paper-link").attr("href", Place::Strength.href()).child("All checks")))
    };
    tag("section")
        .class("check-list")
        .attr("aria-label", "Checks")
        .child(tag("h2").class("check-list__title").live(heading))
        .live(back)
        .child(tag("div").live_html(move || html.get()).on("click", tap))
        .live(more)
}

/// Places of the checks that are shown.
fn shown(strong: &Strong, stick: Option<&str>, all: bool) -> Vec<usize> {
    let checks = &strong.strength.checks;
    let of_stick = |check: &Check, mark: &str| {
        // Rafters, purlins and ledger pieces are checked once for all of their kind.
        let kind = |mark: &str| mark.chars().next().filter(|kind| "RNL".contains(*kind));
        check.member == mark || (kind(mark).is_some() && kind(&check.member) == kind(mark))
    };
    let wanted = |(place, check): (usize, &Check)| match stick {
        Some(mark) => of_stick(check, mark).then_some(place),
        None => (all || place < FIRST || !check.passes()).then_some(place),
    };
    checks.iter().enumerate().filter_map(wanted).collect()
}

fn target(event: &web_sys::Event) -> Option<web_sys::Element> {
    event.target()?.dyn_into::<web_sys::Element>().ok()
}

fn place_of(element: &web_sys::Element) -> Option<usize> {
    element.closest("[data-check]").ok()??.get_attribute("data-check")?.parse().ok()
}

/// The place of the check whose print was asked for.
fn printed(element: &web_sys::Element) -> Option<usize> {
    element.closest("[data-print]").ok()??.get_attribute("data-print")?.parse().ok()
}

/// A head was tapped: fill its body; a remedy was tapped: apply it; a missing datum was tapped: go to its field.
fn tapped(store: Store, router: Router, element: &web_sys::Element, strong: &Strong, offered: Offered) {
    if let Ok(Some(button)) = element.closest("[data-remedy]") {
        let place = button.get_attribute("data-remedy").and_then(|place| place.parse::<usize>().ok());
        let remedy = offered.with_value(|all| place.and_then(|place| all.get(place).cloned()));
        if let Some((_, remedy)) = remedy {
            let units = strong.good.project.units;
            store.edit(|project| *project = crate::project::Project { units, ..remedy.project });
        }
        return;
    }
    if let Ok(Some(button)) = element.closest("[data-missing]") {
        if let Some(field) = button.get_attribute("data-missing") {
            go_to_field(router, &field);
        }
        return;
    }
    let Ok(Some(head)) = element.closest(".check__head") else { return };
    let (Some(place), Some(body)) = (place_of(element), head.next_element_sibling()) else { return };
    let Some(check) = strong.strength.checks.get(place) else { return };
    if body.child_element_count() == 0 {
        body.set_inner_html(&body_of(strong, check, place, offered));
    }
}

fn body_of(strong: &Strong, check: &Check, place: usize, offered: Offered) -> String {
    let project = &strong.good.project;
    let mut out = Markup::new();
    if check.ratio().is_some() && !check.passes() {
        let found = remedies(project, &strong.strength, check);
        help(&mut out, &found, offered, place, &strong.good);
    }
    if let Some(input) = check.missing() {
        out.open("section class=\"help\"").leaf("h3 class=\"help__title\"", "What would help");
        out.open(&format!("button type=\"button\" class=\"button help__way\" data-missing=\"{}\"", input.field()));
        out.say(&format!("Fill in {}", input.name())).close("button").close("section");
    }
    out.raw(&report::working(check, project.units));
    out.open(&format!("button type=\"button\" class=\"button\" data-print=\"{place}\""));
    out.say("Print this check").close("button");
    out.finish()
}

/// What would help, each with one button that says what it costs and what is worst then.
fn help(out: &mut Markup, found: &[Remedy], offered: Offered, place: usize, good: &crate::app::Good) {
    out.open("section class=\"help\"").leaf("h3 class=\"help__title\"", "What would help");
    if found.is_empty() {
        out.leaf(
            "p",
            "No single change that was tried makes it hold: larger sticks, closer \
             spacing, another post, other fixings.",
        );
    }
    let now = price(&good.project, &good.built).to_f64();
    for remedy in found {
        let mut index = 0;
        offered.update_value(|all| {
            index = all.len();
            all.push((place, remedy.clone()));
        });
        let more = remedy.price.to_f64() - now;
        let said = show_money(crate::units::Money::of(more.abs()), &good.project.currency).to_string();
        let cost = if more.abs() < 0.5 {
            String::new()
        } else {
            format!(", {said} {}", if more > 0.0 { "more" } else { "less" })
        };
        let worst = remedy
            .worst
            .as_ref()
            .map_or_else(String::new, |(member, ratio)| format!("; worst then {member}, {:.0} %", ratio * 100.0));
        out.open(&format!("button type=\"button\" class=\"button help__way\" data-remedy=\"{index}\""));
        out.say(&format!("{}: {:.0} %{cost}{worst}", remedy.says, remedy.ratio * 100.0)).close("button");
    }
    out.close("section");
}

//! The list of checks; a tap opens the working and, where one fails, what would help.
use super::help::{Help, help};
use crate::app::cached::Cached;
use crate::app::components::{print_alone, word};
use crate::app::dom::{Tag, button, tag};
use crate::app::focus::go_to_field;
use crate::app::route::{Place, Router, use_router};
use crate::app::{Strong, use_store};
use crate::checks::Check;
use crate::report::{self, Markup};
use crate::study::can_be_helped;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// Checks that stand in the list before all are asked for, at least those that fail.
const FIRST: usize = 14;

/// A sheet that looks for what would help, by its check's place.
struct Open {
    place: usize,
    owner: Owner,
    is_done: RwSignal<bool>,
}

/// All such sheets, under the list's owner.
#[derive(Clone, Copy)]
struct Sheets(StoredValue<(Owner, Vec<Open>), LocalStorage>);

impl Sheets {
    fn new() -> Self {
        Self(StoredValue::new_local((Owner::current().unwrap_or_default(), Vec::new())))
    }

    /// Puts the search first into the sheet.
    fn look(self, strong: &Strong, place: usize, check: &Check, body: &web_sys::Element) {
        self.0.update_value(|(list, all)| {
            let owner = list.child();
            let Help { tag, is_done } = owner.with(|| untrack(|| help(strong, check)));
            let _ = body.insert_before(tag.node(), body.first_child().as_ref());
            all.push(Open { place, owner, is_done });
        });
    }

    /// A sheet is closed: ends its search. Whether anything was left to look at.
    fn close(self, place: usize) -> bool {
        let is_cut_short = |open: &Open| open.place == place && !open.is_done.get_untracked();
        self.end(is_cut_short)
    }

    /// Ends those searches, if there are any.
    fn end(self, which: impl Fn(&Open) -> bool) -> bool {
        let ended = self.0.try_update_value(|(_, all)| {
            let (gone, stay) = std::mem::take(all).into_iter().partition(which);
            *all = stay;
            gone
        });
        let ended: Vec<Open> = ended.unwrap_or_default();
        ended.iter().for_each(|open| open.owner.cleanup());
        !ended.is_empty()
    }
}

/// The checks, worst first, or those of the stick in hand.
pub fn checks() -> Tag {
    let store = use_store();
    let router = use_router();
    let all = RwSignal::new(false);
    let sheets = Sheets::new();
    let print_sheet = print_alone();
    let places = Cached::new(move || {
        store.strong().map(|strong| shown(&strong, router.stick().as_deref(), all.get())).unwrap_or_default()
    });
    // Written anew for every answer, though it reads the same: what would help is of one answer.
    let html = move || {
        let _ = sheets.end(|_| true);
        let list = |strong: Strong| report::list(&strong.strength, &places.get(), strong.good.project.units);
        store.strong().map_or_else(String::new, list)
    };
    let tap = move |event: web_sys::Event| {
        if let (Some(strong), Some(element)) = (untrack(move || store.strong()), target(&event)) {
            match printed(&element).and_then(|place| strong.strength.checks.get(place)) {
                Some(check) => print_sheet(report::one_check(&strong.good.project, check)),
                None => tapped(router, &element, &strong, sheets),
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
        .child(tag("div").live_html(html).on("click", tap))
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

/// A head was tapped: fill its body; a missing datum was tapped: go to its field.
fn tapped(router: Router, element: &web_sys::Element, strong: &Strong, sheets: Sheets) {
    if let Ok(Some(button)) = element.closest("[data-missing]") {
        if let Some(field) = button.get_attribute("data-missing") {
            go_to_field(router, &field);
        }
        return;
    }
    let Ok(Some(head)) = element.closest(".check__head") else { return };
    let (Some(place), Some(body)) = (place_of(element), head.next_element_sibling()) else { return };
    let Some(check) = strong.strength.checks.get(place) else { return };
    // The tap is told before it opens or closes.
    if head.parent_element().is_some_and(|sheet| sheet.has_attribute("open")) {
        if sheets.close(place) {
            body.set_inner_html("");
        }
    } else if body.child_element_count() == 0 {
        body.set_inner_html(&body_of(strong, check, place));
        if can_be_helped(check) {
            sheets.look(strong, place, check, &body);
        }
    }
}

fn body_of(strong: &Strong, check: &Check, place: usize) -> String {
    let project = &strong.good.project;
    let mut out = Markup::new();
    if let Some(input) = check.missing() {
        let title = if can_be_helped(check) { "What is missing" } else { "What would help" };
        out.open("section class=\"help\"").leaf("h3 class=\"help__title\"", title);
        out.open(&format!("button type=\"button\" class=\"button help__way\" data-missing=\"{}\"", input.field()));
        out.say(&format!("Fill in {}", input.name())).close("button").close("section");
    }
    out.raw(&report::working(check, project.units));
    out.open(&format!("button type=\"button\" class=\"button\" data-print=\"{place}\""));
    out.say("Print this check").close("button");
    out.finish()
}

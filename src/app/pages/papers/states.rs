//! States of the job that the user keeps under names: what they came to, and the way back to one.
use super::states_words::{beside, not_built};
use crate::app::cached::{Cached, text_of};
use crate::app::components::{fold, fractions, word};
use crate::app::dom::{Tag, button, parts, tag};
use crate::app::figures::Sums;
use crate::app::saving::{Saving, use_saving};
use crate::app::storage::Trouble;
use crate::app::storage::named::{self, MOST, Named};
use crate::app::{Store, clock, use_store};
use crate::project::file;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// Longest name, in characters.
const LONGEST: usize = 60;

/// What the form and every row share.
#[derive(Clone, Copy)]
struct Kept {
    store: Store,
    saving: Saving,
    /// The project's file as it is now.
    text: Cached<String>,
    /// Why the name typed last was not taken.
    refused: RwSignal<Option<String>>,
}

/// Named states.
pub fn states() -> Tag {
    let store = use_store();
    let text = Cached::new(move || file::write(&store.project()));
    let kept = Kept { store, saving: use_saving(), text, refused: RwSignal::new(None) };
    let summary = text_of(move || match kept.all().len() {
        0 => "none kept".to_owned(),
        n => format!("{n} kept"),
    });
    fold("Named states", summary, false, || {
        parts()
            .child(word(
                "The job as it is now, kept under a name to go back to. Kept on this device beside the project; its file \
                 holds only the job as it is.",
            ))
            .child(kept.form())
            .live(move || kept.rows())
    })
}

impl Kept {
    /// The states of the open project (tracked).
    fn all(self) -> Vec<Named> {
        self.saving.list.track();
        self.store.id().map_or_else(Vec::new, |id| named::named(&id))
    }

    /// What the frame comes to now, and how it carries where that is worked out already (tracked).
    fn now(self) -> Option<Sums> {
        let good = self.store.good().filter(|_| !self.store.is_stale())?;
        let strong = self.store.strong().filter(|strong| strong.good == good);
        Some(Sums::of(&good.built, strong.as_ref().map(|strong| &*strong.strength)))
    }

    /// Does something to the states of the open project; what went wrong is said.
    fn act(self, done: &str, act: &dyn Fn(&str) -> Result<(), Trouble>) -> bool {
        let Some(id) = untrack(|| self.store.id()) else { return false };
        let trouble = act(&id).err();
        let is_done = trouble.is_none();
        if let Some(trouble) = trouble {
            self.saving.notice.set(Some(format!("Not {done}: {trouble}.")));
        }
        self.saving.list.update(|list| *list += 1);
        is_done
    }

    /// The name as it is typed, unless it cannot be given to any state but the one kept then.
    fn name_of(self, event: &web_sys::HtmlInputElement, but: f64) -> Option<String> {
        let name = event.value().trim().to_owned();
        let is_taken = || untrack(|| self.all()).iter().any(|state| state.name == name && state.kept != but);
        let why = match name.chars().count() {
            0 => Some("Type a name, like: as ordered.".to_owned()),
            n if n > LONGEST => Some(format!("At most {LONGEST} characters; this has {n}.")),
            _ if is_taken() => Some("There is a state of that name.".to_owned()),
            _ => None,
        };
        let is_good = why.is_none();
        self.refused.set(why);
        is_good.then_some(name)
    }

    fn form(self) -> Tag {
        let is_full = move || self.all().len() >= MOST;
        let input = name_input("state-name").attr("aria-describedby", "state-refused");
        let typed = input.clone();
        let keep = move |event: web_sys::Event| {
            event.prevent_default();
            let field: &web_sys::HtmlInputElement = typed.element().unchecked_ref();
            if self.name_of(field, 0.0).is_some_and(|name| self.keep(name)) {
                field.set_value("");
            }
        };
        let says = move || match self.refused.get() {
            None if is_full() => Some(format!("{MOST} are kept: take one away first.")),
            refused => refused,
        };
        let label = tag("span").class("field__name").child("Name of the state as it is now");
        let press =
            tag("button").attr("type", "submit").class("button").live_attr("disabled", is_full).child("Keep it");
        tag("form")
            .class("another")
            .on("submit", keep)
            .child(tag("label").class("field__label").attr("for", "state-name").child(label))
            .child(tag("div").class("another__row").child(input).child(press))
            .child(tag("p").class("field__refused").attr("id", "state-refused").attr("role", "status").live(says))
    }

    fn keep(self, name: String) -> bool {
        // Two in one millisecond would be taken for one.
        let last = untrack(|| self.all()).first().map_or(0.0, |state| state.kept);
        let state = Named {
            name,
            kept: clock::now().max(last + 1.0),
            text: self.text.get_untracked(),
            sums: untrack(|| self.now()),
        };
        self.act("kept", &|id| named::keep(id, state.clone()))
    }

    /// All that are kept, and the way back for the one that was taken away last.
    fn rows(self) -> Tag {
        let rows = self.all().into_iter().map(|state| self.row(state)).collect::<Vec<_>>();
        let gone = self.store.id().and_then(|id| named::gone(&id)).map(|name| {
            let bring_back = move |_| {
                self.act("brought back", &named::bring_back);
            };
            tag("p")
                .class("projects__gone")
                .attr("role", "status")
                .child(tag("span").child(format!("“{name}” was taken away.")))
                .child(button("button", bring_back).child("Bring it back"))
        });
        parts().child(tag("ul").class("list").child(rows)).child(gone)
    }

    fn row(self, state: Named) -> Tag {
        let Named { name, kept, text, sums } = state;
        let (file, went_back) = (text.clone(), name.clone());
        let is_now = move || self.text.with(|now| *now == text);
        let disabled = is_now.clone();
        let old_name = name.clone();
        let rename = move |event: web_sys::Event| {
            let field: web_sys::HtmlInputElement = event_target(&event);
            if let Some(typed) = self.name_of(&field, kept) {
                self.act("renamed", &|id| named::rename(id, kept, &typed));
                return;
            }
            field.set_value(&old_name);
            if let Some(why) = self.refused.get_untracked() {
                self.refused.set(None);
                self.saving.notice.set(Some(format!("Not renamed. {why}")));
            }
        };
        let take_off = move |_| {
            self.act("taken away", &|id| named::take_off(id, kept));
        };
        let field = name_input(&format!("state-{kept}"))
            .attr("aria-label", "Name of this state")
            .attr("value", name.clone())
            .on("change", rename);
        let go_back = button("button button--small", move |_| self.go_back(&went_back, &file))
            .attr("aria-label", format!("Go back to it: {name}"))
            .live_attr("disabled", disabled)
            .child("Go back to it");
        tag("li")
            .class("state")
            .child(tag("div").class("another__row").child(field))
            .child(tag("p").class("list__when").child(format!("kept {}", clock::show(kept))))
            .child(tag("p").class("state__says").live(move || fractions(&self.says(sums.as_ref(), is_now()))))
            .child(
                tag("div").class("actions").child(go_back).child(
                    button("button button--small", take_off)
                        .attr("aria-label", format!("Take it away: {name}"))
                        .child("Take it away"),
                ),
            )
    }

    /// What a state came to, beside what the frame comes to now.
    fn says(self, sums: Option<&Sums>, is_now: bool) -> String {
        match sums {
            _ if is_now => "This is the job as it is now.".to_owned(),
            None => not_built(),
            Some(sums) => {
                let project = self.store.project();
                beside(sums, self.now().as_ref(), project.units, &project.currency)
            }
        }
    }

    /// One step; the units stay as they are shown.
    fn go_back(self, name: &str, text: &str) {
        match file::read(text) {
            Ok(mut project) => self.store.edit(|present| {
                project.units = present.units;
                *present = project;
            }),
            Err(why) => self.saving.notice.set(Some(format!("“{name}” could not be read. {why}"))),
        }
    }
}

fn name_input(id: &str) -> Tag {
    tag("input")
        .class("field__input")
        .attr("id", id.to_owned())
        .attr("type", "text")
        .attr("autocomplete", "off")
        .attr("enterkeyhint", "done")
}

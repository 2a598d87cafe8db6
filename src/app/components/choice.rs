//! One of a few, and one of many.
use super::problem::problem_note;
use super::reading::followed;
use crate::app::cached::Cached;
use crate::app::dom::{Child, Tag, parts, tag};
use crate::app::{Lens, use_store};
use crate::project::Problem;
use leptos::prelude::*;

/// The problems of exactly that field.
fn problems_at(path: &str) -> Cached<Vec<Problem>> {
    let store = use_store();
    let path = path.to_owned();
    Cached::new(move || store.problems_of(&path))
}

fn notes(problems: Cached<Vec<Problem>>) -> Tag {
    parts().live(move || problems.get().into_iter().map(|problem| problem_note(problem, None)).collect::<Vec<_>>())
}

/// One of a few that can be chosen.
pub struct Segment {
    word: Signal<String>,
    is_chosen: Box<dyn Fn() -> bool + Send + Sync>,
    choose: Box<dyn Fn()>,
}

impl Segment {
    /// A segment with its word, whether it is the chosen one, and what choosing it does.
    pub fn new(
        word: impl Into<Signal<String>>,
        is_chosen: impl Fn() -> bool + Send + Sync + 'static,
        choose: impl Fn() + 'static,
    ) -> Self {
        Self { word: word.into(), is_chosen: Box::new(is_chosen), choose: Box::new(choose) }
    }

    fn made(self, name: &str) -> Tag {
        let Self { word, is_chosen, choose } = self;
        let is_chosen = Cached::new(is_chosen);
        let input = tag("input").class("segment__input").attr("type", "radio").attr("name", name.to_owned());
        tag("label")
            .class("segment")
            .child(input.live_prop("checked", move || is_chosen.get()).on("change", move |_| choose()))
            .child(tag("span").class("segment__word").child(word))
    }
}

/// A row of segments under a name that no other row of the page has.
pub fn segments(name: &str, label: &str, under: impl Child, all: Vec<Segment>) -> Tag {
    tag("fieldset").class("choice").child(tag("legend").class("choice__label").child(label)).child(under).child(
        tag("div").class("choice__segments").child(all.into_iter().map(|one| one.made(name)).collect::<Vec<_>>()),
    )
}

/// One of a few, as large segments.
///
/// What `choose` does, where it is given, takes the place of putting the value in.
pub fn choice<T>(
    field: Lens<T>,
    label: &str,
    hint: impl Into<Signal<String>>,
    options: Vec<(T, String)>,
    choose: Option<Callback<T>>,
) -> Tag
where
    T: Clone + PartialEq + Send + Sync + 'static,
{
    let store = use_store();
    let all = options
        .into_iter()
        .map(|(value, word)| {
            let (of_lens, of_value, set) = (field.clone(), value.clone(), field.clone());
            let is_chosen = move || of_lens.get(&store.project()).as_ref() == Some(&of_value);
            Segment::new(word, is_chosen, move || match choose {
                Some(choose) => choose.run(value.clone()),
                None => store.edit(|project| set.set(project, value.clone())),
            })
        })
        .collect();
    row(&field.path(), label, hint.into(), all)
}

fn row(path: &str, label: &str, hint: Signal<String>, all: Vec<Segment>) -> Tag {
    segments(path, label, tag("p").class("field__hint").child(followed(hint)), all)
        .attr("id", path.to_owned())
        .attr("tabindex", "-1")
        .child(notes(problems_at(path)))
}

/// One of many, as a list that opens.
pub fn pick(field: Lens<String>, label: &str, hint: impl Into<Signal<String>>, options: Vec<(String, String)>) -> Tag {
    let hint = hint.into();
    let store = use_store();
    let path = field.path().to_string();
    let shown = field.clone();
    let problems = problems_at(&path);
    let value = Cached::new(move || shown.get(&store.project()).unwrap_or_default());
    let items = options
        .into_iter()
        .map(|(key, word)| {
            let of_key = key.clone();
            tag("option")
                .attr("value", key)
                .live_attr("selected", move || value.with(|value| *value == of_key))
                .child(word)
        })
        .collect::<Vec<_>>();
    let pick = move |event| {
        let key = event_target_value(&event);
        store.edit(|project| field.set(project, key));
    };
    tag("div")
        .class("field")
        .child(
            tag("label")
                .class("field__label")
                .attr("for", path.clone())
                .child(tag("span").class("field__name").child(label))
                .child(tag("span").class("field__hint").child(followed(hint))),
        )
        .child(
            tag("div").class("field__box").child(
                tag("select")
                    .class("field__input field__pick")
                    .attr("id", path.clone())
                    .child(items)
                    .live_prop("value", move || value.get())
                    .on("change", pick),
            ),
        )
        .child(notes(problems))
}

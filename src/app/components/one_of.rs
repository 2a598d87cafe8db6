//! One of the values of a kind: segments where they are few, a list that opens where they are many.
use super::choice::{choice, pick};
use crate::app::Lens;
use crate::app::dom::Tag;
use crate::project::Project;
use leptos::prelude::*;

/// Up to here all values are in sight.
const FEW: usize = 4;

/// A field by the place of its value in the list, so that one component serves every kind.
fn by_place<T: Copy + PartialEq + Send + Sync>(lens: &Lens<T>, values: &'static [(T, &'static str)]) -> Lens<usize> {
    let (read, write) = (lens.clone(), lens.clone());
    Lens::maybe(
        lens.path(),
        move |project| {
            let now = read.get(project)?;
            values.iter().position(|(value, _)| *value == now)
        },
        move |project: &mut Project, place: usize| {
            if let Some((value, _)) = values.get(place) {
                write.set(project, *value);
            }
        },
    )
}

/// What a list of values needs to be shown, with its kind rubbed off.
pub struct Listed {
    /// The field, by the place of its value.
    pub field: Lens<usize>,
    /// The words of the values, in order.
    pub words: Vec<&'static str>,
}

/// The values of a field with their words, in order.
#[must_use]
pub fn listed<T: Copy + PartialEq + Send + Sync>(lens: &Lens<T>, values: &'static [(T, &'static str)]) -> Listed {
    Listed { field: by_place(lens, values), words: values.iter().map(|(_, word)| *word).collect() }
}

/// One of the values.
pub fn listed_field(of: Listed, label: &str, hint: impl Into<Signal<String>>) -> Tag {
    let Listed { field, words } = of;
    if words.len() <= FEW {
        let options = words.into_iter().map(str::to_owned).enumerate().collect();
        return choice(field, label, hint, options, None);
    }
    let options = words.into_iter().enumerate().map(|(place, word)| (place.to_string(), word.to_owned())).collect();
    let field = Lens::maybe(
        field.path(),
        {
            let read = field.clone();
            move |project| read.get(project).map(|place| place.to_string())
        },
        move |project: &mut Project, place: String| {
            if let Ok(place) = place.parse() {
                field.set(project, place);
            }
        },
    );
    pick(field, label, hint, options)
}

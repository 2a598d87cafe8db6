//! How strong the wood is taken to be: its grade, its dryness, values of the user's own.
use crate::app::cached::text_of;
use crate::app::components::{
    FieldRow, Of, STRESS, WORDS, entry_field, field_table, fold, group, listed, listed_field, nothing_is_open, word,
};
use crate::app::dom::{Item, Tag, button, parts, tag};
use crate::app::{Lens, use_store};
use crate::members::{Grade, Property};
use crate::project::{OwnValue, Project, Used, Wood};
use crate::units::Stress;
use crate::{at, one_of};

const GRADES: &[(Grade, &str)] =
    &[(Grade::SelectStructural, "Select Structural"), (Grade::No1, "No.1"), (Grade::No2, "No.2")];

const USES: &[(Used, &str)] = &[
    (Used::Post, "posts"),
    (Used::Beam, "beam pieces"),
    (Used::Brace, "braces"),
    (Used::Rafter, "rafters"),
    (Used::Ledger, "ledger pieces"),
    (Used::Purlin, "purlins"),
];

const PROPERTIES: &[(Property, &str)] = &[
    (Property::Bending, "F_b, bending"),
    (Property::Tension, "F_t, tension along the grain"),
    (Property::Shear, "F_v, shear along the grain"),
    (Property::BearingAcross, "F_c⊥, bearing on the side of the grain"),
    (Property::Compression, "F_c, compression along the grain"),
    (Property::Stiffness, "E, stiffness"),
    (Property::LeastStiffness, "E_min, stiffness for buckling"),
];

const WOOD: &[FieldRow] = &[
    FieldRow::new(
        "Sticks 5 in (127 mm) and thicker",
        "better than No.2 only with a grader’s stamp or letter",
        one_of!(wood.timber_grade, GRADES),
    ),
    FieldRow::new(
        "Thinner sticks",
        "purlins, rafters and braces under 5 in (127 mm)",
        one_of!(wood.lumber_grade, GRADES),
    ),
    FieldRow::new(
        "Dry when it is loaded, and stays dry",
        "at or under 19 % moisture; timber green from the mill is not",
        Of::Toggle(at!(wood.is_dry)),
    ),
];

/// Wood.
pub fn wood_and_grade() -> Tag {
    let store = use_store();
    let summary = text_of(move || {
        let wood = &store.project().wood;
        let dry = if wood.is_dry { "dry" } else { "not dry" };
        format!("taken as {}, {dry}", wood.timber_grade.name())
    });
    fold("Wood and its grade", summary, false, || {
        parts()
            .child(word(
                "No grader has stamped sticks straight from a mill: No.2 is assumed. \
                 Local law may limit what an unstamped stick counts as, or forbid it: ask \
                 before you order.",
            ))
            .child(field_table(WOOD))
            .child(own_values())
    })
}

/// Values in place of the table's.
fn own_values() -> Tag {
    let store = use_store();
    let n_own = store.slice(|project| project.wood.own.len());
    let rows = move || (0..n_own.get()).map(|index| Item::new(index.to_string(), move || own(index))).collect();
    let add = move |_| store.edit(|project| add_own(&mut project.wood));
    let is_full = move || !store.project().wood.own.is_empty() && free(&store.project().wood).is_none();
    tag("div")
        .attr("id", "wood.own")
        .attr("tabindex", "-1")
        .child(tag("h3").class("group__title").child("Values of your own"))
        .child(word(
            "Off a grader’s letter or a test, in place of the table’s; before any \
             adjustment for load, moisture or size.",
        ))
        .each(rows)
        .child(
            tag("div")
                .class("actions")
                .child(button("button", add).live_attr("disabled", is_full).child("Add a value")),
        )
}

/// Sticks and a property that have no value of the user's own yet.
fn free(wood: &Wood) -> Option<(Used, Property)> {
    let all = USES.iter().flat_map(|(used, _)| PROPERTIES.iter().map(|(property, _)| (*used, *property)));
    all.into_iter().find(|pair| wood.own.iter().all(|own| (own.used, own.property) != *pair))
}

/// A value of which nothing is known yet but what it is for.
fn add_own(wood: &mut Wood) {
    if let Some((used, property)) = free(wood) {
        wood.own.push(OwnValue { used, property, value: Stress::ZERO, source: String::new() });
    }
}

/// One field of one value.
fn of_own<T: 'static>(
    index: usize,
    name: &str,
    get: impl Fn(&OwnValue) -> T + Send + Sync + 'static,
    set: impl Fn(&mut OwnValue, T) + Send + Sync + 'static,
) -> Lens<T> {
    Lens::maybe(
        format!("wood.own.{index}.{name}"),
        move |project: &Project| project.wood.own.get(index).map(&get),
        move |project: &mut Project, value| {
            if let Some(own) = project.wood.own.get_mut(index) {
                set(own, value);
            }
        },
    )
}

fn own(index: usize) -> Tag {
    let store = use_store();
    let used = of_own(index, "used", |own| own.used, |own, used| own.used = used);
    let property = of_own(index, "property", |own| own.property, |own, property| own.property = property);
    let value = of_own(index, "value", |own| own.value, |own, value| own.value = value);
    let source = of_own(index, "source", |own| own.source.clone(), |own, source| own.source = source);
    let number = index + 1;
    let remove = move |_| {
        store.edit(|project| {
            if index < project.wood.own.len() {
                project.wood.own.remove(index);
            }
        });
    };
    group(
        &format!("Value {number}"),
        parts()
            .child(listed_field(listed(&used, USES), &format!("Value {number} is for"), ""))
            .child(listed_field(listed(&property, PROPERTIES), &format!("Value {number} is"), ""))
            .child(
                entry_field(STRESS.open(&nothing_is_open(&value)), format!("Value {number}").into())
                    .hint("as the source gives it")
                    .decimal_keys(),
            )
            .child(
                entry_field(WORDS.open(&nothing_is_open(&source)), format!("Source of value {number}").into())
                    .hint("who says so, where, when"),
            )
            .child(button("button button--small", remove).child(format!("Take value {number} away"))),
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::demo;

    /// Every value that is added is for something that has none yet; after all of them nothing more is added.
    #[test]
    fn added_values_are_for_different_things() {
        let mut wood = demo::wool_barn().wood;
        for _ in 0..50 {
            add_own(&mut wood);
        }
        assert_eq!(wood.own.len(), USES.len() * PROPERTIES.len());
        assert_eq!(free(&wood), None);
    }
}

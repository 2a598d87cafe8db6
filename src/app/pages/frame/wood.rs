//! How strong the wood is taken to be: its grade, its dryness, values of the user's own.
use crate::app::components::{
    EntryField, FieldRow, FieldTable, Fold, Group, Of, OneOf, STRESS, WORDS, listed, nothing_is_open,
};
use crate::app::{Lens, use_store};
use crate::members::{Grade, Property};
use crate::project::{OwnValue, Project, Used, Wood};
use crate::units::Stress;
use crate::{at, one_of};
use leptos::prelude::*;

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
#[component]
pub fn WoodAndGrade() -> impl IntoView {
    let store = use_store();
    let summary = Signal::derive(move || {
        let wood = &store.project().wood;
        let dry = if wood.is_dry { "dry" } else { "not dry" };
        format!("taken as {}, {dry}", wood.timber_grade.name())
    });
    view! {
        <Fold title="Wood and its grade" summary>
            <p class="page__word">
                "No grader has stamped sticks straight from a mill: No.2 is assumed. Local law may limit what an unstamped stick counts as,
                or forbid it: ask before you order."
            </p>
            <FieldTable of=WOOD/>
            <OwnValues/>
        </Fold>
    }
}

/// Values in place of the table's.
#[component]
fn OwnValues() -> impl IntoView {
    let store = use_store();
    let n_own = store.slice(|project| project.wood.own.len());
    let rows = move || (0..n_own.get()).map(|index| view! { <Own index/> }).collect_view();
    let add = move |_| store.edit(|project| add_own(&mut project.wood));
    let is_full = move || !store.project().wood.own.is_empty() && free(&store.project().wood).is_none();
    view! {
        <div id="wood.own" tabindex="-1">
            <h3 class="group__title">"Values of your own"</h3>
            <p class="page__word">"Off a grader’s letter or a test, in place of the table’s; before any adjustment for load, moisture or size."</p>
            {rows}
            <div class="actions">
                <button type="button" class="button" disabled=is_full on:click=add>"Add a value"</button>
            </div>
        </div>
    }
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

#[component]
fn Own(index: usize) -> impl IntoView {
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
    view! {
        <Group title=format!("Value {number}")>
            <OneOf of=listed(&used, USES) label=format!("Value {number} is for")/>
            <OneOf of=listed(&property, PROPERTIES) label=format!("Value {number} is")/>
            <EntryField
                entry=STRESS.open(&nothing_is_open(&value)) label=format!("Value {number}") decimal_keys=true
                hint="as the source gives it"
            />
            <EntryField
                entry=WORDS.open(&nothing_is_open(&source)) label=format!("Source of value {number}") hint="who says so, where, when"
            />
            <button type="button" class="button button--small" on:click=remove>{format!("Take value {number} away")}</button>
        </Group>
    }
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

//! The same as components, for pages that are written with `view!`.
use super::{
    Entry, Field, Steps, caution, choice, count_field, entry_field, fact_line, fact_list, fold, group, length_field,
    money_field, number_field, page, path_problems, pick, signed_length_field, slope_field, text_field, toggle,
    weight_field,
};
use crate::app::Lens;
use crate::app::route::Place;
use crate::units::{Length, Money, Slope, Weight};
use leptos::prelude::*;

fn stepped(field: Field, hint: Signal<String>, steps: Option<Steps>) -> AnyView {
    let field = field.hint(hint);
    match steps {
        Some(steps) => field.steps(steps).into_any(),
        None => field.into_any(),
    }
}

/// A length.
#[component]
pub fn LengthField(
    /// The field of the project.
    field: Lens<Length>,
    /// The label.
    #[prop(into)]
    label: Signal<String>,
    /// A few words under the label.
    #[prop(optional, into)]
    hint: Signal<String>,
    /// Steps of the − and + buttons; none leaves them out.
    #[prop(optional)]
    steps: Option<Steps>,
    /// It may be below zero.
    #[prop(optional)]
    signed: bool,
) -> impl IntoView {
    let made = if signed { signed_length_field(field, label) } else { length_field(field, label) };
    stepped(made, hint, steps)
}

/// A slope.
#[component]
pub fn SlopeField(
    /// The field of the project.
    field: Lens<Slope>,
    /// The label.
    #[prop(into)]
    label: Signal<String>,
    /// A few words under the label.
    #[prop(optional, into)]
    hint: Signal<String>,
) -> impl IntoView {
    slope_field(field, label).hint(hint).into_any()
}

/// A weight.
#[component]
pub fn WeightField(
    /// The field of the project.
    field: Lens<Weight>,
    /// The label.
    #[prop(into)]
    label: Signal<String>,
    /// A few words under the label.
    #[prop(optional, into)]
    hint: Signal<String>,
    /// Steps of the − and + buttons; none leaves them out.
    #[prop(optional)]
    steps: Option<Steps>,
) -> impl IntoView {
    stepped(weight_field(field, label), hint, steps)
}

/// A price; the currency’s sign belongs in the label.
#[component]
pub fn MoneyField(
    /// The field of the project.
    field: Lens<Money>,
    /// The label.
    #[prop(into)]
    label: Signal<String>,
    /// A few words under the label.
    #[prop(optional, into)]
    hint: Signal<String>,
    /// Steps of the − and + buttons; none leaves them out.
    #[prop(optional)]
    steps: Option<Steps>,
) -> impl IntoView {
    stepped(money_field(field, label), hint, steps)
}

/// A text of the project.
#[component]
pub fn TextField(
    /// The field of the project.
    field: Lens<String>,
    /// The label.
    #[prop(into)]
    label: Signal<String>,
    /// A few words under the label.
    #[prop(optional, into)]
    hint: Signal<String>,
    /// Longest text that is taken, in characters.
    #[prop(default = 80)]
    most: usize,
) -> impl IntoView {
    text_field(field, label, most).hint(hint).into_any()
}

/// How many of something.
#[component]
pub fn CountField(
    /// The field of the project.
    field: Lens<usize>,
    /// The label.
    #[prop(into)]
    label: Signal<String>,
    /// A few words under the label.
    #[prop(optional, into)]
    hint: Signal<String>,
    /// The fewest.
    #[prop(default = 0)]
    least: usize,
    /// The most.
    #[prop(default = 99)]
    most: usize,
) -> impl IntoView {
    count_field(field, label, least, most).hint(hint).into_any()
}

/// A plain number, like a share or a percentage.
#[component]
pub fn NumberField(
    /// The field of the project.
    field: Lens<f64>,
    /// The label.
    #[prop(into)]
    label: Signal<String>,
    /// A few words under the label.
    #[prop(optional, into)]
    hint: Signal<String>,
    /// The least that is taken.
    #[prop(default = 0.0)]
    least: f64,
    /// The most that is taken.
    #[prop(default = 1e6)]
    most: f64,
    /// One step.
    #[prop(default = 1.0)]
    step: f64,
) -> impl IntoView {
    number_field(field, label, least, most, step).hint(hint).into_any()
}

/// A switch.
#[component]
pub fn Toggle(
    /// The field of the project.
    field: Lens<bool>,
    /// The label.
    #[prop(into)]
    label: Signal<String>,
    /// A few words under the label.
    #[prop(optional, into)]
    hint: Signal<String>,
) -> impl IntoView {
    toggle(field, label, hint).into_any()
}

/// One of many, as a list that opens.
#[component]
pub fn Pick(
    /// The field of the project.
    field: Lens<String>,
    /// The label.
    #[prop(into)]
    label: String,
    /// A few words under the label.
    #[prop(optional, into)]
    hint: Signal<String>,
    /// Values with their words, in order.
    options: Vec<(String, String)>,
) -> impl IntoView {
    pick(field, &label, hint, options).into_any()
}

/// One of a few, as large segments.
#[component]
pub fn Choice<T>(
    /// The field of the project.
    field: Lens<T>,
    /// The label of the group.
    #[prop(into)]
    label: String,
    /// A few words under the label.
    #[prop(optional, into)]
    hint: Signal<String>,
    /// Values with their words, in order.
    options: Vec<(T, String)>,
    /// What a choice does instead of putting the value in.
    #[prop(optional)]
    choose: Option<Callback<T>>,
) -> impl IntoView
where
    T: Clone + PartialEq + Send + Sync + 'static,
{
    choice(field, &label, hint, options, choose).into_any()
}

/// A labelled text field over an [`Entry`].
#[component]
pub fn EntryField(
    /// What it holds.
    entry: Entry,
    /// The label.
    #[prop(into)]
    label: Signal<String>,
    /// A few words under the label.
    #[prop(optional, into)]
    hint: Signal<String>,
    /// Steps of the − and + buttons; none leaves them out.
    #[prop(optional)]
    steps: Option<Steps>,
    /// The steps are lengths.
    #[prop(optional)]
    is_length: bool,
    /// Decimal keys on a phone, for fields that need no prime, dash or letter.
    #[prop(optional)]
    decimal_keys: bool,
) -> impl IntoView {
    let field = entry_field(entry, label);
    let field = if is_length { field.is_length() } else { field };
    stepped(if decimal_keys { field.decimal_keys() } else { field }, hint, steps)
}

/// A part of a page that can be folded away.
#[component]
pub fn Fold(
    /// Its heading.
    #[prop(into)]
    title: String,
    /// What it holds, in a few words or numbers: seen while it is folded.
    #[prop(optional, into)]
    summary: Signal<String>,
    /// It starts open.
    #[prop(optional)]
    open: bool,
    /// Its fields.
    children: Children,
) -> impl IntoView {
    fold(&title, summary, open, children()).into_any()
}

/// Fields that belong together inside a part.
#[component]
pub fn Group(
    /// Its heading.
    #[prop(into)]
    title: String,
    /// Its fields.
    children: Children,
) -> impl IntoView {
    group(&title, children()).into_any()
}

/// A list of facts.
#[component]
pub fn Facts(
    /// The facts.
    children: Children,
) -> impl IntoView {
    fact_list(children()).into_any()
}

/// One computed fact: a name and what it comes to.
#[component]
pub fn Fact(
    /// Its name.
    #[prop(into)]
    name: String,
    /// What it comes to; fractions are set as fractions.
    #[prop(into)]
    value: Signal<String>,
) -> impl IntoView {
    fact_line(&name, value).into_any()
}

/// A page.
#[component]
pub fn Page(
    /// Where it is.
    place: Place,
    /// Its heading.
    #[prop(into)]
    title: Signal<String>,
    /// A few words under the heading.
    #[prop(optional, into)]
    about: Signal<String>,
    /// What leads it.
    #[prop(into)]
    lead: ViewFn,
    /// Its fields.
    children: Children,
) -> impl IntoView {
    page(place, title, about, lead.run(), children()).into_any()
}

/// A caution: one line.
#[component]
pub fn Caution(
    /// The line.
    #[prop(into)]
    text: Signal<String>,
) -> impl IntoView {
    caution(text).into_any()
}

/// The problems of exactly that path.
#[component]
pub fn PathProblems(
    /// The path, as in the project file.
    #[prop(into)]
    path: String,
) -> impl IntoView {
    path_problems(path).into_any()
}

//! Parts of a page: groups that fold, and facts that follow from the fields.
use super::reading::fractions;
use leptos::prelude::*;

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
    view! {
        <details class="fold" open=open>
            <summary class="fold__head">
                <h2 class="fold__title">{title}</h2>
                <span class="fold__summary">{move || fractions(&summary.get())}</span>
            </summary>
            <div class="fold__body">{children()}</div>
        </details>
    }
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
    view! {
        <section class="group">
            <h3 class="group__title">{title}</h3>
            {children()}
        </section>
    }
}

/// A list of facts.
#[component]
pub fn Facts(
    /// The facts.
    children: Children,
) -> impl IntoView {
    view! { <dl class="facts">{children()}</dl> }
}

/// One computed fact: a name and what it comes to.
#[component]
pub fn Fact(
    /// Its name.
    #[prop(into)]
    name: Signal<String>,
    /// What it comes to; fractions are set as fractions.
    #[prop(into)]
    value: Signal<String>,
) -> impl IntoView {
    view! {
        <div class="fact">
            <dt class="fact__name">{name}</dt>
            <dd class="fact__value">{move || fractions(&value.get())}</dd>
        </div>
    }
}

//! One line of caution where the work can hurt someone.
use leptos::prelude::*;

/// A caution: one line.
#[component]
pub fn Caution(
    /// The line.
    #[prop(into)]
    text: Signal<String>,
) -> impl IntoView {
    view! {
        <p class="caution">
            <span class="caution__mark" aria-hidden="true">"!"</span>
            <span><strong>"Caution: "</strong> {text}</span>
        </p>
    }
}

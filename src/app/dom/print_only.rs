//! A part of the page printed by itself, from wherever it is asked for.
use leptos::prelude::*;

/// Set on the page's body to the class of what is printed meanwhile; the style sheet looks at it.
const PRINTS: &str = "data-prints";

/// Prints what has that class, and nothing else of the page.
pub fn print_only(class: &str) {
    let _ = document().body().map(|body| body.set_attribute(PRINTS, class));
    // What is printed must stand in the page before the browser looks at it.
    request_animation_frame(|| {
        let _ = window().print();
    });
}

/// After each print the whole page prints again, and this is done; until the owner is gone.
pub fn after_print(done: impl Fn() + 'static) {
    let handle = window_event_listener_untyped("afterprint", move |_| {
        let _ = document().body().map(|body| body.remove_attribute(PRINTS));
        done();
    });
    on_cleanup(move || handle.remove());
}

//! Work that waits: for the next picture, or for a pause between edits.
use leptos::prelude::*;
use std::time::Duration;

/// What `make` gives, made anew after the next picture is painted whenever what `follow` tracks changes; the first one, and
/// that of another project, by the id that `follow` gives, at once.
pub fn after_paint<T: Default + Send + Sync + 'static>(
    follow: impl Fn() -> Option<String> + 'static,
    make: impl Fn() -> T + Copy + 'static,
) -> RwSignal<T> {
    let made = RwSignal::new(T::default());
    let is_due = StoredValue::new(false);
    let renew = move || {
        is_due.set_value(false);
        made.set(make());
    };
    Effect::new(move |before: Option<Option<String>>| {
        let id = follow();
        if before.as_ref().is_none_or(|before| *before != id) {
            renew();
        } else if !is_due.get_value() {
            is_due.set_value(true);
            request_animation_frame(move || set_timeout(renew, Duration::ZERO));
        }
        id
    });
    made
}

/// What `make` gives, made anew once nothing that `follow` tracks has changed for that long; nothing is there until then.
pub fn after_pause<T: Send + Sync + 'static>(
    pause: Duration,
    follow: impl Fn() + 'static,
    make: impl Fn() -> Option<T> + Copy + 'static,
) -> RwSignal<Option<T>> {
    let made = RwSignal::new(None);
    let turn = StoredValue::new(0_u64);
    Effect::new(move |_| {
        follow();
        let mine = turn.get_value() + 1;
        turn.set_value(mine);
        let renew = move || {
            if turn.get_value() == mine {
                made.set(make());
            }
        };
        set_timeout(renew, pause);
    });
    made
}

//! Work that waits: for the next picture, or for a pause between edits.
use super::dom;
use leptos::leptos_dom::helpers::TimeoutHandle;
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
            once_painted(renew);
        }
        id
    });
    made
}

/// Keeps a value until the next picture is painted: to take apart what is large, and no more needed, takes time that the
/// picture need not wait for.
pub fn drop_after_paint<T: 'static>(value: T) {
    once_painted(move || drop(value));
}

fn once_painted(work: impl FnOnce() + 'static) {
    request_animation_frame(move || set_timeout(work, Duration::ZERO));
}

/// What `make` gives, made anew once nothing that `follow` tracks has changed for as long as it says; at once where it says
/// no time.
pub fn after_pause<T: Send + Sync + 'static>(
    follow: impl Fn() -> Duration + 'static,
    make: impl Fn() -> Option<T> + Copy + 'static,
) -> RwSignal<Option<T>> {
    let made = RwSignal::new(None);
    let waits = StoredValue::new(None::<TimeoutHandle>);
    let renew = move || made.set(make());
    dom::follow(Box::new(move || {
        let pause = follow();
        if let Some(Some(handle)) = waits.try_update_value(Option::take) {
            handle.clear();
        }
        if pause.is_zero() {
            untrack(renew);
        } else {
            waits.set_value(set_timeout_with_handle(renew, pause).ok());
        }
    }));
    made
}

//! What lies in a closed fold is made, and follows nothing more until the fold is opened: an edit would write, again and
//! again, what nobody sees.
use leptos::prelude::*;

/// Whether what is made under it follows what it reads.
#[derive(Clone, Copy)]
struct Awake(RwSignal<bool>);

/// Makes parts that follow what they read while they are awake. Woken, all of them are written once as things are then.
pub fn while_awake<T>(is_awake: RwSignal<bool>, make: impl FnOnce() -> T) -> T {
    let owner = Owner::new();
    let made = owner.with(|| {
        provide_context(Awake(is_awake));
        make()
    });
    // What is made lives as long as what it is made in.
    let _ = StoredValue::new_local(owner);
    made
}

/// An act that follows what it reads only while what it is made under is awake; its first time it is done all the same.
pub fn only_awake(mut act: Box<dyn FnMut()>) -> Box<dyn FnMut()> {
    let Some(Awake(is_awake)) = use_context() else { return act };
    let mut is_first = true;
    Box::new(move || {
        if is_awake.try_get().unwrap_or_default() {
            act();
        } else if is_first {
            untrack(&mut act);
        }
        is_first = false;
    })
}

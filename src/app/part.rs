//! Parts of the program that are fetched when they are first needed.
//!
//! With the feature `parts` the build of the site cuts them out of the wasm; without it all are there from the start.
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::pin::Pin;
use std::sync::OnceLock;
use std::task::{Context, Poll, Waker};

/// A part could not be fetched.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Missing;

#[cfg(feature = "parts")]
impl From<wasm_split_helpers::SplitLoaderError> for Missing {
    fn from(_: wasm_split_helpers::SplitLoaderError) -> Self {
        Self
    }
}

/// What a part holds, once it is fetched.
pub type Fetch<T> = Pin<Box<dyn Future<Output = Result<T, Missing>>>>;

/// How far a part has come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Coming {
    /// Nobody asked for it.
    Away,
    /// Asked for.
    OnItsWay,
    /// It is here.
    Here,
    /// It could not be fetched.
    Missing,
}

/// A part of the program and what it holds: functions that nothing outside of it names, for what is named elsewhere is
/// no longer apart.
pub struct ProgramPart<T: 'static> {
    fetch: fn() -> Fetch<T>,
    holds: OnceLock<T>,
    coming: OnceLock<ArcRwSignal<Coming>>,
}

/// Any part, whatever it holds.
pub trait Fetched: Sync {
    /// Fetches it, unless it is here or on its way.
    fn ask(&'static self);

    /// How far it has come (tracked).
    fn coming(&'static self) -> Coming;
}

impl<T: Copy + Send + Sync> ProgramPart<T> {
    /// A part that is fetched so.
    #[must_use]
    pub const fn new(fetch: fn() -> Fetch<T>) -> Self {
        Self { fetch, holds: OnceLock::new(), coming: OnceLock::new() }
    }

    /// What it holds, if it is here.
    pub fn held(&'static self) -> Option<T> {
        self.holds.get().copied()
    }

    /// What it holds (tracked); it is asked for by that, unless it was before.
    pub fn get(&'static self) -> Option<T> {
        if self.signal().get_untracked() == Coming::Away {
            self.ask();
        }
        self.signal().track();
        self.held()
    }

    fn signal(&self) -> &ArcRwSignal<Coming> {
        self.coming.get_or_init(|| ArcRwSignal::new(Coming::Away))
    }

    fn take(&self, fetched: Result<T, Missing>) {
        let coming = match fetched {
            Ok(held) => {
                self.holds.get_or_init(|| held);
                Coming::Here
            }
            Err(Missing) => Coming::Missing,
        };
        self.signal().set(coming);
    }
}

impl<T: Copy + Send + Sync> Fetched for ProgramPart<T> {
    fn ask(&'static self) {
        if matches!(self.signal().get_untracked(), Coming::OnItsWay | Coming::Here) {
            return;
        }
        let mut fetch = (self.fetch)();
        // What was never cut out is there without waiting.
        if let Poll::Ready(fetched) = fetch.as_mut().poll(&mut Context::from_waker(Waker::noop())) {
            self.take(fetched);
        } else {
            self.signal().set(Coming::OnItsWay);
            spawn_local(async move { self.take(fetch.await) });
        }
    }

    fn coming(&'static self) -> Coming {
        self.signal().get()
    }
}

/// Fetches those parts one after the other, what is missing again whenever there is a signal.
pub fn fetch_in_turn(parts: Vec<&'static dyn Fetched>) {
    let missing = parts.clone();
    let again = move |_| {
        for part in missing.iter().filter(|part| untrack(|| part.coming()) == Coming::Missing) {
            part.ask();
        }
    };
    let _ = window_event_listener_untyped("online", again);
    Effect::new(move |_| {
        let next = parts.iter().find(|part| matches!(part.coming(), Coming::Away | Coming::OnItsWay));
        if let Some(part) = next {
            part.ask();
        }
    });
}

/// A part by the name of its file, and the function that hands out what it holds.
macro_rules! part {
    ($(#[$note:meta])* $seen:vis static $name:ident: $kind:ty = $file:ident.$hand_out:ident($holds:expr)) => {
        $(#[$note])*
        $seen static $name: $crate::app::part::ProgramPart<$kind> = $crate::app::part::ProgramPart::new(|| {
            #[cfg(feature = "parts")]
            let fetch = $hand_out();
            #[cfg(not(feature = "parts"))]
            let fetch = std::future::ready($hand_out());
            Box::pin(fetch)
        });

        #[cfg_attr(feature = "parts", wasm_split_helpers::wasm_split($file, fallible))]
        #[allow(clippy::unnecessary_wraps, reason = "fetching may fail")]
        fn $hand_out() -> Result<$kind, $crate::app::part::Missing> {
            Ok($holds)
        }
    };
}
pub(crate) use part;

//! Light by day, dark in the evening shop, black on white in the sun.
use super::storage;
use crate::app::components::{Segment, segments};
use crate::app::dom::Tag;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::*;

/// How the app is lit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Theme {
    /// As the device is.
    Auto,
    /// Pale paper.
    Day,
    /// Dark.
    Evening,
    /// Black on white, larger.
    Sun,
}

impl Theme {
    /// All themes.
    pub const ALL: [Self; 4] = [Self::Auto, Self::Day, Self::Evening, Self::Sun];

    /// The word for it, and its key.
    #[must_use]
    pub const fn words(self) -> (&'static str, &'static str) {
        match self {
            Self::Auto => ("Auto", "auto"),
            Self::Day => ("Day", "day"),
            Self::Evening => ("Evening", "evening"),
            Self::Sun => ("Sun", "sun"),
        }
    }

    fn of_key(key: &str) -> Self {
        Self::ALL.into_iter().find(|theme| theme.words().1 == key).unwrap_or(Self::Auto)
    }
}

/// The theme in use, and how often the device has changed its own.
#[derive(Clone, Copy)]
pub struct Theming(RwSignal<Theme>, RwSignal<usize>);

impl Theming {
    /// Lights the page as it was lit last.
    #[must_use]
    pub fn start() -> Self {
        let theme = RwSignal::new(Theme::of_key(&storage::settings().theme));
        Effect::new(move |_| {
            if let Some(root) = document().document_element() {
                let _ = root.set_attribute("data-theme", theme.get().words().1);
            }
        });
        let device = RwSignal::new(0_usize);
        if let Ok(Some(dark)) = window().match_media("(prefers-color-scheme: dark)") {
            let changed = Closure::<dyn FnMut()>::new(move || device.update(|count| *count += 1)).into_js_value();
            let _ = dark.add_event_listener_with_callback("change", changed.unchecked_ref());
        }
        Self(theme, device)
    }

    /// Follows whatever changes the colours: for what reads them once they are on the page (tracked).
    pub fn track(self) {
        self.0.track();
        self.1.track();
    }
}

/// The four themes as segments.
pub fn theme_choice() -> Tag {
    let theme = expect_context::<Theming>().0;
    let all = Theme::ALL.into_iter().map(|one| {
        let (word, key) = one.words();
        let choose = move || {
            theme.set(one);
            storage::keep_settings(|settings| settings.theme = key.to_owned());
        };
        Segment::new(word, move || theme.get() == one, choose)
    });
    segments("theme", "Light", (), all.collect())
}

//! Where in the app the user is: `#/frame`, `#/bench/B1`.
use crate::app::cached::Cached;
use leptos::ev;
use leptos::prelude::*;

/// A place on the rule.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// The wall, the eave and the ground.
    Site,
    /// The frame.
    Frame,
    /// Whether it carries.
    Strength,
    /// The sawmill.
    Mill,
    /// The bench.
    Bench,
    /// The roof.
    Roof,
    /// Papers.
    Papers,
}

impl Place {
    /// All places, in the order of the job.
    pub const ALL: [Self; 7] =
        [Self::Site, Self::Frame, Self::Strength, Self::Mill, Self::Bench, Self::Roof, Self::Papers];

    /// The word on the rule.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Site => "Site",
            Self::Frame => "Frame",
            Self::Strength => "Strength",
            Self::Mill => "Mill",
            Self::Bench => "Bench",
            Self::Roof => "Roof",
            Self::Papers => "Papers",
        }
    }

    /// The word in the address.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Site => "site",
            Self::Frame => "frame",
            Self::Strength => "strength",
            Self::Mill => "mill",
            Self::Bench => "bench",
            Self::Roof => "roof",
            Self::Papers => "papers",
        }
    }

    /// Link to the place.
    #[must_use]
    pub fn href(self) -> String {
        Route { place: self, stick: None }.hash()
    }
}

/// A place, and the stick in hand there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Route {
    /// The place.
    pub place: Place,
    /// Mark of the stick in hand.
    pub stick: Option<String>,
}

impl Route {
    /// That stick on the bench.
    #[must_use]
    pub fn bench(mark: &str) -> Self {
        Self { place: Place::Bench, stick: Some(mark.to_owned()) }
    }

    /// The checks of that stick.
    #[must_use]
    pub fn strength(mark: &str) -> Self {
        Self { place: Place::Strength, stick: Some(mark.to_owned()) }
    }

    /// The address of the route.
    #[must_use]
    pub fn hash(&self) -> String {
        match &self.stick {
            Some(mark) => format!("#/{}/{mark}", self.place.key()),
            None => format!("#/{}", self.place.key()),
        }
    }

    /// The route of an address; an unknown one is the site.
    #[must_use]
    pub fn parse(hash: &str) -> Self {
        let mut parts = hash.trim_start_matches('#').trim_start_matches('/').split('/');
        let key = parts.next().unwrap_or_default();
        let Some(place) = Place::ALL.into_iter().find(|place| place.key() == key) else {
            return Self { place: Place::Site, stick: None };
        };
        let is_mark =
            |mark: &&str| !mark.is_empty() && mark.len() <= 12 && mark.chars().all(|c| c.is_ascii_alphanumeric());
        Self { place, stick: parts.next().filter(is_mark).map(str::to_owned) }
    }
}

/// The route the app is on.
#[derive(Clone, Copy)]
pub struct Router {
    route: RwSignal<Route>,
    place: Cached<Place>,
    stick: Cached<Option<String>>,
}

/// The router of the app.
#[must_use]
pub fn use_router() -> Router {
    expect_context::<Router>()
}

impl Router {
    /// Follows the address from now on.
    #[must_use]
    pub fn start() -> Self {
        let route = RwSignal::new(Route::parse(&current_hash()));
        let _ = window_event_listener(ev::hashchange, move |_| route.set(Route::parse(&current_hash())));
        Self {
            route,
            place: Cached::new(move || route.with(|route| route.place)),
            stick: Cached::new(move || route.with(|route| route.stick.clone())),
        }
    }

    /// The place (tracked).
    #[must_use]
    pub fn place(self) -> Place {
        self.place.get()
    }

    /// The stick in hand (tracked).
    #[must_use]
    pub fn stick(self) -> Option<String> {
        self.stick.get()
    }

    /// Goes there; the browser's back button comes back.
    pub fn go(self, route: &Route) {
        // The signal follows by the event this causes.
        let _ = window().location().set_hash(&route.hash());
    }

    /// Goes there without leaving a step for the back button, as from stick to stick.
    pub fn replace(self, route: Route) {
        let location = window().location();
        let (path, search) = (location.pathname().unwrap_or_default(), location.search().unwrap_or_default());
        if let Ok(history) = window().history() {
            let address = format!("{path}{search}{}", route.hash());
            let _ = history.replace_state_with_url(&wasm_bindgen::JsValue::NULL, "", Some(&address));
        }
        self.route.set(route);
    }
}

fn current_hash() -> String {
    window().location().hash().unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(hash: &str, place: Place, stick: Option<&str>) {
        assert_eq!(Route::parse(hash), Route { place, stick: stick.map(str::to_owned) }, "{hash}");
    }

    #[test]
    fn addresses() {
        check("#/frame", Place::Frame, None);
        check("#/bench/B1", Place::Bench, Some("B1"));
        check("", Place::Site, None);
        check("#/nowhere/B1", Place::Site, None);
        check("#/bench/<b>", Place::Bench, None);
        check(&Route::bench("K2L").hash(), Place::Bench, Some("K2L"));
    }
}

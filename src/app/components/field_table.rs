//! Fields told by a table: what each is called, where its value is, when it is shown. One renderer serves them all, which
//! keeps what is downloaded small.
use super::choice::Pick;
use super::count_field::NumberField;
use super::field::EntryField;
use super::length_field::LengthField;
use super::measure::{AREA_LOAD, COUNT, ELEVATION, FORCE, LENGTH, NUMBER, SPRING, WIND_SPEED, WORDS, nothing_is_open};
use super::measure_fields::SlopeField;
use super::one_of::{Listed, OneOf};
use super::stepper::Steps;
use super::toggle::Toggle;
use crate::app::{Lens, use_store};
use crate::frame::Spring;
use crate::loads::WindSpeed;
use crate::project::Project;
use crate::units::{AreaLoad, Force, Length, Slope};
use leptos::prelude::*;

/// One value of the project that is always there: how it is seen and how it is reached.
pub struct At<T: 'static> {
    /// The field's name in the file.
    pub path: &'static str,
    /// The value.
    pub see: fn(&Project) -> &T,
    /// The place where it is put.
    pub reach: fn(&mut Project) -> &mut T,
}

impl<T: Clone + 'static> At<T> {
    fn lens(&self) -> Lens<T> {
        let (see, reach) = (self.see, self.reach);
        Lens::maybe(
            self.path,
            move |project: &Project| Some(see(project).clone()),
            move |project: &mut Project, value| *reach(project) = value,
        )
    }
}

/// `at!(place.ground_snow)`: the value of that path.
#[macro_export]
macro_rules! at {
    ($first:ident $(.$rest:ident)*) => {
        $crate::app::components::At {
            path: concat!(stringify!($first) $(, ".", stringify!($rest))*),
            see: |project| &project.$first$(.$rest)*,
            reach: |project| &mut project.$first$(.$rest)*,
        }
    };
}

/// One of a few values, by the place of each in its list.
pub struct Choices {
    /// The field's name in the file.
    pub path: &'static str,
    /// The words of the values, in order.
    pub words: fn() -> Vec<&'static str>,
    /// The place of the value there is.
    pub see: fn(&Project) -> Option<usize>,
    /// Puts in the value of that place.
    pub put: fn(&mut Project, usize),
}

/// `one_of!(place.edition, EDITIONS)`: the value of that path, out of a list of values with their words.
#[macro_export]
macro_rules! one_of {
    ($first:ident $(.$rest:ident)*, $values:expr) => {
        $crate::app::components::Of::Choice($crate::app::components::Choices {
            path: concat!(stringify!($first) $(, ".", stringify!($rest))*),
            words: || $values.iter().map(|(_, word)| *word).collect(),
            see: |project| $values.iter().position(|(value, _)| *value == project.$first$(.$rest)*),
            put: |project, place| {
                if let Some((value, _)) = $values.get(place) {
                    project.$first$(.$rest)* = *value;
                }
            },
        })
    };
}

/// What a field holds. An open value may be left empty: it is not known yet.
pub enum Of {
    /// An open load over an area.
    AreaLoad(At<Option<AreaLoad>>),
    /// An open wind speed.
    Wind(At<Option<WindSpeed>>),
    /// An open length.
    Length(At<Option<Length>>),
    /// An open number.
    Number(At<Option<f64>>),
    /// A force, open while it is nothing.
    Force(At<Force>),
    /// How many, open while there are none.
    Count(At<usize>),
    /// A few words, open while there are none.
    Words(At<String>),
    /// A length that is always there.
    Size(At<Length>),
    /// A stiffness that is always there.
    Spring(At<Spring>),
    /// A height above the sea.
    Elevation(At<Length>),
    /// A slope.
    Slope(At<Slope>),
    /// A number that is always there: least, most, step.
    Between(At<f64>, [f64; 3]),
    /// Yes or no.
    Toggle(At<bool>),
    /// One of a few values.
    Choice(Choices),
    /// A key out of a table.
    Key(At<String>, fn() -> Vec<(String, String)>),
}

/// One field of a table.
pub struct FieldRow {
    /// Its label.
    pub label: &'static str,
    /// A few words under the label.
    pub hint: &'static str,
    /// What it holds.
    pub of: Of,
    /// When it is shown; always where nothing is said.
    pub when: Option<fn(&Project) -> bool>,
}

impl FieldRow {
    /// A field that is always shown.
    #[must_use]
    pub const fn new(label: &'static str, hint: &'static str, of: Of) -> Self {
        Self { label, hint, of, when: None }
    }

    /// The same, shown only while that holds.
    #[must_use]
    pub const fn when(label: &'static str, hint: &'static str, of: Of, when: fn(&Project) -> bool) -> Self {
        Self { label, hint, of, when: Some(when) }
    }
}

/// The fields of a table, in order.
#[component]
pub fn FieldTable(
    /// The table.
    of: &'static [FieldRow],
) -> impl IntoView {
    let store = use_store();
    let one = move |field: &'static FieldRow| {
        let Some(when) = field.when else { return show(field) };
        let is_shown = store.slice(when);
        (move || is_shown.get().then(|| show(field))).into_any()
    };
    of.iter().map(one).collect_view()
}

fn show(field: &'static FieldRow) -> AnyView {
    let FieldRow { label, hint, ref of, .. } = *field;
    let mut is_length = false;
    let entry = match of {
        Of::AreaLoad(at) => AREA_LOAD.open(&at.lens()),
        Of::Wind(at) => WIND_SPEED.open(&at.lens()),
        Of::Number(at) => NUMBER.open(&at.lens()),
        Of::Force(at) => FORCE.open(&nothing_is_open(&at.lens())),
        Of::Count(at) => COUNT.open(&nothing_is_open(&at.lens())),
        Of::Words(at) => WORDS.open(&nothing_is_open(&at.lens())),
        Of::Spring(at) => SPRING.entry(&at.lens()),
        Of::Elevation(at) => ELEVATION.entry(&at.lens()),
        Of::Length(at) => {
            is_length = true;
            LENGTH.open(&at.lens())
        }
        Of::Size(at) => {
            return view! { <LengthField field=at.lens() label hint steps=Steps::of(0.25, 5.0)/> }.into_any();
        }
        Of::Slope(at) => return view! { <SlopeField field=at.lens() label hint/> }.into_any(),
        Of::Between(at, [least, most, step]) => {
            let (least, most, step) = (*least, *most, *step);
            return view! { <NumberField field=at.lens() label hint least most step/> }.into_any();
        }
        Of::Toggle(at) => return view! { <Toggle field=at.lens() label hint/> }.into_any(),
        Of::Choice(choices) => return view! { <OneOf of=listed_by(choices) label hint/> }.into_any(),
        Of::Key(at, options) => return view! { <Pick field=at.lens() label hint options=options()/> }.into_any(),
    };
    let decimal_keys = !matches!(of, Of::Words(_) | Of::Elevation(_) | Of::Length(_));
    view! { <EntryField entry label hint is_length decimal_keys/> }.into_any()
}

fn listed_by(choices: &Choices) -> Listed {
    let field = Lens::maybe(choices.path, choices.see, choices.put);
    Listed { field, words: (choices.words)() }
}

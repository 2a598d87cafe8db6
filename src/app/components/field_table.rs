//! Fields told by a table: what each is called, where its value is, when it is shown. One renderer serves them all, which
//! keeps what is downloaded small.
use super::choice::pick;
use super::count_field::number_field;
use super::entry::Entry;
use super::field::{Field, entry_field};
use super::length_field::length_field;
use super::measure::{
    AREA_LOAD, COUNT, ELEVATION, FORCE, LENGTH, Measure, NUMBER, SPRING, WIND_SPEED, WORDS, nothing_is_open,
};
use super::measure_fields::slope_field;
use super::one_of::{Listed, listed_field};
use super::stepper::Steps;
use super::toggle::toggle;
use crate::app::dom::{Child, Tag, parts};
use crate::app::{Lens, use_store};
use crate::frame::Spring;
use crate::loads::WindSpeed;
use crate::project::Project;
use crate::units::{AreaLoad, Force, Length, Money, Slope};

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

/// A value inside another one that may be gone.
pub struct Part<T: 'static> {
    /// The field's name in the file.
    pub path: &'static str,
    /// The value.
    pub see: fn(&Project) -> Option<T>,
    /// Puts it in.
    pub put: fn(&mut Project, T),
}

impl<T: 'static> Part<T> {
    fn lens(&self) -> Lens<T> {
        Lens::maybe(self.path, self.see, self.put)
    }
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
    /// An open price.
    Price(At<Option<Money>>, &'static Measure<Money>),
    /// A number that is always there, in its own measure.
    Measured(At<f64>, &'static Measure<f64>),
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
    /// A length that is there while another one is.
    Part(Part<Length>),
    /// An open length that something hangs on, and what it says while it is empty.
    Whole(Part<Option<Length>>, &'static str),
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
pub fn field_table(of: &'static [FieldRow]) -> Tag {
    let store = use_store();
    let mut all = parts();
    for field in of {
        all = match field.when {
            None => show(field, all),
            Some(when) => all.shown(move || when(&store.project()), move || show(field, parts())),
        };
    }
    all
}

fn show(field: &'static FieldRow, into: Tag) -> Tag {
    let FieldRow { label, hint, ref of, .. } = *field;
    match of {
        Of::AreaLoad(at) => typed(AREA_LOAD.open(&at.lens()), field),
        Of::Wind(at) => typed(WIND_SPEED.open(&at.lens()), field),
        Of::Price(at, measure) => typed(measure.open(&at.lens()), field),
        Of::Measured(at, measure) => typed(measure.entry(&at.lens()), field),
        Of::Number(at) => typed(NUMBER.open(&at.lens()), field),
        Of::Force(at) => typed(FORCE.open(&nothing_is_open(&at.lens())), field),
        Of::Count(at) => typed(COUNT.open(&nothing_is_open(&at.lens())), field),
        Of::Words(at) => typed(WORDS.open(&nothing_is_open(&at.lens())), field),
        Of::Spring(at) => typed(SPRING.entry(&at.lens()), field),
        Of::Elevation(at) => typed(ELEVATION.entry(&at.lens()), field),
        Of::Length(at) => typed(LENGTH.open(&at.lens()), field).is_length(),
        Of::Size(at) => length_field(at.lens(), label).hint(hint).steps(Steps::of(0.25, 5.0)),
        Of::Part(part) => length_field(part.lens(), label).hint(hint).steps(Steps::of(0.25, 5.0)),
        Of::Whole(part, none) => typed(LENGTH.open(&part.lens()).may_be_empty(none), field).is_length(),
        Of::Slope(at) => slope_field(at.lens(), label).hint(hint),
        Of::Between(at, [least, most, step]) => number_field(at.lens(), label, *least, *most, *step).hint(hint),
        Of::Toggle(at) => return toggle(at.lens(), label, hint).put(into),
        Of::Choice(choices) => return listed_field(listed_by(choices), label, hint).put(into),
        Of::Key(at, options) => return pick(at.lens(), label, hint, options()).put(into),
    }
    .put(into)
}

/// A field that is typed into, as its table has it.
fn typed(entry: Entry, field: &FieldRow) -> Field {
    let made = entry_field(entry, field.label.into()).hint(field.hint);
    match field.of {
        Of::Words(_) | Of::Elevation(_) | Of::Length(_) | Of::Whole(..) => made,
        _ => made.decimal_keys(),
    }
}

fn listed_by(choices: &Choices) -> Listed {
    let field = Lens::maybe(choices.path, choices.see, choices.put);
    Listed { field, words: (choices.words)() }
}

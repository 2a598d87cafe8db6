//! What the pages are made of. Each component takes values and callbacks; fields take a way into the project.
mod caution;
mod choice;
mod count_field;
mod drawing_view;
mod entry;
mod field;
mod fold;
mod length_field;
mod measure;
mod measure_fields;
mod one_of;
mod page;
mod problem;
mod reading;
mod rule;
mod stepper;
mod strip;
mod text_field;
mod toggle;

pub use caution::Caution;
pub use choice::{Choice, Pick};
pub use count_field::{CountField, NumberField};
pub use drawing_view::DrawingView;
pub use entry::{Change, Entry};
pub use field::EntryField;
pub use fold::{Fact, Facts, Fold, Group};
pub use length_field::{LengthField, LengthOptions, length_entry};
pub use measure::{
    AREA_LOAD, COUNT, ELEVATION, FORCE, LENGTH, NOT_KNOWN, NUMBER, SPRING, STRESS, WIND_SPEED, WORDS, known,
    nothing_is_open,
};
pub use measure_fields::{MoneyField, SlopeField, WeightField};
pub use one_of::{Listed, OneOf, listed};
pub use page::Page;
pub use problem::{PathProblems, ProblemNote};
pub use reading::{Reading, fractions, long_length, show_length_fine};
pub use rule::Rule;
pub use stepper::Steps;
pub use strip::Strip;
pub use text_field::TextField;
pub use toggle::Toggle;

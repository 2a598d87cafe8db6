//! What the pages are made of. Each component takes values and callbacks; fields take a way into the project.
mod caution;
mod choice;
mod count_field;
mod drawing_view;
mod entry;
mod field;
mod field_table;
mod fold;
mod late;
mod length_field;
mod long_work;
mod measure;
mod measure_fields;
mod one_of;
mod page;
mod print_alone;
mod problem;
mod reading;
mod round;
mod rule;
mod stepper;
mod strip;
mod table;
mod text_field;
mod toggle;

pub use caution::caution;
pub use choice::{Segment, choice, pick, segments};
pub use count_field::{count_field, number_field};
pub use drawing_view::{drawing_view, drawing_view_under};
pub use entry::{Change, Entry};
pub use field::{Field, entry_field};
pub use field_table::{At, Choices, FieldRow, Of, Part, field_table};
pub use fold::{fact_line, fact_list, facts, fold, group, late_fold};
pub use late::{PartOfPage, late_page, late_part, missing};
pub use length_field::{LengthOptions, length_entry, length_field, signed_length_field};
pub use long_work::{Slices, Work, long_work, work_at_once};
pub use measure::{
    COVERAGE, CUBIC_YARDS, GALLON_PRICE, LENGTH, NOT_KNOWN, NUMBER, PRICE, RUN_PRICE, STRESS, VOLUME_PRICE, WEIGHT,
    WORDS, known, nothing_is_open,
};
pub use measure_fields::{money_field, slope_field, weight_field};
pub use one_of::{Listed, listed, listed_field};
pub use page::{page, word};
pub use print_alone::print_alone;
pub use problem::{path_problems, problem_note, problems_under};
pub use reading::{followed, fractions, long_length, show_length_fine};
pub use round::{Wood, round_view};
pub use rule::rule;
pub use stepper::Steps;
pub use strip::strip;
pub use table::{figures, table};
pub use text_field::text_field;
pub use toggle::{knob, toggle};

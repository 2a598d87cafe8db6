//! Quantities with their units, and their text forms: printed for a tape measure, read as a builder types them.
//!
//! Every quantity holds one finite number. NaN and infinity are refused at construction, and so are operations whose
//! result would be one (dividing by zero): the operators panic like the constructors do.

mod angle;
mod area;
mod density;
mod feet_inches;
mod figure;
mod fixed;
mod force;
mod length;
mod load;
mod metric;
mod moment;
mod money;
mod money_text;
mod order;
mod parse;
mod quantity;
mod run;
mod slope;
mod slope_text;
mod speed;
mod stiffness;
mod stress;
mod system;
mod volume;
mod weight;

pub use angle::Angle;
pub use area::Area;
pub use density::Density;
pub use feet_inches::{FeetInches, Fineness, WholeInches, feet_inches, inches_only};
pub use figure::{
    Figure, show_area, show_area_load, show_density, show_elevation, show_force, show_speed, show_stiffness,
    show_stress, show_volume, show_weight, show_wood_volume,
};
pub use fixed::{Fixed, fixed, push_fixed};
pub use force::{Force, NEWTONS_PER_POUND, STANDARD_GRAVITY};
pub use length::{Length, MILLIMETRES_PER_INCH};
pub use load::{AreaLoad, LineLoad};
pub use metric::{MetricStep, display_step, metres, millimetres, show_length};
pub use moment::Moment;
pub use money::Money;
pub use money_text::{MoneyText, show_money};
pub use order::{most, order_of, same_or_less, sort_by_number, sort_lengths, sort_with};
pub use parse::{
    LONGEST_LENGTH, LengthError, LengthFault, QuantityError, QuantityFault, parse_area_load, parse_count,
    parse_elevation, parse_force, parse_length, parse_length_not_negative, parse_money, parse_number, parse_slope,
    parse_speed, parse_stiffness, parse_stress, parse_weight,
};
pub use run::{Run, SlopeLength};
pub use slope::Slope;
pub use slope_text::{InTwelve, in_twelve, show_slope, slope_degrees, slope_percent};
pub use speed::Speed;
pub use stiffness::Stiffness;
pub use stress::Stress;
pub use system::UnitSystem;
pub use volume::Volume;
pub use weight::{KILOGRAMS_PER_POUND, Weight};

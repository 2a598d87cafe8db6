//! Wood members against the National Design Specification (NDS), allowable stress design.
//!
//! [`design_values`] finds what a stick is worth by its kind of wood, the section it was ordered in and its grade;
//! [`Member`] holds them with the conditions of use; each check takes a demand and gives a [`Verdict`] with its working.
//! Demands are sizes without a sign unless a check says otherwise. A formula outside its limits is [`Refused`] in words.
mod adjusted;
mod beam_stability;
mod bearing;
mod bending;
mod column_stability;
mod combined;
mod compression;
mod conditions;
mod deflection;
mod density;
mod design_values;
mod factors;
mod figures;
mod grade;
mod member;
mod missing;
mod net_section;
mod net_shear;
mod notch;
mod property;
mod refused;
mod roll_over;
mod shear;
mod shear_near_support;
mod size_class;
mod tension;
#[cfg(test)]
mod test_members;
mod verdict;

pub use adjusted::{adjusted, end_grain_strength};
pub use beam_stability::{
    BeamStability, Bracing, UnbracedCase, beam_stability, beam_stability_from_ratio, unbraced_length,
};
pub use bearing::{
    Seat, bearing_across_strength, check_bearing_across, check_bearing_at_angle, check_end_grain, hankinson,
};
pub use bending::{bending_strength, check_bending};
pub use column_stability::{
    ColumnAxis, ColumnKind, ColumnLengths, ColumnStability, EndFixity, column_stability, column_stability_from_ratio,
};
pub use combined::{BeamColumn, check_bending_and_compression, check_bending_and_tension};
pub use compression::{check_compression, compression_strength};
pub use conditions::{Conditions, LoadDuration, Repetitive, Temperature};
pub use deflection::{
    Ceiling, DeflectionCase, Drying, RoofMember, check_deflection, deflection_for_dead_and_live, deflection_limit,
    long_term_deflection, stiffness,
};
pub use density::{density, specific_gravity};
pub use design_values::{DesignValues, design_values, known_design_classes};
pub use factors::{
    Factor, bearing_area, flat_use, incising, load_duration, repetitive, size, stiffened_chord, temperature,
    wet_service,
};
pub(crate) use figures::{force as force_text, moment as moment_text};
pub use grade::Grade;
pub use member::Member;
pub use missing::Missing;
pub use net_section::{NetSection, Pocket, SecondMoment};
pub use net_shear::shear_area;
pub use notch::{Notch, NotchFace, NotchPlace, check_notch_limits};
pub use property::Property;
pub use refused::Refused;
pub use roll_over::{Holding, holding_needed};
pub use shear::{ShearPlace, check_shear, shear_strength};
pub use shear_near_support::{PointNearSupport, ShearAtSupport, shear_to_carry};
pub use size_class::{SizeClass, size_class};
pub use tension::check_tension;
pub use verdict::{Amount, Verdict};

//! What brings the timber, and who carries it.
use crate::units::{Length, Weight};

/// A truck, or a trailer behind one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Truck {
    /// It is a trailer.
    pub is_trailer: bool,
    /// What may lie on it.
    pub payload: Weight,
    /// What a trailer weighs itself; nothing where it is not known.
    pub own_weight: Option<Weight>,
    /// Length of the bed.
    pub bed: Length,
    /// Width that sticks can lie on, between the fenders or the sides.
    pub bed_width: Length,
    /// How far sticks may stand out past the bed, by its maker and the road's law.
    pub overhang: Length,
    /// Coupling to the front of a trailer's bed.
    pub coupling_to_bed: Length,
    /// Front of the bed to the middle of a trailer's axles.
    pub bed_to_axle: Length,
}

/// Who carries.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Crew {
    /// How many there are.
    pub n_people: usize,
    /// What one of them lifts of a stick carried together.
    pub each_lifts: Weight,
}

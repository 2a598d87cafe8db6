//! The few figures of a frame that stand in the result strip.
use crate::design::Built;
use crate::units::{Money, Weight};

/// What one good frame came to.
#[derive(Clone, Debug, PartialEq)]
pub struct Figures {
    /// Mark of the heaviest stick.
    pub heaviest: String,
    /// Its green weight.
    pub weight: Weight,
    /// Price of the timber.
    pub price: Money,
    /// How many sticks.
    pub n_sticks: usize,
}

impl Figures {
    /// The figures of that frame.
    #[must_use]
    pub fn of(built: &Built) -> Self {
        let heaviest = built.heaviest();
        Self {
            heaviest: heaviest.map_or_else(String::new, |stick| stick.mark.clone()),
            weight: heaviest.map_or(Weight::ZERO, |stick| stick.green_weight),
            price: built.order.price,
            n_sticks: built.sticks.len(),
        }
    }
}

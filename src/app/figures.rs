//! The few figures of a frame that stand in the result strip.
use crate::checks::{Check, Strength};
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

/// What a whole frame comes to, as it is remembered with a kept state.
#[derive(Clone, Debug, PartialEq)]
pub struct Sums {
    /// How many sticks.
    pub n_sticks: usize,
    /// Weight of the order, green, in pounds.
    pub weight_lb: f64,
    /// Price of the order.
    pub price: f64,
    /// The worst check in words, and how many were not judged; empty where the strength was not worked out.
    pub worst: String,
}

impl Sums {
    /// The sums of that frame, with its checks where they are there.
    #[must_use]
    pub fn of(built: &Built, strength: Option<&Strength>) -> Self {
        let worst = strength.map(|strength| {
            let share =
                |(check, ratio): (&Check, f64)| format!("{} {} {:.0} %", check.member, check.name, ratio * 100.0);
            let hardest = strength.hardest().map(share);
            let open = Some(strength.not_judged().count()).filter(|n| *n > 0).map(|n| format!("{n} not judged"));
            hardest.into_iter().chain(open).collect::<Vec<_>>().join(", ")
        });
        Self {
            n_sticks: built.sticks.len(),
            weight_lb: built.order.weight.to_pounds(),
            price: built.order.price.to_f64(),
            worst: worst.unwrap_or_default(),
        }
    }
}

//! Where a load's weight falls on a trailer.
//!
//! ```text
//!   coupling          front of bed              axles
//!      △ ─────── c ──────┃━━━━━━━━━━ a ━━━━━━━━━━━○━━━━━━━━━━━━┃
//!                        ┃─── x ───↓ W
//! ```
//! Moments about the axles: T·(c + a) = W·(a − x), T the load's share on the coupling, down is positive.
use super::stack::Laid;
use crate::project::{HAIR, Truck};
use crate::units::{Length, Weight};

/// Least and most share of the loaded trailer's weight on its coupling (common practice: 10 to 15 %).
pub const COUPLING_SHARE: (f64, f64) = (0.10, 0.15);

/// Where the middle of a load lies, and what of it hangs on the coupling.
#[derive(Clone, Debug, PartialEq)]
pub struct Balance {
    /// Middle of the load's weight from the front of the bed, every stick butted against that front.
    pub middle: Length,
    /// The share of the load on a trailer's coupling; below nothing where the load lifts it. Nothing for a truck.
    pub share: Option<f64>,
    /// Weight on the coupling from the load.
    pub on_coupling: Option<Weight>,
    /// Where the middle must lie for the least and for the most share, from the front of the bed, the nearer first.
    pub wanted: Option<(Length, Length)>,
    /// How far the load must go back, or forward below nothing, to come between them; zero where it lies well.
    pub shift: Option<Length>,
    /// It can go that far: nothing goes forward of the front, and nothing stands out farther than it may.
    pub can_shift: bool,
}

impl Balance {
    /// Of a load.
    #[must_use]
    pub fn of(laid: &[Laid], truck: &Truck) -> Self {
        let weight: Weight = laid.iter().map(|one| one.cargo.weight).sum();
        let moment: f64 =
            laid.iter().map(|one| one.cargo.weight.to_pounds() * one.cargo.length.to_inches() / 2.0).sum();
        let middle = if weight > Weight::ZERO { Length::inches(moment / weight.to_pounds()) } else { Length::ZERO };
        let arm = truck.coupling_to_bed + truck.bed_to_axle;
        if !truck.is_trailer || arm <= Length::ZERO {
            return Self { middle, share: None, on_coupling: None, wanted: None, shift: None, can_shift: false };
        }
        let share = (truck.bed_to_axle - middle) / arm;
        let at = |share: f64| truck.bed_to_axle - arm * share;
        let wanted = (at(COUPLING_SHARE.1), at(COUPLING_SHARE.0));
        let shift = middle.clamp(wanted.0, wanted.1) - middle;
        let longest = laid.iter().map(|one| one.cargo.length).fold(Length::ZERO, Length::max);
        let can_shift = !shift.is_negative() && longest + shift <= truck.bed + truck.overhang + HAIR;
        Self {
            middle,
            share: Some(share),
            on_coupling: Some(weight * share),
            wanted: Some(wanted),
            shift: Some(shift),
            can_shift,
        }
    }
}

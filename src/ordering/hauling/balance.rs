//! Where a load's weight falls on a trailer, and how far behind the headboard it is laid for that.
//!
//! ```text
//!   coupling          front of bed              axles
//!      △ ─────── c ──────┃━━━━━━━━━━ a ━━━━━━━━━━━○━━━━━━━━━━━━┃
//!                        ┃─── x ───↓ W
//! ```
//! Moments about the axles: T·(c + a) = W·(a − x), T the load's share on the coupling, down is positive. A trailer of own weight
//! W₀ adds s₀·W₀ to T.
use super::cargo::Cargo;
use super::stack::Laid;
use crate::project::{HAIR, Project, Truck};
use crate::units::{Length, UnitSystem, Weight};

/// Least and most share of the loaded trailer's weight on its coupling (common practice: 10 to 15 %).
pub const COUPLING_SHARE: (f64, f64) = (0.10, 0.15);
/// Share of its own weight that an empty trailer is taken to hang on its coupling: the middle of the usual.
pub const EMPTY_SHARE: f64 = 0.125;
/// Most of a stick that may stand out past the bed where it need not (common practice: a third).
const OUT_SHARE: f64 = 1.0 / 3.0;

/// Where the middle of a load lies, and what of it hangs on the coupling.
#[derive(Clone, Debug, PartialEq)]
pub struct Balance {
    /// Middle of the load's weight from the front of the bed, as it is laid.
    pub middle: Length,
    /// How far the front ends lie behind the headboard; what would stand out too far lies nearer to it.
    pub behind: Length,
    /// The share of the loaded trailer on its coupling; below nothing where it is lifted. Nothing for a truck.
    pub share: Option<f64>,
    /// That share with every stick butted against the headboard.
    pub share_butted: Option<f64>,
    /// Weight on the coupling, the trailer's own counted where it is known.
    pub on_coupling: Option<Weight>,
    /// Where the middle must lie for the most and for the least share, from the front of the bed, the nearer first.
    pub wanted: Option<(Length, Length)>,
    /// How far the middle should still go back, or forward below nothing, to come between them; zero where it lies well.
    pub shift: Option<Length>,
}

/// Weight and moments about the front of the bed of some sticks, lb and lb·in.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Sums {
    pub weight: f64,
    /// Every stick butted against the headboard.
    pub front: f64,
    /// Every stick as far back as it may lie.
    pub back: f64,
}

impl Sums {
    pub fn of(cargo: &Cargo, truck: &Truck) -> Self {
        let weight = cargo.weight.to_pounds();
        let front = weight * cargo.length.to_inches() / 2.0;
        Self { weight, front, back: front + weight * farthest(cargo.length, truck).to_inches() }
    }

    pub fn with(self, other: Self, times: f64) -> Self {
        Self {
            weight: self.weight + other.weight * times,
            front: self.front + other.front * times,
            back: self.back + other.back * times,
        }
    }
}

/// A trailer as a lever: inches and pounds.
#[derive(Clone, Copy, Debug)]
pub(super) struct Lever {
    to_axle: f64,
    arm: f64,
    own: f64,
}

impl Lever {
    /// Of a trailer; nothing for a truck.
    pub fn of(truck: &Truck) -> Option<Self> {
        let arm = (truck.coupling_to_bed + truck.bed_to_axle).to_inches();
        let own = truck.own_weight.map_or(0.0, Weight::to_pounds);
        (truck.is_trailer && arm > 0.0).then(|| Self { to_axle: truck.bed_to_axle.to_inches(), arm, own })
    }

    /// The share on the coupling where a load's middle lies there.
    fn share(self, weight: f64, middle: f64) -> f64 {
        (weight * (self.to_axle - middle) / self.arm + EMPTY_SHARE * self.own) / (weight + self.own)
    }

    /// Where the middle must lie for a share.
    fn middle(self, weight: f64, share: f64) -> f64 {
        self.to_axle - self.arm * (share * (weight + self.own) - EMPTY_SHARE * self.own) / weight
    }

    /// How far the share of a load stays outside the usual, laid as well as it can be; below nothing where it is too little.
    pub fn miss(self, sums: &Sums) -> f64 {
        if sums.weight <= 0.0 {
            return 0.0;
        }
        let most = self.share(sums.weight, sums.front / sums.weight);
        let least = self.share(sums.weight, sums.back / sums.weight);
        (most - COUPLING_SHARE.0).min(0.0) + (least - COUPLING_SHARE.1).max(0.0)
    }
}

/// How far behind the headboard a stick may begin: what lies within the bed stays within it; what is longer than the bed stands
/// out as far as it may, by a third of itself at most.
pub(super) fn farthest(length: Length, truck: &Truck) -> Length {
    let room = if length <= truck.bed {
        truck.bed - length
    } else {
        (truck.bed + truck.overhang - length).min(truck.bed - length * (1.0 - OUT_SHARE))
    };
    room.max(Length::ZERO)
}

impl Balance {
    /// Lays a load as far back as a trailer's coupling asks, and says how it lies then.
    #[must_use]
    pub fn lay(laid: &mut [Laid], project: &Project) -> Self {
        let truck = &project.truck;
        let sum = laid.iter().fold(Sums::default(), |sum, one| sum.with(Sums::of(&one.cargo, truck), 1.0));
        let at = |moment: f64| if sum.weight > 0.0 { moment / sum.weight } else { 0.0 };
        let Some(lever) = Lever::of(truck).filter(|_| sum.weight > 0.0) else {
            return Self {
                middle: Length::inches(at(sum.front)),
                behind: Length::ZERO,
                share: None,
                share_butted: None,
                on_coupling: None,
                wanted: None,
                shift: None,
            };
        };
        let wanted = (lever.middle(sum.weight, COUPLING_SHARE.1), lever.middle(sum.weight, COUPLING_SHARE.0));
        let behind = behind(laid, project, (wanted.0 * sum.weight - sum.front, wanted.1 * sum.weight - sum.front));
        let mut moved = 0.0;
        for one in laid.iter_mut() {
            one.behind = behind.min(farthest(one.cargo.length, truck));
            one.stands_out = (one.behind + one.cargo.length - truck.bed).max(Length::ZERO);
            moved += one.cargo.weight.to_pounds() * one.behind.to_inches();
        }
        let middle = at(sum.front + moved);
        let share = lever.share(sum.weight, middle);
        let wanted = (Length::inches(wanted.0), Length::inches(wanted.1));
        let shift = Length::inches(middle).clamp(wanted.0, wanted.1) - Length::inches(middle);
        Self {
            middle: Length::inches(middle),
            behind,
            share: Some(share),
            share_butted: Some(lever.share(sum.weight, at(sum.front))),
            on_coupling: Some(Weight::pounds((sum.weight + lever.own) * share)),
            wanted: Some(wanted),
            shift: Some(if shift.abs() <= HAIR { Length::ZERO } else { shift }),
        }
    }
}

/// The least distance behind the headboard that adds the lesser moment, lb·in: to the whole inch or centimetre above it, where
/// that does not add more than the greater.
fn behind(laid: &[Laid], project: &Project, (least, most): (f64, f64)) -> Length {
    let rooms: Vec<(f64, f64)> = laid
        .iter()
        .map(|one| (one.cargo.weight.to_pounds(), farthest(one.cargo.length, &project.truck).to_inches()))
        .collect();
    let added = |behind: f64| rooms.iter().map(|(weight, room)| weight * room.min(behind)).sum::<f64>();
    let mut at = 0.0;
    // From one stick's end of room to the next.
    while added(at) < least {
        let free = rooms.iter().filter(|(_, room)| *room > at);
        let (weight, next) =
            free.fold((0.0, f64::INFINITY), |(sum, next), (weight, room)| (sum + weight, next.min(*room)));
        if weight <= 0.0 {
            break;
        }
        let wanted = at + (least - added(at)) / weight;
        if wanted <= next {
            at = wanted;
            break;
        }
        at = next;
    }
    let step = match project.units {
        UnitSystem::Imperial => 1.0,
        UnitSystem::Metric => Length::millimetres(10.0).to_inches(),
    };
    let farthest = rooms.iter().map(|(_, room)| *room).fold(0.0, f64::max);
    let whole = (((at - 1e-9) / step).ceil() * step).clamp(0.0, farthest);
    Length::inches(if added(whole) <= most { whole } else { at })
}

//! Which of many cases governs a check.
//!
//! What a check allows grows with C_D, often by less than in proportion: C_P and C_L hold a slender stick back. Demand over C_D
//! alone may then pass over the case that governs.
use super::check::Check;
use crate::loads::Duration;
use crate::members::{Bracing, Member, Property, adjusted, beam_stability, beam_stability_from_ratio};
pub(super) use crate::units::most;
use crate::units::same_or_less;

/// What a case asks, how long it lasts, and the case: each size grows as the check is asked more.
pub(super) type Asks<T, const N: usize> = ([f64; N], Duration, T);

/// Of some values the largest by size over C_D, as a demand; nothing where there is none. For what is allowed in proportion
/// to C_D.
pub(super) fn hardest<T>(found: impl Iterator<Item = (f64, Duration, T)>) -> Option<(f64, Duration, T)> {
    most(found, |(size, duration, _)| size.abs() / duration.factor())
}

/// The cases that no other one covers: one of them governs.
///
/// Holds for a ratio that grows with each size, and at least in proportion where all sizes grow alike (stress by strength;
/// NDS Eq. 3.9-3, 3.9-4 and 15.4, each term of which does), under strengths that do not fall as C_D grows and do not outgrow
/// it (NDS 3.3.3, 3.7.1, 4.3). Then a case is covered by one that asks no less and lasts no longer under load (no larger C_D),
/// and by one of larger C_D that asks no less even in proportion to it.
pub(super) fn may_govern<T, const N: usize>(all: impl Iterator<Item = Asks<T, N>>) -> Vec<Asks<T, N>> {
    let mut kept: Vec<Asks<T, N>> = Vec::new();
    for one in all {
        // Of equals the first, as with `most`.
        if !kept.iter().any(|known| covers(known, &one)) {
            kept.retain(|known| !covers(&one, known));
            kept.push(one);
        }
    }
    kept
}

fn covers<T, const N: usize>((large, by, _): &Asks<T, N>, (small, of, _): &Asks<T, N>) -> bool {
    let share = (by.factor() / of.factor()).max(1.0);
    (0..N).all(|size| same_or_less(small[size] * share, large[size]))
}

/// The check of the case that asks most of what is allowed, found by the ratio itself.
pub(super) fn worst<T, const N: usize>(
    all: impl Iterator<Item = Asks<T, N>>,
    judge: impl Fn(Asks<T, N>) -> Check,
) -> Option<Check> {
    Check::worst_of(may_govern(all).into_iter().map(judge))
}

/// F_b' of one stick by numbers alone, to weigh many cases: held sideways one way where its top is pressed, another where
/// its underside is.
#[derive(Clone, Copy, Debug)]
pub(super) struct BendingStrength {
    /// F_b* of ten years.
    before: f64,
    /// F_bE of a pressed top and of a pressed underside; endless where C_L is 1.
    critical: [f64; 2],
}

impl BendingStrength {
    /// `wood`: of ten years. Without values one case weighs as its moment over C_D, and the check says what is missing.
    pub(super) fn new(wood: Result<Member, String>, bracing: [Bracing; 2]) -> Self {
        let Ok(wood) = wood else { return Self { before: 1.0, critical: [f64::INFINITY; 2] } };
        let is_deep = wood.section().depth > wood.section().breadth;
        let critical = |bracing| {
            let found = beam_stability(&wood, bracing).ok().and_then(|made| made.value.critical);
            found.filter(|_| is_deep).map_or(f64::INFINITY, crate::units::Stress::to_psi)
        };
        Self { before: adjusted(&wood, Property::Bending).value.to_psi(), critical: bracing.map(critical) }
    }

    /// F_b*·C_L in psi.
    pub(super) fn of(&self, duration: Duration, is_hogging: bool) -> f64 {
        let before = self.before * duration.factor();
        let critical = self.critical[usize::from(is_hogging)];
        if critical.is_finite() { before * beam_stability_from_ratio(critical / before) } else { before }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn kept<const N: usize>(all: &[([f64; N], Duration)]) -> Vec<usize> {
        let all = all.iter().enumerate().map(|(place, (sizes, duration))| (*sizes, *duration, place));
        may_govern(all).into_iter().map(|(.., place)| place).collect()
    }

    /// 1000/1.15 = 870 is more than 1300/1.6 = 813, yet 1300 is more than 1000: either may govern. 1600/1.6 covers the snow.
    #[test]
    fn heavier_and_shorter_may_govern_too() {
        let (snow, wind) = (Duration::TwoMonths, Duration::TenMinutes);
        assert_eq!(kept(&[([1000.0], snow), ([1300.0], wind)]), [0, 1]);
        assert_eq!(kept(&[([1000.0], snow), ([990.0], wind)]), [0]);
        assert_eq!(kept(&[([1000.0], snow), ([1600.0], wind)]), [1]);
        assert_eq!(kept(&[([1000.0], snow), ([900.0], snow), ([1000.0], snow)]), [0]);
        assert_eq!(hardest([(1000.0, snow, 0), (-1300.0, wind, 1)].into_iter()).map(|(.., place)| place), Some(0));
    }

    /// More push with less bending is its own case.
    #[test]
    fn two_sizes_trade() {
        let snow = Duration::TwoMonths;
        assert_eq!(kept(&[([10.0, 1.0], snow), ([1.0, 10.0], snow), ([1.0, 1.0], snow)]), [0, 1]);
        assert_eq!(kept(&[([10.0, 1.0], snow), ([11.0, 1.0], snow), ([11.0, 2.0], snow)]), [2]);
    }
}

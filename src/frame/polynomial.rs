//! Polynomials up to the fifth degree, lowest power first, and where they turn.

/// One more than the highest power.
pub(super) const N: usize = 6;

/// Coefficients of 1, t, t², … t⁵.
pub(super) type Polynomial = [f64; N];

/// Halvings that bring any bracket inside [0, 1] down to the last bit.
const HALVINGS: usize = 60;

/// Its value at `t`.
#[inline(always)]
pub(super) fn value(p: &Polynomial, t: f64) -> f64 {
    let [a, b, c, d, e, f] = *p;
    ((((f * t + e) * t + d) * t + c) * t + b) * t + a
}

/// The same curve with the stretch 0…length mapped to 0…1.
#[inline(always)]
pub(super) fn to_unit(p: &Polynomial, length: f64) -> Polynomial {
    let mut factor = 1.0;
    let mut out = *p;
    for coefficient in &mut out {
        *coefficient *= factor;
        factor *= length;
    }
    out
}

/// Its derivative.
#[inline(always)]
pub(super) fn derivative(p: &Polynomial) -> Polynomial {
    let [_, b, c, d, e, f] = *p;
    [b, c * 2.0, d * 3.0, e * 4.0, f * 5.0, 0.0]
}

/// A short list without an allocation: places inside (0, 1), rising.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Places {
    places: [f64; N],
    count: usize,
}

impl Places {
    fn push(&mut self, place: f64) {
        if self.count < N {
            self.places[self.count] = place;
            self.count += 1;
        }
    }

    /// The places found.
    pub(super) fn as_slice(&self) -> &[f64] {
        &self.places[..self.count]
    }
}

/// Where it changes sign inside (0, 1).
///
/// Between two neighbouring roots of the derivative a polynomial only rises or only falls, so each sign change there
/// is one root, found by a bracketed Newton step. Roots it only touches are left out: nothing turns there.
pub(super) fn sign_changes(p: &Polynomial) -> Places {
    let degree = p.iter().rposition(|coefficient| *coefficient != 0.0).unwrap_or(0);
    roots(p, degree)
}

fn roots(p: &Polynomial, degree: usize) -> Places {
    let mut found = Places::default();
    match degree {
        0 => {}
        1 => {
            let place = -p[0] / p[1];
            if place > 0.0 && place < 1.0 {
                found.push(place);
            }
        }
        _ => {
            let slope = derivative(p);
            let turns = roots(&slope, degree - 1);
            let mut low = 0.0;
            for high in turns.as_slice().iter().copied().chain([1.0]) {
                if let Some(root) = root_between(p, &slope, low, high) {
                    found.push(root);
                }
                low = high;
            }
        }
    }
    found
}

fn root_between(p: &Polynomial, slope: &Polynomial, mut low: f64, mut high: f64) -> Option<f64> {
    let (at_low, at_high) = (value(p, low), value(p, high));
    if at_low * at_high >= 0.0 {
        return None;
    }
    let rises = at_high > 0.0;
    let mut place = f64::midpoint(low, high);
    for _ in 0..HALVINGS {
        let here = value(p, place);
        if here == 0.0 {
            return Some(place);
        }
        if (here > 0.0) == rises {
            high = place;
        } else {
            low = place;
        }
        let newton = place - here / value(slope, place);
        let next = if newton > low && newton < high { newton } else { f64::midpoint(low, high) };
        if (next - place).abs() <= f64::EPSILON {
            return Some(next);
        }
        place = next;
    }
    Some(place)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(roots_in: &[f64], expected: &[f64]) {
        let mut p = [0.0; N];
        p[0] = 1.0;
        for root in roots_in {
            let mut next = [0.0; N];
            for power in 0..N {
                next[power] -= root * p[power];
                if power + 1 < N {
                    next[power + 1] += p[power];
                }
            }
            p = next;
        }
        let found = sign_changes(&p);
        assert_eq!(found.as_slice().len(), expected.len(), "{roots_in:?}: {found:?}");
        for (a, b) in found.as_slice().iter().zip(expected) {
            assert!((a - b).abs() < 1e-9, "{a} is not {b}");
        }
    }

    #[test]
    fn roots_inside_are_found_and_those_outside_left_out() {
        check(&[0.25], &[0.25]);
        check(&[1.25], &[]);
        check(&[0.2, 0.7], &[0.2, 0.7]);
        check(&[-0.5, 0.1, 0.5, 0.9, 2.0], &[0.1, 0.5, 0.9]);
        check(&[0.3, 0.31, 0.32, 0.95, 0.99], &[0.3, 0.31, 0.32, 0.95, 0.99]);
        check(&[], &[]);
    }

    #[test]
    fn a_double_root_is_no_sign_change() {
        check(&[0.5, 0.5], &[]);
        check(&[0.5, 0.5, 0.75], &[0.75]);
    }

    #[test]
    fn a_leading_coefficient_of_noise_changes_nothing() {
        let found = sign_changes(&[-0.5, 1.0, 1e-18, 1e-20, 0.0, 1e-30]);
        assert_eq!(found.as_slice().len(), 1);
        assert!((found.as_slice()[0] - 0.5).abs() < 1e-12);
    }

    #[test]
    fn stretched_to_the_unit_and_derived() {
        let p = [1.0, 2.0, 3.0, 4.0, 5.0, 6.0];
        assert_eq!(value(&to_unit(&p, 2.0), 0.25), value(&p, 0.5));
        assert_eq!(derivative(&p), [2.0, 6.0, 12.0, 20.0, 30.0, 0.0]);
    }
}

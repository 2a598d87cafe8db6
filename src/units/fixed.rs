//! A number with a fixed count of decimals.
use std::fmt::{self, Display, Formatter};

/// The text of `format!("{value:.decimals$}")`, found by whole numbers: a working holds thousands of them, and the way of the
/// standard library is slow with round ones.
#[must_use]
pub fn fixed(value: f64, decimals: usize) -> String {
    digits(value, decimals, &mut [0; 16]).map_or_else(|| format!("{value:.decimals$}"), str::to_owned)
}

/// The same at the end of a text.
pub fn push_fixed(text: &mut String, value: f64, decimals: usize) {
    match digits(value, decimals, &mut [0; 16]) {
        Some(digits) => text.push_str(digits),
        None => text.push_str(&format!("{value:.decimals$}")),
    }
}

/// The same within a longer `format!`: a value and its count of decimals.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fixed(pub f64, pub usize);

impl Display for Fixed {
    fn fmt(&self, to: &mut Formatter<'_>) -> fmt::Result {
        let Self(value, decimals) = *self;
        match digits(value, decimals, &mut [0; 16]) {
            Some(digits) => to.write_str(digits),
            None => write!(to, "{value:.decimals$}"),
        }
    }
}

/// Written from the last digit to the sign: ten digits, a point and a sign at most. None for a number past that.
fn digits(value: f64, decimals: usize, written: &mut [u8; 16]) -> Option<&str> {
    const LARGEST: f64 = 1e9;
    let scale = match decimals {
        0 => 1.0,
        1 => 10.0,
        2 => 100.0,
        3 => 1000.0,
        _ => return None,
    };
    let size = value.abs();
    if size.is_nan() || size * scale >= LARGEST {
        return None;
    }
    let (mut start, mut rest, mut place) = (written.len(), nearest(size, scale), 0);
    while rest > 0 || place <= decimals {
        if place == decimals && decimals > 0 {
            start -= 1;
            written[start] = b'.';
        }
        start -= 1;
        written[start] = b'0' + (rest % 10) as u8;
        (rest, place) = (rest / 10, place + 1);
    }
    if value.is_sign_negative() {
        start -= 1;
        written[start] = b'-';
    }
    // Digits, a point and a sign are text always.
    std::str::from_utf8(&written[start..]).ok()
}

/// The whole number nearest to the exact product, the even one of two as near. The scale is 1000 at most.
fn nearest(size: f64, scale: f64) -> u32 {
    const HALF_OF_DIGITS: u64 = !((1 << 27) - 1);
    let scaled = size * scale;
    let whole = scaled as u32;
    // What rounding took off the product, exactly: the leading half of the digits times the scale needs no rounding, nor does
    // the rest.
    let lead = f64::from_bits(size.to_bits() & HALF_OF_DIGITS);
    let rest = (lead * scale - scaled) + (size - lead) * scale;
    let past_half = (scaled - f64::from(whole) - 0.5) + rest;
    if past_half > 0.0 || past_half == 0.0 && whole % 2 == 1 { whole + 1 } else { whole }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_writes_what_the_exact_way_writes() {
        let plain =
            [0.0, 0.5, 1.0, 1.5, 2.5, 0.125, 0.0625, 0.0005, 7.25, 1.15, 0.9996, 999.9996, 1e5, 12_345.678, 1e9];
        let close = [0.25, 1.005, 2.675, 0.499_999_9, 0.500_000_1, 1e-9, 1e15, 1e300, f64::INFINITY, f64::NAN];
        let ties = (0..2000).map(|n| f64::from(n) * 0.000_5).chain((0..2000).map(|n| f64::from(n) * 0.05 + 0.005));
        let beside = ties.flat_map(|tie: f64| [tie.next_down(), tie, tie.next_up()]);
        let mut seed = 7_u64;
        let drawn = std::iter::repeat_with(|| {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (seed >> 20) as f64 / 1e6
        });
        for value in plain.into_iter().chain(close).chain(beside).chain(drawn.take(4000)) {
            for value in [value, -value, value / 1e4, value / 64.0] {
                for decimals in 0..=4 {
                    let exact = format!("{value:.decimals$}");
                    assert_eq!(fixed(value, decimals), exact, "{value:e}");
                    assert_eq!(Fixed(value, decimals).to_string(), exact, "{value:e}");
                }
            }
        }
    }
}

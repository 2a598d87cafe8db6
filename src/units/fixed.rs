//! A number with a fixed count of decimals.

/// The text of `format!("{value:.decimals$}")`, found by whole numbers wherever no tie is near: a working holds thousands of
/// them, and the exact way is slow with round ones.
#[must_use]
pub fn fixed(value: f64, decimals: usize) -> String {
    const LARGEST: f64 = 1e9;
    const TIE: f64 = 1e-6;
    let scale = match decimals {
        0 => 1.0,
        1 => 10.0,
        2 => 100.0,
        3 => 1000.0,
        _ => return format!("{value:.decimals$}"),
    };
    // Below the largest the product misses by less than a quarter of a millionth.
    let scaled = value.abs() * scale;
    if scaled.is_nan() || scaled >= LARGEST || (scaled.fract() - 0.5).abs() < TIE {
        return format!("{value:.decimals$}");
    }
    // Written from its last digit to its sign; nine digits, a point and a sign at most.
    let mut text = [0_u8; 16];
    let (mut start, mut rest, mut place) = (text.len(), scaled.round() as u32, 0);
    while rest > 0 || place <= decimals {
        if place == decimals && decimals > 0 {
            start -= 1;
            text[start] = b'.';
        }
        start -= 1;
        text[start] = b'0' + (rest % 10) as u8;
        (rest, place) = (rest / 10, place + 1);
    }
    if value.is_sign_negative() {
        start -= 1;
        text[start] = b'-';
    }
    // Digits, a point and a sign are text always.
    std::str::from_utf8(&text[start..]).unwrap_or_default().to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_writes_what_the_exact_way_writes() {
        let plain =
            [0.0, 0.5, 1.0, 1.5, 2.5, 0.125, 0.0625, 0.0005, 7.25, 1.15, 0.9996, 999.9996, 1e5, 12_345.678, 1e9];
        let close = [0.25, 1.005, 2.675, 0.499_999_9, 0.500_000_1, 1e-9, 1e15, 1e300, f64::INFINITY, f64::NAN];
        let mut seed = 7_u64;
        let drawn = std::iter::repeat_with(|| {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (seed >> 20) as f64 / 1e6
        });
        for value in plain.into_iter().chain(close).chain(drawn.take(4000)) {
            for value in [value, -value, value / 1e4, value / 64.0] {
                for decimals in 0..=4 {
                    assert_eq!(fixed(value, decimals), format!("{value:.decimals$}"), "{value:e}");
                }
            }
        }
    }
}

//! A number with or without a fraction, as it stands on a tape: `4`, `4.5`, `5/16`, `4 5/16`, `4-5/16`, `4⅜`.

use super::text::{Decimal, Token};

/// A larger part of a fraction is no mark on any tape.
const LARGEST_PART: f64 = 100_000.0;

/// A number and how it was written.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Mixed {
    pub(super) value: f64,
    /// Whether it has a fraction (not decimals).
    pub(super) has_fraction: bool,
    /// Whether it is digits alone.
    pub(super) is_whole: bool,
}

/// Why a fraction is refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum MixedFault {
    /// No number stands here, or a part of the fraction is not a plain whole number.
    Unreadable,
    /// Zero below the line.
    ZeroDenominator,
    /// A fraction of one or more behind a whole number: the whole would be counted twice.
    PastOne,
}

/// Takes the number at the front of the tokens.
pub(super) fn take_mixed(tokens: &mut &[Token]) -> Result<Mixed, MixedFault> {
    use Token::{Dash, Number, Slash, Vulgar};
    let (found, rest) = match *tokens {
        [Number(whole), Number(upper), Slash, Number(lower), rest @ ..]
        | [Number(whole), Dash, Number(upper), Slash, Number(lower), rest @ ..] => {
            (with_fraction(Some(*whole), *upper, *lower)?, rest)
        }
        [Number(whole), Vulgar(upper, lower), rest @ ..] | [Number(whole), Dash, Vulgar(upper, lower), rest @ ..] => {
            (with_fraction(Some(*whole), part(*upper), part(*lower))?, rest)
        }
        [Number(upper), Slash, Number(lower), rest @ ..] => (with_fraction(None, *upper, *lower)?, rest),
        [Vulgar(upper, lower), rest @ ..] => (with_fraction(None, part(*upper), part(*lower))?, rest),
        [Number(number), rest @ ..] => {
            (Mixed { value: number.value, has_fraction: false, is_whole: number.is_whole }, rest)
        }
        _ => return Err(MixedFault::Unreadable),
    };
    *tokens = rest;
    Ok(found)
}

fn part(value: u8) -> Decimal {
    Decimal { value: f64::from(value), is_whole: true }
}

fn with_fraction(whole: Option<Decimal>, upper: Decimal, lower: Decimal) -> Result<Mixed, MixedFault> {
    let is_plain = |number: Decimal| number.is_whole && number.value <= LARGEST_PART;
    if !is_plain(upper) || !is_plain(lower) || whole.is_some_and(|whole| !whole.is_whole) {
        return Err(MixedFault::Unreadable);
    }
    if lower.value == 0.0 {
        return Err(MixedFault::ZeroDenominator);
    }
    if whole.is_some() && upper.value >= lower.value {
        return Err(MixedFault::PastOne);
    }
    let value = whole.map_or(0.0, |whole| whole.value) + upper.value / lower.value;
    Ok(Mixed { value, has_fraction: true, is_whole: false })
}

#[cfg(test)]
mod tests {
    use super::super::text::tokens;
    use super::*;

    fn check(text: &str, expected: Result<(f64, usize), MixedFault>) {
        let tokens = tokens(text).unwrap_or_default();
        let mut rest = tokens.as_slice();
        assert_eq!(take_mixed(&mut rest).map(|mixed| (mixed.value, rest.len())), expected, "{text}");
    }

    #[test]
    fn numbers_at_the_front() {
        check("4", Ok((4.0, 0)));
        check("4 5/16\"", Ok((4.3125, 1)));
        check("4-5/16", Ok((4.3125, 0)));
        check("4⅜", Ok((4.375, 0)));
        check("11/2", Ok((5.5, 0)));
        check("7-6 1/2", Ok((7.0, 5)));
        check("4 5/0", Err(MixedFault::ZeroDenominator));
        check("4 16/16", Err(MixedFault::PastOne));
        check("4.5 1/2", Err(MixedFault::Unreadable));
        check("1/2.5", Err(MixedFault::Unreadable));
        check("'", Err(MixedFault::Unreadable));
    }
}

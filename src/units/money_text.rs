//! Prints money: thousands parted by commas, and cents only where they matter.

use super::Money;
use std::fmt;

/// From this amount on (in cents) the cents are rounded away.
const WHOLE_FROM: u64 = 100_000;

/// An amount as it is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct MoneyText<'a> {
    /// What stands in front, such as `$`.
    pub symbol: &'a str,
    /// Whether the shown amount is below zero.
    pub negative: bool,
    /// The whole amount.
    pub whole: u64,
    /// The cents, where they are shown: below a thousand.
    pub cents: Option<u64>,
}

/// `$12.50`, `$1,234` (to the nearest whole from a thousand on, half away from zero), `−$12.50`.
#[must_use]
pub const fn show_money(money: Money, symbol: &str) -> MoneyText<'_> {
    let cents = money.to_cents().unsigned_abs();
    let negative = money.to_cents() < 0;
    if cents >= WHOLE_FROM {
        return MoneyText { symbol, negative, whole: (cents + 50) / 100, cents: None };
    }
    MoneyText { symbol, negative, whole: cents / 100, cents: Some(cents % 100) }
}

impl fmt::Display for MoneyText<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.negative { "−" } else { "" };
        write!(f, "{sign}{}", self.symbol)?;
        let digits = self.whole.to_string();
        for (index, digit) in digits.chars().enumerate() {
            if index > 0 && (digits.len() - index).is_multiple_of(3) {
                f.write_str(",")?;
            }
            write!(f, "{digit}")?;
        }
        match self.cents {
            Some(cents) => write!(f, ".{cents:02}"),
            None => Ok(()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(cents: i64, expected: &str) {
        assert_eq!(show_money(Money::cents(cents), "$").to_string(), expected);
    }

    #[test]
    fn cents_below_a_thousand() {
        check(0, "$0.00");
        check(1_250, "$12.50");
        check(99_999, "$999.99");
        check(100_000, "$1,000");
        check(123_450, "$1,235");
        check(123_456_789, "$1,234,568");
        check(-1_205, "−$12.05");
    }
}

//! Lengths in words, their fractions set as fractions.
use crate::app::cached::Cached;
use crate::app::dom::{Tag, parts, tag};
use crate::units::{Fineness, Length, MetricStep, UnitSystem, feet_inches, inches_only, millimetres, show_length};
use leptos::prelude::*;

/// The stroke between the two parts of a fraction.
const STROKE: char = '\u{2044}';

/// A length to the thirty-second, or half millimetre, in the user's units.
#[must_use]
pub fn show_length_fine(length: Length, units: UnitSystem) -> String {
    show_length(length, units, Fineness::ThirtySecond, MetricStep::Half)
}

/// A length in both systems, the user's own first: `7′ 4 5⁄16″ · 88 5⁄16″ · 2243 mm`.
#[must_use]
pub fn long_length(length: Length, units: UnitSystem) -> String {
    let feet = feet_inches(length, Fineness::ThirtySecond).to_string();
    let inches = inches_only(length, Fineness::ThirtySecond).to_string();
    // An inch is 25.4 mm: half millimetres would look like a slip beside it.
    let metric = millimetres(length, MetricStep::Tenth).to_string().replace(".0 ", " ");
    match units {
        UnitSystem::Imperial if feet == inches => format!("{feet} · {metric}"),
        UnitSystem::Imperial => format!("{feet} · {inches} · {metric}"),
        UnitSystem::Metric => format!("{metric} · {feet}"),
    }
}

/// Text whose fractions (`5⁄16`) are set as fractions; everything else stays as it is.
pub fn fractions(text: &str) -> Tag {
    let mut all = parts();
    for (piece, is_fraction) in pieces(text) {
        all =
            if is_fraction { all.child(tag("span").class("fraction").child(piece)) } else { with_primes(all, &piece) };
    }
    all
}

/// A text that follows its signal, its fractions set as fractions.
pub fn followed(text: impl Into<Signal<String>>) -> Tag {
    let text = text.into();
    // Only a text that is another one is set anew.
    let text = Cached::new(move || text.get());
    parts().live(move || text.with(|text| fractions(text)))
}

/// Feet are pulled up to their inches: the typeface sets a prime as wide as a figure.
fn with_primes(mut all: Tag, text: &str) -> Tag {
    for (index, piece) in text.split('′').enumerate() {
        if index > 0 {
            all = all.child(tag("span").class("prime").child("′"));
        }
        if !piece.is_empty() {
            all = all.child(piece);
        }
    }
    all
}

/// The text cut into fractions and what stands between them; a whole number stays on the line of its fraction.
fn pieces(text: &str) -> Vec<(String, bool)> {
    let mut pieces: Vec<(String, bool)> = Vec::new();
    let mut rest = text;
    while let Some(at) = rest.find(STROKE) {
        let before = &rest[..at];
        let start = before.trim_end_matches(|c: char| c.is_ascii_digit()).len();
        let after = &rest[at + STROKE.len_utf8()..];
        let n_digits = after.len() - after.trim_start_matches(|c: char| c.is_ascii_digit()).len();
        let end = at + STROKE.len_utf8() + n_digits;
        if start > 0 {
            let text = &before[..start];
            let whole = text.strip_suffix(' ').filter(|text| text.ends_with(|c: char| c.is_ascii_digit()));
            pieces.push((whole.map_or_else(|| text.to_owned(), |whole| format!("{whole}\u{a0}")), false));
        }
        pieces.push((rest[start..end].to_owned(), true));
        rest = &rest[end..];
    }
    if !rest.is_empty() {
        pieces.push((rest.to_owned(), false));
    }
    pieces
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str, expected: &[(&str, bool)]) {
        let expected: Vec<(String, bool)> = expected.iter().map(|(part, is)| ((*part).to_owned(), *is)).collect();
        assert_eq!(pieces(text), expected, "{text}");
    }

    #[test]
    fn fractions_are_cut_out() {
        check("7′ 4 5⁄16″ · 2243 mm", &[("7′ 4\u{a0}", false), ("5⁄16", true), ("″ · 2243 mm", false)]);
        check("5⁄16″", &[("5⁄16", true), ("″", false)]);
        check("1⁄2 and 3⁄4", &[("1⁄2", true), (" and ", false), ("3⁄4", true)]);
        check("12 mm", &[("12 mm", false)]);
        check("", &[]);
    }
}

//! Rows of the tables beside this room: a heading line, then values between commas, source and confidence last.
use super::Refused;
use crate::materials::Confidence;

/// The rows, cut at their commas.
pub(super) fn rows(text: &'static str) -> impl Iterator<Item = Vec<&'static str>> {
    text.lines().skip(1).filter(|line| !line.is_empty()).map(|line| line.split(',').collect())
}

/// The confidence a row names; what is not named is low.
pub(super) fn confidence(word: &str) -> Confidence {
    match word {
        "high" => Confidence::High,
        "medium" => Confidence::Medium,
        _ => Confidence::Low,
    }
}

/// The sentence for a key no row has.
pub(super) fn unknown(what: &str, key: &str) -> Refused {
    Refused::because(format!("There is no {what} named {key} in the table: choose one of the list."))
}

//! One sentence for many places where the same is in the way.
use super::clash::Clash;
use crate::solid::Vector;
use crate::units::Length;

/// One thing in the way, before it is told together with its like.
pub(super) struct Found {
    /// The stick it is in.
    pub stick: String,
    /// The stick it meets there.
    pub other: Option<String>,
    /// Where in the frame.
    pub at: Vector,
    /// Where along the stick.
    pub from_zero: Length,
    /// What it is: "the fixing".
    pub what: &'static str,
    /// Which one it is: "at the wall's post 3".
    pub which: String,
    /// What is said of it, the same for all that are alike.
    pub says: String,
    /// The move along the stick that clears it.
    pub clears: Option<Length>,
}

/// A clash for each sentence, with all its places. `many` is what several are called: "fixings".
pub(super) fn told_together(found: Vec<Found>, many: &str) -> Vec<Clash> {
    let mut groups: Vec<Vec<Found>> = Vec::new();
    for one in found {
        match groups.iter_mut().find(|group| group[0].says == one.says) {
            Some(group) => group.push(one),
            None => groups.push(vec![one]),
        }
    }
    groups.into_iter().filter_map(|group| clash(group, many)).collect()
}

fn clash(group: Vec<Found>, many: &str) -> Option<Clash> {
    let count = group.len();
    let mut all = group.into_iter();
    let first = all.next()?;
    let what = if count == 1 { first.what.to_owned() } else { format!("{count} {many}, the first") };
    let says = format!("{}: {what} {}: {}", first.stick, first.which, first.says);
    let alike = all.map(|one| (one.stick, one.at)).collect();
    Some(Clash {
        stick: first.stick,
        other: first.other,
        at: first.at,
        from_zero: first.from_zero,
        says,
        clears: first.clears,
        field: None,
        alike,
    })
}

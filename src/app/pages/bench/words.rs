//! A mark in words.
use crate::tickets::{Mark, MarkKind, Stick, Waste};
use crate::units::{Fineness, Length, UnitSystem};
use crate::wording::tape;

/// A measure as the tape shows it: the side of zero is said in words, never by a sign.
pub fn figure(value: Length, units: UnitSystem, fineness: Fineness) -> String {
    tape(value.abs(), units, fineness)
}

/// Both edges as the tape shows them, the one nearer to zero first.
pub fn figures(mark: &Mark, units: UnitSystem) -> (String, Option<String>) {
    let show = |value| figure(value, units, mark.fineness);
    match mark.far {
        Some(far) if is_left_of_zero(mark) => (show(far), Some(show(mark.near))),
        far => (show(mark.near), far.map(show)),
    }
}

/// The whole mark lies on the low end's side of zero.
pub fn is_left_of_zero(mark: &Mark) -> bool {
    mark.near.is_negative() && mark.far.unwrap_or(mark.near) <= Length::ZERO
}

/// Which side of zero, where it is not the usual one.
pub fn side_of_zero(mark: &Mark) -> Option<&'static str> {
    match (mark.near.is_negative(), is_left_of_zero(mark)) {
        (_, true) => Some("left of zero"),
        (true, false) => Some("the first left of zero, the second right of it"),
        (false, false) => None,
    }
}

/// Both edges in one line: `134″ to 142″`.
pub fn edges(mark: &Mark, units: UnitSystem) -> String {
    let (first, second) = figures(mark, units);
    let both = second.map_or_else(|| first.clone(), |second| format!("{first} to {second}"));
    side_of_zero(mark).map_or_else(|| both.clone(), |side| format!("{both}, {side}"))
}

/// Both edges from the stick's other end.
pub fn from_other_end(stick: &Stick, mark: &Mark, units: UnitSystem) -> String {
    let (near, far) = mark.from_far_end(stick.high);
    let show = |value| figure(value, units, mark.fineness);
    let both = far.map_or_else(|| show(near), |far| format!("{} to {}", show(near), show(far)));
    format!("{both} from the right end")
}

/// Where it lies across the face, as finely as its places along the stick.
pub fn across(mark: &Mark, units: UnitSystem) -> Option<String> {
    let from = mark.across_from.map_or_else(String::new, |face| format!(" from the {}", face.name()));
    let show = |value| tape(value, units, mark.fineness);
    match mark.across {
        Some((near, far)) if near == far => Some(format!("{}{from}", show(near))),
        Some((near, far)) => Some(format!("{} to {}{from}", show(near), show(far))),
        None if matches!(mark.kind, MarkKind::End | MarkKind::Line) => Some("square across".to_owned()),
        None => None,
    }
}

/// How deep.
pub fn depth(mark: &Mark, units: UnitSystem) -> Option<String> {
    mark.depth.map(|depth| format!("{} deep", tape(depth, units, mark.fineness)))
}

/// Which wood goes: before, the word that matters, after.
pub fn waste(mark: &Mark) -> Option<(&'static str, &'static str, &'static str)> {
    match mark.waste {
        Waste::None => None,
        Waste::Between => Some(("The wood ", "between the lines", " goes")),
        Waste::Before => Some(("The wood to the ", "left", " of the line goes")),
        Waste::After => Some(("The wood to the ", "right", " of the line goes")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tickets::Face;

    fn check(edges_in: (f64, Option<f64>), expected: &str) {
        let mut mark = Mark::line("tenon", Face::Outer, Length::inches(edges_in.0), MarkKind::Tenon);
        mark.far = edges_in.1.map(Length::inches);
        assert_eq!(edges(&mark, UnitSystem::Imperial), expected);
    }

    #[test]
    fn the_side_of_zero_is_a_word() {
        check((134.25, None), "134 1⁄4″");
        check((134.0, Some(142.0)), "134″ to 142″");
        check((-4.0, Some(0.0)), "0″ to 4″, left of zero");
        check((-1.875, None), "1 7⁄8″, left of zero");
        check((-1.0, Some(2.0)), "1″ to 2″, the first left of zero, the second right of it");
    }
}

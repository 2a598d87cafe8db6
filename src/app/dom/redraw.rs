//! A drawing whose parts stay in the page for as long as they stay the same: to read, style and lay out a part anew costs
//! more than to find that it is the old one.
use web_sys::Element;

/// Puts a drawing's markup where `old` stood. Where the two have the same frame, only the parts that differ are written.
pub fn redraw(place: &Element, old: &str, new: &str) {
    let known = place.first_element_child().zip(parts(old)).zip(parts(new));
    match known {
        Some(((svg, (old_frame, old)), (frame, new)))
            if old_frame == frame && svg.child_element_count() as usize == old.len() =>
        {
            carry_out(&svg, &changes(&old, &new));
        }
        _ => place.set_inner_html(new),
    }
}

/// What is done, from one part that stands there to the next.
#[derive(Debug, PartialEq)]
enum Change {
    /// The part stays.
    Keep,
    /// It goes.
    Remove,
    /// These come before it, or at the end.
    Put(String),
}

/// The frame of a drawing and its parts, where it is nothing but parts that hold no others.
fn parts(markup: &str) -> Option<(&str, Vec<&str>)> {
    let inside = markup.strip_suffix("</svg>").filter(|inside| inside.starts_with("<svg "))?;
    let (frame, mut rest) = inside.split_at(inside.find('>')? + 1);
    let mut parts = Vec::new();
    while !rest.is_empty() {
        let name = rest.strip_prefix('<')?.split(' ').next()?;
        let opens = rest.find('>')?;
        let length = if rest[..opens].ends_with('/') {
            opens + 1
        } else {
            let says = opens + 1;
            let closes = says + rest[says..].find('<')?;
            let close = rest[closes..].strip_prefix("</")?.strip_prefix(name)?;
            close.starts_with('>').then_some(closes + name.len() + 3)?
        };
        let (part, after) = rest.split_at(length);
        parts.push(part);
        rest = after;
    }
    Some((frame, parts))
}

/// From the old parts to the new ones; a part that comes again later is taken for the same.
fn changes(old: &[&str], new: &[&str]) -> Vec<Change> {
    let mut all = Vec::with_capacity(old.len());
    let (mut rest, mut fresh) = (old, String::new());
    let put = |all: &mut Vec<Change>, fresh: &mut String| {
        if !fresh.is_empty() {
            all.push(Change::Put(std::mem::take(fresh)));
        }
    };
    for part in new {
        match rest.iter().position(|old| old == part) {
            Some(skipped) => {
                put(&mut all, &mut fresh);
                all.extend((0..skipped).map(|_| Change::Remove));
                all.push(Change::Keep);
                rest = &rest[skipped + 1..];
            }
            None => fresh.push_str(part),
        }
    }
    put(&mut all, &mut fresh);
    all.extend(rest.iter().map(|_| Change::Remove));
    all
}

fn carry_out(svg: &Element, changes: &[Change]) {
    let mut at = svg.first_element_child();
    for change in changes {
        match (change, &at) {
            (Change::Keep, Some(part)) => at = part.next_element_sibling(),
            (Change::Remove, Some(part)) => {
                let next = part.next_element_sibling();
                part.remove();
                at = next;
            }
            (Change::Put(text), Some(part)) => drop(part.insert_adjacent_html("beforebegin", text)),
            (Change::Put(text), None) => drop(svg.insert_adjacent_html("beforeend", text)),
            (Change::Keep | Change::Remove, None) => return,
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::drawing::{elevation, svg};
    use crate::lay_out;
    use crate::project::{Project, demo};
    use crate::units::Length;

    fn carried_out(old: &[&str], changes: &[Change]) -> String {
        let (mut text, mut old) = (String::new(), old.iter());
        for change in changes {
            match change {
                Change::Keep => text.push_str(old.next().unwrap()),
                Change::Remove => drop(old.next().unwrap()),
                Change::Put(fresh) => text.push_str(fresh),
            }
        }
        assert!(old.next().is_none());
        text
    }

    #[test]
    fn what_stays_is_kept_and_the_rest_comes_in_its_place() {
        let (old, new) = (["a", "b", "c", "d"], ["x", "a", "c", "y", "z", "d", "e"]);
        let found = changes(&old, &new);
        let put = |text: &str| Change::Put(text.to_owned());
        let keep = || Change::Keep;
        let expected = [put("x"), keep(), Change::Remove, keep(), put("yz"), keep(), put("e")];
        assert_eq!(found, expected);
        assert_eq!(carried_out(&old, &found), new.concat());
    }

    #[test]
    fn any_list_becomes_any_other() {
        let letters = ["a", "b", "c", "d", "e"];
        let list = |mut code: usize| -> Vec<&str> {
            let mut list = Vec::new();
            while code > 0 {
                list.push(letters[code % 5]);
                code /= 5;
            }
            list
        };
        for old in (0..3000).step_by(37).map(list) {
            for new in (0..3000).step_by(41).map(list) {
                assert_eq!(carried_out(&old, &changes(&old, &new)), new.concat(), "{old:?} {new:?}");
            }
        }
    }

    #[test]
    fn only_a_flat_drawing_has_parts() {
        let drawing = "<svg a=\"1\"><path d=\"M0 0\"/><text x=\"1\">P1 &lt; P2</text></svg>";
        let (frame, found) = parts(drawing).unwrap();
        assert_eq!((frame, found), ("<svg a=\"1\">", vec!["<path d=\"M0 0\"/>", "<text x=\"1\">P1 &lt; P2</text>"]));
        for other in ["", "<p>a</p>", "<svg ></svg><p></p>", "<svg a=\"1\"><g ><path /></g></svg>", "<svg >word</svg>"]
        {
            assert_eq!(parts(other), None, "{other}");
        }
    }

    /// What another rafter spacing leaves of the elevation: the ground, the piers, the posts and their braces at least.
    #[test]
    fn most_of_a_drawing_outlives_an_edit() {
        let drawn = |project: &Project| {
            let built = lay_out(project).built.unwrap();
            svg::print(&elevation(project, &built), 360.0, "Beam line")
        };
        let mut project = demo::wool_barn();
        let old = drawn(&project);
        project.frame.rafters.spacing = Length::inches(22.0);
        let new = drawn(&project);
        let ((old_frame, old), (frame, parts)) = (parts(&old).unwrap(), parts(&new).unwrap());
        assert_eq!(old_frame, frame);
        let found = changes(&old, &parts);
        assert_eq!(carried_out(&old, &found), parts.concat());
        let kept = found.iter().filter(|change| **change == Change::Keep).count();
        assert!(2 * kept > old.len(), "{kept} of {}", old.len());
    }
}

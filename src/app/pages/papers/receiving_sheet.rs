//! A list to receive the timber by: a line for every piece, with room to write what it measures; what is known already is
//! printed.
use crate::app::Good;
use crate::app::components::{fractions, table};
use crate::app::dom::{Tag, parts, tag};
use crate::materials::Section;
use crate::ordering::came::{Place, places};
use crate::ordering::{asked_length, piece_name};
use crate::project::{Defect, Piece, Project};
use crate::units::Length;
use crate::wording::length;

/// The list.
pub fn receiving_sheet(good: Good) -> Tag {
    let (project, built) = (good.project, good.built);
    let places = places(&project, &built);
    let mut rows = Vec::new();
    for line in &built.order.lines {
        for number in 1..=line.count {
            let name = piece_name(line, number);
            let place = places.iter().find(|place| place.asked_as == name);
            let asked = format!(
                "{} × {}, {number}",
                line.section.label(project.units),
                asked_length(line.length, project.units)
            );
            rows.push(row(&project, &asked, place, project.progress.pieces.get(&name)));
        }
    }
    let found: Vec<&str> = Defect::ALL.iter().map(|defect| defect.name()).collect();
    parts()
        .child(tag("p").class("paper__word").child(
            "Measure both ends and the length; sight along it for crown; look at all four faces. Near is the end you stand at: \
             write the number there.",
        ))
        .child(tag("p").class("paper__word").child(format!("Look for: {}.", found.join(", "))))
        .child(tag("p").class("paper__caution").child("Never stand where a load can roll when the straps come off."))
        .child(table(
            "paper__table",
            &["Here", "Piece", "For", "Near end", "Far end", "Length", "Crown", "% wet", "Found"],
            rows,
        ))
}

fn row(project: &Project, asked: &str, place: Option<&Place>, piece: Option<&Piece>) -> Tag {
    let units = project.units;
    let long = |value: Option<Length>| value.map_or_else(String::new, |value| length(value, units));
    let size = |end: Option<Section>| {
        end.map_or_else(String::new, |end| format!("{} × {}", length(end.breadth, units), length(end.depth, units)))
    };
    let box_of = match piece {
        Some(piece) if piece.is_kept() => "☑",
        Some(_) => "back",
        None => "☐",
    };
    let found = piece.map_or_else(String::new, |piece| {
        let named = piece.defects.iter().map(|defect| defect.name().to_owned());
        named.chain([piece.remark.clone()]).filter(|word| !word.is_empty()).collect::<Vec<_>>().join(", ")
    });
    let given = piece.map(|piece| piece.place.as_str()).filter(|place| !place.is_empty());
    let becomes = given.map(str::to_owned).or(place.map(Place::short)).unwrap_or_default();
    let cell = |text: &str| tag("td").child(fractions(text));
    let wet = piece.and_then(|piece| piece.moisture_percent).map_or_else(String::new, |wet| format!("{wet:.0}"));
    tag("tr")
        .child(tag("td").class("paper__boxes").child(box_of))
        .child(tag("th").attr("scope", "row").child(fractions(asked)))
        .child(cell(&becomes))
        .child(cell(&size(piece.and_then(|piece| piece.near))))
        .child(cell(&size(piece.and_then(|piece| piece.far))))
        .child(cell(&long(piece.and_then(|piece| piece.real_length))))
        .child(cell(&long(piece.and_then(|piece| piece.crown))))
        .child(cell(&wet))
        .child(cell(&found))
}

//! The order on paper, with a box to tick for every piece.
use crate::app::Good;
use crate::app::components::{fractions, table};
use crate::app::dom::{Tag, parts, tag};
use crate::materials::species;
use crate::ordering::{OrderLine, WHY_TWICE, asked_length, full_words, n_pieces, sawn_words};
use crate::project::Project;
use crate::units::{show_money, show_weight, show_wood_volume};
use crate::wording::length;

/// The order list.
pub fn order_sheet(good: Good) -> Tag {
    let (project, built) = (good.project, good.built);
    let units = project.units;
    let unplaced = built.order.unplaced.iter().map(|stick| (stick, "no length of the mill holds it"));
    let lacking = built.order.lacking.iter().map(|stick| (stick, "none is left that is long enough"));
    let missing = unplaced
        .chain(lacking)
        .map(|((mark, needed), why)| {
            let says = format!("{mark} needs {}: {why}.", length(*needed, units));
            tag("p").class("paper__word").child(fractions(&says))
        })
        .collect::<Vec<_>>();
    let total = format!(
        "In all {} pieces, {}, about {} green, {}.",
        n_pieces(&built.order),
        show_wood_volume(built.order.volume, units),
        show_weight(built.order.weight, units),
        show_money(built.order.price, &project.currency)
    );
    let wood =
        species(&project.frame.species).map(|wood| format!("{}, rough sawn, green. ", wood.name)).unwrap_or_default();
    let docked = format!("{} docked from each end is in the lengths.", length(project.mill.trim_each_end, units));
    let deliveries = built.order.deliveries();
    let is_parted = deliveries.len() > 1;
    let tables = deliveries
        .into_iter()
        .map(|delivery| {
            let says = format!(
                "{}: {} pieces, about {} green, {}.",
                delivery.name(),
                delivery.n_pieces,
                show_weight(delivery.weight, units),
                show_money(delivery.price, &project.currency)
            );
            let heads = ["Count", "Section", "Length", "Wood", "Green", "Price", "Here", "Sticks"];
            let head = is_parted.then(|| tag("h3").class("paper__word").child(says));
            parts().child(head).child(table(
                "paper__table",
                &heads,
                rows(built.order.lines_of(delivery.number), &project),
            ))
        })
        .collect::<Vec<_>>();
    let sawn = sawn_words(&project).join(" ");
    parts()
        .child(tag("p").class("paper__word").child(wood).child(fractions(&docked)))
        .child(tag("p").class("paper__word").child(fractions(full_words(units))).child(" ").child(fractions(&sawn)))
        .child(is_parted.then(|| tag("p").class("paper__word").child(WHY_TWICE)))
        .child(tables)
        .child(missing)
        .child(tag("p").class("paper__total").child(total))
}

/// A row for each line, with a box for every piece, under the words for its wood.
fn rows<'a>(lines: impl Iterator<Item = &'a OrderLine>, project: &Project) -> Vec<Tag> {
    let units = project.units;
    let mut above: Option<&OrderLine> = None;
    let row = |line: &'a OrderLine| {
        let is_other = above.is_none_or(|above| above.section != line.section || above.words != line.words);
        above = Some(line);
        let says = format!("{}: {}", line.section.label(units), line.words.join(", "));
        let words = is_other.then(|| tag("tr").child(tag("td").class("paper__grade").attr("colspan", "8").child(says)));
        let mut sticks: Vec<String> = line.holds.iter().map(|marks| marks.join("+")).collect();
        sticks.extend(line.spare_words());
        let row = tag("tr")
            .child(tag("td").class("paper__number").child(line.count))
            .child(tag("th").attr("scope", "row").child(line.section.label(units)))
            .child(tag("td").child(fractions(&asked_length(line.length, units))))
            .child(tag("td").child(show_wood_volume(line.volume, units).to_string()))
            .child(tag("td").child(show_weight(line.weight, units).to_string()))
            .child(tag("td").child(show_money(line.price, &project.currency).to_string()))
            .child(tag("td").class("paper__boxes").child("☐".repeat(line.count)))
            .child(tag("td").class("paper__sticks").child(sticks.join(" ")));
        parts().child(words).child(row)
    };
    lines.map(row).collect::<Vec<_>>()
}

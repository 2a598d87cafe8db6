//! The order on paper, with a box to tick for every piece.
use crate::app::Good;
use crate::app::components::{fractions, table};
use crate::app::dom::{Tag, parts, tag};
use crate::materials::species;
use crate::ordering::{Order, OrderLine, asked_length, n_pieces};
use crate::project::Project;
use crate::units::{show_money, show_weight, show_wood_volume};
use crate::wording::length;

/// The order list.
pub fn order_sheet(good: Good) -> Tag {
    let (project, built) = (good.project, good.built);
    let units = project.units;
    let missing = built
        .order
        .unplaced
        .iter()
        .map(|(mark, needed)| {
            let says = format!("{mark} needs {}: no length of the mill holds it.", length(*needed, units));
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
    parts()
        .child(tag("p").class("paper__word").child(wood).child(fractions(&docked)))
        .child(table(
            "paper__table",
            &["Count", "Section", "Length", "Wood", "Green", "Price", "Here", "Sticks"],
            rows(&built.order, &project),
        ))
        .child(missing)
        .child(tag("p").class("paper__total").child(total))
}

/// A row for each line, with a box for every piece.
fn rows(order: &Order, project: &Project) -> Vec<Tag> {
    let units = project.units;
    let row = |line: &OrderLine| {
        let sticks: Vec<String> = line.holds.iter().map(|marks| marks.join("+")).collect();
        tag("tr")
            .child(tag("td").class("paper__number").child(line.count))
            .child(tag("th").attr("scope", "row").child(line.section.label(units)))
            .child(tag("td").child(fractions(&asked_length(line.length, units))))
            .child(tag("td").child(show_wood_volume(line.volume, units).to_string()))
            .child(tag("td").child(show_weight(line.weight, units).to_string()))
            .child(tag("td").child(show_money(line.price, &project.currency).to_string()))
            .child(tag("td").class("paper__boxes").child("☐".repeat(line.count)))
            .child(tag("td").class("paper__sticks").child(sticks.join(" ")))
    };
    order.lines.iter().map(row).collect::<Vec<_>>()
}

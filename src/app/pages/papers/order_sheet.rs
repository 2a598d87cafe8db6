//! The order on paper, with a box to tick for every piece.
use crate::app::Good;
use crate::app::components::fractions;
use crate::materials::species;
use crate::ordering::{Order, OrderLine, asked_length, n_pieces};
use crate::project::Project;
use crate::units::{show_money, show_weight, show_wood_volume};
use crate::wording::length;
use leptos::prelude::*;

/// The order list.
#[component]
pub fn OrderSheet(good: Good) -> impl IntoView {
    let (project, built) = (good.project, good.built);
    let units = project.units;
    let missing = built
        .order
        .unplaced
        .iter()
        .map(|(mark, needed)| {
            let says = format!("{mark} needs {}: no length of the mill holds it.", length(*needed, units));
            view! { <p class="paper__word">{fractions(&says)}</p> }
        })
        .collect_view();
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
    view! {
        <p class="paper__word">{wood} {fractions(&docked)}</p>
        <table class="paper__table">
            <thead>
                <tr>
                    <th scope="col">"Count"</th>
                    <th scope="col">"Section"</th>
                    <th scope="col">"Length"</th>
                    <th scope="col">"Wood"</th>
                    <th scope="col">"Green"</th>
                    <th scope="col">"Price"</th>
                    <th scope="col">"Here"</th>
                    <th scope="col">"Sticks"</th>
                </tr>
            </thead>
            <tbody>{rows(&built.order, &project)}</tbody>
        </table>
        {missing}
        <p class="paper__total">{total}</p>
    }
}

/// A row for each line, with a box for every piece.
fn rows(order: &Order, project: &Project) -> AnyView {
    let units = project.units;
    let row = |line: &OrderLine| {
        let sticks: Vec<String> = line.holds.iter().map(|marks| marks.join("+")).collect();
        view! {
            <tr>
                <td class="paper__number">{line.count}</td>
                <th scope="row">{line.section.label(units)}</th>
                <td>{fractions(&asked_length(line.length, units))}</td>
                <td>{show_wood_volume(line.volume, units).to_string()}</td>
                <td>{show_weight(line.weight, units).to_string()}</td>
                <td>{show_money(line.price, &project.currency).to_string()}</td>
                <td class="paper__boxes">{"☐".repeat(line.count)}</td>
                <td class="paper__sticks">{sticks.join(" ")}</td>
            </tr>
        }
    };
    order.lines.iter().map(row).collect_view().into_any()
}

//! One stick on paper: its faces unrolled, its marks in order.
use crate::app::Good;
use crate::app::components::fractions;
use crate::drawing::{stick_sheet, svg};
use crate::project::Project;
use crate::tickets::{Mark, Stick};
use crate::units::{Length, show_weight};
use crate::wording::{length, tape};
use leptos::prelude::*;

/// Width of the drawing, px; a long stick is drawn wider and set smaller.
const WIDTH: f64 = 680.0;

/// The sheet.
#[component]
pub fn StickSheet(good: Good, mark: String) -> impl IntoView {
    let stick = good.built.stick(&mark)?;
    let project = &good.project;
    let units = project.units;
    let facts = format!(
        "{} {}, {} net, {} green, balances {} from zero.",
        stick.role.name(),
        stick.timber.sawn.label(units),
        length(stick.net_length(), units),
        show_weight(stick.green_weight, units),
        length(stick.bulk.balance(), units)
    );
    let zero =
        format!("Zero: {}. References: {} and {}.", stick.zero, stick.references.0.name(), stick.references.1.name());
    let alike: Vec<&str> = good
        .built
        .sticks
        .iter()
        .filter(|other| other.same_as.as_deref() == Some(&mark))
        .map(|other| other.mark.as_str())
        .collect();
    let alike = (!alike.is_empty()).then(|| {
        let boxes: Vec<String> = alike.iter().map(|mark| format!("☐ {mark}")).collect();
        view! { <p class="paper__word">{format!("Cut alike: ☐ {mark} {}", boxes.join(" "))}</p> }
    });
    let same = stick.same_as.as_ref().map(|first| view! { <p class="paper__word">{format!("Cut like {first}.")}</p> });
    let html = svg::print(&stick_sheet(project, stick), WIDTH, &mark);
    let rows = stick.marks.iter().enumerate().map(|(index, one)| row(project, stick, index, one)).collect_view();
    Some(view! {
        <p class="paper__word">{fractions(&facts)} " " {fractions(&zero)}</p>
        <p class="paper__ask"><strong>{stick.ask.clone()}</strong></p>
        {same}
        {alike}
        <div class="paper__drawing paper__drawing--fitted" inner_html=html></div>
        <p class="paper__scale">"Not to scale: go by the numbers."</p>
        <Marks>{rows}</Marks>
    })
}

#[component]
fn Marks(children: Children) -> impl IntoView {
    view! {
        <table class="paper__table">
            <thead>
                <tr>
                    <th scope="col">"☐"</th>
                    <th scope="col">"Mark"</th>
                    <th scope="col">"Face"</th>
                    <th scope="col">"Near"</th>
                    <th scope="col">"Far"</th>
                    <th scope="col">"From the other end"</th>
                    <th scope="col">"Across, depth, what to know"</th>
                </tr>
            </thead>
            <tbody>{children()}</tbody>
        </table>
    }
}

fn row(project: &Project, stick: &Stick, index: usize, mark: &Mark) -> impl IntoView + use<> {
    let say = |value: Length| tape(value, project.units, mark.fineness);
    let (near, far) = mark.from_far_end(stick.high);
    let other = far.map_or_else(|| say(near), |far| format!("{} to {}", say(near), say(far)));
    let mut know = Vec::new();
    if let Some((from, to)) = mark.across {
        let face = mark.across_from.map_or("", |face| face.name());
        know.push(format!("{} to {} from the {face}", say(from), say(to)));
    }
    know.extend(mark.depth.map(|depth| format!("{} deep", say(depth))));
    if !mark.note.is_empty() {
        know.push(mark.note.clone());
    }
    view! {
        <tr>
            <td class="paper__box">"☐ " {index + 1}</td>
            <th scope="row">{mark.what.clone()}</th>
            <td class="paper__box">{mark.face.name()}</td>
            <td class="paper__number">{fractions(&say(mark.near))}</td>
            <td class="paper__number">{mark.far.map(|far| fractions(&say(far)))}</td>
            <td>{fractions(&other)}</td>
            <td>{fractions(&know.join("; "))}</td>
        </tr>
    }
}

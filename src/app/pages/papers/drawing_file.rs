//! Drawings as files that look right without the app's style sheets.
use super::choose::Kind;
use super::thumbs::scene;
use crate::app::components::Fold;
use crate::app::files::{download, file_name};
use crate::app::use_store;
use crate::drawing::{stick_sheet, svg};
use leptos::prelude::*;

/// Pens for a drawing that stands alone: ink on white.
const PENS: &str = include_str!("../../../../style/drawing-file.css");
/// Width of the files, px.
const WIDTH: f64 = 1400.0;

/// The drawing with its pens inside.
fn with_pens(svg: &str) -> String {
    match svg.find('>') {
        Some(end) => format!("{}<style>{PENS}</style>{}", &svg[..=end], &svg[end + 1..]),
        None => svg.to_owned(),
    }
}

/// A file for each drawing.
#[component]
pub fn DrawingFiles() -> impl IntoView {
    let store = use_store();
    let stick = RwSignal::new(String::new());
    let save = move |kind: Kind| {
        if let Some(good) = store.good() {
            let drawn = svg::print(&scene(kind, &good), WIDTH, kind.title());
            let name = file_name(&format!("{} {}", good.project.name, kind.title()), "svg");
            download(&name, &with_pens(&drawn), "image/svg+xml");
        }
    };
    let save_stick = move |_| {
        let (Some(good), mark) = (store.good(), stick.get_untracked()) else { return };
        if let Some(chosen) = good.built.stick(&mark).or(good.built.sticks.first()) {
            let drawn = svg::print(&stick_sheet(&good.project, chosen), WIDTH, &chosen.mark);
            let name = file_name(&format!("{} {}", good.project.name, chosen.mark), "svg");
            download(&name, &with_pens(&drawn), "image/svg+xml");
        }
    };
    let marks = Memo::new(move |_| {
        let built = store.built();
        built.map(|built| built.sticks.iter().map(|stick| stick.mark.clone()).collect::<Vec<_>>()).unwrap_or_default()
    });
    let options = move || {
        marks.get().into_iter().map(|mark| view! { <option value=mark.clone()>{mark.clone()}</option> }).collect_view()
    };
    let kinds = [Kind::Order, Kind::Section, Kind::Elevation, Kind::Plan]
        .into_iter()
        .map(
            |kind| view! { <button type="button" class="button" on:click=move |_| save(kind)>{name_of(kind)}</button> },
        )
        .collect_view();
    view! {
        <Fold title="Drawings as files" summary=Signal::derive(|| "SVG, for any drawing program or browser".to_owned())>
            <div class="actions">{kinds}</div>
            <div class="stick-file">
                <label class="field__label" for="stick-file"><span class="field__name">"One stick’s sheet"</span></label>
                <div class="another__row">
                    <select class="field__input field__pick" id="stick-file" on:change=move |event| stick.set(event_target_value(&event))>
                        {options}
                    </select>
                    <button type="button" class="button" on:click=save_stick>"Save"</button>
                </div>
            </div>
        </Fold>
    }
}

/// The drawing's name on its button.
fn name_of(kind: Kind) -> &'static str {
    match kind {
        Kind::Order => "Stock",
        other => other.title(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pens_stand_inside_the_drawing() {
        let whole = with_pens("<svg class=\"drawing\"><path/></svg>");
        assert!(whole.starts_with("<svg class=\"drawing\"><style>"));
        assert!(whole.ends_with("</style><path/></svg>"));
        // What would end the style or break XML stands in none of the pens.
        assert!(!PENS.contains(['<', '&']));
    }
}

//! Joints in each other's way, by the solids: a list and where they are; nothing is shown where all fits.
use crate::app::cached::Cached;
use crate::app::components::{drawing_view, fractions, missing};
use crate::app::dom::{Tag, parts, tag};
use crate::app::part::{Coming, Fetched};
use crate::app::route::Route;
use crate::app::{Fitted, SOLIDS, use_store};
use crate::drawing;

/// The list, or that everything fits.
pub fn in_the_way() -> Tag {
    let store = use_store();
    let fitted = Cached::new(move || store.fitted());
    let is_missing = move || SOLIDS.coming() == Coming::Missing;
    parts()
        .shown(is_missing, || missing("Whether the joints fit is not looked at yet: ", &SOLIDS))
        .live(move || fitted.get().map(|fitted| found(&fitted)))
}

fn found(fitted: &Fitted) -> Tag {
    let stopped = fitted.fit.entries.iter().filter_map(|entry| {
        let by = entry.stopped.as_ref()?;
        Some((entry.stick.clone(), format!("{} cannot get in: {} is in its way.", entry.stick, by.by)))
    });
    let clashes = fitted.fit.clashes.iter().map(|clash| (clash.stick.clone(), clash.says.clone()));
    let all: Vec<(String, String)> = clashes.chain(stopped).collect();
    if all.is_empty() {
        let n = fitted.fit.bodies.len();
        let words = format!("All {n} sticks fit together, and each has a free way in.");
        return tag("p").class("word").child(words);
    }
    let rows: Vec<Tag> = all.into_iter().map(|(stick, says)| row(&stick, &says)).collect();
    let title = "Where joints are in each other’s way";
    let drawn = fitted.clone();
    let draw = move |width: f64| {
        let scene = drawing::trouble_elevation(&drawn.good.project, &drawn.good.built, &drawn.fit.clashes);
        drawing::svg::print(&scene, width, title)
    };
    tag("section")
        .class("problem problem--list")
        .attr("aria-label", title)
        .child(tag("h2").class("fit__title").child(title))
        .child(drawing_view(draw, title, None))
        .child(tag("ol").class("fit__list").child(rows))
}

fn row(stick: &str, says: &str) -> Tag {
    let href = Route::bench(stick).hash();
    tag("li").class("fit__row").child(tag("a").class("fit__link").attr("href", href).child(fractions(says)))
}

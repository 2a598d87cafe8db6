//! Templates at true size and the jigs: a part of the bench and of the papers.
use crate::app::components::{Segment, caution, fractions, late_fold, segments, table, word};
use crate::app::dom::{Tag, after_print, beside_app, button, live, parts, print_only, tag};
use crate::app::files::{download, file_name, with_pens};
use crate::app::{Good, Store, use_store};
use crate::drawing::{Paper, TemplateSheets, svg, template_file, template_scene};
use crate::project::Project;
use crate::tickets::{Board, Jig, Template, jigs, templates};
use crate::units::{Fineness, Length};
use crate::wording::{length, tape};
use leptos::prelude::*;

/// What is printed: every sheet that is asked for.
const PACK: &str = "template-pack";
/// Pens of a template, for a file that stands alone.
const PENS: &str = include_str!("../../../style/template.css");
/// Width the small drawings are made for, px.
const WIDTH: f64 = 300.0;

/// What is being printed.
#[derive(Clone, PartialEq)]
enum Printed {
    Nothing,
    /// All templates, or the one of that key.
    Templates(Option<String>),
    Jigs,
}

/// What the parts share.
#[derive(Clone, Copy)]
struct Desk {
    store: Store,
    paper: RwSignal<Option<Paper>>,
    printed: RwSignal<Printed>,
}

impl Desk {
    fn paper(self) -> Paper {
        self.paper.get().unwrap_or_else(|| Paper::usual(self.store.units()))
    }

    /// The last good frame, in the units shown.
    fn good(self) -> Option<Good> {
        let good = self.store.drawn()?;
        let mut project = (*good.project).clone();
        project.units = self.store.units();
        Some(Good { project: project.into(), built: good.built })
    }

    fn print(self, what: Printed) {
        self.printed.set(what);
        print_only(PACK);
    }
}

/// The fold; its drawings are made when it is opened.
pub fn templates_fold() -> Tag {
    let desk = Desk { store: use_store(), paper: RwSignal::new(None), printed: RwSignal::new(Printed::Nothing) };
    after_print(move || desk.printed.set(Printed::Nothing));
    beside_app(tag("div").class(PACK).attr("aria-hidden", "true").live(move || pack(desk)));
    late_fold("Templates and jigs", "each joint at true size, to lay on the wood", move || contents(desk))
}

fn contents(desk: Desk) -> Tag {
    parts()
        .child(word(
            "Print, tape the sheets on their crosses, fold where it says so, lay the reference edges to the arrises, and \
             prick through every ringed corner. Hatched wood goes.",
        ))
        .child(caution("a template is as true as its print: measure the bar on every sheet before you mark."))
        .child(papers(desk))
        .child(live(move || desk.good().map(|good| list(desk, &good))))
}

fn papers(desk: Desk) -> Tag {
    let segment =
        |paper: Paper| Segment::new(paper.name(), move || desk.paper() == paper, move || desk.paper.set(Some(paper)));
    segments("template-paper", "Paper", (), Paper::ALL.map(segment).into())
}

fn list(desk: Desk, good: &Good) -> Tag {
    let all = templates(&good.project, &good.built.shape);
    let paper = desk.paper();
    let counts: Vec<usize> = all.iter().map(|one| TemplateSheets::new(one, paper).count()).collect();
    let words = format!("Print all {} templates, {}", all.len(), sheets(counts.iter().sum()));
    let cards: Vec<Tag> = all.iter().zip(counts).map(|(one, count)| card(desk, good, one, count)).collect();
    let boards = jigs(&good.project, &good.built.shape);
    parts()
        .child(button("button button--main", move |_| desk.print(Printed::Templates(None))).child(words))
        .child(tag("ul").class("templates").child(cards))
        .child(boards.iter().map(|jig| jig_part(&good.project, jig)).collect::<Vec<_>>())
        .child(
            (!boards.is_empty()).then(|| {
                button("button", move |_| desk.print(Printed::Jigs)).child("Print the jigs’ boards and stops")
            }),
        )
}

fn sheets(count: usize) -> String {
    if count == 1 { "1 sheet".to_owned() } else { format!("{count} sheets") }
}

fn card(desk: Desk, good: &Good, template: &Template, count: usize) -> Tag {
    let html = svg::print(&template_scene(template), WIDTH, &template.name);
    let key = template.key.clone();
    let print = move |_| desk.print(Printed::Templates(Some(key.clone())));
    let (name, file, shown) = (good.project.name.clone(), template.clone(), good.project.units);
    let save = move |_| {
        let drawn = with_pens(&template_file(&file, shown), PENS);
        download(&file_name(&format!("{name} {}", file.key), "svg"), &drawn, "image/svg+xml");
    };
    let facts = format!("{} · {}", template.serves_words(), sheets(count));
    tag("li")
        .class("templates__one")
        .attr("data-template", template.key.clone())
        .child(tag("div").class("templates__picture thumb__paper").attr("aria-hidden", "true").html(&html))
        .child(tag("h3").class("templates__name").child(template.name.clone()))
        .child(tag("p").class("templates__facts").child(facts))
        .child(tag("p").class("templates__lies").child(fractions(&template.lies)))
        .child(
            tag("div")
                .class("actions")
                .child(
                    button("button", print)
                        .attr("aria-label", format!("Print this template: {}", template.name))
                        .child("Print this template"),
                )
                .child(
                    button("button", save)
                        .attr("aria-label", format!("SVG in true size: {}", template.name))
                        .child("SVG in true size"),
                ),
        )
}

/// One jig: its boards, and where its stops stand.
fn jig_part(project: &Project, jig: &Jig) -> Tag {
    let rows: Vec<_> = jig.boards.iter().map(|board| board_row(project, board)).collect();
    let places = jig.places.iter().map(|(what, at)| {
        let says = tape(*at, project.units, Fineness::ThirtySecond);
        tag("li").child(fractions(&format!("{says}: {what}")))
    });
    tag("section")
        .class("jig")
        .child(tag("h3").class("jig__name").child(jig.name))
        .child(tag("p").class("templates__facts").child(format!("Marks {}. Common practice.", jig.serves)))
        .child(table("jig__boards", &["Boards", "Thick", "Wide", "Long"], rows))
        .child(tag("ul").class("jig__places").child(places.collect::<Vec<_>>()))
        .child(tag("p").child(jig.note))
}

fn board_row(project: &Project, board: &Board) -> Tag {
    let cell = |value: Length| tag("td").child(fractions(&length(value, project.units)));
    tag("tr")
        .child(tag("th").attr("scope", "row").child(format!("{} × {}", board.count, board.what)))
        .child(cell(board.thickness))
        .child(cell(board.width))
        .child(cell(board.length))
}

/// What the printer sees.
fn pack(desk: Desk) -> Option<Tag> {
    let printed = desk.printed.get();
    if printed == Printed::Nothing {
        return None;
    }
    let good = desk.good()?;
    let Printed::Templates(key) = printed else { return Some(jig_sheet(&good)) };
    let paper = desk.paper();
    let all = templates(&good.project, &good.built.shape);
    let wanted = all.iter().filter(|one| key.as_ref().is_none_or(|key| *key == one.key));
    let class = format!("template-page template-page--{}", paper.key());
    let pages = wanted.flat_map(|one| TemplateSheets::new(one, paper).print());
    Some(parts().child(pages.map(|page| tag("div").class(&class).html(&page)).collect::<Vec<_>>()))
}

fn jig_sheet(good: &Good) -> Tag {
    let all = jigs(&good.project, &good.built.shape);
    tag("article")
        .class("paper")
        .child(tag("h2").child(format!("{}: jigs", good.project.name)))
        .child(all.iter().map(|jig| jig_part(&good.project, jig)).collect::<Vec<_>>())
        .child(
            tag("p")
                .class("paper__caution")
                .child(tag("strong").child("Caution: "))
                .child("try each jig dry on the frame’s own sizes before the first stick is marked from it."),
        )
}

//! The result strip: what the frame comes to, with what it was before.
use crate::app::cached::{Cached, text_of};
use crate::app::dom::{Tag, button, parts, tag};
use crate::app::figures::Figures;
use crate::app::focus::go_to_field;
use crate::app::route::{Place, Route, use_router};
use crate::app::{Store, use_store};
use crate::project::Problem;
use crate::units::{show_money, show_weight, sort_by_number};
use leptos::prelude::*;
use std::rc::Rc;

/// The strip; a tap goes to where the figure comes from.
pub fn strip() -> Tag {
    let store = use_store();
    let figures = Cached::new(move || store.figures());
    let heaviest = move |figures: &Figures| {
        let weight = show_weight(figures.weight, store.units());
        if figures.heaviest.is_empty() { weight.to_string() } else { format!("{} {weight}", figures.heaviest) }
    };
    let price = move |figures: &Figures| show_money(figures.price, &store.project().currency).to_string();
    let sticks = move |figures: &Figures| figures.n_sticks.to_string();
    let bench = text_of(move || {
        let mark = figures.get().map(|figures| figures.heaviest).filter(|mark| !mark.is_empty());
        mark.map_or_else(|| Place::Bench.href(), |mark| Route::bench(&mark).hash())
    });
    let mill = Signal::from(Place::Mill.href());
    tag("section")
        .class("strip")
        .attr("aria-label", "What the frame comes to")
        .child(
            tag("div")
                .class("strip__cells")
                .child(worst())
                .child(cell("heaviest", bench, figures, heaviest, |figures: &Figures| figures.weight.to_pounds()))
                .child(cell("timber", mill, figures, price, |figures: &Figures| figures.price.to_f64()))
                .child(cell("sticks", mill, figures, sticks, |figures: &Figures| figures.n_sticks as f64)),
        )
        .child(trouble())
}

/// The check that asks most, with what it was before.
fn worst() -> Tag {
    let store = use_store();
    let shares = Memo::new(move |last: Option<&Seen>| {
        let strong = store.strong();
        let now = strong.as_ref().and_then(|strong| {
            let strength = &strong.strength;
            let hardest = strength.hardest().map(|(check, ratio)| (check.member.clone(), Some(ratio)));
            Some(Share {
                hardest: hardest.or_else(|| Some((strength.worst()?.member.clone(), None)))?,
                n_open: strength.not_judged().count(),
            })
        });
        let id = strong.and_then(|strong| strong.id);
        let before = match last {
            Some(last) if last.id == id && last.now != now => last.now.clone(),
            Some(last) if last.id == id => last.before.clone(),
            _ => now.clone(),
        };
        Seen { id, before, now }
    });
    let now = move || shares.with(|seen| share_text(seen.now.as_ref()));
    let change = move || {
        let Seen { before, now, .. } = shares.get();
        let was = share_text(before.as_ref());
        (before.is_some() && was != share_text(now.as_ref())).then(|| {
            let ratio = |share: &Option<Share>| share.as_ref().and_then(|share| share.hardest.1);
            let size = |share: &Option<Share>| ratio(share).unwrap_or(1.0);
            let is_judged = ratio(&before).is_some();
            earlier(size(&now) < size(&before), if is_judged { was } else { "not judged".to_owned() })
        })
    };
    let over = move || {
        shares.with(|seen| seen.now.as_ref().is_some_and(|share| share.hardest.1.is_none_or(|ratio| ratio > 1.0)))
    };
    let open = move || {
        let n = shares
            .with(|seen| seen.now.as_ref().filter(|share| share.hardest.1.is_some()).map_or(0, |share| share.n_open));
        (n > 0).then(|| tag("span").class("strip__open").child(format!("{n} not judged")))
    };
    tag("a")
        .class("strip__cell")
        .live_class("strip__cell--over", over)
        .attr("href", Place::Strength.href())
        .child(tag("span").class("strip__name").child("worst check"))
        .child(tag("span").class("strip__value").live_text(now))
        .live(open)
        .live(change)
}

/// What the strip says of the checks.
#[derive(Clone, PartialEq)]
struct Share {
    /// The member that is asked most of those that were judged, and how much; no share where none was.
    hardest: (String, Option<f64>),
    /// How many could not be judged.
    n_open: usize,
}

/// The worst check of a project, and the other one that was there before it.
#[derive(Clone, PartialEq)]
struct Seen {
    id: Option<String>,
    before: Option<Share>,
    now: Option<Share>,
}

fn share_text(share: Option<&Share>) -> String {
    match share.map(|share| &share.hardest) {
        None => "–".to_owned(),
        Some((member, None)) => format!("{member} not judged"),
        Some((member, Some(ratio))) if *ratio > 9.99 => format!("✕ {member}"),
        Some((member, Some(ratio))) => {
            let mark = if *ratio > 1.0 { "✕ " } else { "" };
            format!("{mark}{member} {:.0} %", ratio * 100.0)
        }
    }
}

/// What a figure was before it grew or fell.
fn earlier(has_fallen: bool, was: String) -> Tag {
    let (mark, word) = if has_fallen { ("▼", "less: ") } else { ("▲", "more: ") };
    tag("span")
        .class("strip__was")
        .child(tag("span").attr("aria-hidden", "true").child(mark).child(" "))
        .child(tag("span").class("quiet").child(word))
        .child("was ")
        .child(was)
}

/// One figure: its name, what it is, and what it was.
fn cell(
    name: &'static str,
    href: Signal<String>,
    figures: Cached<Option<Figures>>,
    show: impl Fn(&Figures) -> String + 'static,
    worth: fn(&Figures) -> f64,
) -> Tag {
    made(name, href, figures, Rc::new(show), worth)
}

fn made(
    name: &'static str,
    href: Signal<String>,
    figures: Cached<Option<Figures>>,
    show: Rc<dyn Fn(&Figures) -> String>,
    worth: fn(&Figures) -> f64,
) -> Tag {
    let store = use_store();
    let shown = show.clone();
    let now = move || figures.get().map_or_else(|| "–".to_owned(), |figures| shown(&figures));
    let change = move || {
        let (now, before) = (figures.get()?, store.figures_before()?);
        let was = show(&before);
        if was == show(&now) {
            return None;
        }
        Some(earlier(worth(&now) < worth(&before), was))
    };
    tag("a")
        .class("strip__cell")
        .attr("href", href)
        .child(tag("span").class("strip__name").child(name))
        .child(tag("span").class("strip__value").live_text(now))
        .live(change)
}

/// The first problem and how many there are; a tap goes to its field.
fn trouble() -> Tag {
    let store = use_store();
    let router = use_router();
    let problems = Cached::new(move || worst_first(store));
    parts().live(move || {
        let problems = problems.get();
        let first = problems.first()?.clone();
        let n_more = problems.len() - 1;
        let stops = first.stops();
        let word = if stops { "Stops the frame" } else { "Look at this" };
        let more = if n_more == 0 { String::new() } else { format!(" and {n_more} more") };
        let path = first.field.clone();
        let go = move |_| go_to_field(router, &path);
        Some(
            button("strip__trouble", go)
                .class_if("strip__trouble--stop", stops)
                .child(tag("span").class("strip__mark").attr("aria-hidden", "true").child(if stops {
                    "✕"
                } else {
                    "!"
                }))
                .child(
                    tag("span")
                        .class("strip__says")
                        .child(tag("strong").child(word).child(more).child(": "))
                        .child(super::fractions(&first.says)),
                ),
        )
    })
}

fn worst_first(store: Store) -> Vec<Problem> {
    let mut problems = store.problems();
    // A stick that is cut wrong comes before what can still be changed.
    let is_cut = |problem: &Problem| u8::from(problem.field.starts_with("progress.cut"));
    sort_by_number(&mut problems, |problem| -f64::from(problem.severity as u8 * 2 + is_cut(problem)));
    problems
}

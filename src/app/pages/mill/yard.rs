//! What he has: the sticks that lie in the sawyer's yard, what of the frame comes out of them, and which change would make it
//! come out.
use super::studied::{against, card, make_so, studied, what_moves};
use super::{clipboard, yard_lots::lots};
use crate::app::cached::{Cached, text_of};
use crate::app::components::{
    Slices, Work, caution, drawing_view, figures, fractions, group, late_fold, long_work, show_length_fine, word,
};
use crate::app::dom::{Item, Tag, button, live, parts, tag};
use crate::app::use_store;
use crate::drawing;
use crate::ordering::{
    PileAnswer, asked_length, from_yard, heart_looks, missing_lines, pile_proof, pile_text, pile_verdict,
};
use crate::study::{Stepper, YardChange, YardChanges, percent};
use crate::units::{Money, show_money, show_weight};
use leptos::prelude::*;
use std::sync::Arc;

type Answer = Cached<Option<Arc<PileAnswer>>>;

/// The part of the page.
pub fn yard_fold() -> Tag {
    let store = use_store();
    let counted = store.slice(|project| project.yard.iter().map(|lot| lot.count).sum::<usize>());
    let summary = text_of(move || match counted.get() {
        0 => "nothing entered yet".to_owned(),
        1 => "one stick".to_owned(),
        n => format!("{n} sticks"),
    });
    // Whoever is led to a field of the yard opens it.
    late_fold("This is what he has", summary, body).attr("id", "yard").attr("tabindex", "-1")
}

fn body() -> Tag {
    let store = use_store();
    let answer = Cached::new(move || {
        let good = store.good()?;
        Some(Arc::new(from_yard(&good.project, &good.built.order.sticks)))
    });
    let has_any = store.slice(|project| project.yard.iter().any(|lot| lot.count > 0));
    parts()
        .child(word(
            "Enter what lies in the sawyer’s yard, size by size, and see whether the frame comes out of it, docked and cut \
             as in the order.",
        ))
        .child(lots())
        .shown(
            move || !has_any.get(),
            || word("The pile is empty: add a size of sticks with how many there are, and the answer stands here."),
        )
        .shown(move || has_any.get(), move || found(answer))
        .child(caution(
            "Old sticks hide checks, rot and iron. Look at all four faces and both ends, and at the grain, before one is \
             counted on: strength is reckoned for the wood and grade of the frame.",
        ))
}

fn found(answer: Answer) -> Tag {
    let store = use_store();
    let title = "The pile at one scale: what comes out of each stick, what is left of it, and what is missing";
    let draw = move |width: f64| {
        let (Some(good), Some(answer)) = (store.drawn(), answer.get()) else { return String::new() };
        drawing::svg::print(&drawing::pile(&good.project, &good.built, &answer, width), width, title)
    };
    parts()
        .child(tag("div").class("study__answer").attr("role", "status").live(move || answer.get().map(verdict)))
        .child(drawing_view(draw, title, None))
        .live(move || answer.get().map(plan))
        .child(copy(answer))
        .child(changes(answer))
}

/// Whether it comes out, and what is missing.
fn verdict(answer: Arc<PileAnswer>) -> Tag {
    let store = use_store();
    let project = store.project_untracked();
    let says = tag("p").class("study__verdict").child(pile_verdict(&answer));
    let looks: Vec<Tag> = heart_looks(&project, &answer).iter().map(|says| word(fractions(says))).collect();
    if answer.comes_out() {
        return parts().child(says).child(looks);
    }
    let lines: Vec<Tag> = missing_lines(&answer.missing, &project)
        .into_iter()
        .map(|says| tag("li").class("order__missing").child(fractions(&says)))
        .collect();
    parts()
        .child(says)
        .child(tag("ul").class("order__list").child(lines))
        .child(word(fractions(&pile_proof(&project, &answer))))
        .child(looks)
}

/// What is cut out of which stick.
fn plan(answer: Arc<PileAnswer>) -> Option<Tag> {
    let project = use_store().project_untracked();
    let row = |bar: &crate::ordering::PileBar| {
        let lot = project.yard.get(bar.lot)?;
        let stick = format!("{} × {}", lot.section.label(project.units), asked_length(lot.length, project.units));
        Some(
            tag("tr")
                .child(tag("th").attr("scope", "row").child(fractions(&stick)))
                .child(tag("td").child(match bar.look {
                    Some(heart) => format!("{}; {}? look", bar.sticks.join(" + "), heart.name()),
                    None => bar.sticks.join(" + "),
                }))
                .child(tag("td").child(fractions(&show_length_fine(bar.left, project.units)))),
        )
    };
    let rows: Vec<Tag> = answer.bars.iter().filter_map(row).collect();
    (!rows.is_empty())
        .then(|| figures("Which sticks come out of which of the pile", &["Of the pile", "Out of it", "Left"], rows))
}

/// The plan for a message.
fn copy(answer: Answer) -> Tag {
    let store = use_store();
    let said = RwSignal::new(None::<bool>);
    let press = move |_| {
        let (Some(good), Some(answer)) = (store.good(), answer.get_untracked()) else { return };
        clipboard::copy(&pile_text(&good.project, &answer), move |went| {
            let _ = said.try_set(Some(went));
        });
    };
    let by_hand = move || {
        let (good, answer) = (store.good()?, answer.get()?);
        (said.get() == Some(false)).then(|| {
            let text = pile_text(&good.project, &answer);
            tag("textarea")
                .class("hand-out__text")
                .attr("readonly", true)
                .attr("rows", "8")
                .attr("aria-label", "The pile as text")
                .live_prop("value", move || text.clone())
        })
    };
    tag("div")
        .class("actions")
        .child(button("button", press).child("Copy as text"))
        .child(tag("p").class("hand-out__said").attr("role", "status").live(move || {
            said.get().map(|went| if went { "On the clipboard." } else { "Not copied: take it from here." })
        }))
        .live(by_hand)
}

/// Found so far, how many were left out, and the price as it is.
type Found = RwSignal<(Vec<YardChange>, usize, Money)>;

/// Changes of the frame that make it come out.
fn changes(answer: Answer) -> Tag {
    let comes_out = Cached::new(move || answer.with(|answer| answer.as_ref().is_none_or(|answer| answer.comes_out())));
    live(move || {
        (!comes_out.get()).then(|| {
            let found: Found = RwSignal::new((Vec::new(), 0, Money::ZERO));
            group("A change that would make it come out", changes_body(found))
        })
    })
}

fn changes_body(found: Found) -> Tag {
    let done = RwSignal::new(false);
    let begin = move |project| {
        let mut study = YardChanges::new(&project)?;
        let step: Slices = Box::new(move || {
            let progress = study.next_step();
            found.set((study.found().to_vec(), study.n_refused(), study.own_price()));
            done.set(progress.is_done());
            progress
        });
        Some(step)
    };
    let items = move || {
        found.with(|(all, _, own)| {
            let item = |change: &YardChange| {
                let (change, own) = (change.clone(), *own);
                Item::new(change.says.clone(), move || change_card(change, own))
            };
            all.iter().map(item).collect()
        })
    };
    let nothing = move || {
        let (n, refused) = found.with(|(all, refused, _)| (all.len(), *refused));
        let left_out = match refused {
            0 => String::new(),
            1 => " One that would help was left out: a check would fail that holds now, or it brings a new problem."
                .into(),
            n => format!(
                " {n} that would help were left out: a check would fail that holds now, or they bring a new problem."
            ),
        };
        let none = if n == 0 { "Nothing that was tried brings it nearer." } else { "" };
        (done.get() && (n == 0 || refused > 0)).then(|| word(format!("{none}{left_out}")))
    };
    parts()
        .child(word(
            "Tried one by one: less docked, the beam’s pieces, tails, reach, the beam’s height, fewer rafters, other lengths, \
             sizes that lie in the pile; then two at once. Each is worked out whole, strength included.",
        ))
        .child(long_work(Work {
            start: "Look for one",
            about: studied(),
            begin: Box::new(begin),
            forget: Box::new(move || {
                found.set((Vec::new(), 0, Money::ZERO));
                done.set(false);
            }),
        }))
        .child(tag("ol").class("order").each(items))
        .live(nothing)
}

fn change_card(change: YardChange, own: Money) -> Tag {
    let store = use_store();
    let project = store.project_untracked();
    let missing: Vec<&str> = change.pile.missing.iter().map(|stick| stick.mark.as_str()).collect();
    let outcome = match (change.comes_out(), missing.len()) {
        (true, 0) => "it all comes out".to_owned(),
        (true, n) => format!("all comes out but {n} sticks of sizes he does not have"),
        (false, 1..=6) => format!("still missing: {}", missing.join(", ")),
        (false, n) => format!("still missing: {n} sticks"),
    };
    let mut says = vec![outcome, against(change.price, own, &project.currency)];
    says.push(format!("{} at the mill’s prices", show_money(change.price, &project.currency)));
    says.push(format!("{} in all", show_weight(change.weight, project.units)));
    if let Some((member, ratio)) = &change.worst {
        says.push(format!("worst check then {member}, {}", percent(*ratio)));
    }
    let then = parts().child(what_moves(&change.moves, project.units)).child(make_so(
        store,
        "Change the frame so",
        change.project,
    ));
    card(&change.says, &says.join(" · "), then)
}

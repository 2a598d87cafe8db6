//! The pieces of the beam as part of the choice, and what another length of the mill would change.
use super::studied::{against, card, make_so, studied, what_moves};
use crate::app::cached::text_of;
use crate::app::components::{Slices, Work, caution, fractions, late_fold, long_work, word};
use crate::app::dom::{Item, Tag, parts, tag};
use crate::app::use_store;
use crate::ordering::asked_length;
use crate::study::{BeamPieces, LengthAnswer, MillLengths, PiecesAnswer, Stepper, percent};
use crate::units::{Length, Money, UnitSystem, show_money, show_weight};
use crate::wording::length;
use leptos::prelude::*;

/// The part of the page.
pub fn pieces_fold() -> Tag {
    let store = use_store();
    let summary = text_of(move || {
        let n = store.built().map_or(0, |built| built.shape.beam.pieces.len());
        if n == 1 { "the beam is one piece".to_owned() } else { format!("the beam is in {n} pieces") }
    });
    late_fold("Pieces of the beam", summary, || {
        parts().child(divisions()).child(other_lengths()).child(caution(
            "A scarf in another place is another joint: whoever looked at the frame’s strength must look again.",
        ))
    })
}

/// Found so far, and how many were left out.
type Found = RwSignal<(Vec<PiecesAnswer>, usize)>;

fn divisions() -> Tag {
    let found: Found = RwSignal::new((Vec::new(), 0));
    let begin = move |project| {
        let mut study = BeamPieces::new(&project)?;
        let step: Slices = Box::new(move || {
            let progress = study.next_step();
            found.set((study.found().to_vec(), study.n_refused()));
            progress
        });
        Some(step)
    };
    let items = move || found.with(|(all, _)| all.iter().map(|one| item(one, all)).collect());
    let left_out = move || {
        let n = found.with(|(_, n)| *n);
        (n > 0).then(|| {
            word(format!("{n} more were left out: the frame cannot be built so, can move, or has a new problem then."))
        })
    };
    parts()
        .child(word(
            "Where the scarfs are decides which lengths the beam asks of the mill. Each way to divide it is \
             worked out whole: price, weight, every check. Where a length fails by a few inches, shorter and longer laps \
             are tried too.",
        ))
        .child(long_work(Work {
            start: "Work out the ways to divide it",
            about: studied(),
            begin: Box::new(begin),
            forget: Box::new(move || found.set((Vec::new(), 0))),
        }))
        .child(tag("ol").class("order").each(items))
        .live(left_out)
}

fn stock_words(stock: &[Length], units: UnitSystem) -> String {
    stock.iter().map(|length| asked_length(*length, units)).collect::<Vec<_>>().join(" + ")
}

fn item(answer: &PiecesAnswer, all: &[PiecesAnswer]) -> Item {
    let own = all.iter().find(|one| one.is_own);
    let own = own.map_or((answer.price, None, answer.lap), |own| (own.price, own.worst_scarf, own.lap));
    let answer = answer.clone();
    let key = format!("{:?}{:?}", answer.stock, answer.lap);
    Item::new(key, move || division(answer, own))
}

fn division(answer: PiecesAnswer, (own_price, own_worst, own_lap): (Money, Option<f64>, Length)) -> Tag {
    let store = use_store();
    let project = store.project_untracked();
    let mut says = vec![show_money(answer.price, &project.currency).to_string()];
    if !answer.is_own {
        says.push(against(answer.price, own_price, &project.currency));
    }
    says.push(format!("heaviest {} {}", answer.heaviest.0, show_weight(answer.heaviest.1, project.units)));
    says.push(match (answer.worst_scarf, own_worst) {
        (Some(worst), Some(own)) if !answer.is_own => {
            format!("worst check of a scarf {}, now {}", percent(worst), percent(own))
        }
        (Some(worst), _) => format!("worst check of a scarf {}", percent(worst)),
        (None, _) => "no scarf could be judged".to_owned(),
    });
    let head = stock_words(&answer.stock, project.units);
    let head = if answer.lap == own_lap {
        head
    } else {
        format!("{head}, {} {}", length(answer.lap, project.units), laps_word(answer.lap, own_lap))
    };
    let head = if answer.is_own { format!("{head}: as it is now") } else { head };
    let is_offered = !answer.is_own && answer.falls.is_empty();
    let then = parts()
        .child(what_moves(&answer.moves, project.units))
        .child(not_offered(&answer.falls))
        .child(is_offered.then(|| make_so(store, "Divide the beam so", answer.project)));
    card(&head, &says.join(" · "), then).class_if("study--own", answer.is_own)
}

/// Laps of another length than they have now.
fn laps_word(lap: Length, own: Length) -> &'static str {
    if lap < own { "laps, shorter than now" } else { "laps, longer than now" }
}

/// The checks that forbid it.
fn not_offered(falls: &[String]) -> Option<Tag> {
    let lines: Vec<Tag> = falls.iter().map(|says| tag("li").class("order__missing").child(fractions(says))).collect();
    (!falls.is_empty()).then(|| {
        tag("div")
            .class("problem")
            .child(
                tag("p").class("problem__says").child(tag("strong").class("problem__word").child("Would not hold: ")),
            )
            .child(tag("ul").class("order__list").child(lines))
    })
}

fn other_lengths() -> Tag {
    let found = RwSignal::new((Vec::<LengthAnswer>::new(), Money::ZERO));
    let begin = move |project| {
        let mut study = MillLengths::new(&project)?;
        let step: Slices = Box::new(move || {
            let progress = study.next_step();
            found.set((study.found().to_vec(), study.own_price()));
            progress
        });
        Some(step)
    };
    let items = move || {
        found.with(|(all, own)| {
            let item = |answer: &LengthAnswer| {
                let (answer, own) = (answer.clone(), *own);
                Item::new(answer.length.to_inches().to_string(), move || other_length(answer, own))
            };
            all.iter().map(item).collect()
        })
    };
    tag("section")
        .class("group")
        .child(tag("h3").class("group__title").child("What the mill’s other lengths change"))
        .child(word(
            "Each usual length the mill does not have put on its list, and each it has taken off, with every joint \
             that moves. Scarfs placed by hand stay where they are.",
        ))
        .child(long_work(Work {
            start: "Work out the other lengths",
            about: studied(),
            begin: Box::new(begin),
            forget: Box::new(move || found.set((Vec::new(), Money::ZERO))),
        }))
        .child(tag("ol").class("order").each(items))
}

fn other_length(answer: LengthAnswer, own: Money) -> Tag {
    let store = use_store();
    let project = store.project_untracked();
    let asked = asked_length(answer.length, project.units);
    let head = if answer.is_listed { format!("Without {asked}") } else { format!("With {asked} too") };
    let word = if answer.is_listed { "Take it off the list" } else { "Put it on the list" };
    let is_offered = answer.trouble.is_empty();
    let (figures, moves, make) = match answer.then {
        None => ("no frame".to_owned(), None, None),
        Some(then) => {
            let mut says = vec![
                show_money(then.price, &project.currency).to_string(),
                against(then.price, own, &project.currency),
            ];
            if let Some(lap) = then.lap {
                let own = project.frame.scarfs.lap;
                says.push(format!("only with {} {}", length(lap, project.units), laps_word(lap, own)));
            }
            if then.moves == Default::default() {
                says.push("no joint moves".to_owned());
            }
            if !then.unplaced.is_empty() {
                says.push(format!("no length holds {}", then.unplaced.join(", ")));
            }
            let make = is_offered.then(|| make_so(store, word, then.project));
            (says.join(" · "), what_moves(&then.moves, project.units), make)
        }
    };
    card(&head, &figures, parts().child(moves).child(not_offered(&answer.trouble)).child(make))
}

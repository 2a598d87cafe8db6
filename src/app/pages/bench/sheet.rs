//! One stick: what it is, how it lies, its unrolled faces, its marks.
use super::super::drawn::shown;
use super::bad_cut::bad_cut;
use super::crown::{crown_down, crown_part};
use super::cut::cut_part;
use super::dry_fit::dry_fit;
use super::fit::fit_part;
use super::in_hand::InHand;
use super::joints::joints_apart;
use super::knots::knots;
use super::marks::mark_list;
use super::sizes::sizes_part;
use super::walk::walk;
use crate::app::cached::{Cached, text_of};
use crate::app::components::{drawing_view, fractions, late_fold, page, path_problems, round_view, word};
use crate::app::dom::{Tag, button, live, parts, tag};
use crate::app::route::{Place, Route, use_router};
use crate::app::use_store;
use crate::drawing::{self, Shown};
use crate::joinery::{exception_says, own_joints_of};
use crate::ordering::came::note_on;
use crate::tickets::{Stick, mirror_words};
use crate::wording::{length, weight};
use leptos::prelude::*;
use std::sync::Arc;

/// A stick on the bench.
pub fn stick_page(mark: String) -> Tag {
    let hand = InHand::take(mark);
    let is_walked = Cached::new(move || hand.step.with(Option::is_some) && hand.stick.with(Option::is_some));
    live(move || if is_walked.get() { walk(hand) } else { sheet(hand) })
}

fn sheet(hand: InHand) -> Tag {
    let store = use_store();
    let about = text_of(move || {
        let units = store.units();
        hand.stick.get().map_or_else(String::new, |stick| {
            let same = stick.same_as.as_ref().map(|first| format!(", same as {first}"));
            let mirror = store.built().and_then(|built| mirror_words(&built.sticks, &stick));
            let same = same.or(mirror.map(|words| format!(", {words}"))).unwrap_or_default();
            let (size, role) = (stick.timber.sawn.label(units), stick.role.name());
            format!(
                "{size} {role} · {} · {}{same}",
                length(stick.net_length(), units),
                weight(stick.green_weight, units)
            )
        })
    });
    let lead = parts().child(neighbours(hand)).shown(
        move || hand.stick.with(Option::is_some),
        move || {
            let words = parts().child(seal(hand)).child(not_by_rules(hand)).child(of_its_piece(hand));
            words.child(crown_down(hand)).child(gate(hand)).child(faces(hand))
        },
    );
    page(
        Place::Bench,
        hand.mark(),
        about,
        lead,
        parts()
            .child(crown_part(hand))
            .live(move || match hand.stick.get() {
                Some(stick) => {
                    parts().child(about_stick(stick.clone())).child(mark_list(hand, stick)).child(fit_part(hand))
                }
                None => unknown(hand),
            })
            // What is typed here moves the stick's own marks: it must not be made anew with them.
            .shown(
                move || hand.stick.with(Option::is_some),
                move || parts().child(sizes_part(hand)).child(dry_fit(hand)),
            )
            .live(move || {
                hand.stick.get().map(|stick| {
                    parts().child(knots(&stick)).child(cut_part(hand, stick.clone())).child(bad_cut(stick))
                })
            })
            .shown(
                move || hand.stick.with(Option::is_some),
                move || parts().child(in_the_round(hand)).child(joints_apart(Some(hand.mark()))),
            ),
    )
}

/// The stick with everything cut, to be turned.
fn in_the_round(hand: InHand) -> Tag {
    late_fold("In the round", "as it is when it is cut".to_owned(), move || {
        let mark = hand.mark();
        let cut = shown(move |wood| wood.iter().filter(|body| body.mark == mark).map(Shown::cut).collect());
        round_view(cut, format!("{} in the round", hand.mark()), None)
    })
}

/// The mark is none of this frame.
fn unknown(hand: InHand) -> Tag {
    parts()
        .child(word(format!("No stick of this frame is called {}.", hand.mark())))
        .child(path_problems(format!("progress.cut.{}", hand.mark())))
}

/// The stick before, all sticks, the stick after.
fn neighbours(hand: InHand) -> Tag {
    let store = use_store();
    let around = Cached::new(move || {
        let mark = hand.mark();
        let marks: Vec<String> = store.built()?.sticks.iter().map(|stick| stick.mark.clone()).collect();
        let at = marks.iter().position(|known| *known == mark)?;
        let before = at.checked_sub(1).and_then(|before| marks.get(before).cloned());
        Some((before, marks.get(at + 1).cloned()))
    });
    let before = move || around.get().and_then(|(before, _)| before);
    let after = move || around.get().and_then(|(_, after)| after);
    tag("nav")
        .class("neighbours")
        .attr("aria-label", "Sticks of the frame")
        .live(move || {
            before().map(|mark| neighbour(mark, "Stick before: ", "neighbours__link neighbours__link--before"))
        })
        .child(
            tag("a")
                .class("neighbours__link neighbours__link--all")
                .attr("href", Place::Bench.href())
                .child("All sticks"),
        )
        .live(move || after().map(|mark| neighbour(mark, "Next stick: ", "neighbours__link neighbours__link--after")))
}

fn neighbour(mark: String, before: &'static str, class: &'static str) -> Tag {
    let router = use_router();
    let route = Route::bench(&mark);
    let href = route.hash();
    let go = move |event: web_sys::Event| {
        event.prevent_default();
        router.replace(route.clone());
    };
    tag("a").class(class).attr("href", href).on("click", go).child(tag("span").class("quiet").child(before)).child(mark)
}

/// Says that the stick is cut, and whether it still fits.
fn seal(hand: InHand) -> Tag {
    let fits = Cached::new(move || {
        let cut = hand.cut.get()?;
        Some(hand.stick.with(|stick| stick.as_ref().is_some_and(|stick| stick.is_cut_to(&cut))))
    });
    let words = move || {
        fits.get().map(|fits| {
            let text =
                if fits { "It is cut to this layout." } else { "It is cut to another layout than the one drawn here." };
            tag("p")
                .class("seal")
                .child(tag("strong").class("seal__stamp").child("Cut ✓"))
                .child(tag("span").child(text))
        })
    };
    parts().live(words).child(path_problems(format!("progress.cut.{}", hand.mark())))
}

/// What is known of the piece it is cut from.
fn of_its_piece(hand: InHand) -> Tag {
    let store = use_store();
    live(move || {
        let note = hand.stick.with(|stick| note_on(&store.project(), stick.as_ref()?))?;
        Some(tag("p").class("page__word").child(tag("strong").child("Its piece: ")).child(fractions(&note)))
    })
}

/// Its joints that depart from the rules.
fn not_by_rules(hand: InHand) -> Tag {
    let store = use_store();
    let says = Cached::new(move || {
        let (project, built) = (store.project(), store.built());
        let own = built.map(|built| own_joints_of(&project, &built.shape, &hand.mark()));
        let says = own.unwrap_or_default().into_iter().filter_map(|joint| exception_says(&project, joint));
        says.collect::<Vec<_>>()
    });
    let line = |says: &String| tag("p").class("own-joint").child(fractions(says));
    parts().live(move || says.with(|says| says.iter().map(line).collect::<Vec<_>>()))
}

/// The question before the first mark; then the way to walk the marks.
fn gate(hand: InHand) -> Tag {
    let ask = move || hand.stick.with(|stick| stick.as_ref().map_or_else(String::new, |stick| stick.ask.clone()));
    let left = move || hand.n_marks().saturating_sub(hand.made.with(|made| made.len()));
    let words = move || match left() {
        0 => "Walk the marks again".to_owned(),
        left if left == hand.n_marks() => "Walk the marks".to_owned(),
        left => format!("Walk on: {left} marks left"),
    };
    let question = move || {
        parts()
            .child(tag("p").class("gate__ask").live(ask))
            .child(button("button button--main gate__yes", move |_| hand.lies_so.set(true)).child("Yes, it lies so"))
    };
    let answered = move || {
        parts()
            .child(
                tag("p")
                    .class("gate__answer")
                    .child(tag("span").attr("aria-hidden", "true").child("✓ "))
                    .child("You said yes: ")
                    .live(ask),
            )
            .child(button("button button--main gate__yes", move |_| hand.walk()).live(words))
    };
    let part = move || if hand.lies_so.get() { answered() } else { question() };
    parts().shown(
        move || !hand.is_cut(),
        move || tag("section").class("gate").attr("aria-label", "Before the first mark").live(part),
    )
}

/// The faces unrolled.
fn faces(hand: InHand) -> Tag {
    let store = use_store();
    let label = text_of(move || format!("{}: its faces unrolled", hand.mark()));
    let draw = move |width: f64| {
        let (Some(good), Some(stick)) = (store.good(), hand.stick.get()) else { return String::new() };
        let mut project = (*good.project).clone();
        project.units = store.units();
        drawing::svg::print(&drawing::stick_sheet(&project, &stick), width, &label.get_untracked())
    };
    tag("div").class("faces").live_class("faces--cut", move || hand.is_cut()).child(drawing_view(
        draw,
        label,
        Some(Callback::new(|_| ())),
    ))
}

fn about_stick(stick: Arc<Stick>) -> Tag {
    let store = use_store();
    let shown = stick.clone();
    let rows = move || {
        let units = store.units();
        let (first, second) = stick.references;
        [
            (format!("Weighs green, {}", stick.weighed()), weight(stick.green_weight, units)),
            (format!("Balances {}, from zero", stick.weighed()), length(stick.bulk.balance(), units)),
            ("First reference ▲".to_owned(), first.name().to_owned()),
            ("Second reference △".to_owned(), second.name().to_owned()),
        ]
        .map(|(name, value)| {
            tag("div")
                .class("about-stick__fact")
                .child(tag("dt").class("about-stick__name").child(name))
                .child(tag("dd").class("about-stick__value").child(fractions(&value)))
        })
    };
    tag("section")
        .class("about-stick")
        .attr("aria-label", "About this stick")
        .child(tag("dl").class("about-stick__facts").live(rows))
        .child(
            tag("p")
                .class("about-stick__zero")
                .child(tag("strong").child("Zero: "))
                .child(shown.zero.clone())
                .child("."),
        )
}

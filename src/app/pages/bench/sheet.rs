//! One stick: what it is, how it lies, its unrolled faces, its marks.
use super::cut::CutPart;
use super::in_hand::InHand;
use super::marks::MarkList;
use super::walk::Walk;
use crate::app::components::{DrawingView, Page, PathProblems, fractions};
use crate::app::route::{Place, Route, use_router};
use crate::app::use_store;
use crate::drawing;
use crate::tickets::Stick;
use crate::wording::{length, weight};
use leptos::prelude::*;
use std::sync::Arc;

/// A stick on the bench.
#[component]
pub fn StickPage(
    /// Its mark.
    mark: String,
) -> impl IntoView {
    let hand = InHand::take(mark);
    let is_walked = Memo::new(move |_| hand.step.with(Option::is_some) && hand.stick.with(Option::is_some));
    move || {
        if is_walked.get() { view! { <Walk hand/> }.into_any() } else { view! { <Sheet hand/> }.into_any() }
    }
}

#[component]
fn Sheet(hand: InHand) -> impl IntoView {
    let store = use_store();
    let about = Signal::derive(move || {
        let units = store.units();
        hand.stick.get().map_or_else(String::new, |stick| {
            let same = stick.same_as.as_ref().map_or_else(String::new, |first| format!(", same as {first}"));
            let (size, role) = (stick.timber.sawn.label(units), stick.role.name());
            format!(
                "{size} {role} · {} · {}{same}",
                length(stick.net_length(), units),
                weight(stick.green_weight, units)
            )
        })
    });
    let lead = move || {
        view! {
            <Neighbours hand/>
            {move || hand.stick.with(Option::is_some).then(|| view! { <Seal hand/> <Gate hand/> <Faces hand/> })}
        }
    };
    view! {
        <Page place=Place::Bench title=hand.mark() about lead>
            {move || match hand.stick.get() {
                Some(stick) => {
                    view! {
                        <AboutStick stick=stick.clone()/>
                        <MarkList hand stick=stick.clone()/>
                        <CutPart hand stick/>
                    }
                        .into_any()
                }
                None => view! { <Unknown hand/> }.into_any(),
            }}
        </Page>
    }
}

/// The mark is none of this frame.
#[component]
fn Unknown(hand: InHand) -> impl IntoView {
    view! {
        <p class="page__word">{format!("No stick of this frame is called {}.", hand.mark())}</p>
        <PathProblems path=format!("progress.cut.{}", hand.mark())/>
    }
}

/// The stick before, all sticks, the stick after.
#[component]
fn Neighbours(hand: InHand) -> impl IntoView {
    let store = use_store();
    let around = Memo::new(move |_| {
        let mark = hand.mark();
        let marks: Vec<String> = store.built()?.sticks.iter().map(|stick| stick.mark.clone()).collect();
        let at = marks.iter().position(|known| *known == mark)?;
        let before = at.checked_sub(1).and_then(|before| marks.get(before).cloned());
        Some((before, marks.get(at + 1).cloned()))
    });
    let before = move || around.get().and_then(|(before, _)| before);
    let after = move || around.get().and_then(|(_, after)| after);
    view! {
        <nav class="neighbours" aria-label="Sticks of the frame">
            {move || before().map(|mark| neighbour(mark, "Stick before: ", "neighbours__link neighbours__link--before"))}
            <a class="neighbours__link neighbours__link--all" href=Place::Bench.href()>"All sticks"</a>
            {move || after().map(|mark| neighbour(mark, "Next stick: ", "neighbours__link neighbours__link--after"))}
        </nav>
    }
}

fn neighbour(mark: String, before: &'static str, class: &'static str) -> impl IntoView {
    let router = use_router();
    let route = Route::bench(&mark);
    let href = route.hash();
    let go = move |event: leptos::ev::MouseEvent| {
        event.prevent_default();
        router.replace(route.clone());
    };
    view! { <a class=class href=href on:click=go><span class="quiet">{before}</span> {mark}</a> }
}

/// Says that the stick is cut, and whether it still fits.
#[component]
fn Seal(hand: InHand) -> impl IntoView {
    let fits = Memo::new(move |_| {
        let cut = hand.cut.get()?;
        Some(hand.stick.with(|stick| stick.as_ref().is_some_and(|stick| stick.layout() == cut)))
    });
    let words = move || {
        fits.get().map(|fits| {
            let text =
                if fits { "It is cut to this layout." } else { "It is cut to another layout than the one drawn here." };
            view! { <p class="seal"><strong class="seal__stamp">"Cut ✓"</strong> <span>{text}</span></p> }
        })
    };
    view! {
        {words}
        <PathProblems path=format!("progress.cut.{}", hand.mark())/>
    }
}

/// The question before the first mark; then the way to walk the marks.
#[component]
fn Gate(hand: InHand) -> impl IntoView {
    let ask = move || hand.stick.with(|stick| stick.as_ref().map_or_else(String::new, |stick| stick.ask.clone()));
    let left = move || hand.n_marks().saturating_sub(hand.made.with(|made| made.len()));
    let words = move || match left() {
        0 => "Walk the marks again".to_owned(),
        left if left == hand.n_marks() => "Walk the marks".to_owned(),
        left => format!("Walk on: {left} marks left"),
    };
    let question = move || {
        view! {
            <p class="gate__ask">{ask}</p>
            <button type="button" class="button button--main gate__yes" on:click=move |_| hand.lies_so.set(true)>
                "Yes, it lies so"
            </button>
        }
    };
    let answered = move || {
        view! {
            <p class="gate__answer"><span aria-hidden="true">"✓ "</span> "You said yes: " {ask}</p>
            <button type="button" class="button button--main gate__yes" on:click=move |_| hand.walk()>{words}</button>
        }
    };
    let part = move || if hand.lies_so.get() { answered().into_any() } else { question().into_any() };
    view! {
        <Show when=move || !hand.is_cut()>
            <section class="gate" aria-label="Before the first mark">{part}</section>
        </Show>
    }
}

/// The faces unrolled.
#[component]
fn Faces(hand: InHand) -> impl IntoView {
    let store = use_store();
    let label = Signal::derive(move || format!("{}: its faces unrolled", hand.mark()));
    let draw = move |width: f64| {
        let (Some(good), Some(stick)) = (store.good(), hand.stick.get()) else { return String::new() };
        let mut project = (*good.project).clone();
        project.units = store.units();
        drawing::svg::print(&drawing::stick_sheet(&project, &stick), width, &label.get_untracked())
    };
    view! {
        <div class="faces" class:faces--cut=move || hand.is_cut()>
            <DrawingView draw label on_stick=Callback::new(|_| ())/>
        </div>
    }
}

#[component]
fn AboutStick(stick: Arc<Stick>) -> impl IntoView {
    let store = use_store();
    let shown = stick.clone();
    let rows = move || {
        let units = store.units();
        let (first, second) = stick.references;
        [
            ("Balances, from zero", length(stick.bulk.balance(), units)),
            ("First reference ▲", first.name().to_owned()),
            ("Second reference △", second.name().to_owned()),
        ]
        .map(|(name, value)| {
            view! {
                <div class="about-stick__fact">
                    <dt class="about-stick__name">{name}</dt>
                    <dd class="about-stick__value">{fractions(&value)}</dd>
                </div>
            }
        })
        .collect_view()
    };
    view! {
        <section class="about-stick" aria-label="About this stick">
            <dl class="about-stick__facts">{rows}</dl>
            <p class="about-stick__zero"><strong>"Zero: "</strong> {shown.zero.clone()} "."</p>
        </section>
    }
}

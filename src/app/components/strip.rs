//! The result strip: what the frame comes to, with what it was before.
use crate::app::figures::Figures;
use crate::app::focus::focus_field;
use crate::app::route::{Place, Route, use_router};
use crate::app::{Store, use_store};
use crate::project::Problem;
use crate::units::{show_money, show_weight, sort_by_number};
use leptos::prelude::*;

/// The strip; a tap goes to where the figure comes from.
#[component]
pub fn Strip() -> impl IntoView {
    let store = use_store();
    let heaviest = move |figures: &Figures| {
        let weight = show_weight(figures.weight, store.units());
        if figures.heaviest.is_empty() { weight.to_string() } else { format!("{} {weight}", figures.heaviest) }
    };
    let price = move |figures: &Figures| show_money(figures.price, &store.project().currency).to_string();
    let sticks = move |figures: &Figures| figures.n_sticks.to_string();
    let bench = move || {
        let mark = store.figures().map(|figures| figures.heaviest).filter(|mark| !mark.is_empty());
        mark.map_or_else(|| Place::Bench.href(), |mark| Route::bench(&mark).hash())
    };
    let mill = || Place::Mill.href();
    view! {
        <section class="strip" aria-label="What the frame comes to">
            <div class="strip__cells">
                <Worst/>
                <Cell name="heaviest" href=bench show=heaviest worth=|figures: &Figures| figures.weight.to_pounds()/>
                <Cell name="timber" href=mill show=price worth=|figures: &Figures| figures.price.to_f64()/>
                <Cell name="sticks" href=mill show=sticks worth=|figures: &Figures| figures.n_sticks as f64/>
            </div>
            <Trouble/>
        </section>
    }
}

/// The check that asks most, with what it was before.
#[component]
fn Worst() -> impl IntoView {
    let store = use_store();
    let shares = Memo::new(move |last: Option<&(Share, Share)>| {
        let now = store.strong().and_then(|strong| {
            let worst = strong.strength.worst()?;
            Some((worst.member.clone(), worst.ratio()))
        });
        let before =
            last.map_or_else(|| now.clone(), |(before, was)| if *was == now { before.clone() } else { was.clone() });
        (before, now)
    });
    let now = move || shares.with(|(_, now)| share_text(now.as_ref()));
    let change = move || {
        let (before, now) = shares.get();
        let was = share_text(before.as_ref());
        (before.is_some() && was != share_text(now.as_ref())).then(|| {
            let size = |share: &Share| share.as_ref().and_then(|(_, ratio)| *ratio).unwrap_or(1.0);
            let (mark, word) = if size(&now) < size(&before) { ("▼", "less: ") } else { ("▲", "more: ") };
            view! {
                <span class="strip__was">
                    <span aria-hidden="true">{mark}" "</span>
                    <span class="quiet">{word}</span>
                    "was "
                    {was}
                </span>
            }
        })
    };
    let over =
        move || shares.with(|(_, now)| now.as_ref().is_some_and(|(_, ratio)| ratio.is_none_or(|ratio| ratio > 1.0)));
    view! {
        <a class="strip__cell" class:strip__cell--over=over href=Place::Strength.href()>
            <span class="strip__name">"worst check"</span>
            <span class="strip__value">{now}</span>
            {change}
        </a>
    }
}

/// The member of the worst check, and its share; no share where it could not be judged.
type Share = Option<(String, Option<f64>)>;

fn share_text(share: Option<&(String, Option<f64>)>) -> String {
    match share {
        None => "–".to_owned(),
        Some((member, None)) => format!("{member} not judged"),
        Some((member, Some(ratio))) if *ratio > 9.99 => format!("✕ {member}"),
        Some((member, Some(ratio))) => {
            let mark = if *ratio > 1.0 { "✕ " } else { "" };
            format!("{mark}{member} {:.0} %", ratio * 100.0)
        }
    }
}

/// One figure: its name, what it is, and what it was.
#[component]
fn Cell(
    name: &'static str,
    href: impl Fn() -> String + Send + Sync + 'static,
    show: impl Fn(&Figures) -> String + Copy + Send + Sync + 'static,
    worth: fn(&Figures) -> f64,
) -> impl IntoView {
    let store = use_store();
    let now = move || store.figures().map_or_else(|| "–".to_owned(), |figures| show(&figures));
    let change = move || {
        let (now, before) = (store.figures()?, store.figures_before()?);
        let was = show(&before);
        if was == show(&now) {
            return None;
        }
        let (mark, word) = if worth(&now) < worth(&before) { ("▼", "less: ") } else { ("▲", "more: ") };
        Some(view! {
            <span class="strip__was">
                <span aria-hidden="true">{mark}" "</span>
                <span class="quiet">{word}</span>
                "was "
                {was}
            </span>
        })
    };
    view! {
        <a class="strip__cell" href=href>
            <span class="strip__name">{name}</span>
            <span class="strip__value">{now}</span>
            {change}
        </a>
    }
}

/// The first problem and how many there are; a tap goes to its field.
#[component]
fn Trouble() -> impl IntoView {
    let store = use_store();
    let router = use_router();
    let problems = Memo::new(move |_| worst_first(store));
    move || {
        let problems = problems.get();
        let first = problems.first()?.clone();
        let n_more = problems.len() - 1;
        let stops = first.stops();
        let word = if stops { "Stops the frame" } else { "Look at this" };
        let more = if n_more == 0 { String::new() } else { format!(" and {n_more} more") };
        let path = first.field.clone();
        let go = move |_| {
            router.go(&Route { place: place_of(&path), stick: None });
            let path = path.clone();
            // The page of the field must be there before the field can be focused.
            set_timeout(move || focus_field(&path), std::time::Duration::from_millis(80));
        };
        Some(view! {
            <button type="button" class="strip__trouble" class:strip__trouble--stop=stops on:click=go>
                <span class="strip__mark" aria-hidden="true">{if stops { "✕" } else { "!" }}</span>
                <span class="strip__says">
                    <strong>{word}{more}": "</strong>
                    {super::fractions(&first.says)}
                </span>
            </button>
        })
    }
}

fn worst_first(store: Store) -> Vec<Problem> {
    let mut problems = store.problems();
    sort_by_number(&mut problems, |problem| -f64::from(problem.severity as u8));
    problems
}

/// The place that holds a field.
fn place_of(path: &str) -> Place {
    match path.split('.').next().unwrap_or_default() {
        "site" | "place" | "above" | "ground" => Place::Site,
        "mill" => Place::Mill,
        "roofing" => Place::Roof,
        "progress" => Place::Bench,
        _ => Place::Frame,
    }
}

//! The ledger's splices: proposed with what they stand by, or placed by hand.
use super::super::drawn::fact;
use crate::app::cached::Cached;
use crate::app::components::{Steps, fact_line, fact_list, group, length_field};
use crate::app::dom::{Tag, button, live, parts, tag};
use crate::app::{Lens, use_store};
use crate::design::Built;
use crate::geometry::{SpliceReport, ledger_splices as splices};
use crate::lens;
use crate::project::Project;
use crate::units::{Length, UnitSystem};
use crate::wording;

/// The lap and the places.
pub fn ledger_splices() -> Tag {
    let store = use_store();
    let by_hand = store.slice(|project| project.frame.ledger_splices.len());
    parts().child(length_field(lens!(frame.ledger_lap), "Lap of a ledger splice").steps(Steps::of(1.0, 20.0))).child(
        live(move || match by_hand.get() {
            0 => proposed(),
            n_splices => placed_by_hand(n_splices),
        }),
    )
}

fn reports(built: &Built, project: &Project) -> Vec<SpliceReport> {
    splices(project, &built.shape.ledger, &built.shape.rafters)
}

fn proposed() -> Tag {
    let store = use_store();
    let now = Cached::new(move || store.drawn().map(|good| reports(&good.built, &good.project)).unwrap_or_default());
    let rows = move || {
        let units = store.units();
        let row = |splice: &SpliceReport| {
            let value = format!("{}: {}", wording::length(splice.middle, units), stands(splice, units));
            fact_line(&name(splice.number), value)
        };
        now.with(|all| all.iter().map(row).collect::<Vec<_>>())
    };
    let keep = move |_| {
        let middles: Vec<Length> = now.with_untracked(|all| all.iter().map(|splice| splice.middle).collect());
        store.edit(|project| project.frame.ledger_splices = middles);
    };
    let any = move || now.with(|all| !all.is_empty());
    group(
        "Ledger splices, proposed",
        parts()
            .child(fact_list(live(rows)))
            .shown(any, move || button("button", keep).child("Keep these splices and move them by hand"))
            .shown(move || !any(), || tag("p").child("The ledger needs no splice: one stick makes it.")),
    )
}

fn name(number: usize) -> String {
    format!("Splice {number}, middle")
}

/// What a splice stands by, in words.
fn stands(splice: &SpliceReport, units: UnitSystem) -> String {
    let say = |length| wording::length(length, units);
    let rafter = if splice.rafter_clear < Length::ZERO {
        "its lap runs under a rafter".to_owned()
    } else {
        format!("its lap {} from a rafter", say(splice.rafter_clear))
    };
    match splice.wall_post {
        Some((post, off)) if off < Length::inches(1.0 / 32.0) => format!("over the wall’s post {post}, {rafter}"),
        Some((post, off)) => format!("{} from the wall’s post {post}, {rafter}", say(off)),
        None => rafter,
    }
}

fn placed_by_hand(n_splices: usize) -> Tag {
    let store = use_store();
    let rows = (0..n_splices).map(one_by_hand).collect::<Vec<_>>();
    let back = move |_| store.edit(|project| project.frame.ledger_splices.clear());
    group(
        "Ledger splices, by hand",
        parts().child(rows).child(button("button", back).child("Let the program place the splices")),
    )
}

fn one_by_hand(index: usize) -> Tag {
    let middle = Lens::maybe(
        format!("frame.ledger_splices.{index}"),
        move |project: &Project| project.frame.ledger_splices.get(index).copied(),
        move |project: &mut Project, middle| {
            if let Some(place) = project.frame.ledger_splices.get_mut(index) {
                *place = middle;
            }
        },
    );
    let hint = fact(move |built, project| Some(stands(reports(built, project).get(index)?, project.units)));
    parts().child(length_field(middle, name(index + 1)).hint(hint).steps(Steps::of(1.0, 10.0)))
}

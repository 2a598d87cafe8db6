//! How the order is made: what it is best at, spares, where hearts lie, and what comes later.
use crate::app::cached::{Cached, text_of};
use crate::app::components::{Listed, count_field, group, late_fold, listed_field, toggle, word};
use crate::app::dom::{Tag, parts};
use crate::app::{Lens, use_store};
use crate::lens;
use crate::ordering::WHY_TWICE;
use crate::project::{Heart, OrderAim, Project, Role};

/// Most spares of a section, and the longest row that asks for one more.
const MOST_SPARES: usize = 20;
const MOST_IN_A_ROW: usize = 1000;

/// The fold.
pub fn how_ordered() -> Tag {
    let store = use_store();
    let summary = text_of(move || {
        let order = store.built().map(|built| (built.order.n_spare(), built.order.deliveries().len()));
        let (n_spare, n_deliveries) = order.unwrap_or_default();
        let spares = if n_spare > 0 { format!(", {n_spare} spare") } else { String::new() };
        let twice = if n_deliveries > 1 { ", two deliveries" } else { "" };
        format!("{}{spares}{twice}", store.project().buying.aim.name())
    });
    late_fold("How it is ordered", summary, || parts().child(aim()).child(spares()).child(hearts()).child(later()))
}

fn aim() -> Tag {
    let field = Lens::maybe(
        "buying.aim",
        |project: &Project| OrderAim::ALL.iter().position(|aim| *aim == project.buying.aim),
        |project: &mut Project, place: usize| {
            if let Some(aim) = OrderAim::ALL.get(place) {
                project.buying.aim = *aim;
            }
        },
    );
    let words = OrderAim::ALL.map(OrderAim::name).to_vec();
    listed_field(
        Listed { field, words },
        "The order is best at",
        "lightest: each stick by itself, nothing to cut apart",
    )
}

fn spares() -> Tag {
    group(
        "Spares",
        parts()
            .child(
                count_field(lens!(buying.spares.each_section), "Of each section", 0, MOST_SPARES)
                    .hint("one or two are usual: a long stick may bow before it is cut (common practice)"),
            )
            .child(
                count_field(lens!(buying.spares.one_in), "And one for every so many pieces", 0, MOST_IN_A_ROW)
                    .hint("nought for none; the larger of the two counts"),
            )
            .child(word(
                "Pieces of stock are counted, of purlins and blocks too. A spare is as long as the longest of its section \
                 that is to be had: it can take the place of any.",
            )),
    )
}

/// What sticks of a role are called together.
const fn together(role: Role) -> &'static str {
    match role {
        Role::Post => "Posts",
        Role::Beam => "Beam",
        Role::Brace => "Braces",
        Role::Rafter => "Rafters",
        Role::Ledger => "Ledger",
        Role::Purlin => "Purlins",
        Role::Block => "Blocks",
    }
}

/// The roles that the frame has sticks of.
fn roles() -> Cached<Vec<Role>> {
    let store = use_store();
    Cached::new(move || {
        let built = store.built();
        let has =
            |role: &Role| built.as_ref().is_some_and(|built| built.sticks.iter().any(|stick| stick.role == *role));
        Role::ALL.into_iter().filter(has).collect()
    })
}

fn hearts() -> Tag {
    let roles = roles();
    group(
        "The heart of the tree",
        parts()
            .child(word(
                "A boxed heart is cheapest in big sticks and checks on every face; free of heart checks least and costs more, \
                 and is usual for braces (common practice).",
            ))
            .live(move || roles.get().into_iter().map(heart).collect::<Vec<_>>()),
    )
}

fn heart(role: Role) -> Tag {
    let field = Lens::maybe(
        format!("buying.hearts.{}", role.name()),
        move |project: &Project| Heart::ALL.iter().position(|heart| *heart == project.buying.heart_of(role)),
        move |project: &mut Project, place: usize| {
            if let Some(heart) = Heart::ALL.get(place) {
                project.buying.wish_heart(role, *heart);
            }
        },
    );
    listed_field(Listed { field, words: vec!["as it falls", "boxed", "free of heart"] }, together(role), "")
}

fn later() -> Tag {
    let roles = roles();
    group(
        "What comes with a second delivery",
        parts().child(word(WHY_TWICE)).live(move || roles.get().into_iter().map(comes_later).collect::<Vec<_>>()),
    )
}

fn comes_later(role: Role) -> Tag {
    let field = Lens::new(
        format!("buying.second_delivery.{}", role.name()),
        move |project: &Project| project.buying.delivery_of(role) == 2,
        move |project: &mut Project, later| project.buying.bring_later(role, later),
    );
    toggle(field, format!("{} later", together(role)), "")
}

//! What is to be printed.
use crate::app::cached::{Cached, text_of};
use crate::app::components::{Segment, fold, segments};
use crate::app::dom::{Tag, button, parts, tag};
use crate::app::use_store;
use crate::design::Built;
use leptos::prelude::*;

/// Which sticks get a sheet.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Sticks {
    /// None.
    #[default]
    None,
    /// One sheet for all that are cut alike.
    Groups,
    /// Every stick its own.
    All,
}

/// One sheet of the pack.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// The order list.
    Order,
    /// The section.
    Section,
    /// The elevation.
    Elevation,
    /// The roof plan.
    Plan,
    /// Purlin rows and sheets.
    Roof,
    /// Every different joint drawn apart.
    Joints,
    /// What he has, and what to take from each stick of it.
    Pile,
    /// Each load, and what lies on what.
    Loads,
    /// What came, with room to write what it measures.
    Receiving,
}

impl Kind {
    /// All kinds but the sticks, in the order they are printed.
    pub const ALL: [Self; 9] = [
        Self::Order,
        Self::Section,
        Self::Elevation,
        Self::Plan,
        Self::Roof,
        Self::Joints,
        Self::Pile,
        Self::Loads,
        Self::Receiving,
    ];

    /// Its title.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Order => "Order list",
            Self::Section => "Section",
            Self::Elevation => "Beam line",
            Self::Plan => "Roof plan",
            Self::Roof => "Purlins and sheets",
            Self::Joints => "Joints, drawn apart",
            Self::Pile => "What he has",
            Self::Loads => "Loads",
            Self::Receiving => "Receiving list",
        }
    }
}

/// What is to be printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Wanted {
    kinds: [bool; Kind::ALL.len()],
    /// The sticks.
    pub sticks: Sticks,
}

impl Default for Wanted {
    fn default() -> Self {
        // The joints wait until they are asked for, since their solids cost more than all other sheets; those of the pile, the
        // loads and the truck are each for one day.
        Self { kinds: Kind::ALL.map(|kind| kind < Kind::Joints), sticks: Sticks::None }
    }
}

impl Wanted {
    /// That sheet is wanted.
    #[must_use]
    pub fn has(self, kind: Kind) -> bool {
        self.kinds[kind as usize]
    }

    /// Wants it, or no longer.
    pub fn turn(&mut self, kind: Kind) {
        self.kinds[kind as usize] = !self.kinds[kind as usize];
    }

    /// Marks of the sticks that get a sheet.
    #[must_use]
    pub fn marks(self, built: &Built) -> Vec<String> {
        let chosen = built.sticks.iter().filter(|stick| match self.sticks {
            Sticks::None => false,
            Sticks::Groups => stick.same_as.is_none(),
            Sticks::All => true,
        });
        chosen.map(|stick| stick.mark.clone()).collect()
    }

    /// The number of the joints' sheet, where it is wanted.
    #[must_use]
    pub fn joints_sheet(self) -> Option<usize> {
        let before = Kind::ALL.into_iter().filter(|kind| *kind < Kind::Joints && self.has(*kind)).count();
        self.has(Kind::Joints).then_some(before + 1)
    }

    /// How many sheets that makes: sheets of sticks have an index before them.
    #[must_use]
    pub fn n_sheets(self, built: &Built) -> usize {
        let n_sticks = self.marks(built).len();
        Kind::ALL.into_iter().filter(|kind| self.has(*kind)).count() + n_sticks + usize::from(n_sticks > 0)
    }
}

/// The choice, and the button.
pub fn choose(wanted: RwSignal<Wanted>) -> Tag {
    let store = use_store();
    let n_sheets = Cached::new(move || store.built().map_or(0, |built| wanted.get().n_sheets(&built)));
    let summary = text_of(move || match n_sheets.get() {
        1 => "1 sheet".to_owned(),
        n => format!("{n} sheets"),
    });
    let ticks = Kind::ALL.into_iter().map(|kind| tick(wanted, kind)).collect::<Vec<_>>();
    // Straight in the tap: a browser lets no program print later.
    let print = move |_| {
        let _ = window().print();
    };
    fold("Print", summary, true, || {
        parts()
            .child(tag("div").class("choose").attr("role", "group").attr("aria-label", "Sheets to print").child(ticks))
            .child(stick_choice(wanted))
            .child(
                button("button button--main", print)
                    .live_attr("disabled", move || n_sheets.get() == 0)
                    .live(move || format!("Print {}", summary.get())),
            )
            .child(tag("p").class("field__hint").child(
                "For A4 and Letter alike. Print at 100 %, not “fit to page”: the bar \
                 under each drawing shows whether the scale came out true.",
            ))
    })
}

fn tick(wanted: RwSignal<Wanted>, kind: Kind) -> Tag {
    tag("label")
        .class("tick")
        .child(
            tag("input")
                .class("tick__input")
                .attr("type", "checkbox")
                .live_prop("checked", move || wanted.get().has(kind))
                .on("change", move |_| wanted.update(|wanted| wanted.turn(kind))),
        )
        .child(tag("span").class("tick__box").attr("aria-hidden", "true"))
        .child(tag("span").class("tick__words").child(kind.title()))
}

fn stick_choice(wanted: RwSignal<Wanted>) -> Tag {
    let store = use_store();
    let count =
        move |sticks: Sticks| store.built().map_or(0, |built| Wanted { sticks, ..wanted.get() }.marks(&built).len());
    let segment = move |sticks: Sticks, word: &'static str| {
        let words = move || if sticks == Sticks::None { word.to_owned() } else { format!("{word}, {}", count(sticks)) };
        let choose = move || wanted.update(|wanted| wanted.sticks = sticks);
        Segment::new(text_of(words), move || wanted.get().sticks == sticks, choose)
    };
    let all = [(Sticks::None, "none"), (Sticks::Groups, "one for those alike"), (Sticks::All, "every stick")];
    let all = all.into_iter().map(|(sticks, word)| segment(sticks, word)).collect();
    segments("stick-sheets", "Shop book: sheets of the sticks, with their order of work", (), all)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::project::demo;

    #[test]
    fn sheets_are_counted_as_they_are_wanted() {
        let built = evaluate(&demo::wool_barn()).built.unwrap();
        let mut wanted = Wanted::default();
        assert_eq!(wanted.n_sheets(&built), 5);
        wanted.turn(Kind::Plan);
        assert!(!wanted.has(Kind::Plan));
        assert_eq!(wanted.joints_sheet(), None);
        wanted.turn(Kind::Joints);
        assert_eq!((wanted.n_sheets(&built), wanted.joints_sheet()), (5, Some(5)));
        wanted.turn(Kind::Joints);
        wanted.sticks = Sticks::All;
        assert_eq!(wanted.n_sheets(&built), 4 + 1 + built.sticks.len());
        wanted.sticks = Sticks::Groups;
        let alone = wanted.marks(&built);
        assert!(alone.contains(&"R1".to_owned()) && !alone.contains(&"R2".to_owned()));
    }
}

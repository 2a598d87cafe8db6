//! The stick in hand and what is done on it.
use crate::app::cached::Cached;
use crate::app::{Store, use_store};
use crate::tickets::Stick;
use leptos::prelude::*;
use std::collections::BTreeSet;
use std::sync::Arc;

/// The stick in hand. Copy it freely.
#[derive(Clone, Copy)]
pub struct InHand {
    store: Store,
    mark: StoredValue<String>,
    /// The stick; nothing where the frame has none of that mark.
    pub stick: Cached<Option<Arc<Stick>>>,
    /// Marks made, by their place in the sheet.
    pub made: Cached<BTreeSet<usize>>,
    /// The layout it was cut to.
    pub cut: Cached<Option<String>>,
    /// The question before the first mark is answered, on this visit.
    pub lies_so: RwSignal<bool>,
    /// The mark that is walked to; past the last one when all are made. Nothing while the sheet is shown.
    pub step: RwSignal<Option<usize>>,
}

impl InHand {
    /// Takes the stick of that mark in hand.
    #[must_use]
    pub fn take(mark: String) -> Self {
        let store = use_store();
        let (of_stick, of_made, of_cut) = (mark.clone(), mark.clone(), mark.clone());
        let stick = Cached::new(move || store.built().and_then(|built| built.stick(&of_stick).cloned()).map(Arc::new));
        let ticked = store.slice(move |project| project.progress.marked.get(&of_made).cloned().unwrap_or_default());
        Self {
            store,
            mark: StoredValue::new(mark),
            stick,
            made: Cached::new(move || {
                let made = |stick: &Arc<Stick>| ticked.with(|ticked| stick.made(ticked));
                stick.with(|stick| stick.as_ref().map(made).unwrap_or_default())
            }),
            cut: store.slice(move |project| project.progress.cut.get(&of_cut).cloned()),
            lies_so: RwSignal::new(false),
            step: RwSignal::new(None),
        }
    }

    /// Its mark.
    #[must_use]
    pub fn mark(self) -> String {
        self.mark.get_value()
    }

    /// How many marks it has (tracked).
    #[must_use]
    pub fn n_marks(self) -> usize {
        self.stick.with(|stick| stick.as_ref().map_or(0, |stick| stick.marks.len()))
    }

    /// It is cut (tracked).
    #[must_use]
    pub fn is_cut(self) -> bool {
        self.cut.with(Option::is_some)
    }

    /// Ticks marks, or takes their ticks away: one step back for all of them.
    pub fn tick(self, places: &[usize], is_made: bool) {
        let key =
            |stick: &Arc<Stick>, place: &usize| stick.marks.get(*place).map(|mark| (mark.key(), mark.place_key()));
        let keys: Vec<(String, String)> = self.stick.with_untracked(|stick| {
            stick.iter().flat_map(|stick| places.iter().filter_map(|place| key(stick, place))).collect()
        });
        let stick = self.mark();
        self.store.tick(|progress| {
            let made = progress.marked.entry(stick.clone()).or_default();
            for (key, place_key) in keys {
                made.remove(&place_key);
                if is_made {
                    made.insert(key);
                } else {
                    made.remove(&key);
                }
            }
            if made.is_empty() {
                progress.marked.remove(&stick);
            }
        });
    }

    /// The first mark from there on that is not made; else the first of all; else past the last one.
    #[must_use]
    pub fn next_open(self, from: usize) -> usize {
        let n_marks = self.stick.with_untracked(|stick| stick.as_ref().map_or(0, |stick| stick.marks.len()));
        self.made.with_untracked(|made| {
            let mut open = (from..n_marks).chain(0..from.min(n_marks)).filter(|index| !made.contains(index));
            open.next().unwrap_or(n_marks)
        })
    }

    /// Begins to walk the marks, or goes on where it was left.
    pub fn walk(self) {
        self.step.set(Some(self.next_open(0)));
    }
}

/// Notes that a stick is cut, with the layout it was cut to, or that it is not.
pub fn note_cut(store: Store, stick: &Stick, is_cut: bool) {
    let (mark, layout) = (stick.mark.clone(), stick.layout());
    store.tick(|progress| {
        if is_cut {
            progress.cut.insert(mark, layout);
        } else {
            progress.cut.remove(&mark);
        }
    });
}

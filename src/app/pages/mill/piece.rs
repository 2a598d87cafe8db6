//! One piece that came: what it measures, what is wrong with it, and what it does for.
use super::order_memo;
use crate::app::after::after_pause;
use crate::app::cached::Cached;
use crate::app::components::{LENGTH, NOT_KNOWN, NUMBER, WORDS, choice, entry_field, fractions, nothing_is_open, pick};
use crate::app::dom::{Tag, button, parts, tag};
use crate::app::{Lens, use_store};
use crate::materials::Section;
use crate::ordering::asked_length;
use crate::ordering::came::{Place, places, wet_words};
use crate::project::{Defect, Heart, Piece, PieceState, Project};
use crate::study::Receiving;
use crate::units::{Length, UnitSystem};
use leptos::prelude::*;
use std::time::Duration;

/// The piece that is looked at, by its name.
#[derive(Clone, Copy)]
pub struct Opened(pub RwSignal<Option<String>>);

/// So long after the last keystroke a piece is judged.
const PAUSE: Duration = Duration::from_millis(250);

/// What the fold says of one piece.
#[derive(Clone, PartialEq)]
struct Said {
    /// It does where it was meant for.
    does: bool,
    says: String,
    /// The place that suits it better, by its name and in a sentence.
    better: Option<(String, String)>,
    wet: Option<String>,
}

/// Everything about one piece.
pub fn entry((name, plain): (String, Piece), opened: Opened) -> Tag {
    let store = use_store();
    let title = {
        let number = name.rsplit('/').next().unwrap_or_default().to_owned();
        move || {
            let units = store.units();
            format!("Piece {number} of {} × {}", plain.section.label(units), asked_length(plain.length, units))
        }
    };
    let of_forget = name.clone();
    let forget = move |_| {
        opened.0.set(None);
        store.tick(|progress| {
            progress.pieces.remove(&of_forget);
        });
    };
    let way = Way { name, section: plain.section, length: plain.length };
    tag("section")
        .class("came__entry")
        .live_attr("aria-label", title.clone())
        .child(tag("h4").class("came__title").live(move || fractions(&title())))
        .child(tag("div").class("came__fields").child(measures(&way)))
        .child(defects(&way))
        .child(choice(
            way.lens(
                "heart",
                |piece| piece.map_or(Heart::Either, |piece| piece.heart),
                |piece, heart| piece.heart = heart,
            ),
            "Its heart",
            "",
            super::known_hearts(),
            None,
        ))
        .child(choice(
            way.lens(
                "state",
                |piece| piece.map_or(PieceState::Kept, |piece| piece.state),
                |piece, state| piece.state = state,
            ),
            "What becomes of it",
            "",
            vec![(PieceState::Kept, "it stays".to_owned()), (PieceState::SentBack, "it goes back".to_owned())],
            None,
        ))
        .child(place(&way))
        .child(entry_field(
            WORDS.open(&nothing_is_open(&way.lens(
                "remark",
                |piece| piece.map(|piece| piece.remark.clone()).unwrap_or_default(),
                |piece, remark| piece.remark = remark,
            ))),
            "Remark".to_owned().into(),
        ))
        .child(verdict(&way))
        .child(button("button button--small", forget).child("It is not here: take it off the list"))
}

/// How a piece is reached. The first value that is put in ticks it.
#[derive(Clone)]
struct Way {
    name: String,
    section: Section,
    length: Length,
}

impl Way {
    fn lens<T: 'static>(&self, field: &str, get: fn(Option<&Piece>) -> T, set: fn(&mut Piece, T)) -> Lens<T> {
        let (read, write) = (self.name.clone(), self.clone());
        Lens::new(
            format!("progress.pieces.{}.{field}", self.name),
            move |project: &Project| get(project.progress.pieces.get(&read)),
            move |project: &mut Project, value| {
                let plain = || Piece::as_ordered(write.section, write.length);
                set(project.progress.pieces.entry(write.name.clone()).or_insert_with(plain), value);
            },
        )
    }
}

/// One side of an end that may be as ordered: with both as ordered nothing was measured there.
fn put(end: &mut Option<Section>, ordered: Section, side: fn(&mut Section) -> &mut Length, value: Option<Length>) {
    let mut size = end.unwrap_or(ordered);
    let mut plain = ordered;
    *side(&mut size) = value.unwrap_or(*side(&mut plain));
    *end = (value.is_some() || size != ordered).then_some(size);
}

fn measures(way: &Way) -> Tag {
    type Get = fn(Option<&Piece>) -> Option<Length>;
    type Set = fn(&mut Piece, Option<Length>);
    let all: [(&str, &str, &str, Get, Set); 6] = [
        (
            "near.breadth",
            "Near end, breadth",
            "the end you stand at",
            |piece| Some(piece?.near?.breadth),
            |piece, value| {
                put(&mut piece.near, piece.section, |size| &mut size.breadth, value);
            },
        ),
        (
            "near.depth",
            "Near end, depth",
            "",
            |piece| Some(piece?.near?.depth),
            |piece, value| {
                put(&mut piece.near, piece.section, |size| &mut size.depth, value);
            },
        ),
        (
            "far.breadth",
            "Far end, breadth",
            "",
            |piece| Some(piece?.far?.breadth),
            |piece, value| {
                put(&mut piece.far, piece.section, |size| &mut size.breadth, value);
            },
        ),
        (
            "far.depth",
            "Far end, depth",
            "",
            |piece| Some(piece?.far?.depth),
            |piece, value| {
                put(&mut piece.far, piece.section, |size| &mut size.depth, value);
            },
        ),
        (
            "real_length",
            "Length",
            "clear of splits",
            |piece| piece?.real_length,
            |piece, value| piece.real_length = value,
        ),
        ("crown", "Crown", "off a string from end to end", |piece| piece?.crown, |piece, value| piece.crown = value),
    ];
    let mut fields = parts();
    for (field, label, hint, get, set) in all {
        let means = if field == "crown" { NOT_KNOWN } else { "as ordered" };
        let entry = LENGTH.open(&way.lens(field, get, set)).may_be_empty(means);
        fields = fields.child(entry_field(entry, label.to_owned().into()).hint(hint).is_length());
    }
    let wet =
        way.lens("moisture_percent", |piece| piece?.moisture_percent, |piece, value| piece.moisture_percent = value);
    fields.child(entry_field(NUMBER.open(&wet), "Moisture, %".to_owned().into()).hint("by a meter").decimal_keys())
}

fn defects(way: &Way) -> Tag {
    let chips = Defect::ALL.map(|defect| {
        let store = use_store();
        let lens = way.lens(
            "defects",
            |piece| piece.map(|piece| piece.defects.clone()).unwrap_or_default(),
            |piece, defects| piece.defects = defects,
        );
        let read = lens.clone();
        let on = Cached::new(move || read.get(&store.project()).is_some_and(|found| found.contains(&defect)));
        let turn = move |_| {
            store.edit(|project| {
                let mut found = lens.get(project).unwrap_or_default();
                if found.contains(&defect) {
                    found.retain(|known| *known != defect);
                } else {
                    found.push(defect);
                    crate::units::sort_by_number(&mut found, |defect| f64::from(*defect as u8));
                }
                lens.set(project, found);
            });
        };
        button("chip came__chip", turn)
            .live_class("chip--on", move || on.get())
            .live_attr("aria-pressed", move || on.get().to_string())
            .child(
                tag("span")
                    .class("chip__mark")
                    .attr("aria-hidden", "true")
                    .live(move || if on.get() { "✓" } else { "" }),
            )
            .child(defect.name())
    });
    tag("fieldset")
        .class("chips")
        .child(tag("legend").class("choice__label").child("What a look at it found"))
        .child(tag("div").class("came__chips").child(chips))
}

/// The place the user chose.
fn place(way: &Way) -> Tag {
    let store = use_store();
    let order = order_memo();
    let section = way.section;
    let options = move || -> Vec<(String, String)> {
        let all: Vec<Place> = store.good().map(|good| places(&good.project, &good.built)).unwrap_or_default();
        let named = all.iter().filter(|place| place.takes(section)).map(|place| (place.name.clone(), place.short()));
        [(String::new(), "where it does best".to_owned())].into_iter().chain(named).collect()
    };
    let lens = {
        let read = |piece: Option<&Piece>| piece.map(|piece| piece.place.clone()).unwrap_or_default();
        way.lens("place", read, |piece, place| piece.place = place)
    };
    parts().live(move || {
        order.with(|_| ());
        pick(lens.clone(), "Its place", "left open, it is sought with the rest", untrack(options))
    })
}

fn verdict(way: &Way) -> Tag {
    let store = use_store();
    let name = StoredValue::new(way.name.clone());
    let follow = move || {
        let _ = store.strong();
        PAUSE
    };
    let judged = after_pause(follow, move || {
        let (strong, name) = (store.strong()?, name.try_get_value()?);
        let (project, built) = (&strong.good.project, &strong.good.built);
        let piece = project.progress.pieces.get(&name)?;
        let receiving = Receiving::new(project, built, &strong.strength);
        let found = receiving.judge(&name, piece);
        let place = |index: usize| receiving.places().get(index);
        let own = found.own.as_ref().and_then(|own| Some((own.fits(), own.says(&place(own.place)?.short()))));
        let (does, says) = own.unwrap_or((true, "The frame as it is now asked for no such piece.".to_owned()));
        let better = found.better.and_then(|better| {
            let place = place(better.place)?;
            Some((place.name.clone(), better.says(&place.short())))
        });
        Some(Said { does, says, better, wet: wet_words(project, piece) })
    });
    let lens = way.lens("place", |_| String::new(), |piece, place| piece.place = place);
    let sentence = move || judged.get().map(|said| sentence(said.does, &said.says));
    let more = move || {
        let said = judged.get()?;
        let lens = lens.clone();
        let better = said.better.map(|(place, says)| {
            let give = move |_| store.edit(|project| lens.set(project, place.clone()));
            parts()
                .child(tag("p").class("page__word").child(fractions(&format!("Better: {}", lowered(&says)))))
                .child(button("button button--small", give).child("Give it that place"))
        });
        let wet = said.wet.map(|wet| tag("p").class("page__word").child(fractions(&wet)));
        Some(parts().child(better).child(wet))
    };
    // The sentence stays in sight over the rule while the fields are filled in.
    parts()
        .child(tag("div").class("came__more").live(more))
        .child(tag("div").class("came__verdict").attr("role", "status").live(sentence))
}

/// With the word of the trouble, where there is one.
fn sentence(does: bool, says: &str) -> Tag {
    if does {
        return tag("p")
            .class("came__does")
            .child(tag("span").attr("aria-hidden", "true").child("✓ "))
            .child(fractions(says));
    }
    tag("div").class("problem").child(
        tag("p")
            .class("problem__says")
            .child(tag("strong").class("problem__word").child("Send it back, or elsewhere: "))
            .child(fractions(says)),
    )
}

fn lowered(says: &str) -> String {
    let mut letters = says.chars();
    let first: String = letters.next().into_iter().flat_map(char::to_lowercase).collect();
    first + letters.as_str()
}

/// A piece's size and length as its card says it.
pub fn piece_words(name: &str, piece: &Piece, units: UnitSystem) -> String {
    let number = name.rsplit('/').next().unwrap_or_default();
    format!("{} × {}, {number}", piece.section.label(units), asked_length(piece.length, units))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_end_is_measured_while_one_side_is() {
        let inches = Length::inches;
        let ordered = Section::new(inches(8.0), inches(10.0));
        let mut end = None;
        put(&mut end, ordered, |size| &mut size.depth, Some(inches(9.75)));
        assert_eq!(end, Some(Section::new(inches(8.0), inches(9.75))));
        put(&mut end, ordered, |size| &mut size.breadth, Some(inches(8.0)));
        put(&mut end, ordered, |size| &mut size.depth, None);
        assert_eq!(end, None);
    }
}

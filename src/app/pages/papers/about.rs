//! What the tool does, and what it does not.
use crate::app::components::{caution, fold, word};
use crate::app::dom::{Tag, parts, tag};
use crate::materials::species_table;

/// About and cautions.
pub fn about() -> Tag {
    fold("About and cautions", "what it works out, and what it does not", false, || {
        parts()
            .child(caution(
                "The strength is checked by formulas, many of them from memory and marked \
                 so; what the wall itself carries is not judged. Have your local code and \
                 a licensed engineer say yes before you buy, cut or lift.",
            ))
            .child(tag("h3").class("group__title").child("What it works out"))
            .child(word(
                "From what you measured and chose: heights and pitch, every stick’s \
                 length and marks, where scarfs and joints clear each other, the order \
                 out of the mill’s lengths with its green weight and price, purlin rows \
                 and metal sheets; snow, wind and weight on it, and whether every stick, \
                 joint and fixing carries them. All of it from one project, at once.",
            ))
            .child(tag("h3").class("group__title").child("What it does not know"))
            .child(word(
                "What the wall carries already, the lift itself, splitting at pegs, and \
                 your wood: knots, wane, twist and moisture are yours to see. Wood moves; \
                 measure the stick in hand before you cut. Packing short sticks into \
                 stock follows plain good sense and is not proven to be the cheapest.",
            ))
            .child(tag("h3").class("group__title").child("Where its values come from"))
            .child(word(
                "Rules of joints and clearances are common practice and yours to change. \
                 An inch is 25.4 mm exactly; a board foot 144 cubic inches. Each check \
                 names document and clause, and whether it was compared with the print or \
                 recalled from memory. The wood’s values:",
            ))
            .child(sources())
            .child(tag("h3").class("group__title").child("Examples"))
            .child(word(
                "The wool barn and the log store are invented: no real farm, mill or \
                 price stands behind them.",
            ))
            .child(tag("h3").class("group__title").child("Your data"))
            .child(word(
                "Everything stays on this device. Clearing the browser’s data clears it \
                 too: keep a file of what matters.",
            ))
    })
}

/// Every species with its source.
fn sources() -> Tag {
    let rows = species_table()
        .iter()
        .map(|wood| {
            tag("li")
                .class("sources__row")
                .child(tag("strong").child(wood.name.clone()))
                .child(": ")
                .child(wood.source.clone())
        })
        .collect::<Vec<_>>();
    tag("ul").class("sources").child(rows)
}

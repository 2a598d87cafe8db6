//! The rules of every joint, in words.
use crate::app::components::{fold, fractions, word};
use crate::app::dom::{Tag, parts, tag};
use crate::app::route::Place;
use crate::app::use_store;
use crate::design::Shape;
use crate::joinery::{all_own, exception_says};
use crate::project::Project;
use crate::units::{Fineness, Length};
use crate::wording::tape;

/// Each rule with its value.
#[must_use]
pub fn rules(project: &Project) -> Vec<(&'static str, String)> {
    let joinery = &project.joinery;
    let say = |value: Length| tape(value, project.units, Fineness::Sixteenth);
    vec![
        ("tenons thick", say(joinery.tenon_thickness)),
        ("set from the reference face", say(joinery.tenon_offset)),
        ("post tenon", say(joinery.post_tenon)),
        ("brace tenon", say(joinery.brace_tenon)),
        ("blind mortise deeper by", say(joinery.blind_clearance)),
        ("housing", say(joinery.housing)),
        ("brace pocket longer by", say(joinery.pocket_clearance)),
        ("end shoulder", say(joinery.end_shoulder)),
        ("peg", say(joinery.peg)),
        ("peg from the shoulder", say(joinery.peg_from_shoulder)),
        ("two pegs from a width of", say(joinery.two_pegs_from)),
        ("drawbore", say(joinery.drawbore)),
        ("scarf abutment", format!("{:.0} % of the depth", joinery.scarf_abutment_share * 100.0)),
        ("squint", say(joinery.scarf_squint)),
        ("table", say(joinery.scarf_table)),
        ("wedge gap", say(joinery.scarf_wedge)),
        ("scarf clear of mortise or rafter", say(joinery.scarf_clear)),
        ("wood over a pocket", say(joinery.wood_over_pocket)),
        ("least web", say(joinery.least_web)),
        ("chamfer", say(joinery.chamfer)),
        ("chamfer stops short of ends", say(joinery.chamfer_stop)),
        ("clearance for shrinking", say(joinery.shrink_clearance)),
    ]
}

/// The joints that depart from them, a sentence each.
fn exceptions(project: &Project, shape: &Shape) -> Vec<String> {
    all_own(project, shape).into_iter().filter_map(|joint| exception_says(project, joint)).collect()
}

/// The rules as a list.
pub fn rules_fold() -> Tag {
    let store = use_store();
    let rows = move || {
        rules(&store.project())
            .into_iter()
            .map(|(name, value)| {
                tag("div")
                    .class("fact")
                    .child(tag("dt").class("fact__name").child(name))
                    .child(tag("dd").class("fact__value").child(fractions(&value)))
            })
            .collect::<Vec<_>>()
    };
    let own = move || {
        let says = store.good().map(|good| exceptions(&good.project, &good.built.shape)).unwrap_or_default();
        says.iter().map(|says| tag("p").class("own-joint").child(fractions(says))).collect::<Vec<_>>()
    };
    fold("Rules of the joints", "as printed on every sheet", false, || {
        parts().child(tag("dl").class("facts").live(rows)).live(own).child(word(
            tag("a").class("paper-link").attr("href", Place::Frame.href()).child("Change them under Frame"),
        ))
    })
}

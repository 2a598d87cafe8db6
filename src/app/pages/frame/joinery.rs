//! The one set of rules every joint follows.
use super::own_joints::{n_own, own_joints};
use crate::app::cached::text_of;
use crate::app::components::{Field, Steps, choice, fold, group, length_field, number_field, word};
use crate::app::dom::{Tag, parts};
use crate::app::{Lens, use_store};
use crate::lens;
use crate::project::StockRule;
use crate::units::Length;

/// Joinery rules.
pub fn joinery() -> Tag {
    let store = use_store();
    let summary = text_of(move || match n_own(&store.project()) {
        0 => "tenons, pegs, scarfs, chamfer".to_owned(),
        1 => "1 joint of its own".to_owned(),
        n => format!("{n} joints of their own"),
    });
    fold("Rules of the joints", summary, false, || {
        parts()
            .child(word("One set for the whole frame, printed on every sheet. The defaults are common practice."))
            .child(choice(
                lens!(joinery.stock),
                "Rough stock",
                "an inner size takes up what a stick is over; true stock moves its mates where it is not",
                StockRule::ALL.into_iter().map(|rule| (rule, rule.name().to_owned())).collect(),
                None,
            ))
            .child(tenons())
            .child(housings())
            .child(pegs())
            .child(scarf_rules())
            .child(chamfer())
            .child(own_joints())
    })
}

fn rule(field: Lens<Length>, label: &'static str, hint: &'static str) -> Field {
    length_field(field, label).hint(hint).steps(Steps::of(0.125, 1.0))
}

fn tenons() -> Tag {
    group(
        "Tenons and mortises",
        parts()
            .child(rule(lens!(joinery.tenon_thickness), "Tenon thickness", ""))
            .child(rule(lens!(joinery.tenon_offset), "Outer face to the near cheek", ""))
            .child(rule(lens!(joinery.post_tenon), "Tenon on a post’s head", "from its shoulder"))
            .child(rule(lens!(joinery.brace_tenon), "Tenon of a brace", "from the housed line"))
            .child(rule(lens!(joinery.blind_clearance), "Mortise deeper than its tenon by", ""))
            .child(rule(lens!(joinery.end_shoulder), "Shoulder on an end post’s end side", ""))
            .child(rule(lens!(joinery.least_web), "Least wood between opposed mortises", "")),
    )
}

fn housings() -> Tag {
    group(
        "Housings",
        parts()
            .child(rule(lens!(joinery.housing), "Depth of a housing", "below the face as ordered"))
            .child(rule(lens!(joinery.pocket_clearance), "Brace pocket longer by", "on the corner side"))
            .child(rule(lens!(joinery.shrink_clearance), "Clearance for shrinkage", "at a heel or shoulder")),
    )
}

fn pegs() -> Tag {
    group(
        "Pegs",
        parts()
            .child(rule(lens!(joinery.peg), "Peg diameter", ""))
            .child(rule(lens!(joinery.peg_from_shoulder), "First peg from the housed line", ""))
            .child(rule(lens!(joinery.two_pegs_from), "Two pegs from this tenon width on", ""))
            .child(rule(lens!(joinery.drawbore), "Drawbore", "the tenon’s hole lies nearer the shoulder by this")),
    )
}

fn scarf_rules() -> Tag {
    group(
        "Scarfs",
        parts()
            .child(number_field(
                lens!(joinery.scarf_abutment_share),
                "Abutment, share of the beam’s depth",
                0.05,
                0.5,
                0.05,
            ))
            .child(rule(lens!(joinery.scarf_squint), "Lean of an under-squinted end", ""))
            .child(rule(lens!(joinery.scarf_blade), "Tongues of a bladed scarf", "their length"))
            .child(rule(lens!(joinery.scarf_table), "Step of the table", ""))
            .child(rule(lens!(joinery.scarf_wedge), "Gap for the folding wedges", ""))
            .child(rule(
                lens!(joinery.scarf_clear),
                "Least wood beside a scarf’s tip",
                "to the nearest mortise or rafter",
            ))
            .child(rule(lens!(joinery.wood_over_pocket), "Least wood over a brace pocket in a lap", "")),
    )
}

fn chamfer() -> Tag {
    group(
        "Chamfer",
        parts().child(rule(lens!(joinery.chamfer), "Width", "0 for none")).child(rule(
            lens!(joinery.chamfer_stop),
            "Stops short by",
            "of each end and joint",
        )),
    )
}

//! Every different joint of the frame, drawn apart once.
use super::super::bench::entries_of;
use crate::app::Good;
use crate::app::components::fractions;
use crate::app::dom::{Child, Tag, tag};
use crate::drawing::{also, exploded, says, svg};
use crate::joinery::{Alike, StickBody, different_joints, exception_says, joint_named};
use crate::project::Project;

/// Room for the drawings with their words, px at 96 to the inch: 180 mm wide, and what Letter leaves between header and foot.
const ROOM: (f64, f64) = (680.0, 760.0);
/// Height of a drawing's words, and of a drawing at least and at most, px.
const WORDS: f64 = 62.0;
const HEIGHT: (f64, f64) = (130.0, 260.0);

/// The sheet.
pub fn joints_sheet(good: Good) -> Tag {
    let Some(fitted) = entries_of(Some(good.clone())) else {
        return word("The joints are still being worked out: print this page in a moment.");
    };
    let bodies = &fitted.fit.bodies;
    let all = different_joints(bodies);
    if all.is_empty() {
        return word("No joint is cut in this frame.");
    }
    let columns = if all.len() > 6 { 3 } else { 2 };
    let rows = all.len().div_ceil(columns);
    let height = (ROOM.1 / rows as f64 - WORDS).clamp(HEIGHT.0, HEIGHT.1);
    let size = (ROOM.0 / columns as f64 - 8.0, height);
    tag("div")
        .class("paper__joints")
        .class_if("paper__joints--many", columns == 3)
        .child(all.iter().map(|one| joint((&good.project, bodies), one, size)).collect::<Vec<_>>())
}

fn word(says: impl Child) -> Tag {
    tag("p").class("paper__word").child(says)
}

fn joint((project, bodies): (&Project, &[StickBody]), one: &Alike, size: (f64, f64)) -> Tag {
    let html = svg::print_within(&exploded(bodies, &one.joint), size, &one.joint.name);
    let also = also(one);
    let own = joint_named(&one.joint.name).and_then(|joint| exception_says(project, joint));
    tag("figure").class("paper__joint").child(tag("div").class("paper__drawing paper__drawing--ink").html(&html)).child(
        tag("figcaption")
            .child(tag("strong").child(one.joint.name.clone()))
            .child(": ")
            .child(says(&one.joint))
            .child((!also.is_empty()).then(|| format!(" {also}")))
            .child(own.map(|says| tag("span").class("own-joint").child(" ").child(fractions(&says)))),
    )
}

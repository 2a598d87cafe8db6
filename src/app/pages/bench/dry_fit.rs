//! What the beam came to when a scarf was closed dry.
use super::in_hand::InHand;
use crate::app::Lens;
use crate::app::components::{fold, signed_length_field, word};
use crate::app::dom::{Tag, live, parts};
use crate::project::Project;
use crate::tickets::{Role, Stick};
use crate::units::Length;
use leptos::prelude::*;

/// The dry fits of the scarfs of a beam piece; nothing on other sticks.
pub fn dry_fit(hand: InHand) -> Tag {
    let scarfs =
        Memo::new(move |_| hand.stick.with(|stick| stick.as_ref().map(|stick| scarfs_of(stick)).unwrap_or_default()));
    live(move || scarfs.with(|scarfs| (!scarfs.is_empty()).then(|| fields(scarfs))))
}

/// The scarfs at a piece's ends, left and right.
fn scarfs_of(stick: &Stick) -> Vec<usize> {
    let number: usize = stick.mark.get(1..).and_then(|text| text.parse().ok()).unwrap_or(0);
    if stick.role != Role::Beam {
        return Vec::new();
    }
    let meets = |piece: usize| stick.marks.iter().any(|mark| mark.mate.as_deref() == Some(&format!("B{piece}")));
    let left = (number > 1 && meets(number - 1)).then(|| number - 1);
    left.into_iter().chain(meets(number + 1).then_some(number)).collect()
}

fn fields(scarfs: &[usize]) -> Tag {
    let fields: Vec<Tag> = scarfs.iter().map(|scarf| field(*scarf)).collect();
    let holds = parts().child(fields).child(word(
        "Close the scarf dry and measure from the beam’s left end. The marks of every piece to its right that is not cut \
         yet move by the error, for posts and rafters stay where they are on the ground. The solids and the drawings of \
         the frame stay as drawn.",
    ));
    fold("Dry fit", "what the closed beam came to", false, holds)
}

fn field(scarf: usize) -> Tag {
    let key = scarf.to_string();
    let (read, write) = (key.clone(), key);
    let lens = Lens::new(
        format!("progress.dry_fits.{scarf}"),
        move |project: &Project| project.progress.dry_fits.get(&read).copied().unwrap_or_default(),
        move |project: &mut Project, error: Length| {
            if error == Length::ZERO {
                project.progress.dry_fits.remove(&write);
            } else {
                project.progress.dry_fits.insert(write.clone(), error);
            }
        },
    );
    let label = format!("Scarf {scarf}: how much longer than drawn");
    let hint = "from the beam’s left end over the closed scarf; shorter with − before it; 0 where it came out as drawn";
    parts().child(signed_length_field(lens, label).hint(hint))
}

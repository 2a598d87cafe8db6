//! What the beam came to when a scarf was closed dry.
use super::in_hand::InHand;
use crate::app::cached::Cached;
use crate::app::components::{fold, signed_length_field, word};
use crate::app::dom::{Tag, live, parts};
use crate::app::{Lens, use_store};
use crate::project::Project;
use crate::units::Length;

/// The dry fits of the scarfs of a beam piece; nothing on other sticks.
pub fn dry_fit(hand: InHand) -> Tag {
    let store = use_store();
    let number: usize = hand.mark().strip_prefix('B').and_then(|text| text.parse().ok()).unwrap_or(0);
    // What is typed moves the sticks: the fields follow the number of pieces alone.
    let n_pieces = Cached::new(move || store.built().map_or(0, |built| built.shape.beam.pieces.len()));
    live(move || {
        let n_scarfs = n_pieces.get().saturating_sub(1);
        let scarfs = [number.wrapping_sub(1), number].into_iter().filter(|scarf| (1..=n_scarfs).contains(scarf));
        let fields: Vec<Tag> = scarfs.map(field).collect();
        (number > 0 && !fields.is_empty())
            .then(|| fold("Dry fit", SUMMARY, false, || parts().child(fields).child(word(WORDS))))
    })
}

const SUMMARY: &str = "what the closed beam came to";
const WORDS: &str = "Close the scarf dry and measure from the beam’s left end over it. The marks of every piece to its right that is not \
                     cut yet move by the error, for posts and rafters stay where they are on the ground. The solids lie as it \
                     was found; the flat drawings of the frame stay as drawn.";

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
    let hint = "shorter: − before it";
    parts().child(signed_length_field(lens, label).hint(hint))
}

//! What the beam came to when a scarf was closed dry.
use crate::app::Lens;
use crate::app::components::{fold, signed_length_field, word};
use crate::app::dom::{Tag, parts};
use crate::project::Project;
use crate::tickets::{Role, Stick};
use crate::units::Length;

/// The dry fits of the scarfs of a beam piece; nothing on other sticks.
pub fn dry_fit(stick: &Stick) -> Option<Tag> {
    let number: usize = stick.mark.get(1..).and_then(|text| text.parse().ok()).filter(|_| stick.role == Role::Beam)?;
    let meets = |piece: usize| stick.marks.iter().any(|mark| mark.mate.as_deref() == Some(&format!("B{piece}")));
    let left = (number > 1 && meets(number - 1)).then(|| number - 1);
    let scarfs: Vec<usize> = left.into_iter().chain(meets(number + 1).then_some(number)).collect();
    if scarfs.is_empty() {
        return None;
    }
    let fields: Vec<Tag> = scarfs.into_iter().map(field).collect();
    let holds = parts().child(fields).child(word(
        "Close the scarf dry and measure from the beam’s left end. The marks of every piece to its right that is not cut \
         yet move by the error, for posts and rafters stay where they are on the ground. The solids and the drawings of \
         the frame stay as drawn.",
    ));
    Some(fold("Dry fit", "what the closed beam came to", false, holds))
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

//! Sticks that a proposal would leave without a way in.
use crate::design::Shape;
use crate::joinery::{bodies, entries};
use crate::project::Project;

/// The sticks of a frame that cannot get into their places, and what is in their way, a sentence each. Every stick is cut in
/// thought and swept: for what is about to be offered, not for every answer.
#[must_use]
pub fn no_way_in(project: &Project, shape: &Shape) -> Vec<String> {
    let says = |stick: &str, by: &str| format!("{stick} has no way in: {by} is in its way");
    let all = entries(project, shape, &bodies(project, shape));
    all.iter().filter_map(|entry| Some(says(&entry.stick, &entry.stopped.as_ref()?.by))).collect()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::lay_out;
    use crate::project::{ScarfKind, demo};
    use crate::units::Length;

    /// The barn's laps of 18 in between post and pocket, closed endwise by hand: two pieces come against a brace.
    #[test]
    fn what_is_stopped_is_said() {
        let mut project = demo::wool_barn();
        let said = |project: &Project| no_way_in(project, &lay_out(project).built.unwrap().shape);
        assert_eq!(said(&project), Vec::<String>::new());
        project.frame.scarfs.lap = Length::inches(18.0);
        project.frame.scarfs.kind = ScarfKind::StopSplayed;
        let scarfs = lay_out(&project).built.unwrap().shape.beam.scarfs.clone();
        project.frame.scarfs.by_hand = scarfs.iter().map(|scarf| scarf.place).collect();
        project.frame.scarfs.kind = ScarfKind::StopSplayedUnderSquinted;
        assert_eq!(said(&project), ["B1 has no way in: K2L is in its way", "B3 has no way in: K3R is in its way"]);
    }
}

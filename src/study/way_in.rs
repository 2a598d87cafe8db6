//! Sticks that a proposal would leave without a way in.
use crate::design::Shape;
use crate::joinery::{Fit, bodies, entries, fit};
use crate::project::Project;

/// The sticks of a frame that cannot get into their places, and what is in their way, a sentence each. Every stick is cut in
/// thought and swept: for what is about to be offered, not for every answer.
#[must_use]
pub fn no_way_in(project: &Project, shape: &Shape) -> Vec<String> {
    let says = |stick: &str, by: &str| format!("{stick} has no way in: {by} is in its way");
    let all = entries(project, shape, &bodies(project, shape));
    all.iter().filter_map(|entry| Some(says(&entry.stick, &entry.stopped.as_ref()?.by))).collect()
}

/// The same, with the wood that is claimed twice or left too thin then and was not before: for what cuts a joint deeper.
#[must_use]
pub(super) fn no_fit(before: (&Project, &Shape), (project, shape): (&Project, &Shape)) -> Vec<String> {
    let says = |found: Fit| found.clashes.into_iter().map(|clash| clash.says).collect::<Vec<_>>();
    let known = says(fit(before.0, before.1));
    let mut all = no_way_in(project, shape);
    let new = says(fit(project, shape)).into_iter().filter(|says| !known.contains(says));
    all.extend(new.map(|says| says.trim_end_matches('.').to_owned()));
    all
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::lay_out;
    use crate::materials::{Section, Timber};
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

    /// A beam 10 in deep, housed ½ in, and ¼ in left to the mortise's end: over a tenon of 8 in stay 1¼ in, where 1½ are the least
    /// beside a mortise of 2 in; over one of 4 in there are 5¼.
    #[test]
    fn wood_that_becomes_too_thin_is_said() {
        let mut project = demo::wool_barn();
        project.frame.timbers.beam = Timber::full(Section::new(Length::inches(8.0), Length::inches(10.0)));
        let rules = &mut project.joinery;
        (rules.housing, rules.blind_clearance) = (Length::inches(0.5), Length::inches(0.25));
        (rules.post_tenon, rules.tenon_thickness) = (Length::inches(4.0), Length::inches(2.0));
        let before = lay_out(&project).built.unwrap();
        let mut deep = project.clone();
        deep.exceptions.entry("P2".to_owned()).or_default().tenon_length = Some(Length::inches(8.0));
        let after = lay_out(&deep).built.unwrap();
        assert_eq!(no_fit((&project, &before.shape), (&project, &before.shape)), Vec::<String>::new());
        let said = no_fit((&project, &before.shape), (&deep, &after.shape));
        assert!(said.len() == 1 && said[0].contains("1 1⁄4″"), "{said:?}");
    }
}

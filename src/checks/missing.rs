//! Checks that were not made, by what they wait for.
use super::check::{Check, Outcome};
use crate::unmade::Input;

/// Checks that wait for the same datum.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Waiting {
    /// The datum they wait for; nothing where it is another cause.
    pub input: Option<Input>,
    /// The cause in words.
    pub cause: String,
    /// Their places in the list they were taken from.
    pub places: Vec<usize>,
}

impl Waiting {
    /// `not judged for 14 checks: ground snow is missing`.
    #[must_use]
    pub fn says(&self) -> String {
        let n = self.places.len();
        let cause = self.input.map_or_else(|| self.cause.clone(), |input| format!("{} {}", input.name(), input.verb()));
        format!("not judged for {n} {}: {cause}", if n == 1 { "check" } else { "checks" })
    }
}

/// The checks that were not made, by the datum they wait for or, where it is none of ours, by the cause they share, in the order
/// in which they stand; one that stands alone with such a cause is left out.
#[must_use]
pub fn waiting<'a>(checks: impl IntoIterator<Item = (usize, &'a Check)>) -> Vec<Waiting> {
    let mut found: Vec<Waiting> = Vec::new();
    for (place, check) in checks {
        let Outcome::NotJudged(not) = &check.outcome else { continue };
        let is_same =
            |group: &&mut Waiting| group.input == not.missing && (group.input.is_some() || group.cause == not.cause);
        match found.iter_mut().find(is_same) {
            Some(waiting) => waiting.places.push(place),
            None => found.push(Waiting { input: not.missing, cause: not.cause.clone(), places: vec![place] }),
        }
    }
    found.retain(|group| group.input.is_some() || group.places.len() > 1);
    found
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::checks::strength;
    use crate::evaluate;
    use crate::loads::Edition;
    use crate::project::{MAKERS_OWN, Project, demo};
    use crate::units::{Force, Length};
    use crate::unmade::Unmade;

    type Change = fn(&mut Project);

    /// Where snow drifts and slides from the roof above.
    fn under_a_high_eave(project: &mut Project) {
        project.site.eave_edge += Length::inches(60.0);
        project.above.snow_guards = false;
    }

    /// Each datum taken from the barn alone leaves checks that wait for it, and they say so as data.
    #[test]
    fn every_datum_is_told_as_data() {
        let all: [(Input, Change); 26] = [
            (Input::GroundSnow, |p| p.place.ground_snow = None),
            (Input::WindSpeed, |p| p.place.wind_speed = None),
            (Input::WinterWind, |p| {
                under_a_high_eave(p);
                (p.place.edition, p.place.winter_wind) = (Edition::Asce7_22, None);
            }),
            (Input::ForceCoefficient, |p| p.place.member_force_coefficient = None),
            (Input::EaveToRidge, |p| {
                under_a_high_eave(p);
                p.above.eave_to_ridge = None;
            }),
            (Input::RoofAbove, |p| {
                under_a_high_eave(p);
                p.above.whole_length = None;
            }),
            (Input::Soil, |p| p.ground.soil.clear()),
            (Input::FrostDepth, |p| p.ground.frost_depth = None),
            (Input::WallPosts, |p| p.site.wall_post_spacing = Length::ZERO),
            (Input::WallWood, |p| p.fixings.ledger.wall_species.clear()),
            (Input::LedgerFixing, |p| p.fixings.ledger.fastener.clear()),
            (Input::LedgerRows, |p| p.fixings.ledger.rows = 0),
            (Input::LedgerWasher, |p| p.fixings.ledger.washer = Length::ZERO),
            (Input::MakersScrew, |p| p.fixings.ledger.fastener = MAKERS_OWN.to_owned()),
            (Input::PurlinScrew, |p| p.fixings.purlin.fastener.clear()),
            (Input::SheetScrew, |p| p.fixings.sheet.screw.fastener.clear()),
            (Input::SheetPullOver, |p| p.fixings.sheet.pull_over = Force::ZERO),
            (Input::RafterHead, |p| p.fixings.rafter_head.count = 0),
            (Input::RafterHeadValues, |p| p.fixings.rafter_head.sideways = Force::ZERO),
            (Input::RafterSeat, |p| p.fixings.rafter_seat.count = 0),
            (Input::RafterSeatValues, |p| p.fixings.rafter_seat.pull = Force::ZERO),
            (Input::Scarf, |p| p.fixings.scarf.count = 0),
            (Input::PostBase, |p| p.fixings.post_base.count = 0),
            (Input::PostBaseValues, |p| p.fixings.post_base.source.clear()),
            (Input::AnchorDepth, |p| p.fixings.pier.anchor_depth = Length::ZERO),
            (Input::PierBars, |p| {
                p.place.wind_speed = crate::loads::WindSpeed::try_mph(200.0);
                p.fixings.pier.bars = 0;
            }),
        ];
        let shape = &evaluate(&demo::wool_barn()).built.unwrap().shape;
        for (input, change) in all {
            let mut project = demo::wool_barn();
            change(&mut project);
            let found = strength(&project, shape);
            let waiting = waiting(found.checks.iter().enumerate());
            let open: Vec<&str> =
                found.checks.iter().filter(|check| check.ratio().is_none()).map(|check| check.name.as_str()).collect();
            assert!(waiting.iter().any(|group| group.input == Some(input)), "{input:?}: {waiting:?} {open:?}");
            assert!(
                waiting.iter().all(|group| group.places.iter().all(|place| found.checks[*place].ratio().is_none()))
            );
        }
    }

    #[test]
    fn groups_speak_plainly() {
        let check = |why: Unmade| Check::not_judged("B1", "bends", why);
        let all = [
            check(Unmade::missing(Input::GroundSnow, "no snow; ask")),
            check("ground snow is missing".into()),
            check(Unmade::missing(Input::GroundSnow, "no snow")),
            check(Unmade::missing(Input::Soil, "which soil?")),
        ];
        let found = waiting(all.iter().enumerate());
        assert_eq!(found.len(), 2);
        assert_eq!(found[0].places, [0, 2]);
        assert_eq!(found[0].says(), "not judged for 2 checks: ground snow is missing");
        assert_eq!(found[1].says(), "not judged for 1 check: the soil is missing");
        let rows = Waiting { input: Some(Input::LedgerRows), cause: String::new(), places: vec![1, 2] };
        assert!(rows.says().ends_with("the rows of the ledger’s fixings are missing"));
    }

    /// What the user cannot give is one row as well: the cause, then all that hang on it.
    #[test]
    fn one_cause_is_one_row() {
        let check = |member: &str, why: &str| Check::not_judged(member, "bends", why);
        let all = [check("B1", "it moves"), check("P1", "too thin"), check("B2", "it moves")];
        let found = waiting(all.iter().enumerate());
        assert_eq!(found.len(), 1);
        assert_eq!((found[0].input, found[0].places.as_slice()), (None, [0, 2].as_slice()));
        assert_eq!(found[0].says(), "not judged for 2 checks: it moves");
    }

    /// An anchor whose maker's sheet is not named is chosen all the same; so is a tie whose pull is not given.
    #[test]
    fn a_datum_is_not_read_out_of_words() {
        let shape = &evaluate(&demo::wool_barn()).built.unwrap().shape;
        let told = |change: Change| {
            let mut project = demo::wool_barn();
            change(&mut project);
            let found = strength(&project, shape);
            waiting(found.checks.iter().enumerate()).iter().filter_map(|group| group.input).collect::<Vec<_>>()
        };
        assert_eq!(told(|p| p.fixings.post_base.source.clear()), [Input::PostBaseValues]);
        assert_eq!(told(|p| p.fixings.rafter_seat.pull = Force::ZERO), [Input::RafterSeatValues]);
    }

    /// Without braces nothing holds the line along the wall: the stick is named by its mark, and stands before what hangs on it.
    #[test]
    fn the_cause_stands_first() {
        let mut project = demo::wool_barn();
        for post in &mut project.frame.posts {
            (post.brace_left, post.brace_right) = (false, false);
        }
        let found = strength(&project, &evaluate(&project).built.unwrap().shape);
        let open = || found.checks.iter().filter(|check| check.ratio().is_none());
        let says = open().next().unwrap().says(project.units);
        let begins = "the frame is loaded: not judged: the beam line, in which no post has a brace, has no answer";
        assert!(says.starts_with(begins), "{says}");
        assert!(says.contains(": B1 from 0″ can move"), "{says}");
        let groups = waiting(found.checks.iter().enumerate());
        assert!(groups.iter().any(|group| group.input.is_none() && group.places.len() > 20), "{groups:?}");
    }

    /// A wood no table holds: its own reason, not that forces are missing.
    #[test]
    fn a_missing_wood_is_the_reason_at_the_foot() {
        let mut project = demo::wool_barn();
        let shape = &evaluate(&project).built.unwrap().shape;
        project.frame.species = "balsa".to_owned();
        let found = strength(&project, shape);
        let foot = found.checks.iter().find(|check| check.name == "stands on its pier").unwrap().says(project.units);
        let posts = found.checks.iter().find(|check| check.member == "posts").unwrap().says(project.units);
        assert_eq!(foot.split(": ").nth(2), posts.split(": ").nth(2), "{foot} / {posts}");
    }

    /// What nothing asks while a load is not known is not known either; what hangs on sizes alone holds.
    #[test]
    fn only_what_hangs_on_loads_is_withheld() {
        let mut project = demo::wool_barn();
        let shape = &evaluate(&project).built.unwrap().shape;
        project.place.wind_speed = None;
        let found = strength(&project, shape);
        let of = |name: &str| found.checks.iter().find(|check| check.name == name).unwrap();
        assert!(of("reach past the piers").passes() && of("lie below the frost").passes());
        assert_eq!(of("holds the post down").missing(), Some(Input::WindSpeed));
    }
}

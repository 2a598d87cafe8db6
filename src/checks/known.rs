//! What must be known before a check can be made.
use super::wood::{Woods, is_timber, lumber_gravity};
use crate::analysis::RoofLoads;
use crate::fastening::{Fastener, Moisture, Soil, Wetness, fastener, soil};
use crate::loads::Duration;
use crate::materials::{Timber, species};
use crate::project::{Project, Used};
use crate::unmade::{Input, Unmade};

/// Every load of the roof was worked out.
///
/// # Errors
/// The first sentence that says what is missing.
pub(super) fn known_loads(loads: &RoofLoads) -> Result<(), Unmade> {
    loads.not_judged.first().map_or(Ok(()), |why| Err(why.clone()))
}

/// Specific gravity of a wood, for fasteners in a stick of that size, or in a post or stud of the wall where none is given;
/// `whose` names it in the sentence.
pub(super) fn gravity(key: &str, size: Option<&Timber>, whose: &str) -> Result<f64, String> {
    if key.is_empty() {
        return Err(format!("the wood of {whose} is missing: choose its species"));
    }
    let found = species(key).ok_or_else(|| format!("no specific gravity is known for the wood “{key}” of {whose}"))?;
    Ok(if size.is_some_and(is_timber) { found.specific_gravity } else { lumber_gravity(found) })
}

/// The fastener of that key; `what` names it in the sentence.
pub(super) fn chosen(key: &str, what: &str, input: Input) -> Result<&'static Fastener, Unmade> {
    if key.is_empty() {
        return Err(Unmade::missing(input, format!("the {what} is missing: none is chosen yet")));
    }
    Ok(fastener(key)?)
}

/// The soil under the footings.
pub(super) fn known_soil(project: &Project) -> Result<&'static Soil, Unmade> {
    let key = &project.ground.soil;
    if key.is_empty() {
        let says = "the soil is missing: ask the building department what it may carry there";
        return Err(Unmade::missing(Input::Soil, says));
    }
    Ok(soil(key)?)
}

/// Moisture of a kind of stick as its fasteners see it: cut green unless it is declared dry; wet in use as its own values
/// are taken.
pub(super) fn moisture(project: &Project, used: Used) -> Result<Moisture, String> {
    let is_wet = Woods::new(project).member(used, Duration::TenYears)?.conditions.wet_service;
    let wetness = |wet: bool| if wet { Wetness::Wet } else { Wetness::Dry };
    Ok(Moisture { when_made: wetness(!project.wood.is_dry), in_use: wetness(is_wet) })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::members::Grade;
    use crate::project::demo;

    #[test]
    fn what_is_missing_is_named() {
        assert!(gravity("", None, "the wall").is_err_and(|why| why.contains("the wood of the wall is missing")));
        assert!(gravity("balsa", None, "the wall").is_err_and(|why| why.contains("“balsa”")));
        assert_eq!(gravity("eastern_hemlock", None, "the wall"), Ok(0.41));
        assert!(chosen("", "screw of the ledger", Input::LedgerFixing).is_err_and(|why| {
            why.missing == Some(Input::LedgerFixing) && why.says.contains("screw of the ledger is missing")
        }));
    }

    /// Eastern spruces 2 to 4 in thick are graded as Spruce-Pine-Fir (South): its G of 0.36, not their 0.41 (NDS Table 12.3.3A); and
    /// the working says that the row is another's.
    #[test]
    fn thin_spruce_is_held_as_the_group_it_is_graded_with() {
        let mut barn = demo::wool_barn();
        "white_spruce".clone_into(&mut barn.frame.species);
        let timbers = &barn.frame.timbers;
        assert_eq!(gravity("white_spruce", Some(&timbers.rafter), "the rafters"), Ok(0.36));
        assert_eq!(gravity("white_spruce", Some(&timbers.beam), "the beam"), Ok(0.41));
        let name =
            |used| Woods::new(&barn).member(used, Duration::TenYears).map(|member| member.values.name().to_owned());
        let rafter = name(Used::Rafter).unwrap_or_default();
        assert!(rafter.starts_with("Spruce-Pine-Fir (South), "), "{rafter}");
        assert!(rafter.ends_with("(Eastern Spruce has no row of its own there)"), "{rafter}");
        assert!(name(Used::Beam).is_ok_and(|name| !name.contains("no row")));
    }

    /// Every wood that can be chosen carries the barn at some grade: its timbers and its thin sticks are listed.
    #[test]
    fn every_wood_has_design_values() {
        for wood in crate::materials::species_table() {
            let mut barn = demo::wool_barn();
            barn.frame.species.clone_from(&wood.key);
            (barn.wood.timber_grade, barn.wood.lumber_grade) = (Grade::No1, Grade::No1);
            let woods = Woods::new(&barn);
            for used in [Used::Post, Used::Beam, Used::Rafter, Used::Ledger] {
                let found = woods.member(used, Duration::TenYears);
                assert!(found.is_ok(), "{} {used:?}: {found:?}", wood.key);
            }
        }
    }

    #[test]
    fn thin_sticks_dry_and_thick_ones_stay_wet() {
        let mut barn = demo::wool_barn();
        let found = |project: &Project, used| moisture(project, used).ok();
        let both = |when_made, in_use| Some(Moisture { when_made, in_use });
        assert_eq!(found(&barn, Used::Rafter), both(Wetness::Wet, Wetness::Dry));
        assert_eq!(found(&barn, Used::Beam), both(Wetness::Wet, Wetness::Wet));
        barn.wood.is_dry = true;
        assert_eq!(found(&barn, Used::Beam), both(Wetness::Dry, Wetness::Dry));
    }
}

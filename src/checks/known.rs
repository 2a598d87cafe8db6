//! What must be known before a check can be made.
use super::wood::Woods;
use crate::analysis::RoofLoads;
use crate::fastening::{Fastener, Moisture, Wetness, fastener};
use crate::loads::Duration;
use crate::materials::species;
use crate::project::{Project, Used};
use crate::unmade::{Input, Unmade};

/// Every load of the roof was worked out.
///
/// # Errors
/// The first sentence that says what is missing.
pub(super) fn known_loads(loads: &RoofLoads) -> Result<(), Unmade> {
    loads.not_judged.first().map_or(Ok(()), |why| Err(why.clone()))
}

/// Specific gravity of a wood, for fasteners; `whose` names it in the sentence.
pub(super) fn gravity(key: &str, whose: &str) -> Result<f64, String> {
    if key.is_empty() {
        return Err(format!("the wood of {whose} is missing: choose its species"));
    }
    let found = species(key).ok_or_else(|| format!("no specific gravity is known for the wood “{key}” of {whose}"))?;
    Ok(found.specific_gravity)
}

/// The fastener of that key; `what` names it in the sentence.
pub(super) fn chosen(key: &str, what: &str, input: Input) -> Result<&'static Fastener, Unmade> {
    if key.is_empty() {
        return Err(Unmade::missing(input, format!("the {what} is missing: none is chosen yet")));
    }
    Ok(fastener(key)?)
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
    use crate::project::demo;

    #[test]
    fn what_is_missing_is_named() {
        assert!(gravity("", "the wall").is_err_and(|why| why.contains("the wood of the wall is missing")));
        assert!(gravity("balsa", "the wall").is_err_and(|why| why.contains("“balsa”")));
        assert_eq!(gravity("eastern_hemlock", "the wall"), Ok(0.41));
        assert!(chosen("", "screw of the ledger", Input::LedgerFixing).is_err_and(|why| {
            why.missing == Some(Input::LedgerFixing) && why.says.contains("screw of the ledger is missing")
        }));
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

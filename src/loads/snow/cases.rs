//! The snow cases of the lean-to, each a load on plan.
use super::super::{LeanTo, Place, Refused, Spread};
use super::balanced::{balanced_snow, flat_snow, minimum_snow, rain_on_snow};
use super::drift::{DriftKind, drifts};
use super::sliding::sliding_snow;
use crate::units::{AreaLoad, Length};
use crate::working::Step;

/// Which case.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SnowKind {
    /// Even snow; the only one that partial loads are taken of.
    Balanced,
    /// The least load of a low slope.
    Minimum,
    /// Even snow with rain on it.
    RainOnSnow,
    /// Even snow and a drift off the roof above.
    LeewardDrift,
    /// Even snow and a drift blown along the lean-to.
    WindwardDrift,
    /// Even snow and what slides off the roof above.
    Sliding,
}

impl SnowKind {
    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Balanced => "balanced snow",
            Self::Minimum => "least snow of a low slope",
            Self::RainOnSnow => "balanced snow with rain on it",
            Self::LeewardDrift => "balanced snow + drift off the upper roof",
            Self::WindwardDrift => "balanced snow + drift along the lean-to",
            Self::Sliding => "balanced snow + snow slid off the upper roof",
        }
    }
}

/// One case.
#[derive(Clone, Debug, PartialEq)]
pub struct SnowCase {
    /// Which.
    pub kind: SnowKind,
    /// Load on plan against the distance from the wall.
    pub spread: Spread,
    /// How it came about.
    pub steps: Vec<Step>,
}

/// All snow on the lean-to.
#[derive(Clone, Debug, PartialEq)]
pub struct Snow {
    /// p_f of the lean-to.
    pub flat: AreaLoad,
    /// p_s of the lean-to.
    pub balanced: AreaLoad,
    /// The cases, the balanced one first; they never act together. Its steps end with why a drift or slid snow is not there.
    pub cases: Vec<SnowCase>,
    /// What could not be worked out.
    pub not_judged: Vec<Refused>,
}

/// Every snow case of the lean-to.
///
/// # Errors
/// When the balanced snow itself cannot be worked out; what else is missing stands in [`Snow::not_judged`].
pub fn snow_cases(place: &Place, lean_to: &LeanTo) -> Result<Snow, Refused> {
    let balanced = balanced_snow(place, lean_to)?;
    let roof = lean_to.roof_length();
    let even = |load: AreaLoad| Spread::uniform(Length::ZERO, roof.length(), load);
    let base = even(balanced.value);
    let with = |steps: Vec<Step>| [balanced.steps.clone(), steps].concat();
    let mut cases = vec![SnowCase { kind: SnowKind::Balanced, spread: base.clone(), steps: balanced.steps.clone() }];
    let mut not_judged = Vec::new();
    let mut absent = Vec::new();
    if let Some(least) = minimum_snow(place, lean_to.slope)? {
        cases.push(SnowCase { kind: SnowKind::Minimum, spread: even(least.value), steps: least.steps });
    }
    if let Some(rain) = rain_on_snow(place, lean_to.slope, roof)? {
        let spread = base.plus(&even(rain.value));
        cases.push(SnowCase { kind: SnowKind::RainOnSnow, spread, steps: with(rain.steps) });
    }
    match drifts(place, lean_to) {
        Ok(found) if found.value.is_empty() => absent.extend(found.steps),
        Ok(found) => cases.extend(found.value.iter().map(|drift| {
            let kind = match drift.kind {
                DriftKind::Leeward => SnowKind::LeewardDrift,
                DriftKind::Windward => SnowKind::WindwardDrift,
            };
            SnowCase { kind, spread: base.plus(&drift.spread(roof)), steps: with(found.steps.clone()) }
        })),
        Err(refused) => not_judged.push(refused),
    }
    match sliding_snow(place, lean_to) {
        Ok(found) if found.value.is_none() => absent.extend(found.steps),
        Ok(found) => cases.extend(found.value.map(|slid| SnowCase {
            kind: SnowKind::Sliding,
            spread: base.plus(&slid.spread()),
            steps: with(found.steps),
        })),
        Err(refused) => not_judged.push(refused),
    }
    cases[0].steps.extend(absent);
    let flat = flat_snow(place, place.snow_exposure, lean_to.thermal)?.value;
    Ok(Snow { flat, balanced: balanced.value, cases, not_judged })
}

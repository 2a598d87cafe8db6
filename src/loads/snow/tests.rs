//! Both sides of every branch, by hand figures from the formulas; published examples stand in `tests/load_examples.rs`.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use super::super::sample::{check, feet, lean_to, place};
use super::super::{Edition, LeanTo, Place, Refused, RiskCategory, SnowExposure, Thermal};
use super::*;
use crate::units::{AreaLoad, Length, Slope};
use crate::working::Confidence;

const EARLY: Edition = Edition::Asce7_16;
const LATE: Edition = Edition::Asce7_22;

/// The warm sample roof stays within the free 5° of a slippery roof, so that p_s = p_f.
fn flat_roof() -> LeanTo {
    LeanTo { slope: Slope::in_twelve(1.0), ..lean_to() }
}

fn only(place: &Place, lean_to: &LeanTo) -> Drift {
    let found = drifts(place, lean_to).unwrap().value;
    assert_eq!(found.len(), 1, "{found:?}");
    found[0]
}

#[test]
fn missing_snow_is_said_and_not_guessed() {
    let place = Place { ground_snow: None, ..place(EARLY, 0.0) };
    let refused = snow_cases(&place, &lean_to()).unwrap_err();
    assert!(refused.to_string().starts_with("not judged: ground snow by ASCE 7-16 is missing"), "{refused}");
    assert!(minimum_snow(&place, Slope::LEVEL).is_err());
    assert!(rain_on_snow(&place, Slope::LEVEL, feet(20.0)).is_err());
    assert!(drift_height(&place, feet(20.0)).is_err());
    let below = Place { ground_snow: Some(AreaLoad::psf(-1.0)), ..place };
    assert!(balanced_snow(&below, &lean_to()).unwrap_err().to_string().contains("below zero"));
}

#[test]
fn flat_and_sloped() {
    let cold = LeanTo { thermal: Thermal::OpenAir, slope: Slope::in_twelve(4.0), ..lean_to() };
    let place = Place { risk: RiskCategory::III, snow_exposure: SnowExposure::Sheltered, ..place(EARLY, 30.0) };
    let flat = flat_snow(&place, place.snow_exposure, cold.thermal).unwrap();
    check(flat.value.to_psf(), 0.7 * 1.2 * 1.2 * 1.1 * 30.0);
    assert_eq!(flat.steps[3].says, "p_f = 0.7·C_e·C_t·I_s·p_g = 0.7·1.2·1.20·1.10·30.0 = 33.3 psf");
    let factor = 1.0 - (Slope::in_twelve(4.0).to_degrees() - 15.0) / 55.0;
    check(balanced_snow(&place, &cold).unwrap().value.to_psf(), flat.value.to_psf() * factor);
    // A gutter lip holds the snow: the other line, free to 45°.
    let held = LeanTo { eave_clear: false, ..cold };
    check(balanced_snow(&place, &held).unwrap().value.to_psf(), flat.value.to_psf());
    let later = Place { edition: LATE, ..place };
    check(flat_snow(&later, later.snow_exposure, cold.thermal).unwrap().value.to_psf(), 0.7 * 1.2 * 1.2 * 30.0);
}

#[test]
fn least_snow() {
    let least = |edition, risk, psf| {
        let place = Place { risk, ..place(edition, psf) };
        minimum_snow(&place, Slope::degrees(14.9)).unwrap().unwrap().value.to_psf()
    };
    check(least(EARLY, RiskCategory::I, 15.0), 12.0);
    check(least(EARLY, RiskCategory::IV, 50.0), 24.0);
    check(least(EARLY, RiskCategory::II, 20.0), 20.0);
    check(least(LATE, RiskCategory::II, 29.0), 29.0);
    for (risk, most) in
        [(RiskCategory::I, 25.0), (RiskCategory::II, 30.0), (RiskCategory::III, 35.0), (RiskCategory::IV, 40.0)]
    {
        check(least(LATE, risk, 100.0), most);
    }
    assert_eq!(minimum_snow(&place(EARLY, 30.0), Slope::degrees(15.1)).unwrap(), None);
}

#[test]
fn rain() {
    let rain = |edition, psf, degrees| {
        let found = rain_on_snow(&place(edition, psf), Slope::degrees(degrees), feet(20.0)).unwrap();
        found.map(|worked| worked.value.to_psf())
    };
    // W/50 = 0.4.
    assert_eq!(rain(EARLY, 20.0, 0.39), Some(5.0));
    assert_eq!(rain(EARLY, 20.0, 0.41), None);
    assert_eq!(rain(EARLY, 20.1, 0.0), None);
    assert_eq!(rain(EARLY, 0.0, 0.0), None);
    assert_eq!(rain(LATE, 30.0, 0.0), Some(8.0));
    assert_eq!(rain(LATE, 30.1, 0.0), None);
    let level = LeanTo { slope: Slope::LEVEL, ..lean_to() };
    let snow = snow_cases(&place(EARLY, 10.0), &level).unwrap();
    let wet = snow.cases.iter().find(|case| case.kind == SnowKind::RainOnSnow).unwrap();
    check(wet.spread.at(Length::feet(3.0)).to_psf(), 7.0 + 5.0);
}

#[test]
fn drift_height_and_its_importance() {
    let expected = |is: f64, fetch: f64| 0.43 * is.sqrt() * fetch.cbrt() * 35.0_f64.powf(0.25) - 1.5;
    let height = |risk, fetch| drift_height(&Place { risk, ..place(EARLY, 25.0) }, feet(fetch)).unwrap();
    check(height(RiskCategory::II, 40.0).value.to_feet(), expected(1.0, 40.0));
    check(height(RiskCategory::II, 12.0).value.to_feet(), expected(1.0, 20.0));
    check(height(RiskCategory::IV, 40.0).value.to_feet(), expected(1.2, 40.0));
    assert_eq!(height(RiskCategory::IV, 40.0).confidence(), Confidence::Low);
    assert_eq!(height(RiskCategory::II, 40.0).confidence(), Confidence::Medium);
    // Below 1.5 ft of the first term nothing is left.
    let thin = drift_height(&place(EARLY, 0.0), feet(20.0)).unwrap().value.to_feet();
    check(thin, (0.43 * 20.0_f64.cbrt() * 10.0_f64.powf(0.25) - 1.5_f64).max(0.0));
}

#[test]
fn winter_wind_is_asked_for() {
    let height = |wind| drift_height(&Place { winter_wind: wind, ..place(LATE, 60.0) }, feet(40.0));
    assert!(height(None).unwrap_err().to_string().contains("W2 is missing"));
    assert!(height(Some(0.0)).is_err());
    assert!(height(Some(1.1)).is_err());
    assert!(height(Some(0.45)).is_ok());
    // The other cases still stand.
    let snow = snow_cases(&Place { winter_wind: None, ..place(LATE, 60.0) }, &lean_to()).unwrap();
    assert_eq!(snow.not_judged.len(), 1);
    assert!(snow.cases.iter().any(|case| case.kind == SnowKind::Sliding));
}

#[test]
fn a_drift_that_has_room() {
    let drift = only(&place(EARLY, 25.0), &flat_roof());
    assert_eq!(drift.kind, DriftKind::Leeward);
    check(drift.width.length().to_feet(), 4.0 * drift.height.to_feet());
    check(drift.peak.to_psf(), 17.25 * drift.height.to_feet());
}

#[test]
fn a_drift_under_a_low_eave() {
    let low = LeanTo { step: Length::feet(2.5), ..flat_roof() };
    let drift = only(&place(EARLY, 25.0), &low);
    let room = 2.5 - 17.5 / 17.25;
    let free = 0.43 * 40.0_f64.cbrt() * 35.0_f64.powf(0.25) - 1.5;
    check(drift.height.to_feet(), room);
    check(drift.width.length().to_feet(), 4.0 * free * free / room);
    // Never more than the eave's height of snow.
    check(drift.peak.to_psf() + 17.5, 17.25 * 2.5);
    // Lower still: w would pass 8·h_c.
    let lower = LeanTo { step: Length::feet(1.3), ..flat_roof() };
    let drift = only(&place(EARLY, 25.0), &lower);
    check(drift.width.length().to_feet(), 8.0 * (1.3 - 17.5 / 17.25));
}

#[test]
fn no_drift_without_room_or_snow() {
    let depth = 17.5 / 17.25;
    let with_step = |step| LeanTo { step: Length::feet(step), ..flat_roof() };
    let count = |psf, lean_to: &LeanTo| drifts(&place(EARLY, psf), lean_to).unwrap().value.len();
    assert_eq!(count(25.0, &with_step(1.19 * depth)), 0);
    assert_eq!(count(25.0, &with_step(1.21 * depth)), 1);
    assert_eq!(count(25.0, &with_step(0.0)), 0);
    assert_eq!(count(0.0, &with_step(4.0)), 0);
}

#[test]
fn windward_governs_under_a_small_house() {
    let mut wide = LeanTo { reach: feet(79.0), ..flat_roof() };
    wide.upper.upwind_length = Some(feet(20.0));
    let drift = only(&place(EARLY, 25.0), &wide);
    assert_eq!(drift.kind, DriftKind::Windward);
    check(drift.height.to_feet(), 0.75 * (0.43 * 80.0_f64.cbrt() * 35.0_f64.powf(0.25) - 1.5));
}

#[test]
fn a_short_roof_limits_the_height() {
    let mut short = LeanTo { reach: feet(2.0), eave_overhang: feet(0.5), ..flat_roof() };
    short.upper.upwind_length = Some(feet(100.0));
    check(only(&place(EARLY, 25.0), &short).height.to_feet(), 0.6 * 2.5);
    // 7-22 does not carry that limit.
    assert!(only(&place(LATE, 63.0), &short).height.to_feet() > 0.6 * 2.5);
}

#[test]
fn the_eave_cuts_the_drift_off() {
    let short = LeanTo { reach: feet(3.0), ..flat_roof() };
    let drift = only(&place(EARLY, 25.0), &short);
    let spread = drift.spread(short.roof_length());
    let (width, peak) = (drift.width.length().to_feet(), drift.peak.to_psf());
    check(spread.at(Length::feet(4.0)).to_psf(), peak * (1.0 - 4.0 / width));
    check(spread.total().to_plf(), 4.0 * peak * (1.0 - 2.0 / width));
}

#[test]
fn across_a_gap() {
    let at = |gap: f64, step: f64| {
        let apart = LeanTo { gap: Some(feet(gap)), step: Length::feet(step), ..flat_roof() };
        drifts(&place(EARLY, 25.0), &apart).unwrap().value
    };
    let free = 0.43 * 40.0_f64.cbrt() * 35.0_f64.powf(0.25) - 1.5;
    // (6·4 − 3)/6 = 3.5 > h_d: full height; 6·h_d = 12.5 < 21: its width.
    let near = at(3.0, 4.0);
    assert_eq!(near[0].kind, DriftKind::Leeward);
    check(near[0].height.to_feet(), free);
    check(near[0].width.length().to_feet(), 6.0 * free);
    // (24 − 15)/6 = 1.5 < h_d, and 24 − 15 = 9 ft wide.
    let far = at(15.0, 4.0);
    check(far[0].height.to_feet(), 1.5);
    check(far[0].width.length().to_feet(), 9.0);
    assert_eq!(far[1].kind, DriftKind::Windward);
    // Beyond 6·h, and from 20 ft on, only the windward one.
    assert_eq!(at(19.0, 3.0).len(), 1);
    assert_eq!(at(20.0, 8.0).len(), 1);
    assert_eq!(at(19.9, 8.0).len(), 2);
    assert_eq!(at(0.0, 4.0).len(), 1);
}

/// Computed by hand: p_f 21, W 20 ft → 0.4·21·20 = 168 lb/ft, 11.2 psf over 15 ft.
#[test]
fn slid_snow() {
    let place = place(EARLY, 30.0);
    let slid = |lean_to: &LeanTo| sliding_snow(&place, lean_to).unwrap().value;
    let on = slid(&lean_to()).unwrap();
    check(on.along_eave.to_plf(), 168.0);
    check(on.load.to_psf(), 11.2);
    check(on.spread().total().to_plf(), 11.2 * 11.0);
    let wide = LeanTo { reach: feet(30.0), ..lean_to() };
    check(slid(&wide).unwrap().spread().total().to_plf(), 168.0);
}

#[test]
fn the_strip_counts_from_the_upper_eave() {
    let place = place(EARLY, 30.0);
    let slid = |lean_to: &LeanTo| sliding_snow(&place, lean_to).unwrap().value;
    let mut under = LeanTo { reach: feet(30.0), ..lean_to() };
    under.upper.overhang = feet(2.0);
    let on = slid(&under).unwrap();
    check(on.from.to_feet(), 2.0);
    check(on.to.to_feet(), 17.0);
    under.upper.overhang = feet(31.0);
    assert_eq!(slid(&under), None);
    let apart = LeanTo { reach: feet(30.0), gap: Some(feet(4.0)), ..lean_to() };
    let on = slid(&apart).unwrap();
    check(on.from.to_feet(), 0.0);
    check(on.to.to_feet(), 11.0);
    assert_eq!(slid(&LeanTo { gap: Some(feet(15.0)), ..lean_to() }), None);
}

#[test]
fn which_roofs_slide() {
    let slides = |change: fn(&mut LeanTo)| {
        let mut roof = lean_to();
        change(&mut roof);
        sliding_snow(&place(EARLY, 30.0), &roof).unwrap().value.is_some()
    };
    assert!(slides(|_| ()));
    assert!(!slides(|roof| roof.upper.snow_guards = true));
    assert!(!slides(|roof| roof.upper.sheds_here = false));
    assert!(!slides(|roof| roof.upper.slope = Slope::in_twelve(2.0)));
    assert!(slides(|roof| roof.upper.slope = Slope::in_twelve(2.01)));
    assert!(slides(|roof| (roof.upper.slope, roof.upper.slippery) = (Slope::in_twelve(0.26), true)));
    assert!(!slides(|roof| (roof.upper.slope, roof.upper.slippery) = (Slope::in_twelve(0.25), true)));
}

/// Held by guards no snow slides, and where it lies as deep as the wall's step is high none drifts: the balanced case says so.
#[test]
fn what_is_absent_is_said() {
    let mut roof = lean_to();
    (roof.upper.snow_guards, roof.step) = (true, Length::feet(0.1));
    let snow = snow_cases(&place(EARLY, 30.0), &roof).unwrap();
    assert!(!snow.cases.iter().any(|case| matches!(case.kind, SnowKind::LeewardDrift | SnowKind::Sliding)));
    let says = |word: &str| snow.cases[0].steps.iter().any(|step| step.says.contains(word));
    assert!(says("no drift") && says("snow guards hold"), "{:?}", snow.cases[0].steps);
}

#[test]
fn cases_stand_apart() {
    let snow = snow_cases(&place(EARLY, 30.0), &lean_to()).unwrap();
    let kinds: Vec<SnowKind> = snow.cases.iter().map(|case| case.kind).collect();
    assert_eq!(kinds, [SnowKind::Balanced, SnowKind::Minimum, SnowKind::LeewardDrift, SnowKind::Sliding]);
    assert_eq!(snow.not_judged, []);
    let at_wall = |kind| {
        let case = snow.cases.iter().find(|case| case.kind == kind).unwrap();
        assert!(!case.steps.is_empty());
        case.spread.at(Length::ZERO).to_psf()
    };
    let drift = only(&place(EARLY, 30.0), &lean_to());
    check(at_wall(SnowKind::LeewardDrift), snow.balanced.to_psf() + drift.peak.to_psf());
    check(at_wall(SnowKind::Sliding), snow.balanced.to_psf() + 11.2);
    check(at_wall(SnowKind::Minimum), 20.0);
}

#[test]
fn a_heated_house_by_the_later_edition_is_asked_for() {
    let mut roof = lean_to();
    roof.upper.thermal = Thermal::Heated;
    let snow = snow_cases(&place(LATE, 60.0), &roof).unwrap();
    assert!(snow.not_judged.iter().any(|refused: &Refused| refused.to_string().contains("state C_t")));
    assert!(snow.cases.iter().all(|case| case.kind != SnowKind::Sliding));
}

#[test]
fn sizes_are_checked() {
    let place = place(EARLY, 30.0);
    let refused = |change: fn(&mut LeanTo)| {
        let mut roof = lean_to();
        change(&mut roof);
        balanced_snow(&place, &roof).is_err()
    };
    assert!(!refused(|_| ()));
    assert!(refused(|roof| roof.reach = feet(0.0)));
    assert!(refused(|roof| roof.eave_overhang = feet(-0.1)));
    assert!(refused(|roof| roof.width = Length::ZERO));
    assert!(refused(|roof| roof.slope = Slope::in_twelve(-1.0)));
    assert!(refused(|roof| roof.step = Length::feet(-0.1)));
    assert!(refused(|roof| roof.gap = Some(feet(-0.1))));
    assert!(refused(|roof| roof.upper.eave_to_ridge = Some(feet(-0.1))));
    assert!(refused(|roof| roof.upper.upwind_length = Some(feet(-0.1))));
    assert!(refused(|roof| roof.upper.overhang = feet(-0.1)));
}

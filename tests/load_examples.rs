//! Loads against worked examples printed elsewhere; each test names its source, and what is computed from the formula
//! is said to be so.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use outshot::loads::snow::{SnowCase, SnowKind, drifts, flat_snow, rain_on_snow, snow_cases};
use outshot::loads::{
    Action, Edition, LeanTo, Place, RiskCategory, SnowExposure, Terrain, Thermal, UpperRoof, WindExposure,
    combinations, roof_live, slope_to_plan,
};
use outshot::units::{Area, AreaLoad, Length, Run, Slope};

fn feet(value: f64) -> Run {
    Run::of(Length::feet(value))
}

/// A site where every snow factor is 1.
fn place(edition: Edition, ground_psf: f64) -> Place {
    Place {
        edition,
        risk: RiskCategory::II,
        ground_snow: Some(AreaLoad::psf(ground_psf)),
        terrain: Terrain::B,
        snow_exposure: SnowExposure::Partial,
        winter_wind: None,
        wind_speed: None,
        wind_exposure: WindExposure::B,
        ground_elevation: Length::ZERO,
        topography: 1.0,
        member_force_coefficient: None,
        seismic: None,
    }
}

/// A level lower roof below a step of 4 ft, fed by 40 ft of upper roof.
fn step_of_four_feet() -> LeanTo {
    LeanTo {
        reach: feet(30.0),
        eave_overhang: feet(0.0),
        slope: Slope::LEVEL,
        width: Length::feet(40.0),
        eave_height: Length::feet(10.0),
        step: Length::feet(4.0),
        slippery: false,
        eave_clear: true,
        gap: None,
        thermal: Thermal::Stated(1.0),
        upper: UpperRoof {
            eave_to_ridge: Some(feet(40.0)),
            upwind_length: Some(feet(40.0)),
            slope: Slope::LEVEL,
            slippery: false,
            snow_guards: false,
            sheds_here: true,
            overhang: Run::ZERO,
            exposure: SnowExposure::Partial,
            thermal: Thermal::Stated(1.0),
        },
    }
}

fn near(found: f64, printed: f64, tolerance: f64) {
    assert!((found - printed).abs() <= tolerance, "{found} is not {printed}");
}

fn leeward(place: &Place) -> SnowCase {
    let snow = snow_cases(place, &step_of_four_feet()).unwrap();
    snow.cases.into_iter().find(|case| case.kind == SnowKind::LeewardDrift).unwrap()
}

/// Open structural-analysis textbook, flat-roof snow example: p_g 30, C_e, C_t, I_s 1.0 → p_f 21 psf, more than
/// 20·I_s = 20; rain on snow not needed.
#[test]
fn flat_roof_snow() {
    let place = place(Edition::Asce7_16, 30.0);
    let flat = flat_snow(&place, SnowExposure::Partial, Thermal::Heated).unwrap();
    near(flat.value.to_psf(), 21.0, 1e-9);
    assert_eq!(flat.steps.last().unwrap().says, "p_f = 0.7·C_e·C_t·I_s·p_g = 0.7·1.0·1.00·1.00·30.0 = 21.0 psf");
    let snow = snow_cases(&place, &step_of_four_feet()).unwrap();
    let least = snow.cases.iter().find(|case| case.kind == SnowKind::Minimum).unwrap();
    near(least.spread.peak().to_psf(), 20.0, 1e-9);
    assert_eq!(rain_on_snow(&place, Slope::LEVEL, feet(100.0)).unwrap(), None);
}

/// Engineering firm's article on roof-step drift, ASCE 7-16: p_g 25, factors 1, l_u 40 ft, step 4 ft → p_f 17.5, γ 17.25,
/// h_d 2.08 ft, p_d 35.8, together 53.3 psf.
#[test]
fn step_drift_by_the_earlier_edition() {
    let place = place(Edition::Asce7_16, 25.0);
    let drift = drifts(&place, &step_of_four_feet()).unwrap();
    near(drift.value[0].height.to_feet(), 2.08, 0.005);
    near(drift.value[0].peak.to_psf(), 35.8, 0.05);
    let case = leeward(&place);
    near(case.spread.peak().to_psf(), 53.3, 0.05);
    // Recomputed from the formulas with more digits.
    near(drift.value[0].height.to_feet(), 2.0769, 5e-5);
    near(case.spread.at(Length::ZERO).to_psf(), 53.33, 0.005);
    near(case.spread.at(Length::feet(20.0)).to_psf(), 17.5, 1e-9);
    assert!(case.steps.iter().any(|step| step.says.contains("17.25 lb/ft³")));
}

/// The same article, ASCE 7-22: p_g 63, W2 0.45, l_u 40 ft, step 4 ft → peak about 89 psf.
#[test]
fn step_drift_by_the_later_edition() {
    let place = Place { winter_wind: Some(0.45), ..place(Edition::Asce7_22, 63.0) };
    let case = leeward(&place);
    near(case.spread.peak().to_psf(), 89.0, 0.5);
    // Recomputed: γ 22.19, p_f 44.1, h_d 2.721 held down to h_c 2.013 → γ·4 ft = 88.76.
    near(case.spread.peak().to_psf(), 88.76, 0.005);
    let drift = drifts(&place, &step_of_four_feet()).unwrap();
    near(drift.value[0].height.to_feet(), 2.013, 5e-4);
    assert!(
        drift.steps.iter().any(|step| step.gives == "leeward: h_d, drift height" && step.says.ends_with("= 2.72 ft"))
    );
}

/// Breyer et al., Design of Wood Structures, 6th ed., ch. 2 problems P2.1: 9.75 psf on 3 in 12 → 10.1 psf on plan; L_r 20.
#[test]
fn dead_load_and_roof_live_on_a_low_slope() {
    let slope = Slope::in_twelve(3.0);
    near(slope_to_plan(AreaLoad::psf(9.75), slope).value.to_psf(), 10.1, 0.05);
    near(slope_to_plan(AreaLoad::psf(9.75), slope).value.to_psf(), 10.05, 0.005);
    let live = roof_live(Edition::Asce7_16, slope, Area::square_feet(100.0)).unwrap();
    near(live.value.to_psf(), 20.0, 1e-9);
}

/// The same, P2.2: 12.8 psf on 6 in 12 → 14.3 psf on plan; R_2 0.9, L_r 18 psf.
#[test]
fn dead_load_and_roof_live_on_a_steeper_slope() {
    let slope = Slope::in_twelve(6.0);
    near(slope_to_plan(AreaLoad::psf(12.8), slope).value.to_psf(), 14.3, 0.05);
    let live = roof_live(Edition::Asce7_16, slope, Area::square_feet(100.0)).unwrap();
    near(live.value.to_psf(), 18.0, 1e-9);
    assert!(live.steps[1].says.ends_with("= 0.900"), "{}", live.steps[1].says);
}

/// C_D of snow 1.15: university course example, NDS 2001; of roof live 1.25: Breyer et al., ch. 6 problems.
#[test]
fn durations_as_printed() {
    let all = combinations(Edition::Asce7_16, &[Action::RoofLive, Action::Snow]);
    let factor = |name: &str| all.iter().find(|found| found.name == name).unwrap().duration.factor();
    near(factor("D + S"), 1.15, 0.0);
    near(factor("D + L_r"), 1.25, 0.0);
}

/// Every step that a case shows says where it comes from, and no value is left without its working.
#[test]
fn every_case_shows_its_working() {
    let place = Place { winter_wind: Some(0.45), ..place(Edition::Asce7_22, 63.0) };
    for case in snow_cases(&place, &step_of_four_feet()).unwrap().cases {
        assert!(!case.steps.is_empty(), "{:?}", case.kind);
        for step in case.steps {
            assert!(!step.says.is_empty() && !step.citation.document.is_empty() && !step.citation.clause.is_empty());
        }
    }
}

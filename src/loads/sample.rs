//! An invented site and lean-to for tests: every factor of snow is 1, so that hand figures stay short.
use super::{Edition, LeanTo, Place, RiskCategory, SnowExposure, Terrain, Thermal, UpperRoof, WindExposure, WindSpeed};
use crate::units::{AreaLoad, Length, Run, Slope};

pub(super) fn feet(value: f64) -> Run {
    Run::of(Length::feet(value))
}

pub(super) fn place(edition: Edition, ground_psf: f64) -> Place {
    Place {
        edition,
        risk: RiskCategory::II,
        ground_snow: Some(AreaLoad::psf(ground_psf)),
        terrain: Terrain::B,
        snow_exposure: SnowExposure::Partial,
        winter_wind: Some(0.45),
        wind_speed: WindSpeed::try_mph(120.0),
        wind_exposure: WindExposure::C,
        ground_elevation: Length::ZERO,
        topography: 1.0,
        member_force_coefficient: Some(1.5),
        seismic: None,
    }
}

/// 10 ft out with 1 ft of eave, 2 in 12, 20 ft wide, under an upper roof of 20 ft to the ridge.
pub(super) fn lean_to() -> LeanTo {
    LeanTo {
        reach: feet(10.0),
        eave_overhang: feet(1.0),
        slope: Slope::in_twelve(2.0),
        width: Length::feet(20.0),
        eave_height: Length::feet(8.0),
        step: Length::feet(4.0),
        slippery: true,
        eave_clear: true,
        gap: None,
        thermal: Thermal::Stated(1.0),
        upper: UpperRoof {
            eave_to_ridge: Some(feet(20.0)),
            upwind_length: Some(feet(40.0)),
            slope: Slope::in_twelve(6.0),
            slippery: false,
            snow_guards: false,
            sheds_here: true,
            overhang: Run::ZERO,
            exposure: SnowExposure::Partial,
            thermal: Thermal::Stated(1.0),
        },
    }
}

pub(super) fn check(found: f64, expected: f64) {
    assert!((found - expected).abs() < 1e-9, "{found} is not {expected}");
}

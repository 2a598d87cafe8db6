//! Both sides of every branch. No published example of an open single-slope roof was found: the figures are checked at
//! their printed angles and halfway between, the pressures by the formula.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use super::super::sample::{check, feet, lean_to, place};
use super::super::{Edition, LeanTo, Place, WindExposure};
use super::*;
use crate::units::{Area, Length, Slope};

const EARLY: Edition = Edition::Asce7_16;
const LATE: Edition = Edition::Asce7_22;

fn net(degrees: f64, flow: Flow, case: LoadCase, from: WindFrom) -> (f64, f64) {
    let found = net_coefficients(&place(EARLY, 0.0), Slope::degrees(degrees), flow, case, from).unwrap().value;
    (found.windward, found.leeward)
}

fn check_net(found: (f64, f64), windward: f64, leeward: f64) {
    check(found.0, windward);
    check(found.1, leeward);
}

#[test]
fn missing_wind_is_said_and_not_guessed() {
    let still = Place { wind_speed: None, ..place(EARLY, 0.0) };
    let refused = wind_cases(&still, &lean_to()).unwrap_err();
    assert!(refused.to_string().starts_with("not judged: wind speed is missing"), "{refused}");
    assert!(cladding_pressures(&still, &lean_to(), Area::ZERO).is_err());
    assert!(wind_along_wall(&still, Length::feet(9.0), &[]).is_err());
    let odd = Place { topography: 0.0, ..place(EARLY, 0.0) };
    assert!(velocity_pressure(&odd, Length::feet(9.0)).unwrap_err().to_string().contains("K_zt"));
}

/// Computed from the formula: V 120 mph, C, 15 ft, sea level: 26.6 psf by 7-16. By 7-22 K_d leaves q and comes back in p.
#[test]
fn velocity_pressure_of_both_editions() {
    let early = velocity_pressure(&place(EARLY, 0.0), Length::feet(15.0)).unwrap().value;
    assert!((early.q.to_psf() - 26.6).abs() < 0.05, "{:?}", early.q);
    check(early.pressure(-2.0).to_psf(), early.q.to_psf() * 0.85 * -2.0);
    let late = velocity_pressure(&place(LATE, 0.0), Length::feet(15.0)).unwrap().value;
    let kz = 2.41 * (15.0_f64 / 2460.0).powf(2.0 / 9.8);
    check(late.q.to_psf(), 0.002_56 * kz * 120.0 * 120.0);
    check(late.pressure(1.0).to_psf(), late.q.to_psf() * 0.85 * 0.85);
    assert!(
        early.says("C_N", -1.9).starts_with("p = q_h·G·C_N = 26.6·0.85·(−1.90) = −4"),
        "{}",
        early.says("C_N", -1.9)
    );
    assert!(late.says("C_N", 1.0).contains("K_d·G·C_N"), "{}", late.says("C_N", 1.0));
}

#[test]
fn the_figure_at_its_angles_and_between() {
    use Flow::{Clear, Obstructed};
    use LoadCase::{A, B};
    use WindFrom::{Eave, House};
    check_net(net(7.5, Clear, A, House), -0.6, -1.0);
    check_net(net(15.0, Obstructed, B, House), -2.1, -0.6);
    check_net(net(22.5, Clear, A, Eave), 1.7, 1.8);
    check_net(net(45.0, Obstructed, B, Eave), 2.1, 0.4);
    check_net(net(11.25, Clear, B, Eave), 1.7, 0.45);
    check_net(net(33.75, Obstructed, A, Eave), 0.65, -0.95);
    // Below 7.5° the level row.
    check_net(net(7.4, Clear, A, House), 1.2, 0.3);
    check_net(net(0.0, Obstructed, B, Eave), -1.1, -0.6);
    let beyond = net_coefficients(&place(EARLY, 0.0), Slope::degrees(45.1), Clear, A, House);
    assert!(beyond.unwrap_err().to_string().contains("45°"));
    assert!(net_coefficients(&place(EARLY, 0.0), Slope::LEVEL, Clear, A, WindFrom::Left).is_err());
}

/// Wind over the high edge gets under the roof and lifts it; over the eave in clear flow it presses down.
#[test]
fn halves_lie_where_the_wind_meets_them() {
    let steeper = LeanTo { slope: Slope::degrees(15.0), ..lean_to() };
    let cases = single_slope_cases(&place(EARLY, 0.0), &steeper).unwrap();
    assert_eq!(cases.len(), 8);
    let q = velocity_pressure(&place(EARLY, 0.0), steeper.mean_roof_height()).unwrap().value;
    let find = |name: &str| cases.iter().find(|case| case.name == name).unwrap();
    let lifting = find("wind from the house, clear flow, case B");
    check(lifting.pressure.at(Length::feet(1.0)).to_psf(), q.pressure(-1.9).to_psf());
    check(lifting.pressure.at(Length::feet(10.0)).to_psf(), 0.0);
    let pressing = find("wind from the eave, clear flow, case B");
    check(pressing.pressure.at(Length::feet(1.0)).to_psf(), q.pressure(0.6).to_psf());
    check(pressing.pressure.at(Length::feet(10.0)).to_psf(), q.pressure(1.8).to_psf());
    check(pressing.pressure.total().to_plf(), 5.5 * (q.pressure(0.6) + q.pressure(1.8)).to_psf());
}

#[test]
fn outside_the_figure_s_heights_it_is_a_placeholder() {
    // h = 8 + 11·(2/12)/2 = 8.92 ft: L = 8 gives more than 1, a width of 36 ft less than 0.25.
    let short = LeanTo { reach: feet(7.0), width: Length::feet(40.0), ..lean_to() };
    let wind = wind_cases(&place(EARLY, 0.0), &short).unwrap();
    assert_eq!((wind.cases.len(), wind.not_judged.len()), (17, 0));
    let says = |case: &WindCase| case.steps.iter().any(|step| step.says.contains("outside 0.25 to 1.0"));
    assert_eq!(wind.cases.iter().filter(|case| says(case)).count(), 16, "all but the overhang rule");
    assert!(!wind_cases(&place(EARLY, 0.0), &lean_to()).unwrap().cases.iter().any(says));
    let whole = wind_cases(&place(EARLY, 0.0), &lean_to()).unwrap();
    assert_eq!(whole.cases.len(), 17);
    assert_eq!(whole.not_judged, []);
    // 16 psf on 11 ft · 2/12 of rise over 20 ft.
    check(whole.least_across.value.to_pounds(), 16.0 * 11.0 / 6.0 * 20.0);
}

#[test]
fn overhang() {
    let place = place(LATE, 0.0);
    let q = velocity_pressure(&place, lean_to().mean_roof_height()).unwrap().value;
    let case = overhang_case(&place, &lean_to()).unwrap();
    check(case.pressure.total().to_plf(), q.pressure(-1.7).to_psf() * 11.0);
}

#[test]
fn along_the_wall_by_distance() {
    let cases = side_cases(&place(EARLY, 0.0), &lean_to()).unwrap();
    assert_eq!(cases.len(), 8);
    let q = velocity_pressure(&place(EARLY, 0.0), lean_to().mean_roof_height()).unwrap().value;
    let find = |name: &str| cases.iter().find(|case| case.name == name).unwrap();
    let left = find("wind along the wall from the left, obstructed flow, case A");
    for (x, coefficient) in [(1.0, -1.2), (10.0, -0.9), (19.0, -0.6)] {
        check(left.pressure.at(Length::feet(x)).to_psf(), q.pressure(coefficient).to_psf());
        let right = find("wind along the wall from the right, obstructed flow, case A");
        check(right.pressure.at(Length::feet(20.0 - x)).to_psf(), q.pressure(coefficient).to_psf());
    }
    let narrow = LeanTo { width: Length::feet(12.0), ..lean_to() };
    let cases = side_cases(&place(EARLY, 0.0), &narrow).unwrap();
    check(cases[0].pressure.at(Length::feet(12.0)).to_psf(), q.pressure(-0.6).to_psf());
    check(cases[0].pressure.at(Length::feet(12.1)).to_psf(), 0.0);
}

#[test]
fn cladding_between_its_angles() {
    let at = |degrees: f64| LeanTo { slope: Slope::degrees(degrees), reach: feet(12.0), ..lean_to() };
    let place = place(EARLY, 0.0);
    let zones = |degrees| cladding_pressures(&place, &at(degrees), Area::ZERO).unwrap().value;
    let q = |degrees| velocity_pressure(&place, at(degrees).mean_roof_height()).unwrap().value;
    let corner = |degrees| zones(degrees)[2];
    check(corner(7.5).up.to_psf(), q(7.5).pressure(-5.1).to_psf());
    check(corner(0.0).up.to_psf(), q(0.0).pressure(-3.6).to_psf());
    check(corner(30.0).up.to_psf(), q(30.0).pressure(-5.0).to_psf());
    check(corner(22.5).down.to_psf(), q(22.5).pressure(4.4).to_psf());
    check(corner(15.0).down.to_psf(), q(15.0).pressure(3.6).to_psf());
    check(corner(11.25).up.to_psf(), q(11.25).pressure(-4.65).to_psf());
    assert_eq!(zones(7.5).iter().map(|zone| zone.zone).collect::<Vec<_>>(), [Zone::Field, Zone::Edge, Zone::Corner]);
    let refused = cladding_pressures(&place, &at(45.1), Area::ZERO).unwrap_err().to_string();
    assert!(refused.contains("45°"), "{refused}");
}

#[test]
fn least_wind_on_cladding_and_the_floor_of_exposure_b() {
    let roof = LeanTo { slope: Slope::degrees(10.0), reach: feet(12.0), ..lean_to() };
    let mild = Place { wind_speed: super::super::WindSpeed::try_mph(60.0), ..place(EARLY, 0.0) };
    let field = cladding_pressures(&mild, &roof, Area::ZERO).unwrap().value[0];
    check(field.down.to_psf(), 16.0);
    check(field.up.to_psf(), -16.0);
    let town = Place { wind_exposure: WindExposure::B, ..place(EARLY, 0.0) };
    let corner =
        cladding_pressures(&town, &LeanTo { slope: Slope::degrees(7.5), ..roof }, Area::ZERO).unwrap().value[2];
    check(corner.down.to_psf(), 0.002_56 * 0.70 * 0.85 * 120.0 * 120.0 * 0.85 * 3.2);
}

#[test]
fn push_on_the_frame() {
    let parts = [
        Projected { name: "post P1".to_owned(), area: Area::square_feet(5.0) },
        Projected { name: "roof edge".to_owned(), area: Area::square_feet(7.0) },
    ];
    let height = Length::feet(9.0);
    let q = velocity_pressure(&place(EARLY, 0.0), height).unwrap().value;
    let found = wind_along_wall(&place(EARLY, 0.0), height, &parts).unwrap().value;
    check(found.total.to_pounds(), q.pressure(1.5).to_psf() * 12.0);
    check(found.forces[0].to_pounds(), q.pressure(1.5).to_psf() * 5.0);
    let weak = Place { member_force_coefficient: Some(0.1), ..place(EARLY, 0.0) };
    check(wind_along_wall(&weak, height, &parts).unwrap().value.total.to_pounds(), 16.0 * 12.0);
    let unknown = Place { member_force_coefficient: None, ..place(EARLY, 0.0) };
    assert!(wind_along_wall(&unknown, height, &parts).unwrap_err().to_string().contains("C_f"));
    let odd = Place { member_force_coefficient: Some(0.0), ..place(EARLY, 0.0) };
    assert!(wind_along_wall(&odd, height, &parts).is_err());
}

/// Larger areas step down to the edge's and then to the field's values; a is 3 ft here.
#[test]
fn larger_components_gather_less() {
    let roof = LeanTo { slope: Slope::degrees(7.5), reach: feet(12.0), ..lean_to() };
    let place = place(EARLY, 0.0);
    let q = velocity_pressure(&place, roof.mean_roof_height()).unwrap().value;
    let corner = |area: f64| cladding_pressures(&place, &roof, Area::square_feet(area)).unwrap().value[2];
    for (area, up) in [(9.0, -5.1), (9.1, -2.6), (36.0, -2.6), (36.1, -1.7)] {
        check(corner(area).up.to_psf(), q.pressure(up).to_psf());
    }
    check(effective_area(Length::feet(12.0), Length::feet(2.0)).to_square_feet(), 48.0);
    check(effective_area(Length::feet(3.0), Length::feet(2.0)).to_square_feet(), 6.0);
}

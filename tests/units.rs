//! Lengths and slopes printed and read back, the forms that are taken and refused, and the conversions.
#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use outshot::units::UnitSystem::{Imperial, Metric};
use outshot::units::{
    Area, AreaLoad, Density, Fineness, Force, Length, LengthFault, LineLoad, MetricStep, Moment, Money, QuantityFault,
    Slope, Speed, Stiffness, Stress, UnitSystem, Volume, Weight, display_step, feet_inches, in_twelve, inches_only,
    metres, millimetres, parse_area_load, parse_count, parse_elevation, parse_force, parse_length,
    parse_length_not_negative, parse_money, parse_number, parse_slope, parse_speed, parse_stiffness, parse_stress,
    parse_weight, show_area_load, show_elevation, show_force, show_length, show_money, show_speed, show_stiffness,
    show_stress, show_weight, slope_degrees, slope_percent,
};
use proptest::prelude::*;

/// Arithmetic noise of one print and one reading, far below the smallest step shown (0.1 mm): 1e-9 in.
const NOISE: Length = Length::inches(1e-9);

/// Reads the text and compares it with the inches expected, to the tolerance (zero: the very same number).
fn check(text: &str, system: UnitSystem, expected: Length, tolerance: Length) {
    let found = parse_length(text, system);
    let is_near = found.as_ref().is_ok_and(|found| found.is_near(expected, tolerance));
    assert!(is_near, "“{text}” gave {found:?}, not {expected:?}");
}

/// Every accepted form and its inches by hand; the same in both systems, for a mark or a dash says the unit.
#[test]
fn marked_forms() {
    let forms: &[(&str, f64)] = &[
        ("7' 4 5/16", 88.3125),
        ("7' 4 5/16\"", 88.3125),
        ("7′ 4 5⁄16″", 88.3125),
        ("7’4 5/16”", 88.3125),
        ("7' 4 5/16''", 88.3125),
        ("7'4-5/16\"", 88.3125),
        ("7-4-5", 88.3125),
        ("7 - 4 - 0", 88.0),
        ("7-0-15", 84.9375),
        ("7ft 4in", 88.0),
        ("7 FT. 4 In.", 88.0),
        ("7 feet 4 inches", 88.0),
        ("1 foot 1 inch", 13.0),
        ("7 ft 4 1/2 in", 88.5),
        ("7'-6\"", 90.0),
        ("7'-6 1/2", 90.5),
        ("7'-6-1/2\"", 90.5),
        ("7' 5/16", 84.3125),
        ("7′ 0 5⁄16″", 84.3125),
        ("7'", 84.0),
        ("7.5'", 90.0),
        ("7,5'", 90.0),
        ("7½'", 90.0),
        ("7' 4.5", 88.5),
        ("88 5/16\"", 88.3125),
        ("4 ⅜\"", 4.375),
        ("½\"", 0.5),
        ("88 1/3\"", 88.0 + 1.0 / 3.0),
        ("3 7/10 in", 3.7),
        ("−7′ 4″", -88.0),
        ("–7' 4\"", -88.0),
        ("- 7-4-5", -88.3125),
        ("\u{a0} 7'\u{202f}4\" \u{2009}", 88.0),
    ];
    for &(text, inches) in forms {
        check(text, Imperial, Length::inches(inches), Length::ZERO);
        check(text, Metric, Length::inches(inches), Length::ZERO);
    }
}

/// Metric forms by the millimetre; 1 in = 25.4 mm. Tolerance: arithmetic noise.
#[test]
fn metric_forms() {
    let forms: &[(&str, f64)] = &[
        ("2243mm", 2243.0),
        ("2243 mm", 2243.0),
        ("2242,5 MM", 2242.5),
        ("2.243 m", 2243.0),
        ("2,243 m", 2243.0),
        ("224.3cm", 2243.0),
        (".5 m", 500.0),
        ("1,234 m", 1234.0),
        ("3 metres", 3000.0),
        ("−25.4 mm", -25.4),
    ];
    for &(text, size) in forms {
        check(text, Metric, Length::inches(size / 25.4), NOISE);
        check(text, Imperial, Length::inches(size / 25.4), NOISE);
    }
}

/// A bare number is inches or millimetres; a comma is a decimal comma.
#[test]
fn bare_numbers() {
    for (text, number) in [("0", 0.0), ("88", 88.0), ("1,5", 1.5), (".5", 0.5), ("1,234", 1.234), ("-12", -12.0)] {
        check(text, Imperial, Length::inches(number), Length::ZERO);
        check(text, Metric, Length::inches(number / 25.4), NOISE);
    }
    for (text, inches) in [("88 5/16", 88.3125), ("5/16", 0.3125), ("½", 0.5), ("3½", 3.5), ("11/2", 5.5)] {
        check(text, Imperial, Length::inches(inches), Length::ZERO);
    }
}

/// Refused forms in both systems; the sentence names what was typed (cut short) and shows a form that is read.
#[test]
fn refused_lengths() {
    use LengthFault::{
        DashedPair, Empty, FeetNotWhole, FractionPastOne, Grouped, InchesPastFoot, SixteenthsPastInch, TooLong,
        Unreadable, ZeroDenominator,
    };
    let refused: &[(&str, LengthFault)] = &[
        ("", Empty),
        (" \u{a0}\t", Empty),
        ("7' 14", InchesPastFoot),
        ("7' 12\"", InchesPastFoot),
        ("7-12-0", InchesPastFoot),
        ("7-4-16", SixteenthsPastInch),
        ("7.5' 4\"", FeetNotWhole),
        ("7½' 4\"", FeetNotWhole),
        ("7-4", DashedPair),
        ("7-6 1/2", DashedPair),
        ("5/0", ZeroDenominator),
        ("4 5/0\"", ZeroDenominator),
        ("4 16/16\"", FractionPastOne),
        ("7' 4 5/4", FractionPastOne),
        ("1.234,5", Grouped),
        ("1,234.5", Grouped),
        ("1,234,567 mm", Grouped),
        ("10001 ft", TooLong),
        ("3049 m", TooLong),
        ("-10001'", TooLong),
        ("NaN", Unreadable),
        ("inf", Unreadable),
        ("1e5", Unreadable),
        ("abc", Unreadable),
        ("7 4", Unreadable),
        ("7 4 5/16", Unreadable),
        ("7\" 4'", Unreadable),
        ("7' 4\" 5", Unreadable),
        ("7'' 4''", Unreadable),
        ("7' -", Unreadable),
        ("--7", Unreadable),
        ("-", Unreadable),
        ("1/2/3", Unreadable),
        ("1.5/2", Unreadable),
        ("4.5 1/2", Unreadable),
        ("½ m", Unreadable),
        ("7.5-4-5", Unreadable),
        ("5.", Unreadable),
        ("12 yards of timber and then some", Unreadable),
    ];
    for system in [Imperial, Metric] {
        for &(text, fault) in refused {
            let error = parse_length(text, system).unwrap_err();
            assert_eq!(error.fault(), fault, "“{text}”");
            let sentence = error.to_string();
            let shown: String = text.trim().chars().take(24).collect();
            assert!(sentence.contains(&shown), "{sentence}");
            let form = sentence.rsplit_once("like ").unwrap().1.trim_end_matches('.');
            assert!(parse_length(form, system).is_ok(), "{sentence}");
        }
    }
    assert_eq!(parse_length("5/16", Metric).unwrap_err().fault(), LengthFault::FractionWithoutMark);
    assert_eq!(parse_length(&"9".repeat(199), Imperial).unwrap_err().fault(), TooLong);
    assert_eq!(parse_length_not_negative("-1/64\"", Imperial).unwrap_err().fault(), LengthFault::Negative);
    assert_eq!(
        parse_length("7' 14", Imperial).unwrap_err().to_string(),
        "“7' 14” has 12 inches or more after the feet: write it like 7' 4 5/16\"."
    );
}

/// Every other reader says in its refusal a form that it reads.
#[test]
fn refusals_show_a_form_that_works() {
    fn form(sentence: &str) -> &str {
        sentence.rsplit_once("like ").unwrap().1.trim_end_matches('.')
    }
    for system in [Imperial, Metric] {
        for text in ["", "?", "-1", "1.2.3"] {
            let weight = parse_weight(text, system).unwrap_err().to_string();
            assert!(parse_weight(form(&weight), system).is_ok(), "{weight}");
            let load = parse_area_load(text, system).unwrap_err().to_string();
            assert!(parse_area_load(form(&load), system).is_ok(), "{load}");
            let slope = parse_slope(text, system).unwrap_err().to_string();
            assert!(parse_slope(form(&slope), system).is_ok(), "{slope}");
        }
    }
    assert!(parse_money(form(&parse_money("x").unwrap_err().to_string())).is_ok());
    assert!(parse_number(form(&parse_number("x").unwrap_err().to_string())).is_ok());
    assert_eq!(
        parse_count("9", 3).unwrap_err().to_string(),
        "“9” is more than is taken here: write it like 3, at most 3."
    );
    assert_eq!(parse_count("1.5", 3).unwrap_err().fault(), QuantityFault::NotWhole);
}

/// Conversions multiplied out by hand from 25.4 mm, 0.45359237 kg (1959 agreement) and 9.80665 m/s² (ISO 80000-3),
/// given to ten digits: relative tolerance 1e-9.
#[test]
fn conversions() {
    let table = [
        ("100 in in mm", Length::inches(100.0).to_millimetres(), 2540.0),
        ("10 ft in m", Length::feet(10.0).to_metres(), 3.048),
        ("1 m in ft", Length::metres(1.0).to_feet(), 3.280_839_895),
        ("1 ft² in m²", Area::square_feet(1.0).to_square_metres(), 0.092_903_04),
        ("1 ft³ in m³", Volume::cubic_feet(1.0).to_cubic_metres(), 0.028_316_846_592),
        ("1000 bf in m³", Volume::board_feet(1000.0).to_cubic_metres(), 2.359_737_216),
        ("1 kg in lb", Weight::kilograms(1.0).to_pounds(), 2.204_622_621_8),
        ("1 lb in N", Force::pounds(1.0).to_newtons(), 4.448_221_615_3),
        ("1 kN in lb", Force::kilonewtons(1.0).to_pounds(), 224.808_943_1),
        ("1 MPa in psi", Stress::megapascals(1.0).to_psi(), 145.037_737_7),
        ("1 kN·m in lb·ft", Moment::kilonewton_metres(1.0).to_pound_feet(), 737.562_149_3),
        ("1 kN/m in plf", LineLoad::kilonewtons_per_metre(1.0).to_plf(), 68.521_765_86),
        ("1 kPa in psf", AreaLoad::kilopascals(1.0).to_psf(), 20.885_434_23),
        ("1 lb/ft³ in kg/m³", Density::pounds_per_cubic_foot(1.0).to_kilograms_per_cubic_metre(), 16.018_463_37),
    ];
    for (what, found, expected) in table {
        assert!((found / expected - 1.0).abs() < 1e-9, "{what}: {found}, not {expected}");
    }
}

fn any_system() -> impl Strategy<Value = UnitSystem> {
    prop_oneof![Just(Imperial), Just(Metric)]
}

/// Pieces that a length is typed with, in any order.
fn length_like() -> impl Strategy<Value = String> {
    let piece = prop_oneof![
        (0_u32..3000).prop_map(|number| number.to_string()),
        prop::sample::select(vec![
            "'", "\"", "′", "″", "’", "”", "''", "/", "⁄", "-", "−", "–", " ", "\u{a0}", ".", ",", "½", "⅜", "0", "ft",
            "in", "mm", "cm", "m", "ft.", "in 12", ":", "°", "%", "deg", "lb", "kg", "psf", "$", "e", "∞", "²",
        ])
        .prop_map(str::to_owned),
    ];
    prop::collection::vec(piece, 0..9).prop_map(|pieces| pieces.concat())
}

/// Reads the text in every way; whatever is taken is finite and inside its range.
fn read_every_way(text: &str, system: UnitSystem) {
    match parse_length(text, system) {
        Ok(length) => assert!(length.abs() <= Length::feet(10_000.0)),
        Err(error) => assert!(error.to_string().ends_with('.')),
    }
    assert!(!parse_length_not_negative(text, system).is_ok_and(Length::is_negative));
    assert!(!parse_slope(text, system).is_ok_and(|slope| slope.tan() < 0.0));
    assert!(!parse_weight(text, system).is_ok_and(Weight::is_negative));
    assert!(!parse_area_load(text, system).is_ok_and(AreaLoad::is_negative));
    assert!(!parse_count(text, 40).is_ok_and(|count| count > 40));
    assert!(!parse_number(text).is_ok_and(|number| !number.is_finite()));
    assert!(!parse_money(text).is_ok_and(|money| money.to_cents().abs() > 99_999_999_999_999));
}

proptest! {
    #[test]
    fn no_text_stops_the_readers(text in ".*", system in any_system()) {
        read_every_way(&text, system);
    }

    #[test]
    fn no_length_like_text_stops_the_readers(text in length_like(), system in any_system()) {
        read_every_way(&text, system);
    }

    /// Every n/64 in comes back to the bit, from feet and inches and from inches alone, in either system.
    #[test]
    fn sixty_fourths_are_exact(count in -7_680_000_i32..=7_680_000, system in any_system()) {
        let length = Length::inches(f64::from(count) / 64.0);
        check(&feet_inches(length, Fineness::SixtyFourth).to_string(), system, length, Length::ZERO);
        check(&inches_only(length, Fineness::SixtyFourth).to_string(), system, length, Length::ZERO);
        check(&format!("{}", length.to_inches()), Imperial, length, Length::ZERO);
    }

    /// A printed length is within half a step of the true one, at every fineness, in either system.
    #[test]
    fn prints_within_half_a_step(inches in -100_000.0..100_000.0, read_in in any_system()) {
        let length = Length::inches(inches);
        for fineness in Fineness::ALL {
            for step in MetricStep::ALL {
                for shown_in in [Imperial, Metric] {
                    let half = display_step(shown_in, fineness, step) / 2.0 + NOISE;
                    check(&show_length(length, shown_in, fineness, step), read_in, length, half);
                }
            }
            check(&inches_only(length, fineness).to_string(), read_in, length, fineness.step() / 2.0 + NOISE);
        }
        check(&metres(length).to_string(), read_in, length, MetricStep::Whole.step() / 2.0 + NOISE);
    }

    /// What one system prints and what the other prints are the same length to half a step of each.
    #[test]
    fn the_two_systems_agree(inches in -100_000.0..100_000.0) {
        let length = Length::inches(inches);
        for fineness in Fineness::ALL {
            for step in MetricStep::ALL {
                let metric = parse_length(&millimetres(length, step).to_string(), Metric).unwrap();
                let half_steps = (fineness.step() + step.step()) / 2.0 + NOISE;
                check(&feet_inches(length, fineness).to_string(), Imperial, metric, half_steps);
            }
        }
    }

    /// The parts of a printed length are carried and reduced.
    #[test]
    fn parts_are_normal(inches in -100_000.0..100_000.0) {
        for fineness in Fineness::ALL {
            let shown = feet_inches(Length::inches(inches), fineness);
            prop_assert!(shown.inches < 12);
            prop_assert!(shown.numerator < shown.denominator);
            prop_assert!(shown.numerator % 2 == 1 || (shown.numerator, shown.denominator) == (0, 1));
        }
    }

    /// Slopes come back within half of the last digit shown: 0.005 in 12, 0.05°, 0.05 %.
    #[test]
    fn slopes_within_half_a_step(rise in 0.0..40.0, system in any_system()) {
        let slope = Slope::in_twelve(rise);
        let read = |text: String| parse_slope(&text, system).unwrap();
        let in_twelve_back = read(in_twelve(slope).to_string()).to_in_twelve();
        prop_assert!((in_twelve_back - rise).abs() < 0.005 + 1e-9);
        prop_assert!((read(slope_degrees(slope).to_string()).to_degrees() - slope.to_degrees()).abs() < 0.05 + 1e-9);
        prop_assert!((read(slope_percent(slope).to_string()).to_percent() - slope.to_percent()).abs() < 0.05 + 1e-9);
    }

    /// Sixteenths of rise are shown as fractions and come back to a hair.
    #[test]
    fn sixteenths_of_rise(count in 0_u32..640) {
        let slope = Slope::in_twelve(f64::from(count) / 16.0);
        prop_assert_eq!(parse_slope(&in_twelve(slope).to_string(), Metric).unwrap(), slope);
    }

    /// sin² + cos² = 1 from the square roots, and the length along the slope agrees with the right triangle.
    #[test]
    fn slope_sides(rise in 0.0..40.0, run in 1.0..400.0) {
        let slope = Slope::in_twelve(rise);
        prop_assert!((slope.sin().powi(2) + slope.cos().powi(2) - 1.0).abs() < 1e-14);
        let run = outshot::units::Run::of(Length::inches(run));
        let triangle = run.length().hypot(run.rise(slope));
        prop_assert!(run.along(slope).length().is_near(triangle, NOISE));
        prop_assert!(run.along(slope).level(slope).length().is_near(run.length(), NOISE));
    }

    /// Weights, loads and money come back within half of the last digit shown; cents below a thousand to the cent.
    #[test]
    fn amounts_within_half_a_step(pounds in 0.0..50_000.0, load in 0.0..300.0, cents in -100_000_000_i64..100_000_000) {
        for system in [Imperial, Metric] {
            let weight = parse_weight(&show_weight(Weight::pounds(pounds), system).to_string(), system).unwrap();
            let half = if system == Imperial { Weight::pounds(0.5) } else { Weight::kilograms(0.5) };
            prop_assert!(weight.is_near(Weight::pounds(pounds), half + Weight::pounds(1e-9)));
            let back = parse_area_load(&show_area_load(AreaLoad::psf(load), system).to_string(), system).unwrap();
            let half = if system == Imperial { AreaLoad::psf(0.05) } else { AreaLoad::kilopascals(0.005) };
            prop_assert!(back.is_near(AreaLoad::psf(load), half + AreaLoad::psf(1e-9)));
        }
        let money = Money::cents(cents);
        let back = parse_money(&show_money(money, "$").to_string()).unwrap();
        let off = (back - money).to_cents().abs();
        let most = if cents.abs() < 100_000 { 0 } else { 50 };
        prop_assert!(off <= most);
    }

    /// What strength hangs on comes back within half of the last digit shown, in either system.
    #[test]
    fn strength_within_half_a_step(
        mph in 1.0..300.0, pounds in 0.0..50_000.0, psi in 0.0..2e6, spring in 0.0..1e7, feet in -1500.0..20_000.0
    ) {
        let (speed, force, stress) = (Speed::mph(mph), Force::pounds(pounds), Stress::psi(psi));
        let (spring, height) = (Stiffness::pounds_per_inch(spring), Length::feet(feet));
        for system in [Imperial, Metric] {
            let inches = system == Imperial;
            let half = if inches { Speed::mph(0.05) } else { Speed::metres_per_second(0.05) };
            let back = parse_speed(&show_speed(speed, system).to_string(), system).unwrap();
            prop_assert!(back.is_near(speed, half + Speed::mph(1e-9)));
            let half = if inches { Force::pounds(0.5) } else { Force::kilonewtons(0.005) };
            let back = parse_force(&show_force(force, system).to_string(), system).unwrap();
            prop_assert!(back.is_near(force, half + Force::pounds(1e-9)));
            let half = if inches { Stress::psi(0.5) } else { Stress::megapascals(0.005) };
            let back = parse_stress(&show_stress(stress, system).to_string(), system).unwrap();
            prop_assert!(back.is_near(stress, half + Stress::psi(1e-6)));
            let half =
                if inches { Stiffness::pounds_per_inch(0.5) } else { Stiffness::kilonewtons_per_millimetre(0.005) };
            let back = parse_stiffness(&show_stiffness(spring, system).to_string(), system).unwrap();
            prop_assert!(back.is_near(spring, half + Stiffness::pounds_per_inch(1e-6)));
            let half = if inches { Length::feet(0.5) } else { Length::metres(0.5) };
            let back = parse_elevation(&show_elevation(height, system).to_string(), system).unwrap();
            prop_assert!(back.is_near(height, half + NOISE));
        }
    }
}

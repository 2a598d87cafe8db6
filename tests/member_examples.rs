//! Wood members against published examples; each names its source.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
use outshot::materials::{Section, Timber};
use outshot::members::{
    Bracing, Ceiling, ColumnKind, ColumnLengths, Conditions, DeflectionCase, Grade, LoadDuration, Member, NetSection,
    Property, RoofMember, ShearPlace, UnbracedCase, adjusted, beam_stability, beam_stability_from_ratio,
    bending_strength, check_bending, check_deflection, check_shear, column_stability, column_stability_from_ratio,
    compression_strength, deflection_limit, design_values, shear_strength, stiffness, unbraced_length,
};
use outshot::units::{Force, Length, Moment, Stress};

fn check(found: f64, printed: f64, tolerance: f64, what: &str) {
    assert!((found - printed).abs() <= tolerance, "{what}: {found} is not {printed}");
}

fn section(breadth: f64, depth: f64) -> Section {
    Section::new(Length::inches(breadth), Length::inches(depth))
}

fn douglas_fir(ordered: Section, sawn: Section, duration: LoadDuration, wet_service: bool) -> Member {
    let conditions = Conditions { duration, wet_service, ..Conditions::default() };
    Member::listed("Douglas Fir-Larch", Grade::No1, Timber { ordered, sawn }, conditions).unwrap()
}

/// University course example, NDS 2001: 2x8 No.1 Douglas Fir-Larch, snow, wet: F_b' 1173, F_t' 932, F_v' 201 psi.
#[test]
fn adjusted_values_of_a_wet_two_by_eight() {
    let joist = douglas_fir(section(2.0, 8.0), section(1.5, 7.25), LoadDuration::TwoMonths, true);
    for (property, printed) in [(Property::Bending, 1173.0), (Property::Tension, 932.0), (Property::Shear, 201.0)] {
        check(adjusted(&joist, property).value.to_psi(), printed, 0.51, property.symbol());
    }
}

/// The beam of Breyer et al., Design of Wood Structures, ch. 6 problems P6.1 to P6.3: 4x8 No.1 Douglas Fir-Larch,
/// 400 lb dead and 1600 lb roof live at the middle of 8 ft.
fn breyer(wet: bool) -> Member {
    douglas_fir(section(4.0, 8.0), section(3.5, 7.25), LoadDuration::SevenDays, wet)
}

const BREYER_MOMENT: Moment = Moment::pound_inches(2000.0 * 96.0 / 4.0);

/// P6.1: F_b' 1625, f_b 1566; F_v' 225, f_v 59.1 psi; Δ of the live load 0.156 in, l/360 0.267 in.
#[test]
fn a_beam_with_a_point_load() {
    let beam = breyer(false);
    let net = NetSection::whole(beam.section()).unwrap();
    check(net.least_modulus().to_cubic_inches(), 30.66, 0.005, "S");
    check(net.second_moment().to_inches4(), 111.1, 0.06, "I");
    check(net.area().to_square_inches(), 25.375, 1e-9, "A");
    let bending = check_bending(&beam, BREYER_MOMENT, &net, Bracing::Held).unwrap().value;
    check(bending_strength(&beam, Bracing::Held).unwrap().value.to_psi(), 1625.0, 1e-9, "F_b'");
    // Printed from S rounded to 30.66 in³.
    check(bending.ratio * 1625.0, 1566.0, 0.6, "f_b");
    assert!(bending.passes());
    let shear = check_shear(&beam, Force::pounds(1000.0), &ShearPlace::Whole).unwrap().value;
    check(adjusted(&beam, Property::Shear).value.to_psi(), 225.0, 1e-9, "F_v'");
    check(shear.ratio * 225.0, 59.1, 0.05, "f_v");
    let found = deflection(&beam);
    check(found.to_inches(), 0.156, 0.000_5, "Δ");
    let limit = deflection_limit(Length::inches(96.0), false, RoofMember::Main, Ceiling::Plaster, DeflectionCase::Live);
    check(limit.value.to_inches(), 0.267, 0.000_5, "l/360");
    assert!(check_deflection(found, limit).unwrap().value.passes());
}

/// P·L³/(48·E'·I) of the 1600 lb of live load.
fn deflection(beam: &Member) -> Length {
    let inertia = NetSection::whole(beam.section()).unwrap().second_moment().to_inches4();
    Length::inches(1600.0 * 96.0_f64.powi(3) / (48.0 * stiffness(beam).value.to_psi() * inertia))
}

/// P6.2, the same wet: F_b' 1381 (fails), F_v' 218 psi, E' 1.53 million psi, Δ 0.173 in.
#[test]
fn the_same_beam_wet() {
    let beam = breyer(true);
    let net = NetSection::whole(beam.section()).unwrap();
    check(adjusted(&beam, Property::Bending).value.to_psi(), 1381.0, 0.5, "F_b'");
    assert!(!check_bending(&beam, BREYER_MOMENT, &net, Bracing::Held).unwrap().value.passes());
    check(adjusted(&beam, Property::Shear).value.to_psi(), 218.0, 0.5, "F_v'");
    check(stiffness(&beam).value.to_psi(), 1.53e6, 1e-6, "E'");
    check(deflection(&beam).to_inches(), 0.173, 0.000_6, "Δ");
}

/// P6.3, held at the middle: l_e 53.28 in, R_B 5.62; computed on from there: F_bE 23,594, C_L 0.996, F_b' 1619 psi.
#[test]
fn beam_stability_of_the_same_beam() {
    let beam = breyer(false);
    let half = Length::inches(48.0);
    let length = unbraced_length(UnbracedCase::SpanCentreHeld, half, beam.section().depth).unwrap().value;
    check(length.to_inches(), 53.28, 1e-9, "l_e");
    let bracing = Bracing::Free { length: half, case: UnbracedCase::SpanCentreHeld };
    let stability = beam_stability(&beam, bracing).unwrap();
    assert!(stability.steps.iter().any(|step| step.says.contains("= 5.615, at most 50")), "{:?}", stability.steps);
    check(stability.value.critical.unwrap().to_psi(), 23_594.0, 1.0, "F_bE");
    check(stability.value.factor, 0.996, 0.000_5, "C_L");
    check(bending_strength(&beam, bracing).unwrap().value.to_psi(), 1619.0, 0.6, "F_b'");
}

/// Structural reference manual examples: F = 2.83 gives C_L 0.974.
#[test]
fn beam_stability_from_its_ratio() {
    check(beam_stability_from_ratio(2.83), 0.974, 0.000_5, "C_L");
}

/// A column of Gere & Goodno, Mechanics of Materials, 7th ed., section 11.9: F_c and E given, K_cE 0.3, c 0.8. K_cE·E is
/// 0.822·E_min here.
fn gere(section: Section, fc: f64, e: f64) -> Member {
    let listed = design_values("Douglas Fir-Larch", section, Grade::No1).unwrap();
    let values = listed
        .with_override(Property::Compression, Stress::psi(fc), "the example")
        .and_then(|values| values.with_override(Property::LeastStiffness, Stress::psi(0.3 * e / 0.822), "the example"))
        .unwrap();
    let conditions = Conditions { duration: LoadDuration::TenYears, ..Conditions::default() };
    Member { timber: Timber::full(section), values, conditions }
}

/// `F_c` of those columns has no size factor: what the table's factor would add is divided out here.
fn without_size(member: &Member, fc: f64) -> Member {
    let factor = adjusted(member, Property::Compression).value.to_psi() / fc;
    let values =
        member.values.clone().with_override(Property::Compression, Stress::psi(fc / factor), "the example").unwrap();
    Member { values, ..member.clone() }
}

/// Problem 11.9-31: 3.5x7.25, F_c 1000, E 1.3 million psi; l 6, 8, 10 ft: C_P .6621, .4464, .3050; P 16.8, 11.3, 7.7 kip.
#[test]
fn columns_of_three_lengths() {
    let column = without_size(&gere(section(3.5, 7.25), 1000.0, 1.3e6), 1000.0);
    for (feet, ratio, factor, kip) in
        [(6.0, 0.9216, 0.6621, 16.8), (8.0, 0.5184, 0.4464, 11.3), (10.0, 0.3318, 0.3050, 7.7)]
    {
        let lengths = ColumnLengths::pinned(Length::feet(feet));
        check(column_stability_from_ratio(ratio, ColumnKind::Sawn), factor, 0.000_06, "C_P from F");
        check(column_stability(&column, &lengths).unwrap().value.factor, factor, 0.000_05, "C_P");
        let strength = compression_strength(&column, &lengths).unwrap().value * column.section().area();
        check(strength.to_pounds() / 1000.0, kip, 0.05, "P");
    }
}

/// Problem 11.9-35: 3.5 in square, F_c 900, E 1.5 million psi: 8 kip at l/d 21.23, C_P .72562, l 74.3 in.
#[test]
fn the_longest_column_for_a_load() {
    let column = without_size(&gere(section(3.5, 3.5), 900.0, 1.5e6), 900.0);
    let lengths = ColumnLengths::pinned(Length::inches(21.23 * 3.5));
    check(column_stability(&column, &lengths).unwrap().value.factor, 0.725_62, 0.000_1, "C_P");
    let at = ColumnLengths::pinned(Length::inches(74.3));
    let strength = compression_strength(&column, &at).unwrap().value * column.section().area();
    check(strength.to_pounds(), 8000.0, 1.0, "P");
}

/// Regression, not published: problem 11.9-32's column (140x210 mm, F_c 12 MPa, E 10 GPa; 2.5, 3.5, 4.5 m) by the same
/// formula: C_P .60195, .35961, .22845; P 212.4, 126.9, 80.6 kN.
#[test]
fn a_metric_column() {
    let size = Section::new(Length::millimetres(140.0), Length::millimetres(210.0));
    let fc = Stress::megapascals(12.0).to_psi();
    let column = without_size(&gere(size, fc, Stress::megapascals(10_000.0).to_psi()), fc);
    for (metres, factor, kilonewtons) in [(2.5, 0.601_95, 212.4), (3.5, 0.359_61, 126.9), (4.5, 0.228_45, 80.6)] {
        let lengths = ColumnLengths::pinned(Length::metres(metres));
        check(column_stability(&column, &lengths).unwrap().value.factor, factor, 0.000_01, "C_P");
        let strength = compression_strength(&column, &lengths).unwrap().value * column.section().area();
        check(strength.to_kilonewtons(), kilonewtons, 0.051, "P");
    }
}

/// Regression, not published: 6x12 dressed, 9 in left over the notch, F_v' 170·1.15: Eq. 3.4-3 gives 3951 lb.
#[test]
fn a_notched_beam() {
    let beam = douglas_fir(section(6.0, 12.0), section(5.5, 11.5), LoadDuration::TwoMonths, false);
    let place = ShearPlace::TensionNotch { left: Length::inches(9.0) };
    check(shear_strength(&beam, &place).unwrap().value.to_pounds(), 3951.0, 0.5, "V_r'");
}

/// University wood course CE 5260, Problem 4.17 prints nominal values of Douglas Fir-Larch No.1 for load-and-resistance
/// design: allowable values times 2.16/φ (bending φ 0.85, tension 0.80, shear 0.75, compression 0.90), 1.875/0.90 across
/// the grain, 1.5/0.85 for E_min.
#[test]
fn douglas_fir_no_1_in_all_its_classes() {
    let conversions = [2.16 / 0.85, 2.16 / 0.80, 2.16 / 0.75, 1.875 / 0.90, 2.16 / 0.90];
    for (size, printed) in [
        (section(6.0, 12.0), [3431.0, 1823.0, 490.0, 1302.0, 2220.0]),
        (section(8.0, 8.0), [3049.0, 2228.0, 490.0, 1302.0, 2400.0]),
    ] {
        let values = design_values("Douglas Fir-Larch", size, Grade::No1).unwrap();
        for ((property, conversion), printed) in Property::ALL.into_iter().zip(conversions).zip(printed) {
            check(values.get(property).to_psi() * conversion, printed, 0.6, property.symbol());
        }
        check(values.get(Property::LeastStiffness).to_psi() * 1.5 / 0.85, 1_024_000.0, 500.0, "E_min");
        check(values.get(Property::Stiffness).to_psi(), 1.6e6, 1e-6, "E");
    }
}

/// Every weak link is told: a value from memory makes the whole working no better than from memory.
#[test]
fn workings_carry_their_weakest_source() {
    use outshot::materials::Confidence;
    let northern = |grade| {
        let timber = Timber::full(section(8.0, 8.0));
        Member::listed("Northern Pine", grade, timber, Conditions::default())
    };
    let post = northern(Grade::No1).unwrap();
    assert_eq!(adjusted(&post, Property::Bending).confidence(), Confidence::Low);
    assert!(northern(Grade::No2).unwrap_err().to_string().contains("Northern Pine, No.1"));
}

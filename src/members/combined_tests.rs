//! Tests of combined stress: hand cases built from the equations (no published example was found).
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
use super::*;
use crate::members::UnbracedCase;
use crate::members::test_members::{dry, inches};

/// Hem-Fir No.2, 8x8: F_b 575, F_t 375, F_c 575, E_min 400,000 psi; all factors 1.
fn post() -> Member {
    dry("Hem-Fir", inches(8.0, 8.0))
}

fn pushed(member: &Member, push: f64) -> BeamColumn {
    BeamColumn {
        push: Force::pounds(push),
        moment_depthwise: Moment::ZERO,
        moment_breadthwise: Moment::ZERO,
        off_centre_depthwise: Length::ZERO,
        off_centre_breadthwise: Length::ZERO,
        net: NetSection::whole(member.section()).unwrap(),
        lengths: ColumnLengths::pinned(Length::inches(96.0)),
        bracing: Bracing::Held,
    }
}

fn ratio(member: &Member, demand: &BeamColumn) -> f64 {
    check_bending_and_compression(member, demand).unwrap().value.ratio
}

fn near(found: f64, expected: f64) {
    assert!((found - expected).abs() < 1e-9, "{found} is not {expected}");
}

/// Slenderness 12: F_cE = 0.822·400,000/144 psi.
const CRITICAL: f64 = 0.822 * 400_000.0 / 144.0;

#[test]
fn pull_and_bending() {
    let net = NetSection::whole(inches(8.0, 8.0)).unwrap();
    let check = |pull: f64, moment: f64, expected: f64| {
        let checked =
            check_bending_and_tension(&post(), Force::pounds(pull), Moment::pound_inches(moment), &net, Bracing::Held);
        near(checked.unwrap().value.ratio, expected);
    };
    let modulus = 512.0 / 6.0;
    check(6400.0, 100.0 * modulus, 100.0 / 375.0 + 100.0 / 575.0);
    check(0.0, 100.0 * modulus, 100.0 / 575.0);
    check(6400.0, 0.0, 100.0 / 375.0);
}

/// With no side support Eq. 3.9-2 can govern, as only it holds `C_L`.
#[test]
fn bending_less_pull_governs_a_slender_beam() {
    let plank = dry("Hem-Fir", inches(2.0, 12.0));
    let net = NetSection::whole(plank.section()).unwrap();
    let bracing = Bracing::Free { length: Length::feet(14.0), case: UnbracedCase::SpanUniform };
    let moment = Moment::pound_inches(30_000.0);
    let checked = check_bending_and_tension(&plank, Force::pounds(10.0), moment, &net, bracing).unwrap();
    let strength = bending_strength(&plank, bracing).unwrap().value.to_psi();
    near(checked.value.ratio, (30_000.0 / 48.0 - 10.0 / 24.0) / strength);
}

#[test]
fn push_alone_is_the_square_of_its_share() {
    let member = post();
    let strength = compression_strength(&member, &ColumnLengths::pinned(Length::inches(96.0))).unwrap().value.to_psi();
    near(ratio(&member, &pushed(&member, 12_800.0)), (200.0 / strength).powi(2));
}

#[test]
fn push_and_bending_both_ways() {
    let member = post();
    let modulus = 512.0 / 6.0;
    let strength = compression_strength(&member, &ColumnLengths::pinned(Length::inches(96.0))).unwrap().value.to_psi();
    let demand = BeamColumn {
        moment_depthwise: Moment::pound_inches(100.0 * modulus),
        moment_breadthwise: Moment::pound_inches(-50.0 * modulus),
        ..pushed(&member, 12_800.0)
    };
    let growth = 1.0 - 200.0 / CRITICAL;
    near(ratio(&member, &demand), (200.0 / strength).powi(2) + 150.0 / (575.0 * growth));
    let checked = check_bending_and_compression(&member, &demand).unwrap();
    assert!(checked.steps.last().unwrap().says.starts_with("(f_c/F_c')²"));
}

/// The edge stress of a push 1 in off the centre: 200·6/8 = 150 psi, grown by 1 + 0.234·f_c/F_cE.
#[test]
fn a_push_off_the_centre() {
    let member = post();
    let strength = compression_strength(&member, &ColumnLengths::pinned(Length::inches(96.0))).unwrap().value.to_psi();
    let share = 200.0 / CRITICAL;
    let expected = (200.0 / strength).powi(2) + 150.0 * (1.0 + 0.234 * share) / (575.0 * (1.0 - share));
    let deep = BeamColumn { off_centre_depthwise: Length::inches(1.0), ..pushed(&member, 12_800.0) };
    let wide = BeamColumn { off_centre_breadthwise: Length::inches(-1.0), ..pushed(&member, 12_800.0) };
    near(ratio(&member, &deep), expected);
    near(ratio(&member, &wide), expected);
}

/// Rolling over lessens what is left for bending flatwise.
#[test]
fn rolling_over_enters_the_flatwise_term() {
    let member = dry("Hem-Fir", inches(4.0, 10.0));
    let bracing = Bracing::Free { length: Length::inches(96.0), case: UnbracedCase::SpanUniform };
    let mut demand = pushed(&member, 4000.0);
    demand.bracing = bracing;
    demand.moment_depthwise = Moment::pound_inches(20_000.0);
    demand.moment_breadthwise = Moment::pound_inches(2000.0);
    let roll = beam_stability(&member, bracing).unwrap().value.critical.unwrap().to_psi();
    let columns = column_stability(&member, &demand.lengths).unwrap().value;
    let (e1, e2) = (columns.depthwise.unwrap().to_psi(), columns.breadthwise.unwrap().to_psi());
    let strong = bending_strength(&member, bracing).unwrap().value.to_psi();
    let weak = adjusted(&member.turned(), Property::Bending).value.to_psi();
    let whole = compression_strength(&member, &demand.lengths).unwrap().value.to_psi();
    let (fc, fb1, fb2) = (100.0, 20_000.0 / (400.0 / 6.0), 2000.0 / (160.0 / 6.0));
    let expected =
        (fc / whole).powi(2) + fb1 / (strong * (1.0 - fc / e1)) + fb2 / (weak * (1.0 - fc / e2 - (fb1 / roll).powi(2)));
    near(ratio(&member, &demand), expected);
}

/// A stick given lying flat is the same stick.
#[test]
fn turning_the_stick_changes_nothing() {
    let member = dry("Hem-Fir", inches(4.0, 10.0));
    let mut demand = pushed(&member, 4000.0);
    demand.moment_depthwise = Moment::pound_inches(20_000.0);
    demand.off_centre_breadthwise = Length::inches(0.25);
    demand.lengths.depthwise.length = Length::inches(60.0);
    let flat = BeamColumn {
        moment_depthwise: demand.moment_breadthwise,
        moment_breadthwise: demand.moment_depthwise,
        off_centre_depthwise: demand.off_centre_breadthwise,
        off_centre_breadthwise: demand.off_centre_depthwise,
        net: demand.net.turned(),
        lengths: ColumnLengths {
            depthwise: demand.lengths.breadthwise,
            breadthwise: demand.lengths.depthwise,
            is_raising: false,
        },
        ..demand.clone()
    };
    near(ratio(&member, &demand), ratio(&member.turned(), &flat));
}

#[test]
fn an_unstable_push_is_a_failing_verdict() {
    let member = post();
    let push = CRITICAL * 64.0 * 1.1;
    let found = ratio(&member, &pushed(&member, push));
    near(found, 1.1);
}

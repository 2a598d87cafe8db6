#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
use super::*;
use crate::analysis::roof_loads;
use crate::evaluate;
use crate::project::demo;
use crate::units::{AreaLoad, UnitSystem};

/// The barn with its lowest screws where the top ones keep four diameters to the ledger's top.
fn barn() -> Project {
    let mut barn = demo::wool_barn();
    barn.fixings.ledger.lowest = Length::inches(2.5);
    barn
}

fn checks(project: &Project) -> Vec<Check> {
    on_the_shape_of(project, project)
}

/// With the geometry of another project, where its own would be stopped before it is checked.
fn on_the_shape_of(of: &Project, project: &Project) -> Vec<Check> {
    let built = evaluate(of).built.unwrap();
    check_ledger(project, &built.shape, &roof_loads(project, &built.shape))
}

fn found<'a>(checks: &'a [Check], name: &str) -> &'a Check {
    checks.iter().find(|check| check.name == name).unwrap()
}

/// Reaction of the most loaded post of the wall, down, as the word on the wall gives it.
fn down(checks: &[Check]) -> f64 {
    let says = found(checks, "carries what the ledger hands it").says(UnitSystem::Imperial);
    let before = says.split(" lb down").next().unwrap();
    before.rsplit(' ').next().unwrap().replace(',', "").parse().unwrap()
}

/// Reaction in the step of a check of the fixings.
fn reaction(check: &Check) -> f64 {
    let step = check.steps().iter().find(|step| step.gives == "shear of one fixing").unwrap();
    step.says.trim_start_matches("Z = R/n = ").split('/').next().unwrap().parse().unwrap()
}

/// Snow of 33.6 psf and a dead load of 2.23 psf on 24 in, 138.97 in out: the ledger seat at 2.5 takes (128 − 69.49)/125.5
/// of it, 386.9 lb a rafter, and 61.8 of the rafter's weight. Four a post, on the second of two spans up to 1.25 times, and
/// 110 lb of ledger: 1,900 to 2,360 lb. Snow with wind that presses asks a little more.
#[test]
fn the_wall_is_told_what_it_must_take() {
    let found = checks(&barn());
    let rafter = (33.6 + 2.2293) * 2.0 * 138.970_143 / 12.0 * (128.0 - 69.485_071) / 125.5 + 61.842;
    let (least, most) = (4.0 * rafter + 110.0, 5.0 * rafter + 140.0);
    let alone = reaction(self::found(&found, "hold the ledger up"));
    assert!(alone > least && alone < most, "{alone} {rafter}");
    assert!(down(&found) >= alone && down(&found) < 1.1 * most, "{} {rafter}", down(&found));
    let wall = found.iter().find(|check| check.member == "existing wall").unwrap();
    assert!(!wall.passes() && wall.ratio().is_none());
    assert!(wall.says(UnitSystem::Imperial).contains("outward"));
}

/// R = 2,334 lb on three lag screws of 5/8 in: 778 lb each; pull R·2.5·7.5/(2.5² + 5² + 7.5²) = R·18.75/87.5 of the top one.
/// Withdrawal 1800·0.41^1.5·0.625^0.75·(5.5 − 0.406)·1.15; aside mode IV: 0.471²/4·√(2·4600·45000/(3·(1 + 4600/2100)))
/// = 364.8 lb, ·1.15·0.4 (green, three held together)·0.981.
#[test]
fn fixings_by_hand() {
    let all = checks(&barn());
    let hold = found(&all, "hold the ledger up");
    let r = reaction(hold);
    let out = 1800.0 * 0.41_f64.powf(1.5) * 0.625_f64.powf(0.75) * (5.5 - 0.40625) * 1.15;
    let aside = 0.471 * 0.471 / 4.0 * (2.0 * 4600.0 * 45_000.0 / (3.0 * (1.0 + 4600.0 / 2100.0_f64))).sqrt();
    let aside = aside * 1.15 * 0.4 * 0.981;
    let (w, z) = (r * 18.75 / 87.5, r / 3.0);
    let expected = (w * w / out + z * z / aside) / w.hypot(z);
    let ratio = hold.ratio().unwrap();
    assert!((ratio / expected - 1.0).abs() < 2e-3, "{ratio} {expected} {hold:?}");
    assert!(!hold.passes());
}

/// A wall post every 24 in in dry wood carries it; three times as far apart it does not.
#[test]
fn both_sides_of_the_limit() {
    let mut dry = barn();
    dry.wood.is_dry = true;
    dry.site.wall_post_spacing = Length::inches(24.0);
    assert!(checks(&dry).iter().all(|check| check.member == "existing wall" || check.passes()), "{:?}", checks(&dry));
    dry.site.wall_post_spacing = Length::inches(72.0);
    assert!(!found(&checks(&dry), "hold the ledger up").passes());
}

/// Load of D + S a foot of ledger: w = (33.6 + 2.23)·… as above by 2 ft. Over an inner post wL²/12 to wL²/7 on the net
/// section of three holes.
#[test]
fn bending_is_that_of_a_continuous_beam() {
    let all = checks(&barn());
    let bends = found(&all, "bends");
    assert_eq!(bends.at, "over a post of the wall");
    let rafter = (33.6 + 2.2293) * 2.0 * 138.970_143 / 12.0 * (128.0 - 69.485_071) / 125.5 + 61.842;
    let even = rafter / 24.0;
    let net = NetSection::whole(Woods::new(&barn()).member(Used::Ledger, Duration::TenYears).unwrap().section());
    let whole = net.unwrap().least_modulus().to_cubic_inches();
    let share = |part: f64| even * 96.0 * 96.0 / part / whole / (575.0 * 1.15 * 1.2);
    let ratio = bends.ratio().unwrap();
    assert!(ratio > share(12.0) && ratio < share(6.5), "{ratio} {} {}", share(12.0), share(6.5));
}

#[test]
fn rows_far_apart_split_the_ledger() {
    let mut wide = barn();
    wide.fixings.ledger.row_gap = Length::inches(2.6);
    let all = checks(&wide);
    assert!((found(&all, "let the ledger shrink").ratio().unwrap() - 1.04).abs() < 1e-9);
    assert!(found(&checks(&barn()), "let the ledger shrink").passes());
}

/// Twice the weight above is twice the sag.
#[test]
fn sags_grow_with_the_snow() {
    let mut heavy = barn();
    heavy.place.wind_speed = crate::loads::WindSpeed::try_mph(20.0);
    // A wind under what a project may hold: on the barn's own geometry.
    let one = found(&on_the_shape_of(&barn(), &heavy), "sags under a passing load").ratio().unwrap();
    heavy.place.ground_snow = heavy.place.ground_snow.map(|snow| snow * 2.0);
    let two = found(&on_the_shape_of(&barn(), &heavy), "sags under a passing load").ratio().unwrap();
    assert!((two / one - 2.0).abs() < 1e-6, "{one} {two}");
}

#[test]
fn what_is_missing_is_said() {
    let says = |name: &str, change: &dyn Fn(&mut Project)| {
        let mut changed = barn();
        change(&mut changed);
        found(&on_the_shape_of(&barn(), &changed), name).says(UnitSystem::Imperial)
    };
    let of = |change: &dyn Fn(&mut Project)| says("hold the ledger up", change);
    assert!(
        of(&|barn| barn.fixings.ledger.fastener.clear()).contains("not judged: the screw of the ledger is missing")
    );
    assert!(
        of(&|barn| barn.fixings.ledger.rows = 0).contains("not judged: the rows of the ledger's fixings are missing")
    );
    assert!(of(&|barn| barn.fixings.ledger.wall_species.clear()).contains("the wood of the wall's posts is missing"));
    assert!(of(&|barn| barn.fixings.ledger.fastener = "bolt_1_2".to_owned()).contains("whose size is missing"));
    assert!(of(&|barn| barn.frame.ledger_packing = Length::inches(0.75)).contains("counts as a gap"));
    assert!(of(&|barn| barn.fixings.ledger.length = Length::inches(4.0)).contains("leaves no thread"));
    assert!(of(&|barn| barn.fixings.ledger.lowest = Length::inches(2.75)).contains("loaded edge distance is 2.25 in"));
    let whole = |change: &dyn Fn(&mut Project)| says("bends, shears and sags", change);
    assert!(whole(&|barn| barn.place.ground_snow = None).contains("ground snow is missing"));
    assert!(whole(&|barn| barn.site.wall_post_spacing = Length::ZERO).contains("the posts of the wall are missing"));
    assert!(whole(&|barn| barn.site.wall_post_spacing = Length::feet(30.0)).contains("fewer than two posts"));
    let no_rows = says("shears", &|barn| barn.fixings.ledger.rows = 0);
    assert!(no_rows.contains("the rows of the ledger's fixings are missing"));
    let heavy = says("bends", &|barn| barn.place.ground_snow = Some(AreaLoad::psf(300.0)));
    assert!(!heavy.contains("not judged"));
}

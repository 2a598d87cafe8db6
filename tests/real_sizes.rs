//! Sticks as they were measured at the bench, and beams as their dry fits found them: the solids follow, and still fit.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

use outshot::joinery::{StickBody, bodies, fit};
use outshot::lay_out;
use outshot::project::{MeasuredSize, Project, ScarfKind, StockRule, demo};
use outshot::solid::Vector;
use outshot::units::Length;
use proptest::prelude::*;

/// In cubic inches and inches.
const HAIR: f64 = 1e-6;

type Measure = (f64, f64, f64);

fn measured(mut project: Project, mark: &str, measures: &[Measure]) -> Project {
    let size = |&(from_zero, breadth, depth): &Measure| MeasuredSize {
        from_zero: Length::inches(from_zero),
        breadth: Length::inches(breadth),
        depth: Length::inches(depth),
    };
    project.progress.sizes.insert(mark.to_owned(), measures.iter().map(size).collect());
    project
}

fn wood(project: &Project) -> Vec<StickBody> {
    bodies(project, &lay_out(project).built.unwrap().shape)
}

fn body(project: &Project, mark: &str) -> StickBody {
    wood(project).into_iter().find(|body| body.mark == mark).unwrap()
}

fn check(found: f64, expected: f64, what: &str) {
    assert!((found - expected).abs() < HAIR * expected.abs().max(1.0), "{what}: {found} is not {expected}");
}

fn check_nothing_shared(project: &Project) {
    let all = wood(project);
    for (index, one) in all.iter().enumerate() {
        for two in &all[index + 1..] {
            let shared = one.wood.shared(&two.wood).volume().to_cubic_inches();
            let within = one.wood.shared(&two.wood).within();
            assert!(shared < HAIR, "{} and {} share {shared} in³ {within:?}", one.mark, two.mark);
        }
    }
}

/// Height of the lowest wood of a stick in a plane across the wall.
fn lowest(body: &StickBody, x: f64) -> f64 {
    let within = body.wood.within();
    let y = f64::midpoint(within.low.y, within.high.y);
    let (mut low, mut high) = (within.low.z - 1.0, within.high.z);
    let is_wood_above = |z: f64| body.wood.holds(Vector { x, y, z });
    assert!(is_wood_above(high - 0.01), "{} has no wood at {x}", body.mark);
    high -= 0.01;
    while high - low > 1e-7 {
        let middle = f64::midpoint(low, high);
        if is_wood_above(middle) { high = middle } else { low = middle }
    }
    high
}

/// By hand, the frustum's closed form: a purlin of length L that grows from 4 × 2 to 4½ × 2¼ holds L/6 of 8, four times
/// 4¼ · 2⅛, and 10⅛; one that has its full size at mid-length too two of half the length.
#[test]
fn a_tapering_stick_holds_what_the_formula_says() {
    let project = demo::wool_barn();
    let drawn = body(&project, "N1a");
    let within = drawn.wood.within();
    let long = within.high.x - within.low.x;
    let frustum = |long: f64, (a, b): ((f64, f64), (f64, f64))| {
        let middle = (a.0 + b.0) * (a.1 + b.1);
        long / 6.0 * (a.0 * a.1 + middle + b.0 * b.1)
    };
    let (thin, thick) = ((4.0, 2.0), (4.5, 2.25));
    let once = measured(project.clone(), "N1a", &[(long, 4.5, 2.25), (0.0, 4.0, 2.0)]);
    check(body(&once, "N1a").volume().to_cubic_inches(), frustum(long, (thin, thick)), "one taper");
    let twice = measured(project, "N1a", &[(0.0, 4.0, 2.0), (long / 2.0, 4.5, 2.25), (long, 4.0, 2.0)]);
    let found = body(&twice, "N1a");
    check(found.volume().to_cubic_inches(), 2.0 * frustum(long / 2.0, (thin, thick)), "two tapers");
    check(found.balance().to_inches(), long / 2.0, "it balances midway");
    // It lies on its rafters as drawn.
    check(found.wood.within().low.z, within.low.z, "its underside");
}

/// By hand: B1 is 10 in deep up to 20 in from zero and 10½ from 60 on: 10¼ at 40; its top stays, its underside falls.
/// Over P2, at 138 in, its housing is then the ½ in of the rule and the ½ in it is over: as the sheet says.
#[test]
fn a_beam_tapers_and_its_housings_follow() {
    let project = measured(demo::wool_barn(), "B1", &[(20.0, 8.0, 10.0), (60.0, 8.0, 10.5)]);
    let built = lay_out(&project).built.unwrap();
    let beam = body(&project, "B1");
    let (top, start) = (built.shape.line.beam_seat.to_inches(), beam.zero.x);
    for (x, depth) in [(15.0, 10.0), (40.0, 10.25), (80.0, 10.5)] {
        check(top - lowest(&beam, start + x), depth, "depth");
    }
    let post = &built.shape.posts[1];
    let under = top - 10.5;
    let mark = built.stick("B1").unwrap().marks.iter().find(|mark| mark.what == "housing of P2").unwrap();
    check(post.shoulder.to_inches() - under, mark.depth.unwrap().to_inches(), "housing");
    // Beside the mortise, behind its cheek, the post's shoulder bears on the housing's floor.
    let y = beam.zero.y - 5.0;
    let at = |z: f64| Vector { x: post.middle().to_inches(), y, z };
    let shoulder = post.shoulder.to_inches();
    assert!(beam.wood.holds(at(shoulder + 0.01)) && !beam.wood.holds(at(shoulder - 0.01)));
    check_nothing_shared(&project);
}

/// By hand: the wall of P1's mortise, cheeks 2 and 4 in in, is what the breadth is past 4 at its thinner end: B1 grows from
/// 5¼ in at zero to 6¼ at 100, so 1¼ + the start of the mortise at 1 %.
#[test]
fn the_thinnest_wood_is_that_of_the_taper() {
    let project = measured(demo::wool_barn(), "B1", &[(0.0, 5.25, 10.0), (100.0, 6.25, 10.0)]);
    let built = lay_out(&project).built.unwrap();
    let post = &built.shape.posts[0];
    let from_zero = post.tenon.0.to_inches() - built.shape.beam.pieces[0].start.to_inches();
    let found = fit(&project, &built.shape);
    let is_wall = |cut: &str, other: &str| cut == "mortise of P1" && other == "the wall face";
    let near = found.near.iter().find(|near| near.stick == "B1" && is_wall(&near.cut, &near.other)).unwrap();
    // Square to a face that leans 1 in 100.
    let expected = (1.25 + from_zero * 0.01) / (1.0 + 0.01_f64 * 0.01).sqrt();
    check(near.wood.to_inches(), expected, "wall");
}

/// A post ¼ over: its left and its outer face stay, the pocket in its right face is ¼ deeper, its head is cut down.
#[test]
fn a_post_over_size_is_cut_down_where_it_is_joined() {
    let (drawn, project) = (demo::wool_barn(), measured(demo::wool_barn(), "P2", &[(30.0, 8.25, 8.25)]));
    let (before, after) = (body(&drawn, "P2").wood.within(), body(&project, "P2").wood.within());
    check(after.low.x, before.low.x, "left face");
    check(after.high.y, before.high.y, "outer face");
    check(after.high.x, before.high.x + 0.25, "right face");
    check(after.low.y, before.low.y - 0.25, "wall face");
    let fit = fit(&project, &lay_out(&project).built.unwrap().shape);
    assert!(fit.clashes.is_empty(), "{:?}", fit.clashes);
    assert!(fit.entries.iter().all(|entry| entry.stopped.is_none()));
}

/// By hand: under a beam ¼ in deeper than sawn the head of a post over size is cut down ½ + ¼ in, on its sheet as in wood.
#[test]
fn a_head_is_cut_down_as_deep_as_its_beam_is_housed() {
    let project = measured(demo::wool_barn(), "P2", &[(30.0, 8.25, 8.0)]);
    let project = measured(project, "B1", &[(0.0, 8.0, 10.25)]);
    let built = lay_out(&project).built.unwrap();
    let post = built.stick("P2").unwrap();
    let mark = post.marks.iter().find(|mark| mark.what.starts_with("head cut down")).unwrap();
    check((mark.far.unwrap() - mark.near).to_inches(), 0.75, "on the sheet");
    let cut = body(&project, "P2");
    let cut = cut.cuts.iter().find(|cut| cut.what == "head cut down").unwrap();
    let within = cut.tools[0].within();
    check(within.high.z - within.low.z, 0.75, "in wood");
    check_nothing_shared(&project);
}

/// A rafter ¼ deeper than sawn sits as high as the others: its top face and its seats stay, its underside does not.
#[test]
fn a_deep_rafter_sits_as_high() {
    let (drawn, project) = (demo::wool_barn(), measured(demo::wool_barn(), "R3", &[(50.0, 4.0, 8.25)]));
    let (before, after) = (body(&drawn, "R3"), body(&project, "R3"));
    check(after.zero.z, before.zero.z, "top");
    let seat = |body: &StickBody| {
        let notch = body.cuts.iter().find(|cut| cut.what == "beam bird's mouth").unwrap();
        notch.tools.iter().map(|tool| tool.within().high.z).fold(f64::NEG_INFINITY, f64::max)
    };
    check(seat(&after), seat(&before), "seat");
    assert!(after.volume() > before.volume());
    check_nothing_shared(&project);
}

/// A brace thicker than its pocket allows stands in its post; one within the pocket's clearance does not.
#[test]
fn a_brace_too_wide_for_its_pocket_is_told() {
    let says = |wide: f64| {
        let project = measured(demo::wool_barn(), "K2R", &[(20.0, 3.0, wide)]);
        let clashes = fit(&project, &lay_out(&project).built.unwrap().shape).clashes;
        clashes.iter().any(|clash| clash.says.contains("K2R") && clash.says.contains("stand"))
    };
    let sawn = demo::wool_barn().frame.timbers.brace.sawn.depth.to_inches();
    assert!(!says(sawn + 0.125));
    assert!(says(sawn + 0.75));
}

fn place(body: &StickBody, what: &str) -> Vector {
    let cut = body.cuts.iter().find(|cut| cut.what == what).unwrap_or_else(|| panic!("{} has no {what}", body.mark));
    cut.tools
        .iter()
        .map(outshot::solid::Convex::within)
        .fold(outshot::solid::Within::NOTHING, outshot::solid::Within::with)
        .low
}

/// By hand: the closed beam ⅛ longer, or shorter, over scarf 1: B2 and its own scarf lie by that farther out, what it carries
/// stays on the ground, so from its zero it is by that nearer, as on its sheet. The beam as a whole keeps its length and its
/// wood.
#[test]
fn a_dry_fit_moves_the_piece_and_not_its_places() {
    let drawn = demo::wool_barn();
    let total = |all: &[StickBody]| -> f64 {
        all.iter().filter(|body| body.mark.starts_with('B')).map(|body| body.volume().to_cubic_inches()).sum()
    };
    for kind in ScarfKind::ALL {
        for error in [0.125, -0.125] {
            let mut before = drawn.clone();
            before.frame.scarfs.kind = kind;
            (before.frame.brace_along, before.frame.brace_down) = (Length::inches(24.0), Length::inches(24.0));
            let mut project = before.clone();
            project.progress.dry_fits.insert("1".to_owned(), Length::inches(error));
            let (one, two) = (body(&before, "B2"), body(&project, "B2"));
            check(two.zero.x, one.zero.x + error, "zero");
            let mortise = one.cuts.iter().find(|cut| cut.what.starts_with("mortise of P")).unwrap().what.as_str();
            assert_eq!(place(&one, mortise), place(&two, mortise));
            let sheet = lay_out(&project).built.unwrap();
            let mark = sheet.stick("B2").unwrap().marks.iter().find(|mark| mark.what == mortise).unwrap().clone();
            check(two.from_zero(place(&two, mortise)).to_inches(), mark.near.to_inches(), "from zero");
            let scarf = two.cuts.iter().find(|cut| cut.what.starts_with("scarf 2")).unwrap().what.clone();
            check(place(&two, &scarf).x, place(&one, &scarf).x + error, "its own scarf");
            check(total(&wood(&project)), total(&wood(&before)), "the beam's wood");
            check_nothing_shared(&project);
        }
    }
}

/// What was measured over an inch is no dry fit's: nothing moves.
#[test]
fn an_error_that_cannot_be_moves_no_wood() {
    let mut project = demo::wool_barn();
    project.progress.dry_fits.insert("1".to_owned(), Length::inches(3.0));
    assert_eq!(wood(&project), wood(&demo::wool_barn()));
}

fn over() -> impl Strategy<Value = Vec<(f64, f64, f64)>> {
    prop::collection::vec((0.0..200.0_f64, -0.125..0.375_f64, -0.125..0.375_f64), 1..4)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]

    /// Posts and beam pieces over and under size anywhere, cut down to an inner size: no two sticks claim the same wood, and
    /// each holds about what its sizes say.
    #[test]
    fn rough_stock_fits_by_its_inner_size(sizes in prop::collection::vec(over(), 7), kind in 0..6_usize) {
        let mut project = demo::wool_barn();
        project.joinery.stock = StockRule::InnerSize;
        project.frame.scarfs.kind = ScarfKind::ALL[kind];
        (project.frame.brace_along, project.frame.brace_down) = (Length::inches(24.0), Length::inches(24.0));
        let timbers = project.frame.timbers;
        for (mark, sizes) in ["P1", "P2", "P3", "P4", "B1", "B2", "B3"].into_iter().zip(&sizes) {
            let sawn = if mark.starts_with('P') { timbers.post.sawn } else { timbers.beam.sawn };
            let (wide, deep) = (sawn.breadth.to_inches(), sawn.depth.to_inches());
            let all: Vec<Measure> = sizes.iter().map(|(at, b, d)| (*at, wide + b, deep + d)).collect();
            project = measured(project, mark, &all);
        }
        check_nothing_shared(&project);
        let as_sawn = demo::wool_barn();
        let before = wood(&Project { progress: as_sawn.progress.clone(), ..project.clone() });
        for (one, two) in before.iter().zip(wood(&project)) {
            let share = two.volume().to_cubic_inches() / one.volume().to_cubic_inches();
            prop_assert!((0.94..1.1).contains(&share), "{}: {share}", two.mark);
        }
    }
}

/// The sheet weighs the stick as it was measured, and says so; all others stay as sawn. By hand, as above, the frustum's
/// volume; and where both sides grow by a share, its balance lies past the middle.
#[test]
fn the_sheet_weighs_what_was_measured() {
    let project = demo::wool_barn();
    let before = lay_out(&project).built.unwrap();
    let long = before.stick("N1a").unwrap().net_length().to_inches();
    let mut again = measured(project.clone(), "N1a", &[(0.0, 4.0, 2.0), (long, 4.5, 2.25)]);
    again = measured(again, "B1", &[(0.0, 8.25, 10.25)]);
    let after = lay_out(&again).built.unwrap();
    let volume = long / 6.0 * (4.0 * 2.0 + 8.5 * 4.25 + 4.5 * 2.25);
    let purlin = after.stick("N1a").unwrap();
    check(purlin.bulk.volume().to_cubic_inches(), volume, "N1a");
    let share = purlin.green_weight.to_pounds() / before.stick("N1a").unwrap().green_weight.to_pounds();
    check(share, volume / (long * 8.0), "its weight");
    // The section is 8 + 2t + t²/8 along it, t from 0 to 1: its moment over its volume.
    let balance = long * (8.0 / 2.0 + 2.0 / 3.0 + 0.125 / 4.0) / (8.0 + 2.0 / 2.0 + 0.125 / 3.0);
    check(purlin.bulk.balance().to_inches(), balance, "its balance");
    for stick in &after.sticks {
        let is_measured = ["N1a", "B1"].contains(&stick.mark.as_str());
        assert_eq!(stick.weighed(), if is_measured { "as measured" } else { "as sawn" });
        let body = body(&again, &stick.mark);
        check(stick.bulk.volume().to_cubic_inches(), body.volume().to_cubic_inches(), &stick.mark);
        if !is_measured {
            assert_eq!(stick.green_weight, before.stick(&stick.mark).unwrap().green_weight);
        }
    }
    assert!(after.stick("B1").unwrap().green_weight > before.stick("B1").unwrap().green_weight);
}

//! What holds for the strength of every frame, over frames drawn with a fixed seed around the wool barn.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

use std::sync::Arc;

use outshot::analysis::{BeamCase, BeamLine, BeamLoads, BraceModel, Purpose, Solved, beam_line};
use outshot::checks::{Check, Strength};
use outshot::design::Shape;
use outshot::frame::Spring;
use outshot::loads::{Edition, RiskCategory, WindSpeed};
use outshot::members::Grade;
use outshot::project::{Project, RafterRule, ScarfKind, ScarfPlace, demo};
use outshot::units::{AreaLoad, Force, Length, Slope, Stress};
use outshot::{Design, evaluate, lay_out};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;

/// The barn with most numbers that matter moved, deep enough for the figures of the wind, a step of an inch under the eave above: no drift, and nothing slides.
fn projects() -> impl Strategy<Value = Project> {
    let sizes = (150.0..500.0_f64, 100.0..160.0_f64, 125.0..165.0_f64, 1.0..6.0_f64, 16.0..36.0_f64);
    let woods = (0..4_usize, 0..3_usize, any::<bool>(), any::<bool>(), 5.0..70.0_f64, 90.0..140.0_f64);
    let joints = (24.0..32.0_f64, 28.0..40.0_f64, 0..5_usize, 0..3_usize, 2.0..20.0_f64, 6.0..20.0_f64);
    (sizes, woods, joints).prop_map(|(sizes, woods, joints)| {
        let mut project = demo::wool_barn();
        let eighth = |value: f64| Length::inches((value * 8.0).round() / 8.0);
        let (length, bay, reach, pitch, spacing) = sizes;
        let (species, grade, is_dry, is_later, snow, wind) = woods;
        let (along, down, kind, rule, tail, inset) = joints;
        set_posts(&mut project, eighth(length), bay, eighth(inset));
        let frame = &mut project.frame;
        frame.reach = eighth(reach);
        frame.heights.pitch = Slope::in_twelve(pitch);
        frame.rafters.spacing = eighth(spacing);
        frame.rafters.rule = [RafterRule::FromLeft, RafterRule::FromRight, RafterRule::Equal][rule];
        frame.tail = eighth(tail);
        (frame.brace_along, frame.brace_down) = (eighth(along), eighth(down));
        frame.scarfs.kind = ScarfKind::ALL[kind];
        let names = ["eastern_hemlock", "douglas_fir", "white_spruce", "red_oak"];
        frame.species = names[species].to_owned();
        project.wood.timber_grade = [Grade::SelectStructural, Grade::No1, Grade::No2][grade];
        project.wood.lumber_grade = project.wood.timber_grade;
        project.wood.is_dry = is_dry;
        project.place.edition = if is_later { Edition::Asce7_22 } else { Edition::Asce7_16 };
        project.place.ground_snow = Some(AreaLoad::psf(snow));
        project.place.wind_speed = WindSpeed::try_mph(wind);
        project
    })
}

fn set_posts(project: &mut Project, length: Length, bay: f64, inset: Length) {
    let frame = &mut project.frame;
    let n_posts = (length.to_inches() / bay).round().max(1.0) as usize + 1;
    let post = frame.posts[1];
    let step = (length - inset * 2.0) / (n_posts - 1) as f64;
    frame.beam_length = length;
    frame.posts = (0..n_posts)
        .map(|index| {
            let mut post = post;
            post.x = inset + step * index as f64;
            (post.brace_left, post.brace_right) = (index > 0, index + 1 < n_posts);
            post
        })
        .collect();
}

/// So many of them that can be built, always the same.
fn drawn(n: usize) -> Vec<Project> {
    let mut runner = TestRunner::deterministic();
    let mut found = Vec::new();
    for _ in 0..n * 10 {
        let mut project = projects().new_tree(&mut runner).unwrap().current();
        let Some(built) = lay_out(&project).built else { continue };
        project.site.eave_edge = built.shape.clearances.top_of_metal_at_wall + Length::inches(1.0);
        if lay_out(&project).built.is_some() {
            found.push(project);
        }
        if found.len() == n {
            break;
        }
    }
    assert_eq!(found.len(), n, "too few frames can be built");
    found
}

fn strength(project: &Project) -> Arc<Strength> {
    evaluate(project).strength.unwrap_or_else(|| panic!("it has a frame"))
}

/// The worst ratio of sticks whose mark begins so. Left out: uplift, pegs, and unless told otherwise a sunk post, which
/// weight relieves; and what knows no load.
fn worst_under_weight(strength: &Strength, letter: char, with_sunk: bool) -> f64 {
    let pressed = |check: &&Check| {
        let is_marked = check.member.starts_with(letter) && check.member[1..].parse::<usize>().is_ok();
        let combination = &check.combination;
        let is_relieved = combination.starts_with("0.6D") || check.name.contains("pegs");
        let is_sunk = combination.contains(" sunk");
        is_marked && !is_relieved && !combination.is_empty() && (with_sunk || !is_sunk)
    };
    strength.checks.iter().filter(pressed).filter_map(Check::ratio).fold(0.0, f64::max)
}

#[test]
fn more_snow_is_never_easier() {
    let mut n_harder = 0;
    for project in drawn(30) {
        let mut more = project.clone();
        more.place.ground_snow = project.place.ground_snow.map(|snow| snow * 1.4);
        let (one, other) = (strength(&project), strength(&more));
        for letter in ['B', 'R', 'P'] {
            let (before, after) = (worst_under_weight(&one, letter, false), worst_under_weight(&other, letter, true));
            assert!(after >= before - 1e-9, "{letter}: {before} falls to {after}");
            n_harder += usize::from(after > before + 1e-3);
        }
    }
    assert!(n_harder > 60, "only {n_harder} of 90 felt it");
}

fn mirrored(project: &Project, shape: &Shape) -> Project {
    let mut mirror = project.clone();
    let length = project.frame.beam_length;
    let frame = &mut mirror.frame;
    frame.posts.reverse();
    for post in &mut frame.posts {
        post.x = length - post.x;
        (post.brace_left, post.brace_right) = (post.brace_right, post.brace_left);
    }
    let scarfs = shape.beam.scarfs.iter().rev();
    frame.scarfs.by_hand =
        scarfs.map(|s| ScarfPlace { centre: length - s.place.centre, lower: s.place.lower.other() }).collect();
    frame.rafters.rule = match frame.rafters.rule {
        RafterRule::FromLeft => RafterRule::FromRight,
        RafterRule::FromRight => RafterRule::FromLeft,
        RafterRule::Equal => RafterRule::Equal,
    };
    (mirror.site.ground_left, mirror.site.ground_right) = (project.site.ground_right, project.site.ground_left);
    mirror
}

/// Ratios of the checks so named of the sticks so marked, in order of size.
fn ratios(strength: &Strength, is_of: impl Fn(&Check) -> bool) -> Vec<f64> {
    let mut found: Vec<f64> = strength.checks.iter().filter(|check| is_of(check)).filter_map(Check::ratio).collect();
    found.sort_by(f64::total_cmp);
    found
}

/// The push along the wall enters at the left end in both, so that forces differ by the beam's own give: a percent.
fn check_ratios(what: &str, one: &[f64], other: &[f64]) {
    assert_eq!(one.len(), other.len(), "{what}");
    for (a, b) in one.iter().zip(other) {
        assert!((a - b).abs() <= 0.01 * a.abs().max(0.02), "{what}: {a} and {b}");
    }
}

#[test]
fn the_mirror_of_a_frame_is_as_strong() {
    let mut projects = drawn(15);
    projects.push(demo::wool_barn());
    for project in projects {
        let design = evaluate(&project);
        let shape = &design.built.as_ref().unwrap().shape;
        let n_posts = shape.posts.len();
        let turned = mirrored(&project, shape);
        let (one, other) = (design.strength.unwrap(), strength(&turned));
        for number in 1..=n_posts {
            let name = |number: usize| format!("P{number}");
            let of = |strength: &Strength, number| ratios(strength, |check| check.member == name(number));
            check_ratios(&name(number), &of(&one, number), &of(&other, n_posts + 1 - number));
        }
        for kind in ["scarf", "B", "K", "R"] {
            let of = |strength: &Strength| ratios(strength, |check| check.member.starts_with(kind));
            check_ratios(kind, &of(&one), &of(&other));
        }
    }
}

fn loaded(project: &Project, design: &Design) -> (Arc<Strength>, Vec<(f64, f64)>) {
    let strength = design.strength.clone().unwrap();
    let shape = &design.built.as_ref().unwrap().shape;
    let loads = BeamLoads::new(project, shape, &strength.loads);
    let line = strength.line.as_ref().unwrap();
    let sums = line.solved.iter().map(|solved| {
        let case = &line.cases[solved.case];
        let dead: Force = loads.dead(case.is_uplift).iter().sum();
        let all = (dead + loads.own_weight(case.is_uplift)) * case.dead + case.rafters.iter().sum::<Force>();
        (solved.weight.to_pounds(), all.to_pounds())
    });
    let sums = sums.collect();
    (strength, sums)
}

/// What the feet hold up is all that presses, in every case with every model of the braces.
#[test]
fn every_case_is_in_equilibrium() {
    let mut n_cases = 0;
    for project in drawn(20) {
        let design = evaluate(&project);
        let (strength, sums) = loaded(&project, &design);
        let line = strength.line.as_ref().unwrap();
        for (solved, (held, pressing)) in line.solved.iter().zip(sums) {
            let scale = solved.posts.iter().map(|post| post.foot.to_pounds().abs()).sum::<f64>().max(1.0);
            assert!((held - pressing).abs() < 1e-6 * scale, "{held} holds {pressing}: {:?}", line.cases[solved.case]);
            n_cases += 1;
        }
        for (solved, case) in line.purpose(Purpose::Along) {
            let level: f64 = solved.posts.iter().map(|post| post.level.to_pounds()).sum();
            assert!(level >= case.push.to_pounds().abs() - 1e-6, "{level} lb hold {:?}", case.push);
        }
    }
    assert!(n_cases > 1000, "{n_cases}");
}

fn with_joints(project: &Project, shape: &Shape, strength: &Strength, pounds_per_inch: f64) -> BeamLine {
    let mut soft = project.clone();
    soft.fixings.brace_joint.pushed = Spring::pounds_per_inch(pounds_per_inch);
    soft.fixings.brace_joint.pulled = Spring::pounds_per_inch(pounds_per_inch);
    let psi = Stress::psi(1.2e6);
    let stiffness = outshot::analysis::Stiffnesses { beam: psi, post: psi, brace: psi };
    beam_line(&soft, shape, &strength.loads, &stiffness)
}

/// Largest and least moment of the beam and the shoulders' loads.
fn felt(solved: &Solved) -> Vec<f64> {
    let most = solved.beam.iter().map(|part| part.moment.max.to_pound_inches()).fold(f64::MIN, f64::max);
    let least = solved.beam.iter().map(|part| part.moment.min.to_pound_inches()).fold(f64::MAX, f64::min);
    vec![most, least]
}

#[test]
fn joints_between_slack_and_rigid() {
    let mut n_limits = 0;
    for project in drawn(8) {
        let design = evaluate(&project);
        let (shape, strength) = (&design.built.as_ref().unwrap().shape, design.strength.as_ref().unwrap());
        for (stiffness, model) in [(1.0, BraceModel::Slack), (1e9, BraceModel::Rigid)] {
            let line = with_joints(&project, shape, strength, stiffness);
            let of = |wanted| -> Vec<f64> {
                let is_even = |case: &BeamCase| case.purpose == Purpose::Strength;
                let all = line.strength().filter(|(solved, case)| is_even(case) && solved.model == wanted);
                all.flat_map(|(solved, _)| felt(solved)).collect()
            };
            let (sprung, limit) = (of(BraceModel::Sprung(1.0)), of(model));
            // A single bay with a scarf stands by its braces alone: slack, it has no answer.
            if model == BraceModel::Slack && limit.is_empty() {
                continue;
            }
            assert!(sprung.len() == limit.len() && sprung.len() >= 6, "{} and {}", sprung.len(), limit.len());
            n_limits += 1;
            let scale = limit.iter().fold(0.0_f64, |most, value| most.max(value.abs()));
            for (found, expected) in sprung.iter().zip(&limit) {
                assert!((found - expected).abs() < 1e-3 * scale, "{model:?}: {found} is not {expected}");
            }
        }
    }
    assert!(n_limits >= 12, "{n_limits}");
}

/// No check is a number that is none, and none that says nothing.
fn check_sound(strength: &Strength) {
    for check in &strength.checks {
        assert!(check.ratio().is_none_or(|ratio| ratio >= 0.0), "{check:?}");
        assert!(!check.says(outshot::units::UnitSystem::Metric).is_empty());
    }
}

/// Absurd but valid: very heavy, very light, very slender, without braces, on two posts, leaning far out.
#[test]
fn absurd_frames_get_an_answer() {
    type Change = fn(&mut Project);
    let changes: [Change; 14] = [
        |project| project.place.ground_snow = Some(AreaLoad::psf(300.0)),
        |project| project.place.ground_snow = Some(AreaLoad::ZERO),
        |project| project.place.wind_speed = WindSpeed::try_mph(250.0),
        |project| project.place.risk = RiskCategory::IV,
        |project| project.frame.heights.pitch = Slope::in_twelve(0.25),
        |project| project.frame.heights.pitch = Slope::in_twelve(11.0),
        |project| project.frame.timbers.rafter = demo::wool_barn().frame.timbers.block,
        |project| project.frame.timbers.brace.sawn.depth = Length::inches(3.0),
        |project| project.frame.timbers.beam.sawn.depth = Length::inches(10.5),
        |project| set_posts(project, Length::inches(150.0), 200.0, Length::inches(6.0)),
        |project| set_posts(project, Length::inches(400.0), 90.0, Length::inches(30.0)),
        |project| project.frame.posts.iter_mut().for_each(|post| post.brace_left = false),
        |project| {
            project.frame.posts.iter_mut().for_each(|post| (post.brace_left, post.brace_right) = (false, false));
        },
        |project| project.site.eave_edge = Length::inches(400.0),
    ];
    let mut n_answers = 0;
    for (index, change) in changes.iter().enumerate() {
        for (other, second) in changes.iter().enumerate().skip(index) {
            if other % 3 != index % 3 {
                continue;
            }
            let mut project = demo::wool_barn();
            change(&mut project);
            second(&mut project);
            if let Some(strength) = evaluate(&project).strength {
                check_sound(&strength);
                assert!(!strength.checks.is_empty());
                n_answers += 1;
            }
        }
    }
    assert!(n_answers >= 20, "{n_answers}");
}

/// Without braces nothing holds the line along the wall: that is said, and no stick of the line passes.
#[test]
fn without_braces_it_falls_over() {
    let mut project = demo::wool_barn();
    project.frame.posts.iter_mut().for_each(|post| (post.brace_left, post.brace_right) = (false, false));
    let strength = strength(&project);
    assert!(strength.not_judged().any(|check| check.says(project.units).contains("has no answer")));
    assert!(!strength.worst().unwrap().passes());
    let posts = strength.checks.iter().filter(|check| check.member.starts_with('P'));
    for check in posts.filter(|check| !check.combination.is_empty()) {
        assert!(!check.passes(), "{}", check.says(project.units));
    }
}

fn check_withheld(spoil: impl Fn(&mut Project), word: &str, marks: &[char]) {
    let mut project = demo::wool_barn();
    spoil(&mut project);
    let strength = strength(&project);
    check_sound(&strength);
    let missing: Vec<String> = strength.not_judged().map(|check| check.says(project.units)).collect();
    assert!(missing.iter().any(|says| says.contains("not judged") && says.contains(word)), "{word}: {missing:?}");
    assert!(!strength.worst().unwrap().passes(), "{word}");
    // What only lifts is judged by wind alone.
    let lifts = |check: &Check| word != "wind speed" && check.combination.starts_with("0.6D");
    for check in strength.checks.iter().filter(|check| check.member.starts_with(marks) && !lifts(check)) {
        assert!(
            check.combination.is_empty() || !check.passes(),
            "{word} is missing, yet {}",
            check.says(project.units)
        );
    }
}

/// What passes only because a load or a row of the tables is missing has not been judged.
#[test]
fn what_is_missing_lets_nothing_pass() {
    let all = ['R', 'B', 'P', 'K', 's', 't'];
    check_withheld(|project| project.place.ground_snow = None, "ground snow", &all);
    check_withheld(|project| project.place.wind_speed = None, "wind speed", &all);
    check_withheld(|project| project.place.member_force_coefficient = None, "C_f", &['B', 'P', 'K', 's']);
    let step = |project: &mut Project| {
        project.site.eave_edge = Length::inches(220.0);
        project.above.whole_length = None;
    };
    check_withheld(step, "length of the roof above", &all);
    // No row is listed for southern pine of that size (NDS Supplement Table 4B ends at 12 in), and none is guessed.
    let unlisted = |project: &mut Project| {
        project.frame.species = "southern_pine".to_owned();
        project.frame.timbers.rafter.ordered.depth = Length::inches(14.0);
        project.frame.timbers.rafter.sawn.depth = Length::inches(14.0);
    };
    check_withheld(unlisted, "No design values", &['R']);
}

/// Snow and wind lie even along the wall, and braces that act both ways make one answer of them: the beam moves as the loads are.
#[test]
fn the_wind_alone_moves_the_beam_where_it_brings_more_than_snow() {
    let found = |snow: f64, wind: f64| {
        let mut project = demo::wool_barn();
        (project.place.ground_snow, project.place.wind_speed) = (Some(AreaLoad::psf(snow)), WindSpeed::try_mph(wind));
        let strength = evaluate(&project).strength.unwrap();
        let of_beam = |check: &&Check| check.member.starts_with('B') && check.name == "sags under snow, wind or people";
        let check = strength.checks.iter().find(of_beam).unwrap().clone();
        let line = strength.line.as_ref().unwrap();
        let (_, case) = line.purpose(Purpose::LiveMovement).next().unwrap();
        (check.ratio().unwrap(), case.rafters.iter().copied().sum::<Force>(), check.combination)
    };
    let (by_snow, snow, name) = found(40.0, 110.0);
    assert!(snow > Force::ZERO && !name.contains('W'), "{name}");
    let (by_wind, wind, name) = found(0.0, 140.0);
    assert!(name.starts_with("0.6W: "), "{name}");
    assert!((by_wind / by_snow - wind.abs() / snow).abs() < 1e-9, "{by_wind} {by_snow} {wind:?} {snow:?}");
}

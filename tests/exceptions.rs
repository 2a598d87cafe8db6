//! Joints with rules of their own: what they change, and that they change nothing else.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

mod drawn_frames;

use drawn_frames::projects;
use outshot::design::Built;
use outshot::joinery::{Fit, bodies, exception_says, fit};
use outshot::project::{JointException, JointName, MeasuredSize, OwnRule, Project, ScarfKind, Scarfs, demo};
use outshot::solid::{Convex, Within};
use outshot::study::seasoning;
use outshot::tickets::{jigs, mirror_of, templates};
use outshot::units::Length;
use outshot::{evaluate, lay_out};
use proptest::prelude::*;
use std::collections::BTreeSet;
use std::sync::Arc;

fn inches(value: f64) -> Length {
    Length::inches(value)
}

/// A project with that joint's length changed.
fn with(mut project: Project, joint: &str, rule: OwnRule, value: f64) -> Project {
    let own = project.exceptions.entry(joint.to_owned()).or_default();
    *rule.of_mut(own) = Some(inches(value));
    project
}

fn built(project: &Project) -> Arc<Built> {
    let found = lay_out(project);
    found.built.clone().unwrap_or_else(|| panic!("{:?}", found.problems))
}

/// Marks of the sticks whose layout, outline or wood is another.
fn changed(before: &Project, after: &Project) -> Vec<String> {
    let (before, after) = (built(before), built(after));
    let pairs = before.sticks.iter().zip(&after.sticks);
    let is_other = |(one, two): &(&outshot::tickets::Stick, &outshot::tickets::Stick)| {
        assert_eq!(one.mark, two.mark);
        one.layout() != two.layout() || (one.bulk.volume() - two.bulk.volume()).to_cubic_inches().abs() > 1e-6
    };
    pairs.filter(is_other).map(|(_, stick)| stick.mark.clone()).collect()
}

/// What is marked otherwise on that stick, in the words of its sheet, each once.
fn otherwise(before: &Project, after: &Project, mark: &str) -> BTreeSet<String> {
    let (before, after) = (built(before), built(after));
    let (old, new) = (before.stick(mark).unwrap(), after.stick(mark).unwrap());
    let of = |one: &outshot::tickets::Stick, other: &outshot::tickets::Stick| -> Vec<String> {
        let known: BTreeSet<String> = other.marks.iter().map(|mark| mark.key()).collect();
        one.marks.iter().filter(|mark| !known.contains(&mark.key())).map(|mark| mark.what.to_string()).collect()
    };
    of(new, old).into_iter().chain(of(old, new)).collect()
}

fn names(all: &[&str]) -> BTreeSet<String> {
    all.iter().map(|name| (*name).to_owned()).collect()
}

/// By hand: P2's tenon an inch longer is 5 in from its shoulder, its mortise 5½ + ¼ from the face where all others have 4¾.
#[test]
fn a_longer_tenon_changes_the_post_and_its_mortise_and_nothing_else() {
    let barn = demo::wool_barn();
    let longer = with(barn.clone(), "P2", OwnRule::TenonLength, 5.0);
    let over = built(&barn)
        .sticks
        .iter()
        .find(|stick| stick.mark.starts_with('B') && stick.marks.iter().any(|mark| mark.what == "mortise of P2"))
        .unwrap()
        .mark
        .clone();
    assert_eq!(changed(&barn, &longer), ["P2".to_owned(), over.clone()]);
    assert_eq!(otherwise(&barn, &longer, "P2"), names(&["tenon cheeks", "tenon width"]));
    assert_eq!(otherwise(&barn, &longer, &over), names(&["mortise of P2"]));
    let after = built(&longer);
    assert_eq!(after.stick("P2").unwrap().low, -inches(5.0));
    let mortise = after.stick(&over).unwrap().marks.iter().find(|mark| mark.what == "mortise of P2").unwrap().depth;
    assert_eq!(mortise, Some(inches(5.75)));
}

/// Every length a head takes shows on the sheet of both sticks, or on the one that alone has it.
#[test]
fn each_length_of_a_head_reaches_its_sheets() {
    let barn = demo::wool_barn();
    for (rule, value, on_both) in [
        (OwnRule::TenonThickness, 1.5, true),
        (OwnRule::TenonOffset, 1.5, true),
        (OwnRule::TenonLength, 4.5, true),
        (OwnRule::Peg, 0.75, true),
        (OwnRule::PegFromShoulder, 1.75, true),
        (OwnRule::Drawbore, 0.0625, false),
    ] {
        let own = with(barn.clone(), "P3", rule, value);
        let found = changed(&barn, &own);
        assert_eq!(found.first().map(String::as_str), Some("P3"), "{rule:?}");
        assert_eq!(found.len(), if on_both { 2 } else { 1 }, "{rule:?}: {found:?}");
        assert!(found.iter().skip(1).all(|mark| mark.starts_with('B')), "{rule:?}: {found:?}");
    }
    // A head has no housing of its own.
    assert!(changed(&barn, &with(barn.clone(), "P3", OwnRule::Housing, 1.0)).is_empty());
}

/// A brace's tenon of its own changes the brace and the pocket in both its mates.
#[test]
fn a_brace_tenon_changes_the_pocket_in_both_mates() {
    let barn = demo::wool_barn();
    let foot = with(barn.clone(), "K1R foot", OwnRule::TenonLength, 3.0);
    assert_eq!(changed(&barn, &foot), ["P1", "K1R"]);
    assert_eq!(otherwise(&barn, &foot, "P1"), names(&["mortise of K1R"]));
    let both = with(foot, "K1R head", OwnRule::TenonLength, 3.0);
    assert_eq!(changed(&barn, &both), ["P1", "B1", "K1R"]);
    assert_eq!(otherwise(&barn, &both, "B1"), names(&["mortise of K1R"]));
}

/// A deeper housing at a brace's foot leaves the brace on its line: its pocket in the beam stays where it is, and the brace
/// is longer. By hand at 45°: ¼ in deeper is ¼·√2 more from toe to toe.
#[test]
fn a_deeper_housing_keeps_the_brace_on_its_line() {
    let barn = demo::wool_barn();
    for (joint, stick) in [("K2R foot", "P2"), ("K1R head", "B1")] {
        let deeper = with(barn.clone(), joint, OwnRule::Housing, 0.75);
        let brace = joint.split(' ').next().unwrap();
        let mut found = changed(&barn, &deeper);
        found.sort();
        assert_eq!(found, if stick < brace { [stick, brace] } else { [brace, stick] }, "{joint}");
        let shape = &built(&deeper).shape;
        let one = shape.braces.iter().find(|one| one.mark() == brace).unwrap();
        let more = (one.form.long_edge() - shape.brace.long_edge()).to_inches();
        assert!((more - 0.25 * 2.0_f64.sqrt()).abs() < 1e-9, "{more}");
        let changed = otherwise(&barn, &deeper, stick);
        assert!(changed.iter().all(|what| what.contains(brace) || what.starts_with("chamfer")), "{changed:?}");
    }
}

/// Sticks that are cut alike part where a joint is of its own, and meet again where all of them have it.
#[test]
fn a_stick_with_a_joint_of_its_own_is_cut_by_itself() {
    let barn = demo::wool_barn();
    assert_eq!(built(&barn).stick("K1R").unwrap().same_as, None);
    for (rule, value) in [(OwnRule::Peg, 0.75), (OwnRule::TenonThickness, 1.5), (OwnRule::Housing, 0.25)] {
        let own = built(&with(barn.clone(), "K2R foot", rule, value));
        let stick = own.stick("K2R").unwrap();
        assert_eq!(stick.same_as, None, "{rule:?}");
        assert!(own.sticks.iter().all(|other| other.same_as.as_deref() != Some("K2R")), "{rule:?}");
        assert!(mirror_of(&own.sticks, stick).is_none(), "{rule:?}");
    }
    let mut all = barn.clone();
    for mark in built(&barn).shape.braces.iter().map(outshot::geometry::Brace::mark) {
        all = with(all, &format!("{mark} foot"), OwnRule::Peg, 0.75);
        all = with(all, &format!("{mark} head"), OwnRule::Peg, 0.75);
    }
    let all = built(&all);
    assert!(all.shape.braces.iter().skip(1).all(|brace| all.stick(&brace.mark()).unwrap().same_as.is_some()));
}

#[test]
fn a_joint_of_its_own_gets_its_own_template_and_leaves_the_jig() {
    let barn = demo::wool_barn();
    let mut own = with(barn.clone(), "P2", OwnRule::TenonThickness, 1.5);
    own = with(own, "K2R foot", OwnRule::Housing, 0.75);
    own = with(own, "K3L head", OwnRule::TenonLength, 3.0);
    let kind = ScarfKind::ALL.into_iter().find(|kind| *kind != own.frame.scarfs.kind);
    own.exceptions.insert("S1".to_owned(), JointException { scarf_kind: kind, ..JointException::default() });
    let shape = built(&own).shape.clone();
    let all = templates(&own, &shape);
    let keys: Vec<&str> = all.iter().map(|template| template.key.as_str()).collect();
    assert_eq!(keys.iter().collect::<BTreeSet<_>>().len(), keys.len(), "{keys:?}");
    for key in [
        "post-head-of-p2",
        "mortise-of-p2",
        "brace-post-end-of-k2r-foot",
        "pocket-post-right-face-of-k2r-foot",
        "brace-beam-end-of-k3l-head",
    ] {
        let template =
            all.iter().find(|template| template.key == key).unwrap_or_else(|| panic!("no {key} in {keys:?}"));
        assert_eq!(template.serves.len(), 1, "{key}");
        assert!(template.notes.iter().any(|note| note.contains("is not by the rules")), "{key}");
    }
    assert_eq!(keys.iter().filter(|key| key.ends_with("of-s1")).count(), 2, "{keys:?}");
    let head = all.iter().find(|template| template.key == "post-head").unwrap();
    assert_eq!(head.serves, ["P3"]);
    assert!(jigs(&own, &shape).iter().any(|jig| jig.serves.contains("but not P2")));
}

/// By hand: a tenon of 8 in in the barn's beam, housed ½: its mortise ends 8¾ in from the face, 1¼ under the top, where 1½
/// is the least. One of 8½ would leave less than an inch and is refused, 8¼ being the longest.
#[test]
fn too_long_a_tenon_is_found() {
    let barn = demo::wool_barn();
    let long = with(barn.clone(), "P2", OwnRule::TenonLength, 8.0);
    let found = fit(&long, &built(&long).shape).clashes;
    let says: Vec<&str> = found.iter().map(|clash| clash.says.as_str()).collect();
    assert!(says.iter().any(|says| says.contains("only 1 1⁄4″ of wood between mortise of P2 and the top")), "{says:?}");
    assert!(fit(&barn, &built(&barn).shape).clashes.is_empty());
    let refused = lay_out(&with(barn, "P2", OwnRule::TenonLength, 8.5));
    let problem = refused.problems_of("exceptions.P2.tenon_length").next().unwrap();
    assert!(problem.stops() && refused.built.is_none());
    assert_eq!(problem.nearest, Some(outshot::project::Nearest::Length(inches(8.25))));
}

/// By hand: braces opposed in the barn's 8 in post, K2L's tenon 3½ in and K2R's as the rules' 2½ leave 8 − (½ + 3½ + ¼) −
/// (½ + 2½ + ¼) = ½ in of web. The rule and the solids say it of K2L's foot; together the solids do, and offer no tenon for all.
#[test]
fn a_web_of_its_own_is_said_once() {
    let own = with(demo::wool_barn(), "K2L foot", OwnRule::TenonLength, 3.5);
    let design = lay_out(&own);
    let field = "exceptions.K2L foot.tenon_length";
    let rule = design.problems_of(field).next().unwrap();
    assert!(rule.says.contains("a web of 1⁄2″ in P2"), "{}", rule.says);
    let fit = fit(&own, &built(&own).shape);
    assert!(Fit::may_tell(rule) && fit.tells(rule), "{:?}", fit.clashes);
    assert!(fit.clashes.iter().all(|clash| clash.field.as_deref() != Some("joinery.brace_tenon")));
    assert!(fit.clashes.iter().all(|clash| !clash.says.contains("so do brace tenons")), "{:?}", fit.clashes);
    assert!(design.problems_of("joinery.brace_tenon").next().is_none());
}

/// By hand: P2 measures 8¼ in across; K2R's foot is housed ¾ in from the right face as laid out, so 1 in from the real one,
/// K2L's as the rules say ½ in from the left one: on the sheet and in wood, which the brace enters.
#[test]
fn a_housing_of_its_own_in_a_measured_post() {
    let mut own = with(demo::wool_barn(), "K2R foot", OwnRule::Housing, 0.75);
    let size = MeasuredSize { from_zero: inches(30.0), breadth: inches(8.25), depth: inches(8.0) };
    own.progress.sizes.insert("P2".to_owned(), vec![size]);
    let built = built(&own);
    let post = built.stick("P2").unwrap();
    let wood = bodies(&own, &built.shape);
    let body = wood.iter().find(|body| body.mark == "P2").unwrap();
    for (brace, depth) in [("K2R", 1.0), ("K2L", 0.5)] {
        let what = format!("housing of {brace}");
        let mark = post.marks.iter().find(|mark| mark.what == what).unwrap();
        assert!((mark.depth.unwrap().to_inches() - depth).abs() < 1e-9, "{what}: {:?}", mark.depth);
        let cut = body.cuts.iter().find(|cut| cut.what == what).unwrap();
        let within = cut.tools.iter().map(Convex::within).fold(Within::NOTHING, Within::with);
        assert!((within.high.x - within.low.x - depth).abs() < 1e-9, "{what} in wood");
    }
    assert!(fit(&own, &built.shape).clashes.is_empty());
}

/// A drawbore of its own is the least there is to use up, and a scarf with a table has wedges that dry.
#[test]
fn drying_asks_the_joint_that_has_least() {
    let barn = demo::wool_barn();
    let says = |project: &Project, key: &str| -> Option<String> {
        let found = seasoning(project, &built(project)).unwrap();
        found.movements.iter().find(|one| one.key == key).map(|one| one.means.clone())
    };
    assert!(says(&barn, "drawbore").unwrap().contains("still draws"));
    let none = with(barn.clone(), "P2", OwnRule::Drawbore, 0.0);
    assert!(says(&none, "drawbore").unwrap().contains("no longer draws"));
    let mut plain = barn;
    plain.frame.scarfs.kind = ScarfKind::Halved;
    (plain.frame.brace_along, plain.frame.brace_down) = (inches(24.0), inches(24.0));
    assert_eq!(says(&plain, "wedges"), None);
    let scarf_kind = Some(ScarfKind::StopSplayedTabled);
    plain.exceptions.insert("S1".to_owned(), JointException { scarf_kind, ..JointException::default() });
    assert!(says(&plain, "wedges").is_some());
}

#[test]
fn limits_are_those_of_the_rules() {
    for (joint, rule, value) in [
        ("P1", OwnRule::Peg, 3.0),
        ("P1", OwnRule::TenonThickness, 0.25),
        ("K1R head", OwnRule::Housing, 2.5),
        ("K1R foot", OwnRule::Drawbore, 0.5),
        ("K1R foot", OwnRule::TenonOffset, 3.9),
        ("K1R head", OwnRule::TenonLength, 9.0),
    ] {
        let found = lay_out(&with(demo::wool_barn(), joint, rule, value));
        let field = format!("exceptions.{joint}.{}", rule.key());
        assert!(found.problems_of(&field).any(|problem| problem.stops()), "{field}: {:?}", found.problems);
    }
    // Relish, walls and webs are cautions at the joint.
    for (joint, rule, value) in [
        ("P1", OwnRule::PegFromShoulder, 3.0),
        ("P1", OwnRule::TenonOffset, 5.0),
        ("K2R foot", OwnRule::TenonLength, 4.5),
    ] {
        let found = lay_out(&with(demo::wool_barn(), joint, rule, value));
        let own = found.problems.iter().filter(|problem| problem.field.starts_with(&format!("exceptions.{joint}.")));
        assert!(own.count() > 0, "{joint} {rule:?}: {:?}", found.problems);
        assert!(found.built.is_some());
    }
}

/// A joint that is not there counts for nothing and is named; one that comes back counts again.
#[test]
fn a_joint_that_is_gone_is_named() {
    let barn = demo::wool_barn();
    for name in ["P9", "S7", "K1L foot", "K1R", "nonsense", "P02"] {
        let own = with(barn.clone(), name, OwnRule::Peg, 9.0);
        let found = lay_out(&own);
        let field = format!("exceptions.{name}");
        let problem = found.problems_of(&field).next().unwrap();
        assert!(!problem.stops() && problem.says.contains(name), "{name}");
        assert_eq!(found.built, lay_out(&barn).built, "{name}");
    }
    let head = with(barn, "P1", OwnRule::Housing, 1.0);
    assert!(lay_out(&head).problems_of("exceptions.P1.housing").next().is_some());
}

/// One scarf of another kind: both its laps are of that kind on both sheets, it closes, it is judged as such, and the
/// other one is as it was.
#[test]
fn a_scarf_of_another_kind() {
    let barn = demo::wool_barn();
    for kind in ScarfKind::ALL.into_iter().filter(|kind| *kind != barn.frame.scarfs.kind) {
        let mut own = barn.clone();
        own.exceptions.insert("S1".to_owned(), JointException { scarf_kind: Some(kind), ..JointException::default() });
        own.frame.scarfs.by_hand = built(&barn).shape.beam.scarfs.iter().map(|scarf| scarf.place).collect();
        let mut whole = barn.clone();
        whole.frame.scarfs = Scarfs { kind, ..own.frame.scarfs.clone() };
        let (before, after, all) = (built(&barn), built(&own), built(&whole));
        let laps = |built: &Built, scarf: &str| -> Vec<String> {
            let marks = built.sticks.iter().flat_map(|stick| &stick.marks);
            let of = marks.filter(|mark| mark.what.starts_with(&format!("scarf {scarf},")));
            of.map(|mark| format!("{} {} {}", mark.what, mark.key(), mark.note)).collect()
        };
        assert_eq!(laps(&after, "1"), laps(&all, "1"), "{kind:?}");
        assert_eq!(laps(&after, "2"), laps(&before, "2"), "{kind:?}");
        let wood = bodies(&own, &after.shape);
        let beam: Vec<_> = wood.iter().filter(|body| body.mark.starts_with('B')).collect();
        for pair in beam.windows(2) {
            assert!(pair[0].wood.shared(&pair[1].wood).volume().to_cubic_inches() < 1e-6, "{kind:?}");
        }
    }
}

/// A peg of its own works harder where it is thinner: the head that lifts, and the brace that is pulled.
#[test]
fn checks_use_the_rules_of_the_joint() {
    let barn = demo::wool_barn();
    let ratio = |project: &Project, member: &str, name: &str| {
        let strength = evaluate(project).strength.unwrap();
        let found = strength.checks.iter().filter(|check| check.member == member && check.name == name);
        found.filter_map(outshot::checks::Check::ratio).fold(0.0, f64::max)
    };
    let shear = "shears its tenon across the wall";
    // One head is told, the hardest; one with a tenon half as thick beside it, sheared twice as hard.
    let hardest = (1..=4).map(|post| format!("P{post}")).find(|mark| ratio(&barn, mark, shear) > 0.0).unwrap();
    let thin = with(barn.clone(), &hardest, OwnRule::TenonThickness, 1.0);
    assert!((ratio(&thin, &hardest, shear) / ratio(&barn, &hardest, shear) - 2.0).abs() < 0.05);
    let others = (1..=4).map(|post| format!("P{post}")).filter(|mark| *mark != hardest);
    assert_eq!(others.filter(|mark| ratio(&thin, mark, shear) > 0.0).count(), 1);
    // A brace with a thinner peg at one end is told beside the hardest of the others. In Douglas fir (2D of relish, 2.5D to the edge)
    // all have their wood. A peg's own shear goes with D², and the thicker one is held back a little by the wood it presses on.
    let mut barn = barn;
    "douglas_fir".clone_into(&mut barn.frame.species);
    let rules = &mut barn.joinery;
    (rules.brace_tenon, rules.peg) = (Length::inches(3.375), Length::inches(0.875));
    rules.peg_from_shoulder = Length::inches(2.1875);
    let pegs = "is held by its pegs";
    let strength = evaluate(&barn).strength.unwrap();
    let hardest = strength.checks.iter().find(|check| check.name == pegs).unwrap().member.clone();
    let thin = with(barn.clone(), &format!("{hardest} head"), OwnRule::Peg, 0.75);
    let (whole, less) = (ratio(&barn, &hardest, pegs), ratio(&thin, &hardest, pegs));
    let squares = (0.875_f64 / 0.75).powi(2);
    assert!((less / whole / squares - 1.0).abs() < 0.03, "{less} by {whole} is not {squares}");
    let told = evaluate(&thin).strength.unwrap();
    assert_eq!(told.checks.iter().filter(|check| check.name == pegs).count(), 2);
}

/// Rules said again at every joint.
fn said_again(mut project: Project) -> Project {
    for joint in JointName::all(&project, 2) {
        let mut own = JointException { reason: "said again".to_owned(), ..JointException::default() };
        for rule in OwnRule::ALL {
            *rule.of_mut(&mut own) = joint.takes(rule).then(|| rule.in_rules(&project.joinery, joint));
        }
        if matches!(joint, JointName::Scarf(_)) {
            own.scarf_kind = Some(project.frame.scarfs.kind);
        }
        project.exceptions.insert(joint.to_string(), own);
    }
    project
}

#[test]
fn the_rules_said_again_change_nothing_with_the_strength() {
    for project in [demo::wool_barn(), demo::log_store()] {
        let again = said_again(project.clone());
        let n_scarfs = built(&project).shape.beam.scarfs.len();
        let kept = Project {
            exceptions: again
                .exceptions
                .clone()
                .into_iter()
                .filter(|(name, _)| JointName::all(&project, n_scarfs).iter().any(|joint| joint.to_string() == *name))
                .collect(),
            ..again
        };
        assert!(kept.exceptions.len() > 4);
        assert_eq!(evaluate(&kept), evaluate(&project));
        for joint in JointName::all(&kept, n_scarfs) {
            assert_eq!(exception_says(&kept, joint), None);
        }
    }
}

/// Up to six joints of a frame with every length of their own.
fn with_exceptions() -> impl Strategy<Value = Project> {
    let lengths =
        (1.0..2.5_f64, 1.0..2.25_f64, 2.25..2.75_f64, 0.25..0.75_f64, 0.5..1.0_f64, 1.25..1.5_f64, 0.0..0.1875_f64);
    let one = (0..1000_usize, lengths, 0..128_u32, 0..6_usize);
    (projects(), prop::collection::vec(one, 1..6)).prop_map(|(mut project, all)| {
        let joints = JointName::all(&project, 2);
        for (which, lengths, said, kind) in all {
            let joint = joints[which % joints.len()];
            let (thick, offset, long, housing, peg, from, drawbore) = lengths;
            let values = [thick, offset, long, housing, peg, from, drawbore];
            let mut own = JointException::default();
            for (index, (rule, value)) in OwnRule::ALL.into_iter().zip(values).enumerate() {
                let value = if matches!(joint, JointName::PostHead(_)) && rule == OwnRule::TenonLength {
                    value * 2.0
                } else {
                    value
                };
                let is_said = joint.takes(rule) && said & (1 << index) != 0;
                *rule.of_mut(&mut own) = is_said.then(|| inches((value * 32.0).round() / 32.0));
            }
            if matches!(joint, JointName::Scarf(_)) {
                own.scarf_kind = Some(ScarfKind::ALL[kind]);
            }
            project.exceptions.insert(joint.to_string(), own);
        }
        project
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    #[test]
    fn the_rules_said_again_change_nothing(project in projects()) {
        let said = said_again(project.clone());
        let (mut found, expected) = (lay_out(&said), lay_out(&project));
        found.problems.retain(|problem| !problem.says.contains("has no joint S"));
        assert_eq!(found, expected);
    }

    /// Sheets weigh what the solids hold, whatever single joints have of their own, and no two sticks claim the same wood.
    #[test]
    fn sheets_and_solids_agree_with_joints_of_their_own(project in with_exceptions()) {
        let Some(built) = lay_out(&project).built else { return Ok(()) };
        // A pocket may come out where a scarf of another kind leaves too little over it; the frame says so.
        prop_assume!(built.shape.beam.scarfs.iter().all(|scarf| scarf.judged.is_some()));
        let all = bodies(&project, &built.shape);
        for body in &all {
            let bulk = built.stick(&body.mark).unwrap().bulk;
            let (found, expected) = (body.volume().to_cubic_inches(), bulk.volume().to_cubic_inches());
            assert!((found - expected).abs() <= 1e-6 * expected, "{}: {found} in³ is not {expected}", body.mark);
            assert!((body.balance() - bulk.balance()).to_inches().abs() <= 1e-6, "{} balances off", body.mark);
        }
        for stick in &built.sticks {
            // Cut alike is alike in wood.
            if let Some(first) = stick.same_as.as_ref().and_then(|first| built.stick(first)) {
                let off = (stick.bulk.volume() - first.bulk.volume()).to_cubic_inches();
                assert!(off.abs() < 1.0, "{} is called like {}: {off} in³", stick.mark, first.mark);
            }
        }
        let frame: Vec<_> = all.iter().filter(|body| "PBK".contains(&body.mark[..1])).collect();
        for (index, one) in frame.iter().enumerate() {
            for two in &frame[index + 1..] {
                let shared = one.wood.shared(&two.wood).volume().to_cubic_inches();
                assert!(shared < 1e-6, "{} and {} share {shared} in³", one.mark, two.mark);
            }
        }
    }
}

/// Each scarf is put where one of its own kind may be: the same places as where the whole beam has that kind, as long as the
/// other scarf's kind does not matter, and never one that is forbidden.
#[test]
fn scarfs_are_proposed_by_their_own_kind() {
    let barn = demo::wool_barn();
    let tabled = ScarfKind::StopSplayedTabled;
    let own = JointException { scarf_kind: Some(tabled), ..JointException::default() };
    let centres = |project: &Project| -> Vec<Length> {
        built(project).shape.beam.scarfs.iter().map(|scarf| scarf.place.centre).collect()
    };
    let mut one = barn.clone();
    one.exceptions.insert("S1".to_owned(), own.clone());
    assert!(built(&one).shape.beam.scarfs.iter().all(|scarf| scarf.judged.is_some()));
    let mut both = one.clone();
    both.exceptions.insert("S2".to_owned(), own.clone());
    let mut whole = barn.clone();
    whole.frame.scarfs.kind = tabled;
    assert_ne!(centres(&whole), centres(&barn));
    assert_eq!(centres(&both), centres(&whole));
    // The other way round: the frame is tabled, and both scarfs go without.
    let plain = JointException { scarf_kind: Some(barn.frame.scarfs.kind), ..JointException::default() };
    for name in ["S1", "S2"] {
        whole.exceptions.insert(name.to_owned(), plain.clone());
    }
    assert_eq!(centres(&whole), centres(&barn));
    // A kind that finds no place in this frame is said at its scarf, and the frame still stands.
    let mut none = barn.clone();
    let halved = JointException { scarf_kind: Some(ScarfKind::Halved), ..JointException::default() };
    none.exceptions.insert("S1".to_owned(), halved);
    let design = lay_out(&none);
    assert!(design.built.is_some());
    assert!(design.problems.iter().any(|problem| problem.field == "exceptions.S1.scarf_kind"), "{:?}", design.problems);
}

//! What would help: projects that fail by one change of the barn, and the changes that are offered for each.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test stops at the first surprise")]
use outshot::checks::{Check, NEEDS_WOOD, NOTCHED_IN_PULL, Part, Strength, WEAKEST_LINK, roof_checks};
use outshot::evaluate;
use outshot::loads::{DesignCategory, Seismic, WindSpeed};
use outshot::materials::Timber;
use outshot::project::{JointException, Project, ScarfKind, demo};
use outshot::study::{Helps, Remedy, Stepper, can_be_helped, remedies};
use outshot::units::{AreaLoad, Force, Length};

type Change = fn(&mut Project);

/// What makes the barn fail, the part that is asked too much then, and how the check's name begins.
const FAILING: [(&str, Part, &str, Change); 29] = [
    ("weak ties", Part::RafterHead, "pulls on its ties", weak_ties),
    ("weak ties", Part::RafterSeat, "pulls on its ties", weak_ties),
    ("shaken", Part::RafterHead, "pulls on its ties in an earthquake across", |p| {
        p.place.seismic = Some(Seismic { s_ds: 2.0, category: DesignCategory::C, importance: 1.0 });
        p.fixings.rafter_head.sideways = Force::pounds(100.0);
    }),
    ("heavy snow", Part::Beam, "bends", |p| p.place.ground_snow = Some(AreaLoad::psf(80.0))),
    ("thin rafters", Part::Rafter, "bends", |p| sawn(&mut p.frame.timbers.rafter, 2.0, 6.0)),
    ("long tails", Part::Rafter, "reaches out with its tail", |p| p.frame.tail = Length::inches(30.0)),
    ("halved scarfs", Part::Scarf, "is cut thin", |p| {
        let shape = evaluate(p).built.unwrap();
        p.frame.scarfs.by_hand = shape.shape.beam.scarfs.iter().map(|scarf| scarf.place).collect();
        p.frame.scarfs.kind = ScarfKind::Halved;
    }),
    ("the barn", Part::Post, "sway along the wall", |_| {}),
    ("thin posts", Part::Post, "is pushed and bent", |p| {
        sawn(&mut p.frame.timbers.post, 6.0, 6.0);
        p.place.ground_snow = Some(AreaLoad::psf(80.0));
    }),
    ("snow of the hills", Part::Brace, "presses on the end", |p| p.place.ground_snow = Some(AreaLoad::psf(115.0))),
    ("thin ledger", Part::Ledger, "bends", |p| {
        p.site.wall_post_spacing = Length::inches(72.0);
        sawn(&mut p.frame.timbers.ledger, 4.0, 6.0);
        p.fixings.ledger.lowest = Length::inches(3.0);
    }),
    ("weak ties", Part::RafterHead, "is as strong as", weak_ties),
    ("very light footings", Part::Footing, "stays down by its weight", |p| {
        (p.fixings.pier.footing_width, p.fixings.pier.footing_thickness) = (Length::inches(24.0), Length::inches(8.0));
    }),
    ("thin pegs", Part::Pegs, "pulls on its pegs", |p| {
        p.place.wind_speed = WindSpeed::try_mph(115.0);
        p.joinery.peg = Length::inches(0.75);
        heads(p, 1..=4, [None, Some(3.5), Some(7.375)]);
    }),
    ("short tenons", Part::Pegs, NEEDS_WOOD, |p| heads(p, 1..=4, SHORT)),
    ("short tenons", Part::Pegs, "is as strong as", |p| heads(p, 1..=4, SHORT)),
    ("one short tenon", Part::Pegs, NEEDS_WOOD, one_short_tenon),
    ("weak anchors", Part::PostBase, "holds the post down", |p| p.fixings.post_base.pull = Force::pounds(300.0)),
    ("weak anchors aside", Part::PostBase, "holds the post sideways", |p| {
        p.fixings.post_base.sideways = Force::pounds(150.0);
    }),
    ("light footings", Part::Footing, "stays down by its weight", |p| {
        (p.fixings.pier.footing_width, p.fixings.pier.footing_thickness) = (Length::inches(28.0), Length::inches(10.0));
    }),
    ("shallow anchors", Part::Footing, "is held by its concrete", |p| {
        p.fixings.pier.anchor_depth = Length::inches(1.0);
    }),
    ("weak soil", Part::Footing, "presses on the soil", |p| {
        "clay".clone_into(&mut p.ground.soil);
        (p.fixings.pier.footing_width, p.fixings.pier.pier_width) = (Length::inches(24.0), Length::inches(20.0));
    }),
    ("slight piers", Part::Footing, "stands against the push", |p| p.fixings.pier.pier_width = Length::inches(12.0)),
    ("thin footings", Part::Footing, "reach past", |p| p.fixings.pier.footing_thickness = Length::inches(10.0)),
    ("shallow footings", Part::Footing, "lie below the frost", |p| p.ground.frost_depth = Some(Length::inches(66.0))),
    ("thin purlins", Part::Purlin, "bends both ways", |p| sawn(&mut p.frame.timbers.purlin, 3.0, 1.5)),
    ("short purlin screws", Part::PurlinScrews, "pull out", |p| {
        (p.fixings.purlin.fastener, p.fixings.purlin.count) = ("wood_screw_8".to_owned(), 1);
        p.fixings.purlin.length = Length::inches(3.75);
    }),
    ("few sheet screws", Part::SheetScrews, "is pulled over", |p| p.fixings.sheet.spacing = Length::inches(30.0)),
    ("small lag screws", Part::LedgerFixings, "hold the ledger up", |p| {
        "lag_3_8".clone_into(&mut p.fixings.ledger.fastener);
    }),
];

/// Pegs of a post's head, their distance from the shoulder, the tenon's length.
type Head = [Option<f64>; 3];
const SHORT: Head = [Some(1.0), Some(1.5), Some(4.0)];
const LONG: Head = [Some(0.875), Some(3.5), Some(7.375)];

fn heads(project: &mut Project, posts: std::ops::RangeInclusive<usize>, head: Head) {
    "eastern_hemlock".clone_into(&mut project.frame.species);
    let [peg, peg_from_shoulder, tenon_length] = head.map(|size| size.map(Length::inches));
    for post in posts {
        let own = JointException { peg, peg_from_shoulder, tenon_length, ..JointException::default() };
        project.exceptions.insert(format!("P{post}"), own);
    }
}

fn one_short_tenon(project: &mut Project) {
    heads(project, 1..=4, LONG);
    heads(project, 2..=2, SHORT);
}

fn weak_ties(project: &mut Project) {
    project.fixings.rafter_head.pull = Force::pounds(60.0);
    project.fixings.rafter_seat.pull = Force::pounds(60.0);
}

fn sawn(timber: &mut Timber, breadth: f64, depth: f64) {
    for section in [&mut timber.ordered, &mut timber.sawn] {
        (section.breadth, section.depth) = (Length::inches(breadth), Length::inches(depth));
    }
}

fn of<'a>(strength: &'a Strength, part: Part, name: &'a str) -> impl Iterator<Item = &'a Check> {
    strength.checks.iter().filter(move |check| check.part == part && check.name.starts_with(name))
}

/// The worst share of that kind; of a way that of its weakest known link.
fn share(strength: &Strength, failing: &Check) -> f64 {
    let alike = of(strength, failing.part, &failing.name).filter_map(Check::ratio).fold(0.0, f64::max);
    let way = strength.paths.iter().find(|way| way.name == failing.member);
    way.map_or(alike, |way| way.weakest().and_then(|link| link.ratio).unwrap())
}

/// Whether a check of that kind was made or would be, and failed.
fn fails(strength: &Strength, like: &Check) -> bool {
    of(strength, like.part, &like.name).any(|check| !check.passes())
}

#[test]
fn every_failing_project_is_helped() {
    for (what, part, name, change) in FAILING {
        let mut project = demo::wool_barn();
        change(&mut project);
        let design = evaluate(&project);
        let strength = design.strength.unwrap_or_else(|| panic!("{what}: {:?}", design.problems));
        let is_over = |check: &&Check| check.ratio().is_some_and(|ratio| ratio > 1.0);
        let failing = of(&strength, part, name).find(is_over).unwrap_or_else(|| panic!("{what}: {name} holds"));
        let found = remedies(&project, &strength, failing);
        assert!((1..=3).contains(&found.len()), "{what}: {name} has {} remedies", found.len());
        for remedy in &found {
            let says = &remedy.says;
            let after = evaluate(&remedy.project).strength.unwrap();
            // What is done to one scarf alone helps that one.
            let is_one = says.starts_with("scarf ") && says.contains(" alone ");
            let its = of(&after, part, name).filter(|check| check.member == failing.member).find_map(Check::ratio);
            assert_eq!(
                remedy.ratio,
                its.filter(|_| is_one).unwrap_or_else(|| share(&after, failing)),
                "{what}: {says}"
            );
            assert!(remedy.ratio <= 1.0, "{what}: {says}: {}", remedy.ratio);
            let is_way = |check: &Check| check.name == WEAKEST_LINK;
            for check in after.checks.iter().filter(|check| !check.passes() && !is_way(check)) {
                let is_said = fails(&strength, check) || says.contains(&check.says(project.units));
                assert!(is_said, "{what}: {says}, and then {}", check.says(project.units));
            }
        }
        let clean = found.iter().take_while(|remedy| !remedy.says.contains("; but "));
        let prices: Vec<f64> = clean.map(|remedy| remedy.price.to_f64()).collect();
        assert!(prices.is_sorted(), "{what}: {prices:?}");
    }
}

/// By hand: two ties of 60 lb are asked 1.173 of what they may; three are asked 2/3 of that. Those on the beam, asked 1.382, are
/// another kind and stay as they are.
#[test]
fn the_ties_of_a_rafter_are_helped_apart() {
    let mut project = demo::wool_barn();
    weak_ties(&mut project);
    let strength = evaluate(&project).strength.unwrap();
    for (part, asked) in [(Part::RafterHead, 1.173), (Part::RafterSeat, 1.382)] {
        let failing = of(&strength, part, "pulls on its ties").next().unwrap();
        assert!((failing.ratio().unwrap() - asked).abs() < 5e-4);
        let found = remedies(&project, &strength, failing);
        let three = found.iter().find(|remedy| remedy.says.starts_with("3 fasteners")).unwrap();
        assert!((three.ratio - asked * 2.0 / 3.0).abs() < 5e-4, "{}", three.ratio);
        let fixings = &three.project.fixings;
        let counts = (fixings.rafter_head.count, fixings.rafter_seat.count);
        assert_eq!(counts, if part == Part::RafterHead { (3, 2) } else { (2, 3) });
    }
}

/// Each check of a part that can be changed says which: of no part alone are the wall and what is not loaded.
#[test]
fn every_check_has_its_part() {
    for project in [demo::wool_barn(), demo::log_store()] {
        let strength = evaluate(&project).strength.unwrap();
        let whole = strength.checks.iter().filter(|check| check.part == Part::Whole);
        let other: Vec<&str> = whole.filter(|check| check.ratio().is_some()).map(|check| check.name.as_str()).collect();
        assert_eq!(other, Vec::<&str>::new());
    }
}

/// Hemlock wants 4 diameters to the shoulder and to the tenon's end (TFEC 1, from memory). Pegs of 1 in, 1½ in from the shoulder
/// in a tenon of 4 in, have half of that, at every post. Of ¾ in they want 3 in to the shoulder, and so much past the second,
/// 3/8 in farther up, less the drawbore of ⅛ in: 3 + 3/8 + 3 − ⅛ = 6¼.
#[test]
fn every_post_head_gets_its_wood_by_one_change() {
    let mut project = demo::wool_barn();
    project.joinery.drawbore = Length::inches(0.125);
    heads(&mut project, 1..=4, SHORT);
    let strength = evaluate(&project).strength.unwrap();
    let failing: Vec<&Check> = of(&strength, Part::Pegs, NEEDS_WOOD).filter(|check| !check.passes()).collect();
    assert_eq!(failing.len(), 4);
    let found = remedies(&project, &strength, failing[3]);
    let says = "every post’s head with pegs of 3⁄4″, 3″ from the shoulder of a tenon of 6 1⁄4″";
    let remedy = found.iter().find(|remedy| remedy.says == says).unwrap_or_else(|| panic!("{found:?}"));
    let mut long = project.clone();
    heads(&mut long, 1..=4, [Some(0.75), Some(3.0), Some(6.25)]);
    assert_eq!(remedy.project, long);
    let after = evaluate(&remedy.project).strength.unwrap();
    assert!(of(&after, Part::Pegs, NEEDS_WOOD).all(Check::passes));
}

/// A head that alone wants its wood gets it alone.
#[test]
fn one_post_head_gets_its_wood() {
    let mut project = demo::wool_barn();
    one_short_tenon(&mut project);
    let strength = evaluate(&project).strength.unwrap();
    let failing: Vec<&Check> = of(&strength, Part::Pegs, NEEDS_WOOD).filter(|check| !check.passes()).collect();
    assert_eq!(failing.iter().map(|check| check.member.as_str()).collect::<Vec<_>>(), ["P2"]);
    let found = remedies(&project, &strength, failing[0]);
    assert!(!found.is_empty());
    for remedy in found {
        assert!(remedy.says.starts_with("the head of P2 with pegs of "), "{}", remedy.says);
        let before = Project { exceptions: project.exceptions.clone(), ..remedy.project.clone() };
        assert_eq!(before, project);
        let others = |project: &Project| ["P1", "P3", "P4"].map(|post| project.exceptions[post].clone());
        assert_eq!(others(&remedy.project), others(&project));
    }
}

/// A step tries one change, tells how many are left at most, and never takes back what it found without a fault.
#[test]
fn the_search_goes_a_change_at_a_time() {
    let mut project = demo::wool_barn();
    weak_ties(&mut project);
    let strength = evaluate(&project).strength.unwrap();
    let failing = of(&strength, Part::RafterSeat, "pulls on its ties").next().unwrap();
    let mut helps = Helps::new(&project, &strength, failing);
    assert!(helps.found().is_empty());
    let (mut done, mut clean) = (0, Vec::<Remedy>::new());
    loop {
        let progress = helps.next_step();
        assert!(progress.done > done && progress.done <= progress.of, "{progress:?}");
        done = progress.done;
        let found = helps.found();
        assert!(clean.iter().all(|known| found.contains(known)));
        clean = found.into_iter().filter(|remedy| !remedy.says.contains("; but ")).collect();
        if progress.is_done() {
            break;
        }
    }
    assert_eq!(helps.found(), remedies(&project, &strength, failing));
    let after = helps.next_step();
    assert!(after.is_done() && after.done == done);
}

/// The quick look says what the whole judgement says.
#[test]
fn the_roof_alone_is_judged_as_in_the_whole() {
    let mut unloaded = demo::wool_barn();
    unloaded.place.ground_snow = None;
    for project in [demo::wool_barn(), demo::log_store(), unloaded] {
        let design = evaluate(&project);
        let (built, strength) = (design.built.unwrap(), design.strength.unwrap());
        let quick = roof_checks(&project, &built.shape);
        assert!(quick.len() > 10 && quick.iter().all(|check| strength.checks.contains(check)));
        let parts: Vec<Part> = quick.iter().map(|check| check.part).collect();
        let of_them = strength.checks.iter().filter(|check| check.name != WEAKEST_LINK && check.part != Part::Whole);
        let missed = of_them.filter(|check| parts.contains(&check.part) && !quick.contains(check)).count();
        assert_eq!(missed, 0);
    }
}

/// A scarf without fasteners waits for them: bolts that are worked out can be had with one tap, and both scarfs hold then.
#[test]
fn what_is_not_judged_may_be_helped() {
    let mut project = demo::wool_barn();
    project.fixings.scarf.count = 0;
    let strength = evaluate(&project).strength.unwrap();
    let waits = of(&strength, Part::Scarf, "is pulled apart").next().unwrap();
    assert!(waits.ratio().is_none() && can_be_helped(waits));
    let found = remedies(&project, &strength, waits);
    let bolts = &found[0];
    assert!(bolts.says.starts_with("two 1/2 in bolts at each scarf root, with washers of 2″, worked out"), "{found:?}");
    let after = evaluate(&bolts.project).strength.unwrap();
    let shares: Vec<f64> = of(&after, Part::Scarf, "is pulled apart").map(|check| check.ratio().unwrap()).collect();
    assert!(shares.len() == 2 && shares.iter().all(|share| *share <= bolts.ratio), "{shares:?}");
    // A notch that no rule allows in thick rafters is allowed in thin ones.
    let notch = of(&strength, Part::Rafter, NOTCHED_IN_PULL).next().unwrap();
    assert!(notch.ratio().is_none() && can_be_helped(notch));
    let thin = remedies(&project, &strength, notch);
    assert!(thin.iter().any(|remedy| remedy.says.starts_with("rafters of 3x")), "{thin:?}");
    assert!(thin.iter().all(|remedy| (remedy.ratio - 3.0 / 3.5).abs() < 1e-9));
    let wind = of(&strength, Part::Whole, "").find(|check| check.ratio().is_none()).unwrap();
    assert!(!can_be_helped(wind), "{wind:?}");
}

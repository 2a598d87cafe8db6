//! A stick ticked as cut tells of every change to what its sheet says of the cut, and of nothing else.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

use outshot::design::Built;
use outshot::joinery::bodies;
use outshot::lay_out;
use outshot::project::{
    Blocks, FixedHeights, Frame, JoineryRules, JointException, Project, RafterRule, Role, ScarfKind, ScarfPlace, Side,
    StockRule, TailCut, demo,
};
use outshot::tickets::{Stick, cut_problems};
use outshot::units::{Length, Slope, UnitSystem};
use std::collections::BTreeSet;
use std::sync::Arc;

type Change = (&'static str, fn(&mut Project));

fn built(project: &Project) -> Option<Arc<Built>> {
    lay_out(project).built.clone()
}

fn sixty_fourths(length: Length) -> i64 {
    (length.to_inches() * 64.0).round() as i64
}

/// The words of a remark that tell of this stick's cut: names of other sticks without their numbers, and nothing of places
/// on the whole line, of the wall and of the pier.
fn of_the_cut(words: &str) -> String {
    let parts = words.split("; ").filter(|part| {
        let says = [
            "on the whole",
            "in the wall’s post",
            "the wall’s post",
            "check the post",
            "packing",
            "pier P",
            "planned: measure",
        ];
        !says.iter().any(|start| part.starts_with(start))
    });
    let mut text = String::new();
    let mut is_name = false;
    for letter in parts.collect::<Vec<_>>().join("; ").chars() {
        is_name = letter.is_ascii_uppercase() || is_name && letter.is_ascii_digit();
        if !(is_name && letter.is_ascii_digit()) {
            text.push(letter);
        }
    }
    text
}

/// Everything on a stick's sheet that the saw follows.
fn sheet(stick: &Stick) -> Vec<String> {
    let sixty = |lengths: &[Length]| lengths.iter().map(|one| sixty_fourths(*one)).collect::<Vec<_>>();
    let sawn = stick.timber.sawn;
    let mut all = vec![format!("{:?} {}", sixty(&[sawn.breadth, sawn.depth, stick.low, stick.high]), stick.to_left)];
    all.extend(stick.profile.1.corners.iter().map(|point| format!("{:?}", sixty(&[point.x, point.y]))));
    for mark in &stick.marks {
        let (from, to) = mark.across.unwrap_or_default();
        let places = [mark.near, mark.far.unwrap_or_default(), from, to, mark.depth.unwrap_or_default()];
        // How many screws hold a purlin on a rafter is counted on the roof.
        let is_on_roof = stick.role == Role::Purlin && mark.what.starts_with("centre of");
        let note = if is_on_roof { String::new() } else { of_the_cut(&mark.note) };
        let what = of_the_cut(&mark.what);
        all.push(format!("{what} {:?} {:?} {:?} {:?} {note}", mark.face, mark.across_from, mark.waste, sixty(&places)));
    }
    all
}

/// The project with every stick ticked, each with its layout or the older half of it.
fn all_cut(project: &Project, is_old: bool) -> Project {
    let mut cut = project.clone();
    for stick in &built(project).unwrap().sticks {
        let layout = stick.layout();
        let kept = if is_old { layout[..16].to_owned() } else { layout };
        cut.progress.cut.insert(stick.mark.clone(), kept);
    }
    cut
}

/// Marks of the cut sticks that are told as no longer fitting.
fn told(project: &Project) -> BTreeSet<String> {
    let problems = cut_problems(&project.progress, &built(project).unwrap().sticks);
    problems.into_iter().filter_map(|problem| Some(problem.field.strip_prefix("progress.cut.")?.to_owned())).collect()
}

/// Marks of the sticks whose sheet is another, or that are gone.
fn other_sheet(before: &Built, after: &Built) -> BTreeSet<String> {
    let is_other = |stick: &&Stick| after.stick(&stick.mark).is_none_or(|now| sheet(now) != sheet(stick));
    before.sticks.iter().filter(is_other).map(|stick| stick.mark.clone()).collect()
}

/// Changes each in turn; the names of those that changed some stick.
fn check(project: &Project, changes: &[Change]) -> BTreeSet<&'static str> {
    let before = built(project).unwrap();
    let cut = all_cut(project, false);
    assert_eq!(told(&cut), BTreeSet::new());
    let mut seen = BTreeSet::new();
    for (name, change) in changes {
        let mut changed = cut.clone();
        change(&mut changed);
        let Some(after) = built(&changed) else { continue };
        let expected = other_sheet(&before, &after);
        let found = told(&changed);
        assert_eq!(found, expected, "{name}, scarfs {}", changed.frame.scarfs.kind.name());
        if !expected.is_empty() {
            seen.insert(*name);
        }
    }
    seen
}

/// A curved barn with that scarf, its places by hand so that they stay.
fn barn(kind: ScarfKind) -> Project {
    let mut project = demo::wool_barn();
    project.frame.brace_rise = Length::inches(1.0);
    more(&mut project.frame.timbers.beam.sawn.depth, 0.125);
    let places = built(&project).unwrap().shape.beam.scarfs.iter().map(|scarf| scarf.place).collect();
    project.frame.scarfs.by_hand = places;
    project.frame.scarfs.kind = kind;
    project
}

const fn more(length: &mut Length, inches: f64) {
    *length = Length::inches(length.to_inches() + inches);
}

/// Every rule in turn. One that is not listed here does not compile.
fn of_rules() -> Vec<Change> {
    let JoineryRules {
        tenon_thickness: _,
        tenon_offset: _,
        post_tenon: _,
        brace_tenon: _,
        blind_clearance: _,
        stock: _,
        housing: _,
        pocket_clearance: _,
        end_shoulder: _,
        peg: _,
        peg_from_shoulder: _,
        two_pegs_from: _,
        drawbore: _,
        scarf_abutment_share: _,
        scarf_squint: _,
        scarf_blade: _,
        scarf_table: _,
        scarf_wedge: _,
        scarf_clear: _,
        wood_over_pocket: _,
        least_web: _,
        chamfer: _,
        chamfer_stop: _,
        shrink_clearance: _,
    } = JoineryRules::inch_defaults();
    vec![
        ("tenon_thickness", |project| more(&mut project.joinery.tenon_thickness, -0.25)),
        ("tenon_offset", |project| more(&mut project.joinery.tenon_offset, -0.25)),
        ("post_tenon", |project| more(&mut project.joinery.post_tenon, 0.5)),
        ("brace_tenon", |project| more(&mut project.joinery.brace_tenon, -0.25)),
        ("blind_clearance", |project| more(&mut project.joinery.blind_clearance, 0.125)),
        ("stock", |project| project.joinery.stock = StockRule::TrueStock),
        ("housing", |project| more(&mut project.joinery.housing, -0.125)),
        ("pocket_clearance", |project| more(&mut project.joinery.pocket_clearance, 0.125)),
        ("end_shoulder", |project| more(&mut project.joinery.end_shoulder, 0.25)),
        ("peg", |project| more(&mut project.joinery.peg, -0.25)),
        ("peg_from_shoulder", |project| more(&mut project.joinery.peg_from_shoulder, 0.125)),
        ("two_pegs_from", |project| more(&mut project.joinery.two_pegs_from, 12.0)),
        ("drawbore", |project| more(&mut project.joinery.drawbore, -0.0625)),
        ("scarf_abutment_share", |project| project.joinery.scarf_abutment_share = 0.2),
        ("scarf_squint", |project| more(&mut project.joinery.scarf_squint, -0.125)),
        ("scarf_blade", |project| more(&mut project.joinery.scarf_blade, -0.5)),
        ("scarf_table", |project| more(&mut project.joinery.scarf_table, -0.25)),
        ("scarf_wedge", |project| more(&mut project.joinery.scarf_wedge, 0.125)),
        ("scarf_clear", |project| more(&mut project.joinery.scarf_clear, -0.5)),
        ("wood_over_pocket", |project| more(&mut project.joinery.wood_over_pocket, -0.25)),
        ("least_web", |project| more(&mut project.joinery.least_web, -0.25)),
        ("chamfer", |project| more(&mut project.joinery.chamfer, 0.125)),
        ("no chamfer", |project| project.joinery.chamfer = Length::ZERO),
        ("chamfer_stop", |project| more(&mut project.joinery.chamfer_stop, 1.0)),
        ("shrink_clearance", |project| more(&mut project.joinery.shrink_clearance, 0.0625)),
    ]
}

/// Every field of the frame in turn. One that is not listed here does not compile.
fn of_frame() -> Vec<Change> {
    let Frame {
        reach: _,
        beam_length: _,
        heights: _,
        ledger_packing: _,
        wall_gap: _,
        tail: _,
        tail_cut: _,
        ledger_seat_length: _,
        beam_seat_length: _,
        posts: _,
        stand_off: _,
        brace_along: _,
        brace_down: _,
        brace_rise: _,
        rafters: _,
        scarfs: _,
        ledger_lap: _,
        ledger_splices: _,
        blocks: _,
        timbers: _,
        species: _,
    } = demo::wool_barn().frame;
    let mut all: Vec<Change> = vec![
        ("reach", |project| more(&mut project.frame.reach, 1.0)),
        ("beam_length", |project| more(&mut project.frame.beam_length, 1.0)),
        ("fixed", |project| project.frame.heights.fixed = FixedHeights::LedgerAndBeam),
        ("pitch", |project| {
            project.frame.heights.fixed = FixedHeights::PitchAndBeam;
            project.frame.heights.pitch = Slope::in_twelve(3.125);
        }),
        ("ledger_seat", |project| more(&mut project.frame.heights.ledger_seat, 0.5)),
        ("beam_seat", |project| more(&mut project.frame.heights.beam_seat, 0.5)),
        ("ledger_packing", |project| more(&mut project.frame.ledger_packing, 0.25)),
        ("wall_gap", |project| more(&mut project.frame.wall_gap, 0.25)),
        ("tail", |project| more(&mut project.frame.tail, 0.5)),
        ("tail_cut", |project| {
            let cut = &mut project.frame.tail_cut;
            *cut = if *cut == TailCut::Plumb { TailCut::Square } else { TailCut::Plumb };
        }),
        ("ledger_seat_length", |project| more(&mut project.frame.ledger_seat_length, 0.125)),
        ("beam_seat_length", |project| more(&mut project.frame.beam_seat_length, 0.125)),
        ("post x", |project| more(&mut project.frame.posts[1].x, 0.5)),
        ("pier_top", |project| more(&mut project.frame.posts[2].pier_top, 0.5)),
        ("pier_measured", |project| project.frame.posts[2].pier_measured ^= true),
        ("no brace", |project| project.frame.posts[1].brace_left = false),
        ("stand_off", |project| more(&mut project.frame.stand_off, 0.25)),
        ("brace_along", |project| more(&mut project.frame.brace_along, -1.0)),
        ("brace_down", |project| more(&mut project.frame.brace_down, -1.0)),
        ("brace_rise", |project| more(&mut project.frame.brace_rise, -0.25)),
        ("straight braces", |project| project.frame.brace_rise = Length::ZERO),
        ("spacing", |project| more(&mut project.frame.rafters.spacing, 1.0)),
        ("inset", |project| more(&mut project.frame.rafters.inset, 0.5)),
        ("rule", |project| project.frame.rafters.rule = RafterRule::FromRight),
        ("halved", |project| project.frame.scarfs.kind = ScarfKind::Halved),
        ("halved, squinted", |project| project.frame.scarfs.kind = ScarfKind::HalvedUnderSquinted),
        ("bladed", |project| project.frame.scarfs.kind = ScarfKind::Bladed),
        ("splayed", |project| project.frame.scarfs.kind = ScarfKind::StopSplayed),
        ("splayed, squinted", |project| project.frame.scarfs.kind = ScarfKind::StopSplayedUnderSquinted),
        ("tabled", |project| project.frame.scarfs.kind = ScarfKind::StopSplayedTabled),
        ("lap", |project| more(&mut project.frame.scarfs.lap, -1.0)),
        ("lower", |project| turn_over(&mut project.frame.scarfs.by_hand[0])),
        ("ledger_lap", |project| more(&mut project.frame.ledger_lap, 1.0)),
        ("ledger_splices", |project| {
            let splice = built(project).unwrap().shape.ledger[0].end - project.frame.ledger_lap / 2.0;
            project.frame.ledger_splices = vec![splice - Length::inches(32.0)];
        }),
        ("blocks", |project| project.frame.blocks = Blocks::None),
        ("species", |project| project.frame.species = "eastern_white_pine".to_owned()),
    ];
    all.extend(of_timbers());
    all
}

fn turn_over(place: &mut ScarfPlace) {
    place.lower = if place.lower == Side::Left { Side::Right } else { Side::Left };
}

fn of_timbers() -> [Change; 14] {
    fn broader(project: &mut Project, role: Role) {
        more(&mut project.frame.timbers.of_mut(role).sawn.breadth, 0.25);
    }
    fn deeper(project: &mut Project, role: Role) {
        more(&mut project.frame.timbers.of_mut(role).sawn.depth, 0.25);
    }
    [
        ("post breadth", |project| broader(project, Role::Post)),
        ("post depth", |project| deeper(project, Role::Post)),
        ("beam breadth", |project| broader(project, Role::Beam)),
        ("beam depth", |project| deeper(project, Role::Beam)),
        ("brace breadth", |project| broader(project, Role::Brace)),
        ("brace depth", |project| deeper(project, Role::Brace)),
        ("rafter breadth", |project| broader(project, Role::Rafter)),
        ("rafter depth", |project| deeper(project, Role::Rafter)),
        ("ledger breadth", |project| broader(project, Role::Ledger)),
        ("ledger depth", |project| deeper(project, Role::Ledger)),
        ("purlin breadth", |project| broader(project, Role::Purlin)),
        ("purlin depth", |project| deeper(project, Role::Purlin)),
        ("block breadth", |project| broader(project, Role::Block)),
        ("block depth", |project| deeper(project, Role::Block)),
    ]
}

/// What else a sheet is made from.
fn of_the_rest() -> Vec<Change> {
    fn own(project: &mut Project, joint: &str, change: impl Fn(&mut JointException)) {
        change(project.exceptions.entry(joint.to_owned()).or_default());
    }
    vec![
        ("own peg", |project| own(project, "P2", |own| own.peg = Some(Length::inches(0.75)))),
        ("own drawbore", |project| own(project, "K1R foot", |own| own.drawbore = Some(Length::inches(0.0625)))),
        ("own housing", |project| own(project, "K2R head", |own| own.housing = Some(Length::inches(0.375)))),
        ("own scarf", |project| own(project, "S1", |own| own.scarf_kind = Some(ScarfKind::Halved))),
        ("a reason", |project| own(project, "P2", |own| own.reason = "a check in it".to_owned())),
        ("ledger fixings' rows", |project| project.fixings.ledger.rows += 1),
        ("ledger fixings' length", |project| more(&mut project.fixings.ledger.length, 1.0)),
        ("purlin screws", |project| project.fixings.purlin.count += 1),
        ("purlin spacing", |project| more(&mut project.roofing.purlin_spacing, -2.0)),
        ("purlin overhang", |project| more(&mut project.site.eave_edge, 1.0)),
    ]
}

#[test]
fn each_change_is_told_on_the_sticks_whose_sheet_it_changes_and_on_no_other() {
    let rules = of_rules();
    let changes = [of_rules(), of_frame(), of_the_rest()].concat();
    let mut seen = BTreeSet::new();
    for kind in ScarfKind::ALL {
        let is_all = matches!(kind, ScarfKind::StopSplayedTabled | ScarfKind::Halved);
        seen.extend(check(&barn(kind), if is_all { &changes } else { &rules }));
    }
    // What only judges a frame, or is already so, changes no stick; nor do what goes into the wall, a reason or the wood of another tree.
    let silent = [
        "a reason",
        "fixed",
        "ledger fixings' length",
        "ledger_seat",
        "least_web",
        "pier_measured",
        "purlin overhang",
        "scarf_clear",
        "species",
        "wood_over_pocket",
    ];
    let unseen: Vec<&str> = changes.iter().map(|(name, _)| *name).filter(|name| !seen.contains(name)).collect();
    let expected: Vec<&str> = unseen.iter().copied().filter(|name| silent.contains(name)).collect();
    assert_eq!(unseen, expected, "changes no stick");
}

/// The sheets could forget something that the wood does not.
#[test]
fn each_stick_that_is_other_wood_is_told() {
    let changes = [of_rules(), of_frame(), of_the_rest()].concat();
    for kind in [ScarfKind::StopSplayedTabled, ScarfKind::Bladed] {
        let project = barn(kind);
        let wood = |project: &Project| {
            let shape = &built(project)?.shape;
            let all = bodies(project, shape).into_iter();
            let of = |mark: String, volume: f64, balance: f64| (mark, (volume, balance));
            let said =
                all.map(|body| of(body.mark.clone(), body.volume().to_cubic_inches(), body.balance().to_inches()));
            Some(said.collect::<std::collections::BTreeMap<_, _>>())
        };
        let (cut, before) = (all_cut(&project, false), wood(&project).unwrap());
        for (name, change) in &changes {
            let mut changed = cut.clone();
            change(&mut changed);
            let Some(after) = wood(&changed) else { continue };
            let told = told(&changed);
            for (mark, (volume, balance)) in &before {
                let is_same = |now: &(f64, f64)| (now.0 - volume).abs() < 0.02 && (now.1 - balance).abs() < 0.02;
                let is_told = told.contains(mark);
                assert!(
                    is_told || after.get(mark).is_some_and(is_same),
                    "{name}: {mark} is other wood and is not told"
                );
            }
        }
    }
}

/// Ticks kept by the places of the marks alone stay good, and still tell when a place moves.
#[test]
fn an_older_tick_is_held_to_what_it_knows() {
    let old = all_cut(&barn(ScarfKind::StopSplayedTabled), true);
    assert_eq!(told(&old), BTreeSet::new());
    let mut changed = old.clone();
    changed.joinery.scarf_wedge = Length::inches(0.75);
    changed.joinery.chamfer = Length::inches(0.375);
    let moved = told(&changed);
    assert!(moved.iter().all(|mark| mark.starts_with('B')), "the table's step moves with the wedges' gap: {moved:?}");
    let mut changed = old.clone();
    changed.joinery.peg = Length::inches(0.75);
    let by_peg = told(&changed);
    let all = all_cut(&barn(ScarfKind::StopSplayedTabled), false);
    let mut anew = all.clone();
    anew.joinery.peg = Length::inches(0.75);
    assert!(by_peg.is_subset(&told(&anew)) && by_peg.len() < told(&anew).len());
    let mut changed = old;
    changed.frame.rafters.spacing = Length::inches(30.0);
    assert!(told(&changed).contains("B1"));
}

/// Remarks are in the user's units, what is compared is not.
#[test]
fn other_units_change_no_stick() {
    for kind in ScarfKind::ALL {
        let mut cut = all_cut(&barn(kind), false);
        cut.units = UnitSystem::Metric;
        assert_eq!(told(&cut), BTreeSet::new());
    }
}

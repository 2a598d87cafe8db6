//! What holds for every frame, over frames drawn at random around the examples.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

mod drawn_frames;

use drawn_frames::projects;
use outshot::frame::Spring;
use outshot::geometry::{LedgerPiece, Point, wall_posts};
use outshot::loads::{DesignCategory, Seismic, Thermal, WindSpeed};
use outshot::members::Property;
use outshot::project::{FixedHeights, OwnValue, Project, RafterRule, ScarfPlace, SheetLayout, Side, Used, demo, file};
use outshot::tickets::{Face, Mark, MarkKind, Role, Stick};
use outshot::units::{AreaLoad, Force, Length, Money, Slope, Stress};
use outshot::{Built, evaluate};
use proptest::prelude::*;
use proptest::strategy::ValueTree;

const HAIR: f64 = 1e-6;

fn check(what: &str, found: Length, expected: Length) {
    let off = (found - expected).to_inches().abs();
    assert!(off <= HAIR, "{what}: {found:?} is not {expected:?}");
}

fn built(project: &Project) -> Option<std::sync::Arc<Built>> {
    evaluate(project).built
}

/// What is measured between two edges on a face.
type Edges = (Face, i64, i64, i64, i64, i64);

fn micro(length: Length) -> i64 {
    (length.to_inches() * 1e4).round() as i64
}

fn edges(mark: &Mark, turn: impl Fn(&Mark) -> (Face, Length, Length, Option<(Length, Length)>)) -> Edges {
    let (face, near, far, across) = turn(mark);
    let (a, b) = across.unwrap_or_default();
    (face, micro(near), micro(far), micro(a), micro(b), micro(mark.depth.unwrap_or_default()))
}

fn all_edges(stick: &Stick, turn: impl Fn(&Mark) -> (Face, Length, Length, Option<(Length, Length)>)) -> Vec<Edges> {
    // Pegs stagger from the left and a scarf's table is named by its piece; both are one-handed by rule.
    let marks = stick.marks.iter().filter(|mark| mark.kind != MarkKind::Peg);
    marks.map(|mark| edges(mark, &turn)).collect()
}

/// Each mark of one has its like in the other, to a ten-thousandth of an inch.
fn check_edges(these: &[Edges], those: &[Edges]) {
    assert_eq!(these.len(), those.len());
    for this in these {
        let near = |a: i64, b: i64| (a - b).abs() <= 1;
        let is_like = |that: &Edges| {
            this.0 == that.0
                && near(this.1, that.1)
                && near(this.2, that.2)
                && near(this.3, that.3)
                && near(this.4, that.4)
                && near(this.5, that.5)
        };
        assert!(those.iter().any(is_like), "{this:?} has no mirror in {those:?}");
    }
}

fn mirrored(project: &Project, built: &Built) -> Project {
    let mut mirror = project.clone();
    let length = project.frame.beam_length;
    let frame = &mut mirror.frame;
    frame.posts = project
        .frame
        .posts
        .iter()
        .rev()
        .map(|post| {
            let mut post = *post;
            post.x = length - post.x;
            (post.brace_left, post.brace_right) = (post.brace_right, post.brace_left);
            post
        })
        .collect();
    frame.scarfs.by_hand = built
        .shape
        .beam
        .scarfs
        .iter()
        .rev()
        .map(|scarf| ScarfPlace { centre: length - scarf.place.centre, lower: scarf.place.lower.other() })
        .collect();
    frame.rafters.rule = match project.frame.rafters.rule {
        RafterRule::FromLeft => RafterRule::FromRight,
        RafterRule::FromRight => RafterRule::FromLeft,
        RafterRule::Equal => RafterRule::Equal,
    };
    (mirror.site.ground_left, mirror.site.ground_right) = (project.site.ground_right, project.site.ground_left);
    let half = frame.ledger_lap / 2.0;
    let splices = built.shape.ledger.iter().filter(|piece| piece.right_splice).rev();
    frame.ledger_splices = splices.map(|piece| length - (piece.end - half)).collect();
    if let Some(last) = wall_posts(&project.site, length).last() {
        mirror.site.first_wall_post = length - *last;
    }
    mirror
}

/// Splices said by hand are where they were said, and each piece is as long as its mirror.
fn check_ledgers(one: &Built, other: &Built) {
    let lengths = |built: &Built| built.shape.ledger.iter().map(LedgerPiece::length).collect::<Vec<_>>();
    let (these, mut those) = (lengths(one), lengths(other));
    those.reverse();
    assert_eq!(these.len(), those.len());
    assert!(these.iter().zip(&those).all(|(a, b)| a.is_near(*b, Length::inches(1e-6))), "{these:?} {those:?}");
}

fn check_mirror(project: &Project, built: &Built) {
    let mirror = mirrored(project, built);
    let turned = evaluate(&mirror).built.unwrap_or_else(|| panic!("the mirror of a frame is a frame"));
    check_ledgers(built, &turned);
    let n_pieces = built.shape.beam.pieces.len();
    let as_is = |mark: &Mark| (mark.face, mark.near, mark.far.unwrap_or(mark.near), mark.across);
    for number in 1..=n_pieces {
        let piece = built.stick(&format!("B{number}")).unwrap();
        let other = turned.stick(&format!("B{}", n_pieces + 1 - number)).unwrap();
        let flipped = |mark: &Mark| {
            let (near, far) = mark.from_far_end(other.high);
            (mark.face, near, far.unwrap_or(near), mark.across)
        };
        check_edges(&all_edges(piece, as_is), &all_edges(other, flipped));
    }
    let n_posts = built.shape.posts.len();
    let breadth = project.frame.timbers.post.sawn.breadth;
    for number in 1..=n_posts {
        let post = built.stick(&format!("P{number}")).unwrap();
        let other = turned.stick(&format!("P{}", n_posts + 1 - number)).unwrap();
        let flipped = |mark: &Mark| {
            let face = match mark.face {
                // A bolt's hole goes right through: it is marked on the reference face of either hand.
                Face::Left if mark.kind == MarkKind::Fixing => Face::Left,
                Face::Left => Face::Right,
                Face::Right => Face::Left,
                other => other,
            };
            let from_left = mark.across_from == Some(Face::Left);
            let across = mark.across.map(|(a, b)| if from_left { (breadth - b, breadth - a) } else { (a, b) });
            (face, mark.near, mark.far.unwrap_or(mark.near), across)
        };
        let without_cheeks = |mut all: Vec<Edges>| {
            // Cheeks are drawn on the reference face, which is always the left one.
            all.retain(|edge| !(matches!(edge.0, Face::Left | Face::Right) && edge.1 < 0));
            all
        };
        check_edges(&without_cheeks(all_edges(post, as_is)), &without_cheeks(all_edges(other, flipped)));
    }
}

/// Every seat's corner and end lie in the level plane of its support, within the support.
fn check_seats(project: &Project, built: &Built) {
    let (line, rafter) = (&built.shape.line, &built.shape.rafter);
    for (notch, height, heel) in
        [(&rafter.ledger, line.ledger_seat, line.ledger_heel), (&rafter.beam, line.beam_seat, line.beam_heel)]
    {
        let place = |point: Point| rafter.place(line, point);
        check("corner on its support", place(notch.corner).y, height);
        check("seat end on its support", place(notch.seat_end).y, height);
        check("heel at its support's face", place(notch.corner).x, heel);
        check("heel plumb", place(notch.heel_below).x, heel);
        check("seat", place(notch.corner).x - place(notch.seat_end).x, notch.seat);
    }
    check("head", rafter.place(line, rafter.head.0).x, project.frame.wall_gap);
    check("tail", rafter.place(line, rafter.tail.0).x, project.frame.reach + project.frame.tail);
}

fn check_lengths(project: &Project, built: &Built) {
    let shape = &built.shape;
    let sum: Length = shape.beam.pieces.iter().map(outshot::geometry::BeamPiece::length).sum();
    let laps = project.frame.scarfs.lap * shape.beam.scarfs.len() as f64;
    check("sum of the beam's pieces", sum, project.frame.beam_length + laps);
    let ledger: Length = shape.ledger.iter().map(LedgerPiece::length).sum();
    let splices = project.frame.ledger_lap * (shape.ledger.len() - 1) as f64;
    check("sum of the ledger's pieces", ledger, project.frame.beam_length + splices);
    for row in &shape.purlins {
        let sum: Length = row.pieces.iter().map(outshot::geometry::PurlinPiece::length).sum();
        check("sum of a purlin row", sum, built.sheets.width);
        for butt in row.pieces.iter().filter_map(|piece| piece.right) {
            check("butt on its rafter", butt.x, shape.rafters[butt.rafter - 1]);
        }
    }
    let covers: Length = built.sheets.sheets.iter().map(|sheet| sheet.cover).sum();
    check("sheets", covers, built.sheets.width);
}

/// Every stick is ordered once, and nothing comes out of stock that is too short for it.
fn check_order(project: &Project, built: &Built) {
    let order = &built.order;
    let mut held: Vec<&String> = order.lines.iter().flat_map(|line| line.holds.iter().flatten()).collect();
    held.extend(order.unplaced.iter().map(|(mark, _)| mark));
    held.sort_unstable();
    let mut marks: Vec<&String> = built.sticks.iter().map(|stick| &stick.mark).collect();
    marks.sort_unstable();
    assert_eq!(held, marks);
    for line in &order.lines {
        for bar in &line.holds {
            let needed: Length = bar
                .iter()
                .map(|mark| order.sticks.iter().find(|stick| stick.mark == *mark).unwrap())
                .map(|stick| stick.net + stick.allowance)
                .sum();
            let kerfs = project.mill.kerf * (bar.len() - 1) as f64;
            assert!(needed + kerfs <= line.length + Length::inches(0.001), "{bar:?} in {:?}", line.length);
        }
    }
}

fn check_marks(built: &Built) {
    for stick in &built.sticks {
        let balance = stick.bulk.balance();
        assert!(balance > stick.low && balance < stick.high, "{} balances outside itself", stick.mark);
        for mark in &stick.marks {
            let far = mark.far.unwrap_or(mark.near);
            assert!(mark.near <= far, "{}: {} is back to front", stick.mark, mark.what);
            let (near_back, far_back) = mark.from_far_end(stick.high);
            let length = stick.net_length();
            check("from both ends", far_back.unwrap_or(near_back) + (mark.near - stick.low), length);
            check("from both ends", near_back + (far - stick.low), length);
            let slack = Length::inches(1e-6);
            assert!(
                mark.near >= stick.low - slack && far <= stick.high + slack,
                "{}: {} lies outside the stick",
                stick.mark,
                mark.what
            );
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn every_frame_adds_up(project in projects()) {
        if let Some(built) = built(&project) {
            check_lengths(&project, &built);
            check_seats(&project, &built);
            check_marks(&built);
            check_order(&project, &built);
        }
    }

    #[test]
    fn the_mirror_of_a_frame_has_mirrored_marks(project in projects()) {
        if let Some(built) = built(&project) {
            check_mirror(&project, &built);
        }
    }

    #[test]
    fn a_file_keeps_every_bit(project in projects()) {
        prop_assert_eq!(file::read(&file::write(&project)).unwrap(), project);
    }

    /// Nonsense is answered, never met with a panic: one field at a time gets a wild value.
    #[test]
    fn wild_values_are_refused_in_words(which in 0..N_SPOILED, wild in prop_oneof![
        Just(0.0), Just(-1.0), Just(1e-9), Just(1e9), -1e4..1e4_f64, 0.0..30.0_f64
    ]) {
        let mut project = demo::wool_barn();
        spoil(&mut project, which, wild);
        let design = evaluate(&project);
        prop_assert!(design.built.is_some() != design.is_stopped(), "{:?}", design.problems);
        prop_assert!(design.problems.iter().all(|problem| !problem.says.is_empty() && !problem.field.is_empty()));
    }

    /// Pressing "use the nearest value" until nothing stops the frame comes to an end.
    #[test]
    fn the_nearest_value_works(which in prop_oneof![0..20_usize, 39..54_usize, 58..N_SPOILED], wild in -600.0..600.0_f64) {
        let mut project = demo::wool_barn();
        spoil(&mut project, which, wild);
        let first: Vec<String> = stops(&project);
        for _ in 0..16 {
            let design = evaluate(&project);
            let Some(problem) = design.problems.iter().find(|problem| problem.severity == outshot::project::Severity::Stop) else {
                return Ok(());
            };
            let Some(nearest) = problem.nearest else { return Ok(()) };
            apply(&mut project, &problem.field, nearest);
        }
        prop_assert!(stops(&project).is_empty(), "{first:?} ended in {:?}", stops(&project));
    }
}

fn stops(project: &Project) -> Vec<String> {
    let design = evaluate(project);
    let stops = design.problems.iter().filter(|problem| problem.severity == outshot::project::Severity::Stop);
    stops.map(|problem| format!("{}: {}", problem.field, problem.says)).collect()
}

fn apply(project: &mut Project, field: &str, nearest: outshot::project::Nearest) {
    use outshot::project::Nearest;
    match nearest {
        Nearest::Length(length) => {
            if let Some(place) = lengths(project).into_iter().find(|(name, _)| *name == field) {
                *place.1 = length;
            }
            match field {
                "above.eave_to_ridge" => project.above.eave_to_ridge = Some(length),
                "above.whole_length" => project.above.whole_length = Some(length),
                "ground.frost_depth" => project.ground.frost_depth = Some(length),
                _ => {}
            }
        }
        Nearest::Slope(slope) => project.frame.heights.pitch = slope,
        Nearest::Count(count) => match field {
            "fixings.ledger.rows" => project.fixings.ledger.rows = count,
            "fixings.ledger.columns" => project.fixings.ledger.columns = count,
            "fixings.scarf.count" => project.fixings.scarf.count = count,
            _ => {}
        },
    }
}

/// Every length of the project that a wild value may be put into, by its field.
fn lengths(project: &mut Project) -> Vec<(&'static str, &mut Length)> {
    let Project { frame, joinery, roofing, site, place, fixings, .. } = project;
    let [p0, p1, p2, p3] = &mut frame.posts[..] else { return Vec::new() };
    vec![
        ("frame.reach", &mut frame.reach),
        ("frame.beam_length", &mut frame.beam_length),
        ("frame.heights.ledger_seat", &mut frame.heights.ledger_seat),
        ("frame.heights.beam_seat", &mut frame.heights.beam_seat),
        ("frame.tail", &mut frame.tail),
        ("frame.wall_gap", &mut frame.wall_gap),
        ("frame.ledger_seat_length", &mut frame.ledger_seat_length),
        ("frame.beam_seat_length", &mut frame.beam_seat_length),
        ("frame.brace_along", &mut frame.brace_along),
        ("frame.brace_down", &mut frame.brace_down),
        ("frame.rafters.spacing", &mut frame.rafters.spacing),
        ("frame.rafters.inset", &mut frame.rafters.inset),
        ("frame.scarfs.lap", &mut frame.scarfs.lap),
        ("frame.stand_off", &mut frame.stand_off),
        ("frame.posts.0.x", &mut p0.x),
        ("frame.posts.1.x", &mut p1.x),
        ("frame.posts.2.x", &mut p2.x),
        ("frame.posts.3.x", &mut p3.x),
        ("frame.posts.0.pier_top", &mut p0.pier_top),
        ("frame.posts.1.pier_top", &mut p1.pier_top),
        ("frame.posts.2.pier_top", &mut p2.pier_top),
        ("frame.posts.3.pier_top", &mut p3.pier_top),
        ("frame.ledger_lap", &mut frame.ledger_lap),
        ("frame.timbers.rafter.sawn.depth", &mut frame.timbers.rafter.sawn.depth),
        ("frame.timbers.beam.sawn.breadth", &mut frame.timbers.beam.sawn.breadth),
        ("frame.timbers.ledger.sawn.breadth", &mut frame.timbers.ledger.sawn.breadth),
        ("frame.timbers.brace.sawn.depth", &mut frame.timbers.brace.sawn.depth),
        ("frame.timbers.brace.sawn.breadth", &mut frame.timbers.brace.sawn.breadth),
        ("frame.timbers.purlin.sawn.breadth", &mut frame.timbers.purlin.sawn.breadth),
        ("joinery.housing", &mut joinery.housing),
        ("joinery.post_tenon", &mut joinery.post_tenon),
        ("joinery.brace_tenon", &mut joinery.brace_tenon),
        ("joinery.tenon_offset", &mut joinery.tenon_offset),
        ("joinery.scarf_clear", &mut joinery.scarf_clear),
        ("roofing.cover", &mut roofing.cover),
        ("roofing.purlin_spacing", &mut roofing.purlin_spacing),
        ("roofing.last_purlin", &mut roofing.last_purlin),
        ("site.eave_projection", &mut site.eave_projection),
        ("site.wall_post_spacing", &mut site.wall_post_spacing),
        ("place.ground_elevation", &mut place.ground_elevation),
        ("fixings.ledger.length", &mut fixings.ledger.length),
        ("fixings.ledger.lowest", &mut fixings.ledger.lowest),
        ("fixings.ledger.row_gap", &mut fixings.ledger.row_gap),
        ("fixings.ledger.wall_depth", &mut fixings.ledger.wall_depth),
        ("fixings.ledger.washer", &mut fixings.ledger.washer),
        ("fixings.ledger.column_gap", &mut fixings.ledger.column_gap),
        ("fixings.ledger.makers.diameter", &mut fixings.ledger.makers.diameter),
        ("fixings.purlin.length", &mut fixings.purlin.length),
        ("fixings.sheet.screw.length", &mut fixings.sheet.screw.length),
        ("fixings.sheet.spacing", &mut fixings.sheet.spacing),
        ("fixings.pier.footing_width", &mut fixings.pier.footing_width),
        ("fixings.pier.footing_thickness", &mut fixings.pier.footing_thickness),
        ("fixings.pier.pier_width", &mut fixings.pier.pier_width),
        ("fixings.pier.depth", &mut fixings.pier.depth),
    ]
}

/// How many fields [`spoil`] reaches.
const N_SPOILED: usize = 76;

fn spoil(project: &mut Project, which: usize, wild: f64) {
    let n_lengths = lengths(project).len();
    if which < n_lengths {
        *lengths(project)[which].1 = Length::inches(wild);
        return;
    }
    let Project { frame, mill, place, above, ground, wood, fixings, .. } = project;
    let force = Force::pounds(wild);
    match which - n_lengths {
        0 => mill.lengths = vec![Length::inches(wild)],
        1 => frame.posts.truncate(wild.abs() as usize % 4),
        2 => mill.per_board_foot = Money::of(wild.clamp(-1e6, 1e6)),
        3 => {
            frame.heights.fixed = FixedHeights::LedgerAndBeam;
            frame.heights.ledger_seat = Length::inches(wild);
        }
        4 => place.ground_snow = Some(AreaLoad::psf(wild)),
        5 => place.wind_speed = WindSpeed::try_mph(wild),
        6 => place.winter_wind = Some(wild),
        7 => place.topography = wild,
        8 => place.member_force_coefficient = Some(wild),
        9 => place.seismic = Some(Seismic { s_ds: wild, category: DesignCategory::D, importance: wild }),
        10 => above.eave_to_ridge = Some(Length::inches(wild)),
        11 => above.whole_length = Some(Length::inches(wild)),
        12 => above.thermal = Thermal::Stated(wild),
        13 => ground.frost_depth = Some(Length::inches(wild)),
        14 => ground.soil = wild.to_string(),
        15 => fixings.brace_joint.pulled = Spring::pounds_per_inch(wild),
        16 => (fixings.scarf.pull, fixings.scarf.count) = (force, wild.abs() as usize),
        17 => fixings.sheet.pull_over = force,
        18 => {
            let (used, property) = (Used::Beam, Property::ALL[wild.abs() as usize % 7]);
            wood.own.push(OwnValue { used, property, value: Stress::psi(wild), source: String::new() });
        }
        19 => fixings.ledger.rows = wild.abs() as usize,
        20 => fixings.ledger.columns = wild.abs() as usize,
        _ => fixings.ledger.makers.pull = force,
    }
}

#[test]
fn the_examples_have_mirrors_too() {
    for project in [demo::wool_barn(), demo::log_store()] {
        check_mirror(&project, &built(&project).unwrap());
    }
}

#[test]
fn sheets_cover_the_roof_however_they_are_laid() {
    for layout in [SheetLayout::FromLeft, SheetLayout::FromRight, SheetLayout::EqualRips] {
        let mut project = demo::log_store();
        project.roofing.layout = layout;
        check_lengths(&project, &built(&project).unwrap());
    }
}

#[test]
fn every_role_is_in_the_examples() {
    let built = built(&demo::wool_barn()).unwrap();
    for role in Role::ALL {
        assert!(built.sticks.iter().any(|stick| stick.role == role), "no {}", role.name());
    }
    assert!(built.shape.beam.scarfs.iter().all(|scarf| scarf.place.lower == Side::Left));
}

/// The properties above say something only where frames come out: at least half of those drawn do.
#[test]
fn most_frames_drawn_can_be_built() {
    let mut runner = proptest::test_runner::TestRunner::deterministic();
    let n_built = (0..200).filter(|_| built(&projects().new_tree(&mut runner).unwrap().current()).is_some()).count();
    assert!(n_built >= 100, "{n_built} of 200");
}

/// A height that follows from the other two is never offered a value: pressing it would change nothing.
#[test]
fn nothing_is_offered_for_a_height_that_follows() {
    let mut project = demo::wool_barn();
    project.site.passage_height = Length::inches(120.0);
    let offered = |project: &Project, field: &str| {
        let design = evaluate(project);
        design.problems_of(field).next().unwrap_or_else(|| panic!("no word about {field}")).nearest.is_some()
    };
    assert!(offered(&project, "frame.heights.beam_seat"));
    project.frame.heights.fixed = FixedHeights::PitchAndLedger;
    assert!(!offered(&project, "frame.heights.beam_seat"));
    project.frame.heights.pitch = Slope::in_twelve(2.0);
    assert!(offered(&project, "frame.heights.pitch"));
    project.frame.heights.fixed = FixedHeights::LedgerAndBeam;
    project.frame.heights.ledger_seat = project.frame.heights.beam_seat + Length::inches(20.0);
    assert!(!offered(&project, "frame.heights.pitch"));
}

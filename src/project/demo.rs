//! The first drafts of two invented frames, by the rules alone, and the empty project a new job starts from.
//!
//! Some of their checks fail, as those of a first draft do; `examples` answers them.
//!
//! Every place, number and price here is made up; none comes from a real job.
use std::collections::BTreeMap;

use super::{
    Blocks, FixedHeights, Frame, Heights, JoineryRules, Metal, Post, Progress, Project, RafterRow, RafterRule, Roofing,
    ScarfKind, Scarfs, SheetLayout, Site, Soffit, TailCut, Timbers, buying_demo, strength_demo,
};
use crate::materials::{Section, Timber};
use crate::units::{Length, Slope, UnitSystem};

const INVENTED: &str = "Invented example: no real farm, mill or price.";

fn full_inches(breadth: f64, depth: f64) -> Timber {
    Timber::full(Section::new(Length::inches(breadth), Length::inches(depth)))
}

fn full_millimetres(breadth: f64, depth: f64) -> Timber {
    Timber::full(Section::new(Length::millimetres(breadth), Length::millimetres(depth)))
}

fn post(x: Length, pier_top: Length, brace_left: bool, brace_right: bool) -> Post {
    Post { x, pier_top, pier_measured: false, brace_left, brace_right }
}

/// The wool barn's lean-to: 34 ft of hemlock on four posts, 3 in 12.
#[must_use]
pub fn wool_barn() -> Project {
    Project {
        name: "Wool barn lean-to".to_owned(),
        note: INVENTED.to_owned(),
        units: UnitSystem::Imperial,
        currency: "$".to_owned(),
        site: inch_site(),
        frame: wool_barn_frame(),
        joinery: JoineryRules::inch_defaults(),
        mill: buying_demo::inch_mill(),
        roofing: inch_roofing(),
        place: strength_demo::barn_place(),
        above: strength_demo::barn_above(),
        ground: strength_demo::barn_ground(),
        wood: strength_demo::unstamped_wood(),
        fixings: strength_demo::inch_fixings(),
        exceptions: BTreeMap::new(),
        buying: buying_demo::buying(),
        yard: buying_demo::inch_yard(),
        truck: buying_demo::truck(UnitSystem::Imperial),
        crew: buying_demo::crew(UnitSystem::Imperial),
        progress: Progress::default(),
    }
}

fn inch_site() -> Site {
    let inches = Length::inches;
    Site {
        eave_edge: inches(148.0),
        eave_projection: inches(14.0),
        soffit: Soffit::Level,
        upper_pitch: Slope::in_twelve(6.0),
        ground_at_wall: inches(0.0),
        ground_left: inches(0.0),
        ground_right: inches(-4.0),
        first_wall_post: inches(4.0),
        wall_post_spacing: inches(16.0),
        passage_height: inches(80.0),
        passage_width: inches(0.0),
        service_moisture_percent: 15.0,
    }
}

fn wool_barn_frame() -> Frame {
    let inches = Length::inches;
    Frame {
        reach: inches(130.0),
        beam_length: inches(408.0),
        heights: Heights {
            fixed: FixedHeights::PitchAndBeam,
            pitch: Slope::in_twelve(3.0),
            ledger_seat: inches(131.25),
            beam_seat: inches(100.0),
        },
        ledger_packing: inches(0.0),
        wall_gap: inches(0.5),
        tail: inches(8.0),
        tail_cut: TailCut::Plumb,
        ledger_seat_length: inches(3.0),
        beam_seat_length: inches(4.0),
        posts: vec![
            post(inches(6.0), inches(4.0), false, true),
            post(inches(138.0), inches(4.0), true, true),
            post(inches(270.0), inches(3.5), true, true),
            post(inches(402.0), inches(3.5), true, false),
        ],
        stand_off: inches(1.0),
        brace_along: inches(36.0),
        brace_down: inches(36.0),
        brace_rise: Length::ZERO,
        rafters: RafterRow { spacing: inches(24.0), inset: inches(0.0), rule: RafterRule::FromLeft },
        scarfs: Scarfs {
            kind: ScarfKind::StopSplayedUnderSquinted,
            lap: inches(40.0),
            n_pieces: None,
            by_hand: Vec::new(),
        },
        ledger_lap: inches(8.0),
        ledger_splices: Vec::new(),
        blocks: Blocks::OverBeam,
        timbers: Timbers {
            post: full_inches(8.0, 8.0),
            beam: full_inches(8.0, 10.0),
            brace: full_inches(4.0, 6.0),
            rafter: full_inches(4.0, 8.0),
            ledger: full_inches(4.0, 10.0),
            purlin: full_inches(4.0, 2.0),
            block: full_inches(2.0, 6.0),
        },
        species: "eastern_hemlock".to_owned(),
    }
}

fn inch_roofing() -> Roofing {
    let inches = Length::inches;
    Roofing {
        cover: inches(36.0),
        rib: inches(0.75),
        longest_sheet: Length::feet(20.0),
        eave_overhang: inches(1.0),
        top_gap: inches(0.5),
        rake: inches(6.0),
        purlin_spacing: inches(24.0),
        first_purlin: inches(0.0),
        last_purlin: inches(1.0),
        layout: SheetLayout::EqualRips,
        metal: Metal::Ribbed29,
        eave_clear: true,
    }
}

/// The larch log store: 9.6 m, two bays and a half-width bay.
#[must_use]
pub fn log_store() -> Project {
    Project {
        name: "Larch log store".to_owned(),
        note: INVENTED.to_owned(),
        units: UnitSystem::Metric,
        currency: "€".to_owned(),
        site: millimetre_site(),
        frame: log_store_frame(),
        joinery: JoineryRules::millimetre_defaults(),
        mill: buying_demo::millimetre_mill(),
        roofing: millimetre_roofing(),
        place: strength_demo::store_place(),
        above: strength_demo::store_above(),
        ground: strength_demo::store_ground(),
        wood: strength_demo::unstamped_wood(),
        fixings: strength_demo::millimetre_fixings(),
        exceptions: BTreeMap::new(),
        buying: buying_demo::buying(),
        yard: Vec::new(),
        truck: buying_demo::truck(UnitSystem::Metric),
        crew: buying_demo::crew(UnitSystem::Metric),
        progress: Progress::default(),
    }
}

fn millimetre_site() -> Site {
    let mm = Length::millimetres;
    Site {
        eave_edge: mm(3900.0),
        eave_projection: mm(500.0),
        soffit: Soffit::Sloped,
        upper_pitch: Slope::degrees(35.0),
        ground_at_wall: mm(0.0),
        ground_left: mm(-60.0),
        ground_right: mm(-180.0),
        first_wall_post: mm(100.0),
        wall_post_spacing: mm(600.0),
        passage_height: mm(1900.0),
        passage_width: mm(0.0),
        service_moisture_percent: 16.0,
    }
}

fn log_store_frame() -> Frame {
    let mm = Length::millimetres;
    Frame {
        reach: mm(2900.0),
        beam_length: mm(9600.0),
        heights: Heights {
            fixed: FixedHeights::LedgerAndBeam,
            pitch: Slope::degrees(15.0),
            ledger_seat: mm(3250.0),
            beam_seat: mm(2450.0),
        },
        ledger_packing: mm(20.0),
        wall_gap: mm(15.0),
        tail: mm(250.0),
        tail_cut: TailCut::Square,
        ledger_seat_length: mm(80.0),
        beam_seat_length: mm(110.0),
        posts: vec![
            post(mm(170.0), mm(60.0), false, true),
            post(mm(3870.0), mm(40.0), true, true),
            post(mm(7570.0), mm(10.0), true, true),
            post(mm(9430.0), mm(-10.0), true, false),
        ],
        stand_off: mm(30.0),
        brace_along: mm(750.0),
        brace_down: mm(750.0),
        brace_rise: Length::ZERO,
        rafters: RafterRow { spacing: mm(700.0), inset: mm(0.0), rule: RafterRule::Equal },
        scarfs: Scarfs { kind: ScarfKind::StopSplayedTabled, lap: mm(960.0), n_pieces: None, by_hand: Vec::new() },
        ledger_lap: mm(200.0),
        ledger_splices: Vec::new(),
        blocks: Blocks::None,
        timbers: Timbers {
            post: full_millimetres(200.0, 200.0),
            beam: full_millimetres(200.0, 240.0),
            brace: full_millimetres(100.0, 140.0),
            rafter: full_millimetres(100.0, 180.0),
            ledger: full_millimetres(100.0, 240.0),
            purlin: full_millimetres(100.0, 50.0),
            block: full_millimetres(50.0, 150.0),
        },
        species: "western_larch".to_owned(),
    }
}

fn millimetre_roofing() -> Roofing {
    let mm = Length::millimetres;
    Roofing {
        cover: mm(1000.0),
        rib: mm(20.0),
        longest_sheet: mm(7000.0),
        eave_overhang: mm(40.0),
        top_gap: mm(15.0),
        rake: mm(150.0),
        purlin_spacing: mm(600.0),
        first_purlin: mm(0.0),
        last_purlin: mm(25.0),
        layout: SheetLayout::FromLeft,
        metal: Metal::Ribbed26,
        eave_clear: true,
    }
}

/// A new job in the user's units: round, buildable sizes to be replaced by what the tape says.
#[must_use]
pub fn empty(units: UnitSystem) -> Project {
    let mut project = match units {
        UnitSystem::Imperial => small_inch_frame(wool_barn()),
        UnitSystem::Metric => small_millimetre_frame(log_store()),
    };
    project.name = "New lean-to".to_owned();
    project.note = String::new();
    strength_demo::forget_the_place(&mut project);
    buying_demo::forget_what_was_asked(&mut project);
    project
}

fn small_inch_frame(mut project: Project) -> Project {
    let inches = Length::inches;
    project.site.ground_right = inches(0.0);
    project.frame.reach = inches(120.0);
    project.frame.beam_length = inches(240.0);
    project.frame.posts = vec![
        post(inches(6.0), inches(4.0), false, true),
        post(inches(120.0), inches(4.0), true, true),
        post(inches(234.0), inches(4.0), true, false),
    ];
    project
}

fn small_millimetre_frame(mut project: Project) -> Project {
    let mm = Length::millimetres;
    project.site.ground_left = mm(0.0);
    project.site.ground_right = mm(0.0);
    project.frame.reach = mm(3000.0);
    project.frame.beam_length = mm(6000.0);
    project.frame.heights.fixed = FixedHeights::PitchAndBeam;
    project.frame.posts = vec![
        post(mm(170.0), mm(60.0), false, true),
        post(mm(3000.0), mm(60.0), true, true),
        post(mm(5830.0), mm(60.0), true, false),
    ];
    project
}

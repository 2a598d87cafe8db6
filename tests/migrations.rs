//! Old project files: every version that was ever written still opens.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use outshot::evaluate;
use outshot::loads::{
    DesignCategory, Edition, Place, RiskCategory, Seismic, SnowExposure, Terrain, Thermal, WindExposure, WindSpeed,
};
use outshot::materials::Section;
use outshot::members::Property;
use outshot::project::{Buying, OwnValue, Piece, Project, Used, demo, file};
use outshot::units::{AreaLoad, Force, Length, Stress};

/// A version 1 file: one pier height for all posts, their places in a list of their own.
#[test]
fn version_1_opens_with_a_pier_for_every_post() {
    let project = file::read(include_str!("data/version-1.json")).unwrap();
    let places: Vec<f64> = project.frame.posts.iter().map(|post| post.x.to_inches()).collect();
    assert_eq!(places, [6.0, 118.0, 230.0]);
    assert!(project.frame.posts.iter().all(|post| post.pier_top.to_inches() == 4.25 && !post.pier_measured));
    let braces: Vec<(bool, bool)> =
        project.frame.posts.iter().map(|post| (post.brace_left, post.brace_right)).collect();
    assert_eq!(braces, [(false, true), (true, true), (true, false)]);
    assert!(evaluate(&project).built.is_some());
}

/// Once opened and saved, an old file is a file of today.
#[test]
fn an_old_file_is_saved_as_a_new_one() {
    let project = file::read(include_str!("data/version-1.json")).unwrap();
    let saved = file::write(&project);
    assert!(saved.contains(&format!("\"version\": {}", file::VERSION)));
    assert_eq!(file::read(&saved).unwrap(), project);
}

/// A version 2 file knew nothing of the place: what only the authority or a maker can say is left open, never guessed.
#[test]
fn version_2_opens_with_the_place_left_open() {
    for text in [include_str!("data/version-1.json"), include_str!("data/version-2.json")] {
        let project = file::read(text).unwrap();
        let place = &project.place;
        assert!(place.ground_snow.is_none() && place.winter_wind.is_none() && place.wind_speed.is_none());
        assert!(place.member_force_coefficient.is_none() && place.seismic.is_none());
        assert!(project.above.eave_to_ridge.is_none() && project.above.whole_length.is_none());
        assert!(project.ground.soil.is_empty() && project.ground.frost_depth.is_none());
        let fixings = &project.fixings;
        for tie in [&fixings.rafter_head, &fixings.rafter_seat, &fixings.scarf, &fixings.post_base] {
            assert!(tie.count == 0 && tie.pull == Force::ZERO && tie.source.is_empty(), "{tie:?}");
        }
        let keys = [&fixings.ledger.fastener, &fixings.ledger.wall_species, &fixings.purlin.fastener];
        assert!(keys.into_iter().chain([&fixings.sheet.screw.fastener]).all(String::is_empty));
        assert_eq!(fixings.sheet.pull_over, Force::ZERO);
        assert!(project.wood.own.is_empty() && !project.wood.is_dry);
        assert!(evaluate(&project).built.is_some());
    }
}

/// The rest of a version 2 file is what it was: the wool barn as it stood then is the one of today but for the new parts.
#[test]
fn version_2_keeps_its_frame() {
    let today = demo::wool_barn();
    let mut project = file::read(include_str!("data/version-2.json")).unwrap();
    assert_ne!(project, today);
    (project.place, project.above, project.ground) = (today.place, today.above, today.ground.clone());
    (project.wood, project.fixings) = (today.wood.clone(), asked_nothing(today.clone()).fixings);
    // The wall's posts of the example were farther apart then.
    (project.site.first_wall_post, project.site.wall_post_spacing) =
        (today.site.first_wall_post, today.site.wall_post_spacing);
    assert_eq!(project, asked_nothing(today));
}

/// A version 3 file had one column of fixings in the ledger and knew no washers: they are left open, the rest is as it was.
#[test]
fn version_3_opens_with_the_washers_left_open() {
    let project = file::read(include_str!("data/version-3.json")).unwrap();
    let ledger = &project.fixings.ledger;
    assert_eq!((ledger.columns, ledger.washer), (1, Length::ZERO));
    assert_eq!((ledger.makers.sideways, ledger.makers.pull), (Force::ZERO, Force::ZERO));
    assert!(ledger.makers.source.is_empty());
    let mut today = demo::wool_barn();
    today.fixings.ledger.washer = Length::ZERO;
    assert_eq!(project, asked_nothing(today));
}

/// The example without the prices, the finish and the yard that older files knew nothing of.
fn asked_nothing(today: Project) -> Project {
    unbored(Project { buying: Buying::usual(), yard: Vec::new(), ..today })
}

/// A version 4 file ticked what came, and no more: each tick is a piece just as it was ordered.
#[test]
fn version_4_opens_with_its_ticks_as_pieces() {
    let saved = include_str!("data/version-4.json");
    assert_eq!(file::read(saved).unwrap(), asked_nothing(demo::wool_barn()));
    let ticked = saved.replace("\"received\": []", "\"received\": [\"8x10/192/2\", \"2x4/144.125/1\", \"nonsense\"]");
    let pieces = file::read(&ticked).unwrap().progress.pieces;
    assert_eq!(pieces.keys().collect::<Vec<_>>(), ["2x4/144.125/1", "8x10/192/2"]);
    let beam = Section::new(Length::inches(8.0), Length::inches(10.0));
    assert_eq!(pieces["8x10/192/2"], Piece::as_ordered(beam, Length::inches(192.0)));
    let broken = saved.replace("\"received\"", "\"got\"");
    assert!(file::read(&broken).unwrap_err().to_string().contains("progress.received is missing"));
}

/// A version 5 file knew of no holes for ties, of no splices placed by hand, not what a trailer weighs, of no words of the
/// user's own and no ready-mixed concrete.
#[test]
fn version_5_opens_with_nothing_bored() {
    let saved = include_str!("data/version-5.json");
    let project = file::read(saved).unwrap();
    let fixings = &project.fixings;
    for tie in [&fixings.rafter_head, &fixings.rafter_seat, &fixings.scarf, &fixings.post_base] {
        assert_eq!(tie.bores, None);
    }
    assert!(project.frame.ledger_splices.is_empty() && project.truck.own_weight.is_none());
    assert!(project.progress.crowns.is_empty());
    assert!(project.buying.words.is_empty() && project.buying.prices.concrete_yard.is_none());
    assert_eq!(project, unbored(demo::wool_barn()));
    let broken = saved.replace("\"post_base\"", "\"base\"");
    assert!(file::read(&broken).unwrap_err().to_string().contains("post_base is missing"));
}

/// A version 6 file said neither how deep its anchors are cast in nor what ties the piers to their footings.
#[test]
fn version_6_opens_with_its_piers_left_open() {
    let saved = include_str!("data/version-6.json");
    let project = file::read(saved).unwrap();
    assert_eq!((project.fixings.pier.anchor_depth, project.fixings.pier.bars), (Length::ZERO, 0));
    assert_eq!(project, unanchored(demo::wool_barn()));
    let broken = saved.replace("\"pier\": {", "\"peer\": {");
    assert!(file::read(&broken).unwrap_err().to_string().contains("fixings.pier is missing"));
}

/// The example without what version 6 knew nothing of.
fn unanchored(mut today: Project) -> Project {
    (today.fixings.pier.anchor_depth, today.fixings.pier.bars) = (Length::ZERO, 0);
    today.buying.prices.pier_bar = None;
    today
}

/// The example without what version 5 knew nothing of; its posts stood on one anchor each then.
fn unbored(today: Project) -> Project {
    let mut today = unanchored(today);
    let fixings = &mut today.fixings;
    for tie in [&mut fixings.rafter_head, &mut fixings.rafter_seat, &mut fixings.scarf, &mut fixings.post_base] {
        tie.bores = None;
    }
    let base = &mut fixings.post_base;
    (base.count, base.pull, base.sideways) = (1, Force::pounds(2500.0), Force::pounds(1200.0));
    today.truck.own_weight = None;
    today
}

#[test]
fn a_version_3_file_without_its_fixings_is_refused_whole() {
    let broken = include_str!("data/version-3.json").replace("\"fixings\"", "\"fixing\"");
    let error = file::read(&broken).unwrap_err().to_string();
    assert!(error.contains("fixings is missing") && error.contains("Nothing was changed"), "{error}");
}

/// The file of today, as it stands: a change of format must come with a new version.
#[test]
fn the_file_of_today_is_the_saved_one() {
    let saved = include_str!("data/version-7.json");
    assert_eq!(file::read(saved).unwrap(), demo::wool_barn());
    assert_eq!(file::write(&demo::wool_barn()).trim(), saved.trim());
}

/// The other draft as the browser's tests open it.
#[test]
fn the_log_store_is_the_saved_one() {
    assert_eq!(file::read(include_str!("data/log-store.json")).unwrap(), demo::log_store());
}

/// Every word a choice of the place may be stored under comes back as itself.
#[test]
fn the_place_is_kept_whatever_it_says() {
    let mut project = demo::log_store();
    project.place = Place {
        edition: Edition::Asce7_22,
        risk: RiskCategory::IV,
        ground_snow: Some(AreaLoad::kilopascals(2.5)),
        terrain: Terrain::AboveTreeLine,
        snow_exposure: SnowExposure::Full,
        winter_wind: Some(0.5),
        wind_speed: WindSpeed::try_mph(123.4),
        wind_exposure: WindExposure::D,
        ground_elevation: Length::metres(1234.5),
        topography: 1.15,
        member_force_coefficient: None,
        seismic: Some(Seismic { s_ds: 0.33, category: DesignCategory::C, importance: 1.25 }),
    };
    project.wood.own = vec![OwnValue {
        used: Used::Brace,
        property: Property::LeastStiffness,
        value: Stress::megapascals(3500.0),
        source: "a grader's letter".to_owned(),
    }];
    for thermal in
        [Thermal::JustAboveFreezing, Thermal::BelowFreezing, Thermal::HeatedGreenhouse, Thermal::Stated(1.15)]
    {
        project.above.thermal = thermal;
        assert_eq!(file::read(&file::write(&project)).unwrap(), project);
    }
}

#[test]
fn a_version_1_file_without_its_posts_is_refused_whole() {
    let broken = include_str!("data/version-1.json").replace("post_places_in", "places");
    let error = file::read(&broken).unwrap_err().to_string();
    assert!(error.contains("post_places_in") && error.contains("Nothing was changed"), "{error}");
}

#[test]
fn a_version_2_file_without_its_roof_is_refused_whole() {
    let broken = include_str!("data/version-2.json").replace("\"roofing\"", "\"roof\"");
    let error = file::read(&broken).unwrap_err().to_string();
    assert!(error.contains("roofing is missing") && error.contains("Nothing was changed"), "{error}");
}

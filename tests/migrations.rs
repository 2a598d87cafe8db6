//! Old project files: every version that was ever written still opens.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use outshot::evaluate;
use outshot::project::{demo, file};

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

/// The file of today, as it stands: a change of format must come with a new version.
#[test]
fn the_file_of_today_is_the_saved_one() {
    let saved = include_str!("data/version-2.json");
    assert_eq!(file::read(saved).unwrap(), demo::wool_barn());
    assert_eq!(file::write(&demo::wool_barn()).trim(), saved.trim());
}

#[test]
fn a_version_1_file_without_its_posts_is_refused_whole() {
    let broken = include_str!("data/version-1.json").replace("post_places_in", "places");
    let error = file::read(&broken).unwrap_err().to_string();
    assert!(error.contains("post_places_in") && error.contains("Nothing was changed"), "{error}");
}

#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
use super::super::salvage::clear_lengths;
use super::*;
use crate::design::Built;
use crate::evaluate;
use crate::project::demo;
use std::sync::Arc;

fn inches(value: f64) -> Length {
    Length::inches(value)
}

/// A project without an open end: what is cut, then the frame.
fn barn(change: impl FnOnce(&mut Project)) -> (Project, Arc<Built>) {
    let mut project = demo::wool_barn();
    change(&mut project);
    let built = evaluate(&project).built.unwrap();
    (project, built)
}

/// The place of the first mark of a stick that begins with those words.
fn place(stick: &Stick, what: &str) -> usize {
    stick.marks.iter().position(|mark| mark.what.starts_with(what)).unwrap()
}

fn answers(project: &Project, built: &Built, (stick, what): (&str, &str), slip: Slip) -> Vec<Answer> {
    let stick = built.stick(stick).unwrap();
    rescue(project, &built.shape, &built.sticks, &BadCut { stick, mark: place(stick, what), slip })
}

fn of(answers: &[Answer], way: Way) -> &Answer {
    answers.iter().find(|answer| answer.way == way).unwrap()
}

#[test]
fn a_sixteenth_in_a_mortise_does_not_matter_and_an_eighth_is_shimmed() {
    let (project, built) = barn(|_| ());
    let near = answers(&project, &built, ("P2", "mortise of K2R"), Slip::Off(inches(0.0625)));
    assert_eq!(near.iter().map(|answer| answer.way).collect::<Vec<_>>(), [Way::Leave]);
    let off = answers(&project, &built, ("P2", "mortise of K2R"), Slip::Off(inches(-0.125)));
    assert_eq!(off[0].way, Way::Shim);
    assert!(off[0].says.contains("1⁄8″ thick"), "{}", off[0].says);
    // Half an inch is more than a shim mends.
    let far = answers(&project, &built, ("P2", "mortise of K2R"), Slip::Off(inches(0.5)));
    assert!(far.iter().all(|answer| answer.way != Way::Leave && answer.way != Way::Shim));
}

/// By hand: legs of 36 in, the pocket in the post ½ in low: √(36² + 36.5²) = 51.267 in, to the thirty-second 51 9⁄32.
#[test]
fn a_pocket_off_its_place_asks_a_brace_of_its_own() {
    let (project, built) = barn(|project| {
        project.frame.brace_along = inches(36.0);
        project.frame.brace_down = inches(36.0);
    });
    let found = answers(&project, &built, ("P2", "mortise of K2R"), Slip::Off(inches(0.5)));
    let own = of(&found, Way::OwnBrace);
    assert!(own.is_open && own.says.contains("36 1⁄2″ down the post"), "{}", own.says);
    assert!(own.says.contains("51 9⁄32″"), "{}", own.says);
    let (project, built) = barn(|project| {
        project.progress.cut.insert("K2R".to_owned(), String::new());
    });
    let found = answers(&project, &built, ("P2", "mortise of K2R"), Slip::Off(inches(0.5)));
    assert!(!of(&found, Way::OwnBrace).is_open);
}

/// The post goes with its mortise; its braces' pockets lie in the beam and go too, unless that piece is cut.
#[test]
fn a_mortise_off_its_place_takes_its_post_along() {
    let (project, built) = barn(|_| ());
    let piece = built.sticks.iter().find(|stick| {
        let has = |mate: &str| stick.marks.iter().any(|mark| mark.mate.as_deref() == Some(mate));
        stick.role == Role::Beam && has("P2") && (has("K2L") || has("K2R"))
    });
    let mark = piece.unwrap().mark.clone();
    let found = answers(&project, &built, (&mark, "housing of P2"), Slip::Off(inches(-0.5)));
    let mate = of(&found, Way::MoveMate);
    assert!(mate.is_open && mate.says.starts_with("P2 stands 1⁄2″ farther to the left"), "{}", mate.says);
    assert!(mate.says.contains(&format!("on {mark}")), "{}", mate.says);
    let stick = of(&found, Way::MoveStick);
    assert!(stick.is_open && stick.says.contains("1⁄2″ to the left"), "{}", stick.says);
    let (project, built) = barn(|project| {
        project.progress.cut.insert(mark.clone(), String::new());
    });
    let found = answers(&project, &built, (&mark, "housing of P2"), Slip::Off(inches(-0.5)));
    assert!(!of(&found, Way::MoveMate).is_open && !of(&found, Way::MoveStick).is_open);
    // What is refused stands last.
    let opens: Vec<bool> = found.iter().map(|answer| answer.is_open).collect();
    assert!(opens.is_sorted_by(|a, b| a >= b));
}

/// By hand: a tenon of 4 in; its own side asks 1½ + 4 × 1 = 5½ in; 9½ in in all.
#[test]
fn a_tenon_cut_off_is_replaced_by_a_loose_one() {
    let (project, built) = barn(|project| {
        project.joinery.post_tenon = inches(4.0);
        project.joinery.peg = inches(1.0);
        project.joinery.peg_from_shoulder = inches(1.5);
    });
    let found = answers(&project, &built, ("P2", "tenon width"), Slip::Short(inches(4.0)));
    let loose = of(&found, Way::LooseTenon);
    assert!(loose.says.contains("9 1⁄2″ long") && loose.says.contains("slot 5 1⁄2″ deep"), "{}", loose.says);
}

/// By hand: a mortise on the wrong side of its near line is off by its own width, toward zero; a saw that ran on the wrong
/// side of an end's line by a kerf, into the wood.
#[test]
fn the_wrong_side_of_a_line_is_a_measure() {
    let (_, built) = barn(|_| ());
    let post = built.stick("P2").unwrap();
    let at = |what: &str| {
        let mark = place(post, what);
        offset(&BadCut { stick: post, mark, slip: Slip::WrongSide }, &post.marks[mark])
    };
    let mortise = &post.marks[place(post, "mortise of K2R")];
    assert_eq!(at("mortise of K2R"), mortise.near - mortise.far.unwrap());
    assert_eq!(at("foot"), inches(-0.125));
}

/// What is left of a post whose one pocket is bad: above it and below it, half an inch clear of the joint and of where it
/// was cut. By hand: the joint reaches from its first mark to its last, and 1 in farther by the bad cut.
#[test]
fn what_is_left_is_clear_of_the_joint_and_of_the_bad_cut() {
    let (project, built) = barn(|_| ());
    let post = built.stick("P2").unwrap();
    let bad = place(post, "housing of K2R");
    let marks = post.marks.iter().filter(|mark| mark.mate.as_deref() == Some("K2R"));
    let near = marks.clone().map(|mark| mark.near.to_inches()).fold(f64::INFINITY, f64::min);
    let far = marks.map(|mark| mark.far.unwrap_or(mark.near).to_inches()).fold(f64::NEG_INFINITY, f64::max);
    let clear = clear_lengths(&project, post, bad, inches(1.0));
    assert_eq!(clear.len(), 2, "{clear:?}");
    assert_eq!(clear[0].0, post.low);
    assert!((clear[0].1.to_inches() - (near - 0.5)).abs() < 1e-9);
    let lowest = far.max(post.marks[bad].far.unwrap().to_inches() + 1.0);
    assert!((clear[1].0.to_inches() - (lowest + 0.5)).abs() < 1e-9);
    assert_eq!(clear[1].1, post.high);
}

/// A piece of the beam spoiled at its right end still holds the shorter pieces, longest first, none of them cut.
#[test]
fn a_spoiled_piece_becomes_a_shorter_one() {
    let (project, built) = barn(|_| ());
    let longest = built.sticks.iter().filter(|stick| stick.role == Role::Beam && !stick.to_left);
    let longest = longest.max_by(|a, b| a.net_length().to_inches().total_cmp(&b.net_length().to_inches())).unwrap();
    let bad = longest.marks.iter().position(|mark| mark.what.starts_with("scarf")).unwrap();
    let slip = Slip::Off(inches(2.0));
    let found = rescue(&project, &built.shape, &built.sticks, &BadCut { stick: longest, mark: bad, slip });
    let becomes: Vec<&Answer> = found.iter().filter(|answer| answer.way == Way::Becomes).collect();
    let clear = clear_lengths(&project, longest, bad, inches(2.0));
    let room = clear.iter().map(|(from, to)| (*to - *from).to_inches()).fold(0.0, f64::max);
    let fits = built.sticks.iter().filter(|stick| stick.role == Role::Beam && stick.net_length().to_inches() <= room);
    assert_eq!(becomes.len(), fits.count(), "{found:?}");
    assert!(!becomes.is_empty(), "{clear:?}");
}

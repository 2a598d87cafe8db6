//! Sticks that the sheets call alike are the same wood, those they call mirror images are it left for right.
use crate::drawn_frames::projects;
use crate::same::{mirrored, on_the_bench, thickest_off};
use crate::{OFF, over_size};
use outshot::joinery::{StickBody, bodies};
use outshot::lay_out;
use outshot::project::{Project, ScarfKind, ScarfPlace, Side, demo};
use outshot::solid::Solid;
use outshot::tickets::{Stick, mirror_of, mirror_words};
use outshot::units::Length;
use proptest::prelude::*;

fn check_same(what: &str, one: &Solid, two: &Solid) {
    let (thick, place) = thickest_off(one, two);
    assert!(thick <= OFF, "{what}: {thick} in {place}");
}

/// How many mirror images there were.
fn check_alike(project: &Project) -> usize {
    let Some(built) = lay_out(project).built else { return 0 };
    let all = bodies(project, &built.shape);
    let body = |mark: &str| all.iter().find(|body| body.mark == mark).unwrap();
    let mut n_mirrors = 0;
    for stick in &built.sticks {
        let own = body(&stick.mark);
        if let Some(first) = &stick.same_as {
            check_same(&format!("{} like {first}", stick.mark), &on_the_bench(own), &on_the_bench(body(first)));
        }
        if let Some(of) = mirror_of(&built.sticks, stick) {
            check_mirror(stick, own, body(&of.mark), &mirror_words(&built.sticks, stick).unwrap());
            n_mirrors += 1;
        }
    }
    n_mirrors
}

/// Where the words leave the pegs out, their holes are filled.
fn check_mirror(stick: &Stick, own: &StickBody, of: &StickBody, words: &str) {
    let filled = |body: &StickBody| {
        if words.contains("but for its pegs") {
            StickBody { wood: body.standing(), ..body.clone() }
        } else {
            body.clone()
        }
    };
    check_same(&format!("{}, {words}", stick.mark), &mirrored(&filled(own), stick), &on_the_bench(&filled(of)));
}

#[test]
fn sticks_of_the_examples_are_alike_in_wood() {
    check_alike(&demo::wool_barn());
    assert!(check_alike(&demo::log_store()) > 0);
    let mut barn = demo::wool_barn();
    for post in &mut barn.frame.posts {
        post.pier_top = Length::inches(4.0);
    }
    // Legs that differ: a brace fits one side of a post only.
    barn.frame.brace_down = Length::inches(30.0);
    barn.frame.brace_rise = Length::inches(1.5);
    // P4 and three left-hand braces.
    assert_eq!(check_alike(&barn), 4);
    assert!(check_alike(&over_size(barn, Length::inches(0.25))) > 0);
}

/// A scarf turned over makes two other pieces of the beam, whatever else they carry: a cut one no longer fits.
#[test]
fn a_scarf_turned_over_is_another_layout() {
    let mut project = demo::wool_barn();
    project.frame.posts.truncate(3);
    project.frame.beam_length = Length::inches(276.0);
    project.frame.scarfs.lap = Length::inches(18.0);
    project.frame.rafters.spacing = Length::inches(100.0);
    (project.frame.brace_along, project.frame.brace_down) = (Length::inches(24.0), Length::inches(24.0));
    project.mill.lengths.push(Length::feet(30.0));
    for kind in ScarfKind::ALL {
        project.frame.scarfs.kind = kind;
        let [left, right] = [Side::Left, Side::Right].map(|lower| {
            project.frame.scarfs.by_hand = vec![ScarfPlace { centre: Length::inches(188.0), lower }];
            lay_out(&project).built.unwrap()
        });
        for mark in ["B1", "B2"] {
            let layouts = [&left, &right].map(|built| built.stick(mark).unwrap().layout());
            assert_ne!(layouts[0], layouts[1], "{kind:?}, {mark}");
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 20, failure_persistence: None, ..ProptestConfig::default() })]

    /// Two sticks are cut alike where their layouts are one, which are kept with what is cut.
    #[test]
    fn sticks_cut_alike_have_one_layout(project in projects()) {
        let Some(built) = lay_out(&project).built else { return Ok(()) };
        for one in &built.sticks {
            let layout = one.layout();
            for other in built.sticks.iter().filter(|other| other.role == one.role) {
                prop_assert_eq!(one.is_cut_like(other), layout == other.layout(), "{} {}", one.mark, other.mark);
            }
        }
    }

    #[test]
    fn sticks_of_random_frames_are_alike_in_wood(project in projects()) {
        check_alike(&project);
    }
}

//! Divisions of the beam over frames drawn at random: each is a frame that can be built, at the price that is said.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]

mod drawn_frames;

use drawn_frames::projects;
use outshot::lay_out;
use outshot::study::{BeamPieces, Stepper};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;

/// Frames that can be built and whose beam is longer than one stick.
const FRAMES: usize = 8;
/// Slices of each that are made: the rest would only be more of the same.
const SLICES: usize = 5;

#[test]
fn every_division_is_a_frame_without_a_new_problem() {
    let mut runner = TestRunner::deterministic();
    let (mut n_frames, mut n_found) = (0, 0);
    for _ in 0..200 {
        let project = projects().new_tree(&mut runner).unwrap().current();
        let before = lay_out(&project);
        if before.built.as_ref().is_none_or(|built| built.shape.beam.scarfs.is_empty()) {
            continue;
        }
        let Some(mut study) = BeamPieces::new(&project) else { continue };
        for _ in 0..SLICES {
            study.next_step();
        }
        for answer in study.found() {
            let design = lay_out(&answer.project);
            let built = design.built.unwrap();
            assert_eq!(built.order.price, answer.price);
            for problem in &design.problems {
                let of =
                    |all: &[outshot::project::Problem]| all.iter().filter(|one| one.field == problem.field).count();
                assert!(of(&design.problems) <= of(&before.problems), "{problem:?}");
            }
            assert!(built.shape.beam.scarfs.iter().all(|scarf| scarf.judged.is_some()));
            assert!(answer.heaviest.1 <= project.mill.heaviest_pick);
            n_found += usize::from(!answer.is_own);
        }
        n_frames += 1;
        if n_frames == FRAMES {
            break;
        }
    }
    assert!(n_frames == FRAMES && n_found * 2 > FRAMES, "{n_found} divisions of {n_frames} frames");
}

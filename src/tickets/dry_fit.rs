//! What a dry fit found, carried on to the marks that are still to be made.
//!
//! Scarfs are cut and closed first, and the rest of a piece is laid out after that (common practice). The error of a scarf
//! is measured from the beam's left end over the closed scarf, as all running measures are: the beam's closed length there
//! less the length drawn, longer above zero. So the last measured scarf at a piece's left counts for the whole piece.
//!
//! Posts and rafters stay where they are on the ground. A piece that came to lie farther out by e has its places e nearer to
//! its own zero, and its free right end as well. Scarf marks stay: they are cut. A piece cut to the layout from before keeps
//! its marks, and a caution says which of them are off. The solids
//! follow: each piece lies where its scarf was measured. Flat drawings of the frame stay as drawn.
use super::beam;
use super::stick::Stick;
use crate::design::Shape;
use crate::project::{MOST_DRY_FIT as MOST, Problem, Project};
use crate::units::Length;
use crate::wording::length;

/// In words, for the sheet: how far the marks moved, and which way.
pub(super) fn moved_words(project: &Project, scarf: usize, error: Length) -> String {
    let way = if error > Length::ZERO { "toward zero" } else { "away from zero" };
    format!(
        "all but the scarfs' marks moved {} {way} by the dry fit of scarf {scarf}",
        length(error.abs(), project.units)
    )
}

/// Errors that cannot be, and pieces that were cut before a dry fit moved their places.
#[must_use]
pub fn dry_fit_problems(project: &Project, shape: &Shape, sticks: &[Stick]) -> Vec<Problem> {
    let units = project.units;
    let mut problems = Vec::new();
    for (scarf, error) in project.progress.dry_fits.iter().filter(|(_, error)| error.abs() > MOST) {
        let (found, most) = (length(error.abs(), units), length(MOST, units));
        let says = format!("{found} is too much for a dry fit: it is not used. Measure again; up to {most} is taken.");
        problems.push(Problem::caution(format!("progress.dry_fits.{scarf}"), says));
    }
    for piece in &shape.beam.pieces {
        let mark = format!("B{}", piece.number);
        let Some((scarf, error)) = project.progress.dry_fit_shift(piece.number) else { continue };
        let Some(cut) = project.progress.cut.get(&mark) else { continue };
        let Some(stick) = sticks.iter().find(|stick| stick.mark == mark) else { continue };
        if beam::sheet_of(project, shape, piece, error).is_cut_to(cut) || error == Length::ZERO {
            continue;
        }
        let way = if error > Length::ZERO { "right" } else { "left" };
        let says = format!(
            "{mark} is cut, and by the dry fit of scarf {scarf} it lies {} farther to the {way}: off by that are its places \
             of {}.",
            length(error.abs(), units),
            places(stick)
        );
        problems.push(Problem::caution(format!("progress.cut.{mark}"), says));
    }
    problems
}

/// What meets the piece outside its scarfs: posts and braces one by one as they are marked, rafters from the first to the last.
fn places(stick: &Stick) -> String {
    let joints = stick.joints();
    let of = |letters: &[char]| -> Vec<&String> {
        joints.iter().map(|(mate, _)| mate).filter(|mate| mate.starts_with(letters)).collect()
    };
    let mut named: Vec<String> = of(&['P', 'K']).into_iter().cloned().collect();
    match of(&['R'])[..] {
        [] => (),
        [one] => named.push(one.clone()),
        [first, .., last] => named.push(format!("{first} to {last}")),
    }
    named.join(", ")
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::project::demo;
    use crate::tickets::MarkKind;

    const EIGHTH: Length = Length::inches(0.125);

    fn stick(project: &Project, mark: &str) -> Stick {
        evaluate(project).built.unwrap().stick(mark).unwrap().clone()
    }

    /// How far each mark of a stick moved from where it is drawn, toward zero: scarf marks, and all others.
    fn moved(project: &Project, mark: &str) -> (Vec<f64>, Vec<f64>) {
        let (drawn, found) = (stick(&demo::wool_barn(), mark), stick(project, mark));
        let places = |stick: &Stick, of_scarf: bool| -> Vec<f64> {
            let is_scarf = |mate: &Option<String>| mate.as_ref().is_some_and(|mate| mate.starts_with('B'));
            let marks = stick.marks.iter().filter(|mark| is_scarf(&mark.mate) == of_scarf);
            let mut all: Vec<f64> =
                marks.filter(|mark| mark.kind != MarkKind::Chamfer).map(|mark| mark.near.to_inches()).collect();
            all.sort_unstable_by(f64::total_cmp);
            all
        };
        let by = |of_scarf: bool| -> Vec<f64> {
            let pairs = places(&drawn, of_scarf).into_iter().zip(places(&found, of_scarf));
            pairs.map(|(before, after)| before - after).collect()
        };
        (by(true), by(false))
    }

    fn check(project: &Project, mark: &str, expected: f64) {
        let (scarfs, others) = moved(project, mark);
        assert!(!others.is_empty() && scarfs.iter().all(|by| by.abs() < 1e-9), "{mark}: {scarfs:?}");
        assert!(others.iter().all(|by| (by - expected).abs() < 1e-9), "{mark}: {others:?}, expected {expected}");
    }

    /// By hand: the closed beam is ⅛ in longer over scarf 1, so every place on B2 is ⅛ in nearer to B2's own left end, and
    /// B3's as well until its own scarf is measured.
    #[test]
    fn places_move_toward_zero_by_what_the_closed_beam_is_longer() {
        let mut project = demo::wool_barn();
        project.progress.dry_fits.insert("1".to_owned(), EIGHTH);
        check(&project, "B1", 0.0);
        check(&project, "B2", 0.125);
        check(&project, "B3", 0.125);
        assert!(stick(&project, "B2").zero.contains("moved 1⁄8″ toward zero by the dry fit of scarf 1"));
        project.progress.dry_fits.insert("2".to_owned(), -EIGHTH);
        check(&project, "B2", 0.125);
        check(&project, "B3", -0.125);
    }

    #[test]
    fn a_piece_that_is_cut_keeps_its_marks_and_a_caution_names_them() {
        let mut project = demo::wool_barn();
        project.progress.cut.insert("B2".to_owned(), stick(&project, "B2").layout());
        project.progress.dry_fits.insert("1".to_owned(), EIGHTH);
        check(&project, "B2", 0.0);
        check(&project, "B3", 0.125);
        let design = evaluate(&project);
        let problems: Vec<_> = design.problems_of("progress.cut.B2").collect();
        assert_eq!(problems.len(), 1, "{problems:?}");
        let says = &problems[0].says;
        assert!(says.contains("1⁄8″ farther to the right") && says.contains("P3"), "{says}");
    }

    #[test]
    fn a_piece_cut_to_the_moved_marks_is_right() {
        let mut project = demo::wool_barn();
        project.progress.dry_fits.insert("1".to_owned(), EIGHTH);
        project.progress.cut.insert("B2".to_owned(), stick(&project, "B2").layout());
        check(&project, "B2", 0.125);
        assert_eq!(evaluate(&project).problems_of("progress.cut").count(), 0);
    }

    #[test]
    fn an_error_that_cannot_be_is_not_used() {
        let mut project = demo::wool_barn();
        project.progress.dry_fits.insert("1".to_owned(), Length::inches(6.0));
        check(&project, "B2", 0.0);
        assert_eq!(evaluate(&project).problems_of("progress.dry_fits.1").count(), 1);
    }
}

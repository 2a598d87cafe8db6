//! A printed measure is off by its own rounding and no more, however many stand before it.
use crate::drawn_frames::projects;
use crate::sheet::{Row, Sheet};
use outshot::lay_out;
use outshot::project::{Project, demo};
use outshot::tickets::{Mark, MarkKind, Role, Stick};
use outshot::units::{Fineness, Length, MetricStep, UnitSystem, parse_length};
use outshot::wording::tape;
use proptest::prelude::*;

/// Half of what a tape is read in.
fn half_step(units: UnitSystem, fineness: Fineness) -> f64 {
    let step = if units == UnitSystem::Imperial { fineness.step() } else { MetricStep::Half.step() };
    step.to_inches() / 2.0 + 1e-9
}

fn check_off(what: &str, printed: f64, true_value: f64, at_most: f64) {
    let off = (printed - true_value).abs();
    assert!(off <= at_most, "{what}: {printed} is printed for {true_value}");
}

/// Every number of a line, and its places from the other end.
fn check_row(project: &Project, stick: &Stick, mark: &Mark, row: &Row) {
    let half = half_step(project.units, mark.fineness);
    let name = format!("{}, {}", stick.mark, mark.what);
    let check = |printed: f64, true_value: Length| check_off(&name, printed, true_value.to_inches(), half);
    check(row.near, mark.near);
    for (printed, true_value) in [(row.far, mark.far), (row.depth, mark.depth)] {
        assert_eq!(printed.is_some(), true_value.is_some());
        printed.zip(true_value).into_iter().for_each(|(printed, true_value)| check(printed, true_value));
    }
    if let Some(((near, far, _), (true_near, true_far))) = row.across.zip(mark.across) {
        check(near, true_near);
        check(far, true_far);
    }
    let printed =
        |length: Length| parse_length(&tape(length, project.units, mark.fineness), project.units).unwrap().to_inches();
    let (near, far) = mark.from_far_end(stick.high);
    for (here, there) in [Some(row.near), row.far].into_iter().flatten().zip([far, Some(near)].into_iter().flatten()) {
        check_off(&name, here + printed(there), stick.high.to_inches(), half * 2.0);
    }
}

/// The rafters' places on a piece, taken along the whole beam or ledger, are the row's own.
fn check_whole_line(project: &Project, rafters: &[Length], stick: &Stick, sheet: &Sheet) {
    let half_rafter = project.frame.timbers.rafter.ordered.breadth / 2.0;
    let half = half_step(project.units, Fineness::Sixteenth);
    let mut starts = Vec::new();
    for row in sheet.rows.iter().filter(|row| row.kind == MarkKind::Seat) {
        let number: usize = row.mate.as_ref().unwrap().trim_start_matches('R').parse().unwrap();
        let whole = row.must_say("on the whole beam ".replace("beam", stick.role.name()).as_str());
        check_off(&row.what, whole, (rafters[number - 1] - half_rafter).to_inches(), half);
        starts.push(whole - row.near);
    }
    // Where the piece begins, by each of its rafters: one place, as near as two roundings.
    for start in &starts {
        check_off(&stick.mark, *start, stick.whole_line.unwrap().to_inches(), half * 2.0);
    }
}

/// How many rafters' places were looked at.
fn check_rounding(project: &Project) -> usize {
    let Some(built) = lay_out(project).built else { return 0 };
    let mut n_rafters = 0;
    for stick in &built.sticks {
        let sheet = Sheet::printed(stick, project.units);
        for (mark, row) in stick.marks.iter().zip(&sheet.rows) {
            check_row(project, stick, mark, row);
        }
        if matches!(stick.role, Role::Beam | Role::Ledger) {
            check_whole_line(project, &built.shape.rafters, stick, &sheet);
            n_rafters += sheet.of_kind(MarkKind::Seat).count();
        }
    }
    n_rafters
}

#[test]
fn rounding_does_not_add_up_in_the_examples() {
    for (mut project, odd) in [(demo::wool_barn(), 20.02), (demo::log_store(), 24.02)] {
        assert!(check_rounding(&project) > 20);
        // A spacing that is rounded at every rafter.
        project.frame.rafters.spacing = Length::inches(odd);
        assert!(check_rounding(&project) > 20);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 100, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn rounding_never_adds_up(project in projects(), is_metric in any::<bool>()) {
        let units = if is_metric { UnitSystem::Metric } else { UnitSystem::Imperial };
        check_rounding(&Project { units, ..project });
    }
}

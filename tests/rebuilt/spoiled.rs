//! Every number of a sheet matters: one that is off gives another stick, or is at odds with another number.
use crate::same::{on_the_bench, thickest_off};
use crate::sheet::{Row, Sheet};
use crate::{OFF, over_size, rebuilt};
use outshot::joinery::bodies;
use outshot::lay_out;
use outshot::project::{Project, ScarfKind, demo};
use outshot::tickets::{MarkKind, Role};
use outshot::units::Length;
use std::panic::{AssertUnwindSafe, catch_unwind};

/// How far a number is spoiled: past twice what three roundings add up to.
const SPOILED: f64 = 0.25;

/// The row with each of its numbers spoiled in turn, with that number's name.
fn spoilt_rows(row: &Row) -> Vec<(&'static str, Row)> {
    let mut all = vec![("near", Row { near: row.near + SPOILED, ..row.clone() })];
    if let Some(far) = row.far {
        all.push(("far", Row { far: Some(far - SPOILED), ..row.clone() }));
    }
    if let Some((near, far, from)) = row.across {
        let is_place = near == far;
        let with = |near: f64, far: f64| Row { across: Some((near, far, from)), ..row.clone() };
        if is_place {
            all.push(("across", with(near + SPOILED, far + SPOILED)));
        } else {
            all.push(("across, near", with(near + SPOILED, far)));
            all.push(("across, far", with(near, far - SPOILED)));
        }
    }
    if let Some(depth) = row.depth {
        all.push(("depth", Row { depth: Some(depth + SPOILED), ..row.clone() }));
    }
    all
}

/// Whether the row takes wood away or bounds what is taken. Where a hollow's marks lie along it hardly matters: it is flat.
fn is_cut(sheet: &Sheet, row: &Row) -> bool {
    let is_hollow = sheet.role == Role::Brace && row.kind == MarkKind::Chamfer;
    let is_bored = row.note.contains("bore ");
    !is_hollow && row.kind != MarkKind::Seat && (row.kind != MarkKind::Fixing || is_bored)
}

/// How many numbers of the rows that begin so were spoiled, each of them seen.
fn check_every_number(project: &Project, mark: &str, what: &str) -> usize {
    let built = lay_out(project).built.unwrap();
    let sheet = Sheet::printed(built.stick(mark).unwrap(), project.units);
    let truth = on_the_bench(bodies(project, &built.shape).iter().find(|body| body.mark == mark).unwrap());
    assert!(thickest_off(&rebuilt(&sheet), &truth).0 <= OFF);
    let mut n_spoilt = 0;
    for (index, row) in
        sheet.rows.iter().enumerate().filter(|(_, row)| is_cut(&sheet, row) && row.what.starts_with(what))
    {
        for (number, spoilt) in spoilt_rows(row) {
            let mut other = sheet.clone();
            other.rows[index] = spoilt;
            let off = catch_unwind(AssertUnwindSafe(|| thickest_off(&rebuilt(&other), &truth).0));
            assert!(off.is_err() || off.is_ok_and(|off| off > OFF), "{mark}: {}, {number} is of no use", row.what);
            n_spoilt += 1;
        }
    }
    n_spoilt
}

#[test]
fn every_number_of_a_sheet_matters() {
    let mut barn = demo::wool_barn();
    let sticks = [("P2", 40), ("B2", 50), ("K2L", 25), ("R1", 14), ("L1", 6), ("N1a", 2), ("X1", 2)];
    for (mark, at_least) in sticks {
        let found = check_every_number(&barn, mark, "");
        assert!(found >= at_least, "{mark} has {found} numbers");
    }
    barn.frame.brace_along = Length::inches(24.0);
    barn.frame.brace_down = Length::inches(24.0);
    for kind in [ScarfKind::Bladed, ScarfKind::StopSplayedTabled] {
        barn.frame.scarfs.kind = kind;
        assert!(check_every_number(&barn, "B2", "scarf") > 10);
    }
    assert!(check_every_number(&over_size(demo::wool_barn(), Length::inches(0.25)), "P2", "head cut down") == 8);
}

//! Where the fixings of the ledger stand: at each post of the wall in columns, side by side, of rows, one above the other.
use super::ledger_line::wall_posts;
use crate::fastening::{
    Direction, Edge, EndLoad, FastenerKind, Placing, RowSpacing, across_edges, is_slender, lag_lead_hole, lag_thread,
};
use crate::materials::species;
use crate::project::{LedgerFixings, Project};
use crate::units::Length;

/// One fixing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FixingPlace {
    /// Number of the wall's post, from the left, from 1.
    pub post: usize,
    /// Its row, from the lowest, from 0.
    pub row: usize,
    /// Its column, from the left, from 0.
    pub column: usize,
    /// Along the beam's x.
    pub x: Length,
    /// Over the ledger's bottom.
    pub up: Length,
}

impl FixingPlace {
    /// Which one it is: "wall's post 3, row 2 from below, column 1".
    #[must_use]
    pub fn name(&self, fixings: &LedgerFixings) -> String {
        let mut name = format!("wall's post {}", self.post);
        if fixings.rows > 1 {
            name.push_str(&format!(", row {} from below", self.row + 1));
        }
        if fixings.columns > 1 {
            name.push_str(&format!(", column {}", self.column + 1));
        }
        name
    }
}

/// Every fixing, post by post, each from the lowest row up and from left to right; none where none is chosen.
#[must_use]
pub fn fixing_places(project: &Project) -> Vec<FixingPlace> {
    let fixings = &project.fixings.ledger;
    if fixings.chosen().is_none() {
        return Vec::new();
    }
    let mut all = Vec::new();
    for (index, post) in wall_posts(&project.site, project.frame.beam_length).into_iter().enumerate() {
        for row in 0..fixings.rows {
            for column in 0..fixings.columns {
                let x = post - fixings.across() / 2.0 + fixings.column_gap * column as f64;
                all.push(FixingPlace { post: index + 1, row, column, x, up: fixings.height(row) });
            }
        }
    }
    all
}

/// The widest hole a fixing leaves in the ledger.
#[must_use]
pub fn ledger_hole(fixings: &LedgerFixings) -> Option<Length> {
    fixings.chosen().map(|one| one.hole())
}

/// One part of a hole that narrows: how wide, and from where to where below the outer face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bore {
    /// Across.
    pub diameter: Length,
    /// Where it begins.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
}

/// What is bored through the ledger for one fixing, from its outer face in. A bolt's hole is one; a lag screw's is as wide as
/// its shank for as long as that is, and past it as wide as its thread asks. Nothing for a maker's own screw: its maker says
/// what is bored.
#[must_use]
pub fn bores(project: &Project) -> Vec<Bore> {
    let fixings = &project.fixings.ledger;
    let (Some(one), Some(diameter)) = (fixings.chosen(), ledger_hole(fixings)) else { return Vec::new() };
    let through = project.frame.timbers.ledger.sawn.breadth;
    match one.kind {
        FastenerKind::Bolt => vec![Bore { diameter, from: Length::ZERO, to: through }],
        FastenerKind::LagScrew => {
            let shank = (fixings.length - lag_thread(fixings.length)).min(through);
            let thread = lead_hole(project, &project.frame.species);
            let parts = [
                Bore { diameter, from: Length::ZERO, to: shank },
                Bore { diameter: thread.unwrap_or(diameter), from: shank, to: through },
            ];
            parts.into_iter().filter(|part| part.to > part.from).collect()
        }
        FastenerKind::WoodScrew | FastenerKind::Nail => Vec::new(),
    }
}

/// The drill for a lag screw's thread in that wood: the widest in whole sixteenths that the rule allows.
#[must_use]
pub fn lead_hole(project: &Project, wood: &str) -> Option<Length> {
    let one = project.fixings.ledger.chosen()?;
    let found = lag_lead_hole(&one, species(wood)?.specific_gravity).ok()?.value;
    let drill = Length::inches((found.thread_to.to_inches() * 16.0 + 1e-9).floor() / 16.0);
    Some(if drill < found.thread_from { found.thread_to } else { drill })
}

/// The fixings in a ledger that rafters press down, or lift where `edge` says so: across its grain.
#[must_use]
pub fn placing_in_ledger(
    fixings: &LedgerFixings,
    diameter: Length,
    bearing_length: Length,
    (end, edge): (Option<Length>, Edge),
) -> Placing {
    let many = |n: usize, spacing: Length| (n > 1).then_some(spacing);
    let row = |spacing| RowSpacing { spacing, attached_needs: Some(diameter * 4.0) };
    Placing {
        diameter,
        direction: Direction::Across,
        bearing_length,
        end: end.map(|end| (end, EndLoad::Across)),
        edge: Some(edge),
        in_row: many(fixings.rows, fixings.row_gap).map(row),
        between_rows: many(fixings.columns, fixings.column_gap),
    }
}

/// Of a depth of wood, the lowest and the highest place at which a fixing keeps its edges when rafters press down; the highest
/// may be the lower one, where there is no such place.
#[must_use]
pub fn heights_within(fixings: &LedgerFixings, (low, high): (Length, Length)) -> Option<(Length, Length)> {
    let (one, hole) = (fixings.chosen()?, ledger_hole(fixings)?);
    let half = hole / 2.0;
    let (loaded, unloaded) = if is_slender(one.diameter) { (half, half) } else { across_edges(one.diameter) };
    Some((low + unloaded.max(half), high - loaded.max(half)))
}

/// Whether each half of a half lap over a post of the wall has a fixing of its own there that keeps its edges (common practice:
/// a splice is fixed through both halves). Where none is chosen yet, it may have.
#[must_use]
pub fn fixes_both_halves(fixings: &LedgerFixings, depth: Length) -> bool {
    if fixings.chosen().is_none() || fixings.rows == 0 {
        return true;
    }
    let middle = depth / 2.0;
    let holds = |wood: (Length, Length)| {
        let mut heights = (0..fixings.rows).map(|row| fixings.height(row));
        heights_within(fixings, wood).is_some_and(|(low, high)| heights.any(|up| up >= low && up <= high))
    };
    holds((Length::ZERO, middle)) && holds((middle, depth))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::demo;

    fn rows(rows: usize, lowest: f64, gap: f64) -> LedgerFixings {
        let fixings = demo::wool_barn().fixings.ledger;
        LedgerFixings { rows, lowest: Length::inches(lowest), row_gap: Length::inches(gap), ..fixings }
    }

    /// ¾ in lag screws want 3 in over them and 1⅛ under them: in the halves of a ledger 10 in deep at 1⅛ to 2 and 6⅛ to 7 in.
    #[test]
    fn each_half_of_a_splice_wants_its_own() {
        let may = |fixings: &LedgerFixings| fixes_both_halves(fixings, Length::inches(10.0));
        assert!(!may(&rows(1, 5.0, 1.0)), "on the line between the halves");
        assert!(!may(&rows(1, 2.0, 1.0)), "the upper half has none");
        assert!(may(&rows(2, 2.0, 5.0)) && may(&rows(2, 1.125, 5.875)));
        assert!(!may(&rows(2, 2.25, 4.5)), "under 3 in over the lower one");
        assert!(may(&rows(3, 2.0, 2.5)), "the outer ones do");
        assert!(may(&LedgerFixings { fastener: String::new(), ..rows(1, 5.0, 1.0) }));
    }

    /// A 10 in lag screw has 5½ in of thread: 4½ in of shank go through the barn's 4 in. One of 6 in has 3½ and 2½ in: past
    /// the shank, hemlock of G 0.41 takes 0.7·¾ = 0.525 in, a ½ in drill.
    #[test]
    fn a_lag_screw_has_a_stepped_hole() {
        let mut barn = demo::wool_barn();
        let found = |barn: &Project| {
            let all = bores(barn).into_iter();
            all.map(|bore| (bore.diameter.to_inches(), bore.from.to_inches(), bore.to.to_inches())).collect::<Vec<_>>()
        };
        assert_eq!(found(&barn), [(0.75, 0.0, 4.0)]);
        barn.fixings.ledger.length = Length::inches(6.0);
        assert_eq!(found(&barn), [(0.75, 0.0, 2.5), (0.5, 2.5, 4.0)]);
        "bolt_3_4".clone_into(&mut barn.fixings.ledger.fastener);
        assert_eq!(found(&barn), [(0.8125, 0.0, 4.0)]);
        crate::project::MAKERS_OWN.clone_into(&mut barn.fixings.ledger.fastener);
        assert_eq!(found(&barn), []);
    }

    /// Studs at 4, 20, … 404 in of 408: 26 of them. Two columns 3 in apart stand 1½ in to either side.
    #[test]
    fn places_are_counted_post_by_post() {
        let mut barn = demo::wool_barn();
        let all = fixing_places(&barn);
        assert_eq!(all.len(), 26);
        assert_eq!(all[25].x, Length::inches(404.0));
        barn.fixings.ledger.columns = 2;
        let all = fixing_places(&barn);
        assert_eq!((all[2].post, all[2].x, all[3].x), (2, Length::inches(18.5), Length::inches(21.5)));
        barn.fixings.ledger.fastener.clear();
        assert_eq!(fixing_places(&barn), []);
    }
}

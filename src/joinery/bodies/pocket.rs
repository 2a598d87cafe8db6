//! The pocket of a brace: its housing, its mortise and its peg's hole, in the stick that takes it.
use super::super::body::{Cut, CutKind};
use super::super::pegs::brace_tenon_thickness;
use super::{cheeks, in_elevation, peg_hole};
use crate::geometry::{Brace, Pocket, Point};
use crate::project::{JoineryRules, Project};
use crate::units::Length;

/// The three cuts. `place` turns a place along the housed line from the corner, and out of the wood from it, into the
/// elevation; `thickness` is how far the peg's hole goes through.
pub fn cuts(
    project: &Project,
    (brace, rules): (&Brace, &JoineryRules),
    pocket: &Pocket,
    thickness: Length,
    place: impl Fn(Length, Length) -> Point,
) -> Vec<Cut> {
    let outer = project.frame.reach;
    let breadth = project.frame.timbers.brace.sawn.breadth;
    let mark = brace.mark();
    let housing = pocket.housing_outline().into_iter().map(|point| place(point.x, point.y)).collect();
    let deep = -pocket.mortise_depth;
    let mortise = vec![
        place(pocket.mortise.0, Length::ZERO),
        place(pocket.mortise.1, Length::ZERO),
        place(pocket.mortise.1, deep),
        place(pocket.mortise.0, deep),
    ];
    let peg = place(pocket.peg(), -rules.peg_from_shoulder);
    let depths = cheeks(project, rules, brace_tenon_thickness(project, rules));
    vec![
        Cut::new(format!("housing of {mark}"), CutKind::Housing, in_elevation(housing, (outer - breadth, outer))),
        Cut::new(format!("mortise of {mark}"), CutKind::Mortise, in_elevation(mortise, depths)),
        Cut::new(format!("peg of {mark}"), CutKind::PegHole, peg_hole(project, rules, (peg.x, peg.y), thickness)),
    ]
    .into_iter()
    .map(|cut| cut.mate(mark.clone()))
    .collect()
}

//! From a project to its design, stage by stage.
use std::sync::Arc;

use crate::checks::strength;
use crate::design::{Built, Design, Shape};
use crate::frame::FrameError;
use crate::geometry::{
    BraceShape, Pocket, RoofLine, Surroundings, UncutBeam, beam_line, braces, check_posts_stand, clearances,
    fitted_rafter, fitted_rafter_row, ledger_line, posts, proposal_problems, purlin_rows, room_problems,
    scarf_problems,
};
use crate::joinery::{frame_conflicts, rule_conflicts};
use crate::ordering::{order, sheet_plan, supply_problems};
use crate::project::{Problem, Project, validate};
use crate::tickets::{cut_problems, dry_fit_problems, size_problems, sticks};

/// Works out everything about a project.
///
/// Problems that stop the frame leave `built` empty; cautions stand beside it.
#[must_use]
pub fn evaluate(project: &Project) -> Design {
    let laid_out = lay_out(project);
    let strength = laid_out.built.as_ref().map(|built| Arc::new(strength(project, &built.shape)));
    Design { strength, ..laid_out }
}

/// Everything but the strength: where each stick is, its sheet, the order and the roof.
#[must_use]
pub fn lay_out(project: &Project) -> Design {
    let mut problems = validate(project);
    if problems.iter().any(Problem::stops) {
        return Design { problems, built: None, strength: None };
    }
    problems.extend(rule_conflicts(project));
    match shape(project) {
        Err(problem) => {
            problems.push(problem);
            Design { problems, built: None, strength: None }
        }
        Ok((shape, placed)) => {
            problems.extend(placed);
            problems.extend(frame_conflicts(project, &shape));
            problems.extend(room_problems(project, &shape.line, &shape.clearances));
            let built = build(project, shape);
            problems.extend(supply_problems(project, &built.sticks, &built.order, &built.sheets));
            problems.extend(cut_problems(&project.progress, &built.sticks));
            problems.extend(size_problems(project, &built.shape));
            problems.extend(dry_fit_problems(project, &built.shape, &built.sticks));
            Design { problems, built: Some(Arc::new(built)), strength: None }
        }
    }
}

/// Geometry: where everything is, and the scarfs that should not be where they were put.
fn shape(project: &Project) -> Result<(Shape, Vec<Problem>), Problem> {
    let (frame, rules) = (&project.frame, &project.joinery);
    let line = RoofLine::resolve(frame)?;
    let rafter = fitted_rafter(frame, &line)?;
    let rafters = fitted_rafter_row(frame)?;
    let posts = posts(project, line.beam_seat);
    check_posts_stand(frame, &posts, project.units)?;
    let brace = BraceShape::new(frame, rules);
    let braces = braces(project, &posts);
    let pockets: Vec<Pocket> = braces.iter().map(|brace| brace.beam_pocket(frame)).collect();
    let uncut = UncutBeam::new(frame, &posts, &braces, &rafters).map_err(unsolved)?;
    let around = Surroundings {
        project,
        frame,
        rules,
        posts: &posts,
        braces: &braces,
        pockets: &pockets,
        rafters: &rafters,
        uncut: &uncut,
        units: project.units,
    };
    let beam = beam_line(&around, &project.mill)?;
    let mut placed = scarf_problems(&frame.scarfs.by_hand, &around);
    placed.extend(proposal_problems(&beam, &around));
    let (site, fixings) = (&project.site, &project.fixings.ledger);
    let (ledger, misplaced) = ledger_line(&around, (site, fixings), &project.mill, &beam.scarfs)?;
    placed.extend(misplaced);
    let breadth = frame.timbers.purlin.sawn.breadth;
    let half = frame.timbers.rafter.sawn.breadth / 2.0;
    let purlins = purlin_rows(&project.roofing, &rafter, breadth, (&rafters, half), &project.mill, project.units)?;
    let clearances = clearances(project, &line, &posts, &braces);
    Ok((Shape { line, rafter, rafters, posts, brace, braces, beam, ledger, purlins, clearances }, placed))
}

fn unsolved(error: FrameError) -> Problem {
    Problem::stop("frame.posts", format!("How the beam bends over these posts cannot be worked out: {error}"))
}

/// Every stick's sheet, the order and the roof sheets.
fn build(project: &Project, shape: Shape) -> Built {
    let sticks = sticks(project, &shape);
    let order = order(project, &sticks);
    let breadth = project.frame.timbers.rafter.sawn.breadth;
    let sheets = sheet_plan(&project.roofing, &shape.rafter, &shape.rafters, breadth);
    Built { shape, sticks, order, sheets }
}

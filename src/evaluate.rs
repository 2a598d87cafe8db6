//! From a project to its design, stage by stage.
use std::sync::Arc;

use crate::design::{Built, Design, Shape};
use crate::geometry::{
    BraceShape, PostShape, RafterShape, RoofLine, Surroundings, beam_housing, beam_line, braces, clearances,
    ledger_line, posts, purlin_rows, rafter_centres, scarf_problems,
};
use crate::joinery::{frame_conflicts, rule_conflicts};
use crate::ordering::{order, sheet_plan};
use crate::project::{FixedHeights, Nearest, Post, Problem, Project, Severity, validate};
use crate::tickets::sticks;
use crate::units::Length;
use crate::wording::length;

/// Most rafters that are worked out.
const MOST_RAFTERS: usize = 200;
/// Least height for a driver between a rafter's head and the eave above it (common practice).
const DRIVER_ROOM: Length = Length::inches(6.0);

/// Shortest post, and the least post below a brace's foot.
const LEAST_POST: Length = Length::inches(24.0);
const FOOT_OF_BRACE: Length = Length::inches(6.0);

/// Works out everything about a project.
///
/// Problems that stop the frame leave `built` empty; cautions stand beside it.
#[must_use]
pub fn evaluate(project: &Project) -> Design {
    let mut problems = validate(project);
    if problems.iter().any(|problem| problem.severity == Severity::Stop) {
        return Design { problems, built: None };
    }
    problems.extend(rule_conflicts(project));
    match shape(project) {
        Err(problem) => {
            problems.push(problem);
            Design { problems, built: None }
        }
        Ok((shape, placed)) => {
            problems.extend(placed);
            problems.extend(frame_conflicts(project, &shape));
            problems.extend(room(project, &shape));
            let built = build(project, shape);
            problems.extend(supply(project, &built));
            problems.extend(already_cut(project, &built));
            Design { problems, built: Some(Arc::new(built)) }
        }
    }
}

/// Geometry: where everything is, and the scarfs that should not be where they were put.
fn shape(project: &Project) -> Result<(Shape, Vec<Problem>), Problem> {
    let (frame, rules) = (&project.frame, &project.joinery);
    let line = RoofLine::resolve(frame)?;
    let rafter = rafter(project, &line)?;
    let rafters = rafter_row(project)?;
    let posts = posts(frame, rules, line.beam_seat);
    stand(project, &posts)?;
    let brace = BraceShape::new(frame, rules);
    let braces = braces(frame, rules, &posts);
    let around = Surroundings {
        frame,
        rules,
        posts: &posts,
        braces: &braces,
        pocket: brace.beam_pocket(rules, beam_housing(frame, rules)),
        rafters: &rafters,
        units: project.units,
    };
    let beam = beam_line(&around, &project.mill)?;
    let placed = scarf_problems(&frame.scarfs.by_hand, &around);
    let ledger = ledger_line(&around, &project.site, &project.mill, &beam.scarfs)?;
    let breadth = frame.timbers.purlin.sawn.breadth;
    let half = frame.timbers.rafter.sawn.breadth / 2.0;
    let purlins = purlin_rows(&project.roofing, &rafter, breadth, (&rafters, half), &project.mill, project.units)?;
    let clearances = clearances(project, &line, &posts, &braces);
    Ok((Shape { line, rafter, rafters, posts, brace, braces, beam, ledger, purlins, clearances }, placed))
}

fn rafter(project: &Project, line: &RoofLine) -> Result<RafterShape, Problem> {
    let shape = RafterShape::new(&project.frame, line);
    let past_heel = shape.tail.1.x - shape.beam.heel_below.x;
    if past_heel < Length::inches(0.25) {
        let short = (Length::inches(0.25) - past_heel) * line.pitch.cos();
        let says = "The tail is so short that its cut runs into the bird's mouth.";
        return Err(Problem::stop("frame.tail", says).nearest(project.frame.tail + short));
    }
    if shape.ledger.heel_below.x > shape.beam.seat_end.x {
        let says = "The rafter is shorter than its two seats: the bird's mouths run into each other.";
        return Err(Problem::stop("frame.reach", says).nearest(project.frame.reach + Length::inches(12.0)));
    }
    for (field, notch) in [("frame.ledger_seat_length", &shape.ledger), ("frame.beam_seat_length", &shape.beam)] {
        if notch.notch_depth > shape.depth / 2.0 {
            let says = "The bird's mouth would cut away more than half of the rafter.";
            let nearest = shape.depth / (line.pitch.sin() * 4.0);
            return Err(Problem::stop(field, says).nearest(nearest));
        }
    }
    Ok(shape)
}

fn rafter_row(project: &Project) -> Result<Vec<Length>, Problem> {
    let frame = &project.frame;
    let breadth = frame.timbers.rafter.ordered.breadth;
    let span = frame.beam_length - frame.rafters.inset * 2.0 - breadth;
    if frame.rafters.spacing < breadth * 2.0 {
        let says = "The rafters would stand closer than their own breadth.";
        return Err(Problem::stop("frame.rafters.spacing", says).nearest(breadth * 2.0));
    }
    if span < frame.rafters.spacing {
        let says = "The beam is shorter than one bay of rafters.";
        return Err(Problem::stop("frame.rafters.spacing", says).nearest(span.max(breadth * 2.0)));
    }
    let centres = rafter_centres(&frame.rafters, breadth, frame.beam_length);
    if centres.len() > MOST_RAFTERS {
        let says = format!("{} rafters are more than the {MOST_RAFTERS} that are worked out.", centres.len());
        return Err(Problem::stop("frame.rafters.spacing", says).nearest(span / (MOST_RAFTERS - 1) as f64));
    }
    Ok(centres)
}

/// Every post stands below its beam, with its braces on it. Where all are too short the beam is too low,
/// unless its height follows from the pitch; else the pier is too high.
fn stand(project: &Project, posts: &[PostShape]) -> Result<(), Problem> {
    let frame = &project.frame;
    let least = |post: &Post| {
        if post.brace_left || post.brace_right { frame.brace_down + FOOT_OF_BRACE } else { LEAST_POST }
    };
    let pairs = || frame.posts.iter().zip(posts);
    let short = |(post, shape): &(&Post, &PostShape)| least(post) - shape.body();
    let Some((post, shape)) = pairs().find(|pair| short(pair) > Length::ZERO) else { return Ok(()) };
    let says = format!(
        "P{} would be {} from shoulder to foot: too short{}.",
        shape.number,
        length(shape.body(), project.units),
        if least(post) == LEAST_POST { "" } else { " for its braces" }
    );
    let all = pairs().map(|pair| short(&pair)).reduce(Length::min).is_some_and(|least| least > Length::ZERO);
    if all && frame.heights.fixed != FixedHeights::PitchAndLedger {
        let most = pairs().map(|pair| short(&pair)).fold(Length::ZERO, Length::max);
        let nearest = frame.heights.beam_seat + most;
        return Err(Problem::stop("frame.heights.beam_seat", says).nearest(nearest));
    }
    let field = format!("frame.posts.{}.pier_top", shape.number - 1);
    Err(Problem::stop(field, says).nearest(post.pier_top - short(&(post, shape))))
}

fn build(project: &Project, shape: Shape) -> Built {
    let sticks = sticks(project, &shape);
    let order = order(project, &sticks);
    let breadth = project.frame.timbers.rafter.sawn.breadth;
    let sheets = sheet_plan(&project.roofing, &shape.rafter, &shape.rafters, breadth);
    Built { shape, sticks, order, sheets }
}

/// Room under the eave, under the beam and between the braces.
fn room(project: &Project, shape: &Shape) -> Vec<Problem> {
    let say = |value: Length| length(value, project.units);
    let room = &shape.clearances;
    let mut found = Vec::new();
    if room.under_eave.is_some_and(|clear| clear < Length::ZERO) {
        let over = -room.under_eave.unwrap_or_default();
        let says = format!("The roof would run {} into the existing eave.", say(over));
        found.push(Problem::caution("site.eave_edge", says).nearest(project.site.eave_edge + over));
    } else if room.over_rafter_head.is_some_and(|clear| clear < DRIVER_ROOM) {
        let says = format!("Less than {} between rafter head and eave: no room for a driver.", say(DRIVER_ROOM));
        found.push(Problem::caution("site.eave_edge", says));
    }
    if room.under_beam < project.site.passage_height {
        let says = format!(
            "The beam's underside is {} above the ground; {} must pass.",
            say(room.under_beam),
            say(project.site.passage_height)
        );
        let field = "frame.heights.beam_seat";
        let nearest = shape.line.beam_seat + (project.site.passage_height - room.under_beam);
        found.push(Problem::caution(field, says).nearest(nearest));
    }
    let widest = room.between_braces.iter().copied().fold(Length::ZERO, Length::max);
    if project.site.passage_width > Length::ZERO && widest < project.site.passage_width {
        let says = format!(
            "Between the braces, at the height that must pass, the widest bay is {}; {} must pass.",
            say(widest),
            say(project.site.passage_width)
        );
        found.push(Problem::caution("site.passage_width", says).nearest(widest.max(Length::ZERO)));
    }
    if shape.line.pitch.to_in_twelve() < 3.0 - 1e-9 {
        let says = "Under 3 in 12 (14°) the sheets' laps must be sealed (IBC 1507.4.2); ask the roofing's maker.";
        found.push(Problem::caution("frame.heights.pitch", says).nearest_slope(crate::units::Slope::in_twelve(3.0)));
    }
    found
}

/// What the mill and the truck cannot bring.
fn supply(project: &Project, built: &Built) -> Vec<Problem> {
    let say = |value: Length| length(value, project.units);
    let mut found = Vec::new();
    if let Some((mark, wanted)) = built.order.unplaced.first() {
        let more = match built.order.unplaced.len() {
            1 => String::new(),
            n => format!(" and {} more", n - 1),
        };
        let says = format!(
            "{mark}{more} needs {} with trim; the mill's longest is {}.",
            say(*wanted),
            say(project.mill.longest())
        );
        found.push(Problem::caution("mill.lengths", says));
    }
    let sheet = built.sheets.length.length();
    if sheet > project.roofing.longest_sheet {
        let says = format!(
            "The sheets are {} long; {} is the longest that can be brought. They would need an end lap.",
            say(sheet),
            say(project.roofing.longest_sheet)
        );
        found
            .push(Problem { nearest: Some(Nearest::Length(sheet)), ..Problem::caution("roofing.longest_sheet", says) });
    }
    if let Some(heaviest) = built
        .sticks
        .iter()
        .find(|stick| stick.role == crate::tickets::Role::Beam && stick.green_weight > project.mill.heaviest_pick)
    {
        let says = format!(
            "{} weighs {} green; the crew lifts {}.",
            heaviest.mark,
            crate::wording::weight(heaviest.green_weight, project.units),
            crate::wording::weight(project.mill.heaviest_pick, project.units)
        );
        found.push(Problem::caution("mill.heaviest_pick", says));
    }
    found
}

/// Sticks that are cut and no longer fit the frame.
fn already_cut(project: &Project, built: &Built) -> Vec<Problem> {
    let cut = project.progress.cut.iter();
    cut.filter_map(|(mark, layout)| {
        let says = match built.stick(mark) {
            None => format!("{mark} is cut, and the frame no longer has it."),
            Some(stick) if stick.layout() != *layout => {
                format!("{mark} is cut, and the frame has changed: it no longer fits as cut.")
            }
            Some(_) => return None,
        };
        Some(Problem::caution(format!("progress.cut.{mark}"), says))
    })
    .collect()
}

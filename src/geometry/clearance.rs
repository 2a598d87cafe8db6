//! What must pass: under the existing eave, under the beam, between the braces.
use super::brace::Brace;
use super::post::{PostShape, reduced_beam_depth};
use super::roof_line::RoofLine;
use crate::materials::species;
use crate::project::{FixedHeights, Problem, Project, Role, Side};
use crate::units::{Length, Slope};
use crate::wording::length;

/// Least height for a driver between a rafter's head and the eave above it (common practice).
const DRIVER_ROOM: Length = Length::inches(6.0);

/// Room left, and how drying moves the seats.
#[derive(Clone, Debug, PartialEq)]
pub struct Clearances {
    /// Top of the metal where its plane meets the wall.
    pub top_of_metal_at_wall: Length,
    /// Least room between the metal and the existing eave; none where there is no eave over it.
    pub under_eave: Option<Length>,
    /// Rafter head to the eave above it: room for a driver.
    pub over_rafter_head: Option<Length>,
    /// Underside of the beam to the highest ground under it.
    pub under_beam: Length,
    /// For each bay: clear width between braces, or posts, at the passage height.
    pub between_braces: Vec<Length>,
    /// Wall face to the inner face of the beam, less the ledger: clear depth under the roof.
    pub clear_depth: Length,
    /// How far the beam's top sinks as the beam dries.
    pub beam_seat_drop: Length,
    /// How far the ledger's top sinks as the ledger dries.
    pub ledger_seat_drop: Length,
}

/// Measures the room the frame leaves.
#[must_use]
pub fn clearances(project: &Project, line: &RoofLine, posts: &[PostShape], braces: &[Brace]) -> Clearances {
    let frame = &project.frame;
    let purlin_and_rib = frame.timbers.purlin.sawn.depth + project.roofing.rib;
    let metal = |y: Length| line.top_of_metal(y, purlin_and_rib);
    let edge = project.site.eave_projection;
    // Eave and metal are both straight from the wall to the eave's edge: the least room is at an end.
    let room_at = |y: Length| project.site.eave_underside(y).map(|eave| eave - metal(y));
    let under_eave = if edge > Length::ZERO { [frame.wall_gap.min(edge), edge].map(room_at) } else { [None, None] };
    let wood = species(&frame.species);
    let dry = |across: Length| {
        wood.map_or(Length::ZERO, |wood| wood.shrinkage(across, project.site.service_moisture_percent))
    };
    let (beam_seat_drop, ledger_seat_drop) = seat_drops(project, |_, across| dry(across));
    Clearances {
        top_of_metal_at_wall: metal(Length::ZERO),
        under_eave: under_eave.into_iter().flatten().reduce(Length::min),
        over_rafter_head: project.site.eave_underside(frame.wall_gap).map(|eave| eave - line.top_edge(frame.wall_gap)),
        under_beam: under_beam(project, line),
        between_braces: between_braces(project, posts, braces),
        clear_depth: frame.reach - frame.timbers.beam.sawn.breadth - line.ledger_heel,
        beam_seat_drop,
        ledger_seat_drop,
    }
}

/// How far the seats of beam and ledger sink where the wood shrinks by that much across the grain: the beam by its wood over the
/// posts' shoulders, the ledger by its wood over the middle of its fixings, which hold it; over its own middle where no fixings
/// are chosen.
pub fn seat_drops(project: &Project, lost: impl Fn(Role, Length) -> Length) -> (Length, Length) {
    let (frame, fixings) = (&project.frame, &project.fixings.ledger);
    let depth = frame.timbers.ledger.sawn.depth;
    let held = match fixings.rows {
        0 => depth / 2.0,
        rows => (fixings.lowest + fixings.row_gap * (rows - 1) as f64 / 2.0).clamp(Length::ZERO, depth),
    };
    (lost(Role::Beam, reduced_beam_depth(frame, &project.joinery)), lost(Role::Ledger, depth - held))
}

fn under_beam(project: &Project, line: &RoofLine) -> Length {
    let underside = line.beam_seat - project.frame.timbers.beam.sawn.depth;
    underside - project.site.ground_left.max(project.site.ground_right)
}

fn between_braces(project: &Project, posts: &[PostShape], braces: &[Brace]) -> Vec<Length> {
    let frame = &project.frame;
    posts
        .windows(2)
        .map(|pair| {
            let middle = (pair[0].right + pair[1].left) / 2.0;
            let height = project.site.ground_at(middle, frame.beam_length) + project.site.passage_height;
            let edge_of = |post: &PostShape, side: Side| {
                let brace = braces.iter().find(|brace| (brace.post, brace.side) == (post.number, side));
                brace.map(|brace| long_edge_at(brace, height))
            };
            let left = edge_of(&pair[0], Side::Right).map_or(pair[0].right, |x| x.max(pair[0].right));
            let right = edge_of(&pair[1], Side::Left).map_or(pair[1].left, |x| x.min(pair[1].left));
            right - left
        })
        .collect()
}

/// Where a brace's long edge stands at that height; behind the housed line where it has ended below.
fn long_edge_at(brace: &Brace, height: Length) -> Length {
    let down = (brace.corner_z - height).max(Length::ZERO);
    let along = brace.form.along * (1.0 - down / brace.form.down);
    brace.place(along.max(Length::ZERO), Length::ZERO).x
}

/// Room under the eave, under the beam and between the braces.
#[must_use]
pub fn room_problems(project: &Project, line: &RoofLine, room: &Clearances) -> Vec<Problem> {
    let say = |value: Length| length(value, project.units);
    let fixed = project.frame.heights.fixed;
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
        let problem = Problem::caution("frame.heights.beam_seat", says);
        let nearest = line.beam_seat + (project.site.passage_height - room.under_beam);
        // A height that follows from the two others cannot be set; nothing is offered for it.
        found.push(if fixed == FixedHeights::PitchAndLedger { problem } else { problem.nearest(nearest) });
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
    if line.pitch.to_in_twelve() < 3.0 - 1e-9 {
        let says = "Under 3 in 12 (14°) the sheets' laps must be sealed (IBC 1507.4.2); ask the roofing's maker.";
        let problem = Problem::caution("frame.heights.pitch", says);
        let is_held = fixed != FixedHeights::LedgerAndBeam;
        found.push(if is_held { problem.nearest_slope(Slope::in_twelve(3.0)) } else { problem });
    }
    found
}

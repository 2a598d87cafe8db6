//! Values no frame can have, each with the nearest one that works.
//!
//! Only what one field, or two beside each other, can tell; what needs the whole frame is found when
//! the frame is worked out.
use super::validate_buying::buying;
use super::validate_exceptions::exceptions;
use super::validate_strength::strength;
use super::{FixedHeights, Frame, Post, Problem, Problems, Project};
use crate::materials::{Timber, species};
use crate::units::{Length, Slope, UnitSystem};
use crate::wording::length;

/// Most posts that are worked out.
const MOST_POSTS: usize = 30;
/// Least room between two posts, and the shortest leg of a brace.
pub(super) const LEAST_BAY: Length = Length::inches(12.0);
const SHORTEST_LEG: Length = Length::inches(12.0);
const SLACK: Length = Length::inches(0.02);
/// Narrowest and widest size of a stick.
const SIZES: (Length, Length) = (Length::inches(0.5), Length::inches(24.0));

/// Collects every value that cannot be.
#[must_use]
pub fn validate(project: &Project) -> Vec<Problem> {
    let mut check = Check { problems: Problems::default(), units: project.units };
    lengths(&mut check, project);
    timbers(&mut check, &project.frame);
    strength(&mut check, project);
    if check.problems.stop() {
        // Sums of absurd sizes say nothing more.
        return check.problems.into_list();
    }
    seats(&mut check, project);
    posts(&mut check, &project.frame);
    joinery(&mut check, project);
    exceptions(&mut check, project);
    buying(&mut check, project);
    roofing(&mut check, project);
    check.problems.into_list()
}

pub(super) struct Check {
    pub(super) problems: Problems,
    pub(super) units: UnitSystem,
}

impl Check {
    /// A length outside its limits.
    pub(super) fn within(&mut self, field: &str, name: &str, value: Length, low: Length, high: Length) {
        let says = |word: &str, limit: Length| {
            Problem::stop(field, format!("{name} must be {word} {}.", length(limit, self.units))).nearest(limit)
        };
        // A limit may be typed as it is printed: half a millimetre of slack covers the rounding of the print.
        if value < low - SLACK {
            self.problems.add(says("at least", low));
        } else if value > high + SLACK {
            self.problems.add(says("at most", high));
        }
    }
}

fn lengths(check: &mut Check, project: &Project) {
    let (frame, site) = (&project.frame, &project.site);
    let inches = Length::inches;
    // A curved brace keeps two thirds of its width (common practice).
    let third = frame.timbers.brace.sawn.depth.to_inches() / 3.0;
    let limits = [
        ("frame.reach", "The reach", frame.reach, 24.0, 480.0),
        ("frame.beam_length", "The beam", frame.beam_length, 48.0, 2400.0),
        ("frame.ledger_packing", "The packing", frame.ledger_packing, 0.0, 12.0),
        ("frame.wall_gap", "The gap at the wall", frame.wall_gap, 0.0, 12.0),
        ("frame.tail", "The tail", frame.tail, 1.0, 48.0),
        ("frame.stand_off", "The stand-off", frame.stand_off, 0.0, 24.0),
        ("frame.brace_rise", "The hollow of a curved brace", frame.brace_rise, 0.0, third),
        ("frame.brace_along", "The leg along the beam", frame.brace_along, 12.0, 96.0),
        ("frame.brace_down", "The leg down the post", frame.brace_down, 12.0, 96.0),
        ("frame.rafters.spacing", "The rafter spacing", frame.rafters.spacing, 8.0, 120.0),
        ("frame.scarfs.lap", "The lap", frame.scarfs.lap, 12.0, 96.0),
        ("frame.ledger_lap", "The splice", frame.ledger_lap, 2.0, 36.0),
        ("site.eave_projection", "The eave", site.eave_projection, 0.0, 120.0),
        ("site.wall_post_spacing", "The spacing of the wall's posts", site.wall_post_spacing, 6.0, 480.0),
        ("site.first_wall_post", "The first wall post", site.first_wall_post, 0.0, 480.0),
        ("site.passage_height", "The height that must pass", site.passage_height, 0.0, 300.0),
        ("site.passage_width", "The width that must pass", site.passage_width, 0.0, 480.0),
        ("site.eave_edge", "The eave's height", site.eave_edge, 0.0, 1200.0),
        ("site.ground_at_wall", "The ground", site.ground_at_wall, -240.0, 240.0),
        ("site.ground_left", "The ground", site.ground_left, -240.0, 240.0),
        ("site.ground_right", "The ground", site.ground_right, -240.0, 240.0),
    ];
    for (field, name, value, low, high) in limits {
        check.within(field, name, value, inches(low), inches(high));
    }
    heights(check, project);
    let pitch = frame.heights.pitch.to_in_twelve();
    // A pitch that follows from the two seats is judged where it is worked out.
    let is_held = frame.heights.fixed != FixedHeights::LedgerAndBeam;
    check.problems.add_if(is_held && !(0.25 - 1e-9..=12.0 + 1e-9).contains(&pitch), || {
        Problem::stop("frame.heights.pitch", "The pitch must be between 1/4 in 12 (1.2°) and 12 in 12 (45°).")
            .nearest_slope(Slope::in_twelve(pitch.clamp(0.25, 12.0)))
    });
    check.problems.add_if(!(0.0..=60.0).contains(&site.service_moisture_percent), || {
        Problem::stop("site.service_moisture_percent", "The moisture content must be between 0 and 60 percent.")
    });
    check.problems.add_if(species(&frame.species).is_none(), || {
        Problem::stop("frame.species", "This species is not in the table; choose one that is.")
    });
}

/// The seats that are held; one that follows is judged where it is worked out.
fn heights(check: &mut Check, project: &Project) {
    let heights = &project.frame.heights;
    let seats = [
        ("frame.heights.ledger_seat", "The ledger seat", heights.ledger_seat, FixedHeights::PitchAndBeam),
        ("frame.heights.beam_seat", "The beam seat", heights.beam_seat, FixedHeights::PitchAndLedger),
    ];
    // The datum may be a laser line above or below the frame.
    let far = Length::inches(480.0);
    for (field, name, seat, free_when) in seats {
        if heights.fixed != free_when {
            check.within(field, name, seat, -far, far);
        }
    }
    let steepest = 24.0;
    check.problems.add_if(!(0.0..=steepest).contains(&project.site.upper_pitch.to_in_twelve()), || {
        Problem::stop("site.upper_pitch", "The roof above must be between level and 24 in 12 (63°).")
            .nearest_slope(Slope::in_twelve(project.site.upper_pitch.to_in_twelve().clamp(0.0, steepest)))
    });
}

fn timbers(check: &mut Check, frame: &Frame) {
    let t = &frame.timbers;
    let all: [(&str, Timber); 7] = [
        ("post", t.post),
        ("beam", t.beam),
        ("brace", t.brace),
        ("rafter", t.rafter),
        ("ledger", t.ledger),
        ("purlin", t.purlin),
        ("block", t.block),
    ];
    for (role, timber) in all {
        for (state, section) in [("ordered", timber.ordered), ("sawn", timber.sawn)] {
            for (side, size) in [("breadth", section.breadth), ("depth", section.depth)] {
                let field = format!("frame.timbers.{role}.{state}.{side}");
                check.within(&field, &format!("The {role}'s {side}"), size, SIZES.0, SIZES.1);
            }
        }
    }
}

fn seats(check: &mut Check, project: &Project) {
    let frame = &project.frame;
    let t = &frame.timbers;
    let out = -(t.rafter.ordered.breadth / 2.0);
    check.within("frame.rafters.inset", "The inset", frame.rafters.inset, out, Length::inches(36.0));
    // A stick below the inner size has no housing: its joint would stand proud of it.
    let inner = [
        ("frame.timbers.post.sawn.breadth", "The post as sawn", t.post.sawn.breadth, t.post.ordered.breadth),
        ("frame.timbers.beam.sawn.depth", "The beam as sawn", t.beam.sawn.depth, t.beam.ordered.depth),
    ];
    for (field, name, sawn, ordered) in inner {
        let least = ordered - project.joinery.housing;
        check.problems.add_if(sawn < least, || {
            let says = format!(
                "{name} is below the inner size of {} that its joints are brought down to: order it smaller, or house deeper.",
                length(least, project.units)
            );
            Problem::stop(field, says).nearest(least)
        });
    }
    let least = Length::inches(1.5);
    let room_on_ledger = (frame.ledger_packing + t.ledger.sawn.breadth - frame.wall_gap).min(t.ledger.sawn.breadth);
    let seats = [
        ("frame.ledger_seat_length", "The seat on the ledger", frame.ledger_seat_length, room_on_ledger),
        ("frame.beam_seat_length", "The seat on the beam", frame.beam_seat_length, t.beam.sawn.breadth),
    ];
    for (field, name, seat, widest) in seats {
        if widest < least {
            let says = "The timber under the rafter is too narrow for the least seat of 1 1/2 in (38 mm).";
            check.problems.add(Problem::stop(field, says));
        } else {
            check.within(field, name, seat, least, widest);
        }
    }
}

fn posts(check: &mut Check, frame: &Frame) {
    let n_posts = frame.posts.len();
    if !(2..=MOST_POSTS).contains(&n_posts) {
        let says = format!("A beam needs two posts at least; {MOST_POSTS} are the most that are worked out.");
        check.problems.add(Problem::stop("frame.posts", says).nearest_count(n_posts.clamp(2, MOST_POSTS)));
        return;
    }
    let breadth = frame.timbers.post.ordered.breadth;
    let least = breadth * n_posts as f64 + LEAST_BAY * (n_posts - 1) as f64;
    if frame.beam_length < least {
        let says = format!("{n_posts} posts with room between them need {}.", length(least, check.units));
        check.problems.add(Problem::stop("frame.beam_length", says).nearest(least));
        return;
    }
    // A bay must hold its braces: a value offered for one post's place leaves them room.
    let bay = |index: usize| {
        let n_legs = frame.posts.get(index..index + 2).map_or(0.0, n_legs);
        LEAST_BAY.max(frame.brace_along * n_legs)
    };
    let mut low = breadth / 2.0;
    for (index, post) in frame.posts.iter().enumerate() {
        let after: Length = (index..n_posts - 1).map(|index| bay(index) + breadth).sum();
        let after_bare = (breadth + LEAST_BAY) * (n_posts - 1 - index) as f64;
        let end = frame.beam_length - breadth / 2.0;
        let before = if index == 0 { Length::ZERO } else { bay(index - 1) - LEAST_BAY };
        let offered = (low + before, end - after);
        place(check, index, post.x, (low, end - after_bare), offered);
        low = post.x + breadth + LEAST_BAY;
    }
    for (index, pair) in frame.posts.windows(2).enumerate() {
        legs(check, frame, index, pair);
    }
    for (index, post) in frame.posts.iter().enumerate() {
        let field = format!("frame.posts.{index}.pier_top");
        check.within(&field, "The pier", post.pier_top, Length::inches(-240.0), Length::inches(240.0));
    }
}

/// A post keeps clear of its left neighbour and leaves room for those at its right. The place offered
/// instead has room for the braces as well, where the beam is long enough for that.
fn place(check: &mut Check, index: usize, x: Length, (low, high): (Length, Length), offered: (Length, Length)) {
    let field = format!("frame.posts.{index}.x");
    let number = index + 1;
    let (low_offered, high_offered) = if offered.0 <= offered.1 { offered } else { (low, high) };
    if x < low {
        let says = match index {
            0 => "P1 stands past the beam's left end.".to_owned(),
            _ if x < low - LEAST_BAY => format!("P{number} stands in P{index} or left of it."),
            _ => format!("P{index} and P{number} leave less than {} between them.", length(LEAST_BAY, check.units)),
        };
        check.problems.add(Problem::stop(field, says).nearest(low_offered));
    } else if x > high {
        let says = format!("P{number} stands past the beam's right end, or leaves no room for the posts after it.");
        check.problems.add(Problem::stop(field, says).nearest(high_offered));
    }
}

/// How many legs of braces a bay between two posts holds.
pub(super) fn n_legs(pair: &[Post]) -> f64 {
    f64::from(u8::from(pair[0].brace_right) + u8::from(pair[1].brace_left))
}

/// The braces of one bay do not meet.
fn legs(check: &mut Check, frame: &Frame, index: usize, pair: &[Post]) {
    let clear = pair[1].x - pair[0].x - frame.timbers.post.ordered.breadth;
    let n_legs = n_legs(pair);
    if n_legs == 0.0 || clear < LEAST_BAY || frame.brace_along * n_legs <= clear {
        return;
    }
    let says = format!(
        "The braces between P{} and P{} meet: the bay is {} clear.",
        index + 1,
        index + 2,
        length(clear, check.units)
    );
    let shorter = clear / n_legs;
    let problem = Problem::stop("frame.brace_along", says);
    check.problems.add(if shorter >= SHORTEST_LEG { problem.nearest(shorter) } else { problem });
}

fn joinery(check: &mut Check, project: &Project) {
    let (rules, frame) = (&project.joinery, &project.frame);
    let inches = Length::inches;
    let t = &frame.timbers;
    let narrowest = t.post.ordered.depth.min(t.beam.ordered.breadth).min(t.brace.sawn.breadth + inches(0.01));
    let limits = [
        ("joinery.tenon_thickness", "The tenon", rules.tenon_thickness, 0.5, 6.0),
        ("joinery.tenon_offset", "The offset", rules.tenon_offset, 0.0, 12.0),
        ("joinery.post_tenon", "The post's tenon", rules.post_tenon, 1.0, 12.0),
        ("joinery.brace_tenon", "The brace's tenon", rules.brace_tenon, 1.0, 8.0),
        ("joinery.blind_clearance", "The blind clearance", rules.blind_clearance, 0.0, 2.0),
        ("joinery.housing", "The housing", rules.housing, 0.0, 2.0),
        ("joinery.pocket_clearance", "The pocket's clearance", rules.pocket_clearance, 0.0, 1.0),
        ("joinery.end_shoulder", "The end shoulder", rules.end_shoulder, 0.0, 6.0),
        ("joinery.peg", "The peg", rules.peg, 0.25, 2.0),
        ("joinery.peg_from_shoulder", "The peg's distance", rules.peg_from_shoulder, 0.5, 6.0),
        ("joinery.two_pegs_from", "The width for two pegs", rules.two_pegs_from, 1.0, 24.0),
        ("joinery.drawbore", "The drawbore", rules.drawbore, 0.0, 0.25),
        ("joinery.scarf_squint", "The squint", rules.scarf_squint, 0.0, 3.0),
        ("joinery.scarf_blade", "The blade", rules.scarf_blade, 0.5, 12.0),
        ("joinery.scarf_table", "The table", rules.scarf_table, 0.25, 4.0),
        ("joinery.scarf_wedge", "The wedge gap", rules.scarf_wedge, 0.25, 4.0),
        ("joinery.scarf_clear", "The clearance of the scarf", rules.scarf_clear, 0.0, 12.0),
        ("joinery.wood_over_pocket", "The wood over a pocket", rules.wood_over_pocket, 0.5, 12.0),
        ("joinery.least_web", "The web", rules.least_web, 0.25, 6.0),
        ("joinery.chamfer", "The chamfer", rules.chamfer, 0.0, 2.0),
        ("joinery.chamfer_stop", "The chamfer's stop", rules.chamfer_stop, 0.0, 24.0),
        ("joinery.shrink_clearance", "The clearance for shrinkage", rules.shrink_clearance, 0.0, 0.5),
    ];
    for (field, name, value, low, high) in limits {
        check.within(field, name, value, inches(low), inches(high));
    }
    check.problems.add_if(!(0.1..=0.4).contains(&rules.scarf_abutment_share), || {
        Problem::stop("joinery.scarf_abutment_share", "The abutments must be between 0.1 and 0.4 of the beam's depth.")
    });
    let most = narrowest - rules.tenon_offset;
    check.problems.add_if(most < inches(0.5), || {
        Problem::stop("joinery.tenon_offset", "The tenon's offset leaves no wood for it in the thinnest stick.")
            .nearest((narrowest - rules.tenon_thickness).max(Length::ZERO))
    });
    leave_wood(check, project);
    let reduced = t.beam.ordered.depth - rules.housing;
    let deepest = reduced - rules.blind_clearance - inches(1.0);
    check.problems.add_if(rules.post_tenon > deepest, || {
        Problem::stop("joinery.post_tenon", "The post's mortise would come out at the top of the beam.")
            .nearest(deepest)
    });
}

/// An end post keeps a tenon, a brace its short edge.
fn leave_wood(check: &mut Check, project: &Project) {
    let (rules, frame) = (&project.joinery, &project.frame);
    let t = &frame.timbers;
    let widest = t.post.ordered.breadth - rules.tenon_thickness;
    check.problems.add_if(rules.end_shoulder > widest, || {
        Problem::stop("joinery.end_shoulder", "The end shoulder leaves no tenon on an end post.")
            .nearest(widest.max(Length::ZERO))
    });
    let long_edge = frame.brace_along.hypot(frame.brace_down);
    let lean = frame.brace_along / frame.brace_down + frame.brace_down / frame.brace_along;
    let widest = long_edge / lean * 0.75;
    check.problems.add_if(t.brace.sawn.depth > widest, || {
        Problem::stop(
            "frame.timbers.brace.sawn.depth",
            "The brace is too wide for its legs: its short edge would vanish.",
        )
        .nearest(widest)
    });
}

fn roofing(check: &mut Check, project: &Project) {
    let roofing = &project.roofing;
    let limits = [
        ("roofing.cover", "The cover width", roofing.cover, 6.0, 72.0),
        ("roofing.rib", "The rib", roofing.rib, 0.0, 6.0),
        ("roofing.longest_sheet", "The longest sheet", roofing.longest_sheet, 24.0, 720.0),
        ("roofing.eave_overhang", "The overhang of the sheets", roofing.eave_overhang, 0.0, 12.0),
        ("roofing.top_gap", "The gap at the top", roofing.top_gap, 0.0, 12.0),
        ("roofing.rake", "The rake", roofing.rake, 0.0, 48.0),
        ("roofing.purlin_spacing", "The purlin spacing", roofing.purlin_spacing, 6.0, 96.0),
        ("roofing.first_purlin", "The first purlin", roofing.first_purlin, 0.0, 24.0),
        ("roofing.last_purlin", "The last purlin", roofing.last_purlin, 0.0, 24.0),
    ];
    for (field, name, value, low, high) in limits {
        check.within(field, name, value, Length::inches(low), Length::inches(high));
    }
}

//! Two joints in the same wood, walls too thin, laps too short: what the whole frame shows.
use crate::design::Shape;
use crate::geometry::{BraceShape, bay_of, laid_out, tenon_for_web, web_between};
use crate::project::{Problem, Problems, Project};
use crate::units::{Length, UnitSystem};
use crate::wording::length;

/// Least beam beyond the mortise of an end post (common practice).
const LEAST_END: Length = Length::inches(4.0);
/// Longest tail past a notch, and least wood left at it (IRC R802.7.1.1).
const LONGEST_TAIL: Length = Length::inches(24.0);
const LEAST_LEFT: Length = Length::inches(3.5);

/// What the joinery rules and sizes show by themselves, before the frame is worked out.
#[must_use]
pub fn rule_conflicts(project: &Project) -> Vec<Problem> {
    let mut problems = Problems::default();
    mortises(&mut problems, project);
    hollow(&mut problems, project);
    problems.into_list()
}

/// What the whole frame shows.
#[must_use]
pub fn frame_conflicts(project: &Project, shape: &Shape) -> Vec<Problem> {
    let mut problems = Problems::default();
    end_posts(&mut problems, project, shape);
    notches(&mut problems, project, shape);
    splices(&mut problems, project, shape);
    problems.into_list()
}

/// Past a quarter of its width off, a check may run straight out through the hollow of a curved brace (common practice).
fn hollow(problems: &mut Problems, project: &Project) {
    let (rise, width) = (project.frame.brace_rise, project.frame.timbers.brace.sawn.depth);
    problems.add_if(rise > width / 4.0 + Length::inches(1e-6), || {
        let says = "More than a quarter of the brace's width goes: a check may run straight out through the hollow.";
        Problem::caution("frame.brace_rise", says).nearest(width / 4.0)
    });
}

fn mortises(problems: &mut Problems, project: &Project) {
    let (rules, frame) = (&project.joinery, &project.frame);
    let say = |value: Length| length(value, project.units);
    let is_opposed = frame.posts.iter().any(|post| post.brace_left && post.brace_right);
    let pocket = BraceShape::new(frame, rules).post_pocket(rules, rules.housing);
    let web = web_between(frame, rules);
    problems.add_if(is_opposed && web < rules.least_web, || {
        let says = format!(
            "Opposed brace mortises would leave a web of {} in the post; {} is the least.",
            say(web.max(Length::ZERO)),
            say(rules.least_web)
        );
        Problem::caution("joinery.brace_tenon", says).nearest(tenon_for_web(frame, rules))
    });
    let walls =
        [("post", laid_out(&frame.timbers.post, rules).depth), ("beam", laid_out(&frame.timbers.beam, rules).breadth)];
    for (name, width) in walls {
        let wall = width - rules.tenon_offset - rules.tenon_thickness;
        problems.add_if(wall < rules.tenon_thickness.min(Length::inches(1.5)), || {
            let says = format!("The mortise wall at the {name}'s wall face would be only {}.", say(wall));
            Problem::caution("joinery.tenon_thickness", says)
        });
    }
    problems.add_if(pocket.mortise.1 <= pocket.mortise.0 + rules.peg, || {
        Problem::caution(
            "joinery.housing",
            "The brace's nose leaves no room for its mortise: make the housing shallower.",
        )
    });
    let relish = rules.post_tenon - rules.peg_from_shoulder;
    problems.add_if(relish < rules.peg * 2.0, || {
        let says = format!("Only {} of tenon lies beyond the post's peg; two peg widths are the least.", say(relish));
        Problem::caution("joinery.post_tenon", says).nearest(rules.peg_from_shoulder + rules.peg * 2.0)
    });
}

fn end_posts(problems: &mut Problems, project: &Project, shape: &Shape) {
    let beam = project.frame.beam_length;
    let ends = [
        shape.posts.first().map(|post| (0, post.tenon.0)),
        shape.posts.last().map(|post| (shape.posts.len() - 1, beam - post.tenon.1)),
    ];
    for (index, end) in ends.into_iter().flatten() {
        problems.add_if(end < LEAST_END - Length::inches(1e-6), || {
            let says = format!(
                "Only {} of beam lies beyond the mortise of P{}; {} is the least. Move the post in or widen its end shoulder.",
                length(end.max(Length::ZERO), project.units),
                index + 1,
                length(LEAST_END, project.units)
            );
            let x = project.frame.posts[index].x;
            let shift = LEAST_END - end;
            Problem::caution(format!("frame.posts.{index}.x"), says).nearest(if index == 0 { x + shift } else { x - shift })
        });
    }
}

fn notches(problems: &mut Problems, project: &Project, shape: &Shape) {
    let frame = &project.frame;
    let depth = frame.timbers.rafter.sawn.depth;
    let say = |value: Length, units: UnitSystem| length(value, units);
    let notches = [("frame.ledger_seat_length", &shape.rafter.ledger), ("frame.beam_seat_length", &shape.rafter.beam)];
    for (field, notch) in notches {
        problems.add_if(notch.notch_depth > depth / 4.0 + Length::inches(1e-6), || {
            let says = format!(
                "The bird's mouth is {} deep, more than a quarter of the rafter (IRC R802.7.1).",
                say(notch.notch_depth, project.units)
            );
            Problem::caution(field, says).nearest(depth / (shape.rafter.pitch.sin() * 4.0))
        });
    }
    let left = depth - shape.rafter.beam.notch_depth;
    problems.add_if(frame.tail > LONGEST_TAIL || left < LEAST_LEFT, || {
        let says = format!(
            "Past a notch the tail may be {} at most, with {} of wood left over the notch (IRC R802.7.1.1); here {} is left.",
            say(LONGEST_TAIL, project.units),
            say(LEAST_LEFT, project.units),
            say(left, project.units)
        );
        Problem::caution("frame.tail", says).nearest(frame.tail.min(LONGEST_TAIL))
    });
}

/// A ledger splice in the bay of a scarf: the two weak places of the roof beside each other.
fn splices(problems: &mut Problems, project: &Project, shape: &Shape) {
    let bay_of = |x: Length| bay_of(&shape.posts, x);
    for piece in shape.ledger.iter().filter(|piece| piece.right_splice) {
        let centre = piece.end - project.frame.ledger_lap / 2.0;
        let bay = bay_of(centre);
        let scarf = shape.beam.scarfs.iter().find(|scarf| bay.is_some() && bay_of(scarf.place.centre) == bay);
        if let Some(scarf) = scarf {
            let says = format!(
                "The splice of L{} and L{} lies in the same bay as scarf {}; longer ledger stock, or another count of \
                 pieces, would part them.",
                piece.number,
                piece.number + 1,
                scarf.number
            );
            problems.add(Problem::caution("frame.ledger_lap", says));
        }
    }
}

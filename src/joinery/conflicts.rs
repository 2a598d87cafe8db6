//! Two joints in the same wood, walls too thin, laps too short: what the whole frame shows.
use crate::design::Shape;
use crate::geometry::{BraceShape, Pocket, bay_of, laid_out, tenon_for_web, web_between};
use crate::project::{JoineryRules, JointName, OwnRule, Problem, Problems, Project, Side};
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
    absent(&mut problems, project, shape);
    own_mortises(&mut problems, project, shape);
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
    let is_own =
        |post: usize| [Side::Left, Side::Right].map(|side| own_foot(project, post, side)).iter().any(|own| *own);
    let mut opposed = frame.posts.iter().zip(1..).filter(|(post, _)| post.brace_left && post.brace_right);
    problems.extend(opposed.any(|(_, post)| !is_own(post)).then(|| web(project, (rules, rules), "the post")).flatten());
    let at = |field: &str| format!("joinery.{field}");
    for (name, width) in [("post", of_post(project)), ("beam", of_beam(project))] {
        problems.extend(wall(project, rules, (name, width), at("tenon_thickness")));
    }
    let pocket = BraceShape::new(frame, rules).post_pocket(rules, rules.housing);
    problems.extend(nose(&pocket, rules, at("housing")));
    problems.extend(relish(project, rules, "the post’s peg", at("post_tenon")));
}

/// The same at every joint that departs from the rules.
fn own_mortises(problems: &mut Problems, project: &Project, shape: &Shape) {
    for post in shape.posts.iter().filter(|post| post.rules != project.joinery) {
        let joint = JointName::PostHead(post.number);
        let at = |rule: OwnRule| format!("exceptions.{joint}.{}", rule.key());
        problems.extend(wall(project, &post.rules, ("beam", of_beam(project)), at(OwnRule::TenonThickness)));
        let peg = format!("the peg of {}", joint.words());
        problems.extend(relish(project, &post.rules, &peg, at(OwnRule::TenonLength)));
    }
    for brace in &shape.braces {
        let (foot, head) = (JointName::BraceFoot(brace.post, brace.side), JointName::BraceHead(brace.post, brace.side));
        let ends = [
            (foot, &brace.foot, ("post", of_post(project)), brace.post_pocket(&project.frame)),
            (head, &brace.head, ("beam", of_beam(project)), brace.beam_pocket(&project.frame)),
        ];
        for (joint, rules, wide, pocket) in ends.into_iter().filter(|end| *end.1 != project.joinery) {
            let at = |rule: OwnRule| format!("exceptions.{joint}.{}", rule.key());
            problems.extend(wall(project, rules, wide, at(OwnRule::TenonThickness)));
            problems.extend(nose(&pocket, rules, at(OwnRule::Housing)));
        }
    }
    for pair in shape.braces.windows(2).filter(|pair| pair[0].post == pair[1].post) {
        if let Some(own) = pair.iter().find(|brace| own_foot(project, brace.post, brace.side)) {
            let found = web(project, (&pair[0].foot, &pair[1].foot), &format!("P{}", own.post));
            let field = format!("exceptions.{}.tenon_length", JointName::BraceFoot(own.post, own.side));
            problems.extend(found.map(|problem| Problem { field, nearest: None, ..problem }));
        }
    }
}

fn own_foot(project: &Project, post: usize, side: Side) -> bool {
    project.rules_of(JointName::BraceFoot(post, side)) != project.joinery
}

fn of_post(project: &Project) -> Length {
    laid_out(&project.frame.timbers.post, &project.joinery).depth
}

fn of_beam(project: &Project) -> Length {
    laid_out(&project.frame.timbers.beam, &project.joinery).breadth
}

/// Two braces opposed in one post, by the rules of their feet.
fn web(project: &Project, feet: (&JoineryRules, &JoineryRules), place: &str) -> Option<Problem> {
    let (rules, web) = (&project.joinery, web_between(&project.frame, feet));
    (web < rules.least_web).then(|| {
        let says = format!(
            "Opposed brace mortises would leave a web of {} in {place}; {} is the least.",
            length(web.max(Length::ZERO), project.units),
            length(rules.least_web, project.units)
        );
        Problem::caution("joinery.brace_tenon", says).nearest(tenon_for_web(&project.frame, rules))
    })
}

fn wall(project: &Project, rules: &JoineryRules, (name, width): (&str, Length), field: String) -> Option<Problem> {
    let wall = width - rules.tenon_offset - rules.tenon_thickness;
    (wall < rules.tenon_thickness.min(Length::inches(1.5))).then(|| {
        let wall = length(wall, project.units);
        Problem::caution(field, format!("The mortise wall at the {name}'s wall face would be only {wall}."))
    })
}

fn nose(pocket: &Pocket, rules: &JoineryRules, field: String) -> Option<Problem> {
    let says = "The brace's nose leaves no room for its mortise: make the housing shallower.";
    (pocket.mortise.1 <= pocket.mortise.0 + rules.peg).then(|| Problem::caution(field, says))
}

fn relish(project: &Project, rules: &JoineryRules, peg: &str, field: String) -> Option<Problem> {
    let relish = rules.post_tenon - rules.peg_from_shoulder;
    (relish < rules.peg * 2.0).then(|| {
        let relish = length(relish, project.units);
        let says = format!("Only {relish} of tenon lies beyond {peg}; two peg widths are the least.");
        Problem::caution(field, says).nearest(rules.peg_from_shoulder + rules.peg * 2.0)
    })
}

/// What is said of a joint the frame does not have, or asks what such a joint has not.
fn absent(problems: &mut Problems, project: &Project, shape: &Shape) {
    if project.exceptions.is_empty() {
        return;
    }
    let all = JointName::all(project, shape.beam.scarfs.len());
    for (name, own) in &project.exceptions {
        let field = format!("exceptions.{name}");
        let Some(joint) = JointName::parse(name).filter(|joint| all.contains(joint) && joint.to_string() == *name)
        else {
            let says =
                format!("The frame has no joint {name}: what it has of its own counts for nothing. Take it away.");
            problems.add(Problem::caution(field, says));
            continue;
        };
        for rule in OwnRule::ALL.into_iter().filter(|rule| !joint.takes(*rule) && rule.of(own).is_some()) {
            let says = format!("{} has no {} of its own: it counts for nothing.", joint.words(), rule.name());
            problems.add(Problem::caution(format!("{field}.{}", rule.key()), says));
        }
    }
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
            let is_mine = !project.frame.ledger_splices.is_empty();
            let ways = match is_mine {
                true => "move one of them to another bay",
                false => "longer ledger stock, or another count of pieces, would part them",
            };
            let (left, right, scarf) = (piece.number, piece.number + 1, scarf.number);
            let says = format!("The splice of L{left} and L{right} lies in the same bay as scarf {scarf}; {ways}.");
            let field =
                if is_mine { format!("frame.ledger_splices.{}", left - 1) } else { "frame.ledger_lap".to_owned() };
            problems.add(Problem::caution(field, says));
        }
    }
}

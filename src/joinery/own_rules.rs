//! Joints with rules of their own: which joint two sticks make, and what it has that the rules do not say.
use crate::design::Shape;
use crate::project::{JointName, OwnRule, Project, Side};
use crate::units::{Fineness, Length};
use crate::wording::tape;

/// The joint of two sticks, where it is one that may have rules of its own; the beam may be named as a whole.
#[must_use]
pub fn joint_between(one: &str, other: &str) -> Option<JointName> {
    let brace = |mark: &str| {
        let brace = mark.strip_prefix('K')?;
        let (post, side) = match brace.strip_suffix('L') {
            Some(post) => (post, Side::Left),
            None => (brace.strip_suffix('R')?, Side::Right),
        };
        post.parse().ok().map(|post: usize| (post, side))
    };
    let is_beam = |mark: &str| mark == "beam" || mark.starts_with('B');
    let by = |stick: &str, mate: &str| {
        if let Some((post, side)) = brace(stick) {
            if is_beam(mate) {
                return Some(JointName::BraceHead(post, side));
            }
            return mate.starts_with('P').then_some(JointName::BraceFoot(post, side));
        }
        let post = stick.strip_prefix('P')?.parse().ok()?;
        is_beam(mate).then_some(JointName::PostHead(post))
    };
    by(one, other).or_else(|| by(other, one))
}

/// The joint of a name as the drawings call it: `Post P2 in beam B1`, `Scarf 1: B2 and B1`.
#[must_use]
pub fn joint_named(name: &str) -> Option<JointName> {
    let words: Vec<&str> = name.split([' ', ':']).collect();
    match words[..] {
        ["Scarf", number, ..] => number.parse().ok().map(JointName::Scarf),
        [_, one, "in", _, other, ..] => joint_between(one, other),
        _ => None,
    }
}

/// What that joint has of its own, beside what the rules say; empty where it follows them in everything.
#[must_use]
pub fn departures(project: &Project, joint: JointName) -> Vec<String> {
    let Some(own) = project.exception_of(joint) else { return Vec::new() };
    let say = |value: Length| tape(value, project.units, Fineness::ThirtySecond);
    let mut found = Vec::new();
    for rule in OwnRule::ALL.into_iter().filter(|rule| joint.takes(*rule)) {
        let by_rules = rule.in_rules(&project.joinery, joint);
        if let Some(value) = rule.of(own).filter(|value| *value != by_rules) {
            found.push(format!("{} {} (rules {})", rule.name(), say(value), say(by_rules)));
        }
    }
    if let JointName::Scarf(number) = joint {
        let (kind, by_rules) = (project.scarf_kind(number), project.frame.scarfs.kind);
        if kind != by_rules {
            found.push(format!("{} (the others {})", kind.name(), by_rules.name()));
        }
    }
    found
}

/// The sentence that stands wherever the joint is; nothing where it follows the rules.
#[must_use]
pub fn exception_says(project: &Project, joint: JointName) -> Option<String> {
    let found = departures(project, joint);
    if found.is_empty() {
        return None;
    }
    let reason = project.exception_of(joint).map_or("", |own| own.reason.trim().trim_end_matches('.'));
    let because = if reason.is_empty() { ", no reason given".to_owned() } else { format!(", because {reason}") };
    let mut words = joint.words();
    if let JointName::Scarf(_) = joint {
        words = words.replacen('s', "S", 1);
    }
    Some(format!("{words} is not by the rules: {}{because}.", found.join(", ")))
}

/// The joints of a stick that may have rules of their own: a post's head and its braces' feet; a piece's scarfs, the posts
/// under it and the braces in it; both ends of a brace.
#[must_use]
pub fn own_joints_of(project: &Project, shape: &Shape, mark: &str) -> Vec<JointName> {
    if project.exceptions.is_empty() {
        return Vec::new();
    }
    all_own(project, shape).into_iter().filter(|joint| is_on(project, shape, *joint, mark)).collect()
}

/// Every joint of the frame that is not by the rules.
#[must_use]
pub fn all_own(project: &Project, shape: &Shape) -> Vec<JointName> {
    if project.exceptions.is_empty() {
        return Vec::new();
    }
    let all = JointName::all(project, shape.beam.scarfs.len());
    all.into_iter().filter(|joint| !departures(project, *joint).is_empty()).collect()
}

fn is_on(project: &Project, shape: &Shape, joint: JointName, mark: &str) -> bool {
    let pieces = || shape.beam.pieces.iter().filter(|piece| format!("B{}", piece.number) == mark);
    let holds = |post: usize, side: Side| {
        pieces().any(|piece| {
            let mut braces = super::beam_piece::braces_of(project, shape, piece);
            braces.any(|brace| (brace.post, brace.side) == (post, side))
        })
    };
    match joint {
        JointName::PostHead(post) => {
            let is_over = |piece| super::beam_piece::posts_of(shape, piece).any(|known| known.number == post);
            mark == format!("P{post}") || pieces().any(is_over)
        }
        JointName::BraceFoot(post, _) => {
            mark == format!("P{post}") || joint.to_string().starts_with(&format!("{mark} "))
        }
        JointName::BraceHead(post, side) => joint.to_string().starts_with(&format!("{mark} ")) || holds(post, side),
        JointName::Scarf(number) => {
            pieces().any(|piece| [piece.left, piece.right].into_iter().flatten().any(|(at, _)| at == number))
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::project::{JointException, ScarfKind, demo};

    #[test]
    fn two_sticks_name_their_joint() {
        let check = |one: &str, other: &str, name: Option<&str>| {
            let found = joint_between(one, other).map(|joint| joint.to_string());
            assert_eq!(found.as_deref(), name, "{one} {other}");
            assert_eq!(joint_between(other, one).map(|joint| joint.to_string()).as_deref(), name, "{other} {one}");
        };
        check("P2", "beam", Some("P2"));
        check("B1", "P12", Some("P12"));
        check("K1R", "P1", Some("K1R foot"));
        check("B2", "K3L", Some("K3L head"));
        check("K3L", "beam", Some("K3L head"));
        check("R1", "beam", None);
        check("B1", "B2", None);
        check("L1", "L2", None);
        let named = |name: &str| joint_named(name).map(|joint| joint.to_string());
        assert_eq!(named("Post P2 in beam B1").as_deref(), Some("P2"));
        assert_eq!(named("Brace K1R in post P1").as_deref(), Some("K1R foot"));
        assert_eq!(named("Brace K1R in beam B1 and B2").as_deref(), Some("K1R head"));
        assert_eq!(named("Scarf 2: B3 and B2").as_deref(), Some("S2"));
        assert_eq!(named("Rafter R5 over ledger L1"), None);
        assert_eq!(named("Ledger splice: L1 and L2"), None);
    }

    /// In words, with what the rules say beside it, on every stick that the joint is of and on no other.
    #[test]
    fn an_exception_is_told_on_both_sticks() {
        let mut project = demo::wool_barn();
        let tenon_length = Some(Length::inches(5.0));
        let own = JointException { tenon_length, reason: "a shake above".to_owned(), ..JointException::default() };
        project.exceptions.insert("P2".to_owned(), own);
        let says = exception_says(&project, JointName::PostHead(2)).unwrap();
        assert_eq!(says, "P2’s head is not by the rules: tenon length 5″ (rules 4″), because a shake above.");
        let scarf_kind = Some(ScarfKind::Halved);
        project.exceptions.insert("S1".to_owned(), JointException { scarf_kind, ..JointException::default() });
        let built = crate::lay_out(&project).built.unwrap();
        let of = |mark: &str| own_joints_of(&project, &built.shape, mark);
        assert_eq!(of("P2"), [JointName::PostHead(2)]);
        assert_eq!(of("P1"), []);
        let both = [JointName::PostHead(2), JointName::Scarf(1)];
        let pieces: Vec<Vec<JointName>> = ["B1", "B2", "B3"].into_iter().map(of).collect();
        assert!(pieces.iter().flatten().filter(|joint| **joint == both[0]).count() == 1, "{pieces:?}");
        assert!(pieces[0].contains(&both[1]) && pieces[1].contains(&both[1]) && !pieces[2].contains(&both[1]));
    }

    #[test]
    fn what_the_rules_say_already_is_no_departure() {
        let mut project = demo::wool_barn();
        let peg = Some(project.joinery.peg);
        project.exceptions.insert("P1".to_owned(), JointException { peg, ..JointException::default() });
        assert_eq!(exception_says(&project, JointName::PostHead(1)), None);
    }
}

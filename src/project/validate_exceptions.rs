//! Limits of what single joints have of their own: those of the rules.
use super::validate::Check;
use super::{JointName, OwnRule, Problem, Project};
use crate::units::Length;

/// What a rule calls the length, and its limits in inches.
const fn limits(rule: OwnRule, is_head: bool) -> (&'static str, f64, f64) {
    match rule {
        OwnRule::TenonThickness => ("The tenon", 0.5, 6.0),
        OwnRule::TenonOffset => ("The offset", 0.0, 12.0),
        OwnRule::TenonLength => ("The tenon", 1.0, if is_head { 12.0 } else { 8.0 }),
        OwnRule::Housing => ("The housing", 0.0, 2.0),
        OwnRule::Peg => ("The peg", 0.25, 2.0),
        OwnRule::PegFromShoulder => ("The peg's distance", 0.5, 6.0),
        OwnRule::Drawbore => ("The drawbore", 0.0, 0.25),
    }
}

/// Every joint the frame has by its posts and braces; what is said of others counts for nothing.
pub(super) fn exceptions(check: &mut Check, project: &Project) {
    if project.exceptions.is_empty() {
        return;
    }
    for joint in JointName::all(project, 0) {
        let Some(own) = project.exception_of(joint) else { continue };
        let is_head = matches!(joint, JointName::PostHead(_));
        let field = |rule: OwnRule| format!("exceptions.{joint}.{}", rule.key());
        for rule in OwnRule::ALL.into_iter().filter(|rule| joint.takes(*rule)) {
            let (name, low, high) = limits(rule, is_head);
            if let Some(value) = rule.of(own) {
                check.within(&field(rule), name, value, Length::inches(low), Length::inches(high));
            }
        }
        leaves_wood(check, project, joint, &field);
    }
}

fn leaves_wood(check: &mut Check, project: &Project, joint: JointName, field: &dyn Fn(OwnRule) -> String) {
    let (timbers, rules, inches) = (&project.frame.timbers, project.rules_of(joint), Length::inches);
    let is_head = matches!(joint, JointName::PostHead(_));
    let mut narrowest = timbers.post.ordered.depth.min(timbers.beam.ordered.breadth);
    if !is_head {
        narrowest = narrowest.min(timbers.brace.sawn.breadth + inches(0.01));
    }
    let says = |words: &str| format!("{} at {}.", words, joint.words());
    check.problems.add_if(narrowest - rules.tenon_offset < inches(0.5), || {
        Problem::stop(
            field(OwnRule::TenonOffset),
            says("The tenon's offset leaves no wood for it in the thinnest stick"),
        )
        .nearest((narrowest - rules.tenon_thickness).max(Length::ZERO))
    });
    let deepest = timbers.beam.ordered.depth - rules.housing - rules.blind_clearance - inches(1.0);
    check.problems.add_if(is_head && rules.post_tenon > deepest, || {
        Problem::stop(field(OwnRule::TenonLength), says("The mortise would come out at the top of the beam"))
            .nearest(deepest)
    });
    let is_end = matches!(joint, JointName::PostHead(post) if post == 1 || post == project.frame.posts.len());
    let widest = timbers.post.ordered.breadth - rules.end_shoulder;
    check.problems.add_if(is_end && rules.tenon_thickness > widest, || {
        Problem::stop(field(OwnRule::TenonThickness), says("The tenon would be thicker than it is wide"))
            .nearest(widest.max(inches(0.5)))
    });
}

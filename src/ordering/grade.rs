//! What to ask of the wood itself, in the words a sawyer knows: by what a stick does, and where its heart should be.
//!
//! All of it is common practice: spiral grain twists a post braced on two faces, and a beam, as it dries; crown goes up;
//! wane takes wood from a joint or a bearing.
use std::borrow::Cow;

use crate::project::{Heart, Project, Role};
use crate::units::UnitSystem;

const NO_SPIRAL: &str = "no spiral grain";
const STRAIGHT: &str = "straight";
const CROWN: &str = "straight, crown marked";
const LITTLE_WANE: &str = "little wane, none at joints or on bearing edges";
const EDGE: &str = "no wane on the upper edge or at the seats";
const SOUND: &str = "sound, no bark";

/// The words for wood of that heart which becomes those sticks, each told by its role and mark: the usual ones, then the user's
/// own for those roles.
pub(super) fn grade_words<'a>(
    project: &Project,
    heart: Heart,
    sticks: impl Iterator<Item = (Role, &'a str)>,
) -> Vec<Cow<'static, str>> {
    let mut words = Vec::new();
    let mut roles: Vec<Role> = Vec::new();
    if heart != Heart::Either {
        words.push(heart.name());
    }
    for (role, mark) in sticks {
        if !roles.contains(&role) {
            roles.push(role);
        }
        let of_role: &[&str] = match role {
            Role::Post if is_braced_twice(project, mark) => &[NO_SPIRAL, LITTLE_WANE],
            Role::Post | Role::Brace => &[LITTLE_WANE],
            Role::Beam => &[NO_SPIRAL, CROWN, LITTLE_WANE],
            Role::Rafter => &[CROWN, EDGE],
            Role::Ledger => &[STRAIGHT, LITTLE_WANE],
            Role::Purlin | Role::Block => &[SOUND],
        };
        for word in of_role {
            if !words.contains(word) {
                words.push(word);
            }
        }
    }
    if words.contains(&CROWN) {
        words.retain(|word| *word != STRAIGHT);
    }
    let mut words: Vec<Cow<'static, str>> = words.into_iter().map(Cow::Borrowed).collect();
    for own in project.buying.words.iter().filter(|own| roles.contains(&own.role)) {
        for part in own.words.split(',') {
            let part = part.split_whitespace().collect::<Vec<_>>().join(" ");
            if !part.is_empty() && !words.iter().any(|known| *known == part) {
                words.push(part.into());
            }
        }
    }
    words
}

/// Braces stand on two faces of that post.
fn is_braced_twice(project: &Project, mark: &str) -> bool {
    let number = mark.get(1..).and_then(|digits| digits.parse::<usize>().ok());
    let post = number.and_then(|number| project.frame.posts.get(number.checked_sub(1)?));
    post.is_some_and(|post| post.brace_left && post.brace_right)
}

/// What a full size is (common practice).
#[must_use]
pub const fn full_words(units: UnitSystem) -> &'static str {
    match units {
        UnitSystem::Imperial => {
            "Full means: measured at both ends, no side under the size asked for; up to 1⁄4″ over is fine."
        }
        UnitSystem::Metric => {
            "Full means: measured at both ends, no side under the size asked for; up to 6 mm over is fine."
        }
    }
}

/// Where the frame is reckoned with another size than the one asked for: a sentence for each kind of stick.
#[must_use]
pub fn sawn_words(project: &Project) -> Vec<String> {
    let differs = |role: &Role| {
        let timber = project.frame.timbers.of(*role);
        let (ordered, sawn) = (timber.ordered, timber.sawn);
        (ordered != sawn).then(|| {
            let label = |section: crate::materials::Section| section.label(project.units);
            format!("Each {} is asked for as {} and reckoned as sawn {}.", role.name(), label(ordered), label(sawn))
        })
    };
    Role::ALL.iter().filter_map(differs).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::demo;

    fn check(heart: Heart, sticks: &[(Role, &str)], expected: &[&str]) {
        let project = demo::wool_barn();
        assert_eq!(grade_words(&project, heart, sticks.iter().copied()), expected);
    }

    /// P1 has a brace to the right alone, P2 one on either side.
    #[test]
    fn words_follow_what_a_stick_does() {
        check(Heart::Boxed, &[(Role::Post, "P1")], &["boxed heart", LITTLE_WANE]);
        check(Heart::Boxed, &[(Role::Post, "P1"), (Role::Post, "P2")], &["boxed heart", LITTLE_WANE, NO_SPIRAL]);
        check(Heart::Either, &[(Role::Rafter, "R1"), (Role::Rafter, "R2")], &[CROWN, EDGE]);
        check(Heart::Either, &[(Role::Ledger, "L1"), (Role::Beam, "B1")], &[LITTLE_WANE, NO_SPIRAL, CROWN]);
        check(Heart::Free, &[(Role::Brace, "K1R")], &["free of heart", LITTLE_WANE]);
    }

    /// His own words stand behind the usual ones, once each, and only where a stick of that role comes out.
    #[test]
    fn own_words_are_asked_for_with_the_rest() {
        let mut project = demo::wool_barn();
        project.buying.ask_words(Role::Rafter, "ring count over 8,  winter  cut , straight, crown marked".to_owned());
        project.buying.ask_words(Role::Post, "  ".to_owned());
        assert_eq!(project.buying.words.len(), 1);
        let words = |role, mark| grade_words(&project, Heart::Either, [(role, mark)].into_iter());
        assert_eq!(
            words(Role::Rafter, "R1"),
            [CROWN, EDGE, "ring count over 8", "winter cut", "straight", "crown marked"]
        );
        assert_eq!(words(Role::Post, "P1"), [LITTLE_WANE]);
    }

    #[test]
    fn a_size_sawn_over_is_said() {
        let mut project = demo::wool_barn();
        assert!(sawn_words(&project).is_empty());
        project.frame.timbers.post.sawn.depth = crate::units::Length::inches(8.25);
        assert_eq!(sawn_words(&project), ["Each post is asked for as 8x8 and reckoned as sawn 8x8.25."]);
    }
}

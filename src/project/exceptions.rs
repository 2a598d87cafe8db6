//! Joints that depart from the rules of the frame.
use std::fmt;

use super::{JoineryRules, Project, ScarfKind, Side};
use crate::units::Length;

/// What one joint has of its own; what it has not follows the rules.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct JointException {
    /// Thickness of the tenon.
    pub tenon_thickness: Option<Length>,
    /// Reference face to the tenon's near cheek.
    pub tenon_offset: Option<Length>,
    /// Length of the tenon.
    pub tenon_length: Option<Length>,
    /// Depth of the housing.
    pub housing: Option<Length>,
    /// Peg diameter.
    pub peg: Option<Length>,
    /// Shoulder to the first peg.
    pub peg_from_shoulder: Option<Length>,
    /// Drawbore.
    pub drawbore: Option<Length>,
    /// Kind of a scarf.
    pub scarf_kind: Option<ScarfKind>,
    /// Why, in the user's words.
    pub reason: String,
}

impl JointException {
    /// The rules of the joint it is of: the frame's, but for what it has of its own and such a joint has at all.
    #[must_use]
    pub fn applied(&self, rules: &JoineryRules, joint: JointName) -> JoineryRules {
        let mut own = *rules;
        for rule in OwnRule::ALL.into_iter().filter(|rule| joint.takes(*rule)) {
            if let Some(value) = rule.of(self) {
                *rule.in_rules_mut(&mut own, joint) = value;
            }
        }
        own
    }
}

/// A length that one joint may have of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OwnRule {
    /// Thickness of the tenon.
    TenonThickness,
    /// Reference face to the tenon's near cheek.
    TenonOffset,
    /// Length of the tenon.
    TenonLength,
    /// Depth of the housing.
    Housing,
    /// Peg diameter.
    Peg,
    /// Shoulder to the first peg.
    PegFromShoulder,
    /// Drawbore.
    Drawbore,
}

impl OwnRule {
    /// All of them, in the order of the rules.
    pub const ALL: [Self; 7] = [
        Self::TenonThickness,
        Self::TenonOffset,
        Self::TenonLength,
        Self::Housing,
        Self::Peg,
        Self::PegFromShoulder,
        Self::Drawbore,
    ];

    /// Its field in the project file, without its unit.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::TenonThickness => "tenon_thickness",
            Self::TenonOffset => "tenon_offset",
            Self::TenonLength => "tenon_length",
            Self::Housing => "housing",
            Self::Peg => "peg",
            Self::PegFromShoulder => "peg_from_shoulder",
            Self::Drawbore => "drawbore",
        }
    }

    /// In words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::TenonThickness => "tenon thickness",
            Self::TenonOffset => "outer face to the near cheek",
            Self::TenonLength => "tenon length",
            Self::Housing => "depth of the housing",
            Self::Peg => "peg diameter",
            Self::PegFromShoulder => "first peg from the housed line",
            Self::Drawbore => "drawbore",
        }
    }

    /// What the joint has of its own.
    #[must_use]
    pub fn of(self, own: &JointException) -> Option<Length> {
        match self {
            Self::TenonThickness => own.tenon_thickness,
            Self::TenonOffset => own.tenon_offset,
            Self::TenonLength => own.tenon_length,
            Self::Housing => own.housing,
            Self::Peg => own.peg,
            Self::PegFromShoulder => own.peg_from_shoulder,
            Self::Drawbore => own.drawbore,
        }
    }

    /// The same, to be changed.
    pub fn of_mut(self, own: &mut JointException) -> &mut Option<Length> {
        match self {
            Self::TenonThickness => &mut own.tenon_thickness,
            Self::TenonOffset => &mut own.tenon_offset,
            Self::TenonLength => &mut own.tenon_length,
            Self::Housing => &mut own.housing,
            Self::Peg => &mut own.peg,
            Self::PegFromShoulder => &mut own.peg_from_shoulder,
            Self::Drawbore => &mut own.drawbore,
        }
    }

    /// What the rules say of it at that joint.
    #[must_use]
    pub fn in_rules(self, rules: &JoineryRules, joint: JointName) -> Length {
        *self.in_rules_mut(&mut { *rules }, joint)
    }

    fn in_rules_mut(self, rules: &mut JoineryRules, joint: JointName) -> &mut Length {
        match self {
            Self::TenonThickness => &mut rules.tenon_thickness,
            Self::TenonOffset => &mut rules.tenon_offset,
            Self::TenonLength if matches!(joint, JointName::PostHead(_)) => &mut rules.post_tenon,
            Self::TenonLength => &mut rules.brace_tenon,
            Self::Housing => &mut rules.housing,
            Self::Peg => &mut rules.peg,
            Self::PegFromShoulder => &mut rules.peg_from_shoulder,
            Self::Drawbore => &mut rules.drawbore,
        }
    }
}

/// A joint that may have rules of its own. Posts and scarfs are counted from the left, from 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum JointName {
    /// A post's head in the beam.
    PostHead(usize),
    /// A brace's lower end in its post, by the post and its side of it.
    BraceFoot(usize, Side),
    /// A brace's upper end in the beam.
    BraceHead(usize, Side),
    /// A scarf of the beam.
    Scarf(usize),
}

impl fmt::Display for JointName {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        let side = |side: Side| if side == Side::Left { 'L' } else { 'R' };
        match *self {
            Self::PostHead(post) => write!(to, "P{post}"),
            Self::BraceFoot(post, at) => write!(to, "K{post}{} foot", side(at)),
            Self::BraceHead(post, at) => write!(to, "K{post}{} head", side(at)),
            Self::Scarf(number) => write!(to, "S{number}"),
        }
    }
}

impl JointName {
    /// From its name in the project file.
    #[must_use]
    pub fn parse(name: &str) -> Option<Self> {
        if let Some(number) = name.strip_prefix('P') {
            return number.parse().ok().map(Self::PostHead);
        }
        if let Some(number) = name.strip_prefix('S') {
            return number.parse().ok().map(Self::Scarf);
        }
        let (brace, end) = name.strip_prefix('K')?.split_once(' ')?;
        let (post, side) = match brace.strip_suffix('L') {
            Some(post) => (post, Side::Left),
            None => (brace.strip_suffix('R')?, Side::Right),
        };
        let post = post.parse().ok()?;
        match end {
            "foot" => Some(Self::BraceFoot(post, side)),
            "head" => Some(Self::BraceHead(post, side)),
            _ => None,
        }
    }

    /// In a sentence: `P2’s head`, `K1R’s foot`, `scarf 1`.
    #[must_use]
    pub fn words(self) -> String {
        match self {
            Self::PostHead(post) => format!("P{post}’s head"),
            Self::Scarf(number) => format!("scarf {number}"),
            Self::BraceFoot(..) | Self::BraceHead(..) => self.to_string().replacen(' ', "’s ", 1),
        }
    }

    /// A joint of its kind has that at all. A post's head has no housing of its own: its depth is the whole beam's.
    #[must_use]
    pub fn takes(self, rule: OwnRule) -> bool {
        match self {
            Self::PostHead(_) => rule != OwnRule::Housing,
            Self::BraceFoot(..) | Self::BraceHead(..) => true,
            Self::Scarf(_) => false,
        }
    }

    /// Every joint that may have rules of its own, in a frame with so many scarfs.
    #[must_use]
    pub fn all(project: &Project, n_scarfs: usize) -> Vec<Self> {
        let posts = &project.frame.posts;
        let mut all: Vec<Self> = (1..=posts.len()).map(Self::PostHead).collect();
        for (post, number) in posts.iter().zip(1..) {
            for (_, side) in [(post.brace_left, Side::Left), (post.brace_right, Side::Right)].iter().filter(|one| one.0)
            {
                all.extend([Self::BraceFoot(number, *side), Self::BraceHead(number, *side)]);
            }
        }
        all.extend((1..=n_scarfs).map(Self::Scarf));
        all
    }
}

impl Project {
    /// What a joint has of its own, where it departs from the rules.
    #[must_use]
    pub fn exception_of(&self, joint: JointName) -> Option<&JointException> {
        if self.exceptions.is_empty() { None } else { self.exceptions.get(&joint.to_string()) }
    }

    /// The rules that joint is made by.
    #[must_use]
    pub fn rules_of(&self, joint: JointName) -> JoineryRules {
        self.exception_of(joint).map_or(self.joinery, |own| own.applied(&self.joinery, joint))
    }

    /// The kind of the scarf of that number.
    #[must_use]
    pub fn scarf_kind(&self, number: usize) -> ScarfKind {
        let own = self.exception_of(JointName::Scarf(number)).and_then(|own| own.scarf_kind);
        own.unwrap_or(self.frame.scarfs.kind)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::demo;

    #[test]
    fn names_are_read_back() {
        let all = JointName::all(&demo::wool_barn(), 2);
        assert_eq!(all.len(), 4 + 12 + 2);
        for joint in all {
            assert_eq!(JointName::parse(&joint.to_string()), Some(joint));
        }
        for name in ["", "P", "Q1", "K1 foot", "K1R", "K1R side", "KxR foot", "S-1"] {
            assert_eq!(JointName::parse(name), None, "{name}");
        }
        assert_eq!(JointName::BraceFoot(1, Side::Right).words(), "K1R’s foot");
    }

    #[test]
    fn a_joint_takes_only_what_it_has() {
        let mut project = demo::wool_barn();
        let five = Length::inches(5.0);
        let own = JointException { tenon_length: Some(five), housing: Some(five), ..JointException::default() };
        project.exceptions.insert("P2".to_owned(), own.clone());
        project.exceptions.insert("K1R foot".to_owned(), own);
        let head = project.rules_of(JointName::PostHead(2));
        assert_eq!(head, JoineryRules { post_tenon: five, ..project.joinery });
        let foot = project.rules_of(JointName::BraceFoot(1, Side::Right));
        assert_eq!(foot, JoineryRules { brace_tenon: five, housing: five, ..project.joinery });
        assert_eq!(project.rules_of(JointName::PostHead(1)), project.joinery);
    }
}

//! `C_P`: a slender post may buckle (NDS 3.7).
use crate::materials::Section;
use crate::units::{Length, Stress};
use crate::working::{Citation, Step, Worked};

use super::adjusted::{adjusted, end_grain_strength};
use super::figures::{inches, number, psi};
use super::{Member, Property, Refused};

/// How the ends of a post are held against turning and moving sideways (recommended `K_e`, NDS Appendix G, from memory).
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum EndFixity {
    /// Neither end turns or moves.
    FixedFixed,
    /// One end turns.
    FixedPinned,
    /// One end moves sideways without turning.
    FixedGuided,
    /// Both turn, neither moves: a post between nodes, its sway computed by second order.
    #[default]
    PinnedPinned,
    /// One end free.
    FixedFree,
    /// One end turns, the other moves sideways: a knee-braced post whose sway is not computed.
    PinnedGuided,
}

impl EndFixity {
    /// `K_e`.
    #[must_use]
    pub const fn factor(self) -> f64 {
        match self {
            Self::FixedFixed => 0.65,
            Self::FixedPinned => 0.80,
            Self::FixedGuided => 1.2,
            Self::PinnedPinned => 1.0,
            Self::FixedFree => 2.10,
            Self::PinnedGuided => 2.4,
        }
    }
}

/// A length that may buckle one way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ColumnAxis {
    /// Between points of side support in that direction. Zero where it is held all along.
    pub length: Length,
    /// How its ends are held.
    pub ends: EndFixity,
}

/// The lengths of a post.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ColumnLengths {
    /// Buckling across the depth.
    pub depthwise: ColumnAxis,
    /// Buckling across the breadth.
    pub breadthwise: ColumnAxis,
    /// While the frame goes up the slenderness may reach 75 instead of 50.
    pub is_raising: bool,
}

impl ColumnLengths {
    /// The same length both ways, ends pinned.
    #[must_use]
    pub const fn pinned(length: Length) -> Self {
        let axis = ColumnAxis { length, ends: EndFixity::PinnedPinned };
        Self { depthwise: axis, breadthwise: axis, is_raising: false }
    }
}

/// What a column is made of, which sets `c`.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum ColumnKind {
    /// Sawn: 0.8.
    #[default]
    Sawn,
    /// A round pole: 0.85.
    Round,
    /// Glued laminated: 0.9.
    Glued,
}

impl ColumnKind {
    /// `c`.
    #[must_use]
    pub const fn factor(self) -> f64 {
        match self {
            Self::Sawn => 0.8,
            Self::Round => 0.85,
            Self::Glued => 0.9,
        }
    }
}

/// What came out for one post.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ColumnStability {
    /// `C_P`.
    pub factor: f64,
    /// `F_cE` across the depth; none where it is held all along.
    pub depthwise: Option<Stress>,
    /// `F_cE` across the breadth; none where it is held all along.
    pub breadthwise: Option<Stress>,
}

/// `C_P` from `F = F_cE/F_c*`: `(1+F)/2c − √(((1+F)/2c)² − F/c)` (NDS 3.7.1; reproduces Gere & Goodno, 7th ed., section 11.9).
#[must_use]
pub fn column_stability_from_ratio(f: f64, kind: ColumnKind) -> f64 {
    let c = kind.factor();
    let half = (1.0 + f) / (2.0 * c);
    half - (half * half - f / c).sqrt()
}

/// Slenderness `l_e/d` one way; none where it is held.
fn slenderness(axis: ColumnAxis, size: Length, limit: f64) -> Result<Option<f64>, Refused> {
    if axis.length.is_negative() || size <= Length::ZERO {
        return Err(Refused::because("A post needs a section, and a length that is not below zero."));
    }
    let ratio = axis.length * axis.ends.factor() / size;
    if ratio > limit {
        return Err(Refused::because(format!(
            "The post's slenderness is {}, over the limit of {limit:.0}: hold it at shorter lengths or make it thicker.",
            number(ratio)
        )));
    }
    Ok((ratio > 0.0).then_some(ratio))
}

fn critical_step(
    way: &str,
    axis: ColumnAxis,
    size: Length,
    ratio: f64,
    stiffness: Stress,
    critical: Stress,
) -> [Step; 2] {
    let length = format!(
        "l_e/d = K_e·l/d = {}·{}/{} = {}",
        number(axis.ends.factor()),
        inches(axis.length),
        inches(size),
        number(ratio)
    );
    let says = format!(
        "F_cE = 0.822·E_min'/(l_e/d)² = 0.822·{}/{}² = {} psi",
        psi(stiffness.to_psi()),
        number(ratio),
        psi(critical.to_psi())
    );
    [
        Step::new(format!("Slenderness across the {way}"), length, Citation::from_memory("NDS 2018", "3.7.1, App. G")),
        Step::new(
            format!("F_cE across the {way}"),
            says,
            Citation::seen("Gere & Goodno, Mechanics of Materials, 7th ed.", "section 11.9 (NDS 3.7.1.5)"),
        ),
    ]
}

/// `C_P` of a sawn member by the worse of its two ways of buckling.
///
/// # Errors
/// Where the slenderness is over 50 (75 while raising).
pub fn column_stability(member: &Member, lengths: &ColumnLengths) -> Result<Worked<ColumnStability>, Refused> {
    let limit = if lengths.is_raising { 75.0 } else { 50.0 };
    let Section { breadth, depth } = member.section();
    let stiffness = adjusted(member, Property::LeastStiffness);
    let mut steps = stiffness.steps;
    let mut critical = [None, None];
    let ways = [("depth", lengths.depthwise, depth), ("breadth", lengths.breadthwise, breadth)];
    for (place, (way, axis, size)) in ways.into_iter().enumerate() {
        if let Some(ratio) = slenderness(axis, size, limit)? {
            let stress = stiffness.value * (0.822 / (ratio * ratio));
            steps.extend(critical_step(way, axis, size, ratio, stiffness.value, stress));
            critical[place] = Some(stress);
        }
    }
    let [depthwise, breadthwise] = critical;
    let least = critical.into_iter().flatten().reduce(Stress::min);
    let (factor, says) = least.map_or_else(
        || (1.0, "C_P = 1.0: held all along both ways".to_owned()),
        |least| {
            let star = end_grain_strength(member).value;
            let f = least / star;
            let factor = column_stability_from_ratio(f, ColumnKind::Sawn);
            let says = format!(
                "F = F_cE/F_c* = {}/{} = {}; C_P = (1+F)/1.6 − √(((1+F)/1.6)² − F/0.8) = {}",
                psi(least.to_psi()),
                psi(star.to_psi()),
                number(f),
                number(factor)
            );
            (factor, says)
        },
    );
    let citation = Citation::seen("Gere & Goodno, Mechanics of Materials, 7th ed.", "section 11.9 (NDS 3.7.1.5)");
    steps.push(Step::new("C_P", says, citation));
    Ok(Worked::new(ColumnStability { factor, depthwise, breadthwise }, steps))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::members::test_members::{dry, inches as section};

    #[test]
    fn end_conditions_and_kinds() {
        let ends = [
            (EndFixity::FixedFixed, 0.65),
            (EndFixity::FixedPinned, 0.8),
            (EndFixity::FixedGuided, 1.2),
            (EndFixity::PinnedPinned, 1.0),
            (EndFixity::FixedFree, 2.1),
            (EndFixity::PinnedGuided, 2.4),
        ];
        assert!(ends.into_iter().all(|(end, factor)| end.factor() == factor));
        let at = |kind| column_stability_from_ratio(0.5, kind);
        assert!(at(ColumnKind::Sawn) < at(ColumnKind::Round) && at(ColumnKind::Round) < at(ColumnKind::Glued));
    }

    #[test]
    fn the_weaker_way_governs() {
        let post = dry("Hem-Fir", section(6.0, 8.0));
        let axis = |feet: f64| ColumnAxis { length: Length::feet(feet), ends: EndFixity::PinnedPinned };
        let lengths =
            |deep: f64, wide: f64| ColumnLengths { depthwise: axis(deep), breadthwise: axis(wide), is_raising: false };
        let factor = |lengths| column_stability(&post, &lengths).unwrap().value.factor;
        assert!((factor(lengths(8.0, 6.0)) - factor(lengths(8.0, 0.0))).abs() < 1e-12);
        assert!(factor(lengths(8.0, 8.0)) < factor(lengths(8.0, 6.0)));
        assert_eq!(factor(lengths(0.0, 0.0)), 1.0);
    }

    #[test]
    fn too_slender_is_refused_but_not_while_raising() {
        let brace = dry("Hem-Fir", section(2.0, 4.0));
        let mut lengths = ColumnLengths::pinned(Length::inches(120.0));
        assert!(column_stability(&brace, &lengths).unwrap_err().0.contains("limit of 50"));
        lengths.is_raising = true;
        assert!(column_stability(&brace, &lengths).is_ok());
        lengths.breadthwise.length = Length::inches(151.0);
        assert!(column_stability(&brace, &lengths).is_err());
        lengths.breadthwise.length = Length::inches(-1.0);
        assert!(column_stability(&brace, &lengths).is_err());
    }
}

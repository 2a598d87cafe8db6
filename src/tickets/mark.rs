//! One mark on one face, measured from the stick's zero.
use std::borrow::Cow;

use crate::joinery::joint_between;
use crate::materials::Face;
use crate::project::JointName;
use crate::units::{Fineness, Length};

/// What a mark is for, in the order marks are made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum MarkKind {
    /// A cut through the whole stick.
    End,
    /// A shoulder, splay or heel line.
    Line,
    /// A shallow recess that brings a joint down to the frame's inner size.
    Housing,
    /// Where another stick sits, with nothing cut away.
    Seat,
    /// A mortise.
    Mortise,
    /// A tenon's cheeks and end.
    Tenon,
    /// A peg's hole.
    Peg,
    /// A screw, bolt or other fixing.
    Fixing,
    /// A chamfer.
    Chamfer,
}

/// Which wood goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Waste {
    /// None.
    None,
    /// Between the near and the far edge.
    Between,
    /// On the side of the stick's low end.
    Before,
    /// On the side of the stick's high end.
    After,
}

/// One mark, both edges dimensioned.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// What it is, with its mate: "housing of P2".
    pub what: Cow<'static, str>,
    /// The face it is drawn on.
    pub face: Face,
    /// Near edge from zero; negative on the other side of zero.
    pub near: Length,
    /// Far edge from zero, for what has two edges.
    pub far: Option<Length>,
    /// Edges across the face, from the reference edge named in `across_from`.
    pub across: Option<(Length, Length)>,
    /// The face that the measure across is taken from.
    pub across_from: Option<Face>,
    /// Depth below the face.
    pub depth: Option<Length>,
    /// Diameter of a hole for a tie, or of a peg's that is not the rules'.
    pub bore: Option<Length>,
    /// What it is for.
    pub kind: MarkKind,
    /// Which wood goes.
    pub waste: Waste,
    /// What else to know: angle as rise and run, drawbore, which piece lies under.
    pub note: Cow<'static, str>,
    /// Sizes that only the remark tells and the saw follows, none of them a place along the stick: part of what a cut stick is
    /// compared with, whatever units the remark is written in.
    pub told: Vec<Length>,
    /// The stick that meets this one here.
    pub mate: Option<String>,
    /// How finely it is read off a tape.
    pub fineness: Fineness,
}

/// A length in whole sixty-fourths of an inch: what two layouts are compared in.
pub fn sixty_fourths(length: Length) -> i64 {
    (length.to_inches() * 64.0).round() as i64
}

/// As many lengths, each the same to a sixty-fourth.
pub(super) fn alike(these: &[Length], those: &[Length]) -> bool {
    let is_same = |(one, other): (&Length, &Length)| sixty_fourths(*one) == sixty_fourths(*other);
    these.len() == those.len() && these.iter().zip(those).all(is_same)
}

impl Mark {
    /// A mark with one edge.
    #[must_use]
    pub fn line(what: impl Into<Cow<'static, str>>, face: Face, near: Length, kind: MarkKind) -> Self {
        Self {
            what: what.into(),
            face,
            near,
            far: None,
            across: None,
            across_from: None,
            depth: None,
            bore: None,
            kind,
            waste: Waste::None,
            note: Cow::Borrowed(""),
            told: Vec::new(),
            mate: None,
            fineness: Fineness::Sixteenth,
        }
    }

    /// A mark with two edges.
    #[must_use]
    pub fn between(what: impl Into<Cow<'static, str>>, face: Face, edges: (Length, Length), kind: MarkKind) -> Self {
        let mut mark = Self::line(what, face, edges.0.min(edges.1), kind);
        mark.far = Some(edges.0.max(edges.1));
        mark
    }

    /// With edges across the face, measured from another face.
    #[must_use]
    pub fn across(mut self, edges: (Length, Length), from: Face) -> Self {
        self.across = Some((edges.0.min(edges.1), edges.0.max(edges.1)));
        self.across_from = Some(from);
        self
    }

    /// With a depth, the wood between its edges going.
    #[must_use]
    pub fn depth(mut self, depth: Length) -> Self {
        self.depth = Some(depth);
        self.waste = Waste::Between;
        self
    }

    /// With a hole of that diameter, where the rules' pegs are others.
    #[must_use]
    pub fn bored(mut self, peg: Length, of_rules: Length) -> Self {
        self.bore = (peg != of_rules).then_some(peg);
        self
    }

    /// With the wood on that side going.
    #[must_use]
    pub fn waste(mut self, waste: Waste) -> Self {
        self.waste = waste;
        self
    }

    /// With a remark.
    #[must_use]
    pub fn note(mut self, note: impl Into<Cow<'static, str>>) -> Self {
        self.note = note.into();
        self
    }

    /// With the sizes its remark tells.
    #[must_use]
    pub fn told(mut self, sizes: impl Into<Vec<Length>>) -> Self {
        self.told = sizes.into();
        self
    }

    /// With the stick that meets this one here.
    #[must_use]
    pub fn mate(mut self, mate: impl Into<String>) -> Self {
        self.mate = Some(mate.into());
        self
    }

    /// Read off the tape in thirty-seconds.
    #[must_use]
    pub fn thirty_seconds(mut self) -> Self {
        self.fineness = Fineness::ThirtySecond;
        self
    }

    /// What and where it is and the sizes its remark tells, in sixty-fourths of an inch: equal for two marks that are made
    /// alike.
    #[must_use]
    pub fn key(&self) -> String {
        let mut text = self.place_key();
        for size in &self.told {
            text.push('+');
            text.push_str(&sixty_fourths(*size).to_string());
        }
        text
    }

    /// It is made as the other is: what their keys say, without writing them.
    #[must_use]
    pub fn is_made_like(&self, other: &Self) -> bool {
        let is_up = |mark: &Self| mark.across_from == Some(Face::Underside);
        let places = |mark: &Self| {
            let (near, far) = mark.across.unwrap_or_default();
            [mark.near, mark.far.unwrap_or_default(), near, far, mark.depth.unwrap_or_default()]
        };
        self.kind == other.kind
            && self.face == other.face
            && is_up(self) == is_up(other)
            && alike(&places(self), &places(other))
            && self.bore.map(sixty_fourths) == other.bore.map(sixty_fourths)
            && alike(&self.told, &other.told)
    }

    /// That without the sizes of its remark: what ticks were kept by before the remark was part of the key.
    #[must_use]
    pub fn place_key(&self) -> String {
        let (near, far) = self.across.unwrap_or_default();
        let places = [self.near, self.far.unwrap_or_default(), near, far, self.depth.unwrap_or_default()];
        let mut text = format!("{:?} {}", self.kind, self.face.name());
        // Only a lower lap is measured up; every other mark's reference follows from its face.
        if self.across_from == Some(Face::Underside) {
            text.push_str(" up");
        }
        for (index, place) in places.into_iter().enumerate() {
            text.push(if index == 0 { ' ' } else { ',' });
            text.push_str(&sixty_fourths(place).to_string());
        }
        if let Some(bore) = self.bore {
            text.push_str(&format!(" bored {}", sixty_fourths(bore)));
        }
        text
    }

    /// The joint it is made for, on the stick of that mark, where it is one that may have rules of its own.
    #[must_use]
    pub fn joint(&self, stick: &str) -> Option<JointName> {
        if let Some(scarf) = self.what.strip_prefix("scarf ") {
            return scarf.split_once(',')?.0.parse().ok().map(JointName::Scarf);
        }
        joint_between(stick, self.mate.as_ref()?)
    }

    /// Its place in the order of marking: ends and lines, housings and seats, mortises and tenons, pegs and
    /// fixings, the chamfer last; within each, one face after the other, and along a face from near to far.
    #[must_use]
    pub fn order(&self) -> u8 {
        let phase = match self.kind {
            MarkKind::End | MarkKind::Line => 0,
            MarkKind::Housing | MarkKind::Seat => 1,
            MarkKind::Mortise | MarkKind::Tenon => 2,
            MarkKind::Peg | MarkKind::Fixing => 3,
            MarkKind::Chamfer => 4,
        };
        phase * Face::COUNT + self.face as u8
    }

    /// Both edges measured from the stick's other end, nearest first.
    #[must_use]
    pub fn from_far_end(&self, high: Length) -> (Length, Option<Length>) {
        match self.far {
            Some(far) => (high - far, Some(high - self.near)),
            None => (high - self.near, None),
        }
    }
}

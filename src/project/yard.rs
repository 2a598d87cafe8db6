//! Real timber: what lies in the sawyer's yard, and what came off the truck.
use super::Heart;
use crate::materials::Section;
use crate::units::Length;

/// Sticks of one size in the sawyer's yard.
#[derive(Clone, Debug, PartialEq)]
pub struct Lot {
    /// Section, as the sawyer calls it.
    pub section: Section,
    /// Length.
    pub length: Length,
    /// How many there are.
    pub count: usize,
    /// Where the heart is in all of them; either where nobody knows, or some have it.
    pub heart: Heart,
    /// What the user noted of them.
    pub remark: String,
}

/// What became of a stick that came.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PieceState {
    /// It stays.
    Kept,
    /// It goes back.
    SentBack,
}

/// What a look at a rough stick may find.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Defect {
    /// Bark or the round of the log on an edge.
    Wane,
    /// The grain climbs round the stick.
    SpiralGrain,
    /// Its ends are wound against each other.
    Twist,
    /// Rings part from each other.
    Shake,
    /// An end is split through.
    EndSplit,
    /// The heart comes near a face.
    HeartNearFace,
    /// Large knots in the middle third.
    KnotsAtMiddle,
    /// Rot, or holes of insects.
    Decay,
}

impl Defect {
    /// All of them.
    pub const ALL: [Self; 8] = [
        Self::Wane,
        Self::SpiralGrain,
        Self::Twist,
        Self::Shake,
        Self::EndSplit,
        Self::HeartNearFace,
        Self::KnotsAtMiddle,
        Self::Decay,
    ];

    /// In the trade's words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Wane => "wane",
            Self::SpiralGrain => "spiral grain",
            Self::Twist => "twist",
            Self::Shake => "shake",
            Self::EndSplit => "split at an end",
            Self::HeartNearFace => "heart near a face",
            Self::KnotsAtMiddle => "large knots at the middle",
            Self::Decay => "rot or borers",
        }
    }
}

/// A stick that came off the truck.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// Section as ordered.
    pub section: Section,
    /// Length as ordered.
    pub length: Length,
    /// What became of it.
    pub state: PieceState,
    /// Its size at one end, as measured.
    pub near: Option<Section>,
    /// Its size at the other end, as measured.
    pub far: Option<Section>,
    /// Its length, as measured.
    pub real_length: Option<Length>,
    /// How far it bows at its middle, off a string from end to end.
    pub crown: Option<Length>,
    /// Percent moisture, by a meter.
    pub moisture_percent: Option<f64>,
    /// Where its heart is; either where nobody looked.
    pub heart: Heart,
    /// What a look at it found.
    pub defects: Vec<Defect>,
    /// Mark of the stick it is to become; empty where that is open.
    pub place: String,
    /// What the user noted.
    pub remark: String,
}

impl Piece {
    /// A piece that is just as it was ordered.
    #[must_use]
    pub const fn as_ordered(section: Section, length: Length) -> Self {
        Self {
            section,
            length,
            state: PieceState::Kept,
            near: None,
            far: None,
            real_length: None,
            crown: None,
            moisture_percent: None,
            heart: Heart::Either,
            defects: Vec::new(),
            place: String::new(),
            remark: String::new(),
        }
    }

    /// It stays.
    #[must_use]
    pub fn is_kept(&self) -> bool {
        self.state == PieceState::Kept
    }
}

//! The faces of a stick, in the words of the trade.

/// A face of a stick, as the stick stands in the frame.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Face {
    /// Away from the wall.
    Outer,
    /// Toward the wall.
    Wall,
    /// Toward the beam's left end.
    Left,
    /// Toward the beam's right end.
    Right,
    /// Up.
    Top,
    /// Down.
    Underside,
    /// A brace's long edge.
    LongEdge,
    /// A brace's short edge, toward the corner.
    ShortEdge,
}

impl Face {
    /// How many faces there are to name.
    pub const COUNT: u8 = 8;

    /// The face in words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Outer => "outer face",
            Self::Wall => "wall face",
            Self::Left => "left face",
            Self::Right => "right face",
            Self::Top => "top",
            Self::Underside => "underside",
            Self::LongEdge => "long edge",
            Self::ShortEdge => "short edge",
        }
    }
}

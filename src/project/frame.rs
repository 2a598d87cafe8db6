//! The frame to be built: reach, heights, posts, braces, scarfs, rafters and sizes.
use super::role::Role;
use crate::materials::Timber;
use crate::units::{Length, Slope};

/// Left or right, seen from outside facing the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Toward the beam's left end.
    Left,
    /// Toward the beam's right end.
    Right,
}

impl Side {
    /// The other side.
    #[must_use]
    pub const fn other(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }
}

/// Which two of the three heights the user holds; the third follows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FixedHeights {
    /// Pitch and ledger seat are held; the beam seat follows.
    PitchAndLedger,
    /// Pitch and beam seat are held; the ledger seat follows.
    PitchAndBeam,
    /// Both seats are held; the pitch follows.
    LedgerAndBeam,
}

/// Pitch and seat heights; the one that is not held is only what it last was.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Heights {
    /// Which two are held.
    pub fixed: FixedHeights,
    /// Roof slope.
    pub pitch: Slope,
    /// Top of the ledger, above the datum.
    pub ledger_seat: Length,
    /// Top of the beam, above the datum.
    pub beam_seat: Length,
}

/// How a rafter's lower end is cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TailCut {
    /// Plumb, like the head.
    Plumb,
    /// Square to the rafter.
    Square,
}

/// One post of the outer line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Post {
    /// Centre line of the post as ordered, from the beam's left end. The post is laid out from its
    /// left face, half the ordered breadth to the left of this.
    pub x: Length,
    /// Top of its pier above the datum.
    pub pier_top: Length,
    /// The pier stands and its height was measured, not planned.
    pub pier_measured: bool,
    /// A knee brace on its left side.
    pub brace_left: bool,
    /// A knee brace on its right side.
    pub brace_right: bool,
}

/// How the rafters share out the length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RafterRule {
    /// Step the spacing from the left; the last bay takes what remains.
    FromLeft,
    /// Step the spacing from the right; the first bay takes what remains.
    FromRight,
    /// Equal bays, none wider than the spacing.
    Equal,
}

/// The row of rafters.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RafterRow {
    /// Centre to centre.
    pub spacing: Length,
    /// Beam end to the outer face of the first and of the last rafter; negative stands past the end.
    pub inset: Length,
    /// How the length is shared out.
    pub rule: RafterRule,
}

/// Scarfs, plain to strong.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScarfKind {
    /// Half lap with square ends.
    Halved,
    /// Half lap with under-squinted ends, so that the halves cannot spread.
    HalvedUnderSquinted,
    /// Half lap with a short tongue at each tip in a slot of the other half.
    Bladed,
    /// Sloping lap between two abutments.
    StopSplayed,
    /// Sloping lap with under-squinted abutments.
    StopSplayedUnderSquinted,
    /// Stop-splayed and under-squinted, with a table and folding wedges.
    StopSplayedTabled,
}

impl ScarfKind {
    /// All kinds, plain to strong.
    pub const ALL: [Self; 6] = [
        Self::Halved,
        Self::HalvedUnderSquinted,
        Self::Bladed,
        Self::StopSplayed,
        Self::StopSplayedUnderSquinted,
        Self::StopSplayedTabled,
    ];

    /// The trade's name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Halved => "halved, square ends",
            Self::HalvedUnderSquinted => "halved, under-squinted",
            Self::Bladed => "halved and bladed",
            Self::StopSplayed => "stop-splayed",
            Self::StopSplayedUnderSquinted => "stop-splayed, under-squinted",
            Self::StopSplayedTabled => "stop-splayed, tabled with wedges",
        }
    }

    /// The ends are under-squinted: they need an endwise travel to close.
    #[must_use]
    pub const fn is_squinted(self) -> bool {
        matches!(self, Self::HalvedUnderSquinted | Self::StopSplayedUnderSquinted | Self::StopSplayedTabled)
    }
}

/// Where a scarf is and which piece lies below.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScarfPlace {
    /// Middle of the lap, from the beam's left end.
    pub centre: Length,
    /// Which of the two pieces has the lower lap.
    pub lower: Side,
}

/// The scarfs of the beam.
#[derive(Clone, Debug, PartialEq)]
pub struct Scarfs {
    /// One kind for the whole beam.
    pub kind: ScarfKind,
    /// Length of every lap.
    pub lap: Length,
    /// How many pieces the beam is made of; nothing leaves it to the mill's lengths.
    pub n_pieces: Option<usize>,
    /// Places the user chose, left to right; empty leaves them to the program.
    pub by_hand: Vec<ScarfPlace>,
}

/// Blocks between the rafters.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Blocks {
    /// None.
    None,
    /// A row over the beam.
    OverBeam,
}

/// The timber of each kind of stick.
///
/// Breadth and depth mean: post: along the beam, and out; beam and ledger: across, and up; brace: out,
/// and in the plane of the frame; rafter: along the beam, and square to the slope; purlin: flat on the
/// rafter, and up; block: out, and up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Timbers {
    /// Posts.
    pub post: Timber,
    /// Beam pieces.
    pub beam: Timber,
    /// Knee braces.
    pub brace: Timber,
    /// Rafters.
    pub rafter: Timber,
    /// Ledger pieces.
    pub ledger: Timber,
    /// Purlins.
    pub purlin: Timber,
    /// Blocks.
    pub block: Timber,
}

impl Timbers {
    /// The timber of sticks that do this.
    #[must_use]
    pub const fn of(&self, role: Role) -> Timber {
        match role {
            Role::Post => self.post,
            Role::Beam => self.beam,
            Role::Brace => self.brace,
            Role::Rafter => self.rafter,
            Role::Ledger => self.ledger,
            Role::Purlin => self.purlin,
            Role::Block => self.block,
        }
    }

    /// The same, to be changed.
    pub const fn of_mut(&mut self, role: Role) -> &mut Timber {
        match role {
            Role::Post => &mut self.post,
            Role::Beam => &mut self.beam,
            Role::Brace => &mut self.brace,
            Role::Rafter => &mut self.rafter,
            Role::Ledger => &mut self.ledger,
            Role::Purlin => &mut self.purlin,
            Role::Block => &mut self.block,
        }
    }
}

/// The whole frame.
#[derive(Clone, Debug, PartialEq)]
pub struct Frame {
    /// Wall face to the outer face of the beam.
    pub reach: Length,
    /// Length of the beam, and of the ledger.
    pub beam_length: Length,
    /// Pitch and seats.
    pub heights: Heights,
    /// Wall face to the back of the ledger: packing, siding ribs.
    pub ledger_packing: Length,
    /// Wall face to the rafter heads.
    pub wall_gap: Length,
    /// Outer face of the beam to the end of the rafters' top edge, level.
    pub tail: Length,
    /// Cut of the tails.
    pub tail_cut: TailCut,
    /// Level length of the rafters' seat on the ledger.
    pub ledger_seat_length: Length,
    /// Level length of the rafters' seat on the beam.
    pub beam_seat_length: Length,
    /// Posts, left to right.
    pub posts: Vec<Post>,
    /// Pier top to the foot of the post.
    pub stand_off: Length,
    /// Brace leg along the beam, from the meeting of the housed lines of post and beam.
    pub brace_along: Length,
    /// Brace leg down the post, from the same point.
    pub brace_down: Length,
    /// How far the long edge of a curved brace is hollowed at its middle; zero for a straight brace.
    pub brace_rise: Length,
    /// Rafters.
    pub rafters: RafterRow,
    /// Scarfs of the beam.
    pub scarfs: Scarfs,
    /// Lap of a ledger splice.
    pub ledger_lap: Length,
    /// Middles of the ledger's splices that the user chose, from its left end; empty leaves them to the program.
    pub ledger_splices: Vec<Length>,
    /// Blocks between the rafters.
    pub blocks: Blocks,
    /// Sizes.
    pub timbers: Timbers,
    /// Key of the species.
    pub species: String,
}

impl Frame {
    /// The post's left face: its reference face along the beam.
    #[must_use]
    pub fn post_left_face(&self, post: &Post) -> Length {
        post.x - self.timbers.post.ordered.breadth / 2.0
    }

    /// The post's right face, at the size ordered.
    #[must_use]
    pub fn post_right_face(&self, post: &Post) -> Length {
        post.x + self.timbers.post.ordered.breadth / 2.0
    }
}

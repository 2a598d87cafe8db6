//! What a stick does in the frame.

/// What a stick does in the frame.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Role {
    /// P1, P2, …
    Post,
    /// B1, B2, …
    Beam,
    /// K1R, K2L, …
    Brace,
    /// R1, R2, …
    Rafter,
    /// L1, L2, …
    Ledger,
    /// N1a, N1b, … from the eave up.
    Purlin,
    /// X1, X2, …
    Block,
}

impl Role {
    /// Every role, in the order of the frame.
    pub const ALL: [Self; 7] =
        [Self::Post, Self::Beam, Self::Brace, Self::Rafter, Self::Ledger, Self::Purlin, Self::Block];

    /// The trade's word.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Post => "post",
            Self::Beam => "beam",
            Self::Brace => "brace",
            Self::Rafter => "rafter",
            Self::Ledger => "ledger",
            Self::Purlin => "purlin",
            Self::Block => "block",
        }
    }

    /// Its sticks, as more than one of them is called.
    #[must_use]
    pub const fn plural(self) -> &'static str {
        match self {
            Self::Post => "posts",
            Self::Beam => "beam pieces",
            Self::Brace => "braces",
            Self::Rafter => "rafters",
            Self::Ledger => "ledger pieces",
            Self::Purlin => "purlins",
            Self::Block => "blocks",
        }
    }
}

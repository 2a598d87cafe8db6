//! Why a frame is not solved, in sentences.

/// A part that can move without resistance. Such a frame is reported, never solved.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mechanism {
    /// The node that moves most.
    pub node: usize,
    /// A member that moves with it, where one is attached.
    pub member: Option<usize>,
    /// The sentence for the user.
    pub says: String,
}

/// Why there is no answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FrameError {
    /// The input cannot be used: every fault, a sentence each.
    Input(Vec<String>),
    /// Something can move without resistance.
    Mechanism(Mechanism),
    /// The one-way members found no state that fits.
    NotConverged(String),
    /// The numbers are too far apart for the answer to be trusted.
    Unreliable(String),
}

impl std::fmt::Display for FrameError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Input(faults) => write!(f, "{}", faults.join("\n")),
            Self::Mechanism(mechanism) => write!(f, "{mechanism}"),
            Self::NotConverged(says) | Self::Unreliable(says) => write!(f, "{says}"),
        }
    }
}

impl std::error::Error for FrameError {}

impl std::fmt::Display for Mechanism {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}", self.says)
    }
}

impl std::error::Error for Mechanism {}

impl From<Mechanism> for FrameError {
    fn from(mechanism: Mechanism) -> Self {
        Self::Mechanism(mechanism)
    }
}

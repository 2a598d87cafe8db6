//! How the timber comes home: loads, how each is laid, where its weight falls, who carries what.
mod balance;
mod cargo;
mod carry;
mod even_out;
mod loads;
mod share_out;
mod stack;
mod words;

pub use balance::{Balance, COUPLING_SHARE, EMPTY_SHARE};
pub use cargo::{Cargo, LeftBehind, Stage, cargoes, left_behind};
pub use carry::{Carry, ERGONOMIC_POUNDS, NIOSH_POUNDS, carries};
pub use loads::{Exchanged, Hauling, Load, haul};
pub use stack::{BEARER, Laid};
pub use words::{about, hauling_notes, hauling_problems, hauling_text, load_words, proof_words, runs};

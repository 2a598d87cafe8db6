//! What came off the truck: how far each piece is what was asked for, what it can become, what to ask for instead.
//!
//! Limits on crown, wane, knots and the like are common practice, from memory: no law and no grading rule. Costs are points
//! that only rank one place against another; each has its reason in words.
mod ask;
mod assign;
mod defects;
mod lie;
mod look;
mod notes;
mod place;

pub use ask::{Ask, ask_text, to_ask};
pub use assign::{MOST_COST, assign};
pub use lie::Lie;
pub use look::{Look, Mind, look};
pub use notes::{as_measured, crown_of, note_on, piece_for, wet_words};
pub use place::{Place, pinned, places};

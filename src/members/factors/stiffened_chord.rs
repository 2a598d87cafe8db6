//! `C_T`: sheathing that stiffens small truss chords.
use crate::working::Citation;

use super::Factor;

/// `C_T` (NDS 4.4.2, from memory) is for chords of light trusses of 2x4 or smaller under sheathing of 3/8 in or more:
/// no stick of this structure is one.
#[must_use]
pub fn stiffened_chord() -> Factor {
    Factor::new("C_T", 1.0, "not a chord of a light truss", Citation::from_memory("NDS 2018", "4.4.2"))
}

//! Joints that depart from the rules of the frame.
use super::{JoineryRules, ScarfKind};
use crate::units::Length;

/// What one joint has of its own; what it has not follows the rules.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct JointException {
    /// Thickness of the tenon.
    pub tenon_thickness: Option<Length>,
    /// Reference face to the tenon's near cheek.
    pub tenon_offset: Option<Length>,
    /// Length of the tenon.
    pub tenon_length: Option<Length>,
    /// Depth of the housing.
    pub housing: Option<Length>,
    /// Peg diameter.
    pub peg: Option<Length>,
    /// Shoulder to the first peg.
    pub peg_from_shoulder: Option<Length>,
    /// Drawbore.
    pub drawbore: Option<Length>,
    /// Kind of a scarf.
    pub scarf_kind: Option<ScarfKind>,
    /// Why, in the user's words.
    pub reason: String,
}

impl JointException {
    /// The rules of the joint it is of: the frame's, but for what it has of its own.
    #[must_use]
    pub fn applied(&self, rules: &JoineryRules) -> JoineryRules {
        let mut own = *rules;
        let put = |field: &mut Length, value: Option<Length>| *field = value.unwrap_or(*field);
        put(&mut own.tenon_thickness, self.tenon_thickness);
        put(&mut own.tenon_offset, self.tenon_offset);
        put(&mut own.post_tenon, self.tenon_length);
        put(&mut own.brace_tenon, self.tenon_length);
        put(&mut own.housing, self.housing);
        put(&mut own.peg, self.peg);
        put(&mut own.peg_from_shoulder, self.peg_from_shoulder);
        put(&mut own.drawbore, self.drawbore);
        own
    }
}

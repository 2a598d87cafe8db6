//! What a defect means for a stick, by what the stick does. Common practice, from memory, unless a rule is named.
use crate::design::Built;
use crate::project::{Defect, Heart, Role};
use crate::tickets::{MarkKind, Stick};

/// What it means.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Stand {
    /// It must not lie there.
    Refused(&'static str),
    /// It can, at that many points.
    Costs(f64, &'static str),
}

/// What a defect means for that stick. `spare_in`: inches of the piece beyond the finished length.
pub(super) fn stand(defect: Defect, stick: &Stick, built: &Built, spare_in: f64) -> Stand {
    match defect {
        Defect::Decay => Stand::Refused("rot or borers: no stick of the frame, and not stacked with the rest"),
        Defect::Shake if is_pegged(stick) => Stand::Refused("shake where pegs are driven: they split it"),
        Defect::Shake => Stand::Costs(6.0, "shake: keep screws out of it"),
        Defect::SpiralGrain => spiral(stick, built),
        Defect::EndSplit => split(stick, spare_in),
        Defect::Wane => wane(stick.role),
        Defect::KnotsAtMiddle => knots(stick.role),
        Defect::Twist => twist(stick.role),
        Defect::HeartNearFace => heart(stick.role),
    }
}

fn is_pegged(stick: &Stick) -> bool {
    stick.marks.iter().any(|mark| mark.kind == MarkKind::Peg)
}

/// Braces on two faces of a post: when it winds, both are pulled out of plane.
fn is_braced_twice(stick: &Stick, built: &Built) -> bool {
    let is_brace = |mate: &str| built.stick(mate).is_some_and(|mate| mate.role == Role::Brace);
    stick.joints().iter().filter(|(mate, _)| is_brace(mate)).count() >= 2
}

fn spiral(stick: &Stick, built: &Built) -> Stand {
    match stick.role {
        Role::Beam => Stand::Refused("spiral grain: a beam winds as it dries and lifts its rafters"),
        Role::Post if is_braced_twice(stick, built) => {
            Stand::Refused("spiral grain, and braces on two faces: the post winds as it dries and opens both")
        }
        Role::Post => Stand::Costs(4.0, "spiral grain: it winds as it dries"),
        Role::Brace | Role::Ledger => Stand::Costs(5.0, "spiral grain: it winds as it dries"),
        Role::Rafter => Stand::Costs(6.0, "spiral grain: it winds as it dries, and bends less"),
        Role::Purlin | Role::Block => Stand::Costs(3.0, "spiral grain: screw it at once"),
    }
}

/// A foot to spare takes the split away (common practice).
fn split(stick: &Stick, spare_in: f64) -> Stand {
    const ROOM_IN: f64 = 12.0;
    match stick.role {
        _ if spare_in >= ROOM_IN => Stand::Costs(1.0, "split at an end: dock it off, there is wood enough"),
        Role::Purlin | Role::Block => Stand::Costs(3.0, "split at an end: keep screws out of it"),
        _ => Stand::Refused("split at an end, and no wood to dock it off: the end carries a joint or a seat"),
    }
}

const fn wane(role: Role) -> Stand {
    match role {
        Role::Beam | Role::Ledger => {
            Stand::Costs(5.0, "wane: keep it off the top, where rafters sit, and off the reference edges")
        }
        Role::Rafter => Stand::Costs(5.0, "wane: keep it off the seats, and up only where no purlin lies"),
        Role::Purlin => Stand::Costs(4.0, "wane: turn it down, away from the screws of the sheets"),
        Role::Brace => Stand::Costs(3.0, "wane: keep it off the shoulders"),
        Role::Post => Stand::Costs(1.5, "wane: turn it away from the reference faces"),
        Role::Block => Stand::Costs(0.5, "wane: no harm in a block"),
    }
}

const fn knots(role: Role) -> Stand {
    match role {
        Role::Beam => Stand::Costs(8.0, "large knots at the middle: turn them up, away from the underside"),
        Role::Rafter | Role::Purlin => {
            Stand::Costs(8.0, "large knots at the middle: turn them up, off the stretched edge")
        }
        Role::Ledger => Stand::Costs(4.0, "large knots at the middle: keep wall fixings out of them"),
        Role::Brace => Stand::Costs(3.0, "large knots at the middle"),
        Role::Post => Stand::Costs(1.5, "large knots at the middle: keep mortises out of them"),
        Role::Block => Stand::Costs(0.5, "large knots: no harm in a block"),
    }
}

const fn twist(role: Role) -> Stand {
    match role {
        Role::Beam => {
            Stand::Costs(8.0, "twist: lay every joint out from a snapped line, sight it with two straight sticks")
        }
        Role::Post | Role::Brace => Stand::Costs(6.0, "twist: lay it out from a snapped line"),
        Role::Rafter | Role::Ledger => Stand::Costs(3.0, "twist: cut the seats by the level"),
        Role::Purlin | Role::Block => Stand::Costs(1.5, "twist: the screws pull it flat"),
    }
}

/// What it means that a piece's heart is not where that stick was to have it: points, and the words.
pub(super) const fn wrong_heart(wish: Heart, role: Role) -> (f64, &'static str) {
    match (wish, role) {
        (Heart::Boxed, _) => (2.0, "free of heart, and boxed heart was asked: it cups and bows more as it dries"),
        (_, Role::Brace) => (5.0, "boxed heart, and free of heart was asked: a brace checks through to its tenons"),
        _ => (4.0, "boxed heart, and free of heart was asked: it checks on its faces as it dries"),
    }
}

const fn heart(role: Role) -> Stand {
    match role {
        Role::Brace => Stand::Costs(4.0, "heart near a face: it opens there; brace stock is free of heart"),
        Role::Beam | Role::Rafter => {
            Stand::Costs(3.0, "heart near a face: it bows toward it as it dries, turn that face down")
        }
        Role::Ledger | Role::Purlin => Stand::Costs(2.0, "heart near a face: it bows as it dries, fix it soon"),
        Role::Post => Stand::Costs(1.5, "heart near a face: turn that face where no mortise is"),
        Role::Block => Stand::Costs(0.5, "heart near a face"),
    }
}

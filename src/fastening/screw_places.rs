//! How far a screw or nail stands from the end and the edge of the wood it is driven through, so that neither splits.
use super::placing::{EndLoad, across_edges, is_slender};
use crate::units::Length;

/// Least distances from a screw's centre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScrewRoom {
    /// To the end of the wood, where its hole is bored first.
    pub end_bored: Length,
    /// To the end of the wood, driven without a hole.
    pub end_driven: Length,
    /// To an edge along the grain.
    pub edge: Length,
}

/// The room a fastener of that diameter asks where no load pulls it toward the end.
///
/// Thinner than ¼ in: five diameters to the end where it is bored first, ten where it is not, two and a half to the edge (the
/// least spacings recommended for wood screws and nails in the commentary of the NDS, from memory). From ¼ in on: the end
/// distance with nothing taken off and the edge of a load along the grain ([`super::distances`]); such a screw is always bored.
#[must_use]
pub fn screw_room(diameter: Length) -> ScrewRoom {
    if is_slender(diameter) {
        return ScrewRoom { end_bored: diameter * 5.0, end_driven: diameter * 10.0, edge: diameter * 2.5 };
    }
    let end = diameter * EndLoad::Across.full();
    ScrewRoom { end_bored: end, end_driven: end, edge: across_edges(diameter).1 }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Number 14, 0.242 in: 1.21, 2.42 and 0.605 in. A ¼ in lag screw: 1 in and ⅜ in.
    #[test]
    fn thin_screws_split_less() {
        let found = |diameter: f64| {
            let room = screw_room(Length::inches(diameter));
            [room.end_bored, room.end_driven, room.edge].map(|length| (length.to_inches() * 1e4).round() / 1e4)
        };
        assert_eq!(found(0.242), [1.21, 2.42, 0.605]);
        assert_eq!(found(0.25), [1.0, 1.0, 0.375]);
    }
}

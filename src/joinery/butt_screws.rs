//! The screws of two purlins that end on one rafter: each piece has half of the rafter's breadth to be screwed to.
use crate::design::Shape;
use crate::fastening::{Fastener, ScrewRoom, screw_room};
use crate::geometry::{Point, PurlinRow};
use crate::project::Project;
use crate::solid::{Axis, Convex, cylinder};
use crate::units::{Length, UnitSystem};

/// Where the screws of every piece stand at its butts: all butts are alike.
#[derive(Clone, Debug, PartialEq)]
pub struct ButtScrews {
    /// The screw.
    pub screw: &'static Fastener,
    /// How far a piece lies on its rafter.
    pub bearing: Length,
    /// What the screw asks.
    pub room: ScrewRoom,
    /// From the butt's end along the piece.
    pub from_end: Length,
    /// From the piece's lower edge, one screw after the other.
    pub from_lower_edge: Vec<Length>,
}

impl ButtScrews {
    /// A piece lies too short on its rafter for its screws, even where they are bored first.
    #[must_use]
    pub fn is_short(&self) -> bool {
        self.bearing + Length::inches(1e-9) < self.asked()
    }

    /// How far a piece must lie on its rafter.
    #[must_use]
    pub fn asked(&self) -> Length {
        self.room.end_bored + self.room.edge
    }
}

/// What the project says of them; nothing where no screw is chosen.
///
/// Between what the end and the rafter's side ask, in the middle, at a mark of the rule where one lies there; where there is
/// too little, the lack is shared in the same proportion.
#[must_use]
pub fn butt_screws(project: &Project) -> Option<ButtScrews> {
    let screws = &project.fixings.purlin;
    let screw = screws.chosen()?;
    let bearing = project.frame.timbers.rafter.sawn.breadth / 2.0;
    let room = screw_room(screw.diameter);
    let (least, most) = (room.end_bored, bearing - room.edge);
    let from_end = if least <= most {
        let step = if project.units == UnitSystem::Metric { Length::millimetres(1.0) } else { Length::inches(0.0625) };
        let marked = ((least + most) / 2.0).round_to(step);
        if marked >= least && marked <= most { marked } else { (least + most) / 2.0 }
    } else {
        bearing * (room.end_bored / (room.end_bored + room.edge))
    };
    let breadth = project.frame.timbers.purlin.sawn.breadth;
    let step = breadth / screws.count as f64;
    let from_lower_edge = (0..screws.count).map(|index| step * (index as f64 + 0.5)).collect();
    Some(ButtScrews { screw, bearing, room, from_end, from_lower_edge })
}

/// One screw in its place.
pub(super) struct Driven {
    /// The piece it goes through.
    pub piece: String,
    /// The rafter's number, from 1.
    pub rafter: usize,
    /// In the purlin.
    pub above: Vec<Convex>,
    /// In the rafter.
    pub below: Vec<Convex>,
}

/// The screws at the butts of one row, butt by butt from the left.
pub(super) fn driven(project: &Project, shape: &Shape, row: &PurlinRow, screws: &ButtScrews) -> Vec<Vec<Driven>> {
    let mut all = Vec::new();
    for (index, pair) in row.pieces.windows(2).enumerate() {
        let Some(butt) = pair[0].right else { continue };
        let sides = [(index, butt.x - screws.from_end), (index + 1, butt.x + screws.from_end)];
        let of_piece = |(piece, x): (usize, Length)| {
            let one = move |up: &Length| {
                let [above, below] = parts(project, shape, row, screws, (x, *up));
                Driven { piece: row.mark(piece), rafter: butt.rafter, above, below }
            };
            screws.from_lower_edge.iter().map(one).collect::<Vec<_>>()
        };
        all.push(sides.into_iter().flat_map(of_piece).collect());
    }
    all
}

/// Square through the purlin, and on into the rafter for the rest of the screw.
fn parts(
    project: &Project,
    shape: &Shape,
    row: &PurlinRow,
    screws: &ButtScrews,
    (x, up): (Length, Length),
) -> [Vec<Convex>; 2] {
    let through = project.frame.timbers.purlin.sawn.depth;
    let along = shape.rafter.tail.0.x - row.from_tail - up;
    let at = |down: Length| Axis::X.place(shape.rafter.place(&shape.line, Point::new(along, down)), x);
    let into = (project.fixings.purlin.length - through).max(Length::ZERO);
    let diameter = screws.screw.diameter;
    let below = if into > Length::ZERO { cylinder(at(Length::ZERO), at(into), diameter) } else { Vec::new() };
    [cylinder(at(-through), at(Length::ZERO), diameter), below]
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::project::demo;

    /// 2 in of a 4 in rafter: number 14 screws ask 1.21 to the end and 0.605 to the side, 1.815 in; midway between 1.21 and
    /// 1.395 is 1.3025, at the mark 1 5/16. Two in a purlin 4 in wide stand 1 and 3 in up.
    #[test]
    fn two_screws_in_half_a_rafter() {
        let mut barn = demo::wool_barn();
        let found = butt_screws(&barn).unwrap();
        assert_eq!(found.from_end, Length::inches(1.3125));
        assert_eq!(found.from_lower_edge, [Length::inches(1.0), Length::inches(3.0)]);
        assert!(!found.is_short());
        // A rafter 1½ in wide gives ¾: of 1.815 asked, 1.21 are the end's.
        barn.frame.timbers.rafter.sawn.breadth = Length::inches(1.5);
        let found = butt_screws(&barn).unwrap();
        assert!(found.is_short() && (found.from_end.to_inches() - 0.5).abs() < 1e-9, "{found:?}");
        barn.fixings.purlin.fastener.clear();
        assert_eq!(butt_screws(&barn), None);
    }
}

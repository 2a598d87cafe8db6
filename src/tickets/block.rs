//! Blocks between the rafters over the beam.
use super::mark::{Mark, MarkKind, Waste};
use super::stick::Stick;
use crate::design::Shape;
use crate::geometry::{Bulk, Point, Polygon};
use crate::materials::Face;
use crate::project::{Blocks, Project, Role};
use crate::units::{Length, Weight};

/// Every block's sheet, left to right; none where none are wanted.
pub fn sticks(project: &Project, shape: &Shape) -> Vec<Stick> {
    if project.frame.blocks == Blocks::None {
        return Vec::new();
    }
    let breadth = project.frame.timbers.rafter.sawn.breadth;
    let gaps = shape.rafters.windows(2).map(|pair| pair[1] - pair[0] - breadth);
    gaps.enumerate().filter(|(_, gap)| *gap > Length::ZERO).map(|(index, gap)| stick(project, index + 1, gap)).collect()
}

fn stick(project: &Project, number: usize, gap: Length) -> Stick {
    let timber = project.frame.timbers.block;
    let profile = Polygon::rectangle(Point::new(Length::ZERO, Length::ZERO), Point::new(gap, timber.sawn.depth));
    Stick {
        mark: format!("X{number}"),
        role: Role::Block,
        timber,
        low: Length::ZERO,
        high: gap,
        bulk: Bulk::prism(timber.sawn.area(), Length::ZERO, gap),
        is_measured: false,
        green_weight: Weight::ZERO,
        zero: "its left end".to_owned(),
        ask: format!("Between R{number} and R{}, standing on the beam, flush with its outer face?", number + 1),
        references: (Face::Outer, Face::Top),
        faces: vec![(Face::Outer, timber.sawn.depth)],
        profile: (Face::Outer, profile),
        profile_lines: Vec::new(),
        whole_line: None,
        to_left: false,
        marks: vec![
            Mark::line("left end, square", Face::Outer, Length::ZERO, MarkKind::End)
                .waste(Waste::Before)
                .mate(format!("R{number}")),
            Mark::line("right end, square", Face::Outer, gap, MarkKind::End)
                .waste(Waste::After)
                .note("measure the gap on the roof before you cut")
                .mate(format!("R{}", number + 1)),
        ],
        same_as: None,
    }
}

//! The metal sheets: how many, how long, and where they are ripped.
use crate::geometry::{RafterShape, rakes};
use crate::project::{Roofing, SheetLayout};
use crate::units::{Length, SlopeLength};

/// One sheet in its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sheet {
    /// Left edge of what it covers, from the left rake.
    pub start: Length,
    /// Width it covers.
    pub cover: Length,
    /// It is ripped lengthwise.
    pub is_ripped: bool,
}

/// All sheets of the roof.
#[derive(Clone, Debug, PartialEq)]
pub struct SheetPlan {
    /// The left rake along the beam's x.
    pub left: Length,
    /// Rake to rake.
    pub width: Length,
    /// Length of every sheet.
    pub length: SlopeLength,
    /// Sheets, left to right.
    pub sheets: Vec<Sheet>,
}

/// A strip narrower than this cannot be held and screwed (common practice).
const NARROWEST: Length = Length::inches(6.0);

/// Shares the roof's width out among sheets.
///
/// Length = top edge of the rafters + eave overhang − top gap. A last strip narrower than 6 in is
/// evened out with the first sheet, whatever the layout asked for.
#[must_use]
pub fn sheet_plan(roofing: &Roofing, shape: &RafterShape, rafters: &[Length], breadth: Length) -> SheetPlan {
    let (left, right) = rakes(roofing, rafters, breadth / 2.0);
    let width = right - left;
    let length = shape.top_edge() + SlopeLength::of(roofing.eave_overhang - roofing.top_gap);
    let n_sheets = (width / roofing.cover - 1e-9).ceil().max(1.0);
    let over = roofing.cover * n_sheets - width;
    let strip = roofing.cover - over;
    let (first, last) = match roofing.layout {
        _ if over <= Length::inches(1e-6) || n_sheets < 2.0 => (roofing.cover.min(width), strip),
        SheetLayout::EqualRips => (roofing.cover - over / 2.0, roofing.cover - over / 2.0),
        _ if strip < NARROWEST => (roofing.cover - over / 2.0, roofing.cover - over / 2.0),
        SheetLayout::FromLeft => (roofing.cover, strip),
        SheetLayout::FromRight => (strip, roofing.cover),
    };
    let n_sheets = n_sheets as usize;
    let mut start = Length::ZERO;
    let sheets = (0..n_sheets)
        .map(|index| {
            let cover = match index {
                0 => first,
                _ if index + 1 == n_sheets => last,
                _ => roofing.cover,
            };
            let is_ripped = roofing.cover - cover > Length::inches(1e-6);
            let sheet = Sheet { start, cover, is_ripped };
            start += cover;
            sheet
        })
        .collect();
    SheetPlan { left, width, length, sheets }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::geometry::RoofLine;
    use crate::project::demo;

    fn check(layout: SheetLayout, rafters: &[f64], covers: &[f64]) {
        let project = demo::wool_barn();
        let shape = RafterShape::new(&project.frame, &RoofLine::resolve(&project.frame).unwrap());
        let roofing = Roofing { layout, ..project.roofing };
        let rafters: Vec<Length> = rafters.iter().copied().map(Length::inches).collect();
        let plan = sheet_plan(&roofing, &shape, &rafters, Length::inches(4.0));
        let found: Vec<f64> = plan.sheets.iter().map(|sheet| sheet.cover.to_inches()).collect();
        assert_eq!(found, covers);
        let last = plan.sheets.last().unwrap();
        assert!((last.start + last.cover).is_near(plan.width, Length::inches(1e-9)));
    }

    /// 10 ft of roof under 3 ft sheets: three whole and a foot of a fourth, or the first and the last
    /// cut to balance it, 24 in each (common practice).
    #[test]
    fn ten_feet_under_three_foot_sheets() {
        check(SheetLayout::FromLeft, &[8.0, 112.0], &[36.0, 36.0, 36.0, 12.0]);
        check(SheetLayout::FromRight, &[8.0, 112.0], &[12.0, 36.0, 36.0, 36.0]);
        check(SheetLayout::EqualRips, &[8.0, 112.0], &[24.0, 36.0, 36.0, 24.0]);
    }

    #[test]
    fn a_sliver_is_evened_out() {
        check(SheetLayout::FromLeft, &[8.0, 104.0], &[20.0, 36.0, 36.0, 20.0]);
        check(SheetLayout::FromLeft, &[8.0, 100.0], &[36.0, 36.0, 36.0]);
    }
}

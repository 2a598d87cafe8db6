//! The scarf in elevation: what is left of the lower and of the upper piece.
//!
//! Lap coordinates: x from the lower lap's root (0) to its tip (ℓ), y up from the underside (0) to the
//! top (D). Each tip ends in an abutment of height a, leaning by the squint e so that neither tip can
//! leave the lap; between them the lap face slopes. With a table, both faces step by t at mid-length,
//! a gap g apart, and folding wedges fill the gap.
//!
//! ```text
//!  D ───/(e,D)                      upper piece
//!      (0,D−a) ‾‾‾‾──────____
//!      lower piece           ‾‾‾‾(ℓ,a)
//!  0 ───────────────────────────/(ℓ−e,0)
//! ```
use crate::geometry::{Point, Polygon, ScarfReport, abutment};
use crate::project::{Frame, JoineryRules, Project, ScarfKind};
use crate::units::Length;

/// One scarf's proportions.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScarfShape {
    /// Depth of the beam.
    pub depth: Length,
    /// Length of the lap.
    pub lap: Length,
    /// Height of each abutment.
    pub abutment: Length,
    /// Lean of each abutment over its height; zero for square ones.
    pub squint: Length,
    /// Step of the table and gap for the wedges, where there is a table.
    pub table: Option<(Length, Length)>,
    /// Length of the tongues at the tips; zero where there are none. Tongue and slot take a quarter of the depth each.
    pub blade: Length,
}

impl ScarfShape {
    /// That scarf of the beam.
    #[must_use]
    pub fn of(project: &Project, scarf: &ScarfReport) -> Self {
        Self::new(&project.frame, &project.joinery, scarf.kind)
    }

    /// A scarf of that kind in this frame.
    #[must_use]
    pub fn new(frame: &Frame, rules: &JoineryRules, kind: ScarfKind) -> Self {
        Self {
            depth: frame.timbers.beam.sawn.depth,
            lap: frame.scarfs.lap,
            abutment: abutment(frame, rules, kind),
            squint: if kind.is_squinted() { rules.scarf_squint } else { Length::ZERO },
            table: (kind == ScarfKind::StopSplayedTabled).then_some((rules.scarf_table, rules.scarf_wedge)),
            blade: if kind == ScarfKind::Bladed { rules.scarf_blade } else { Length::ZERO },
        }
    }

    /// How far the halves must be apart endwise before they come free of each other: the squint, or the tongues' length.
    #[must_use]
    pub fn travel(&self) -> Length {
        self.squint.max(self.blade)
    }

    /// The end of one piece with tongues, from the underside up to the top. Both halves share it.
    fn bladed(&self) -> Vec<Point> {
        let (half, quarter, blade) = (self.depth / 2.0, self.depth / 4.0, self.blade);
        vec![
            Point::new(self.lap - blade, Length::ZERO),
            Point::new(self.lap - blade, quarter),
            Point::new(self.lap, quarter),
            Point::new(self.lap, half),
            Point::new(Length::ZERO, half),
            Point::new(Length::ZERO, half + quarter),
            Point::new(blade, half + quarter),
            Point::new(blade, self.depth),
        ]
    }

    /// Fall of the lap face over one unit of length.
    #[must_use]
    pub fn splay(&self) -> f64 {
        let step = self.table.map_or(Length::ZERO, |(step, _)| step);
        (self.depth - self.abutment * 2.0 + step) / self.lap
    }

    /// The end of one piece, from the underside up to the top.
    #[must_use]
    pub fn profile(&self, is_lower: bool) -> Vec<Point> {
        if self.blade > Length::ZERO {
            return self.bladed();
        }
        let root = Point::new(Length::ZERO, self.depth - self.abutment);
        let tip = Point::new(self.lap, self.abutment);
        let mut points = vec![Point::new(self.lap - self.squint, Length::ZERO), tip];
        if let Some((step, gap)) = self.table {
            let x = self.lap / 2.0 + if is_lower { gap / 2.0 } else { -(gap / 2.0) };
            let low = root.y - x * self.splay();
            points.extend([Point::new(x, low + step), Point::new(x, low)]);
        }
        points.extend([root, Point::new(self.squint, self.depth)]);
        points
    }

    /// What is cut away of one piece's end within the lap: between its lap face and the other's far side, and the
    /// corner outside its tip.
    #[must_use]
    pub fn waste(&self, is_lower: bool) -> [Polygon; 2] {
        let profile = self.profile(is_lower);
        if self.blade > Length::ZERO {
            return self.bladed_waste(&profile, is_lower);
        }
        let (below, above) = (profile[0], profile[profile.len() - 1]);
        let corner = |is_tip_side: bool| {
            let x = if is_tip_side { self.lap } else { Length::ZERO };
            let y = if is_lower { self.depth } else { Length::ZERO };
            Point::new(x, y)
        };
        if is_lower {
            let mut over = profile[1..].to_vec();
            over.push(corner(true));
            return [Polygon::new(over), Polygon::new(vec![below, Point::new(self.lap, Length::ZERO), profile[1]])];
        }
        let mut under = profile[..profile.len() - 1].to_vec();
        under.push(corner(false));
        let root = profile[profile.len() - 2];
        [Polygon::new(under), Polygon::new(vec![root, above, Point::new(Length::ZERO, self.depth)])]
    }

    fn bladed_waste(&self, profile: &[Point], is_lower: bool) -> [Polygon; 2] {
        let corner = |x: Length, y: Length| Point::new(x, y);
        let (mut lap, mut tip) = (profile[3..].to_vec(), profile[..3].to_vec());
        if is_lower {
            lap.push(corner(self.lap, self.depth));
            tip.push(corner(self.lap, Length::ZERO));
        } else {
            lap = profile[..5].to_vec();
            lap.push(corner(Length::ZERO, Length::ZERO));
            tip = profile[5..].to_vec();
            tip.push(corner(Length::ZERO, self.depth));
        }
        [Polygon::new(lap), Polygon::new(tip)]
    }

    /// The lower piece's part of the lap, with a stub of whole beam beyond the root.
    #[must_use]
    pub fn lower(&self, stub: Length) -> Polygon {
        let mut corners = vec![Point::new(-stub, Length::ZERO)];
        corners.extend(self.profile(true));
        corners.push(Point::new(-stub, self.depth));
        Polygon::new(corners)
    }

    /// The upper piece's part of the lap, with a stub of whole beam beyond the tip.
    #[must_use]
    pub fn upper(&self, stub: Length) -> Polygon {
        let mut corners = vec![Point::new(self.lap + stub, Length::ZERO)];
        corners.extend(self.profile(false));
        corners.push(Point::new(self.lap + stub, self.depth));
        Polygon::new(corners)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tabled() -> ScarfShape {
        ScarfShape {
            depth: Length::inches(10.0),
            lap: Length::inches(40.0),
            abutment: Length::inches(2.5),
            squint: Length::inches(0.5),
            table: Some((Length::inches(1.25), Length::inches(1.0))),
            blade: Length::ZERO,
        }
    }

    /// By hand: the two halves and the wedge gap (1 × 1.25) fill the lap, 40 × 10 in.
    #[test]
    fn the_halves_and_the_wedges_fill_the_lap() {
        let stub = Length::inches(6.0);
        let both = tabled().lower(stub).area() + tabled().upper(stub).area();
        let whole = 40.0 * 10.0 + 2.0 * 6.0 * 10.0;
        assert!((whole - both.to_square_inches() - 1.25).abs() < 1e-9);
    }

    /// What is cut away and what is left of each half fill the lap.
    #[test]
    fn the_waste_is_what_the_halves_are_not() {
        let area = |waste: [Polygon; 2]| waste.iter().map(|part| part.area().to_square_inches()).sum::<f64>();
        let plain = ScarfShape { table: None, squint: Length::ZERO, ..tabled() };
        for scarf in [tabled(), plain, ScarfShape { blade: Length::inches(3.0), ..plain }] {
            let (lower, upper) = (scarf.lower(Length::ZERO).area(), scarf.upper(Length::ZERO).area());
            assert!((lower.to_square_inches() + area(scarf.waste(true)) - 400.0).abs() < 1e-9);
            assert!((upper.to_square_inches() + area(scarf.waste(false)) - 400.0).abs() < 1e-9);
        }
    }

    /// The height the scarf's place is judged by is that of the shape that is cut.
    #[test]
    fn the_lap_is_judged_as_it_is_cut() {
        for project in [crate::project::demo::wool_barn(), crate::project::demo::log_store()] {
            let kind = project.frame.scarfs.kind;
            let shape = ScarfShape::new(&project.frame, &project.joinery, kind);
            for point in shape.profile(true).into_iter().skip(1).filter(|point| point.y < shape.depth) {
                let height = crate::geometry::lap_height(&project.frame, &project.joinery, kind, point.x);
                // At the step both heights are the lap's: the one toward the root is judged.
                let off = (height - point.y).to_inches();
                let step = shape.table.map_or(0.0, |(step, _)| step.to_inches());
                assert!(off.abs() < 1e-9 || (off + step).abs() < 1e-9, "{off} at {:?}", point.x);
            }
        }
    }

    /// By hand: each tongue is 3 in long and a quarter of 10 in thick; a half is 5 × 40 and its slot's roof, less the wood
    /// under its tongue: 200 + 3·2.5 − 3·2.5.
    #[test]
    fn blades_are_a_quarter_of_the_depth() {
        let bladed = ScarfShape { blade: Length::inches(3.0), squint: Length::ZERO, table: None, ..tabled() };
        assert_eq!(bladed.travel(), Length::inches(3.0));
        assert!((bladed.lower(Length::ZERO).area().to_square_inches() - 200.0).abs() < 1e-9);
        let both = bladed.lower(Length::inches(6.0)).area() + bladed.upper(Length::inches(6.0)).area();
        assert!((both.to_square_inches() - 520.0).abs() < 1e-9);
    }

    /// By hand: half of 40 × 10 = 200 in² each for a plain stop-splayed scarf.
    #[test]
    fn plain_halves_are_equal() {
        let plain = ScarfShape { squint: Length::ZERO, table: None, ..tabled() };
        assert!((plain.lower(Length::ZERO).area().to_square_inches() - 200.0).abs() < 1e-9);
        assert!((plain.upper(Length::ZERO).area().to_square_inches() - 200.0).abs() < 1e-9);
        assert!((plain.splay() - 0.125).abs() < 1e-12);
    }
}

//! A drawing at true size cut into sheets of paper that overlap.
//!
//! Places are the drawing's own, in inches, y up. Rows have letters from the top, columns numbers from the left.
//! Two neighbours share a strip; in it stand two crosses that lie on each other when the sheets are taped rightly.
use super::scene::{Drawn, Layer, Scene};
use super::template::bounds_of;
use crate::geometry::{Point, Polygon};
use crate::units::{Length, UnitSystem};

/// Shared by two neighbours.
pub const OVERLAP: Length = Length::inches(0.75);
/// Room around the drawing.
const AROUND: Length = Length::inches(0.1);

/// A sheet of paper, upright.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// 8½ by 11 in.
    Letter,
    /// 210 by 297 mm (ISO 216).
    A4,
}

impl Paper {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Letter, Self::A4];

    /// The paper people of those units have.
    #[must_use]
    pub const fn usual(units: UnitSystem) -> Self {
        match units {
            UnitSystem::Imperial => Self::Letter,
            UnitSystem::Metric => Self::A4,
        }
    }

    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Letter => "Letter",
            Self::A4 => "A4",
        }
    }

    /// A short name for the style sheet.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Letter => "letter",
            Self::A4 => "a4",
        }
    }

    /// Its units: what its sheets are drawn in.
    #[must_use]
    pub const fn units(self) -> UnitSystem {
        match self {
            Self::Letter => UnitSystem::Imperial,
            Self::A4 => UnitSystem::Metric,
        }
    }

    /// Width and height inside the margins: ½ in, or 12 mm, on every side. The style sheet has the same.
    #[must_use]
    pub const fn room(self) -> (Length, Length) {
        match self {
            Self::Letter => (Length::inches(7.5), Length::inches(10.0)),
            Self::A4 => (Length::millimetres(186.0), Length::millimetres(273.0)),
        }
    }
}

/// A cross in the strip two sheets share.
#[derive(Clone, Debug, PartialEq)]
pub struct Cross {
    /// Its place in the drawing.
    pub at: Point,
    /// The two sheets: `A1 + A2`.
    pub says: String,
}

/// One sheet of the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Tile {
    /// Row from the top, from 0.
    pub row: usize,
    /// Column from the left, from 0.
    pub column: usize,
    /// Lowest corner of what it shows.
    pub low: Point,
    /// Highest corner.
    pub high: Point,
}

impl Tile {
    /// `B3`.
    #[must_use]
    pub fn name(&self) -> String {
        name(self.row, self.column)
    }
}

/// A drawing cut into sheets.
#[derive(Clone, Debug, PartialEq)]
pub struct Tiling {
    /// How many rows.
    pub n_rows: usize,
    /// How many columns.
    pub n_columns: usize,
    /// The sheets that hold a line or a hole, row by row.
    pub tiles: Vec<Tile>,
}

impl Tiling {
    /// The scene cut into frames of that size: in the middle of them, or pushed to an edge where that leaves
    /// more sheets empty.
    #[must_use]
    pub fn new(scene: &Scene, frame: (Length, Length)) -> Self {
        let shares = [0.5, 0.0, 1.0];
        let all = shares.into_iter().flat_map(|x| shares.map(|y| Self::pushed(scene, frame, (x, y))));
        let fewest = all.reduce(|best, other| if other.tiles.len() < best.tiles.len() { other } else { best });
        fewest.unwrap_or(Self { n_rows: 0, n_columns: 0, tiles: Vec::new() })
    }

    /// With that share of the room left over at the left, and above.
    fn pushed(scene: &Scene, frame: (Length, Length), share: (f64, f64)) -> Self {
        let (low, high) = bounds(scene);
        let (wide, tall) = (high.x - low.x, high.y - low.y);
        let (n_columns, n_rows) = (count(wide, frame.0), count(tall, frame.1));
        let whole = |n: usize, one: Length| one + (one - OVERLAP) * (n - 1) as f64;
        let left = low.x - (whole(n_columns, frame.0) - wide) * share.0;
        let top = high.y + (whole(n_rows, frame.1) - tall) * share.1;
        let mut tiles = Vec::new();
        for row in 0..n_rows {
            for column in 0..n_columns {
                let x = left + (frame.0 - OVERLAP) * column as f64;
                let y = top - (frame.1 - OVERLAP) * row as f64;
                let tile = Tile { row, column, low: Point::new(x, y - frame.1), high: Point::new(x + frame.0, y) };
                if is_needed(scene, &tile) {
                    tiles.push(tile);
                }
            }
        }
        Self { n_rows, n_columns, tiles }
    }

    /// The sheet of that row and column.
    #[must_use]
    pub fn tile(&self, row: usize, column: usize) -> Option<&Tile> {
        self.tiles.iter().find(|tile| tile.row == row && tile.column == column)
    }

    /// The sheets beside, above and below that are there too.
    #[must_use]
    pub fn neighbours(&self, tile: &Tile) -> Vec<&Tile> {
        let mut found = Vec::new();
        let rows = [tile.row.checked_sub(1), Some(tile.row + 1)];
        found.extend(rows.into_iter().flatten().filter_map(|row| self.tile(row, tile.column)));
        let columns = [tile.column.checked_sub(1), Some(tile.column + 1)];
        found.extend(columns.into_iter().flatten().filter_map(|column| self.tile(tile.row, column)));
        found
    }

    /// The crosses on one sheet.
    #[must_use]
    pub fn crosses(&self, tile: &Tile) -> Vec<Cross> {
        self.neighbours(tile).into_iter().flat_map(|other| between(tile, other)).collect()
    }
}

/// Two crosses in the strip of two neighbours, the same whichever comes first.
fn between(one: &Tile, other: &Tile) -> [Cross; 2] {
    let low = Point::new(one.low.x.max(other.low.x), one.low.y.max(other.low.y));
    let high = Point::new(one.high.x.min(other.high.x), one.high.y.min(other.high.y));
    let (first, second) = if (one.row, one.column) <= (other.row, other.column) { (one, other) } else { (other, one) };
    let says = format!("{} + {}", first.name(), second.name());
    let at = |share: f64| {
        if one.row == other.row {
            Point::new((low.x + high.x) / 2.0, low.y + (high.y - low.y) * share)
        } else {
            Point::new(low.x + (high.x - low.x) * share, (low.y + high.y) / 2.0)
        }
    };
    [0.12, 0.88].map(|share| Cross { at: at(share), says: says.clone() })
}

fn name(row: usize, column: usize) -> String {
    let letter = |n: usize| char::from(b'A' + (n % 26) as u8);
    let letters = if row < 26 { letter(row).to_string() } else { format!("{}{}", letter(row / 26 - 1), letter(row)) };
    format!("{letters}{}", column + 1)
}

/// How many frames that overlap cover a size.
fn count(size: Length, frame: Length) -> usize {
    if size <= frame {
        return 1;
    }
    1 + ((size - frame) / (frame - OVERLAP) - 1e-9).ceil() as usize
}

/// The box around the drawing's shapes, with room for the words at its edge.
pub(super) fn bounds(scene: &Scene) -> (Point, Point) {
    let shapes = scene.parts.iter().filter(|part| !matches!(part.drawn, Drawn::Text(_)));
    let corners = shapes.flat_map(|part| <[Point; 2]>::from(bounds_of(&part.drawn))).collect();
    let (low, high) = Polygon { corners }.bounds();
    (low.moved(-AROUND, -AROUND), high.moved(AROUND, AROUND))
}

/// Something on it is cut, bored, folded or laid to an arris.
fn is_needed(scene: &Scene, tile: &Tile) -> bool {
    scene.parts.iter().any(|part| match (&part.drawn, part.layer) {
        (Drawn::Line(points), Layer::Joint | Layer::Reference | Layer::Fold) => {
            points.windows(2).any(|pair| crosses_box(pair[0], pair[1], tile.low, tile.high))
        }
        (Drawn::Hole(..), Layer::Joint) => overlaps(bounds_of(&part.drawn), (tile.low, tile.high)),
        _ => false,
    })
}

/// Two upright boxes have a point in common.
pub(super) fn overlaps(a: (Point, Point), b: (Point, Point)) -> bool {
    a.0.x <= b.1.x && b.0.x <= a.1.x && a.0.y <= b.1.y && b.0.y <= a.1.y
}

/// A straight line has a point in an upright box (Liang and Barsky's clipping).
fn crosses_box(from: Point, to: Point, low: Point, high: Point) -> bool {
    let (mut first, mut last) = (0.0_f64, 1.0_f64);
    for (start, end, low, high) in [(from.x, to.x, low.x, high.x), (from.y, to.y, low.y, high.y)] {
        let along = (end - start).to_inches();
        if along == 0.0 {
            if start < low || start > high {
                return false;
            }
            continue;
        }
        let (a, b) = ((low - start).to_inches() / along, (high - start).to_inches() / along);
        first = first.max(a.min(b));
        last = last.min(a.max(b));
    }
    first <= last
}

#[cfg(test)]
mod tests {
    use super::*;

    const FRAME: (Length, Length) = (Length::inches(7.5), Length::inches(8.5));

    fn stripe(from: Point, to: Point) -> Scene {
        let mut scene = Scene::default();
        scene.line(Layer::Joint, from, to);
        scene
    }

    #[test]
    fn frames_that_overlap_cover_a_size() {
        for (size, expected) in [(1.0, 1), (7.5, 1), (7.6, 2), (14.25, 2), (14.26, 3), (120.0, 18)] {
            assert_eq!(count(Length::inches(size), Length::inches(7.5)), expected, "{size}");
        }
    }

    /// A line of ten feet aslant: every point of it lies on a sheet, and a sheet beside it that shows nothing is left out.
    #[test]
    fn the_sheets_cover_a_long_line() {
        let (a, b) = (Point::inches(0.0, 2.5), Point::inches(120.0, 12.0));
        let tiling = Tiling::new(&stripe(a, b), FRAME);
        for step in 0..=1000 {
            let share = f64::from(step) / 1000.0;
            let at = Point::new(a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share);
            let holds = |tile: &&Tile| overlaps((at, at), (tile.low, tile.high));
            assert!(tiling.tiles.iter().any(|tile| holds(&tile)), "{at:?}");
        }
        assert!(tiling.tiles.len() < tiling.n_rows * tiling.n_columns);
    }

    /// Neighbours agree where their crosses are, to the bit, and each has one for each sheet beside it twice.
    #[test]
    fn crosses_lie_on_each_other() {
        let mut scene = stripe(Point::inches(0.0, 0.0), Point::inches(20.0, 20.0));
        scene.line(Layer::Joint, Point::inches(0.0, 20.0), Point::inches(20.0, 0.0));
        let tiling = Tiling::new(&scene, FRAME);
        for tile in &tiling.tiles {
            assert_eq!(tiling.crosses(tile).len(), tiling.neighbours(tile).len() * 2);
            for other in tiling.neighbours(tile) {
                let shared: Vec<Cross> =
                    tiling.crosses(tile).into_iter().filter(|cross| tiling.crosses(other).contains(cross)).collect();
                assert_eq!(shared.len(), 2, "{} and {}", tile.name(), other.name());
                for cross in shared {
                    for sheet in [tile, other] {
                        assert!(overlaps((cross.at, cross.at), (sheet.low, sheet.high)), "{}", cross.says);
                    }
                }
            }
        }
    }

    #[test]
    fn sheets_have_names() {
        assert_eq!((name(0, 0), name(1, 2), name(26, 0)), ("A1".to_owned(), "B3".to_owned(), "AA1".to_owned()));
    }

    #[test]
    fn lines_and_boxes() {
        let (low, high) = (Point::inches(0.0, 0.0), Point::inches(2.0, 2.0));
        let check = |a: (f64, f64), b: (f64, f64), expected: bool| {
            assert_eq!(
                crosses_box(Point::inches(a.0, a.1), Point::inches(b.0, b.1), low, high),
                expected,
                "{a:?} {b:?}"
            );
        };
        check((-1.0, 1.0), (3.0, 1.0), true);
        check((-1.0, 3.5), (3.5, -1.0), true);
        check((-1.0, 3.0), (3.0, 5.0), false);
        check((3.0, 0.0), (3.0, 2.0), false);
        check((1.0, 1.0), (1.0, 1.0), true);
    }
}

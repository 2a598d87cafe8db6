//! The part of the user's own tape around a mark, graduation by graduation, beside the wood it lies on.
//!
//! Pixels are counted from the middle of the picture to the right; the stick's low end is at the left, as it lies on
//! the bench. The point of the crow's foot stands at the exact measure, also between two graduations. A tape reads
//! upward from the stick's zero to both sides, so numbers carry no sign.
use super::tape_svg;
use crate::tickets::{Mark, MarkKind, Stick, Waste};
use crate::units::{Length, UnitSystem};

/// Half the width that is drawn, px. A narrower screen sees the middle of it.
pub(super) const HALF_WIDTH: f64 = 336.0;
/// Two edges no farther apart than this are drawn on one piece of tape, px: the narrowest phone shows it whole.
const ONE_PIECE: f64 = 256.0;
/// Where two edges farther apart stand from the middle, px, each on a piece of its own.
const OWN_PIECE: f64 = 74.0;
/// Half the gap between two pieces of tape, px.
const GAP: f64 = 5.0;

/// How long the stroke of a graduation is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Rank {
    /// 1/16 in, or 1 mm.
    Finest,
    /// 1/8 in.
    Eighth,
    /// 1/4 in.
    Quarter,
    /// 1/2 in, or 5 mm.
    Half,
    /// 1 in, or 1 cm: it has a number.
    Whole,
}

impl Rank {
    /// Every rank, short to long.
    pub const ALL: [Self; 5] = [Self::Finest, Self::Eighth, Self::Quarter, Self::Half, Self::Whole];
}

/// One stroke of the tape.
#[derive(Clone, Debug, PartialEq)]
pub struct Graduation {
    /// Its place, px from the middle of the picture.
    pub at: f64,
    /// How long it is.
    pub rank: Rank,
    /// The number at it; empty for none.
    pub says: String,
    /// The foot or metre that is full there; empty for none.
    pub full: String,
}

/// A piece of tape with the wood beside it.
#[derive(Clone, Debug, PartialEq)]
pub struct TapePiece {
    /// What is seen of it, px from the middle of the picture.
    pub seen: (f64, f64),
    /// How far the tape itself goes within that: it begins at zero.
    pub tape: (f64, f64),
    /// Whether the tape's hook is seen, and where.
    pub hook: Option<f64>,
    /// Its strokes, left to right.
    pub graduations: Vec<Graduation>,
    /// The points of the crow's feet.
    pub crows_feet: Vec<f64>,
    /// Wood that goes, of this mark.
    pub waste: Option<(f64, f64)>,
    /// Where another stick will sit.
    pub seat: Option<(f64, f64)>,
    /// Where the finished stick is; what lies beside it is rough stock.
    pub stick: (f64, f64),
}

/// The picture of a mark on the tape.
#[derive(Clone, Debug, PartialEq)]
pub struct Tape {
    /// How large it is drawn.
    pub pixels_per_inch: f64,
    /// From one number to the next, px.
    pub between_numbers: f64,
    /// One piece; two where the edges lie too far apart for one.
    pub pieces: Vec<TapePiece>,
}

impl Tape {
    /// The tape around that mark of that stick.
    #[must_use]
    pub fn of(stick: &Stick, mark: &Mark, units: UnitSystem) -> Self {
        let (closest, usual) = scales(units);
        let far = mark.far.unwrap_or(mark.near);
        let apart = (far - mark.near).to_inches();
        let fits = apart * closest <= ONE_PIECE;
        let scale = if fits && apart > 0.0 { (ONE_PIECE / apart).clamp(closest, usual) } else { usual };
        let draw = |value: Length, at: f64, seen: (f64, f64)| {
            Ruler { scale, value: value.to_inches(), at, seen, units }.piece(stick, mark)
        };
        let pieces = if fits {
            vec![draw((mark.near + far) / 2.0, 0.0, (-HALF_WIDTH, HALF_WIDTH))]
        } else {
            vec![draw(mark.near, -OWN_PIECE, (-HALF_WIDTH, -GAP)), draw(far, OWN_PIECE, (GAP, HALF_WIDTH))]
        };
        Self { pixels_per_inch: scale, between_numbers: between_numbers(scale, units), pieces }
    }

    /// The picture as an `<svg>` element, named for those who cannot see it.
    #[must_use]
    pub fn print(&self, title: &str) -> String {
        tape_svg::print(self, title)
    }
}

/// Pixels an inch is drawn at: the fewest that keep the strokes apart, and the usual.
const fn scales(units: UnitSystem) -> (f64, f64) {
    match units {
        UnitSystem::Imperial => (32.0, 48.0),
        // 2.5 and 3 px a millimetre.
        UnitSystem::Metric => (63.5, 76.2),
    }
}

/// From one number to the next, px.
fn between_numbers(scale: f64, units: UnitSystem) -> f64 {
    match units {
        UnitSystem::Imperial => scale,
        UnitSystem::Metric => scale / 2.54,
    }
}

/// Width of a figure on the tape, and the least room between two numbers, px.
const FIGURE: f64 = 9.5;
const APART: f64 = 1.0;

/// Where a value on the stick lies in the picture.
struct Ruler {
    scale: f64,
    /// This value, inches from the stick's zero, …
    value: f64,
    /// … lies here.
    at: f64,
    seen: (f64, f64),
    units: UnitSystem,
}

impl Ruler {
    fn place(&self, value: Length) -> f64 {
        self.at + (value.to_inches() - self.value) * self.scale
    }

    /// The part of a range that is seen.
    fn part(&self, (from, to): (f64, f64)) -> Option<(f64, f64)> {
        let (from, to) = (from.max(self.seen.0), to.min(self.seen.1));
        (from < to).then_some((from, to))
    }

    fn piece(&self, stick: &Stick, mark: &Mark) -> TapePiece {
        let zero = self.place(Length::ZERO);
        let edges = (self.place(mark.near), self.place(mark.far.unwrap_or(mark.near)));
        // One tape runs one way from zero; across zero it is laid down twice.
        let way = match (mark.near.is_negative(), mark.far.unwrap_or(mark.near) > Length::ZERO) {
            (false, _) => (zero, f64::INFINITY),
            (true, false) => (f64::NEG_INFINITY, zero),
            (true, true) => (f64::NEG_INFINITY, f64::INFINITY),
        };
        let tape = self.part(way).unwrap_or((self.seen.0, self.seen.0));
        let goes = match mark.waste {
            Waste::None => None,
            Waste::Between => self.part(edges),
            Waste::Before => self.part((f64::NEG_INFINITY, edges.0)),
            Waste::After => self.part((edges.1, f64::INFINITY)),
        };
        let is_seen = |at: &f64| (self.seen.0..=self.seen.1).contains(at);
        let mut crows_feet = vec![edges.0];
        if mark.far.is_some() {
            crows_feet.push(edges.1);
        }
        crows_feet.retain(is_seen);
        TapePiece {
            seen: self.seen,
            tape,
            hook: Some(zero).filter(is_seen),
            graduations: self.graduations(tape),
            crows_feet,
            waste: goes,
            seat: (mark.kind == MarkKind::Seat).then(|| self.part(edges)).flatten(),
            stick: self.part((self.place(stick.low), self.place(stick.high))).unwrap_or((self.seen.0, self.seen.0)),
        }
    }

    fn graduations(&self, (from, to): (f64, f64)) -> Vec<Graduation> {
        let step = match self.units {
            UnitSystem::Imperial => Length::inches(1.0 / 16.0),
            UnitSystem::Metric => Length::millimetres(1.0),
        };
        let index = |at: f64| (self.value + (at - self.at) / self.scale) / step.to_inches();
        // A hair's breadth of noise must not lose the stroke at zero.
        let (first, last) = ((index(from) - 1e-6).ceil() as i64, (index(to) + 1e-6).floor() as i64);
        (first..=last).map(|index| self.graduation(index, step * index as f64)).collect()
    }

    fn graduation(&self, index: i64, value: Length) -> Graduation {
        let index = index.unsigned_abs();
        let (rank, whole, in_full, unit) = match self.units {
            UnitSystem::Imperial => (rank_in_inch(index % 16), index / 16, 12, "′"),
            UnitSystem::Metric => (rank_in_centimetre(index % 10), index / 10, 100, " m"),
        };
        let numbered = rank == Rank::Whole;
        let crowded = between_numbers(self.scale, self.units) < whole.to_string().len() as f64 * FIGURE + APART;
        let says = numbered && (!crowded || whole % 5 == 0);
        let full = numbered && whole > 0 && whole % in_full == 0;
        Graduation {
            at: self.place(value),
            rank,
            says: if says { whole.to_string() } else { String::new() },
            full: if full { format!("{}{unit}", whole / in_full) } else { String::new() },
        }
    }
}

const fn rank_in_inch(sixteenth: u64) -> Rank {
    match sixteenth {
        0 => Rank::Whole,
        8 => Rank::Half,
        4 | 12 => Rank::Quarter,
        2 | 6 | 10 | 14 => Rank::Eighth,
        _ => Rank::Finest,
    }
}

const fn rank_in_centimetre(millimetre: u64) -> Rank {
    match millimetre {
        0 => Rank::Whole,
        5 => Rank::Half,
        _ => Rank::Finest,
    }
}

#[cfg(test)]
mod tests;

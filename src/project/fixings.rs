//! What holds the parts together and the frame down: screws, ties, anchors, footings.
//!
//! Nothing here is guessed: a key that is empty and a count of nothing mean that it has not been chosen yet, and
//! what depends on it is then not judged.
use crate::fastening::{Fastener, FastenerKind, fastener};
use crate::frame::Spring;
use crate::materials::Confidence;
use crate::units::{Force, Length, Stress, UnitSystem};

/// Which way a hole runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BoreWay {
    /// Along the beam.
    AlongBeam,
    /// Out from the wall.
    Outward,
}

/// Holes bored for a tie, one for each of its screws or bolts, in a row on the middle of the timber.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bores {
    /// Across the hole.
    pub diameter: Length,
    /// To the first hole: from a post's foot up, from a scarf's butting end into the lap, from the middle of a rafter's seat uphill.
    pub first: Length,
    /// One to the next, the same way on.
    pub apart: Length,
    /// Which way they run through a post's foot; other ties are bored square through the joint.
    pub way: BoreWay,
}

/// Screws, straps or an anchor by their maker's allowable loads, at a load duration of 1.0.
#[derive(Clone, Debug, PartialEq)]
pub struct Tie {
    /// How many at one joint; none chosen yet where zero.
    pub count: usize,
    /// Allowable pull of one, along the way that parts the joint.
    pub pull: Force,
    /// Allowable push of one sideways.
    pub sideways: Force,
    /// Where the values come from: the maker's sheet or report.
    pub source: String,
    /// Holes bored for it; nothing where it needs none.
    pub bores: Option<Bores>,
}

impl Bores {
    /// What a field that was empty begins with, in round figures of that system: clear of the end of a post or a scarf for ½ in
    /// bolts (NDS 12.5.1, from memory), and within a rafter's seat.
    #[must_use]
    pub fn usual(diameter: Length, is_in_seat: bool, units: UnitSystem) -> Self {
        let round = |inches: f64, mm: f64| match units {
            UnitSystem::Imperial => Length::inches(inches),
            UnitSystem::Metric => Length::millimetres(mm),
        };
        let (first, apart) =
            if is_in_seat { (Length::ZERO, round(0.75, 20.0)) } else { (round(4.0, 100.0), round(3.0, 75.0)) };
        Self { diameter, first, apart, way: BoreWay::AlongBeam }
    }
}

impl Tie {
    /// How far each of its holes is from where they are measured, first to last; none where nothing is bored.
    #[must_use]
    pub fn holes(&self) -> Vec<Length> {
        let Some(bores) = self.bores else { return Vec::new() };
        (0..self.count).map(|index| bores.first + bores.apart * index as f64).collect()
    }

    /// Across its holes; nothing where none is bored.
    #[must_use]
    pub fn bored(&self) -> Length {
        self.bores.filter(|_| self.count > 0).map_or(Length::ZERO, |bores| bores.diameter)
    }
}

/// Stands in the place of a fastener's key where the screw is a maker's own and its values are stated.
pub const MAKERS_OWN: &str = "makers_own";

/// A maker's own structural screw, as the maker's sheet gives it for these woods; what is zero is not known.
#[derive(Clone, Debug, PartialEq)]
pub struct MakersScrew {
    /// Over the thread.
    pub diameter: Length,
    /// Allowable load of one sideways through this ledger, at a load duration of 1.0.
    pub sideways: Force,
    /// Allowable pull of one, at a load duration of 1.0: thread, head or steel, the least.
    pub pull: Force,
    /// Where the values come from: the maker's sheet or report.
    pub source: String,
}

/// Screws or bolts through the ledger into the posts or studs of the wall.
#[derive(Clone, Debug, PartialEq)]
pub struct LedgerFixings {
    /// Key of the fastener, or [`MAKERS_OWN`]; empty where none is chosen yet.
    pub fastener: String,
    /// What the maker states of its own screw.
    pub makers: MakersScrew,
    /// Length under the head.
    pub length: Length,
    /// Across the washers under head and nut, the smaller way; zero where it is not known.
    pub washer: Length,
    /// Side by side at each wall post.
    pub columns: usize,
    /// One column to the next.
    pub column_gap: Length,
    /// Rows at each wall post, one above the other.
    pub rows: usize,
    /// Bottom of the ledger to the lowest row.
    pub lowest: Length,
    /// Row to row.
    pub row_gap: Length,
    /// Key of the species of the wall's posts; empty where it is not known.
    pub wall_species: String,
    /// How deep the wall's post is behind its face.
    pub wall_depth: Length,
}

impl MakersScrew {
    /// It as a fastener: it has its diameter, and no steel of ours.
    #[must_use]
    pub fn fastener(&self) -> Fastener {
        Fastener {
            key: MAKERS_OWN.to_owned(),
            name: "maker's own screw".to_owned(),
            kind: FastenerKind::WoodScrew,
            diameter: self.diameter,
            shear_diameter: self.diameter,
            tip: Length::ZERO,
            bending_yield: Stress::ZERO,
            source: self.source.clone(),
            confidence: Confidence::Medium,
        }
    }
}

impl LedgerFixings {
    /// The fastener, where one is chosen.
    #[must_use]
    pub fn chosen(&self) -> Option<Fastener> {
        if self.is_makers() { Some(self.makers.fastener()) } else { fastener(&self.fastener).ok().cloned() }
    }

    /// A maker's own screw: its values and its hole are its maker's matter.
    #[must_use]
    pub fn is_makers(&self) -> bool {
        self.fastener == MAKERS_OWN
    }

    /// Height of a row over the ledger's bottom; rows are counted from the lowest, from 0.
    #[must_use]
    pub fn height(&self, row: usize) -> Length {
        self.lowest + self.row_gap * row as f64
    }

    /// Outer column to outer column.
    #[must_use]
    pub fn across(&self) -> Length {
        self.column_gap * self.columns.saturating_sub(1) as f64
    }
}

/// Screws driven through one part into another.
#[derive(Clone, Debug, PartialEq)]
pub struct Screws {
    /// Key of the fastener; empty where none is chosen yet.
    pub fastener: String,
    /// Length under the head.
    pub length: Length,
    /// How many at one crossing.
    pub count: usize,
}

impl Screws {
    /// The fastener, where one is chosen and there is at least one of it.
    #[must_use]
    pub fn chosen(&self) -> Option<&'static Fastener> {
        fastener(&self.fastener).ok().filter(|_| self.count > 0)
    }
}

/// Screws through the sheet into the purlins.
#[derive(Clone, Debug, PartialEq)]
pub struct SheetScrews {
    /// The screw.
    pub screw: Screws,
    /// One from the next along a purlin.
    pub spacing: Length,
    /// What the sheet carries at one screw's washer before it pulls over it, by the sheet's maker; zero where it is not known.
    pub pull_over: Force,
}

/// Pier and footing under each post.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pier {
    /// Round rather than square.
    pub is_round: bool,
    /// Across the footing.
    pub footing_width: Length,
    /// Thickness of the footing.
    pub footing_thickness: Length,
    /// Across the pier that stands on it.
    pub pier_width: Length,
    /// Underside of the footing below the ground at that post.
    pub depth: Length,
    /// How deep the base's anchor is cast into the pier, to its hook or head; zero where it is not known.
    pub anchor_depth: Length,
    /// Upright bars that tie the pier to its footing; none where zero.
    pub bars: usize,
    /// Across one of them.
    pub bar: Length,
}

/// Stiffness of a brace's end joint, from its gaps closed and its wood crushing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BraceJoint {
    /// Under a push.
    pub pushed: Spring,
    /// Under a pull, on the pegs alone.
    pub pulled: Spring,
}

/// Everything that fixes something.
#[derive(Clone, Debug, PartialEq)]
pub struct Fixings {
    /// Ledger to wall.
    pub ledger: LedgerFixings,
    /// Each rafter to the ledger.
    pub rafter_head: Tie,
    /// Each rafter to the beam.
    pub rafter_seat: Tie,
    /// Each purlin to each rafter.
    pub purlin: Screws,
    /// Sheet to purlin.
    pub sheet: SheetScrews,
    /// Across each root of each scarf, from lap to lap.
    pub scarf: Tie,
    /// Each post's foot to its pier.
    pub post_base: Tie,
    /// Pier and footing.
    pub pier: Pier,
    /// How stiff the braces' joints are.
    pub brace_joint: BraceJoint,
}

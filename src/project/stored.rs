//! The project as it stands in a file: plain numbers with the unit in every name.
//!
//! These types are the file format; the model may change without them. Lengths are inches,
//! slopes rise per run, weights pounds, prices the currency's main unit.
use serde::{Deserialize, Serialize};

use super::{
    Blocks, FixedHeights, Frame, Heights, JoineryRules, Mill, Post, Progress, Project, RafterRow, RafterRule, Roofing,
    ScarfKind, ScarfPlace, Scarfs, SectionPrice, SheetLayout, Side, Site, Soffit, TailCut, Timbers,
};
use crate::materials::{Section, Timber};
use crate::units::{Length, Money, Slope, UnitSystem, Weight};

/// Turns a model type into its stored twin and back.
///
/// Reading fails with the name of the first number that is no number of its kind.
pub trait Stored: Sized {
    /// The type in the file.
    type File: Serialize + for<'de> Deserialize<'de>;
    /// To the file.
    fn store(&self) -> Self::File;
    /// From the file.
    ///
    /// # Errors
    /// The field whose number cannot be used.
    fn read(file: Self::File) -> Result<Self, &'static str>;
}

macro_rules! number {
    ($kind:ty, $to:ident, $from:expr, $name:literal) => {
        impl Stored for $kind {
            type File = f64;
            fn store(&self) -> f64 {
                self.$to()
            }
            fn read(file: f64) -> Result<Self, &'static str> {
                $from(file).ok_or($name)
            }
        }
    };
}
number!(Length, to_inches, Length::try_inches, "a length");
number!(Weight, to_pounds, Weight::try_pounds, "a weight");
number!(Money, to_f64, Money::try_of, "a price");
number!(Slope, tan, Slope::try_ratio, "a slope");

macro_rules! plain {
    ($($kind:ty),*) => {$(
        impl Stored for $kind {
            type File = $kind;
            fn store(&self) -> $kind {
                self.clone()
            }
            fn read(file: $kind) -> Result<Self, &'static str> {
                Ok(file)
            }
        }
    )*};
}
plain!(String, bool, f64, usize, Option<usize>);

impl<T: Stored> Stored for Vec<T> {
    type File = Vec<T::File>;
    fn store(&self) -> Self::File {
        self.iter().map(Stored::store).collect()
    }
    fn read(file: Self::File) -> Result<Self, &'static str> {
        file.into_iter().map(T::read).collect()
    }
}

/// A struct of the file: for each field its name there, its model field and the model's type.
macro_rules! record {
    ($model:ident as $file:ident { $($stored:ident = $field:ident: $kind:ty),+ $(,)? }) => {
        #[derive(Serialize, Deserialize)]
        #[serde(deny_unknown_fields)]
        #[doc = concat!("`", stringify!($model), "` in the file.")]
        pub struct $file {
            $(
                #[doc = concat!("`", stringify!($field), "`.")]
                pub $stored: <$kind as Stored>::File,
            )+
        }
        impl Stored for $model {
            type File = $file;
            fn store(&self) -> $file {
                $file { $($stored: self.$field.store()),+ }
            }
            fn read(file: $file) -> Result<Self, &'static str> {
                Ok(Self { $($field: <$kind as Stored>::read(file.$stored).map_err(|_| stringify!($stored))?),+ })
            }
        }
    };
}

/// A choice of the file: a word for each variant.
macro_rules! choice {
    ($model:ident { $($variant:ident = $word:literal),+ $(,)? }) => {
        impl Stored for $model {
            type File = String;
            fn store(&self) -> String {
                match self { $(Self::$variant => $word.to_owned()),+ }
            }
            fn read(file: String) -> Result<Self, &'static str> {
                match file.as_str() { $($word => Ok(Self::$variant),)+ _ => Err(stringify!($model)) }
            }
        }
    };
}

choice!(UnitSystem { Imperial = "imperial", Metric = "metric" });
choice!(Soffit { Level = "level", Sloped = "sloped" });
choice!(Side { Left = "left", Right = "right" });
choice!(FixedHeights {
    PitchAndLedger = "pitch and ledger",
    PitchAndBeam = "pitch and beam",
    LedgerAndBeam = "ledger and beam",
});
choice!(TailCut { Plumb = "plumb", Square = "square" });
choice!(RafterRule { FromLeft = "from left", FromRight = "from right", Equal = "equal" });
choice!(Blocks { None = "none", OverBeam = "over beam" });
choice!(SheetLayout { FromLeft = "from left", FromRight = "from right", EqualRips = "equal rips" });
choice!(ScarfKind {
    Halved = "halved",
    HalvedUnderSquinted = "halved under-squinted",
    StopSplayed = "stop-splayed",
    StopSplayedUnderSquinted = "stop-splayed under-squinted",
    StopSplayedTabled = "stop-splayed tabled",
});

record!(Section as StoredSection { breadth_in = breadth: Length, depth_in = depth: Length });
record!(Timber as StoredTimber { ordered = ordered: Section, sawn = sawn: Section });
record!(Site as StoredSite {
    eave_edge_in = eave_edge: Length,
    eave_projection_in = eave_projection: Length,
    soffit = soffit: Soffit,
    upper_pitch_rise_per_run = upper_pitch: Slope,
    ground_at_wall_in = ground_at_wall: Length,
    ground_left_in = ground_left: Length,
    ground_right_in = ground_right: Length,
    first_wall_post_in = first_wall_post: Length,
    wall_post_spacing_in = wall_post_spacing: Length,
    passage_height_in = passage_height: Length,
    passage_width_in = passage_width: Length,
    service_moisture_percent = service_moisture_percent: f64,
});
record!(Heights as StoredHeights {
    fixed = fixed: FixedHeights,
    pitch_rise_per_run = pitch: Slope,
    ledger_seat_in = ledger_seat: Length,
    beam_seat_in = beam_seat: Length,
});
record!(Post as StoredPost {
    x_in = x: Length,
    pier_top_in = pier_top: Length,
    pier_measured = pier_measured: bool,
    brace_left = brace_left: bool,
    brace_right = brace_right: bool,
});
record!(RafterRow as StoredRafterRow { spacing_in = spacing: Length, inset_in = inset: Length, rule = rule: RafterRule });
record!(ScarfPlace as StoredScarfPlace { centre_in = centre: Length, lower = lower: Side });
record!(Scarfs as StoredScarfs {
    kind = kind: ScarfKind,
    lap_in = lap: Length,
    n_pieces = n_pieces: Option<usize>,
    by_hand = by_hand: Vec<ScarfPlace>,
});
record!(Timbers as StoredTimbers {
    post = post: Timber,
    beam = beam: Timber,
    brace = brace: Timber,
    rafter = rafter: Timber,
    ledger = ledger: Timber,
    purlin = purlin: Timber,
    block = block: Timber,
});
record!(Frame as StoredFrame {
    reach_in = reach: Length,
    beam_length_in = beam_length: Length,
    heights = heights: Heights,
    ledger_packing_in = ledger_packing: Length,
    wall_gap_in = wall_gap: Length,
    tail_in = tail: Length,
    tail_cut = tail_cut: TailCut,
    ledger_seat_length_in = ledger_seat_length: Length,
    beam_seat_length_in = beam_seat_length: Length,
    posts = posts: Vec<Post>,
    stand_off_in = stand_off: Length,
    brace_along_in = brace_along: Length,
    brace_down_in = brace_down: Length,
    rafters = rafters: RafterRow,
    scarfs = scarfs: Scarfs,
    ledger_lap_in = ledger_lap: Length,
    blocks = blocks: Blocks,
    timbers = timbers: Timbers,
    species = species: String,
});
record!(JoineryRules as StoredJoineryRules {
    tenon_thickness_in = tenon_thickness: Length,
    tenon_offset_in = tenon_offset: Length,
    post_tenon_in = post_tenon: Length,
    brace_tenon_in = brace_tenon: Length,
    blind_clearance_in = blind_clearance: Length,
    housing_in = housing: Length,
    pocket_clearance_in = pocket_clearance: Length,
    end_shoulder_in = end_shoulder: Length,
    peg_in = peg: Length,
    peg_from_shoulder_in = peg_from_shoulder: Length,
    two_pegs_from_in = two_pegs_from: Length,
    drawbore_in = drawbore: Length,
    scarf_abutment_share = scarf_abutment_share: f64,
    scarf_squint_in = scarf_squint: Length,
    scarf_table_in = scarf_table: Length,
    scarf_wedge_in = scarf_wedge: Length,
    scarf_clear_in = scarf_clear: Length,
    wood_over_pocket_in = wood_over_pocket: Length,
    least_web_in = least_web: Length,
    chamfer_in = chamfer: Length,
    chamfer_stop_in = chamfer_stop: Length,
    shrink_clearance_in = shrink_clearance: Length,
});
record!(SectionPrice as StoredSectionPrice { section = section: Section, per_board_foot = per_board_foot: Money });
record!(Mill as StoredMill {
    lengths_in = lengths: Vec<Length>,
    trim_each_end_in = trim_each_end: Length,
    kerf_in = kerf: Length,
    per_board_foot = per_board_foot: Money,
    section_prices = section_prices: Vec<SectionPrice>,
    heaviest_pick_lb = heaviest_pick: Weight,
});
record!(Roofing as StoredRoofing {
    cover_in = cover: Length,
    rib_in = rib: Length,
    longest_sheet_in = longest_sheet: Length,
    eave_overhang_in = eave_overhang: Length,
    top_gap_in = top_gap: Length,
    rake_in = rake: Length,
    purlin_spacing_in = purlin_spacing: Length,
    first_purlin_in = first_purlin: Length,
    last_purlin_in = last_purlin: Length,
    layout = layout: SheetLayout,
});
record!(Project as StoredProject {
    name = name: String,
    note = note: String,
    units = units: UnitSystem,
    currency = currency: String,
    site = site: Site,
    frame = frame: Frame,
    joinery = joinery: JoineryRules,
    mill = mill: Mill,
    roofing = roofing: Roofing,
    progress = progress: Progress,
});

/// `Progress` in the file: lists under names.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StoredProgress {
    /// Marks made, by stick.
    pub marked: std::collections::BTreeMap<String, std::collections::BTreeSet<String>>,
    /// Sticks cut, with their layout.
    pub cut: std::collections::BTreeMap<String, String>,
    /// Sticks received.
    pub received: std::collections::BTreeSet<String>,
}

impl Stored for Progress {
    type File = StoredProgress;
    fn store(&self) -> StoredProgress {
        StoredProgress { marked: self.marked.clone(), cut: self.cut.clone(), received: self.received.clone() }
    }
    fn read(file: StoredProgress) -> Result<Self, &'static str> {
        Ok(Self { marked: file.marked, cut: file.cut, received: file.received })
    }
}

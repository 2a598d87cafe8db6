//! The project as it stands in a file: plain numbers with the unit in every name.
//!
//! The names below are the file format; the model may change without them. Lengths are inches,
//! slopes rise per run, weights pounds, prices the currency's main unit.
use std::collections::{BTreeMap, BTreeSet};

use serde_json::{Map, Value};

use super::{
    Blocks, FixedHeights, Frame, Heights, JoineryRules, Mill, Post, Progress, Project, RafterRow, RafterRule, Roofing,
    ScarfKind, ScarfPlace, Scarfs, SectionPrice, SheetLayout, Side, Site, Soffit, TailCut, Timbers,
};
use crate::materials::{Section, Timber};
use crate::units::{Length, Money, Slope, UnitSystem, Weight};

/// What stops a file from being read: the field and what is wrong with it.
#[derive(Debug)]
pub struct Fault {
    path: String,
    says: &'static str,
}

impl Fault {
    const fn new(says: &'static str) -> Self {
        Self { path: String::new(), says }
    }

    /// No value of its kind.
    const fn value() -> Self {
        Self::new("holds a value that cannot be")
    }

    fn within(mut self, name: &str) -> Self {
        self.path = if self.path.is_empty() { name.to_owned() } else { format!("{name}.{}", self.path) };
        self
    }
}

impl std::fmt::Display for Fault {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let place = if self.path.is_empty() { "the project" } else { &self.path };
        write!(f, "{place} {}", self.says)
    }
}

/// Turns a model type into what stands in the file and back.
pub trait Stored: Sized {
    /// To the file.
    fn store(&self) -> Value;
    /// From the file.
    ///
    /// # Errors
    /// The field that is missing, unknown or cannot be used.
    fn read(value: Value) -> Result<Self, Fault>;
    /// What a field that is not there holds; nothing where it must be there.
    #[must_use]
    fn absent() -> Option<Self> {
        None
    }
}

macro_rules! plain {
    ($($kind:ty, $value:ident => $read:expr, $this:ident => $store:expr;)+) => {$(
        impl Stored for $kind {
            fn store(&self) -> Value {
                let $this = self;
                Value::from($store)
            }
            fn read($value: Value) -> Result<Self, Fault> {
                $read.ok_or(Fault::value())
            }
        }
    )+};
}
plain! {
    f64, value => value.as_f64(), number => *number;
    bool, value => value.as_bool(), is => *is;
    usize, value => whole(&value), count => *count;
    Length, value => value.as_f64().and_then(Length::try_inches), length => length.to_inches();
    Weight, value => value.as_f64().and_then(Weight::try_pounds), weight => weight.to_pounds();
    Money, value => value.as_f64().and_then(Money::try_of), price => price.to_f64();
    Slope, value => value.as_f64().and_then(Slope::try_ratio), slope => slope.tan();
}

fn whole(value: &Value) -> Option<usize> {
    value.as_u64().and_then(|count| usize::try_from(count).ok())
}

impl Stored for String {
    fn store(&self) -> Value {
        Value::String(self.clone())
    }
    fn read(value: Value) -> Result<Self, Fault> {
        if let Value::String(text) = value { Ok(text) } else { Err(Fault::value()) }
    }
}

impl Stored for Option<usize> {
    fn store(&self) -> Value {
        self.map_or(Value::Null, Value::from)
    }
    fn read(value: Value) -> Result<Self, Fault> {
        if value.is_null() { Ok(None) } else { usize::read(value).map(Some) }
    }
    fn absent() -> Option<Self> {
        Some(None)
    }
}

impl<T: Stored> Stored for Vec<T> {
    fn store(&self) -> Value {
        Value::Array(self.iter().map(Stored::store).collect())
    }
    fn read(value: Value) -> Result<Self, Fault> {
        let mut list = Self::new();
        for (index, item) in items(value)?.into_iter().enumerate() {
            list.push(T::read(item).map_err(|fault| fault.within(&index.to_string()))?);
        }
        Ok(list)
    }
}

fn items(value: Value) -> Result<Vec<Value>, Fault> {
    if let Value::Array(items) = value { Ok(items) } else { Err(Fault::value()) }
}

impl Stored for BTreeSet<String> {
    fn store(&self) -> Value {
        Value::Array(self.iter().map(Stored::store).collect())
    }
    fn read(value: Value) -> Result<Self, Fault> {
        let mut set = Self::new();
        for item in items(value)? {
            set.insert(String::read(item)?);
        }
        Ok(set)
    }
}

impl<T: Stored> Stored for BTreeMap<String, T> {
    fn store(&self) -> Value {
        let mut fields = Map::new();
        for (name, item) in self {
            fields.insert(name.clone(), item.store());
        }
        Value::Object(fields)
    }
    fn read(value: Value) -> Result<Self, Fault> {
        let mut map = Self::new();
        for (name, item) in Fields::of(value)?.0 {
            let item = T::read(item).map_err(|fault| fault.within(&name))?;
            map.insert(name, item);
        }
        Ok(map)
    }
}

/// The fields of one object of the file, taken out one after the other.
struct Fields(Map<String, Value>);

impl Fields {
    fn of(value: Value) -> Result<Self, Fault> {
        if let Value::Object(fields) = value { Ok(Self(fields)) } else { Err(Fault::value()) }
    }

    fn put(&mut self, name: &str, value: Value) {
        self.0.insert(name.to_owned(), value);
    }

    fn take<T: Stored>(&mut self, name: &str) -> Result<T, Fault> {
        let read = match self.0.remove(name) {
            Some(value) => T::read(value),
            None => T::absent().ok_or(Fault::new("is missing")),
        };
        read.map_err(|fault| fault.within(name))
    }

    /// Refuses what nobody took: a field this version does not know.
    fn end(self) -> Result<(), Fault> {
        self.0.keys().next().map_or(Ok(()), |name| Err(Fault::new("is unknown").within(name)))
    }
}

/// A struct of the file: for each field its name there and its model field.
macro_rules! record {
    ($model:ident { $($stored:ident = $field:ident),+ $(,)? }) => {
        impl Stored for $model {
            fn store(&self) -> Value {
                let mut fields = Fields(Map::new());
                $(fields.put(stringify!($stored), self.$field.store());)+
                Value::Object(fields.0)
            }
            fn read(value: Value) -> Result<Self, Fault> {
                let mut fields = Fields::of(value)?;
                let model = Self { $($field: fields.take(stringify!($stored))?),+ };
                fields.end()?;
                Ok(model)
            }
        }
    };
}

/// A choice of the file: a word for each variant.
macro_rules! choice {
    ($model:ident { $($variant:ident = $word:literal),+ $(,)? }) => {
        impl Stored for $model {
            fn store(&self) -> Value {
                Value::from(match self { $(Self::$variant => $word),+ })
            }
            fn read(value: Value) -> Result<Self, Fault> {
                match value.as_str() { $(Some($word) => Ok(Self::$variant),)+ _ => Err(Fault::value()) }
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

record!(Section { breadth_in = breadth, depth_in = depth });
record!(Timber { ordered = ordered, sawn = sawn });
record!(Site {
    eave_edge_in = eave_edge,
    eave_projection_in = eave_projection,
    soffit = soffit,
    upper_pitch_rise_per_run = upper_pitch,
    ground_at_wall_in = ground_at_wall,
    ground_left_in = ground_left,
    ground_right_in = ground_right,
    first_wall_post_in = first_wall_post,
    wall_post_spacing_in = wall_post_spacing,
    passage_height_in = passage_height,
    passage_width_in = passage_width,
    service_moisture_percent = service_moisture_percent,
});
record!(Heights {
    fixed = fixed,
    pitch_rise_per_run = pitch,
    ledger_seat_in = ledger_seat,
    beam_seat_in = beam_seat,
});
record!(Post {
    x_in = x,
    pier_top_in = pier_top,
    pier_measured = pier_measured,
    brace_left = brace_left,
    brace_right = brace_right,
});
record!(RafterRow { spacing_in = spacing, inset_in = inset, rule = rule });
record!(ScarfPlace { centre_in = centre, lower = lower });
record!(Scarfs {
    kind = kind,
    lap_in = lap,
    n_pieces = n_pieces,
    by_hand = by_hand,
});
record!(Timbers {
    post = post,
    beam = beam,
    brace = brace,
    rafter = rafter,
    ledger = ledger,
    purlin = purlin,
    block = block,
});
record!(Frame {
    reach_in = reach,
    beam_length_in = beam_length,
    heights = heights,
    ledger_packing_in = ledger_packing,
    wall_gap_in = wall_gap,
    tail_in = tail,
    tail_cut = tail_cut,
    ledger_seat_length_in = ledger_seat_length,
    beam_seat_length_in = beam_seat_length,
    posts = posts,
    stand_off_in = stand_off,
    brace_along_in = brace_along,
    brace_down_in = brace_down,
    rafters = rafters,
    scarfs = scarfs,
    ledger_lap_in = ledger_lap,
    blocks = blocks,
    timbers = timbers,
    species = species,
});
record!(JoineryRules {
    tenon_thickness_in = tenon_thickness,
    tenon_offset_in = tenon_offset,
    post_tenon_in = post_tenon,
    brace_tenon_in = brace_tenon,
    blind_clearance_in = blind_clearance,
    housing_in = housing,
    pocket_clearance_in = pocket_clearance,
    end_shoulder_in = end_shoulder,
    peg_in = peg,
    peg_from_shoulder_in = peg_from_shoulder,
    two_pegs_from_in = two_pegs_from,
    drawbore_in = drawbore,
    scarf_abutment_share = scarf_abutment_share,
    scarf_squint_in = scarf_squint,
    scarf_table_in = scarf_table,
    scarf_wedge_in = scarf_wedge,
    scarf_clear_in = scarf_clear,
    wood_over_pocket_in = wood_over_pocket,
    least_web_in = least_web,
    chamfer_in = chamfer,
    chamfer_stop_in = chamfer_stop,
    shrink_clearance_in = shrink_clearance,
});
record!(SectionPrice { section = section, per_board_foot = per_board_foot });
record!(Mill {
    lengths_in = lengths,
    trim_each_end_in = trim_each_end,
    kerf_in = kerf,
    per_board_foot = per_board_foot,
    section_prices = section_prices,
    heaviest_pick_lb = heaviest_pick,
});
record!(Roofing {
    cover_in = cover,
    rib_in = rib,
    longest_sheet_in = longest_sheet,
    eave_overhang_in = eave_overhang,
    top_gap_in = top_gap,
    rake_in = rake,
    purlin_spacing_in = purlin_spacing,
    first_purlin_in = first_purlin,
    last_purlin_in = last_purlin,
    layout = layout,
});
record!(Project {
    name = name,
    note = note,
    units = units,
    currency = currency,
    site = site,
    frame = frame,
    joinery = joinery,
    mill = mill,
    roofing = roofing,
    progress = progress,
});
record!(Progress { marked = marked, cut = cut, received = received });

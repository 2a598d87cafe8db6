//! The records of wall, frame, mill and roof.
use serde_json::Value;

use super::{Fault, Fields, Stored, choice, record};
use crate::materials::{Face, Section, Timber};
use crate::project::{
    Blocks, FixedHeights, Frame, Heights, JoineryRules, Knot, MeasuredSize, Metal, Post, Progress, Project, RafterRow,
    RafterRule, Roofing, ScarfKind, ScarfPlace, Scarfs, SheetLayout, Side, Site, Soffit, StockRule, TailCut, Timbers,
};
use crate::units::UnitSystem;

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
choice!(Metal {
    Ribbed29 = "ribbed 29 gauge",
    Ribbed26 = "ribbed 26 gauge",
    StandingSeam24 = "standing seam 24 gauge",
});
choice!(ScarfKind {
    Halved = "halved",
    HalvedUnderSquinted = "halved under-squinted",
    Bladed = "bladed",
    StopSplayed = "stop-splayed",
    StopSplayedUnderSquinted = "stop-splayed under-squinted",
    StopSplayedTabled = "stop-splayed tabled",
});

choice!(StockRule { InnerSize = "inner size", TrueStock = "true stock" });
choice!(Face {
    Outer = "outer",
    Wall = "wall",
    Left = "left",
    Right = "right",
    Top = "top",
    Underside = "underside",
    LongEdge = "long edge",
    ShortEdge = "short edge",
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
    brace_rise_in = brace_rise,
    rafters = rafters,
    scarfs = scarfs,
    ledger_lap_in = ledger_lap,
    ledger_splices_in = ledger_splices,
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
    stock = stock,
    housing_in = housing,
    pocket_clearance_in = pocket_clearance,
    end_shoulder_in = end_shoulder,
    peg_in = peg,
    peg_from_shoulder_in = peg_from_shoulder,
    two_pegs_from_in = two_pegs_from,
    drawbore_in = drawbore,
    scarf_abutment_share = scarf_abutment_share,
    scarf_squint_in = scarf_squint,
    scarf_blade_in = scarf_blade,
    scarf_table_in = scarf_table,
    scarf_wedge_in = scarf_wedge,
    scarf_clear_in = scarf_clear,
    wood_over_pocket_in = wood_over_pocket,
    least_web_in = least_web,
    chamfer_in = chamfer,
    chamfer_stop_in = chamfer_stop,
    shrink_clearance_in = shrink_clearance,
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
    metal = metal,
    eave_clear = eave_clear,
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
    place = place,
    above = above,
    ground = ground,
    wood = wood,
    fixings = fixings,
    exceptions = exceptions,
    buying = buying,
    yard = yard,
    truck = truck,
    crew = crew,
    progress = progress,
});
record!(Knot { face = face, from_zero_in = from_zero, across_in = across, size_in = size });
record!(MeasuredSize { from_zero_in = from_zero, breadth_in = breadth, depth_in = depth });
record!(Progress {
    marked = marked,
    cut = cut,
    knots = knots,
    crowns = crowns,
    sizes = sizes,
    dry_fits_in = dry_fits,
    pieces = pieces,
});

//! The records of buying, hauling and what came off the truck.
use serde_json::Value;

use super::{Fault, Fields, Stored, choice, record};
use crate::project::{
    Buying, Crew, Defect, Finish, Heart, HeartWish, JointException, LengthLimit, LongPrice, Lot, Mill, OrderAim, Piece,
    PieceState, Prices, Role, RoleWords, SectionPrice, Spares, Truck,
};

choice!(OrderAim {
    LeastCost = "least cost",
    FewestSticks = "fewest sticks",
    LightestSticks = "lightest sticks",
});
choice!(Heart { Either = "either", Boxed = "boxed", Free = "free" });
choice!(Role {
    Post = "post",
    Beam = "beam",
    Brace = "brace",
    Rafter = "rafter",
    Ledger = "ledger",
    Purlin = "purlin",
    Block = "block",
});
choice!(PieceState { Kept = "kept", SentBack = "sent back" });
choice!(Defect {
    Wane = "wane",
    SpiralGrain = "spiral grain",
    Twist = "twist",
    Shake = "shake",
    EndSplit = "end split",
    HeartNearFace = "heart near face",
    KnotsAtMiddle = "knots at middle",
    Decay = "decay",
});

record!(SectionPrice { section = section, per_board_foot = per_board_foot });
record!(LongPrice { over_in = over, more_per_board_foot = more });
record!(LengthLimit { section = section, length_in = length, count = count });
record!(Mill {
    lengths_in = lengths,
    trim_each_end_in = trim_each_end,
    kerf_in = kerf,
    per_board_foot = per_board_foot,
    section_prices = section_prices,
    long_prices = long_prices,
    free_of_heart_more_share = free_of_heart_more,
    limits = limits,
    heaviest_pick_lb = heaviest_pick,
});
record!(HeartWish { role = role, heart = heart });
record!(RoleWords { role = role, words = words });
record!(Spares { each_section = each_section, one_in = one_in });
record!(Prices {
    sheet_per_100_feet = sheet_100_feet,
    trim_per_100_feet = trim_100_feet,
    roof_screw = roof_screw,
    purlin_screw = purlin_screw,
    ledger_fixing = ledger_fixing,
    tie = tie,
    peg = peg,
    post_base = post_base,
    concrete_bag = concrete_bag,
    concrete_per_cubic_yard = concrete_yard,
    pier_bar = pier_bar,
    finish_per_gallon = finish_gallon,
    load = load,
});
record!(Finish { coats = coats, cover_ft2_per_gallon = cover_ft2_per_gallon });
record!(Buying {
    aim = aim,
    spares = spares,
    hearts = hearts,
    words = words,
    second_delivery = second_delivery,
    prices = prices,
    finish = finish,
});
record!(Lot { section = section, length_in = length, count = count, heart = heart, remark = remark });
record!(Piece {
    section = section,
    length_in = length,
    state = state,
    near = near,
    far = far,
    real_length_in = real_length,
    crown_in = crown,
    moisture_percent = moisture_percent,
    heart = heart,
    defects = defects,
    place = place,
    remark = remark,
});
record!(Truck {
    is_trailer = is_trailer,
    payload_lb = payload,
    own_weight_lb = own_weight,
    bed_in = bed,
    bed_width_in = bed_width,
    overhang_in = overhang,
    coupling_to_bed_in = coupling_to_bed,
    bed_to_axle_in = bed_to_axle,
});
record!(Crew { n_people = n_people, each_lifts_lb = each_lifts });
record!(JointException {
    tenon_thickness_in = tenon_thickness,
    tenon_offset_in = tenon_offset,
    tenon_length_in = tenon_length,
    housing_in = housing,
    peg_in = peg,
    peg_from_shoulder_in = peg_from_shoulder,
    drawbore_in = drawbore,
    scarf_kind = scarf_kind,
    reason = reason,
});

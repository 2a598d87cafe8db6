//! The records of the place, the wood and what fixes the parts.
use serde_json::Value;

use super::{Fault, Fields, Stored, choice, record};
use crate::loads::{
    DesignCategory, Edition, Place, RiskCategory, Seismic, SnowExposure, Terrain, Thermal, WindExposure,
};
use crate::members::{Grade, Property};
use crate::project::{
    Above, BoreWay, Bores, BraceJoint, Fixings, Ground, LedgerFixings, MakersScrew, OwnValue, Pier, Screws,
    SheetScrews, Tie, Used, Wood,
};

choice!(Edition { Asce7_16 = "ASCE 7-16", Asce7_22 = "ASCE 7-22" });
choice!(RiskCategory { I = "I", II = "II", III = "III", IV = "IV" });
choice!(Terrain {
    B = "B",
    C = "C",
    D = "D",
    AboveTreeLine = "above tree line",
    AlaskaTreeless = "treeless Alaska",
});
choice!(SnowExposure { Full = "full", Partial = "partial", Sheltered = "sheltered" });
choice!(WindExposure { B = "B", C = "C", D = "D" });
choice!(DesignCategory { A = "A", B = "B", C = "C", D = "D", E = "E", F = "F" });
choice!(Grade { SelectStructural = "Select Structural", No1 = "No.1", No2 = "No.2" });
choice!(Property {
    Bending = "F_b",
    Tension = "F_t",
    Shear = "F_v",
    BearingAcross = "F_c_perp",
    Compression = "F_c",
    Stiffness = "E",
    LeastStiffness = "E_min",
});
choice!(Used {
    Post = "post",
    Beam = "beam",
    Brace = "brace",
    Rafter = "rafter",
    Ledger = "ledger",
    Purlin = "purlin",
});

/// A word for each kind of building, or the thermal factor itself.
impl Stored for Thermal {
    fn store(&self) -> Value {
        if let Self::Stated(factor) = self {
            return factor.store();
        }
        THERMAL.iter().find(|(_, one)| one == self).map_or(Value::Null, |(word, _)| Value::from(*word))
    }
    fn fill(&mut self, value: Value) -> Result<(), Fault> {
        *self = match value.as_str().and_then(|word| THERMAL.iter().find(|(known, _)| *known == word)) {
            Some((_, known)) => *known,
            None => Self::Stated(f64::read(value)?),
        };
        Ok(())
    }
    fn blank() -> Self {
        Self::OpenAir
    }
}

const THERMAL: [(&str, Thermal); 5] = [
    ("heated", Thermal::Heated),
    ("just above freezing", Thermal::JustAboveFreezing),
    ("open air", Thermal::OpenAir),
    ("below freezing", Thermal::BelowFreezing),
    ("heated greenhouse", Thermal::HeatedGreenhouse),
];

record!(Seismic { s_ds = s_ds, category = category, importance = importance });
record!(Place {
    edition = edition,
    risk = risk,
    ground_snow_psf = ground_snow,
    terrain = terrain,
    snow_exposure = snow_exposure,
    winter_wind_share = winter_wind,
    wind_speed_mph = wind_speed,
    wind_exposure = wind_exposure,
    ground_elevation_in = ground_elevation,
    topography_factor = topography,
    member_force_coefficient = member_force_coefficient,
    seismic = seismic,
});
record!(Above {
    eave_to_ridge_in = eave_to_ridge,
    whole_length_in = whole_length,
    slippery = slippery,
    snow_guards = snow_guards,
    sheds_here = sheds_here,
    exposure = exposure,
    thermal = thermal,
});
record!(Ground { soil = soil, frost_depth_in = frost_depth, is_frost_prone = is_frost_prone });
record!(OwnValue { used = used, property = property, value_psi = value, source = source });
record!(Wood {
    timber_grade = timber_grade,
    lumber_grade = lumber_grade,
    is_dry = is_dry,
    own = own,
});
choice!(BoreWay { AlongBeam = "along the beam", Outward = "outward" });
record!(Bores { diameter_in = diameter, first_in = first, apart_in = apart, way = way });
record!(Tie { count = count, pull_lb = pull, sideways_lb = sideways, source = source, bores = bores });
record!(MakersScrew {
    diameter_in = diameter,
    sideways_lb = sideways,
    pull_lb = pull,
    source = source,
});
record!(LedgerFixings {
    fastener = fastener,
    makers = makers,
    length_in = length,
    washer_in = washer,
    columns = columns,
    column_gap_in = column_gap,
    rows = rows,
    lowest_in = lowest,
    row_gap_in = row_gap,
    wall_species = wall_species,
    wall_depth_in = wall_depth,
});
record!(Screws { fastener = fastener, length_in = length, count = count });
record!(SheetScrews { screw = screw, spacing_in = spacing, pull_over_lb = pull_over });
record!(Pier {
    is_round = is_round,
    footing_width_in = footing_width,
    footing_thickness_in = footing_thickness,
    pier_width_in = pier_width,
    depth_in = depth,
    anchor_depth_in = anchor_depth,
    bars = bars,
    bar_in = bar,
});
record!(BraceJoint { pushed_lb_per_in = pushed, pulled_lb_per_in = pulled });
record!(Fixings {
    ledger = ledger,
    rafter_head = rafter_head,
    rafter_seat = rafter_seat,
    purlin = purlin,
    sheet = sheet,
    scarf = scarf,
    post_base = post_base,
    pier = pier,
    brace_joint = brace_joint,
});

//! What a calculation is worked from: the place, the frame, the fixings, sizes and design values.
use super::calculation::{begin_table, end_table};
use super::check_sheet::source;
use super::markup::Markup;
use crate::checks::Woods;
use crate::design::Shape;
use crate::fastening::fastener;
use crate::frame::Spring;
use crate::loads::{Duration, Edition, Thermal};
use crate::materials::species;
use crate::members::Property;
use crate::project::{Project, Tie, Used};
use crate::units::{Force, Length, Stiffness, show_area_load, show_force, show_slope, show_stiffness, show_stress};
use crate::wording::length;

pub(super) fn inputs(out: &mut Markup, project: &Project, shape: &Shape) {
    out.leaf("h2", "What it is worked from");
    begin_table(out, &[]);
    place(out, project);
    frame(out, project, shape);
    fixings(out, project);
    end_table(out);
}

fn open() -> String {
    "not known".to_owned()
}

fn yes(is_so: bool) -> &'static str {
    if is_so { "yes" } else { "no" }
}

fn place(out: &mut Markup, project: &Project) {
    let (place, above, units) = (&project.place, &project.above, project.units);
    let snow = place.ground_snow.map_or_else(open, |load| show_area_load(load, units).to_string());
    let wind = place.wind_speed.map_or_else(open, |speed| format!("{:.0} mi/h, 3-second gust", speed.to_mph()));
    out.row(&["load standard", place.edition.name()]);
    out.row(&["risk category", place.risk.words()]);
    out.row(&["ground snow, from the local authority", &snow]);
    out.row(&["basic wind speed, from the local authority", &wind]);
    out.row(&["exposure to wind", place.wind_exposure.words()]);
    out.row(&["ground around, for snow", place.terrain.words()]);
    out.row(&["exposure of this roof to wind, for snow", place.snow_exposure.words()]);
    out.row(&["topographic factor K_zt", &place.topography.to_string()]);
    out.row(&["height of the ground above the sea", &length(place.ground_elevation, units)]);
    let number = |value: Option<f64>| value.map_or_else(open, |value| value.to_string());
    out.row(&["force coefficient C_f of single sticks", &number(place.member_force_coefficient)]);
    if place.edition == Edition::Asce7_22 {
        out.row(&["winter wind parameter W2", &number(place.winter_wind)]);
    }
    out.row(&["eave above, over the wall\u{2019}s foot", &length(project.site.eave_edge, units)]);
    let ridge = above.eave_to_ridge.map_or_else(open, |run| length(run, units));
    out.row(&["roof above, eave to ridge", &ridge]);
    out.row(&["roof above, slope", &show_slope(project.site.upper_pitch, units).to_string()]);
    let whole = above.whole_length.map_or_else(open, |length_u| length(length_u, units));
    out.row(&["roof above, its whole length square to the wall", &whole]);
    out.row(&["roof above is slippery", yes(above.slippery)]);
    out.row(&["snow guards on the roof above", yes(above.snow_guards)]);
    let warmth = match above.thermal {
        Thermal::Stated(factor) => format!("C_t = {factor}, as stated"),
        known => known.words().to_owned(),
    };
    out.row(&["under the roof above", &warmth]);
    out.row(&["roof above sheds onto this one", yes(above.sheds_here)]);
    let soil = crate::fastening::soil(&project.ground.soil).map_or_else(|_| open(), |soil| soil.name.clone());
    out.row(&["soil", &soil]);
    out.row(&["frost depth", &project.ground.frost_depth.map_or_else(open, |depth| length(depth, units))]);
    out.row(&["frost-prone soil", yes(project.ground.is_frost_prone)]);
    if let Some(seismic) = &place.seismic {
        let category = seismic.category.words();
        let says = format!("S_DS {}, design category {category}, importance {}", seismic.s_ds, seismic.importance);
        out.row(&["earthquake", &says]);
    }
}

fn frame(out: &mut Markup, project: &Project, shape: &Shape) {
    let (frame, units) = (&project.frame, project.units);
    let say = |value: Length| length(value, units);
    out.row(&["pitch", &show_slope(shape.line.pitch, units).to_string()]);
    out.row(&["wall to outer face of the beam", &say(frame.reach)]);
    out.row(&[
        "top of ledger, top of beam",
        &format!("{}, {}", say(shape.line.ledger_seat), say(shape.line.beam_seat)),
    ]);
    let mut centres: Vec<String> = Vec::new();
    let mut heights: Vec<String> = Vec::new();
    for post in &shape.posts {
        centres.push(say(post.middle()));
        heights.push(say(post.shoulder - post.foot));
    }
    out.row(&["beam, from end to end", &say(frame.beam_length)]);
    out.row(&["post centres, from the beam\u{2019}s left end", &centres.join(", ")]);
    out.row(&["posts, foot to shoulder", &heights.join(", ")]);
    let mut scarfs: Vec<String> = Vec::new();
    for scarf in &shape.beam.scarfs {
        scarfs.push(format!("{}, {}", say(scarf.place.centre), scarf.kind.name()));
    }
    out.row(&[
        "braces, along the beam and down the post",
        &format!("{}, {}", say(frame.brace_along), say(frame.brace_down)),
    ]);
    out.row(&["scarfs", &if scarfs.is_empty() { "none".to_owned() } else { scarfs.join("; ") }]);
    let spacing = format!("{} rafters, {} or closer", shape.rafters.len(), say(frame.rafters.spacing));
    out.row(&["rafters", &spacing]);
    out.row(&["rafter tail past the beam", &say(frame.tail)]);
    let purlins = format!("{} rows, {} or closer", shape.purlins.len(), say(project.roofing.purlin_spacing));
    out.row(&["purlins", &purlins]);
}

fn fixings(out: &mut Markup, project: &Project) {
    let (fixings, units) = (&project.fixings, project.units);
    let say = |value: Length| length(value, units);
    let named = |key: &str| fastener(key).map_or_else(|_| open(), |found| found.name.clone());
    let ledger = &fixings.ledger;
    let own = if ledger.is_makers() {
        format!("maker\u{2019}s own, {}", ledger.makers.source)
    } else {
        named(&ledger.fastener)
    };
    let at_post = ledger.columns * ledger.rows;
    let spacing = say(project.site.wall_post_spacing);
    let wood = species(&ledger.wall_species).map_or_else(open, |kind| kind.name.clone());
    out.row(&["posts of the wall", &format!("{spacing} apart, {wood}, {} deep", say(ledger.wall_depth))]);
    let joint = &fixings.brace_joint;
    let stiff =
        |spring: Spring| show_stiffness(Stiffness::pounds_per_inch(spring.to_pounds_per_inch()), units).to_string();
    let stiff = format!("{} pushed, {} pulled, a placeholder", stiff(joint.pushed), stiff(joint.pulled));
    out.row(&["stiffness of a brace\u{2019}s joint", &stiff]);
    let rules = &project.joinery;
    let tenon = format!(
        "{} thick, {} long on the posts, {} on the braces, pegs of {}, {} from the shoulder, where a joint has nothing of its own",
        say(rules.tenon_thickness),
        say(rules.post_tenon),
        say(rules.brace_tenon),
        say(rules.peg),
        say(rules.peg_from_shoulder)
    );
    out.row(&["tenons", &tenon]);
    out.row(&["ledger to the wall", &format!("{own}, {}, {at_post} at each post of the wall", say(ledger.length))]);
    let tie = |tie: &Tie| {
        if tie.count == 0 {
            return "none".to_owned();
        }
        let force = |force: Force| show_force(force, units).to_string();
        format!("{} of {} pull, {} sideways: {}", tie.count, force(tie.pull), force(tie.sideways), tie.source)
    };
    out.row(&["tie of a rafter\u{2019}s head", &tie(&fixings.rafter_head)]);
    out.row(&["tie of a rafter to the beam", &tie(&fixings.rafter_seat)]);
    out.row(&["tie of a scarf", &tie(&fixings.scarf)]);
    out.row(&["anchor of a post", &tie(&fixings.post_base)]);
    let purlin = &fixings.purlin;
    out.row(&["purlin to rafter", &format!("{} {}, {}", purlin.count, named(&purlin.fastener), say(purlin.length))]);
    let sheet = &fixings.sheet;
    out.row(&["sheet to purlin", &format!("{}, {} apart", named(&sheet.screw.fastener), say(sheet.spacing))]);
    let pier = &fixings.pier;
    let wide = if pier.is_round { "across, round" } else { "square" };
    let says = format!(
        "footing {} {wide}, {} thick, bottom {} below the ground, pier {}",
        say(pier.footing_width),
        say(pier.footing_thickness),
        say(pier.depth),
        say(pier.pier_width)
    );
    out.row(&["footings", &says]);
    let anchor = if pier.anchor_depth > Length::ZERO { say(pier.anchor_depth) } else { "not known".to_owned() };
    out.row(&["anchors cast in", &anchor]);
    let bars = if pier.bars == 0 { "none".to_owned() } else { format!("{} of {}", pier.bars, say(pier.bar)) };
    out.row(&["bars from pier to footing", &bars]);
}

/// The sticks by the name of their kind.
pub(super) const STICKS: [(Used, &str); 6] = [
    (Used::Post, "posts"),
    (Used::Beam, "beam"),
    (Used::Brace, "braces"),
    (Used::Rafter, "rafters"),
    (Used::Ledger, "ledger"),
    (Used::Purlin, "purlins"),
];

pub(super) fn design_values(out: &mut Markup, project: &Project) {
    let units = project.units;
    let kind = species(&project.frame.species).map_or_else(open, |kind| kind.name.clone());
    out.leaf("h2", "Sizes and design values").leaf("p", &format!("Wood: {kind}. Values before any factor."));
    let symbols = Property::ALL.map(Property::symbol);
    let heads: Vec<&str> = ["sticks", "size"].into_iter().chain(symbols).chain(["taken as", "source"]).collect();
    begin_table(out, &heads);
    let woods = Woods::new(project);
    for (used, name) in STICKS {
        let sawn = woods.timber(used).sawn;
        let size = format!("{} \u{d7} {}", length(sawn.breadth, units), length(sawn.depth, units));
        match woods.member(used, Duration::TwoMonths) {
            Err(why) => {
                out.row(&[name, &size, &why.to_string()]);
            }
            Ok(member) => {
                let values = &member.values;
                let mut cells = vec![name.to_owned(), size];
                let mut sources: Vec<String> = Vec::new();
                for property in Property::ALL {
                    cells.push(show_stress(values.get(property), units).to_string());
                    let source = source(&values.citation_of(property));
                    if !sources.contains(&source) {
                        sources.push(source);
                    }
                }
                let service = if member.conditions.wet_service { ", wet in use" } else { ", dry in use" };
                cells.push([values.name(), service].concat());
                cells.push(sources.join("; "));
                let cells: Vec<&str> = cells.iter().map(String::as_str).collect();
                out.row(&cells);
            }
        }
    }
    end_table(out);
    for own in &project.wood.own {
        let source = if own.source.trim().is_empty() { "no source given" } else { own.source.as_str() };
        let value = show_stress(own.value, units);
        let sticks = STICKS.iter().find(|(used, _)| *used == own.used).map_or("", |(_, name)| name);
        out.leaf("p", &format!("Own value, {sticks}: {} = {value}, {source}.", own.property.symbol()));
    }
}

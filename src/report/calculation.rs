//! The whole calculation of the strength, for an engineer: what it is worked from, what acts, what it does, every check.
use super::check_sheet::{STRENGTH_CAUTION, paths, sentence_start, steps, summary, tag, working};
use super::markup::Markup;
use crate::analysis::{BeamLine, Solved, section_loads};
use crate::checks::{CASES_OF_THE_LINE, Check, Strength, Woods, waiting};
use crate::design::{Built, Shape};
use crate::drawing::{Scene, elevation, section, svg};
use crate::fastening::fastener;
use crate::loads::{Action, Duration, combinations, settlement};
use crate::materials::species;
use crate::members::{Amount, Property};
use crate::project::{Project, Tie, Used};
use crate::units::{Force, Length, Moment, UnitSystem, show_area_load, show_force, show_slope, show_stress};
use crate::wording::length;
use crate::working::Step;

/// The calculation: inputs, the frame drawn, loads with their working, combinations, what the beam line does in each case, every
/// check, the ways of lift and weight, the governing checks of each kind with their working, what is assumed.
#[must_use]
pub fn calculation(project: &Project, built: &Built, strength: &Strength) -> String {
    let units = project.units;
    let mut out = Markup::new();
    out.open("article class=\"calculation\"");
    out.leaf("h1", &format!("{}: strength", project.name));
    if !project.note.is_empty() {
        out.leaf("p", &project.note);
    }
    out.leaf("p class=\"caution\"", STRENGTH_CAUTION);
    out.leaf("p", &summary(strength, units));
    out.leaf("h2", "The frame");
    drawn(&mut out, &section(project, built), "Section");
    drawn(&mut out, &elevation(project, built), "Elevation");
    inputs(&mut out, project, &built.shape);
    design_values(&mut out, project);
    loads(&mut out, project, strength);
    if let Some(line) = &strength.line {
        answers(&mut out, line, units);
    }
    all_checks(&mut out, strength);
    out.leaf("h2", "The ways of lift and weight").raw(&paths(strength));
    out.leaf("h2", "The governing check of each kind");
    for check in governing(strength) {
        out.open("section class=\"calculation__check\"").leaf("h3", &check.says(units));
        out.raw(&working(check, units)).close("section");
    }
    assumptions(&mut out);
    out.close("article");
    out.finish()
}

const DRAWN_WIDTH: f64 = 640.0;

fn drawn(out: &mut Markup, scene: &Scene, title: &str) {
    out.open("figure class=\"calculation__drawing\"").raw(&svg::print(scene, DRAWN_WIDTH, title)).close("figure");
}

fn begin_table(out: &mut Markup, heads: &[&str]) {
    out.open("table class=\"table table--figures\"");
    if !heads.is_empty() {
        out.open("thead").open("tr");
        for head in heads {
            out.leaf("th scope=\"col\"", head);
        }
        out.close("tr").close("thead");
    }
    out.open("tbody");
}

fn end_table(out: &mut Markup) {
    out.close("tbody").close("table");
}

fn inputs(out: &mut Markup, project: &Project, shape: &Shape) {
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
    out.row(&["risk category", &format!("{:?}", place.risk)]);
    out.row(&["ground snow, from the local authority", &snow]);
    out.row(&["basic wind speed, from the local authority", &wind]);
    let exposure = format!("{:?} for wind, {:?} for snow", place.wind_exposure, place.snow_exposure);
    out.row(&["exposure", &exposure]);
    out.row(&["topographic factor K_zt", &place.topography.to_string()]);
    let ridge = above.eave_to_ridge.map_or_else(open, |run| length(run, units));
    out.row(&["roof above, eave to ridge", &ridge]);
    out.row(&["roof above, slope", &show_slope(project.site.upper_pitch, units).to_string()]);
    out.row(&["roof above is slippery", yes(above.slippery)]);
    out.row(&["roof above sheds onto this one", yes(above.sheds_here)]);
    let soil = crate::fastening::soil(&project.ground.soil).map_or_else(|_| open(), |soil| soil.name.clone());
    out.row(&["soil", &soil]);
    out.row(&["frost depth", &project.ground.frost_depth.map_or_else(open, |depth| length(depth, units))]);
    out.row(&["frost-prone soil", yes(project.ground.is_frost_prone)]);
    if let Some(seismic) = &place.seismic {
        let says =
            format!("S_DS {}, design category {:?}, importance {}", seismic.s_ds, seismic.category, seismic.importance);
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
}

/// The sticks by the name of their kind.
const STICKS: [(Used, &str); 6] = [
    (Used::Post, "posts"),
    (Used::Beam, "beam"),
    (Used::Brace, "braces"),
    (Used::Rafter, "rafters"),
    (Used::Ledger, "ledger"),
    (Used::Purlin, "purlins"),
];

fn design_values(out: &mut Markup, project: &Project) {
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
                    let citation = values.citation_of(property);
                    let source = format!("{}, {}{}", citation.document, citation.clause, tag(citation.confidence));
                    if !sources.contains(&source) {
                        sources.push(source);
                    }
                }
                let service = if member.conditions.wet_service { ", wet in use" } else { ", dry in use" };
                cells.push(values.name() + service);
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
        out.leaf("p", &format!("Own value, {:?}: {} = {value}, {source}.", own.used, own.property.symbol()));
    }
}

/// Prints each step once in the whole chapter, and says how many stand before.
struct Told {
    said: Vec<Step>,
}

impl Told {
    fn tell(&mut self, out: &mut Markup, all: &[Step]) {
        let mut new: Vec<Step> = Vec::new();
        for step in all {
            if !self.said.contains(step) {
                new.push(step.clone());
            }
        }
        let n = all.len() - new.len();
        if n > 0 {
            out.leaf("p", &format!("{n} {} as before.", if n == 1 { "step" } else { "steps" }));
        }
        steps(out, &new);
        self.said.append(&mut new);
    }
}

fn loads(out: &mut Markup, project: &Project, strength: &Strength) {
    let (place, found) = (&project.place, &strength.loads);
    let mut told = Told { said: Vec::new() };
    out.leaf("h2", "Loads");
    for case in section_loads(project, found) {
        out.leaf("h3", &format!("{}: {}", case.action.symbol(), case.name));
        told.tell(out, &case.steps);
    }
    for case in &found.side_wind {
        out.leaf("h3", &format!("W: {}", case.name));
        told.tell(out, &case.steps);
    }
    if let Some(line) = &strength.line {
        out.leaf("h3", "Pushes along the wall");
        told.tell(out, &line.along_steps);
        if let Some(second) = &line.second_order {
            told.tell(out, &second.steps);
        }
    }
    out.leaf("h3", "A post that sinks");
    told.tell(out, &settlement(project.ground.is_frost_prone).steps);
    let mut present = vec![Action::RoofLive, Action::Snow, Action::Wind, Action::Person];
    if place.seismic.is_some() {
        present.extend([Action::SeismicSideways, Action::SeismicDown]);
    }
    out.leaf("h2", "Combinations");
    begin_table(out, &["together", "load duration", "source"]);
    for combination in combinations(place.edition, &present) {
        let citation = combination.citation;
        let source = format!("{}, {}{}", citation.document, citation.clause, tag(citation.confidence));
        out.row(&[&combination.name, combination.duration.words(), &source]);
    }
    end_table(out);
}

/// What the beam line does in every case that was solved.
fn answers(out: &mut Markup, line: &BeamLine, units: UnitSystem) {
    out.leaf("h2", CASES_OF_THE_LINE);
    out.leaf("p", "Bending is plus where the underside is stretched, a pull is plus; feet from left to right, plus where the pier pushes up.");
    begin_table(
        out,
        &[
            "no.",
            "case",
            "braces",
            "bending",
            "largest shear",
            "along the beam",
            "along the braces",
            "feet",
            "level at the feet",
        ],
    );
    for (place, solved) in line.solved.iter().enumerate() {
        let Some(case) = line.cases.get(solved.case) else { continue };
        let row = answer(solved, units);
        let number = (place + 1).to_string();
        let mut cells = vec![number.as_str(), case.name.as_str()];
        cells.extend(row.iter().map(String::as_str));
        out.row(&cells);
    }
    end_table(out);
}

fn answer(solved: &Solved, units: UnitSystem) -> [String; 7] {
    let force = |force: Force| Amount::Force(force).text(units);
    let (mut low, mut high, mut shear) = (Moment::ZERO, Moment::ZERO, Force::ZERO);
    let mut along = Vec::new();
    for part in &solved.beam {
        low = low.min(part.moment.min);
        high = high.max(part.moment.max);
        shear = shear.max(part.shear.max.abs()).max(part.shear.min.abs());
        along.push(part.axial);
    }
    let range = |all: &[Force]| {
        let low = all.iter().copied().fold(Force::ZERO, Force::min);
        let high = all.iter().copied().fold(Force::ZERO, Force::max);
        if low == high { force(low) } else { format!("{} to {}", force(low), force(high)) }
    };
    let mut feet: Vec<String> = Vec::new();
    let mut level: Vec<String> = Vec::new();
    for post in &solved.posts {
        feet.push(force(post.foot));
        level.push(force(post.level));
    }
    let moment = |moment: Moment| Amount::Moment(moment).text(units);
    [
        solved.model.words().to_owned(),
        format!("{} to {}", moment(low), moment(high)),
        force(shear),
        range(&along),
        range(&solved.braces),
        feet.join(", "),
        level.join(", "),
    ]
}

fn all_checks(out: &mut Markup, strength: &Strength) {
    out.leaf("h2", "All checks, worst first");
    begin_table(out, &["check", "asked by there", "under", "weakest source"]);
    for check in &strength.checks {
        let verdict = check.ratio().map_or_else(|| "not judged".to_owned(), |ratio| format!("{ratio:.2}"));
        let sure = check.confidence().map(super::check_sheet::confidence).unwrap_or_default();
        out.row(&[&format!("{} {} {}", check.member, check.name, check.at), &verdict, &check.combination, sure]);
    }
    end_table(out);
    for group in waiting(strength.checks.iter().enumerate()) {
        out.leaf("p", &format!("{}.", sentence_start(&group.says())));
    }
}

/// The worst of each kind of check, in the order of badness.
fn governing(strength: &Strength) -> Vec<&Check> {
    let kind = |check: &Check| {
        let member: String = check.member.chars().filter(|letter| !letter.is_ascii_digit()).collect();
        (member, check.name.clone())
    };
    let mut seen = Vec::new();
    let mut kept = Vec::new();
    for check in strength.checks.iter().filter(|check| check.ratio().is_some()) {
        if !seen.contains(&kind(check)) {
            seen.push(kind(check));
            kept.push(check);
        }
    }
    kept
}

/// What the figures rest on without a number of their own; whoever checks them must know it.
const ASSUMED: [&str; 13] = [
    "Allowable stress design; each combination with its own load-duration factor.",
    "The beam line is a plane frame; a scarf is a hinge that passes shear; post feet are pinned; a post's head is pinned at its shoulder.",
    "Braces are taken rigid, with soft joints, and slack; the worst of them counts. Along the wall only pushed braces act.",
    "Wind along the wall meets the roof's edge, each rafter behind it by the shelter of solid strips one behind the other (EN 1991-1-4, 7.4.2, from memory), every post and every brace.",
    "Before braces touch, the line leans by the slack of its dried joints: the weight on it then pushes along the wall with each push.",
    "Where a post sinks the braces' joints are soft, and a foot that its pier would have to hold down is let go.",
    "Rafters, purlins and ledger bend as beams; the push or pull along a rafter is taken up at its seats, and left out of its bending.",
    "No roof diaphragm: across the wall the rafters hand the push to the wall.",
    "A lean-to stands at a house: the figures for free-standing open roofs are an approximation, so clear and obstructed flow and the overhang rule are all taken.",
    "A footing presses evenly on its soil; no ground water lifts it.",
    "Pegs and wedges of scarfs get no credit.",
    "Sizes are those the sheets are laid out to: what is cut away for joints is taken off, knots and wane are the grade's matter.",
    "Not looked at: the existing wall, its posts beyond the fixings and what stands under it; the neighbour roof; fire; decay; movement of green wood but for creep.",
];

fn assumptions(out: &mut Markup) {
    out.leaf("h2", "What is assumed").open("ul");
    for says in ASSUMED {
        out.leaf("li", says);
    }
    out.close("ul").leaf("p class=\"caution\"", STRENGTH_CAUTION);
}

/// HTML as a page that stands by itself, with the least of style.
#[must_use]
pub fn page(title: &str, body: &str) -> String {
    let mut out = Markup::new();
    out.raw("<!doctype html>").open("html lang=\"en\"").open("head").open("meta charset=\"utf-8\"");
    out.open("meta name=\"viewport\" content=\"width=device-width\"").leaf("title", title);
    out.open("style").raw(PAGE_STYLE).close("style").close("head").open("body").raw(body);
    out.close("body").close("html");
    out.finish()
}

const PAGE_STYLE: &str = "body{font:15px/1.4 sans-serif;max-width:52rem;margin:2rem auto;padding:0 1rem}\
    table{border-collapse:collapse}th,td{text-align:left;vertical-align:top;padding:.15rem .6rem .15rem 0;border-bottom:1px solid #ccc}\
    .working__source{display:block;color:#555;font-size:.85em}.working__gives{display:block;font-weight:600}\
    .caution{border:2px solid;padding:.5rem}dt{font-weight:600}dd{margin:0 0 .3rem}\
    svg{max-width:100%;height:auto}svg path,svg circle{fill:none;stroke:#000}";

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::drawing::svg::escape;
    use crate::evaluate;
    use crate::project::demo;

    fn sheet(project: &Project) -> (String, std::sync::Arc<Strength>, std::sync::Arc<Built>) {
        let design = evaluate(project);
        let (built, strength) = (design.built.unwrap(), design.strength.unwrap());
        (calculation(project, &built, &strength), strength, built)
    }

    #[test]
    fn it_names_every_check_and_its_sources() {
        let mut project = demo::wool_barn();
        project.name = "<barn>".to_owned();
        let (sheet, strength, _) = sheet(&project);
        assert!(sheet.contains("&lt;barn&gt;: strength") && !sheet.contains("<barn>"));
        for check in &strength.checks {
            assert!(sheet.contains(&escape(&check.name)), "{}", check.name);
        }
        assert!(sheet.contains("ASCE 7-16") && sheet.contains("NDS") && sheet.contains("from memory"));
        assert!(sheet.contains("licensed engineer"));
    }

    #[test]
    fn an_engineer_can_work_it_again_from_the_sheet() {
        for project in [demo::wool_barn(), demo::log_store()] {
            let (sheet, strength, built) = sheet(&project);
            let units = project.units;
            let holds = |what: &str| assert!(sheet.contains(&escape(what)), "{what}");
            // The frame: every post's place, every stick's size and design values.
            for post in &built.shape.posts {
                holds(&length(post.middle(), units));
            }
            let woods = Woods::new(&project);
            for (used, name) in STICKS {
                holds(name);
                let member = woods.member(used, Duration::TwoMonths).unwrap();
                holds(&show_stress(member.values.get(Property::Bending), units).to_string());
                holds(&length(woods.timber(used).sawn.depth, units));
            }
            // What acts: every load with its last step, each combination that governs a check.
            for case in &strength.loads.cases {
                holds(&case.name);
                case.steps.iter().for_each(|step| holds(&step.says));
            }
            holds("a person at upkeep work");
            // What it does: every case that was solved, with the push on each pier.
            let line = strength.line.as_ref().unwrap();
            for solved in &line.solved {
                holds(&line.cases[solved.case].name);
                solved.posts.iter().for_each(|post| holds(&Amount::Force(post.foot).text(units)));
            }
            assert_eq!(sheet.matches("<svg").count(), 2);
        }
    }
}

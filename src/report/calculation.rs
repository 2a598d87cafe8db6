//! The whole calculation of the strength, for an engineer: what it is worked from, what acts, what it does, every check.
use super::calculation_inputs::{design_values, inputs};
use super::check_sheet::{STRENGTH_CAUTION, paths, sentence_start, source, steps, summary, working};
use super::markup::Markup;
use crate::analysis::{BeamLine, Solved, elevation_loads, section_loads};
use crate::checks::{CASES_OF_THE_LINE, Check, Strength, waiting};
use crate::design::Built;
use crate::drawing::{Scene, elevation, section, svg};
use crate::loads::{Action, combinations, settlement};
use crate::members::Amount;
use crate::project::Project;
use crate::units::{Force, Moment, UnitSystem};
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
    loads(&mut out, project, built, strength);
    if let Some(line) = &strength.line {
        answers(&mut out, line, units);
    }
    all_checks(&mut out, strength);
    out.leaf("h2", "The ways of lift and weight").leaf("p", WAYS);
    out.raw(&paths(project, built, strength, DRAWN_WIDTH, false));
    out.leaf("h2", "The governing check of each kind");
    for check in governing(strength) {
        out.open("section class=\"calculation__check\"").leaf("h3", &check.says(units));
        out.raw(&working(check, units)).close("section");
    }
    assumptions(&mut out, project);
    out.close("article");
    out.finish()
}

/// How the drawn ways are read.
pub const WAYS: &str = "Numbers: the order in which the links take the force. Arrows: the way it acts on them. A heavy ring is the weakest link, \
    a dashed one is not judged. Of what stands several times the worst counts, drawn at the first post.";

const DRAWN_WIDTH: f64 = 640.0;

fn drawn(out: &mut Markup, scene: &Scene, title: &str) {
    out.open("figure class=\"calculation__drawing\"").raw(&svg::print(scene, DRAWN_WIDTH, title)).close("figure");
}

pub(super) fn begin_table(out: &mut Markup, heads: &[&str]) {
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

pub(super) fn end_table(out: &mut Markup) {
    out.close("tbody").close("table");
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

fn loads(out: &mut Markup, project: &Project, built: &Built, strength: &Strength) {
    let (place, found) = (&project.place, &strength.loads);
    let mut told = Told { said: Vec::new() };
    out.leaf("h2", "Loads");
    for case in section_loads(project, found) {
        out.leaf("h3", &format!("{}: {}", case.action.symbol(), case.name));
        told.tell(out, &case.steps);
    }
    for load in elevation_loads(project, &built.shape, found) {
        out.leaf("h3", &format!("{}: {}", load.action.symbol(), load.name));
        told.tell(out, &load.steps);
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
        let source = source(&combination.citation);
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

const NO_EARTHQUAKE: &str = "Earthquakes are left out: no values of the site are given. Whether they may be is the building department's word; a \
                             heavy snow on the roof counts in them, and along the wall they can ask more than the wind.";
const SNOW_GUARDS: &str = "Snow guards hold the snow on the upper roof, and none of it slides onto the lean-to: without them the figures do not hold.";

/// What the figures rest on without a number of their own; whoever checks them must know it.
const ASSUMED: [&str; 14] = [
    "Timber from a small mill carries no stamp: its grade is the user's own, and where the law wants stamped timber it may not be taken.",
    "Allowable stress design; each combination with its own load-duration factor.",
    "The beam line is a plane frame; a scarf is a hinge that passes shear; post feet are pinned; a post's head is pinned at its shoulder.",
    "Braces are taken rigid, with soft joints, and slack; the worst of them counts. Along the wall only pushed braces act.",
    "Wind along the wall meets the roof's edge, each rafter behind it by the shelter of solid strips one behind the other (EN 1991-1-4, 7.4.2, from memory), every post and every brace.",
    "Before braces touch, the line leans by the slack of its dried joints: the weight on it then pushes along the wall with each push.",
    "Where a post sinks the braces have soft joints or are slack, and a foot that its pier would have to hold down is let go; rigid braces would be forced harder.",
    "Rafters, purlins and ledger bend as beams; the push or pull along a rafter is taken up at its seats, and left out of its bending.",
    "No roof diaphragm: across the wall the rafters hand the push to the wall.",
    "A lean-to stands at a house: the figures for free-standing open roofs are an approximation, so clear and obstructed flow and the overhang rule are all taken.",
    "A footing presses evenly on its soil; no ground water lifts it.",
    "Pegs, wedges and tables of scarfs get no credit: what pulls along the beam passes through the fasteners at both roots, sideways. A push along the wall is let in at the end of the beam where it asks more of the scarf.",
    "Sizes are those the sheets are laid out to: what is cut away for joints is taken off, knots and wane are the grade's matter.",
    "Not looked at: the existing wall, its posts beyond the fixings and what stands under it; the neighbour roof; fire; decay; movement of green wood but for creep.",
];

fn assumptions(out: &mut Markup, project: &Project) {
    out.leaf("h2", "What is assumed").open("ul");
    let of_this_job = [
        (project.place.seismic.is_none(), NO_EARTHQUAKE),
        (project.above.snow_guards && project.above.sheds_here, SNOW_GUARDS),
    ];
    let of_this_job = of_this_job.into_iter().filter(|(holds, _)| *holds).map(|(_, says)| says);
    for says in of_this_job.chain(ASSUMED) {
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
    svg{max-width:100%;height:auto}svg path,svg circle{fill:none;stroke:#000}figure{margin:1rem 0;break-inside:avoid}\
    svg .faint{stroke:#bbb}svg .way__lead{stroke:#777}svg .way__run{stroke-width:2.5}svg .way__tip,svg .way__place{fill:#000}\
    svg .way__disc{fill:#fff}svg .way__link--open .way__disc{stroke-dasharray:3 3}svg .label{paint-order:stroke;stroke:#fff;stroke-width:3px}\
    svg .way__link--weakest .way__disc{stroke-width:4}svg .way__link--weakest .label{font-weight:700}\
    .path__links{list-style:none;padding:0}.link__head>*{margin-right:.6rem}.link__name,.link__share{font-weight:600}";

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::super::calculation_inputs::STICKS;
    use super::*;
    use crate::checks::Woods;
    use crate::drawing::svg::escape;
    use crate::evaluate;
    use crate::loads::Duration;
    use crate::members::Property;
    use crate::project::demo;
    use crate::units::show_stress;
    use crate::wording::length;

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

    /// What is chosen from a list is said in the words of the list.
    #[test]
    fn the_place_is_said_in_words() {
        use crate::loads::{DesignCategory, RiskCategory, Seismic, SnowExposure, Terrain, WindExposure};
        let mut project = demo::wool_barn();
        let place = &mut project.place;
        (place.wind_exposure, place.snow_exposure) = (WindExposure::C, SnowExposure::Full);
        (place.terrain, place.risk) = (Terrain::AboveTreeLine, RiskCategory::I);
        place.seismic = Some(Seismic { s_ds: 0.3, category: DesignCategory::B, importance: 1.0 });
        let (sheet, ..) = sheet(&project);
        for (what, says) in [
            ("exposure to wind", "C: open country"),
            ("ground around, for snow", "above the tree line, windswept"),
            ("exposure of this roof to wind, for snow", "no shelter on any side"),
            ("risk category", "I"),
            ("earthquake", "S_DS 0.3, design category B, importance 1"),
        ] {
            let at = sheet.find(&format!(">{what}<")).unwrap();
            assert!(sheet[at..at + 200].contains(&format!(">{says}<")), "{}", &sheet[at..at + 200]);
        }
        assert!(!sheet.contains("AboveTreeLine") && !sheet.contains("Full"));
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
            assert_eq!(sheet.matches("<svg").count(), 6, "two views of the frame, four ways");
        }
    }
}

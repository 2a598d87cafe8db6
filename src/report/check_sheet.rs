//! Checks as HTML: the list in plain words, and the working of each.
use super::markup::Markup;
use crate::checks::{Check, LoadPath, Outcome, Strength, Waiting, waiting};
use crate::design::Built;
use crate::drawing::{Effort, load_way, svg};
use crate::materials::Confidence;
use crate::members::{Amount, Verdict};
use crate::project::Project;
use crate::units::UnitSystem;
use crate::working::{Citation, Step};

/// The caution that goes with every judgement of strength.
pub const STRENGTH_CAUTION: &str = "These checks are formulas, many of them from memory and marked so. They do not replace a \
    licensed engineer or your local code; the wall you lean on is not judged at all.";

/// One line on the whole: how many pass, what is worst.
#[must_use]
pub fn summary(strength: &Strength, units: UnitSystem) -> String {
    let failing = strength.checks.iter().filter(|check| check.ratio().is_some() && !check.passes()).count();
    let open = strength.not_judged().count();
    let all = strength.checks.iter().filter(|check| !check.is_for_others).count();
    let worst = strength.worst().map(|check| check.says(units)).unwrap_or_default();
    let verdict = match (failing, open) {
        (0, 0) => format!("All {all} checks hold."),
        (0, open) => format!("{open} of {all} checks could not be made."),
        (failing, 0) => format!("{failing} of {all} checks do not hold."),
        (failing, open) => format!("{failing} of {all} checks do not hold, {open} could not be made."),
    };
    format!("{verdict} Worst: {worst}. The existing wall is for someone licensed to judge.")
}

/// A mark and a word for how a check came out: never the colour alone.
fn badge(check: &Check) -> (&'static str, &'static str, &'static str) {
    match Effort::of(check.ratio()) {
        Effort::Unknown => ("?", "not judged", "check--unknown"),
        Effort::Over => ("\u{2715}", "does not hold", "check--over"),
        Effort::Hard => ("\u{2713}", "holds, hard at work", "check--hard"),
        Effort::Fair | Effort::Light => ("\u{2713}", "holds", "check--light"),
    }
}

/// The checks as a list that opens, those that wait for the same behind one line: each body is filled when it is asked for ([`working`]).
///
/// `places` are the checks' places in [`Strength::checks`].
#[must_use]
pub fn list(strength: &Strength, places: &[usize], units: UnitSystem) -> String {
    let mut out = Markup::new();
    let shown = || places.iter().filter_map(|place| Some((*place, strength.checks.get(*place)?)));
    let groups: Vec<Waiting> = waiting(shown()).into_iter().filter(|group| group.places.len() > 1).collect();
    out.open("div class=\"checks\"");
    for (place, check) in shown() {
        match groups.iter().find(|group| group.places.contains(&place)) {
            None => row(&mut out, place, check, units),
            // The whole group stands where its first check would.
            Some(group) if group.places.first() == Some(&place) => gathered(&mut out, strength, group, units),
            Some(_) => {}
        }
    }
    out.close("div");
    out.finish()
}

/// Checks that wait for the same, behind one line; each by itself when it is opened.
fn gathered(out: &mut Markup, strength: &Strength, group: &Waiting, units: UnitSystem) {
    out.open("details class=\"check check--unknown\"").open("summary class=\"check__head\"");
    out.leaf("span class=\"check__mark\" aria-hidden=\"true\"", "?")
        .leaf("span class=\"check__group\"", &sentence_start(&group.says()));
    out.close("summary").open("div class=\"checks checks--within\"");
    for place in &group.places {
        if let Some(check) = strength.checks.get(*place) {
            row(out, *place, check, units);
        }
    }
    out.close("div").close("details");
}

fn row(out: &mut Markup, place: usize, check: &Check, units: UnitSystem) {
    let (mark, word, class) = badge(check);
    out.open(&format!("details class=\"check {class}\" data-check=\"{place}\""));
    out.open("summary class=\"check__head\"");
    out.leaf("span class=\"check__mark\" aria-hidden=\"true\"", mark);
    out.leaf("span class=\"quiet\"", word);
    out.leaf("span class=\"check__says\"", &check.says(units));
    if check.confidence() == Some(Confidence::Low) {
        out.leaf("span class=\"check__sure\"", "rests on a placeholder: see its working");
    }
    out.open("span class=\"check__bar\" aria-hidden=\"true\"");
    out.leaf(&format!("span class=\"check__fill fill-{}\"", twentieths(check.ratio())), "");
    out.close("span").close("summary");
    out.leaf("div class=\"check__body\"", "").close("details");
}

/// A ratio in twentieths of full width, for the style sheet.
fn twentieths(ratio: Option<f64>) -> u8 {
    let ratio = ratio.unwrap_or(0.0).clamp(0.0, 1.0);
    (0..20_u8).rev().find(|step| ratio * 20.0 >= f64::from(*step) + 0.5).map_or(0, |step| step + 1)
}

/// The working of one check.
#[must_use]
pub fn working(check: &Check, units: UnitSystem) -> String {
    let mut out = Markup::new();
    match &check.outcome {
        Outcome::NotJudged(not) => {
            out.leaf("p class=\"check__why\"", &not.why);
        }
        Outcome::Judged(worked) => {
            out.open("dl class=\"facts\"");
            let verdict = &worked.value;
            for (name, value) in [
                ("asked", verdict.demand.text(units)),
                ("there", verdict.capacity.text(units)),
                ("share", ratio_text(verdict)),
                ("under", check.combination.clone()),
                ("weakest source", check.confidence().map(confidence).unwrap_or_default().to_owned()),
            ] {
                if !value.is_empty() {
                    out.open("div class=\"fact\"").leaf("dt class=\"fact__name\"", name);
                    out.leaf("dd class=\"fact__value\"", &value).close("div");
                }
            }
            out.close("dl");
            if units == UnitSystem::Metric {
                out.leaf("p class=\"page__word\"", STEP_UNITS);
            }
            steps(&mut out, &check.working());
        }
    }
    out.finish()
}

/// One check on a sheet of its own, for an engineer.
#[must_use]
pub fn one_check(project: &Project, check: &Check) -> String {
    let mut out = Markup::new();
    out.open("article class=\"calculation\"").leaf("h1", &project.name).leaf("h2", &check.says(project.units));
    out.raw(&working(check, project.units)).leaf("p class=\"caution\"", STRENGTH_CAUTION).close("article");
    out.finish()
}

/// What the steps are written in, for those who measure otherwise.
const STEP_UNITS: &str = "The steps are in pounds, inches and feet, as the clauses print them: 1 kN is 224.8 lb, 1 kN\u{b7}m is 8,851 lb-in, \
    1 MPa is 145.0 psi, 1 kPa is 20.89 psf, 1 m/s is 2.237 mi/h.";

fn ratio_text(verdict: &Verdict) -> String {
    if verdict.ratio.is_finite() { format!("{:.3}", verdict.ratio) } else { "nothing is allowed".to_owned() }
}

/// Steps as a numbered list: what it gives, the formula with its numbers, where it is printed.
pub(super) fn steps(out: &mut Markup, steps: &[Step]) {
    out.open("ol class=\"working\"");
    for step in steps {
        let citation = &step.citation;
        out.open("li class=\"working__step\"").leaf("span class=\"working__gives\"", &step.gives);
        out.leaf("span class=\"working__says\"", &step.says);
        let source = source(citation);
        out.leaf("span class=\"working__source\"", &source).close("li");
    }
    out.close("ol");
}

/// Where it is printed, and how far our reading can be trusted.
pub(super) fn source(citation: &Citation) -> String {
    citation.place() + tag(citation.confidence)
}

const fn tag(confidence: Confidence) -> &'static str {
    match confidence {
        Confidence::High => "",
        Confidence::Given => " (given, not compared here)",
        Confidence::Medium => " (from memory)",
        Confidence::Low => " (placeholder: ask before leaning on it)",
    }
}

pub(super) const fn confidence(confidence: Confidence) -> &'static str {
    match confidence {
        Confidence::High => "compared with its printed source",
        Confidence::Given => "given by you",
        Confidence::Medium => "from memory",
        Confidence::Low => "a placeholder: ask before leaning on it",
    }
}

/// The ways of lift and weight, each drawn as a chain that wide, px, and its links as a list, the weakest marked.
///
/// On a screen links open: each body is filled when it is asked for ([`working`] of its check).
#[must_use]
pub fn paths(project: &Project, built: &Built, strength: &Strength, width: f64, opens: bool) -> String {
    let mut out = Markup::new();
    for (index, path) in strength.paths.iter().enumerate() {
        let title = sentence_start(path.name);
        out.open("section class=\"path\"").leaf("h3 class=\"path__title\"", &title);
        out.open("figure class=\"path__drawing\"");
        let key = index.to_string();
        out.raw(&svg::print(&load_way(project, built, path, &key), width, &drawn_words(path, &title)));
        out.close("figure").open("ol class=\"path__links\"");
        let weakest = path.weakest().map(|link| link.name);
        for (number, link) in path.links.iter().enumerate() {
            let class = match Effort::of(link.ratio) {
                Effort::Unknown => "link--unknown",
                Effort::Over => "link--over",
                Effort::Light | Effort::Fair | Effort::Hard => "link--holds",
            };
            let is_weakest = weakest == Some(link.name);
            let weak = if is_weakest { " link--weakest" } else { "" };
            out.open(&format!("li class=\"link {class}{weak}\" data-row=\"{key}.{number}\""));
            let opens = opens && link.check.is_some();
            let head = if opens { "summary" } else { "div" };
            if opens {
                out.open("details class=\"link__opens\"");
            }
            out.open(&format!("{head} class=\"link__head\""));
            let number = (number + 1).to_string();
            out.leaf("span class=\"link__number\"", &number).leaf("span class=\"link__name\"", link.name);
            out.leaf("span class=\"link__share\"", &link.figure());
            if is_weakest {
                out.leaf("strong class=\"link__word\"", "weakest link");
            }
            out.leaf("span class=\"link__says\"", &link.says).close(head);
            if opens {
                out.leaf("div class=\"check__body\"", "").close("details");
            }
            out.close("li");
        }
        out.close("ol").close("section");
    }
    out.finish()
}

/// What the drawing says, for those who cannot see it.
fn drawn_words(path: &LoadPath, title: &str) -> String {
    let names: Vec<&str> = path.links.iter().map(|link| link.name).collect();
    let weakest =
        path.weakest().map_or_else(String::new, |link| format!("; weakest: {}, {}", link.name, link.figure()));
    format!("{title}: {}{weakest}", names.join(", "))
}

pub(super) fn sentence_start(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// The working of one load.
#[must_use]
pub fn load_working(all: &[Step]) -> String {
    let mut out = Markup::new();
    steps(&mut out, all);
    out.finish()
}

/// A band along the beam in the user's units: place, least and greatest value.
pub type Curve = Vec<(f64, f64, f64)>;

/// How the beam's bending hangs on the stiffness of the braces' joints, which is little known; empty where nothing is known.
#[must_use]
pub fn joints(strength: &Strength, units: UnitSystem) -> String {
    let found = strength.line.as_ref().map(crate::analysis::BeamLine::bending_by_joint).unwrap_or_default();
    let of = |wanted: f64| {
        found.iter().find(|(factor, _)| *factor == wanted).map(|(_, moment)| Amount::Moment(*moment).text(units))
    };
    match (of(0.5), of(1.0), of(1.5)) {
        (Some(soft), Some(own), Some(stiff)) => format!(
            "The stiffness of the braces\u{2019} joints is a placeholder. With it the beam bends by up to {own}; with joints half as stiff \
             {soft}, one and a half times as stiff {stiff}."
        ),
        _ => String::new(),
    }
}

/// Curves along the beam with their captions, and the same figures at posts and scarfs as a table.
///
/// A column holds its caption and the band.
#[must_use]
pub fn along_sheet(drawn: &[(String, String)], places: &[(String, f64)], columns: &[(String, Curve)]) -> String {
    let mut out = Markup::new();
    for (caption, svg) in drawn {
        out.open("figure class=\"chart chart--along\"").leaf("figcaption class=\"chart__caption\"", caption);
        out.open("div class=\"chart__place\"").raw(svg).close("div").close("figure");
    }
    out.open("div class=\"table-box\" tabindex=\"0\" role=\"group\" aria-label=\"Along the beam, the figures\"");
    out.open("table class=\"table table--figures\"").open("thead").open("tr").leaf("th scope=\"col\"", "at");
    for (caption, _) in columns {
        out.leaf("th scope=\"col\"", caption);
    }
    out.close("tr").close("thead").open("tbody");
    for (name, x) in places {
        let cells: Vec<String> = columns.iter().map(|(_, band)| at_place(band, *x)).collect();
        let all: Vec<&str> = std::iter::once(name.as_str()).chain(cells.iter().map(String::as_str)).collect();
        out.row(&all);
    }
    out.close("tbody").close("table").close("div");
    out.finish()
}

/// Least to greatest at the sample nearest to a place.
fn at_place(band: &[(f64, f64, f64)], x: f64) -> String {
    let near = band.iter().min_by(|a, b| (a.0 - x).abs().total_cmp(&(b.0 - x).abs()));
    let text = |value: f64| {
        let decimals = if value.abs() < 10.0 { 2 } else { 0 };
        format!("{value:.decimals$}").replace('-', "\u{2212}")
    };
    near.map_or_else(String::new, |(_, low, high)| {
        let (low, high) = (text(*low), text(*high));
        if low == high { high } else { format!("{low} to {high}") }
    })
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::project::demo;

    #[test]
    fn the_list_opens_and_says_how_each_came_out() {
        let strength = evaluate(&demo::wool_barn()).strength.unwrap();
        let all = list(&strength, &[0, 1, usize::MAX], UnitSystem::Imperial);
        assert_eq!(all.matches("<details").count(), 2);
        assert!(all.contains("data-check=\"0\"") && all.contains("check__says"));
        assert_eq!([Some(0.0), Some(0.5), Some(3.0), None].map(twentieths), [0, 10, 20, 0]);
        // What rests on a placeholder says so whether it holds or not.
        let low = |check: &Check| check.passes() && check.confidence() == Some(Confidence::Low);
        let (place, low) = strength.checks.iter().enumerate().find(|(_, check)| low(check)).unwrap();
        assert!(list(&strength, &[place], UnitSystem::Imperial).contains("rests on a placeholder"), "{low:?}");
        assert!(working(low, UnitSystem::Imperial).contains("what is asked"));
        let first = working(&strength.checks[0], UnitSystem::Metric);
        assert!(first.contains("class=\"working\"") || first.contains("check__why"));
    }
}

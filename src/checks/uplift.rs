//! The ways a force takes through the roof to the ground, link by link: as strong as the weakest of them.
//!
//! Up: sheet, its screws, purlin, its screws, rafter tie, beam bent the other way, scarf, post top, base, weight of the
//! footing; and at the wall rafter tie, fixings of the ledger, wall. Down: purlin, rafter, beam or ledger, and what is under
//! it. Links are read off checks that were made; what was not checked is not known, and no strength is taken for it.
use super::base::{HOLDS_DOWN, PRESSES, STAYS_DOWN};
use super::bored::TEARS;
use super::check::{Check, Outcome};
use super::ledger_fixings::{FIXINGS, HOLD_DOWN, HOLD_UP, STEEL, WASHERS};
use super::part::Part;
use super::purlin_screws::{HEADS_PULL, PULL_OUT, SCREWS};
use super::sheet::{PULLED_OUT, PULLED_OVER};
use super::ties::{AT_BEAM, AT_LEDGER, PULLS_ON_TIES};
use crate::fastening::Link;
use crate::members::Verdict;
use crate::working::{Citation, Step, Worked};

/// Name of the check of a whole path.
pub const WEAKEST_LINK: &str = "is as strong as its weakest link";

/// One link of a path.
#[derive(Clone, Debug, PartialEq)]
pub struct PathLink {
    /// What it is.
    pub name: &'static str,
    /// Load by capacity; nothing where it is not known.
    pub ratio: Option<f64>,
    /// Where, and under which combination; or why it is not known.
    pub says: String,
    /// The combination; empty where it is not known.
    pub combination: String,
    /// The part that it is, where it is known.
    pub part: Part,
}

/// A path from the roof to the ground or to the wall, in the order in which the force passes through it.
#[derive(Clone, Debug, PartialEq)]
pub struct LoadPath {
    /// What it does, as a sentence's subject.
    pub name: &'static str,
    /// Its links.
    pub links: Vec<PathLink>,
}

/// What the beam line knows of an uplift.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LiftedFrame {
    /// Load by capacity of the beam bent the other way.
    pub beam: Option<f64>,
    /// The same of the worst scarf.
    pub scarf: Option<f64>,
    /// Pull on the worst post top, and what its pegs hold.
    pub post_top: Option<Link>,
}

/// Checks of the frame by its sticks, for the way down.
#[derive(Clone, Copy, Debug, Default)]
pub struct FrameChecks<'a> {
    /// Of the rafters.
    pub rafters: &'a [Check],
    /// Of the beam.
    pub beam: &'a [Check],
    /// Of the scarfs.
    pub scarfs: &'a [Check],
    /// Of the posts.
    pub posts: &'a [Check],
}

/// The link that some checks make: the worst of them. One that was not judged leaves the link unknown.
fn link<'a>(name: &'static str, checks: impl Iterator<Item = &'a Check>) -> PathLink {
    let unknown = |says: String| PathLink { name, ratio: None, says, combination: String::new(), part: Part::Whole };
    let mut worst: Option<(f64, &Check)> = None;
    for check in checks {
        match &check.outcome {
            Outcome::NotJudged(not) => return unknown(format!("{} {}: {}", check.member, check.name, not.why)),
            Outcome::Judged(worked) => {
                if worst.is_none_or(|(ratio, _)| worked.value.ratio > ratio) {
                    worst = Some((worked.value.ratio, check));
                }
            }
        }
    }
    let Some((ratio, check)) = worst else { return unknown("not checked".to_owned()) };
    let place = if check.at.is_empty() { String::new() } else { format!(" {}", check.at) };
    let says = format!("{} {}{place}: {:.0} %", check.member, check.name, ratio * 100.0);
    PathLink { name, ratio: Some(ratio), says, combination: check.combination.clone(), part: check.part }
}

fn given(name: &'static str, part: Part, ratio: Option<f64>) -> PathLink {
    let says = ratio.map_or_else(|| "not checked".to_owned(), |ratio| format!("{:.0} %", ratio * 100.0));
    PathLink { name, ratio, says, combination: String::new(), part }
}

fn named<'a>(checks: &'a [Check], names: &'a [&'a str]) -> impl Iterator<Item = &'a Check> {
    checks.iter().filter(move |check| names.contains(&check.name.as_str()))
}

/// The purlins' own checks; those of their screws carry other names.
fn purlins(checks: &[Check]) -> PathLink {
    const NAMES: [&str; 3] = ["bends both ways", "shears", "bend, shear and sag"];
    let own = |check: &&Check| check.member.starts_with('N') || check.member == "purlins";
    link("purlin", named(checks, &NAMES).filter(own))
}

fn ties<'a>(checks: &'a [Check], at: &'a str) -> impl Iterator<Item = &'a Check> {
    named(checks, &[PULLS_ON_TIES]).filter(move |check| check.at == at)
}

/// What nobody has told the program of.
fn wall() -> PathLink {
    let says = "to be checked by someone licensed".to_owned();
    PathLink { name: "existing wall", ratio: None, says, combination: String::new(), part: Part::Whole }
}

/// The two ways of an uplift: to the footings, and to the wall.
#[must_use]
pub fn uplift_paths(checks: &[Check], frame: &LiftedFrame) -> [LoadPath; 2] {
    let screws = |name: &'static str, names: &'static [&'static str], member: &'static str| {
        link(name, named(checks, names).filter(move |check| check.member == member))
    };
    let of = |name, names| link(name, named(checks, names));
    let roof = [
        of("roof sheet", &[PULLED_OVER]),
        of("sheet screws", &[PULLED_OUT]),
        purlins(checks),
        screws("purlin screws", &[PULL_OUT, HEADS_PULL], SCREWS),
    ];
    let frame = [
        link("rafter tie at the beam", ties(checks, AT_BEAM)),
        given("beam bent upward", Part::Beam, frame.beam),
        given("scarf", Part::Scarf, frame.scarf),
        given("post top", Part::Pegs, frame.post_top.as_ref().and_then(Link::ratio)),
        of("post base", &[HOLDS_DOWN, TEARS]),
        of("weight of the footing", &[STAYS_DOWN]),
    ];
    let house = [
        link("rafter tie at the ledger", ties(checks, AT_LEDGER)),
        screws("ledger fixings", &[HOLD_DOWN, WASHERS, STEEL], FIXINGS),
        wall(),
    ];
    [
        LoadPath { name: "the path that holds the roof down", links: roof.iter().cloned().chain(frame).collect() },
        LoadPath {
            name: "the path that holds the rafters' heads down",
            links: roof.into_iter().chain(house).collect(),
        },
    ]
}

/// The two ways of a weight: to the footings, and to the wall.
#[must_use]
pub fn gravity_paths(checks: &[Check], frame: &FrameChecks) -> [LoadPath; 2] {
    let of = |name, names| link(name, named(checks, names));
    let sheet = PathLink {
        name: "roof sheet",
        ratio: None,
        says: "its span is its maker's matter".to_owned(),
        combination: String::new(),
        part: Part::Whole,
    };
    let roof = [sheet, purlins(checks), link("rafter", frame.rafters.iter())];
    let ledger = checks.iter().filter(|check| {
        let is_stick = check.member == "ledger" || check.member.strip_prefix('L').is_some_and(is_number);
        is_stick && !check.name.starts_with("sags")
    });
    let under_beam = [
        link("beam", frame.beam.iter()),
        link("scarf", frame.scarfs.iter()),
        link("post", frame.posts.iter()),
        of("post foot", &["stands on its foot"]),
        of("footing on the soil", &[PRESSES]),
    ];
    let at_wall = [link("ledger", ledger), of("ledger fixings", &[HOLD_UP, WASHERS, STEEL]), wall()];
    [
        LoadPath {
            name: "the way of the weight to the ground",
            links: roof.iter().cloned().chain(under_beam).collect(),
        },
        LoadPath { name: "the way of the weight to the wall", links: roof.into_iter().chain(at_wall).collect() },
    ]
}

fn is_number(text: &str) -> bool {
    !text.is_empty() && text.chars().all(|letter| letter.is_ascii_digit())
}

impl LoadPath {
    /// Of the known links the one that is loaded most; of equals the first.
    #[must_use]
    pub fn weakest(&self) -> Option<&PathLink> {
        let mut found: Option<&PathLink> = None;
        for link in self.links.iter().filter(|link| link.ratio.is_some()) {
            if found.is_none_or(|before| link.ratio > before.ratio) {
                found = Some(link);
            }
        }
        found
    }

    /// The links of which nothing is known.
    pub fn unknown(&self) -> impl Iterator<Item = &PathLink> {
        self.links.iter().filter(|link| link.ratio.is_none())
    }

    /// The path as one check: its weakest link. A link that is not known leaves it not judged, unless a known one fails.
    #[must_use]
    pub fn check(&self) -> Check {
        let unknown: Vec<&str> = self.unknown().map(|link| link.name).collect();
        let Some((weakest, ratio)) = self.weakest().and_then(|link| Some((link, link.ratio?))) else {
            return Check::not_judged(self.name, WEAKEST_LINK, "none of its links is known");
        };
        let at = format!("({})", weakest.name);
        if !unknown.is_empty() && Verdict::sum_of_shares(ratio).passes() {
            let why = format!(
                "not known: {}; the weakest of those known: {}, at {:.0} %",
                unknown.join(", "),
                weakest.name,
                ratio * 100.0
            );
            return Check::not_judged(self.name, WEAKEST_LINK, why);
        }
        let cited = Citation::common_practice("a chain is as strong as its weakest link");
        let steps = self.links.iter().map(|link| Step::new(link.name, link.says.clone(), cited)).collect();
        let made = Worked::new(Verdict::sum_of_shares(ratio), steps);
        Check::new(self.name, WEAKEST_LINK, at, weakest.combination.clone(), Ok::<_, String>(made)).part(weakest.part)
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::units::{Force, UnitSystem};

    fn judged(member: &str, name: &str, at: &str, ratio: f64) -> Check {
        let made = Worked::new(Verdict::sum_of_shares(ratio), Vec::new());
        Check::new(member, name, at, "0.6D + 0.6W: lifting", Ok::<_, String>(made))
    }

    /// Invented ratios, every link of both ways up.
    fn all() -> Vec<Check> {
        vec![
            judged("roof sheet", PULLED_OVER, "", 0.38),
            judged("sheet screws", PULLED_OUT, "", 0.25),
            judged("N6", "bends both ways", "at the rake", 0.7),
            judged("N6", "shears", "", 0.3),
            judged("purlin screws", PULL_OUT, "in row N2", 0.24),
            judged("purlin screws", HEADS_PULL, "in row N2", 0.33),
            judged("R3", PULLS_ON_TIES, AT_BEAM, 0.5),
            judged("R3", PULLS_ON_TIES, AT_LEDGER, 0.6),
            judged("base of P1", HOLDS_DOWN, "", 0.4),
            judged("base of P2", HOLDS_DOWN, "", 0.75),
            judged("footing of P1", STAYS_DOWN, "", 0.9),
            judged("footing of P2", STAYS_DOWN, "", 0.8),
            judged("ledger fixings", HOLD_DOWN, "", 0.55),
        ]
    }

    fn frame() -> LiftedFrame {
        let post_top = Link {
            name: "pegs of P2".to_owned(),
            demand: Force::pounds(500.0),
            capacity: Some(Force::pounds(1000.0)),
            citation: Citation::common_practice("invented"),
        };
        LiftedFrame { beam: Some(0.2), scarf: Some(0.1), post_top: Some(post_top) }
    }

    #[test]
    fn the_weakest_link_speaks_for_the_path() {
        let [down, _] = uplift_paths(&all(), &frame());
        assert_eq!(down.links.len(), 10);
        assert_eq!(down.unknown().count(), 0);
        let check = down.check();
        assert_eq!(
            check.says(UnitSystem::Imperial),
            "the path that holds the roof down is as strong as its weakest link (weight of the footing): 90 % of what it \
             may, under 0.6D + 0.6W: lifting"
        );
        assert!(check.passes());
        assert_eq!(check.steps()[7].says, "50 %");
        assert_eq!(check.steps()[3].says, "purlin screws pull their heads through the purlin in row N2: 33 %");
    }

    #[test]
    fn the_worst_of_many_posts_counts_and_can_fail() {
        let mut checks = all();
        checks.push(judged("footing of P3", STAYS_DOWN, "", 1.2));
        let [down, _] = uplift_paths(&checks, &LiftedFrame::default());
        let check = down.check();
        assert_eq!(check.ratio(), Some(1.2), "a failing link is said even where others are not known");
        assert!(!check.passes());
    }

    #[test]
    fn a_link_that_is_not_known_is_no_strength() {
        let mut checks = all();
        checks.retain(|check| check.name != PULLED_OVER);
        checks.push(Check::not_judged("roof sheet", PULLED_OVER, "the load at a washer is missing"));
        let [down, _] = uplift_paths(&checks, &LiftedFrame { scarf: None, ..frame() });
        let check = down.check();
        assert_eq!(check.ratio(), None);
        let says = check.says(UnitSystem::Imperial);
        assert!(says.contains("not judged: not known: roof sheet, scarf; the weakest of those known"), "{says}");
        let [nothing, _] = uplift_paths(&[], &LiftedFrame::default());
        assert!(nothing.check().says(UnitSystem::Imperial).contains("none of its links is known"));
    }

    /// Nobody has told of the wall: that way is never shown to hold.
    #[test]
    fn the_wall_is_never_known() {
        let [_, heads] = uplift_paths(&all(), &frame());
        assert_eq!(heads.unknown().map(|link| link.name).collect::<Vec<_>>(), ["existing wall"]);
        assert_eq!(heads.weakest().unwrap().name, "purlin");
        assert!(!heads.check().passes());
    }

    #[test]
    fn the_way_of_the_weight() {
        let rafters = [judged("R3", "bends", "", 0.6)];
        let beam = [judged("B1", "bends", "", 0.8)];
        let checks = vec![
            judged("N6", "bends both ways", "", 0.7),
            judged("L1", "bends", "", 0.5),
            judged("L1", "sags in all", "", 0.95),
            judged("ledger fixings", HOLD_UP, "", 1.1),
            judged("P1", "stands on its foot", "", 0.2),
            judged("footing of P1", PRESSES, "", 0.65),
        ];
        let frame = FrameChecks { rafters: &rafters, beam: &beam, ..FrameChecks::default() };
        let [ground, wall] = gravity_paths(&checks, &frame);
        let ratios: Vec<Option<f64>> = ground.links.iter().map(|link| link.ratio).collect();
        assert_eq!(ratios, [None, Some(0.7), Some(0.6), Some(0.8), None, None, Some(0.2), Some(0.65)]);
        assert_eq!(ground.weakest().unwrap().name, "beam");
        let ratios: Vec<Option<f64>> = wall.links.iter().map(|link| link.ratio).collect();
        assert_eq!(ratios, [None, Some(0.7), Some(0.6), Some(0.5), Some(1.1), None]);
        assert_eq!(wall.check().ratio(), Some(1.1));
    }
}

//! The ways a force takes through the roof to the ground, link by link: as strong as the weakest of them.
//!
//! Up: sheet, its screws, purlin, its screws, rafter tie, beam bent the other way, scarf, post top, base, anchor in the concrete,
//! pier on its footing, weight of the footing; and at the wall rafter tie, fixings of the ledger, wall. Down: purlin, rafter, beam or ledger, and what is under
//! it. Each link takes the combinations that send the force that way alone: what else asks of the stick is in the list of
//! checks, not in the chain. Links are read off checks that were made; what was not checked is not known, and no strength is
//! taken for it.
use super::base::{HOLDS_DOWN, PRESSES, STANDS, STAYS_DOWN};
use super::beam::BENDS;
use super::bored::TEARS;
use super::check::{Check, EXISTING_WALL, Outcome, Way};
use super::head_pegs::{NEEDS_WOOD, PULLS_ON_PEGS};
use super::ledger_fixings::{FIXINGS, HOLD_DOWN, HOLD_UP, STEEL, WASHERS};
use super::part::Part;
use super::pier_pull::{ANCHORED, TIED};
use super::pier_top::CARRIES_BASE;
use super::post::{END_GRAIN, PUSHED};
use super::purlin::{BENDS_BOTH_WAYS, SHEARS};
use super::purlin_screws::{HEADS_PULL, PULL_OUT, SCREWS};
use super::scarf::LIFTED_OPEN;
use super::sheet::{PULLED_OUT, PULLED_OVER};
use super::ties::{AT_BEAM, AT_LEDGER, PULLS_ON_TIES};
use crate::members::Verdict;
use crate::units::Fixed;
use crate::working::{Citation, Confidence, Step, Worked};

/// Name of what is said of sticks that could not be checked at all.
pub(super) const CARRIES: &str = "carries";
/// Where no combination sends a force through a link.
const NOTHING_LIFTS: &str = "no combination lifts it";
/// Of a link that no check makes.
const UNSURE: Confidence = Confidence::Medium;
/// A beam in one stick.
const NO_SCARF: &str = "there is none, or none is lifted";
/// Name of the check of a whole path.
pub const WEAKEST_LINK: &str = "is as strong as its weakest link";

/// Where on the lean-to a link sits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LinkPlace {
    /// A roof sheet between two purlins.
    Sheet,
    /// Its screws in the purlin.
    SheetScrew,
    /// A purlin.
    Purlin,
    /// The purlin's screws in the rafter.
    PurlinScrew,
    /// A rafter.
    Rafter,
    /// A rafter on the beam.
    AtBeam,
    /// The beam.
    Beam,
    /// A scarf of it.
    Scarf,
    /// A post's head.
    PostTop,
    /// A post.
    Post,
    /// A post's foot, with what holds it.
    PostFoot,
    /// The top of the pier under it.
    PierTop,
    /// Where the pier stands on its footing.
    PierFoot,
    /// The footing.
    Footing,
    /// A rafter on the ledger.
    AtLedger,
    /// The ledger.
    Ledger,
    /// What fixes the ledger to the wall.
    LedgerFixing,
    /// The wall.
    Wall,
}

impl LinkPlace {
    /// Whether it lies over the rafters.
    #[must_use]
    pub const fn is_over_rafters(self) -> bool {
        matches!(self, Self::Sheet | Self::SheetScrew | Self::Purlin | Self::PurlinScrew)
    }

    /// Whether it lies where the post ends.
    #[must_use]
    pub const fn is_at_ground(self) -> bool {
        matches!(self, Self::PostFoot | Self::PierTop | Self::PierFoot | Self::Footing)
    }
}

/// One link of a path.
#[derive(Clone, Debug, PartialEq)]
pub struct PathLink {
    /// Where it sits.
    pub place: LinkPlace,
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
    /// How sure its check is.
    pub confidence: Confidence,
    /// The check that says it; nothing where none was made, or none is of its way.
    pub check: Option<Check>,
}

impl PathLink {
    /// `84 %`, with a cross where that is more than it may; a question mark where it is not known.
    #[must_use]
    pub fn figure(&self) -> String {
        match self.ratio {
            None => "?".to_owned(),
            Some(ratio) if !ratio.is_finite() => "\u{2715} over".to_owned(),
            Some(ratio) => {
                let cross = if Verdict::sum_of_shares(ratio).passes() { "" } else { "\u{2715} " };
                format!("{cross}{} %", Fixed(ratio * 100.0, 0))
            }
        }
    }
}

/// A path from the roof to the ground or to the wall, in the order in which the force passes through it.
#[derive(Clone, Debug, PartialEq)]
pub struct LoadPath {
    /// What it does, as a sentence's subject.
    pub name: &'static str,
    /// Its links.
    pub links: Vec<PathLink>,
    /// Which way it pulls or presses.
    pub way: Way,
}

/// Checks of the frame by its sticks; each says which way its combination goes.
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
    /// A load that is not known, in a sentence.
    pub missing: Option<&'a str>,
}

/// The link that some checks make: the worst of them. One that was not judged leaves the link unknown.
fn link<'a>(place: LinkPlace, name: &'static str, checks: impl Iterator<Item = &'a Check>) -> PathLink {
    let unknown =
        |says: String, check: Option<&Check>| PathLink { check: check.cloned(), ..unknown(place, name, says) };
    let mut worst: Option<(f64, &Check)> = None;
    for check in checks {
        match &check.outcome {
            Outcome::NotJudged(not) => {
                return unknown(format!("{} {}: {}", check.member, check.name, not.why), Some(check));
            }
            Outcome::Judged(worked) => {
                if worst.is_none_or(|(ratio, _)| worked.value.ratio > ratio) {
                    worst = Some((worked.value.ratio, check));
                }
            }
        }
    }
    let Some((ratio, check)) = worst else { return unknown(NOT_CHECKED.to_owned(), None) };
    let at = if check.at.is_empty() { String::new() } else { format!(" {}", check.at) };
    let under = if check.combination.is_empty() { String::new() } else { format!(", under {}", check.combination) };
    let says = format!("{} {}{at}: {} %{under}", check.member, check.name, Fixed(ratio * 100.0, 0));
    PathLink {
        place,
        name,
        ratio: Some(ratio),
        says,
        combination: check.combination.clone(),
        part: check.part,
        confidence: check.confidence().unwrap_or(UNSURE),
        check: Some(check.clone()),
    }
}

/// A link of which nothing is known.
const fn unknown(place: LinkPlace, name: &'static str, says: String) -> PathLink {
    PathLink {
        place,
        name,
        ratio: None,
        says,
        combination: String::new(),
        part: Part::Whole,
        confidence: UNSURE,
        check: None,
    }
}

const NOT_CHECKED: &str = "not checked";

/// A link that is there but through which no force goes, where all loads are known.
fn or_nothing(link: PathLink, why: &str, missing: Option<&str>) -> PathLink {
    if link.ratio.is_some() || link.says != NOT_CHECKED {
        return link;
    }
    match missing {
        Some(missing) => PathLink { says: missing.to_owned(), ..link },
        None => PathLink { ratio: Some(0.0), says: why.to_owned(), ..link },
    }
}

/// Those of these names that go a way, or of all for what only one way asks.
fn named<'a>(checks: &'a [Check], way: Option<Way>, names: &'a [&'a str]) -> impl Iterator<Item = &'a Check> {
    let goes = move |check: &Check| match way {
        Some(way) => goes(check, way),
        None => !check.is_link,
    };
    checks.iter().filter(move |check| goes(check) && names.contains(&check.name.as_str()))
}

/// Whether a check is of a combination of that way; one that could not be made is of none, and counts for both.
fn goes(check: &Check, way: Way) -> bool {
    check.way.map_or_else(|| check.ratio().is_none(), |own| own == way)
}

/// The purlins' own checks; those of their screws carry other names.
fn purlins(checks: &[Check], way: Way) -> PathLink {
    let own = named(checks, Some(way), &[BENDS_BOTH_WAYS, SHEARS]).filter(|check| check.member.starts_with('N'));
    let link = link(LinkPlace::Purlin, "purlin", own.chain(checks.iter().filter(|check| check.member == "purlins")));
    let is_known = checks.iter().any(|check| check.name == BENDS_BOTH_WAYS);
    if is_known { or_nothing(link, NOTHING_LIFTS, None) } else { link }
}

/// Checks of sticks that go a way, of these names or of any; and what says that none could be made.
fn sticks<'a>(checks: &'a [Check], way: Way, names: &'a [&'a str]) -> impl Iterator<Item = &'a Check> {
    let is_meant =
        move |check: &Check| names.is_empty() || check.name == CARRIES || names.contains(&check.name.as_str());
    checks.iter().filter(move |check| goes(check, way) && is_meant(check))
}

fn ties<'a>(checks: &'a [Check], at: &'a str) -> impl Iterator<Item = &'a Check> {
    named(checks, None, &[PULLS_ON_TIES]).filter(move |check| check.at == at)
}

/// What nobody has told the program of.
fn wall() -> PathLink {
    unknown(LinkPlace::Wall, EXISTING_WALL, "to be checked by someone licensed".to_owned())
}

/// The two ways of an uplift: to the footings, and to the wall.
#[must_use]
pub fn uplift_paths(checks: &[Check], frame: &FrameChecks) -> [LoadPath; 2] {
    let up = Some(Way::Up);
    let of = |place, name: &'static str, only, names: &[&str], member: &str| {
        let is_its = |check: &&Check| member.is_empty() || check.member == member;
        link(place, name, named(checks, only, names).filter(is_its))
    };
    let roof = [
        of(LinkPlace::Sheet, "roof sheet", None, &[PULLED_OVER], ""),
        of(LinkPlace::SheetScrew, "sheet screws", None, &[PULLED_OUT], ""),
        purlins(checks, Way::Up),
        of(LinkPlace::PurlinScrew, "purlin screws", None, &[PULL_OUT, HEADS_PULL], SCREWS),
    ];
    let nothing = |link| or_nothing(link, NOTHING_LIFTS, frame.missing);
    let feet =
        |place, name, names| nothing(link(place, name, named(checks, up, names).chain(named(checks, None, &[STANDS]))));
    // The wood around the pegs is a distance, and no share of a force: it counts where it leaves nothing that holds.
    let heads = sticks(frame.posts, Way::Up, &[NEEDS_WOOD, PULLS_ON_PEGS]);
    let heads = heads.filter(|check| !check.is_kept());
    let line = [
        link(LinkPlace::AtBeam, "rafter tie at the beam", ties(checks, AT_BEAM)),
        nothing(link(LinkPlace::Beam, "beam bent upward", sticks(frame.beam, Way::Up, &[BENDS]))),
        or_nothing(
            link(LinkPlace::Scarf, "scarf", sticks(frame.scarfs, Way::Up, &[LIFTED_OPEN])),
            NO_SCARF,
            frame.missing,
        ),
        nothing(link(LinkPlace::PostTop, "post top", heads)),
        feet(LinkPlace::PostFoot, "post base", &[HOLDS_DOWN, TEARS]),
        feet(LinkPlace::PierTop, "anchor in the concrete", &[ANCHORED]),
        feet(LinkPlace::PierFoot, "pier on its footing", &[TIED]),
        feet(LinkPlace::Footing, "weight of the footing", &[STAYS_DOWN]),
    ];
    let fixings = named(checks, None, &[HOLD_DOWN]).chain(named(checks, up, &[WASHERS, STEEL]));
    let house = [
        link(LinkPlace::AtLedger, "rafter tie at the ledger", ties(checks, AT_LEDGER)),
        link(LinkPlace::LedgerFixing, "ledger fixings", fixings.filter(|check| check.member == FIXINGS)),
        wall(),
    ];
    [
        LoadPath {
            name: "the path that holds the roof down",
            links: roof.iter().cloned().chain(line).collect(),
            way: Way::Up,
        },
        LoadPath {
            name: "the path that holds the rafters' heads down",
            links: roof.into_iter().chain(house).collect(),
            way: Way::Up,
        },
    ]
}

/// The two ways of a weight: to the footings, and to the wall.
#[must_use]
pub fn gravity_paths(checks: &[Check], frame: &FrameChecks) -> [LoadPath; 2] {
    let down = Some(Way::Down);
    let of = |place, name, names| link(place, name, named(checks, None, names));
    let sheet = unknown(LinkPlace::Sheet, "roof sheet", "its span is its maker's matter".to_owned());
    let roof =
        [sheet, purlins(checks, Way::Down), link(LinkPlace::Rafter, "rafter", sticks(frame.rafters, Way::Down, &[]))];
    let is_stick = |check: &&Check| {
        let is_piece = check.member.strip_prefix('L').is_some_and(is_number);
        (is_piece || check.member == "ledger") && goes(check, Way::Down)
    };
    let under_beam = [
        link(LinkPlace::Beam, "beam", sticks(frame.beam, Way::Down, &[])),
        link(LinkPlace::Scarf, "scarf", sticks(frame.scarfs, Way::Down, &[])),
        link(LinkPlace::Post, "post", sticks(frame.posts, Way::Down, &[PUSHED, SHEARS, END_GRAIN])),
        of(LinkPlace::PostFoot, "post foot", &["stands on its foot"]),
        of(LinkPlace::PierTop, "concrete under the base", &[CARRIES_BASE]),
        of(LinkPlace::Footing, "footing on the soil", &[PRESSES]),
    ];
    let fixings = named(checks, None, &[HOLD_UP]).chain(named(checks, down, &[WASHERS, STEEL]));
    let at_wall = [
        link(LinkPlace::Ledger, "ledger", checks.iter().filter(is_stick)),
        link(LinkPlace::LedgerFixing, "ledger fixings", fixings),
        wall(),
    ];
    [
        LoadPath {
            name: "the way of the weight to the ground",
            links: roof.iter().cloned().chain(under_beam).collect(),
            way: Way::Down,
        },
        LoadPath {
            name: "the way of the weight to the wall",
            links: roof.into_iter().chain(at_wall).collect(),
            way: Way::Down,
        },
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

    /// The path as one check: its weakest link. A link that is not known leaves it not judged, unless a known one fails; where
    /// that is the existing wall alone, for others to judge.
    #[must_use]
    pub fn check(&self) -> Check {
        let unknown: Vec<&str> = self.unknown().map(|link| link.name).collect();
        let Some((weakest, ratio)) = self.weakest().and_then(|link| Some((link, link.ratio?))) else {
            return Check::not_judged(self.name, WEAKEST_LINK, "none of its links is known");
        };
        let at = format!("({})", weakest.name);
        if !unknown.is_empty() && Verdict::sum_of_shares(ratio).passes() {
            let why = format!(
                "not known: {}; the weakest of those known: {}, at {} %",
                unknown.join(", "),
                weakest.name,
                Fixed(ratio * 100.0, 0)
            );
            let check = Check::not_judged(self.name, WEAKEST_LINK, why);
            return if unknown == [EXISTING_WALL] { check.for_others() } else { check };
        }
        let cited = Citation::common_practice("a chain is as strong as its weakest link");
        let step = |link: &PathLink| {
            let cited = Citation { confidence: cited.confidence.max(link.confidence), ..cited };
            Step::new(link.name, link.says.clone(), cited)
        };
        let steps = self.links.iter().map(step).collect();
        let made = Worked::new(Verdict::sum_of_shares(ratio), steps);
        Check::new(self.name, WEAKEST_LINK, at, weakest.combination.clone(), Ok::<_, String>(made)).part(weakest.part)
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::units::UnitSystem;

    fn judged(member: &str, name: &str, at: &str, ratio: f64) -> Check {
        let made = Worked::new(Verdict::sum_of_shares(ratio), Vec::new());
        Check::new(member, name, at, "0.6D + 0.6W: lifting", Ok::<_, String>(made))
    }

    /// Invented ratios, every link of both ways up.
    fn all() -> Vec<Check> {
        vec![
            judged("roof sheet", PULLED_OVER, "", 0.38),
            judged("sheet screws", PULLED_OUT, "", 0.25),
            judged("N6", "bends both ways", "at the rake", 0.7).only(Way::Up),
            judged("N6", "shears", "", 0.3).only(Way::Up),
            judged("purlin screws", PULL_OUT, "in row N2", 0.24),
            judged("purlin screws", HEADS_PULL, "in row N2", 0.33),
            judged("R3", PULLS_ON_TIES, AT_BEAM, 0.5),
            judged("R3", PULLS_ON_TIES, AT_LEDGER, 0.6),
            judged("base of P1", HOLDS_DOWN, "", 0.4).only(Way::Up),
            judged("base of P2", HOLDS_DOWN, "", 0.75).only(Way::Up),
            judged("anchor of P1", ANCHORED, "", 0.3).only(Way::Up),
            judged("pier of P1", TIED, "", 0.1).only(Way::Up),
            judged("footing of P1", STAYS_DOWN, "", 0.9).only(Way::Up),
            judged("footing of P2", STAYS_DOWN, "", 0.8).only(Way::Up),
            judged("ledger fixings", HOLD_DOWN, "", 0.55),
        ]
    }

    fn frame() -> [Vec<Check>; 3] {
        let one = |member, name, ratio| vec![judged(member, name, "", ratio).going(Way::Up)];
        [one("B1", BENDS, 0.2), one("scarf 1", LIFTED_OPEN, 0.1), one("P2", PULLS_ON_PEGS, 0.5)]
    }

    fn checks_of(frame: &[Vec<Check>; 3]) -> FrameChecks<'_> {
        let [beam, scarfs, posts] = frame;
        FrameChecks { beam, scarfs, posts, ..FrameChecks::default() }
    }

    #[test]
    fn the_weakest_link_speaks_for_the_path() {
        let [down, _] = uplift_paths(&all(), &checks_of(&frame()));
        assert_eq!(down.links.len(), 12);
        assert_eq!(down.unknown().count(), 0);
        let check = down.check();
        assert_eq!(
            check.says(UnitSystem::Imperial),
            "the path that holds the roof down is as strong as its weakest link (weight of the footing): 90 % of what it \
             may, under 0.6D + 0.6W: lifting"
        );
        assert!(check.passes());
        assert_eq!(check.steps()[7].says, "P2 pulls on its pegs: 50 %, under 0.6D + 0.6W: lifting");
        assert_eq!(
            check.steps()[3].says,
            "purlin screws pull their heads through the purlin in row N2: 33 %, under 0.6D + 0.6W: lifting"
        );
    }

    #[test]
    fn the_worst_of_many_posts_counts_and_can_fail() {
        let mut checks = all();
        checks.push(judged("footing of P3", STAYS_DOWN, "", 1.2).only(Way::Up));
        let missing = FrameChecks { missing: Some("the wind speed is missing"), ..FrameChecks::default() };
        let [down, _] = uplift_paths(&checks, &missing);
        assert_eq!(down.unknown().count(), 3);
        let check = down.check();
        assert_eq!(check.ratio(), Some(1.2), "a failing link is said even where others are not known");
        assert!(!check.passes());
    }

    /// Wood around a peg is a distance: enough of it is no share of a force, too little leaves nothing that holds.
    #[test]
    fn a_distance_counts_where_it_is_too_little() {
        for (wood, expected) in [(0.98, 0.5), (1.3, 1.3)] {
            let [beam, scarfs, mut posts] = frame();
            posts.push(judged("P2", NEEDS_WOOD, "", wood).of_distances().going(Way::Up));
            let [down, _] = uplift_paths(&all(), &checks_of(&[beam, scarfs, posts]));
            let top = down.links.iter().find(|link| link.place == LinkPlace::PostTop).unwrap();
            assert_eq!(top.ratio, Some(expected));
        }
    }

    #[test]
    fn a_link_that_is_not_known_is_no_strength() {
        let mut checks = all();
        checks.retain(|check| check.name != PULLED_OVER);
        checks.push(Check::not_judged("roof sheet", PULLED_OVER, "the load at a washer is missing"));
        let frame = frame();
        let [down, _] =
            uplift_paths(&checks, &FrameChecks { scarfs: &[], missing: Some("no wind"), ..checks_of(&frame) });
        let check = down.check();
        assert_eq!(check.ratio(), None);
        let says = check.says(UnitSystem::Imperial);
        assert!(says.contains("not judged: not known: roof sheet, scarf; the weakest of those known"), "{says}");
        let nothing = FrameChecks { missing: Some("no wind"), ..FrameChecks::default() };
        let [nothing, _] = uplift_paths(&[], &nothing);
        assert!(nothing.check().says(UnitSystem::Imperial).contains("none of its links is known"));
    }

    /// A person on a purlin, a sunk post and snow ask more of the same sticks: the way of the lift takes none of it, nor does
    /// the way of the weight take what lifts.
    #[test]
    fn a_link_takes_what_goes_its_way() {
        let other = |member: &str, name: &str, ratio: f64, under: &str| {
            let made = Worked::new(Verdict::sum_of_shares(ratio), Vec::new());
            Check::new(member, name, "", under, Ok::<_, String>(made))
        };
        let mut checks = all();
        checks.push(other("N6", "bends both ways", 0.84, "D + P: a person on one purlin"));
        checks.push(other("N6", "bends both ways", 0.84, "D + P: a person on one purlin").only(Way::Down));
        checks.push(other("base of P3", HOLDS_DOWN, 2.0, "D + S: full on span 1"));
        checks.push(other(FIXINGS, WASHERS, 0.9, "D + 0.75S + 0.45W").only(Way::Down));
        checks.push(other(FIXINGS, WASHERS, 0.35, "0.6D + 0.6W").only(Way::Up));
        let [down, heads] = uplift_paths(&checks, &checks_of(&frame()));
        let of = |path: &LoadPath, name: &str| path.links.iter().find(|link| link.name == name).unwrap().clone();
        assert_eq!(down.weakest().map(|link| link.name), Some("weight of the footing"));
        assert_eq!(of(&down, "purlin").says, "N6 bends both ways at the rake: 70 %, under 0.6D + 0.6W: lifting");
        assert_eq!((of(&down, "post base").ratio, of(&heads, "ledger fixings").ratio), (Some(0.75), Some(0.55)));
        let [_, wall] = gravity_paths(&checks, &FrameChecks::default());
        assert_eq!(of(&wall, "purlin").says, "N6 bends both ways: 84 %, under D + P: a person on one purlin");
        assert_eq!(of(&wall, "ledger fixings").combination, "D + 0.75S + 0.45W");
        // Where nothing lifts a link, and every load is known, it holds.
        let [idle, _] = uplift_paths(&all(), &FrameChecks::default());
        assert_eq!((of(&idle, "post top").ratio, of(&idle, "post top").says.as_str()), (Some(0.0), NOTHING_LIFTS));
    }

    /// Nobody has told of the wall: that way is never shown to hold.
    #[test]
    fn the_wall_is_never_known() {
        let [_, heads] = uplift_paths(&all(), &checks_of(&frame()));
        assert_eq!(heads.unknown().map(|link| link.name).collect::<Vec<_>>(), ["existing wall"]);
        assert_eq!(heads.weakest().unwrap().name, "purlin");
        assert!(!heads.check().passes() && heads.check().is_for_others);
    }

    #[test]
    fn the_way_of_the_weight() {
        let rafters = [judged("R3", "bends", "", 0.6).only(Way::Down)];
        let beam =
            [judged("B1", "bends", "", 0.8).going(Way::Down), judged("B1", "bends", "over P2", 0.9).going(Way::Up)];
        let checks = vec![
            judged("N6", "bends both ways", "", 0.7).only(Way::Down),
            judged("L1", "bends", "", 0.5).only(Way::Down),
            judged("L1", "sags in all", "", 0.95),
            judged("ledger fixings", HOLD_UP, "", 1.1),
            judged("P1", "stands on its foot", "", 0.2),
            judged("pier of P1", CARRIES_BASE, "", 0.1),
            judged("footing of P1", PRESSES, "", 0.65),
        ];
        let frame = FrameChecks { rafters: &rafters, beam: &beam, ..FrameChecks::default() };
        let [ground, wall] = gravity_paths(&checks, &frame);
        let ratios: Vec<Option<f64>> = ground.links.iter().map(|link| link.ratio).collect();
        assert_eq!(ratios, [None, Some(0.7), Some(0.6), Some(0.8), None, None, Some(0.2), Some(0.1), Some(0.65)]);
        assert_eq!(ground.weakest().unwrap().name, "beam");
        let ratios: Vec<Option<f64>> = wall.links.iter().map(|link| link.ratio).collect();
        assert_eq!(ratios, [None, Some(0.7), Some(0.6), Some(0.5), Some(1.1), None]);
        assert_eq!(wall.check().ratio(), Some(1.1));
    }
}

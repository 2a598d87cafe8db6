//! All checks of one frame, joined.
use super::base::check_bases;
use super::beam::{BENDS, BeamChecks, check_beam};
use super::brace::check_braces;
use super::brace_pegs::check_brace_pegs;
use super::check::{Check, Way};
use super::feet::post_demands;
use super::governing::most;
use super::head_pegs::{NEEDS_WOOD, PULLS_ON_PEGS, lifted_heads};
use super::ledger::check_ledger;
use super::part::Part;
use super::post::{END_GRAIN, PUSHED, check_posts, pressed_posts};
use super::purlin::{SHEARS, check_purlins};
use super::purlin_screws::check_purlin_screws;
use super::rafter::{check_rafters, rafter_work};
use super::scarf::{LIFTED_OPEN, check_scarfs};
use super::sheet::check_sheet_screws;
use super::ties::check_rafter_ties;
use super::ties_across::check_ties_across;
use super::uplift::{CARRIES, FrameChecks, LoadPath, gravity_paths, uplift_paths};
use super::wood::Woods;
use crate::analysis::{BeamLine, RoofLoads, Stiffnesses, beam_line, roof_loads};
use crate::design::Shape;
use crate::loads::Duration;
use crate::members::stiffness;
use crate::project::{Project, ScarfPlace, Used};
use crate::unmade::Unmade;

/// Whether the frame carries, and all that led there.
#[derive(Clone, Debug, PartialEq)]
pub struct Strength {
    /// What acts on the roof.
    pub loads: RoofLoads,
    /// The beam line; nothing where its wood has no values.
    pub line: Option<BeamLine>,
    /// Where the scarfs are.
    pub scarfs: Vec<ScarfPlace>,
    /// The ways of the lift, to the footings and to the wall, then those of the weight.
    pub paths: Vec<LoadPath>,
    /// Every check, worst first.
    pub checks: Vec<Check>,
}

impl Strength {
    /// The check that asks most; one that could not be made counts as just failing.
    #[must_use]
    pub fn worst(&self) -> Option<&Check> {
        self.checks.first()
    }

    /// Of the checks that were made the one that asks most, and its share; sizes that are kept ask nothing.
    #[must_use]
    pub fn hardest(&self) -> Option<(&Check, f64)> {
        self.checks.iter().find_map(|check| Some((check, check.effort()?)))
    }

    /// The worst check of a stick.
    #[must_use]
    pub fn worst_of(&self, mark: &str) -> Option<&Check> {
        self.checks.iter().find(|check| check.member == mark)
    }

    /// What could not be judged, and is not for others to judge.
    pub fn not_judged(&self) -> impl Iterator<Item = &Check> {
        self.checks.iter().filter(|check| check.ratio().is_none() && !check.is_for_others)
    }
}

/// What carries without the beam line: rafters, what lies on them, their ties, the ledger.
struct Roof {
    loads: RoofLoads,
    missing: Vec<Unmade>,
    rafters: Vec<Check>,
    others: Vec<Check>,
}

impl Roof {
    fn of(project: &Project, shape: &Shape, woods: &Woods) -> Self {
        let loads = roof_loads(project, shape);
        let mut missing = loads.not_judged.clone();
        let rafters = match rafter_work(project, shape, &loads, woods) {
            Ok(work) => {
                missing.extend(work.missing.iter().cloned());
                withheld(check_rafters(project, shape, woods, &work), &work.missing)
            }
            Err(why) => vec![Check::not_judged("rafters", "bend, shear and sag", why)],
        };
        let rafters = Part::Rafter.of(rafters);
        let mut others = Part::Purlin.of(check_purlins(project, shape, &loads));
        others.extend(Part::PurlinScrews.of(check_purlin_screws(project, shape, &loads)));
        others.extend(Part::SheetScrews.of(check_sheet_screws(project, shape, &loads)));
        others.extend(check_rafter_ties(project, shape, &loads));
        others.extend(check_ties_across(project, shape, &loads));
        others.extend(check_ledger(project, shape, &loads));
        Self { loads, missing, rafters, others }
    }
}

/// Those of [`strength`]'s checks that ask nothing of the beam line, at a fraction of the work.
#[must_use]
pub fn roof_checks(project: &Project, shape: &Shape) -> Vec<Check> {
    let roof = Roof::of(project, shape, &Woods::new(project));
    roof.rafters.into_iter().chain(roof.others).filter(|check| !check.is_link).collect()
}

/// Works out loads, forces and checks.
#[must_use]
pub fn strength(project: &Project, shape: &Shape) -> Strength {
    let woods = Woods::new(project);
    let Roof { loads, mut missing, rafters, others: mut roof } = Roof::of(project, shape, &woods);
    let mut unknown = loads.not_judged.clone();
    let (line, frame) = match stiffnesses(&woods) {
        Ok(stiffness) => {
            let line = beam_line(project, shape, &loads, &stiffness);
            missing.extend(line.not_judged.iter().cloned());
            unknown.extend(line.not_judged.iter().cloned());
            let frame = FramePart::of(&BeamChecks::new(project, shape, &line, &woods), &unknown);
            (Some(line), frame)
        }
        Err(why) => {
            let why = Unmade::from(why);
            unknown.push(why.clone());
            (None, FramePart::unknown(&why))
        }
    };
    let demands = line.as_ref().map(|line| post_demands(shape, line)).unwrap_or_default();
    let bases = check_bases(project, shape, &demands, unknown.last());
    roof.extend(withheld(Part::Footing.of(bases), &unknown));
    let paths = paths(&roof, &rafters, &frame, unknown.first());
    // Of what cannot be judged the cause stands first.
    let all = [not_loaded(&missing), roof, rafters, frame.beam, frame.scarfs, frame.posts, frame.braces];
    let mut checks: Vec<Check> = all.into_iter().flatten().collect();
    checks.retain(|check| !check.is_link);
    // The ways of the lift are checks themselves: a joint that nobody chose yet breaks them.
    checks.extend(paths.iter().take(N_UPLIFT).map(LoadPath::check));
    crate::units::sort_by_number(&mut checks, |check| -check.rank());
    let scarfs = shape.beam.scarfs.iter().map(|scarf| scarf.place).collect();
    Strength { loads, line, scarfs, paths, checks }
}

/// Of the paths the first ones are those of the lift.
const N_UPLIFT: usize = 2;

/// What could not be loaded, each said once.
fn not_loaded(missing: &[Unmade]) -> Vec<Check> {
    let first = |(place, why): &(usize, &Unmade)| missing.iter().position(|other| other == *why) == Some(*place);
    let said = missing.iter().enumerate().filter(first);
    said.map(|(_, why)| Check::not_judged("the frame", "is loaded", why)).collect()
}

/// The checks of the beam line by their sticks.
struct FramePart {
    beam: Vec<Check>,
    scarfs: Vec<Check>,
    posts: Vec<Check>,
    braces: Vec<Check>,
}

impl FramePart {
    /// `unknown`: the loads that could not be worked out.
    fn of(with: &BeamChecks, unknown: &[Unmade]) -> Self {
        let (down, up) = (&with.going(Way::Down), &with.going(Way::Up));
        let (mut beam, mut scarfs, mut posts) = (check_beam(with), check_scarfs(with), check_posts(with));
        add_links(&mut beam, Way::Up, &[BENDS], || up.bent_upward());
        add_links(&mut beam, Way::Down, &[], || check_beam(down));
        add_links(&mut scarfs, Way::Up, &[LIFTED_OPEN], || check_scarfs(up));
        add_links(&mut scarfs, Way::Down, &[], || check_scarfs(down));
        add_links(&mut posts, Way::Up, &[NEEDS_WOOD, PULLS_ON_PEGS], || lifted_heads(with));
        add_links(&mut posts, Way::Down, &[PUSHED, SHEARS, END_GRAIN], || pressed_posts(down));
        let pegs = Part::Pegs.of(check_brace_pegs(with));
        let braces = check_braces(with).into_iter().chain(pegs).collect();
        let known = |part: Part, checks| withheld(part.of(checks), unknown);
        let (beam, scarfs) = (known(Part::Beam, beam), known(Part::Scarf, scarfs));
        let (posts, braces) = (known(Part::Post, posts), known(Part::Brace, braces));
        Self { beam, scarfs, posts, braces }
    }

    fn unknown(why: &Unmade) -> Self {
        let missing = |member: &str, part| vec![Check::not_judged(member, CARRIES, why).part(part)];
        let (beam, posts) = (missing("beam", Part::Beam), missing("posts", Part::Post));
        Self { beam, scarfs: Vec::new(), posts, braces: missing("braces", Part::Brace) }
    }
}

/// A link takes the worst check that goes its way. Where the worst of all goes the other way, the checks are made again of the
/// combinations of this way alone.
fn add_links(checks: &mut Vec<Check>, way: Way, names: &[&str], again: impl FnOnce() -> Vec<Check>) {
    let is_meant = |check: &&Check| check.way.is_some() && (names.is_empty() || names.contains(&check.name.as_str()));
    let worst = most(checks.iter().filter(|check| !check.is_link).filter(is_meant), |check| check.rank());
    if worst.is_some_and(|worst| worst.way != Some(way)) {
        checks.extend(again().into_iter().filter(|check| is_meant(&check)).map(|check| check.only(way)));
    }
}

fn paths(roof: &[Check], rafters: &[Check], frame: &FramePart, missing: Option<&Unmade>) -> Vec<LoadPath> {
    let frame = FrameChecks {
        rafters,
        beam: &frame.beam,
        scarfs: &frame.scarfs,
        posts: &frame.posts,
        missing: missing.map(|why| why.says.as_str()),
    };
    uplift_paths(roof, &frame).into_iter().chain(gravity_paths(roof, &frame)).collect()
}

/// A check that passes while a load is missing has not been made; one that fails without it stands, and so does what
/// follows from sizes alone.
fn withheld(mut checks: Vec<Check>, missing: &[Unmade]) -> Vec<Check> {
    let Some(why) = missing.first() else { return checks };
    for check in checks.iter_mut().filter(|check| check.hangs_on_loads && check.passes()) {
        let share = check.ratio().unwrap_or_default() * 100.0;
        *check = check.unmade(why, &format!("The loads that are known ask {share:.0} % of what it may"));
    }
    checks
}

fn stiffnesses(woods: &Woods) -> Result<Stiffnesses, String> {
    let of = |used| woods.member(used, Duration::TwoMonths).map(|wood| stiffness(&wood).value);
    Ok(Stiffnesses { beam: of(Used::Beam)?, post: of(Used::Post)?, brace: of(Used::Brace)? })
}

//! The ledger between the posts of the wall: bent, sheared beside its fixings, sagging; its fixings; and what the wall is
//! left with.
//!
//! Wind is that on the main frame, square to the wall; wind along the wall asks its fixings alone. A person
//! stands over the head of the rafter where the ledger is asked most.
use super::check::{Check, EXISTING_WALL, Under, Way};
use super::governing::most;
use super::known::known_loads;
use super::ledger_along::{Cause, most_across, most_along};
use super::ledger_fixings::check_fixings;
use super::ledger_patches::Patches;
use super::ledger_sag::sags;
use super::part::Part;
use super::wood::{Woods, load_duration};
use crate::analysis::{
    Found, HALF_ON_TAIL, LedgerFrame, LedgerLoads, LedgerSpan, Loading, RafterHand, RafterLine, RoofCase, RoofLoads,
    WallShares, carried_widths, loadings, partial_on_rafters, person_at,
};
use crate::design::Shape;
use crate::frame::{Factorised, Solution};
use crate::geometry::{ledger_hole, rakes, wall_posts};
use crate::loads::{Action, Duration};
use crate::members::{
    Amount, Bracing, Member, NetSection, Pocket, ShearPlace, UnbracedCase, check_bending, check_shear, stiffness,
};
use crate::project::{Project, Used};
use crate::units::{Force, Length, LineLoad, Moment};
use crate::unmade::{Input, Unmade};
use crate::working::{Citation, Step};

/// Most posts of the wall that are worked out.
const MOST_POSTS: usize = 400;
/// A place this near a post of the wall is over it.
const NEAR: Length = Length::inches(0.01);

/// How the ledger is worked out.
pub(super) const CONTINUOUS: &str = "continuous beam over the wall's posts";

/// One combination on the ledger.
pub(super) struct Asked {
    pub(super) loading: Loading,
    pub(super) loads: LedgerLoads,
    /// Off the wall, of a unit width of roof.
    pub(super) level: LineLoad,
}

impl Asked {
    /// What it asks, by statics of that name.
    pub(super) fn under(&self, pattern: &str, formula: &'static str) -> Under {
        let under = Under::of(&self.loading, Found::Formula(formula));
        Under { combination: self.named(pattern), ..under }
    }

    /// Its combination; with where the snow is whole, if it is not everywhere.
    pub(super) fn named(&self, pattern: &str) -> String {
        if pattern.is_empty() { self.loading.name.clone() } else { format!("{}, {pattern}", self.loading.name) }
    }
}

/// The ledger, solved, with every combination.
pub(super) struct Ledger<'a> {
    pub(super) project: &'a Project,
    pub(super) roof: &'a RoofLoads,
    pub(super) frame: &'a LedgerFrame,
    pub(super) solved: &'a Factorised<'a>,
    pub(super) shares: WallShares,
    pub(super) asked: Vec<Asked>,
    /// Up at each post of the wall, one combination after the other.
    pub(super) reactions: Vec<Force>,
    /// Dry in use or not, ten years.
    pub(super) member: Member,
    pub(super) line: RafterLine,
    /// Balanced snow half gone from some spans; nothing where none of them is continuous.
    pub(super) patches: Option<Patches>,
}

/// Every check of the ledger, of its fixings, and the word on the existing wall.
#[must_use]
pub fn check_ledger(project: &Project, shape: &Shape, loads: &RoofLoads) -> Vec<Check> {
    judge(project, shape, loads).unwrap_or_else(|why| {
        vec![
            Check::not_judged("ledger", "bends, shears and sags", &why).part(Part::Ledger),
            Check::not_judged("ledger fixings", "hold the ledger", &why).part(Part::LedgerFixings),
            Check::not_judged(EXISTING_WALL, "carries what the ledger hands it", &why).for_others(),
        ]
    })
}

fn judge(project: &Project, shape: &Shape, loads: &RoofLoads) -> Result<Vec<Check>, Unmade> {
    known_loads(loads)?;
    let member = Woods::new(project).member(Used::Ledger, Duration::TenYears)?;
    let posts = wall_posts(&project.site, project.frame.beam_length);
    if posts.is_empty() {
        let says = "the posts of the wall are missing: where the first is and how far apart they stand";
        return Err(Unmade::missing(Input::WallPosts, says));
    }
    if posts.len() > MOST_POSTS {
        return Err(
            format!("{} posts of the wall are more than the {MOST_POSTS} that are worked out", posts.len()).into()
        );
    }
    let half = project.frame.timbers.rafter.sawn.breadth / 2.0;
    let widths = carried_widths(&shape.rafters, rakes(&project.roofing, &shape.rafters, half));
    let rafters: Vec<(Length, Length)> = shape.rafters.iter().copied().zip(widths).collect();
    let of = (member.section(), stiffness(&member).value);
    let frame = LedgerFrame::new(&shape.ledger, &posts, &rafters, of)?;
    let solved = frame.frame.factorise(&frame.frame.all_active()).map_err(|error| error.to_string())?;
    let shares = WallShares::new(&frame, &solved).map_err(|error| error.to_string())?;
    let line = RafterLine::new(shape, loads.lean_to.roof_length().length());
    let asked = asked(project, loads, &line);
    let n_posts = frame.posts.len();
    let all = asked.iter().flat_map(|asked| (0..n_posts).map(move |post| (asked, post)));
    let reactions = all.map(|(asked, post)| shares.reaction(post, &asked.loads)).collect();
    let mut ledger = Ledger {
        project,
        roof: loads,
        frame: &frame,
        solved: &solved,
        shares,
        asked,
        reactions,
        member,
        line,
        patches: None,
    };
    ledger.patches = Patches::new(&ledger)?;
    let person = ledger.asked.iter().find(|asked| asked.loads.person > Force::ZERO);
    let governing = [ledger.extreme(1.0), ledger.extreme(-1.0), person];
    let mut solutions = Vec::new();
    for asked in governing.into_iter().flatten() {
        let solution = solved.solve(&frame.case(&asked.loads)).map_err(|error| error.to_string())?;
        solutions.push((asked, solution));
    }
    let mut checks: Vec<Check> = ledger.bends(&solutions).into_iter().chain(ledger.shears(&solutions)).collect();
    solutions.retain(|(asked, _)| !frame.total(&asked.loads).is_negative());
    let pressed = ledger.bends(&solutions).into_iter().chain(ledger.shears(&solutions));
    checks.extend(pressed.map(|check| check.only(Way::Down)));
    checks.extend(sags(&ledger)?);
    checks = Part::Ledger.of(checks);
    let causes = Cause::all(&ledger, shape);
    checks.extend(Part::LedgerFixings.of(check_fixings(&ledger, &causes)));
    checks.push(ledger.wall(&causes));
    Ok(checks)
}

fn asked(project: &Project, loads: &RoofLoads, line: &RafterLine) -> Vec<Asked> {
    let mut cases: Vec<RoofCase> = loads.cases.iter().map(RoofCase::without_steps).collect();
    // Half of the snow gone from between the seats leaves the ledger less: that one is no matter here.
    cases.extend(partial_on_rafters(line, loads).map(|[on_tail, _]| on_tail));
    cases.push(person_at(&project.place, line.ledger, "over one rafter's head"));
    asked_by(project, loads, line, &cases, |loading| (!is_covered(&loading, &cases)).then_some(loading))
}

/// Those combinations of these cases on the ledger.
pub(super) fn asked_by(
    project: &Project,
    loads: &RoofLoads,
    line: &RafterLine,
    cases: &[RoofCase],
    wanted: impl Fn(Loading) -> Option<Loading>,
) -> Vec<Asked> {
    let hand = RafterHand::new(line, &loads.dead, cases);
    let area = project.frame.timbers.ledger.sawn.area();
    let of = |loading: Loading| {
        let (strip, own) = (hand.strip(&loading), hand.own(&loading));
        let weight = loads.dead.wood.of(loading.is_uplift).line_load(area) * loading.dead;
        let point = |(factor, index): &(f64, usize)| Some(cases[*index].point?.1 * *factor);
        let person = loading.parts.iter().filter_map(point).sum();
        let loads = LedgerLoads { strip: strip.ledger, rafter: own.ledger, own: weight, person };
        Asked { loading, loads, level: strip.level }
    };
    loadings(project.place.edition, cases, loads.dead.sure).into_iter().filter_map(wanted).map(of).collect()
}

/// Snow half gone from the tails leaves the ledger more than even snow: beside it, even snow with wind is no matter.
fn is_covered(loading: &Loading, cases: &[RoofCase]) -> bool {
    let first = |action| cases.iter().position(|case| case.action == action);
    let is_partial = cases.iter().any(|case| case.name.ends_with(HALF_ON_TAIL));
    let is_even = |index: usize| Some(index) == first(Action::Snow);
    is_partial && loading.parts.len() > 1 && loading.parts.iter().any(|(_, index)| is_even(*index))
}

impl Ledger<'_> {
    /// The combination with the most down (sign 1) or up (−1), measured by how long the wood carries it.
    fn extreme(&self, sign: f64) -> Option<&Asked> {
        let size = |asked: &&Asked| self.frame.total(&asked.loads).to_pounds() * sign;
        let real = self.asked.iter().filter(|asked| size(asked) > 0.0);
        most(real, |asked| size(asked) / asked.loading.duration.factor())
    }

    /// What it carries of the dead load, unfactored.
    pub(super) fn dead(&self) -> Force {
        let alone = self.asked.iter().find(|asked| asked.loading.parts.is_empty() && asked.loading.dead == 1.0);
        alone.map_or(Force::ZERO, |asked| self.frame.total(&asked.loads))
    }

    fn bends(&self, solutions: &[(&Asked, Solution)]) -> Option<Check> {
        let places = solutions.iter().flat_map(|(asked, solution)| {
            (0..self.frame.spans.len()).map(move |span| {
                let found = solution.moment(span).extremes();
                let is_max = found.max.abs() >= found.min.abs();
                let (value, at) = if is_max { (found.max, found.max_at) } else { (found.min, found.min_at) };
                (*asked, "", span, value, at)
            })
        });
        let patches = self.patches.as_ref().and_then(|patches| patches.moment(self));
        let places = places.chain(patches.map(|hard| (hard.asked, hard.pattern, hard.span, hard.value, hard.at)));
        let size = |place: &(&Asked, &str, usize, Moment, Length)| {
            place.3.abs().to_pound_inches() / place.0.loading.duration.factor()
        };
        let (asked, pattern, index, value, at) = most(places, size)?;
        let span = &self.frame.spans[index];
        let is_over = (span.held_left && at < NEAR) || (span.held_right && span.length() - at < NEAR);
        let longest = self.frame.spans.iter().map(LedgerSpan::length).fold(Length::ZERO, Length::max);
        let member = self.member.during(load_duration(asked.loading.duration));
        let bracing = Bracing::Free { length: longest, case: UnbracedCase::Other };
        let made = self.section(is_over).and_then(|net| check_bending(&member, value, &net, bracing));
        let made = made.map(|mut made| {
            made.steps.insert(0, step(asked, span.length()));
            made
        });
        let at_words = if is_over { "over a post of the wall" } else { "between posts of the wall" };
        let check = Check::new(
            mark(span.piece),
            "bends",
            at_words,
            asked.under(pattern, CONTINUOUS).asks("M", value.abs()),
            made,
        );
        Some(check.at_x(span.from + at))
    }

    /// Whole, or less the holes of the fixings over a post of the wall.
    fn section(&self, is_over: bool) -> Result<NetSection, crate::members::Refused> {
        let mut net = NetSection::whole(self.member.section())?;
        let fixings = &self.project.fixings.ledger;
        let Some(hole) = ledger_hole(fixings) else { return Ok(net) };
        for row in (0..fixings.rows).filter(|_| is_over) {
            let middle = fixings.height(row);
            net = net.without(Pocket {
                from_left: Length::ZERO,
                breadth: self.member.section().breadth,
                from_bottom: middle - hole / 2.0,
                depth: hole,
            })?;
        }
        Ok(net)
    }

    /// The fixings bring the force in: down loads hang the wood under the lowest row, uplift that over the highest.
    fn shears(&self, solutions: &[(&Asked, Solution)]) -> Option<Check> {
        let depth = self.member.section().depth;
        let fixings = &self.project.fixings.ledger;
        let rows = fixings.rows;
        if rows == 0 {
            let why = Unmade::missing(Input::LedgerRows, "the rows of the ledger's fixings are missing");
            return Some(Check::not_judged("ledger", "shears", why));
        }
        let places = solutions.iter().flat_map(|(asked, solution)| {
            let is_down = self.frame.total(&asked.loads) > Force::ZERO;
            let effective = if is_down { depth - fixings.height(0) } else { fixings.height(rows - 1) };
            self.frame.spans.iter().enumerate().flat_map(move |(index, span)| {
                let shear = solution.shear(index);
                let ends = [(span.held_left, Length::ZERO, span.from), (span.held_right, span.length(), span.to)];
                let held = ends.into_iter().filter(|(held, _, _)| *held);
                held.map(|(_, at, x)| (*asked, "", span, shear.at(at), x, effective)).collect::<Vec<_>>()
            })
        });
        let patches = self.patches.as_ref().and_then(|patches| patches.shear(self));
        let places = places.chain(patches.map(|hard| {
            let span = &self.frame.spans[hard.span];
            (hard.asked, hard.pattern, span, hard.value, span.from + hard.at, depth - fixings.height(0))
        }));
        let from_end = |x: Length| {
            let post = self.frame.posts.iter().find(|post| post.x.is_near(x, NEAR));
            post.map_or(Length::ZERO, |post| post.from_end)
        };
        let (asked, pattern, span, value, x, effective) = most(places, |(asked, _, _, value, x, effective)| {
            let share = *effective / depth;
            let squared = if from_end(*x) < depth * 5.0 { share * share } else { 1.0 };
            value.abs().to_pounds() / (asked.loading.duration.factor() * share * squared).max(1e-9)
        })?;
        let place = ShearPlace::Connection { effective, from_end: from_end(x) };
        let member = self.member.during(load_duration(asked.loading.duration));
        let made = check_shear(&member, value, &place).map(|mut made| {
            made.steps.insert(0, step(asked, span.length()));
            made
        });
        let under = asked.under(pattern, CONTINUOUS).asks("V", value.abs());
        let check = Check::new(mark(span.piece), "shears", "beside a post of the wall", under, made);
        Some(check.at_x(x))
    }

    /// What the wall must take is said, and never judged: nobody has told of what it is made.
    fn wall(&self, causes: &Result<Vec<Cause>, Unmade>) -> Check {
        let units = self.project.units;
        let all = || {
            let places = self.asked.iter().flat_map(|asked| (0..self.frame.posts.len()).map(move |post| (asked, post)));
            places.zip(&self.reactions).map(|((asked, post), up)| (*up, asked.level * self.shares.width[post]))
        };
        let largest = |of: fn((Force, Force)) -> Force| all().map(of).fold(Force::ZERO, Force::max);
        let partly = self.patches.iter().flat_map(|patches| patches.reactions(self)).map(|(_, reaction, ..)| reaction);
        let (down, up) = (partly.fold(largest(|(up, _)| up), Force::max), largest(|(up, _)| -up));
        let (out, inward) = (largest(|(_, level)| level), largest(|(_, level)| -level));
        let say = |force| Amount::Force(force).text(units);
        let along = match causes.as_ref().map(|causes| most_along(causes, &self.shares)) {
            Ok(Some(along)) => format!("and {} along it", say(along)),
            Err(_) => "and what wind or earthquake along it asks, which is not known yet,".to_owned(),
            Ok(None) => "and nothing along it".to_owned(),
        };
        let across = causes.as_ref().ok().and_then(|causes| most_across(causes, &self.shares));
        let across = across
            .map_or_else(String::new, |off| format!(", in an earthquake across it {} off it and toward it", say(off)));
        let why = format!(
            "the existing wall must be checked by someone licensed for {} down, {} up, {} outward, {} inward {along} at a \
             post of it{across}, beside what it carries now",
            say(down),
            say(up),
            say(out),
            say(inward)
        );
        Check::not_judged(EXISTING_WALL, "carries what the ledger hands it", why).for_others()
    }
}

pub(super) fn mark(piece: usize) -> String {
    format!("L{piece}")
}

fn step(asked: &Asked, length: Length) -> Step {
    let says = format!(
        "{:.1} lb a foot of roof, {:.0} lb of each rafter's own weight, {:.0} lb of a person on the ledger; stretch of {:.1} in",
        asked.loads.strip.to_plf(),
        asked.loads.rafter.to_pounds(),
        asked.loads.person.to_pounds(),
        length.to_inches()
    );
    Step::new("load of the ledger", says, Citation::from_memory("statics", "rafters at their places"))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::analysis::roof_loads;
    use crate::evaluate;
    use crate::project::demo;
    use crate::units::{AreaLoad, UnitSystem};

    /// The barn with its lowest screws where the top ones keep four diameters to the ledger's top.
    fn barn() -> Project {
        let mut barn = demo::wool_barn();
        barn.fixings.ledger.fastener = "lag_5_8".to_owned();
        (barn.fixings.ledger.rows, barn.fixings.ledger.lowest) = (3, Length::inches(2.5));
        (barn.site.first_wall_post, barn.site.wall_post_spacing) = (Length::inches(12.0), Length::inches(96.0));
        barn
    }

    fn checks(project: &Project) -> Vec<Check> {
        on_the_shape_of(project, project)
    }

    /// With the geometry of another project, where its own would be stopped before it is checked.
    fn on_the_shape_of(of: &Project, project: &Project) -> Vec<Check> {
        let built = evaluate(of).built.unwrap();
        check_ledger(project, &built.shape, &roof_loads(project, &built.shape))
    }

    fn found<'a>(checks: &'a [Check], name: &str) -> &'a Check {
        checks.iter().find(|check| check.name == name).unwrap()
    }

    /// Reaction of the most loaded post of the wall, down, as the word on the wall gives it.
    fn down(checks: &[Check]) -> f64 {
        let says = found(checks, "carries what the ledger hands it").says(UnitSystem::Imperial);
        let before = says.split(" lb down").next().unwrap();
        before.rsplit(' ').next().unwrap().replace(',', "").parse().unwrap()
    }

    /// Reaction in the step of a check of the fixings.
    fn reaction(check: &Check) -> f64 {
        let step = check.steps().iter().find(|step| step.gives == "shear of one fixing").unwrap();
        step.says.trim_start_matches("Z = R/n = ").split('/').next().unwrap().parse().unwrap()
    }

    /// Snow of 33.6 psf and a dead load of 2.23 psf on 24 in, 138.97 in out: the ledger seat at 2.5 takes (128 − 69.49)/125.5
    /// of it, 386.9 lb a rafter, and 61.8 of the rafter's weight. Four a post, on the second of two spans up to 1.25 times, and
    /// 110 lb of ledger: 1,900 to 2,360 lb. Snow with wind that presses asks a little more.
    #[test]
    fn the_wall_is_told_what_it_must_take() {
        let found = checks(&barn());
        let rafter = (33.6 + 2.4185) * 2.0 * 138.970_143 / 12.0 * (128.0 - 69.485_071) / 125.5 + 61.842;
        let (least, most) = (4.0 * rafter + 110.0, 5.0 * rafter + 140.0);
        let alone = reaction(self::found(&found, "hold the ledger up"));
        assert!(alone > least && alone < most, "{alone} {rafter}");
        assert!(down(&found) >= alone && down(&found) < 1.1 * most, "{} {rafter}", down(&found));
        let wall = self::found(&found, "carries what the ledger hands it");
        assert!(!wall.passes() && wall.ratio().is_none());
        assert!(wall.says(UnitSystem::Imperial).contains("outward"));
    }

    /// 2·1.5·⅝ in of wood beside the screws, 2·4·⅝ in where something pushes along the wall: a row of its own that does not pass. What
    /// holds the ledger up takes it for granted, and is no surer than that.
    #[test]
    fn the_width_of_the_wall_s_posts_is_asked() {
        let all = checks(&barn());
        let edges = found(&all, "leaves wood beside the ledger's fixings");
        assert!(!edges.passes() && edges.ratio().is_none() && edges.is_for_others);
        let says = edges.says(UnitSystem::Imperial);
        assert!(says.contains("measure how wide") && says.contains("1 7\u{2044}8\u{2033} wide"), "{says}");
        assert!(says.contains("5\u{2033} where wind or earthquake pushes along"), "{says}");
        let hold = found(&all, "hold the ledger up");
        assert!(hold.steps().iter().all(|step| !step.says.contains("not judged:")));
        assert_eq!(hold.confidence(), Some(crate::working::Confidence::Low));
    }

    /// R = 2,334 lb on three lag screws of 5/8 in: 778 lb each; pull R·2.5·7.5/(2.5² + 5² + 7.5²) = R·18.75/87.5 of the top one.
    /// Withdrawal 1800·0.41^1.5·0.625^0.75·(5.5 − 0.406)·1.15; aside mode IV: 0.471²/4·√(2·4600·45000/(3·(1 + 4600/2100)))
    /// = 364.8 lb, ·1.15·0.4 (green, three held together)·0.981.
    #[test]
    fn fixings_by_hand() {
        let all = checks(&barn());
        let hold = found(&all, "hold the ledger up");
        let r = reaction(hold);
        let out = 1800.0 * 0.41_f64.powf(1.5) * 0.625_f64.powf(0.75) * (5.5 - 0.40625) * 1.15;
        let aside = 0.471 * 0.471 / 4.0 * (2.0 * 4600.0 * 45_000.0 / (3.0 * (1.0 + 4600.0 / 2100.0_f64))).sqrt();
        let aside = aside * 1.15 * 0.4 * 0.981;
        let (w, z) = (r * 18.75 / 87.5, r / 3.0);
        let expected = ((w * w / out + z * z / aside) / w.hypot(z)).max(z / aside);
        let ratio = hold.ratio().unwrap();
        assert!((ratio / expected - 1.0).abs() < 2e-3, "{ratio} {expected} {hold:?}");
        assert!(!hold.passes());
    }

    /// A wall post every 24 in in dry wood carries it; three times as far apart it does not.
    #[test]
    fn both_sides_of_the_limit() {
        let mut dry = barn();
        dry.wood.is_dry = true;
        dry.site.wall_post_spacing = Length::inches(24.0);
        let all = checks(&dry);
        let fails: Vec<String> = all
            .iter()
            .filter(|check| check.member != EXISTING_WALL && !check.passes())
            .map(|check| format!("{}: {}", check.name, check.says(UnitSystem::Imperial)))
            .collect();
        assert_eq!(fails, Vec::<String>::new());
        dry.site.wall_post_spacing = Length::inches(72.0);
        assert!(!found(&checks(&dry), "hold the ledger up").passes());
    }

    /// Load of D + S a foot of ledger: w = (33.6 + 2.23)·… as above by 2 ft. Over an inner post wL²/12 to wL²/7 on the net
    /// section of three holes.
    #[test]
    fn bending_is_that_of_a_continuous_beam() {
        let all = checks(&barn());
        let bends = found(&all, "bends");
        assert_eq!(bends.at, "over a post of the wall");
        let rafter = (33.6 + 2.2293) * 2.0 * 138.970_143 / 12.0 * (128.0 - 69.485_071) / 125.5 + 61.842;
        let even = rafter / 24.0;
        let net = NetSection::whole(Woods::new(&barn()).member(Used::Ledger, Duration::TenYears).unwrap().section());
        let whole = net.unwrap().least_modulus().to_cubic_inches();
        let share = |part: f64| even * 96.0 * 96.0 / part / whole / (575.0 * 1.15 * 1.2);
        let ratio = bends.ratio().unwrap();
        assert!(ratio > share(12.0) && ratio < share(6.5), "{ratio} {} {}", share(12.0), share(6.5));
    }

    /// One 3/4 in screw in each stud, 16 in apart: green wood shrinks round it and splits nothing, and it carries the snow, where
    /// one of 5/8 in takes 419 lb aside of 440, the snow whole on two spans beside a stud. Without snow and wind a person over one rafter's head asks more of a stud than
    /// 20 psf on the roof.
    #[test]
    fn a_person_counts_where_studs_are_close() {
        let mut close = barn();
        (close.site.first_wall_post, close.site.wall_post_spacing) = (Length::inches(4.0), Length::inches(16.0));
        (close.fixings.ledger.rows, close.fixings.ledger.lowest) = (1, Length::inches(5.0));
        let narrow = found(&checks(&close), "hold the ledger up").ratio().unwrap();
        assert!((narrow - 440.1 / 419.3).abs() < 2e-3, "{narrow}");
        close.fixings.ledger.fastener = "lag_3_4".to_owned();
        let snowy = checks(&close);
        assert!(found(&snowy, "hold the ledger up").passes(), "{:?}", found(&snowy, "hold the ledger up"));
        close.place.ground_snow = Some(AreaLoad::ZERO);
        close.place.wind_speed = crate::loads::WindSpeed::try_mph(20.0);
        let bare = on_the_shape_of(&demo::wool_barn(), &close);
        let hold = found(&bare, "hold the ledger up");
        assert_eq!(hold.combination, "D + P: a person over one rafter's head");
        assert!(reaction(hold) > 300.0 && reaction(hold) < 450.0);
    }

    /// Packing is a gap to the screws: ¾ in of it takes from what they carry, a sixteenth closes.
    #[test]
    fn packing_counts_as_a_gap() {
        let ratio = |packing: f64| {
            let mut packed = barn();
            packed.frame.ledger_packing = Length::inches(packing);
            found(&on_the_shape_of(&barn(), &packed), "hold the ledger up").ratio().unwrap()
        };
        let close = ratio(0.0);
        assert!((ratio(0.0625) / close - 1.0).abs() < 0.01);
        assert!(ratio(0.75) > close * 1.2, "{} {close}", ratio(0.75));
    }

    #[test]
    fn rows_far_apart_split_the_ledger() {
        let mut wide = barn();
        wide.fixings.ledger.row_gap = Length::inches(2.6);
        let all = checks(&wide);
        assert!((found(&all, "let the ledger shrink").ratio().unwrap() - 1.04).abs() < 1e-9);
        assert!(found(&checks(&barn()), "let the ledger shrink").passes());
    }

    /// Twice the weight above is twice the sag.
    #[test]
    fn sags_grow_with_the_snow() {
        let mut heavy = barn();
        heavy.place.wind_speed = crate::loads::WindSpeed::try_mph(20.0);
        // A wind under what a project may hold: on the barn's own geometry.
        let one = found(&on_the_shape_of(&barn(), &heavy), "sags under a passing load").ratio().unwrap();
        heavy.place.ground_snow = heavy.place.ground_snow.map(|snow| snow * 2.0);
        let two = found(&on_the_shape_of(&barn(), &heavy), "sags under a passing load").ratio().unwrap();
        assert!((two / one - 2.0).abs() < 1e-6, "{one} {two}");
    }

    #[test]
    fn what_is_missing_is_said() {
        let says = |name: &str, change: &dyn Fn(&mut Project)| {
            let mut changed = barn();
            change(&mut changed);
            found(&on_the_shape_of(&barn(), &changed), name).says(UnitSystem::Imperial)
        };
        let of = |change: &dyn Fn(&mut Project)| says("hold the ledger up", change);
        assert!(
            of(&|barn| barn.fixings.ledger.fastener.clear()).contains("not judged: the screw of the ledger is missing")
        );
        assert!(
            of(&|barn| barn.fixings.ledger.rows = 0)
                .contains("not judged: the rows of the ledger's fixings are missing")
        );
        assert!(
            of(&|barn| barn.fixings.ledger.wall_species.clear()).contains("the wood of the wall's posts is missing")
        );
        assert!(
            of(&|barn| {
                barn.fixings.ledger.fastener = "bolt_1_2".to_owned();
                barn.fixings.ledger.washer = Length::ZERO;
            })
            .contains("whose size is missing")
        );
        assert!(of(&|barn| barn.fixings.ledger.fastener = "bolt_1_2".to_owned()).contains("does not come out behind"));
        assert!(of(&|barn| barn.fixings.ledger.length = Length::inches(4.0)).contains("leaves no thread"));
        assert!(
            of(&|barn| barn.fixings.ledger.lowest = Length::inches(2.75)).contains("loaded edge distance is 2.25 in")
        );
        let whole = |change: &dyn Fn(&mut Project)| says("bends, shears and sags", change);
        assert!(whole(&|barn| barn.place.ground_snow = None).contains("ground snow by ASCE 7-16 is missing"));
        assert!(
            whole(&|barn| barn.site.wall_post_spacing = Length::ZERO).contains("the posts of the wall are missing")
        );
        assert!(whole(&|barn| barn.site.wall_post_spacing = Length::feet(30.0)).contains("fewer than two posts"));
        let no_rows = says("shears", &|barn| barn.fixings.ledger.rows = 0);
        assert!(no_rows.contains("the rows of the ledger's fixings are missing"));
        let heavy = says("bends", &|barn| barn.place.ground_snow = Some(AreaLoad::psf(300.0)));
        assert!(!heavy.contains("not judged"));
    }
}

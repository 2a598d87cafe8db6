//! Wind and earthquake along the wall on the fixings of the ledger: half of the push on the roof's edge, or of the base shear,
//! shared out among the wall's posts by the roof each carries, beside what the same combination and what lies on the roof ask.
//!
//! The push acts at the rafters' seats; its lever off the wall and over the fixings turns the whole ledger about its outer posts
//! by little, and is left out.
use super::check::{Check, Way};
use super::fixing::Fixing;
use super::governing::most;
use super::ledger::{Asked, Ledger, asked_by};
use super::ledger_fixings::{FIXINGS, Place, share};
use super::wood::load_duration;
use crate::analysis::{
    Loading, RoofCase, Shaking, WallShares, earthquake_on_line, earthquake_on_roof, side_wind_on_roof, wind_on_ledger,
};
use crate::design::Shape;
use crate::fastening::{AlikeRows, LoadOnOne, PegRow, Pull, combined_share, torn_out};
use crate::geometry::ledger_hole;
use crate::loads::Action;
use crate::members::{Property, Verdict, adjusted};
use crate::units::{Angle, Force, Length, sort_by_number};
use crate::unmade::Unmade;
use crate::working::{Citation, Step, Worked};

pub(super) const HOLD_ALONG: &str = "hold the ledger along the wall";
/// Name of the check of what shakes the lean-to off the wall.
const HOLD_ACROSS: &str = "hold the ledger to the wall in an earthquake across it";
/// Name of the check of the wood between them and the ledger's end.
const TEAR: &str = "stay in the ledger's wood along its grain";

/// What goes along the wall: the whole push on the ledger, and the combinations with it, each with the factor of the push.
pub(super) struct Cause {
    push: Worked<Force>,
    /// What shakes the lean-to across the wall, which holds all of it; nothing of a wind, whose parts are in the roof's own.
    across: Force,
    asked: Vec<(f64, Asked)>,
}

impl Cause {
    /// In every combination of its cases, beside the heaviest of what else lies on the roof; `vertical`: what of the dead load its
    /// vertical part is.
    fn new(ledger: &Ledger, push: Worked<Force>, own: Vec<RoofCase>, along: Action, vertical: f64) -> Self {
        let beside = [Action::Snow, Action::RoofLive].into_iter().filter_map(|action| heaviest(ledger, action));
        let cases: Vec<RoofCase> = own.into_iter().chain(beside).collect();
        let asked = asked_by(ledger.project, ledger.roof, &ledger.line, &cases, |loading| {
            let dead = loading.dead + loading.factor(&cases, Action::SeismicDown) * vertical;
            (loading.factor(&cases, along) != 0.0).then_some(Loading { dead, ..loading })
        });
        let across = if along == Action::SeismicSideways { push.value * 2.0 } else { Force::ZERO };
        let with_factor = |asked: Asked| (asked.loading.factor(&cases, along), asked);
        Self { push, across, asked: asked.into_iter().map(with_factor).collect() }
    }

    /// Nothing where no wind is known to blow along the wall.
    fn wind(ledger: &Ledger, shape: &Shape) -> Option<Result<Self, Unmade>> {
        let cases = side_wind_on_roof(ledger.roof);
        if cases.is_empty() {
            return None;
        }
        let push = wind_on_ledger(ledger.project, shape, ledger.roof);
        Some(push.map(|push| Self::new(ledger, push, cases, Action::Wind, 0.0)))
    }

    /// Nothing where the site has no values of earthquakes.
    fn earthquake(ledger: &Ledger, shape: &Shape) -> Option<Result<Self, Unmade>> {
        let of = |shaking: Shaking| {
            let (cases, vertical) = (earthquake_on_roof(shaking.sure).into(), shaking.vertical);
            let push = Worked::new(shaking.push, shaking.steps);
            Self::new(ledger, push, cases, Action::SeismicSideways, vertical)
        };
        let on = (&ledger.line, ledger.dead());
        Some(earthquake_on_line(ledger.project, shape, ledger.roof, on)?.map(of))
    }

    /// What one of its combinations asks of the fixings at each of the wall's posts.
    fn places<'a>(&self, own: &'a (f64, Asked), shares: &'a WallShares) -> impl Iterator<Item = Place<'a>> {
        let ((factor, asked), push, all) = (own, self.push.value, shares.roof());
        (0..shares.width.len()).map(move |post| {
            let along = push * (factor * (shares.width[post] / all)).abs();
            let down = shares.reaction(post, &asked.loads);
            let way = if down.is_negative() { Way::Up } else { Way::Down };
            let level = asked.level * shares.width[post];
            let outward = if level > Force::ZERO { level } else { Force::ZERO };
            Place { way, asked, pattern: "", post, reaction: down.abs(), outward, along }
        })
    }

    /// The same shaken across: nothing along the wall, all of it off the wall.
    fn places_across<'a>(
        &self,
        own: &'a (f64, Asked),
        shares: &'a WallShares,
    ) -> impl Iterator<Item = (Force, Place<'a>)> {
        let (whole, all) = (self.across * own.0.abs(), shares.roof());
        self.places(own, shares).map(move |place| {
            let off = whole * (shares.width[place.post] / all);
            (off, Place { along: Force::ZERO, outward: place.outward + off, ..place })
        })
    }

    /// How its push comes to what goes along the wall at a post.
    fn steps(&self, place: &Place, shares: &WallShares) -> Vec<Step> {
        let own = self.asked.iter().find(|(_, own)| std::ptr::eq(own, place.asked));
        let (width, all) = (shares.width[place.post], shares.roof());
        let upright =
            if place.tilt() > Angle::ZERO { "" } else { "; under a twentieth of the load, which counts as upright" };
        let says = format!(
            "A = {}·{:.0}·{:.3} = {:.0} lb, {:.1} of {:.1} in of roof{upright}",
            own.map_or(0.0, |(factor, _)| (factor.abs() * 1000.0).round() / 1000.0),
            self.push.value.to_pounds(),
            width / all,
            place.along.to_pounds(),
            width.to_inches(),
            all.to_inches()
        );
        let citation = Citation::from_memory("statics", "shared by the roof carried");
        let step = Step::new("push along the wall at this post", says, citation);
        self.push.steps.iter().cloned().chain([step]).collect()
    }

    /// Wind and earthquake, each where there is one.
    ///
    /// # Errors
    /// The sentence that says what is missing of one.
    pub(super) fn all(ledger: &Ledger, shape: &Shape) -> Result<Vec<Self>, Unmade> {
        [Self::wind(ledger, shape), Self::earthquake(ledger, shape)].into_iter().flatten().collect()
    }
}

/// The most that goes along the wall at one of its posts; nothing where nothing is known to go along it.
pub(super) fn most_along(causes: &[Cause], shares: &WallShares) -> Option<Force> {
    let widest = shares.width.iter().copied().fold(Length::ZERO, Length::max);
    let of = |cause: &Cause| {
        let factor = cause.asked.iter().map(|(factor, _)| factor.abs()).fold(0.0, f64::max);
        cause.push.value * (factor * (widest / shares.roof())).abs()
    };
    causes.iter().map(of).reduce(Force::max)
}

/// The most that an earthquake across pulls or pushes at one of its posts; nothing where there is none.
pub(super) fn most_across(causes: &[Cause], shares: &WallShares) -> Option<Force> {
    let across = |cause: &Cause| {
        let of = |own| cause.places_across(own, shares).map(|(off, _)| off).fold(Force::ZERO, Force::max);
        cause.asked.iter().map(of).fold(Force::ZERO, Force::max)
    };
    causes.iter().map(across).reduce(Force::max).filter(|most| *most > Force::ZERO)
}

/// The fixings off the wall under the earthquake across it.
fn holds_across(fixing: &Fixing, cause: &Cause, rough: &impl Fn(&Place) -> f64) -> Option<Check> {
    let shares = &fixing.ledger.shares;
    let places = cause.asked.iter().flat_map(|own| cause.places_across(own, shares));
    let (off, place) = most(places, |(_, place)| rough(place)).filter(|(off, _)| *off > Force::ZERO)?;
    let made = fixing.judge(&place).map(|mut made| {
        let says = format!(
            "V = {:.0} lb, all of it handed to the wall, of which {:.0} lb at this post by the combination and the roof it carries",
            cause.across.to_pounds(),
            off.to_pounds()
        );
        let step = Step::new("earthquake across", says, Citation::from_memory("statics", "posts lean, the wall holds"));
        made.steps.splice(0..0, cause.push.steps.iter().cloned().chain([step]));
        made
    });
    Some(fixing.at(HOLD_ACROSS, &place, made))
}

/// The case of an action that asks most of the ledger.
fn heaviest(ledger: &Ledger, action: Action) -> Option<RoofCase> {
    let of = |case: &&RoofCase| ledger.line.reactions(&case.down, &case.square).ledger.to_plf();
    most(ledger.roof.cases.iter().filter(|case| case.action == action), of).map(RoofCase::without_steps)
}

/// The checks of fixings and wood; none where nothing is known to go along the wall.
pub(super) fn along(fixing: &Fixing, causes: &Result<Vec<Cause>, Unmade>) -> Vec<Check> {
    let causes = match causes {
        Ok(causes) if causes.is_empty() => return Vec::new(),
        Ok(causes) => causes,
        Err(why) => return vec![Check::not_judged(FIXINGS, HOLD_ALONG, why)],
    };
    let shares = &fixing.ledger.shares;
    let (held, across) = match rough(fixing) {
        Ok(rough) => {
            let held = Check::worst_of(causes.iter().flat_map(|cause| holds(fixing, cause, &rough)));
            (held, Check::worst_of(causes.iter().filter_map(|cause| holds_across(fixing, cause, &rough))))
        }
        Err(why) => (Some(Check::not_judged(FIXINGS, HOLD_ALONG, why)), None),
    };
    // The wood at the end asks for no more than the push, whatever the fixings hold.
    let places = causes.iter().flat_map(|cause| cause.asked.iter().flat_map(|own| cause.places(own, shares)));
    let wood =
        most(places, |place| place.along.to_pounds()).map(|place| fixing.at(TEAR, &place, stays(fixing, &place)));
    held.into_iter().chain(across).chain(wood).collect()
}

/// The fixings at the hardest place, and at the hardest of each other combination whose load leans: that looks along the grain as
/// well, which `rough` does not, and may halve what a fixing holds. Where the fixings stand too near each other for a leaning load
/// at all, that is said of the hardest alone: a light push beside much less weight does not ask for it.
fn holds(fixing: &Fixing, cause: &Cause, rough: &impl Fn(&Place) -> f64) -> Vec<Check> {
    let shares = &fixing.ledger.shares;
    let hardest_of_each = cause.asked.iter().filter_map(|own| most(cause.places(own, shares), rough));
    let mut places: Vec<(f64, Place)> = hardest_of_each.map(|place| (rough(&place), place)).collect();
    sort_by_number(&mut places, |place| -place.0);
    let least = places.first().map_or(0.0, |(most, _)| most / 2.0);
    let check = |(rank, (share, place)): (usize, &(f64, Place))| {
        let may_govern = rank == 0 || *share >= least && place.tilt() > Angle::ZERO;
        let made = may_govern.then(|| fixing.judge(place)).filter(|made| rank == 0 || made.is_ok())?;
        let made = made.map(|mut made| {
            made.steps.splice(0..0, cause.steps(place, shares));
            made
        });
        Some(fixing.at(HOLD_ALONG, place, made))
    };
    places.iter().enumerate().filter_map(check).collect()
}

/// The push along the grain against the wood between the fixings and the nearest end of the ledger: plugs behind each row, the
/// block between the outer rows, what the holes leave. A row of the standard is one of ours, its fixings side by side.
fn stays(fixing: &Fixing, pushed: &Place) -> Result<Worked<Verdict>, Unmade> {
    let fixings = fixing.fixings();
    let wood = fixing.ledger.member.during(load_duration(pushed.asked.loading.duration));
    let (tension, shear) = (adjusted(&wood, Property::Tension), adjusted(&wood, Property::Shear));
    let row = PegRow {
        n: u32::try_from(fixings.columns).unwrap_or(u32::MAX),
        thickness: fixing.side,
        end: fixing.end().unwrap_or_default(),
        spacing: (fixings.columns > 1).then_some(fixings.column_gap),
    };
    let hole = ledger_hole(fixings).unwrap_or(fixing.one.diameter);
    let last = fixings.rows.saturating_sub(1);
    let rows = AlikeRows {
        row,
        n: fixings.rows,
        width: wood.section().depth,
        holes: hole * fixings.rows as f64,
        between: (last > 0).then(|| fixings.height(last) - fixings.height(0) - hole * last as f64),
    };
    let torn = torn_out(shear.value, tension.value, rows)?;
    let capacity = torn.least();
    let block = torn.block.map(|block| block.steps).unwrap_or_default();
    let mut steps = [tension.steps, shear.steps, torn.net.steps, torn.row.steps, block].concat();
    let says = format!(
        "{} rows: {:.0} lb; the least of plugs, block and net section {:.0} lb",
        fixings.rows,
        torn.rows.to_pounds(),
        capacity.to_pounds()
    );
    steps.push(Step::new("what the ledger's wood holds", says, Citation::from_memory("NDS 2015", "Appendix E")));
    Ok(Worked::new(Verdict::force(pushed.along, capacity), steps))
}

/// Load by capacity of a place, to find the governing one, as if its load stood upright: it leans by little.
fn rough(fixing: &Fixing) -> Result<impl Fn(&Place) -> f64, Unmade> {
    let of = |way| Ok::<_, Unmade>((fixing.rough(way)?, share(&fixing.rows(way), fixing.ledger.line.ledger)));
    let (down, up) = (of(Way::Down)?, of(Way::Up)?);
    let (minds, kind) = (fixing.pull_minds_duration(), fixing.kind());
    let n = (fixing.fixings().rows * fixing.fixings().columns) as f64;
    Ok(move |place: &Place| {
        let (values, on_one) = if place.way == Way::Down { &down } else { &up };
        let duration = place.asked.loading.duration.factor();
        let withdrawal = values.withdrawal * if minds { duration } else { 1.0 };
        let in_face = place.reaction.to_pounds().hypot(place.along.to_pounds());
        let load = LoadOnOne { lateral: Force::pounds(in_face / n), ..on_one(place.reaction, place.outward) };
        combined_share(kind, Pull { withdrawal, lateral: values.lateral * duration }, load).unwrap_or_default()
    })
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::analysis::roof_loads;
    use crate::checks::check_ledger;
    use crate::evaluate;
    use crate::loads::{DesignCategory, Duration, Seismic};
    use crate::project::{Project, Used, demo};
    use crate::units::UnitSystem;

    fn found(project: &Project) -> Option<Check> {
        let built = evaluate(&demo::wool_barn()).built.unwrap();
        let checks = check_ledger(project, &built.shape, &roof_loads(project, &built.shape));
        checks.into_iter().find(|check| check.name == HOLD_ALONG)
    }

    fn says(check: &Check, gives: &str) -> String {
        check.steps().iter().find(|step| step.gives == gives).unwrap().says.clone()
    }

    /// The barn's edge: rafter, purlin and rib 10.69 ft² at 33.5 psf, 358 lb; 17 rafters behind it, each 0.3 of 7.96 ft², 1358 lb;
    /// half of both and 9 lb of the ledger's end are 867 lb. 0.45 of it on 21.4 of 420 in of roof is 20 lb beside 406 lb down.
    #[test]
    fn half_of_the_edge_by_hand() {
        let check = found(&demo::wool_barn()).unwrap();
        assert!(says(&check, "push on the ledger").starts_with("(358 + 1358)/2 + 9 = 867 lb"));
        assert!(says(&check, "push along the wall at this post").starts_with("A = 0.45·867·0.051 = 20 lb"));
        assert!(says(&check, "shear of one fixing").starts_with("Z = √(R² + A²)/n = √(406² + 20²)/1 = 406"));
        // One lag of 3/4 in, 5 % off upright, which turns no grain: 524 lb sideways, ·1.6 of wind, 0.917 for its depth.
        let allowed = 523.5 * 1.6 * 5.5 / 6.0;
        assert!((check.ratio().unwrap() / (406.0 / allowed) - 1.0).abs() < 5e-3, "{check:?}");
        assert!(check.passes());
    }

    /// S_DS = 2 in category C shakes the barn by C_s = 2/1.5 of 8944 lb, a fifth of the flat snow, six braces of 35 lb and 117 lb of
    /// blocks in it: V = 11,926 lb, half of it on the ledger. 0.525 of that on 21.4 of 420 in of roof is 160 lb along, which leans by 23.5° and finds 4 in of wood before the
    /// ledger's end where seven diameters are asked: 4/5.25.
    #[test]
    fn the_earthquake_by_hand() {
        let shaken = |s_ds: f64| {
            let mut barn = demo::wool_barn();
            barn.place.wind_speed = crate::loads::WindSpeed::try_mph(60.0);
            barn.place.seismic = Some(Seismic { s_ds, category: DesignCategory::C, importance: 1.0 });
            found(&barn).unwrap()
        };
        let check = shaken(2.0);
        assert!(check.says(UnitSystem::Imperial).contains("0.525E_h"), "{}", check.says(UnitSystem::Imperial));
        assert!(says(&check, "V, base shear").ends_with("1.333·8944 lb = 11926 lb"));
        assert!(says(&check, "push along the wall at this post").starts_with("A = 0.525·5963·0.051 = 160 lb"));
        assert!(says(&check, "shear of one fixing").ends_with("√(368² + 160²)/1 = 401 lb"));
        assert!(says(&check, "main member: F_eθ, at the load's angle").contains("at 23.5°"));
        // Mode IV: 0.579²/3.79·√(2·3784·45,000/(3·2.76)) = 567 lb, ·1.6·0.762·0.917 = 634 lb.
        assert!((check.ratio().unwrap() / (401.0 / 634.0) - 1.0).abs() < 5e-3, "{check:?}");
        // Of the vertical part nothing but the dead load grows: half of S_DS less is 0.525·0.2·1·D, and 21.4/420 of 2052 lb stand here.
        let down = |check: &Check| {
            let text = says(check, "shear of one fixing");
            text.rsplit('√').next().unwrap()[1..].split('²').next().unwrap().parse::<f64>().unwrap()
        };
        let dead = (down(&check) - down(&shaken(1.0))) / 0.105;
        assert!((dead - 2052.0 * 21.4 / 420.0).abs() < 10.0, "{dead}");
    }

    /// The same V of 11,926 lb across: 0.525 of it on 21.4 of 420 in of roof is 319 lb off the wall, 0.7 of it 426 lb, which the wall
    /// is told.
    #[test]
    fn the_earthquake_across_by_hand() {
        let mut barn = demo::wool_barn();
        barn.place.wind_speed = crate::loads::WindSpeed::try_mph(60.0);
        barn.place.seismic = Some(Seismic { s_ds: 2.0, category: DesignCategory::C, importance: 1.0 });
        let built = evaluate(&demo::wool_barn()).built.unwrap();
        let checks = check_ledger(&barn, &built.shape, &roof_loads(&barn, &built.shape));
        let check = checks.iter().find(|check| check.name == HOLD_ACROSS).unwrap();
        let step = check.steps().iter().find(|step| step.gives == "earthquake across").unwrap();
        assert!(step.says.starts_with("V = 11926 lb, all of it handed to the wall, of which "), "{}", step.says);
        let part: f64 = step.says.split("of which ").nth(1).unwrap().split(' ').next().unwrap().parse().unwrap();
        let under = &check.combination;
        let factor = if under.contains("0.525E_h") { 0.525 } else { 0.7 };
        assert!((part - 11_926.0 * factor * 21.4 / 420.0).abs() < 2.0, "{part} {under}");
        assert!(check.ratio().unwrap() > 0.0);
        let wall =
            checks.iter().find(|check| check.member == "existing wall" && check.name.contains("hands it")).unwrap();
        let says = wall.says(UnitSystem::Imperial);
        assert!(says.contains("in an earthquake across it 426 lb off it and toward it"), "{says}");
        let calm = check_ledger(&demo::wool_barn(), &built.shape, &roof_loads(&demo::wool_barn(), &built.shape));
        assert!(calm.iter().all(|check| check.name != HOLD_ACROSS));
    }

    /// An earthquake whose base shear cannot be had leaves the check open, whatever the wind does.
    #[test]
    fn no_base_shear_no_answer() {
        let mut barn = demo::wool_barn();
        barn.place.seismic = Some(Seismic { s_ds: 0.4, category: DesignCategory::D, importance: 1.0 });
        assert!(found(&barn).unwrap().says(UnitSystem::Imperial).contains("categories D to F"));
    }

    /// 4.9 lb along beside 100 lb down turn no grain, 5.1 lb lean by atan 0.051 = 2.92°.
    #[test]
    fn a_twentieth_turns_no_grain() {
        let place = Place {
            way: Way::Down,
            asked: &Asked {
                loading: loading(),
                loads: crate::analysis::LedgerLoads::default(),
                level: crate::units::LineLoad::ZERO,
            },
            pattern: "",
            post: 0,
            reaction: Force::pounds(100.0),
            outward: Force::ZERO,
            along: Force::pounds(4.9),
        };
        assert_eq!(place.tilt(), Angle::ZERO);
        let leans = Place { along: Force::pounds(5.1), ..place };
        assert!((leans.tilt().to_degrees() - 2.92).abs() < 0.01);
    }

    fn loading() -> Loading {
        Loading {
            name: String::new(),
            dead: 1.0,
            is_uplift: false,
            parts: Vec::new(),
            duration: Duration::TenMinutes,
            confidence: crate::working::Confidence::Medium,
        }
    }

    /// 4 in of ledger, two rows 5 in apart of two bolts of 5/8 in (holes of 11/16), 2½ in apart, the outer one 4 − 1¼ = 2¾ in from the
    /// end. A row: 2·F_v′·4·2½; the block adds F_t′·4·(5 − 11/16); both rows together are less.
    #[test]
    fn the_wood_between_fixings_and_end_by_hand() {
        let mut barn = demo::wool_barn();
        let fixings = &mut barn.fixings.ledger;
        fixings.fastener = "bolt_5_8".to_owned();
        fixings.length = Length::inches(14.0);
        (fixings.rows, fixings.lowest, fixings.row_gap) = (2, Length::inches(2.5), Length::inches(5.0));
        (fixings.columns, fixings.column_gap) = (2, Length::inches(2.5));
        barn.site.first_wall_post = Length::inches(4.0);
        let named = |barn: &Project| {
            let built = evaluate(&demo::wool_barn()).built.unwrap();
            let loads = roof_loads(barn, &built.shape);
            check_ledger(barn, &built.shape, &loads).into_iter().find(|check| check.name == TEAR).unwrap()
        };
        let strength = |of: Property| {
            let wood =
                crate::checks::Woods::new(&demo::wool_barn()).member(Used::Ledger, Duration::TenMinutes).unwrap();
            adjusted(&wood, of).value.to_psi()
        };
        let capacity = |check: &Check| {
            let crate::checks::Outcome::Judged(made) = &check.outcome else { unreachable!("{check:?}") };
            let crate::members::Amount::Force(capacity) = made.value.capacity else { unreachable!("{made:?}") };
            capacity.to_pounds()
        };
        let (shear, tension) = (strength(Property::Shear), strength(Property::Tension));
        let (row, block) = (2.0 * shear * 4.0 * 2.5, shear * 20.0 + tension * 4.0 * (5.0 - 0.6875));
        let check = named(&barn);
        assert!(2.0 * row < block && (capacity(&check) - 2.0 * row).abs() < 1e-6, "{row} {block} {check:?}");
        // Rows 1 in apart: the block with 4·(1 − 11/16) in² in tension is less than two rows.
        barn.fixings.ledger.row_gap = Length::inches(1.0);
        let block = shear * 20.0 + tension * 4.0 * 0.3125;
        let check = named(&barn);
        assert!(block < 2.0 * row && (capacity(&check) - block).abs() < 1e-6, "{block} {row} {check:?}");
        // One fixing with a sixteenth of wood beyond it holds F_v′·4/16 lb, and a storm pushes harder; with an inch it holds.
        (barn.fixings.ledger.rows, barn.fixings.ledger.columns) = (1, 1);
        barn.place.member_force_coefficient = Some(3.0);
        barn.place.wind_speed = crate::loads::WindSpeed::try_mph(200.0);
        for (end, holds) in [(0.0625, false), (1.0, true)] {
            barn.site.first_wall_post = Length::inches(end);
            let check = named(&barn);
            assert!((capacity(&check) - shear * 4.0 * end).abs() < 1e-6, "{check:?}");
            assert_eq!(check.passes(), holds, "{check:?}");
        }
    }

    /// What presses and pushes harder can be too much: twice the wind on one lag of 1/2 in.
    #[test]
    fn too_much_wind() {
        let mut windy = demo::wool_barn();
        windy.fixings.ledger.fastener = "lag_1_2".to_owned();
        windy.place.wind_speed = crate::loads::WindSpeed::try_mph(180.0);
        assert!(found(&windy).unwrap().ratio().unwrap() > 1.0);
    }

    /// A rough edge and a storm make the load lean: then the ends of the ledger, 4 in past a post, count along the grain: 4 of seven
    /// diameters of 3/4 in.
    #[test]
    fn a_leaning_load_looks_along_the_grain() {
        let mut rough = demo::wool_barn();
        rough.place.ground_snow = Some(crate::units::AreaLoad::ZERO);
        rough.place.member_force_coefficient = Some(3.0);
        rough.place.wind_speed = crate::loads::WindSpeed::try_mph(200.0);
        let check = found(&rough).unwrap();
        let end = check.steps().iter().find(|step| step.gives == "ledger, along the wall: end distance").unwrap();
        assert_eq!(end.says, "4.00 by 5.25 in → 0.762");
        assert!(check.steps().iter().any(|step| step.gives.starts_with("wall's post, along the wall")));
    }

    #[test]
    fn what_is_missing_is_said() {
        let mut barn = demo::wool_barn();
        barn.place.member_force_coefficient = None;
        assert!(found(&barn).unwrap().says(UnitSystem::Imperial).contains("force coefficient C_f"));
        barn.fixings.ledger.fastener.clear();
        assert!(found(&barn).unwrap().says(UnitSystem::Imperial).contains("the screw of the ledger is missing"));
    }

    /// 0.6 of the 867 lb on 21.4 of 420 in of roof are 27 lb, said of the wall too; without a known coefficient it is said to be
    /// open, and without wind there is none.
    #[test]
    fn the_wall_is_told_what_goes_along_it() {
        let wall = |project: &Project| {
            let built = evaluate(&demo::wool_barn()).built.unwrap();
            let checks = check_ledger(project, &built.shape, &roof_loads(project, &built.shape));
            checks
                .into_iter()
                .find(|check| check.name == "carries what the ledger hands it")
                .unwrap()
                .says(UnitSystem::Imperial)
        };
        let mut barn = demo::wool_barn();
        assert!(wall(&barn).contains("inward and 27 lb along it at a post of it"), "{}", wall(&barn));
        barn.place.member_force_coefficient = None;
        assert!(wall(&barn).contains("along it asks, which is not known yet"), "{}", wall(&barn));
    }
}

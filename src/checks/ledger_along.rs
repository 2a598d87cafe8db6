//! Wind along the wall on the fixings of the ledger: half of the push on the roof's edge, shared out among the wall's posts by the
//! roof each carries, beside what the same wind and what lies on the roof ask.
//!
//! The push acts at the rafters' seats; its lever off the wall and over the fixings turns the whole ledger about its outer posts
//! by little, and is left out.
use super::check::{Check, Way};
use super::fixing::Fixing;
use super::ledger::{Asked, Ledger, asked_by};
use super::ledger_fixings::{FIXINGS, Place, share};
use super::purlin::most;
use super::wood::load_duration;
use crate::analysis::{RoofCase, side_wind_on_roof, wind_on_ledger};
use crate::design::Shape;
use crate::fastening::{AlikeRows, LoadOnOne, PegRow, Pull, combined_share, torn_out};
use crate::geometry::ledger_hole;
use crate::loads::Action;
use crate::members::{Property, Verdict, adjusted};
use crate::units::{Angle, Force, Length};
use crate::unmade::{Input, Unmade};
use crate::working::{Citation, Step, Worked};

pub(super) const HOLD_ALONG: &str = "hold the ledger along the wall";
/// Name of the check of the wood between them and the ledger's end.
const TEAR: &str = "stay in the ledger's wood along its grain";

/// What goes along the wall: the push of the whole wind on the ledger, and the combinations with it, each with the wind's factor.
struct Along {
    push: Worked<Force>,
    asked: Vec<(f64, Asked)>,
}

impl Along {
    /// Nothing where no wind is known to blow along the wall.
    fn new(ledger: &Ledger, shape: &Shape) -> Option<Result<Self, Unmade>> {
        let mut cases = side_wind_on_roof(ledger.roof);
        if cases.is_empty() {
            return None;
        }
        let push = match wind_on_ledger(ledger.project, shape, ledger.roof) {
            Ok(push) => push,
            Err(why) => return Some(Err(why)),
        };
        cases.extend([Action::Snow, Action::RoofLive].into_iter().filter_map(|action| heaviest(ledger, action)));
        let has_wind = |index: usize| cases.get(index).is_some_and(|case| case.action == Action::Wind);
        let asked = asked_by(ledger.project, ledger.roof, &ledger.line, &cases, |loading| {
            loading.parts.iter().any(|(_, index)| has_wind(*index))
        });
        let factor = |asked: &Asked| {
            let windy = asked.loading.parts.iter().filter(|(_, index)| has_wind(*index));
            windy.map(|(factor, _)| *factor).sum::<f64>()
        };
        Some(Ok(Self { push, asked: asked.into_iter().map(|asked| (factor(&asked), asked)).collect() }))
    }
}

/// The most that goes along the wall at one of its posts; nothing where no such wind is known.
///
/// # Errors
/// The sentence that says what is missing.
pub(super) fn most_along(ledger: &Ledger, shape: &Shape) -> Option<Result<Force, Unmade>> {
    let of = |along: Along| {
        let all: Length = ledger.shares.width.iter().copied().sum();
        let widest = ledger.shares.width.iter().copied().fold(Length::ZERO, Length::max);
        let factor = along.asked.iter().map(|(factor, _)| factor.abs()).fold(0.0, f64::max);
        along.push.value * (factor * (widest / all)).abs()
    };
    Some(Along::new(ledger, shape)?.map(of))
}

/// The checks of fixings and wood; none where no wind is known to blow along the wall.
pub(super) fn along(fixing: &Fixing, shape: &Shape) -> Vec<Check> {
    match Along::new(fixing.ledger, shape) {
        Some(Ok(along)) => judge(fixing, &along.asked, &along.push),
        Some(Err(why)) => vec![Check::not_judged(FIXINGS, HOLD_ALONG, why)],
        None => Vec::new(),
    }
}

/// The case of an action that asks most of the ledger.
fn heaviest(ledger: &Ledger, action: Action) -> Option<RoofCase> {
    let of = |case: &&RoofCase| ledger.line.reactions(&case.down, &case.square).ledger.to_plf();
    most(ledger.roof.cases.iter().filter(|case| case.action == action), of).map(RoofCase::without_steps)
}

fn judge(fixing: &Fixing, asked: &[(f64, Asked)], push: &Worked<Force>) -> Vec<Check> {
    let shares = &fixing.ledger.shares;
    let all: Length = shares.width.iter().copied().sum();
    let of_post = |post: usize| shares.width[post] / all;
    let places = || {
        asked.iter().flat_map(|asked| (0..shares.width.len()).map(move |post| (asked, post))).map(|(asked, post)| {
            let (factor, asked) = asked;
            let along = push.value * (factor * of_post(post)).abs();
            let down = shares.reaction(post, &asked.loads);
            let way = if down.is_negative() { Way::Up } else { Way::Down };
            let outward = (asked.level * shares.width[post]).max(Force::ZERO);
            Place { way, asked, pattern: "", post, reaction: down.abs(), outward, along }
        })
    };
    // The wood at the end asks for no more than the push, whatever the fixings hold.
    let pushed = most(places(), |place| place.along.to_pounds());
    let wood = pushed.map(|place| fixing.at(TEAR, &place, stays(fixing, &place)));
    let held = rough(fixing).and_then(|rough| {
        let missing = || Unmade::missing(Input::WallPosts, "the posts of the wall are missing");
        most(places(), rough).ok_or_else(missing)
    });
    let place = match held {
        Ok(place) => place,
        Err(why) => return [Check::not_judged(FIXINGS, HOLD_ALONG, why)].into_iter().chain(wood).collect(),
    };
    let factor =
        |of: &Asked| asked.iter().find(|(_, asked)| std::ptr::eq(asked, of)).map_or(0.0, |(factor, _)| *factor);
    let made = fixing.judge(&place).map(|mut made| {
        let upright =
            if place.tilt() > Angle::ZERO { "" } else { "; under a twentieth of the load, which counts as upright" };
        let says = format!(
            "A = {:.2}·{:.0}·{:.3} = {:.0} lb, {:.1} of {:.1} in of roof{upright}",
            factor(place.asked).abs(),
            push.value.to_pounds(),
            of_post(place.post),
            place.along.to_pounds(),
            shares.width[place.post].to_inches(),
            all.to_inches()
        );
        let step = Step::new(
            "push along the wall at this post",
            says,
            Citation::from_memory("statics", "shared by the roof carried"),
        );
        made.steps.splice(0..0, push.steps.iter().cloned().chain([step]));
        made
    });
    [fixing.at(HOLD_ALONG, &place, made)].into_iter().chain(wood).collect()
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
    use crate::loads::Duration;
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
    /// half of both and 9 lb of the ledger's end are 867 lb. 0.45 of it on 21.4 of 420 in of roof is 20 lb beside 404 lb down.
    #[test]
    fn half_of_the_edge_by_hand() {
        let check = found(&demo::wool_barn()).unwrap();
        assert!(says(&check, "push on the ledger").starts_with("(358 + 1358)/2 + 9 = 867 lb"));
        assert!(says(&check, "push along the wall at this post").starts_with("A = 0.45·867·0.051 = 20 lb"));
        assert!(says(&check, "shear of one fixing").starts_with("Z = √(R² + A²)/n = √(404² + 20²)/1 = 40"));
        // One lag of 3/4 in, 5 % off upright, which turns no grain: 524 lb sideways, ·1.6 of wind, 0.917 for its depth.
        let allowed = 523.5 * 1.6 * 5.5 / 6.0;
        assert!((check.ratio().unwrap() / (404.0 / allowed) - 1.0).abs() < 5e-3, "{check:?}");
        assert!(check.passes());
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

    fn loading() -> crate::analysis::Loading {
        crate::analysis::Loading {
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

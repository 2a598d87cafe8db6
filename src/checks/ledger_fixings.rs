//! The fixings of the ledger into each post of the wall: sheared by the rafters' reaction, pulled because it stands off the
//! wall and because wind sucks the roof outward; their washers and their steel under that pull.
use super::check::{Check, EXISTING_WALL, Way};
use super::fixing::{Aim, Fixing};
use super::governing::most;
use super::ledger::{Asked, CONTINUOUS, Ledger};
use super::ledger_along::{Cause, HOLD_ALONG, along};
use super::purlin::harder_first;
use crate::fastening::{
    FixingRow, LedgerLoad, LoadOnOne, Pull, combined_share, fixing_load, hangs_low, ledger_fixing, outer_rows,
};
use crate::members::Verdict;
use crate::units::{Angle, Force, Length};
use crate::unmade::Unmade;
use crate::wording::length;
use crate::working::{Citation, Step, Worked};

pub(super) const FIXINGS: &str = "ledger fixings";
pub(super) const HOLD_UP: &str = "hold the ledger up";
/// Name of the check against uplift: the path of the uplift finds it by this.
pub(super) const HOLD_DOWN: &str = "hold the ledger down";
/// Names of the checks under the pull off the wall.
pub(super) const WASHERS: &str = "press their washers into the wood";
pub(super) const STEEL: &str = "pull on their steel";
/// Name of what nobody can judge before the wall is measured.
const WALL_EDGES: &str = "leaves wood beside the ledger's fixings";
/// Name of the check of where they bring the force into the ledger.
const PAST_MIDDLE: &str = "reach the ledger's middle, not to tear it";
const SHRINK: &str = "let the ledger shrink";
const SHRINK_WALL: &str = "let the wall's post shrink";
/// Wood over this between outer rows splits as it dries (NDS 12.5.1.3, from memory).
const WIDEST_ROWS: Length = Length::inches(5.0);

/// A load on one place that is called light: it may hang below the middle (common practice).
const LIGHT: Force = Force::pounds(100.0);
/// A push along the wall under this share of the load leaves it upright (common practice).
const LEANS: f64 = 0.05;

/// Every check of the fixings.
pub(super) fn check_fixings(ledger: &Ledger, causes: &Result<Vec<Cause>, Unmade>) -> Vec<Check> {
    let mut checks: Vec<Check> = match Fixing::new(ledger) {
        Err(why) => [HOLD_UP, HOLD_DOWN, HOLD_ALONG].map(|name| Check::not_judged(FIXINGS, name, &why)).into(),
        Ok(fixing) => {
            let ways = [(HOLD_UP, Way::Down), (HOLD_DOWN, Way::Up)];
            let held = ways.into_iter().map(|(name, way)| fixing.worst(name, way));
            let of_sizes = fixing.past_middle().into_iter().chain(fixing.wall_edges());
            held.chain(along(&fixing, causes)).chain(fixing.pulled()).chain(of_sizes).collect()
        }
    };
    let fixings = &ledger.project.fixings.ledger;
    let rows = fixings.rows.checked_sub(1).map(|last| fixings.height(last) - fixings.height(0));
    checks.extend(rows.map(|apart| outer(SHRINK, apart)));
    checks.extend((fixings.columns > 1).then(|| outer(SHRINK_WALL, fixings.across())));
    checks
}

/// Outer rows against what lets the wood shrink.
fn outer(name: &str, apart: Length) -> Check {
    let steps = match outer_rows(apart, false) {
        Ok(worked) => worked.steps,
        Err(refused) => {
            vec![Step::new("outer rows", refused.to_string(), Citation::from_memory("NDS 2015", "12.5.1.3"))]
        }
    };
    let made = Worked::new(Verdict::length(apart, WIDEST_ROWS), steps);
    Check::new(FIXINGS, name, "", "", Ok::<_, Unmade>(made)).of_sizes()
}

/// Half of a depth against how far in the farthest row stands; nothing is asked where it reaches the middle.
fn in_depth(from_edge: Length, depth: Length) -> Worked<Verdict> {
    let low = hangs_low(from_edge, depth);
    let half = depth / 2.0;
    let verdict = Verdict::length(if low.is_some() { half } else { Length::ZERO }, from_edge);
    let says = low.unwrap_or_else(|| {
        let [from_edge, depth] = [from_edge, depth].map(Length::to_inches);
        format!(
            "the farthest row stands {from_edge:.2} in from the edge it presses toward, half of {depth:.2} in or more"
        )
    });
    Worked::new(
        verdict,
        vec![Step::new("where the force comes in", says, Citation::from_memory("NDS 2015", "12.5.1.4"))],
    )
}

/// A combination at a post of the wall, its reaction and its pull off the wall.
#[derive(Clone, Copy)]
pub(super) struct Place<'a> {
    pub(super) way: Way,
    pub(super) asked: &'a Asked,
    /// Where the snow is whole, if it is not everywhere.
    pub(super) pattern: &'a str,
    pub(super) post: usize,
    pub(super) reaction: Force,
    pub(super) outward: Force,
    /// Push along the wall at the same time.
    pub(super) along: Force,
}

impl Place<'_> {
    /// How far the load leans along the wall; a push of less than a twentieth of it turns no grain.
    pub(super) fn tilt(&self) -> Angle {
        let tilt = Angle::radians(self.along.to_pounds().atan2(self.reaction.to_pounds()));
        if tilt.sin() < LEANS { Angle::ZERO } else { tilt }
    }
}

impl Fixing<'_> {
    /// The post and combination that ask most of their fixings, one way.
    fn worst(&self, name: &str, way: Way) -> Check {
        match self.governing(way) {
            Err(why) => Check::not_judged(FIXINGS, name, why),
            Ok(None) => {
                let step = Step::new("reaction", "no combination asks it", Citation::from_memory("statics", "sum"));
                let made = Worked::new(Verdict::force(Force::ZERO, Force::ZERO), vec![step]);
                Check::new(FIXINGS, name, "", "", Ok::<_, Unmade>(made))
            }
            Ok(Some(place)) => self.at(name, &place, self.judge(&place)),
        }
    }

    pub(super) fn at(&self, name: &str, place: &Place, made: Result<Worked<Verdict>, Unmade>) -> Check {
        let at = format!("at the wall's post {}", place.post + 1);
        let x = self.ledger.frame.posts[place.post].x;
        let mut under = place.asked.under(place.pattern, CONTINUOUS).asks("R", place.reaction);
        under = under.asks("off the wall", place.outward);
        if place.along > Force::ZERO {
            under = under.asks("along it", place.along);
        }
        Check::new(FIXINGS, name, at, under, made).at_x(x)
    }

    fn governing(&self, way: Way) -> Result<Option<Place<'_>>, Unmade> {
        let values = self.rough(way)?;
        let on_one = share(&self.rows(way), self.ledger.line.ledger);
        let rough = |place: &Place| {
            let duration = place.asked.loading.duration.factor();
            let withdrawal = values.withdrawal * if self.pull_minds_duration() { duration } else { 1.0 };
            let values = Pull { withdrawal, lateral: values.lateral * duration };
            combined_share(self.kind(), values, on_one(place.reaction, place.outward)).unwrap_or_default()
        };
        Ok(most(self.places(way), rough))
    }

    /// Every combination at every post where the reaction goes that way.
    fn places(&self, way: Way) -> impl Iterator<Item = Place<'_>> {
        let posts = self.ledger.frame.posts.len();
        let all = self.ledger.asked.iter().flat_map(move |asked| (0..posts).map(move |post| (asked, post)));
        let even = all.zip(&self.ledger.reactions).filter_map(move |((asked, post), down)| {
            let reaction = if way == Way::Down { *down } else { -*down };
            let outward = (asked.level * self.ledger.shares.width[post]).max(Force::ZERO);
            let asks = reaction.to_pounds() > 1e-6;
            asks.then_some(Place { way, asked, pattern: "", post, reaction, outward, along: Force::ZERO })
        });
        let patches = self.ledger.patches.iter().filter(move |_| way == Way::Down);
        let partly = patches.flat_map(|patches| patches.reactions(self.ledger));
        even.chain(partly.map(move |(post, reaction, pattern, asked)| Place {
            way,
            asked,
            pattern,
            post,
            reaction,
            outward: Force::ZERO,
            along: Force::ZERO,
        }))
    }

    /// Each way the fixings press the ledger toward one edge, and the row farthest from that edge has to stand at mid-depth or
    /// past it, but under a light load.
    fn past_middle(&self) -> Vec<Check> {
        let depth = self.ledger.member.section().depth;
        let fixings = self.fixings();
        let ways = [(Way::Down, depth - fixings.height(0)), (Way::Up, fixings.height(fixings.rows - 1))];
        let of = |(way, from_edge): (Way, Length)| {
            let place = most(self.places(way), |place| place.reaction.to_pounds())?;
            (place.reaction > LIGHT).then(|| self.at(PAST_MIDDLE, &place, Ok(in_depth(from_edge, depth))).going(way))
        };
        ways.into_iter().filter_map(of).collect()
    }

    /// Whether they stand far enough from the edges of the wall's posts: for whoever measures them. A maker's own screw has its
    /// distances on its maker's sheet.
    fn wall_edges(&self) -> Option<Check> {
        let width = |is_along| length(self.width_of_the_wall(is_along), self.ledger.project.units);
        let why = format!(
            "measure how wide the wall's posts are where the ledger's fixings go in, and how far in they stand: a post has to \
             be {} wide at least, and {} where wind or earthquake pushes along the wall",
            width(false),
            width(true)
        );
        (!self.is_makers()).then(|| Check::not_judged(EXISTING_WALL, WALL_EDGES, why).for_others())
    }

    /// What the fixings of that post hold.
    fn load(&self, place: &Place) -> LedgerLoad {
        let Place { way, reaction, outward, along, .. } = *place;
        LedgerLoad { reaction, eccentricity: self.ledger.line.ledger, outward, along, rows: self.rows(way) }
    }

    pub(super) fn judge(&self, place: &Place) -> Result<Worked<Verdict>, Unmade> {
        let values = self.values(Aim { way: place.way, tilt: place.tilt() }, place.asked.loading.duration)?;
        let found = ledger_fixing(self.kind(), &self.load(place), values.value)?;
        let on_one = found.value.load;
        let total = Force::pounds(on_one.withdrawal.to_pounds().hypot(on_one.lateral.to_pounds()));
        let steps = values.steps.into_iter().chain(found.steps).collect();
        Ok(Worked::new(Verdict::force(total, total / found.value.ratio), steps))
    }

    /// Washers and steel under the hardest pull of any combination: neither knows a load duration. A maker's own screw has both
    /// in its maker's value.
    fn pulled(&self) -> Vec<Check> {
        if self.is_makers() {
            return Vec::new();
        }
        let of = |way: Way| {
            let on_one = share(&self.rows(way), self.ledger.line.ledger);
            let pull = move |place: Place| on_one(place.reaction, place.outward).withdrawal.to_pounds();
            most(self.places(way).map(move |place| (pull(place), place)), |(pull, _)| *pull)
        };
        let [down, up] = [Way::Down, Way::Up].map(|way| {
            let found = of(way).map(|(_, place)| self.pulled_at(&place).map(|check| Some(check.going(way))));
            found.unwrap_or([None, None])
        });
        down.into_iter().zip(up).flat_map(|(down, up)| harder_first([down, up])).collect()
    }

    fn pulled_at(&self, place: &Place) -> [Check; 2] {
        let against = |capacity: Result<Worked<Force>, Unmade>| {
            let capacity = capacity?;
            let load = fixing_load(&self.load(place))?;
            let pull = load.value.withdrawal;
            let steps = load.steps.into_iter().chain(capacity.steps).collect();
            Ok(Worked::new(Verdict::force(pull, capacity.value), steps))
        };
        let steel = self.steel().map_err(Unmade::from);
        [self.at(WASHERS, place, against(self.washers())), self.at(STEEL, place, against(steel))]
    }
}

/// Load on the most loaded fixing of a reaction and a pull off the wall, without its working.
pub(super) fn share(rows: &[FixingRow], stand_off: Length) -> impl Fn(Force, Force) -> LoadOnOne + use<> {
    let count = |row: &FixingRow| f64::from(row.count);
    let squares: f64 = rows.iter().map(|row| count(row) * row.height.to_inches().powi(2)).sum();
    let top = rows.iter().map(|row| row.height.to_inches()).fold(0.0, f64::max);
    let lever = stand_off.to_inches() * top / squares;
    let n: f64 = rows.iter().map(count).sum();
    move |reaction, outward| LoadOnOne { withdrawal: reaction.abs() * lever + outward / n, lateral: reaction.abs() / n }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::analysis::roof_loads;
    use crate::checks::check_ledger;
    use crate::evaluate;
    use crate::project::{LedgerFixings, MAKERS_OWN, Project, demo};
    use crate::units::UnitSystem;

    /// The barn on three rows of 5/8 in at 2 1/2, 5 and 7 1/2 in of its ledger of 4x10, into posts 8 ft apart.
    fn barn(change: impl Fn(&mut LedgerFixings)) -> Project {
        let mut barn = demo::wool_barn();
        let fixings = &mut barn.fixings.ledger;
        fixings.fastener = "lag_5_8".to_owned();
        (fixings.rows, fixings.lowest) = (3, Length::inches(2.5));
        (barn.site.first_wall_post, barn.site.wall_post_spacing) = (Length::inches(12.0), Length::inches(96.0));
        change(&mut barn.fixings.ledger);
        barn
    }

    /// Every check of the ledger, on the barn's own geometry.
    fn checks(project: &Project) -> Vec<Check> {
        let built = evaluate(&barn(|_| ())).built.unwrap();
        check_ledger(project, &built.shape, &roof_loads(project, &built.shape))
    }

    fn found<'a>(checks: &'a [Check], name: &str) -> &'a Check {
        checks.iter().find(|check| check.name == name).unwrap()
    }

    fn ratio(project: &Project, name: &str) -> f64 {
        found(&checks(project), name).ratio().unwrap()
    }

    /// Reaction and outward pull on the fixings, as their steps give them.
    fn asked(check: &Check) -> (f64, f64) {
        let says = |gives: &str| check.steps().iter().find(|step| step.gives == gives).unwrap().says.clone();
        let number = |text: &str| text.split('/').next().unwrap().trim().parse().unwrap();
        let shear = says("shear of one fixing");
        let pull = says("pull of the highest fixing");
        (number(shear.trim_start_matches("Z = R/n = ")), number(pull.rsplit(" + ").next().unwrap()))
    }

    fn bolted(project: &mut LedgerFixings) {
        project.fastener = "bolt_5_8".to_owned();
        project.length = Length::inches(13.0);
    }

    /// Mode III_s of a 5/8 in bolt, ledger 4 in across the grain (F_e 2100), post 8 in along it (F_e 4600): R_e 2.190,
    /// k₃ = −1 + √(2·3.190/2.190 + 2·45,000·4.190·0.625²/(3·4600·4²)), Z = k₃·0.625·4·4600/(4.190·3.2·1.25).
    fn bolt_aside() -> f64 {
        let re = 4600.0 / 2100.0_f64;
        let k3 =
            (2.0 * (1.0 + re) / re + 2.0 * 45_000.0 * (2.0 + re) * 0.625 * 0.625 / (3.0 * 4600.0 * 16.0)).sqrt() - 1.0;
        k3 * 0.625 * 4.0 * 4600.0 / ((2.0 + re) * 4.0)
    }

    /// A washer of 2 in over a hole of 11/16 on hemlock of 555 psi across its grain: 555·(2 + 3/8)/2·π/4·(2² − 0.6875²) lb.
    fn washer() -> f64 {
        555.0 * 2.375 / 2.0 * std::f64::consts::FRAC_PI_4 * (4.0 - 0.6875 * 0.6875)
    }

    /// Green wood held by three in a row: 0.4 of Z, ·0.981 for the group, ·1.15; pull R·2.5·7.5/87.5 against the washers; both add.
    #[test]
    fn bolts_by_hand() {
        let all = checks(&barn(bolted));
        let hold = found(&all, HOLD_UP);
        let (r, h) = asked(hold);
        let (aside, pull) = (r / 3.0, r * 18.75 / 87.5 + h / 3.0);
        let expected = aside / (bolt_aside() * 1.15 * 0.4 * 0.981) + pull / washer();
        assert!((hold.ratio().unwrap() / expected - 1.0).abs() < 2e-3, "{hold:?} {expected}");
        assert!(hold.steps().iter().any(|step| step.says.contains("mode IIIs")));
        // A nut and two washers need 15/16 in past 12 in.
        let short = barn(|fixings| {
            bolted(fixings);
            fixings.length = Length::inches(12.9);
        });
        assert!(found(&checks(&short), HOLD_UP).says(UnitSystem::Imperial).contains("does not come out behind"));
    }

    #[test]
    fn washers_and_steel_by_hand() {
        let steel = |project: &Project, allowed: f64| {
            let all = checks(project);
            let (r, h) = asked(found(&all, STEEL));
            let pull = r * 18.75 / 87.5 + h / 3.0;
            let (washers, steel) = (found(&all, WASHERS).ratio().unwrap(), found(&all, STEEL).ratio().unwrap());
            assert!((washers / (pull / washer()) - 1.0).abs() < 3e-3, "{washers} {pull}");
            assert!((steel / (pull / allowed) - 1.0).abs() < 3e-3, "{steel} {pull}");
        };
        // 30,000 psi on the root of a lag screw, 0.471 in; three quarters of it on a bolt's body.
        steel(&barn(|_| ()), 30_000.0 * std::f64::consts::FRAC_PI_4 * 0.471 * 0.471);
        steel(&barn(bolted), 22_500.0 * std::f64::consts::FRAC_PI_4 * 0.625 * 0.625);
        // A ring of wood too narrow for the pull fails, whatever the screw holds.
        assert!(ratio(&barn(|fixings| fixings.washer = Length::inches(1.0)), WASHERS) > 1.0);
        let unknown = checks(&barn(|fixings| fixings.washer = Length::ZERO));
        assert!(
            found(&unknown, WASHERS)
                .says(UnitSystem::Imperial)
                .contains("the washers of the ledger's fixings are missing")
        );
        assert!(found(&unknown, HOLD_UP).ratio().is_some());
    }

    /// Two side by side in one row, 5 in up: each takes half, pulled by R·2.5/(5·2), and green wood shrinks round one row along
    /// its grain: C_M = 1. The ledger ends 4 in past a post: 4 − 1.5625 = 2.4375 in from the outer bolt, 0.975 of 4D, and no C_b.
    /// Rows of bolts 6.4 diameters long stand five diameters apart, 3 1/8 in.
    #[test]
    fn side_by_side() {
        let two = |gap: f64| {
            barn(move |fixings| {
                bolted(fixings);
                (fixings.rows, fixings.lowest) = (1, Length::inches(5.0));
                (fixings.columns, fixings.column_gap) = (2, Length::inches(gap));
            })
        };
        let all = checks(&two(3.125));
        let hold = found(&all, HOLD_UP);
        let (r, h) = asked(hold);
        let expected = r / 2.0 / (bolt_aside() * 1.15 * 0.975) + (r * 2.5 / 10.0 + h / 2.0) / (washer() / 2.375 * 2.0);
        assert!((hold.ratio().unwrap() / expected - 1.0).abs() < 2e-3, "{hold:?} {expected}");
        let near = checks(&two(3.1));
        assert!(found(&near, HOLD_UP).says(UnitSystem::Imperial).contains("The spacing between rows is 3.10 in"));
        assert!(found(&all, SHRINK_WALL).passes());
        assert!((ratio(&two(5.5), SHRINK_WALL) - 1.1).abs() < 1e-9);
        assert!(all.iter().all(|check| check.name != SHRINK_WALL || check.ratio().is_some()));
    }

    /// A maker's 3/8 in screw of 400 lb sideways and 700 lb pulled, one row of two 3 in apart: both by C_D alone, together by 12.4-1.
    #[test]
    fn makers_screws() {
        let two = |change: fn(&mut LedgerFixings)| {
            barn(move |fixings| {
                fixings.fastener = MAKERS_OWN.to_owned();
                (fixings.rows, fixings.lowest, fixings.columns) = (1, Length::inches(5.0), 2);
                let makers = &mut fixings.makers;
                (makers.sideways, makers.pull) = (Force::pounds(400.0), Force::pounds(700.0));
                makers.source = "invented sheet".to_owned();
                change(fixings);
            })
        };
        let all = checks(&two(|_| ()));
        let hold = found(&all, HOLD_UP);
        let (r, h) = asked(hold);
        let (z, w) = (r / 2.0, r * 2.5 / 10.0 + h / 2.0);
        let (aside, out) = (400.0 * 1.15, 700.0 * 1.15);
        let expected = ((w * w / out + z * z / aside) / w.hypot(z)).max(z / aside);
        assert!((hold.ratio().unwrap() / expected - 1.0).abs() < 2e-3, "{hold:?} {expected}");
        assert!(hold.sources().contains("the maker's sheet"));
        // Its head and its steel are in the maker's value.
        assert!(all.iter().all(|check| check.name != STEEL && check.name != WASHERS));
        let says = |project: &Project| found(&checks(project), HOLD_UP).says(UnitSystem::Imperial);
        let missing = |change, what: &str| assert!(says(&two(change)).contains(what), "{what}: {}", says(&two(change)));
        missing(
            |fixings| fixings.makers.sideways = Force::ZERO,
            "the allowable load sideways of the maker's screw is missing",
        );
        missing(|fixings| fixings.makers.pull = Force::ZERO, "the allowable pull of the maker's screw is missing");
        missing(|fixings| fixings.makers.source.clear(), "where the values of the maker's screw stand is missing");
        let mut packed = two(|_| ());
        packed.frame.ledger_packing = Length::inches(0.75);
        assert!(says(&packed).contains("over packing they are missing"));
    }

    /// Of a ledger 10 in deep held by one row: pressed down it may stand 5 in up and lower, lifted 5 in up and higher; two rows
    /// reach both ways. 4/10 of a depth where 5/10 are asked is 5/4.
    #[test]
    fn a_force_comes_in_past_the_middle() {
        let found = |rows: usize, lowest: f64| -> Vec<(Option<Way>, f64)> {
            let project = barn(|fixings| {
                (fixings.rows, fixings.lowest, fixings.row_gap) = (rows, Length::inches(lowest), Length::inches(3.0));
            });
            assert_eq!(project.frame.timbers.ledger.sawn.depth, Length::inches(10.0));
            let all = checks(&project);
            let mine = all.iter().filter(|check| check.name == PAST_MIDDLE);
            mine.map(|check| (check.way, check.ratio().unwrap())).collect()
        };
        let (down, up) = (Some(Way::Down), Some(Way::Up));
        assert_eq!(found(1, 5.0), [(down, 0.0), (up, 0.0)]);
        assert_eq!(found(1, 6.0), [(down, 5.0 / 4.0), (up, 0.0)]);
        assert_eq!(found(1, 4.0), [(down, 0.0), (up, 5.0 / 4.0)]);
        assert_eq!(found(2, 3.5), [(down, 0.0), (up, 0.0)]);
    }

    /// A wind that lifts a post of the wall by 100 lb and less may come in anywhere.
    #[test]
    fn a_light_lift_may_come_in_low() {
        let mut calm = barn(|fixings| (fixings.rows, fixings.lowest) = (1, Length::inches(4.0)));
        calm.place.wind_speed = crate::loads::WindSpeed::try_mph(30.0);
        let all = checks(&calm);
        let mine: Vec<_> = all.iter().filter(|check| check.name == PAST_MIDDLE).map(|check| check.way).collect();
        assert_eq!(mine, [Some(Way::Down)]);
    }
}

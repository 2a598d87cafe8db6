//! Each post's foot, its base, its pier and footing: down on the soil, up off it, pushed aside; and how deep the footings go.
//!
//! The forces at the feet come from the beam line. Soil friction is not counted against uplift, nor the weight of the
//! soil on the footing; the soil the footing replaces is not taken off its weight.
use super::asked::Amounts;
use super::bored::bored_foot;
use super::check::{Check, Way};
use super::governing::most;
use super::known::known_soil;
use super::part::Part;
use super::pier_pull::{ANCHORED, TIED, anchored, bending, bent, tied};
use super::pier_top::{CARRIES_BASE, bears};
use super::ties::{Joint, allowed, both};
use super::wood::Woods;
use crate::analysis::{Demand, FootForces, PostDemands};
use crate::design::Shape;
use crate::fastening::{Footing, FootingShape, Refused, bearing_pressure, frost, pole_depth, projection};
use crate::loads::Duration;
use crate::members::{Verdict, check_end_grain};
use crate::project::{Pier, Project, Used};
use crate::units::{AreaLoad, Density, Fixed, Force, Length, Weight};
use crate::unmade::{Input, Unmade};
use crate::working::{Citation, Step, Worked};

/// Names of the checks against uplift: the path of the uplift finds them by these.
pub(super) const HOLDS_DOWN: &str = "holds the post down";
pub(super) const STAYS_DOWN: &str = "stays down by its weight";
/// Name of what is said where the forces at a foot are not known.
pub(super) const STANDS: &str = "stands on its pier";
/// Name of the check the path of the weight finds.
pub(super) const PRESSES: &str = "presses on the soil";

const BASE: Joint = Joint { name: "base of a post", tie: Input::PostBase, values: Input::PostBaseValues };
/// Concrete, the heavy end and the light one (common practice).
const HEAVY: Density = Density::pounds_per_cubic_foot(150.0);
const LIGHT: Density = Density::pounds_per_cubic_foot(145.0);
/// Share of a weight that may be counted against uplift.
const AGAINST_UPLIFT: f64 = 0.6;
/// The least depth of any footing, and the least thickness of one of plain concrete (IRC, from memory).
const LEAST_DEPTH: Length = Length::inches(12.0);
const LEAST_THICKNESS: Length = Length::inches(6.0);
/// A pier that ends in the ground is pushed at its top all the same.
const LOWEST_PUSH: Length = Length::inches(1.0);

/// Every check of feet, bases, piers and footings; `why` says why there are no demands.
#[must_use]
pub fn check_bases(project: &Project, shape: &Shape, demands: &[PostDemands], why: Option<&Unmade>) -> Vec<Check> {
    let mut checks = vec![reaches_past(project), lies_deep(project)];
    for post in &shape.posts {
        match demands.iter().find(|of| of.post == post.number && !of.down.is_empty()) {
            Some(demands) => {
                let foot = Foot::new(project, demands);
                checks.extend(foot.checks());
                checks.extend(Part::PostBase.of(bored_foot(project, demands, foot.x)));
            }
            None => {
                let name = format!("P{}", post.number);
                let why = why.cloned().unwrap_or_else(|| "the forces at its foot are missing".into());
                checks.push(Check::not_judged(name, STANDS, why));
            }
        }
    }
    checks
}

fn footing(pier: &Pier) -> Footing {
    let shape = if pier.is_round { FootingShape::Round } else { FootingShape::Square };
    Footing { shape: shape(pier.footing_width), thickness: pier.footing_thickness }
}

/// A plain footing reaches past its pier by no more than its thickness, and is 6 in thick at least.
fn reaches_past(project: &Project) -> Check {
    let pier = &project.fixings.pier;
    let past = (pier.footing_width - pier.pier_width) / 2.0;
    let is_thin = pier.footing_thickness < LEAST_THICKNESS;
    let (name, verdict) = if is_thin {
        ("are thick enough", Verdict::length(LEAST_THICKNESS, pier.footing_thickness))
    } else {
        ("reach past the piers", Verdict::length(past.max(Length::ZERO), pier.footing_thickness))
    };
    let steps = match projection(&footing(pier), pier.pier_width) {
        Ok(worked) => worked.steps,
        Err(refused) => vec![Step::new("projection", refused.to_string(), Citation::from_memory("IRC", "R403.1.1"))],
    };
    Check::new("footings", name, "", "", Ok::<_, String>(Worked::new(verdict, steps))).of_sizes()
}

/// Below the frost, and 12 in below the ground at least.
fn lies_deep(project: &Project) -> Check {
    let (bottom, depth) = (project.fixings.pier.depth, project.ground.frost_depth);
    let found = frost(bottom, depth, project.units);
    let Some(depth) = depth else {
        let why = Unmade::missing(Input::FrostDepth, found.sentence);
        return Check::not_judged("footings", "lie below the frost", why);
    };
    let verdict = Verdict::length(depth.max(LEAST_DEPTH), bottom);
    let step = Step::new("depth", found.sentence, Citation::from_memory("IRC", "R403.1.4"));
    Check::new("footings", "lie below the frost", "", "", Ok::<_, String>(Worked::new(verdict, vec![step]))).of_sizes()
}

/// One post's foot.
struct Foot<'a> {
    project: &'a Project,
    demands: &'a PostDemands,
    x: Length,
    /// Underside of the post's foot to the ground, where the pier stands out of it.
    above_ground: Length,
}

impl<'a> Foot<'a> {
    fn new(project: &'a Project, demands: &'a PostDemands) -> Self {
        let place = demands.post.checked_sub(1).and_then(|index| project.frame.posts.get(index));
        let (x, top) = place.map_or((Length::ZERO, Length::ZERO), |post| (post.x, post.pier_top));
        let above_ground = top - project.site.ground_at(x, project.frame.beam_length);
        Self { project, demands, x, above_ground }
    }

    fn checks(&self) -> Vec<Check> {
        let named = |what: &str| format!("{what} of P{}", self.demands.post);
        let (down, feet) = (|| self.demands.down.iter(), || self.demands.feet.iter());
        let long = |force: Force, duration: Duration| force.to_pounds() / duration.factor();
        let standing = most(down(), |one| long(one.value, one.duration));
        // Soil and weight know no duration.
        let heaviest = most(down(), |one| one.value.to_pounds());
        let pushed = || feet().filter(|one| one.value.level > Force::ZERO);
        let aside = most(pushed(), |one| long(one.value.level, one.duration));
        let farthest = most(pushed(), |one| one.value.level.to_pounds());
        let [base, footing, pier, anchor] = ["base", "footing", "pier", "anchor"].map(named);
        let tie = &self.project.fixings.post_base;
        let share = |force: Force, most: Force| force.to_pounds() / most.to_pounds().max(1.0);
        let asks = |one: &Demand<FootForces>| {
            let FootForces { up, level } = one.value;
            (share(up, tie.pull) + share(level, tie.sideways)) / one.duration.factor()
        };
        let mut all = vec![
            self.check(format!("P{}", self.demands.post), "stands on its foot", standing, |one| self.foot(one))
                .part(Part::Post),
            self.check(base.clone(), "holds the post sideways", aside, |one| self.held(one)).part(Part::PostBase),
            self.check(footing.clone(), PRESSES, heaviest, |one| self.pressed(one)),
            self.check(pier.clone(), "stands against the push", farthest, |one| self.leaned(one)),
            self.check(pier.clone(), CARRIES_BASE, heaviest, |one| Ok(bears(self.project, one)?)),
        ];
        all.extend(Part::PostBase.of(self.on_pull((base, HOLDS_DOWN), asks, |one| self.held(one))));
        let up = |one: &Demand<FootForces>| one.value.up.to_pounds();
        let tallness = self.pier_height();
        let weight = self.pier_weight(LIGHT).force() * AGAINST_UPLIFT;
        all.extend(self.on_pull((anchor, ANCHORED), up, |one| anchored(self.project, one, tallness)));
        all.extend(self.on_pull((pier.clone(), TIED), up, |one| tied(self.project, one, weight)));
        let above = self.above_ground.max(LOWEST_PUSH);
        let bends = most(pushed(), |one| bending(self.project, one, above));
        all.push(self.check(pier, "bends as plain concrete", bends, |one| bent(self.project, one, above)));
        all.extend(self.on_pull((footing, STAYS_DOWN), up, |one| self.lifted(one)));
        all
    }

    /// The pull that asks most, and where it is not one of a lift the worst of those as a link.
    fn on_pull(
        &self,
        (member, name): (String, &str),
        asks: impl Fn(&Demand<FootForces>) -> f64,
        judge: impl Fn(&Demand<FootForces>) -> Result<Worked<Verdict>, Unmade>,
    ) -> Vec<Check> {
        let (worst, lift) =
            (most(self.demands.pulled(), |one| asks(one)), most(self.demands.lifted(), |one| asks(one)));
        let of = |demand| self.check(member.clone(), name, demand, &judge);
        match (worst, lift) {
            (Some(worst), Some(lift)) if std::ptr::eq(worst, lift) => vec![of(Some(lift)).going(Way::Up)],
            (_, Some(lift)) => vec![of(worst), of(Some(lift)).only(Way::Up)],
            (_, None) => vec![of(worst)],
        }
    }

    /// Judges the demand that asks most.
    fn check<Q: Amounts + Copy + Default + PartialEq>(
        &self,
        member: String,
        name: &str,
        worst: Option<&Demand<Q>>,
        judge: impl Fn(&Demand<Q>) -> Result<Worked<Verdict>, Unmade>,
    ) -> Check {
        let Some(worst) = worst.filter(|one| one.value != Q::default()) else {
            let step = Step::new("force", "no combination asks it", Citation::from_memory("statics", "sum"));
            let nothing = Worked::new(Verdict::force(Force::ZERO, Force::ZERO), vec![step]);
            return Check::new(member, name, "", "", Ok::<_, String>(nothing)).at_x(self.x);
        };
        Check::new(member, name, "", worst, judge(worst)).at_x(self.x)
    }

    /// The whole end of the post on its base.
    fn foot(&self, down: &Demand<Force>) -> Result<Worked<Verdict>, Unmade> {
        let post = Woods::new(self.project).member(Used::Post, down.duration)?;
        let has_plate = self.project.frame.stand_off > Length::ZERO;
        Ok(check_end_grain(&post, down.value, post.section().area(), has_plate)?)
    }

    /// Pull and push of one case together.
    fn held(&self, foot: &Demand<FootForces>) -> Result<Worked<Verdict>, Unmade> {
        let FootForces { up, level } = foot.value;
        both(up, level, &BASE, allowed(&self.project.fixings.post_base, &BASE, foot.duration)?)
    }

    /// Pier from the footing's top to its own.
    fn pier_height(&self) -> Length {
        let pier = &self.project.fixings.pier;
        (self.above_ground + pier.depth - pier.footing_thickness).max(Length::ZERO)
    }

    /// What the pier weighs over its footing.
    fn pier_weight(&self, concrete: Density) -> Weight {
        let pier = &self.project.fixings.pier;
        let height = self.pier_height();
        let shape = if pier.is_round { FootingShape::Round } else { FootingShape::Square };
        concrete * Footing { shape: shape(pier.pier_width), thickness: height }.volume()
    }

    fn pressed(&self, down: &Demand<Force>) -> Result<Worked<Verdict>, Unmade> {
        let text = |refused: Refused| refused.to_string();
        let soil = known_soil(self.project)?;
        let footing = footing(&self.project.fixings.pier);
        let pier = self.pier_weight(HEAVY).force();
        let found = bearing_pressure(&footing, down.value + pier, HEAVY).map_err(text)?;
        let area = |pressure: AreaLoad| pressure * footing.area();
        let citation = Citation { document: "IBC 2012", clause: "Table 1806.2", confidence: soil.confidence };
        let mut steps = vec![Step::new(
            "load and pier",
            format!("P = {} + {} lb of pier", Fixed(down.value.to_pounds(), 0), Fixed(pier.to_pounds(), 0)),
            Citation::common_practice("concrete of 150 lb/ft³"),
        )];
        steps.extend(found.steps);
        let says = format!("{} psf: {}", Fixed(soil.vertical.to_psf(), 0), soil.name);
        steps.push(Step::new("the soil may carry", says, citation));
        Ok(Worked::new(Verdict::force(area(found.value), area(soil.vertical)), steps))
    }

    /// What is left of the uplift when the roof's own weight is taken off, against the weight of the concrete.
    fn lifted(&self, foot: &Demand<FootForces>) -> Result<Worked<Verdict>, Unmade> {
        let up = foot.value.up;
        let footing = footing(&self.project.fixings.pier);
        let weight = (LIGHT * footing.volume()).force() + self.pier_weight(LIGHT).force();
        let holds = weight * AGAINST_UPLIFT;
        let says = format!(
            "{} lb up against 0.6·(footing and pier) = 0.6·{} = {} lb",
            Fixed(up.to_pounds(), 0),
            Fixed(weight.to_pounds(), 0),
            Fixed(holds.to_pounds(), 0)
        );
        let step = Step::new("weight against uplift", says, Citation::from_memory("ASCE 7-16", "2.4.1, 0.6D + 0.6W"));
        Ok(Worked::new(Verdict::force(up, holds), vec![step]))
    }

    /// Pier and footing as one pole in the soil.
    fn leaned(&self, foot: &Demand<FootForces>) -> Result<Worked<Verdict>, Unmade> {
        let (soil, pier) = (known_soil(self.project)?, &self.project.fixings.pier);
        let height = self.above_ground.max(LOWEST_PUSH);
        let needed =
            pole_depth(foot.value.level, height, pier.pier_width, soil).map_err(|refused| refused.to_string())?;
        Ok(Worked::new(Verdict::length(needed.value, pier.depth), needed.steps))
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::checks::asked::given;
    use crate::evaluate;
    use crate::project::demo;
    use crate::units::UnitSystem;

    /// The barn on footings of 28 by 10 in with piers of 12 in.
    fn barn() -> Project {
        let mut barn = demo::wool_barn();
        let pier = &mut barn.fixings.pier;
        (pier.footing_width, pier.footing_thickness) = (Length::inches(28.0), Length::inches(10.0));
        (pier.pier_width, pier.depth) = (Length::inches(12.0), Length::inches(52.0));
        barn
    }

    fn post_strength(project: &Project, duration: Duration) -> f64 {
        let post = Woods::new(project).member(Used::Post, duration).unwrap();
        crate::members::end_grain_strength(&post).value.to_psi()
    }

    fn demand(pounds: f64, combination: &str, duration: Duration) -> Demand<Force> {
        given(Force::pounds(pounds), combination, duration)
    }

    fn foot(up: f64, level: f64, combination: &str) -> Demand<FootForces> {
        let value = FootForces { up: Force::pounds(up), level: Force::pounds(level) };
        given(value, combination, Duration::TenMinutes)
    }

    /// Invented, each foot with pull and push of one case, as the beam line hands them over.
    fn demands() -> PostDemands {
        let wind = "0.6D + 0.6W: lifting";
        PostDemands {
            post: 2,
            down: vec![demand(5000.0, "D + S", Duration::TwoMonths), demand(4500.0, "D", Duration::Permanent)],
            feet: vec![
                foot(1000.0, 200.0, wind),
                foot(900.0, 500.0, "0.6D + 0.6W: lifting and along"),
                foot(150.0, 600.0, "D + 0.6W: along"),
            ],
        }
    }

    fn checks(project: &Project, demands: &PostDemands) -> Vec<Check> {
        let built = evaluate(&barn()).built.unwrap();
        check_bases(project, &built.shape, std::slice::from_ref(demands), None)
    }

    fn found<'a>(checks: &'a [Check], member: &str, name: &str) -> &'a Check {
        checks.iter().find(|check| check.member == member && check.name == name).unwrap()
    }

    fn near(found: &Check, expected: f64) {
        let ratio = found.ratio().unwrap();
        assert!((ratio - expected).abs() < 1e-6 * expected.max(1.0), "{ratio} is not {expected}: {found:?}");
    }

    /// Round footing 28 by 10 in: 4.276 ft², 3.563 ft³; pier 12 in round. Post 2 at 138 in: ground −4·138/408 = −1.353 in,
    /// pier top 4: 5.353 + 52 − 10 = 47.353 in of pier, 3.099 ft³. At 150 pcf 534.5 and 464.9 lb. On sand, 2,000 psf:
    /// (5000 + 999.4)/4.276 = 1,403 psf.
    #[test]
    fn the_footing_by_hand() {
        let all = checks(&barn(), &demands());
        let quarter = std::f64::consts::FRAC_PI_4;
        let (area, footing) = (quarter * 28.0 * 28.0 / 144.0, quarter * 28.0 * 28.0 * 10.0 / 1728.0);
        let pier = quarter * 144.0 * (5.352_941_176_5 + 42.0) / 1728.0;
        let presses = found(&all, "footing of P2", PRESSES);
        near(presses, (5000.0 + 150.0 * (footing + pier)) / area / 2000.0);
        assert_eq!(presses.combination, "D + S");
        near(found(&all, "footing of P2", STAYS_DOWN), 1000.0 / (0.6 * 145.0 * (footing + pier)));
        assert!(!found(&all, "footing of P2", STAYS_DOWN).passes(), "1000 lb is more than 580 lb of 966");
    }

    /// The base: 2,500 lb pulled and 1,200 lb sideways, 4000 and 1920 lb at 1.6. 900/4000 + 500/1920 = 0.485 is more than the
    /// larger pull, 1000/4000 + 200/1920 = 0.354, and than either of its own. The largest push has its own pull beside it:
    /// 150/4000 + 600/1920 = 0.35.
    /// The foot: 4500/64 in² under the dead load alone asks more of the wood than 5000/64 under snow.
    #[test]
    fn the_base_by_hand() {
        let barn = barn();
        let all = checks(&barn, &demands());
        let down = found(&all, "base of P2", HOLDS_DOWN);
        near(down, 900.0 / 4000.0 + 500.0 / 1920.0);
        assert_eq!(down.combination, "0.6D + 0.6W: lifting and along");
        near(found(&all, "base of P2", "holds the post sideways"), 150.0 / 4000.0 + 600.0 / 1920.0);
        let foot = found(&all, "P2", "stands on its foot");
        assert_eq!(foot.combination, "D");
        near(foot, 4500.0 / 64.0 / post_strength(&barn, Duration::Permanent));
        let missing = all.iter().filter(|check| check.name == "stands on its pier").count();
        assert_eq!(missing, 3, "the other posts");
    }

    /// 600 lb at 5.35 in on a pier 12 in wide in sand, 150 psf a foot: S and d as the code's equation has them.
    #[test]
    fn the_pier_by_its_equation() {
        let all = checks(&barn(), &demands());
        let d = found(&all, "pier of P2", "stands against the push").ratio().unwrap() * 52.0 / 12.0;
        let a = 2.34 * 600.0 / (150.0 * d / 3.0);
        let again = 0.5 * a * (1.0 + (1.0 + 4.36 * 5.352_941_176_5 / 12.0 / a).sqrt());
        assert!((d - again).abs() < 1e-6, "{d} {again}");
    }

    #[test]
    fn rules_of_the_footing() {
        let mut barn = barn();
        let of = |barn: &Project, name: &str| found(&checks(barn, &demands()), "footings", name).ratio().unwrap();
        assert!((of(&barn, "reach past the piers") - 0.8).abs() < 1e-9);
        assert!((of(&barn, "lie below the frost") - 48.0 / 52.0).abs() < 1e-9);
        barn.fixings.pier.footing_width = Length::inches(33.0);
        barn.fixings.pier.depth = Length::inches(40.0);
        assert!((of(&barn, "reach past the piers") - 1.05).abs() < 1e-9);
        assert!((of(&barn, "lie below the frost") - 1.2).abs() < 1e-9);
        barn.fixings.pier.footing_thickness = Length::inches(5.0);
        assert!((of(&barn, "are thick enough") - 1.2).abs() < 1e-9);
    }

    #[test]
    fn what_is_missing_is_said() {
        let says = |member: &str, name: &str, change: &dyn Fn(&mut Project)| {
            let mut barn = barn();
            change(&mut barn);
            found(&checks(&barn, &demands()), member, name).says(UnitSystem::Imperial)
        };
        let soil = says("footing of P2", PRESSES, &|barn| barn.ground.soil.clear());
        assert!(soil.contains("not judged: the soil is missing"), "{soil}");
        let soil = says("pier of P2", "stands against the push", &|barn| barn.ground.soil.clear());
        assert!(soil.contains("not judged: the soil is missing"), "{soil}");
        let frost = says("footings", "lie below the frost", &|barn| barn.ground.frost_depth = None);
        assert!(frost.contains("not judged: The frost depth is not given"), "{frost}");
        let base = says("base of P2", HOLDS_DOWN, &|barn| barn.fixings.post_base.count = 0);
        assert!(base.contains("not judged: the base of a post is missing"), "{base}");
    }

    #[test]
    fn nothing_asked_passes() {
        let all = checks(&barn(), &PostDemands { feet: vec![foot(0.0, 600.0, "D + 0.6W: along")], ..demands() });
        let base = found(&all, "base of P2", HOLDS_DOWN);
        assert!(base.passes() && base.ratio() == Some(0.0));
    }
}

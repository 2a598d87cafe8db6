//! What another rafter spacing costs where the roof must carry as it does now: wider rafters apart, deeper rafters or
//! thicker purlins under the same snow.
use super::spacing::steps;
use super::stepper::{Progress, Stepper};
use crate::checks::{Check, Strength};
use crate::evaluate;
use crate::materials::Timber;
use crate::project::{Project, Timbers};
use crate::units::{Length, Money, UnitSystem, sort_by_number};

/// The cheapest rafters and purlins at one spacing that carry.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeldPoint {
    /// Centre to centre.
    pub spacing: Length,
    /// The rafter it takes.
    pub rafter: Timber,
    /// The purlin it takes.
    pub purlin: Timber,
    /// Price of the whole order with them.
    pub order_price: Money,
    /// The share that rafters and purlins come to.
    pub share: f64,
    /// It is the project's own spacing.
    pub is_own: bool,
}

/// Thicker purlins and shallower or deeper rafters that are tried, in steps of the mill's sizes.
const PURLINS: [f64; 3] = [0.0, 1.0, 2.0];
const RAFTERS: [f64; 6] = [-2.0, -1.0, 0.0, 1.0, 2.0, 3.0];

/// Tries spacing after spacing, one whole answer a step; a spacing at which no size does is left out.
///
/// They carry where none of their checks comes past 100 %, or past what it comes to now where that is more, and no check is
/// left open that is not open now.
#[derive(Clone, Debug)]
pub struct HeldSpacings {
    project: Project,
    /// What rafters and purlins may come to.
    rafters: Share,
    purlins: Share,
    /// Spacings with the sizes still to be tried at each.
    left: Vec<(Length, Vec<(f64, f64)>)>,
    n_all: usize,
    found: Vec<HeldPoint>,
}

impl HeldSpacings {
    /// Nothing where the frame cannot be built or none of its rafters or purlins can be judged.
    #[must_use]
    pub fn new(project: &Project) -> Option<Self> {
        let strength = evaluate(project).strength?;
        let most = |letter| {
            let now = share(&strength, letter)?;
            Some(Share { worst: now.worst.max(1.0) + 1e-9, ..now })
        };
        let (rafters, purlins) = (most('R')?, most('N')?);
        let own = project.frame.rafters.spacing;
        let mut spacings = steps(project.units);
        spacings.retain(|spacing| !spacing.is_near(own, Length::inches(0.01)));
        spacings.push(own);
        sort_by_number(&mut spacings, |spacing| -spacing.to_inches());
        let sizes: Vec<(f64, f64)> =
            PURLINS.iter().flat_map(|purlin| RAFTERS.iter().map(move |rafter| (*purlin, *rafter))).rev().collect();
        let n_all = spacings.len();
        let left = spacings.into_iter().map(|spacing| (spacing, sizes.clone())).collect();
        Some(Self { project: project.clone(), rafters, purlins, left, n_all, found: Vec::new() })
    }

    /// What was found by now, from close to wide.
    #[must_use]
    pub fn found(&self) -> &[HeldPoint] {
        &self.found
    }

    const fn progress(&self) -> Progress {
        Progress { done: self.n_all - self.left.len(), of: self.n_all }
    }

    fn try_sizes(&self, spacing: Length, (purlin, rafter): (f64, f64)) -> Tried {
        let mut tried = self.project.clone();
        tried.frame.rafters.spacing = spacing;
        let units = tried.units;
        let timbers = &mut tried.frame.timbers;
        if !(grow(&mut timbers.purlin, step(units, 1.0, 25.0) * purlin)
            && grow(&mut timbers.rafter, step(units, 2.0, 20.0) * rafter))
        {
            return Tried::Fails;
        }
        let Timbers { rafter, purlin, .. } = *timbers;
        let design = evaluate(&tried);
        let (Some(built), Some(strength)) = (&design.built, &design.strength) else { return Tried::Fails };
        let (Some(rafters), Some(purlins)) = (share(strength, 'R'), share(strength, 'N')) else { return Tried::Fails };
        if purlins.is_past(self.purlins) {
            return Tried::PurlinFails;
        }
        if rafters.is_past(self.rafters) {
            return Tried::Fails;
        }
        let is_own = spacing == self.project.frame.rafters.spacing;
        let (order_price, share) = (built.order.price, rafters.worst.max(purlins.worst));
        Tried::Carries(HeldPoint { spacing, rafter, purlin, order_price, share, is_own })
    }
}

enum Tried {
    Carries(HeldPoint),
    Fails,
    /// No rafter helps a purlin.
    PurlinFails,
}

impl Stepper for HeldSpacings {
    /// One size at one spacing.
    fn next_step(&mut self) -> Progress {
        let Some((spacing, size)) = self.left.last_mut().map(|(spacing, sizes)| (*spacing, sizes.pop())) else {
            return self.progress();
        };
        let Some(size) = size else {
            self.left.pop();
            return self.progress();
        };
        match self.try_sizes(spacing, size) {
            Tried::Carries(point) => {
                self.left.pop();
                self.found.push(point);
            }
            Tried::PurlinFails => {
                if let Some((_, sizes)) = self.left.last_mut() {
                    sizes.retain(|(purlin, _)| *purlin > size.0);
                }
            }
            Tried::Fails => {}
        }
        self.progress()
    }
}

const fn step(units: UnitSystem, inches: f64, millimetres: f64) -> Length {
    match units {
        UnitSystem::Imperial => Length::inches(inches),
        UnitSystem::Metric => Length::millimetres(millimetres),
    }
}

/// Deeper, or shallower down to its own breadth; says whether there is such a size.
fn grow(timber: &mut Timber, by: Length) -> bool {
    for section in [&mut timber.ordered, &mut timber.sawn] {
        section.depth += by;
        if section.depth < section.breadth && by.is_negative() {
            return false;
        }
    }
    true
}

/// What rafters, or purlins, come to.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Share {
    /// The worst of what could be judged.
    worst: f64,
    /// Checks that could not be judged.
    n_open: usize,
}

impl Share {
    fn is_past(self, most: Self) -> bool {
        self.worst > most.worst || self.n_open > most.n_open
    }
}

/// What the checks of the sticks of that letter come to; nothing where none could be judged.
fn share(strength: &Strength, letter: char) -> Option<Share> {
    let is_stick = |member: &str| {
        let mut letters = member.chars();
        letters.next() == Some(letter) && letters.next().is_some_and(|next| next.is_ascii_digit())
    };
    let ratios: Vec<Option<f64>> =
        strength.checks.iter().filter(|check| is_stick(&check.member)).map(Check::ratio).collect();
    let worst = ratios.iter().flatten().copied().reduce(f64::max)?;
    Some(Share { worst, n_open: ratios.iter().filter(|ratio| ratio.is_none()).count() })
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::project::demo;

    fn points(project: &Project) -> Vec<HeldPoint> {
        let mut search = HeldSpacings::new(project).unwrap();
        while !search.next_step().is_done() {}
        search.found().to_vec()
    }

    /// Each point is the project worked out with its sizes, and a size less deep would not carry.
    #[test]
    fn each_point_carries_and_one_size_less_does_not() {
        let project = demo::wool_barn();
        let search = HeldSpacings::new(&project).unwrap();
        let found = points(&project);
        assert!(found.len() > 6, "{}", found.len());
        assert!(found.windows(2).all(|pair| pair[0].spacing < pair[1].spacing));
        assert_eq!(found.iter().filter(|point| point.is_own).count(), 1);
        for point in [found[0], found[found.len() / 2], found[found.len() - 1]] {
            let mut again = project.clone();
            again.frame.rafters.spacing = point.spacing;
            (again.frame.timbers.rafter, again.frame.timbers.purlin) = (point.rafter, point.purlin);
            let design = evaluate(&again);
            let shares = |design: &crate::Design| {
                let strength = design.strength.as_deref()?;
                Some((share(strength, 'R')?, share(strength, 'N')?))
            };
            let (rafters, purlins) = shares(&design).unwrap();
            assert!(!rafters.is_past(search.rafters) && !purlins.is_past(search.purlins));
            assert!((rafters.worst.max(purlins.worst) - point.share).abs() < 1e-12);
            assert_eq!(design.built.unwrap().order.price, point.order_price);
            if grow(&mut again.frame.timbers.rafter, Length::inches(-2.0)) {
                let less = shares(&evaluate(&again));
                assert!(less.is_none_or(|(rafters, _)| rafters.is_past(search.rafters)), "{:?}", point.spacing);
            }
        }
    }

    /// A wider spacing never takes a shallower rafter.
    #[test]
    fn wider_is_never_shallower() {
        let found = points(&demo::log_store());
        assert!(found.windows(2).all(|pair| pair[0].rafter.ordered.depth <= pair[1].rafter.ordered.depth));
    }

    #[test]
    fn what_cannot_be_judged_is_not_compared() {
        let mut project = demo::wool_barn();
        project.place.ground_snow = None;
        assert!(HeldSpacings::new(&project).is_none());
    }
}

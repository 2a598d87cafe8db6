//! The ties of the rafters to ledger and beam, by their maker's values, under the wind that lifts.
//!
//! Toward the wall a rafter's heels bear on ledger and beam; away from it only the ties hold, those at the ledger: the beam
//! line is free to lean. Wind is that on components, its worst zone over the whole rafter; snow only holds down and is left
//! out.
use super::check::{Check, Under};
use super::governing::most;
use super::part::Part;
use super::rafter::widest_rafter;
use crate::analysis::{Demand, Found, Loading, Origin, RafterHand, RafterLine, RoofLoads, component_cases, loadings};
use crate::design::Shape;
use crate::fastening::load_duration;
use crate::loads::wind::effective_area;
use crate::loads::{Duration, LeanTo};
use crate::members::Verdict;
use crate::project::{Project, Tie};
use crate::units::{Fixed, Force, Length};
use crate::unmade::{Input, Unmade};
use crate::working::{Citation, Step, Worked};

/// Name of both checks, and the places that tell them apart.
pub(super) const PULLS_ON_TIES: &str = "pulls on its ties";
pub(super) const AT_LEDGER: &str = "at the ledger";
pub(super) const AT_BEAM: &str = "at the beam";

/// A joint that ties hold: its name, and what it waits for.
pub(super) struct Joint {
    pub(super) name: &'static str,
    /// The tie itself.
    pub(super) tie: Input,
    /// What its maker states.
    pub(super) values: Input,
}

const HEAD: Joint =
    Joint { name: "tie of a rafter to the ledger", tie: Input::RafterHead, values: Input::RafterHeadValues };
const SEAT: Joint =
    Joint { name: "tie of a rafter to the beam", tie: Input::RafterSeat, values: Input::RafterSeatValues };

impl Joint {
    fn unsaid(&self, says: &str) -> Unmade {
        Unmade::missing(self.values, says)
    }
}

/// What the maker of a tie allows, all ties of one joint together.
pub(super) struct Allowed {
    pub(super) pull: Force,
    pub(super) sideways: Force,
    pub(super) steps: Vec<Step>,
}

/// The maker's values under a combination of that duration.
///
/// # Errors
/// What the user has not said yet; `of` names the ties.
pub(super) fn allowed(tie: &Tie, of: &Joint, duration: Duration) -> Result<Allowed, Unmade> {
    if tie.count == 0 {
        return Err(Unmade::missing(of.tie, format!("the {} is missing: none is chosen yet", of.name)));
    }
    if tie.pull <= Force::ZERO {
        return Err(of.unsaid(&format!("the allowable pull of the {} is missing: its maker states it", of.name)));
    }
    if tie.source.trim().is_empty() {
        return Err(of.unsaid(&format!("where the values of the {} stand is missing: name the maker's sheet", of.name)));
    }
    let shortest = load_duration(duration.factor())?;
    let count = tie.count as f64;
    let (pull, sideways) = (tie.pull * count * shortest.value, tie.sideways * count * shortest.value);
    let says = format!(
        "{}·{} lb·C_D = {} lb pulled, {}·{} lb·C_D = {} lb sideways: {}",
        tie.count,
        Fixed(tie.pull.to_pounds(), 0),
        Fixed(pull.to_pounds(), 0),
        tie.count,
        Fixed(tie.sideways.to_pounds(), 0),
        Fixed(sideways.to_pounds(), 0),
        tie.source
    );
    let citation = Citation::given("the maker's sheet", "as the user gave it");
    let mut steps = shortest.steps;
    steps.push(Step::new("what the ties carry", says, citation));
    let says = "green wood and wood in the weather: as the maker's sheet says; no factor is taken here".to_owned();
    steps.push(Step::new("moisture", says, citation));
    Ok(Allowed { pull, sideways, steps })
}

/// A pull and a push sideways at the same time: the sum of their shares.
pub(super) fn both(pull: Force, sideways: Force, of: &Joint, allowed: Allowed) -> Result<Worked<Verdict>, Unmade> {
    let Allowed { pull: most, sideways: most_sideways, mut steps } = allowed;
    if sideways <= Force::ZERO {
        return Ok(Worked::new(Verdict::force(pull, most), steps));
    }
    if most_sideways <= Force::ZERO {
        return Err(
            of.unsaid(&format!("the allowable push sideways of the {} is missing: its maker states it", of.name))
        );
    }
    let sum = pull.max(Force::ZERO) / most + sideways / most_sideways;
    let says = format!(
        "{}/{} + {}/{} = {sum}",
        Fixed(pull.max(Force::ZERO).to_pounds(), 0),
        Fixed(most.to_pounds(), 0),
        Fixed(sideways.to_pounds(), 0),
        Fixed(most_sideways.to_pounds(), 0),
        sum = Fixed(sum, 3)
    );
    let citation = Citation::common_practice("pull and push on one tie add up, unless its maker says otherwise");
    steps.push(Step::new("pull and push sideways", says, citation));
    Ok(Worked::new(Verdict::sum_of_shares(sum), steps))
}

/// Both ties of the rafter that carries most.
#[must_use]
pub fn check_rafter_ties(project: &Project, shape: &Shape, loads: &RoofLoads) -> Vec<Check> {
    let (widest, width) = widest_rafter(project, shape);
    let mark = format!("R{}", widest + 1);
    let forces = match Lifted::new(project, shape, loads, width) {
        Ok(forces) => forces,
        Err(why) => {
            return [AT_LEDGER, AT_BEAM].map(|at| unknown((&mark, PULLS_ON_TIES, at), why.clone())).into();
        }
    };
    vec![
        forces.check(&mark, AT_LEDGER, project, |one| (one.head, one.level)),
        forces.check(&mark, AT_BEAM, project, |one| (one.seat, Force::ZERO)),
    ]
}

fn part_at(at: &str) -> Part {
    if at == AT_LEDGER { Part::RafterHead } else { Part::RafterSeat }
}

/// One of the checks of these ties that cannot be made.
pub(super) fn unknown((mark, name, at): (&str, &'static str, &'static str), why: impl Into<Unmade>) -> Check {
    Check::new(mark, name, at, "", Err::<Worked<Verdict>, _>(why.into())).part(part_at(at))
}

/// One of the checks of these ties: of each combination the pull and the push sideways it asks of them, and the steps that led
/// to both. Nothing where there is no combination.
pub(super) fn hardest(
    (mark, name, at): (&str, &'static str, &'static str),
    project: &Project,
    demands: impl Iterator<Item = Demand<(Force, Force)>>,
    steps: impl Fn(Force, Force) -> Vec<Step>,
) -> Option<Check> {
    let fixings = &project.fixings;
    let (tie, of) = if at == AT_LEDGER { (&fixings.rafter_head, &HEAD) } else { (&fixings.rafter_seat, &SEAT) };
    // A rough share each way finds the combination; the verdict is worked out for that one alone.
    let share = |force: Force, most: Force| force.max(Force::ZERO).to_pounds() / most.to_pounds().max(1.0);
    let rough = |demand: &Demand<(Force, Force)>| {
        let (pull, level) = demand.value;
        (share(pull, tie.pull) + share(level, tie.sideways)) / demand.duration.factor()
    };
    let Demand { value: (pull, level), combination, duration, origin } = most(demands, rough)?;
    let made = allowed(tie, of, duration).and_then(|allowed| both(pull, level, of, allowed)).map(|mut made| {
        made.steps.splice(0..0, steps(pull, level));
        made
    });
    let under = Under::from_origin(combination, None, origin);
    let under = under.asks("up", pull.max(Force::ZERO)).asks("off the wall", level);
    Some(Check::new(mark, name, at, under, made).part(part_at(at)))
}

/// Forces of one rafter on its ties: up at either seat, and away from the wall.
#[derive(Clone, Copy)]
struct Forces {
    head: Force,
    seat: Force,
    level: Force,
}

/// One rafter under every combination with wind on components.
struct Lifted {
    loadings: Vec<Loading>,
    forces: Vec<Forces>,
    width: Length,
}

impl Lifted {
    fn new(project: &Project, shape: &Shape, loads: &RoofLoads, width: Length) -> Result<Self, Unmade> {
        let lean_to: &LeanTo = &loads.lean_to;
        let line = RafterLine::new(shape, lean_to.roof_length().length());
        let area = effective_area(line.span() / line.pitch.cos(), width);
        let cases = component_cases(&project.place, lean_to, area)?;
        let hand = RafterHand::new(&line, &loads.dead, &cases);
        let loadings = loadings(project.place.edition, &cases, loads.dead.sure);
        let of = |loading: &Loading| {
            let (strip, own) = (hand.strip(loading), hand.own(loading));
            Forces {
                head: -(strip.ledger * width + own.ledger),
                seat: -(strip.beam * width + own.beam),
                level: (strip.level * width).max(Force::ZERO),
            }
        };
        let forces = loadings.iter().map(of).collect();
        Ok(Self { loadings, forces, width })
    }

    fn check(
        &self,
        mark: &str,
        at: &'static str,
        project: &Project,
        pick: impl Fn(&Forces) -> (Force, Force),
    ) -> Check {
        let demands = self.loadings.iter().zip(&self.forces).map(|(loading, forces)| Demand {
            value: pick(forces),
            combination: loading.name.clone(),
            duration: loading.duration,
            origin: Origin::of(loading, Found::Formula("moments about the seats")),
        });
        let steps = |pull, level| vec![self.step(pull, level)];
        let check = (mark, PULLS_ON_TIES, at);
        hardest(check, project, demands, steps).unwrap_or_else(|| unknown(check, "no combination with wind was found"))
    }

    fn step(&self, pull: Force, level: Force) -> Step {
        let says = format!(
            "a rafter that carries {:.1} in of roof lifts with {:.0} lb and pulls off the wall with {:.0} lb",
            self.width.to_inches(),
            pull.max(Force::ZERO).to_pounds(),
            level.to_pounds()
        );
        Step::new("forces on the ties of one rafter", says, Citation::from_memory("statics", "moments about the seats"))
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::analysis::roof_loads;
    use crate::evaluate;
    use crate::project::demo;
    use crate::units::UnitSystem;

    fn checks(project: &Project) -> [Check; 2] {
        let built = evaluate(project).built.unwrap();
        check_rafter_ties(project, &built.shape, &roof_loads(project, &built.shape)).try_into().unwrap()
    }

    /// The barn: seats at 2.5 and 128 in, eave at 138.97; 24 in of roof. 129.4 in of span, counted a third of it wide, gather
    /// 38.7 ft², over 4a²: the field's −38.08 psf. 0.6 of it on 2 ft: 45.70 plf of plan up, on 11.581 ft 529.2 lb. Turned
    /// about the ledger seat: arm 69.485 − 2.5 of 125.5, by 1/cos²θ = 1.0625: 300.1 lb at the beam, 229.1 lb at the ledger.
    /// Seven purlins on 141.73 in of slope and the sheets: (0.6 + 27.439·8/144·7/11.811)/cos θ = 1.5497 psf of plan. Dead
    /// 0.6·(1.5497·2 + 6.285) = 5.631 plf: 65.2 lb, 34.8 at the beam, 30.4 at the ledger. Level 529.2/4 = 132.3 lb.
    #[test]
    fn the_barn_by_hand() {
        let [head, seat] = checks(&demo::wool_barn());
        assert_eq!(seat.combination, "0.6D + 0.6W: wind on components, lifting");
        let up = 0.6 * 38.083_410 * 2.0 * 138.970_143 / 12.0;
        let at_beam = up * (69.485_071 - 2.5) / 125.5 * 1.0625;
        let dead = 0.6 * (1.549_732 * 2.0 + 0.523_770 * 12.0) * 138.970_143 / 12.0;
        let dead_beam = dead * (69.485_071 - 2.5) / 125.5;
        assert!((seat.ratio().unwrap() - (at_beam - dead_beam) / (2.0 * 350.0 * 1.6)).abs() < 1e-6, "{seat:?}");
        let pull = up - at_beam - (dead - dead_beam);
        let expected = pull / 1120.0 + up * 0.25 / 960.0;
        assert!((head.ratio().unwrap() - expected).abs() < 1e-6, "{head:?} {expected}");
        assert!(head.passes() && seat.passes());
    }

    #[test]
    fn one_weak_tie_fails() {
        let mut barn = demo::wool_barn();
        barn.fixings.rafter_seat.count = 1;
        barn.fixings.rafter_seat.pull = Force::pounds(150.0);
        let [head, seat] = checks(&barn);
        assert!(head.passes() && !seat.passes() && seat.ratio().unwrap() > 1.0);
    }

    #[test]
    fn what_is_missing_is_said() {
        let says = |change: &dyn Fn(&mut Project)| {
            let mut barn = demo::wool_barn();
            change(&mut barn);
            checks(&barn).map(|check| check.says(UnitSystem::Imperial))
        };
        let [_, seat] = says(&|barn| barn.fixings.rafter_seat.count = 0);
        assert!(seat.contains("not judged: the tie of a rafter to the beam is missing"), "{seat}");
        assert!(seat.contains("; it has to take up = 265 lb, ") && seat.ends_with(" lifting"), "{seat}");
        let [head, _] = says(&|barn| barn.fixings.rafter_head.pull = Force::ZERO);
        assert!(head.contains("not judged: the allowable pull of the tie of a rafter to the ledger is missing"));
        let [head, _] = says(&|barn| barn.fixings.rafter_head.sideways = Force::ZERO);
        assert!(head.contains("not judged: the allowable push sideways"), "{head}");
        let [head, _] = says(&|barn| barn.fixings.rafter_head.source.clear());
        assert!(head.contains("not judged: where the values of the tie"), "{head}");
        assert!(says(&|barn| barn.place.wind_speed = None).iter().all(|says| says.contains("wind speed is missing")));
    }
}

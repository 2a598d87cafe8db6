//! The sheets' screws under suction: pulled out of the purlin, and the sheet pulled over them.
//!
//! Each screw holds its spacing along the purlin times the row's strip of the roof, in the corner where the wind sucks
//! hardest; snow has no part in it. The sheet's own weight is left out. On a rib less thread is left than on the flat: what is judged is a screw
//! through the flat.
use super::check::Check;
use super::governing::most;
use super::known::{chosen, gravity, moisture};
use crate::analysis::{
    Demand, Found, Loading, Origin, PurlinStrip, RoofLoads, component_cases, loadings, purlin_strips,
};
use crate::design::Shape;
use crate::fastening::{Factors, adjusted_withdrawal, load_duration, wet_withdrawal, withdrawal};
use crate::members::Verdict;
use crate::project::{Metal, Project, SheetScrews, Used};
use crate::units::{Area, AreaLoad, Fixed, Force, Length};
use crate::unmade::{Input, Unmade};
use crate::working::{Citation, Confidence, Step, Worked};

/// Names of the two checks: the paths of the uplift find them by these.
pub(super) const PULLED_OVER: &str = "is pulled over its screws";
pub(super) const PULLED_OUT: &str = "pull out of the purlin";

const SHEET: &str = "roof sheet";
const SCREWS: &str = "sheet screws";
/// Where the wind sucks hardest.
const CORNER: &str = "at the roof's corner";

/// Base metal of a sheet, from memory of the gauge tables, coated: rounded up, so that less thread is counted.
const fn thickness(metal: Metal) -> Length {
    match metal {
        Metal::Ribbed29 => Length::inches(0.017),
        Metal::Ribbed26 => Length::inches(0.022),
        Metal::StandingSeam24 => Length::inches(0.028),
    }
}

/// Both checks of the sheets' screws.
#[must_use]
pub fn check_sheet_screws(project: &Project, shape: &Shape, loads: &RoofLoads) -> Vec<Check> {
    let screws = &project.fixings.sheet;
    match pulls(project, shape, loads) {
        Err(why) => {
            vec![Check::not_judged(SHEET, PULLED_OVER, why.clone()), Check::not_judged(SCREWS, PULLED_OUT, why)]
        }
        Ok((demand, step)) => vec![
            named(SHEET, PULLED_OVER, &demand, pull_over(screws, &demand, step.clone())),
            named(SCREWS, PULLED_OUT, &demand, pull_out(project, &demand, step)),
        ],
    }
}

fn named(member: &str, name: &str, demand: &Demand<Force>, made: Result<Worked<Verdict>, Unmade>) -> Check {
    Check::new(member, name, CORNER, demand, made)
}

/// The largest pull on one screw, with how it came about.
fn pulls(project: &Project, shape: &Shape, loads: &RoofLoads) -> Result<(Demand<Force>, Step), Unmade> {
    let screws = &project.fixings.sheet;
    if screws.spacing <= Length::ZERO || screws.screw.count == 0 {
        return Err("the spacing or the number of the sheets' screws is missing".into());
    }
    let strips = purlin_strips(project, shape, &loads.dead, loads.lean_to.roof_length().length());
    let widest = strips.iter().map(PurlinStrip::width).fold(Length::ZERO, Length::max);
    let area: Area = widest * screws.spacing;
    let cases = component_cases(&project.place, &loads.lean_to, area)?;
    let all = loadings(project.place.edition, &cases, Confidence::Medium);
    let lifting = |loading: &Loading| {
        loading.parts.iter().map(|(factor, index)| cases[*index].square.at(Length::ZERO) * -*factor).sum::<AreaLoad>()
    };
    // The roof's own weight is not in it: of the combinations that ask the same, those against uplift are named.
    let pressures = all.iter().filter(|loading| loading.is_uplift).map(|loading| (loading, lifting(loading)));
    let worst = most(pressures, |(_, pressure)| pressure.to_psf());
    let (loading, pressure) = worst.ok_or("no combination with wind was found")?;
    let count = screws.screw.count as f64;
    let value = (pressure * area / count).max(Force::ZERO);
    let says = format!(
        "{} psf·{} in·{} in/144 on {} = {} lb",
        Fixed(pressure.to_psf(), 1),
        Fixed(widest.to_inches(), 1),
        Fixed(screws.spacing.to_inches(), 1),
        if screws.screw.count == 1 { "one screw".to_owned() } else { format!("{} screws", screws.screw.count) },
        Fixed(value.to_pounds(), 0)
    );
    let step = Step::new("pull on one screw", says, Citation::from_memory("statics", "suction by area"));
    let origin = Origin::of(loading, Found::Formula("suction by area"));
    Ok((Demand { value, combination: loading.name.clone(), duration: loading.duration, origin }, step))
}

fn pull_over(screws: &SheetScrews, demand: &Demand<Force>, step: Step) -> Result<Worked<Verdict>, Unmade> {
    if screws.pull_over <= Force::ZERO {
        let says = "the load at which the sheet pulls over a screw's washer is missing: its maker states it";
        return Err(Unmade::missing(Input::SheetPullOver, says));
    }
    let says = format!("{} lb at one washer; steel takes no C_D", Fixed(screws.pull_over.to_pounds(), 0));
    let citation = Citation::given("the sheet maker's table", "as the user gave it");
    let steps = vec![step, Step::new("pull-over allowed", says, citation)];
    Ok(Worked::new(Verdict::force(demand.value, screws.pull_over), steps))
}

fn pull_out(project: &Project, demand: &Demand<Force>, step: Step) -> Result<Worked<Verdict>, Unmade> {
    let screws = &project.fixings.sheet.screw;
    let screw = chosen(&screws.fastener, "sheets' screw", Input::SheetScrew)?;
    let wood = gravity(&project.frame.species, Some(&project.frame.timbers.purlin), "the purlins")?;
    let reference = withdrawal(screw, wood)?;
    let past_sheet = screws.length - thickness(project.roofing.metal);
    let held = past_sheet.min(project.frame.timbers.purlin.sawn.depth);
    let duration = load_duration(demand.duration.factor())?;
    let wet = wet_withdrawal(screw.kind, moisture(project, Used::Purlin)?)?;
    let factors = Factors { load_duration: duration.value, wet: wet.value, ..Factors::default() };
    let capacity = adjusted_withdrawal(reference.value, held, &factors)?;
    let says = format!("p = {} in: past the sheet, no more than the purlin is thick", Fixed(held.to_inches(), 2));
    let thread = Step::new("thread in the purlin", says, Citation::common_practice("threaded over its whole length"));
    let mut steps = vec![step];
    steps.extend(reference.steps);
    steps.push(thread);
    for found in [duration.steps, wet.steps, capacity.steps] {
        steps.extend(found);
    }
    Ok(Worked::new(Verdict::force(demand.value, capacity.value), steps))
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
        let found = check_sheet_screws(project, &built.shape, &roof_loads(project, &built.shape));
        found.try_into().unwrap()
    }

    /// Strips 22.79 in wide, screws 9 in apart: 1.424 ft², less than a² = 9 ft², so the corner's −80.23 psf (worked out
    /// in the loads room) stands: 0.6·80.23·1.424 = 68.6 lb. #14 in eastern hemlock: 2850·0.41²·0.242 = 115.9 lb/in, 1.483 in
    /// of thread at 1.6: 275.1 lb.
    #[test]
    fn the_barn_by_hand() {
        let [over, out] = checks(&demo::wool_barn());
        let pull = 0.6 * 80.227_827 * 22.788_626 * 9.0 / 144.0;
        assert!((over.ratio().unwrap() - pull / 180.0).abs() < 1e-5, "{over:?}");
        let holds = 2850.0 * 0.41 * 0.41 * 0.242 * 1.483 * 1.6;
        assert!((out.ratio().unwrap() - pull / holds).abs() < 1e-5, "{out:?}");
        assert_eq!(out.combination, "0.6D + 0.6W: wind on components, lifting");
        assert!(over.passes() && out.passes());
    }

    #[test]
    fn wider_apart_fails() {
        let mut barn = demo::wool_barn();
        barn.fixings.sheet.spacing = Length::inches(36.0);
        assert!(checks(&barn).iter().all(|check| check.ratio().unwrap() > 0.8));
        barn.fixings.sheet.pull_over = Force::pounds(100.0);
        assert!(!checks(&barn)[0].passes());
    }

    /// A screw longer than the purlin is thick holds by the purlin's thickness only.
    #[test]
    fn thread_past_the_purlin_does_not_count() {
        let mut barn = demo::wool_barn();
        let ratio = |project: &Project| checks(project)[1].ratio().unwrap();
        barn.fixings.sheet.screw.length = Length::inches(3.0);
        let through = ratio(&barn);
        barn.fixings.sheet.screw.length = Length::inches(2.017);
        assert!((through - ratio(&barn)).abs() < 1e-12);
    }

    #[test]
    fn what_is_missing_is_said() {
        let says = |change: &dyn Fn(&mut Project)| {
            let mut barn = demo::wool_barn();
            change(&mut barn);
            checks(&barn).map(|check| check.says(UnitSystem::Imperial))
        };
        let [over, _] = says(&|barn| barn.fixings.sheet.pull_over = Force::ZERO);
        assert!(over.contains("not judged: the load at which the sheet pulls over a screw's washer is missing"));
        let [_, out] = says(&|barn| barn.fixings.sheet.screw.fastener.clear());
        assert!(out.contains("not judged: the sheets' screw is missing"), "{out}");
        let both = says(&|barn| barn.place.wind_speed = None);
        assert!(both.iter().all(|check| check.contains("wind speed is missing")), "{both:?}");
        let both = says(&|barn| barn.place.ground_snow = None);
        assert!(both.iter().all(|check| !check.contains("not judged")), "{both:?}");
    }
}

//! Pushes along the wall on the beam line: wind on what stands in it, a frame out of plumb, an earthquake.
use super::beam_cases::{BeamCase, BeamLoads, Purpose};
use super::earthquake::{Shaking, earthquake_on_line};
use super::loading::lies_within;
use super::roof_cases::{RoofCase, RoofLoads};
use crate::design::Shape;
use crate::loads::wind::{Projected, WindCase, WindFrom, wind_along_wall};
use crate::loads::{Action, Combination, Duration, Edition, Spread, combinations, notional_force};
use crate::project::Project;
use crate::units::{Area, AreaLoad, Force, Length, LineLoad, most};
use crate::unmade::Unmade;
use crate::working::{Citation, Confidence, Step, Worked, weakest};

/// The pushes and what could not be worked out.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct AlongCases {
    /// Both ways, with the roof's loads of the same combination.
    pub cases: Vec<BeamCase>,
    /// Wind on each square foot of the frame's own parts, unfactored, where it is known.
    pub on_faces: Option<AreaLoad>,
    /// How the pushes came about.
    pub steps: Vec<Step>,
    /// What is missing, a sentence each.
    pub not_judged: Vec<Unmade>,
}

/// Every push along the wall, both ways.
#[must_use]
pub fn along_cases(project: &Project, shape: &Shape, loads: &RoofLoads, beam: &BeamLoads) -> AlongCases {
    let mut found = AlongCases::default();
    let gravity = beam.even_cases(project.place.edition);
    out_of_plumb(&mut found, beam, &gravity);
    match wind_push(project, shape, loads) {
        Ok((push, on_faces, steps)) => {
            found.on_faces = Some(on_faces);
            found.steps.extend(steps);
            let sure = weakest(&found.steps);
            wind(&mut found, project, loads, beam, (push, sure));
        }
        Err(missing) => found.not_judged.push(missing),
    }
    earthquake(&mut found, project, shape, loads, beam);
    found
}

/// The heaviest case of each duration but wind, pushed by 0.5 % of its weight.
fn out_of_plumb(found: &mut AlongCases, beam: &BeamLoads, gravity: &[BeamCase]) {
    let dead = beam.whole_dead(false);
    for case in gravity.iter().filter(|case| !case.is_uplift && case.duration != Duration::TenMinutes) {
        let weight = dead * case.dead + case.rafters.iter().sum::<Force>();
        let notional = notional_force(weight);
        let (push, confidence) = (notional.value, case.confidence.max(weakest(&notional.steps)));
        for (side, push) in [("left", -push), ("right", push)] {
            let name = format!("{}, out of plumb to the {side}", case.name);
            found.cases.push(BeamCase { name, push, purpose: Purpose::Along, confidence, ..case.clone() });
        }
    }
}

/// Wind along the wall on what the beam line and its roof show it, and the part of it that comes to the beam.
pub(super) struct OnParts {
    /// Their names, the force on each, and the beam's share.
    pub forces: Vec<(&'static str, Force, f64)>,
    /// On each square foot.
    pub pressure: AreaLoad,
    /// How it came about.
    pub steps: Vec<Step>,
}

impl OnParts {
    /// The beam takes half of the roof's edge and of the rafters behind it, its own end, half of the posts, and the braces, whose
    /// push goes mostly to it.
    ///
    /// # Errors
    /// The sentence that says what is missing.
    pub fn of(project: &Project, shape: &Shape, loads: &RoofLoads) -> Result<Self, Unmade> {
        let timbers = &project.frame.timbers;
        let posts: Area = shape.posts.iter().map(|post| timbers.post.sawn.depth * post.body()).sum();
        let braces = timbers.brace.sawn.breadth * project.frame.brace_down * shape.braces.len() as f64;
        let (behind, shelter) = sheltered_rafters(project, shape, loads);
        let rows = [
            ("roof edge", roof_edge(project, shape, loads), 0.5),
            ("the rafters behind it", behind, 0.5),
            ("beam end", timbers.beam.sawn.area(), 1.0),
            ("posts", posts, 0.5),
            ("braces", braces, 1.0),
        ];
        let parts = rows.map(|(name, area, _)| part(name, area));
        let worked = wind_along_wall(&project.place, loads.lean_to.mean_roof_height(), &parts)?;
        let forces = rows.iter().zip(&worked.value.forces).map(|((name, _, share), force)| (*name, *force, *share));
        let (forces, pressure) = (forces.collect(), worked.value.pressure);
        Ok(Self { forces, pressure, steps: [shelter].into_iter().chain(worked.steps).collect() })
    }
}

/// What of the wind along the wall the beam line takes.
fn wind_push(project: &Project, shape: &Shape, loads: &RoofLoads) -> Result<(Force, AreaLoad, Vec<Step>), Unmade> {
    let OnParts { forces, pressure, mut steps } = OnParts::of(project, shape, loads)?;
    let total: Force = forces.iter().map(|(_, force, share)| *force * *share).sum();
    let each: Vec<String> = forces.iter().map(|(_, force, _)| format!("{:.0}", force.to_pounds())).collect();
    let says = format!(
        "({} + {})/2 + {} + {}/2 + {} = {:.0} lb: the ledger and the posts' feet take the other halves",
        each[0],
        each[1],
        each[2],
        each[3],
        each[4],
        total.to_pounds()
    );
    steps.push(Step::new(
        "push on the beam",
        says,
        Citation::from_memory("statics", "halves to ledger, beam and feet"),
    ));
    Ok((total, pressure, steps))
}

fn part(name: &str, area: Area) -> Projected {
    Projected { name: name.to_owned(), area }
}

/// The roof's edge as wind along the wall sees it: rafter, purlin and rib.
fn roof_edge(project: &Project, shape: &Shape, loads: &RoofLoads) -> Area {
    let timbers = &project.frame.timbers;
    let thick = (timbers.rafter.sawn.depth + timbers.purlin.sawn.depth + project.roofing.rib) / shape.line.pitch.cos();
    thick * loads.lean_to.roof_length().length()
}

/// What the wind still finds of a solid strip that stands a spacing behind one of the same height: 0.3 up to five heights,
/// rising straight to the whole at ten (EN 1991-1-4, 7.4.2 and figure 7.20, solid fences, from memory).
fn shelter_factor(spacing_by_height: f64) -> f64 {
    (0.3 + 0.7 * (spacing_by_height - 5.0) / 5.0).clamp(0.3, 1.0)
}

/// The rafters behind the first one, each by the shelter of the one before it; the same from either end.
fn sheltered_rafters(project: &Project, shape: &Shape, loads: &RoofLoads) -> (Area, Step) {
    let depth = project.frame.timbers.rafter.sawn.depth;
    let one = depth / shape.line.pitch.cos() * loads.lean_to.roof_length().length();
    let ratios: Vec<f64> = shape.rafters.windows(2).map(|pair| (pair[1] - pair[0]) / depth).collect();
    let sum: f64 = ratios.iter().map(|ratio| shelter_factor(*ratio)).sum();
    let widest = ratios.iter().copied().fold(0.0, f64::max);
    let says = format!(
        "{} rafters, no more than {widest:.1} depths apart: sum of ψ = {sum:.2}; A = {sum:.2}·{:.2} = {:.2} ft²",
        ratios.len(),
        one.to_square_feet(),
        (one * sum).to_square_feet()
    );
    let citation = Citation::from_memory("EN 1991-1-4", "7.4.2, figure 7.20, solid strips one behind the other");
    (one * sum, Step::new("ψ, what the rafters behind the first still find of the wind", says, citation))
}

/// What of the wind along the wall the ledger takes: half of the roof's edge and of the rafters behind it, which the purlins share
/// out, and the ledger's end. Unfactored.
///
/// # Errors
/// The sentence that says what is missing.
pub fn wind_on_ledger(project: &Project, shape: &Shape, loads: &RoofLoads) -> Result<Worked<Force>, Unmade> {
    let (behind, shelter) = sheltered_rafters(project, shape, loads);
    let parts = [
        part("roof edge", roof_edge(project, shape, loads)),
        part("the rafters behind it", behind),
        part("ledger end", project.frame.timbers.ledger.sawn.area()),
    ];
    let height = loads.lean_to.mean_roof_height();
    let worked = wind_along_wall(&project.place, height, &parts)?;
    let force = |index: usize| worked.value.forces.get(index).copied().unwrap_or_default();
    let total = (force(0) + force(1)) * 0.5 + force(2);
    let says = format!(
        "({:.0} + {:.0})/2 + {:.0} = {:.0} lb: the beam takes the other half of edge and rafters",
        force(0).to_pounds(),
        force(1).to_pounds(),
        force(2).to_pounds(),
        total.to_pounds()
    );
    let mut steps = worked.steps;
    steps.insert(0, shelter);
    steps.push(Step::new("push on the ledger", says, Citation::from_memory("statics", "halves to ledger and beam")));
    Ok(Worked::new(total, steps))
}

/// The worst of the wind along the wall, pressing and lifting, as if it lay on the whole roof.
#[must_use]
pub fn side_wind_on_roof(loads: &RoofLoads) -> Vec<RoofCase> {
    let pressures = loads
        .side_wind
        .iter()
        .flat_map(|case| case.pressure.pieces().iter().flat_map(|piece| [piece.start, piece.end]));
    let (low, high) = pressures.fold((AreaLoad::ZERO, AreaLoad::ZERO), |(low, high), p| (low.min(p), high.max(p)));
    let whole = |load| Spread::uniform(Length::ZERO, loads.lean_to.roof_length().length(), load);
    let confidence = loads.side_wind.iter().map(|case| weakest(&case.steps)).max().unwrap_or(Confidence::High);
    let case =
        |name, load| RoofCase { square: whole(load), confidence, ..RoofCase::new(name, Action::Wind, Vec::new()) };
    let found = [("wind along the wall, pressing", high), ("wind along the wall, lifting", low)];
    found.into_iter().filter(|(_, load)| *load != AreaLoad::ZERO).map(|(name, load)| case(name, load)).collect()
}

/// What may lie on the roof beside: its heaviest case, unfactored.
struct Companion {
    confidence: Confidence,
    action: Action,
    name: String,
    rafters: Vec<Force>,
}

fn wind(
    found: &mut AlongCases,
    project: &Project,
    loads: &RoofLoads,
    beam: &BeamLoads,
    (push, sure): (Force, Confidence),
) {
    let beside: Vec<Companion> =
        [Action::Snow, Action::RoofLive].into_iter().filter_map(|action| heaviest(loads, beam, action)).collect();
    let present: Vec<Action> = [Action::Wind].into_iter().chain(beside.iter().map(|with| with.action)).collect();
    let all = combinations(project.place.edition, &present);
    let windy = all.iter().filter(|combination| combination.factor(Action::Wind) != 0.0);
    for combination in windy.filter(|combination| !all.iter().any(|other| lies_within(combination, other))) {
        let with = beside.iter().find(|with| combination.factor(with.action) != 0.0);
        for case in loads.side_wind.iter().filter(|case| !loads.side_wind.iter().any(|other| is_covered(case, other))) {
            let made = wind_case(combination, case, beam, with, push);
            found.cases.push(BeamCase { confidence: made.confidence.max(sure).max(held(loads, combination)), ..made });
        }
    }
}

/// How sure the weight is that holds the frame down.
fn held(loads: &RoofLoads, combination: &Combination) -> Confidence {
    if combination.is_uplift() { loads.dead.sure } else { Confidence::High }
}

/// Another case from the same end presses or lifts at least as much everywhere, and somewhere more.
fn is_covered(case: &WindCase, other: &WindCase) -> bool {
    let mut pairs = case.pressure.pieces().iter().zip(other.pressure.pieces());
    let same_places = case.pressure.pieces().len() == other.pressure.pieces().len();
    let covered = pairs.all(|(own, more)| {
        let (own, more) = (own.start.to_psf(), more.start.to_psf());
        own * more > 0.0 && more.abs() >= own.abs()
    });
    case.from == other.from && case.pressure != other.pressure && same_places && covered
}

fn wind_case(
    combination: &Combination,
    wind: &WindCase,
    beam: &BeamLoads,
    with: Option<&Companion>,
    push: Force,
) -> BeamCase {
    let factor = combination.factor(Action::Wind);
    let mut rafters: Vec<Force> = beam.side_rafters(wind).iter().map(|force| *force * factor).collect();
    let mut name = format!("{}: {}", combination.name, wind.name);
    let mut confidence = combination.citation.confidence.max(weakest(&wind.steps));
    if let Some(with) = with {
        for (rafter, force) in rafters.iter_mut().zip(&with.rafters) {
            *rafter += *force * combination.factor(with.action);
        }
        name = format!("{}: {}, {}", combination.name, with.name, wind.name);
        confidence = confidence.max(with.confidence);
    }
    let way = if wind.from == WindFrom::Right { -1.0 } else { 1.0 };
    BeamCase {
        name,
        duration: combination.duration,
        dead: combination.factor(Action::Dead),
        is_uplift: combination.is_uplift(),
        rafters,
        wind: factor,
        push: push * (factor * way),
        sinks: None,
        purpose: Purpose::Along,
        confidence,
    }
}

/// The roof case of an action that presses most on the beam, with what each rafter brings.
fn heaviest(loads: &RoofLoads, beam: &BeamLoads, action: Action) -> Option<Companion> {
    let pressing = loads.cases.iter().filter(|case| case.action == action).map(|case| {
        let strip = beam.line.reactions(&case.down, &case.square).beam;
        (strip, case.name.clone(), case.confidence)
    });
    let (strip, name, confidence) = most(pressing, |(strip, ..)| strip.to_plf())?;
    let rafters = beam.widths().iter().map(|width| strip * *width).collect();
    (strip > LineLoad::ZERO).then_some(Companion { confidence, action, name, rafters })
}

/// Both ways, where the user has given the site's values.
fn earthquake(found: &mut AlongCases, project: &Project, shape: &Shape, loads: &RoofLoads, beam: &BeamLoads) {
    match earthquake_on_line(project, shape, loads, (&beam.line, beam.whole_dead(false))) {
        Some(Ok(shaking)) => {
            let snow = heaviest(loads, beam, Action::Snow);
            shake(found, project, beam, snow.as_ref(), &shaking);
            found.steps.extend(shaking.steps);
            found.steps.push(beside_the_line(project.place.edition));
        }
        Some(Err(why)) => found.not_judged.push(why),
        None => {}
    }
}

/// Why no rafter, purlin or ledger has a combination with E_v of its own.
fn beside_the_line(edition: Edition) -> Step {
    let says = "on beam, posts, footings and the ledger’s fixings in every combination with E_h, down and up. Rafters, purlins \
                and ledger carry more without it: 0.14·S_DS·D is less than the least roof live load, 12 psf, and never lifts";
    let citation = Citation::from_memory(edition.name(), "2.4.5, 12.4.2.2; 4.8.2");
    Step::new("where E_v counts", says, citation)
}

/// E_v is a share of the dead load, so it changes the dead load's factor.
fn shake(
    found: &mut AlongCases,
    project: &Project,
    beam: &BeamLoads,
    snow: Option<&Companion>,
    &Shaking { push, vertical, sure, .. }: &Shaking,
) {
    let mut actions = vec![Action::SeismicSideways, Action::SeismicDown];
    actions.extend(snow.map(|snow| snow.action));
    let all = combinations(project.place.edition, &actions);
    for combination in all.iter().filter(|combination| combination.factor(Action::SeismicSideways) != 0.0) {
        let sideways = combination.factor(Action::SeismicSideways);
        let dead = combination.factor(Action::Dead) + combination.factor(Action::SeismicDown) * vertical;
        let share = combination.factor(Action::Snow);
        let with = snow.filter(|_| share != 0.0).map_or(Confidence::High, |snow| snow.confidence);
        let rafters: Vec<Force> = match snow {
            Some(snow) if share != 0.0 => snow.rafters.iter().map(|force| *force * share).collect(),
            _ => vec![Force::ZERO; beam.widths().len()],
        };
        for (side, way) in [("left", -1.0), ("right", 1.0)] {
            found.cases.push(BeamCase {
                name: format!("{}: earthquake to the {side}", combination.name),
                duration: combination.duration,
                dead,
                is_uplift: combination.is_uplift(),
                rafters: rafters.clone(),
                wind: 0.0,
                push: push * (sideways * way),
                sinks: None,
                purpose: Purpose::Along,
                confidence: combination.citation.confidence.max(sure).max(with),
            });
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::analysis::roof_loads;
    use crate::evaluate;
    use crate::loads::{DesignCategory, Seismic};
    use crate::project::demo;

    /// ASCE 7-16, 12.7.2: a fifth of p_f where it is over 30 psf, however little lies on the slope: 0.2·40 = 8 psf.
    #[test]
    fn snow_is_shaken_by_its_flat_load() {
        let mut project = demo::wool_barn();
        project.place.seismic = Some(Seismic { s_ds: 0.4, category: DesignCategory::B, importance: 1.0 });
        let shape = &evaluate(&project).built.unwrap().shape;
        let mut loads = roof_loads(&project, shape);
        assert!(loads.flat_snow.unwrap() >= loads.balanced.unwrap());
        let shaken = |loads: &RoofLoads| {
            let found = along_cases(&project, shape, loads, &BeamLoads::new(&project, shape, loads));
            found.steps.into_iter().find(|step| step.gives == "snow shaken along").unwrap().says
        };
        (loads.flat_snow, loads.balanced) = (Some(AreaLoad::psf(40.0)), Some(AreaLoad::psf(20.0)));
        assert!(shaken(&loads).contains("8.0 psf"), "{}", shaken(&loads));
        loads.flat_snow = Some(AreaLoad::psf(30.0));
        assert!(shaken(&loads).contains("no snow counts"), "{}", shaken(&loads));
    }

    /// S_DS = 0.5: E_v is 0.1·D. With D and snow 1 + 0.525·0.1 = 1.0525 of the dead load, 1.07 without snow, 0.53 to lift it.
    #[test]
    fn the_earthquake_presses_and_lifts() {
        let mut project = demo::wool_barn();
        project.place.seismic = Some(Seismic { s_ds: 0.5, category: DesignCategory::C, importance: 1.0 });
        let shape = &evaluate(&project).built.unwrap().shape;
        let loads = roof_loads(&project, shape);
        let found = along_cases(&project, shape, &loads, &BeamLoads::new(&project, shape, &loads));
        let shaken = || found.cases.iter().filter(|case| case.name.contains("earthquake"));
        assert_eq!(shaken().count(), 6);
        for case in shaken() {
            let expected = match case.name.split(':').next().unwrap() {
                "D + 0.7E_v + 0.7E_h" => 1.07,
                "D + 0.525E_v + 0.525E_h + 0.75S" => 1.0525,
                "0.6D − 0.7E_v + 0.7E_h" => 0.53,
                other => unreachable!("{other}"),
            };
            assert!((case.dead - expected).abs() < 1e-12, "{}: {}", case.name, case.dead);
        }
        let step = |gives: &str| found.steps.iter().find(|step| step.gives == gives).unwrap();
        assert!(step("E_v, earthquake downward").says.starts_with("E_v = 0.2·S_DS·D = 0.2·0.500·"));
        assert!(step("where E_v counts").says.contains("0.14·S_DS·D"));
        // Nothing of the kind where the site has no values.
        project.place.seismic = None;
        let calm = along_cases(&project, shape, &loads, &BeamLoads::new(&project, shape, &loads));
        assert!(!calm.cases.iter().any(|case| case.name.contains("earthquake")));
    }

    /// A species whose row is a placeholder: what its weight holds down is no surer, snow beside it stays as it was.
    #[test]
    fn a_weight_that_is_a_placeholder() {
        let sure = |key: &str| {
            let mut project = demo::wool_barn();
            project.frame.species = key.to_owned();
            let shape = &evaluate(&demo::wool_barn()).built.unwrap().shape;
            let loads = roof_loads(&project, shape);
            let beam = BeamLoads::new(&project, shape, &loads);
            let along = along_cases(&project, shape, &loads, &beam).cases;
            let all: Vec<BeamCase> = beam.even_cases(project.place.edition).into_iter().chain(along).collect();
            let worst = |is_uplift: bool| {
                let of =
                    all.iter().filter(move |case| case.is_uplift == is_uplift && case.name.contains("along the wall"));
                of.map(|case| case.confidence).max().unwrap()
            };
            let snow = all.iter().find(|case| case.name == "D + S: balanced snow").unwrap().confidence;
            let lifted = all.iter().filter(|case| case.is_uplift).map(|case| case.confidence).min().unwrap();
            (loads.dead.sure, worst(true), snow, lifted)
        };
        let (hemlock, spruce) = (sure("eastern_hemlock"), sure("white_spruce"));
        assert_eq!((hemlock.0, spruce.0), (Confidence::Medium, Confidence::Low));
        assert_eq!((spruce.1, spruce.3), (Confidence::Low, Confidence::Low));
        assert_eq!(hemlock.2, spruce.2);
        assert!(hemlock.3 < Confidence::Low, "{hemlock:?}");
    }

    #[test]
    fn strips_one_behind_the_other() {
        let cases = [(1.0, 0.3), (5.0, 0.3), (6.0, 0.44), (7.5, 0.65), (10.0, 1.0), (25.0, 1.0)];
        for (ratio, expected) in cases {
            assert!((shelter_factor(ratio) - expected).abs() < 1e-12, "{ratio}");
        }
    }
}

//! Every load the roof may get, each by itself.
use super::lean_to::lean_to;
use super::roof_dead::RoofDead;
use crate::design::Shape;
use crate::loads::snow::{SnowKind, snow_cases};
use crate::loads::wind::{Across, MINIMUM_WIND, Wind, WindCase, cladding_pressures, overhang_case, wind_cases};
use crate::loads::{Action, LeanTo, Place, Refused, Spread, person_load, roof_live, vertical_effect};
use crate::project::Project;
use crate::units::{Area, AreaLoad, Force, Length, LineLoad};
use crate::unmade::Unmade;
use crate::working::{Citation, Confidence, Step, Worked, weakest};

/// One load on the roof.
#[derive(Clone, Debug, PartialEq)]
pub struct RoofCase {
    /// In words: `leeward drift`.
    pub name: String,
    /// What it counts as in a combination.
    pub action: Action,
    /// Which snow, where it is one of the roof's snow cases.
    pub snow: Option<SnowKind>,
    /// Straight down on plan, against the distance out from the wall.
    pub down: Spread,
    /// Square to the roof, against the same; plus presses.
    pub square: Spread,
    /// A force at one place of one stick, not shared.
    pub point: Option<(Length, Force)>,
    /// How it came about.
    pub steps: Vec<Step>,
    /// Of the weakest of its steps, known where they are left with another.
    pub confidence: Confidence,
}

impl RoofCase {
    pub(super) fn new(name: impl Into<String>, action: Action, steps: Vec<Step>) -> Self {
        let (none, confidence) = (Spread::default, weakest(&steps));
        Self { name: name.into(), action, snow: None, down: none(), square: none(), point: None, steps, confidence }
    }

    /// The same load; how it came about is left with this one.
    #[must_use]
    pub fn without_steps(&self) -> Self {
        let (name, down, square) = (self.name.clone(), self.down.clone(), self.square.clone());
        let Self { action, snow, point, confidence, .. } = *self;
        Self { name, action, snow, down, square, point, steps: Vec::new(), confidence }
    }
}

/// All loads on the roof of the main frame.
#[derive(Clone, Debug, PartialEq)]
pub struct RoofLoads {
    /// The roof.
    pub lean_to: LeanTo,
    /// What it weighs.
    pub dead: RoofDead,
    /// The cases that change out from the wall and are the same all along it.
    pub cases: Vec<RoofCase>,
    /// Wind along the wall: pressure square to the roof against the distance from the roof's left edge.
    pub side_wind: Vec<WindCase>,
    /// p_f, snow on a flat roof here, where it is known.
    pub flat_snow: Option<AreaLoad>,
    /// Balanced snow, where it is known.
    pub balanced: Option<AreaLoad>,
    /// What could not be worked out, a sentence each.
    pub not_judged: Vec<Unmade>,
}

/// The loads of the place on this roof.
#[must_use]
pub fn roof_loads(project: &Project, shape: &Shape) -> RoofLoads {
    let lean_to = lean_to(project, shape);
    let mut loads = RoofLoads {
        lean_to,
        dead: RoofDead::of(project, shape),
        cases: Vec::new(),
        side_wind: Vec::new(),
        flat_snow: None,
        balanced: None,
        not_judged: Vec::new(),
    };
    let found = [
        add_roof_live(&mut loads, &project.place),
        add_snow(&mut loads, &project.place),
        add_wind(&mut loads, &project.place),
    ];
    loads.not_judged.extend(found.into_iter().filter_map(Result::err).map(Unmade::from));
    loads
}

/// A load that lies the same all over the roof.
fn everywhere(lean_to: &LeanTo, load: AreaLoad) -> Spread {
    Spread::uniform(Length::ZERO, lean_to.roof_length().length(), load)
}

/// Without the reduction for large areas, which no stick of a small roof reaches.
fn add_roof_live(loads: &mut RoofLoads, place: &Place) -> Result<(), Refused> {
    let Worked { value, steps } = roof_live(place.edition, loads.lean_to.slope, Area::ZERO)?;
    let down = everywhere(&loads.lean_to, value);
    loads.cases.push(RoofCase { down, ..RoofCase::new("roof live load", Action::RoofLive, steps) });
    Ok(())
}

fn add_snow(loads: &mut RoofLoads, place: &Place) -> Result<(), Refused> {
    let snow = snow_cases(place, &loads.lean_to)?;
    loads.flat_snow = Some(snow.flat);
    loads.balanced = Some(snow.balanced);
    loads.not_judged.extend(snow.not_judged.iter().cloned().map(Unmade::from));
    for case in snow.cases {
        let named = RoofCase::new(case.kind.words(), Action::Snow, case.steps);
        loads.cases.push(RoofCase { down: case.spread, snow: Some(case.kind), ..named });
    }
    Ok(())
}

fn add_wind(loads: &mut RoofLoads, place: &Place) -> Result<(), Refused> {
    let wind = wind_cases(place, &loads.lean_to)?;
    loads.not_judged.extend(wind.not_judged.iter().cloned().map(Unmade::from));
    add_least_wind(loads, &wind);
    for case in wind.cases {
        if case.across == Across::AlongWall {
            loads.side_wind.push(case);
        } else {
            let named = RoofCase::new(case.name, Action::Wind, case.steps);
            loads.cases.push(RoofCase { square: case.pressure, ..named });
        }
    }
    Ok(())
}

/// The least level push across, where no case pushes that way as hard: 16 psf on the roof's rise. What presses square on the roof
/// pushes level by its rise; the upright part of it is taken off again.
fn add_least_wind(loads: &mut RoofLoads, wind: &Wind) {
    let whole = everywhere(&loads.lean_to, MINIMUM_WIND).total();
    for (name, way) in [("least wind, level toward the wall", 1.0), ("least wind, level off the wall", -1.0)] {
        let across = wind.cases.iter().filter(|case| case.across == Across::OutFromWall);
        let most = across.map(|case| case.pressure.total() * way).fold(LineLoad::ZERO, LineLoad::max);
        if most < whole {
            let (square, down) = (MINIMUM_WIND * way, MINIMUM_WIND * -way);
            let named = RoofCase::new(name, Action::Wind, wind.least_across.steps.clone());
            let (square, down) = (everywhere(&loads.lean_to, square), everywhere(&loads.lean_to, down));
            loads.cases.push(RoofCase { square, down, ..named });
        }
    }
}

/// Wind on a stick that gathers it from so much roof, and a person on it: rafters, purlins, sheets, screws.
///
/// # Errors
/// When the wind speed is missing, or the roof is outside the figures.
pub fn component_cases(place: &Place, lean_to: &LeanTo, effective: Area) -> Result<Vec<RoofCase>, Refused> {
    let zones = cladding_pressures(place, lean_to, effective)?;
    let wind = |name: &str| RoofCase::new(name, Action::Wind, zones.steps.clone());
    let worst = |pick: fn(AreaLoad, AreaLoad) -> AreaLoad, values: [AreaLoad; 3]| {
        everywhere(lean_to, values.into_iter().fold(AreaLoad::ZERO, pick))
    };
    let side = |of: fn(&crate::loads::wind::ZonePressure) -> AreaLoad| {
        let mut values = [AreaLoad::ZERO; 3];
        for (value, zone) in values.iter_mut().zip(&zones.value) {
            *value = of(zone);
        }
        values
    };
    let down = worst(AreaLoad::max, side(|zone| zone.down));
    let up = worst(AreaLoad::min, side(|zone| zone.up));
    let over = overhang_case(place, lean_to)?;
    Ok(vec![
        RoofCase { square: down, ..wind("wind on components, pressing") },
        RoofCase { square: up, ..wind("wind on components, lifting") },
        RoofCase { square: over.pressure, ..RoofCase::new(over.name, Action::Wind, over.steps) },
    ])
}

/// A person at a place of one stick.
#[must_use]
pub fn person_at(place: &Place, at: Length, words: &str) -> RoofCase {
    let Worked { value, steps } = person_load(place.edition);
    RoofCase { point: Some((at, value)), ..RoofCase::new(format!("a person {words}"), Action::Person, steps) }
}

/// Every load that acts on the section, each by itself: dead load of the cover and of a rafter over its spacing, those of the
/// whole roof, wind on the smallest single parts (where it is the largest), a person on rafter and tail, on a purlin across the
/// section, and what an earthquake adds down.
#[must_use]
pub fn section_loads(project: &Project, loads: &RoofLoads) -> Vec<RoofCase> {
    let dead = RoofCase::new("dead load", Action::Dead, loads.dead.steps.clone());
    let mut all = vec![RoofCase { down: everywhere(&loads.lean_to, loads.dead.cover.heavy), ..dead }];
    let spacing = project.frame.rafters.spacing;
    let rafter = loads.dead.rafter.heavy / spacing;
    let says = format!(
        "{:.2} lb a foot of plan over {:.1} in from rafter to rafter: {:.2} psf",
        loads.dead.rafter.heavy.to_plf(),
        spacing.to_inches(),
        rafter.to_psf()
    );
    let step = Step::new("weight of a rafter", says, Citation::common_practice("size by density"));
    let own = RoofCase::new("the rafters themselves", Action::Dead, vec![step]);
    all.push(RoofCase { down: everywhere(&loads.lean_to, rafter), ..own });
    all.extend(loads.cases.iter().cloned());
    // Where the wind is not known, that is said where it is asked for.
    let single = component_cases(&project.place, &loads.lean_to, Area::ZERO).unwrap_or_default();
    all.extend(single.into_iter().filter(|case| !loads.cases.iter().any(|known| known.name == case.name)));
    let place = &project.place;
    all.push(person_at(place, project.frame.reach / 2.0, "between wall and beam"));
    all.push(person_at(place, project.frame.reach + project.frame.tail, "on the tail"));
    all.push(person_at(place, project.frame.reach * 0.25, "on one purlin, halfway between rafters"));
    if let Some(seismic) = &place.seismic
        && let Ok(shaken) = vertical_effect(place.edition, seismic, Force::pounds(1.0))
        && shaken.value > Force::ZERO
    {
        let share = shaken.value.to_pounds();
        let load = loads.dead.cover.heavy * share;
        let says = format!("E_v = 0.2·S_DS·D = {share:.3}·D: {:.2} psf of the cover, down or up", load.to_psf());
        let step = Step::new("E_v on the cover", says, Citation::from_memory(place.edition.name(), "12.4.2.2"));
        let case = RoofCase::new("earthquake, down", Action::SeismicDown, vec![step]);
        all.push(RoofCase { down: everywhere(&loads.lean_to, load), ..case });
    }
    all
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::analysis::RafterLine;
    use crate::evaluate;
    use crate::loads::WindSpeed;
    use crate::project::demo;

    /// ASCE 7, 27.1.5, from memory: 16 psf on the roof's rise, level, where its own wind pushes less: at 50 mph, not at 110. The
    /// barn rises 138.97/4 in: 16·34.74/12 = 46.3 lb on each foot of roof, and nothing up or down in all.
    #[test]
    fn the_least_wind_is_level() {
        let mut project = demo::wool_barn();
        let shape = &evaluate(&project).built.unwrap().shape;
        let least = |project: &Project| {
            let loads = roof_loads(project, shape);
            let line = RafterLine::new(shape, loads.lean_to.roof_length().length());
            let cases = loads.cases.iter().filter(|case| case.name.starts_with("least wind, level"));
            cases.map(|case| line.reactions(&case.down, &case.square)).collect::<Vec<_>>()
        };
        assert!(least(&project).is_empty());
        project.place.wind_speed = WindSpeed::try_mph(50.0);
        let found = least(&project);
        assert_eq!(found.len(), 2);
        for (reactions, way) in found.iter().zip([-1.0, 1.0]) {
            assert!((reactions.level.to_plf() - way * 16.0 * 138.970_143 / 4.0 / 12.0).abs() < 1e-6, "{reactions:?}");
            assert!((reactions.ledger + reactions.beam).to_plf().abs() < 1e-9);
        }
    }
}

//! Limits of what the strength hangs on: the place, the roof above, soil, wood and fixings.
//!
//! What is missing is no problem here: a value left open, an empty key, a count of nothing. Whoever needs it says so.
use super::validate::Check;
use super::validate_ties::bores;
use super::{Above, Fixings, Ground, MAKERS_OWN, OwnValue, Problem, Project, Screws, Tie, Wood};
use crate::fastening::{fastener, soil};
use crate::loads::{Place, Thermal};
use crate::materials::species;
use crate::members::Property;
use crate::units::{
    AreaLoad, Force, Length, Speed, Stiffness, Stress, show_area_load, show_elevation, show_force, show_speed,
    show_stiffness, show_stress,
};

/// Most snow on the ground that is worked out.
const MOST_SNOW: AreaLoad = AreaLoad::psf(400.0);
/// Slowest and fastest wind that is worked out.
const WINDS: (Speed, Speed) = (Speed::mph(50.0), Speed::mph(250.0));
/// Lowest and highest ground people build on.
const GROUND: (Length, Length) = (Length::feet(-1500.0), Length::feet(20_000.0));
/// More than any screw, strap or anchor of a timber frame carries.
const MOST_FORCE: Force = Force::pounds(100_000.0);
/// Most fasteners of one joint.
const MOST_FASTENERS: usize = 20;
/// Most rows of fixings in a ledger.
const MOST_ROWS: usize = 8;
/// Most fixings of a ledger side by side at one post of the wall.
const MOST_COLUMNS: usize = 4;
/// Softest and stiffest joint of a brace.
const JOINTS: (Stiffness, Stiffness) = (Stiffness::pounds_per_inch(100.0), Stiffness::pounds_per_inch(1e7));

/// How far a printed limit may lie from the limit.
const ROUNDING: f64 = 0.002;

/// Collects what cannot be.
pub(super) fn strength(check: &mut Check, project: &Project) {
    place(check, &project.place);
    above(check, &project.above);
    ground(check, &project.ground);
    wood(check, &project.wood);
    fixings(check, &project.fixings, project);
}

impl Check {
    /// A number outside its limits.
    fn number(&mut self, field: &str, name: &str, value: f64, low: f64, high: f64) {
        self.problems.add_if(!(low..=high).contains(&value), || {
            Problem::stop(field, format!("{name} must be between {low} and {high}."))
        });
    }

    /// A quantity outside its limits, which are given as they are shown.
    fn between<T: PartialOrd + Copy + std::ops::Mul<f64, Output = T>>(
        &mut self,
        field: &str,
        name: &str,
        value: T,
        limits: (T, T),
        show: impl Fn(T) -> String,
    ) {
        let (low, high) = limits;
        // A limit may be typed as it is printed, rounded.
        let taken = low * (1.0 - ROUNDING)..=high * (1.0 + ROUNDING);
        self.problems.add_if(!taken.contains(&value), || {
            Problem::stop(field, format!("{name} must be between {} and {}.", show(low), show(high)))
        });
    }

    fn force(&mut self, field: &str, name: &str, value: Force) {
        let units = self.units;
        self.between(field, name, value, (Force::ZERO, MOST_FORCE), |force| show_force(force, units).to_string());
    }

    fn count(&mut self, field: &str, name: &str, value: usize, most: usize) {
        self.problems
            .add_if(value > most, || Problem::stop(field, format!("{name}: at most {most}.")).nearest_count(most));
    }

    /// A key that is given but not in its table.
    fn known(&mut self, field: &str, says: &str, key: &str, is_known: bool) {
        self.problems.add_if(!key.is_empty() && !is_known, || Problem::stop(field, says));
    }

    /// Values of the user's own say where they come from.
    fn source(&mut self, field: String, is_used: bool, source: &str) {
        self.problems.add_if(is_used && source.trim().is_empty(), || {
            Problem::caution(field, "Say where these values come from: whoever checks them will ask.")
        });
    }
}

fn place(check: &mut Check, place: &Place) {
    let units = check.units;
    if let Some(snow) = place.ground_snow {
        let limits = (AreaLoad::ZERO, MOST_SNOW);
        check.between("place.ground_snow", "Ground snow", snow, limits, |snow| {
            show_area_load(snow, units).without_zeros().to_string()
        });
    }
    if let Some(wind) = place.wind_speed {
        let speed = Speed::try_mph(wind.to_mph()).unwrap_or_default();
        check.between("place.wind_speed", "The wind speed", speed, WINDS, |wind| show_speed(wind, units).to_string());
    }
    check.problems.add_if(place.winter_wind.is_some_and(|share| !(share > 0.0 && share <= 1.0)), || {
        Problem::stop("place.winter_wind", "W2 is a share of the winter: more than 0, at most 1.")
    });
    let height = place.ground_elevation;
    check.problems.add_if(height < GROUND.0 || height > GROUND.1, || {
        let (low, high) = (show_elevation(GROUND.0, units), show_elevation(GROUND.1, units));
        Problem::stop("place.ground_elevation", format!("The ground must lie between {low} and {high} above the sea."))
            .nearest(height.clamp(GROUND.0, GROUND.1))
    });
    check.number("place.topography", "K_zt", place.topography, 1.0, 3.0);
    if let Some(factor) = place.member_force_coefficient {
        check.number("place.member_force_coefficient", "C_f", factor, 0.5, 3.0);
    }
    if let Some(seismic) = &place.seismic {
        check.number("place.seismic.s_ds", "S_DS", seismic.s_ds, 0.0, 3.0);
        check.number("place.seismic.importance", "I_e", seismic.importance, 1.0, 1.5);
    }
}

fn above(check: &mut Check, above: &Above) {
    let inches = Length::inches;
    if let Some(length) = above.eave_to_ridge {
        check.within("above.eave_to_ridge", "Eave to ridge", length, inches(12.0), inches(2400.0));
    }
    if let Some(length) = above.whole_length {
        check.within("above.whole_length", "The length of the roof above", length, inches(12.0), inches(6000.0));
    }
    if let (Some(part), Some(whole)) = (above.eave_to_ridge, above.whole_length) {
        check.problems.add_if(whole < part, || {
            Problem::stop("above.whole_length", "The whole roof above is no shorter than from its eave to its ridge.")
                .nearest(part)
        });
    }
    if let Thermal::Stated(factor) = above.thermal {
        check.number("above.thermal_factor", "C_t", factor, 0.8, 1.5);
    }
}

fn ground(check: &mut Check, ground: &Ground) {
    let says = "This soil is not in the table; choose one that is.";
    check.known("ground.soil", says, &ground.soil, soil(&ground.soil).is_ok());
    if let Some(depth) = ground.frost_depth {
        check.within("ground.frost_depth", "The frost depth", depth, Length::ZERO, Length::inches(180.0));
    }
}

fn wood(check: &mut Check, wood: &Wood) {
    for (index, own) in wood.own.iter().enumerate() {
        let at = format!("wood.own.{index}");
        own_value(check, &at, own);
        let is_like = |other: &OwnValue| (other.used, other.property) == (own.used, own.property);
        check.problems.add_if(wood.own[..index].iter().any(is_like), || {
            Problem::stop(format!("{at}.property"), "This value is given twice for the same sticks: keep one.")
        });
    }
}

fn own_value(check: &mut Check, at: &str, own: &OwnValue) {
    // Wider than any wood: a slip of the unit falls outside.
    let limits = match own.property {
        Property::Stiffness | Property::LeastStiffness => (50_000.0, 5_000_000.0),
        _ => (10.0, 20_000.0),
    };
    let limits = (Stress::psi(limits.0), Stress::psi(limits.1));
    let name = format!("A value for {}", own.property.name());
    let units = check.units;
    if own.value == Stress::ZERO {
        let says = "This value is still open: type it, or take it away.";
        check.problems.add(Problem::caution(format!("{at}.value"), says));
        return;
    }
    check.between(&format!("{at}.value"), &name, own.value, limits, |stress| show_stress(stress, units).to_string());
    check.source(format!("{at}.source"), true, &own.source);
}

fn fixings(check: &mut Check, fixings: &Fixings, project: &Project) {
    ledger(check, project);
    for (name, tie) in [
        ("rafter_head", &fixings.rafter_head),
        ("rafter_seat", &fixings.rafter_seat),
        ("scarf", &fixings.scarf),
        ("post_base", &fixings.post_base),
    ] {
        ties(check, &format!("fixings.{name}"), tie);
    }
    bores(check, project);
    screws(check, "fixings.purlin", &fixings.purlin);
    screws(check, "fixings.sheet.screw", &fixings.sheet.screw);
    let inches = Length::inches;
    check.within("fixings.sheet.spacing", "The spacing", fixings.sheet.spacing, inches(1.0), inches(48.0));
    check.force("fixings.sheet.pull_over", "The sheet's pull-over", fixings.sheet.pull_over);
    pier(check, fixings);
    let units = check.units;
    for (field, spring) in [("pushed", fixings.brace_joint.pushed), ("pulled", fixings.brace_joint.pulled)] {
        let stiffness = Stiffness::try_pounds_per_inch(spring.to_pounds_per_inch()).unwrap_or_default();
        let field = format!("fixings.brace_joint.{field}");
        check.between(&field, "A brace's joint", stiffness, JOINTS, |held| show_stiffness(held, units).to_string());
    }
}

const UNKNOWN_FASTENER: &str = "This fastener is not in the table; choose one that is.";

fn ledger(check: &mut Check, project: &Project) {
    let ledger = &project.fixings.ledger;
    let is_known = ledger.fastener == MAKERS_OWN || fastener(&ledger.fastener).is_ok();
    check.known("fixings.ledger.fastener", UNKNOWN_FASTENER, &ledger.fastener, is_known);
    let says = "This species is not in the table; choose one that is.";
    check.known("fixings.ledger.wall_species", says, &ledger.wall_species, species(&ledger.wall_species).is_some());
    for (field, name, value, low, high) in [
        ("fixings.ledger.length", "The fixing", ledger.length, 1.0, 36.0),
        ("fixings.ledger.lowest", "The lowest row", ledger.lowest, 0.5, 24.0),
        ("fixings.ledger.row_gap", "Row to row", ledger.row_gap, 0.5, 24.0),
        ("fixings.ledger.wall_depth", "The wall's post", ledger.wall_depth, 0.5, 48.0),
        ("fixings.ledger.washer", "The washer", ledger.washer, 0.0, 8.0),
        ("fixings.ledger.column_gap", "Side to side", ledger.column_gap, 0.5, 24.0),
        ("fixings.ledger.makers.diameter", "The maker's screw", ledger.makers.diameter, 0.1, 1.0),
    ] {
        check.within(field, name, value, Length::inches(low), Length::inches(high));
    }
    check.count("fixings.ledger.rows", "Rows of fixings", ledger.rows, MOST_ROWS);
    check.count("fixings.ledger.columns", "Fixings side by side", ledger.columns, MOST_COLUMNS);
    check.force("fixings.ledger.makers.sideways", "The allowable load of one sideways", ledger.makers.sideways);
    check.force("fixings.ledger.makers.pull", "The allowable pull of one", ledger.makers.pull);
    let is_stated = ledger.makers.sideways > Force::ZERO || ledger.makers.pull > Force::ZERO;
    let is_used = ledger.fastener == MAKERS_OWN && is_stated;
    check.source("fixings.ledger.makers.source".to_owned(), is_used, &ledger.makers.source);
    let depth = project.frame.timbers.ledger.sawn.depth;
    let n_gaps = ledger.rows.saturating_sub(1) as f64;
    let top = ledger.lowest + ledger.row_gap * n_gaps;
    let is_chosen = !ledger.fastener.is_empty() && (1..=MOST_ROWS).contains(&ledger.rows);
    check.problems.add_if(is_chosen && top >= depth, || {
        let says = "The highest row of fixings stands out of the ledger.";
        // As much wood over the highest row as under the lowest.
        let gap = (depth - ledger.lowest * 2.0) / n_gaps.max(1.0);
        let problem = Problem::caution("fixings.ledger.row_gap", says);
        if n_gaps > 0.0 && gap >= Length::inches(0.5) { problem.nearest(gap) } else { problem }
    });
}

fn ties(check: &mut Check, at: &str, tie: &Tie) {
    check.count(&format!("{at}.count"), "Fasteners in one joint", tie.count, MOST_FASTENERS);
    check.force(&format!("{at}.pull"), "The allowable pull of one", tie.pull);
    check.force(&format!("{at}.sideways"), "The allowable push of one", tie.sideways);
    let is_used = tie.count > 0 && (tie.pull > Force::ZERO || tie.sideways > Force::ZERO);
    check.source(format!("{at}.source"), is_used, &tie.source);
}

fn screws(check: &mut Check, at: &str, screws: &Screws) {
    check.known(&format!("{at}.fastener"), UNKNOWN_FASTENER, &screws.fastener, fastener(&screws.fastener).is_ok());
    check.within(&format!("{at}.length"), "The screw", screws.length, Length::inches(0.5), Length::inches(24.0));
    check.count(&format!("{at}.count"), "Screws in one place", screws.count, MOST_FASTENERS);
}

fn pier(check: &mut Check, fixings: &Fixings) {
    let pier = &fixings.pier;
    for (field, name, value, low, high) in [
        ("fixings.pier.footing_width", "The footing", pier.footing_width, 6.0, 120.0),
        ("fixings.pier.footing_thickness", "The footing's thickness", pier.footing_thickness, 2.0, 48.0),
        ("fixings.pier.pier_width", "The pier", pier.pier_width, 4.0, 60.0),
        ("fixings.pier.depth", "The depth of the footing", pier.depth, 0.0, 240.0),
    ] {
        check.within(field, name, value, Length::inches(low), Length::inches(high));
    }
    check.problems.add_if(pier.footing_width < pier.pier_width, || {
        Problem::stop("fixings.pier.footing_width", "The footing is narrower than the pier that stands on it.")
            .nearest(pier.pier_width)
    });
    check.within("fixings.pier.anchor_depth", "The anchor", pier.anchor_depth, Length::ZERO, Length::inches(60.0));
    check.count("fixings.pier.bars", "Bars in the pier", pier.bars, MOST_FASTENERS);
    check.within("fixings.pier.bar", "A bar", pier.bar, Length::inches(0.25), Length::inches(1.5));
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::super::{Nearest, OwnValue, Severity, Used, demo, validate};
    use super::*;
    use crate::frame::Spring;
    use crate::loads::{DesignCategory, Seismic, WindSpeed};
    use crate::units::UnitSystem;

    fn problems(units: UnitSystem, spoil: impl FnOnce(&mut Project)) -> Vec<Problem> {
        let mut project = demo::wool_barn();
        project.units = units;
        spoil(&mut project);
        validate(&project)
    }

    /// One problem, at that field, which stops; its sentence in pounds and inches.
    fn check(field: &str, says: &str, spoil: impl FnOnce(&mut Project)) -> Option<Nearest> {
        let found = problems(UnitSystem::Imperial, spoil);
        assert_eq!(found.len(), 1, "{field}: {found:?}");
        assert_eq!((found[0].field.as_str(), found[0].severity), (field, Severity::Stop));
        assert!(found[0].says.contains(says), "{field}: {}", found[0].says);
        found[0].nearest
    }

    #[test]
    fn what_is_missing_is_no_problem() {
        for project in
            [demo::wool_barn(), demo::log_store(), demo::empty(UnitSystem::Imperial), demo::empty(UnitSystem::Metric)]
        {
            assert_eq!(validate(&project), [], "{}", project.name);
        }
    }

    #[test]
    fn the_place_keeps_to_its_limits() {
        let wind = |mph: f64| move |project: &mut Project| project.place.wind_speed = WindSpeed::try_mph(mph);
        check("place.ground_snow", "between 0 psf and 400 psf", |p| p.place.ground_snow = Some(AreaLoad::psf(500.0)));
        check("place.ground_snow", "between", |p| p.place.ground_snow = Some(AreaLoad::psf(-1.0)));
        check("place.wind_speed", "between 50 mph and 250 mph", wind(49.0));
        check("place.wind_speed", "between", wind(251.0));
        check("place.winter_wind", "at most 1", |p| p.place.winter_wind = Some(0.0));
        check("place.winter_wind", "at most 1", |p| p.place.winter_wind = Some(f64::NAN));
        check("place.topography", "between 1 and 3", |p| p.place.topography = 0.9);
        check("place.topography", "between 1 and 3", |p| p.place.topography = f64::INFINITY);
        check("place.member_force_coefficient", "C_f", |p| p.place.member_force_coefficient = Some(4.0));
        let high = check("place.ground_elevation", "20000 ft", |p| p.place.ground_elevation = Length::feet(30_000.0));
        assert_eq!(high, Some(Nearest::Length(Length::feet(20_000.0))));
        let seismic = Seismic { s_ds: 4.0, category: DesignCategory::D, importance: 1.0 };
        check("place.seismic.s_ds", "S_DS", |p| p.place.seismic = Some(seismic));
        check("place.seismic.importance", "I_e", |p| {
            p.place.seismic = Some(Seismic { s_ds: 0.3, importance: 0.0, ..seismic });
        });
    }

    #[test]
    fn limits_are_said_in_the_units_shown_and_may_be_typed_as_they_are_said() {
        let found = problems(UnitSystem::Metric, |p| p.place.wind_speed = WindSpeed::try_mph(300.0));
        assert_eq!(found[0].says, "The wind speed must be between 22.4 m/s and 111.8 m/s.");
        let typed = Speed::metres_per_second(111.8).to_mph();
        assert_eq!(problems(UnitSystem::Metric, |p| p.place.wind_speed = WindSpeed::try_mph(typed)), []);
    }

    #[test]
    fn the_roof_above_and_the_ground() {
        let part = check("above.whole_length", "no shorter", |p| p.above.whole_length = Some(Length::feet(10.0)));
        assert_eq!(part, Some(Nearest::Length(Length::feet(16.0))));
        check("above.eave_to_ridge", "at least", |p| p.above.eave_to_ridge = Some(Length::ZERO));
        check("above.thermal_factor", "C_t", |p| p.above.thermal = Thermal::Stated(2.0));
        check("ground.soil", "table", |p| p.ground.soil = "peat".to_owned());
        let deep = check("ground.frost_depth", "at most", |p| p.ground.frost_depth = Some(Length::feet(20.0)));
        assert_eq!(deep, Some(Nearest::Length(Length::inches(180.0))));
    }

    fn own(property: Property, psi: f64, source: &str) -> OwnValue {
        OwnValue { used: Used::Beam, property, value: Stress::psi(psi), source: source.to_owned() }
    }

    #[test]
    fn values_of_the_users_own() {
        check("wood.own.0.value", "between 10 psi and 20000 psi", |p| {
            p.wood.own = vec![own(Property::Bending, 5.0, "a test")]
        });
        check("wood.own.0.value", "stiffness", |p| p.wood.own = vec![own(Property::Stiffness, 1300.0, "a test")]);
        check("wood.own.1.property", "twice", |p| {
            p.wood.own = vec![own(Property::Shear, 150.0, "a test"), own(Property::Shear, 160.0, "another")];
        });
        let found = problems(UnitSystem::Imperial, |p| p.wood.own = vec![own(Property::Bending, 0.0, "")]);
        assert_eq!(found.len(), 1);
        assert_eq!((found[0].field.as_str(), found[0].severity), ("wood.own.0.value", Severity::Caution));
        let found = problems(UnitSystem::Imperial, |p| p.wood.own = vec![own(Property::Bending, 900.0, " ")]);
        assert_eq!((found[0].field.as_str(), found[0].severity), ("wood.own.0.source", Severity::Caution));
    }

    #[test]
    fn fixings_keep_to_their_limits() {
        let most = check("fixings.scarf.count", "at most 20", |p| p.fixings.scarf.count = 21);
        assert_eq!(most, Some(Nearest::Count(20)));
        check("fixings.post_base.pull", "100000 lb", |p| p.fixings.post_base.pull = Force::pounds(2e5));
        check("fixings.rafter_head.sideways", "0 lb", |p| p.fixings.rafter_head.sideways = Force::pounds(-1.0));
        check("fixings.ledger.fastener", "table", |p| p.fixings.ledger.fastener = "rope".to_owned());
        check("fixings.ledger.wall_species", "species", |p| p.fixings.ledger.wall_species = "balsa".to_owned());
        check("fixings.ledger.rows", "at most 8", |p| p.fixings.ledger.rows = 9);
        let side_by_side = check("fixings.ledger.columns", "at most 4", |p| p.fixings.ledger.columns = 5);
        assert_eq!(side_by_side, Some(Nearest::Count(4)));
        check("fixings.ledger.column_gap", "at least", |p| p.fixings.ledger.column_gap = Length::ZERO);
        check("fixings.ledger.washer", "at most", |p| p.fixings.ledger.washer = Length::inches(9.0));
        check("fixings.ledger.makers.diameter", "at least", |p| p.fixings.ledger.makers.diameter = Length::ZERO);
        check("fixings.ledger.makers.sideways", "0 lb", |p| p.fixings.ledger.makers.sideways = Force::pounds(-1.0));
        check("fixings.ledger.makers.pull", "100000 lb", |p| p.fixings.ledger.makers.pull = Force::pounds(2e5));
        check("fixings.purlin.fastener", "table", |p| p.fixings.purlin.fastener = "glue".to_owned());
        check("fixings.sheet.screw.length", "at least", |p| p.fixings.sheet.screw.length = Length::ZERO);
        check("fixings.sheet.spacing", "at most", |p| p.fixings.sheet.spacing = Length::feet(5.0));
        check("fixings.brace_joint.pushed", "100 lb/in", |p| p.fixings.brace_joint.pushed = Spring::default());
        let wide =
            check("fixings.pier.footing_width", "narrower", |p| p.fixings.pier.pier_width = Length::inches(48.0));
        assert_eq!(wide, Some(Nearest::Length(Length::inches(48.0))));
    }

    #[test]
    fn cautions_about_fixings() {
        let found = problems(UnitSystem::Imperial, |p| p.fixings.scarf.source.clear());
        assert_eq!((found[0].field.as_str(), found[0].severity), ("fixings.scarf.source", Severity::Caution));
        assert_eq!(
            problems(UnitSystem::Imperial, |p| {
                p.fixings.scarf.source.clear();
                p.fixings.scarf.count = 0;
            }),
            []
        );
        let found = problems(UnitSystem::Imperial, |p| {
            p.fixings.ledger.fastener = MAKERS_OWN.to_owned();
            p.fixings.ledger.makers.pull = Force::pounds(500.0);
        });
        assert_eq!((found[0].field.as_str(), found[0].severity), ("fixings.ledger.makers.source", Severity::Caution));
        // A ledger 10 in deep, three rows from 2 3/4 in up, 4 in apart: the highest at 10 3/4 in.
        let rows = |p: &mut Project, gap: f64| {
            p.fixings.ledger.rows = 3;
            (p.fixings.ledger.lowest, p.fixings.ledger.row_gap) = (Length::inches(2.75), Length::inches(gap));
        };
        let found = problems(UnitSystem::Imperial, |p| rows(p, 4.0));
        assert_eq!((found[0].field.as_str(), found[0].severity), ("fixings.ledger.row_gap", Severity::Caution));
        // (10 − 2 · 2 3/4)/2 = 2 1/4 in.
        assert_eq!(found[0].nearest, Some(Nearest::Length(Length::inches(2.25))));
        assert_eq!(problems(UnitSystem::Imperial, |p| rows(p, 2.25)), []);
    }
}

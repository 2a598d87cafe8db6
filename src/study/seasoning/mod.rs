//! What the wood does as it dries: every section, and what that moves in the frame, year by year to year five.
//!
//! Gaps follow from the shrinkage of the wood between the two places that part; along the grain nothing moves. Sizes shrink by
//! the mean of radial and tangential, as sticks with their heart boxed do, where nothing else is said. When they do is a guide:
//! see [`years_to_dry`].
mod foremost;
mod movements;
mod words;

pub use foremost::JointKind;
pub use movements::{Movement, Way};
pub use words::{seasoning_text, small_length};

use crate::design::Built;
use crate::geometry::seat_drops;
use crate::materials::{Grain, Section, Species, species, years_to_dry};
use crate::project::{Project, Role};
use crate::units::{Length, Slope};

/// Years that are looked at, the day it is raised first.
pub const YEARS: usize = 6;

/// A value at the end of each of the years 0 to 5, and when all is as dry as it gets.
pub type Yearly<T> = [T; YEARS + 1];

/// The sticks of one role as they dry.
#[derive(Clone, Debug, PartialEq)]
pub struct Drying {
    /// What they do.
    pub role: Role,
    /// As sawn.
    pub section: Section,
    /// Until they are nine tenths of the way.
    pub years_to_dry: f64,
    /// Moisture, as far as shrinking goes.
    pub percent: Yearly<f64>,
    /// What the breadth has lost, heart boxed.
    pub breadth_lost: Yearly<Length>,
    /// What the depth has lost, heart boxed.
    pub depth_lost: Yearly<Length>,
    /// What the depth loses in the end where the rings stand, and where they lie, along it.
    pub depth_range: (Length, Length),
}

/// What drying does to a frame.
#[derive(Clone, Debug, PartialEq)]
pub struct Seasoning {
    /// The wood.
    pub wood: Species,
    /// What it dries to, percent.
    pub service_percent: f64,
    /// Sections.
    pub sections: Vec<Drying>,
    /// Gaps and drops.
    pub movements: Vec<Movement>,
    /// Roof slope.
    pub pitch: Yearly<Slope>,
}

/// How dry the wood is at some time.
#[derive(Clone, Copy)]
struct Time<'a> {
    project: &'a Project,
    wood: &'a Species,
    /// Nothing when all is dry.
    years: Option<f64>,
}

impl Time<'_> {
    fn percent_of(&self, least_side: Length) -> f64 {
        let service = self.project.site.service_moisture_percent;
        self.years.map_or(service, |years| self.wood.percent_after(years, least_side, service))
    }

    /// Moisture of the sticks of a role.
    fn percent(&self, role: Role) -> f64 {
        let sawn = self.project.frame.timbers.of(role).sawn;
        self.percent_of(sawn.breadth.min(sawn.depth))
    }

    /// What a length across the grain of such a stick has lost.
    fn lost(&self, role: Role, across: Length) -> Length {
        self.wood.shrinkage(across, self.percent(role))
    }

    /// The same by how the rings lie.
    fn lost_by(&self, role: Role, across: Length, grain: Grain) -> Length {
        self.wood.shrinkage_of(across, grain, self.percent(role))
    }

    /// How far beam and ledger seat have sunk.
    fn drops(&self) -> (Length, Length) {
        seat_drops(self.project, |role, across| self.lost(role, across))
    }
}

/// A value at each time.
fn yearly<T>(project: &Project, wood: &Species, value: impl Fn(&Time<'_>) -> T) -> Yearly<T> {
    std::array::from_fn(|at| {
        let years = (at < YEARS).then_some(at as f64);
        value(&Time { project, wood, years })
    })
}

/// Works out what drying does; nothing where the wood is not one the tool knows.
#[must_use]
pub fn seasoning(project: &Project, built: &Built) -> Option<Seasoning> {
    let wood = species(&project.frame.species)?;
    let line = &built.shape.line;
    let level = line.run.length() + project.frame.ledger_seat_length - project.frame.beam_seat_length;
    let pitch = yearly(project, wood, |time| {
        let (beam, ledger) = time.drops();
        let more = if level > Length::ZERO { (beam - ledger) / level } else { 0.0 };
        Slope::try_ratio(line.pitch.tan() + more).unwrap_or(line.pitch)
    });
    let present = |role: &Role| built.sticks.iter().any(|stick| stick.role == *role);
    Some(Seasoning {
        wood: wood.clone(),
        service_percent: project.site.service_moisture_percent,
        sections: Role::ALL.into_iter().filter(present).map(|role| drying(project, wood, role)).collect(),
        movements: movements::movements(project, built, wood),
        pitch,
    })
}

fn drying(project: &Project, wood: &Species, role: Role) -> Drying {
    let section = project.frame.timbers.of(role).sawn;
    let service = project.site.service_moisture_percent;
    let in_the_end = |grain| wood.shrinkage_of(section.depth, grain, service);
    Drying {
        role,
        section,
        years_to_dry: years_to_dry(section.breadth.min(section.depth), wood.is_hardwood),
        percent: yearly(project, wood, |time| time.percent(role)),
        breadth_lost: yearly(project, wood, |time| time.lost(role, section.breadth)),
        depth_lost: yearly(project, wood, |time| time.lost(role, section.depth)),
        depth_range: (in_the_end(Grain::Radial), in_the_end(Grain::Tangential)),
    }
}

impl Seasoning {
    /// The movement of that key.
    #[must_use]
    pub fn movement(&self, key: &str) -> Option<&Movement> {
        self.movements.iter().find(|movement| movement.key == key)
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::lay_out;
    use crate::materials::species_table;
    use crate::project::demo;

    fn of(project: &Project) -> Seasoning {
        seasoning(project, &lay_out(project).built.unwrap()).unwrap()
    }

    fn barn() -> Project {
        let mut project = demo::wool_barn();
        project.fixings.ledger.rows = 0;
        project
    }

    /// By hand, hemlock to 15 %: (3.0 + 6.8)/2 = 4.9 %, half of it 2.45 %. Beam over the shoulders 10 − ½ = 9½ in: 0.233; ledger
    /// over its middle 5 in: 0.1225; brace 8/2 · 0.0245 · cos 45° = 0.0693; the inner posts' tenons 8 in: 0.196; ledger under its
    /// heads 4 in: 0.098; scarf 5 in · (3.4 − 1.5) % = 0.095; drawbore's hole 1½ in up: 0.0368; room over the tenon 4¼ in: 0.104.
    #[test]
    fn the_barn_dry_by_hand() {
        let found = of(&barn());
        for (key, inches) in [
            ("beam_seat_drop", 9.5 * 0.0245),
            ("ledger_seat_drop", 5.0 * 0.0245),
            ("post_in_housing", 8.0 * 0.0245),
            ("brace_slack", 4.0 * 0.0245 * std::f64::consts::FRAC_1_SQRT_2),
            ("brace_in_pocket", 6.0 * 0.0245),
            ("tenon_in_mortise", 8.0 * 0.0245),
            ("tenon_cheeks", 2.0 * 0.019),
            ("ledger_heads", 4.0 * 0.0245),
            ("scarf_gap", 5.0 * 0.019),
            ("drawbore", 1.5 * 0.0245),
            ("room_over_tenon", 4.25 * 0.0245),
            ("heel_drawn_in", (9.5 - 5.0) * 0.0245 * 0.25),
            ("metal_at_wall", 5.0 * 0.0245 + 7.49617 * 0.0245 + 2.0 * 0.0245 / 0.970_143),
        ] {
            let last = found.movement(key).unwrap().last().to_inches();
            assert!((last - inches).abs() < 1e-5, "{key}: {last} is not {inches}");
        }
        // Run 126 + 3 − 4 = 125 in; the beam sinks 4½ in · 0.0245 more: the roof gets steeper.
        let steeper = found.pitch[YEARS].tan() - 0.25;
        assert!((steeper - 4.5 * 0.0245 / 125.0).abs() < 1e-12, "{steeper}");
        assert!(found.movement("wedges").is_none());
    }

    /// By hand: 8 in softwood after five years at 15 + 15·10^(−5/8) = 18.557 %, 38.1 % of its whole shrinkage:
    /// 9½ in · 4.9 % · 0.381 = 0.1776. The 4 in ledger is at 15 + 15·10^(−5/4) = 15.843 %.
    #[test]
    fn year_five_by_hand() {
        let found = of(&barn());
        let beam = found.sections.iter().find(|one| one.role == Role::Beam).unwrap();
        assert!((beam.percent[5] - 18.5571).abs() < 1e-3 && beam.percent[0] == 30.0 && beam.percent[YEARS] == 15.0);
        let ledger = found.sections.iter().find(|one| one.role == Role::Ledger).unwrap();
        assert!((ledger.percent[5] - 15.8435).abs() < 1e-3, "{}", ledger.percent[5]);
        let drop = found.movement("beam_seat_drop").unwrap().sizes[5].to_inches();
        assert!((drop - 0.177_56).abs() < 1e-4, "{drop}");
        assert!((beam.depth_range.0.to_inches() - 0.15).abs() < 1e-12);
        assert!((beam.depth_range.1.to_inches() - 0.34).abs() < 1e-12);
    }

    /// The seats' drops that the rest of the program shows are these in the end.
    #[test]
    fn the_clearances_say_the_same() {
        for project in [demo::wool_barn(), demo::log_store()] {
            let room = lay_out(&project).built.unwrap().shape.clearances.clone();
            let found = of(&project);
            assert_eq!(found.movement("beam_seat_drop").unwrap().last(), room.beam_seat_drop);
            assert_eq!(found.movement("ledger_seat_drop").unwrap().last(), room.ledger_seat_drop);
        }
    }

    /// Every wood, place and kind of fixing: nothing at the start, never less as years go by, never more than in the end; all of it
    /// nothing where the place is as wet as green wood; a drier place moves more; the pitch goes with the seats.
    #[test]
    fn drying_only_goes_one_way() {
        for wood in species_table() {
            let mut project = barn();
            project.frame.species = wood.key.clone();
            // Three pieces of oak are too heavy for the barn's crew.
            project.mill.heaviest_pick = crate::units::Weight::pounds(800.0);
            let mut drier: Option<Seasoning> = None;
            for percent in [4.0, 12.0, 18.0, 29.0, 30.0, 45.0] {
                project.site.service_moisture_percent = percent;
                let found = of(&project);
                for movement in &found.movements {
                    let name = format!("{} of {} at {percent}", movement.key, wood.key);
                    assert_eq!(movement.sizes[0], Length::ZERO, "{name}");
                    let grows = movement.sizes.windows(2).all(|pair| pair[0] <= pair[1]);
                    // Two parts that dry at their own pace may part and close again.
                    assert!(grows || ["tenon_cheeks", "heel_drawn_in"].contains(&movement.key), "{name}: {movement:?}");
                    assert!(percent < 30.0 || movement.sizes.iter().all(|size| *size == Length::ZERO), "{name}");
                    let before = drier.as_ref().and_then(|drier| drier.movement(movement.key));
                    assert!(before.is_none_or(|before| before.last() >= movement.last()), "{name}");
                }
                let sinks = |key| found.movement(key).unwrap().last();
                let more = sinks("beam_seat_drop") - sinks("ledger_seat_drop");
                let steeper = found.pitch[YEARS].tan() - found.pitch[0].tan();
                assert!(steeper * more.to_inches() >= 0.0 && (percent >= 30.0) == (steeper.abs() < 1e-9));
                drier = Some(found);
            }
        }
    }

    /// A deep ledger held near its lower edge sinks more than the beam: the roof gets flatter; held near its top, steeper.
    #[test]
    fn the_pitch_goes_with_the_fixings() {
        let mut project = barn();
        let deep = Section::new(Length::inches(4.0), Length::inches(14.0));
        project.frame.timbers.ledger = crate::materials::Timber::full(deep);
        project.fixings.ledger.rows = 1;
        project.fixings.ledger.lowest = Length::inches(3.0);
        let found = of(&project);
        assert!(found.pitch[YEARS].tan() < found.pitch[0].tan());
        project.fixings.ledger.lowest = Length::inches(11.0);
        assert!(of(&project).pitch[YEARS].tan() > 0.25);
    }

    /// A margin that is used up says so, and what to do.
    #[test]
    fn a_margin_too_small_is_said() {
        let mut project = barn();
        let advice =
            |project: &Project, key: &str| of(project).movement(key).map(|one| (one.means.clone(), one.advice));
        assert!(advice(&project, "room_over_tenon").unwrap().0.contains("is left"));
        project.joinery.blind_clearance = Length::inches(0.0625);
        let (means, does) = advice(&project, "room_over_tenon").unwrap();
        assert!(means.contains("too little") && does.contains("deeper"), "{means} {does}");
        project.joinery.drawbore = Length::ZERO;
        assert!(advice(&project, "drawbore").unwrap().0.contains("no longer draws"));
        let text = seasoning_text(&project, &of(&project));
        assert!(text.contains("year five") && text.contains("Snug every lag"));
    }
}

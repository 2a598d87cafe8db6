//! Every load that acts in the plane of the beam line, each by itself: what the elevation shows.
use super::along_wall::OnParts;
use super::beam_cases::{BeamLoads, one_brace};
use super::earthquake::earthquake_on_line;
use super::roof_cases::RoofLoads;
use crate::design::Shape;
use crate::geometry::{Point, rakes};
use crate::loads::{Action, Spread};
use crate::project::Project;
use crate::units::{Force, Length};
use crate::working::{Citation, Step};

/// A load in the elevation.
#[derive(Clone, Debug, PartialEq)]
pub struct ElevationLoad {
    /// In words.
    pub name: String,
    /// What it is.
    pub action: Action,
    /// Square to the roof, plus towards its top, with where on the beam its places are measured from.
    pub on_roof: Option<(Spread, Length)>,
    /// Forces at places of the elevation, unfactored.
    pub forces: Vec<PlacedForce>,
    /// How it came about.
    pub steps: Vec<Step>,
}

/// A force at a place.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedForce {
    /// On what.
    pub what: String,
    /// Where, along the beam and up.
    pub at: Point,
    /// Down, or to the right where it is level.
    pub force: Force,
    /// Along the wall rather than down.
    pub is_level: bool,
}

impl ElevationLoad {
    fn new(name: impl Into<String>, action: Action, steps: Vec<Step>) -> Self {
        Self { name: name.into(), action, on_roof: None, forces: Vec::new(), steps }
    }
}

/// All of them: what the sticks weigh, wind along the wall on the roof and on what stands in it, an earthquake where it is asked
/// for. What is not known is not among them: that is said where it is asked for.
#[must_use]
pub fn elevation_loads(project: &Project, shape: &Shape, loads: &RoofLoads) -> Vec<ElevationLoad> {
    let mut all = vec![own_weights(project, shape, loads)];
    let half = project.frame.timbers.rafter.sawn.breadth / 2.0;
    let (left, _) = rakes(&project.roofing, &shape.rafters, half);
    all.extend(loads.side_wind.iter().map(|case| ElevationLoad {
        on_roof: Some((case.pressure.clone(), left)),
        ..ElevationLoad::new(case.name.clone(), Action::Wind, case.steps.clone())
    }));
    all.extend(wind_on_parts(project, shape, loads));
    all.extend(earthquake(project, shape, loads));
    all
}

/// Middles of the braces, left to right.
fn braces(shape: &Shape) -> Vec<(String, Point)> {
    let place = |brace: &crate::geometry::Brace| {
        let (low, high) = brace.form.outline().map(|point| brace.place_stick(point)).bounds();
        (brace.mark(), Point::new((low.x + high.x) / 2.0, (low.y + high.y) / 2.0))
    };
    shape.braces.iter().map(place).collect()
}

/// Pieces of the beam, posts and braces, green; rafters and purlins are in the dead load of the section.
fn own_weights(project: &Project, shape: &Shape, loads: &RoofLoads) -> ElevationLoad {
    let (wood, timbers) = (loads.dead.wood.heavy, &project.frame.timbers);
    let axis = shape.line.beam_seat - timbers.beam.sawn.depth / 2.0;
    let down = |what: String, at: Point, force: Force| PlacedForce { what, at, force, is_level: false };
    let (beam, post) = (wood.line_load(timbers.beam.sawn.area()), wood.line_load(timbers.post.sawn.area()));
    let brace = one_brace(project, shape, wood);
    let mut forces: Vec<PlacedForce> = Vec::new();
    for piece in &shape.beam.pieces {
        let x = (piece.start + piece.end) / 2.0;
        forces.push(down(format!("B{}", piece.number), Point::new(x, axis), beam * piece.length()));
    }
    for of in &shape.posts {
        let at = Point::new(of.middle(), (of.foot + of.shoulder) / 2.0);
        forces.push(down(format!("P{}", of.number), at, post * of.body()));
    }
    forces.extend(braces(shape).into_iter().map(|(mark, at)| down(mark, at, brace)));
    let says = format!(
        "green at {:.1} lb/ft³: beam {:.1} lb a foot, laps counted in both pieces here and once in the frame; posts {:.1} lb a foot; a \
         brace {:.0} lb",
        wood.to_pounds_per_cubic_foot(),
        beam.to_plf(),
        post.to_plf(),
        brace.to_pounds()
    );
    let source = Citation { confidence: loads.dead.sure, ..Citation::common_practice("size by density") };
    let step = Step::new("weight of the sticks", says, source);
    ElevationLoad { forces, ..ElevationLoad::new("the sticks of the beam line", Action::Dead, vec![step]) }
}

fn wind_on_parts(project: &Project, shape: &Shape, loads: &RoofLoads) -> Option<ElevationLoad> {
    let OnParts { forces, steps, .. } = OnParts::of(project, shape, loads).ok()?;
    let (frame, line) = (&project.frame, &shape.line);
    let axis = line.beam_seat - frame.timbers.beam.sawn.depth / 2.0;
    let roof = line.top_edge(frame.reach / 2.0);
    let left = shape.rafters.first().copied().unwrap_or_default();
    let right = shape.rafters.last().copied().unwrap_or_default();
    let of = |name: &str| forces.iter().find(|(known, ..)| *known == name).map_or(Force::ZERO, |(_, force, _)| *force);
    let level = |what: &str, at: Point, force: Force| PlacedForce { what: what.to_owned(), at, force, is_level: true };
    let mut placed = vec![
        level("roof edge", Point::new(left, roof), of("roof edge")),
        level("rafters behind it", Point::new(left + (right - left) * 0.6, roof), of("the rafters behind it")),
        level("beam end", Point::new(Length::ZERO, axis), of("beam end")),
    ];
    let bodies: Length = shape.posts.iter().map(crate::geometry::PostShape::body).sum();
    for post in &shape.posts {
        let at = Point::new(post.left, (post.foot + post.shoulder) / 2.0);
        placed.push(level(&format!("P{}", post.number), at, of("posts") * (post.body() / bodies)));
    }
    let each = of("braces") / shape.braces.len().max(1) as f64;
    placed.extend(braces(shape).iter().map(|(mark, at)| level(mark, *at, each)));
    let name = "wind along the wall on edge, rafters, beam, posts and braces, from either side";
    Some(ElevationLoad { forces: placed, ..ElevationLoad::new(name, Action::Wind, steps) })
}

fn earthquake(project: &Project, shape: &Shape, loads: &RoofLoads) -> Option<ElevationLoad> {
    let beam = BeamLoads::new(project, shape, loads);
    let dead = beam.whole_dead(false);
    let shaking = earthquake_on_line(project, shape, loads, (&beam.line, dead))?.ok()?;
    let axis = shape.line.beam_seat - project.frame.timbers.beam.sawn.depth / 2.0;
    let middle = Point::new(project.frame.beam_length / 2.0, shape.line.beam_seat);
    let (push, down) = (shaking.push, dead * shaking.vertical);
    let placed = |what: &str, at: Point, force: Force, is_level: bool| PlacedForce {
        what: what.to_owned(),
        at,
        force,
        is_level,
    };
    let all = [placed("E_h", Point::new(Length::ZERO, axis), push, true), placed("E_v", middle, down, false)];
    // Category A has nothing down.
    let forces = all.into_iter().filter(|one| one.force != Force::ZERO).collect();
    let name = "earthquake along the wall, either way, on the beam line";
    Some(ElevationLoad { forces, ..ElevationLoad::new(name, Action::SeismicSideways, shaking.steps) })
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::loads::{DesignCategory, Seismic};
    use crate::project::demo;

    /// What is drawn is what the frame is loaded with: the weights but for the laps, the pushes by their shares.
    #[test]
    fn the_forces_are_those_of_the_frame() {
        let mut project = demo::wool_barn();
        project.place.seismic = Some(Seismic { s_ds: 0.4, category: DesignCategory::B, importance: 1.0 });
        let design = evaluate(&project);
        let (built, strength) = (design.built.unwrap(), design.strength.unwrap());
        let loads = &strength.loads;
        let all = elevation_loads(&project, &built.shape, loads);
        assert_eq!(all.len(), 3 + loads.side_wind.len());
        let sum = |load: &ElevationLoad, level: bool| -> Force {
            load.forces.iter().filter(|one| one.is_level == level).map(|one| one.force).sum()
        };
        let beam = BeamLoads::new(&project, &built.shape, loads);
        let laps = project.frame.scarfs.lap * built.shape.beam.scarfs.len() as f64;
        let twice = loads.dead.wood.heavy.line_load(project.frame.timbers.beam.sawn.area()) * laps;
        assert!((sum(&all[0], false) - twice - beam.own_weight(false)).abs() < Force::pounds(1e-6));
        let line = strength.line.as_ref().unwrap();
        let wind = &all[all.len() - 2];
        let OnParts { forces, .. } = OnParts::of(&project, &built.shape, loads).unwrap();
        let total: Force = forces.iter().map(|(_, force, _)| *force).sum();
        assert!((sum(wind, true) - total).abs() < Force::pounds(1e-6));
        let push: Force = forces.iter().map(|(_, force, share)| *force * *share).sum();
        let said = line.along_steps.iter().find(|step| step.gives == "push on the beam").unwrap();
        assert!(said.says.contains(&format!("= {:.0} lb", push.to_pounds())), "{}", said.says);
        let shaken = &all[all.len() - 1];
        let case = line.cases.iter().find(|case| case.name.contains("0.7E_h") && case.push > Force::ZERO).unwrap();
        assert!(case.push >= sum(shaken, true) * 0.7, "its sway adds to it");
        assert!(sum(shaken, false) > Force::ZERO);
        // In category A nothing acts down, and nothing of that is shown.
        let down = |project: &Project| {
            let all = crate::analysis::section_loads(project, loads);
            all.iter().any(|case| case.action == Action::SeismicDown)
        };
        assert!(down(&project));
        project.place.seismic = Some(Seismic { s_ds: 0.4, category: DesignCategory::A, importance: 1.0 });
        assert!(!down(&project));
        let shaken = elevation_loads(&project, &built.shape, loads).pop().unwrap();
        assert_eq!(shaken.forces.iter().map(|one| one.what.as_str()).collect::<Vec<_>>(), ["E_h"]);
    }
}

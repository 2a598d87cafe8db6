//! The curves along the beam: one case, or the envelope of all.
use super::beam_cases::BeamLoads;
use super::beam_line::BeamLine;
use super::beam_model::{BeamModel, BraceModel, beam_model};
use super::roof_cases::RoofLoads;
use super::roof_dead::Pair;
use crate::design::Shape;
use crate::frame::{Solution, Solver};
use crate::project::Project;
use crate::units::Length;

/// What is drawn along the beam.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Quantity {
    /// Bending, pound-inches, plus where the underside is stretched.
    Moment,
    /// Shear, pounds.
    Shear,
    /// Pull along the beam, pounds.
    Axial,
    /// Movement, inches, plus up.
    Movement,
}

impl Quantity {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Moment, Self::Shear, Self::Axial, Self::Movement];

    fn sides(self, solution: &Solution, member: usize, at: Length) -> (f64, f64) {
        match self {
            Self::Moment => {
                let here = solution.moment(member).at(at).to_pound_inches();
                (here, here)
            }
            Self::Shear => {
                let (before, after) = solution.shear(member).sides(at);
                (before.to_pounds(), after.to_pounds())
            }
            Self::Axial => {
                let here = solution.axial(member).at(at).to_pounds();
                (here, here)
            }
            Self::Movement => {
                let here = solution.deflection(member).at(at).to_inches();
                (here, here)
            }
        }
    }
}

/// A band along the beam; for one case its two edges are the same but at a jump.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Band {
    /// Places along the beam.
    pub places: Vec<Length>,
    /// The least value there, in the quantity's own unit.
    pub low: Vec<f64>,
    /// The greatest.
    pub high: Vec<f64>,
}

/// Which answers are drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Drawn {
    /// One case with one model.
    One(usize, BraceModel),
    /// Everything that judges strength.
    All,
    /// Every case of the beam without scarfs.
    Uncut,
}

/// Parts a stretch is sampled in; its ends are exact.
const PARTS: u32 = 8;

/// Samples the beam: exact at nodes, close between them.
#[must_use]
pub fn band(
    project: &Project,
    shape: &Shape,
    loads: &RoofLoads,
    line: &BeamLine,
    quantity: Quantity,
    drawn: Drawn,
) -> Band {
    let beam = BeamLoads::new(project, shape, loads);
    let dead = Pair { heavy: beam.dead(false), light: beam.dead(true) };
    let is_cut = drawn != Drawn::Uncut;
    let wanted: Vec<(BraceModel, usize)> = match drawn {
        Drawn::Uncut => line.uncut.iter().map(|uncut| (uncut.model, uncut.case)).collect(),
        Drawn::One(case, model) => {
            let is_it = |solved: &&super::beam_line::Solved| solved.case == case && solved.model == model;
            line.solved.iter().filter(is_it).map(|solved| (solved.model, solved.case)).collect()
        }
        Drawn::All => line.strength().map(|(solved, _)| (solved.model, solved.case)).collect(),
    };
    let mut models: Vec<(BraceModel, BeamModel)> = Vec::new();
    for (braces, _) in &wanted {
        if !models.iter().any(|(known, _)| known == braces) {
            models.push((*braces, beam_model(project, shape, &line.stiffness, *braces, is_cut)));
        }
    }
    let mut found = empty(line);
    for (braces, model) in &models {
        let mut solver = Solver::new(&model.frame);
        for (_, case) in wanted.iter().filter(|(known, _)| known == braces) {
            let Some(case) = line.cases.get(*case) else { continue };
            if let Ok(solution) = solver.solve(&beam.frame_case(model, case, &dead)) {
                widen(&mut found, model, &solution, quantity);
            }
        }
    }
    found
}

fn places(from: Length, to: Length) -> impl Iterator<Item = Length> {
    (0..=PARTS).map(move |part| from + (to - from) * (f64::from(part) / f64::from(PARTS)))
}

fn empty(line: &BeamLine) -> Band {
    let along: Vec<Length> = line.model.beam.iter().flat_map(|stretch| places(stretch.from, stretch.to)).collect();
    let n = along.len();
    Band { places: along, low: vec![f64::INFINITY; n], high: vec![f64::NEG_INFINITY; n] }
}

fn widen(band: &mut Band, model: &BeamModel, solution: &Solution, quantity: Quantity) {
    let mut index = 0;
    for stretch in &model.beam {
        for x in places(stretch.from, stretch.to) {
            let at = x - stretch.from;
            let (before, after) = quantity.sides(solution, stretch.member, at);
            if let (Some(low), Some(high)) = (band.low.get_mut(index), band.high.get_mut(index)) {
                *low = low.min(before).min(after);
                *high = high.max(before).max(after);
            }
            index += 1;
        }
    }
}

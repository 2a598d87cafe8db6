//! The curves along the beam: one case, or the envelope of all.
use super::beam_cases::BeamLoads;
use super::beam_line::BeamLine;
use super::beam_model::{BeamModel, BraceModel, Unbraced};
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
    /// One of them with one model.
    UncutOne(usize, BraceModel),
}

impl Drawn {
    /// The same of the beam without scarfs.
    #[must_use]
    pub const fn uncut(self) -> Self {
        match self {
            Self::One(case, model) | Self::UncutOne(case, model) => Self::UncutOne(case, model),
            Self::All | Self::Uncut => Self::Uncut,
        }
    }
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
    let is_cut = drawn != drawn.uncut();
    let wanted: Vec<(BraceModel, usize)> = match drawn {
        Drawn::Uncut => line.uncut.iter().map(|uncut| (uncut.model, uncut.case)).collect(),
        Drawn::UncutOne(case, model) => vec![(model, case)],
        Drawn::One(case, model) => {
            let is_it = |solved: &&super::beam_answer::Solved| solved.case == case && solved.model == model;
            line.solved.iter().filter(is_it).map(|solved| (solved.model, solved.case)).collect()
        }
        Drawn::All => line.strength().map(|(solved, _)| (solved.model, solved.case)).collect(),
    };
    let unbraced = Unbraced::new(project, shape, &line.stiffness);
    let mut models: Vec<(BraceModel, BeamModel)> = Vec::new();
    for (braces, _) in &wanted {
        if !models.iter().any(|(known, _)| known == braces) {
            models.push((*braces, unbraced.with(*braces, is_cut)));
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

/// What counts as little, of the greatest: our own choice.
const LITTLE: f64 = 0.25;

impl Band {
    /// Where it is little between two places where it is more, left to right: place, and value in the middle of the band.
    #[must_use]
    pub fn lulls(&self) -> Vec<(Length, f64)> {
        let size: Vec<f64> = self.low.iter().zip(&self.high).map(|(low, high)| low.abs().max(high.abs())).collect();
        let most = size.iter().copied().filter(|size| size.is_finite()).fold(0.0, f64::max);
        let mut found: Vec<(Length, f64)> = Vec::new();
        let mut from = 0;
        while from < size.len() {
            // A run of equal values is one place: two stretches share the node between them.
            let to = (from..size.len()).take_while(|at| size[*at] == size[from]).last().unwrap_or(from);
            let is_more = |at: Option<&f64>| at.is_some_and(|other| *other > size[from]);
            let before = from.checked_sub(1).and_then(|at| size.get(at));
            if size[from] <= LITTLE * most && is_more(before) && is_more(size.get(to + 1)) {
                found.push((self.places[from], f64::midpoint(self.low[from], self.high[from])));
            }
            from = to + 1;
        }
        found
    }
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

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::project::demo;

    /// A wave of 8 over 10: it is little where it turns its sign (0 and 1), not at the ends, nor where it falls only to 4.
    #[test]
    fn a_lull_lies_between_two_swells() {
        let at = |values: &[f64]| values.to_vec();
        let places = (0..10).map(|x| Length::inches(f64::from(x))).collect();
        let low = at(&[0.0, 6.0, 8.0, 0.0, 0.0, -7.0, -4.0, -8.0, 1.0, 3.0]);
        let band = Band { places, high: low.clone(), low };
        assert_eq!(band.lulls(), [(Length::inches(3.0), 0.0), (Length::inches(8.0), 1.0)]);
        let wide = Band { high: at(&[5.0; 10]), ..band };
        assert!(wide.lulls().is_empty());
    }

    /// Beside one case of the beam the same case of the uncut beam: it passes where that is cut, and nowhere leaves the
    /// envelope of all uncut cases that were solved. At a scarf, a hinge, the cut beam does not bend.
    #[test]
    fn the_uncut_curve_is_of_the_case_that_is_drawn() {
        let project = demo::wool_barn();
        let design = evaluate(&project);
        let (built, strength) = (design.built.unwrap(), design.strength.unwrap());
        let line = strength.line.as_ref().unwrap();
        let of = |drawn| band(&project, &built.shape, &strength.loads, line, Quantity::Moment, drawn);
        let all = of(Drawn::All.uncut());
        assert_eq!(all, of(Drawn::Uncut));
        let uncut = &line.uncut[0];
        let one = Drawn::One(uncut.case, uncut.model);
        let (cut, whole) = (of(one), of(one.uncut()));
        for at in 0..whole.places.len() {
            assert!((whole.low[at] - whole.high[at]).abs() < 1e-6, "one case is one line");
            assert!(whole.low[at] >= all.low[at] - 1e-6 && whole.high[at] <= all.high[at] + 1e-6);
        }
        let scarf = built.shape.beam.scarfs[0].place.centre;
        let near = (0..cut.places.len())
            .min_by(|a, b| {
                (cut.places[*a] - scarf).abs().to_inches().total_cmp(&(cut.places[*b] - scarf).abs().to_inches())
            })
            .unwrap();
        assert!((cut.places[near] - scarf).abs() < Length::inches(0.01) && cut.high[near].abs() < 1.0);
        let gap = |at: usize| (cut.low[at] - whole.low[at]).abs();
        assert!((0..cut.places.len()).any(|at| gap(at) > 1.0), "the two are not the same beam");
    }
}

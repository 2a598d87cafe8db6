//! The beam line worked through: every case with every model of its braces that concerns it.
use super::along_wall::{AlongCases, along_cases};
use super::beam_cases::{BeamCase, BeamLoads, Purpose};
use super::beam_model::{BeamModel, BraceModel, Stiffnesses, Stretch, beam_model};
use super::roof_cases::RoofLoads;
use super::roof_dead::Pair;
use crate::design::Shape;
use crate::frame::{Extremes, FrameError, SecondOrder, Solution, Solver, Storey, second_order};
use crate::loads::Duration;
use crate::project::Project;
use crate::units::{Force, Length, Moment};
use crate::working::{Step, Worked};

/// One stretch of the beam under one case.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BeamPart {
    /// Bending, plus where the underside is stretched; places from the stretch's left end.
    pub moment: Extremes<Moment>,
    /// Shear.
    pub shear: Extremes<Force>,
    /// Moment at its left and right end.
    pub end_moments: (Moment, Moment),
    /// Shear at its left and right end.
    pub end_shears: (Force, Force),
    /// Pull along it, minus a push.
    pub axial: Force,
    /// Movement, plus up; only where the case is for it.
    pub movement: Option<Extremes<Length>>,
}

/// One post under one case.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PostPart {
    /// What the beam puts on its shoulder, plus down.
    pub top: Force,
    /// Push in its lowest part, plus down.
    pub foot: Force,
    /// Level force of its foot on the pier.
    pub level: Force,
    /// The largest bending in its length, without sign.
    pub moment: Moment,
}

/// One case with one model.
#[derive(Clone, Debug, PartialEq)]
pub struct Solved {
    /// Its place in [`BeamLine::cases`].
    pub case: usize,
    /// How the braces were taken.
    pub model: BraceModel,
    /// The beam was cut at its scarfs.
    pub is_hinged: bool,
    /// Stretches, left to right.
    pub beam: Vec<BeamPart>,
    /// Posts, left to right.
    pub posts: Vec<PostPart>,
    /// Moment and shear at each brace's pocket in the beam, each at the worse of its two edges.
    pub pockets: Vec<(Moment, Force)>,
    /// Force along each brace, plus a pull.
    pub braces: Vec<Force>,
    /// How far the beam moves along itself.
    pub sway: Length,
    /// Sum of what the piers hold up.
    pub weight: Force,
}

/// All that is known of the beam line.
#[derive(Clone, Debug, PartialEq)]
pub struct BeamLine {
    /// The cases.
    pub cases: Vec<BeamCase>,
    /// The frame with its braces rigid and its scarfs cut: the places of everything.
    pub model: BeamModel,
    /// The wood's stiffness it is worked with.
    pub stiffness: Stiffnesses,
    /// Every answer.
    pub solved: Vec<Solved>,
    /// The worst second-order share found, with its working.
    pub second_order: Option<Worked<SecondOrder>>,
    /// How the pushes along the wall came about.
    pub along_steps: Vec<Step>,
    /// What could not be worked out, a sentence each.
    pub not_judged: Vec<String>,
    /// What the roof's dead load puts on the beam in all.
    pub roof_dead: Pair<Force>,
}

impl BeamLine {
    /// Whether the roof lifts the beam in a case, its dead load counted; a sunk post does not make it.
    #[must_use]
    pub fn lifts(&self, case: &BeamCase) -> bool {
        let dead = self.roof_dead.of(case.is_uplift) * case.dead;
        (case.rafters.iter().sum::<Force>() + dead).is_negative()
    }

    /// The beam's largest bending, without sign, under the heaviest case with joints of the braces as stiff as given, half as
    /// stiff and half again: how much hangs on a figure that is little known.
    #[must_use]
    pub fn bending_by_joint(&self) -> Vec<(f64, Moment)> {
        let tried =
            self.solved.iter().filter(|solved| matches!(solved.model, BraceModel::Sprung(factor) if factor != 1.0));
        let heaviest = tried.clone().find_map(|solved| self.cases.get(solved.case));
        let as_given = self.strength().filter(|(solved, case)| {
            solved.model == BraceModel::Sprung(1.0) && heaviest.is_some_and(|heaviest| heaviest.name == case.name)
        });
        let largest = |solved: &Solved| {
            let of_part = |part: &BeamPart| part.moment.max.abs().max(part.moment.min.abs());
            solved.beam.iter().map(of_part).fold(Moment::ZERO, Moment::max)
        };
        let all = as_given.map(|(solved, _)| solved).take(1).chain(tried);
        all.map(|solved| match solved.model {
            BraceModel::Sprung(factor) => (factor, largest(solved)),
            _ => (1.0, largest(solved)),
        })
        .collect()
    }

    /// Whether an answer judges strength.
    #[must_use]
    pub fn is_for_strength(&self, solved: &Solved) -> bool {
        self.strength().any(|(known, _)| std::ptr::eq(known, solved))
    }

    /// Answers of the cut beam that judge strength, with their cases.
    pub fn strength(&self) -> impl Iterator<Item = (&Solved, &BeamCase)> {
        self.of(true, |purpose| matches!(purpose, Purpose::Strength | Purpose::Sunk | Purpose::Along))
    }

    /// Answers of the beam without scarfs.
    pub fn uncut(&self) -> impl Iterator<Item = (&Solved, &BeamCase)> {
        self.of(false, |_| true)
    }

    /// Answers of the cut beam for one purpose.
    pub fn purpose(&self, wanted: Purpose) -> impl Iterator<Item = (&Solved, &BeamCase)> {
        self.of(true, move |purpose| purpose == wanted)
    }

    fn of(&self, is_hinged: bool, wanted: impl Fn(Purpose) -> bool) -> impl Iterator<Item = (&Solved, &BeamCase)> {
        let with_case = |solved| self.cases.get(Solved::case_of(solved)).map(|case| (solved, case));
        let normal = |solved: &&Solved| !matches!(solved.model, BraceModel::Sprung(factor) if factor != 1.0);
        let all = self.solved.iter().filter(move |solved| solved.is_hinged == is_hinged).filter(normal);
        all.filter_map(with_case).filter(move |(_, case)| wanted(case.purpose))
    }
}

impl Solved {
    const fn case_of(&self) -> usize {
        self.case
    }
}

/// Works everything out.
#[must_use]
pub fn beam_line(project: &Project, shape: &Shape, loads: &RoofLoads, stiffness: &Stiffnesses) -> BeamLine {
    let beam = BeamLoads::new(project, shape, loads);
    let models = Models::new(project, shape, stiffness);
    let mut work = Work::new(&beam, &models, stiffness);
    let edition = project.place.edition;
    let even = beam.even_cases(edition);
    let heaviest = heaviest(&even).cloned();
    let mut gravity = even;
    gravity.extend(beam.partial_cases(edition));
    let uncut = gravity.clone();
    work.run(&[BraceModel::Rigid, BraceModel::Sprung(1.0), BraceModel::Slack], true, gravity);
    if let Some(heaviest) = &heaviest {
        // A movement forced on rigid braces has no bound: here the joints' stiffness counts.
        let sunk = [Some(heaviest), uncut.iter().find(|case| case.duration == Duration::Permanent)];
        // Weight relieves part of what a sunk post does: the dead load alone counts as well.
        let sunk = sunk.into_iter().flatten().flat_map(|case| beam.sunk_cases(case)).collect();
        work.run(&[BraceModel::Sprung(1.0)], true, sunk);
        let movements = BeamLoads::movement_cases(heaviest).to_vec();
        work.run(&[BraceModel::Rigid, BraceModel::Sprung(1.0), BraceModel::Slack], true, movements);
        work.run(&[BraceModel::Sprung(0.5), BraceModel::Sprung(1.5)], true, vec![heaviest.clone()]);
    }
    if !shape.beam.scarfs.is_empty() {
        // Slack braces bend it most: a scarf is placed and judged by that.
        work.run(&[BraceModel::Slack], false, uncut);
    }
    let along = along_cases(project, shape, loads, &beam);
    work.run_along(along);
    work.line
}

/// The frame with each model of its braces, the beam cut at its scarfs; last the beam in one stick.
struct Models(Vec<(BraceModel, bool, BeamModel)>);

impl Models {
    fn new(project: &Project, shape: &Shape, stiffness: &Stiffnesses) -> Self {
        let sprung = [0.5, 1.0, 1.5].map(BraceModel::Sprung);
        let cut = [BraceModel::Rigid, BraceModel::Slack, BraceModel::PushOnly].into_iter().chain(sprung);
        let kinds = cut.map(|braces| (braces, true)).chain([(BraceModel::Slack, false)]);
        let built = |(braces, is_hinged)| (braces, is_hinged, beam_model(project, shape, stiffness, braces, is_hinged));
        Self(kinds.map(built).collect())
    }
}

/// One of them with the matrices it has split so far.
struct Bench<'a> {
    braces: BraceModel,
    is_hinged: bool,
    model: &'a BeamModel,
    solver: Solver<'a>,
}

/// The case that presses most, of those that a roof sees for long: with snow where there is any.
fn heaviest(cases: &[BeamCase]) -> Option<&BeamCase> {
    let total = |case: &BeamCase| case.rafters.iter().sum::<Force>().to_pounds();
    let lasting = cases.iter().filter(|case| case.duration != Duration::TenMinutes && !case.is_uplift);
    lasting.max_by(|a, b| total(a).total_cmp(&total(b)))
}

struct Work<'a> {
    loads: &'a BeamLoads<'a>,
    benches: Vec<Bench<'a>>,
    dead: Pair<Vec<Force>>,
    line: BeamLine,
}

impl<'a> Work<'a> {
    fn new(loads: &'a BeamLoads<'a>, models: &'a Models, stiffness: &Stiffnesses) -> Self {
        let bench = |(braces, is_hinged, model): &'a (BraceModel, bool, BeamModel)| Bench {
            braces: *braces,
            is_hinged: *is_hinged,
            model,
            solver: Solver::new(&model.frame),
        };
        let benches: Vec<Bench> = models.0.iter().map(bench).collect();
        let dead = Pair { heavy: loads.dead(false), light: loads.dead(true) };
        let rigid = benches.iter().find(|bench| bench.braces == BraceModel::Rigid);
        let line = BeamLine {
            cases: Vec::new(),
            model: rigid.map(|bench| bench.model.clone()).unwrap_or_default(),
            stiffness: *stiffness,
            solved: Vec::new(),
            second_order: None,
            along_steps: Vec::new(),
            not_judged: Vec::new(),
            roof_dead: Pair { heavy: dead.heavy.iter().sum(), light: dead.light.iter().sum() },
        };
        Self { loads, benches, dead, line }
    }

    /// Solves new cases with each of the models.
    fn run(&mut self, models: &[BraceModel], is_hinged: bool, cases: Vec<BeamCase>) {
        let first = self.line.cases.len();
        self.line.cases.extend(cases);
        for braces in models {
            let fits = |bench: &&mut Bench| bench.braces == *braces && bench.is_hinged == is_hinged;
            let Some(Bench { model, solver, .. }) = self.benches.iter_mut().find(fits) else {
                self.line.not_judged.push(not_built(*braces));
                continue;
            };
            for index in first..self.line.cases.len() {
                let case = &self.line.cases[index];
                let load = self.loads.frame_case(model, case, &self.dead);
                match solver.solve(&load) {
                    Ok(solution) => {
                        let solved = collect(model, &solution, *braces, is_hinged, (index, case));
                        let let_go = let_go((self.loads, &self.dead), model, &solved, (index, case));
                        self.line.solved.push(let_go.unwrap_or(solved));
                    }
                    Err(error) => {
                        self.line.not_judged.push(unsolved(*braces, &error));
                        break;
                    }
                }
            }
        }
    }

    /// Pushes along the wall: each by itself, made worse by the sway of the weight where that counts.
    fn run_along(&mut self, along: AlongCases) {
        self.line.along_steps = along.steps;
        self.line.not_judged.extend(along.not_judged);
        let Some(at) = self.benches.iter().position(|bench| bench.braces == BraceModel::PushOnly) else {
            self.line.not_judged.push(not_built(BraceModel::PushOnly));
            return;
        };
        let mut bench = self.benches.swap_remove(at);
        let mut says: Vec<String> = Vec::new();
        for case in along.cases {
            if let Err(sentence) = self.sway(bench.model, &mut bench.solver, case)
                && !says.contains(&sentence)
            {
                says.push(sentence);
            }
        }
        self.line.not_judged.extend(says);
    }

    fn sway(&mut self, model: &BeamModel, solver: &mut Solver<'_>, mut case: BeamCase) -> Result<(), String> {
        let index = self.line.cases.len();
        let solve = |solver: &mut Solver<'_>, case: &BeamCase| {
            let load = self.loads.frame_case(model, case, &self.dead);
            let solution = solver.solve(&load).map_err(|error| unsolved(BraceModel::PushOnly, &error))?;
            Ok::<Solved, String>(collect(model, &solution, BraceModel::PushOnly, true, (index, case)))
        };
        let mut solved = solve(solver, &case)?;
        let storey = Storey {
            weight: solved.weight,
            sway: solved.sway,
            shear: case.push,
            height: model.posts.iter().map(|post| post.height).fold(Length::ZERO, Length::max),
        };
        let worked = second_order(storey)?;
        if worked.value.factor > 1.0 {
            case.push = case.push * worked.value.factor;
            solved = solve(solver, &case)?;
        }
        if self.line.second_order.as_ref().is_none_or(|known| known.value.theta < worked.value.theta) {
            self.line.second_order = Some(worked);
        }
        self.line.cases.push(case);
        self.line.solved.push(solved);
        Ok(())
    }
}

/// A sunk foot pulls nothing down: where its pier would have to hold the post, the post hangs free. The answer without
/// that support; nothing where the foot still stands.
fn let_go(
    (loads, dead): (&BeamLoads, &Pair<Vec<Force>>),
    model: &BeamModel,
    solved: &Solved,
    (index, case): (usize, &BeamCase),
) -> Option<Solved> {
    let (post, _) = case.sinks?;
    solved.posts.get(post).filter(|part| part.foot.is_negative())?;
    let foot = model.posts.get(post)?.foot;
    let mut free = model.clone();
    free.frame.supports.iter_mut().filter(|support| support.node == foot).for_each(|support| support.z = false);
    let hanging = BeamCase { sinks: None, ..case.clone() };
    let load = loads.frame_case(&free, &hanging, dead);
    let solution = Solver::new(&free.frame).solve(&load).ok()?;
    Some(collect(&free, &solution, solved.model, solved.is_hinged, (index, case)))
}

/// A model that [`Models`] leaves out must not pass in silence.
fn not_built(braces: BraceModel) -> String {
    format!("the beam line with {} has no answer: its frame was not built", braces.words())
}

fn unsolved(braces: BraceModel, error: &FrameError) -> String {
    format!("the beam line with {} has no answer: {error}", braces.words())
}

fn collect(
    model: &BeamModel,
    solution: &Solution,
    braces: BraceModel,
    is_hinged: bool,
    (index, case): (usize, &BeamCase),
) -> Solved {
    let wants_movement = matches!(case.purpose, Purpose::LiveMovement | Purpose::TotalMovement);
    let curve = |stretch: &Stretch| (solution.moment(stretch.member), solution.shear(stretch.member));
    let curves: Vec<_> = model.beam.iter().map(curve).collect();
    let beam = model.beam.iter().zip(&curves).map(|(stretch, (moment, shear))| {
        let end = stretch.to - stretch.from;
        BeamPart {
            moment: moment.extremes(),
            shear: shear.extremes(),
            end_moments: (moment.at(Length::ZERO), moment.at(end)),
            end_shears: (shear.sides(Length::ZERO).1, shear.sides(end).0),
            axial: solution.axial_at_start(stretch.member),
            movement: wants_movement.then(|| solution.deflection(stretch.member).extremes()),
        }
    });
    let beam = beam.collect();
    let posts = model.posts.iter().map(|post| {
        let last = post.members.last().copied().unwrap_or_default();
        let bending = |member: &usize| {
            let ends = solution.moment(*member).extremes();
            ends.max.abs().max(ends.min.abs())
        };
        let reaction = solution.reaction(post.foot);
        PostPart {
            top: -solution.axial_at_start(last),
            foot: reaction.z,
            level: reaction.x.abs(),
            moment: post.members.iter().map(bending).fold(Moment::ZERO, Moment::max),
        }
    });
    let posts: Vec<PostPart> = posts.collect();
    let pocket = |edges: &[(usize, Length); 2]| {
        let at = |(stretch, place): (usize, Length)| {
            curves.get(stretch).map_or_else(Default::default, |(moment, shear)| (moment.at(place), shear.at(place)))
        };
        let (a, b) = (at(edges[0]), at(edges[1]));
        (if b.0.abs() > a.0.abs() { b.0 } else { a.0 }, if b.1.abs() > a.1.abs() { b.1 } else { a.1 })
    };
    let along = |members: &Vec<usize>| members.iter().map(|member| solution.axial_at_start(*member)).sum();
    let end = model.beam.first().and_then(|stretch| model.frame.members.get(stretch.member)).map_or(0, |m| m.from);
    Solved {
        case: index,
        model: braces,
        is_hinged,
        beam,
        pockets: model.pockets.iter().map(pocket).collect(),
        braces: model.braces.iter().map(along).collect(),
        sway: solution.movement(end).x.abs(),
        weight: posts.iter().map(|post| post.foot).sum(),
        posts,
    }
}

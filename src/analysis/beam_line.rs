//! The beam line worked through: every case with every model of its braces that concerns it.
use std::ops::Range;

use super::along_wall::{AlongCases, along_cases};
use super::beam_answer::{BeamPart, Passed, PostPart, Solved, Uncut};
use super::beam_cases::{BeamCase, BeamLoads, Purpose};
use super::beam_model::{BeamModel, BraceModel, PostParts, Stiffnesses, Stretch, Unbraced};
use super::roof_cases::RoofLoads;
use super::roof_dead::Pair;
use super::sway::{Leaning, Pushed};
use crate::design::Shape;
use crate::frame::{FrameError, LoadCase, PlacedLoads, SecondOrder, Solution, Solver};
use crate::loads::Duration;
use crate::project::Project;
use crate::units::{AreaLoad, Force, Length, Moment, most};
use crate::unmade::Unmade;
use crate::working::{Step, Worked};

/// All that is known of the beam line.
#[derive(Clone, Debug, PartialEq)]
pub struct BeamLine {
    /// The cases.
    pub cases: Vec<BeamCase>,
    /// The frame with its braces rigid and its scarfs cut: the places of everything.
    pub model: BeamModel,
    /// The wood's stiffness it is worked with.
    pub stiffness: Stiffnesses,
    /// Every answer of the beam cut at its scarfs.
    pub solved: Vec<Solved>,
    /// Of the beam in one stick; nothing where it has no scarf.
    pub uncut: Vec<Uncut>,
    /// The worst second-order share found, with its working.
    pub second_order: Option<Worked<SecondOrder>>,
    /// Wind on each square foot of the posts' own faces, unfactored, where it is known.
    pub on_faces: Option<AreaLoad>,
    /// How the pushes along the wall came about.
    pub along_steps: Vec<Step>,
    /// What could not be worked out, a sentence each.
    pub not_judged: Vec<Unmade>,
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

    /// Answers of the cut beam that judge strength, with their cases.
    pub fn strength(&self) -> impl Iterator<Item = (&Solved, &BeamCase)> {
        self.of(|purpose| matches!(purpose, Purpose::Strength | Purpose::Sunk | Purpose::Along))
    }

    /// Answers of the beam in one stick, with their cases.
    pub fn uncut(&self) -> impl Iterator<Item = (&Uncut, &BeamCase)> {
        self.uncut.iter().filter_map(|uncut| Some((uncut, self.cases.get(uncut.case)?)))
    }

    /// Answers of the cut beam for one purpose.
    pub fn purpose(&self, wanted: Purpose) -> impl Iterator<Item = (&Solved, &BeamCase)> {
        self.of(move |purpose| purpose == wanted)
    }

    fn of(&self, wanted: impl Fn(Purpose) -> bool) -> impl Iterator<Item = (&Solved, &BeamCase)> {
        let normal = |solved: &&Solved| !matches!(solved.model, BraceModel::Sprung(factor) if factor != 1.0);
        let all = self.solved.iter().filter(normal);
        all.filter_map(|solved| Some((solved, self.cases.get(solved.case)?)))
            .filter(move |(_, case)| wanted(case.purpose))
    }
}

/// Works everything out.
#[must_use]
pub fn beam_line(project: &Project, shape: &Shape, loads: &RoofLoads, stiffness: &Stiffnesses) -> BeamLine {
    let beam = BeamLoads::new(project, shape, loads);
    let unbraced = Unbraced::new(project, shape, stiffness);
    let models = Models::new(&unbraced);
    let mut work = Work::new(&beam, &models, stiffness);
    let edition = project.place.edition;
    let even = beam.even_cases(edition);
    let heaviest = heaviest(&even).cloned();
    let mut gravity = even;
    gravity.extend(beam.partial_cases(edition));
    let dead = gravity.iter().find(|case| case.duration == Duration::Permanent).cloned();
    let all = [BraceModel::Rigid, BraceModel::Sprung(1.0), BraceModel::Slack];
    let gravity = work.add(gravity);
    work.solve(&all, gravity.clone());
    if let Some(heaviest) = &heaviest {
        // A movement forced on rigid braces has no bound: here the joints' stiffness counts, and slack braces leave the beam alone.
        let sunk = [Some(heaviest), dead.as_ref()];
        // Weight relieves part of what a sunk post does: the dead load alone counts as well.
        let sunk = work.add(sunk.into_iter().flatten().flat_map(|case| beam.sunk_cases(case)).collect());
        work.solve(&[BraceModel::Sprung(1.0), BraceModel::Slack], sunk);
        let movements = work.add(beam.movement_cases(heaviest).to_vec());
        work.solve(&all, movements);
        let tried = work.add(vec![heaviest.clone()]);
        work.solve(&[BraceModel::Sprung(0.5), BraceModel::Sprung(1.5)], tried);
    }
    let first = work.line.cases.len();
    work.run_along(along_cases(project, shape, loads, &beam));
    if !shape.beam.scarfs.is_empty() {
        // A scarf follows a post that sinks: what a stiff beam would carry then is none of its load.
        let along = first..work.line.cases.len();
        let uncut = all.map(|braces| (braces, gravity.clone())).into_iter().chain([(BraceModel::PushOnly, along)]);
        for (braces, cases) in uncut {
            let model = unbraced.with(braces, false);
            work.solve_uncut(&model, braces, cases);
        }
    }
    work.line
}

/// The frame with each model of its braces, the beam cut at its scarfs.
struct Models(Vec<(BraceModel, BeamModel)>);

impl Models {
    fn new(unbraced: &Unbraced<'_>) -> Self {
        let sprung = [0.5, 1.0, 1.5].map(BraceModel::Sprung);
        let all = [BraceModel::Rigid, BraceModel::Slack, BraceModel::PushOnly].into_iter().chain(sprung);
        Self(all.map(|braces| (braces, unbraced.with(braces, true))).collect())
    }
}

/// One of them with the matrices it has split so far.
struct Bench<'a> {
    braces: BraceModel,
    model: &'a BeamModel,
    solver: Solver<'a>,
}

/// The case that presses most, of those that a roof sees for long: with snow where there is any.
fn heaviest(cases: &[BeamCase]) -> Option<&BeamCase> {
    let total = |case: &BeamCase| case.rafters.iter().sum::<Force>().to_pounds();
    let lasting = cases.iter().filter(|case| case.duration != Duration::TenMinutes && !case.is_uplift);
    most(lasting, |case| total(case))
}

struct Work<'a> {
    loads: &'a BeamLoads<'a>,
    benches: Vec<Bench<'a>>,
    dead: Pair<Vec<Force>>,
    line: BeamLine,
    /// The loads of each case where they stand: the same in all models, whose braces bear none.
    placed: Vec<Option<PlacedLoads>>,
}

impl<'a> Work<'a> {
    fn new(loads: &'a BeamLoads<'a>, models: &'a Models, stiffness: &Stiffnesses) -> Self {
        let bench = |(braces, model): &'a (BraceModel, BeamModel)| Bench {
            braces: *braces,
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
            uncut: Vec::new(),
            second_order: None,
            on_faces: None,
            along_steps: Vec::new(),
            not_judged: Vec::new(),
            roof_dead: Pair { heavy: dead.heavy.iter().sum(), light: dead.light.iter().sum() },
        };
        Self { loads, benches, dead, line, placed: Vec::new() }
    }

    /// Places of new cases.
    fn add(&mut self, cases: Vec<BeamCase>) -> Range<usize> {
        let first = self.line.cases.len();
        let placed: Vec<_> = cases.iter().map(|case| self.place(case)).collect();
        self.placed.extend(placed);
        self.line.cases.extend(cases);
        first..self.line.cases.len()
    }

    /// The loads of one case on the model with the most members; nothing where it cannot take them.
    fn place(&mut self, case: &BeamCase) -> Option<PlacedLoads> {
        let bench = self.benches.iter_mut().max_by_key(|bench| bench.model.frame.members.len())?;
        bench.solver.place(&self.loads.frame_case(bench.model, case, &self.dead)).ok()
    }

    /// Solves cases with each of the models.
    fn solve(&mut self, models: &[BraceModel], cases: Range<usize>) {
        for braces in models {
            let fits = |bench: &&mut Bench| bench.braces == *braces;
            let Some(Bench { model, solver, .. }) = self.benches.iter_mut().find(fits) else {
                self.line.not_judged.push(not_built(*braces).into());
                continue;
            };
            for index in cases.clone() {
                let case = &self.line.cases[index];
                let load = || self.loads.frame_case(model, case, &self.dead);
                match placed_on(solver, self.placed[index].as_ref(), load)
                    .and_then(|placed| solver.solve_placed(&placed))
                {
                    Ok(solution) => {
                        let on_laps = self.loads.on_laps(case, &self.dead);
                        let solved = collect((model, on_laps), &solution, *braces, (index, case));
                        let let_go = let_go((self.loads, &self.dead), model, &solved, (index, case));
                        self.line.solved.push(let_go.unwrap_or(solved));
                    }
                    Err(error) => {
                        self.line.not_judged.push(unsolved(*braces, model, &error).into());
                        break;
                    }
                }
            }
        }
    }

    /// What the beam in one stick would bend under cases that are known.
    fn solve_uncut(&mut self, model: &BeamModel, braces: BraceModel, cases: Range<usize>) {
        let mut solver = Solver::new(&model.frame);
        for index in cases {
            let load = || self.loads.frame_case(model, &self.line.cases[index], &self.dead);
            match placed_on(&mut solver, self.placed[index].as_ref(), load)
                .and_then(|placed| solver.moments_at_ends(&placed))
            {
                Ok(all) => {
                    let moments = model.beam.iter().map(|stretch| all[stretch.member]).collect();
                    self.line.uncut.push(Uncut { case: index, model: braces, moments });
                }
                Err(error) => {
                    self.line.not_judged.push(unsolved(braces, model, &error).into());
                    break;
                }
            }
        }
    }

    /// Pushes along the wall: each by itself, made worse by the sway of the weight where that counts.
    fn run_along(&mut self, along: AlongCases) {
        self.line.along_steps = along.steps;
        self.line.on_faces = along.on_faces;
        self.line.not_judged.extend(along.not_judged);
        let Some(at) = self.benches.iter().position(|bench| bench.braces == BraceModel::PushOnly) else {
            self.line.not_judged.push(not_built(BraceModel::PushOnly).into());
            return;
        };
        let mut bench = self.benches.swap_remove(at);
        let line = match self.leaning(bench.model, &mut bench.solver) {
            Ok(line) => line,
            Err(sentence) => return self.line.not_judged.push(sentence.into()),
        };
        let mut says: Vec<String> = Vec::new();
        let mut all: Vec<Pushed> = Vec::new();
        for case in along.cases {
            match self.sway(&mut bench, &line, case) {
                Ok(pushed) => all.push(pushed),
                Err(sentence) if !says.contains(&sentence) => says.push(sentence),
                Err(_) => {}
            }
        }
        self.line.second_order = most(all.iter(), |pushed| pushed.found.theta).map(Pushed::working);
        self.line.not_judged.extend(says.into_iter().map(Unmade::from));
    }

    /// The line as a storey, from a push alone each way: which braces act does not hang on how hard it pushes.
    fn leaning(&self, model: &BeamModel, solver: &mut Solver<'_>) -> Result<Leaning, String> {
        let tried = Force::pounds(1000.0);
        let mut sway = |push: Force| {
            let load = self.loads.frame_case(model, &self.loads.push_alone(push), &self.dead);
            let solution = solver.solve(&load).map_err(|error| unsolved(BraceModel::PushOnly, model, &error))?;
            Ok::<Length, String>(solution.movement(first_node(model)).x.abs())
        };
        let sways = [sway(-tried)?, sway(tried)?];
        let heights = || model.posts.iter().map(|post| post.height);
        let tallest = heights().fold(Length::ZERO, Length::max);
        let height = heights().fold(tallest, Length::min);
        Ok(Leaning { tried, sways, slack: self.loads.slack_sway(tallest), height })
    }

    fn sway(&mut self, bench: &mut Bench<'_>, line: &Leaning, mut case: BeamCase) -> Result<Pushed, String> {
        let index = self.line.cases.len();
        let dead = if case.is_uplift { &self.dead.light } else { &self.dead.heavy };
        let roof = dead.iter().sum::<Force>() + self.loads.own_weight(case.is_uplift);
        let weight = roof * case.dead + case.rafters.iter().sum::<Force>();
        let pushed = line.pushed(case.push, weight)?;
        case.push = pushed.push;
        let placed = bench.solver.place(&self.loads.frame_case(bench.model, &case, &self.dead));
        let unsolved = |error| unsolved(bench.braces, bench.model, &error);
        let placed = placed.map_err(unsolved)?;
        let solution = bench.solver.solve_placed(&placed).map_err(unsolved)?;
        let on_laps = self.loads.on_laps(&case, &self.dead);
        let solved = collect((bench.model, on_laps), &solution, bench.braces, (index, &case));
        self.line.cases.push(case);
        self.placed.push(Some(placed));
        self.line.solved.push(solved);
        Ok(pushed)
    }
}

/// Loads that are placed already, or else these on this frame.
fn placed_on(
    solver: &mut Solver<'_>,
    placed: Option<&PlacedLoads>,
    load: impl FnOnce() -> LoadCase,
) -> Result<PlacedLoads, FrameError> {
    placed.map_or_else(|| solver.place(&load()), |placed| Ok(placed.clone()))
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
    Some(collect((&free, loads.on_laps(&hanging, dead)), &solution, solved.model, (index, case)))
}

/// A model that [`Models`] leaves out must not pass in silence.
fn not_built(braces: BraceModel) -> String {
    format!("the beam line with {} has no answer: its frame was not built", braces.words())
}

/// The beam's left end.
fn first_node(model: &BeamModel) -> usize {
    model.beam.first().and_then(|stretch| model.frame.members.get(stretch.member)).map_or(0, |member| member.from)
}

/// A frame's own names of nodes and axes help nobody: the stick that moves is named by its mark.
fn unsolved(braces: BraceModel, model: &BeamModel, error: &FrameError) -> String {
    let moves = match error {
        FrameError::Mechanism(mechanism) => mechanism.member.and_then(|member| model.frame.members.get(member)),
        _ => None,
    };
    let why = moves.map_or_else(
        || error.to_string(),
        |stick| {
            format!(
                "{} can move: too few posts or braces hold it, or too many scarfs, which are hinges, part it",
                stick.name
            )
        },
    );
    if model.braces.is_empty() {
        return format!("the beam line, in which no post has a brace, has no answer: {why}");
    }
    format!("the beam line with {} has no answer: {why}", braces.words())
}

fn post_part(post: &PostParts, solution: &Solution) -> PostPart {
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
}

fn collect(
    (model, on_laps): (&BeamModel, Vec<Vec<(Length, Force)>>),
    solution: &Solution,
    braces: BraceModel,
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
    let posts: Vec<PostPart> = model.posts.iter().map(|post| post_part(post, solution)).collect();
    let pocket = |edges: &[(usize, Length); 2]| {
        let at = |(stretch, place): (usize, Length)| {
            curves.get(stretch).map_or_else(Default::default, |(moment, shear)| (moment.at(place), shear.at(place)))
        };
        let (a, b) = (at(edges[0]), at(edges[1]));
        (if b.0.abs() > a.0.abs() { b.0 } else { a.0 }, if b.1.abs() > a.1.abs() { b.1 } else { a.1 })
    };
    let beyond = |(stretch, place, is_right): &(usize, Length, bool)| {
        let sides = curves.get(*stretch).map(|(_, shear)| shear.sides(*place)).unwrap_or_default();
        if *is_right { sides.1 } else { -sides.0 }
    };
    let passed = model.laps.iter().zip(on_laps).map(|(root, on_lap)| Passed { beyond: beyond(root), on_lap });
    let along = |members: &Vec<usize>| members.iter().map(|member| solution.axial_at_start(*member)).sum();
    Solved {
        case: index,
        model: braces,
        beam,
        pockets: model.pockets.iter().map(pocket).collect(),
        laps: passed.collect(),
        braces: model.braces.iter().map(along).collect(),
        sway: solution.movement(first_node(model)).x.abs(),
        weight: posts.iter().map(|post| post.foot).sum(),
        posts,
    }
}

//! The loads of the beam line, pruned to those that can govern.
use super::beam_model::BeamModel;
use super::loading::{Loading, loadings};
use super::rafter_line::{RafterLine, StripReactions, carried_widths};
use super::roof_cases::RoofLoads;
use super::roof_dead::Pair;
use super::sway::slack_sway;
use crate::design::Shape;
use crate::frame::{LoadCase, MemberLoad, NodeLoad, Settlement};
use crate::geometry::{BraceLine, PostShape, ScarfReport, Spans, rakes};
use crate::loads::{ALLOWABLE_WIND, Action, Duration, Edition, settlement};
use crate::project::{Blocks, Project};
use crate::units::{Angle, Density, Force, Length, LineLoad, Moment, most};
use crate::wording::length;
use crate::working::{Confidence, weakest};

/// What a case is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Purpose {
    /// Strength under weight and wind on the roof.
    Strength,
    /// One post sunk under a strength case.
    Sunk,
    /// Deflection under live load alone.
    LiveMovement,
    /// Deflection under live load and twice the dead load, for creep.
    TotalMovement,
    /// A push along the wall.
    Along,
}

/// Everything that acts on the beam line at the same time.
#[derive(Clone, Debug, PartialEq)]
pub struct BeamCase {
    /// The combination, with its cases.
    pub name: String,
    /// Sets C_D.
    pub duration: Duration,
    /// Factor on the dead load.
    pub dead: f64,
    /// The dead load is the light one.
    pub is_uplift: bool,
    /// What each rafter brings beside its dead load, plus down.
    pub rafters: Vec<Force>,
    /// Factor on the wind, which blows on the posts' own faces too; zero where none blows.
    pub wind: f64,
    /// Push along the beam, plus to the right.
    pub push: Force,
    /// A post that sinks, and how far.
    pub sinks: Option<(usize, Length)>,
    /// What it is for.
    pub purpose: Purpose,
    /// Of the weakest of its loads.
    pub confidence: Confidence,
}

/// What the blocks on the beam weigh, half of each at the rafter on either side.
pub(super) fn blocks_at_rafters(project: &Project, shape: &Shape, wood: Density) -> Vec<Force> {
    let (frame, rafters) = (&project.frame, &shape.rafters);
    let mut at_rafters = vec![Force::ZERO; rafters.len()];
    if frame.blocks == Blocks::None {
        return at_rafters;
    }
    let weight = wood.line_load(frame.timbers.block.sawn.area());
    for (index, pair) in rafters.windows(2).enumerate() {
        let half = weight * ((pair[1] - pair[0] - frame.timbers.rafter.sawn.breadth) / 2.0);
        at_rafters[index] += half;
        at_rafters[index + 1] += half;
    }
    at_rafters
}

/// What one brace weighs: half hangs on the beam, half stands on its post.
pub(super) fn one_brace(project: &Project, shape: &Shape, wood: Density) -> Force {
    wood.line_load(project.frame.timbers.brace.sawn.area()) * shape.brace.long_edge()
}

/// What every case of the beam line shares.
pub struct BeamLoads<'a> {
    project: &'a Project,
    shape: &'a Shape,
    loads: &'a RoofLoads,
    /// The rafter in the section.
    pub line: RafterLine,
    /// Reaction of each roof case on a strip one unit wide.
    reactions: Vec<StripReactions>,
    widths: Vec<Length>,
    left_rake: Length,
    /// Heads of the braces along the beam.
    heads: Vec<Length>,
}

/// Creep of green timber doubles what the dead load bends.
const CREEP: f64 = 2.0;

impl<'a> BeamLoads<'a> {
    /// Of this project.
    #[must_use]
    pub fn new(project: &'a Project, shape: &'a Shape, loads: &'a RoofLoads) -> Self {
        let line = RafterLine::new(shape, loads.lean_to.roof_length().length());
        let edges = rakes(&project.roofing, &shape.rafters, project.frame.timbers.rafter.sawn.breadth / 2.0);
        let reactions = loads.cases.iter().map(|case| line.reactions(&case.down, &case.square)).collect();
        let widths = carried_widths(&shape.rafters, edges);
        let braces = BraceLine::of(&project.frame);
        let heads = shape.braces.iter().map(|brace| braces.head_x(brace, &shape.posts)).collect();
        Self { project, shape, loads, line, reactions, widths, left_rake: edges.0, heads }
    }

    /// Width of roof that each rafter carries.
    #[must_use]
    pub fn widths(&self) -> &[Length] {
        &self.widths
    }

    /// What each rafter's dead load puts on the beam.
    #[must_use]
    pub fn dead(&self, is_uplift: bool) -> Vec<Force> {
        let dead = &self.loads.dead;
        let on_plan = crate::loads::Spread::uniform(Length::ZERO, self.line.eave, dead.cover.of(is_uplift));
        let strip = self.line.reactions(&on_plan, &crate::loads::Spread::default()).beam;
        let own = dead.rafter.of(is_uplift) * self.line.eave;
        let arm = (self.line.eave / 2.0 - self.line.ledger) / self.line.span();
        let blocks = self.blocks(is_uplift);
        self.widths.iter().zip(blocks).map(|(width, blocks)| strip * *width + own * arm + blocks).collect()
    }

    fn blocks(&self, is_uplift: bool) -> Vec<Force> {
        blocks_at_rafters(self.project, self.shape, self.loads.dead.wood.of(is_uplift))
    }

    fn brace(&self, is_uplift: bool) -> Force {
        one_brace(self.project, self.shape, self.loads.dead.wood.of(is_uplift))
    }

    /// What the beam, its braces and the posts weigh themselves.
    #[must_use]
    pub fn own_weight(&self, is_uplift: bool) -> Force {
        let (wood, timbers) = (self.loads.dead.wood.of(is_uplift), &self.project.frame.timbers);
        let posts: Length = self.shape.posts.iter().map(PostShape::body).sum();
        wood.line_load(timbers.beam.sawn.area()) * self.project.frame.beam_length
            + wood.line_load(timbers.post.sawn.area()) * posts
            + self.brace(is_uplift) * self.shape.braces.len() as f64
    }

    /// All that weighs on the piers without other loads: the roof's dead load on the beam, and what stands under it.
    #[must_use]
    pub fn whole_dead(&self, is_uplift: bool) -> Force {
        self.dead(is_uplift).iter().sum::<Force>() + self.own_weight(is_uplift)
    }

    fn even(&self, strip: LineLoad) -> Vec<Force> {
        self.widths.iter().map(|width| strip * *width).collect()
    }

    fn beam_strip(&self, loading: &Loading) -> LineLoad {
        loading.parts.iter().map(|(factor, index)| self.reactions[*index].beam * *factor).sum()
    }

    /// Strength cases of loads that are the same all along the wall, as far as they can govern: of the combinations with
    /// the same dead load one that brings less the same way and has no smaller C_D lies between the dead load alone and
    /// the other.
    #[must_use]
    pub fn even_cases(&self, edition: Edition) -> Vec<BeamCase> {
        let all: Vec<(LineLoad, Loading)> = loadings(edition, &self.loads.cases, self.loads.dead.sure)
            .into_iter()
            .map(|loading| (self.beam_strip(&loading), loading))
            .filter(|(strip, loading)| !loading.is_uplift || strip.is_negative())
            .collect();
        let covers = |(place, (strip, loading)): (usize, &(LineLoad, Loading)),
                      (own_place, own): (usize, &(LineLoad, Loading))| {
            let alike = loading.dead == own.1.dead
                && loading.is_uplift == own.1.is_uplift
                && strip.is_negative() == own.0.is_negative()
                && loading.duration <= own.1.duration;
            let more = strip.abs() > own.0.abs() || (*strip == own.0 && place < own_place);
            place != own_place && alike && more && !own.1.parts.is_empty()
        };
        let governs = |own: &(usize, &(LineLoad, Loading))| !all.iter().enumerate().any(|other| covers(other, *own));
        let kept = all.iter().enumerate().filter(governs);
        kept.map(|(_, (strip, loading))| self.case(loading, self.even(*strip), Purpose::Strength)).collect()
    }

    fn case(&self, loading: &Loading, rafters: Vec<Force>, purpose: Purpose) -> BeamCase {
        BeamCase {
            name: loading.name.clone(),
            duration: loading.duration,
            dead: loading.dead,
            is_uplift: loading.is_uplift,
            rafters,
            wind: loading.factor(&self.loads.cases, Action::Wind),
            push: Force::ZERO,
            sinks: None,
            purpose,
            confidence: loading.confidence,
        }
    }

    /// Balanced snow whole on some spans and half on others.
    #[must_use]
    pub fn partial_cases(&self, edition: Edition) -> Vec<BeamCase> {
        let Some(balanced) = self.loads.cases.iter().position(|case| case.action == Action::Snow) else {
            return Vec::new();
        };
        let factor = loadings(edition, &self.loads.cases[balanced..=balanced], self.loads.dead.sure)
            .iter()
            .flat_map(|loading| loading.parts.iter().map(|(factor, _)| *factor))
            .fold(0.0, f64::max);
        let spans = Spans::of(&self.shape.posts, self.project.frame.beam_length);
        let strip = self.reactions[balanced].beam * factor;
        let symbol = if factor == 1.0 { "D + S".to_owned() } else { format!("D + {factor}S") };
        let make = |pattern: &crate::loads::snow::Pattern| {
            let share = |x: Length| pattern.shares.get(spans.holding(x)).copied().unwrap_or(1.0);
            let each = self.shape.rafters.iter().zip(&self.widths);
            let rafters = each.map(|(x, width)| strip * *width * share(*x)).collect();
            let loading = Loading {
                name: format!("{symbol}: balanced snow, {}", pattern.name),
                dead: 1.0,
                is_uplift: false,
                parts: Vec::new(),
                duration: Duration::TwoMonths,
                confidence: self.loads.cases[balanced].confidence.max(Confidence::Medium),
            };
            self.case(&loading, rafters, Purpose::Strength)
        };
        spans.partial().iter().map(make).collect()
    }

    /// The heaviest snow case with each post sunk in turn.
    #[must_use]
    pub fn sunk_cases(&self, heaviest: &BeamCase) -> Vec<BeamCase> {
        let settled = settlement(self.project.ground.is_frost_prone);
        let (sinks, sure) = (settled.value, weakest(&settled.steps));
        let depth = length(sinks, self.project.units);
        let sunk = |post: usize| BeamCase {
            name: format!("{}, post P{} sunk {depth}", heaviest.name, post + 1),
            sinks: Some((post, sinks)),
            purpose: Purpose::Sunk,
            confidence: heaviest.confidence.max(sure),
            ..heaviest.clone()
        };
        (0..self.shape.posts.len()).map(sunk).collect()
    }

    /// The live load of a case alone, or the wind where that moves the beam more; and the live load with creep of the dead one.
    #[must_use]
    pub fn movement_cases(&self, heaviest: &BeamCase) -> [BeamCase; 2] {
        let beside_dead = heaviest.name.strip_prefix("D + ");
        let live = beside_dead.unwrap_or("nothing beside the dead load").to_owned();
        let total = beside_dead.map_or_else(|| format!("{CREEP}D"), |live| format!("{CREEP}D + {live}"));
        let live = BeamCase { name: live, dead: 0.0, purpose: Purpose::LiveMovement, ..heaviest.clone() };
        let total = BeamCase { name: total, dead: CREEP, purpose: Purpose::TotalMovement, ..heaviest.clone() };
        [self.wind_beyond(&live).unwrap_or(live), total]
    }

    /// The wind of the whole frame that brings most to the beam, up or down, by itself: at the level of allowable stress, since
    /// the 0.42 of IBC Table 1604.3 is for the wind on components. None where another load brings more: all are even along the
    /// wall, and so one moves the beam more than the other everywhere.
    fn wind_beyond(&self, other: &BeamCase) -> Option<BeamCase> {
        let winds = self.loads.cases.iter().zip(&self.reactions).filter(|(case, _)| case.action == Action::Wind);
        let (case, reactions) = most(winds, |(_, reactions)| reactions.beam.abs().to_plf())?;
        let rafters = self.even(reactions.beam * ALLOWABLE_WIND);
        let total = |rafters: &[Force]| rafters.iter().sum::<Force>().abs();
        (total(&rafters) > total(&other.rafters)).then(|| BeamCase {
            name: format!("{ALLOWABLE_WIND}W: {}", case.name),
            duration: Duration::TenMinutes,
            rafters,
            wind: ALLOWABLE_WIND,
            confidence: case.confidence,
            ..other.clone()
        })
    }

    /// A push along the beam and nothing else.
    #[must_use]
    pub fn push_alone(&self, push: Force) -> BeamCase {
        BeamCase {
            name: String::new(),
            duration: Duration::TenMinutes,
            dead: 0.0,
            is_uplift: false,
            rafters: vec![Force::ZERO; self.widths.len()],
            wind: 0.0,
            push,
            sinks: None,
            purpose: Purpose::Along,
            confidence: Confidence::High,
        }
    }

    /// How far a line of that height leans before its braces touch.
    #[must_use]
    pub fn slack_sway(&self, height: Length) -> Length {
        slack_sway(self.project, height).value
    }

    /// Rafters under a wind along the wall.
    #[must_use]
    pub fn side_rafters(&self, case: &crate::loads::wind::WindCase) -> Vec<Force> {
        let one = crate::loads::Spread::uniform(Length::ZERO, self.line.eave, crate::units::AreaLoad::psf(1.0));
        let strip = self.line.reactions(&crate::loads::Spread::default(), &one).beam;
        let each = self.shape.rafters.iter().zip(&self.widths);
        each.map(|(x, width)| strip * *width * case.pressure.at(*x - self.left_rake).to_psf()).collect()
    }

    /// What each rafter puts on the beam in a case, with its place.
    fn on_rafters(&self, case: &BeamCase, dead: &Pair<Vec<Force>>) -> impl Iterator<Item = (Length, Force)> {
        let own = if case.is_uplift { &dead.light } else { &dead.heavy };
        let extra = self.shape.rafters.iter().zip(&case.rafters).zip(own);
        extra.map(|((x, extra), own)| (*x, *own * case.dead + *extra))
    }

    /// What lies on the upper half of each scarf, with its places: the rafters on its lap, and half of the wood there.
    #[must_use]
    pub fn on_laps(&self, case: &BeamCase, dead: &Pair<Vec<Force>>) -> Vec<Vec<(Length, Force)>> {
        let wood = self.loads.dead.wood.of(case.is_uplift).line_load(self.project.frame.timbers.beam.sawn.area());
        let of = |scarf: &ScarfReport| {
            let rafters = self.on_rafters(case, dead).filter(|(x, _)| *x >= scarf.low && *x <= scarf.high);
            rafters.chain([(scarf.place.centre, wood * (scarf.high - scarf.low) * (case.dead / 2.0))]).collect()
        };
        self.shape.beam.scarfs.iter().map(of).collect()
    }

    /// A case as the frame takes it.
    #[must_use]
    pub fn frame_case(&self, model: &BeamModel, case: &BeamCase, dead: &Pair<Vec<Force>>) -> LoadCase {
        let mut load = LoadCase {
            members: Vec::with_capacity(self.shape.rafters.len() + model.beam.len()),
            nodes: Vec::with_capacity(model.posts.len() + 1),
            settlements: Vec::new(),
        };
        let hung = self.brace(case.is_uplift) * (case.dead / 2.0);
        let heads = self.heads.iter().map(|x| (*x, hung)).filter(|_| case.dead != 0.0);
        for (x, force) in self.on_rafters(case, dead).chain(heads) {
            if let Some(stretch) = model.beam.iter().find(|stretch| x <= stretch.to).or(model.beam.last()) {
                let at = (x - stretch.from).clamp(Length::ZERO, stretch.to - stretch.from);
                load.members.push(MemberLoad::down(stretch.member, at, force));
            }
        }
        let wood = self.loads.dead.wood.of(case.is_uplift);
        if case.dead != 0.0 {
            let beam = wood.line_load(self.project.frame.timbers.beam.sawn.area()) * case.dead;
            for stretch in &model.beam {
                load.members.push(MemberLoad::even(stretch.member, Length::ZERO, stretch.to - stretch.from, beam));
            }
            // At its foot: a post's own weight neither presses on its shoulder nor holds down what lifts off it.
            for (number, post) in (1..).zip(&model.posts) {
                let n_braces = self.shape.braces.iter().filter(|brace| brace.post == number).count();
                let own = wood.line_load(self.project.frame.timbers.post.sawn.area()) * post.height * case.dead;
                let weight = own + hung * n_braces as f64;
                load.nodes.push(NodeLoad { node: post.foot, x: Force::ZERO, z: -weight, moment: Moment::ZERO });
            }
        }
        if let (Some(stretch), true) = (model.beam.first(), case.push != Force::ZERO) {
            let node = model.frame.members.get(stretch.member).map_or(0, |member| member.from);
            load.nodes.push(NodeLoad { node, x: case.push, z: Force::ZERO, moment: Moment::ZERO });
        }
        if let Some((post, z)) = case.sinks.and_then(|(post, z)| Some((model.posts.get(post)?, z))) {
            load.settlements.push(Settlement {
                node: post.foot,
                x: Length::ZERO,
                z: -z,
                rotation: Angle::radians(0.0),
            });
        }
        load
    }
}

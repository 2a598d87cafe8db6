//! What one fixing of the ledger carries: a lag screw or a through bolt by the NDS, a maker's own screw by its maker.
//!
//! Over packing, which carries nothing, by the equations for a gap. What is not known of the wall, the width of its posts, is
//! left out: their edges are not judged. The wall's posts count as dry.
use std::cell::OnceCell;

use super::check::Way;
use super::known::{chosen, gravity, moisture};
use super::ledger::Ledger;
use super::wood::wall_post;
use crate::fastening::{
    Factors, Fastener, FastenerKind, FixingRow, Member, Moisture, Pull, Refused, RowLayout, Wetness, adjusted_lateral,
    adjusted_withdrawal, lag_thread_in_main, load_duration, penetration, single_shear, single_shear_over_gap,
    steel_tension, washer_area, wet_lateral, wet_withdrawal, withdrawal,
};
use crate::loads::Duration;
use crate::members::{Seat, bearing_across_strength};
use crate::project::{LedgerFixings, MakersScrew, Used};
use crate::units::{Angle, Fixed, Force, Length, Stress};
use crate::unmade::{Input, Unmade};
use crate::working::{Citation, Step, Worked};

/// Packing thinner than this closes when the fixings are driven (common practice).
const CLOSES: Length = Length::inches(1.0 / 16.0);
/// A nut and two washers take this many diameters of a bolt's length (common practice).
const NUT: f64 = 1.5;

/// Which way the load on the fixings of one post goes.
#[derive(Clone, Copy)]
pub(super) struct Aim {
    pub(super) way: Way,
    /// Away from upright, along the wall.
    pub(super) tilt: Angle,
}

impl Aim {
    pub(super) const fn upright(way: Way) -> Self {
        Self { way, tilt: Angle::ZERO }
    }

    pub(super) fn is_tilted(self) -> bool {
        self.tilt > Angle::ZERO
    }
}

/// Where the values come from.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Sort {
    Lag,
    Bolt,
    Makers,
}

/// The fixings at one post of the wall, with what is the same under every combination.
pub(super) struct Fixing<'a> {
    pub(super) ledger: &'a Ledger<'a>,
    pub(super) one: Fastener,
    sort: Sort,
    wall_gravity: f64,
    gravity: f64,
    moisture: Moisture,
    /// Packing between ledger and wall: it carries nothing and counts as a gap.
    packing: Length,
    /// Thickness of the ledger.
    pub(super) side: Length,
    /// Values under an upright load, down and up, at a load duration of 1.0: worked out once.
    upright: [OnceCell<Result<Pull, Unmade>>; 2],
}

/// A lateral value on its way to what is allowed.
struct Sideways {
    reference: Force,
    /// Bearing length l of the rules for places.
    length: Length,
    penetration: f64,
    steps: Vec<Step>,
}

impl<'a> Fixing<'a> {
    pub(super) fn new(ledger: &'a Ledger<'a>) -> Result<Self, Unmade> {
        let project = ledger.project;
        let fixings = &project.fixings.ledger;
        let one = fastener_of(fixings)?;
        if fixings.rows == 0 || fixings.columns == 0 {
            return Err(Unmade::missing(Input::LedgerRows, "the rows of the ledger's fixings are missing"));
        }
        let sort = match one.kind {
            _ if fixings.is_makers() => Sort::Makers,
            FastenerKind::Bolt => Sort::Bolt,
            _ => Sort::Lag,
        };
        if sort == Sort::Bolt && fixings.washer <= Length::ZERO {
            let says = format!("a {} is held by its washers, whose size is missing", one.name);
            return Err(Unmade::missing(Input::LedgerWasher, says));
        }
        let packing = project.frame.ledger_packing;
        if fixings.wall_species.is_empty() {
            let says = "the wood of the wall's posts is missing: choose its species";
            return Err(Unmade::missing(Input::WallWood, says));
        }
        let wall_gravity = gravity(&fixings.wall_species, None, "the wall's posts")?;
        let gravity = gravity(&project.frame.species, Some(&project.frame.timbers.ledger), "the ledger")?;
        let side = ledger.member.section().breadth;
        let moisture = moisture(project, Used::Ledger)?;
        let upright = [OnceCell::new(), OnceCell::new()];
        let fixing = Self { ledger, one, sort, wall_gravity, gravity, moisture, packing, side, upright };
        match sort {
            Sort::Bolt => fixing.reaches_through()?,
            Sort::Makers => fixing.is_stated()?,
            Sort::Lag => {}
        }
        Ok(fixing)
    }

    pub(super) const fn fixings(&self) -> &LedgerFixings {
        &self.ledger.project.fixings.ledger
    }

    /// The rule for pull and push at once.
    pub(super) const fn kind(&self) -> FastenerKind {
        match self.sort {
            Sort::Lag => FastenerKind::LagScrew,
            Sort::Bolt => FastenerKind::Bolt,
            Sort::Makers => FastenerKind::WoodScrew,
        }
    }

    /// Whether its pull knows a load duration: the washers and the steel of a bolt do not.
    pub(super) fn pull_minds_duration(&self) -> bool {
        self.sort != Sort::Bolt
    }

    fn reaches_through(&self) -> Result<(), Unmade> {
        let through = self.side + self.packing + self.fixings().wall_depth;
        let nut = self.one.diameter * NUT;
        if self.fixings().length + Length::inches(1e-9) >= through + nut {
            return Ok(());
        }
        Err(Unmade::from(format!(
            "a {} {} in long does not come out behind: ledger, packing and the wall's post are {} in, washers and nut \
             ask for {} in more",
            self.one.name,
            Fixed(self.fixings().length.to_inches(), 2),
            Fixed(through.to_inches(), 2),
            Fixed(nut.to_inches(), 2)
        )))
    }

    /// The maker's values are there, and for members that touch.
    fn is_stated(&self) -> Result<(), Unmade> {
        let makers = &self.fixings().makers;
        let unsaid = |says: &str| Err(Unmade::missing(Input::MakersScrew, says));
        if makers.sideways <= Force::ZERO {
            return unsaid("the allowable load sideways of the maker's screw is missing: its maker states it");
        }
        if makers.pull <= Force::ZERO {
            return unsaid("the allowable pull of the maker's screw is missing: its maker states it");
        }
        if makers.source.trim().is_empty() {
            return unsaid("where the values of the maker's screw stand is missing: name the maker's sheet");
        }
        if self.packing > CLOSES {
            return Err(
                "the maker's values are for a ledger that lies on the wall: over packing they are missing".into()
            );
        }
        Ok(())
    }

    /// Each row over the edge that presses on the wall: the lower one when the reaction goes down.
    pub(super) fn rows(&self, way: Way) -> Vec<FixingRow> {
        let depth = self.ledger.member.section().depth;
        let count = u32::try_from(self.fixings().columns).unwrap_or(u32::MAX);
        let over_edge = |row: usize| {
            let height = self.fixings().height(row);
            if way == Way::Down { height } else { depth - height }
        };
        (0..self.fixings().rows).map(|row| FixingRow { height: over_edge(row), count }).collect()
    }

    /// What one carries under an upright load at a load duration of 1.0, to find what governs.
    pub(super) fn rough(&self, way: Way) -> Result<Pull, Unmade> {
        let place = usize::from(way == Way::Up);
        self.upright[place].get_or_init(|| Ok(self.values(Aim::upright(way), Duration::TenYears)?.value)).clone()
    }

    /// What one carries out of the wall and along it.
    pub(super) fn values(&self, aim: Aim, duration: Duration) -> Result<Worked<Pull>, Unmade> {
        let duration = load_duration(duration.factor())?;
        let out = match self.sort {
            Sort::Lag => self.thread(duration.value)?,
            Sort::Bolt => self.held_by_washers()?,
            Sort::Makers => self.makers_pull(duration.value)?,
        };
        let aside = self.lateral(aim, duration.value)?;
        let value = Pull { withdrawal: out.value, lateral: aside.value };
        Ok(Worked::new(value, [duration.steps, out.steps, aside.steps].into_iter().flatten().collect()))
    }

    fn thread(&self, duration: f64) -> Result<Worked<Force>, Refused> {
        let thread = lag_thread_in_main(&self.one, self.fixings().length, self.side + self.packing)?;
        let held = thread.value.min(self.fixings().wall_depth);
        let out = withdrawal(&self.one, self.wall_gravity)?;
        let wet = wet_withdrawal(self.kind(), DRY)?;
        let factors = Factors { load_duration: duration, wet: wet.value, ..Factors::default() };
        let allowed = adjusted_withdrawal(out.value, held, &factors)?;
        let all = [thread.steps, out.steps, wet.steps, allowed.steps];
        Ok(Worked::new(allowed.value, all.into_iter().flatten().collect()))
    }

    fn makers_pull(&self, duration: f64) -> Result<Worked<Force>, Refused> {
        let MakersScrew { pull, source, .. } = &self.fixings().makers;
        let wet = wet_withdrawal(self.kind(), DRY)?;
        let value = *pull * (duration * wet.value);
        let says = format!("{}·C_D·C_M = {} lb: {source}", Fixed(pull.to_pounds(), 0), Fixed(value.to_pounds(), 0));
        let mut steps = wet.steps;
        steps.push(Step::new("allowable pull of one", says, MAKERS));
        Ok(Worked::new(value, steps))
    }

    /// What the washers and the steel of a bolt hold, the least.
    fn held_by_washers(&self) -> Result<Worked<Force>, Unmade> {
        let washers = self.washers()?;
        let steel = self.steel()?;
        let value = washers.value.min(steel.value);
        let says = format!(
            "washers {} lb, steel {} lb; the lesser {} lb, without C_D",
            Fixed(washers.value.to_pounds(), 0),
            Fixed(steel.value.to_pounds(), 0),
            Fixed(value.to_pounds(), 0)
        );
        let step = Step::new("allowable pull of one", says, Citation::from_memory("NDS 2018", "3.10.2, 4.3.1"));
        Ok(Worked::new(value, washers.steps.into_iter().chain(steel.steps).chain([step]).collect()))
    }

    /// The steel of one, pulled.
    pub(super) fn steel(&self) -> Result<Worked<Force>, Refused> {
        steel_tension(&self.one)
    }

    /// Whether its steel and its head are the maker's matter.
    pub(super) fn is_makers(&self) -> bool {
        self.sort == Sort::Makers
    }

    /// What the wood under one washer carries: of the ledger, and of the wall's post where a bolt has its nut.
    pub(super) fn washers(&self) -> Result<Worked<Force>, Unmade> {
        let washer = self.fixings().washer;
        if washer <= Length::ZERO {
            let says = "the washers of the ledger's fixings are missing: how wide they are";
            return Err(Unmade::missing(Input::LedgerWasher, says));
        }
        let area = washer_area(washer, self.one.diameter)?;
        let seat = |from_end| Seat { area: area.value, length: washer, from_end };
        let end = self.end().unwrap_or_default();
        let mut steps = area.steps;
        let under = |whose: &str, strength: Worked<Stress>, steps: &mut Vec<Step>| {
            let named = |step: Step| Step { gives: format!("{whose}: {}", step.gives).into(), ..step };
            steps.extend(strength.steps.into_iter().map(named));
            let force = strength.value * area.value;
            let says = format!(
                "F_c⊥'·A = {}·{} = {} lb",
                Fixed(strength.value.to_psi(), 0),
                Fixed(area.value.to_square_inches(), 2),
                Fixed(force.to_pounds(), 0)
            );
            steps.push(Step::new(
                format!("{whose}: under one washer"),
                says,
                Citation::from_memory("NDS 2018", "3.10.2"),
            ));
            force
        };
        let ledger = bearing_across_strength(&self.ledger.member, &seat(end))?;
        let mut value = under("ledger", ledger, &mut steps);
        if self.sort == Sort::Bolt {
            let post = wall_post(&self.fixings().wall_species)?;
            let strength = bearing_across_strength(&post, &seat(Length::feet(1.0)))?;
            value = value.min(under("wall's post", strength, &mut steps));
        }
        Ok(Worked::new(value, steps))
    }

    fn lateral(&self, aim: Aim, duration: f64) -> Result<Worked<Force>, Refused> {
        let Sideways { reference, length, penetration, mut steps } = match self.sort {
            Sort::Makers => self.makers_sideways(),
            Sort::Lag => {
                let depth = (self.fixings().length - self.side - self.packing).min(self.fixings().wall_depth);
                let held = penetration(&self.one, depth - self.one.tip)?;
                let Worked { value, steps } = held;
                self.yields(aim, value.bearing_length, value.factor, steps)?
            }
            Sort::Bolt => self.yields(aim, self.fixings().wall_depth, 1.0, Vec::new())?,
        };
        let geometry = self.geometry(aim, length)?;
        let group = self.group(aim)?;
        let layout = match (self.fixings().rows, self.fixings().columns) {
            (1, 1) => RowLayout::One,
            (1, _) => RowLayout::OneRowAlongGrain,
            _ => RowLayout::Other,
        };
        let wet = wet_lateral(&self.one, self.moisture, layout);
        let factors = Factors {
            load_duration: duration,
            wet: wet.value,
            group: group.value,
            geometry: geometry.value,
            penetration,
            ..Factors::default()
        };
        let allowed = adjusted_lateral(reference, &factors)?;
        steps.extend([geometry.steps, group.steps, wet.steps, allowed.steps].into_iter().flatten());
        Ok(Worked::new(allowed.value, steps))
    }

    fn makers_sideways(&self) -> Sideways {
        let MakersScrew { sideways, source, .. } = &self.fixings().makers;
        let says = format!("Z = {} lb, whichever way along the wall's face: {source}", Fixed(sideways.to_pounds(), 0));
        let length = self.side.min(self.fixings().length - self.side).max(Length::inches(0.1));
        let steps = vec![Step::new("Z, reference lateral value", says, MAKERS)];
        Sideways { reference: *sideways, length, penetration: 1.0, steps }
    }

    /// By the yield equations: the wall's post is the main member, loaded along its grain, the ledger the side, across it.
    fn yields(&self, aim: Aim, held: Length, penetration: f64, steps: Vec<Step>) -> Result<Sideways, Refused> {
        let main = Member::wood(self.wall_gravity, held, aim.tilt);
        let side = Member::wood(self.gravity, self.side, Angle::RIGHT - aim.tilt);
        let value = if self.packing > CLOSES {
            single_shear_over_gap(&self.one, &main, &side, self.packing)?
        } else {
            single_shear(&self.one, &main, &side)?
        };
        let steps = steps.into_iter().chain(value.steps).collect();
        Ok(Sideways { reference: value.value.reference, length: self.side.min(held), penetration, steps })
    }
}

const DRY: Moisture = Moisture { when_made: Wetness::Dry, in_use: Wetness::Dry };
const MAKERS: Citation = Citation::given("the maker's sheet", "as the user gave it");

/// The chosen fastener; a maker's own screw has its diameter and no steel of ours.
fn fastener_of(fixings: &LedgerFixings) -> Result<Fastener, Unmade> {
    if fixings.is_makers() {
        return Ok(fixings.makers.fastener());
    }
    chosen(&fixings.fastener, "screw of the ledger", Input::LedgerFixing).cloned()
}

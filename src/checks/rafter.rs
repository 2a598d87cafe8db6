//! Rafters: bending, shear at the notches, movement, seats, roll-over.
use super::bored::less_hole;
use super::check::{Check, Under, Way};
use super::governing::most;
use super::purlin_sag::WIND_FOR_SAG;
use super::wood::Woods;
use crate::analysis::{Found, Loading};
use crate::analysis::{
    RafterBeam, RafterForces, RafterLine, RoofCase, RoofLoads, carried_widths, component_cases, loadings,
    partial_on_rafters, person_at, rafter_frame,
};
use crate::design::Shape;
use crate::geometry::rakes;
use crate::loads::wind::effective_area;
use crate::loads::{Action, Duration, passing_snow};
use crate::members::{
    Amount, Bracing, Ceiling, DeflectionCase, Holding, Member, NetSection, Notch, NotchFace, NotchPlace, RoofMember,
    Seat, ShearPlace, UnbracedCase, Verdict, check_bearing_across, check_bending, check_deflection, check_notch_limits,
    check_shear, deflection_limit, holding_needed, stiffness,
};
use crate::project::{Project, Used};
use crate::units::{Force, Length, Moment};
use crate::unmade::Unmade;
use crate::working::{Citation, Step, Worked};

/// Where the rafters run out of wood for a tail (frame-model: the longest tail a notched rafter carries).
const LONGEST_TAIL: Length = Length::inches(24.0);
/// From here on a stretched face may have no notch (NDS 4.4.3, from memory).
const THICK: Length = Length::inches(3.5);
/// Name of the check of that.
pub const NOTCHED_IN_PULL: &str = "is notched in its stretched face over the beam";
/// Least wood left over the beam.
const LEAST_LEFT: Length = Length::inches(3.5);
/// Creep of green timber doubles what the dead load bends.
const CREEP: f64 = 2.0;
/// Name of the check of deep rafters.
const ROLLS: &str = "is held from rolling over";

/// Place and carried width of the rafter with the most roof.
pub(super) fn widest_rafter(project: &Project, shape: &Shape) -> (usize, Length) {
    let half = project.frame.timbers.rafter.sawn.breadth / 2.0;
    let widths = carried_widths(&shape.rafters, rakes(&project.roofing, &shape.rafters, half));
    let places = widths.into_iter().enumerate();
    most(places, |(_, width)| width.to_inches()).unwrap_or((0, Length::ZERO))
}

/// Forces of the rafter that carries most, for every combination.
pub struct RafterWork {
    /// Mark of the rafter.
    pub mark: String,
    /// The rafter in the section.
    pub line: RafterLine,
    /// Width of roof that it carries.
    width: Length,
    /// Every combination with its forces.
    pub found: Vec<(Loading, RafterForces)>,
    /// Sag under live load, and in the end.
    movements: Vec<(DeflectionCase, Loading, RafterForces)>,
    /// What is missing.
    pub missing: Vec<Unmade>,
}

/// Works out the rafter that carries the widest strip of roof.
///
/// # Errors
/// The sentence that says what is missing.
pub fn rafter_work(project: &Project, shape: &Shape, loads: &RoofLoads, woods: &Woods) -> Result<RafterWork, String> {
    let line = RafterLine::new(shape, loads.lean_to.roof_length().length());
    let (index, width) = widest_rafter(project, shape);
    let wood = woods.member(Used::Rafter, Duration::TwoMonths)?;
    let frame = rafter_frame(&line, wood.section(), stiffness(&wood).value);
    let beam = RafterBeam::new(line, &frame).map_err(|error| error.to_string())?;
    let mut work = RafterWork {
        mark: format!("R{}", index + 1),
        line,
        width,
        found: Vec::new(),
        movements: Vec::new(),
        missing: loads.not_judged.clone(),
    };
    let mut cases = cases(project, loads, &line, width, &mut work.missing);
    let [on_tail, between] = partial_on_rafters(&line, loads).map_or([None, None], |both| both.map(Some));
    cases.extend(on_tail);
    let for_strength = cases.len();
    // Snow gone from between the seats asks less of everything but the tail's movement.
    cases.extend(between);
    let solve = |loading: &Loading| beam.forces(loading, &cases, &loads.dead, width).map_err(|error| error.to_string());
    for loading in loadings(project.place.edition, &cases[..for_strength], loads.dead.sure) {
        let forces = solve(&loading)?;
        work.found.push((loading, forces));
    }
    for (index, case) in cases.iter().enumerate() {
        let share = match case.action {
            Action::Snow => passing_snow(project.place.edition),
            Action::RoofLive => 1.0,
            Action::Wind => WIND_FOR_SAG,
            _ => continue,
        };
        let of = |dead: f64| Loading {
            name: if case.action == Action::Wind { format!("0.42W: {}", case.name) } else { case.name.clone() },
            dead,
            is_uplift: false,
            parts: vec![(share, index)],
            duration: Duration::TwoMonths,
            confidence: case.confidence,
        };
        for (kind, dead) in [(DeflectionCase::SnowOrWind, 0.0), (DeflectionCase::DeadAndLive, CREEP)] {
            let loading = of(dead);
            let forces = solve(&loading)?;
            work.movements.push((kind, loading, forces));
        }
    }
    Ok(work)
}

/// Snow and people of the roof, wind as a component of this area, a person at midspan and at the tail.
fn cases(
    project: &Project,
    loads: &RoofLoads,
    line: &RafterLine,
    width: Length,
    missing: &mut Vec<Unmade>,
) -> Vec<RoofCase> {
    let mut cases: Vec<RoofCase> = loads.cases.iter().filter(|case| case.action != Action::Wind).cloned().collect();
    let span = line.span() / line.pitch.cos();
    match component_cases(&project.place, &loads.lean_to, effective_area(span, width)) {
        Ok(wind) => cases.extend(wind),
        Err(refused) => {
            let why = Unmade::from(refused);
            if !missing.contains(&why) {
                missing.push(why);
            }
        }
    }
    let middle = (line.ledger + line.beam) / 2.0;
    cases.push(person_at(&project.place, middle, "at midspan"));
    cases.push(person_at(&project.place, line.eave, "at the tail"));
    cases
}

/// Whether the roof draws both seats together upward.
fn lifts(forces: &RafterForces) -> bool {
    (forces.ledger + forces.beam).is_negative()
}

fn sheared_by(shear: f64) -> (&'static str, Amount) {
    ("V", Amount::Force(Force::pounds(shear.abs())))
}

#[derive(Clone, Copy)]
struct Judge<'a> {
    shape: &'a Shape,
    project: &'a Project,
    woods: &'a Woods<'a>,
    work: &'a RafterWork,
    /// Only the combinations that lift, or press on, the two seats together; nothing for all.
    way: Option<Way>,
}

/// Every check of the rafters.
#[must_use]
pub fn check_rafters(project: &Project, shape: &Shape, woods: &Woods, work: &RafterWork) -> Vec<Check> {
    let judge = Judge { shape, project, woods, work, way: None };
    let mut checks = judge.carries();
    let worst = most(checks.iter(), |check| check.rank());
    if worst.is_some_and(|worst| worst.way == Some(Way::Up)) {
        let pressed = Judge { way: Some(Way::Down), ..judge }.carries();
        checks.extend(pressed.into_iter().map(|check| check.only(Way::Down)));
    }
    checks.extend(judge.movements());
    checks.extend(judge.seats());
    checks.extend(judge.notches());
    checks.extend(judge.roll_over());
    checks
}

impl Judge<'_> {
    fn wood(&self, duration: Duration) -> Result<Member, String> {
        self.woods.member(Used::Rafter, duration)
    }

    /// What a force through the rafter asks of it.
    fn carries(&self) -> Vec<Check> {
        let bent = self.bending().into_iter().chain(self.tail());
        bent.chain(self.shear()).collect()
    }

    fn counts(&self, forces: &RafterForces) -> bool {
        self.way.is_none_or(|way| Way::of(lifts(forces)) == way)
    }

    /// The combination in which a value is hardest on the wood.
    fn hardest(&self, value: impl Fn(&RafterForces) -> f64) -> Option<(f64, &Loading)> {
        let counted = self.work.found.iter().filter(|(_, forces)| self.counts(forces));
        let all = counted.map(|(loading, forces)| (value(forces), loading));
        most(all, |(value, loading)| value.abs() / loading.duration.factor())
    }

    fn check(
        &self,
        (name, at): (&str, &str),
        loading: &Loading,
        (symbol, amount): (&'static str, Amount),
        made: Result<Worked<Verdict>, String>,
    ) -> Check {
        let of = self.work.found.iter().find(|(known, _)| std::ptr::eq(known, loading));
        let under = of.map(|(_, forces)| self.under(loading, forces)).unwrap_or_default();
        let way = of.map(|(_, forces)| Way::of(lifts(forces)));
        Check::new(&self.work.mark, name, at, Under { way, ..under }.asks(symbol, amount), made)
    }

    fn under(&self, loading: &Loading, forces: &RafterForces) -> Under {
        let RafterForces { ledger, beam, .. } = *forces;
        Under::of(loading, Found::Rafter { width: self.work.width, dead: loading.dead, ledger, beam })
    }

    /// The worse of both ways: purlins hold the top edge; under suction the underside is free from seat to seat.
    fn bending(&self) -> Option<Check> {
        let seat_to_seat = self.work.line.span() / self.work.line.pitch.cos();
        let check = |free: Length, value: fn(&RafterForces) -> Moment| {
            let (moment, loading) = self.hardest(|forces| value(forces).max(Moment::ZERO).to_pound_inches())?;
            let made = self.wood(loading.duration).and_then(|wood| {
                let whole = NetSection::whole(wood.section()).map_err(|refused| refused.0)?;
                let bracing = Bracing::Free { length: free, case: UnbracedCase::Other };
                check_bending(&wood, Moment::pound_inches(moment), &whole, bracing).map_err(|refused| refused.0)
            });
            Some({
                let asked = Amount::Moment(Moment::pound_inches(moment));
                self.check(("bends", "between ledger and beam"), loading, ("M", asked), made)
            })
        };
        let sagging = check(self.project.roofing.purlin_spacing, |forces| forces.sagging);
        let hogging = check(seat_to_seat, |forces| -forces.hogging);
        Check::worst_of([hogging, sagging].into_iter().flatten())
    }

    /// Over the beam on the depth the bird's mouth leaves.
    fn tail(&self) -> Vec<Check> {
        let (notch, bored) = (self.shape.rafter.beam.notch_depth, self.project.fixings.rafter_seat.bored());
        let Some((moment, loading)) = self.hardest(|forces| forces.over_beam.to_pound_inches()) else {
            return Vec::new();
        };
        let made = self.wood(loading.duration).and_then(|wood| {
            let section = wood.section();
            let whole = NetSection::whole(section).map_err(|refused| refused.0)?;
            let cut = crate::members::Pocket {
                from_left: Length::ZERO,
                breadth: section.breadth,
                from_bottom: Length::ZERO,
                depth: notch,
            };
            let net = whole.without(cut).map_err(|refused| refused.0)?;
            let made = check_bending(&wood, Moment::pound_inches(moment.abs()), &net, Bracing::Held);
            made.map(|made| less_hole(made, section.breadth, bored)).map_err(|refused| refused.0)
        });
        let asked = Amount::Moment(Moment::pound_inches(moment.abs()));
        let bends = self.check(("bends", "over the beam, on what the notch leaves"), loading, ("M", asked), made);
        let sheared = self.hardest(|forces| forces.shear_of_tail.to_pounds()).map(|(shear, loading)| {
            let made = self.wood(loading.duration).and_then(|wood| {
                // Reaching over the whole seat: the depth left alone counts.
                let place =
                    ShearPlace::CompressionNotch { left: wood.section().depth - notch, reach: wood.section().depth };
                let made = check_shear(&wood, Force::pounds(shear.abs()), &place);
                made.map(|made| less_hole(made, wood.section().breadth, bored)).map_err(|refused| refused.0)
            });
            self.check(("shears", "at the tail, on what the notch leaves"), loading, sheared_by(shear), made)
        });
        [Some(bends), sheared].into_iter().flatten().collect()
    }

    /// At the ledger the corner of the notch faces the span: a notch in the pulled face at the end. Beside the beam the
    /// whole depth carries.
    fn shear(&self) -> Vec<Check> {
        let (notch, bored) = (self.shape.rafter.ledger.notch_depth, self.project.fixings.rafter_head.bored());
        let at_ledger = self.hardest(|forces| forces.shear_at_ledger.to_pounds()).map(|(shear, loading)| {
            let made = self.wood(loading.duration).and_then(|wood| {
                let place = ShearPlace::TensionNotch { left: wood.section().depth - notch };
                let made = check_shear(&wood, Force::pounds(shear.abs()), &place);
                made.map(|made| less_hole(made, wood.section().breadth, bored)).map_err(|refused| refused.0)
            });
            self.check(("shears", "at the bird's mouth on the ledger"), loading, sheared_by(shear), made)
        });
        let at_beam = self.hardest(|forces| forces.shear_inside_beam.to_pounds()).map(|(shear, loading)| {
            let made = self.wood(loading.duration).and_then(|wood| {
                check_shear(&wood, Force::pounds(shear.abs()), &ShearPlace::Whole).map_err(|refused| refused.0)
            });
            self.check(("shears", "beside the beam"), loading, sheared_by(shear), made)
        });
        [at_ledger, at_beam].into_iter().flatten().collect()
    }

    fn movements(&self) -> Vec<Check> {
        let span = self.work.line.span() / self.work.line.pitch.cos();
        let words = |kind: DeflectionCase| match kind {
            DeflectionCase::DeadAndLive => "sags in the end, creep counted",
            DeflectionCase::Live | DeflectionCase::SnowOrWind => "sags under snow, wind or people",
        };
        let check = |kind: DeflectionCase| {
            let of_kind = self.work.movements.iter().filter(|(found, ..)| *found == kind);
            let size = |of: &RafterForces| of.movement.abs().to_inches();
            let (_, loading, forces) = most(of_kind, |(.., forces)| size(forces))?;
            let limit = deflection_limit(span, false, RoofMember::Main, Ceiling::None, kind);
            let made = check_deflection(forces.movement, limit);
            let under = self.under(loading, forces).asks("Δ", forces.movement.abs());
            Some(Check::new(&self.work.mark, words(kind), "between ledger and beam", under, made))
        };
        let kinds = [DeflectionCase::SnowOrWind, DeflectionCase::DeadAndLive];
        kinds.into_iter().filter_map(check).chain(kinds.into_iter().filter_map(|kind| self.tail_moves(kind))).collect()
    }

    /// The end of the roof, up or down, against what a cantilever of twice its length may bend.
    fn tail_moves(&self, kind: DeflectionCase) -> Option<Check> {
        let line = &self.work.line;
        let length = (line.eave - line.beam) / line.pitch.cos();
        let of_kind = self.work.movements.iter().filter(|(found, ..)| *found == kind && length > Length::ZERO);
        let size = |of: &RafterForces| of.tail_movement.abs().to_inches();
        let (_, loading, forces) = most(of_kind, |(.., forces)| size(forces))?;
        let moved = forces.tail_movement;
        let way = if moved.is_negative() { "down" } else { "up" };
        let limit = deflection_limit(length, true, RoofMember::Main, Ceiling::None, kind);
        let made = check_deflection(moved, limit).map(|mut made| {
            let says = format!("{:.3} in {way}, square to the roof", moved.abs().to_inches());
            let citation = Citation::from_memory("statics", "stiffness method, span and tail as one stick");
            made.steps.insert(0, Step::new("movement of the tail's end", says, citation));
            made
        });
        let words = match kind {
            DeflectionCase::DeadAndLive => "moves at its tail in the end, creep counted",
            DeflectionCase::Live | DeflectionCase::SnowOrWind => "moves at its tail under snow, wind or people",
        };
        let under = self.under(loading, forces).asks("Δ", moved.abs());
        Some(Check::new(&self.work.mark, words, "at the eave", under, made))
    }

    /// The rafter lies level on its seats, so it and the timber under it are pressed across or nearly across the grain.
    fn seats(&self) -> Vec<Check> {
        let breadth = self.project.frame.timbers.rafter.sawn.breadth;
        let rafter = &self.shape.rafter;
        let (line, frame) = (&self.shape.line, &self.project.frame);
        // From the seat to the rafter's end: the wall's gap at the head, the tail past the beam.
        let head = line.ledger_heel - rafter.ledger.seat - frame.wall_gap;
        let tail = frame.reach + frame.tail - line.beam_heel;
        let sides = [
            ("on the ledger", rafter.ledger.seat, head, Used::Ledger, &self.project.fixings.rafter_head),
            ("on the beam", rafter.beam.seat, tail, Used::Beam, &self.project.fixings.rafter_seat),
        ];
        let mut checks = Vec::new();
        for (place, seat, from_end, under, tie) in sides {
            let reaction = |forces: &RafterForces| if under == Used::Ledger { forces.ledger } else { forces.beam };
            let all = self.work.found.iter().map(|(loading, forces)| (reaction(forces), loading, forces));
            let Some((push, loading, forces)) = most(all, |(push, ..)| push.to_pounds()) else {
                continue;
            };
            let push = push.max(Force::ZERO);
            let holes = tie.bored() * tie.bored() * (std::f64::consts::FRAC_PI_4 * tie.holes().len() as f64);
            let area = breadth * seat - holes;
            let of_rafter = self.wood(loading.duration).and_then(|wood| {
                let angle = crate::units::Angle::RIGHT - self.work.line.pitch.angle();
                let place = Seat { area, length: seat, from_end };
                crate::members::check_bearing_at_angle(&wood, push, angle, &place).map_err(|refused| refused.0)
            });
            checks.push(self.check(("is pressed on its seat", place), loading, ("P", push.into()), of_rafter));
            let of_under = self.woods.member(under, loading.duration).and_then(|wood| {
                let place = Seat { area, length: breadth, from_end: breadth };
                check_bearing_across(&wood, push, &place).map_err(|refused| refused.0)
            });
            let what = if under == Used::Ledger { "the ledger" } else { "the beam" };
            let asked = self.under(loading, forces).asks("P", push);
            checks.push(Check::new(what, "is pressed across the grain", "under a rafter's seat", asked, of_under));
        }
        checks
    }

    /// Where suction stretches the notched underside over the beam, the standard allows sticks of 4 in and thicker no notch.
    fn pulled_notch(&self) -> Option<Check> {
        let stretched = self.work.found.iter().filter(|(_, forces)| forces.over_beam > Moment::ZERO);
        let (loading, forces) = most(stretched, |(_, forces)| forces.over_beam.to_pound_inches())?;
        let thick = self.project.frame.timbers.rafter.ordered.breadth;
        let made = if thick < THICK {
            let says =
                format!("{:.2} in thick, less than the 3 1/2 in from which no notch is allowed", thick.to_inches());
            let step = Step::new("notch in the stretched face", says, Citation::from_memory("NDS 2018", "4.4.3"));
            Ok(Worked::new(Verdict::length(thick, THICK), vec![step]))
        } else {
            Err(format!(
                "under {} the notched underside over the beam is stretched by {}, and the NDS (4.4.3) allows sticks of 4 in and \
                 thicker no notch there: an engineer must accept it, for every rafter",
                loading.name,
                Amount::Moment(forces.over_beam).text(self.project.units)
            ))
        };
        let check = Check::new(&self.work.mark, NOTCHED_IN_PULL, "", "", made);
        // Thick rafters fail by it under that load; of thin ones it is a matter of their size.
        Some(if thick < THICK { check.of_sizes() } else { check.going(Way::Up) })
    }

    /// Depth of the notches, wood left over the beam, length of the tail.
    fn notches(&self) -> Vec<Check> {
        let Ok(wood) = self.wood(Duration::TwoMonths) else { return Vec::new() };
        let rafter = &self.shape.rafter;
        let mut checks: Vec<Check> = self.pulled_notch().into_iter().collect();
        let at_ledger = Notch {
            place: NotchPlace::End,
            face: NotchFace::Pulled,
            depth: rafter.ledger.notch_depth,
            length: rafter.ledger.seat,
        };
        match check_notch_limits(&wood, &at_ledger) {
            Err(refused) => checks.push(Check::not_judged(&self.work.mark, "is notched at the ledger", refused)),
            Ok(found) => {
                let worst = most(found.into_iter(), |made| made.value.ratio);
                checks.extend(worst.map(|made| {
                    Check::new(&self.work.mark, "is notched", "at the ledger", "", Ok::<_, String>(made)).of_sizes()
                }));
            }
        }
        let left = wood.section().depth - rafter.beam.notch_depth;
        let tail = self.project.frame.tail;
        let practice = |what: &'static str, says: String| vec![Step::new(what, says, Citation::common_practice(what))];
        let steps = practice("wood left over the beam", format!("d_n = {:.2} in, at least 3 1/2 in", left.to_inches()));
        let made = Ok::<_, String>(Worked::new(Verdict::length(LEAST_LEFT, left), steps));
        checks.push(Check::new(&self.work.mark, "is notched", "over the beam", "", made).of_sizes());
        let steps = practice("length of the tail", format!("tail {:.2} in, at most 24 in", tail.to_inches()));
        let made = Ok::<_, String>(Worked::new(Verdict::length(tail, LONGEST_TAIL), steps));
        checks.push(Check::new(&self.work.mark, "reaches out with its tail", "", "", made).of_sizes());
        checks
    }

    /// Deep rafters ask to be held against rolling over.
    fn roll_over(&self) -> Option<Check> {
        let wood = self.wood(Duration::TwoMonths).ok()?;
        let needed = match holding_needed(&wood) {
            Err(refused) => return Some(Check::not_judged(&self.work.mark, ROLLS, refused)),
            Ok(needed) => needed,
        };
        let has_blocks = self.project.frame.blocks != crate::project::Blocks::None;
        // Purlins hold the top edge; screws at the head and blocks over the beam hold the ends.
        let holds = match needed.value {
            Holding::Nothing => true,
            Holding::Ends | Holding::PressedEdge => has_blocks,
            Holding::Bridging | Holding::BothEdges => false,
        };
        let mut steps = needed.steps;
        let says =
            format!("asked: {}; blocks over the beam: {}", needed.value.words(), if has_blocks { "yes" } else { "no" });
        steps.push(Step::new("what is there", says, Citation::common_practice("blocks over the beam hold the ends")));
        let made = Ok::<_, String>(Worked::new(Verdict::sum_of_shares(if holds { 0.0 } else { 1.5 }), steps));
        Some(Check::new(&self.work.mark, ROLLS, "", "", made).of_sizes())
    }
}

//! A rafter as a beam on two seats with its tail out over the beam.
use super::loading::Loading;
use super::rafter_line::RafterLine;
use super::roof_cases::RoofCase;
use super::roof_dead::RoofDead;
use crate::frame::{Factorised, Frame, FrameError, Inertia, LoadCase, Member, MemberLoad, Support};
use crate::loads::Spread;
use crate::materials::Section;
use crate::units::{Force, Length, LineLoad, Moment, Stress};

/// What one combination does to one rafter. Shear is square to the rafter; reactions are upright, plus where the seat
/// pushes up; moments plus where the underside is stretched.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RafterForces {
    /// The largest moment between the seats.
    pub sagging: Moment,
    /// The smallest moment between the seats, over the beam included.
    pub hogging: Moment,
    /// Where the larger of the two is, along the slope from the ledger seat.
    pub at: Length,
    /// Moment over the beam.
    pub over_beam: Moment,
    /// Shear beside the ledger seat.
    pub shear_at_ledger: Force,
    /// Shear beside the beam seat, on the wall's side.
    pub shear_inside_beam: Force,
    /// Shear of the tail.
    pub shear_of_tail: Force,
    /// Upright reaction of the ledger.
    pub ledger: Force,
    /// Upright reaction of the beam.
    pub beam: Force,
    /// The largest movement between the seats, minus down.
    pub movement: Length,
    /// The tail end's movement.
    pub tail_movement: Length,
}

const HEAD: usize = 0;
const SPAN: usize = 1;
const TAIL: usize = 2;

/// One rafter, ready for any load.
pub struct RafterBeam<'a> {
    line: RafterLine,
    solved: Factorised<'a>,
    tail_end: usize,
    seats: (usize, usize),
}

/// The rafter unrolled along its slope: x along it, z square to it.
#[must_use]
pub fn rafter_frame(line: &RafterLine, section: Section, stiffness: Stress) -> Frame {
    let mut frame = Frame::default();
    let cos = line.pitch.cos();
    let places =
        [("roof at the wall", Length::ZERO), ("ledger", line.ledger), ("beam", line.beam), ("eave", line.eave)];
    let nodes = places.map(|(name, y)| frame.add_node(name, y / cos, Length::ZERO));
    let inertia = Inertia::rectangle(section.breadth, section.depth);
    for (name, ends) in [("head", (nodes[0], nodes[1])), ("span", (nodes[1], nodes[2])), ("tail", (nodes[2], nodes[3]))]
    {
        frame.add_member(Member::elastic(name, ends, stiffness, section.area(), inertia));
    }
    frame.supports = vec![Support::pinned(nodes[1]), Support::roller(nodes[2])];
    frame
}

impl<'a> RafterBeam<'a> {
    /// Of a frame made by [`rafter_frame`].
    ///
    /// # Errors
    /// Where the sizes make no beam.
    pub fn new(line: RafterLine, frame: &'a Frame) -> Result<Self, FrameError> {
        let solved = frame.factorise(&frame.all_active())?;
        Ok(Self { line, solved, seats: (1, 2), tail_end: 3 })
    }

    /// What a combination does to a rafter that carries that much of the roof's width.
    ///
    /// # Errors
    /// Where the numbers are too far apart for an answer.
    pub fn forces(
        &self,
        loading: &Loading,
        cases: &[RoofCase],
        dead: &RoofDead,
        width: Length,
    ) -> Result<RafterForces, FrameError> {
        let mut case = LoadCase::default();
        let own = dead.cover.of(loading.is_uplift) * width + dead.rafter.of(loading.is_uplift);
        self.spread_line(&mut case, own * loading.dead);
        let mut square = Force::ZERO;
        for (factor, index) in &loading.parts {
            self.add(&mut case, &cases[*index], width, *factor);
            square += cases[*index].square.total() * width * *factor;
        }
        let found = self.solve(&case)?;
        // The ledger alone takes the level part of a load square to the roof; upright it then gives so much less.
        let tan = self.line.pitch.tan();
        Ok(RafterForces { ledger: found.ledger - square * (tan * tan), ..found })
    }

    fn solve(&self, case: &LoadCase) -> Result<RafterForces, FrameError> {
        let solution = self.solved.solve(case)?;
        let cos = self.line.pitch.cos();
        let (moment, shear) = (solution.moment(SPAN), solution.shear(SPAN));
        let extremes = moment.extremes();
        let length = (self.line.beam - self.line.ledger) / cos;
        let at = if extremes.max.abs() >= extremes.min.abs() { extremes.max_at } else { extremes.min_at };
        let upright = |node: usize| solution.reaction(node).z / cos;
        Ok(RafterForces {
            sagging: extremes.max,
            hogging: extremes.min,
            at,
            over_beam: moment.at(length),
            shear_at_ledger: shear.at(Length::ZERO),
            shear_inside_beam: shear.at(length),
            shear_of_tail: solution.shear(TAIL).at(Length::ZERO),
            ledger: upright(self.seats.0),
            beam: upright(self.seats.1),
            movement: solution.deflection_from_chord(SPAN).extremes().farthest(),
            tail_movement: solution.movement(self.tail_end).z,
        })
    }

    /// A weight down on plan, even over the whole rafter, given a length of plan.
    fn spread_line(&self, case: &mut LoadCase, on_plan: LineLoad) {
        let cos = self.line.pitch.cos();
        let square = on_plan * (cos * cos);
        for (member, from, to) in self.stretches() {
            case.members.push(MemberLoad::even(member, Length::ZERO, (to - from) / cos, square));
        }
    }

    /// The three parts with their ends on plan.
    const fn stretches(&self) -> [(usize, Length, Length); 3] {
        let line = &self.line;
        [(HEAD, Length::ZERO, line.ledger), (SPAN, line.ledger, line.beam), (TAIL, line.beam, line.eave)]
    }

    fn add(&self, case: &mut LoadCase, load: &RoofCase, width: Length, factor: f64) {
        let cos = self.line.pitch.cos();
        self.add_spread(case, &load.down, width, factor * cos * cos);
        self.add_spread(case, &load.square, width, factor);
        if let Some((at, force)) = load.point {
            let stretch = self.stretches().into_iter().find(|(_, from, to)| *from <= at && at <= *to);
            if let Some((member, from, _)) = stretch {
                case.members.push(MemberLoad::down(member, (at - from) / cos, force * (factor * cos)));
            }
        }
    }

    /// A load of the roof, as a load square to the rafter on each of its parts.
    fn add_spread(&self, case: &mut LoadCase, spread: &Spread, width: Length, factor: f64) {
        let cos = self.line.pitch.cos();
        for (member, from, to) in self.stretches() {
            for piece in spread.pieces() {
                let (low, high) = (piece.from.max(from), piece.to.min(to));
                if high <= low {
                    continue;
                }
                let at = |y: Length| {
                    let share = (y - piece.from) / (piece.to - piece.from);
                    -((piece.start + (piece.end - piece.start) * share) * width) * factor
                };
                case.members.push(MemberLoad::Spread {
                    member,
                    from: (low - from) / cos,
                    to: (high - from) / cos,
                    x: (LineLoad::ZERO, LineLoad::ZERO),
                    z: (at(low), at(high)),
                });
            }
        }
    }
}

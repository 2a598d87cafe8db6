//! The ledger between the posts of the wall: bent, sheared beside its fixings, sagging; its fixings; and what the wall is
//! left with.
//!
//! Wind is that on the main frame, square to the wall; wind along the wall and a person on one rafter are left out: they
//! ask less of a ledger than snow or roof live load over a whole bay.
use super::check::Check;
use super::known::known_loads;
use super::ledger_fixings::check_fixings;
use super::ledger_sag::sags;
use super::purlin::most;
use super::wood::{Woods, load_duration};
use crate::analysis::{
    LedgerFrame, LedgerLoads, Loading, RafterHand, RafterLine, RoofLoads, WallShares, carried_widths, loadings,
};
use crate::design::Shape;
use crate::frame::{Factorised, Solution};
use crate::geometry::{rakes, wall_posts};
use crate::loads::Duration;
use crate::members::{
    Amount, Bracing, Member, NetSection, Pocket, ShearPlace, UnbracedCase, check_bending, check_shear, stiffness,
};
use crate::project::{Project, Used};
use crate::units::{Force, Length, LineLoad, Moment};
use crate::working::{Citation, Step};

/// A place this near a post of the wall is over it.
const NEAR: Length = Length::inches(0.01);

/// One combination on the ledger.
pub(super) struct Asked {
    pub(super) loading: Loading,
    pub(super) loads: LedgerLoads,
    /// Off the wall, of a unit width of roof.
    pub(super) level: LineLoad,
}

/// The ledger, solved, with every combination.
pub(super) struct Ledger<'a> {
    pub(super) project: &'a Project,
    pub(super) roof: &'a RoofLoads,
    pub(super) frame: &'a LedgerFrame,
    pub(super) solved: &'a Factorised<'a>,
    pub(super) shares: WallShares,
    pub(super) asked: Vec<Asked>,
    /// Dry in use or not, ten years.
    pub(super) member: Member,
    pub(super) line: RafterLine,
}

/// Every check of the ledger, of its fixings, and the word on the existing wall.
#[must_use]
pub fn check_ledger(project: &Project, shape: &Shape, loads: &RoofLoads) -> Vec<Check> {
    judge(project, shape, loads).unwrap_or_else(|why| {
        vec![
            Check::not_judged("ledger", "bends, shears and sags", &why),
            Check::not_judged("ledger fixings", "hold the ledger", &why),
            Check::not_judged("existing wall", "carries what the ledger hands it", &why),
        ]
    })
}

fn judge(project: &Project, shape: &Shape, loads: &RoofLoads) -> Result<Vec<Check>, String> {
    known_loads(loads)?;
    let member = Woods::new(project).member(Used::Ledger, Duration::TenYears)?;
    let posts = wall_posts(&project.site, project.frame.beam_length);
    if posts.is_empty() {
        return Err("the posts of the wall are missing: where the first is and how far apart they stand".to_owned());
    }
    let half = project.frame.timbers.rafter.sawn.breadth / 2.0;
    let widths = carried_widths(&shape.rafters, rakes(&project.roofing, &shape.rafters, half));
    let rafters: Vec<(Length, Length)> = shape.rafters.iter().copied().zip(widths).collect();
    let of = (member.section(), stiffness(&member).value);
    let frame = LedgerFrame::new(&shape.ledger, &posts, &rafters, of)?;
    let solved = frame.frame.factorise(&frame.frame.all_active()).map_err(|error| error.to_string())?;
    let shares = WallShares::new(&frame, &solved).map_err(|error| error.to_string())?;
    let line = RafterLine::new(shape, loads.lean_to.roof_length().length());
    let asked = asked(project, loads, &line);
    let ledger = Ledger { project, roof: loads, frame: &frame, solved: &solved, shares, asked, member, line };
    let (down, up) = (ledger.extreme(1.0), ledger.extreme(-1.0));
    let mut solutions = Vec::new();
    for asked in [down, up].into_iter().flatten() {
        let solution = solved.solve(&frame.case(&asked.loads)).map_err(|error| error.to_string())?;
        solutions.push((asked, solution));
    }
    let mut checks: Vec<Check> = ledger.bends(&solutions).into_iter().chain(ledger.shears(&solutions)).collect();
    checks.extend(sags(&ledger)?);
    checks.extend(check_fixings(&ledger));
    checks.push(ledger.wall());
    Ok(checks)
}

fn asked(project: &Project, loads: &RoofLoads, line: &RafterLine) -> Vec<Asked> {
    let hand = RafterHand::new(line, &loads.dead, &loads.cases);
    let area = project.frame.timbers.ledger.sawn.area();
    let of = |loading: Loading| {
        let (strip, own) = (hand.strip(&loading), hand.own(&loading));
        let weight = loads.dead.wood.of(loading.is_uplift).line_load(area) * loading.dead;
        let loads = LedgerLoads { strip: strip.ledger, rafter: own.ledger, own: weight };
        Asked { loading, loads, level: strip.level }
    };
    loadings(project.place.edition, &loads.cases).into_iter().map(of).collect()
}

impl Ledger<'_> {
    /// The combination with the most down (sign 1) or up (−1), measured by how long the wood carries it.
    fn extreme(&self, sign: f64) -> Option<&Asked> {
        let size = |asked: &&Asked| self.frame.total(&asked.loads).to_pounds() * sign;
        let real = self.asked.iter().filter(|asked| size(asked) > 0.0);
        most(real, |asked| size(asked) / asked.loading.duration.factor())
    }

    fn bends(&self, solutions: &[(&Asked, Solution)]) -> Option<Check> {
        let places = solutions.iter().flat_map(|(asked, solution)| {
            (0..self.frame.spans.len()).map(move |span| {
                let found = solution.moment(span).extremes();
                let is_max = found.max.abs() >= found.min.abs();
                let (value, at) = if is_max { (found.max, found.max_at) } else { (found.min, found.min_at) };
                (*asked, span, value, at)
            })
        });
        let size = |place: &(&Asked, usize, Moment, Length)| {
            place.2.abs().to_pound_inches() / place.0.loading.duration.factor()
        };
        let (asked, index, value, at) = most(places, size)?;
        let span = &self.frame.spans[index];
        let is_over = (span.held_left && at < NEAR) || (span.held_right && span.length() - at < NEAR);
        let longest = self.frame.spans.iter().map(crate::analysis::LedgerSpan::length).fold(Length::ZERO, Length::max);
        let member = self.member.during(load_duration(asked.loading.duration));
        let bracing = Bracing::Free { length: longest, case: UnbracedCase::Other };
        let made = self.section(is_over).and_then(|net| check_bending(&member, value, &net, bracing));
        let made = made.map(|mut made| {
            made.steps.insert(0, step(asked, span.length()));
            made
        });
        let at_words = if is_over { "over a post of the wall" } else { "between posts of the wall" };
        let check = Check::new(mark(span.piece), "bends", at_words, asked.loading.name.clone(), made);
        Some(check.at_x(span.from + at))
    }

    /// Whole, or less the holes of the fixings over a post of the wall.
    fn section(&self, is_over: bool) -> Result<NetSection, crate::members::Refused> {
        let mut net = NetSection::whole(self.member.section())?;
        let fixings = &self.project.fixings.ledger;
        let Ok(fastener) = crate::fastening::fastener(&fixings.fastener) else { return Ok(net) };
        for row in (0..fixings.rows).filter(|_| is_over) {
            let middle = height(self.project, row);
            net = net.without(Pocket {
                from_left: Length::ZERO,
                breadth: self.member.section().breadth,
                from_bottom: middle - fastener.diameter / 2.0,
                depth: fastener.diameter,
            })?;
        }
        Ok(net)
    }

    /// The fixings bring the force in: down loads hang the wood under the lowest row, uplift that over the highest.
    fn shears(&self, solutions: &[(&Asked, Solution)]) -> Option<Check> {
        let depth = self.member.section().depth;
        let rows = self.project.fixings.ledger.rows;
        if rows == 0 {
            return Some(Check::not_judged("ledger", "shears", "the rows of the ledger's fixings are missing"));
        }
        let places = solutions.iter().flat_map(|(asked, solution)| {
            let is_down = self.frame.total(&asked.loads) > Force::ZERO;
            let effective = if is_down { depth - height(self.project, 0) } else { height(self.project, rows - 1) };
            self.frame.spans.iter().enumerate().flat_map(move |(index, span)| {
                let shear = solution.shear(index);
                let ends = [(span.held_left, Length::ZERO, span.from), (span.held_right, span.length(), span.to)];
                let held = ends.into_iter().filter(|(held, _, _)| *held);
                held.map(|(_, at, x)| (*asked, span, shear.at(at), x, effective)).collect::<Vec<_>>()
            })
        });
        let from_end = |x: Length| {
            let post = self.frame.posts.iter().find(|post| post.x.is_near(x, NEAR));
            post.map_or(Length::ZERO, |post| post.from_end)
        };
        let (asked, span, value, x, effective) = most(places, |(asked, _, value, x, effective)| {
            let share = *effective / depth;
            let squared = if from_end(*x) < depth * 5.0 { share * share } else { 1.0 };
            value.abs().to_pounds() / (asked.loading.duration.factor() * share * squared).max(1e-9)
        })?;
        let place = ShearPlace::Connection { effective, from_end: from_end(x) };
        let member = self.member.during(load_duration(asked.loading.duration));
        let made = check_shear(&member, value, &place).map(|mut made| {
            made.steps.insert(0, step(asked, span.length()));
            made
        });
        let check =
            Check::new(mark(span.piece), "shears", "beside a post of the wall", asked.loading.name.clone(), made);
        Some(check.at_x(x))
    }

    /// What the wall must take is said, and never judged: nobody has told of what it is made.
    fn wall(&self) -> Check {
        let units = self.project.units;
        let all = || {
            self.asked.iter().flat_map(|asked| {
                let give = |post| (self.shares.reaction(post, &asked.loads), asked.level * self.shares.width[post]);
                (0..self.frame.posts.len()).map(give)
            })
        };
        let largest = |of: fn((Force, Force)) -> Force| Amount::Force(all().map(of).fold(Force::ZERO, Force::max));
        let (down, up) = (largest(|(up, _)| up), largest(|(up, _)| -up));
        let (out, inward) = (largest(|(_, level)| level), largest(|(_, level)| -level));
        let why = format!(
            "the existing wall must be checked by someone licensed for {} down, {} up, {} outward and {} inward at a post \
             of it, beside what it carries now",
            down.text(units),
            up.text(units),
            out.text(units),
            inward.text(units)
        );
        Check::not_judged("existing wall", "carries what the ledger hands it", why)
    }
}

pub(super) fn mark(piece: usize) -> String {
    format!("L{piece}")
}

/// Height of a row of fixings over the ledger's bottom.
pub(super) fn height(project: &Project, row: usize) -> Length {
    let fixings = &project.fixings.ledger;
    fixings.lowest + fixings.row_gap * u32::try_from(row).map_or(f64::MAX, f64::from)
}

fn step(asked: &Asked, length: Length) -> Step {
    let says = format!(
        "{:.1} lb a foot of roof and {:.0} lb of each rafter's own weight on the ledger; stretch of {:.1} in",
        asked.loads.strip.to_plf(),
        asked.loads.rafter.to_pounds(),
        length.to_inches()
    );
    Step::new("load of the ledger", says, Citation::from_memory("statics", "rafters at their places"))
}

#[cfg(test)]
#[path = "ledger_tests.rs"]
mod tests;

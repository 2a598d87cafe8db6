//! The scarfs: where the beam would bend, what is left of their halves, whether the load closes them, what passes along them.
use super::beam::BeamChecks;
use super::check::{Check, Under};
use super::governing::{hardest, most};
use super::scarf_halves::{held_at_root, passed, thin};
use super::scarf_pull::{Along, abuts, pulled_apart};
use crate::analysis::Solved;
use crate::fastening::{LapAction, lap_action};
use crate::geometry::ScarfReport;
use crate::members::{Bracing, Member, NetSection, Verdict, bending_strength};
use crate::project::{ScarfKind, Used};
use crate::units::{Force, Length, Moment};
use crate::unmade::{Input, Unmade};
use crate::working::{Citation, Step, Worked};

/// Name of the check of a lap that is lifted.
pub const LIFTED_OPEN: &str = "is lifted open";

/// Every check of the scarfs.
#[must_use]
pub fn check_scarfs(with: &BeamChecks) -> Vec<Check> {
    with.shape.beam.scarfs.iter().flat_map(|scarf| one(with, scarf)).collect()
}

/// Share of the solid beam's bending a scarf of that kind carries: tests on green oak, as tabled in Heritage Science 8
/// (2020), Table 3. Kinds that were not tested get the least of the tested ones.
const fn share(kind: ScarfKind) -> (f64, Citation) {
    const PAPER: &str = "Heritage Science 8 (2020)";
    match kind {
        ScarfKind::HalvedUnderSquinted => (0.10, Citation::seen(PAPER, "Table 3, under-squinted halved, two pegs")),
        ScarfKind::StopSplayedTabled => (0.28, Citation::seen(PAPER, "Table 3, stop-splayed and tabled with a key")),
        ScarfKind::Halved | ScarfKind::Bladed | ScarfKind::StopSplayed | ScarfKind::StopSplayedUnderSquinted => {
            (0.10, Citation::placeholder(PAPER, "Table 3: this kind was not tested, the least is taken"))
        }
    }
}

fn one(with: &BeamChecks, scarf: &ScarfReport) -> Vec<Check> {
    let centre = scarf.place.centre;
    let gap = |to: Length| (to - centre).abs();
    let stretches = &with.line.model.beam;
    let Some(left) = (0..stretches.len())
        .min_by(|a, b| gap(stretches[*a].to).to_inches().total_cmp(&gap(stretches[*b].to).to_inches()))
    else {
        return Vec::new();
    };
    let mark = format!("scarf {}", scarf.number);
    let kind = scarf.kind;
    let along = Along::new(with, scarf);
    let checks = [
        bends(with, left, kind, &mark),
        thin(with, (scarf, &along), &mark),
        opens(with, scarf, &mark),
        pulled_apart(with, (scarf, &along), &mark),
        abuts(with, (scarf, &along), &mark),
    ];
    checks.into_iter().flatten().map(|check| check.at_x(centre)).collect()
}

/// What the beam without the scarf would bend here, against the share such a scarf carries.
fn bends(with: &BeamChecks, left: usize, kind: ScarfKind, mark: &str) -> Option<Check> {
    let moments = with.line.uncut().filter_map(|(uncut, case)| {
        let moment = *uncut.moments.get(left)?;
        Some((moment.to_pound_inches(), case.duration, (moment, uncut, case)))
    });
    let (_, duration, (moment, uncut, case)) = hardest(moments)?;
    let combination = format!("{} ({})", case.name, uncut.model.words());
    let made = with.woods.member(Used::Beam, duration).and_then(|wood| share_of_solid(kind, &wood, moment.abs()));
    let under = Under::from_origin(combination, None, with.line.origin_uncut(uncut, case)).asks("M", moment.abs());
    Some(Check::new(mark, "lies where the beam would bend", "", under, made))
}

fn share_of_solid(kind: ScarfKind, wood: &Member, moment: Moment) -> Result<Worked<Verdict>, String> {
    let (share, citation) = share(kind);
    let strength = bending_strength(wood, Bracing::Held).map_err(|refused| refused.0)?;
    let modulus = NetSection::whole(wood.section()).map_err(|refused| refused.0)?.least_modulus();
    let solid = strength.value * modulus;
    let capacity = solid * share;
    let mut steps = strength.steps;
    let says = format!(
        "M_scarf = {share:.2}·F_b'·S = {share:.2}·{:.0}·{:.1} = {:.0} lb·in; the uncut beam has {:.0} lb·in here",
        strength.value.to_psi(),
        modulus.to_cubic_inches(),
        capacity.to_pound_inches(),
        moment.to_pound_inches()
    );
    steps.push(Step::new("share of the solid beam", says, citation));
    steps.push(Step::new(
        "posts that sink",
        "not counted here: a scarf is a hinge and follows a post that sinks, and its load needs no moment of it; its halves, what \
         opens it and the pieces are judged with each post sunk in turn",
        Citation::common_practice("what a movement forces on stiff wood is no load of a joint that turns"),
    ));
    Ok(Worked::new(Verdict::moment(moment, capacity), steps))
}

/// Whether the upper half presses on the lower one in every case; if not, what must hold the lap shut.
fn opens(with: &BeamChecks, scarf: &ScarfReport, mark: &str) -> Option<Check> {
    let pressed = |solved: &Solved| Some(passed(solved, scarf)?.force());
    let all: Vec<_> = with.strength().filter_map(|(solved, case)| Some((pressed(solved)?, solved, case))).collect();
    let forces: Vec<Force> = all.iter().map(|(force, ..)| *force).collect();
    let tie = &with.project.fixings.scarf;
    // The case that asks most of the fasteners, with its own force and duration.
    let (hardest, solved, case) = most(all.iter(), |(force, _, case)| -force.to_pounds() / case.duration.factor())?;
    let made = match lap_action(&forces) {
        Err(why) => Err(why.into()),
        Ok(LapAction::Opens(_)) if tie.count == 0 => Err(Unmade::missing(
            Input::Scarf,
            "the lap is lifted open and the screws or bolts that must hold it are missing",
        )),
        Ok(LapAction::Opens(_)) => {
            let force = -*hardest;
            let capacity = held_at_root(with, case.duration);
            let says = format!(
                "lifted by {:.0} lb; {} fasteners at {:.0} lb with C_D = {:.2}: {:.0} lb ({})",
                force.to_pounds(),
                tie.count,
                tie.pull.to_pounds(),
                case.duration.factor(),
                capacity.to_pounds(),
                tie.source
            );
            let step = Step::new(
                "what holds the lap shut",
                says,
                Citation::common_practice("pegs and wedges are not counted"),
            );
            Ok(Worked::new(Verdict::force(force, capacity), vec![step]))
        }
        Ok(LapAction::Closes | LapAction::Idle) => {
            let step = Step::new(
                "lap",
                "the upper half presses on the lower one in every case",
                Citation::common_practice("level laps"),
            );
            Ok(Worked::new(Verdict::force(Force::ZERO, Force::pounds(1.0)), vec![step]))
        }
    };
    Some(Check::new(mark, LIFTED_OPEN, "", with.under(solved, case).asks("P that shuts it", *hardest), made))
}

//! The pegs of a post's head where the beam lifts off it: what they carry, and the wood they need so that it does not split.
//!
//! One rule for strength and sheets ([`head_peg_holds`]): a peg with all the wood it needs is counted whole, one with less
//! locates the joint. The distances are the check against splitting: across its grain wood has no allowed tension (NDS 3.8.2,
//! from memory).
use super::beam::BeamChecks;
use super::check::{Check, Under, Way};
use super::governing::{hardest, most};
use super::part::Part;
use crate::analysis::{BeamCase, Purpose};
use crate::fastening::{
    AlikeRows, GREEN_PEGS_MISSING, PegJoint, PegRow, SPLITTING_NOT_COVERED, peg_group, peg_needs, peg_room, torn_out,
};
use crate::geometry::PostShape;
use crate::joinery::{head_peg_holds, head_peg_places, head_peg_room};
use crate::loads::Duration;
use crate::materials::species;
use crate::members::{Property, Verdict, adjusted};
use crate::project::Used;
use crate::units::{Fixed, Force, Length};
use crate::working::{Citation, Step, Worked};

/// Specific gravity of the pegs: seasoned oak (NDS, red oak).
pub(super) const PEG_GRAVITY: f64 = 0.67;
/// Name of the check of a post head's pegs.
pub const PULLS_ON_PEGS: &str = "pulls on its pegs";
/// Name of the check of the wood around them.
pub const NEEDS_WOOD: &str = "needs wood around the pegs of its head, not to split";
const AT: &str = "at the head";

/// Both checks of a post's head, of all cases that lift it; nothing where none does.
pub(super) fn check_head_pegs(with: &BeamChecks, index: usize, post: &PostShape) -> Vec<Check> {
    lifted(with, index, post, |_| true)
}

/// The same of every head, of wind and earthquake alone.
pub(super) fn lifted_heads(with: &BeamChecks) -> Vec<Check> {
    let posts = with.shape.posts.iter().enumerate();
    posts.flat_map(|(index, post)| lifted(with, index, post, |case| case.duration == Duration::TenMinutes)).collect()
}

/// Where the beam lifts off, the pegs of the post's head hold it. A sunk foot does not count: it hangs no more on its post
/// than itself.
fn lifted(with: &BeamChecks, index: usize, post: &PostShape, counts: impl Fn(&BeamCase) -> bool) -> Vec<Check> {
    let lifting = with.strength().filter(|(_, case)| case.purpose != Purpose::Sunk && counts(case));
    let loads = lifting.filter_map(|(solved, case)| {
        let pull = -solved.posts.get(index)?.top;
        (pull > Force::ZERO).then_some((pull.to_pounds(), case.duration, (pull, solved, case)))
    });
    let Some((_, duration, (pull, solved, case))) = hardest(loads) else { return Vec::new() };
    // Lifted by wind or earthquake: the roof off it, or a push along the wall. Snow on one bay may lift a far post as well.
    let way = (duration == Duration::TenMinutes).then_some(Way::Up);
    let under = Under { way, ..with.under(solved, case) }.asks("T", pull);
    let mark = format!("P{}", post.number);
    let room = Check::new(&mark, NEEDS_WOOD, "", under.clone(), room(with, post)).of_distances();
    let held: Vec<usize> =
        (0..head_peg_places(post).len()).filter(|peg| head_peg_holds(with.project, post, *peg)).collect();
    if held.is_empty() {
        return Part::Pegs.of(vec![room]);
    }
    let made = pegs(with, post, &held, duration).map(|held| Worked::new(Verdict::force(pull, held.value), held.steps));
    Part::Pegs.of(vec![room, Check::new(mark, PULLS_ON_PEGS, AT, under, made)])
}

/// What is needed by what there is around a peg: a peg with too little locates the joint, and the others may hold it.
fn room(with: &BeamChecks, post: &PostShape) -> Result<Worked<Verdict>, String> {
    let needs = peg_needs(&with.project.frame.species).map_err(|refused| refused.to_string())?;
    let of = |peg| peg_room(post.rules.peg, head_peg_room(post, peg), needs).map_err(|refused| refused.to_string());
    let all = (0..head_peg_places(post).len()).map(of).collect::<Result<Vec<_>, String>>()?;
    // Of those that are counted on the one with least wood; where none is, the one that comes nearest to it.
    let (held, short): (Vec<_>, Vec<_>) = all.into_iter().partition(|found| found.value >= 1.0 - 1e-6);
    let least = most(held.into_iter(), |found| -found.value).or_else(|| most(short.into_iter(), |found| found.value));
    let Worked { value, mut steps } = least.ok_or("its head has no pegs")?;
    let splits = Citation::from_memory("NDS 2018", "3.8.2");
    steps.push(Step::new("splitting", SPLITTING_NOT_COVERED, splits));
    let asked = if value > 0.0 { 1.0 / value } else { f64::INFINITY };
    // Distances that are just met are no noise of the arithmetic.
    let asked = if (asked - 1.0).abs() < 1e-6 { 1.0 } else { asked };
    Ok(Worked::new(Verdict::sum_of_shares(asked), steps))
}

/// What the pegs of a post's head carry that have their wood: their own strength, or the wood behind the one with the least
/// of it, the lesser; each takes the same share.
fn pegs(with: &BeamChecks, post: &PostShape, held: &[usize], duration: Duration) -> Result<Worked<Force>, String> {
    let (rules, timbers) = (&post.rules, &with.project.frame.timbers);
    let wood = species(&with.project.frame.species).ok_or("the wood has no specific gravity")?;
    let across = timbers.beam.sawn.breadth;
    let wall = rules.tenon_offset.min(across - rules.tenon_offset - rules.tenon_thickness);
    let n = u32::try_from(held.len()).unwrap_or(u32::MAX);
    let joint = PegJoint::pulled(rules.peg, [PEG_GRAVITY, wood.specific_gravity], rules.tenon_thickness, wall);
    let group = peg_group(&joint, n, duration.factor()).map_err(|refused| refused.to_string())?;
    let member = with.woods.member(Used::Post, duration)?;
    let (shear, tension) = (adjusted(&member, Property::Shear).value, adjusted(&member, Property::Tension).value);
    // Pegs side by side across the tenon: a row of one each.
    let ends = held.iter().map(|peg| head_peg_room(post, *peg).end);
    let end = ends.reduce(Length::min).ok_or("its head has no pegs")?;
    let places = head_peg_places(post);
    let between = match (&places[..], n) {
        ([one, other], 2) => Some(*other - *one - rules.peg),
        _ => None,
    };
    let rows = AlikeRows {
        row: PegRow { n: 1, thickness: rules.tenon_thickness, end, spacing: None },
        n: held.len(),
        width: post.tenon.1 - post.tenon.0,
        holes: rules.peg * places.len() as f64,
        between,
    };
    let torn = torn_out(shear, tension, rows).map_err(|refused| refused.to_string())?;
    let value = group.value.min(torn.least());
    let block = torn.block.map(|block| block.steps).unwrap_or_default();
    let mut steps = [group.steps, torn.row.steps, torn.net.steps, block].concat();
    let says = format!(
        "{n} rows: {} lb; the least of pegs, relish, block and net tenon: {} lb",
        Fixed(torn.rows.to_pounds(), 0),
        Fixed(value.to_pounds(), 0)
    );
    steps.push(Step::new("what the pegs hold", says, Citation::from_memory("TFEC 1-10", "pegs in double shear")));
    let moisture = Citation::placeholder("TFEC 1-10", "moisture of pegged joints");
    steps.push(Step::new("moisture", GREEN_PEGS_MISSING, moisture));
    Ok(Worked::new(value, steps))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::project::{JointException, Project, demo};

    /// P3's head in the barn with pegs of its own.
    fn barn(tenon: f64, peg: f64, from_shoulder: f64) -> Project {
        let mut barn = demo::wool_barn();
        let inches = |size| Some(Length::inches(size));
        let own = JointException {
            tenon_length: inches(tenon),
            peg: inches(peg),
            peg_from_shoulder: inches(from_shoulder),
            ..JointException::default()
        };
        barn.exceptions.insert("P3".to_owned(), own);
        barn
    }

    /// Room needed by room there, and share of the pegs' strength; what the sheet says of both pegs.
    fn judged(barn: &Project) -> (f64, Option<f64>, [bool; 2]) {
        let design = evaluate(barn);
        let strength = design.strength.as_ref().unwrap();
        let of = |name: &str| strength.checks.iter().find(|check| check.member == "P3" && check.name == name);
        let sheet = design.built.as_ref().unwrap().sticks.iter().find(|sheet| sheet.mark == "P3").unwrap();
        let locates = [1, 2].map(|peg| {
            let mark = sheet.marks.iter().find(|mark| mark.what == format!("tenon peg {peg}")).unwrap();
            mark.note.contains("locating, no tension")
        });
        (of(NEEDS_WOOD).and_then(Check::ratio).unwrap(), of(PULLS_ON_PEGS).map(|check| check.ratio().unwrap()), locates)
    }

    /// Hemlock: 4D to the end, 4D to the edge, 3D apart (TFEC 1, from memory). Pegs of 1 in, 1½ in from the shoulder in a tenon
    /// of 4 in: 4/1½ = 2.67 for the first and, half an inch farther up with 4 − 2 + ⅛ = 2⅛ in beyond it, 4/2 for the second.
    /// None counts.
    #[test]
    fn pegs_with_too_little_wood() {
        let (room, pulled, locates) = judged(&barn(4.0, 1.0, 1.5));
        assert!((room - 2.0).abs() < 1e-9, "{room}");
        assert_eq!((pulled, locates), (None, [true, true]));
    }

    /// Pegs of ⅞ in need 3½ in each way: 3½ in from the shoulder in a tenon of 7⅜ in, whose end is 7⅜ − 3½ + ⅛ = 4 in past the
    /// first hole and 4 − 7/16 past the second. Both count: two of 747·(7/8)² lb (mode V of a 1 in peg) at C_D = 1.6.
    #[test]
    fn pegs_with_their_wood() {
        let long = barn(7.375, 0.875, 3.5);
        let (room, pulled, locates) = judged(&long);
        assert!(room <= 1.0 && locates == [false, false], "{room} {locates:?}");
        let strength = evaluate(&long).strength.unwrap();
        let line = strength.line.as_ref().unwrap();
        let pull = line.strength().map(|(solved, _)| -solved.posts[2].top.to_pounds()).fold(0.0, f64::max);
        let peg = std::f64::consts::PI * 0.875 * 0.875 * 4850.0 * 0.67 * 0.41_f64.powf(0.75) / 7.0;
        assert!((pulled.unwrap() - pull / (2.0 * peg * 1.6)).abs() < 1e-6);
        // A quarter of an inch less of tenon, and the second, whose end is 3 5/16 in past it, only locates.
        let (room, one, locates) = judged(&barn(7.125, 0.875, 3.5));
        assert!(room <= 1.0 && locates == [false, true], "{room} {locates:?}");
        assert!((one.unwrap() / pulled.unwrap() - 2.0).abs() < 0.02);
    }

    /// By hand: a tenon 2 in thick less its two holes of ⅞ in; the block between its pegs, which stand at the quarters, is half as
    /// wide as the tenon less one hole, and the plugs on its sides are half of either row.
    #[test]
    fn the_tenon_itself_is_weighed() {
        let strength = evaluate(&barn(7.375, 0.875, 3.5)).strength.unwrap();
        let of = |check: &&Check| check.member == "P3" && check.name == PULLS_ON_PEGS;
        let check = strength.checks.iter().find(of).unwrap();
        let says = |gives: &str| check.steps().iter().find(|step| step.gives == gives).unwrap().says.clone();
        let built = evaluate(&barn(7.375, 0.875, 3.5)).built.unwrap();
        let post = &built.shape.posts[2];
        let width = (post.tenon.1 - post.tenon.0).to_inches();
        let long = barn(7.375, 0.875, 3.5);
        let wood = crate::checks::Woods::new(&long).member(Used::Post, Duration::TenMinutes).unwrap();
        let tension = adjusted(&wood, Property::Tension).value.to_psi();
        let (net, area) = (tension * (width - 1.75) * 2.0, (width / 2.0 - 0.875) * 2.0);
        let pounds = |text: &str| {
            let last = text.rsplit(" = ").next().unwrap().replace(',', "");
            last.trim_end_matches(" lb").parse::<f64>().unwrap()
        };
        assert!((pounds(&says("Z′_NT, net tension at the holes")) - net).abs() < 1.0, "{net}");
        let row = pounds(&says("Z′_RT, row tear-out"));
        assert!((pounds(&says("Z′_GT, block tear-out")) - (row + tension * area)).abs() < 1.0, "{row} {area}");
    }
}

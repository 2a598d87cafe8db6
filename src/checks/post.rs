//! Posts: pushed and bent by their braces, their end grain, their pegs where the roof lifts; the frame's sway.
use super::beam::{BeamChecks, hardest, named};
use super::check::Check;
use super::part::Part;
use super::post_head::check_post_heads;
use crate::analysis::{BeamCase, Purpose, slack_sway};
use crate::fastening::{PegJoint, PegRow, peg_group, row_tear_out};
use crate::geometry::{PostShape, post_housing};
use crate::loads::Duration;
use crate::materials::species;
use crate::members::{
    BeamColumn, Bracing, ColumnLengths, Member, NetSection, Pocket, Property, ShearPlace, UnbracedCase, Verdict,
    adjusted, check_bending_and_compression, check_deflection, check_end_grain, check_shear,
};
use crate::project::{Side, Used};
use crate::units::{Force, Length, Moment};
use crate::working::{Citation, Step, Worked};

/// Specific gravity of the pegs: seasoned oak (NDS, red oak).
pub(super) const PEG_GRAVITY: f64 = 0.67;
/// Name of the check of a post head's pegs.
pub const PULLS_ON_PEGS: &str = "pulls on its pegs";
/// Sway allowed, a share of the height.
const SWAY_SHARE: f64 = 200.0;

/// Every check of the posts and of the line's sway.
#[must_use]
pub fn check_posts(with: &BeamChecks) -> Vec<Check> {
    let each = with.shape.posts.iter().enumerate();
    let mut checks: Vec<Check> = each.flat_map(|(index, post)| one(with, index, post)).collect();
    checks.extend(check_post_heads(with));
    checks.extend(sway(with));
    checks
}

fn one(with: &BeamChecks, index: usize, post: &PostShape) -> Vec<Check> {
    let mark = format!("P{}", post.number);
    let found = [
        pushed(with, index, post, &mark),
        sheared(with, index, post, &mark),
        end_grain(with, index, post, &mark),
        lifted(with, index, post, &mark),
    ];
    found.into_iter().flatten().map(|check| check.at_x(post.middle())).collect()
}

/// Push and bending of one case together: the case with the largest sum of shares, buckling left out.
fn pushed(with: &BeamChecks, index: usize, post: &PostShape, mark: &str) -> Option<Check> {
    let section = with.project.frame.timbers.post.sawn;
    let off = off_centre(with);
    let net = match at_the_knee(with, post) {
        Ok(net) => net,
        Err(why) => return Some(Check::not_judged(mark, "is pushed and bent", why)),
    };
    let strengths = with.woods.member(Used::Post, Duration::TenYears).map(|wood| {
        (adjusted(&wood, Property::Bending).value.to_psi(), adjusted(&wood, Property::Compression).value.to_psi())
    });
    let (bending, compression) = strengths.unwrap_or((1.0, 1.0));
    let modulus = net.turned().least_modulus().to_cubic_inches();
    let weigh = |push: Force, moment: Moment| {
        let stress = push.to_pounds() / section.area().to_square_inches();
        stress / compression + (moment.to_pound_inches() / modulus + stress * 6.0 * (off / section.depth)) / bending
    };
    let loads = with.line.strength().filter_map(|(solved, case)| {
        let part = solved.posts.get(index)?;
        let push = part.foot.max(Force::ZERO);
        let wind = wind_on_faces(with, post, case);
        Some((weigh(push, part.moment + wind[0] + wind[1]), case.duration, (push, part.moment, wind, solved, case)))
    });
    let (_, duration, (push, moment, wind, solved, case)) = hardest(loads)?;
    let wood = with.woods.member(Used::Post, duration);
    let made = wood.and_then(|wood| column(&wood, (push, off), [moment + wind[0], wind[1]], net, post.body()));
    let made = made.map(|mut made| {
        made.steps.splice(0..0, wind_step(with, post, case));
        made
    });
    Some(Check::new(mark, "is pushed and bent", "", named(solved, case), made))
}

/// Bending of a post by the wind on its own face, along the wall and out from it: w·h²/8 between foot and shoulder. Wind along
/// the wall meets its side, any other its front.
fn wind_on_faces(with: &BeamChecks, post: &PostShape, case: &BeamCase) -> [Moment; 2] {
    let section = with.project.frame.timbers.post.sawn;
    let pressure = with.line.on_faces.unwrap_or_default() * case.wind;
    let bent = |face: Length| (pressure * (face * post.body())) * (post.body() / 8.0);
    let is_along = case.purpose == Purpose::Along;
    if is_along { [bent(section.depth), Moment::ZERO] } else { [Moment::ZERO, bent(section.breadth)] }
}

fn wind_step(with: &BeamChecks, post: &PostShape, case: &BeamCase) -> Option<Step> {
    let pressure = with.line.on_faces.filter(|_| case.wind != 0.0)?;
    let [along, across] = wind_on_faces(with, post, case).map(Moment::to_pound_inches);
    let says = format!(
        "M = {}·p·b·h²/8 with p = {:.1} psf, h = {:.1} in: {:.0} lb-in",
        case.wind,
        pressure.to_psf(),
        post.body().to_inches(),
        along + across
    );
    let source = Citation::from_memory("ASCE 7-16", "chapter 29, members of an open frame; statics");
    Some(Step::new("wind on the post's own face", says, source))
}

/// How far the middle of a rafter's seat is from the middle of the post under the beam: both are measured from the outer
/// face, and the seat begins there.
pub(super) fn off_centre(with: &BeamChecks) -> Length {
    (with.project.frame.timbers.post.sawn.depth - with.shape.rafter.beam.seat).abs() / 2.0
}

/// What the housings and mortises of its braces leave of the post where they push it: there it bends most.
fn at_the_knee(with: &BeamChecks, post: &PostShape) -> Result<NetSection, String> {
    let frame = &with.project.frame;
    let section = frame.timbers.post.sawn;
    let across = frame.timbers.brace.sawn.breadth.min(section.depth);
    let mut net = NetSection::whole(section).map_err(|refused| refused.0)?;
    for brace in with.shape.braces.iter().filter(|brace| brace.post == post.number) {
        let rules = &brace.foot;
        let behind = section.depth - rules.tenon_offset - rules.tenon_thickness;
        let deep = rules.brace_tenon + rules.blind_clearance;
        let housing = post_housing(frame, rules, brace.side);
        let from_left = |near: Length, size: Length| match brace.side {
            Side::Left => near,
            Side::Right => section.breadth - near - size,
        };
        let from_bottom = behind.min(section.depth - across).max(Length::ZERO);
        if housing > Length::ZERO {
            let cut =
                Pocket { from_left: from_left(Length::ZERO, housing), breadth: housing, from_bottom, depth: across };
            net = net.without(cut).map_err(|refused| refused.0)?;
        }
        let from_left = from_left(housing.max(Length::ZERO), deep);
        let cut = Pocket { from_left, breadth: deep, from_bottom: behind, depth: rules.tenon_thickness };
        net = net.without(cut).map_err(|refused| refused.0)?;
    }
    Ok(net)
}

/// Sway is in the forces already, so the post counts as held at both ends, K = 1, both ways. Braces bend it along the
/// beam, across its breadth; rafters that sit off its middle bend it across its depth, most at its head.
fn column(
    wood: &Member,
    (push, off): (Force, Length),
    [along, across]: [Moment; 2],
    net: NetSection,
    length: Length,
) -> Result<Worked<Verdict>, String> {
    let lengths = ColumnLengths::pinned(length);
    let asked = BeamColumn {
        push,
        moment_depthwise: across,
        moment_breadthwise: along,
        off_centre_depthwise: off,
        off_centre_breadthwise: Length::ZERO,
        net,
        lengths,
        bracing: Bracing::Free { length, case: UnbracedCase::Other },
    };
    check_bending_and_compression(wood, &asked).map_err(|refused| refused.0)
}

/// Its braces' thrust goes to head and foot: the shear between knee and shoulder, M/(H − a) with a the knee's height.
fn sheared(with: &BeamChecks, index: usize, post: &PostShape, mark: &str) -> Option<Check> {
    let parts = with.line.model.posts.get(index)?;
    let above = parts.height - parts.knee?;
    let shears = with.line.strength().filter_map(|(solved, case)| {
        let shear = solved.posts.get(index)?.moment / above;
        Some((shear.to_pounds(), case.duration, (shear, solved, case)))
    });
    let (_, duration, (shear, solved, case)) = hardest(shears)?;
    let net = at_the_knee(with, post).map(|net| net.turned());
    let made = with
        .woods
        .member(Used::Post, duration)
        .and_then(|wood| check_shear(&wood.turned(), shear, &ShearPlace::Net(net?)).map_err(|refused| refused.0));
    Some(Check::new(mark, "shears", "above its braces", named(solved, case), made))
}

/// The shoulder's end grain beside the tenon.
fn end_grain(with: &BeamChecks, index: usize, post: &PostShape, mark: &str) -> Option<Check> {
    let loads = with.line.strength().filter_map(|(solved, case)| {
        let push = solved.posts.get(index)?.top.max(Force::ZERO);
        Some((push.to_pounds(), case.duration, (push, solved, case)))
    });
    let (_, duration, (push, solved, case)) = hardest(loads)?;
    let tenon = (post.tenon.1 - post.tenon.0) * post.rules.tenon_thickness;
    let net = with.project.frame.timbers.post.sawn.area() - tenon;
    let made = with
        .woods
        .member(Used::Post, duration)
        .and_then(|wood| check_end_grain(&wood, push, net, false).map_err(|refused| refused.0));
    Some(Check::new(mark, "is pressed on its end", "at the shoulder", named(solved, case), made))
}

/// Where the beam lifts off, the pegs of the post's head hold it. A sunk foot does not count: it hangs no more on its post
/// than itself.
fn lifted(with: &BeamChecks, index: usize, post: &PostShape, mark: &str) -> Option<Check> {
    let lifting = with.line.strength().filter(|(_, case)| case.purpose != Purpose::Sunk);
    let loads = lifting.filter_map(|(solved, case)| {
        let pull = -solved.posts.get(index)?.top;
        (pull > Force::ZERO).then_some((pull.to_pounds(), case.duration, (pull, solved, case)))
    });
    let (_, duration, (pull, solved, case)) = hardest(loads)?;
    let made = pegs(with, post, duration).map(|worked| Worked::new(Verdict::force(pull, worked.value), worked.steps));
    Some(Check::new(mark, PULLS_ON_PEGS, "at the head", named(solved, case), made).part(Part::Pegs))
}

/// What the pegs of a post's head carry: their own strength, or the wood behind them, the lesser.
fn pegs(with: &BeamChecks, post: &PostShape, duration: Duration) -> Result<Worked<Force>, String> {
    let (rules, timbers) = (&post.rules, &with.project.frame.timbers);
    let wood = species(&with.project.frame.species).ok_or("the wood has no specific gravity")?;
    let across = timbers.beam.sawn.breadth;
    let wall = rules.tenon_offset.min(across - rules.tenon_offset - rules.tenon_thickness);
    let width = post.tenon.1 - post.tenon.0;
    let n = if width >= rules.two_pegs_from { 2 } else { 1 };
    let joint = PegJoint::pulled(rules.peg, [PEG_GRAVITY, wood.specific_gravity], rules.tenon_thickness, wall);
    let group = peg_group(&joint, n, duration.factor()).map_err(|refused| refused.to_string())?;
    let member = with.woods.member(Used::Post, duration)?;
    let shear = adjusted(&member, Property::Shear).value;
    // Pegs side by side across the tenon: a row of one each.
    let end = post.tenon_length - rules.peg_from_shoulder;
    let row = PegRow { n: 1, thickness: rules.tenon_thickness, end, spacing: None };
    let tear = row_tear_out(shear, row).map_err(|refused| refused.to_string())?;
    let torn = tear.value * f64::from(n);
    let value = group.value.min(torn);
    let mut steps = group.steps;
    steps.extend(tear.steps);
    let says =
        format!("{n} rows: {:.0} lb; the lesser of pegs and relish: {:.0} lb", torn.to_pounds(), value.to_pounds());
    steps.push(Step::new("what the pegs hold", says, Citation::from_memory("TFEC 1-10", "pegs in double shear")));
    let moisture = Citation::placeholder("TFEC 1-10", "moisture of pegged joints");
    steps.push(Step::new("moisture", crate::fastening::GREEN_PEGS_MISSING, moisture));
    Ok(Worked::new(value, steps))
}

/// Sway of the line under wind along the wall, against a two-hundredth of its height.
fn sway(with: &BeamChecks) -> Option<Check> {
    let along = with.line.purpose(Purpose::Along).filter(|(_, case)| case.duration == Duration::TenMinutes);
    let (solved, case) = along.max_by(|a, b| a.0.sway.to_inches().total_cmp(&b.0.sway.to_inches()))?;
    let height = with.shape.posts.iter().map(PostShape::body).fold(Length::ZERO, Length::max);
    let limit = height / SWAY_SHARE;
    let says = format!("h/200 = {:.1}/200 = {:.3} in", height.to_inches(), limit.to_inches());
    let mut steps = vec![Step::new("sway allowed", says, Citation::common_practice("h/200 of an open frame"))];
    if let Some(second) = &with.line.second_order {
        steps.extend(second.steps.iter().cloned());
    }
    let slack = slack_sway(with.project, height);
    steps.extend(slack.steps);
    let made = check_deflection(solved.sway + slack.value, Worked::new(limit, steps));
    Some(Check::new("the posts", "sway along the wall", "", named(solved, case), made))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::checks::{strength, wood::Woods};
    use crate::evaluate;
    use crate::project::demo;

    /// P4 of the barn, 8 in square and 86 in tall: 0.6 of 33.5 psf on its face, 0.6·33.5/144·8·86²/8 = 1031 lb-in, along the
    /// wall on its side, else on its front; without wind none.
    #[test]
    fn wind_on_its_own_face_by_hand() {
        let project = demo::wool_barn();
        let shape = &evaluate(&project).built.unwrap().shape;
        let line = strength(&project, shape).line.unwrap();
        let with = BeamChecks { project: &project, shape, line: &line, woods: &Woods::new(&project) };
        assert!((line.on_faces.unwrap().to_psf() - 33.5).abs() < 0.05);
        let by_hand = 0.6 * line.on_faces.unwrap().to_psf() / 144.0 * 8.0 * 86.0 * 86.0 / 8.0;
        let post = &shape.posts[3];
        let of = |name: &str| {
            let case = line.cases.iter().find(|case| case.name.starts_with(name)).unwrap();
            wind_on_faces(&with, post, case).map(Moment::to_pound_inches)
        };
        let [along, across] = of("0.6D + 0.6W: wind along the wall from the left");
        assert!((along - by_hand).abs() < 1e-6 && across == 0.0, "{along} {by_hand}");
        let [along, across] = of("0.6D + 0.6W: wind onto the wall");
        assert!((across - by_hand).abs() < 1e-6 && along == 0.0, "{across} {by_hand}");
        assert_eq!(of("D + S: balanced snow"), [0.0, 0.0]);
        let says = wind_step(&with, post, line.cases.iter().find(|case| case.wind == 0.6).unwrap()).unwrap().says;
        assert!(says.ends_with("1031 lb-in"), "{says}");
    }
}

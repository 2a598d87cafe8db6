//! Posts: pushed and bent by their braces, their end grain, their pegs where the roof lifts; the frame's sway.
use super::beam::BeamChecks;
use super::check::Check;
use super::governing::{hardest, may_govern, most};
use super::head_pegs::check_head_pegs;
use super::post_head::check_post_heads;
use crate::analysis::{BeamCase, Purpose, slack_sway};
use crate::geometry::{PostShape, post_housing};
use crate::loads::Duration;
use crate::members::{
    BeamColumn, Bracing, ColumnKind, ColumnLengths, Member, NetSection, Pocket, Property, ShearPlace, UnbracedCase,
    Verdict, adjusted, beam_stability, beam_stability_from_ratio, check_bending_and_compression, check_deflection,
    check_end_grain, check_shear, column_stability_from_ratio, end_grain_strength,
};
use crate::project::{Side, Used};
use crate::units::{Force, Length, Moment, Stress};
use crate::working::{Citation, Step, Worked};

/// Names of the checks the way of the weight finds.
pub(super) const PUSHED: &str = "is pushed and bent";
pub(super) const END_GRAIN: &str = "is pressed on its end";
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
    let found =
        [pushed(with, index, post, &mark), sheared(with, index, post, &mark), end_grain(with, index, post, &mark)];
    let pegs = check_head_pegs(with, index, post);
    found.into_iter().flatten().chain(pegs).map(|check| check.at_x(post.middle())).collect()
}

/// Push and bending of one case together, the case found by the ratio itself: C_P keeps a slender post from what C_D gives.
fn pushed(with: &BeamChecks, index: usize, post: &PostShape, mark: &str) -> Option<Check> {
    let off = off_centre(with);
    let net = match at_the_knee(with, post) {
        Ok(net) => net,
        Err(why) => return Some(Check::not_judged(mark, PUSHED, why)),
    };
    let loads = with.strength().filter_map(|(solved, case)| {
        let part = solved.posts.get(index)?;
        let push = part.foot.max(Force::ZERO);
        let [along, across] = wind_on_faces(with, post, case);
        let moments = [part.moment + along, across];
        let [along, across] = moments.map(Moment::to_pound_inches);
        Some(([push.to_pounds(), along, across], case.duration, (push, moments, solved, case)))
    });
    let mut loads = may_govern(loads);
    if let Ok(wood) = with.woods.member(Used::Post, Duration::TenYears) {
        let weigh = Column::new(&wood, &net, post.body(), off);
        let shares: Vec<f64> = loads.iter().map(|(sizes, duration, _)| weigh.share(*sizes, *duration)).collect();
        let most = shares.iter().copied().fold(0.0, f64::max);
        let mut shares = shares.into_iter();
        loads.retain(|_| shares.next().is_none_or(|share| share >= most * weigh.near));
    }
    let made = loads.into_iter().map(|(_, duration, (push, moments, solved, case))| {
        let wood = with.woods.member(Used::Post, duration);
        let made = wood.and_then(|wood| column(&wood, (push, off), (moments, net.clone()), post.body()));
        let made = made.map(|mut made| {
            made.steps.splice(0..0, wind_step(with, post, case));
            made
        });
        let [along, across] = moments.map(Moment::abs);
        let under =
            with.under(solved, case).asks("P", push).asks("M along the wall", along).asks("M across it", across);
        Check::new(mark, PUSHED, "", under, made)
    });
    Check::worst_of(made)
}

/// A post by numbers alone, to weigh many cases: Eq. 3.9-3 with 15.4 and Eq. 3.9-4, as [`check_bending_and_compression`] has
/// them of a post that is not broader than deep.
struct Column {
    area: f64,
    /// On edge, and flatwise.
    moduli: [f64; 2],
    /// Edge stress of the push off the centre, a share of f_c.
    edge: f64,
    /// F_cE across the depth and across the breadth.
    critical: [f64; 2],
    /// F_bE, and whether C_L is less than 1.
    rolling: (f64, bool),
    compression: f64,
    /// On edge, and flatwise.
    bending: [f64; 2],
    /// A case of so much of the largest share may still govern: a post broader than deep is judged the other way round.
    near: f64,
}

impl Column {
    /// `wood`: of ten years.
    fn new(wood: &Member, net: &NetSection, length: Length, off: Length) -> Self {
        let section = wood.section();
        let bending = |wood: &Member| adjusted(wood, Property::Bending).value.to_psi();
        let stiffness = adjusted(wood, Property::LeastStiffness).value.to_psi();
        let critical = |size: Length| 0.822 * stiffness / (length / size).powi(2);
        let rolling = beam_stability(wood, Bracing::Free { length, case: UnbracedCase::Other });
        let rolling = rolling.ok().and_then(|made| made.value.critical).map_or(f64::INFINITY, Stress::to_psi);
        Self {
            area: section.area().to_square_inches(),
            moduli: [net.least_modulus(), net.turned().least_modulus()].map(|modulus| modulus.to_cubic_inches()),
            edge: 6.0 * (off.abs() / section.depth),
            critical: [critical(section.depth), critical(section.breadth)],
            rolling: (rolling, section.depth > section.breadth),
            compression: end_grain_strength(wood).value.to_psi(),
            bending: [bending(wood), bending(&wood.turned())],
            near: if section.depth < section.breadth { 0.9 } else { 1.0 - 1e-9 },
        }
    }

    fn share(&self, [push, along, across]: [f64; 3], duration: Duration) -> f64 {
        let star = self.compression * duration.factor();
        let [on_edge, flatwise] = self.bending.map(|bending| bending * duration.factor());
        let ([deep, broad], (rolling, is_deep)) = (self.critical, self.rolling);
        let (fc, bent, fb) = (push / self.area, across / self.moduli[0], along / self.moduli[1]);
        let edge = fc * self.edge;
        let rolled = ((bent + edge) / rolling).powi(2);
        let unstable = (fc / broad + rolled).max(fc / deep).max((bent + edge) / rolling);
        if unstable >= 1.0 {
            return unstable;
        }
        let strength = star * column_stability_from_ratio(deep.min(broad) / star, ColumnKind::Sawn);
        let held = if is_deep { beam_stability_from_ratio(rolling / on_edge) } else { 1.0 };
        let off = (bent + edge * (1.0 + 0.234 * fc / deep)) / (on_edge * held * (1.0 - fc / deep));
        let flat = fb / (flatwise * (1.0 - fc / broad - rolled));
        ((fc / strength).powi(2) + off + flat).max(unstable)
    }
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
    ([along, across], net): ([Moment; 2], NetSection),
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
    let shears = with.strength().filter_map(|(solved, case)| {
        let shear = solved.posts.get(index)?.moment / above;
        Some((shear.to_pounds(), case.duration, (shear, solved, case)))
    });
    let (_, duration, (shear, solved, case)) = hardest(shears)?;
    let net = at_the_knee(with, post).map(|net| net.turned());
    let made = with
        .woods
        .member(Used::Post, duration)
        .and_then(|wood| check_shear(&wood.turned(), shear, &ShearPlace::Net(net?)).map_err(|refused| refused.0));
    Some(Check::new(mark, "shears", "above its braces", with.under(solved, case).asks("V", shear), made))
}

/// The shoulder's end grain beside the tenon.
fn end_grain(with: &BeamChecks, index: usize, post: &PostShape, mark: &str) -> Option<Check> {
    let loads = with.strength().filter_map(|(solved, case)| {
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
    Some(Check::new(mark, END_GRAIN, "at the shoulder", with.under(solved, case).asks("P", push), made))
}

/// The posts as the weight passes through them, to be asked of the cases in which the roof presses.
pub(super) fn pressed_posts(with: &BeamChecks) -> Vec<Check> {
    let of = |(index, post): (usize, &PostShape)| {
        let mark = format!("P{}", post.number);
        [pushed(with, index, post, &mark), sheared(with, index, post, &mark), end_grain(with, index, post, &mark)]
    };
    with.shape.posts.iter().enumerate().flat_map(of).flatten().collect()
}

/// Sway of the line under wind along the wall, against a two-hundredth of its height.
fn sway(with: &BeamChecks) -> Option<Check> {
    let along = with.line.purpose(Purpose::Along).filter(|(_, case)| case.duration == Duration::TenMinutes);
    let (solved, case) = most(along, |(solved, _)| solved.sway.to_inches())?;
    let height = with.shape.posts.iter().map(PostShape::body).fold(Length::ZERO, Length::max);
    let limit = height / SWAY_SHARE;
    let says = format!("h/200 = {:.1}/200 = {:.3} in", height.to_inches(), limit.to_inches());
    let mut steps = vec![Step::new("sway allowed", says, Citation::common_practice("h/200 of an open frame"))];
    // It need not be of the push that sways most: that one may have little weight on it.
    if let Some(second) = &with.line.second_order {
        let named =
            |step: &Step| Step { gives: format!("largest of all pushes: {}", step.gives).into(), ..step.clone() };
        steps.extend(second.steps.iter().map(named));
    }
    let slack = slack_sway(with.project, height);
    steps.extend(slack.steps);
    let all = solved.sway + slack.value;
    let [frame, joints, all_in] = [solved.sway, slack.value, all].map(Length::to_inches);
    let says = format!("Δ and the slack of the joints: {frame:.3} + {joints:.3} = {all_in:.3} in");
    steps.push(Step::new("sway in all", says, Citation::from_memory("statics", "sum")));
    let made = check_deflection(all, Worked::new(limit, steps));
    Some(Check::new("the posts", "sway along the wall", "", with.under(solved, case).asks("Δ", solved.sway), made))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::checks::{load_duration, strength, wood::Woods};
    use crate::evaluate;
    use crate::materials::{Section, Timber};
    use crate::members::{Conditions, Grade};
    use crate::project::demo;

    fn post(breadth: f64) -> Member {
        let depth = if breadth == 6.0 { 8.0 } else { breadth };
        let size = Section::new(Length::inches(breadth), Length::inches(depth));
        let timber = Timber { ordered: size, sawn: size };
        Member::listed("Eastern Hemlock-Tamarack", Grade::No2, timber, Conditions::default()).unwrap()
    }

    fn shares(size: f64, sizes: [f64; 3], duration: Duration) -> (f64, f64) {
        let (wood, length, off) = (post(size), Length::inches(100.0), Length::inches(0.5));
        let net = NetSection::whole(wood.section()).unwrap();
        let by_numbers = Column::new(&wood.during(load_duration(Duration::TenYears)), &net, length, off);
        let asked = (Force::pounds(sizes[0]), off);
        let bent = ([sizes[1], sizes[2]].map(Moment::pound_inches), net);
        let made = column(&wood.during(load_duration(duration)), asked, bent, length).unwrap();
        (by_numbers.share(sizes, duration), made.value.ratio)
    }

    /// The numbers that choose the case are those of the check.
    #[test]
    fn a_post_is_weighed_as_it_is_judged() {
        for duration in [Duration::Permanent, Duration::TwoMonths, Duration::TenMinutes] {
            for (size, sizes) in [
                (4.0, [1500.0, 0.0, 0.0]),
                (4.0, [800.0, 1200.0, 300.0]),
                (6.0, [9000.0, 8000.0, 0.0]),
                (6.0, [9000.0, 4000.0, 5000.0]),
                (4.0, [9e5, 0.0, 0.0]),
            ] {
                let (by_numbers, judged) = shares(size, sizes, duration);
                assert!((by_numbers / judged - 1.0).abs() < 1e-9, "{size} {sizes:?}: {by_numbers} {judged}");
            }
        }
    }

    /// A 4x4 of 100 in, l_e/d = 25, hardly gains from C_D: its strength is near F_cE whatever the duration. 2,000 lb of snow by
    /// 1.15 are 1,739 lb, 2,600 lb with wind by 1.6 are 1,625 lb: the wind asks more all the same. An 8x8 bent as well, at
    /// l_e/d = 12.5, is the other way round.
    #[test]
    fn the_heavier_wind_governs_a_slender_post() {
        let (snow, wind) = (Duration::TwoMonths, Duration::TenMinutes);
        assert!(shares(4.0, [2600.0, 0.0, 0.0], wind).1 > shares(4.0, [2000.0, 0.0, 0.0], snow).1 * 1.05);
        assert!(shares(8.0, [2600.0, 2600.0, 0.0], wind).1 < shares(8.0, [2000.0, 2000.0, 0.0], snow).1);
        let both = [([2000.0, 0.0], snow, "snow"), ([2600.0, 0.0], wind, "wind")];
        let found = may_govern(both.into_iter());
        assert_eq!(found.len(), 2, "neither is passed over by its push over C_D");
    }

    /// P4 of the barn, 8 in square and 86 in tall: 0.6 of 33.5 psf on its face, 0.6·33.5/144·8·86²/8 = 1031 lb-in, along the
    /// wall on its side, else on its front; without wind none.
    #[test]
    fn wind_on_its_own_face_by_hand() {
        let project = demo::wool_barn();
        let shape = &evaluate(&project).built.unwrap().shape;
        let line = strength(&project, shape).line.unwrap();
        let woods = Woods::new(&project);
        let with = BeamChecks::new(&project, shape, &line, &woods);
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

//! What holds for every plane frame: sums, equilibrium, reciprocity, mirror images. Frames drawn at random.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

use outshot::frame::{
    ActsIn, Frame, FrameError, Inertia, LoadCase, Member, MemberLoad, NodeLoad, Solution, Solver, Spring, Support,
};
use outshot::units::{Area, Force, Length, LineLoad, Moment, Stress};
use proptest::prelude::*;

fn inches(value: f64) -> Length {
    Length::inches(value)
}

/// A beam on posts with knee braces, drawn from a few numbers; mirrored, x runs the other way.
#[derive(Clone, Debug)]
struct Sketch {
    bays: Vec<f64>,
    heights: Vec<f64>,
    leg: f64,
    spring: Option<f64>,
    scarf: bool,
}

impl Sketch {
    fn width(&self) -> f64 {
        self.bays.iter().sum()
    }

    /// The frame and its beam members from left to right (from right to left where mirrored).
    fn frame(&self, mirrored: bool) -> (Frame, Vec<usize>) {
        let mut frame = Frame::default();
        let width = self.width();
        let mut node = |name: String, x: f64, z: f64| {
            frame.nodes.push(outshot::frame::Node {
                name,
                x: inches(if mirrored { width - x } else { x }),
                z: inches(z),
            });
            frame.nodes.len() - 1
        };
        let top = 110.0;
        let mut line: Vec<(f64, usize)> = Vec::new();
        let mut sticks: Vec<(String, usize, usize, bool, bool, f64)> = Vec::new();
        let mut feet = Vec::new();
        let mut x = 0.0;
        for (post, height) in self.heights.iter().enumerate() {
            let foot = node(format!("foot {post}"), x, top - height);
            let knee = node(format!("knee {post}"), x, top - self.leg);
            let head = node(format!("head {post}"), x, top);
            sticks.push((format!("post {post}"), foot, knee, false, false, 341.0));
            sticks.push((format!("neck {post}"), knee, head, false, true, 341.0));
            line.push((x, head));
            feet.push(foot);
            for side in [-1.0, 1.0] {
                let at = x + side * self.leg;
                if at > 0.0 && at < width {
                    let on_beam = node(format!("on beam {post} {side}"), at, top);
                    line.push((at, on_beam));
                    sticks.push((format!("brace {post} {side}"), knee, on_beam, true, true, 32.0));
                }
            }
            x += self.bays.get(post).copied().unwrap_or(0.0);
        }
        line.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut beams = Vec::new();
        for (name, from, to, hinge_from, hinge_to, inertia) in sticks {
            let (modulus, area) = (Stress::psi(1.3e6), Area::square_inches(if hinge_from { 24.0 } else { 64.0 }));
            let mut member = Member::elastic(name.clone(), (from, to), modulus, area, Inertia::inches_4(inertia));
            if name.starts_with("brace") {
                member.end_spring = self.spring.map(Spring::pounds_per_inch);
            }
            frame.add_member(member.hinged(hinge_from, hinge_to));
        }
        for (index, pair) in line.windows(2).enumerate() {
            let (modulus, area) = (Stress::psi(1.3e6), Area::square_inches(80.0));
            let ends = (pair[0].1, pair[1].1);
            let member = Member::elastic(format!("beam {index}"), ends, modulus, area, Inertia::inches_4(666.7));
            // The scarf lies over the first brace head.
            beams.push(frame.add_member(member.hinged(false, self.scarf && index == 0)));
        }
        frame.supports = feet.into_iter().map(Support::pinned).collect();
        (frame, beams)
    }
}

fn sketches() -> impl Strategy<Value = Sketch> {
    let numbers = (1..4_usize).prop_flat_map(|n| {
        let bays = prop::collection::vec(96.0..180.0_f64, n);
        (bays, prop::collection::vec(80.0..108.0_f64, n + 1))
    });
    (numbers, 22.0..44.0_f64, prop::option::of(3.0..6.0_f64), any::<bool>()).prop_map(
        |((bays, heights), leg, spring, scarf)| {
            let spring = spring.map(|power| 10.0_f64.powf(power));
            Sketch { bays, heights, leg, spring, scarf }
        },
    )
}

/// A load: which beam stretch (as a share), where on it, sideways and down, spread or not.
type Load = (f64, f64, f64, f64, bool);

fn loads() -> impl Strategy<Value = Vec<Load>> {
    prop::collection::vec((0.0..0.999_f64, 0.0..1.0_f64, -500.0..500.0_f64, -2000.0..2000.0_f64, any::<bool>()), 1..6)
}

fn case(frame: &Frame, beams: &[usize], loads: &[Load], mirrored: bool) -> LoadCase {
    let mut case = LoadCase::default();
    let turn = if mirrored { -1.0 } else { 1.0 };
    for (which, at, x, z, is_spread) in loads {
        let member = beams[(which * beams.len() as f64) as usize];
        let length = frame.length(member).to_inches();
        if *is_spread {
            let line = |value: f64| LineLoad::pounds_per_inch(value / length);
            let (from, to) = (inches(0.0), inches(length * (0.1 + 0.9 * at)));
            let (x, z) = ((line(x * turn), line(0.0)), (line(*z), line(z * 0.2)));
            case.members.push(MemberLoad::Spread { member, from, to, x, z });
        } else {
            let (x, z) = (Force::pounds(x * turn), Force::pounds(*z));
            case.members.push(MemberLoad::Point { member, at: inches(at * length), x, z });
        }
    }
    case
}

fn solve(frame: &Frame, case: &LoadCase) -> Solution {
    Solver::new(frame).solve(case).unwrap()
}

fn near(found: f64, expected: f64, scale: f64) -> bool {
    (found - expected).abs() <= 1e-9 * scale.max(1e-3)
}

/// Stations on a member that are no special places.
fn stations(length: Length) -> [Length; 3] {
    [length * 0.0, length * 0.37, length * 0.81]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, ..ProptestConfig::default() })]

    #[test]
    fn answers_add_up(sketch in sketches(), one in loads(), other in loads(), factor in -2.0..2.0_f64) {
        let (frame, beams) = sketch.frame(false);
        let (a, b) = (case(&frame, &beams, &one, false), case(&frame, &beams, &other, false));
        let (sa, sb) = (solve(&frame, &a), solve(&frame, &b));
        let sum = solve(&frame, &a.combined(1.0, &b, factor));
        for member in 0..frame.members.len() {
            for place in stations(frame.length(member)) {
                let m = |s: &Solution| s.moment(member).sides(place).1.to_pound_inches();
                prop_assert!(near(m(&sum), m(&sa) + factor * m(&sb), 1e6));
                let n = |s: &Solution| s.axial(member).sides(place).1.to_pounds();
                prop_assert!(near(n(&sum), n(&sa) + factor * n(&sb), 1e4));
                let d = |s: &Solution| s.deflection(member).at(place).to_inches();
                prop_assert!(near(d(&sum), d(&sa) + factor * d(&sb), 1.0));
            }
        }
    }

    #[test]
    fn loads_and_reactions_balance(sketch in sketches(), loads in loads()) {
        let (frame, beams) = sketch.frame(false);
        let case = case(&frame, &beams, &loads, false);
        let solution = solve(&frame, &case);
        prop_assert!(solution.equilibrium_residual() < 1e-10, "{}", solution.equilibrium_residual());
        let (mut x, mut z, mut turning) = (0.0, 0.0, 0.0);
        let mut take = |force: (f64, f64), place: (f64, f64)| {
            x += force.0;
            z += force.1;
            turning += place.0 * force.1 - place.1 * force.0;
        };
        for (index, node) in frame.nodes.iter().enumerate() {
            let reaction = solution.reaction(index);
            take((reaction.x.to_pounds(), reaction.z.to_pounds()), (node.x.to_inches(), node.z.to_inches()));
        }
        for load in &case.members {
            let start = frame.nodes[frame.members[load.member()].from].x.to_inches();
            match *load {
                MemberLoad::Point { at, x, z, .. } => {
                    take((x.to_pounds(), z.to_pounds()), (start + at.to_inches(), 110.0));
                }
                MemberLoad::Spread { from, to, x, z, .. } => {
                    // Simpson's rule is exact for the turning of a straight-line load.
                    let (a, b) = (from.to_inches(), to.to_inches());
                    for (share, weight) in [(0.0, 1.0), (0.5, 4.0), (1.0, 1.0)] {
                        let line = |pair: (LineLoad, LineLoad)| {
                            (pair.0 * (1.0 - share) + pair.1 * share).to_pounds_per_inch() * weight * (b - a) / 6.0
                        };
                        take((line(x), line(z)), (start + a + (b - a) * share, 110.0));
                    }
                }
            }
        }
        prop_assert!(near(x, 0.0, 1e4) && near(z, 0.0, 1e4) && near(turning, 0.0, 1e6), "{x} {z} {turning}");
    }

    /// Work of one load over the movement another makes is the same the other way round (E. Betti, J. C. Maxwell).
    #[test]
    fn movements_are_reciprocal(sketch in sketches(), a in 0.0..0.999_f64, b in 0.0..0.999_f64, kind in 0..3_usize, other in 0..2_usize) {
        let (frame, _) = sketch.frame(false);
        let pick = |share: f64| (share * frame.nodes.len() as f64) as usize;
        let unit = |node: usize, kind: usize| {
            let force = |wanted| Force::pounds(if kind == wanted { 1000.0 } else { 0.0 });
            let moment = Moment::pound_inches(if kind == 2 { 1000.0 } else { 0.0 });
            LoadCase { nodes: vec![NodeLoad { node, x: force(0), z: force(1), moment }], ..LoadCase::default() }
        };
        let read = |solution: &Solution, node: usize, kind: usize| {
            let movement = solution.movement(node);
            [movement.x.to_inches(), movement.z.to_inches(), movement.rotation.map_or(0.0, |turn| turn.to_radians())][kind]
        };
        let (a, b) = (pick(a), pick(b));
        let first = read(&solve(&frame, &unit(a, kind)), b, other);
        let second = read(&solve(&frame, &unit(b, other)), a, kind);
        prop_assert!(near(first, second, 1.0), "{first} is not {second}");
    }

    #[test]
    fn a_mirror_image_has_the_mirror_answer(sketch in sketches(), loads in loads()) {
        let (frame, beams) = sketch.frame(false);
        let (image, image_beams) = sketch.frame(true);
        let here = solve(&frame, &case(&frame, &beams, &loads, false));
        let there = solve(&image, &case(&image, &image_beams, &loads, true));
        for node in 0..frame.nodes.len() {
            let (a, b) = (here.movement(node), there.movement(node));
            prop_assert!(near(a.x.to_inches(), -b.x.to_inches(), 1.0) && near(a.z.to_inches(), b.z.to_inches(), 1.0));
        }
        for member in 0..frame.members.len() {
            // Left and right change places: M, V and δ change sign, N does not.
            let (a, b) = (here.moment(member).extremes(), there.moment(member).extremes());
            prop_assert!(near(a.max.to_pound_inches(), -b.min.to_pound_inches(), 1e6));
            let (a, b) = (here.axial(member).extremes(), there.axial(member).extremes());
            prop_assert!(near(a.max.to_pounds(), b.max.to_pounds(), 1e4));
            let (a, b) = (here.deflection(member).extremes(), there.deflection(member).extremes());
            prop_assert!(near(a.min.to_inches(), -b.max.to_inches(), 1.0));
        }
    }

    /// One-way braces end in a state that asks nothing of them they cannot give, or the frame cannot stand without them.
    #[test]
    fn one_way_braces_settle(sketch in sketches(), loads in loads(), ways in prop::collection::vec(any::<bool>(), 8), push in -3000.0..3000.0_f64) {
        let (mut frame, beams) = sketch.frame(false);
        let braces: Vec<usize> = (0..frame.members.len()).filter(|index| frame.members[*index].name.starts_with("brace")).collect();
        for (brace, is_push) in braces.iter().zip(&ways) {
            frame.members[*brace].acts_in = if *is_push { ActsIn::Compression } else { ActsIn::Tension };
        }
        let mut case = case(&frame, &beams, &loads, false);
        let node = frame.members[beams[0]].from;
        case.nodes.push(NodeLoad { node, x: Force::pounds(push), z: Force::ZERO, moment: Moment::ZERO });
        match Solver::new(&frame).solve(&case) {
            Ok(solution) => {
                let braces: Vec<(usize, bool)> = braces.into_iter().zip(ways).collect();
                for (brace, is_push) in braces {
                    let member = &frame.members[brace];
                    let (a, b) = (&frame.nodes[member.from], &frame.nodes[member.to]);
                    let (run, rise) = ((b.x - a.x).to_inches(), (b.z - a.z).to_inches());
                    let (from, to) = (solution.movement(member.from), solution.movement(member.to));
                    let longer = ((to.x - from.x).to_inches() * run + (to.z - from.z).to_inches() * rise) / run.hypot(rise);
                    let wanted = if is_push { -longer } else { longer };
                    let axial = solution.axial(brace).at(Length::ZERO).to_pounds();
                    if solution.is_dropped(brace) {
                        prop_assert!(wanted <= 1e-8 && axial == 0.0, "{} {wanted} {axial}", member.name);
                    } else {
                        let given = if is_push { -axial } else { axial };
                        prop_assert!(wanted >= -1e-8 && given >= -1e-2, "{} {wanted} {given}", member.name);
                    }
                }
            }
            Err(error) => prop_assert!(matches!(error, FrameError::Mechanism(_)), "{error}"),
        }
    }

    /// No sample passes the exact extremes.
    #[test]
    fn extremes_hold_every_sample(sketch in sketches(), loads in loads(), share in 0.0..1.0_f64) {
        let (frame, beams) = sketch.frame(false);
        let solution = solve(&frame, &case(&frame, &beams, &loads, false));
        for member in 0..frame.members.len() {
            let place = frame.length(member) * share;
            let (moment, extremes) = (solution.moment(member).at(place), solution.moment(member).extremes());
            let hair = Moment::pound_inches(1e-6);
            prop_assert!(moment <= extremes.max + hair && moment >= extremes.min - hair);
            let (sag, extremes) = (solution.deflection(member).at(place), solution.deflection(member).extremes());
            let hair = inches(1e-10);
            prop_assert!(sag <= extremes.max + hair && sag >= extremes.min - hair);
        }
    }
}

//! Plane frames against closed forms. Sources: the table of beam formulas of the project's reference page (5.1 to 5.3);
//! statics of a braced bay worked by hand. Each formula stands beside its check; agreement to 1e-9.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

use outshot::frame::{
    ActsIn, Frame, FrameError, Inertia, LoadCase, Member, MemberLoad, NodeLoad, NodeSpring, Settlement, Solution,
    Solver, Spring, Support, TurnSpring,
};
use outshot::units::{Angle, Area, Density, Force, Length, LineLoad, Moment, Stress};

const E: f64 = 1.3e6;
const I: f64 = 666.7;
const EI: f64 = E * I;
const L: f64 = 120.0;
const W: f64 = 12.5;
const P: f64 = 1700.0;

fn check(what: &str, found: f64, expected: f64) {
    let scale = if expected == 0.0 { 1e3 } else { expected.abs() };
    assert!((found - expected).abs() <= 1e-9 * scale, "{what}: {found} is not {expected}");
}

/// Printed to three or four figures only.
fn check_printed(what: &str, found: f64, printed: f64, half_digit: f64) {
    assert!((found - printed).abs() <= half_digit, "{what}: {found} is not {printed}");
}

fn inches(value: f64) -> Length {
    Length::inches(value)
}

/// A level beam through nodes at these places, stiff from end to end.
fn beam(places: &[f64], supports: Vec<Support>) -> Frame {
    let mut frame = Frame { supports, ..Frame::default() };
    for (index, place) in places.iter().enumerate() {
        frame.add_node(format!("n{index}"), inches(*place), Length::ZERO);
    }
    for index in 1..places.len() {
        let (modulus, area) = (Stress::psi(E), Area::square_inches(80.0));
        let ends = (index - 1, index);
        frame.add_member(Member::elastic(format!("m{index}"), ends, modulus, area, Inertia::inches_4(I)));
    }
    frame
}

fn simple() -> Frame {
    beam(&[0.0, L], vec![Support::pinned(0), Support::roller(1)])
}

fn solve(frame: &Frame, members: Vec<MemberLoad>) -> Solution {
    let case = LoadCase { members, ..LoadCase::default() };
    let solution = Solver::new(frame).solve(&case).unwrap();
    assert!(solution.equilibrium_residual() < 1e-11, "{}", solution.equilibrium_residual());
    solution
}

fn even(frame: &Frame, w: f64) -> Vec<MemberLoad> {
    let whole = |member| MemberLoad::even(member, Length::ZERO, frame.length(member), LineLoad::pounds_per_inch(w));
    (0..frame.members.len()).map(whole).collect()
}

fn wedge(member: usize, from: f64, to: f64, first: f64, last: f64) -> MemberLoad {
    let none = (LineLoad::ZERO, LineLoad::ZERO);
    let z = (LineLoad::pounds_per_inch(-first), LineLoad::pounds_per_inch(-last));
    MemberLoad::Spread { member, from: inches(from), to: inches(to), x: none, z }
}

fn up(solution: &Solution, node: usize) -> f64 {
    solution.reaction(node).z.to_pounds()
}

fn most_moment(solution: &Solution, member: usize) -> (f64, f64) {
    let extremes = solution.moment(member).extremes();
    (extremes.max.to_pound_inches(), extremes.max_at.to_inches())
}

fn moment_at(solution: &Solution, member: usize, place: f64) -> f64 {
    solution.moment(member).at(inches(place)).to_pound_inches()
}

fn sag(solution: &Solution, member: usize) -> (f64, f64) {
    let extremes = solution.deflection(member).extremes();
    (-extremes.min.to_inches(), extremes.min_at.to_inches())
}

#[test]
fn simple_beam_even_load() {
    let frame = simple();
    let solution = solve(&frame, even(&frame, W));
    check("R", up(&solution, 0), W * L / 2.0);
    check("R", up(&solution, 1), W * L / 2.0);
    check("M", most_moment(&solution, 0).0, W * L * L / 8.0);
    check("M at", most_moment(&solution, 0).1, L / 2.0);
    check("Δ", sag(&solution, 0).0, 5.0 * W * L.powi(4) / (384.0 * EI));
    let shear = solution.shear(0).extremes();
    check("V", shear.max.to_pounds(), W * L / 2.0);
    check("V", shear.min.to_pounds(), -W * L / 2.0);
}

#[test]
fn simple_beam_point_loads() {
    let frame = simple();
    let mid = solve(&frame, vec![MemberLoad::down(0, inches(L / 2.0), Force::pounds(P))]);
    check("M", most_moment(&mid, 0).0, P * L / 4.0);
    check("Δ", sag(&mid, 0).0, P * L.powi(3) / (48.0 * EI));
    let (a, b) = (37.0, L - 37.0);
    let off = solve(&frame, vec![MemberLoad::down(0, inches(a), Force::pounds(P))]);
    check("R", up(&off, 0), P * b / L);
    check("R", up(&off, 1), P * a / L);
    check("M", most_moment(&off, 0).0, P * a * b / L);
    check("M at", most_moment(&off, 0).1, a);
    check("Δ at the load", -off.deflection(0).at(inches(a)).to_inches(), P * a * a * b * b / (3.0 * EI * L));
    let (left, right) = off.shear(0).sides(inches(a));
    check("V jumps by P", left.to_pounds() - right.to_pounds(), P);
}

#[test]
fn simple_beam_part_of_it_loaded() {
    let frame = simple();
    let (a, c) = (21.0, 50.0);
    let load = MemberLoad::even(0, inches(a), inches(a + c), LineLoad::pounds_per_inch(W));
    let solution = solve(&frame, vec![load]);
    let left = W * c * (L - a - c / 2.0) / L;
    check("R", up(&solution, 0), left);
    check("R", up(&solution, 1), W * c * (a + c / 2.0) / L);
    check("M", most_moment(&solution, 0).0, left * (a + left / (2.0 * W)));
    check("M at", most_moment(&solution, 0).1, a + left / W);
}

#[test]
fn simple_beam_triangle_and_wedge() {
    let frame = simple();
    let triangle = solve(&frame, vec![wedge(0, 0.0, L, 0.0, W)]);
    check("R", up(&triangle, 0), W * L / 6.0);
    check("R", up(&triangle, 1), W * L / 3.0);
    check("M", most_moment(&triangle, 0).0, W * L * L / (9.0 * 3.0_f64.sqrt()));
    check("M at", most_moment(&triangle, 0).1, L / 3.0_f64.sqrt());
    check_printed("Δ", sag(&triangle, 0).0 * EI / (W * L.powi(4)), 0.00652, 5e-6);
    check_printed("Δ at", sag(&triangle, 0).1 / L, 0.519, 5e-4);
    // Worked out: w·x/(360·L·EI)·(3x⁴ − 10L²x² + 7L⁴); its slope vanishes where x² = L²·(1 − √(8/15)).
    let x = L * (1.0 - (8.0_f64 / 15.0).sqrt()).sqrt();
    let exact = W * x / (360.0 * L * EI) * (3.0 * x.powi(4) - 10.0 * L * L * x * x + 7.0 * L.powi(4));
    check("Δ", sag(&triangle, 0).0, exact);
    let c = 70.0;
    let drift = solve(&frame, vec![wedge(0, 0.0, c, W, 0.0)]);
    check("R at the wall", up(&drift, 0), W * c * (3.0 * L - c) / (6.0 * L));
    check("R", up(&drift, 1), W * c * c / (6.0 * L));
    let (_, place) = most_moment(&drift, 0);
    check("V = 0 where M is largest", drift.shear(0).at(inches(place)).to_pounds(), 0.0);
}

#[test]
fn ends_held_against_turning() {
    let fixed = beam(&[0.0, L], vec![Support::fixed(0), Support::fixed(1)]);
    let spread = solve(&fixed, even(&fixed, W));
    check("M at the ends", moment_at(&spread, 0, 0.0), -W * L * L / 12.0);
    check("M in the middle", most_moment(&spread, 0).0, W * L * L / 24.0);
    check("M = 0 at", spread.moment(0).zeros()[0].to_inches(), L * (0.5 - 1.0 / 12.0_f64.sqrt()));
    check_printed("M = 0 at", spread.moment(0).zeros()[0].to_inches() / L, 0.2113, 5e-5);
    check("Δ", sag(&spread, 0).0, W * L.powi(4) / (384.0 * EI));
    let mid = solve(&fixed, vec![MemberLoad::down(0, inches(L / 2.0), Force::pounds(P))]);
    check("M at the ends", moment_at(&mid, 0, 0.0), -P * L / 8.0);
    check("M in the middle", most_moment(&mid, 0).0, P * L / 8.0);
    check("Δ", sag(&mid, 0).0, P * L.powi(3) / (192.0 * EI));
}

#[test]
fn propped_and_free_cantilevers() {
    let propped = beam(&[0.0, L], vec![Support::roller(0), Support::fixed(1)]);
    let solution = solve(&propped, even(&propped, W));
    check("R of the prop", up(&solution, 0), 3.0 * W * L / 8.0);
    check("R", up(&solution, 1), 5.0 * W * L / 8.0);
    check("M held", moment_at(&solution, 0, L), -W * L * L / 8.0);
    check("M", most_moment(&solution, 0).0, 9.0 * W * L * L / 128.0);
    check("M at", most_moment(&solution, 0).1, 3.0 * L / 8.0);
    check("M = 0 at", solution.moment(0).zeros()[0].to_inches(), 3.0 * L / 4.0);
    check_printed("Δ", sag(&solution, 0).0 * EI / (W * L.powi(4)), 0.0054, 5e-5);
    // (1 + √33)/16 of the span from the prop.
    check("Δ at", sag(&solution, 0).1, L * (1.0 + 33.0_f64.sqrt()) / 16.0);
    let free = beam(&[0.0, L], vec![Support::fixed(0)]);
    let spread = solve(&free, even(&free, W));
    check("R", up(&spread, 0), W * L);
    check("M", moment_at(&spread, 0, 0.0), -W * L * L / 2.0);
    check("Δ", sag(&spread, 0).0, W * L.powi(4) / (8.0 * EI));
    let tip = solve(&free, vec![MemberLoad::down(0, inches(L), Force::pounds(P))]);
    check("M", moment_at(&tip, 0, 0.0), -P * L);
    check("Δ", sag(&tip, 0).0, P * L.powi(3) / (3.0 * EI));
}

#[test]
fn a_beam_with_an_overhang() {
    let a = 44.0;
    let frame = beam(&[0.0, L, L + a], vec![Support::pinned(0), Support::roller(1)]);
    let solution = solve(&frame, even(&frame, W));
    check("R1", up(&solution, 0), W * (L * L - a * a) / (2.0 * L));
    check("R2", up(&solution, 1), W * (L + a).powi(2) / (2.0 * L));
    check("V left of R2", -solution.shear(0).at(inches(L)).to_pounds(), W * (L * L + a * a) / (2.0 * L));
    check("V right of R2", solution.shear(1).at(Length::ZERO).to_pounds(), W * a);
    check("M1", most_moment(&solution, 0).0, W * (L + a).powi(2) * (L - a).powi(2) / (8.0 * L * L));
    check("M1 at", most_moment(&solution, 0).1, L / 2.0 * (1.0 - a * a / (L * L)));
    check("M2", moment_at(&solution, 0, L), -W * a * a / 2.0);
    check("M = 0 at", solution.moment(0).zeros()[0].to_inches(), L * (1.0 - a * a / (L * L)));
    let tip = W * a * (4.0 * a * a * L - L.powi(3) + 3.0 * a.powi(3)) / (24.0 * EI);
    check("Δ at the tip", -solution.movement(2).z.to_inches(), tip);
}

#[test]
fn continuous_over_two_and_three_spans() {
    let two = beam(&[0.0, L, 2.0 * L], vec![Support::pinned(0), Support::roller(1), Support::roller(2)]);
    let solution = solve(&two, even(&two, W));
    for (node, share) in [3.0 / 8.0, 10.0 / 8.0, 3.0 / 8.0].into_iter().enumerate() {
        check("R", up(&solution, node), share * W * L);
    }
    check("M over the support", moment_at(&solution, 0, L), -W * L * L / 8.0);
    check("M", most_moment(&solution, 0).0, 9.0 / 128.0 * W * L * L);
    check("M at", most_moment(&solution, 0).1, 0.375 * L);
    check("M at", most_moment(&solution, 1).1, 0.625 * L);
    check("M = 0", solution.moment(0).zeros()[0].to_inches(), 0.75 * L);
    check("M = 0", solution.moment(1).zeros()[0].to_inches(), 0.25 * L);
    check_printed("Δ", sag(&solution, 0).0 * EI / (W * L.powi(4)), 0.0054, 5e-5);
    check_printed("Δ at", sag(&solution, 0).1 / L, 0.4215, 5e-5);
    let rollers = (1..4).map(Support::roller);
    let three = beam(&[0.0, L, 2.0 * L, 3.0 * L], [Support::pinned(0)].into_iter().chain(rollers).collect());
    let solution = solve(&three, even(&three, W));
    for (node, share) in [0.4, 1.1, 1.1, 0.4].into_iter().enumerate() {
        check("R", up(&solution, node), share * W * L);
    }
    check("M over a support", moment_at(&solution, 0, L), -W * L * L / 10.0);
    check("M", most_moment(&solution, 0).0, 0.08 * W * L * L);
    check("M at", most_moment(&solution, 0).1, 0.4 * L);
    check("M = 0", solution.moment(0).zeros()[0].to_inches(), 0.8 * L);
    check("M", most_moment(&solution, 1).0, 0.025 * W * L * L);
    check("M at", most_moment(&solution, 1).1, 0.5 * L);
    check_printed("M = 0", solution.moment(1).zeros()[0].to_inches() / L, 0.276, 5e-4);
    check_printed("M = 0", solution.moment(1).zeros()[1].to_inches() / L, 0.724, 5e-4);
    check_printed("Δ", sag(&solution, 0).0 * EI / (W * L.powi(4)), 0.0069, 5e-5);
    check_printed("Δ at", sag(&solution, 0).1 / L, 0.446, 5e-4);
    let mut first_two = even(&three, W);
    first_two.pop();
    let solution = solve(&three, first_two);
    for (node, share) in [0.383, 1.2, 0.45, -0.033].into_iter().enumerate() {
        check_printed("R", up(&solution, node) / (W * L), share, 5e-4);
    }
    check_printed("M", most_moment(&solution, 0).0 / (W * L * L), 0.0735, 5e-5);
    check_printed("M at", most_moment(&solution, 0).1 / L, 0.383, 5e-4);
    check_printed("M", most_moment(&solution, 1).0 / (W * L * L), 0.0534, 1e-4);
    check_printed("M over", moment_at(&solution, 0, L) / (W * L * L), -0.1167, 5e-5);
    check_printed("M over", moment_at(&solution, 1, L) / (W * L * L), -0.0333, 5e-5);
    check_printed("Δ", sag(&solution, 0).0 * EI / (W * L.powi(4)), 0.0059, 5e-5);
}

/// One braced bay, pinned joints: bay 120 in, height 96, brace feet 36 below the beam and heads 40 out on it.
fn bay() -> Frame {
    let mut frame = Frame::default();
    let places =
        [(0.0, 0.0), (0.0, 60.0), (0.0, 96.0), (40.0, 96.0), (80.0, 96.0), (120.0, 96.0), (120.0, 60.0), (120.0, 0.0)];
    for (index, (x, z)) in places.into_iter().enumerate() {
        frame.add_node(format!("n{index}"), inches(x), inches(z));
    }
    let mut add = |name: &str, ends, hinges: (bool, bool)| {
        let (modulus, area) = (Stress::psi(E), Area::square_inches(80.0));
        let member = Member::elastic(name, ends, modulus, area, Inertia::inches_4(I));
        frame.add_member(member.hinged(hinges.0, hinges.1));
    };
    let stiff = (false, false);
    add("post 1 foot", (0, 1), stiff);
    add("post 1 head", (1, 2), (false, true));
    add("beam 1", (2, 3), stiff);
    add("beam 2", (3, 4), stiff);
    add("beam 3", (4, 5), stiff);
    add("post 2 head", (5, 6), (true, false));
    add("post 2 foot", (6, 7), stiff);
    add("brace 1", (1, 3), (true, true));
    add("brace 2", (4, 6), (true, true));
    frame.supports = vec![Support::pinned(0), Support::pinned(7)];
    frame
}

#[test]
fn a_braced_bay_pushed_along() {
    let frame = bay();
    let (height, bay, a, b) = (96.0, 120.0, 36.0, 40.0);
    // Half the push at either end of the beam, so that both posts take V = P/2 exactly.
    let load = |node| NodeLoad { node, x: Force::pounds(P / 2.0), z: Force::ZERO, moment: Moment::ZERO };
    let case = LoadCase { nodes: vec![load(2), load(5)], ..LoadCase::default() };
    let solution = Solver::new(&frame).solve(&case).unwrap();
    let v = P / 2.0;
    check("V", solution.reaction(0).x.to_pounds(), -v);
    check("couple", up(&solution, 7), P * height / bay);
    let cosine = b / f64::hypot(a, b);
    check("brace", solution.axial(7).at(Length::ZERO).to_pounds(), v * height / (a * cosine));
    check("brace", solution.axial(8).at(Length::ZERO).to_pounds(), -v * height / (a * cosine));
    check("shear over the brace", solution.shear(1).at(Length::ZERO).to_pounds().abs(), v * (height - a) / a);
    check("M at the foot", moment_at(&solution, 0, height - a).abs(), v * (height - a));
    let couple = P * height / bay;
    check("M at the head", moment_at(&solution, 2, b).abs(), (P * height / 2.0 - couple * b).abs());
    check("M mid-span", moment_at(&solution, 3, 20.0), 0.0);
}

#[test]
fn a_settled_support() {
    let two = beam(&[0.0, L, 2.0 * L], vec![Support::pinned(0), Support::roller(1), Support::roller(2)]);
    let settled = Settlement { node: 1, x: Length::ZERO, z: inches(-0.25), rotation: Angle::ZERO };
    let case = LoadCase { settlements: vec![settled], ..LoadCase::default() };
    let solution = Solver::new(&two).solve(&case).unwrap();
    // The middle of a beam of 2L pushed down by δ: P = 48EI·δ/(2L)³.
    let force = 48.0 * EI * 0.25 / (2.0 * L).powi(3);
    check("R", up(&solution, 1), -force);
    check("M", moment_at(&solution, 0, L), force * 2.0 * L / 4.0);
    let free = Settlement { node: 1, x: inches(1.0), z: Length::ZERO, rotation: Angle::ZERO };
    let case = LoadCase { settlements: vec![free], ..LoadCase::default() };
    assert!(matches!(Solver::new(&two).solve(&case), Err(FrameError::Input(_))));
}

#[test]
fn a_rigid_link_is_rigid_and_carries() {
    // A cantilever of L, then a rigid link of 30 in out and 10 in up with a load at its end.
    let mut frame = beam(&[0.0, L], vec![Support::fixed(0)]);
    let end = frame.add_node("end", inches(L + 30.0), inches(10.0));
    let link = frame.add_member(Member::rigid("link", (end, 1)));
    let load = NodeLoad { node: end, x: Force::pounds(50.0), z: Force::pounds(-P), moment: Moment::ZERO };
    let case = LoadCase { nodes: vec![load], ..LoadCase::default() };
    let solution = Solver::new(&frame).solve(&case).unwrap();
    let moment = P * 30.0 + 50.0 * 10.0;
    check("M held", moment_at(&solution, 0, 0.0), -P * L - moment);
    check("M in the link", solution.moment(link).extremes().min.to_pound_inches(), 0.0);
    // Drawn from the end back to the beam its right-hand side is the upper one.
    check("M in the link", most_moment(&solution, link).0, moment);
    let turn = -(P * L * L / 2.0 + moment * L) / EI;
    check("turn", solution.movement(end).rotation.unwrap().to_radians(), turn);
    let drop = -(P * L.powi(3) / 3.0 + moment * L * L / 2.0) / EI;
    check("drop", solution.movement(end).z.to_inches(), drop + turn * 30.0);
    check("push", solution.movement(end).x.to_inches(), 50.0 * L / (E * 80.0) - turn * 10.0);
    assert!(solution.equilibrium_residual() < 1e-12);
}

#[test]
fn rigid_links_that_cannot_be_told_apart_are_refused() {
    let mut frame = beam(&[0.0, L], vec![Support::pinned(0), Support::pinned(1)]);
    frame.add_member(Member::rigid("link", (0, 1)));
    let says = frame.factorise(&frame.all_active()).unwrap_err().to_string();
    assert!(says.contains("supports n0 and n1"), "{says}");
    let mut ring = beam(&[0.0, L], vec![Support::pinned(0)]);
    ring.add_member(Member::rigid("one", (0, 1)));
    ring.add_member(Member::rigid("two", (1, 0)));
    assert!(ring.factorise(&ring.all_active()).unwrap_err().to_string().contains("ring"));
    let mut hinged = beam(&[0.0, L], vec![Support::pinned(0)]);
    hinged.add_member(Member::rigid("link", (0, 1)).hinged(true, false));
    assert!(hinged.factorise(&hinged.all_active()).unwrap_err().to_string().contains("Rigid link link"));
}

#[test]
fn springs_from_nothing_to_stiff() {
    let brace_force = |spring: Option<f64>| {
        let mut frame = bay();
        for member in 7..9 {
            frame.members[member].end_spring = spring.map(Spring::pounds_per_inch);
        }
        let load = vec![MemberLoad::down(3, inches(20.0), Force::pounds(P))];
        solve(&frame, load).axial(7).at(Length::ZERO).to_pounds()
    };
    let rigid = brace_force(None);
    assert!(rigid < -100.0, "{rigid}");
    assert!((brace_force(Some(1e13)) - rigid).abs() < 1e-6 * rigid.abs());
    // Softer springs, less force, in order; almost none leaves almost nothing.
    let ladder = [1e3, 1e4, 5e4, 1e6].map(|spring| brace_force(Some(spring)));
    assert!(ladder.windows(2).all(|pair| pair[1] < pair[0] && pair[0] < 0.0), "{ladder:?}");
    let faint = brace_force(Some(1e-2));
    assert!(faint < 0.0 && faint > -0.1, "{faint}");
    // On one bar: P/k twice and P·L/(E·A).
    let mut bar = beam(&[0.0, L], vec![Support::fixed(0), Support::roller(1)]);
    bar.members[0].end_spring = Some(Spring::pounds_per_inch(5e4));
    let pull = NodeLoad { node: 1, x: Force::pounds(P), z: Force::ZERO, moment: Moment::ZERO };
    let solution = Solver::new(&bar).solve(&LoadCase { nodes: vec![pull], ..LoadCase::default() }).unwrap();
    check("stretch", solution.movement(1).x.to_inches(), P * L / (E * 80.0) + 2.0 * P / 5e4);
}

#[test]
fn springs_to_the_ground() {
    let mut frame = beam(&[0.0, L], vec![]);
    let spring = |node| NodeSpring {
        node,
        x: Spring::pounds_per_inch(100.0),
        z: Spring::pounds_per_inch(2000.0),
        rotation: TurnSpring::default(),
    };
    frame.springs = vec![spring(0), spring(1)];
    let solution = solve(&frame, even(&frame, W));
    check("R", up(&solution, 0), W * L / 2.0);
    check("sinks", solution.movement(0).z.to_inches(), -W * L / 2.0 / 2000.0);
    check(
        "Δ off the chord",
        -solution.deflection_from_chord(0).extremes().min.to_inches(),
        5.0 * W * L.powi(4) / (384.0 * EI),
    );
}

#[test]
fn self_weight_of_an_eight_by_ten() {
    let frame = simple();
    let mut case = LoadCase::default();
    case.add_self_weight(&frame, 0, Density::pounds_per_cubic_foot(36.0));
    let solution = Solver::new(&frame).solve(&case).unwrap();
    // 80/144 ft² · 36 lb/ft³ · 10 ft = 200 lb.
    check("R", up(&solution, 0), 100.0);
    check(
        "twice as much",
        {
            let twice = case.combined(0.5, &case, 1.5);
            up(&Solver::new(&frame).solve(&twice).unwrap(), 0)
        },
        200.0,
    );
}

#[test]
fn what_can_move_is_named_and_never_solved() {
    let named = |frame: &Frame| match frame.factorise(&frame.all_active()) {
        Err(FrameError::Mechanism(mechanism)) => mechanism,
        other => panic!("not reported: {other:?}"),
    };
    // Held nowhere along x.
    let sliding = named(&beam(&[0.0, L], vec![Support::roller(0), Support::roller(1)]));
    assert!(sliding.says.contains("along x") && sliding.member == Some(0), "{}", sliding.says);
    // One pin: it turns.
    let turning = named(&beam(&[0.0, L], vec![Support::pinned(0)]));
    assert!(turning.says.contains("m1") && turning.node == 1, "{}", turning.says);
    // Three hinges in one line.
    let mut hinged = beam(&[0.0, L, 2.0 * L], vec![Support::pinned(0), Support::pinned(2)]);
    hinged.members[0].hinge_to = true;
    let sagging = named(&hinged);
    assert!(sagging.node == 1 && sagging.says.contains("along z"), "{}", sagging.says);
    // Two scarfs in the end bay of a beam on three posts.
    let places = [0.0, 30.0, 60.0, L, 2.0 * L];
    let supports = vec![Support::pinned(0), Support::roller(3), Support::roller(4)];
    let mut scarfs = beam(&places, supports);
    scarfs.members[0].hinge_to = true;
    scarfs.members[1].hinge_to = true;
    let loose = named(&scarfs);
    assert!([1, 2].contains(&loose.node), "{}", loose.says);
    scarfs.members[1].hinge_to = false;
    assert!(scarfs.factorise(&scarfs.all_active()).is_ok());
    // A frame of posts pinned at both ends without a brace sways; with the braces it stands.
    let mut braced = bay();
    braced.members[8].acts_in = ActsIn::Tension;
    assert!(braced.factorise(&braced.all_active()).is_ok());
    let mut active = braced.all_active();
    (active[7], active[8]) = (false, false);
    let error = braced.factorise(&active).unwrap_err().to_string();
    assert!(error.contains("can move"), "{error}");
    // Turned by any angle, a bar chain without its cross bar is still found.
    for degrees in [0.0, 13.0, 45.0, 77.7] {
        let mut chain = Frame { supports: vec![Support::pinned(0), Support::pinned(2)], ..Frame::default() };
        let turn = Angle::degrees(degrees);
        for (name, place) in [("a", 0.0), ("b", 77.0), ("c", 131.0)] {
            chain.add_node(name, inches(place * turn.cos()), inches(place * turn.sin()));
        }
        for (name, ends) in [("first", (0, 1)), ("last", (1, 2))] {
            let (modulus, area) = (Stress::psi(E), Area::square_inches(80.0));
            chain.add_member(Member::elastic(name, ends, modulus, area, Inertia::inches_4(I)).hinged(true, true));
        }
        assert_eq!(named(&chain).node, 1, "{degrees}");
    }
}

#[test]
fn a_moment_on_a_node_without_rotation_is_refused() {
    let mut frame = bay();
    frame.members[0].hinge_to = true;
    frame.members[1].hinge_from = true;
    frame.add_member({
        let (modulus, area) = (Stress::psi(E), Area::square_inches(80.0));
        Member::elastic("stay", (7, 1), modulus, area, Inertia::inches_4(I)).hinged(true, true)
    });
    let load = NodeLoad { node: 1, x: Force::ZERO, z: Force::ZERO, moment: Moment::pound_inches(10.0) };
    let error = Solver::new(&frame).solve(&LoadCase { nodes: vec![load], ..LoadCase::default() }).unwrap_err();
    assert!(error.to_string().contains("every member end is hinged"), "{error}");
    let solution = solve(&frame, even(&frame, W));
    assert!(solution.movement(1).rotation.is_none() && solution.movement(0).rotation.is_some());
}

#[test]
fn five_thousand_nodes_in_a_row() {
    let (spans, pieces) = (499, 10);
    let places: Vec<f64> = (0..=spans * pieces).map(|index| L * index as f64 / pieces as f64).collect();
    let rollers = (1..=spans).map(|post| Support::roller(post * pieces));
    let frame = beam(&places, [Support::pinned(0)].into_iter().chain(rollers).collect());
    let solution = solve(&frame, even(&frame, W));
    // Far from the ends every span is held by its neighbours: w·L²/12 over the posts, w·L²/24 between.
    let middle = 250 * pieces;
    check("M over a post", moment_at(&solution, middle, 0.0), -W * L * L / 12.0);
    check("M between", moment_at(&solution, middle + pieces / 2, 0.0), W * L * L / 24.0);
    check("R", up(&solution, middle), W * L);
}

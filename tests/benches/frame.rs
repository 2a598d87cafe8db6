//! How long a plane frame takes, natively: `cargo bench --bench frame`. 20 nodes, 25 members, every beam piece loaded.
use outshot::frame::{Envelope, Frame, Inertia, LoadCase, Member, MemberLoad, NodeLoad, Solution, Support};
use outshot::units::{Area, Force, Length, LineLoad, Moment, Stress};

fn main() {
    divan::main();
}

/// Four posts, eleven beam pieces, six knee braces: the frame `reference/frames.py --time` measures.
fn frame() -> (Frame, LoadCase) {
    let mut frame = Frame::default();
    let xs = [0.0, 120.0, 240.0, 360.0];
    let places = [0.0, 36.0, 60.0, 84.0, 120.0, 156.0, 204.0, 240.0, 276.0, 300.0, 324.0, 360.0];
    let mut row = |name: &str, xs: &[f64], z: f64| -> Vec<usize> {
        let add = |x: &f64| frame.add_node(format!("{name} {x}"), Length::inches(*x), Length::inches(z));
        xs.iter().map(add).collect()
    };
    let (feet, knees, line) = (row("foot", &xs, 0.0), row("knee", &xs, 60.0), row("beam", &places, 96.0));
    let at = |x: f64| line[places.iter().position(|place| *place == x).unwrap_or(0)];
    let stick = |name: String, ends, area, inertia| {
        Member::elastic(name, ends, Stress::psi(1.3e6), Area::square_inches(area), Inertia::inches_4(inertia))
    };
    for (post, x) in xs.into_iter().enumerate() {
        frame.add_member(stick(format!("post {post}"), (feet[post], knees[post]), 64.0, 341.3333));
        let neck = stick(format!("neck {post}"), (knees[post], at(x)), 64.0, 341.3333);
        frame.add_member(neck.hinged(false, true));
    }
    let mut case = LoadCase::default();
    for pair in line.windows(2) {
        let beam = frame.add_member(stick(format!("beam {}", pair[0]), (pair[0], pair[1]), 80.0, 666.6667));
        let (length, load) = (frame.length(beam), LineLoad::pounds_per_inch);
        let z = (load(-20.0), load(-30.0));
        let x = (LineLoad::ZERO, LineLoad::ZERO);
        case.members.push(MemberLoad::Spread { member: beam, from: Length::ZERO, to: length, x, z });
        let middle = length / 2.0 - Length::inches(1.0);
        case.members.push(MemberLoad::down(beam, middle, Force::pounds(700.0)));
    }
    for (knee, x) in [(0, 36.0), (1, 84.0), (1, 156.0), (2, 204.0), (2, 276.0), (3, 324.0)] {
        let brace = stick(format!("brace {x}"), (knees[knee], at(x)), 24.0, 72.0);
        frame.add_member(brace.hinged(true, true));
    }
    frame.supports = feet.iter().map(|foot| Support::pinned(*foot)).collect();
    case.nodes.push(NodeLoad { node: line[0], x: Force::pounds(500.0), z: Force::ZERO, moment: Moment::ZERO });
    (frame, case)
}

/// All exact extremes of all members.
fn extremes(solution: &Solution) -> Envelope {
    let mut envelope = Envelope::new();
    envelope.add(solution);
    envelope
}

#[divan::bench]
fn build_solve_and_exact_extremes(bencher: divan::Bencher) {
    let (frame, case) = frame();
    let active = frame.all_active();
    bencher.bench(|| frame.factorise(&active).and_then(|split| split.solve(&case)).map(|solution| extremes(&solution)));
}

#[divan::bench]
fn one_more_load_case(bencher: divan::Bencher) {
    let (frame, case) = frame();
    let Ok(split) = frame.factorise(&frame.all_active()) else { return };
    bencher.bench(|| split.solve(&case).map(|solution| extremes(&solution)));
}

#[divan::bench]
fn one_more_load_case_without_extremes(bencher: divan::Bencher) {
    let (frame, case) = frame();
    let Ok(split) = frame.factorise(&frame.all_active()) else { return };
    bencher.bench(|| split.solve(&case));
}

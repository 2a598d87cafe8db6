//! Five hundred plane frames against two general structural libraries (openseespy and PyNiteFEA).
//!
//! `reference/frames.py` draws and solves them; every value agrees to 1e-6 of the largest of its kind in the frame.
#![allow(clippy::unwrap_used, clippy::panic, clippy::print_stdout, reason = "a test stops at the first surprise")]

use outshot::frame::{
    ActsIn, Frame, Inertia, LoadCase, Member, MemberLoad, NodeLoad, NodeSpring, Settlement, Solution, Solver, Spring,
    Support, TurnSpring,
};
use outshot::units::{Angle, Area, Force, Length, LineLoad, Moment, Stress};
use serde_json::Value;

const TOLERANCE: f64 = 1e-6;

fn rows<'a>(case: &'a Value, key: &str) -> &'a Vec<Value> {
    case[key].as_array().unwrap_or_else(|| panic!("no list {key}"))
}

/// A number in a row; nothing where the libraries give none.
fn number(row: &Value, column: usize) -> f64 {
    row[column].as_f64().unwrap_or(0.0)
}

fn index(row: &Value, column: usize) -> usize {
    row[column].as_u64().unwrap_or_else(|| panic!("no index in {row}")) as usize
}

fn inches(row: &Value, column: usize) -> Length {
    Length::inches(number(row, column))
}

fn frame(case: &Value, file: &Value) -> Frame {
    let mut frame = Frame::default();
    for (place, row) in rows(case, "nodes").iter().enumerate() {
        frame.add_node(format!("n{place}"), inches(row, 0), inches(row, 1));
    }
    for row in rows(case, "supports") {
        let holds = |column| number(row, column) == 1.0;
        frame.supports.push(Support { node: index(row, 0), x: holds(1), z: holds(2), rotation: holds(3) });
    }
    for row in rows(case, "ground") {
        let spring = |column| Spring::pounds_per_inch(number(row, column));
        let rotation = TurnSpring::pound_inches_per_radian(number(row, 3));
        frame.springs.push(NodeSpring { node: index(row, 0), x: spring(1), z: spring(2), rotation });
    }
    for (place, row) in rows(case, "members").iter().enumerate() {
        let (name, ends) = (format!("m{place}"), (index(row, 0), index(row, 1)));
        if index(row, 7) == 1 {
            frame.add_member(Member::rigid(name, ends));
            continue;
        }
        let section = &file["sections_in2_in4"][index(row, 2)];
        let (area, inertia) = (Area::square_inches(number(section, 0)), Inertia::inches_4(number(section, 1)));
        let modulus = Stress::psi(file["e_psi"].as_f64().unwrap());
        let acts_in = [ActsIn::Both, ActsIn::Compression, ActsIn::Tension][index(row, 5)];
        let member = Member::elastic(name, ends, modulus, area, inertia).acting(acts_in);
        let member = member.hinged(index(row, 3) == 1, index(row, 4) == 1);
        let spring = number(row, 6);
        frame.add_member(if spring > 0.0 { member.sprung(Spring::pounds_per_inch(spring)) } else { member });
    }
    frame
}

fn load_case(case: &Value) -> LoadCase {
    let mut loads = LoadCase::default();
    for row in rows(case, "points") {
        let (x, z) = (Force::pounds(number(row, 2)), Force::pounds(number(row, 3)));
        loads.members.push(MemberLoad::Point { member: index(row, 0), at: inches(row, 1), x, z });
    }
    for row in rows(case, "spreads") {
        let line = |column| LineLoad::pounds_per_inch(number(row, column));
        let (from, to, x, z) = (inches(row, 1), inches(row, 2), (line(3), line(4)), (line(5), line(6)));
        loads.members.push(MemberLoad::Spread { member: index(row, 0), from, to, x, z });
    }
    for row in rows(case, "forces") {
        let (x, z) = (Force::pounds(number(row, 1)), Force::pounds(number(row, 2)));
        loads.nodes.push(NodeLoad { node: index(row, 0), x, z, moment: Moment::pound_inches(number(row, 3)) });
    }
    for row in rows(case, "supports") {
        let (x, z) = (inches(row, 4), inches(row, 5));
        loads.settlements.push(Settlement { node: index(row, 0), x, z, rotation: Angle::ZERO });
    }
    loads
}

/// Compares columns of the same kind: the largest of them, in either answer, makes the scale.
fn check(what: &str, expected: &[Value], found: &[Vec<f64>], columns: &[usize]) -> f64 {
    let sizes = expected.iter().flat_map(|row| columns.iter().map(|column| number(row, *column).abs()));
    let own = found.iter().flat_map(|row| columns.iter().map(|column| row[*column].abs()));
    let scale = sizes.chain(own).fold(1e-9, f64::max);
    let mut worst = 0.0_f64;
    assert_eq!(expected.len(), found.len(), "{what}");
    for (row, values) in expected.iter().zip(found) {
        for column in columns {
            let off = (values[*column] - number(row, *column)).abs() / scale;
            assert!(off <= TOLERANCE, "{what}: {} is not {} in {row}", values[*column], number(row, *column));
            worst = worst.max(off);
        }
    }
    worst
}

fn check_case(number_of_case: usize, case: &Value, file: &Value) -> f64 {
    let frame = frame(case, file);
    let solution: Solution = Solver::new(&frame).solve(&load_case(case)).unwrap();
    let dropped: Vec<usize> = rows(case, "dropped").iter().map(|value| value.as_u64().unwrap() as usize).collect();
    assert_eq!(solution.dropped(), dropped, "frame {number_of_case}");
    assert!(solution.equilibrium_residual() < 1e-9, "frame {number_of_case}: {}", solution.equilibrium_residual());
    let moved: Vec<Vec<f64>> = (0..frame.nodes.len())
        .map(|node| {
            let movement = solution.movement(node);
            let turn = movement.rotation.map_or(0.0, Angle::to_radians);
            vec![movement.x.to_inches(), movement.z.to_inches(), turn]
        })
        .collect();
    let given: Vec<Vec<f64>> = rows(case, "given")
        .iter()
        .map(|row| {
            let reaction = solution.reaction(index(row, 0));
            vec![0.0, reaction.x.to_pounds(), reaction.z.to_pounds(), reaction.moment.to_pound_inches()]
        })
        .collect();
    let at: Vec<Vec<f64>> = rows(case, "at")
        .iter()
        .map(|row| {
            let (member, place) = (index(row, 0), inches(row, 1));
            let (axial, shear) = (solution.axial(member).at(place), solution.shear(member).at(place));
            let (moment, deflection) = (solution.moment(member).at(place), solution.deflection(member).at(place));
            vec![0.0, 0.0, axial.to_pounds(), shear.to_pounds(), moment.to_pound_inches(), deflection.to_inches()]
        })
        .collect();
    let ranges: Vec<Vec<f64>> = rows(case, "moment_range")
        .iter()
        .map(|row| {
            let extremes = solution.moment(index(row, 0)).extremes();
            vec![0.0, extremes.min.to_pound_inches(), extremes.max.to_pound_inches()]
        })
        .collect();
    let mut worst = 0.0_f64;
    let mut compare = |key: &str, found: &[Vec<f64>], kinds: &[&[usize]]| {
        for columns in kinds {
            worst = worst.max(check(&format!("frame {number_of_case}, {key}"), rows(case, key), found, columns));
        }
    };
    compare("moved", &moved, &[&[0, 1], &[2]]);
    compare("given", &given, &[&[1, 2], &[3]]);
    compare("at", &at, &[&[2], &[3], &[4], &[5]]);
    compare("moment_range", &ranges, &[&[1, 2]]);
    worst
}

#[test]
fn five_hundred_frames() {
    let file: Value = serde_json::from_str(include_str!("reference/frames.json")).unwrap();
    let cases = rows(&file, "frames");
    assert_eq!(cases.len(), 500);
    assert_eq!(file["n_by_both"], 500, "frames that both libraries have solved");
    let dropping = cases.iter().filter(|case| !rows(case, "dropped").is_empty()).count();
    assert!(dropping >= 50, "{dropping} frames drop a member");
    assert!(cases.iter().map(|case| rows(case, "at").len()).sum::<usize>() > 5000);
    let worst = cases.iter().enumerate().map(|(place, case)| check_case(place, case, &file)).fold(0.0, f64::max);
    println!("worst difference {worst:.1e} of the largest value of its kind");
}

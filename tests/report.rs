//! The report program from outside: keys, exits and sentences.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use std::io::Write;
use std::process::{Command, Output, Stdio};

use serde_json::Value;

fn report(arguments: &[&str], input: &str) -> Output {
    let mut child = Command::new(env!("CARGO_BIN_EXE_report"))
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // A program that refuses its arguments closes its input unread.
    let _ = child.stdin.take().unwrap().write_all(input.as_bytes());
    child.wait_with_output().unwrap()
}

fn check(arguments: &[&str], input: &str, exit: i32, says: &str) {
    let output = report(arguments, input);
    assert_eq!(output.status.code(), Some(exit), "{arguments:?}");
    let text = String::from_utf8(if exit == 0 { output.stdout } else { output.stderr }).unwrap();
    assert!(text.contains(says), "{arguments:?} does not say {says:?}: {text}");
}

#[test]
fn exits_and_sentences() {
    check(&["job", "demo"], "", 0, "B1  8x10 beam");
    check(&["job", "demo-metric"], "", 0, "200x240");
    check(&["job", "no-such-file"], "", 1, "no-such-file");
    check(&["job", "-"], "{\"a\": 1}", 1, "not an Outshot project file");
    check(&["job"], "", 2, "report job FILE");
    check(&["job", "demo", "--nonsense"], "", 2, "report job FILE");
    check(&[], "", 2, "report job FILE");
}

#[test]
fn the_fixed_keys_are_there() {
    let design: Value = serde_json::from_slice(&report(&["job", "demo", "--json"], "").stdout).unwrap();
    let has = |value: &Value, keys: &[&str]| keys.iter().all(|key| !value[key].is_null());
    let stick = ["mark", "role", "section", "net_length_in", "order_length_in", "green_weight_lb"];
    for item in design["sticks"].as_array().unwrap() {
        assert!(has(item, &stick) && has(item, &["balance_from_zero_in", "marks"]), "{item}");
        for mark in item["marks"].as_array().unwrap() {
            assert!(has(mark, &["what", "face", "near_in"]) && mark.get("far_in").is_some(), "{mark}");
        }
    }
    for line in design["order"].as_array().unwrap() {
        assert!(has(line, &["section", "length_in", "count", "board_feet", "price"]), "{line}");
    }
    let buying = &design["buying"];
    assert!(has(buying, &["cost", "bound", "proven_optimal", "says", "sections", "unplaced", "yard"]));
    let yard = &buying["yard"];
    assert!(has(yard, &["comes_out", "proven_optimal", "missing", "plan", "unused"]));
    let marks = |list: &Value| list.as_array().unwrap().len();
    let cut: usize = yard["plan"].as_array().unwrap().iter().map(|bar| marks(&bar["sticks"])).sum();
    assert_eq!(cut + marks(&yard["missing"]), marks(&design["sticks"]));
    assert_eq!((&buying["proven_optimal"], &buying["cost"]), (&Value::Bool(true), &buying["bound"]));
    let prices = design["order"].as_array().unwrap().iter().map(|line| line["price"].as_f64().unwrap());
    assert!((prices.sum::<f64>() - buying["cost"].as_f64().unwrap()).abs() < 1e-6);
    assert!(has(&design["roof"], &["sheets", "cover_in", "purlin_rows"]));
    let geometry = ["pitch_in_12", "roof_angle_deg", "run_in", "ledger_seat_in", "beam_seat_in"];
    assert!(has(&design["geometry"], &geometry));
    let heights = ["height_above_seat_ledger_in", "height_above_seat_beam_in", "top_of_metal_at_wall_in"];
    assert!(has(&design["geometry"], &heights) && has(&design["geometry"], &["clear_under_beam_in"]));
    assert!(design["problems"].is_array());
}

/// The barn of the examples has no drift: its roof lies close under the eave above.
#[test]
fn loads_and_checks_have_their_keys() {
    let design: Value = serde_json::from_slice(&report(&["job", "demo", "--json"], "").stdout).unwrap();
    let loads = &design["loads"];
    for key in ["balanced_snow_psf", "roof_live_psf", "velocity_pressure_psf"] {
        assert!(loads[key].as_f64().unwrap() > 0.0, "{key}");
    }
    for key in ["drift_peak_psf", "drift_width_ft", "sliding_snow_psf", "sliding_width_ft"] {
        assert!(loads.get(key).is_some(), "{key}");
    }
    // 0.7·1.0·1.2·1.0·40 psf, slippery and cold at 14°: nothing off for the slope.
    assert!((loads["balanced_snow_psf"].as_f64().unwrap() - 33.6).abs() < 1e-9);
    // What acts along the wall has its places, its forces and its working.
    let along = loads["in_the_elevation"].as_array().unwrap();
    let on_parts = along.iter().find(|load| load["name"].as_str().unwrap().contains("on edge, rafters, beam")).unwrap();
    let end = on_parts["forces"].as_array().unwrap().iter().find(|force| force["on"] == "beam end").unwrap();
    assert!(end["force_lb"].as_f64().unwrap() > 0.0 && end["is_level"] == true && end["x_in"] == 0.0);
    assert!(along.iter().any(|load| load["square_to_roof"].as_array().is_some_and(|pieces| !pieces.is_empty())));
    let checks = design["checks"].as_array().unwrap();
    assert!(checks.len() > 100, "{}", checks.len());
    for check in checks {
        for key in ["member", "name", "at", "combination", "says", "passes"] {
            assert!(check.get(key).is_some_and(|value| !value.is_null()), "{key}: {check}");
        }
        if check["ratio"].is_number() {
            let of = |key: &str| check[key].as_f64().unwrap();
            assert!(
                check["unit"].is_string() && check["source"].is_string() && check["confidence"].is_string(),
                "{check}"
            );
            assert!((of("demand") - of("ratio") * of("capacity")).abs() <= 2e-3 * of("capacity").max(1.0), "{check}");
            assert!(!check["working"].as_array().unwrap().is_empty(), "{check}");
        } else {
            assert!(check["says"].as_str().unwrap().contains("not judged"), "{check}");
        }
    }
    // Sizes that are kept come after what loads ask.
    let is_kept = |check: &&Value| check["of_sizes"] == true && check["passes"] == true;
    let worst: Vec<f64> =
        checks.iter().filter(|check| !is_kept(check)).filter_map(|check| check["ratio"].as_f64()).collect();
    assert!(worst.is_sorted_by(|a, b| a >= b), "worst first");
}

#[test]
fn a_project_file_gives_the_same_as_the_example() {
    let file = outshot::project::file::write(&outshot::project::examples::wool_barn());
    let from_file = report(&["job", "-", "--json"], &file).stdout;
    assert_eq!(from_file, report(&["job", "demo", "--json"], "").stdout);
}

#[test]
fn a_frame_that_cannot_be_is_answered_with_its_problems() {
    let mut project = outshot::project::demo::wool_barn();
    project.frame.posts.truncate(1);
    let output = report(&["job", "-", "--json"], &outshot::project::file::write(&project));
    assert_eq!(output.status.code(), Some(0));
    let design: Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!(design["problems"][0]["field"], "frame.posts");
    assert!(design.get("sticks").is_none());
}

/// With the beam 232 in from the wall the barn's rafters are longer than the mill's 20 ft: each is named with its way out.
#[test]
fn a_stick_no_length_holds_has_its_ways_out() {
    let mut project = outshot::project::demo::wool_barn();
    project.frame.reach = outshot::units::Length::inches(232.0);
    let output = report(&["job", "-", "--json"], &outshot::project::file::write(&project));
    let design: Value = serde_json::from_slice(&output.stdout).unwrap();
    let missing = design["buying"]["unplaced"].as_array().unwrap();
    let rafter = missing.iter().find(|stick| stick["mark"] == "R1").unwrap();
    let over = rafter["needs_in"].as_f64().unwrap() - 240.0;
    assert!(over > 0.0 && (rafter["over_in"].as_f64().unwrap() - over).abs() < 1e-6, "{rafter}");
    assert!(rafter["ways_out"].as_str().unwrap().starts_with("Shorten the tail"), "{rafter}");
    let mut says = design["problems"].as_array().unwrap().iter().filter(|problem| problem["field"] == "mill.lengths");
    assert!(says.any(|problem| problem["says"].as_str().unwrap().contains("more than the mill's longest")));
}

/// A simple beam by hand: 100 in span, 1,000 lb in the middle: reactions 500, moment P·L/4 = 25,000.
#[test]
fn any_plane_frame_is_answered() {
    let beam = r#"{ "nodes": [{"id": "a", "x_in": 0, "z_in": 0}, {"id": "b", "x_in": 100, "z_in": 0}],
      "supports": [{"node": "a", "x": true, "z": true, "rotation": false, "settlement_z_in": 0},
                   {"node": "b", "x": false, "z": true, "rotation": false, "settlement_z_in": 0}],
      "members": [{"id": "m", "from": "a", "to": "b", "e_psi": 1.3e6, "area_in2": 80, "inertia_in4": 666.7,
                   "hinge_from": false, "hinge_to": false, "acts_in": "both", "end_spring_lb_per_in": null}],
      "loads": [{"member": "m", "at_in": 50, "x_lb": 0, "z_lb": -1000}] }"#;
    let output = report(&["frame", "-", "--json"], beam);
    assert_eq!(output.status.code(), Some(0), "{}", String::from_utf8_lossy(&output.stderr));
    let answer: Value = serde_json::from_slice(&output.stdout).unwrap();
    assert!((answer["nodes"][0]["reaction_z_lb"].as_f64().unwrap() - 500.0).abs() < 1e-6);
    assert!((answer["members"][0]["moment_lb_in"]["max"].as_f64().unwrap() - 25_000.0).abs() < 1e-6);
    check(&["frame", "-"], &beam.replace("\"z\": true", "\"z\": false"), 1, "m");
    check(&["frame", "-"], "{", 1, "");
}

/// 18 rafters of 143.75 in: one a bar of 192 in, since 2 · 143.75 + 0.25 is more than 192 − 1.
#[test]
fn a_cutting_plan_comes_with_its_proof() {
    let task = r#"{"kerf_in": 0.25, "trim_in": 1, "sticks": [{"mark": "R1", "length_in": 143.75, "count": 18}],
                   "stock": [{"length_in": 192, "price": 20, "count": null}]}"#;
    let output = report(&["nest", "-", "--json"], task);
    assert_eq!(output.status.code(), Some(0), "{}", String::from_utf8_lossy(&output.stderr));
    let plan: Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!((plan["cost"].as_f64(), plan["bound"].as_f64()), (Some(360.0), Some(360.0)));
    assert_eq!((plan["proven_optimal"].as_bool(), plan["bars"].as_array().unwrap().len()), (Some(true), 18));
    assert_eq!((&plan["bars"][0]["sticks"][0], plan["bars"][0]["left_in"].as_f64()), (&Value::from("R1"), Some(47.25)));
    check(&["nest", "-"], task, 0, "proven least");
    check(&["nest", "-"], &task.replace("143.75", "191.5"), 0, "0.5 in longer");
    check(&["nest", "-"], &task.replace("\"count\": 18", "\"count\": 180000"), 1, "too many");
    check(&["nest", "-"], &task.replace("192", "-192"), 1, "Stock 1");
    check(&["nest", "-"], "{", 1, "cannot be read");
    check(&["nest"], "", 2, "report nest FILE");
}

/// A post under the inner size is said to be so, and what is still to come is not asked for.
#[test]
fn pieces_that_came_are_judged() {
    let saved = include_str!("data/version-5.json");
    let mut file: Value = serde_json::from_str(saved).unwrap();
    let size = serde_json::json!({ "breadth_in": 8.0, "depth_in": 7.25 });
    file["project"]["progress"]["pieces"] = serde_json::json!({ "8x8/96/1": {
        "section": { "breadth_in": 8.0, "depth_in": 8.0 }, "length_in": 96.0, "state": "kept",
        "near": size, "far": size, "defects": ["wane"], "place": "", "remark": ""
    } });
    let output = report(&["job", "-", "--json"], &file.to_string());
    let design: Value = serde_json::from_slice(&output.stdout).unwrap();
    let received = design["buying"]["received"].as_array().unwrap();
    assert_eq!(received.len(), 1);
    assert_eq!((&received[0]["piece"], &received[0]["fits"]), (&Value::from("8x8/96/1"), &Value::Bool(false)));
    assert!(
        received[0]["verdict"].as_str().unwrap().contains("1⁄4″ under the inner size of 7.5x7.5"),
        "{}",
        received[0]
    );
    // What the barn's post heads lack hangs on no post's size: a smaller post is asked no less.
    assert!(received[0]["ratio"].as_f64().unwrap() >= received[0]["ratio_before"].as_f64().unwrap());
    assert_eq!(received[0]["place"], Value::Null);
    assert!(design["buying"]["ask_instead"].as_array().unwrap().len() == 1);
}

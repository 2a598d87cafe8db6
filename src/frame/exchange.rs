//! A plane frame as text: JSON in, a table or JSON out. Units stand in every field's name (inches, pounds, radians).
//!
//! Beside the keys every frame file has, `rigid: true` makes a member a rigid link (it then needs no section), a support
//! may have `settlement_x_in` and `settlement_rotation_rad`, spread loads `x_from_lb_per_in` and `x_to_lb_per_in`, and
//! `springs` lists `node`, `x_lb_per_in`, `z_lb_per_in`, `rotation_lb_in_per_rad`. A key nobody knows is refused: a
//! misspelt hinge must not pass as a stiff joint.
mod printing;
mod reading;

pub use reading::read;

use super::Solver;

/// Reads a frame, solves it, and prints the answer as JSON or as tables.
///
/// # Errors
/// Sentences, one a line: what cannot be read, what cannot be, or the mechanism with the member that makes it so.
pub fn report(text: &str, json: bool) -> Result<String, String> {
    let (frame, case) = read(text)?;
    let solution = Solver::new(&frame).solve(&case).map_err(|error| error.to_string())?;
    Ok(if json { printing::json(&frame, &solution) } else { printing::text(&frame, &solution) })
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use serde_json::{Value, json};

    fn portal() -> Value {
        json!({
            "nodes": [
                {"id": "a", "x_in": 0, "z_in": 0}, {"id": "b", "x_in": 0, "z_in": 96},
                {"id": "c", "x_in": 120, "z_in": 96}, {"id": "d", "x_in": 120, "z_in": 0}],
            "supports": [{"node": "a", "x": true, "z": true, "rotation": true}, {"node": "d", "x": true, "z": true}],
            "members": [
                {"id": "left", "from": "a", "to": "b", "e_psi": 1.3e6, "area_in2": 64, "inertia_in4": 341.3},
                {"id": "beam", "from": "b", "to": "c", "e_psi": 1.3e6, "area_in2": 80, "inertia_in4": 666.7,
                 "hinge_from": false, "hinge_to": true, "acts_in": "both", "end_spring_lb_per_in": null},
                {"id": "right", "from": "c", "to": "d", "e_psi": 1.3e6, "area_in2": 64, "inertia_in4": 341.3}],
            "loads": [
                {"member": "beam", "at_in": 60, "x_lb": 0, "z_lb": -1000},
                {"member": "beam", "from_in": 0, "to_in": 120, "z_from_lb_per_in": -1, "z_to_lb_per_in": -3},
                {"node": "b", "x_lb": 100, "z_lb": 0, "moment_lb_in": 0}]
        })
    }

    /// The error after one part of the portal is changed.
    fn refused(path: &str, value: Value) -> String {
        let mut frame = portal();
        *frame.pointer_mut(path).unwrap() = value;
        report(&frame.to_string(), false).unwrap_err()
    }

    #[test]
    fn the_answer_has_every_agreed_key() {
        let out: Value = serde_json::from_str(&report(&portal().to_string(), true).unwrap()).unwrap();
        for key in ["dx_in", "dz_in", "rotation_rad", "reaction_x_lb", "reaction_z_lb", "reaction_moment_lb_in"] {
            assert!(out["nodes"][0][key].is_number(), "{key}");
        }
        for key in ["axial_lb", "shear_lb", "moment_lb_in", "deflection_in"] {
            for end in ["min", "min_at_in", "max", "max_at_in"] {
                assert!(out["members"][1][key][end].is_number(), "{key} {end}");
            }
        }
        assert_eq!(out["members"][1]["dropped"], false);
        assert!(out["equilibrium_residual"].as_f64().unwrap() < 1e-12);
        let up = |node: usize| out["nodes"][node]["reaction_z_lb"].as_f64().unwrap();
        assert!((up(0) + up(3) - 1240.0).abs() < 1e-8);
    }

    #[test]
    fn the_tables_name_nodes_and_members() {
        let text = report(&portal().to_string(), false).unwrap();
        for word in ["beam", "right", "reaction", "moment", "equilibrium"] {
            assert!(text.contains(word), "{word} is missing from:\n{text}");
        }
    }

    #[test]
    fn what_cannot_be_is_said_in_words() {
        assert!(refused("/members/1/to", json!("q")).contains("no node named q"));
        assert!(refused("/members/1/to", json!("b")).contains("has no length"));
        assert!(refused("/members/1/e_psi", json!(-1)).contains("modulus of elasticity"));
        assert!(refused("/members/1/id", json!("left")).contains("Two members are named left"));
        assert!(refused("/nodes/1/id", json!("a")).contains("Two nodes are named a"));
        assert!(refused("/loads/0/at_in", json!(121)).contains("lies off member beam"));
        assert!(refused("/loads/1/to_in", json!(130)).contains("reaches past member beam"));
        assert!(refused("/loads/1/to_in", json!(0)).contains("must end after it begins"));
        assert!(refused("/loads/0/member", json!("q")).contains("no member named q"));
        assert!(refused("/loads/0", json!({"z_lb": 3})).contains("Load 1"));
        assert!(refused("/loads/0", json!({"member": "beam", "at_in": 3, "from_in": 2})).contains("Load 1"));
        assert!(refused("/supports/1/node", json!("q")).contains("no node named q"));
        assert!(refused("/supports/1", json!({"node": "a", "x": true})).contains("two supports"));
        assert!(
            refused("/supports/1", json!({"node": "d", "x": true, "z": true, "settlement_rotation_rad": 1}))
                .contains("settles in rotation")
        );
        assert!(refused("/members/0", json!({"id": "left", "from": "a", "to": "b"})).contains("e_psi"));
        assert!(refused("/members/1/hinge_to", json!("yes")).contains("line"));
        assert!(
            report("{\"nodes\": [{\"id\": \"a\", \"x_in\": 1e999, \"z_in\": 0}], \"members\": []}", false).is_err()
        );
        let mut misspelt = portal();
        misspelt["members"][1]["hinge_form"] = json!(true);
        assert!(report(&misspelt.to_string(), false).unwrap_err().contains("hinge_form"));
    }

    #[test]
    fn too_many_nodes_are_refused() {
        let mut frame = portal();
        frame["nodes"] = (0..5001).map(|i| json!({"id": format!("n{i}"), "x_in": i, "z_in": 0})).collect();
        frame["supports"] = json!([]);
        frame["loads"] = json!([]);
        frame["members"] = json!([{"id": "m", "from": "n0", "to": "n1", "e_psi": 1, "area_in2": 1, "inertia_in4": 1}]);
        assert!(report(&frame.to_string(), false).unwrap_err().contains("5001 nodes"));
    }

    #[test]
    fn a_mechanism_names_a_member() {
        let says = refused("/supports/0", json!({"node": "a", "z": true}));
        assert!(says.contains("Member") && says.contains("can move"), "{says}");
    }

    #[test]
    fn a_rigid_link_and_ground_springs_are_read() {
        let text = json!({
            "nodes": [{"id": "a", "x_in": 0, "z_in": 0}, {"id": "b", "x_in": 10, "z_in": 0}],
            "springs": [{"node": "a", "x_lb_per_in": 1, "z_lb_per_in": 100, "rotation_lb_in_per_rad": 5000}],
            "members": [{"id": "m", "from": "a", "to": "b", "rigid": true}],
            "loads": [{"node": "b", "z_lb": -10}]
        });
        let out: Value = serde_json::from_str(&report(&text.to_string(), true).unwrap()).unwrap();
        // Down by 10/100, turned by 10·10/5000 over 10 in.
        assert!((out["nodes"][1]["dz_in"].as_f64().unwrap() + 0.1 + 0.2).abs() < 1e-12);
        assert!((out["members"][0]["moment_lb_in"]["min"].as_f64().unwrap() + 100.0).abs() < 1e-9);
    }
}

//! The answer as JSON and as tables.
use std::fmt::Write;

use serde::Serialize;

use crate::frame::{Diagram, Frame, Measured, Solution};
use crate::units::Angle;

#[derive(Serialize)]
struct Out<'a> {
    nodes: Vec<NodeOut<'a>>,
    members: Vec<MemberOut<'a>>,
    equilibrium_residual: f64,
}

#[derive(Serialize)]
struct NodeOut<'a> {
    id: &'a str,
    dx_in: f64,
    dz_in: f64,
    rotation_rad: f64,
    /// False where every member end is hinged: `rotation_rad` then says nothing.
    has_rotation: bool,
    reaction_x_lb: f64,
    reaction_z_lb: f64,
    reaction_moment_lb_in: f64,
}

#[derive(Serialize)]
struct MemberOut<'a> {
    id: &'a str,
    length_in: f64,
    dropped: bool,
    axial_lb: RangeOut,
    shear_lb: RangeOut,
    moment_lb_in: RangeOut,
    deflection_in: RangeOut,
    deflection_from_chord_in: RangeOut,
}

#[derive(Clone, Copy, Serialize)]
struct RangeOut {
    min: f64,
    min_at_in: f64,
    max: f64,
    max_at_in: f64,
}

/// A number for a table: what rounds to nothing has no sign.
fn fixed(value: f64, digits: usize) -> String {
    let text = format!("{value:.digits$}");
    if text.bytes().all(|byte| matches!(byte, b'-' | b'0' | b'.')) { text.replace('-', "") } else { text }
}

/// Never a negative zero.
fn plain(value: f64) -> f64 {
    value + 0.0
}

fn range<Q: Measured>(diagram: &Diagram<Q>) -> RangeOut {
    let extremes = diagram.extremes();
    RangeOut {
        min: plain(extremes.min.bare()),
        min_at_in: extremes.min_at.to_inches(),
        max: plain(extremes.max.bare()),
        max_at_in: extremes.max_at.to_inches(),
    }
}

fn out<'a>(frame: &'a Frame, solution: &Solution) -> Out<'a> {
    let node = |(index, node): (usize, &'a crate::frame::Node)| {
        let (movement, reaction) = (solution.movement(index), solution.reaction(index));
        NodeOut {
            id: &node.name,
            dx_in: plain(movement.x.to_inches()),
            dz_in: plain(movement.z.to_inches()),
            rotation_rad: plain(movement.rotation.map_or(0.0, Angle::to_radians)),
            has_rotation: movement.rotation.is_some(),
            reaction_x_lb: plain(reaction.x.to_pounds()),
            reaction_z_lb: plain(reaction.z.to_pounds()),
            reaction_moment_lb_in: plain(reaction.moment.to_pound_inches()),
        }
    };
    let member = |(index, member): (usize, &'a crate::frame::Member)| MemberOut {
        id: &member.name,
        length_in: frame.length(index).to_inches(),
        dropped: solution.is_dropped(index),
        axial_lb: range(&solution.axial(index)),
        shear_lb: range(&solution.shear(index)),
        moment_lb_in: range(&solution.moment(index)),
        deflection_in: range(&solution.deflection(index)),
        deflection_from_chord_in: range(&solution.deflection_from_chord(index)),
    };
    Out {
        nodes: frame.nodes.iter().enumerate().map(node).collect(),
        members: frame.members.iter().enumerate().map(member).collect(),
        equilibrium_residual: solution.equilibrium_residual(),
    }
}

/// The answer as JSON.
pub(super) fn json(frame: &Frame, solution: &Solution) -> String {
    let out = out(frame, solution);
    serde_json::to_string_pretty(&out).unwrap_or_default()
}

/// The answer as tables.
pub(super) fn text(frame: &Frame, solution: &Solution) -> String {
    let out = out(frame, solution);
    let mut text = String::new();
    nodes(&mut text, &out);
    for member in &out.members {
        let dropped = if member.dropped { ", let go: it cannot act this way" } else { "" };
        let _ = writeln!(text, "\nmember {} ({:.3} in{dropped})", member.id, member.length_in);
        let rows = [
            ("axial, lb (tension +)", member.axial_lb, 1),
            ("shear, lb", member.shear_lb, 1),
            ("moment, lb-in", member.moment_lb_in, 1),
            ("deflection, in", member.deflection_in, 5),
            ("  off its chord, in", member.deflection_from_chord_in, 5),
        ];
        for (what, range, digits) in rows {
            let (min, max) = (fixed(range.min, digits), fixed(range.max, digits));
            let (min_at, max_at) = (range.min_at_in, range.max_at_in);
            let _ =
                writeln!(text, "  {what:<22} least {min:>13} at {min_at:>9.3} in   most {max:>13} at {max_at:>9.3} in");
        }
    }
    let _ = write!(text, "\nequilibrium misses by {:.1e} of the largest force", out.equilibrium_residual);
    text
}

fn nodes(text: &mut String, out: &Out<'_>) {
    let wide = out.nodes.iter().map(|node| node.id.chars().count()).max().unwrap_or(0).max(4);
    let _ = writeln!(
        text,
        "{:<wide$} {:>11} {:>11} {:>12} {:>15} {:>15} {:>17}",
        "node", "dx, in", "dz, in", "turn, rad", "reaction x, lb", "reaction z, lb", "reaction, lb-in"
    );
    for node in &out.nodes {
        let turn = if node.has_rotation { fixed(node.rotation_rad, 6) } else { "-".to_owned() };
        let (dx, dz) = (fixed(node.dx_in, 5), fixed(node.dz_in, 5));
        let (x, z) = (fixed(node.reaction_x_lb, 1), fixed(node.reaction_z_lb, 1));
        let moment = fixed(node.reaction_moment_lb_in, 1);
        let _ = writeln!(text, "{:<wide$} {dx:>11} {dz:>11} {turn:>12} {x:>15} {z:>15} {moment:>17}", node.id);
    }
}

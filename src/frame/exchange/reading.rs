//! From JSON to a frame and its one load case.
use std::collections::HashMap;

use serde::Deserialize;

use crate::frame::{
    ActsIn, Frame, Inertia, LoadCase, Member, MemberLoad, NodeLoad, NodeSpring, Settlement, Spring, Support, TurnSpring,
};
use crate::units::{Angle, Area, Force, Length, LineLoad, Moment, Stress};

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct FrameIn {
    nodes: Vec<NodeIn>,
    #[serde(default)]
    supports: Vec<SupportIn>,
    #[serde(default)]
    springs: Vec<SpringIn>,
    members: Vec<MemberIn>,
    #[serde(default)]
    loads: Vec<LoadIn>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct NodeIn {
    id: String,
    x_in: f64,
    z_in: f64,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct SupportIn {
    node: String,
    #[serde(default)]
    x: bool,
    #[serde(default)]
    z: bool,
    #[serde(default)]
    rotation: bool,
    settlement_x_in: Option<f64>,
    settlement_z_in: Option<f64>,
    settlement_rotation_rad: Option<f64>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct SpringIn {
    node: String,
    x_lb_per_in: Option<f64>,
    z_lb_per_in: Option<f64>,
    rotation_lb_in_per_rad: Option<f64>,
}

#[derive(Clone, Copy, Default, Deserialize)]
#[serde(rename_all = "lowercase")]
enum ActsInIn {
    #[default]
    Both,
    Compression,
    Tension,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct MemberIn {
    id: String,
    from: String,
    to: String,
    e_psi: Option<f64>,
    area_in2: Option<f64>,
    inertia_in4: Option<f64>,
    #[serde(default)]
    hinge_from: bool,
    #[serde(default)]
    hinge_to: bool,
    #[serde(default)]
    acts_in: ActsInIn,
    end_spring_lb_per_in: Option<f64>,
    #[serde(default)]
    rigid: bool,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct LoadIn {
    member: Option<String>,
    node: Option<String>,
    at_in: Option<f64>,
    x_lb: Option<f64>,
    z_lb: Option<f64>,
    moment_lb_in: Option<f64>,
    from_in: Option<f64>,
    to_in: Option<f64>,
    x_from_lb_per_in: Option<f64>,
    x_to_lb_per_in: Option<f64>,
    z_from_lb_per_in: Option<f64>,
    z_to_lb_per_in: Option<f64>,
}

impl LoadIn {
    fn is_spread(&self) -> bool {
        let spread = [
            self.from_in,
            self.to_in,
            self.x_from_lb_per_in,
            self.x_to_lb_per_in,
            self.z_from_lb_per_in,
            self.z_to_lb_per_in,
        ];
        spread.iter().any(Option::is_some)
    }

    fn is_point(&self) -> bool {
        [self.at_in, self.x_lb, self.z_lb].iter().any(Option::is_some)
    }
}

/// Reads what the file says; what it leaves out is zero, and every fault is kept.
struct Reader {
    nodes: HashMap<String, usize>,
    members: HashMap<String, usize>,
    faults: Vec<String>,
}

impl Reader {
    fn named(&mut self, is_node: bool, name: &str, whose: &str) -> usize {
        let (list, kind) = if is_node { (&self.nodes, "node") } else { (&self.members, "member") };
        match list.get(name) {
            Some(index) => *index,
            None => {
                self.faults.push(format!("{whose}: there is no {kind} named {name}."));
                0
            }
        }
    }

    /// A number that may be left out.
    fn number<Q: Default>(&mut self, value: Option<f64>, make: impl Fn(f64) -> Option<Q>, whose: &str) -> Q {
        let Some(value) = value else { return Q::default() };
        make(value).unwrap_or_else(|| {
            self.faults.push(format!("{whose}: {value} is not a number to work with."));
            Q::default()
        })
    }

    /// A number that may not be left out.
    fn needed<Q: Default>(&mut self, value: Option<f64>, make: impl Fn(f64) -> Option<Q>, whose: &str, key: &str) -> Q {
        if value.is_none() {
            self.faults.push(format!("{whose}: {key} is missing."));
        }
        self.number(value, make, whose)
    }

    fn node(&mut self, frame: &mut Frame, node: NodeIn) {
        let whose = format!("Node {}", node.id);
        let x = self.number(Some(node.x_in), Length::try_inches, &whose);
        let z = self.number(Some(node.z_in), Length::try_inches, &whose);
        let index = frame.add_node(node.id.clone(), x, z);
        if self.nodes.contains_key(&node.id) {
            self.faults.push(format!("Two nodes are named {}.", node.id));
        }
        self.nodes.insert(node.id, index);
    }

    fn member(&mut self, frame: &mut Frame, member: MemberIn) {
        let whose = format!("Member {}", member.id);
        let ends = (self.named(true, &member.from, &whose), self.named(true, &member.to, &whose));
        let name = member.id.clone();
        let built = if member.rigid {
            Member::rigid(name, ends)
        } else {
            let modulus = self.needed(member.e_psi, Stress::try_psi, &whose, "e_psi");
            let area = self.needed(member.area_in2, Area::try_square_inches, &whose, "area_in2");
            let inertia = self.needed(member.inertia_in4, Inertia::try_inches_4, &whose, "inertia_in4");
            Member::elastic(name, ends, modulus, area, inertia)
        };
        let acts_in = match member.acts_in {
            ActsInIn::Both => ActsIn::Both,
            ActsInIn::Compression => ActsIn::Compression,
            ActsInIn::Tension => ActsIn::Tension,
        };
        let mut built = built.hinged(member.hinge_from, member.hinge_to).acting(acts_in);
        let spring = member.end_spring_lb_per_in;
        built.end_spring = spring.map(|spring| self.number(Some(spring), Spring::try_pounds_per_inch, &whose));
        let index = frame.add_member(built);
        if self.members.contains_key(&member.id) {
            self.faults.push(format!("Two members are named {}.", member.id));
        }
        self.members.insert(member.id, index);
    }

    fn support(&mut self, frame: &mut Frame, case: &mut LoadCase, support: &SupportIn) {
        let whose = format!("Support at {}", support.node);
        let node = self.named(true, &support.node, &whose);
        frame.supports.push(Support { node, x: support.x, z: support.z, rotation: support.rotation });
        let settlement = Settlement {
            node,
            x: self.number(support.settlement_x_in, Length::try_inches, &whose),
            z: self.number(support.settlement_z_in, Length::try_inches, &whose),
            rotation: self.number(support.settlement_rotation_rad, Angle::try_radians, &whose),
        };
        case.settlements.push(settlement);
    }

    fn spring(&mut self, frame: &mut Frame, spring: &SpringIn) {
        let whose = format!("Spring at {}", spring.node);
        let node = self.named(true, &spring.node, &whose);
        let read = NodeSpring {
            node,
            x: self.number(spring.x_lb_per_in, Spring::try_pounds_per_inch, &whose),
            z: self.number(spring.z_lb_per_in, Spring::try_pounds_per_inch, &whose),
            rotation: self.number(spring.rotation_lb_in_per_rad, TurnSpring::try_pound_inches_per_radian, &whose),
        };
        frame.springs.push(read);
    }

    fn load(&mut self, case: &mut LoadCase, number: usize, load: &LoadIn) {
        let whose = format!("Load {number}");
        match (&load.member, &load.node) {
            (Some(name), None) if load.is_spread() && !load.is_point() && load.moment_lb_in.is_none() => {
                let member = self.named(false, name, &whose);
                let mut line = |value| self.number(value, LineLoad::try_pounds_per_inch, &whose);
                let x = (line(load.x_from_lb_per_in), line(load.x_to_lb_per_in));
                let z = (line(load.z_from_lb_per_in), line(load.z_to_lb_per_in));
                let from = self.needed(load.from_in, Length::try_inches, &whose, "from_in");
                let to = self.needed(load.to_in, Length::try_inches, &whose, "to_in");
                if load.z_from_lb_per_in.is_some() != load.z_to_lb_per_in.is_some()
                    || load.x_from_lb_per_in.is_some() != load.x_to_lb_per_in.is_some()
                {
                    self.faults.push(format!("{whose}: a spread load needs its size at both ends."));
                }
                case.members.push(MemberLoad::Spread { member, from, to, x, z });
            }
            (Some(name), None) if !load.is_spread() && load.moment_lb_in.is_none() => {
                let member = self.named(false, name, &whose);
                let at = self.needed(load.at_in, Length::try_inches, &whose, "at_in");
                let x = self.number(load.x_lb, Force::try_pounds, &whose);
                let z = self.number(load.z_lb, Force::try_pounds, &whose);
                case.members.push(MemberLoad::Point { member, at, x, z });
            }
            (None, Some(name)) if !load.is_spread() && load.at_in.is_none() => {
                let node = self.named(true, name, &whose);
                let x = self.number(load.x_lb, Force::try_pounds, &whose);
                let z = self.number(load.z_lb, Force::try_pounds, &whose);
                let moment = self.number(load.moment_lb_in, Moment::try_pound_inches, &whose);
                case.nodes.push(NodeLoad { node, x, z, moment });
            }
            _ => self.faults.push(format!(
                "{whose}: give a member with at_in, a member with from_in and to_in, or a node; a moment acts on a node."
            )),
        }
    }
}

/// Reads a frame and its load case.
///
/// # Errors
/// Sentences, one a line.
pub fn read(text: &str) -> Result<(Frame, LoadCase), String> {
    let file: FrameIn = serde_json::from_str(text).map_err(|error| format!("The frame cannot be read: {error}."))?;
    let mut reader = Reader { nodes: HashMap::new(), members: HashMap::new(), faults: Vec::new() };
    let (mut frame, mut case) = (Frame::default(), LoadCase::default());
    file.nodes.into_iter().for_each(|node| reader.node(&mut frame, node));
    file.members.into_iter().for_each(|member| reader.member(&mut frame, member));
    file.supports.iter().for_each(|support| reader.support(&mut frame, &mut case, support));
    file.springs.iter().for_each(|spring| reader.spring(&mut frame, spring));
    file.loads.iter().enumerate().for_each(|(index, load)| reader.load(&mut case, index + 1, load));
    if reader.faults.is_empty() { Ok((frame, case)) } else { Err(reader.faults.join("\n")) }
}

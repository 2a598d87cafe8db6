//! What a frame and a load case may not be, each fault a sentence.
use std::collections::HashSet;

use super::load::{LoadCase, MemberLoad};
use super::model::{ActsIn, Frame, Member, Stiffness};
use super::simple_beam::AT_THE_END;
use crate::units::order_of;

/// The most nodes a frame may have.
const MOST_NODES: usize = 5_000;
/// The most members.
const MOST_MEMBERS: usize = 20_000;
/// Numbers outside these are typing mistakes: they would drown every other number in rounding.
const SMALLEST: f64 = 1e-12;
const LARGEST: f64 = 1e15;
/// The shortest member, in inches.
const SHORTEST: f64 = 1e-6;

/// Collects sentences.
struct Faults(Vec<String>);

impl Faults {
    fn say(&mut self, is_wrong: bool, says: impl FnOnce() -> String) {
        if is_wrong {
            self.0.push(says());
        }
    }

    fn result(self) -> Result<(), Vec<String>> {
        if self.0.is_empty() { Ok(()) } else { Err(self.0) }
    }
}

/// Places of the names that stand earlier in the list as well, ascending. Most lists have none: a sort of fingerprints says so
/// sooner than a table of names.
fn later_twins<'a>(names: impl Iterator<Item = &'a str> + Clone) -> Vec<usize> {
    let keys: Vec<f64> = names.clone().map(fingerprint).collect();
    if order_of(&keys).windows(2).all(|pair| keys[pair[0]] != keys[pair[1]]) {
        return Vec::new();
    }
    let mut seen = HashSet::new();
    names.enumerate().filter(|(_, name)| !seen.insert(*name)).map(|(index, _)| index).collect()
}

/// FNV-1a, as far as a number holds it whole.
fn fingerprint(name: &str) -> f64 {
    let mix = |hash: u64, byte| (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3);
    (name.bytes().fold(0xcbf2_9ce4_8422_2325, mix) >> 12) as f64
}

fn is_stiffness(value: f64) -> bool {
    (SMALLEST..=LARGEST).contains(&value)
}

impl Frame {
    /// Whether the frame can be worked with at all.
    ///
    /// # Errors
    /// Every fault, a sentence each.
    pub fn validate(&self) -> Result<(), Vec<String>> {
        let mut faults = Faults(Vec::new());
        faults.say(self.members.is_empty(), || "The frame has no members.".to_owned());
        faults.say(self.nodes.len() > MOST_NODES, || {
            format!("{} nodes: more than {MOST_NODES} are not worked out.", self.nodes.len())
        });
        faults.say(self.members.len() > MOST_MEMBERS, || {
            format!("{} members: more than {MOST_MEMBERS} are not worked out.", self.members.len())
        });
        let twins = later_twins(self.nodes.iter().map(|node| node.name.as_str()));
        for (index, node) in self.nodes.iter().enumerate() {
            let is_far = node.x.to_inches().abs().max(node.z.to_inches().abs()) > LARGEST;
            faults.say(is_far, || format!("Node {} lies too far away to be real.", node.name));
            faults.say(twins.binary_search(&index).is_ok(), || format!("Two nodes are named {}.", node.name));
        }
        let twins = later_twins(self.members.iter().map(|member| member.name.as_str()));
        for (index, member) in self.members.iter().enumerate() {
            faults.say(twins.binary_search(&index).is_ok(), || format!("Two members are named {}.", member.name));
            self.check_member(index, member, &mut faults);
        }
        self.check_ground(&mut faults);
        faults.result()
    }

    fn check_member(&self, index: usize, member: &Member, faults: &mut Faults) {
        let name = &member.name;
        if member.from >= self.nodes.len() || member.to >= self.nodes.len() {
            faults.say(true, || format!("Member {name} ends at a node that does not exist."));
            return;
        }
        let (from, to) = (&self.nodes[member.from].name, &self.nodes[member.to].name);
        faults.say(self.length(index).to_inches() < SHORTEST, || {
            format!("Member {name} from {from} to {to} has no length.")
        });
        if let Some(spring) = member.end_spring {
            faults.say(!is_stiffness(spring.to_pounds_per_inch()), || {
                format!("Member {name}: its end springs must be stiffer than nothing; leave them out for a joint that does not give.")
            });
        }
        match member.stiffness {
            Stiffness::Elastic { modulus, area, inertia } => {
                let amounts = [
                    ("modulus of elasticity", modulus.to_psi()),
                    ("area", area.to_square_inches()),
                    ("second moment of area", inertia.to_inches_4()),
                ];
                for (what, value) in amounts {
                    faults.say(!is_stiffness(value), || {
                        format!("Member {name}: its {what} must be more than zero, not {value}.")
                    });
                }
            }
            Stiffness::Rigid => {
                let is_plain = !member.hinge_from && !member.hinge_to && member.acts_in == ActsIn::Both;
                faults.say(!is_plain || member.end_spring.is_some(), || {
                    format!(
                        "Rigid link {name} has a hinge, a spring or one way to act: put that on the member it leads to."
                    )
                });
            }
        }
    }

    fn check_ground(&self, faults: &mut Faults) {
        let n = self.nodes.len();
        let mut held = HashSet::new();
        for support in &self.supports {
            faults.say(support.node >= n, || "A support stands at a node that does not exist.".to_owned());
            let name = self.nodes.get(support.node).map_or("?", |node| node.name.as_str());
            faults.say(!held.insert(support.node), || format!("Node {name} has two supports."));
        }
        for spring in &self.springs {
            faults.say(spring.node >= n, || "A spring stands at a node that does not exist.".to_owned());
            let stiffness = [
                spring.x.to_pounds_per_inch(),
                spring.z.to_pounds_per_inch(),
                spring.rotation.to_pound_inches_per_radian(),
            ];
            let name = self.nodes.get(spring.node).map_or("?", |node| node.name.as_str());
            faults.say(stiffness.iter().any(|value| !(0.0..=LARGEST).contains(value)), || {
                format!("Node {name}: a spring to the ground cannot be below zero.")
            });
        }
    }

    /// Whether a load case fits this frame, which is valid itself.
    pub(super) fn check_case(&self, case: &LoadCase) -> Result<(), Vec<String>> {
        let mut faults = Faults(Vec::new());
        for load in &case.members {
            self.check_load(load, &mut faults);
        }
        for load in &case.nodes {
            faults.say(load.node >= self.nodes.len(), || "A load acts on a node that does not exist.".to_owned());
            let largest =
                load.x.to_pounds().abs().max(load.z.to_pounds().abs()).max(load.moment.to_pound_inches().abs());
            faults.say(largest > LARGEST, || "A load on a node is too large to be real.".to_owned());
        }
        for settled in &case.settlements {
            let Some(node) = self.nodes.get(settled.node) else {
                faults.say(true, || "A settlement is given for a node that does not exist.".to_owned());
                continue;
            };
            let support = self.supports.iter().find(|support| support.node == settled.node);
            let moved = [settled.x.to_inches(), settled.z.to_inches(), settled.rotation.to_radians()];
            let held = support.map_or([false; 3], |support| [support.x, support.z, support.rotation]);
            for (direction, (value, is_held)) in
                ["along x", "along z", "in rotation"].iter().zip(moved.iter().zip(held))
            {
                faults.say(*value != 0.0 && !is_held, || {
                    format!("Node {} settles {direction}, where no support holds it.", node.name)
                });
                faults.say(value.abs() > LARGEST, || format!("Node {} settles too far to be real.", node.name));
            }
        }
        faults.result()
    }

    fn check_load(&self, load: &MemberLoad, faults: &mut Faults) {
        let Some(member) = self.members.get(load.member()) else {
            faults.say(true, || "A load acts on a member that does not exist.".to_owned());
            return;
        };
        let (name, length) = (&member.name, self.length(load.member()).to_inches());
        let is_off = |place: f64| place < -AT_THE_END * length || place > length * (1.0 + AT_THE_END);
        match *load {
            MemberLoad::Point { at, x, z, .. } => {
                let at = at.to_inches();
                faults.say(is_off(at), || {
                    format!("A load at {at} in lies off member {name}, which is {length:.3} in long.")
                });
                faults.say(x.to_pounds().abs().max(z.to_pounds().abs()) > LARGEST, || {
                    format!("A load on member {name} is too large to be real.")
                });
            }
            MemberLoad::Spread { from, to, x, z, .. } => {
                let (from, to) = (from.to_inches(), to.to_inches());
                faults.say(is_off(from) || is_off(to), || {
                    format!("A load from {from} to {to} in reaches past member {name}, which is {length:.3} in long.")
                });
                faults.say(to - from <= 2.0 * AT_THE_END * length, || {
                    format!("A spread load on member {name} must end after it begins, not run from {from} to {to} in.")
                });
                let largest =
                    [x.0, x.1, z.0, z.1].map(|load| load.to_pounds_per_inch().abs()).into_iter().fold(0.0, f64::max);
                faults.say(largest > LARGEST, || format!("A load on member {name} is too large to be real."));
            }
        }
    }
}

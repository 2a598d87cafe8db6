//! Which joints of the frame a change moves, joint by joint, and what else it does to the room the frame leaves.
use super::judged::Judged;
use super::way_in::no_way_in;
use crate::geometry::{LedgerPiece, PurlinRow, ScarfReport};
use crate::project::Project;
use crate::units::{Length, UnitSystem, show_slope};
use crate::wording::length;

/// What moves less than this stays.
const STAYS: Length = Length::inches(1.0 / 32.0);

/// One state of a joint.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct JointState {
    /// Its middle along the beam.
    pub at: Length,
    /// For a scarf: the uncut beam's moment at its middle, as a share of the beam's greatest.
    pub bends: Option<f64>,
    /// Greatest ratio among its own checks; for a splice that of the whole ledger.
    pub ratio: Option<f64>,
}

/// A scarf or splice before and after; nothing on one side where it is not there.
#[derive(Clone, Debug, PartialEq)]
pub struct JointMove {
    /// Its name: `scarf 1`, `ledger splice 2`.
    pub joint: String,
    /// As it is.
    pub before: Option<JointState>,
    /// As it would be.
    pub after: Option<JointState>,
}

/// All that moves.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Moves {
    /// Scarfs, then splices of the ledger, left to right.
    pub joints: Vec<JointMove>,
    /// Purlin butts, rafters and room, a sentence each.
    pub also: Vec<String>,
    /// Sticks that have no way in then, a sentence each.
    pub no_way_in: Vec<String>,
}

impl JointMove {
    /// In a sentence.
    #[must_use]
    pub fn says(&self, units: UnitSystem) -> String {
        let (joint, at) = (&self.joint, |state: &JointState| length(state.at, units));
        match (&self.before, &self.after) {
            (Some(before), Some(after)) => {
                let shares = [
                    (before.bends, after.bends, "the uncut beam bends there"),
                    (before.ratio, after.ratio, "worst check"),
                ];
                let said = shares.into_iter().filter_map(|(before, after, what)| Some(changed(before?, after?, what)));
                format!("{joint} from {} to {}{}", at(before), at(after), said.collect::<String>())
            }
            (None, Some(after)) => {
                let shares = [(after.bends, "the uncut beam bends there"), (after.ratio, "worst check")];
                let said = shares.into_iter().filter_map(|(share, what)| Some(format!("; {what} {}", percent(share?))));
                format!("{joint}, new, at {}{}", at(after), said.collect::<String>())
            }
            (Some(before), None) => format!("{joint} at {} goes", at(before)),
            (None, None) => String::new(),
        }
    }
}

fn changed(before: f64, after: f64, what: &str) -> String {
    if percent(before) == percent(after) {
        format!("; {what} {}, as now", percent(after))
    } else {
        format!("; {what} {} instead of {}", percent(after), percent(before))
    }
}

/// A share in whole percent.
#[must_use]
pub fn percent(share: f64) -> String {
    if share.is_finite() { format!("{:.0} %", share * 100.0) } else { "more than any wood may".to_owned() }
}

/// What moves from one state of the frame to the other.
#[must_use]
pub fn moves(before: &Judged, after: &Judged) -> Moves {
    let pairs = [(scarfs(before), scarfs(after), "scarf"), (splices(before), splices(after), "ledger splice")];
    let joints = pairs.into_iter().flat_map(|(before, after, kind)| pair_up(&before, &after, kind)).collect();
    let also = [laps(before, after), butts(before, after), rafters(before, after), room(before, after)].concat();
    Moves { joints, also, no_way_in: no_way_in(&after.project, &after.built.shape) }
}

/// Joints of a kind, by their number; what stays where it is is left out, unless its strength is another.
fn pair_up(before: &[JointState], after: &[JointState], kind: &str) -> Vec<JointMove> {
    let paired = (0..before.len().max(after.len())).map(|place| JointMove {
        joint: format!("{kind} {}", place + 1),
        before: before.get(place).copied(),
        after: after.get(place).copied(),
    });
    let stays = |joint: &JointMove| match (&joint.before, &joint.after) {
        (Some(before), Some(after)) => {
            let same = |a: Option<f64>, b: Option<f64>| a.zip(b).is_none_or(|(a, b)| percent(a) == percent(b));
            before.at.is_near(after.at, STAYS) && same(before.ratio, after.ratio)
        }
        _ => false,
    };
    paired.filter(|joint| !stays(joint)).collect()
}

fn scarfs(of: &Judged) -> Vec<JointState> {
    let state = |scarf: &ScarfReport| JointState {
        at: scarf.place.centre,
        bends: scarf.judged.as_ref().map(|judged| judged.bends.centre),
        ratio: of.worst(|member| member == format!("scarf {}", scarf.number)),
    };
    of.built.shape.beam.scarfs.iter().map(state).collect()
}

fn splices(of: &Judged) -> Vec<JointState> {
    let half = of.project.frame.ledger_lap / 2.0;
    let is_ledger = |member: &str| {
        let mark = member.strip_prefix('L').is_some_and(|rest| rest.starts_with(|digit: char| digit.is_ascii_digit()));
        mark || member.contains("ledger")
    };
    let ratio = of.worst(is_ledger);
    let state = |piece: &LedgerPiece| JointState { at: piece.end - half, bends: None, ratio };
    of.built.shape.ledger.iter().filter(|piece| piece.right_splice).map(state).collect()
}

/// Scarfs with another lap, in whatever place.
fn laps(before: &Judged, after: &Judged) -> Vec<String> {
    let (was, is) = (before.project.frame.scarfs.lap, after.project.frame.scarfs.lap);
    let say = |lap| length(lap, before.project.units);
    let differs = !was.is_near(is, STAYS) && !after.built.shape.beam.scarfs.is_empty();
    differs.then(|| format!("every scarf's lap {} long instead of {}", say(is), say(was))).into_iter().collect()
}

fn butts_of(row: &PurlinRow) -> Vec<String> {
    row.pieces.iter().filter_map(|piece| piece.right.map(|butt| format!("R{}", butt.rafter))).collect()
}

/// Rows of purlins whose pieces meet on other rafters.
fn butts(before: &Judged, after: &Judged) -> Vec<String> {
    let (rows, then) = (&before.built.shape.purlins, &after.built.shape.purlins);
    let said = |butts: &[String]| if butts.is_empty() { "no rafter".to_owned() } else { butts.join(", ") };
    let pairs = rows.iter().zip(then).map(|(row, then)| (row.number, butts_of(row), butts_of(then)));
    let moved = pairs.filter(|(_, row, then)| row != then);
    let mut all: Vec<String> = moved
        .map(|(number, row, then)| format!("purlin row {number} meets on {} instead of {}", said(&then), said(&row)))
        .collect();
    if rows.len() != then.len() {
        all.push(format!("{} rows of purlins instead of {}", then.len(), rows.len()));
    }
    all
}

fn rafters(before: &Judged, after: &Judged) -> Vec<String> {
    let (row, then) = (&before.built.shape.rafters, &after.built.shape.rafters);
    let say = |value: Length| length(value, after.project.units);
    let mut all = Vec::new();
    if row.len() != then.len() {
        all.push(format!("{} rafters instead of {}: their seats lie elsewhere", then.len(), row.len()));
    } else if row.iter().zip(then).any(|(a, b)| !a.is_near(*b, STAYS)) {
        all.push("the rafters’ seats lie elsewhere".to_owned());
    }
    let [old, new] = [before, after].map(|of| of.built.shape.rafter.top_edge().length());
    if !old.is_near(new, STAYS) {
        let word = if new < old { "shorter" } else { "longer" };
        all.push(format!("every rafter {} {word}", say((new - old).abs())));
    }
    all
}

/// Room that becomes other room.
fn room(before: &Judged, after: &Judged) -> Vec<String> {
    let say = |value: Length| length(value, after.project.units);
    let of = |judged: &Judged| {
        let room = &judged.built.shape.clearances;
        let widest = room.between_braces.iter().copied().reduce(Length::max);
        [
            ("room under the eave", room.under_eave),
            ("room over the rafters’ heads", room.over_rafter_head),
            ("clear under the beam", Some(room.under_beam)),
            ("widest bay between braces", widest),
            ("clear depth under the roof", Some(room.clear_depth)),
        ]
    };
    let pairs = of(before).into_iter().zip(of(after)).filter_map(|((what, a), (_, b))| Some((what, a?, b?)));
    let moved = pairs.filter(|(_, a, b)| !a.is_near(*b, STAYS));
    let mut all: Vec<String> = moved.map(|(what, a, b)| format!("{what} {} instead of {}", say(b), say(a))).collect();
    all.extend(pitch(before, after, &after.project));
    all
}

fn pitch(before: &Judged, after: &Judged, project: &Project) -> Option<String> {
    let [a, b] = [before, after].map(|of| show_slope(of.built.shape.line.pitch, project.units).to_string());
    (a != b).then(|| format!("pitch {b} instead of {a}"))
}

//! A stick with everything its sheet says.
use std::collections::BTreeSet;
use std::fmt::Write;

use super::mark::{Mark, sixty_fourths};
use super::{beam, block, brace, ledger, post, purlin, rafter};
use crate::design::Shape;
use crate::geometry::{Bulk, Point, Polygon};
use crate::joinery::measured_bodies;
use crate::materials::{Face, Timber, species};
use crate::project::{Problem, Progress, Project, Role};
use crate::units::{Length, Weight, sort_by_number};

/// One stick of the frame.
#[derive(Clone, Debug, PartialEq)]
pub struct Stick {
    /// Its name everywhere: `P1`, `B2`, `K2L`.
    pub mark: String,
    /// What it does.
    pub role: Role,
    /// Its size.
    pub timber: Timber,
    /// Low end, from zero.
    pub low: Length,
    /// High end, from zero.
    pub high: Length,
    /// The wood left when it is cut: of the stick as it was measured at the bench where it was, else as sawn.
    pub bulk: Bulk,
    /// It was measured at the bench.
    pub is_measured: bool,
    /// Green weight as cut.
    pub green_weight: Weight,
    /// Where zero is.
    pub zero: String,
    /// The question to answer before the first mark.
    pub ask: String,
    /// The two reference faces.
    pub references: (Face, Face),
    /// The faces, in the order they unroll, each with its width.
    pub faces: Vec<(Face, Length)>,
    /// Outline on the face it is seen on: x along from zero, y across from that face's upper edge as drawn.
    pub profile: (Face, Polygon),
    /// Lines inside the profile, in its coordinates: shoulders, heels carried across.
    pub profile_lines: Vec<(Point, Point)>,
    /// Distance of its zero along the beam, for sticks of the beam line.
    pub whole_line: Option<Length>,
    /// It lies with its zero at the right and is measured to the left.
    pub to_left: bool,
    /// Marks, in the order they are made.
    pub marks: Vec<Mark>,
    /// The first stick of the frame with the same layout, where this is not the first.
    pub same_as: Option<String>,
}

impl Stick {
    /// End to end.
    #[must_use]
    pub fn net_length(&self) -> Length {
        self.high - self.low
    }

    /// What its weight and balance are of, in words.
    #[must_use]
    pub const fn weighed(&self) -> &'static str {
        if self.is_measured { "as measured" } else { "as sawn" }
    }

    /// Edges of a mark across its face, from the face's upper edge as drawn; the whole width where it names none. The
    /// unrolled faces share an edge with the one that the measure is taken from, which lies up except where it is the one
    /// drawn below.
    #[must_use]
    pub fn across(&self, mark: &Mark, width: Length) -> (Length, Length) {
        let Some((near, far)) = mark.across else { return (Length::ZERO, width) };
        let index_of = |face: Face| self.faces.iter().position(|(known, _)| *known == face);
        let is_below = match (index_of(mark.face), mark.across_from.and_then(index_of)) {
            (Some(own), Some(from)) => from == own + 1 || (own + 1 == self.faces.len() && from == 0),
            _ => false,
        };
        if is_below { (width - far, width - near) } else { (near, far) }
    }

    /// The joints of the stick in the order they are first marked: the mate, and the places of its marks in the sheet.
    #[must_use]
    pub fn joints(&self) -> Vec<(String, Vec<usize>)> {
        let mut joints: Vec<(String, Vec<usize>)> = Vec::new();
        for (place, mark) in self.marks.iter().enumerate() {
            let Some(mate) = &mark.mate else { continue };
            match joints.iter_mut().find(|(known, _)| known == mate) {
                Some((_, places)) => places.push(place),
                None => joints.push((mate.clone(), vec![place])),
            }
        }
        joints
    }

    /// Places in the sheet of the marks that are made, by their keys.
    #[must_use]
    pub fn made(&self, keys: &BTreeSet<String>) -> BTreeSet<usize> {
        let mut made = BTreeSet::new();
        for (place, mark) in self.marks.iter().enumerate() {
            if keys.contains(&mark.key()) || keys.contains(&mark.place_key()) {
                made.insert(place);
            }
        }
        made
    }

    /// The layout as two short fingerprints (FNV-1a, 64 bits), one behind the other: the places of its marks, then those
    /// with everything else its sheet says of the cut. What a cut stick is compared with when the frame changes, and what
    /// tells sticks that are cut alike.
    #[must_use]
    pub fn layout(&self) -> String {
        let section = self.timber.sawn;
        let mut places = format!(
            "{}{}/{}/{}/{}",
            if self.to_left { "mirrored " } else { "" },
            sixty_fourths(section.breadth),
            sixty_fourths(section.depth),
            sixty_fourths(self.low),
            sixty_fourths(self.high)
        );
        let mut whole = String::new();
        for mark in &self.marks {
            places.push(';');
            places.push_str(&mark.place_key());
            whole.push_str(&mark.key());
            whole.push(';');
        }
        for point in &self.profile.1.corners {
            let _ = write!(whole, "{},{};", sixty_fourths(point.x), sixty_fourths(point.y));
        }
        format!("{:016x}{:016x}", fingerprint(&places), fingerprint(&format!("{places}|{whole}")))
    }

    /// It is cut to the layout it has now. A tick kept before the second fingerprint was taken knows the places alone, and is
    /// held to them alone.
    #[must_use]
    pub fn is_cut_to(&self, kept: &str) -> bool {
        let own = self.layout();
        own == kept || (kept.len() * 2 == own.len() && own.starts_with(kept))
    }
}

/// FNV-1a in 64 bits.
fn fingerprint(text: &str) -> u64 {
    let fold = |hash: u64, byte: u8| (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3);
    text.bytes().fold(0xcbf2_9ce4_8422_2325, fold)
}

/// Every stick of the frame, in the order of [`Role::ALL`].
#[must_use]
pub fn sticks(project: &Project, shape: &Shape) -> Vec<Stick> {
    let mut all = post::sticks(project, shape);
    all.extend(beam::sticks(project, shape));
    all.extend(brace::sticks(project, shape));
    all.extend(rafter::sticks(project, shape));
    all.extend(ledger::sticks(project, shape));
    all.extend(purlin::sticks(project, shape));
    all.extend(block::sticks(project, shape));
    for body in measured_bodies(project, shape) {
        if let Some(stick) = all.iter_mut().find(|stick| stick.mark == body.mark) {
            stick.bulk = Bulk::new(body.volume(), body.balance());
            stick.is_measured = true;
        }
    }
    let density = species(&project.frame.species).map(|wood| wood.green_density);
    let mut first_of: Vec<(Role, String, String)> = Vec::new();
    for stick in &mut all {
        in_order(&mut stick.marks);
        stick.green_weight = density.map_or(Weight::ZERO, |density| density * stick.bulk.volume());
        let layout = stick.layout();
        match first_of.iter().find(|(role, known, _)| *role == stick.role && *known == layout) {
            Some((_, _, first)) => stick.same_as = Some(first.clone()),
            None => first_of.push((stick.role, layout, stick.mark.clone())),
        }
    }
    all
}

/// Puts marks in the order they are made.
pub(super) fn in_order(marks: &mut Vec<Mark>) {
    sort_by_number(marks, |mark| mark.near.to_inches());
    sort_by_number(marks, |mark| f64::from(mark.order()));
}

/// Sticks that are cut and no longer fit the frame.
#[must_use]
pub fn cut_problems(progress: &Progress, sticks: &[Stick]) -> Vec<Problem> {
    let cut = progress.cut.iter();
    cut.filter_map(|(mark, layout)| {
        let says = match sticks.iter().find(|stick| stick.mark == *mark) {
            None => format!("{mark} is cut, and the frame no longer has it."),
            Some(stick) if !stick.is_cut_to(layout) => {
                format!("{mark} is cut, and the frame has changed: it no longer fits as cut.")
            }
            Some(_) => return None,
        };
        Some(Problem::caution(format!("progress.cut.{mark}"), says))
    })
    .collect()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::project::demo;

    /// By hand, from the sheet of a brace's pocket: a housing, a mortise and a peg's hole.
    #[test]
    fn marks_stand_together_by_the_stick_that_meets_them() {
        let built = evaluate(&demo::wool_barn()).built.unwrap();
        let post = built.stick("P2").unwrap();
        let joints = post.joints();
        let pocket = &joints.iter().find(|(mate, _)| mate == "K2R").unwrap().1;
        assert_eq!(pocket.len(), 3);
        assert!(pocket.iter().all(|place| post.marks[*place].mate.as_deref() == Some("K2R")));
        let counted: usize = joints.iter().map(|(_, places)| places.len()).sum();
        assert_eq!(counted, post.marks.iter().filter(|mark| mark.mate.is_some()).count());
    }

    #[test]
    fn a_tick_follows_its_mark_when_the_frame_changes() {
        let mut project = demo::wool_barn();
        let stick = |project: &Project| evaluate(project).built.unwrap().stick("B1").unwrap().clone();
        let before = stick(&project);
        let keys: BTreeSet<String> = before.marks.iter().map(Mark::key).collect();
        assert_eq!(keys.len(), before.marks.len(), "two marks of one stick have the same key");
        assert_eq!(before.made(&keys).len(), before.marks.len());
        project.frame.rafters.spacing = Length::inches(30.0);
        let after = stick(&project);
        for place in after.made(&keys) {
            let mark = &after.marks[place];
            assert!(before.marks.iter().any(|known| known.near == mark.near && known.face == mark.face));
        }
        assert!(after.made(&keys).len() < after.marks.len());
        assert!(!after.made(&keys).is_empty());
    }
}

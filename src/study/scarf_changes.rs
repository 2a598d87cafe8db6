//! Changes of scarfs that may help: their kind, the kind of one of them, the place of one of them.
use super::changes::{Ladder, Try};
use crate::checks::{ScarfBolts, Strength};
use crate::design::Built;
use crate::fastening::fastener;
use crate::lay_out;
use crate::project::{JointException, JointName, Project, ScarfKind, ScarfPlace, Scarfs, Tie};
use crate::units::Force;

fn scarf_number(member: &str) -> Option<usize> {
    member.strip_prefix("scarf ").and_then(|number| number.parse().ok())
}

impl Try<'_> {
    /// Bolts at the roots, worked out, where nothing ties the halves or not both ways.
    pub fn bolts_at_roots(&self, strength: &Strength) -> Ladder {
        let tie = &self.project.fixings.scarf;
        if tie.count > 0 && tie.pull > Force::ZERO && tie.sideways > Force::ZERO {
            return Ladder::new();
        }
        let step = self.step(0.25, 5.0);
        let one = |(key, count, word): (&str, usize, &str)| {
            let bolts = ScarfBolts { bolt: fastener(key).ok()?, count, step };
            // Of several kinds of scarf the one in which a bolt holds least.
            let mut least: Option<Tie> = None;
            for number in 1..=strength.scarfs.len() {
                let tie = bolts.tie(self.project, self.project.scarf_kind(number)).ok()?.value;
                if least.as_ref().is_none_or(|least| tie.sideways < least.sideways) {
                    least = Some(tie);
                }
            }
            let says = format!(
                "{word} {}s at each scarf root, with washers of {}, worked out",
                bolts.bolt.name,
                self.said(bolts.washer())
            );
            let least = least?;
            Some(self.with(says, |changed| changed.fixings.scarf = least))
        };
        let sizes = [("bolt_1_2", 2, "two"), ("bolt_5_8", 2, "two"), ("bolt_3_4", 2, "two"), ("bolt_3_4", 3, "three")];
        sizes.into_iter().filter_map(one).collect()
    }

    /// All of them of the strongest kind.
    pub fn scarf_kind(&self) -> Ladder {
        if self.project.frame.scarfs.kind == ScarfKind::StopSplayedTabled {
            return Ladder::new();
        }
        let says = format!("scarfs {}", ScarfKind::StopSplayedTabled.name());
        vec![self.with(says, |changed| {
            changed.frame.scarfs.kind = ScarfKind::StopSplayedTabled;
            for own in changed.exceptions.values_mut() {
                own.scarf_kind = None;
            }
            changed.exceptions.retain(|_, own| *own != JointException::default());
        })]
    }

    /// That scarf alone of each other kind, plain to strong, the others as they are. Where the places are the program's, they
    /// are proposed anew for it, or kept.
    pub fn own_scarf_kind(&self, strength: &Strength, member: &str) -> Ladder {
        let Some(number) = scarf_number(member) else { return Ladder::new() };
        let (now, of_frame) = (self.project.scarf_kind(number), self.project.frame.scarfs.kind);
        let others = ScarfKind::ALL.into_iter().filter(|kind| *kind != now);
        let places = &strength.scarfs;
        let is_placed = self.project.frame.scarfs.by_hand == *places;
        let one = |kind: ScarfKind, stays: bool| {
            let place = if stays { ", every scarf where it is" } else { "" };
            self.with(format!("scarf {number} alone {}{place}", kind.name()), |changed| {
                let own = changed.exceptions.entry(JointName::Scarf(number).to_string()).or_default();
                own.scarf_kind = (kind != of_frame).then_some(kind);
                changed.exceptions.retain(|_, own| *own != JointException::default());
                if stays {
                    changed.frame.scarfs.by_hand.clone_from(places);
                }
            })
        };
        // Where its proposal leaves every scarf in place, both are one.
        let moves = |changed: &Project| {
            let places = |built: &Built| built.shape.beam.scarfs.iter().map(|scarf| scarf.place).collect::<Vec<_>>();
            lay_out(changed).built.is_none_or(|built| places(&built) != strength.scarfs)
        };
        let mut all = Ladder::new();
        for kind in others {
            let proposed = one(kind, false);
            let stays = (!is_placed && moves(&proposed.1)).then(|| one(kind, true));
            all.push(proposed);
            all.extend(stays);
        }
        all
    }

    /// That scarf moved along the beam, the nearest places first.
    pub fn scarf_moved(&self, strength: &Strength, member: &str) -> Ladder {
        let Some(number) = scarf_number(member) else { return Ladder::new() };
        let places: Vec<ScarfPlace> = strength.scarfs.clone();
        let Some(own) = number.checked_sub(1).and_then(|index| places.get(index)).copied() else {
            return Ladder::new();
        };
        let steps = [-1.0, 1.0, -2.0, 2.0, -3.0, 3.0, -4.0, 4.0];
        steps
            .into_iter()
            .map(|steps| {
                let centre = own.centre + self.step(4.0, 100.0) * steps;
                let mut moved = places.clone();
                moved[number - 1].centre = centre;
                self.with(format!("scarf {number} with its middle at {}", self.said(centre)), |changed| {
                    changed.frame.scarfs = Scarfs { by_hand: moved, ..changed.frame.scarfs.clone() };
                })
            })
            .collect()
    }

    /// Every lap longer.
    pub fn longer_laps(&self) -> Ladder {
        let one = |steps: f64| {
            let lap = self.project.frame.scarfs.lap + self.step(4.0, 100.0) * steps;
            self.with(format!("laps of {}", self.said(lap)), |changed| changed.frame.scarfs.lap = lap)
        };
        [1.0, 2.0].map(one).into()
    }

    /// A beam of longer pieces, where the mill saws them.
    pub fn fewer_pieces(&self, strength: &Strength) -> Ladder {
        let n = strength.scarfs.len();
        let one = |n: usize| {
            self.with(format!("a beam of {n} {}", if n == 1 { "piece" } else { "pieces" }), |changed| {
                (changed.frame.scarfs.n_pieces, changed.frame.scarfs.by_hand) = (Some(n), Vec::new());
            })
        };
        (n > 0).then(|| one(n)).into_iter().collect()
    }
}

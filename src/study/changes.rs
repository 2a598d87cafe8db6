//! Single changes of sticks, spacings and posts that may help a check, in ladders from small to large.
use crate::checks::Strength;
use crate::lay_out;
use crate::materials::Timber;
use crate::members::Grade;
use crate::project::{Blocks, Post, Project, Timbers};
use crate::units::{Length, UnitSystem};
use crate::wording::{length, weight};

/// Changes of one kind, the smallest first.
pub(super) type Ladder = Vec<(String, Project)>;

pub(super) struct Try<'a> {
    pub project: &'a Project,
}

impl Try<'_> {
    pub fn with(&self, says: impl Into<String>, change: impl FnOnce(&mut Project)) -> (String, Project) {
        let mut changed = self.project.clone();
        change(&mut changed);
        (says.into(), changed)
    }

    pub const fn step(&self, inches: f64, millimetres: f64) -> Length {
        match self.project.units {
            UnitSystem::Imperial => Length::inches(inches),
            UnitSystem::Metric => Length::millimetres(millimetres),
        }
    }

    pub fn said(&self, value: Length) -> String {
        length(value, self.project.units)
    }

    pub fn for_rafter(&self) -> Vec<Ladder> {
        vec![
            self.blocks(),
            self.shallower_seats(),
            self.shorter_tail(),
            self.rafters_closer(),
            self.larger("rafters", |timbers| &mut timbers.rafter),
            self.graded(false),
        ]
    }

    pub fn for_beam(&self) -> Vec<Ladder> {
        vec![self.longer_braces(), self.braces_both_sides(), self.larger_beam(), self.more_posts(), self.graded(true)]
    }

    pub fn for_scarf(&self, strength: &Strength, member: &str) -> Vec<Ladder> {
        vec![
            self.own_scarf_kind(strength, member),
            self.scarf_kind(),
            self.scarf_moved(strength, member),
            self.bolts_at_roots(strength),
            self.more_ties("each scarf root", |fixings| &mut fixings.scarf),
            self.longer_laps(),
            self.fewer_pieces(strength),
            self.larger_beam(),
            self.more_posts(),
        ]
    }

    pub fn for_post(&self) -> Vec<Ladder> {
        vec![
            self.longer_braces(),
            self.braces_both_sides(),
            self.larger("braces", |timbers| &mut timbers.brace),
            self.larger("posts", |timbers| &mut timbers.post),
            self.more_posts(),
            self.graded(true),
        ]
    }

    pub fn for_brace(&self) -> Vec<Ladder> {
        let thicker = |steps: f64| {
            let tenon = self.project.joinery.tenon_thickness + self.step(0.25, 5.0) * steps;
            self.with(format!("tenons {} thick", self.said(tenon)), |p| p.joinery.tenon_thickness = tenon)
        };
        vec![
            [1.0, 2.0].map(thicker).into(),
            self.braces_both_sides(),
            self.larger("braces", |timbers| &mut timbers.brace),
            self.longer_braces(),
            self.larger_beam(),
            self.more_posts(),
        ]
    }

    /// Deeper, then broader, by one and by two sizes of the mill.
    pub fn larger(&self, name: &str, of: fn(&mut Timbers) -> &mut Timber) -> Ladder {
        self.larger_by(self.step(2.0, 50.0), name, of)
    }

    /// The same of the beam; where its pieces become too heavy, with a crew that lifts as much more as it weighs.
    pub fn larger_beam(&self) -> Ladder {
        let area = self.project.frame.timbers.beam.sawn.area();
        let mut all = self.larger("beam", |timbers| &mut timbers.beam);
        for (says, changed) in &mut all {
            if lay_out(changed).built.is_some() {
                continue;
            }
            let heavier = self.project.mill.heaviest_pick * (changed.frame.timbers.beam.sawn.area() / area);
            changed.mill.heaviest_pick = heavier;
            says.push_str(&format!(", with a crew that lifts {}", weight(heavier, self.project.units)));
        }
        all
    }

    /// The thinnest sticks have closer sizes.
    pub fn larger_purlins(&self) -> Ladder {
        self.larger_by(self.step(0.5, 10.0), "purlins", |timbers| &mut timbers.purlin)
    }

    fn larger_by(&self, size: Length, name: &str, of: fn(&mut Timbers) -> &mut Timber) -> Ladder {
        let mut all = Ladder::new();
        for (deeper, broader) in [(1.0, 0.0), (0.0, 1.0), (2.0, 0.0), (1.0, 1.0), (3.0, 0.0), (2.0, 2.0)] {
            let (depth, breadth) = (size * deeper, size * broader);
            let mut changed = self.project.clone();
            let timber = of(&mut changed.frame.timbers);
            for section in [&mut timber.ordered, &mut timber.sawn] {
                section.depth += depth;
                section.breadth += breadth;
            }
            let size = timber.ordered.label(self.project.units);
            all.push((format!("{name} of {size}"), changed));
        }
        all
    }

    pub fn rafters_closer(&self) -> Ladder {
        let spacings = [self.step(20.0, 500.0), self.step(16.0, 400.0), self.step(12.0, 300.0)];
        let nearer = spacings.into_iter().filter(|spacing| *spacing < self.project.frame.rafters.spacing);
        let one =
            |spacing| self.with(format!("rafters every {}", self.said(spacing)), |p| p.frame.rafters.spacing = spacing);
        nearer.map(one).collect()
    }

    pub fn purlins_closer(&self) -> Ladder {
        let spacings = [self.step(18.0, 450.0), self.step(16.0, 400.0), self.step(12.0, 300.0)];
        let nearer = spacings.into_iter().filter(|spacing| *spacing < self.project.roofing.purlin_spacing);
        let one = |spacing| {
            self.with(format!("purlins every {}", self.said(spacing)), |p| p.roofing.purlin_spacing = spacing)
        };
        nearer.map(one).collect()
    }

    fn blocks(&self) -> Ladder {
        if self.project.frame.blocks != Blocks::None {
            return Ladder::new();
        }
        vec![self.with("blocks between the rafters over the beam", |p| p.frame.blocks = Blocks::OverBeam)]
    }

    /// Thin enough that a notch is allowed on either face, as deep as they are and then deeper.
    pub fn thinner_rafters(&self) -> Ladder {
        let thin = self.step(3.0, 75.0);
        let one = |steps: f64| {
            let mut changed = self.project.clone();
            let timber = &mut changed.frame.timbers.rafter;
            for section in [&mut timber.ordered, &mut timber.sawn] {
                section.breadth = thin;
                section.depth += self.step(2.0, 50.0) * steps;
            }
            (format!("rafters of {}", timber.ordered.label(self.project.units)), changed)
        };
        [0.0, 1.0, 2.0].map(one).into()
    }

    /// A shorter seat is a shallower notch.
    fn shallower_seats(&self) -> Ladder {
        let frame = &self.project.frame;
        let one = |steps: f64| {
            let less = self.step(0.5, 15.0) * steps;
            let (ledger, beam) = (frame.ledger_seat_length - less, frame.beam_seat_length - less);
            let says = format!("seats of {} on the ledger and {} on the beam", self.said(ledger), self.said(beam));
            self.with(says, |p| (p.frame.ledger_seat_length, p.frame.beam_seat_length) = (ledger, beam))
        };
        [1.0, 2.0].map(one).into()
    }

    fn shorter_tail(&self) -> Ladder {
        let shorter = [2.0, 4.0, 8.0].map(|inches| self.project.frame.tail - self.step(inches, inches * 25.0));
        let one = |tail| self.with(format!("tails of {}", self.said(tail)), |p| p.frame.tail = tail);
        shorter.into_iter().filter(|tail| *tail > Length::ZERO).map(one).collect()
    }

    /// A grader's stamp, not a better word for the same wood.
    pub fn graded(&self, timbers: bool) -> Ladder {
        let own = if timbers { self.project.wood.timber_grade } else { self.project.wood.lumber_grade };
        let better = Grade::ALL.into_iter().rev().skip_while(|grade| *grade != own).skip(1);
        let one = |grade: Grade| {
            self.with(format!("wood that a grader has stamped {}", grade.name()), |changed| {
                let wood = &mut changed.wood;
                *(if timbers { &mut wood.timber_grade } else { &mut wood.lumber_grade }) = grade;
            })
        };
        better.map(one).collect()
    }

    /// The same line with a post more, or two, in equal bays.
    pub fn more_posts(&self) -> Ladder {
        let posts = &self.project.frame.posts;
        let [first, .., last] = posts.as_slice() else { return Ladder::new() };
        let with = |more: usize| {
            let n = posts.len() - 1 + more;
            let place = |index: usize| {
                let share = index as f64 / n as f64;
                Post {
                    x: first.x + (last.x - first.x) * share,
                    pier_top: first.pier_top + (last.pier_top - first.pier_top) * share,
                    pier_measured: false,
                    brace_left: index > 0 || first.brace_left,
                    brace_right: index < n || last.brace_right,
                }
            };
            let all: Vec<Post> = (0..=n).map(place).collect();
            self.with(format!("{} posts in equal bays", n + 1), |changed| {
                changed.frame.posts = all;
                changed.frame.scarfs.by_hand = Vec::new();
            })
        };
        [1, 2].map(with).into()
    }

    /// Both legs, then the one down the post alone, then the one along the beam.
    pub fn longer_braces(&self) -> Ladder {
        let one = |(along, down): (f64, f64)| {
            let step = self.step(6.0, 150.0);
            let frame = &self.project.frame;
            let (along, down) = (frame.brace_along + step * along, frame.brace_down + step * down);
            let says =
                format!("brace legs of {} along the beam and {} down the post", self.said(along), self.said(down));
            self.with(says, |p| (p.frame.brace_along, p.frame.brace_down) = (along, down))
        };
        [(1.0, 1.0), (0.0, 1.0), (0.0, 1.5), (0.0, 2.0), (1.0, 0.0), (2.0, 2.0), (3.0, 3.0)].map(one).into()
    }

    /// Every post braced on its other side too: toward its neighbours, then past the ends of the row as well.
    pub fn braces_both_sides(&self) -> Ladder {
        let last = self.project.frame.posts.len().saturating_sub(1);
        let one = |says: &str, past_the_ends: bool| {
            self.with(says, |changed| {
                for (index, post) in changed.frame.posts.iter_mut().enumerate() {
                    post.brace_left |= index > 0 || past_the_ends;
                    post.brace_right |= index < last || past_the_ends;
                }
            })
        };
        let all = [
            one("a brace from every post toward each of its neighbours", false),
            one("braces on both sides of every post", true),
        ];
        all.into_iter().filter(|(_, changed)| changed.frame.posts != self.project.frame.posts).collect()
    }
}

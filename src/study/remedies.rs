//! Single changes that would make a failing check hold, each tried on the whole project.
use crate::checks::{Check, Strength};
use crate::evaluate;
use crate::fastening::fastener_table;
use crate::materials::Timber;
use crate::members::Grade;
use crate::project::{Post, Project, ScarfKind, ScarfPlace, Scarfs, Tie, Timbers};
use crate::units::{Length, Money, UnitSystem};
use crate::wording::length;

/// One change that helps.
#[derive(Clone, Debug, PartialEq)]
pub struct Remedy {
    /// What is changed, in words.
    pub says: String,
    /// The project with it.
    pub project: Project,
    /// The share the same kind of check comes to then.
    pub ratio: f64,
    /// The member that is asked most of then and its share, where it could be judged.
    pub worst: Option<(String, f64)>,
    /// What the timber costs then.
    pub price: Money,
}

/// Most remedies that are offered for one check.
const MOST: usize = 3;

/// What a check is about, as far as changes go.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Subject {
    Rafter,
    Beam,
    Scarf,
    Post,
    Brace,
    Purlin,
    Ledger,
    Footing,
    Other,
}

fn subject(member: &str) -> Subject {
    let first = member.chars().next().unwrap_or_default();
    let is_mark = member.chars().nth(1).is_some_and(|next| next.is_ascii_digit());
    match (first, is_mark) {
        _ if member.starts_with("scarf") => Subject::Scarf,
        _ if member.starts_with("footing") || member.starts_with("pier") => Subject::Footing,
        _ if member.contains("post") => Subject::Post,
        ('R', true) => Subject::Rafter,
        ('B', true) => Subject::Beam,
        ('P', true) => Subject::Post,
        ('K', true) => Subject::Brace,
        ('N', true) => Subject::Purlin,
        ('L', true) => Subject::Ledger,
        _ => Subject::Other,
    }
}

/// Up to three single changes after which no check of that kind fails and no more checks fail than before.
#[must_use]
pub fn remedies(project: &Project, strength: &Strength, failing: &Check) -> Vec<Remedy> {
    let before = failures(strength);
    let mut found = Vec::new();
    for (says, changed) in candidates(project, strength, failing) {
        let design = evaluate(&changed);
        let (Some(built), Some(after)) = (&design.built, &design.strength) else { continue };
        let Some(ratio) = worst_alike(after, failing) else { continue };
        if ratio <= 1.0 && failures(after) <= before {
            let worst = after.worst().and_then(|check| Some((check.member.clone(), check.ratio()?)));
            found.push(Remedy { says, project: changed, ratio, worst, price: built.order.price });
            if found.len() == MOST {
                break;
            }
        }
    }
    found
}

fn failures(strength: &Strength) -> usize {
    strength.checks.iter().filter(|check| !check.passes()).count()
}

/// The worst ratio of the checks of the same kind that could be made; nothing where none could.
fn worst_alike(strength: &Strength, failing: &Check) -> Option<f64> {
    let alike = |check: &&Check| check.name == failing.name && subject(&check.member) == subject(&failing.member);
    strength.checks.iter().filter(alike).filter_map(Check::ratio).reduce(f64::max)
}

type Candidates = Vec<(String, Project)>;

/// Changes worth trying, the smallest first.
fn candidates(project: &Project, strength: &Strength, failing: &Check) -> Candidates {
    let try_out = Try { project };
    let mut all = Candidates::new();
    match subject(&failing.member) {
        Subject::Rafter => {
            all.extend(try_out.ties(&failing.name));
            all.extend(try_out.closer("rafters", [20.0, 16.0, 12.0], [500.0, 400.0, 300.0]));
            all.extend(try_out.larger("rafters", |timbers| &mut timbers.rafter));
            all.extend(try_out.graded(false));
        }
        Subject::Beam => {
            all.extend(try_out.larger("beam", |timbers| &mut timbers.beam));
            all.extend(try_out.one_more_post());
            all.extend(try_out.longer_braces());
            all.extend(try_out.graded(true));
        }
        Subject::Scarf => {
            all.extend(try_out.scarf_kind());
            all.extend(try_out.scarf_moved(strength, &failing.member));
            all.extend(try_out.ties(&failing.name));
            all.extend(try_out.larger("beam", |timbers| &mut timbers.beam));
            all.extend(try_out.one_more_post());
        }
        Subject::Post => {
            all.extend(try_out.ties(&failing.name));
            all.extend(try_out.larger("posts", |timbers| &mut timbers.post));
            all.extend(try_out.longer_braces());
            all.extend(try_out.one_more_post());
            all.extend(try_out.graded(true));
        }
        Subject::Brace => {
            all.extend(try_out.larger("braces", |timbers| &mut timbers.brace));
            all.extend(try_out.longer_braces());
            all.extend(try_out.one_more_post());
        }
        Subject::Purlin => {
            all.extend(try_out.screws());
            all.extend(try_out.purlins_closer());
            all.extend(try_out.larger("purlins", |timbers| &mut timbers.purlin));
            all.extend(try_out.closer("rafters", [20.0, 16.0, 12.0], [500.0, 400.0, 300.0]));
        }
        Subject::Ledger => {
            all.extend(try_out.ledger_fixings());
            all.extend(try_out.larger("ledger", |timbers| &mut timbers.ledger));
        }
        Subject::Footing => {
            all.extend(try_out.footing());
            all.extend(try_out.one_more_post());
        }
        Subject::Other => {
            all.extend(try_out.screws());
            all.extend(try_out.purlins_closer());
            all.extend(try_out.ledger_fixings());
        }
    }
    all
}

struct Try<'a> {
    project: &'a Project,
}

impl Try<'_> {
    fn with(&self, says: impl Into<String>, change: impl FnOnce(&mut Project)) -> (String, Project) {
        let mut changed = self.project.clone();
        change(&mut changed);
        (says.into(), changed)
    }

    const fn step(&self, inches: f64, millimetres: f64) -> Length {
        match self.project.units {
            UnitSystem::Imperial => Length::inches(inches),
            UnitSystem::Metric => Length::millimetres(millimetres),
        }
    }

    fn said(&self, value: Length) -> String {
        length(value, self.project.units)
    }

    /// Deeper, then broader, by one and by two sizes of the mill.
    fn larger(&self, name: &str, of: fn(&mut Timbers) -> &mut Timber) -> Candidates {
        let mut all = Candidates::new();
        for (deeper, broader) in [(1.0, 0.0), (0.0, 1.0), (2.0, 0.0), (1.0, 1.0), (2.0, 2.0)] {
            let (depth, breadth) = (self.step(2.0, 50.0) * deeper, self.step(2.0, 50.0) * broader);
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

    fn closer(&self, name: &str, inches: [f64; 3], millimetres: [f64; 3]) -> Candidates {
        let spacings = [0, 1, 2].map(|index| self.step(inches[index], millimetres[index]));
        let nearer = spacings.into_iter().filter(|spacing| *spacing < self.project.frame.rafters.spacing);
        nearer
            .map(|spacing| {
                self.with(format!("{name} every {}", self.said(spacing)), |changed| {
                    changed.frame.rafters.spacing = spacing;
                })
            })
            .collect()
    }

    fn purlins_closer(&self) -> Candidates {
        let spacings = [self.step(18.0, 450.0), self.step(16.0, 400.0), self.step(12.0, 300.0)];
        let nearer = spacings.into_iter().filter(|spacing| *spacing < self.project.roofing.purlin_spacing);
        nearer
            .map(|spacing| {
                self.with(format!("purlins every {}", self.said(spacing)), |changed| {
                    changed.roofing.purlin_spacing = spacing;
                })
            })
            .collect()
    }

    /// A grader's stamp, not a better word for the same wood.
    fn graded(&self, timbers: bool) -> Candidates {
        let own = if timbers { self.project.wood.timber_grade } else { self.project.wood.lumber_grade };
        let better = Grade::ALL.into_iter().rev().skip_while(|grade| *grade != own).skip(1);
        better
            .map(|grade| {
                let says = format!("wood that a grader has stamped {}", grade.name());
                self.with(says, |changed| {
                    let wood = &mut changed.wood;
                    if timbers {
                        wood.timber_grade = grade;
                    } else {
                        wood.lumber_grade = grade;
                    }
                })
            })
            .collect()
    }

    /// The same line with one post more, in equal bays.
    fn one_more_post(&self) -> Candidates {
        let posts = &self.project.frame.posts;
        let [first, .., last] = posts.as_slice() else { return Candidates::new() };
        let n = posts.len();
        let share =
            |index: usize| u32::try_from(index).map_or(0.0, f64::from) / u32::try_from(n).map_or(1.0, f64::from);
        let place = |index: usize| Post {
            x: first.x + (last.x - first.x) * share(index),
            pier_top: first.pier_top + (last.pier_top - first.pier_top) * share(index),
            pier_measured: false,
            brace_left: index > 0 || first.brace_left,
            brace_right: index < n || last.brace_right,
        };
        let all: Vec<Post> = (0..=n).map(place).collect();
        vec![self.with(format!("{} posts in equal bays", n + 1), |changed| {
            changed.frame.posts = all;
            changed.frame.scarfs.by_hand = Vec::new();
        })]
    }

    fn longer_braces(&self) -> Candidates {
        [1.0, 2.0]
            .into_iter()
            .map(|steps| {
                let more = self.step(6.0, 150.0) * steps;
                let (along, down) = (self.project.frame.brace_along + more, self.project.frame.brace_down + more);
                self.with(format!("brace legs of {} and {}", self.said(along), self.said(down)), |changed| {
                    (changed.frame.brace_along, changed.frame.brace_down) = (along, down);
                })
            })
            .collect()
    }

    fn scarf_kind(&self) -> Candidates {
        if self.project.frame.scarfs.kind == ScarfKind::StopSplayedTabled {
            return Candidates::new();
        }
        let says = format!("scarfs {}", ScarfKind::StopSplayedTabled.name());
        vec![self.with(says, |changed| changed.frame.scarfs.kind = ScarfKind::StopSplayedTabled)]
    }

    /// That scarf moved along the beam, the nearest places first.
    fn scarf_moved(&self, strength: &Strength, member: &str) -> Candidates {
        let Some(number) = member.strip_prefix("scarf ").and_then(|number| number.parse::<usize>().ok()) else {
            return Candidates::new();
        };
        let places: Vec<ScarfPlace> = strength.scarfs.clone();
        let Some(own) = number.checked_sub(1).and_then(|index| places.get(index)).copied() else {
            return Candidates::new();
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

    /// More of what ties a joint, where the tie is known at all.
    fn ties(&self, name: &str) -> Candidates {
        type Of = fn(&mut Project) -> &mut Tie;
        let all: [(&str, &str, Of); 4] = [
            ("each scarf root", "scarf", |project| &mut project.fixings.scarf),
            ("each rafter on the beam", "beam", |project| &mut project.fixings.rafter_seat),
            ("each rafter on the ledger", "ledger", |project| &mut project.fixings.rafter_head),
            ("each post base", "base", |project| &mut project.fixings.post_base),
        ];
        let is_asked = |word: &str| {
            name.contains(word)
                || name.contains("tie")
                || name.contains("lift")
                || name.contains("thin")
                || name.contains("screw")
        };
        let mut found = Candidates::new();
        for (place, _, of) in all.into_iter().filter(|(_, word, _)| is_asked(word)) {
            for more in [1, 2] {
                let mut changed = self.project.clone();
                let tie = of(&mut changed);
                if tie.count > 0 {
                    tie.count += more;
                    found.push((format!("{} fasteners at {place}", tie.count), changed));
                }
            }
        }
        found
    }

    fn screws(&self) -> Candidates {
        let fixings = &self.project.fixings;
        let mut all = Candidates::new();
        if !fixings.purlin.fastener.is_empty() {
            let more = fixings.purlin.count + 1;
            all.push(
                self.with(format!("{more} screws at each purlin crossing"), |changed| {
                    changed.fixings.purlin.count = more
                }),
            );
            let longer = fixings.purlin.length + self.step(1.0, 25.0);
            all.push(self.with(format!("purlin screws of {}", self.said(longer)), |changed| {
                changed.fixings.purlin.length = longer
            }));
        }
        if !fixings.sheet.screw.fastener.is_empty() {
            let closer = fixings.sheet.spacing * (2.0 / 3.0);
            all.push(self.with(format!("sheet screws every {}", self.said(closer)), |changed| {
                changed.fixings.sheet.spacing = closer
            }));
            let longer = fixings.sheet.screw.length + self.step(0.5, 15.0);
            all.push(self.with(format!("sheet screws of {}", self.said(longer)), |changed| {
                changed.fixings.sheet.screw.length = longer
            }));
        }
        all
    }

    fn ledger_fixings(&self) -> Candidates {
        let ledger = &self.project.fixings.ledger;
        let mut all = Candidates::new();
        let kind = ledger.fastener.split('_').next().unwrap_or_default().to_owned();
        let alike: Vec<_> =
            fastener_table().iter().filter(|found| found.key.starts_with(&kind) && !kind.is_empty()).collect();
        if let Some(own) = alike.iter().position(|found| found.key == ledger.fastener) {
            for next in alike.iter().skip(own + 1).take(2) {
                all.push(self.with(format!("{} through the ledger", next.name), |changed| {
                    changed.fixings.ledger.fastener.clone_from(&next.key);
                }));
            }
            let rows = ledger.rows + 1;
            all.push(
                self.with(format!("{rows} rows through the ledger"), |changed| changed.fixings.ledger.rows = rows),
            );
            let columns = ledger.columns + 1;
            all.push(self.with(format!("{columns} side by side at each post of the wall"), |changed| {
                changed.fixings.ledger.columns = columns;
            }));
            if ledger.washer > Length::ZERO {
                let wider = ledger.washer + self.step(1.0, 25.0);
                all.push(self.with(format!("washers of {} under the ledger's fixings", self.said(wider)), |changed| {
                    changed.fixings.ledger.washer = wider;
                }));
            }
            let longer = ledger.length + self.step(2.0, 50.0);
            all.push(self.with(format!("ledger fixings of {}", self.said(longer)), |changed| {
                changed.fixings.ledger.length = longer
            }));
        }
        all
    }

    fn footing(&self) -> Candidates {
        let pier = self.project.fixings.pier;
        let mut all = Candidates::new();
        for steps in [1.0, 2.0, 3.0, 4.0] {
            let width = pier.footing_width + self.step(4.0, 100.0) * steps;
            let thickness = pier.footing_thickness.max((width - pier.pier_width) / 2.0);
            let says = format!("footings {} across and {} thick", self.said(width), self.said(thickness));
            all.push(self.with(says, |changed| {
                (changed.fixings.pier.footing_width, changed.fixings.pier.footing_thickness) = (width, thickness);
            }));
        }
        let frost = self.project.ground.frost_depth.filter(|frost| *frost > pier.depth);
        let steps = [1.0, 2.0, 4.0].map(|steps| pier.depth + self.step(6.0, 150.0) * steps);
        all.extend(frost.into_iter().chain(steps).map(|depth| {
            self.with(format!("footings down to {}", self.said(depth)), |changed| changed.fixings.pier.depth = depth)
        }));
        all
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::project::demo;
    use crate::units::AreaLoad;

    fn first_failing(project: &Project, wanted: Subject) -> (std::sync::Arc<Strength>, Check) {
        let strength = evaluate(project).strength.unwrap();
        let fails = |check: &&Check| check.ratio().is_some_and(|ratio| ratio > 1.0) && subject(&check.member) == wanted;
        let check = strength.checks.iter().find(fails).unwrap().clone();
        (strength, check)
    }

    #[test]
    fn each_remedy_makes_the_check_hold() {
        let mut project = demo::wool_barn();
        for (wanted, snow) in [(Subject::Beam, 90.0), (Subject::Scarf, 40.0)] {
            project.place.ground_snow = Some(AreaLoad::psf(snow));
            let (strength, check) = first_failing(&project, wanted);
            let found = remedies(&project, &strength, &check);
            assert!(!found.is_empty() && found.len() <= MOST, "{wanted:?}");
            for remedy in found {
                let after = evaluate(&remedy.project).strength.unwrap();
                assert!(worst_alike(&after, &check).unwrap() <= 1.0, "{}", remedy.says);
                assert_eq!(remedy.worst.map(|(_, ratio)| ratio), after.worst().unwrap().ratio(), "{}", remedy.says);
                assert!(failures(&after) <= failures(&strength), "{}", remedy.says);
            }
        }
    }

    #[test]
    fn marks_tell_the_subject() {
        let pairs = [
            ("R16", Subject::Rafter),
            ("scarf 2", Subject::Scarf),
            ("P3", Subject::Post),
            ("the posts", Subject::Post),
        ];
        for (member, expected) in pairs {
            assert_eq!(subject(member), expected, "{member}");
        }
        assert_eq!(subject("footing of P1"), Subject::Footing);
        assert_eq!(subject("pier of P1"), Subject::Footing);
        assert_eq!(subject("Roof"), Subject::Other);
    }
}

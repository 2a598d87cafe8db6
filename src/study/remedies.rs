//! Single changes that would make a failing check hold, each tried on the whole project.
use super::way_in::no_way_in;
use crate::checks::{Check, Strength};
use crate::fastening::fastener_table;
use crate::materials::Timber;
use crate::members::Grade;
use crate::project::{Post, Project, Tie, Timbers};
use crate::units::{Length, Money, UnitSystem};
use crate::wording::{length, weight};
use crate::{evaluate, lay_out};

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

/// Up to three single changes after which no check of that kind fails and no more checks fail than before; of the kinds that
/// one scarf may have of its own the plainest after which its own check holds. Those that leave a stick without a way in say
/// so, and are offered only where too few others are found.
#[must_use]
pub fn remedies(project: &Project, strength: &Strength, failing: &Check) -> Vec<Remedy> {
    let before = failures(strength);
    let (mut found, mut stuck) = (Vec::new(), Vec::new());
    let mut has_own_kind = false;
    let n_problems = lay_out(project).problems.len();
    for (mut says, changed) in candidates(project, strength, failing) {
        let is_own_kind =
            changed.frame.scarfs.kind == project.frame.scarfs.kind && changed.exceptions != project.exceptions;
        if is_own_kind && has_own_kind {
            continue;
        }
        let design = evaluate(&changed);
        let (Some(built), Some(after)) = (&design.built, &design.strength) else { continue };
        let share = if is_own_kind { of_member(after, failing) } else { worst_alike(after, failing) };
        let Some(ratio) = share.filter(|ratio| *ratio <= 1.0 && failures(after) <= before) else { continue };
        if is_own_kind && design.problems.len() > n_problems {
            continue;
        }
        let no_way = no_way_in(&changed, &built.shape);
        let worst = after.worst().and_then(|check| Some((check.member.clone(), check.ratio()?)));
        no_way.iter().for_each(|why| says.push_str(&format!("; but {why}")));
        let remedy = Remedy { says, project: changed, ratio, worst, price: built.order.price };
        has_own_kind |= is_own_kind && no_way.is_empty();
        if no_way.is_empty() {
            found.push(remedy)
        } else {
            stuck.push(remedy)
        }
        if found.len() == MOST {
            break;
        }
    }
    found.extend(stuck);
    found.truncate(MOST);
    found
}

/// The worst ratio of the checks of that name on the same member.
fn of_member(strength: &Strength, failing: &Check) -> Option<f64> {
    let same = strength.checks.iter().filter(|check| (&check.member, &check.name) == (&failing.member, &failing.name));
    same.filter_map(Check::ratio).reduce(f64::max)
}

fn failures(strength: &Strength) -> usize {
    strength.checks.iter().filter(|check| !check.passes()).count()
}

/// The worst ratio of the checks of the same kind that could be made; nothing where none could.
fn worst_alike(strength: &Strength, failing: &Check) -> Option<f64> {
    let alike = |check: &&Check| check.name == failing.name && subject(&check.member) == subject(&failing.member);
    strength.checks.iter().filter(alike).filter_map(Check::ratio).reduce(f64::max)
}

pub(super) type Candidates = Vec<(String, Project)>;

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
            all.extend(try_out.larger_beam());
            all.extend(try_out.one_more_post());
            all.extend(try_out.longer_braces());
            all.extend(try_out.graded(true));
        }
        Subject::Scarf => {
            all.extend(try_out.own_scarf_kind(strength, &failing.member));
            all.extend(try_out.scarf_kind());
            all.extend(try_out.scarf_moved(strength, &failing.member));
            all.extend(try_out.ties(&failing.name));
            all.extend(try_out.larger_beam());
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

    /// The same of the beam; where its pieces become too heavy, with a crew that lifts as much more as it weighs.
    fn larger_beam(&self) -> Candidates {
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
    use crate::project::{JointException, ScarfKind, demo};
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

    /// Three pieces of 8x12 weigh a fifth more than of 8x10: 450 lb to lift becomes 540, without which only four would do, and
    /// they fold. The next deeper beam is still offered.
    #[test]
    fn a_deeper_beam_may_want_a_stronger_crew() {
        let project = demo::wool_barn();
        let deeper = Try { project: &project }.larger_beam();
        let (says, changed) = &deeper[0];
        assert_eq!(says, "beam of 8x12, with a crew that lifts 540 lb");
        assert_eq!(evaluate(changed).built.unwrap().shape.beam.scarfs.len(), 2);
        let strength = evaluate(&project).strength.unwrap();
        let is_it = |check: &&Check| check.name == "lies where the beam would bend" && !check.passes();
        let check = strength.checks.iter().find(is_it).unwrap();
        let found = remedies(&project, &strength, check);
        assert!(found.iter().any(|remedy| remedy.says == *says && remedy.ratio < 0.8));
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

    /// A scarf too thin at its roots gets the plainest kind that holds, alone, where it stands: by hand, the abutments of a
    /// stop-splayed one leave three quarters of the depth where a halved one leaves half.
    #[test]
    fn one_scarf_may_be_of_a_kind_of_its_own() {
        let mut project = demo::wool_barn();
        let places = evaluate(&project).built.unwrap().shape.beam.scarfs.iter().map(|scarf| scarf.place).collect();
        project.frame.scarfs.by_hand = places;
        project.frame.scarfs.kind = ScarfKind::Halved;
        let strength = evaluate(&project).strength.unwrap();
        let is_it = |check: &&Check| check.member == "scarf 1" && check.name.contains("thin") && !check.passes();
        let check = strength.checks.iter().find(is_it).unwrap().clone();
        let found = remedies(&project, &strength, &check);
        let own: Vec<_> = found.iter().filter(|remedy| remedy.says.contains(" alone ")).collect();
        let says: Vec<&str> = found.iter().map(|remedy| remedy.says.as_str()).collect();
        assert_eq!(own.len(), 1, "{says:?}");
        assert!(own[0].says.starts_with("scarf 1 alone stop-splayed"), "{says:?}");
        let after = &own[0].project;
        assert_eq!((after.scarf_kind(1), after.scarf_kind(2)), (ScarfKind::StopSplayed, ScarfKind::Halved));
        assert_eq!(after.frame, project.frame);
        let strength = evaluate(after).strength.unwrap();
        assert_eq!(of_member(&strength, &check), Some(own[0].ratio));
        assert!(own[0].ratio <= 1.0);
        for remedy in &found {
            let built = evaluate(&remedy.project).built.unwrap();
            let no_way = no_way_in(&remedy.project, &built.shape);
            assert!(no_way.iter().all(|why| remedy.says.contains(why.as_str())), "{}", remedy.says);
        }
    }

    /// The same change made again is the frame's own kind: nothing of the joint's own is left over.
    #[test]
    fn a_scarf_goes_back_to_the_kind_of_the_frame() {
        let mut project = demo::wool_barn();
        let own = JointException { scarf_kind: Some(ScarfKind::Halved), ..JointException::default() };
        project.exceptions.insert("S1".to_owned(), own);
        let strength = evaluate(&project).strength.unwrap();
        let all = Try { project: &project }.own_scarf_kind(&strength, "scarf 1");
        let back = all.iter().find(|(says, _)| says.ends_with(ScarfKind::StopSplayedUnderSquinted.name())).unwrap();
        assert!(back.1.exceptions.is_empty());
        let whole = Try { project: &project }.scarf_kind();
        assert!(whole[0].1.exceptions.is_empty());
    }
}

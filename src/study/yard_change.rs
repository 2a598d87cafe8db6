//! The changes of a frame that are tried for a pile, the smallest of each kind first.
use super::judged::Judged;
use crate::materials::{Section, Timber};
use crate::ordering::{asked_length, same_section};
use crate::project::{FixedHeights, Project, RafterRule, Scarfs};
use crate::tickets::Role;
use crate::units::{Length, UnitSystem};
use crate::wording::length;

/// One change.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Change {
    /// Docked so much from each end.
    Docked(Length),
    /// The beam in pieces of this stock.
    Divided { scarfs: Scarfs, stock: Vec<Length> },
    /// The beam in so many pieces, its scarfs proposed.
    Pieces(usize),
    /// Tails of that length.
    Tail(Length),
    /// That reach.
    Reach(Length),
    /// The beam's seat that high.
    BeamSeat(Length),
    /// Rafters so far apart, stepped as now.
    Spacing(Length),
    /// Rafters in equal bays, at most so far apart.
    EqualBays(Length, usize),
    /// Beam, ledger and purlins parted for lengths up to this one.
    Longest(Length),
    /// Sticks of a role of another section.
    Sized(Role, Section),
}

impl Change {
    /// In words.
    pub fn says(&self, units: UnitSystem) -> String {
        let say = |value: &Length| length(*value, units);
        match self {
            Self::Docked(docked) => format!("only {} docked from each end", say(docked)),
            Self::Divided { stock, .. } => {
                let stock: Vec<String> = stock.iter().map(|length| asked_length(*length, units)).collect();
                format!("the beam out of {}", stock.join(" + "))
            }
            Self::Pieces(n) => format!("the beam in {n} pieces"),
            Self::Tail(tail) => format!("tails of {}", say(tail)),
            Self::Reach(reach) => format!("reach {}", say(reach)),
            Self::BeamSeat(seat) => format!("the beam’s top at {}", say(seat)),
            Self::Spacing(spacing) => format!("rafters every {}", say(spacing)),
            Self::EqualBays(bay, n) => format!("{n} rafters in equal bays of {}", say(bay)),
            Self::Longest(longest) => {
                format!("beam, ledger and purlins parted for lengths up to {}", asked_length(*longest, units))
            }
            Self::Sized(role, section) => format!("{} of {}", role.plural(), section.label(units)),
        }
    }

    /// Both change the same thing.
    pub fn is_kind_of(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Sized(role, _), Self::Sized(known, _)) => role == known,
            (Self::Divided { .. } | Self::Pieces(_), Self::Divided { .. } | Self::Pieces(_)) => true,
            (Self::Spacing(_) | Self::EqualBays(..), Self::Spacing(_) | Self::EqualBays(..)) => true,
            _ => std::mem::discriminant(self) == std::mem::discriminant(other),
        }
    }

    /// Makes it.
    pub fn apply(&self, project: &mut Project) {
        let frame = &mut project.frame;
        match self {
            Self::Docked(docked) => project.mill.trim_each_end = *docked,
            Self::Divided { scarfs, .. } => frame.scarfs.clone_from(scarfs),
            Self::Pieces(n) => {
                frame.scarfs.n_pieces = Some(*n);
                frame.scarfs.by_hand.clear();
            }
            Self::Tail(tail) => frame.tail = *tail,
            Self::Reach(reach) => frame.reach = *reach,
            Self::BeamSeat(seat) => frame.heights.beam_seat = *seat,
            Self::Spacing(spacing) => frame.rafters.spacing = *spacing,
            Self::EqualBays(bay, _) => {
                frame.rafters.spacing = *bay;
                frame.rafters.rule = RafterRule::Equal;
            }
            Self::Longest(longest) => {
                project.mill.lengths.retain(|one| *one <= *longest);
                if !project.mill.lengths.contains(longest) {
                    project.mill.lengths.push(*longest);
                }
            }
            Self::Sized(role, section) => resize(frame.timbers.of_mut(*role), *section),
        }
    }
}

/// Another section, its larger side where the larger side was, sawn as much over or under as before.
fn resize(timber: &mut Timber, section: Section) {
    let (small, large) = (section.breadth.min(section.depth), section.breadth.max(section.depth));
    let is_upright = timber.ordered.depth >= timber.ordered.breadth;
    let turned = if is_upright { Section::new(small, large) } else { Section::new(large, small) };
    timber.sawn.breadth += turned.breadth - timber.ordered.breadth;
    timber.sawn.depth += turned.depth - timber.ordered.depth;
    timber.ordered = turned;
}

/// Changes worth trying where sticks of some roles are missing: `is_short` where the pile has their section, `is_missing` where
/// it need not.
pub(super) fn candidates(
    own: &Judged,
    is_short: &dyn Fn(Role) -> bool,
    is_missing: &dyn Fn(Role) -> bool,
) -> Vec<Change> {
    let project = &own.project;
    let mut all = Vec::new();
    if [Role::Post, Role::Beam, Role::Brace, Role::Rafter, Role::Ledger].into_iter().any(is_short) {
        all.extend(docked(project));
    }
    if is_short(Role::Rafter) {
        all.extend(shorter_rafters(project));
        all.extend(fewer_rafters(own));
    }
    if is_short(Role::Beam) {
        let n = own.built.shape.beam.pieces.len();
        let counts = [n.saturating_sub(1), n + 1].into_iter().filter(|count| *count > 0);
        all.extend(counts.map(Change::Pieces));
    }
    if is_short(Role::Post) {
        all.extend(lower_beam(project));
    }
    if [Role::Beam, Role::Ledger, Role::Purlin].into_iter().any(is_short) {
        all.extend(longest(project, is_short));
    }
    let roles = [Role::Post, Role::Beam, Role::Brace, Role::Rafter, Role::Ledger, Role::Purlin, Role::Block];
    for role in roles.into_iter().filter(|role| is_missing(*role)) {
        all.extend(sections(project, role));
    }
    all
}

const fn step(project: &Project, inches: f64, millimetres: f64) -> Length {
    match project.units {
        UnitSystem::Imperial => Length::inches(inches),
        UnitSystem::Metric => Length::millimetres(millimetres),
    }
}

/// Half as much docked, and half of that: checks and dirt reach farther in than that in old sticks (common practice: look).
fn docked(project: &Project) -> Vec<Change> {
    let now = project.mill.trim_each_end;
    [0.5, 0.25].into_iter().map(|share| now * share).filter(|_| now > Length::ZERO).map(Change::Docked).collect()
}

/// Tails down to two inches, a little less reach.
fn shorter_rafters(project: &Project) -> Vec<Change> {
    let one = step(project, 1.0, 25.0);
    let least = step(project, 2.0, 50.0);
    let tails = (1..=8).map(|n| project.frame.tail - one * f64::from(n)).filter(|tail| *tail >= least);
    let reaches = [1.0, 2.0, 3.0, 4.0, 6.0].map(|n| project.frame.reach - one * n);
    tails.map(Change::Tail).chain(reaches.map(Change::Reach)).collect()
}

/// Wider spacings up to three feet, and one to four rafters less in equal bays.
fn fewer_rafters(own: &Judged) -> Vec<Change> {
    let project = &own.project;
    let (now, one) = (project.frame.rafters.spacing, step(project, 1.0, 25.0));
    let wider = (1..=12).map(|n| now + one * f64::from(n)).filter(|spacing| *spacing <= step(project, 36.0, 900.0));
    let row = &own.built.shape.rafters;
    let span = row.last().zip(row.first()).map_or(Length::ZERO, |(last, first)| *last - *first);
    let fewer = (1..=4).filter_map(|less| {
        let n = row.len().checked_sub(less).filter(|n| *n >= 2)?;
        Some(Change::EqualBays(span / (n - 1) as f64, n))
    });
    fewer.chain(wider.map(Change::Spacing)).collect()
}

/// The beam a little lower, where its height is the user's to set.
fn lower_beam(project: &Project) -> Vec<Change> {
    if project.frame.heights.fixed == FixedHeights::PitchAndLedger {
        return Vec::new();
    }
    let one = step(project, 1.0, 25.0);
    [1.0, 2.0, 3.0, 4.0, 6.0].map(|n| Change::BeamSeat(project.frame.heights.beam_seat - one * n)).to_vec()
}

/// Each length in the pile as the longest there is, of the sections that are short.
fn longest(project: &Project, is_short: &dyn Fn(Role) -> bool) -> Vec<Change> {
    let asked = |section: Section| {
        let roles = [Role::Beam, Role::Ledger, Role::Purlin].into_iter().filter(|role| is_short(*role));
        roles.into_iter().any(|role| same_section(project.frame.timbers.of(role).ordered, section))
    };
    let lots = project.yard.iter().filter(|lot| lot.count > 0 && asked(lot.section));
    let mut lengths: Vec<Length> = lots.map(|lot| lot.length).filter(|one| *one < project.mill.longest()).collect();
    crate::units::sort_by_number(&mut lengths, |length| -length.to_inches());
    lengths.dedup();
    lengths.into_iter().map(Change::Longest).collect()
}

/// The other sections that lie in the pile, up to twice the wood.
fn sections(project: &Project, role: Role) -> Vec<Change> {
    let own = project.frame.timbers.of(role).ordered;
    let mut all: Vec<Section> = Vec::new();
    for lot in project.yard.iter().filter(|lot| lot.count > 0) {
        let is_apt = !same_section(lot.section, own)
            && lot.section.area().to_square_inches() <= own.area().to_square_inches() * 2.0;
        if is_apt && !all.iter().any(|known| same_section(*known, lot.section)) {
            all.push(lot.section);
        }
    }
    crate::units::sort_by_number(&mut all, |section| section.area().to_square_inches());
    all.into_iter().map(|section| Change::Sized(role, section)).collect()
}

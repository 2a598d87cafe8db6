//! What a spoiled stick can still become: a shorter stick of the same frame, clear of all that is cut in it.
use super::mark::MarkKind;
use super::rescue::{Answer, Way};
use super::stick::Stick;
use crate::project::Project;
use crate::units::{Length, sort_by_number};
use crate::wording::length;

/// Cut off beyond a joint that stays in the waste (common practice).
const TRIM: Length = Length::inches(0.5);
/// As many are named.
const MOST_NAMED: usize = 4;

/// The clear lengths between the cuts of a stick, each from its low to its high end.
///
/// A joint counts whole as soon as one of its marks is ticked, or the stick is cut; the bad cut counts at its line and where
/// it was made.
#[must_use]
pub fn clear_lengths(project: &Project, stick: &Stick, bad: usize, off: Length) -> Vec<(Length, Length)> {
    let progress = &project.progress;
    let is_cut = progress.cut.contains_key(&stick.mark);
    let made = progress.marked.get(&stick.mark).map(|keys| stick.made(keys)).unwrap_or_default();
    let is_gone = |place: usize| is_cut || place == bad || made.contains(&place);
    let (mut low, mut high) = (stick.low, stick.high);
    let mut taken: Vec<(Length, Length)> = Vec::new();
    for (place, mark) in stick.marks.iter().enumerate().filter(|(place, _)| is_gone(*place)) {
        let far = mark.far.unwrap_or(mark.near);
        match mark.kind {
            MarkKind::Seat | MarkKind::Chamfer => continue,
            MarkKind::End if mark.mate.is_none() => (),
            _ => taken.push(joint(stick, place)),
        }
        if place != bad {
            continue;
        }
        let at = (mark.near + off, far + off);
        match mark.kind {
            MarkKind::End if at.0 - low < high - at.0 => low = low.max(at.0),
            MarkKind::End => high = high.min(at.1),
            _ => taken.push(at),
        }
    }
    between(taken, (low, high))
}

/// From where to where the joint of a mark reaches: all that is cut for one mate.
fn joint(stick: &Stick, place: usize) -> (Length, Length) {
    let own = &stick.marks[place];
    let of_joint = stick.marks.iter().filter(|mark| {
        let is_cut = !matches!(mark.kind, MarkKind::Seat | MarkKind::Chamfer);
        is_cut && own.mate.is_some() && mark.mate == own.mate
    });
    of_joint.chain([own]).fold((own.near, own.near), |(from, to), mark| {
        let far = mark.far.unwrap_or(mark.near);
        (from.min(mark.near).min(far), to.max(mark.near).max(far))
    })
}

fn between(mut taken: Vec<(Length, Length)>, (low, high): (Length, Length)) -> Vec<(Length, Length)> {
    sort_by_number(&mut taken, |run| run.0.to_inches());
    let mut clear = Vec::new();
    let mut from = low;
    for (start, end) in taken {
        if start - TRIM > from {
            clear.push((from, start - TRIM));
        }
        from = from.max(end + TRIM);
    }
    if high > from {
        clear.push((from, high));
    }
    clear
}

/// The sticks it can become, longest first.
pub(super) fn salvage(project: &Project, sticks: &[Stick], stick: &Stick, bad: usize, off: Length) -> Vec<Answer> {
    let units = project.units;
    let clear = clear_lengths(project, stick, bad, off);
    let Some((from, to)) = clear.into_iter().max_by(|a, b| (a.1 - a.0).to_inches().total_cmp(&(b.1 - b.0).to_inches()))
    else {
        return Vec::new();
    };
    let wood = stick.timber.sawn;
    let sides = |of: crate::materials::Section| (of.breadth.min(of.depth), of.breadth.max(of.depth));
    let is_open = |other: &&Stick| other.mark != stick.mark && !project.progress.cut.contains_key(&other.mark);
    let fits = |other: &&Stick| sides(other.timber.sawn) == sides(wood) && other.net_length() <= to - from;
    let mut candidates: Vec<&Stick> = Vec::new();
    for other in sticks.iter().filter(is_open).filter(fits) {
        if !candidates.iter().any(|known| known.role == other.role && known.is_cut_like(other)) {
            candidates.push(other);
        }
    }
    sort_by_number(&mut candidates, |other| -other.net_length().to_inches());
    let room = length(to - from, units);
    let named = candidates.into_iter().take(MOST_NAMED).map(|other| {
        let says = format!(
            "It can become {}, a {} of {}: {room} are clear, from {} to {} from zero.",
            other.mark,
            other.role.name(),
            length(other.net_length(), units),
            length(from, units),
            length(to, units)
        );
        Answer { way: Way::Becomes, is_open: true, says }
    });
    named.collect()
}

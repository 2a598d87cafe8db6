//! The order of work at the bench, and sticks that are mirror images.
//!
//! Common practice: green timber moves, so what is raised first is cut last and stands the shortest time between the saw and
//! its place; the beam's pieces are cut together, for their scarfs are closed dry; of sticks cut alike the first is the
//! pattern; the tenons' holes are bored last of all, with the mortises' holes there to measure from.
use super::mark::{Mark, MarkKind, Waste, sixty_fourths};
use super::stick::Stick;
use crate::joinery::Entry;
use crate::materials::Face;
use crate::project::Role;
use crate::units::{Length, sort_by_number};

/// Sticks that are cut one after the other to one layout.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Turn {
    /// Their marks, the pattern first.
    pub sticks: Vec<String>,
    /// The pattern that they are the mirror image of, in words: `mirror of P1`.
    pub mirror: Option<String>,
    /// Which one in the order of raising the first of them is, from 1.
    pub raised: usize,
}

/// The order of work.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WorkOrder {
    /// What is cut, first to last.
    pub turns: Vec<Turn>,
    /// Sticks whose tenons are bored when all is cut.
    pub bore: Vec<String>,
}

/// The first stick of the frame that this one is the mirror image of: the same wood, left for right.
///
/// A post is mirrored from left to right across, a piece that lies along the beam end for end; a brace for the other hand
/// has the same measures from a zero at the other end. Rafters have no other hand. Pegs are left out: of two in one tenon the
/// right one is the higher on either hand.
#[must_use]
pub fn mirror_of<'a>(sticks: &'a [Stick], stick: &Stick) -> Option<&'a Stick> {
    if matches!(stick.role, Role::Rafter | Role::Block) {
        return None;
    }
    let first = stick.same_as.as_ref().unwrap_or(&stick.mark);
    let mirrored = signature(stick, true);
    let earlier = sticks.iter().take_while(|other| other.mark != *first);
    let mut patterns = earlier.filter(|other| other.role == stick.role && other.same_as.is_none());
    patterns.find(|other| other.timber == stick.timber && is_alike(&signature(other, false), &mirrored, false))
}

/// That in words, for the sheet and the lists: `mirror of P1`, or `mirror of P1 but for its pegs`.
#[must_use]
pub fn mirror_words(sticks: &[Stick], stick: &Stick) -> Option<String> {
    let of = mirror_of(sticks, stick)?;
    let is_whole = is_alike(&signature(of, false), &signature(stick, true), true);
    let pegs = if is_whole { "" } else { " but for its pegs" };
    Some(format!("mirror of {}{pegs}", of.mark))
}

/// The same marks in any order, each once, with or without the pegs' holes. No two marks of a stick are alike.
fn is_alike(one: &[[i64; 11]], other: &[[i64; 11]], with_pegs: bool) -> bool {
    let counts = |mark: &[i64; 11]| with_pegs || mark[0] < 0 || mark[1] != MarkKind::Peg as i64;
    one.len() == other.len() && one.iter().all(|mark| !counts(mark) || other.contains(mark))
}

/// A layout as numbers, in sixty-fourths of an inch; as a mirror shows it, if so.
fn signature(stick: &Stick, mirrored: bool) -> Vec<[i64; 11]> {
    let across = mirrored && stick.role == Role::Post;
    let along = mirrored && matches!(stick.role, Role::Beam | Role::Ledger | Role::Purlin);
    let turned = stick.to_left != (mirrored && stick.role == Role::Brace);
    let ends = if along { (Length::ZERO, stick.high - stick.low) } else { (stick.low, stick.high) };
    let mut all = vec![[-1, i64::from(turned), sixty_fourths(ends.0), sixty_fourths(ends.1), 0, 0, 0, 0, 0, 0, 0]];
    all.extend(stick.marks.iter().map(|mark| of_mark(stick, mark, across, along)));
    all
}

fn of_mark(stick: &Stick, mark: &Mark, across: bool, along: bool) -> [i64; 11] {
    let width = stick.faces.iter().find(|(face, _)| *face == mark.face).map_or(Length::ZERO, |(_, width)| *width);
    let (mut upper, mut lower) = stick.across(mark, width);
    let mut face = mark.face;
    // A tenon's cheeks run through: they are marked on the reference face of either hand.
    let is_through = mark.kind == MarkKind::Tenon && matches!(mark.face, Face::Left | Face::Right);
    if across && !is_through {
        (upper, lower) = (width - lower, width - upper);
        face = match face {
            Face::Left => Face::Right,
            Face::Right => Face::Left,
            other => other,
        };
    }
    let (mut near, mut far) = (mark.near, mark.far.unwrap_or(mark.near));
    let mut waste = mark.waste;
    if along {
        (near, far) = (stick.low + stick.high - far, stick.low + stick.high - near);
        waste = match waste {
            Waste::Before => Waste::After,
            Waste::After => Waste::Before,
            other => other,
        };
    }
    let places = [near, far, upper, lower, mark.depth.unwrap_or_default()].map(sixty_fourths);
    let [near, far, upper, lower, depth] = places;
    let bore = sixty_fourths(mark.bore.unwrap_or_default());
    let told = mark.told.iter().fold(0_i64, |all, size| all.wrapping_mul(1_000_003).wrapping_add(sixty_fourths(*size)));
    [0, mark.kind as i64, face as i64, waste as i64, near, far, upper, lower, depth, bore, told]
}

/// Every stick in the order they go up: a beam piece after the posts and braces it comes down on; what no entry tells, as
/// the blocks between the rafters, before the purlins.
fn raising(sticks: &[Stick], entries: &[Entry]) -> Vec<String> {
    let mut order: Vec<String> = Vec::new();
    let mut add = |mark: &String| {
        if !order.contains(mark) {
            order.push(mark.clone());
        }
    };
    let is_told = |mark: &String| entries.iter().any(|entry| entry.stick == *mark || entry.with.contains(mark));
    for entry in entries {
        if entry.stick.starts_with('N') {
            sticks.iter().map(|stick| &stick.mark).filter(|mark| !is_told(mark)).for_each(&mut add);
        }
        entry.with.iter().for_each(&mut add);
        if !entries.iter().any(|other| other.with.contains(&entry.stick)) {
            add(&entry.stick);
        }
    }
    sticks.iter().map(|stick| &stick.mark).for_each(add);
    order
}

/// The order of work, from the entries of the frame in the order they go up.
#[must_use]
pub fn work_order(sticks: &[Stick], entries: &[Entry]) -> WorkOrder {
    let order = raising(sticks, entries);
    let place = |mark: &String| order.iter().position(|known| known == mark).map_or(order.len(), |at| at + 1);
    let mut turns: Vec<(Role, Turn)> = Vec::new();
    let mut first_of = [usize::MAX; Role::ALL.len()];
    let mut bore = Vec::new();
    for stick in sticks {
        let (role, raised) = (stick.role, place(&stick.mark));
        first_of[role as usize] = first_of[role as usize].min(raised);
        if matches!(role, Role::Post | Role::Brace) {
            bore.push(stick.mark.clone());
        }
        let pattern = stick.same_as.as_ref();
        match turns.iter_mut().find(|(_, turn)| turn.sticks.first() == pattern) {
            Some((_, turn)) => {
                turn.sticks.push(stick.mark.clone());
                turn.raised = turn.raised.min(raised);
            }
            None => {
                let mirror = mirror_words(sticks, stick);
                turns.push((role, Turn { sticks: vec![stick.mark.clone()], mirror, raised }));
            }
        }
    }
    // Posts and braces go up with a beam piece, but its pieces are cut together: whole roles follow each other.
    sort_by_number(&mut turns, |turn| -(turn.1.raised as f64));
    sort_by_number(&mut turns, |turn| -(first_of[turn.0 as usize] as f64));
    WorkOrder { turns: turns.into_iter().map(|(_, turn)| turn).collect(), bore }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::joinery::fit;
    use crate::project::{Role, demo};

    /// By hand: the barn's end posts carry one brace each, on opposite sides, and are shouldered on opposite sides; they
    /// stand as far from the beam's ends only where the frame is symmetric, which a post's own sheet does not ask.
    #[test]
    fn the_end_posts_are_mirror_images() {
        let mut project = demo::wool_barn();
        // Piers of one height: posts of unequal lengths are no mirror images.
        project.frame.posts.iter_mut().for_each(|post| post.pier_top = Length::ZERO);
        let built = evaluate(&project).built.unwrap();
        let posts: Vec<&Stick> = built.sticks.iter().filter(|stick| stick.role == Role::Post).collect();
        let (first, last) = (posts[0], posts[posts.len() - 1]);
        assert_eq!(mirror_of(&built.sticks, last).map(|stick| stick.mark.as_str()), Some(first.mark.as_str()));
        assert_eq!(mirror_of(&built.sticks, first), None);
        assert_eq!(mirror_of(&built.sticks, posts[1]), None);
        assert_eq!(mirror_of(&built.sticks, built.stick("R2").unwrap()), None);
        // Two pegs in each tenon, the right one half a peg higher on either hand.
        assert_eq!(mirror_words(&built.sticks, last), Some(format!("mirror of {} but for its pegs", first.mark)));
        // With one peg in the middle of the tenon it is a whole mirror image.
        project.joinery.two_pegs_from = Length::inches(12.0);
        let built = evaluate(&project).built.unwrap();
        let last = built.stick(&last.mark).unwrap();
        assert_eq!(mirror_words(&built.sticks, last), Some(format!("mirror of {}", first.mark)));
    }

    /// By hand: unequal legs make left-hand and right-hand braces.
    #[test]
    fn a_brace_of_unequal_legs_has_a_mirror() {
        let mut project = demo::wool_barn();
        project.frame.brace_down = project.frame.brace_along + Length::inches(4.0);
        let built = evaluate(&project).built.unwrap();
        let braces: Vec<&Stick> = built.sticks.iter().filter(|stick| stick.role == Role::Brace).collect();
        let left = braces.iter().find(|stick| stick.to_left).unwrap();
        let right = braces.iter().find(|stick| !stick.to_left).unwrap();
        let (earlier, later) = if built.sticks.iter().position(|stick| stick == *left)
            < built.sticks.iter().position(|stick| stick == *right)
        {
            (left, right)
        } else {
            (right, left)
        };
        assert_eq!(mirror_of(&built.sticks, later).map(|stick| &stick.mark), Some(&earlier.mark));
    }

    /// What goes up first is cut last; every stick has its turn once.
    #[test]
    fn the_order_of_work_ends_with_what_is_raised_first() {
        let project = demo::wool_barn();
        let built = evaluate(&project).built.unwrap();
        let entries = fit(&project, &built.shape).entries;
        let work = work_order(&built.sticks, &entries);
        let all: Vec<&String> = work.turns.iter().flat_map(|turn| &turn.sticks).collect();
        assert_eq!(all.len(), built.sticks.len());
        let letters: String = work.turns.iter().map(|turn| &turn.sticks[0][..1]).collect();
        let mut roles: Vec<char> = letters.chars().collect();
        roles.dedup();
        // The ledger goes up first, then posts with their braces under each beam piece, rafters, purlins.
        assert_eq!(roles.last(), Some(&'L'), "{letters}");
        let at = |letter: char| roles.iter().position(|role| *role == letter).unwrap();
        assert!(at('N') < at('R') && at('R') < at('B') && at('B') < at('P'), "{letters}");
        let mut once = roles.clone();
        once.sort_unstable();
        once.dedup();
        assert_eq!(once.len(), roles.len(), "a role is cut in one go: {letters}");
        assert_eq!(work.turns.last().unwrap().raised, 1);
        assert!(work.bore.contains(&"P1".to_owned()) && !work.bore.contains(&"B1".to_owned()));
    }
}

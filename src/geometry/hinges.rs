//! Whether a beam cut at its scarfs stands on its posts while its braces are slack.
//!
//! Each scarf counts as a hinge; a post holds the beam up and lets it turn. What could move without bending any wood is a
//! broken line that kinks at the hinges: of h hinges h + 2 independent ones. The posts let none of them move where one can be
//! found for each hat of the line, inside it: a hat reaches from the hinge before last to the next one, and as far as the beam
//! goes where there is none (Schoenberg and Whitney 1953, splines of degree one, from memory). So n posts bear n − 2 hinges at
//! most, and not in any bays.
use super::post::PostShape;
use super::scarf_place::{Surroundings, grid, judge};
use crate::project::ScarfPlace;
use crate::units::Length;

/// A post this near a hinge does not keep it from folding: its lever is too short to count on.
const TOO_NEAR: Length = Length::inches(1.0);

/// The most scarfs that a beam over so many posts bears: with one in every bay it folds.
#[must_use]
pub const fn most_scarfs(n_posts: usize) -> usize {
    n_posts.saturating_sub(2)
}

/// The first hinge beside which the beam folds, counted from 0; nothing where it stands. Posts and hinges left to right.
#[must_use]
pub fn folds_at(posts: &[Length], hinges: &[Length]) -> Option<usize> {
    let mut post = 0;
    for hat in 0..hinges.len() + 2 {
        let from = hat.checked_sub(2).map(|before| hinges[before] + TOO_NEAR);
        let to = hinges.get(hat).map(|next| *next - TOO_NEAR);
        while posts.get(post).is_some_and(|x| from.is_some_and(|from| *x < from)) {
            post += 1;
        }
        if posts.get(post).is_none_or(|x| to.is_some_and(|to| *x > to)) {
            return Some(hat.min(hinges.len().saturating_sub(1)));
        }
        post += 1;
    }
    None
}

/// Posts and hinges of that beam, left to right.
pub(super) fn hinges_of(posts: &[PostShape], places: &[ScarfPlace]) -> (Vec<Length>, Vec<Length>) {
    (posts.iter().map(PostShape::middle).collect(), places.iter().map(|place| place.centre).collect())
}

/// For each scarf that, moved alone, keeps the beam from folding: its number from 0 and the nearest centre of the grid, between
/// its neighbours and with the same lower lap, where it may be.
pub(super) fn moves(places: &[ScarfPlace], around: &Surroundings) -> Vec<(usize, Length)> {
    let step = grid(around.frame);
    let n_steps = (around.frame.beam_length / step).ceil() as i32;
    let lap = around.frame.scarfs.lap;
    let (posts, hinges) = hinges_of(around.posts, places);
    let cure = |index: usize| {
        let is_apart = |centre: Length| {
            let before = index.checked_sub(1).is_none_or(|before| centre - hinges[before] >= lap);
            before && hinges.get(index + 1).is_none_or(|next| *next - centre >= lap)
        };
        let stands = |centre: &Length| {
            let mut moved = hinges.clone();
            moved[index] = *centre;
            let place = ScarfPlace { centre: *centre, ..places[index] };
            is_apart(*centre)
                && folds_at(&posts, &moved).is_none()
                && judge(&place, around.project.scarf_kind(index + 1), around).is_ok()
        };
        let near = |n: i32| [hinges[index] - step * f64::from(n), hinges[index] + step * f64::from(n)];
        (1..=n_steps).flat_map(near).find(stands).map(|centre| (index, centre))
    };
    (0..places.len()).filter_map(cure).collect()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::frame::{Frame, Inertia, Member, Support};
    use crate::units::{Area, Stress};

    fn inches(list: &[f64]) -> Vec<Length> {
        list.iter().map(|x| Length::inches(*x)).collect()
    }

    fn check(posts: &[f64], hinges: &[f64], expected: Option<usize>) {
        assert_eq!(folds_at(&inches(posts), &inches(hinges)), expected, "{posts:?} {hinges:?}");
    }

    /// By hand: a piece with two posts stands; one with a post and a hinge hangs on the next that stands; one between two
    /// hinges needs no post if both its neighbours stand.
    #[test]
    fn by_hand() {
        check(&[0.0, 100.0], &[], None);
        check(&[0.0, 100.0], &[50.0], Some(0));
        check(&[0.0, 100.0, 200.0], &[70.0], None);
        check(&[0.0, 100.0, 200.0], &[70.0, 130.0], Some(1));
        let four = [0.0, 100.0, 200.0, 300.0];
        for standing in [[70.0, 130.0], [70.0, 230.0], [130.0, 230.0], [120.0, 180.0]] {
            check(&four, &standing, None);
        }
        // Two in an end bay leave a piece that nothing holds; one past the outer post leaves the end hanging.
        check(&four, &[30.0, 70.0], Some(1));
        check(&four, &[230.0, 270.0], Some(1));
        check(&four, &[-20.0], Some(0));
        check(&four, &[320.0], Some(0));
        check(&four, &[70.0, 130.0, 230.0], Some(2));
        // Two and two in neighbouring bays: the two in the second have one post between them and the two before.
        check(&[0.0, 100.0, 200.0, 300.0, 400.0, 500.0], &[120.0, 180.0, 220.0, 280.0], Some(3));
        check(&[0.0, 100.0, 200.0, 300.0, 400.0, 500.0], &[120.0, 180.0, 320.0, 380.0], None);
        // Over a post the beam folds there, or not, all the same: the post holds both pieces.
        check(&four, &[100.0, 200.0], None);
        check(&[0.0, 100.0], &[100.0], Some(0));
    }

    fn solves(posts: &[Length], hinges: &[Length], beam: Length) -> bool {
        let mut places: Vec<Length> = [&[Length::ZERO, beam], posts, hinges].concat();
        crate::units::sort_lengths(&mut places);
        places.dedup();
        let mut frame = Frame::default();
        for (index, x) in places.iter().enumerate() {
            let node = frame.add_node(format!("place {index}"), *x, Length::ZERO);
            if posts.contains(x) {
                let is_first = frame.supports.is_empty();
                frame.supports.push(if is_first { Support::pinned(node) } else { Support::roller(node) });
            }
        }
        let (modulus, area, inertia) = (Stress::psi(1e6), Area::square_inches(80.0), Inertia::inches_4(667.0));
        for from in 0..places.len() - 1 {
            let stick = Member::elastic(format!("stretch {from}"), (from, from + 1), modulus, area, inertia);
            frame.add_member(stick.hinged(false, hinges.contains(&places[from + 1])));
        }
        frame.factorise(&frame.all_active()).is_ok()
    }

    /// The frame solver, which knows nothing of hats, says the same of every set of up to five hinges in the bays, the ends
    /// and over the posts of three to six posts.
    #[test]
    fn the_frame_solver_says_the_same() {
        let (mut stands, mut folds) = (0, 0);
        for n_posts in 3..=6 {
            let posts: Vec<Length> = (0..n_posts).map(|n| Length::inches(40.0 + 100.0 * n as f64)).collect();
            let beam = Length::inches(80.0 + 100.0 * (n_posts - 1) as f64);
            let mut places = inches(&[20.0]);
            for post in &posts[1..] {
                places.extend([*post - Length::inches(70.0), *post - Length::inches(30.0)]);
            }
            places.extend([posts[1], beam - Length::inches(20.0)]);
            crate::units::sort_lengths(&mut places);
            for mask in 0_u32..1 << places.len() {
                if mask.count_ones() > 5 {
                    continue;
                }
                let hinges: Vec<Length> =
                    places.iter().enumerate().filter(|(bit, _)| mask >> bit & 1 == 1).map(|(_, x)| *x).collect();
                let is_standing = folds_at(&posts, &hinges).is_none();
                assert_eq!(is_standing, solves(&posts, &hinges, beam), "{posts:?} {hinges:?}");
                assert!(!is_standing || hinges.len() <= most_scarfs(n_posts));
                if is_standing { stands += 1 } else { folds += 1 }
            }
        }
        assert!(stands > 300 && folds > 1000, "{stands} {folds}");
    }
}

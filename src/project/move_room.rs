//! How far a post or a scarf can be moved along the beam while all the others stay.
use super::validate::{LEAST_BAY, n_legs};
use super::{Frame, ScarfPlace};
use crate::units::Length;

/// The least and the greatest centre of that post: under the beam, clear of its neighbours, with room in both bays for
/// their braces; nothing where there is no such post or no such room.
#[must_use]
pub fn post_room(frame: &Frame, index: usize) -> Option<(Length, Length)> {
    let posts = &frame.posts;
    posts.get(index)?;
    let breadth = frame.timbers.post.ordered.breadth;
    // Centre to centre, with the braces of that bay end to end; the hair keeps the last bit of a sum from making them meet.
    let hair = Length::inches(1e-9);
    let bay = |first: usize| {
        let n_legs = posts.get(first..first + 2).map_or(0.0, n_legs);
        breadth + LEAST_BAY.max(frame.brace_along * n_legs) + hair
    };
    let before = index.checked_sub(1);
    let low = before.map_or(breadth / 2.0, |before| posts[before].x + bay(before));
    let high = posts.get(index + 1).map_or(frame.beam_length - breadth / 2.0, |after| after.x - bay(index));
    (low <= high).then_some((low, high))
}

/// The least and the greatest centre of that scarf: its lap on the beam and clear of the laps of its neighbours;
/// nothing where there is no such scarf or no such room. Whether it should be there is for its cautions to say.
#[must_use]
pub fn scarf_room(frame: &Frame, places: &[ScarfPlace], index: usize) -> Option<(Length, Length)> {
    let lap = frame.scarfs.lap;
    places.get(index)?;
    let before = index.checked_sub(1);
    let low = before.map_or(lap / 2.0, |before| places[before].centre + lap);
    let high = places.get(index + 1).map_or(frame.beam_length - lap / 2.0, |after| after.centre - lap);
    (low <= high).then_some((low, high))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::project::{Project, Side, demo, validate};

    fn moved(project: &Project, index: usize, x: Length) -> Project {
        let mut next = project.clone();
        next.frame.posts[index].x = x;
        next
    }

    /// At both limits every post may stand; half an inch past one of them it may not.
    #[test]
    fn a_post_may_stand_at_its_limits_and_not_past_them() {
        for project in [demo::wool_barn(), demo::log_store()] {
            for index in 0..project.frame.posts.len() {
                let (low, high) = post_room(&project.frame, index).unwrap();
                let past = Length::inches(0.5);
                for (x, may) in [(low, true), (high, true), (low - past, false), (high + past, false)] {
                    let stops = validate(&moved(&project, index, x)).iter().any(super::super::Problem::stops);
                    assert_eq!(!stops, may, "{} P{} at {:?}", project.name, index + 1, x);
                }
            }
        }
    }

    #[test]
    fn a_bay_too_short_for_its_braces_leaves_no_room() {
        let mut project = demo::wool_barn();
        project.frame.brace_along = Length::inches(200.0);
        assert_eq!(post_room(&project.frame, 1), None);
        assert_eq!(post_room(&project.frame, 99), None);
    }

    #[test]
    fn scarfs_keep_a_lap_from_each_other_and_on_the_beam() {
        let frame = demo::wool_barn().frame;
        let (lap, end) = (frame.scarfs.lap, frame.beam_length);
        let place = |centre| ScarfPlace { centre, lower: Side::Left };
        let places = [place(end * 0.3), place(end * 0.6)];
        assert_eq!(scarf_room(&frame, &places, 0), Some((lap / 2.0, end * 0.6 - lap)));
        assert_eq!(scarf_room(&frame, &places, 1), Some((end * 0.3 + lap, end - lap / 2.0)));
        assert_eq!(scarf_room(&frame, &places, 2), None);
    }
}

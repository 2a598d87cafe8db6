//! What can be moved along the beam by hand, and what moving it means.
use crate::design::Built;
use crate::drawing::{Scene, post_apart, scarf_apart};
use crate::geometry::Point;
use crate::project::{Project, ScarfPlace, post_room, scarf_room};
use crate::units::{Length, UnitSystem};
use crate::wording;

/// Something on the beam line, by its place in the list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Held {
    /// A post.
    Post(usize),
    /// A scarf, proposed or placed by hand.
    Scarf(usize),
}

impl Held {
    /// Everything of that frame that can be moved, left to right.
    pub fn all(built: &Built) -> Vec<Self> {
        let posts = (0..built.shape.posts.len()).map(Self::Post);
        posts.chain((0..built.shape.beam.scarfs.len()).map(Self::Scarf)).collect()
    }

    /// The one of that number among them, counted from 1.
    pub fn of(built: &Built, number: usize) -> Option<Self> {
        let index = number.checked_sub(1)?;
        let n_posts = built.shape.posts.len();
        match index.checked_sub(n_posts) {
            None => Some(Self::Post(index)),
            Some(scarf) => (scarf < built.shape.beam.scarfs.len()).then_some(Self::Scarf(scarf)),
        }
    }

    /// Path of the field that says the same.
    pub fn path(self) -> String {
        match self {
            Self::Post(index) => format!("frame.posts.{index}.x"),
            Self::Scarf(index) => format!("frame.scarfs.by_hand.{index}.centre"),
        }
    }

    /// Its name in the drawing.
    pub fn mark(self) -> String {
        match self {
            Self::Post(index) => format!("P{}", index + 1),
            Self::Scarf(index) => format!("Scarf {}", index + 1),
        }
    }

    /// The user has set it: it is no proposal.
    pub fn is_mine(self, project: &Project) -> bool {
        matches!(self, Self::Post(_)) || !project.frame.scarfs.by_hand.is_empty()
    }

    /// One step of its field.
    const fn step(self, units: UnitSystem) -> f64 {
        match (units, self) {
            (UnitSystem::Imperial, _) => 1.0,
            (UnitSystem::Metric, Self::Post(_)) => 20.0,
            (UnitSystem::Metric, Self::Scarf(_)) => 10.0,
        }
    }

    /// Its centre from the beam's left end.
    pub fn place(self, project: &Project, built: &Built) -> Option<Length> {
        match self {
            Self::Post(index) => project.frame.posts.get(index).map(|post| post.x),
            Self::Scarf(index) => places(project, built).get(index).map(|place| place.centre),
        }
    }

    /// How far it can go.
    pub fn room(self, project: &Project, built: &Built) -> Option<(Length, Length)> {
        match self {
            Self::Post(index) => post_room(&project.frame, index),
            Self::Scarf(index) => scarf_room(&project.frame, &places(project, built), index),
        }
    }

    /// Puts it there. A proposed scarf that is moved makes the places of all of them the user's own.
    pub fn put(self, project: &mut Project, built: &Built, x: Length) {
        match self {
            Self::Post(index) => {
                if let Some(post) = project.frame.posts.get_mut(index) {
                    post.x = x;
                }
            }
            Self::Scarf(index) => {
                let mut places = places(project, built);
                if let Some(place) = places.get_mut(index) {
                    place.centre = x;
                    project.frame.scarfs.by_hand = places;
                }
            }
        }
    }

    /// The nearest place to `x` in whole steps, or the end of its room; nothing where it cannot move.
    pub fn snapped(self, project: &Project, built: &Built, x: Length) -> Option<Length> {
        let (low, high) = self.room(project, built)?;
        let whole = self.of_steps(self.in_steps(x, project.units).round(), project.units)?;
        Some(whole.clamp(low, high))
    }

    /// That many whole steps on, within its room, or to the end of it: the first one ends at a multiple of the step.
    pub fn stepped(self, project: &Project, built: &Built, steps: f64) -> Option<Length> {
        let (low, high) = self.room(project, built)?;
        match steps {
            0.0 => return self.place(project, built),
            f64::INFINITY => return Some(high),
            f64::NEG_INFINITY => return Some(low),
            _ => (),
        }
        let now = self.in_steps(self.place(project, built)?, project.units);
        // A place that is a multiple but for rounding counts as one.
        let near = 1e-6;
        let from = if steps > 0.0 { (now + near).floor() } else { (now - near).ceil() };
        Some(self.of_steps(from + steps, project.units)?.clamp(low, high))
    }

    fn in_steps(self, x: Length, units: UnitSystem) -> f64 {
        let value = match units {
            UnitSystem::Imperial => x.to_inches(),
            UnitSystem::Metric => x.to_millimetres(),
        };
        value / self.step(units)
    }

    /// The length of that many steps.
    pub fn of_steps(self, steps: f64, units: UnitSystem) -> Option<Length> {
        let value = steps * self.step(units);
        match units {
            UnitSystem::Imperial => Length::try_inches(value),
            UnitSystem::Metric => Length::try_millimetres(value),
        }
    }

    /// How far it is from the nearest other one of its kind; half of that is its own.
    pub fn gap(self, project: &Project, built: &Built) -> Length {
        let all: Vec<Length> = match self {
            Self::Post(_) => project.frame.posts.iter().map(|post| post.x).collect(),
            Self::Scarf(_) => places(project, built).iter().map(|place| place.centre).collect(),
        };
        let Some(own) = self.place(project, built) else { return Length::ZERO };
        let others = all.into_iter().filter(|x| *x != own).map(|x| (x - own).abs());
        others.fold(project.frame.beam_length, Length::min)
    }

    /// Where it is, and what is beside it, in words.
    pub fn says(self, project: &Project, built: &Built) -> String {
        let say = |length: Length| wording::length(length, project.units);
        let Some(x) = self.place(project, built) else { return String::new() };
        let Self::Post(index) = self else {
            let owner = if project.frame.scarfs.by_hand.is_empty() { "proposed" } else { "by hand" };
            return format!("{} from the left, {owner}", say(x));
        };
        let posts = &project.frame.posts;
        let left = index.checked_sub(1).and_then(|before| posts.get(before)).map(|post| say(x - post.x));
        let right = posts.get(index + 1).map(|post| say(post.x - x));
        let beside = match (left, right) {
            (Some(left), Some(right)) => format!("; bays {left}, {right}"),
            (Some(left), None) => format!("; bay {left}, end {}", say(project.frame.beam_length - x)),
            (None, Some(right)) => format!("; bay {right}"),
            (None, None) => String::new(),
        };
        format!("{} from the left{beside}", say(x))
    }

    /// Where its grip lies on the elevation: at the foot of a post, over the lap of a scarf.
    pub fn grip_at(self, project: &Project, built: &Built) -> Option<Point> {
        let x = self.place(project, built)?;
        let z = match self {
            Self::Post(index) => built.shape.posts.get(index)?.foot,
            Self::Scarf(_) => built.shape.line.beam_seat,
        };
        Some(Point::new(x, z))
    }

    /// Draws how far it is from what is beside it.
    pub fn draw_apart(self, scene: &mut Scene, project: &Project, built: &Built) {
        match self {
            Self::Post(index) => post_apart(scene, project, built, index),
            Self::Scarf(index) => scarf_apart(scene, project, built, index),
        }
    }
}

/// The places of the scarfs: the user's, or the proposed ones.
fn places(project: &Project, built: &Built) -> Vec<ScarfPlace> {
    if project.frame.scarfs.by_hand.is_empty() {
        built.shape.beam.scarfs.iter().map(|scarf| scarf.place).collect()
    } else {
        project.frame.scarfs.by_hand.clone()
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::lay_out;
    use crate::project::demo;

    #[test]
    fn a_moved_post_stands_on_whole_steps_or_at_the_end_of_its_room() {
        for (project, mm) in [(demo::wool_barn(), 25.4), (demo::log_store(), 20.0)] {
            let built = lay_out(&project).built.unwrap();
            let (low, high) = Held::Post(1).room(&project, &built).unwrap();
            for share in [0.13, 0.37, 0.5, 0.81] {
                let x = Held::Post(1).snapped(&project, &built, low + (high - low) * share).unwrap();
                let steps = x.to_millimetres() / mm;
                assert!((steps - steps.round()).abs() < 1e-9, "{steps}");
            }
            let far = Length::feet(900.0);
            assert_eq!(Held::Post(1).snapped(&project, &built, far), Some(high));
            assert_eq!(Held::Post(1).snapped(&project, &built, -far), Some(low));
            let mut off = project.clone();
            off.frame.posts[1].x = low + Length::inches(0.3);
            let next = Held::Post(1).stepped(&off, &built, 1.0).unwrap();
            assert!(next > off.frame.posts[1].x && next - off.frame.posts[1].x < Length::millimetres(mm + 1e-6));
            assert_eq!(Held::Post(1).stepped(&off, &built, -1.0), Some(low));
            assert_eq!(Held::Post(1).stepped(&off, &built, f64::INFINITY), Some(high));
            assert_eq!(Held::Post(77).snapped(&project, &built, far), None);
        }
    }

    #[test]
    fn numbers_and_the_list_agree() {
        let built = lay_out(&demo::wool_barn()).built.unwrap();
        let all = Held::all(&built);
        assert!((1..=all.len()).all(|number| Held::of(&built, number) == Some(all[number - 1])));
        assert_eq!((Held::of(&built, 0), Held::of(&built, all.len() + 1)), (None, None));
    }

    /// Moving one proposed scarf leaves the others where they were proposed.
    #[test]
    fn a_moved_scarf_is_placed_by_hand() {
        let mut project = demo::wool_barn();
        let built = lay_out(&project).built.unwrap();
        let proposed = built.shape.beam.scarfs.clone();
        assert!(!proposed.is_empty() && project.frame.scarfs.by_hand.is_empty());
        let x = proposed[0].place.centre + Length::inches(3.0);
        Held::Scarf(0).put(&mut project, &built, x);
        assert_eq!(project.frame.scarfs.by_hand.len(), proposed.len());
        assert_eq!(Held::Scarf(0).place(&project, &built), Some(x));
        assert_eq!(project.frame.scarfs.by_hand[1..].len(), proposed[1..].len());
        assert!(project.frame.scarfs.by_hand[1..].iter().zip(&proposed[1..]).all(|(now, was)| *now == was.place));
    }
}

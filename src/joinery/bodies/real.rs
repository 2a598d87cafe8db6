//! The real stock of a stick: as sawn until it is measured at the bench, then straight from each measured place to the
//! next, and past the outermost as there. Both reference faces stay where they are; all it is over or under lies on the
//! other two.
use crate::materials::Section;
use crate::project::{Project, Role};
use crate::solid::{Convex, Vector, tapered};
use crate::units::{Length, sort_by_number};

/// Nothing is sawn thinner, whatever is typed.
const LEAST: Length = Length::inches(0.25);

/// What one stick measures.
pub struct Real<'a> {
    project: &'a Project,
    mark: &'a str,
    sawn: Section,
}

/// The arris of both reference faces: a place on it where the stick's zero is, the way along, and into the breadth and the
/// depth, each of length one.
pub struct Arris {
    /// Where zero is.
    pub zero: Vector,
    /// From zero along the stick.
    pub along: Vector,
    /// Across the breadth.
    pub wide: Vector,
    /// Across the depth.
    pub deep: Vector,
}

impl<'a> Real<'a> {
    /// A stick of that mark.
    pub fn new(project: &'a Project, mark: &'a str, role: Role) -> Self {
        Self { project, mark, sawn: project.frame.timbers.of(role).sawn }
    }

    /// It was measured, at one place at least.
    pub fn is_measured(&self) -> bool {
        self.project.progress.sizes.get(self.mark).is_some_and(|sizes| !sizes.is_empty())
    }

    /// Its section so far from its zero.
    pub fn at(&self, place: Length) -> Section {
        let size = self.project.progress.size_at(self.mark, self.sawn, place);
        Section::new(size.breadth.max(LEAST), size.depth.max(LEAST))
    }

    /// The largest it is from one place to another.
    pub fn most_between(&self, from: Length, to: Length) -> Section {
        let size = self.project.progress.most_between(self.mark, self.sawn, (from, to));
        Section::new(size.breadth.max(LEAST), size.depth.max(LEAST))
    }

    /// The largest it is anywhere.
    pub fn most(&self) -> Section {
        const FAR: Length = Length::inches(1e6);
        self.most_between(-FAR, FAR)
    }

    /// Room that a cut must go through to leave the stick: the largest it is, and no less than as sawn.
    pub fn room(&self) -> Section {
        let most = self.most();
        Section::new(most.breadth.max(self.sawn.breadth), most.depth.max(self.sawn.depth))
    }

    /// The stock from one place to another along it; nothing where it was not measured.
    pub fn stock(&self, arris: &Arris, (low, high): (Length, Length)) -> Option<Vec<Convex>> {
        if !self.is_measured() || high <= low {
            return None;
        }
        let places = self.places(low, high);
        let ring = |place: &Length| {
            let size = self.at(*place);
            let foot = arris.zero + arris.along * place.to_inches();
            let (wide, deep) = (arris.wide * size.breadth.to_inches(), arris.deep * size.depth.to_inches());
            [foot, foot + wide, foot + wide + deep, foot + deep]
        };
        Some(places.windows(2).filter_map(|pair| tapered(ring(&pair[0]), ring(&pair[1]))).collect())
    }

    /// Both ends, and between them the places where its taper changes.
    fn places(&self, low: Length, high: Length) -> Vec<Length> {
        let inside = self.project.progress.sizes.get(self.mark).into_iter().flatten().map(|size| size.from_zero);
        let hair = Length::inches(1e-3);
        let mut places: Vec<Length> = inside.filter(|place| *place > low + hair && *place < high - hair).collect();
        places.push(high);
        sort_by_number(&mut places, |place| place.to_inches());
        let mut kept = vec![low];
        for place in places {
            if place - kept[kept.len() - 1] > hair {
                kept.push(place);
            }
        }
        let first = self.at(low);
        if kept.iter().all(|place| self.at(*place) == first) { vec![low, high] } else { kept }
    }
}

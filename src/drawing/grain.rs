//! Grain on wood in the round: a few long lines along a stick's sawn faces, and the year rings where it lies across the
//! grain, so that the two differ without colour. What a joint cut along the grain stays bare.
use crate::joinery::StickBody;
use crate::solid::{Patch, Skin, Vector};

/// A straight part of a line of grain.
pub type Strand = (Vector, Vector);

/// Shares of a face's breadth at which one, two or three lines run; one line for each so many inches of it.
const LINES: [&[f64]; 3] = [&[0.42], &[0.28, 0.72], &[0.2, 0.52, 0.8]];
const APART: f64 = 2.0;
/// A line begins and ends this share of the stick's length from its ends.
const INSET: f64 = 0.03;
/// Rings as shares of half the section's larger side, each drawn as so many chords.
const RINGS: [f64; 3] = [0.24, 0.55, 0.88];
const CHORDS: usize = 18;
/// How far the heart lies beside the section's middle, as shares of its two sides.
const HEART: (f64, f64) = (0.07, 0.11);
/// What is shorter than this is not drawn, in inches.
const SHORT: f64 = 0.2;

/// How the grain of one stick runs.
#[derive(Clone, Debug, PartialEq)]
pub struct Grain {
    along: Vector,
    /// Corners of the stock, between which the lines are shared out.
    corners: Vec<Vector>,
}

impl Grain {
    /// Of a stick where it stands.
    #[must_use]
    pub fn of(body: &StickBody) -> Self {
        let corners = body.stock.iter().flat_map(|part| part.corners());
        Self { along: body.along, corners: corners.collect() }
    }

    /// Of the same stick moved.
    #[must_use]
    pub fn moved(mut self, by: Vector) -> Self {
        self.corners.iter_mut().for_each(|corner| *corner = *corner + by);
        self
    }

    /// What of it is seen on a part of the stick's outside.
    #[must_use]
    pub fn on(&self, patch: &Patch) -> Vec<Strand> {
        let strands = match patch.skin {
            Skin::Sawn => self.lines(patch),
            Skin::End => self.rings(patch),
            Skin::Cut | Skin::Round => Vec::new(),
        };
        let seen = strands.into_iter().filter_map(|strand| within(strand, patch));
        let is_one = patch.skin == Skin::End;
        seen.filter(|(from, to)| is_one || (*to - *from).norm() > SHORT).collect()
    }

    /// How far the stock reaches in a direction.
    fn reach(&self, way: Vector) -> (f64, f64) {
        let at = self.corners.iter().map(|corner| corner.dot(way));
        at.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| (low.min(at), high.max(at)))
    }

    fn lines(&self, patch: &Patch) -> Vec<Strand> {
        let Some(across) = patch.normal.cross(self.along).unit() else { return Vec::new() };
        let run = across.cross(patch.normal);
        let ((low, high), (from, to)) = (self.reach(across), self.reach(run));
        let foot = patch.normal * patch.corners.first().map_or(0.0, |corner| corner.dot(patch.normal));
        let inset = (to - from) * INSET;
        let count = ((high - low) / APART).clamp(1.0, 3.0) as usize;
        let line = |share: &f64| {
            let place = foot + across * (low + (high - low) * share);
            (place + run * (from + inset), place + run * (to - inset))
        };
        LINES[count - 1].iter().map(line).collect()
    }

    /// Rings about the heart, met by the patch's plane.
    fn rings(&self, patch: &Patch) -> Vec<Strand> {
        let lean = patch.normal.dot(self.along);
        let Some(first) = patch.corners.first().filter(|_| lean.abs() > 0.1) else { return Vec::new() };
        // One side of every section is level, or lies along the wall.
        let level = Vector::inches(-self.along.y, self.along.x, 0.0).unit();
        let side = level.unwrap_or(Vector::inches(1.0, 0.0, 0.0));
        let up = self.along.cross(side);
        let ((left, right), (low, high)) = (self.reach(side), self.reach(up));
        let share = |low: f64, high: f64, off: f64| low + (high - low) * (0.5 + off);
        let heart = side * share(left, right, HEART.0) + up * share(low, high, HEART.1);
        let half = (right - left).max(high - low) / 2.0;
        let place = |ring: f64, step: usize| {
            let angle = std::f64::consts::TAU * step as f64 / CHORDS as f64;
            let at = heart + (side * angle.cos() + up * angle.sin()) * (ring * half);
            at + self.along * (patch.normal.dot(*first - at) / lean)
        };
        let chords = RINGS.iter().flat_map(|ring| (0..CHORDS).map(move |step| (*ring, step)));
        chords.map(|(ring, step)| (place(ring, step), place(ring, step + 1))).collect()
    }
}

/// The part of a strand that lies on the patch.
fn within((from, to): Strand, patch: &Patch) -> Option<Strand> {
    let (mut low, mut high) = (0.0_f64, 1.0_f64);
    let count = patch.corners.len();
    for (index, corner) in patch.corners.iter().enumerate() {
        let side = patch.corners[(index + 1) % count] - *corner;
        let inward = patch.normal.cross(side);
        let (at, step) = ((from - *corner).dot(inward), (to - from).dot(inward));
        if step.abs() < 1e-12 {
            if at < 0.0 {
                return None;
            }
        } else if step > 0.0 {
            low = low.max(-at / step);
        } else {
            high = high.min(-at / step);
        }
    }
    (high - low > 1e-6).then(|| (from + (to - from) * low, from + (to - from) * high))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::joinery::bodies;
    use crate::lay_out;
    use crate::project::demo;
    use crate::solid::Surface;

    fn sticks() -> Vec<StickBody> {
        let project = demo::wool_barn();
        bodies(&project, &lay_out(&project).built.unwrap().shape)
    }

    fn strands(body: &StickBody, surface: &Surface) -> Vec<(Patch, Strand)> {
        let grain = Grain::of(body);
        let on = |patch: &Patch| grain.on(patch).into_iter().map(|strand| (patch.clone(), strand)).collect::<Vec<_>>();
        surface.patches.iter().flat_map(on).collect()
    }

    /// Each strand lies on its patch, whatever way the stick leans; lines run along it, and rings cross it.
    #[test]
    fn grain_lies_on_the_wood() {
        for body in sticks() {
            let mut seen = [0, 0];
            for (patch, (from, to)) in strands(&body, &body.outside(&body.wood)) {
                for end in [from, to] {
                    assert!(patch.normal.dot(end - patch.corners[0]).abs() < 1e-6, "{}", body.mark);
                    assert!(body.wood.holds(end), "{}", body.mark);
                }
                let lean = (to - from).unit().map_or(0.0, |way| way.dot(body.along).abs());
                match patch.skin {
                    Skin::Sawn if patch.normal.dot(body.along).abs() < 1e-6 => {
                        assert!(lean > 1.0 - 1e-9, "{}", body.mark);
                        seen[0] += 1;
                    }
                    Skin::End => seen[1] += 1,
                    Skin::Cut | Skin::Round => panic!("{}: grain on a cut face", body.mark),
                    Skin::Sawn => {}
                }
            }
            assert!(seen[0] >= 4 && seen[1] >= 10, "{}: {seen:?}", body.mark);
        }
    }

    /// By hand: a whole 4 in face has two lines, at 0.28 and 0.72 of it, 0.94 of the stick's length long; an 8 in one three.
    #[test]
    fn lines_are_few_and_shared_out() {
        let all = sticks();
        let body = all.iter().find(|body| body.mark == "R1").unwrap();
        let stock = Surface::of(&crate::solid::Solid::new(body.stock.clone()));
        let long = strands(body, &stock).into_iter().filter(|(patch, _)| patch.skin == Skin::Sawn);
        let mut by_face = std::collections::BTreeMap::<String, Vec<f64>>::new();
        for (patch, (from, to)) in long {
            by_face.entry(format!("{:.3?}", patch.normal)).or_default().push((to - from).norm());
        }
        let counts: Vec<usize> = by_face.values().map(Vec::len).collect();
        assert_eq!(counts.iter().sum::<usize>(), 2 * 2 + 2 * 3, "{by_face:?}");
        let (low, high) = Grain::of(body).reach(body.along);
        let expected = (high - low) * (1.0 - 2.0 * INSET);
        assert!(by_face.values().flatten().all(|long| (long - expected).abs() < 1e-6), "{by_face:?}");
    }
}

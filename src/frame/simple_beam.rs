//! What the loads on one member do when it is cut loose: a simple beam with its end reactions.
//!
//! Local directions: s along the member from its `from` end, y to the left of it. Loads are (along s, along y).
use super::load::MemberLoad;

/// The effect of the loads between two breaks.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Stretch {
    pub(super) start: f64,
    pub(super) length: f64,
    /// Point load at its start.
    point: (f64, f64),
    /// Spread load at its start, and how fast it grows.
    along: (f64, f64),
    across: (f64, f64),
    /// Shear, moment and the sum of the axial loads just after its start.
    pub(super) shear: f64,
    pub(super) moment: f64,
    pub(super) pushed: f64,
}

impl Stretch {
    /// A whole member without loads.
    pub(super) fn bare(length: f64) -> Self {
        Self { length, ..Self::default() }
    }

    /// Shear as a polynomial of the distance from its start.
    pub(super) fn shear_curve(&self) -> [f64; 3] {
        [self.shear, self.across.0, self.across.1 / 2.0]
    }

    /// Moment likewise.
    pub(super) fn moment_curve(&self) -> [f64; 4] {
        [self.moment, self.shear, self.across.0 / 2.0, self.across.1 / 6.0]
    }

    /// Axial load gathered since the member's start, likewise.
    pub(super) fn pushed_curve(&self) -> [f64; 3] {
        [self.pushed, self.along.0, self.along.1 / 2.0]
    }
}

/// The loads of one member on a simple beam.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct SimpleBeam {
    /// None where nothing lies on it.
    pub(super) stretches: Vec<Stretch>,
    /// Reactions along y at `from` and at `to`.
    pub(super) reactions: (f64, f64),
    /// Sum of the loads along s.
    pub(super) push: f64,
    /// The share of that sum the `from` end takes by the lever rule.
    pub(super) push_from: f64,
    /// ∫M(L−s)ds/L and ∫M·s ds/L.
    pub(super) moment_areas: (f64, f64),
}

/// A load turned into the member's directions.
enum Local {
    Point { at: f64, along: f64, across: f64 },
    Spread { from: f64, to: f64, along: (f64, f64), across: (f64, f64) },
}

/// Nearer to an end than this share of the length, a place is that end.
pub(super) const AT_THE_END: f64 = 1e-9;

fn turned(load: &MemberLoad, length: f64, (c, s): (f64, f64)) -> Local {
    let turn = |x: f64, z: f64| (x * c + z * s, z * c - x * s);
    let snap = |place: f64| match place / length {
        share if share < AT_THE_END => 0.0,
        share if share > 1.0 - AT_THE_END => length,
        _ => place,
    };
    match load {
        MemberLoad::Point { at, x, z, .. } => {
            let (along, across) = turn(x.to_pounds(), z.to_pounds());
            Local::Point { at: snap(at.to_inches()), along, across }
        }
        MemberLoad::Spread { from, to, x, z, .. } => {
            let first = turn(x.0.to_pounds_per_inch(), z.0.to_pounds_per_inch());
            let last = turn(x.1.to_pounds_per_inch(), z.1.to_pounds_per_inch());
            let (along, across) = ((first.0, last.0), (first.1, last.1));
            Local::Spread { from: snap(from.to_inches()), to: snap(to.to_inches()), along, across }
        }
    }
}

/// Room for the loads of one member after the other.
#[derive(Default)]
pub(super) struct Room {
    loads: Vec<Local>,
    places: Vec<f64>,
}

impl SimpleBeam {
    /// A member of this length and direction (cosine, sine) under its loads.
    pub(super) fn new<'a>(
        loads: impl Iterator<Item = &'a MemberLoad>,
        length: f64,
        direction: (f64, f64),
        Room { loads: turned_loads, places }: &mut Room,
    ) -> Self {
        turned_loads.clear();
        for load in loads {
            turned_loads.push(turned(load, length, direction));
        }
        let loads = turned_loads.as_slice();
        let mut beam = Self {
            stretches: stretches(loads, length, places),
            reactions: (0.0, 0.0),
            push: 0.0,
            push_from: 0.0,
            moment_areas: (0.0, 0.0),
        };
        if loads.is_empty() {
            return beam;
        }
        for load in loads {
            beam.add(load, length);
        }
        beam.walk();
        beam.moment_areas = areas(&beam.stretches, length);
        beam
    }

    /// Nothing loads it.
    pub(super) fn is_bare(&self) -> bool {
        self.stretches.is_empty()
    }

    /// Adds one load to the reactions and to the stretches it lies on.
    fn add(&mut self, load: &Local, length: f64) {
        let mut gather = |at: f64, along: f64, across: f64| {
            self.push += along;
            self.push_from += along * (length - at) / length;
            self.reactions.0 -= across * (length - at) / length;
            self.reactions.1 -= across * at / length;
        };
        match *load {
            Local::Point { at, along, across } => {
                gather(at, along, across);
                // A point at the far end loads no stretch: it only reaches the reaction.
                if let Some(stretch) = self.stretches.iter_mut().find(|stretch| stretch.start == at) {
                    stretch.point.0 += along;
                    stretch.point.1 += across;
                }
            }
            Local::Spread { from, to, along, across } => {
                // A trapezoid is two triangles: their centroids lie at the thirds.
                let (half, third) = ((to - from) / 2.0, (to - from) / 3.0);
                gather(from + third, along.0 * half, across.0 * half);
                gather(to - third, along.1 * half, across.1 * half);
                let (grow_along, grow_across) =
                    ((along.1 - along.0) / (to - from), (across.1 - across.0) / (to - from));
                for stretch in &mut self.stretches {
                    if stretch.start >= from && stretch.start < to {
                        let reach = stretch.start - from;
                        stretch.along.0 += along.0 + grow_along * reach;
                        stretch.along.1 += grow_along;
                        stretch.across.0 += across.0 + grow_across * reach;
                        stretch.across.1 += grow_across;
                    }
                }
            }
        }
    }

    /// Carries shear, moment and axial sum from stretch to stretch.
    fn walk(&mut self) {
        let (mut shear, mut moment, mut pushed) = (self.reactions.0, 0.0, 0.0);
        for stretch in &mut self.stretches {
            shear += stretch.point.1;
            pushed += stretch.point.0;
            (stretch.shear, stretch.moment, stretch.pushed) = (shear, moment, pushed);
            let t = stretch.length;
            moment += t * (shear + t * (stretch.across.0 / 2.0 + t * stretch.across.1 / 6.0));
            shear += t * (stretch.across.0 + t * stretch.across.1 / 2.0);
            pushed += t * (stretch.along.0 + t * stretch.along.1 / 2.0);
        }
    }
}

/// The member cut at every place where a load begins, ends or acts.
fn stretches(loads: &[Local], length: f64, places: &mut Vec<f64>) -> Vec<Stretch> {
    if loads.is_empty() {
        return Vec::new();
    }
    places.clear();
    places.extend([0.0, length]);
    for load in loads {
        match *load {
            Local::Point { at, .. } => places.push(at),
            Local::Spread { from, to, .. } => places.extend([from, to]),
        }
    }
    places.sort_unstable_by(f64::total_cmp);
    places.dedup();
    places.windows(2).map(|pair| Stretch { start: pair[0], length: pair[1] - pair[0], ..Stretch::default() }).collect()
}

/// ∫M(L−s)ds/L and ∫M·s ds/L over the member.
fn areas(stretches: &[Stretch], length: f64) -> (f64, f64) {
    let mut sums = (0.0, 0.0);
    for stretch in stretches {
        let (mut area, mut first_moment, mut power) = (0.0, 0.0, stretch.length);
        for (index, coefficient) in stretch.moment_curve().iter().enumerate() {
            area += coefficient * power / (index as f64 + 1.0);
            power *= stretch.length;
            first_moment += coefficient * power / (index as f64 + 2.0);
        }
        let about_start = stretch.start * area + first_moment;
        sums.0 += area - about_start / length;
        sums.1 += about_start / length;
    }
    sums
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Force, Length, LineLoad};

    fn check(found: f64, expected: f64) {
        assert!((found - expected).abs() <= 1e-9 * expected.abs().max(1.0), "{found} is not {expected}");
    }

    #[test]
    fn a_point_load_by_the_lever_rule() {
        let load = MemberLoad::down(0, Length::inches(30.0), Force::pounds(100.0));
        let beam = SimpleBeam::new([load].iter(), 120.0, (1.0, 0.0), &mut Room::default());
        check(beam.reactions.0, 75.0);
        check(beam.reactions.1, 25.0);
        check(beam.stretches[1].moment, 75.0 * 30.0);
        // ∫M ds = P·a·b/2; both areas add up to it.
        check(beam.moment_areas.0 + beam.moment_areas.1, 100.0 * 30.0 * 90.0 / 2.0);
    }

    #[test]
    fn a_vertical_load_on_a_slope_splits() {
        let load = MemberLoad::even(0, Length::ZERO, Length::inches(50.0), LineLoad::pounds_per_inch(1.0));
        let beam = SimpleBeam::new([load].iter(), 50.0, (0.6, 0.8), &mut Room::default());
        check(beam.push, -40.0);
        check(beam.push_from, -20.0);
        check(beam.reactions.0, 15.0);
        check(beam.moment_areas.0, 0.6 * 50.0_f64.powi(3) / 24.0);
    }

    #[test]
    fn a_load_at_either_end_bends_nothing() {
        for at in [0.0, 120.0] {
            let load = MemberLoad::down(0, Length::inches(at), Force::pounds(100.0));
            let beam = SimpleBeam::new([load].iter(), 120.0, (1.0, 0.0), &mut Room::default());
            check(beam.moment_areas.0, 0.0);
            check(beam.reactions.0 + beam.reactions.1, 100.0);
            check(beam.stretches[0].shear, 0.0);
        }
    }
}

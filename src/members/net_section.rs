//! A rectangular section less the wood that joints take out: exact about the axis that shifts with it.
use crate::materials::Section;
use crate::units::{Area, Length, Volume};

use super::Refused;

/// Noise of the arithmetic when a pocket ends on a face.
const NOISE: f64 = 1e-9;

/// A second moment of area, held in inches to the fourth.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct SecondMoment(f64);

impl SecondMoment {
    /// In inches to the fourth.
    #[must_use]
    pub const fn to_inches4(self) -> f64 {
        self.0
    }
}

/// A rectangular hole in the section: a mortise, a housing, a notch. Measured from the left face and from the bottom.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pocket {
    /// Left face of the stick to the pocket.
    pub from_left: Length,
    /// Size across.
    pub breadth: Length,
    /// Bottom of the stick to the pocket.
    pub from_bottom: Length,
    /// Size up.
    pub depth: Length,
}

impl Pocket {
    fn turned(self) -> Self {
        Self { from_left: self.from_bottom, breadth: self.depth, from_bottom: self.from_left, depth: self.breadth }
    }

    fn overlaps(self, other: Self) -> bool {
        let apart = |a: Length, size_a: Length, b: Length, size_b: Length| {
            (a + size_a).to_inches() <= b.to_inches() + NOISE || (b + size_b).to_inches() <= a.to_inches() + NOISE
        };
        !apart(self.from_left, self.breadth, other.from_left, other.breadth)
            && !apart(self.from_bottom, self.depth, other.from_bottom, other.depth)
    }
}

/// A section with its pockets. It bends across the depth: the axis lies level through the centre of what is left.
/// A pocket beside the middle also tilts the axis a little; that is left out.
#[derive(Clone, Debug, PartialEq)]
pub struct NetSection {
    section: Section,
    pockets: Vec<Pocket>,
}

impl NetSection {
    /// Nothing taken out.
    ///
    /// # Errors
    /// When a size is not above zero.
    pub fn whole(section: Section) -> Result<Self, Refused> {
        if section.breadth <= Length::ZERO || section.depth <= Length::ZERO {
            return Err(Refused::because("A section needs a breadth and a depth above zero."));
        }
        Ok(Self { section, pockets: Vec::new() })
    }

    /// With one more pocket taken out.
    ///
    /// # Errors
    /// When it reaches out of the section, meets another pocket, or leaves no wood.
    pub fn without(mut self, pocket: Pocket) -> Result<Self, Refused> {
        let sizes = [pocket.breadth, pocket.depth];
        if sizes.into_iter().any(|size| size <= Length::ZERO) {
            return Err(Refused::because("A pocket needs a breadth and a depth above zero."));
        }
        let right = (pocket.from_left + pocket.breadth - self.section.breadth).to_inches();
        let top = (pocket.from_bottom + pocket.depth - self.section.depth).to_inches();
        if pocket.from_left.is_negative() || pocket.from_bottom.is_negative() || right > NOISE || top > NOISE {
            return Err(Refused::because("A pocket reaches out of its section."));
        }
        if self.pockets.iter().any(|other| other.overlaps(pocket)) {
            return Err(Refused::because(
                "Two pockets of one section meet: give them as one, or as parts side by side.",
            ));
        }
        self.pockets.push(pocket);
        if self.area().to_square_inches() <= NOISE {
            return Err(Refused::because("Nothing is left of the section."));
        }
        Ok(self)
    }

    /// Whether it is a section of this stick.
    pub(super) fn belongs_to(&self, section: Section) -> Result<(), Refused> {
        let near = Length::inches(1e-6);
        if self.section.breadth.is_near(section.breadth, near) && self.section.depth.is_near(section.depth, near) {
            Ok(())
        } else {
            Err(Refused::because("The net section is not cut from this stick: its breadth or depth differs."))
        }
    }

    /// The section before anything was taken out.
    #[must_use]
    pub const fn section(&self) -> Section {
        self.section
    }

    /// What was taken out.
    #[must_use]
    pub fn pockets(&self) -> &[Pocket] {
        &self.pockets
    }

    /// The same section bent across its breadth.
    #[must_use]
    pub fn turned(&self) -> Self {
        let section = Section::new(self.section.depth, self.section.breadth);
        Self { section, pockets: self.pockets.iter().map(|pocket| pocket.turned()).collect() }
    }

    /// Area left.
    #[must_use]
    pub fn area(&self) -> Area {
        let taken: Area = self.pockets.iter().map(|pocket| pocket.breadth * pocket.depth).sum();
        self.section.area() - taken
    }

    /// Height of the axis above the bottom.
    #[must_use]
    pub fn axis_height(&self) -> Length {
        let whole = self.section.area() * (self.section.depth / 2.0);
        let taken: Volume = self
            .pockets
            .iter()
            .map(|pocket| (pocket.breadth * pocket.depth) * (pocket.from_bottom + pocket.depth / 2.0))
            .sum();
        (whole - taken) / self.area()
    }

    /// Second moment about that axis: `Σ (b·d³/12 + b·d·z²)`, pockets subtracted.
    #[must_use]
    pub fn second_moment(&self) -> SecondMoment {
        let axis = self.axis_height().to_inches();
        let about = |breadth: Length, bottom: Length, depth: Length| {
            let (b, d) = (breadth.to_inches(), depth.to_inches());
            let arm = bottom.to_inches() + d / 2.0 - axis;
            b * d * d * d / 12.0 + b * d * arm * arm
        };
        let whole = about(self.section.breadth, Length::ZERO, self.section.depth);
        let taken: f64 =
            self.pockets.iter().map(|pocket| about(pocket.breadth, pocket.from_bottom, pocket.depth)).sum();
        SecondMoment(whole - taken)
    }

    /// Section modulus at the bottom edge of the wood that is left.
    #[must_use]
    pub fn bottom_modulus(&self) -> Volume {
        let (bottom, _) = self.edges();
        Volume::cubic_inches(self.second_moment().0 / (self.axis_height() - bottom).to_inches())
    }

    /// Section modulus at the top edge of the wood that is left.
    #[must_use]
    pub fn top_modulus(&self) -> Volume {
        let (_, top) = self.edges();
        Volume::cubic_inches(self.second_moment().0 / (top - self.axis_height()).to_inches())
    }

    /// The smaller of the two.
    #[must_use]
    pub fn least_modulus(&self) -> Volume {
        self.bottom_modulus().min(self.top_modulus())
    }

    /// Heights at which the breadth changes, bottom and top included, in order.
    pub(super) fn levels(&self) -> Vec<f64> {
        let mut levels = vec![0.0, self.section.depth.to_inches()];
        for pocket in &self.pockets {
            levels.push(pocket.from_bottom.to_inches());
            levels.push((pocket.from_bottom + pocket.depth).to_inches().min(self.section.depth.to_inches()));
        }
        levels.sort_unstable_by(f64::total_cmp);
        levels.dedup_by(|a, b| (*a - *b).abs() < NOISE);
        levels
    }

    /// Breadth of wood at a height, in inches.
    pub(super) fn breadth_at(&self, height: f64) -> f64 {
        let is_cut = |pocket: &&Pocket| {
            let bottom = pocket.from_bottom.to_inches();
            height > bottom && height < bottom + pocket.depth.to_inches()
        };
        let taken: Length = self.pockets.iter().filter(is_cut).map(|pocket| pocket.breadth).sum();
        (self.section.breadth - taken).to_inches()
    }

    /// Lowest and highest edge of the wood: a notch over the full breadth moves them.
    fn edges(&self) -> (Length, Length) {
        let levels = self.levels();
        let has_wood = |pair: &&[f64]| self.breadth_at((pair[0] + pair[1]) / 2.0) > NOISE;
        let bottom = levels.windows(2).find(has_wood).map_or(0.0, |pair| pair[0]);
        let top = levels.windows(2).rfind(has_wood).map_or(0.0, |pair| pair[1]);
        (Length::inches(bottom), Length::inches(top))
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::members::test_members::inches;

    fn pocket(from_left: f64, breadth: f64, from_bottom: f64, depth: f64) -> Pocket {
        Pocket {
            from_left: Length::inches(from_left),
            breadth: Length::inches(breadth),
            from_bottom: Length::inches(from_bottom),
            depth: Length::inches(depth),
        }
    }

    fn near(found: f64, expected: f64) {
        assert!((found - expected).abs() < 1e-9 * expected.abs().max(1.0), "{found} is not {expected}");
    }

    #[test]
    fn a_whole_section() {
        let whole = NetSection::whole(inches(6.0, 10.0)).unwrap();
        near(whole.second_moment().to_inches4(), 6.0 * 1000.0 / 12.0);
        near(whole.least_modulus().to_cubic_inches(), 100.0);
        near(whole.turned().least_modulus().to_cubic_inches(), 60.0);
        assert!(NetSection::whole(inches(0.0, 10.0)).is_err());
    }

    /// A notch over the full breadth leaves the smaller rectangle: closed form b·d_n³/12, b·d_n²/6.
    #[test]
    fn a_notch_leaves_the_smaller_rectangle() {
        for from_bottom in [0.0, 7.0] {
            let net =
                NetSection::whole(inches(6.0, 10.0)).unwrap().without(pocket(0.0, 6.0, from_bottom, 3.0)).unwrap();
            near(net.second_moment().to_inches4(), 6.0 * 343.0 / 12.0);
            near(net.bottom_modulus().to_cubic_inches(), 6.0 * 49.0 / 6.0);
            near(net.top_modulus().to_cubic_inches(), 6.0 * 49.0 / 6.0);
        }
    }

    /// A mortise right through the breadthwise middle: I is the sum of what stands beside it, b_n·d³/12; and a hole at
    /// mid-depth: b·(d³ − h³)/12.
    #[test]
    fn symmetric_pockets_have_closed_forms() {
        let whole = NetSection::whole(inches(8.0, 8.0)).unwrap();
        let slot = whole.clone().without(pocket(3.0, 2.0, 0.0, 8.0)).unwrap();
        near(slot.second_moment().to_inches4(), 6.0 * 512.0 / 12.0);
        let hole = whole.without(pocket(0.0, 8.0, 3.0, 2.0)).unwrap();
        near(hole.second_moment().to_inches4(), 8.0 * (512.0 - 8.0) / 12.0);
        near(hole.least_modulus().to_cubic_inches(), 8.0 * 504.0 / 12.0 / 4.0);
    }

    /// A blind mortise 2 in wide, 4 in deep from the bottom of 8x10: a tee, by hand.
    /// A = 72; z = (80·5 − 8·2)/72 = 5.3333; I = 8·1000/12 + 80·(1/3)² − (2·64/12 + 8·(10/3)²) = 576.
    #[test]
    fn a_blind_mortise_shifts_the_axis() {
        let net = NetSection::whole(inches(8.0, 10.0)).unwrap().without(pocket(3.0, 2.0, 0.0, 4.0)).unwrap();
        near(net.area().to_square_inches(), 72.0);
        near(net.axis_height().to_inches(), 16.0 / 3.0);
        near(net.second_moment().to_inches4(), 576.0);
        near(net.bottom_modulus().to_cubic_inches(), 576.0 / (16.0 / 3.0));
        near(net.least_modulus().to_cubic_inches(), 108.0);
        assert!(net.turned().axis_height() == Length::inches(4.0));
        assert_eq!(net.pockets().len(), 1);
    }

    #[test]
    fn pockets_stay_inside_and_apart() {
        let whole = NetSection::whole(inches(8.0, 10.0)).unwrap();
        assert!(whole.clone().without(pocket(7.0, 2.0, 0.0, 4.0)).is_err());
        assert!(whole.clone().without(pocket(-1.0, 2.0, 0.0, 4.0)).is_err());
        assert!(whole.clone().without(pocket(0.0, 0.0, 0.0, 4.0)).is_err());
        assert!(whole.clone().without(pocket(0.0, 8.0, 0.0, 10.0)).is_err());
        let one = whole.without(pocket(3.0, 2.0, 0.0, 4.0)).unwrap();
        assert!(one.clone().without(pocket(4.0, 2.0, 3.0, 4.0)).is_err());
        assert!(one.clone().without(pocket(5.0, 2.0, 0.0, 4.0)).is_ok());
        assert!(one.belongs_to(inches(8.0, 10.0)).is_ok() && one.belongs_to(inches(10.0, 8.0)).is_err());
    }
}

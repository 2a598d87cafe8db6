//! The size of a stick across its length.
use crate::units::{Area, Length, UnitSystem};

/// Breadth and depth of a rectangular section.
///
/// What breadth and depth mean for each kind of stick is fixed by the frame: a beam's depth stands
/// up, a post's breadth runs along the beam, a purlin lies on its breadth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Section {
    /// Size across.
    pub breadth: Length,
    /// Size up (or out, for a post).
    pub depth: Length,
}

impl Section {
    /// A section of the given breadth and depth.
    #[must_use]
    pub const fn new(breadth: Length, depth: Length) -> Self {
        Self { breadth, depth }
    }

    /// Area of the cross-section.
    #[must_use]
    pub fn area(self) -> Area {
        self.breadth * self.depth
    }

    /// The trade's label, smaller size first: `4x8`, in inches or in millimetres.
    #[must_use]
    pub fn label(self, system: UnitSystem) -> String {
        let (small, large) = (self.breadth.min(self.depth), self.breadth.max(self.depth));
        let size = |length: Length| match system {
            UnitSystem::Imperial => trimmed(length.to_inches()),
            UnitSystem::Metric => format!("{:.0}", length.to_millimetres()),
        };
        format!("{}x{}", size(small), size(large))
    }
}

/// At most three decimals, without trailing zeros.
fn trimmed(value: f64) -> String {
    let text = format!("{value:.3}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// A section as it is ordered and as it comes off the saw.
///
/// Board feet are counted on the ordered size; marks and weights use the sawn size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Timber {
    /// The size asked for at the mill.
    pub ordered: Section,
    /// The size measured, or expected, on the real stick.
    pub sawn: Section,
}

impl Timber {
    /// A timber sawn full: as large as it was ordered.
    #[must_use]
    pub const fn full(section: Section) -> Self {
        Self { ordered: section, sawn: section }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn labels_put_the_smaller_size_first() {
        let beam = Section::new(Length::inches(10.0), Length::inches(8.0));
        assert_eq!(beam.label(UnitSystem::Imperial), "8x10");
        let planed = Section::new(Length::inches(3.5), Length::inches(1.5));
        assert_eq!(planed.label(UnitSystem::Imperial), "1.5x3.5");
        let metric = Section::new(Length::millimetres(200.0), Length::millimetres(240.0));
        assert_eq!(metric.label(UnitSystem::Metric), "200x240");
    }
}

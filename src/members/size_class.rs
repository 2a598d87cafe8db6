//! Which table a section belongs to: by its size, never by its use.
use crate::materials::Section;
use crate::units::Length;

use super::Refused;

/// A metric or a full-sawn size this near a size of the tables counts as that size.
pub(super) const NEAR: Length = Length::inches(0.125);

/// How the grading rules sort sections.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SizeClass {
    /// 5 in and thicker, more than 2 in deeper than thick: 6x10, 8x12.
    BeamsStringers,
    /// 5x5 and larger, at most 2 in deeper than thick: 6x8, 8x10.
    PostsTimbers,
    /// 5x5 and larger where the rules do not part the two above: southern pine.
    FiveAndLarger,
    /// 2 to 4 in thick.
    Dimension,
}

impl SizeClass {
    /// The key in the tables.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::BeamsStringers => "B&S",
            Self::PostsTimbers => "P&T",
            Self::FiveAndLarger => "5x5+",
            Self::Dimension => "2-4",
        }
    }

    /// In words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::BeamsStringers => "Beams and Stringers",
            Self::PostsTimbers => "Posts and Timbers",
            Self::FiveAndLarger => "timbers 5x5 and larger",
            Self::Dimension => "dimension lumber 2 to 4 in thick",
        }
    }

    /// Whether it is 5 in thick or more.
    #[must_use]
    pub const fn is_timber(self) -> bool {
        !matches!(self, Self::Dimension)
    }
}

/// The smaller and the larger size of a section.
pub(super) const fn thickness_and_width(section: Section) -> (Length, Length) {
    (section.breadth.min(section.depth), section.breadth.max(section.depth))
}

/// The class of a section as it was ordered (common practice; NDS Supplement Table 1A for dressed sizes, from memory).
///
/// A stick is worth the values of the class it was graded in, whatever it is used as (NDS Supplement, from memory).
/// Dressed dimension lumber (1½ to 3½ in) is taken as the 2 to 4 in it is called by.
///
/// # Errors
/// Thinner than dressed 2 in stock, or between 4 in and 5 in, where no table lists a value.
pub fn size_class(design_class: &str, ordered: Section) -> Result<SizeClass, Refused> {
    let (thickness, width) = thickness_and_width(ordered);
    if thickness + NEAR < Length::inches(1.5) {
        return Err(Refused::because("Design values start at stock 2 in thick (1½ in dressed)."));
    }
    if thickness <= Length::inches(4.0) + NEAR {
        return Ok(SizeClass::Dimension);
    }
    if thickness + NEAR < Length::inches(5.0) {
        return Err(Refused::because("Between 4 in and 5 in thick no table lists design values."));
    }
    if design_class == "Southern Pine" {
        return Ok(SizeClass::FiveAndLarger);
    }
    let is_post = width <= thickness + Length::inches(2.0) + NEAR;
    Ok(if is_post { SizeClass::PostsTimbers } else { SizeClass::BeamsStringers })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(thick: f64, wide: f64, expected: Option<SizeClass>) {
        let section = Section::new(Length::inches(wide), Length::inches(thick));
        assert_eq!(size_class("Hem-Fir", section).ok(), expected, "{thick} x {wide}");
    }

    #[test]
    fn by_section_not_by_use() {
        check(6.0, 8.0, Some(SizeClass::PostsTimbers));
        check(8.0, 10.0, Some(SizeClass::PostsTimbers));
        check(6.0, 10.0, Some(SizeClass::BeamsStringers));
        check(8.0, 12.0, Some(SizeClass::BeamsStringers));
        check(4.0, 10.0, Some(SizeClass::Dimension));
        check(1.5, 3.5, Some(SizeClass::Dimension));
        check(4.5, 6.0, None);
        check(0.75, 6.0, None);
    }

    #[test]
    fn metric_sizes_and_southern_pine() {
        let section = |b: f64, d: f64| Section::new(Length::millimetres(b), Length::millimetres(d));
        assert_eq!(size_class("Hem-Fir", section(125.0, 125.0)), Ok(SizeClass::PostsTimbers));
        assert_eq!(size_class("Hem-Fir", section(150.0, 250.0)), Ok(SizeClass::BeamsStringers));
        assert_eq!(size_class("Southern Pine", section(150.0, 250.0)), Ok(SizeClass::FiveAndLarger));
        assert!(SizeClass::FiveAndLarger.is_timber() && !SizeClass::Dimension.is_timber());
        assert_eq!(SizeClass::PostsTimbers.name(), "Posts and Timbers");
    }
}

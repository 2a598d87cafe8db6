//! Reference design values of visually graded sawn wood.
//!
//! Rows stand in `tables/design_values.csv`, each with its document and its confidence; a comma never stands inside a value.
use std::sync::{Arc, OnceLock};

use crate::materials::{Confidence, Section};
use crate::units::{Length, Stress, UnitSystem};
use crate::working::Citation;

use super::size_class::{NEAR, thickness_and_width};
use super::{Grade, Missing, Property, Refused, SizeClass, size_class};

/// What one stick is worth before any adjustment.
#[derive(Clone, Debug, PartialEq)]
pub struct DesignValues {
    /// The group of species.
    pub design_class: &'static str,
    /// The class its size falls into.
    pub size_class: SizeClass,
    /// The grade it is taken as.
    pub grade: Grade,
    /// Where the row comes from.
    pub citation: Citation,
    values: [Stress; 7],
    /// The user's own, each with the source they give.
    own: Vec<(Property, String)>,
    /// Rows that hold up to a width only (southern pine dimension lumber).
    up_to_width: Option<Length>,
    /// In words; said once, since every working names its row.
    name: Arc<str>,
}

impl DesignValues {
    /// One value.
    #[must_use]
    pub const fn get(&self, property: Property) -> Stress {
        self.values[property.place()]
    }

    /// Where one value comes from.
    #[must_use]
    pub fn citation_of(&self, property: Property) -> Citation {
        match self.own_source(property) {
            None => self.citation,
            Some("") => Citation::placeholder("your own value", "no source given"),
            Some(_) => Citation::given("your own value", "in place of the table\u{2019}s"),
        }
    }

    /// What the user gives as the source of a value of their own.
    fn own_source(&self, property: Property) -> Option<&str> {
        self.own.iter().find(|(of, _)| *of == property).map(|(_, source)| source.as_str())
    }

    /// The row a value stands in, or the source of the user's own.
    #[must_use]
    pub fn row_of(&self, property: Property) -> &str {
        self.own_source(property).filter(|source| !source.is_empty()).unwrap_or(&self.name)
    }

    /// In words: `Douglas Fir-Larch, No.2, Posts and Timbers`.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The same row, taken for a group that has none of its own in this size.
    #[must_use]
    pub fn taken_for(self, design_class: &str) -> Self {
        Self { name: format!("{} ({design_class} has no row of its own there)", self.name).into(), ..self }
    }

    /// The same with the user's own value in one place, and the source they give for it. An own `E` brings its `E_min` along
    /// (NDS Appendix D.2, from memory: `E_min = 1.03·E·(1 − 1.645·COV_E)/1.66`, `COV_E` = 0.25), unless that is the user's own too.
    ///
    /// # Errors
    /// When the value is not above zero.
    pub fn with_override(mut self, property: Property, value: Stress, source: &str) -> Result<Self, Refused> {
        if value <= Stress::ZERO {
            return Err(Refused::because(format!("A design value for {} must be above zero.", property.name())));
        }
        self.values[property.place()] = value;
        self.own.push((property, source.trim().to_owned()));
        if property == Property::Stiffness && self.own_source(Property::LeastStiffness).is_none() {
            self.values[Property::LeastStiffness.place()] = least_stiffness(value);
        }
        Ok(self)
    }

    fn from_row(row: &'static str) -> Option<Self> {
        let cells: Vec<&'static str> = row.split(',').collect();
        let [design_class, size, up_to, grade, ref numbers @ .., document, clause, confidence] = cells[..] else {
            return None;
        };
        let numbers: Vec<f64> = numbers.iter().map(|cell| cell.parse().ok()).collect::<Option<_>>()?;
        let [fb, ft, fv, fc_perp, fc, e, e_min] = numbers[..] else { return None };
        let classes =
            [SizeClass::BeamsStringers, SizeClass::PostsTimbers, SizeClass::FiveAndLarger, SizeClass::Dimension];
        let size_class = classes.into_iter().find(|class| class.key() == size)?;
        let grade = Grade::from_key(grade)?;
        Some(Self {
            design_class,
            size_class,
            grade,
            citation: Citation { document, clause, confidence: confidence_of(confidence) },
            values: [fb, ft, fv, fc_perp, fc, 1e6 * e, 1e6 * e_min].map(Stress::psi),
            own: Vec::new(),
            up_to_width: up_to.parse().ok().map(Length::inches),
            name: format!("{design_class}, {}, {}", grade.name(), size_class.name()).into(),
        })
    }

    fn covers(&self, width: Length) -> bool {
        self.up_to_width.is_none_or(|limit| width <= limit + NEAR)
    }
}

/// The word in a table's last column.
pub(super) fn confidence_of(word: &str) -> Confidence {
    match word {
        "high" => Confidence::High,
        "medium" => Confidence::Medium,
        _ => Confidence::Low,
    }
}

fn least_stiffness(stiffness: Stress) -> Stress {
    stiffness * (1.03 * (1.0 - 1.645 * 0.25) / 1.66)
}

fn rows() -> &'static [DesignValues] {
    static ROWS: OnceLock<Vec<DesignValues>> = OnceLock::new();
    ROWS.get_or_init(|| {
        include_str!("tables/design_values.csv").lines().skip(1).filter_map(DesignValues::from_row).collect()
    })
}

/// The groups of species that have rows.
#[must_use]
pub fn known_design_classes() -> Vec<&'static str> {
    let mut names: Vec<&'static str> = Vec::new();
    for row in rows() {
        if !names.contains(&row.design_class) {
            names.push(row.design_class);
        }
    }
    names
}

/// The values of a stick by its group of species, the section it was ordered in and its grade.
///
/// # Errors
/// When no row is listed: the sentence says so and names the nearest row.
pub fn design_values(design_class: &str, ordered: Section, grade: Grade) -> Result<DesignValues, Missing> {
    if !rows().iter().any(|row| row.design_class == design_class) {
        let sentence = format!(
            "No design values are listed for “{design_class}”. Listed are: {}.",
            known_design_classes().join("; ")
        );
        return Err(Missing { sentence, nearest: None });
    }
    let (thickness, width) = thickness_and_width(ordered);
    let class = size_class(design_class, ordered).map_err(|refused| {
        let near = [Length::inches(2.0), Length::inches(4.0), Length::inches(5.0)]
            .into_iter()
            .min_by(|a, b| (*a - thickness).abs().to_inches().total_cmp(&(*b - thickness).abs().to_inches()))
            .unwrap_or(thickness);
        let listed = design_values(design_class, Section::new(near, width.max(near)), grade);
        missing(&refused.0, listed.ok())
    })?;
    let found = rows().iter().find(|row| {
        row.design_class == design_class && row.size_class == class && row.grade == grade && row.covers(width)
    });
    found.cloned().ok_or_else(|| {
        let asked = format!(
            "No design values are listed for {design_class}, {}, {} of {}.",
            grade.name(),
            class.name(),
            ordered.label(UnitSystem::Imperial)
        );
        missing(&asked, nearest(design_class, class, grade))
    })
}

fn missing(asked: &str, nearest: Option<DesignValues>) -> Missing {
    let sentence = nearest.as_ref().map_or_else(
        || asked.to_owned(),
        |row| format!("{asked} The nearest that is listed: {}{}.", row.name(), width_words(row)),
    );
    Missing { sentence, nearest: nearest.map(Box::new) }
}

fn width_words(row: &DesignValues) -> String {
    row.up_to_width.map_or_else(String::new, |limit| format!(" up to {:.0} in wide", limit.to_inches()))
}

/// The nearest row: the same size and grade at another width, another grade, the wood as it is sold (from memory: eastern
/// spruce and northern pine of 2 to 4 in are sold as spruce-pine-fir (south)), another size.
fn nearest(design_class: &str, class: SizeClass, grade: Grade) -> Option<DesignValues> {
    let find = |name: &str, class: Option<SizeClass>, grade: Option<Grade>| {
        let matches = |row: &&DesignValues| {
            row.design_class == name
                && class.is_none_or(|class| row.size_class == class)
                && grade.is_none_or(|grade| row.grade == grade)
        };
        rows().iter().rfind(matches)
    };
    let sold_as = match design_class {
        "Eastern Spruce" | "Northern Pine" => "Spruce-Pine-Fir (South)",
        "Eastern Hemlock" => "Eastern Hemlock-Tamarack",
        _ => design_class,
    };
    find(design_class, Some(class), Some(grade))
        .or_else(|| find(design_class, Some(class), None))
        .or_else(|| find(sold_as, Some(class), Some(grade)))
        .or_else(|| find(design_class, None, Some(grade)))
        .or_else(|| find(design_class, None, None))
        .cloned()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    fn section(breadth: f64, depth: f64) -> Section {
        Section::new(Length::inches(breadth), Length::inches(depth))
    }

    #[test]
    fn every_row_is_read_once() {
        let lines = include_str!("tables/design_values.csv").lines().count() - 1;
        assert_eq!(rows().len(), lines);
        for (index, row) in rows().iter().enumerate() {
            assert!(!row.citation.document.is_empty() && !row.citation.clause.is_empty());
            let is_twin = |other: &DesignValues| {
                (other.design_class, other.size_class, other.grade, other.up_to_width)
                    == (row.design_class, row.size_class, row.grade, row.up_to_width)
            };
            assert!(!rows()[index + 1..].iter().any(is_twin), "{} twice", row.name());
        }
    }

    /// `E_min` is a rounded 0.3653·E (NDS Appendix D.2, from memory) in every row.
    #[test]
    fn least_stiffness_follows_stiffness() {
        for row in rows() {
            let exact = least_stiffness(row.get(Property::Stiffness));
            let listed = row.get(Property::LeastStiffness);
            assert!((exact - listed).abs() <= Stress::psi(5_300.0), "{}: {exact:?} {listed:?}", row.name());
        }
    }

    #[test]
    fn a_better_grade_is_never_weaker() {
        for row in rows().iter().filter(|row| row.grade != Grade::SelectStructural) {
            let better = rows().iter().find(|other| {
                other.design_class == row.design_class
                    && other.size_class == row.size_class
                    && other.up_to_width == row.up_to_width
                    && other.grade.key() == if row.grade == Grade::No2 { "No.1" } else { "SS" }
            });
            let better = better.unwrap();
            for property in Property::ALL {
                assert!(better.get(property) >= row.get(property), "{} {property:?}", row.name());
            }
        }
    }

    #[test]
    fn lookups_by_section() {
        let value = |class: &str, breadth: f64, depth: f64, grade| {
            design_values(class, section(breadth, depth), grade).map(|row| row.get(Property::Bending).to_psi())
        };
        assert_eq!(value("Eastern Hemlock-Tamarack", 8.0, 10.0, Grade::No2), Ok(600.0));
        assert_eq!(value("Eastern Hemlock-Tamarack", 6.0, 10.0, Grade::No2), Ok(750.0));
        assert_eq!(value("Southern Pine", 6.0, 10.0, Grade::No1), Ok(1350.0));
        assert_eq!(value("Southern Pine", 2.0, 6.0, Grade::No2), Ok(1000.0));
        assert_eq!(value("Southern Pine", 1.5, 7.25, Grade::No2), Ok(925.0));
        assert_eq!(value("Spruce-Pine-Fir", 8.0, 4.0, Grade::No2), Ok(875.0));
    }

    #[test]
    fn what_is_missing_is_named_with_the_nearest() {
        let check = |class: &str, b: f64, d: f64, grade, near: &str| {
            let missing = design_values(class, section(b, d), grade).unwrap_err();
            assert!(missing.to_string().contains(near), "{missing}");
            assert!(missing.nearest.is_some());
        };
        check("Northern Pine", 8.0, 8.0, Grade::No2, "Northern Pine, No.1, Posts and Timbers");
        check("Eastern Spruce", 4.0, 8.0, Grade::No2, "Spruce-Pine-Fir (South), No.2, dimension");
        check("Eastern Hemlock", 4.0, 8.0, Grade::No2, "Eastern Hemlock-Tamarack, No.2, dimension");
        check("Southern Pine", 4.0, 14.0, Grade::No1, "up to 12 in wide");
        check("Hem-Fir", 4.6, 8.0, Grade::No1, "Hem-Fir, No.1, Beams and Stringers");
        check("Eastern Softwoods", 6.0, 6.0, Grade::No1, "Eastern Softwoods, No.1, dimension");
        check("Hem-Fir", 1.0, 8.0, Grade::No1, "Hem-Fir, No.1, dimension");
        let unknown = design_values("Balsa", section(6.0, 6.0), Grade::No1).unwrap_err();
        assert!(unknown.sentence.contains("Hem-Fir") && unknown.nearest.is_none());
    }

    #[test]
    fn own_values_take_the_place_of_the_table() {
        let listed = design_values("Hem-Fir", section(6.0, 6.0), Grade::No2).unwrap();
        let own = listed.clone().with_override(Property::Stiffness, Stress::psi(1.3e6), "a test report").unwrap();
        assert!((own.get(Property::LeastStiffness).to_psi() - 474_901.0).abs() < 1.0);
        assert_eq!(own.citation_of(Property::Stiffness).confidence, Confidence::Given);
        assert_eq!(own.row_of(Property::Stiffness), "a test report");
        assert_eq!(own.row_of(Property::Bending), listed.name());
        assert_eq!(own.citation_of(Property::Bending), listed.citation);
        let both = listed.with_override(Property::LeastStiffness, Stress::psi(4e5), " ").unwrap();
        assert_eq!(both.citation_of(Property::LeastStiffness).confidence, Confidence::Low);
        let both = both.with_override(Property::Stiffness, Stress::psi(1.3e6), "").unwrap();
        assert_eq!(both.get(Property::LeastStiffness), Stress::psi(4e5));
        assert!(both.with_override(Property::Bending, Stress::ZERO, "").is_err());
    }
}

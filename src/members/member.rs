//! A stick with its design values and its conditions of use.
use crate::materials::{Section, Timber};

use super::size_class::thickness_and_width;
use super::{Conditions, DesignValues, Grade, LoadDuration, Missing, design_values};

/// What every check asks about a stick. It bends across its depth; [`Member::turned`] bends across its breadth.
#[derive(Clone, Debug, PartialEq)]
pub struct Member {
    /// As ordered (it picks tables and size factors) and as sawn (it is what is computed with).
    pub timber: Timber,
    /// Reference design values.
    pub values: DesignValues,
    /// Conditions of use.
    pub conditions: Conditions,
}

impl Member {
    /// With the values of the tables.
    ///
    /// # Errors
    /// When the tables list none.
    pub fn listed(design_class: &str, grade: Grade, timber: Timber, conditions: Conditions) -> Result<Self, Missing> {
        Ok(Self { timber, values: design_values(design_class, timber.ordered, grade)?, conditions })
    }

    /// The real section.
    #[must_use]
    pub const fn section(&self) -> Section {
        self.timber.sawn
    }

    /// The same stick under a load of another duration.
    #[must_use]
    pub fn during(&self, duration: LoadDuration) -> Self {
        Self { conditions: Conditions { duration, ..self.conditions }, ..self.clone() }
    }

    /// The same stick bent the other way: breadth and depth change places.
    #[must_use]
    pub fn turned(&self) -> Self {
        let turn = |section: Section| Section::new(section.depth, section.breadth);
        let timber = Timber { ordered: turn(self.timber.ordered), sawn: turn(self.timber.sawn) };
        Self { timber, ..self.clone() }
    }

    /// Whether the load meets the wide face.
    pub(super) fn lies_flat(&self) -> bool {
        self.timber.sawn.depth < self.timber.sawn.breadth
    }

    /// Thickness and width as ordered.
    pub(super) const fn ordered_sizes(&self) -> (crate::units::Length, crate::units::Length) {
        thickness_and_width(self.timber.ordered)
    }

    /// Dimension lumber of southern pine: its size is in the value already.
    pub(super) fn is_southern_dimension(&self) -> bool {
        self.is_southern_pine() && !self.values.size_class.is_timber()
    }

    /// Southern pine.
    pub(super) fn is_southern_pine(&self) -> bool {
        self.values.design_class == "Southern Pine"
    }
}

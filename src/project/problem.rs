//! What stands in the way, tied to the field that causes it.
use crate::units::{Length, Slope};

/// How bad it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// The frame can be built; look at this.
    Caution,
    /// The frame cannot be built like this.
    Stop,
}

/// The nearest value that works.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Nearest {
    /// A length.
    Length(Length),
    /// A slope.
    Slope(Slope),
    /// A number of things.
    Count(usize),
}

/// One plain sentence about one field.
#[derive(Clone, Debug, PartialEq)]
pub struct Problem {
    /// The field, as in the project file: `frame.reach`, `frame.posts.2.x`.
    pub field: String,
    /// What is wrong, in the user's units.
    pub says: String,
    /// The nearest value of that field that works, where there is one.
    pub nearest: Option<Nearest>,
    /// Whether the frame can be built like this.
    pub severity: Severity,
}

impl Problem {
    /// A problem that stops the frame.
    #[must_use]
    pub fn stop(field: impl Into<String>, says: impl Into<String>) -> Self {
        Self { field: field.into(), says: says.into(), nearest: None, severity: Severity::Stop }
    }

    /// A problem to look at.
    #[must_use]
    pub fn caution(field: impl Into<String>, says: impl Into<String>) -> Self {
        Self { field: field.into(), says: says.into(), nearest: None, severity: Severity::Caution }
    }

    /// It is one of that field, or of one under it.
    #[must_use]
    pub fn is_of(&self, field: &str) -> bool {
        self.field.strip_prefix(field).is_some_and(|rest| rest.is_empty() || rest.starts_with('.'))
    }

    /// The frame cannot be built like this.
    #[must_use]
    pub fn stops(&self) -> bool {
        self.severity == Severity::Stop
    }

    /// The same problem with the nearest length that works.
    #[must_use]
    pub fn nearest(mut self, length: Length) -> Self {
        self.nearest = Some(Nearest::Length(length));
        self
    }

    /// The same problem with the nearest slope that works.
    #[must_use]
    pub fn nearest_slope(mut self, slope: Slope) -> Self {
        self.nearest = Some(Nearest::Slope(slope));
        self
    }

    /// The same problem with the nearest count that works.
    #[must_use]
    pub fn nearest_count(mut self, count: usize) -> Self {
        self.nearest = Some(Nearest::Count(count));
        self
    }
}

/// Problems in the order they were found.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Problems {
    list: Vec<Problem>,
}

impl Problems {
    /// Adds one.
    pub fn add(&mut self, problem: Problem) {
        self.list.push(problem);
    }

    /// Adds one where `wrong` holds.
    pub fn add_if(&mut self, wrong: bool, problem: impl FnOnce() -> Problem) {
        if wrong {
            self.list.push(problem());
        }
    }

    /// Adds all of some.
    pub fn extend(&mut self, problems: impl IntoIterator<Item = Problem>) {
        self.list.extend(problems);
    }

    /// At least one of them stops the frame.
    #[must_use]
    pub fn stop(&self) -> bool {
        self.list.iter().any(Problem::stops)
    }

    /// All of them.
    #[must_use]
    pub fn into_list(self) -> Vec<Problem> {
        self.list
    }
}

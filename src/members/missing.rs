//! Design values that are not in the tables.
use std::fmt;

use super::DesignValues;

/// What is missing and what comes nearest. The nearest row is another wood, size or grade: only the user may take it.
#[derive(Clone, Debug, PartialEq)]
pub struct Missing {
    /// What was asked for and what is listed instead.
    pub sentence: String,
    /// The nearest row that exists.
    pub nearest: Option<Box<DesignValues>>,
}

impl fmt::Display for Missing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.sentence)
    }
}

impl std::error::Error for Missing {}

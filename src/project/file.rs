//! The project file: versioned JSON, written whole and read whole or not at all.
use serde_json::{Map, Value};

use super::Project;
use super::migrate;
use super::stored::Stored;

/// The word that says the file is ours.
pub const FORMAT: &str = "outshot lean-to";
/// The version this program writes.
pub const VERSION: u64 = 7;
/// Largest file that is read, in bytes.
pub const LARGEST: usize = 2_000_000;
/// Deepest nesting that is read.
const DEEPEST: usize = 16;
/// Longest list and longest text in a file.
const LONGEST: usize = 5_000;

/// Why a file is refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FileError {
    /// Over the size limit.
    TooLarge,
    /// Nested or listed beyond the limits.
    TooDeep,
    /// No JSON.
    Damaged(String),
    /// JSON, but not one of ours.
    NotOurs,
    /// Written by a later version.
    Newer(u64),
    /// A field is missing, unknown or of the wrong kind.
    Field(String),
}

impl std::fmt::Display for FileError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::TooLarge => {
                write!(f, "This file is larger than 2 MB: it is no project of ours. Nothing was changed.")
            }
            Self::TooDeep => write!(f, "This file nests or lists more than any project does. Nothing was changed."),
            Self::Damaged(place) => write!(f, "This file is damaged or cut short ({place}). Nothing was changed."),
            Self::NotOurs => write!(f, "This is not an Outshot project file. Nothing was changed."),
            Self::Newer(version) => write!(
                f,
                "This project was saved by a newer Outshot (file version {version}, this one reads up to {VERSION}). \
                 Update the app, then open it again. Nothing was changed."
            ),
            Self::Field(what) => write!(f, "This project file cannot be used: {what}. Nothing was changed."),
        }
    }
}

impl std::error::Error for FileError {}

/// The project as the text of a file.
#[must_use]
pub fn write(project: &Project) -> String {
    let mut root = Map::new();
    root.insert("format".to_owned(), Value::from(FORMAT));
    root.insert("version".to_owned(), Value::from(VERSION));
    root.insert("project".to_owned(), project.store());
    serde_json::to_string_pretty(&Value::Object(root)).unwrap_or_default()
}

/// The project in the text of a file, brought up from an older version where needed.
///
/// # Errors
/// A [`FileError`] with a sentence the user can act on; never a part of a project.
pub fn read(text: &str) -> Result<Project, FileError> {
    if text.len() > LARGEST {
        return Err(FileError::TooLarge);
    }
    let root: Value = serde_json::from_str(text.trim_start_matches('\u{feff}')).map_err(|error| {
        if error.to_string().contains("recursion limit") {
            FileError::TooDeep
        } else {
            FileError::Damaged(format!("line {}, column {}", error.line(), error.column()))
        }
    })?;
    if !is_within_limits(&root, 0) {
        return Err(FileError::TooDeep);
    }
    let (version, project) = envelope(root)?;
    let project = migrate::to_current(version, project)?;
    Project::read(project).map_err(|fault| FileError::Field(fault.to_string()))
}

/// Version and body of a file that is ours.
fn envelope(root: Value) -> Result<(u64, Value), FileError> {
    let Value::Object(mut root) = root else { return Err(FileError::NotOurs) };
    if root.get("format").and_then(Value::as_str) != Some(FORMAT) {
        return Err(FileError::NotOurs);
    }
    let version = root.get("version").and_then(Value::as_u64).ok_or(FileError::NotOurs)?;
    if version > VERSION {
        return Err(FileError::Newer(version));
    }
    let project = root.remove("project").ok_or_else(|| FileError::Field("it holds no project".to_owned()))?;
    Ok((version, project))
}

fn is_within_limits(value: &Value, depth: usize) -> bool {
    if depth > DEEPEST {
        return false;
    }
    match value {
        Value::Array(list) => list.len() <= LONGEST && list.iter().all(|item| is_within_limits(item, depth + 1)),
        Value::Object(map) => map.len() <= LONGEST && map.values().all(|item| is_within_limits(item, depth + 1)),
        Value::String(text) => text.len() <= LONGEST,
        _ => true,
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::project::demo;

    #[test]
    fn what_is_written_is_read_back_to_the_last_bit() {
        for project in [demo::wool_barn(), demo::log_store()] {
            assert_eq!(read(&write(&project)).unwrap(), project);
        }
    }

    #[test]
    fn strange_files_are_refused_whole() {
        let good = write(&demo::wool_barn());
        assert_eq!(read("{"), Err(FileError::Damaged("line 1, column 1".to_owned())));
        assert_eq!(read("[1, 2]"), Err(FileError::NotOurs));
        assert_eq!(read(r#"{"format": "another", "version": 2}"#), Err(FileError::NotOurs));
        assert_eq!(read(&good.replace("\"version\": 7", "\"version\": 9")), Err(FileError::Newer(9)));
        assert_eq!(read(&" ".repeat(LARGEST + 1)), Err(FileError::TooLarge));
        assert_eq!(read(&("[".repeat(200) + &"]".repeat(200))), Err(FileError::TooDeep));
        assert_eq!(read(&("[".repeat(40) + &"]".repeat(40))), Err(FileError::TooDeep));
        assert!(matches!(read(&good[..good.len() / 2]), Err(FileError::Damaged(_))));
        assert!(matches!(read(&good.replace("\"reach_in\"", "\"reach\"")), Err(FileError::Field(_))));
        assert!(matches!(read(&good.replace("130.0", "\"ten feet\"")), Err(FileError::Field(_))));
        assert!(matches!(read(&good.replace("130.0", "1e999")), Err(FileError::Damaged(_) | FileError::Field(_))));
    }
}

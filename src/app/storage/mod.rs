//! Records on this device: one key a project, an index, two older copies of each, and nothing thrown away unasked.
//!
//! Order of a save: write, read back, then the index. A record that cannot be read is set aside, never deleted.
mod kept;
pub mod named;

use gloo_storage::{LocalStorage, Storage, errors::StorageError};
use kept::Kept;
use serde_json::Value;

const INDEX: &str = "outshot-index";
const SETTINGS: &str = "outshot-settings";
const REMOVED: &str = "outshot-removed";
const LONGEST_ID: usize = 40;
/// A good copy this old, in milliseconds, is worth keeping beside the newest.
const COPY_AGE: f64 = 5.0 * 60.0 * 1000.0;

/// One saved state of a project.
#[derive(Clone, Debug, PartialEq)]
pub struct Record {
    /// Counts the saves; a tab never overwrites a later one than it knows.
    pub revision: u64,
    /// When it was saved, in milliseconds since 1970.
    pub saved: f64,
    /// The project file.
    pub text: String,
}

/// One line of the list of projects.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// Id of its record.
    pub id: String,
    /// Name of the project.
    pub name: String,
    /// When it was last saved.
    pub saved: f64,
}

/// What the app remembers beside the projects.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Settings {
    /// `auto`, `day`, `evening` or `sun`.
    pub theme: String,
    /// Id of the project that was open last.
    pub last: Option<String>,
}

/// A project that was taken off the list, whole, so that it can come back.
#[derive(Clone, Debug, PartialEq)]
pub struct Removed {
    /// Its line.
    pub entry: Entry,
    /// Its record.
    pub record: Record,
}

/// Why something could not be kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Trouble {
    /// This browser keeps nothing for this page.
    NoStorage,
    /// The room given to this page is full.
    Full,
    /// What was written is not what is read back.
    NotKept,
    /// Another tab saved a later state.
    Newer(u64),
    /// Anything else, in the browser's words.
    Other(String),
}

impl std::fmt::Display for Trouble {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::NoStorage => write!(f, "this browser keeps no data for this page"),
            Self::Full => write!(f, "the room this browser gives the app is full"),
            Self::NotKept => write!(f, "the device did not keep what was written"),
            Self::Newer(_) => write!(f, "another window saved a later state of it"),
            Self::Other(words) => write!(f, "{words}"),
        }
    }
}

/// An id that is safe as part of a key.
#[must_use]
pub fn is_id(id: &str) -> bool {
    let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
    !id.is_empty() && id.len() <= LONGEST_ID && id.chars().all(plain)
}

fn record_key(id: &str) -> String {
    format!("outshot-project-{id}")
}

fn copy_key(id: &str, number: u8) -> String {
    format!("outshot-copy-{number}-{id}")
}

/// Whether there is any storage: asking for it where there is none would stop the app.
fn there_is_storage() -> bool {
    web_sys::window().is_some_and(|window| matches!(window.local_storage(), Ok(Some(_))))
}

fn read<T: Kept>(key: &str) -> Option<T> {
    T::of_json(&read_json(key)?)
}

fn read_json(key: &str) -> Option<Value> {
    if there_is_storage() { LocalStorage::get(key).ok() } else { None }
}

fn write(key: &str, value: &impl Kept) -> Result<(), Trouble> {
    write_json(key, &value.to_json())
}

fn write_json(key: &str, json: &Value) -> Result<(), Trouble> {
    if !there_is_storage() {
        return Err(Trouble::NoStorage);
    }
    LocalStorage::set(key, json).map_err(|error| match error {
        StorageError::JsError(error) if error.name.contains("Quota") => Trouble::Full,
        other => Trouble::Other(other.to_string()),
    })
}

/// The list of projects, latest first.
#[must_use]
pub fn index() -> Vec<Entry> {
    let mut entries: Vec<Entry> = read(INDEX).unwrap_or_else(rebuilt_index);
    entries.retain(|entry| is_id(&entry.id));
    crate::units::sort_by_number(&mut entries, |entry| -entry.saved);
    entries
}

/// The index made again from the records, where it is gone or damaged.
fn rebuilt_index() -> Vec<Entry> {
    if !there_is_storage() {
        return Vec::new();
    }
    let storage = LocalStorage::raw();
    let n_keys = storage.length().unwrap_or(0);
    let ids = (0..n_keys)
        .filter_map(|number| storage.key(number).ok().flatten())
        .filter_map(|key| key.strip_prefix("outshot-project-").map(str::to_owned));
    ids.filter(|id| is_id(id))
        .filter_map(|id| {
            let record: Record = read(&record_key(&id))?;
            let name = crate::project::file::read(&record.text).map_or_else(|_| id.clone(), |project| project.name);
            Some(Entry { id, name, saved: record.saved })
        })
        .collect()
}

/// The record of that project.
#[must_use]
pub fn record(id: &str) -> Option<Record> {
    read(&record_key(id))
}

/// Older good copies of that project, latest first.
#[must_use]
pub fn copies(id: &str) -> Vec<Record> {
    [1, 2].into_iter().filter_map(|number| read(&copy_key(id, number))).collect()
}

/// Saves a state over revision `known`; answers the new revision.
///
/// # Errors
/// Why it was not kept; what was kept before stays.
pub fn save(id: &str, name: &str, text: &str, known: u64, now: f64) -> Result<u64, Trouble> {
    let before = record(id);
    if let Some(before) = &before
        && before.revision > known
    {
        return Err(Trouble::Newer(before.revision));
    }
    if let Some(before) = &before {
        keep_copy(id, before);
    }
    let revision = known + 1;
    let next = Record { revision, saved: now, text: text.to_owned() };
    write(&record_key(id), &next)?;
    if record(id).as_ref() != Some(&next) {
        return Err(Trouble::NotKept);
    }
    let mut entries = index();
    entries.retain(|entry| entry.id != id);
    entries.push(Entry { id: id.to_owned(), name: name.to_owned(), saved: now });
    write(INDEX, &entries)?;
    Ok(revision)
}

/// Moves a good state into the ring when the newest copy has some age. A full device goes without.
fn keep_copy(id: &str, good: &Record) {
    let newest: Option<Record> = read(&copy_key(id, 1));
    if newest.as_ref().is_some_and(|newest| good.saved - newest.saved < COPY_AGE) {
        return;
    }
    if let Some(newest) = newest {
        let _ = write(&copy_key(id, 2), &newest);
    }
    let _ = write(&copy_key(id, 1), good);
}

/// Puts a record that cannot be read under another key, and answers that key.
///
/// # Errors
/// Why it could not be set aside; then it stays where it is.
pub fn set_aside(id: &str, now: f64) -> Result<String, Trouble> {
    let aside = format!("outshot-damaged-{id}-{now:.0}");
    if !there_is_storage() {
        return Err(Trouble::NoStorage);
    }
    let storage = LocalStorage::raw();
    let raw = storage.get_item(&record_key(id)).ok().flatten().unwrap_or_default();
    storage.set_item(&aside, &raw).map_err(|_| Trouble::Full)?;
    LocalStorage::delete(record_key(id));
    Ok(aside)
}

/// Takes a project off the list; the last one taken off can be brought back.
///
/// # Errors
/// Why it could not be put away; then nothing is removed.
pub fn remove(id: &str) -> Result<(), Trouble> {
    let mut entries = index();
    if let (Some(entry), Some(record)) = (entries.iter().find(|entry| entry.id == id).cloned(), record(id)) {
        let before = removed();
        write(REMOVED, &Removed { entry, record })?;
        // Named states can come back as long as their project can.
        if let Some(before) = before.filter(|before| before.entry.id != id) {
            named::forget(&before.entry.id);
        }
    }
    entries.retain(|entry| entry.id != id);
    write(INDEX, &entries)?;
    for key in [record_key(id), copy_key(id, 1), copy_key(id, 2)] {
        LocalStorage::delete(key);
    }
    Ok(())
}

/// The project that was taken off last.
#[must_use]
pub fn removed() -> Option<Removed> {
    read(REMOVED)
}

/// Brings it back.
///
/// # Errors
/// Why it could not be written.
pub fn bring_back() -> Result<(), Trouble> {
    let Some(removed) = removed() else { return Ok(()) };
    write(&record_key(&removed.entry.id), &removed.record)?;
    let mut entries = index();
    entries.retain(|entry| entry.id != removed.entry.id);
    entries.push(removed.entry);
    write(INDEX, &entries)?;
    LocalStorage::delete(REMOVED);
    Ok(())
}

/// The settings; what is missing or damaged is as at first.
#[must_use]
pub fn settings() -> Settings {
    read(SETTINGS).unwrap_or_default()
}

/// Keeps the settings. Losing them costs a tap, so trouble is not reported.
pub fn keep_settings(change: impl FnOnce(&mut Settings)) {
    let mut settings = settings();
    change(&mut settings);
    let _ = write(SETTINGS, &settings);
}

/// The id whose record a key holds.
#[must_use]
pub fn id_of_key(key: &str) -> Option<&str> {
    key.strip_prefix("outshot-project-").filter(|id| is_id(id))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ids_are_safe_in_keys() {
        assert!(is_id("lean-to-1"));
        for bad in ["", "Lean", "a b", "../x", "ä", &"x".repeat(LONGEST_ID + 1)] {
            assert!(!is_id(bad), "{bad}");
        }
        assert_eq!(id_of_key("outshot-project-abc"), Some("abc"));
        assert_eq!(id_of_key("outshot-copy-1-abc"), None);
    }
}

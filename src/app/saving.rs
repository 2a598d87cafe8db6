//! Saves the open project soon after each change, at once when the page is hidden, and says loudly when it can't.
use super::clock;
use super::storage::{self, Trouble};
use super::store::Store;
use crate::project::{Project, demo, file};
use crate::units::UnitSystem;
use leptos::ev;
use leptos::leptos_dom::helpers::TimeoutHandle;
use leptos::prelude::*;
use std::time::Duration;

/// Quiet time after a change before it is saved.
const QUIET: Duration = Duration::from_millis(300);

/// Whether the work is safe.
#[derive(Clone, Debug, PartialEq)]
pub enum SaveState {
    /// Nothing is waiting.
    Saved,
    /// A change is waiting to be saved.
    Waiting,
    /// The last change is only in memory.
    NotSaved(String),
    /// Another window saved a later state; nothing is written until the user has chosen.
    Conflict,
}

/// Keeps the open project.
#[derive(Clone, Copy)]
pub struct Saving {
    store: Store,
    /// Whether the work is safe.
    pub state: RwSignal<SaveState>,
    /// Something the user should know: a record set aside, a file opened.
    pub notice: RwSignal<Option<String>>,
    /// Counts changes of the list of projects.
    pub list: RwSignal<u64>,
    revision: StoredValue<u64>,
    timer: StoredValue<Option<TimeoutHandle>>,
    asked_to_persist: StoredValue<bool>,
}

/// The saving of the app.
#[must_use]
pub fn use_saving() -> Saving {
    expect_context::<Saving>()
}

impl Saving {
    /// Follows the store from now on.
    #[must_use]
    pub fn start(store: Store) -> Self {
        let saving = Self {
            store,
            state: RwSignal::new(SaveState::Saved),
            notice: RwSignal::new(None),
            list: RwSignal::new(0),
            revision: StoredValue::new(0),
            timer: StoredValue::new(None),
            asked_to_persist: StoredValue::new(false),
        };
        // Not at once: saving on start would write over what another tab has saved meanwhile.
        Effect::watch(move || store.edits(), move |_, _, _| saving.wait(), false);
        let _ = window_event_listener(ev::visibilitychange, move |_| saving.save_if_hidden());
        let _ = window_event_listener(ev::pagehide, move |_| saving.save_waiting());
        let _ = window_event_listener(ev::storage, move |event| saving.another_tab(&event));
        saving
    }

    fn wait(self) {
        if self.state.get_untracked() == SaveState::Conflict {
            return;
        }
        self.state.set(SaveState::Waiting);
        self.stop_timer();
        self.timer.set_value(set_timeout_with_handle(move || self.save_now(), QUIET).ok());
    }

    fn stop_timer(self) {
        if let Some(Some(handle)) = self.timer.try_update_value(Option::take) {
            handle.clear();
        }
    }

    fn save_if_hidden(self) {
        if document().hidden() {
            self.save_waiting();
        }
    }

    /// Saves what waits.
    pub fn save_waiting(self) {
        if matches!(self.state.get_untracked(), SaveState::Waiting | SaveState::NotSaved(_)) {
            self.save_now();
        }
    }

    /// Saves the open project.
    pub fn save_now(self) {
        self.stop_timer();
        let Some(id) = untrack(|| self.store.id()) else { return };
        let project = self.store.project_untracked();
        let text = file::write(&project);
        match storage::save(&id, &project.name, &text, self.revision.get_value(), clock::now()) {
            Ok(revision) => {
                self.revision.set_value(revision);
                self.state.set(SaveState::Saved);
                self.list.update(|list| *list += 1);
                self.ask_to_persist();
            }
            Err(Trouble::Newer(_)) => self.state.set(SaveState::Conflict),
            Err(trouble) => self.state.set(SaveState::NotSaved(trouble.to_string())),
        }
    }

    /// Asks the browser once not to clear the data when room runs short.
    fn ask_to_persist(self) {
        if !self.asked_to_persist.get_value() {
            self.asked_to_persist.set_value(true);
            super::device::ask_to_persist();
        }
    }

    fn another_tab(self, event: &web_sys::StorageEvent) {
        self.list.update(|list| *list += 1);
        let id = untrack(|| self.store.id());
        let is_ours = event.key().is_some_and(|key| storage::id_of_key(&key) == id.as_deref() && id.is_some());
        let Some(id) = id.filter(|_| is_ours) else { return };
        if storage::record(&id).is_some_and(|record| record.revision > self.revision.get_value()) {
            self.stop_timer();
            self.state.set(SaveState::Conflict);
        }
    }

    /// Opens the project of that id from this device; a damaged record is set aside and said.
    pub fn open(self, id: &str) {
        self.save_waiting();
        let read = storage::record(id).map(|record| (record.revision, file::read(&record.text)));
        match read {
            Some((revision, Ok(project))) => self.show(id, revision, project),
            Some((_, Err(file::FileError::Newer(version)))) => {
                self.notice.set(Some(file::FileError::Newer(version).to_string()));
            }
            damaged => self.recover(id, damaged.and_then(|(_, read)| read.err()).map(|why| why.to_string())),
        }
    }

    fn show(self, id: &str, revision: u64, project: Project) {
        self.revision.set_value(revision);
        self.state.set(SaveState::Saved);
        storage::keep_settings(|settings| settings.last = Some(id.to_owned()));
        self.store.open(id, project);
    }

    /// The newest good copy instead of a damaged record, which is kept under another key.
    fn recover(self, id: &str, why: Option<String>) {
        let why = why.unwrap_or_else(|| "Its record is damaged.".to_owned());
        let aside = match storage::set_aside(id, clock::now()) {
            Ok(key) => format!("It was set aside whole as “{key}”."),
            Err(trouble) => format!("It could not be set aside: {trouble}."),
        };
        let named = storage::named::named(id).into_iter();
        let named = named.map(|state| storage::Record { revision: 0, saved: state.kept, text: state.text });
        let copy = storage::copies(id).into_iter().chain(named).find_map(|copy| {
            let project = file::read(&copy.text).ok()?;
            Some((copy, project))
        });
        match copy {
            Some((copy, project)) => {
                let when = clock::show(copy.saved);
                self.notice.set(Some(format!(
                    "This project could not be read. {why} {aside} Shown is the good copy of {when}."
                )));
                self.show(id, copy.revision, project);
            }
            None => {
                self.notice
                    .set(Some(format!("This project could not be read. {why} {aside} There is no older copy of it.")));
                let _ = storage::remove(id);
                self.list.update(|list| *list += 1);
            }
        }
    }

    /// Makes a project a new record and opens it.
    pub fn create(self, project: Project) {
        self.save_waiting();
        let id = new_id(&project.name);
        self.revision.set_value(0);
        self.store.open(&id, project);
        storage::keep_settings(|settings| settings.last = Some(id.clone()));
        self.save_now();
    }

    /// An empty project in those units.
    pub fn create_empty(self, units: UnitSystem) {
        self.create(demo::empty(units));
    }

    /// In a conflict: the later state of the other window.
    pub fn load_theirs(self) {
        if let Some(id) = untrack(|| self.store.id()) {
            self.state.set(SaveState::Saved);
            self.open(&id);
        }
    }

    /// In a conflict: the state of this window goes on as a project of its own.
    pub fn keep_mine(self) {
        let mut project = (*self.store.project_untracked()).clone();
        project.name = format!("{} (this window’s copy)", project.name);
        self.state.set(SaveState::Saved);
        self.create(project);
    }

    /// Copies a project on the list.
    pub fn copy(self, id: &str) {
        self.save_waiting();
        match storage::record(id).map(|record| file::read(&record.text)) {
            Some(Ok(mut project)) => {
                project.name = format!("{} (copy)", project.name);
                self.create(project);
            }
            _ => self.notice.set(Some("This project could not be read, so it was not copied.".to_owned())),
        }
    }

    /// Takes a project off the list.
    pub fn remove(self, id: &str) {
        self.save_waiting();
        match storage::remove(id) {
            Ok(()) => {
                if untrack(|| self.store.id()).as_deref() == Some(id) {
                    self.store.close();
                }
            }
            Err(trouble) => self.notice.set(Some(format!("Not taken off the list: {trouble}."))),
        }
        self.list.update(|list| *list += 1);
    }

    /// Brings back the project that was taken off last.
    pub fn bring_back(self) {
        if let Err(trouble) = storage::bring_back() {
            self.notice.set(Some(format!("Not brought back: {trouble}.")));
        }
        self.list.update(|list| *list += 1);
    }

    /// At the start: the project that was open last, unless the last start stopped the app.
    pub fn open_last(self) {
        if super::device::stopped_last_time() {
            self.notice.set(Some("The app stopped last time, so no project was opened by itself.".to_owned()));
            return;
        }
        let last = storage::settings().last;
        let last = last.filter(|last| storage::index().iter().any(|entry| entry.id == *last));
        if let Some(id) = last {
            self.open(&id);
        }
    }
}

/// An id from the name and the time.
fn new_id(name: &str) -> String {
    let word: String = name.to_ascii_lowercase().chars().filter(char::is_ascii_alphanumeric).take(16).collect();
    let word = if word.is_empty() { "leanto".to_owned() } else { word };
    format!("{word}-{:.0}", clock::now())
}

//! The states that undo and redo go back and forth between.
use crate::project::Project;
use std::sync::Arc;

/// States kept; the oldest goes first.
const MOST: usize = 200;
/// Edits of one field closer together than this are one step, in milliseconds.
const ONE_BREATH: f64 = 800.0;

/// Undo and redo.
#[derive(Default)]
pub struct History {
    undo: Vec<Arc<Project>>,
    redo: Vec<Arc<Project>>,
    last: Option<(String, f64)>,
    /// Something is held and moved: however slowly, it is one step.
    held: bool,
}

impl History {
    /// Remembers the state before an edit. Answers whether a step was made: an edit of the same field
    /// in the same breath belongs to the step before.
    pub fn push(&mut self, before: Arc<Project>, field: Option<&str>, now: f64) -> bool {
        let same = match (&self.last, field) {
            (Some((last, at)), Some(field)) => {
                last == field && (self.held || now - at < ONE_BREATH) && !self.undo.is_empty()
            }
            _ => false,
        };
        self.last = field.map(|field| (field.to_owned(), now));
        self.redo.clear();
        if same {
            return false;
        }
        if self.undo.len() == MOST {
            self.undo.remove(0);
        }
        self.undo.push(before);
        true
    }

    /// From now on edits of one field are one step, until it is let go.
    pub fn hold(&mut self) {
        self.last = None;
        self.held = true;
    }

    /// The end of what was held; a step that led back to where it began is none.
    pub fn let_go(&mut self, present: &Arc<Project>) {
        self.held = false;
        if self.last.take().is_some() && self.undo.last() == Some(present) {
            self.undo.pop();
        }
    }

    /// One step back from `present`.
    pub fn back(&mut self, present: Arc<Project>) -> Option<Arc<Project>> {
        let state = self.undo.pop()?;
        self.redo.push(present);
        self.last = None;
        Some(state)
    }

    /// One step forth from `present`.
    pub fn forth(&mut self, present: Arc<Project>) -> Option<Arc<Project>> {
        let state = self.redo.pop()?;
        self.undo.push(present);
        self.last = None;
        Some(state)
    }

    /// How many steps there are to go back, and forth.
    #[must_use]
    pub fn depth(&self) -> (usize, usize) {
        (self.undo.len(), self.redo.len())
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::project::demo;

    fn named(name: &str) -> Arc<Project> {
        let mut project = demo::wool_barn();
        project.name = name.to_owned();
        Arc::new(project)
    }

    #[test]
    fn back_and_forth_meet_again() {
        let mut history = History::default();
        assert!(history.push(named("a"), None, 0.0));
        assert!(history.push(named("b"), None, 10.0));
        assert_eq!(history.back(named("c")).unwrap().name, "b");
        assert_eq!(history.back(named("b")).unwrap().name, "a");
        assert!(history.back(named("a")).is_none());
        assert_eq!(history.forth(named("a")).unwrap().name, "b");
        assert_eq!(history.forth(named("b")).unwrap().name, "c");
        assert_eq!(history.depth(), (2, 0));
    }

    #[test]
    fn one_field_in_one_breath_is_one_step() {
        let mut history = History::default();
        assert!(history.push(named("a"), Some("frame.reach"), 0.0));
        assert!(!history.push(named("b"), Some("frame.reach"), 700.0));
        assert!(!history.push(named("c"), Some("frame.reach"), 1400.0));
        assert!(history.push(named("d"), Some("frame.tail"), 1500.0));
        assert!(history.push(named("e"), Some("frame.tail"), 9000.0));
        assert_eq!(history.depth(), (3, 0));
    }

    #[test]
    fn what_is_held_is_one_step_and_none_where_it_ends_as_it_began() {
        let mut history = History::default();
        history.push(named("a"), Some("frame.posts.1.x"), 0.0);
        history.hold();
        assert!(history.push(named("b"), Some("frame.posts.1.x"), 100.0), "the step before is another");
        assert!(!history.push(named("c"), Some("frame.posts.1.x"), 60_000.0));
        history.let_go(&named("d"));
        assert_eq!(history.depth(), (2, 0));
        assert!(history.push(named("d"), Some("frame.posts.1.x"), 60_001.0), "let go, it is a step of its own");
        history.hold();
        history.push(named("e"), Some("frame.posts.1.x"), 70_000.0);
        history.let_go(&named("e"));
        assert_eq!(history.depth(), (3, 0));
        history.hold();
        history.let_go(&named("e"));
        assert_eq!(history.depth(), (3, 0), "nothing moved");
    }

    #[test]
    fn the_oldest_state_goes_first() {
        let mut history = History::default();
        for n in 0..=MOST {
            history.push(named(&n.to_string()), None, 0.0);
        }
        assert_eq!(history.depth(), (MOST, 0));
        let mut oldest = None;
        while let Some(state) = history.back(named("x")) {
            oldest = Some(state.name.clone());
        }
        assert_eq!(oldest.unwrap(), "1");
    }
}

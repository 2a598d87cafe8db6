//! What a typed field needs to know, whatever it holds.
use crate::app::Lens;
use crate::project::{Nearest, Project};
use crate::units::UnitSystem;
use std::sync::Arc;

/// A change that waits to be made.
pub type Change = Box<dyn FnOnce(&mut Project)>;

type Print = Arc<dyn Fn(&Project) -> Option<String> + Send + Sync>;
type Parse = Arc<dyn Fn(&str, UnitSystem) -> Result<Change, String> + Send + Sync>;
type Step = Arc<dyn Fn(&mut Project, f64) + Send + Sync>;
type Take = Arc<dyn Fn(Nearest) -> Option<Change> + Send + Sync>;

/// One typed field with its kind rubbed off, so that all fields share one component.
#[derive(Clone)]
pub struct Entry {
    /// Path of the field.
    pub path: Arc<str>,
    /// The value as it stands in the field.
    pub print: Print,
    /// The value in words beside the field; empty for none.
    pub reading: Print,
    /// What a typed text does, or the sentence that refuses it.
    pub parse: Parse,
    /// What the nearest value that works does.
    pub take: Take,
    /// What one step of that size in inches, millimetres or pieces does.
    pub step: Step,
    /// What an empty field says, where nothing may be typed.
    pub empty: &'static str,
}

impl Entry {
    /// An entry over a field: how it is printed and parsed.
    pub fn new<T: Clone + 'static>(
        lens: &Lens<T>,
        print: impl Fn(T, UnitSystem) -> String + Send + Sync + 'static,
        parse: impl Fn(&str, UnitSystem) -> Result<T, String> + Send + Sync + 'static,
    ) -> Self {
        let (shown, set) = (lens.clone(), lens.clone());
        Self {
            path: lens.path(),
            print: Arc::new(move |project| shown.get(project).map(|value| print(value, project.units))),
            reading: Arc::new(|_| None),
            parse: Arc::new(move |text, units| {
                let value = parse(text, units)?;
                Ok(put(&set, value))
            }),
            take: Arc::new(|_| None),
            step: Arc::new(|_, _| ()),
            empty: "",
        }
    }

    /// May be left empty, and says then what that means.
    #[must_use]
    pub const fn may_be_empty(mut self, means: &'static str) -> Self {
        self.empty = means;
        self
    }

    /// With a reading beside the field.
    #[must_use]
    pub fn reading(mut self, reading: impl Fn(&Project) -> Option<String> + Send + Sync + 'static) -> Self {
        self.reading = Arc::new(reading);
        self
    }

    /// With the nearest value that works, where it is of this field's kind.
    #[must_use]
    pub fn take<T: 'static>(
        mut self,
        lens: &Lens<T>,
        value: impl Fn(Nearest) -> Option<T> + Send + Sync + 'static,
    ) -> Self {
        let lens = lens.clone();
        self.take = Arc::new(move |nearest| value(nearest).map(|value| put(&lens, value)));
        self
    }

    /// With steps.
    #[must_use]
    pub fn step<T: Clone + 'static>(
        mut self,
        lens: &Lens<T>,
        next: impl Fn(T, f64, UnitSystem) -> T + Send + Sync + 'static,
    ) -> Self {
        let lens = lens.clone();
        self.step = Arc::new(move |project, step| {
            if let Some(value) = lens.get(project) {
                let units = project.units;
                lens.set(project, next(value, step, units));
            }
        });
        self
    }
}

/// The change that puts a value in.
fn put<T: 'static>(lens: &Lens<T>, value: T) -> Change {
    let lens = lens.clone();
    Box::new(move |project| lens.set(project, value))
}

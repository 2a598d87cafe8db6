//! A way to one field of the project: where it is, how it is read, how it is set.
use crate::project::Project;
use std::sync::Arc;

type Get<T> = Arc<dyn Fn(&Project) -> Option<T> + Send + Sync>;
type Set<T> = Arc<dyn Fn(&mut Project, T) + Send + Sync>;

/// One field of the project. The path is the field's name in the file, the id of its input and the place of its problems.
pub struct Lens<T: 'static> {
    path: Arc<str>,
    get: Get<T>,
    set: Set<T>,
}

impl<T> Clone for Lens<T> {
    fn clone(&self) -> Self {
        Self { path: self.path.clone(), get: self.get.clone(), set: self.set.clone() }
    }
}

impl<T: 'static> Lens<T> {
    /// A field that may be gone, like one of a post that was taken away.
    pub fn maybe(
        path: impl Into<Arc<str>>,
        get: impl Fn(&Project) -> Option<T> + Send + Sync + 'static,
        set: impl Fn(&mut Project, T) + Send + Sync + 'static,
    ) -> Self {
        Self { path: path.into(), get: Arc::new(get), set: Arc::new(set) }
    }

    /// A field that is always there.
    pub fn new(
        path: impl Into<Arc<str>>,
        get: impl Fn(&Project) -> T + Send + Sync + 'static,
        set: impl Fn(&mut Project, T) + Send + Sync + 'static,
    ) -> Self {
        Self::maybe(path, move |project| Some(get(project)), set)
    }

    /// The field's path: `frame.posts.2.x`.
    #[must_use]
    pub fn path(&self) -> Arc<str> {
        self.path.clone()
    }

    /// The value, where the field is there.
    #[must_use]
    pub fn get(&self, project: &Project) -> Option<T> {
        (self.get)(project)
    }

    /// Puts a value in.
    pub fn set(&self, project: &mut Project, value: T) {
        (self.set)(project, value);
    }
}

/// `lens!(frame.reach)`: the field of that path. Its type must be `Clone`.
#[macro_export]
macro_rules! lens {
    ($first:ident $(.$rest:ident)*) => {
        $crate::app::Lens::new(
            concat!(stringify!($first) $(, ".", stringify!($rest))*),
            |project: &$crate::project::Project| project.$first$(.$rest)*.clone(),
            |project: &mut $crate::project::Project, value| project.$first$(.$rest)* = value,
        )
    };
}

//! Long work in slices, so that whoever shows it can paint, count and stop between two of them.

/// How far it has come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Progress {
    /// Slices done.
    pub done: usize,
    /// Slices in all, as far as is known now.
    pub of: usize,
}

impl Progress {
    /// Nothing is left to do.
    #[must_use]
    pub const fn is_done(self) -> bool {
        self.done >= self.of
    }
}

/// Work that is done slice by slice.
pub trait Stepper {
    /// Does one slice, about one whole answer to a project; nothing where all is done.
    fn next_step(&mut self) -> Progress;
}

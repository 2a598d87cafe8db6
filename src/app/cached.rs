//! What follows from signals, kept until it comes out differently.
//!
//! Every type that Leptos keeps brings its own copy of the whole machine to the phone. Here one machine keeps them all,
//! and only reading knows the type.
use leptos::prelude::*;
use std::any::Any;
use std::marker::PhantomData;
use std::sync::Arc;

type Anything = Arc<dyn Any + Send + Sync>;

/// A value of any type that can be compared with another of its type.
#[derive(Clone)]
struct Erased {
    value: Anything,
    same: fn(&Anything, &Anything) -> bool,
}

impl PartialEq for Erased {
    fn eq(&self, other: &Self) -> bool {
        (self.same)(&self.value, &other.value)
    }
}

/// A value that follows from signals: reckoned when it is first read, and again when what it read has changed; its readers
/// hear of it only when it comes out differently.
pub struct Cached<T>(Memo<Erased>, PhantomData<fn() -> T>);

impl<T> Clone for Cached<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Cached<T> {}

impl<T: PartialEq + Send + Sync + 'static> Cached<T> {
    /// Reckoned so.
    pub fn new(reckon: impl Fn() -> T + Send + Sync + 'static) -> Self {
        let same = |one: &Anything, other: &Anything| one.downcast_ref::<T>() == other.downcast_ref::<T>();
        Self(machine(Box::new(move || Erased { value: Arc::new(reckon()), same })), PhantomData)
    }

    /// Reads it (tracked).
    pub fn with<U>(self, read: impl FnOnce(&T) -> U) -> U {
        of(&self.0.get(), read)
    }

    /// Reads it without following it.
    pub fn with_untracked<U>(self, read: impl FnOnce(&T) -> U) -> U {
        of(&self.0.get_untracked(), read)
    }

    /// A copy of it (tracked).
    pub fn get(self) -> T
    where
        T: Clone,
    {
        self.with(T::clone)
    }

    /// A copy of it, without following it.
    pub fn get_untracked(self) -> T
    where
        T: Clone,
    {
        self.with_untracked(T::clone)
    }
}

impl From<Cached<String>> for Signal<String> {
    fn from(text: Cached<String>) -> Self {
        text_of(move || text.get())
    }
}

/// A text that follows from signals, reckoned whenever it is read.
pub fn text_of(says: impl Fn() -> String + Send + Sync + 'static) -> Signal<String> {
    derived(Box::new(says))
}

#[inline(never)]
fn derived(says: Box<dyn Fn() -> String + Send + Sync>) -> Signal<String> {
    Signal::derive(says)
}

#[inline(never)]
fn machine(reckon: Box<dyn Fn() -> Erased + Send + Sync>) -> Memo<Erased> {
    Memo::new(move |_| reckon())
}

fn of<T: 'static, U>(erased: &Erased, read: impl FnOnce(&T) -> U) -> U {
    match erased.value.downcast_ref() {
        Some(value) => read(value),
        None => unreachable!("made and read as the same type"),
    }
}

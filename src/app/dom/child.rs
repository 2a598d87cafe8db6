//! What can stand in an element.
use super::{Tag, live};
use leptos::prelude::*;

/// Something that can stand in an element. The element is handed through by value: that is the least code.
pub trait Child {
    /// Puts it in, after what is there.
    fn put(self, into: Tag) -> Tag;
}

impl Child for Tag {
    #[inline(never)]
    fn put(self, into: Tag) -> Tag {
        let _ = into.node().append_child(self.node());
        into
    }
}

impl Child for &str {
    #[inline(never)]
    fn put(self, into: Tag) -> Tag {
        let _ = into.node().append_child(&document().create_text_node(self));
        into
    }
}

impl Child for String {
    #[inline(never)]
    fn put(self, into: Tag) -> Tag {
        self.as_str().put(into)
    }
}

impl Child for usize {
    fn put(self, into: Tag) -> Tag {
        self.to_string().put(into)
    }
}

/// Nothing.
impl Child for () {
    fn put(self, into: Tag) -> Tag {
        into
    }
}

impl<C: Child> Child for Option<C> {
    fn put(self, into: Tag) -> Tag {
        match self {
            Some(child) => child.put(into),
            None => into,
        }
    }
}

impl<C: Child> Child for Vec<C> {
    fn put(self, into: Tag) -> Tag {
        self.into_iter().fold(into, |into, child| child.put(into))
    }
}

impl<C: Child, const N: usize> Child for [C; N] {
    fn put(self, into: Tag) -> Tag {
        self.into_iter().fold(into, |into, child| child.put(into))
    }
}

/// A text that is followed.
impl Child for Signal<String> {
    #[inline(never)]
    fn put(self, into: Tag) -> Tag {
        live::text(into, Box::new(move || self.get()))
    }
}

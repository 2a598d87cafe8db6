//! What an attribute can hold.
use super::{Tag, live};
use leptos::prelude::*;
use std::borrow::Cow;

/// A value of an attribute.
pub trait Value {
    /// Its text; nothing where the attribute is left out.
    fn text(self) -> Option<Cow<'static, str>>;
}

impl Value for &'static str {
    fn text(self) -> Option<Cow<'static, str>> {
        Some(Cow::Borrowed(self))
    }
}

impl Value for String {
    fn text(self) -> Option<Cow<'static, str>> {
        Some(Cow::Owned(self))
    }
}

/// There without a text, or not there.
impl Value for bool {
    fn text(self) -> Option<Cow<'static, str>> {
        self.then_some(Cow::Borrowed(""))
    }
}

impl<V: Value> Value for Option<V> {
    fn text(self) -> Option<Cow<'static, str>> {
        self.and_then(Value::text)
    }
}

/// A value that stays, or a signal.
pub trait Attribute {
    /// Puts it on the element.
    fn put(self, tag: Tag, name: &'static str) -> Tag;
}

/// The usual case has a way of its own, which takes the least code.
impl Attribute for &'static str {
    #[inline(never)]
    fn put(self, tag: Tag, name: &'static str) -> Tag {
        set(&tag, name, Some(self));
        tag
    }
}

impl Attribute for String {
    #[inline(never)]
    fn put(self, tag: Tag, name: &'static str) -> Tag {
        set(&tag, name, Some(&self));
        tag
    }
}

impl Attribute for bool {
    #[inline(never)]
    fn put(self, tag: Tag, name: &'static str) -> Tag {
        set(&tag, name, self.then_some(""));
        tag
    }
}

impl Attribute for Option<&'static str> {
    fn put(self, tag: Tag, name: &'static str) -> Tag {
        set(&tag, name, self);
        tag
    }
}

impl Attribute for Signal<String> {
    #[inline(never)]
    fn put(self, tag: Tag, name: &'static str) -> Tag {
        live::attribute(tag, name, Box::new(move || Some(Cow::Owned(self.get()))))
    }
}

/// Sets the attribute, or takes it away.
#[inline(never)]
pub fn set(tag: &Tag, name: &str, value: Option<&str>) {
    let element = tag.element();
    let _ = match value {
        Some(value) => element.set_attribute(name, value),
        None => element.remove_attribute(name),
    };
}

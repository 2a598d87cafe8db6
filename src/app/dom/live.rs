//! What follows signals: attributes, texts, and parts that are made anew.
use super::awake::only_awake;
use super::redraw::redraw;
use super::{Tag, parts, value};
use crate::app::cached::Cached;
use leptos::prelude::*;
use std::borrow::Cow;
use wasm_bindgen::prelude::*;
use web_sys::{HtmlElement, Node};

/// Puts the parts of a region into the room it is given.
pub type Fill = Box<dyn FnMut(Tag) -> Tag>;

/// Does it now and whenever something changes that it reads, as long as the owner lives and is awake.
#[inline(never)]
pub fn follow(act: Box<dyn FnMut()>) {
    let mut act = only_awake(act);
    let effect = RenderEffect::new(move |_| act());
    // Kept by the owner: an effect ends when it is dropped.
    let _ = StoredValue::new_local(effect);
}

#[inline(never)]
pub fn attribute(tag: Tag, name: &'static str, value: Box<dyn Fn() -> Option<Cow<'static, str>>>) -> Tag {
    let whole = tag.clone();
    let mut last = None;
    follow(Box::new(move || {
        let next = value();
        if last.as_ref() != Some(&next) {
            value::set(&tag, name, next.as_deref());
            last = Some(next);
        }
    }));
    whole
}

#[inline(never)]
pub fn class(tag: Tag, name: &'static str, is_on: Box<dyn Fn() -> bool>) -> Tag {
    let classes = tag.element().class_list();
    follow(Box::new(move || {
        let _ = classes.toggle_with_force(name, is_on());
    }));
    tag
}

#[inline(never)]
pub fn property(tag: Tag, name: &'static str, value: Box<dyn Fn() -> JsValue>) -> Tag {
    let whole = tag.clone();
    follow(Box::new(move || {
        let _ = js_sys::Reflect::set(tag.node(), &name.into(), &value());
    }));
    whole
}

#[inline(never)]
pub fn text(tag: Tag, text: Box<dyn Fn() -> String>) -> Tag {
    let node = document().create_text_node("");
    let _ = tag.node().append_child(&node);
    let mut last = String::new();
    follow(Box::new(move || {
        let next = text();
        if next != last {
            node.set_data(&next);
            last = next;
        }
    }));
    tag
}

/// A stretch of the element, between two marks, that is filled anew on every change.
#[inline(never)]
pub fn region(tag: Tag, mut fill: Fill) -> Tag {
    let (first, last) = (mark(&tag), mark(&tag));
    follow(Box::new(move || {
        let room = fill(parts());
        let focused = focused_between(&first, &last);
        empty(&first, &last);
        insert(room.node(), &last);
        if let Some(id) = focused {
            focus_again(&id);
        }
    }));
    tag
}

/// Markup that is written anew on every change.
#[inline(never)]
pub fn html(tag: Tag, html: Box<dyn Fn() -> String>) -> Tag {
    let whole = tag.clone();
    follow(Box::new(move || tag.element().set_inner_html(&html())));
    whole
}

/// A drawing of which only what differs is written anew on a change.
#[inline(never)]
pub fn drawing(tag: Tag, drawing: Box<dyn Fn() -> String>) -> Tag {
    let whole = tag.clone();
    let mut last = String::new();
    follow(Box::new(move || {
        let next = drawing();
        redraw(tag.element(), &last, &next);
        last = next;
    }));
    whole
}

/// Fills while it is so, and only when that changes.
pub fn shown(when: Box<dyn Fn() -> bool + Send + Sync>, mut fill: Fill) -> Fill {
    let is_shown = Cached::new(when);
    Box::new(move |room| if is_shown.get() { fill(room) } else { room })
}

/// An empty comment: a place in the page that nobody sees.
pub fn mark(tag: &Tag) -> Node {
    let mark: Node = document().create_comment("").into();
    let _ = tag.node().append_child(&mark);
    mark
}

pub fn insert(node: &Node, before: &Node) {
    if let Some(parent) = before.parent_node() {
        let _ = parent.insert_before(node, Some(before));
    }
}

pub fn remove(node: &Node) {
    if let Some(parent) = node.parent_node() {
        let _ = parent.remove_child(node);
    }
}

fn empty(first: &Node, last: &Node) {
    while let Some(node) = first.next_sibling().filter(|node| node != last) {
        remove(&node);
    }
}

/// Id of the element between the marks that has the focus.
fn focused_between(first: &Node, last: &Node) -> Option<String> {
    let active = document().active_element()?;
    let mut node = first.next_sibling();
    while let Some(one) = node.filter(|node| node != last) {
        if one.contains(Some(&active)) {
            return Some(active.id()).filter(|id| !id.is_empty());
        }
        node = one.next_sibling();
    }
    None
}

fn focus_again(id: &str) {
    if let Some(element) = document().get_element_by_id(id) {
        let _ = element.unchecked_into::<HtmlElement>().focus();
    }
}

//! Lists whose items keep their elements, with all that stands open or has the focus in them.
use super::{Tag, live};
use leptos::prelude::*;

/// One item of a list: what tells it from the others, and how it is made.
pub struct Item {
    key: String,
    make: Box<dyn FnOnce() -> Tag>,
}

impl Item {
    /// An item. While its key stays in the list its element stays in the page.
    pub fn new(key: impl Into<String>, make: impl FnOnce() -> Tag + 'static) -> Self {
        Self { key: key.into(), make: Box::new(make) }
    }
}

/// An item in the page.
struct Shown {
    key: String,
    tag: Tag,
    /// Its effects live under it, not under the list's last run.
    owner: Owner,
}

impl Tag {
    /// With a list that follows what the closure reads.
    pub fn each(self, items: impl Fn() -> Vec<Item> + 'static) -> Self {
        put(self, Box::new(items))
    }
}

#[inline(never)]
fn put(tag: Tag, items: Box<dyn Fn() -> Vec<Item>>) -> Tag {
    let end = live::mark(&tag);
    let owner = Owner::current().unwrap_or_default();
    let mut shown: Vec<Shown> = Vec::new();
    live::follow(Box::new(move || {
        let mut before = std::mem::take(&mut shown);
        for item in items() {
            let known = before.iter().position(|known| known.key == item.key);
            shown.push(match known {
                Some(at) => before.remove(at),
                None => make(item, &owner),
            });
        }
        for gone in before {
            live::remove(gone.tag.node());
            gone.owner.cleanup();
        }
        set_in_order(&shown, &end);
    }));
    tag
}

fn make(item: Item, owner: &Owner) -> Shown {
    let owner = owner.child();
    let make = item.make;
    let tag = owner.with(|| untrack(make));
    Shown { key: item.key, tag, owner }
}

/// From the last to the first; what stands right is not touched, or it would lose the focus.
fn set_in_order(shown: &[Shown], end: &web_sys::Node) {
    let mut next = end.clone();
    for one in shown.iter().rev() {
        let node = one.tag.node();
        if node.next_sibling().as_ref() != Some(&next) {
            live::insert(node, &next);
        }
        next = node.clone();
    }
}

//! To and fro between these elements and the views of Leptos.
use super::{Tag, live, parts};
use leptos::prelude::*;
use leptos::tachys::html::attribute::any_attribute::AnyAttribute;
use leptos::tachys::hydration::Cursor;
use leptos::tachys::view::{Mountable, Position, PositionState, Render, RenderHtml};
use send_wrapper::SendWrapper;
use wasm_bindgen::JsCast;
use web_sys::{Element, Node};

/// Puts a view of Leptos into an element; it lives as long as the owner.
pub fn put(view: AnyView, into: Tag) -> Tag {
    let mut state = view.build();
    state.mount(into.element(), None);
    let _ = StoredValue::new_local(state);
    into
}

impl Tag {
    /// As a view of Leptos.
    #[must_use]
    pub fn into_any(self) -> AnyView {
        IntoAny::into_any(Made(SendWrapper::new(self.bounded())))
    }

    /// Parts get marks at both ends: between them they may change.
    fn bounded(self) -> (Node, Node) {
        if self.node().node_type() != Node::DOCUMENT_FRAGMENT_NODE {
            return (self.node().clone(), self.node().clone());
        }
        let first = live::mark(&self);
        let _ = self.node().insert_before(&first, self.node().first_child().as_ref());
        (first, live::mark(&self))
    }
}

/// The first and the last node of what was made.
struct Made(SendWrapper<(Node, Node)>);

/// The same, in the page.
struct Placed {
    first: Node,
    last: Node,
}

impl Placed {
    fn nodes(&self) -> Vec<Node> {
        let mut nodes = vec![self.first.clone()];
        while let Some(next) = nodes.last().filter(|node| **node != self.last).and_then(Node::next_sibling) {
            nodes.push(next);
        }
        nodes
    }
}

impl Mountable for Placed {
    fn unmount(&mut self) {
        // Into parts of its own, so that it can be placed again.
        let room = parts();
        for node in self.nodes() {
            let _ = room.node().append_child(&node);
        }
    }

    fn mount(&mut self, parent: &Element, marker: Option<&Node>) {
        for node in self.nodes() {
            let _ = parent.insert_before(&node, marker);
        }
    }

    fn insert_before_this(&self, child: &mut dyn Mountable) -> bool {
        let parent = self.first.parent_node();
        if let Some(parent) = &parent {
            child.mount(parent.unchecked_ref(), Some(&self.first));
        }
        parent.is_some()
    }

    fn elements(&self) -> Vec<Element> {
        Vec::new()
    }
}

impl Render for Made {
    type State = Placed;

    fn build(self) -> Placed {
        let (first, last) = self.0.take();
        Placed { first, last }
    }

    fn rebuild(self, state: &mut Placed) {
        let mut next = self.build();
        state.insert_before_this(&mut next);
        state.unmount();
        *state = next;
    }
}

leptos::tachys::no_attrs!(Made);

/// Nothing is ever rendered on a server; the trait asks for the words.
impl RenderHtml for Made {
    type AsyncOutput = Self;
    type Owned = Self;

    const MIN_LENGTH: usize = 0;

    fn dry_resolve(&mut self) {}

    async fn resolve(self) -> Self {
        self
    }

    fn to_html_with_buf(
        self,
        _buf: &mut String,
        _position: &mut Position,
        _escape: bool,
        _mark_branches: bool,
        _extra_attrs: Vec<AnyAttribute>,
    ) {
    }

    fn hydrate<const FROM_SERVER: bool>(self, _cursor: &Cursor, _position: &PositionState) -> Placed {
        self.build()
    }

    fn into_owned(self) -> Self {
        self
    }
}

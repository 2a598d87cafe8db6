//! One element, or several side by side.
use super::{Attribute, Child, Value, live as follow};
use leptos::prelude::{document, on_cleanup};
use send_wrapper::SendWrapper;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::*;
use web_sys::{DocumentFragment, Element, Event, Node};

/// An element being put together, or the parts that stand side by side in one.
#[derive(Clone)]
#[must_use = "an element shows only where it is put in"]
pub struct Tag(Node);

/// An element of that name.
#[inline(never)]
pub fn tag(name: &str) -> Tag {
    // The names are this program's own: none is refused.
    made(document().create_element(name))
}

/// An element of a drawing.
#[inline(never)]
pub fn drawing_tag(name: &str) -> Tag {
    made(document().create_element_ns(Some("http://www.w3.org/2000/svg"), name))
}

fn made(element: Result<Element, JsValue>) -> Tag {
    Tag(element.map_or_else(|_| no_parts().into(), Into::into))
}

/// A button that does something.
pub fn button(classes: &str, act: impl FnMut(Event) + 'static) -> Tag {
    pressed(classes, Box::new(act))
}

#[inline(never)]
fn pressed(classes: &str, act: Box<dyn FnMut(Event)>) -> Tag {
    listen(tag("button").attr("type", "button").class(classes), "click", act)
}

/// Puts an element beside the app in the page, as long as the owner lives.
pub fn beside_app(element: Tag) {
    if let Some(body) = document().body() {
        let _ = body.append_child(element.node());
    }
    let element = SendWrapper::new(element);
    on_cleanup(move || element.element().remove());
}

/// Parts that are made anew whenever something changes that the closure reads.
pub fn live<C: Child>(child: impl FnMut() -> C + 'static) -> Tag {
    parts().live(child)
}

/// Parts without an element around them.
pub fn parts() -> Tag {
    Tag(no_parts().into())
}

fn no_parts() -> DocumentFragment {
    document().create_document_fragment()
}

impl Tag {
    /// The node.
    pub fn node(&self) -> &Node {
        &self.0
    }

    /// The element; of parts it is one by name only, good for putting children in.
    pub fn element(&self) -> &Element {
        self.0.unchecked_ref()
    }

    /// With these classes.
    #[inline(never)]
    pub fn class(self, classes: &str) -> Self {
        let _ = self.element().set_attribute("class", classes);
        self
    }

    /// With an attribute; a signal is followed.
    pub fn attr(self, name: &'static str, value: impl Attribute) -> Self {
        value.put(self, name)
    }

    /// With an attribute that follows what the closure reads.
    pub fn live_attr<V: Value>(self, name: &'static str, value: impl Fn() -> V + 'static) -> Self {
        follow::attribute(self, name, Box::new(move || value().text()))
    }

    /// With one class that comes and goes.
    pub fn live_class(self, name: &'static str, is_on: impl Fn() -> bool + 'static) -> Self {
        follow::class(self, name, Box::new(is_on))
    }

    /// With one class, if so.
    #[inline(never)]
    pub fn class_if(self, name: &str, is_on: bool) -> Self {
        if is_on {
            let _ = self.element().class_list().add_1(name);
        }
        self
    }

    /// With a property that follows what the closure reads, like what stands in a field.
    pub fn live_prop<V: Into<JsValue>>(self, name: &'static str, value: impl Fn() -> V + 'static) -> Self {
        follow::property(self, name, Box::new(move || value().into()))
    }

    /// With a child.
    pub fn child(self, child: impl Child) -> Self {
        child.put(self)
    }

    /// With a child that is made anew whenever something changes that the closure reads.
    pub fn live<C: Child>(self, mut child: impl FnMut() -> C + 'static) -> Self {
        follow::region(self, Box::new(move |room| child().put(room)))
    }

    /// With a child that stands there while it is so; it is made anew only when that changes.
    pub fn shown<C: Child>(
        self,
        when: impl Fn() -> bool + Send + Sync + 'static,
        child: impl Fn() -> C + 'static,
    ) -> Self {
        follow::region(self, follow::shown(Box::new(when), Box::new(move |room| child().put(room))))
    }

    /// With a text that follows what the closure reads.
    pub fn live_text(self, text: impl Fn() -> String + 'static) -> Self {
        follow::text(self, Box::new(text))
    }

    /// Holding markup that this program wrote itself.
    #[inline(never)]
    pub fn html(self, html: &str) -> Self {
        self.element().set_inner_html(html);
        self
    }

    /// Holding markup that this program writes itself, following what the closure reads.
    pub fn live_html(self, html: impl Fn() -> String + 'static) -> Self {
        follow::html(self, Box::new(html))
    }

    /// Holding a drawing's markup, of which only what differs is written anew when what the closure reads changes.
    pub fn live_drawing(self, drawing: impl Fn() -> String + 'static) -> Self {
        follow::drawing(self, Box::new(drawing))
    }

    /// With something done to it now, and whenever something changes that the closure reads.
    pub fn follow(self, act: impl FnMut() + 'static) -> Self {
        follow::follow(Box::new(act));
        self
    }

    /// With something done at an event.
    pub fn on(self, event: &'static str, act: impl FnMut(Event) + 'static) -> Self {
        listen(self, event, Box::new(act))
    }
}

#[inline(never)]
fn listen(tag: Tag, event: &str, act: Box<dyn FnMut(Event)>) -> Tag {
    let act = Closure::wrap(act).into_js_value();
    let _ = tag.0.add_event_listener_with_callback(event, act.unchecked_ref());
    tag
}

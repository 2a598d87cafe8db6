//! Elements of the page, made at once, one call after the other.
//!
//! Leptos' `view!` builds a type of its own for every element, attribute and closure, and the code that comes of
//! them was most of what a phone had to fetch. Here all elements are one type. What changes follows Leptos'
//! signals: every `live_…` runs as an effect of the owner it is made under, and ends with it.
mod awake;
mod child;
mod list;
mod live;
mod print_only;
mod redraw;
mod tag;
mod value;

pub use awake::while_awake;
pub use child::Child;
pub use list::Item;
pub use live::follow;
pub use print_only::{after_print, print_only};
pub use tag::{Tag, beside_app, button, drawing_tag, live, parts, tag};
pub use value::{Attribute, Value};

//! Tables.
use crate::app::dom::{Child, Tag, tag};

/// A table with a row of column heads.
pub fn table(classes: &str, heads: &[&str], rows: impl Child) -> Tag {
    let mut head = tag("tr");
    for name in heads {
        head = head.child(tag("th").attr("scope", "col").child(*name));
    }
    tag("table").class(classes).child(tag("thead").child(head)).child(tag("tbody").child(rows))
}

/// A table of figures in a box that can be pushed sideways, named for those who can't see it.
pub fn figures(label: &'static str, heads: &[&str], rows: impl Child) -> Tag {
    let table = table("table table--figures", heads, rows);
    tag("div").class("table-box").attr("tabindex", "0").attr("role", "group").attr("aria-label", label).child(table)
}

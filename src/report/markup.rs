//! A tiny writer of HTML: what is said is always escaped.
use crate::drawing::svg::escape;

/// HTML as it grows.
#[derive(Debug, Default)]
pub struct Markup {
    out: String,
}

impl Markup {
    /// Nothing yet.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Opens an element: its tag with ready attributes, `div class="x"`. They are the program's own words, never the user's.
    pub fn open(&mut self, tag: &str) -> &mut Self {
        self.out.push('<');
        self.out.push_str(tag);
        self.out.push('>');
        self
    }

    /// Closes an element.
    pub fn close(&mut self, tag: &str) -> &mut Self {
        self.out.push_str("</");
        self.out.push_str(tag);
        self.out.push('>');
        self
    }

    /// Words, escaped.
    pub fn say(&mut self, words: &str) -> &mut Self {
        self.out.push_str(&escape(words));
        self
    }

    /// An element with words in it.
    pub fn leaf(&mut self, tag: &str, words: &str) -> &mut Self {
        let name = tag.split(' ').next().unwrap_or(tag);
        self.open(tag).say(words).close(name)
    }

    /// A row of cells, the first one its head.
    pub fn row(&mut self, cells: &[&str]) -> &mut Self {
        self.open("tr");
        for (index, cell) in cells.iter().enumerate() {
            self.leaf(if index == 0 { "th scope=\"row\"" } else { "td" }, cell);
        }
        self.close("tr")
    }

    /// Something that is HTML already: a drawing of this program.
    pub fn raw(&mut self, ready: &str) -> &mut Self {
        self.out.push_str(ready);
        self
    }

    /// The HTML.
    #[must_use]
    pub fn finish(self) -> String {
        self.out
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_stay_words() {
        let mut markup = Markup::new();
        markup.open("p class=\"a\"").say("<b>&").close("p").leaf("td data-x=\"1\"", "5 < 6");
        assert_eq!(markup.finish(), "<p class=\"a\">&lt;b&gt;&amp;</p><td data-x=\"1\">5 &lt; 6</td>");
    }
}

//! What was typed, cut short for a message.

/// How many characters of it a message repeats.
const SHOWN: usize = 24;

/// The text without spaces around and without control characters, cut to 24 characters.
pub(super) fn typed(text: &str) -> String {
    let clean = |c: char| if c.is_control() { ' ' } else { c };
    let mut chars = text.trim().chars();
    let mut shown: String = chars.by_ref().take(SHOWN).map(clean).collect();
    if chars.next().is_some() {
        shown.push('…');
    }
    shown
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str, expected: &str) {
        assert_eq!(typed(text), expected);
    }

    #[test]
    fn cut_short() {
        check("  7\u{7}x ", "7 x");
        check("123456789012345678901234", "123456789012345678901234");
        check("½234567890123456789012345", "½23456789012345678901234…");
    }
}

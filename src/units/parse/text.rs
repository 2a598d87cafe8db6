//! Cuts typed text into numbers, marks and unit words.

/// Longer text is nothing a person typed into a field for one number.
const LONGEST_TEXT: usize = 200;

/// A number in digits, with at most one comma or point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Decimal {
    /// Its value; infinite when it has too many digits.
    pub(super) value: f64,
    /// Whether it was written without a comma or point.
    pub(super) is_whole: bool,
}

/// One piece of the text.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Token {
    Number(Decimal),
    /// A fraction in one character: upper and lower part.
    Vulgar(u8, u8),
    Slash,
    Dash,
    Colon,
    Degree,
    Percent,
    Foot,
    Inch,
    Millimetre,
    Centimetre,
    Metre,
}

/// Why text cannot be cut up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum TextFault {
    /// A character, word or length of text that means nothing here.
    Unreadable,
    /// A number with two or more commas or points.
    Grouped,
}

/// The pieces of the text; spaces only part them.
pub(super) fn tokens(text: &str) -> Result<Vec<Token>, TextFault> {
    let chars: Vec<char> = text.chars().take(LONGEST_TEXT + 1).collect();
    if chars.len() > LONGEST_TEXT {
        return Err(TextFault::Unreadable);
    }
    let (mut found, mut at) = (Vec::new(), 0);
    while at < chars.len() {
        if is_space(chars[at]) {
            at += 1;
        } else if let Some((number, end)) = number(&chars, at)? {
            found.push(Token::Number(number));
            at = end;
        } else if chars[at].is_alphabetic() && vulgar(chars[at]).is_none() && mark(chars[at]).is_none() {
            let (token, end) = word(&chars, at)?;
            found.push(token);
            at = end;
        } else {
            let (token, end) = sign(&chars, at)?;
            found.push(token);
            at = end;
        }
    }
    Ok(found)
}

/// Spaces of every width, and the characters without width that come along when text is pasted.
pub(super) fn is_space(c: char) -> bool {
    c.is_whitespace() || matches!(c, '\u{200b}' | '\u{200e}' | '\u{200f}' | '\u{2060}' | '\u{feff}')
}

/// A minus sign in any of the dashes a keyboard or a printed sheet gives.
pub(super) const fn is_dash(c: char) -> bool {
    matches!(c, '-' | '−' | '–' | '‐' | '‑')
}

const fn is_point(c: char) -> bool {
    matches!(c, '.' | ',')
}

/// The number that starts here, and where it ends.
pub(super) fn number(chars: &[char], start: usize) -> Result<Option<(Decimal, usize)>, TextFault> {
    let digit_at = |at: usize| chars.get(at).is_some_and(char::is_ascii_digit);
    let point_at = |at: usize| chars.get(at).is_some_and(|&c| is_point(c)) && digit_at(at + 1);
    if !digit_at(start) && !point_at(start) {
        return Ok(None);
    }
    let mut end = start;
    while digit_at(end) {
        end += 1;
    }
    let is_whole = !point_at(end);
    if !is_whole {
        end += 1;
        while digit_at(end) {
            end += 1;
        }
        if point_at(end) {
            return Err(TextFault::Grouped);
        }
    }
    let digits: String = chars[start..end].iter().map(|&c| if is_point(c) { '.' } else { c }).collect();
    let value = digits.parse().map_err(|_| TextFault::Unreadable)?;
    Ok(Some((Decimal { value, is_whole }, end)))
}

/// The unit word that starts here; a point may close it (`ft.`) but not run into a number (`ft.5`).
fn word(chars: &[char], start: usize) -> Result<(Token, usize), TextFault> {
    let length = chars[start..].iter().take_while(|c| c.is_alphabetic() && vulgar(**c).is_none()).count();
    let mut end = start + length;
    let name: String = chars[start..end].iter().flat_map(|c| c.to_lowercase()).collect();
    let token = match name.as_str() {
        "ft" | "foot" | "feet" => Token::Foot,
        "in" | "inch" | "inches" => Token::Inch,
        "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => Token::Millimetre,
        "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => Token::Centimetre,
        "m" | "metre" | "metres" | "meter" | "meters" => Token::Metre,
        "deg" | "degree" | "degrees" => Token::Degree,
        "percent" => Token::Percent,
        _ => return Err(TextFault::Unreadable),
    };
    if chars.get(end) == Some(&'.') {
        end += 1;
        if chars.get(end).is_some_and(char::is_ascii_digit) {
            return Err(TextFault::Unreadable);
        }
    }
    Ok((token, end))
}

/// The mark that starts here; two single marks side by side are an inch mark.
fn sign(chars: &[char], start: usize) -> Result<(Token, usize), TextFault> {
    let c = chars[start];
    if let Some((upper, lower)) = vulgar(c) {
        return Ok((Token::Vulgar(upper, lower), start + 1));
    }
    let token = mark(c).ok_or(TextFault::Unreadable)?;
    let doubled = token == Token::Foot && chars.get(start + 1).and_then(|&next| mark(next)) == Some(Token::Foot);
    Ok(if doubled { (Token::Inch, start + 2) } else { (token, start + 1) })
}

const fn mark(c: char) -> Option<Token> {
    Some(match c {
        '\'' | '’' | '‘' | '‛' | '′' | '`' | '´' | 'ʹ' => Token::Foot,
        '"' | '”' | '“' | '‟' | '″' => Token::Inch,
        '/' | '⁄' | '∕' => Token::Slash,
        ':' | '∶' => Token::Colon,
        '°' | 'º' => Token::Degree,
        '%' => Token::Percent,
        _ if is_dash(c) => Token::Dash,
        _ => return None,
    })
}

/// The fractions that Unicode has as one character.
const fn vulgar(c: char) -> Option<(u8, u8)> {
    Some(match c {
        '½' => (1, 2),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅕' => (1, 5),
        '⅖' => (2, 5),
        '⅗' => (3, 5),
        '⅘' => (4, 5),
        '⅙' => (1, 6),
        '⅚' => (5, 6),
        '⅐' => (1, 7),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        '⅑' => (1, 9),
        '⅒' => (1, 10),
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str, expected: Result<&[Token], TextFault>) {
        assert_eq!(tokens(text), expected.map(<[Token]>::to_vec), "{text}");
    }

    const fn whole(value: f64) -> Token {
        Token::Number(Decimal { value, is_whole: true })
    }

    const fn decimal(value: f64) -> Token {
        Token::Number(Decimal { value, is_whole: false })
    }

    #[test]
    fn pieces() {
        check("\u{a0}7ft. 4\u{202f}in", Ok(&[whole(7.0), Token::Foot, whole(4.0), Token::Inch]));
        check("3½''", Ok(&[whole(3.0), Token::Vulgar(1, 2), Token::Inch]));
        check(",5–.25", Ok(&[decimal(0.5), Token::Dash, decimal(0.25)]));
        check("14º", Ok(&[whole(14.0), Token::Degree]));
        check("1.234,5", Err(TextFault::Grouped));
        check("5.", Err(TextFault::Unreadable));
        check("ft.5", Err(TextFault::Unreadable));
        check("٣", Err(TextFault::Unreadable));
        check(&"1".repeat(201), Err(TextFault::Unreadable));
    }
}

//! The colours of the style sheet's tokens, for what is painted without it.
use leptos::prelude::*;

/// Red, green and blue, 0 to 1.
pub type Tone = [f32; 3];

/// How much shadow lies over a face in full, half and low light: as in `drawings.css`.
const SHADES: [f32; 3] = [0.0, 0.09, 0.24];

/// What a picture in the round is painted with.
#[derive(Clone, Debug, PartialEq)]
pub struct Tones {
    /// Planed, across the grain, chiselled; each in full, half and low light.
    pub faces: Vec<f32>,
    /// Of the edges.
    pub ink: Tone,
    /// Of the grain.
    pub grain: Tone,
    /// How wide an edge is drawn, px.
    pub pen: f32,
}

impl Tones {
    /// As the page is lit now.
    pub fn now() -> Self {
        let style = document().document_element().and_then(|root| window().get_computed_style(&root).ok().flatten());
        let token = |name: &str| {
            let text = style.as_ref().and_then(|style| style.get_property_value(name).ok()).unwrap_or_default();
            parse(&text).unwrap_or([0.5; 3])
        };
        let shadow = token("--shadow");
        let mut faces = Vec::with_capacity(27);
        for name in ["--wood", "--endgrain", "--sheet"] {
            let face = token(name);
            for shade in SHADES {
                for part in 0..3 {
                    faces.push(face[part] + (shadow[part] - face[part]) * shade);
                }
            }
        }
        let is_sun =
            document().document_element().and_then(|root| root.get_attribute("data-theme")).as_deref() == Some("sun");
        Self { faces, ink: token("--ink"), grain: token("--wood-line"), pen: if is_sun { 2.0 } else { 1.25 } }
    }
}

/// A colour written as six hexadecimal digits.
fn parse(text: &str) -> Option<Tone> {
    let digits = text.trim().strip_prefix('#')?;
    let value = u32::from_str_radix(digits, 16).ok().filter(|_| digits.len() == 6)?;
    Some([16, 8, 0].map(|shift| ((value >> shift) & 255) as f32 / 255.0))
}

#[cfg(test)]
mod tests {
    use super::parse;

    #[test]
    fn colours_are_read() {
        assert_eq!(parse(" #ff0033"), Some([1.0, 0.0, 0.2]));
        assert_eq!(parse("white"), None);
    }
}

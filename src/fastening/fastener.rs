//! Bolts, lag screws, wood screws and nails: their diameters, tips and the yield strength of their steel in bending.
//!
//! Sizes stand in `tables/fasteners.csv`, the strengths in `tables/bending_yield.csv`. A comma never stands in a value.
use std::sync::OnceLock;

use super::Refused;
use super::table::{confidence, rows, unknown};
use crate::materials::Confidence;
use crate::units::{Length, Stress};

/// What sort of fastener.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FastenerKind {
    /// Through the whole joint, with washers.
    Bolt,
    /// A heavy screw with a hexagon head, in a stepped lead hole.
    LagScrew,
    /// A cut-thread wood screw by number.
    WoodScrew,
    /// A smooth or deformed nail.
    Nail,
}

impl FastenerKind {
    fn named(word: &str) -> Option<Self> {
        match word {
            "bolt" => Some(Self::Bolt),
            "lag" => Some(Self::LagScrew),
            "wood_screw" => Some(Self::WoodScrew),
            "nail" => Some(Self::Nail),
            _ => None,
        }
    }

    /// The rows of the bending table this kind reads: wood screws share those of nails.
    const fn bending_rows(self) -> &'static str {
        match self {
            Self::Bolt => "bolt",
            Self::LagScrew => "lag",
            Self::WoodScrew | Self::Nail => "nail",
        }
    }
}

/// One fastener.
#[derive(Clone, Debug, PartialEq)]
pub struct Fastener {
    /// Name in project files.
    pub key: String,
    /// Name on screen and paper.
    pub name: String,
    /// What sort it is.
    pub kind: FastenerKind,
    /// Diameter it is sold by.
    pub diameter: Length,
    /// Diameter that carries shear: the root of the thread, or the full body of a bolt or nail.
    pub shear_diameter: Length,
    /// Length of the tapered tip of a lag screw; none for the others.
    pub tip: Length,
    /// Yield strength of the steel in bending, F_yb.
    pub bending_yield: Stress,
    /// Where the values come from.
    pub source: String,
    /// How far they can be trusted.
    pub confidence: Confidence,
}

impl Fastener {
    /// A nail of any diameter the bending table knows.
    ///
    /// # Errors
    /// For a diameter outside the table.
    pub fn nail(diameter: Length) -> Result<Self, Refused> {
        let name = format!("{:.3} in nail", diameter.to_inches());
        Self::made(
            ("", &name),
            FastenerKind::Nail,
            [diameter, diameter, Length::ZERO],
            ("diameter as given", Confidence::Medium),
        )
    }

    /// A cut-thread wood screw of a diameter and a root diameter.
    ///
    /// # Errors
    /// For a diameter outside the table, or a root that is not smaller than it.
    pub fn wood_screw(diameter: Length, root: Length) -> Result<Self, Refused> {
        if root >= diameter || root <= Length::ZERO {
            return Err(Refused::because(
                "The root of a screw's thread must be smaller than the screw, and more than zero.",
            ));
        }
        let name = format!("{:.3} in wood screw", diameter.to_inches());
        let source = ("diameters as given", Confidence::Medium);
        Self::made(("", &name), FastenerKind::WoodScrew, [diameter, root, Length::ZERO], source)
    }

    fn made(
        (key, name): (&str, &str),
        kind: FastenerKind,
        [diameter, shear_diameter, tip]: [Length; 3],
        (source, trust): (&str, Confidence),
    ) -> Result<Self, Refused> {
        let (bending_yield, steel_trust) = bending_yield(kind, diameter)?;
        let confidence = if steel_trust == Confidence::High { trust } else { steel_trust };
        let (key, name, source) = (key.to_owned(), name.to_owned(), source.to_owned());
        Ok(Self { key, name, kind, diameter, shear_diameter, tip, bending_yield, source, confidence })
    }

    fn from_row(cells: &[&str]) -> Option<Self> {
        let &[key, name, kind, diameter, root, tip, source, trust] = cells else { return None };
        let inches = |cell: &str| cell.parse().ok().and_then(Length::try_inches);
        let lengths = [inches(diameter)?, inches(root)?, inches(tip)?];
        Self::made((key, name), FastenerKind::named(kind)?, lengths, (source, confidence(trust))).ok()
    }

    /// Its widest hole: a bolt's is 1/16 in wider than the bolt (NDS 12.1.3, from memory).
    #[must_use]
    pub fn hole(&self) -> Length {
        let room = if self.kind == FastenerKind::Bolt { Length::inches(1.0 / 16.0) } else { Length::ZERO };
        self.diameter + room
    }

    /// Whether it is thinner than ¼ in, where grain and geometry no longer count.
    #[must_use]
    pub fn is_slender(&self) -> bool {
        self.diameter < Length::inches(0.25)
    }
}

/// F_yb of a fastener of this kind and diameter.
fn bending_yield(kind: FastenerKind, diameter: Length) -> Result<(Stress, Confidence), Refused> {
    let found = rows(include_str!("tables/bending_yield.csv")).find_map(|cells| {
        let &[rows_of, over, up_to, psi, _, trust] = cells.as_slice() else { return None };
        let (over, up_to): (f64, f64) = (over.parse().ok()?, up_to.parse().ok()?);
        let fits = rows_of == kind.bending_rows() && diameter.to_inches() > over && diameter.to_inches() <= up_to;
        fits.then(|| Some((Stress::try_psi(psi.parse().ok()?)?, confidence(trust))))?
    });
    found.ok_or_else(|| {
        let inches = diameter.to_inches();
        Refused::because(format!(
            "No bending yield strength is known for this kind of fastener at {inches:.3} in diameter."
        ))
    })
}

/// Every fastener the tool knows.
#[must_use]
pub fn fastener_table() -> &'static [Fastener] {
    static TABLE: OnceLock<Vec<Fastener>> = OnceLock::new();
    TABLE.get_or_init(|| {
        rows(include_str!("tables/fasteners.csv")).filter_map(|cells| Fastener::from_row(&cells)).collect()
    })
}

/// The fastener of that key.
///
/// # Errors
/// For a key that is not in the table.
pub fn fastener(key: &str) -> Result<&'static Fastener, Refused> {
    fastener_table().iter().find(|fastener| fastener.key == key).ok_or_else(|| unknown("fastener", key))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    #[test]
    fn every_row_of_the_table_is_read() {
        assert_eq!(fastener_table().len(), include_str!("tables/fasteners.csv").lines().count() - 1);
        assert!(fastener_table().iter().all(|fastener| !fastener.source.is_empty()));
        assert!(fastener("lag_2").is_err());
    }

    /// NDS App. I: the steel's bending yield strength falls with the diameter (lag ¼–⅜ confirmed by Table 12K).
    #[test]
    fn thicker_fasteners_yield_sooner() {
        for (key, psi) in [
            ("bolt_1_2", 45_000.0),
            ("lag_1_4", 70_000.0),
            ("lag_5_16", 60_000.0),
            ("lag_3_8", 45_000.0),
            ("wood_screw_8", 90_000.0),
            ("wood_screw_14", 70_000.0),
            ("nail_131", 100_000.0),
            ("nail_192", 80_000.0),
        ] {
            assert_eq!(fastener(key).unwrap().bending_yield, Stress::psi(psi), "{key}");
        }
        let nail = |inches: f64| Fastener::nail(Length::inches(inches)).map(|nail| nail.bending_yield.to_psi());
        assert_eq!(nail(0.142), Ok(100_000.0));
        assert_eq!(nail(0.143), Ok(90_000.0));
        assert_eq!(nail(0.099), Ok(100_000.0));
        assert!(nail(0.09).is_err());
        assert!(nail(0.376).is_err());
    }

    #[test]
    fn a_screw_needs_a_root_within_it() {
        let screw = |root: f64| Fastener::wood_screw(Length::inches(0.19), Length::inches(root));
        assert!(screw(0.19).is_err());
        assert!(screw(0.0).is_err());
        assert!(screw(0.152).unwrap().is_slender());
        assert!(!fastener("lag_1_4").unwrap().is_slender());
    }
}

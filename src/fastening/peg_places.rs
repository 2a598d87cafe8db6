//! Where pegs stand in their timbers, in peg diameters: a placeholder from recollection, in `tables/peg_places.csv`.
use std::sync::OnceLock;

use super::Refused;
use super::refused::above_zero;
use super::table::{confidence, rows, unknown};
use super::written::{inches, number};
use crate::materials::Confidence;
use crate::units::Length;
use crate::working::{Citation, Step, Worked};

/// Distances for the full strength of a peg in one kind of wood, in peg diameters.
#[derive(Clone, Debug, PartialEq)]
pub struct PegPlaces {
    /// Name in project files.
    pub key: String,
    /// Name of the wood.
    pub name: String,
    /// Peg to the end of the tenon: its relish.
    pub end: f64,
    /// Peg to the mortise's loaded edge.
    pub edge: f64,
    /// Peg to peg.
    pub spacing: f64,
    /// Where the row comes from.
    pub source: String,
    /// How far it can be trusted.
    pub confidence: Confidence,
}

impl PegPlaces {
    fn from_row(cells: &[&str]) -> Option<Self> {
        let &[key, name, end, edge, spacing, source, trust] = cells else { return None };
        Some(Self {
            key: key.to_owned(),
            name: name.to_owned(),
            end: end.parse().ok()?,
            edge: edge.parse().ok()?,
            spacing: spacing.parse().ok()?,
            source: source.to_owned(),
            confidence: confidence(trust),
        })
    }
}

/// Every row.
#[must_use]
pub fn peg_places_table() -> &'static [PegPlaces] {
    static TABLE: OnceLock<Vec<PegPlaces>> = OnceLock::new();
    TABLE.get_or_init(|| {
        rows(include_str!("tables/peg_places.csv")).filter_map(|cells| PegPlaces::from_row(&cells)).collect()
    })
}

/// The row of a wood; `unsure` is the one to take for any other: end 4, edge 4, spacing 3.
///
/// # Errors
/// For a key that is not in the table.
pub fn peg_places(key: &str) -> Result<&'static PegPlaces, Refused> {
    peg_places_table().iter().find(|row| row.key == key).ok_or_else(|| unknown("wood", key))
}

/// What a peg needs in a wood of the species table: the row of the tests, or the one for any other wood.
///
/// # Errors
/// Without the row for any other wood.
pub fn peg_needs(species: &str) -> Result<&'static PegPlaces, Refused> {
    let tested = match species {
        "red_oak" | "white_oak" => "oak",
        "southern_pine" => "southern_yellow_pine",
        own => own,
    };
    peg_places(tested).or_else(|_| peg_places("unsure"))
}

/// The wood there is around a peg.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PegRoom {
    /// Peg to the end of the tenon.
    pub end: Length,
    /// Peg to the mortise's loaded edge.
    pub edge: Length,
    /// Peg to peg, where there are several.
    pub spacing: Option<Length>,
}

impl PegRoom {
    /// Each distance with how many diameters are needed of it.
    fn against(&self, needs: &PegPlaces) -> impl Iterator<Item = (&'static str, Length, f64)> {
        let spacing = self.spacing.map(|spacing| ("peg to peg", spacing, needs.spacing));
        let ends = [("relish past the peg", self.end, needs.end), ("peg to loaded edge", self.edge, needs.edge)];
        ends.into_iter().chain(spacing)
    }

    /// Whether a peg of that diameter reaches its full strength and the wood does not split before: then it may be pulled
    /// on. No value is known for one with less wood around it: it locates the joint and no more.
    #[must_use]
    pub fn holds(&self, diameter: Length, needs: &PegPlaces) -> bool {
        self.against(needs).all(|(_, there, diameters)| there >= diameter * diameters - Length::inches(1e-6))
    }
}

/// The least of what there is by what is needed: 1 or more lets the peg reach its full strength.
///
/// # Errors
/// For a peg of no size.
pub fn peg_room(diameter: Length, room: PegRoom, needs: &PegPlaces) -> Result<Worked<f64>, Refused> {
    above_zero("the diameter of the peg", diameter.to_inches())?;
    let citation = Citation { document: "TFEC 1", clause: "end, edge, spacing", confidence: needs.confidence };
    let mut least = f64::INFINITY;
    let mut steps = Vec::new();
    for (what, there, diameters) in room.against(needs) {
        let needed = diameter * diameters;
        let share = there / needed;
        least = least.min(share);
        let says = format!(
            "{} in of {}D = {}·{} = {} in → {} ({})",
            inches(there),
            number(diameters),
            number(diameters),
            inches(diameter),
            inches(needed),
            number(share),
            needs.name
        );
        steps.push(Step::new(what, says, citation));
    }
    Ok(Worked::new(least, steps))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    #[test]
    fn every_row_is_read_and_is_a_placeholder() {
        assert_eq!(peg_places_table().len(), include_str!("tables/peg_places.csv").lines().count() - 1);
        assert!(peg_places_table().iter().all(|row| row.confidence == Confidence::Low && !row.source.is_empty()));
        assert!(peg_places("balsa").is_err());
    }

    /// The recalled rows: Douglas fir 2/2.5/2.5, white pine 4/4/3, oak 3/2/2.5, yellow pine 2/2/3, poplar 2.5/2.5/3.
    #[test]
    fn rows() {
        for (key, expected) in [
            ("douglas_fir", [2.0, 2.5, 2.5]),
            ("eastern_white_pine", [4.0, 4.0, 3.0]),
            ("oak", [3.0, 2.0, 2.5]),
            ("southern_yellow_pine", [2.0, 2.0, 3.0]),
            ("yellow_poplar", [2.5, 2.5, 3.0]),
            ("unsure", [4.0, 4.0, 3.0]),
        ] {
            let row = peg_places(key).unwrap();
            assert_eq!([row.end, row.edge, row.spacing], expected, "{key}");
        }
    }

    /// Hemlock was not tested; both oaks share their row. All of the wood or none of the peg.
    #[test]
    fn a_peg_with_too_little_wood_only_locates() {
        let key = |species| peg_needs(species).unwrap().key.as_str();
        assert_eq!(["eastern_hemlock", "white_oak", "douglas_fir"].map(key), ["unsure", "oak", "douglas_fir"]);
        let [three, four] = [3.0, 4.0].map(Length::inches);
        let room = PegRoom { end: four, edge: four, spacing: Some(three) };
        let needs = peg_needs("eastern_hemlock").unwrap();
        let one = Length::inches(1.0);
        assert!(room.holds(one, needs));
        for less in
            [PegRoom { end: three, ..room }, PegRoom { edge: three, ..room }, PegRoom { spacing: Some(one), ..room }]
        {
            assert!(!less.holds(one, needs) && less.holds(one / 4.0, needs), "{less:?}");
        }
    }

    #[test]
    fn the_least_room_counts() {
        let unsure = peg_places("unsure").unwrap();
        let room = |end: f64, edge: f64, spacing: Option<f64>| {
            let [end, edge] = [end, edge].map(Length::inches);
            let room = PegRoom { end, edge, spacing: spacing.map(Length::inches) };
            peg_room(Length::inches(1.0), room, unsure).unwrap().value
        };
        assert_eq!(room(4.0, 6.0, None), 1.0);
        assert_eq!(room(4.0, 3.0, None), 0.75);
        assert_eq!(room(4.0, 4.0, Some(1.5)), 0.5);
        let none = PegRoom { end: Length::ZERO, edge: Length::ZERO, spacing: None };
        assert!(peg_room(Length::ZERO, none, unsure).is_err());
    }
}

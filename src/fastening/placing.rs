//! End, edge and spacing of fasteners of ¼ in and more: the geometry factor C_Δ (NDS 2015 12.5.1).
//!
//! For a load between along and across the grain both directions are looked at, and the lesser factor stands.
use super::Refused;
use super::refused::above_zero;
use super::written::{inches, number};
use crate::units::Length;
use crate::working::{Citation, Step, Worked};

/// Noise of the arithmetic that a tape does not show.
const SLACK: Length = Length::inches(1e-9);
/// Wood over this between outer rows shrinks enough to split.
const WIDEST_ROWS: Length = Length::inches(5.0);

/// Direction of the load.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// Along the grain.
    Along,
    /// Across the grain.
    Across,
}

/// What the end distance sees.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EndLoad {
    /// Across the grain.
    Across,
    /// Along the grain, away from the end.
    AwayFromEnd,
    /// Along the grain toward the end, softwood.
    TowardEndSoftwood,
    /// Along the grain toward the end, hardwood.
    TowardEndHardwood,
}

impl EndLoad {
    /// Along the grain toward the end.
    #[must_use]
    pub const fn toward_end(is_hardwood: bool) -> Self {
        if is_hardwood { Self::TowardEndHardwood } else { Self::TowardEndSoftwood }
    }

    /// So many diameters to the end take nothing off.
    #[must_use]
    pub const fn full(self) -> f64 {
        match self {
            Self::Across | Self::AwayFromEnd => 4.0,
            Self::TowardEndSoftwood => 7.0,
            Self::TowardEndHardwood => 5.0,
        }
    }
}

/// Edge distances.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Edge {
    /// To the edge the load points at; to the nearer edge for a load along the grain.
    pub loaded: Length,
    /// To the other edge.
    pub unloaded: Length,
}

/// Spacing within a row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RowSpacing {
    /// From centre to centre.
    pub spacing: Length,
    /// Across the grain: what the attached member asks for; `None` when it asks for nothing.
    pub attached_needs: Option<Length>,
}

/// Where fasteners stand in one member. What is `None` does not occur.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placing {
    /// Diameter as sold.
    pub diameter: Length,
    /// Direction of the load in this member.
    pub direction: Direction,
    /// Bearing length l: the lesser of the main member's and the side members' together.
    pub bearing_length: Length,
    /// Distance to the end, and what the load does there.
    pub end: Option<(Length, EndLoad)>,
    /// Distances to the edges.
    pub edge: Option<Edge>,
    /// Spacing in a row, for more than one.
    pub in_row: Option<RowSpacing>,
    /// Spacing between rows, for more than one row.
    pub between_rows: Option<Length>,
}

const CITED: Citation = Citation::from_memory("NDS 2015", "12.5.1 and its tables");

/// One distance of a fastener, and what it needs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Distance {
    /// Which one it is.
    pub what: &'static str,
    /// How much there is.
    pub actual: Length,
    /// From here on nothing is taken off.
    pub full: Length,
    /// Less than this is refused.
    pub least: Length,
}

impl Distance {
    /// Below its least.
    #[must_use]
    pub fn is_short(&self) -> bool {
        self.actual + SLACK < self.least
    }
}

/// Every distance that occurs, with what it needs; none of a fastener thinner than ¼ in, which does not split the wood.
#[must_use]
pub fn distances(placing: &Placing) -> Vec<Distance> {
    if is_slender(placing.diameter) {
        return Vec::new();
    }
    let mut all = Vec::new();
    if let Some((actual, load)) = placing.end {
        let full = placing.diameter * load.full();
        all.push(Distance { what: "end distance", actual, full, least: full / 2.0 });
    }
    if let Some(row) = placing.in_row {
        let least = placing.diameter * 3.0;
        let full = match placing.direction {
            Direction::Along => placing.diameter * 4.0,
            Direction::Across => row.attached_needs.unwrap_or(least).max(least),
        };
        all.push(Distance { what: "spacing in the row", actual: row.spacing, full, least });
    }
    all.extend(edges(placing));
    if let Some(actual) = placing.between_rows {
        let least = rows_apart(placing);
        all.push(Distance { what: "spacing between rows", actual, full: least, least });
    }
    all
}

/// Thinner than ¼ in: it splits nothing, and has no least distances of its own (NDS 12.5).
#[must_use]
pub fn is_slender(diameter: Length) -> bool {
    diameter < Length::inches(0.25)
}

/// C_Δ: the least of actual by full of all that occur, at least 0.5; one for fasteners thinner than ¼ in.
///
/// # Errors
/// Where a distance is below its least: the sentence names it and what it needs.
pub fn geometry_factor(placing: &Placing) -> Result<Worked<f64>, Refused> {
    above_zero("the diameter of the fastener", placing.diameter.to_inches())?;
    if is_slender(placing.diameter) {
        let citation = Citation::seen("NDS 2015", "12.5");
        let step = Step::new("C_Δ, geometry", "C_Δ = 1.00 (D < ¼ in: enough not to split)".to_owned(), citation);
        return Ok(Worked::new(1.0, vec![step]));
    }
    above_zero("the bearing length", placing.bearing_length.to_inches())?;
    let mut steps = Vec::new();
    let mut value = 1.0_f64;
    for distance in distances(placing) {
        value = value.min(share(&distance, &mut steps)?);
    }
    let value = value.max(0.5);
    steps.push(Step::new("C_Δ, geometry", format!("C_Δ = least of all = {}", number(value)), CITED));
    Ok(Worked::new(value, steps))
}

fn share(distance: &Distance, steps: &mut Vec<Step>) -> Result<f64, Refused> {
    let Distance { what, actual, full, least } = *distance;
    if distance.is_short() {
        return Err(Refused::because(format!(
            "The {what} is {} in; it needs at least {} in.",
            inches(actual),
            inches(least)
        )));
    }
    let share = (actual / full).min(1.0);
    let says = format!("{} by {} in → {}", inches(actual), inches(full), number(share));
    steps.push(Step::new(what, says, CITED));
    Ok(share)
}

/// l/D at which the edge rule along the grain changes.
const LONG_DOWEL: f64 = 6.0;

/// Least distances of a load across the grain to the edge it presses toward, and to the other edge.
#[must_use]
pub fn across_edges(diameter: Length) -> (Length, Length) {
    (diameter * 4.0, diameter * 1.5)
}

/// What is short of an edge has no value at all.
fn edges(placing: &Placing) -> Vec<Distance> {
    let Some(edge) = placing.edge else { return Vec::new() };
    let small = placing.diameter * 1.5;
    let all = match placing.direction {
        Direction::Across => {
            let (loaded, unloaded) = across_edges(placing.diameter);
            vec![("loaded edge distance", edge.loaded, loaded), ("unloaded edge distance", edge.unloaded, unloaded)]
        }
        Direction::Along => {
            let is_long = placing.bearing_length / placing.diameter > LONG_DOWEL;
            let half_row = placing.between_rows.map_or(Length::ZERO, |rows| rows * 0.5);
            let least = if is_long { small.max(half_row) } else { small };
            vec![("edge distance", edge.loaded.min(edge.unloaded), least)]
        }
    };
    all.into_iter().map(|(what, actual, least)| Distance { what, actual, full: least, least }).collect()
}

/// Rows across the load: 1.5D along the grain; across it 2.5D at l/D ≤ 2, 5D at l/D ≥ 6, (5l + 10D)/8 between.
fn rows_apart(placing: &Placing) -> Length {
    let (l, d) = (placing.bearing_length, placing.diameter);
    match (placing.direction, l / d) {
        (Direction::Along, _) => d * 1.5,
        (Direction::Across, slender) if slender <= 2.0 => d * 2.5,
        (Direction::Across, slender) if slender >= LONG_DOWEL => d * 5.0,
        (Direction::Across, _) => (l * 5.0 + d * 10.0) / 8.0,
    }
}

/// Outer rows along the grain more than 5 in apart across a sawn member need their own plates, or another way to let the
/// wood shrink (12.5.1.3). Gives back the distance that was looked at.
///
/// # Errors
/// When they stand wider without one.
pub fn outer_rows(apart: Length, lets_wood_shrink: bool) -> Result<Worked<Length>, Refused> {
    if apart > WIDEST_ROWS + SLACK && !lets_wood_shrink {
        return Err(Refused::because(format!(
            "The outer rows stand {} in apart across the grain: over 5 in the wood splits as it dries. Bring them closer, \
             or give each row its own plate or slotted holes.",
            inches(apart)
        )));
    }
    let says = if lets_wood_shrink { "the wood can shrink between the rows" } else { "at most 5 in" };
    let step =
        Step::new("outer rows", format!("{} in: {says}", inches(apart)), Citation::from_memory("NDS 2015", "12.5.1.3"));
    Ok(Worked::new(apart, vec![step]))
}

/// A force that comes in nearer than mid-depth to the edge it presses toward tears the member along the grain, as a load
/// hung below the middle of a beam does (NDS 2015 12.5.1.4, from memory): the sentence for it, or nothing.
///
/// `from_edge`: from that edge to the farthest fastener that brings the force in: of a hung load from the bottom up, of what
/// holds a beam up from the top down.
#[must_use]
pub fn hangs_low(from_edge: Length, depth: Length) -> Option<String> {
    (from_edge + SLACK < depth * 0.5).then(|| {
        format!(
            "The force comes in {} in from the edge it presses toward, in a member {} in deep: nearer than mid-depth it can tear \
             the member along the grain. Bring it in at mid-depth or past it.",
            inches(from_edge),
            inches(depth)
        )
    })
}

/// A lag screw in withdrawal alone: edge 1.5D, end 4D, spacing 4D.
///
/// # Errors
/// Where one of them is less.
pub fn lag_withdrawal_place(
    diameter: Length,
    edge: Length,
    end: Length,
    spacing: Option<Length>,
) -> Result<Worked<()>, Refused> {
    above_zero("the diameter of the lag screw", diameter.to_inches())?;
    let mut steps = Vec::new();
    let spacing = spacing.map(|spacing| ("spacing", spacing, 4.0));
    for (what, actual, times) in [("edge distance", edge, 1.5), ("end distance", end, 4.0)].into_iter().chain(spacing) {
        let least = diameter * times;
        share(&Distance { what, actual, full: least, least }, &mut steps)?;
    }
    Ok(Worked::new((), steps))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    const fn inch(value: f64) -> Length {
        Length::inches(value)
    }

    /// ½ in, l/D = 6.
    fn plain(direction: Direction) -> Placing {
        let (diameter, bearing_length) = (inch(0.5), inch(3.0));
        Placing { diameter, direction, bearing_length, end: None, edge: None, in_row: None, between_rows: None }
    }

    fn factor(placing: Placing) -> Option<f64> {
        geometry_factor(&placing).ok().map(|found| found.value)
    }

    /// NDS Tables 12.5.1A–D (from memory), D = ½ in: full, between, least and below it.
    #[test]
    fn ends() {
        for (load, full) in [
            (EndLoad::Across, 2.0),
            (EndLoad::AwayFromEnd, 2.0),
            (EndLoad::TowardEndSoftwood, 3.5),
            (EndLoad::TowardEndHardwood, 2.5),
        ] {
            let at = |share: f64| factor(Placing { end: Some((inch(full * share), load)), ..plain(Direction::Along) });
            assert_eq!(at(1.2), Some(1.0));
            assert_eq!(at(1.0), Some(1.0));
            assert_eq!(at(0.5), Some(0.5));
            assert!((at(0.8).unwrap() - 0.8).abs() < 1e-12);
            assert_eq!(at(0.49), None);
        }
    }

    #[test]
    fn rows_along_and_across() {
        let along = |spacing: f64| {
            let in_row = Some(RowSpacing { spacing: inch(spacing), attached_needs: None });
            factor(Placing { in_row, ..plain(Direction::Along) })
        };
        assert_eq!([along(2.0), along(1.5), along(1.4)], [Some(1.0), Some(0.75), None]);
        let across = |spacing: f64, needs: Option<f64>| {
            let in_row = Some(RowSpacing { spacing: inch(spacing), attached_needs: needs.map(inch) });
            factor(Placing { in_row, ..plain(Direction::Across) })
        };
        assert_eq!([across(1.5, None), across(1.4, None)], [Some(1.0), None]);
        assert_eq!(
            [across(1.5, Some(2.0)), across(2.0, Some(2.0)), across(1.5, Some(1.0))],
            [Some(0.75), Some(1.0), Some(1.0)]
        );
    }

    #[test]
    fn edges_are_not_reduced() {
        let edge = |loaded: f64, unloaded: f64| Some(Edge { loaded: inch(loaded), unloaded: inch(unloaded) });
        let across = |loaded, unloaded| factor(Placing { edge: edge(loaded, unloaded), ..plain(Direction::Across) });
        assert_eq!([across(2.0, 0.75), across(1.9, 0.75), across(2.0, 0.7)], [Some(1.0), None, None]);
        let along = |nearer: f64, length: f64| {
            let placing = plain(Direction::Along);
            factor(Placing {
                edge: edge(nearer, 9.0),
                bearing_length: inch(length),
                between_rows: Some(inch(3.0)),
                ..placing
            })
        };
        assert_eq!([along(0.75, 3.0), along(0.7, 3.0)], [Some(1.0), None]);
        // l/D over 6: half the row spacing, 1½ in.
        assert_eq!([along(1.4, 3.1), along(1.5, 3.1)], [None, Some(1.0)]);
    }

    #[test]
    fn rows_stand_apart() {
        let between = |direction, length: f64, apart: f64| {
            factor(Placing { between_rows: Some(inch(apart)), bearing_length: inch(length), ..plain(direction) })
                .is_some()
        };
        assert!(between(Direction::Along, 3.0, 0.75) && !between(Direction::Along, 3.0, 0.7));
        assert!(between(Direction::Across, 1.0, 1.25) && !between(Direction::Across, 1.0, 1.2));
        assert!(between(Direction::Across, 3.0, 2.5) && !between(Direction::Across, 3.0, 2.4));
        // l = 2 in: (10 + 5)/8 = 1.875 in.
        assert!(between(Direction::Across, 2.0, 1.875) && !between(Direction::Across, 2.0, 1.87));
    }

    #[test]
    fn the_least_of_all_governs() {
        let placing = Placing {
            end: Some((inch(1.6), EndLoad::Across)),
            in_row: Some(RowSpacing { spacing: inch(1.5), attached_needs: Some(inch(2.0)) }),
            ..plain(Direction::Across)
        };
        assert_eq!(factor(placing), Some(0.75));
        let thin = Placing { diameter: inch(0.2), end: Some((inch(0.1), EndLoad::Across)), ..placing };
        assert_eq!(factor(thin), Some(1.0));
    }

    #[test]
    fn rules_beside_the_factor() {
        assert!(outer_rows(inch(5.0), false).is_ok());
        assert!(outer_rows(inch(5.1), false).is_err());
        assert!(outer_rows(inch(8.0), true).is_ok());
        assert!(hangs_low(inch(3.0), inch(8.0)).is_some());
        assert_eq!(hangs_low(inch(4.0), inch(8.0)), None);
        let lag = |edge: f64, end: f64, spacing: Option<f64>| {
            lag_withdrawal_place(inch(0.5), inch(edge), inch(end), spacing.map(inch)).is_ok()
        };
        assert!(lag(0.75, 2.0, Some(2.0)) && lag(0.75, 2.0, None));
        assert!(!lag(0.7, 2.0, None) && !lag(0.75, 1.9, None) && !lag(0.75, 2.0, Some(1.9)));
    }
}

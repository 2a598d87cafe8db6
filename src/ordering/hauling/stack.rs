//! How a load is laid: in the reverse of the order it is needed, layer on layer.
use super::cargo::Cargo;
use crate::project::{HAIR, Truck};
use crate::units::{Length, sort_by_number, sort_with};

/// Thickness of the bearers between two layers, so that straps and forks find a way (common practice).
pub const BEARER: Length = Length::inches(1.5);

/// A stick as it lies on the load.
#[derive(Clone, Debug, PartialEq)]
pub struct Laid {
    /// The stick.
    pub cargo: Cargo,
    /// Its layer, from 0 on the bed.
    pub layer: usize,
    /// How far it stands out past the bed's end.
    pub stands_out: Length,
}

/// Lays a load: what is needed last goes on first; of what is needed together the heavy and long goes below the light and short.
///
/// A layer holds sticks of one height side by side across the bed, each on its broad face.
#[must_use]
pub fn stack(mut load: Vec<Cargo>, truck: &Truck) -> Vec<Laid> {
    sort_by_number(&mut load, |cargo| -cargo.length.to_inches());
    sort_by_number(&mut load, |cargo| -cargo.weight.to_pounds());
    sort_with(&mut load, |a, b| b.stage.cmp(&a.stage));
    let mut laid: Vec<Laid> = Vec::new();
    let (mut layer, mut wide) = (0, Length::ZERO);
    for cargo in load {
        let across = cargo.section.breadth.max(cargo.section.depth);
        let is_even = laid.last().is_none_or(|last| height(&last.cargo).is_near(height(&cargo), HAIR));
        if !laid.is_empty() && (!is_even || wide + across > truck.bed_width + HAIR) {
            (layer, wide) = (layer + 1, Length::ZERO);
        }
        wide += across;
        let stands_out = cargo.stands_out(truck);
        laid.push(Laid { cargo, layer, stands_out });
    }
    laid
}

/// How high a stick lies on its broad face.
fn height(cargo: &Cargo) -> Length {
    cargo.section.breadth.min(cargo.section.depth)
}

/// Underside and top of each layer above the bed; bearers lie between layers.
#[must_use]
pub fn layers(laid: &[Laid]) -> Vec<(Length, Length)> {
    let mut all: Vec<(Length, Length)> = Vec::new();
    for one in laid {
        if one.layer == all.len() {
            let under = all.last().map_or(Length::ZERO, |(_, top)| *top + BEARER);
            all.push((under, under + height(&one.cargo)));
        }
    }
    all
}

/// The stick of largest section that lies over a smaller one, and the smallest under it: where the order of raising went before
/// weight.
#[must_use]
pub fn heavy_over_light(laid: &[Laid]) -> Option<(&Laid, &Laid)> {
    let area = |one: &Laid| one.cargo.section.area().to_square_inches();
    let mut found: Option<(&Laid, &Laid)> = None;
    for upper in laid {
        let under = laid.iter().filter(|lower| lower.layer < upper.layer && area(lower) < area(upper) - 1e-6);
        let smallest = under.min_by(|a, b| area(a).total_cmp(&area(b)));
        if let Some(lower) = smallest.filter(|_| found.is_none_or(|(known, _)| area(known) < area(upper))) {
            found = Some((upper, lower));
        }
    }
    found
}

//! The path of an uplift is a chain: it is as strong as its weakest link.
use super::Refused;
use crate::units::Force;
use crate::working::{Citation, Step, Worked};

/// One link.
#[derive(Clone, Debug, PartialEq)]
pub struct Link {
    /// What it is: `post top`, `anchor`, `footing weight`.
    pub name: String,
    /// What it must hold; zero or less asks nothing of it.
    pub demand: Force,
    /// What it holds; `None` when no value is known.
    pub capacity: Option<Force>,
    /// Where its capacity stands.
    pub citation: Citation,
}

impl Link {
    /// Demand by capacity: zero when nothing is asked, endless when it holds nothing, `None` when its value is not known.
    #[must_use]
    pub fn ratio(&self) -> Option<f64> {
        if self.demand <= Force::ZERO {
            return Some(0.0);
        }
        self.capacity.map(|capacity| if capacity > Force::ZERO { self.demand / capacity } else { f64::INFINITY })
    }
}

/// The weakest link of a path.
#[derive(Clone, Debug, PartialEq)]
pub struct Weakest {
    /// Its place in the path.
    pub place: usize,
    /// Its name.
    pub name: String,
    /// Its ratio; `None` when no loaded link has a value.
    pub ratio: Option<f64>,
    /// Loaded links without a value: as long as there are any, the path is not shown to hold.
    pub unknown: Vec<String>,
}

impl Weakest {
    /// Whether every link is known and holds.
    #[must_use]
    pub fn holds(&self) -> bool {
        self.unknown.is_empty() && self.ratio.is_some_and(|ratio| ratio <= 1.0)
    }
}

/// Finds the link with the greatest ratio; of equals the first.
///
/// # Errors
/// For a path without links.
pub fn weakest(links: &[Link]) -> Result<Worked<Weakest>, Refused> {
    let mut found: Option<(usize, f64)> = None;
    let (mut unknown, mut steps) = (Vec::new(), Vec::new());
    for (place, link) in links.iter().enumerate() {
        match link.ratio() {
            Some(ratio) if found.is_none_or(|(_, most)| ratio > most) => found = Some((place, ratio)),
            Some(_) => {}
            None => unknown.push(link.name.clone()),
        }
        steps.push(Step::new(link.name.clone(), sentence(link), link.citation));
    }
    let place = found.map_or(0, |(place, _)| place);
    let Some(name) = links.get(place).map(|link| link.name.clone()) else {
        return Err(Refused::because("The path of the uplift has no links: name what holds what."));
    };
    Ok(Worked::new(Weakest { place, name, ratio: found.map(|(_, ratio)| ratio), unknown }, steps))
}

fn sentence(link: &Link) -> String {
    let demand = link.demand.to_pounds();
    match (link.capacity, link.ratio()) {
        (_, Some(0.0)) => "nothing pulls on it".to_owned(),
        (Some(capacity), Some(ratio)) if ratio.is_finite() => {
            format!("{demand:.0}/{:.0} lb = {ratio:.2}", capacity.to_pounds())
        }
        (Some(_), _) => format!("{demand:.0} lb, and it holds nothing"),
        (None, _) => format!("{demand:.0} lb, and no value is known for what it holds"),
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    fn link(name: &str, demand: f64, capacity: Option<f64>) -> Link {
        let citation = Citation::common_practice("invented");
        Link { name: name.to_owned(), demand: Force::pounds(demand), capacity: capacity.map(Force::pounds), citation }
    }

    #[test]
    fn the_weakest_is_named() {
        let path = [
            link("rafter tie", 300.0, Some(500.0)),
            link("post top", 900.0, Some(1000.0)),
            link("anchor", 900.0, Some(2000.0)),
        ];
        let found = weakest(&path).unwrap();
        assert_eq!((found.value.place, found.value.name.as_str(), found.value.ratio), (1, "post top", Some(0.9)));
        assert!(found.value.holds());
        assert_eq!(found.steps[1].says, "900/1000 lb = 0.90");
    }

    #[test]
    fn a_missing_value_is_no_strength() {
        let path = [link("rafter tie", 300.0, Some(500.0)), link("base", 900.0, None), link("idle", -50.0, None)];
        let found = weakest(&path).unwrap().value;
        assert_eq!((found.name.as_str(), found.unknown.as_slice()), ("rafter tie", ["base".to_owned()].as_slice()));
        assert!(!found.holds());
        let only = weakest(&[link("base", 900.0, None)]).unwrap().value;
        assert_eq!((only.ratio, only.holds()), (None, false));
    }

    #[test]
    fn what_holds_nothing_is_weakest() {
        let path = [link("a", 900.0, Some(100.0)), link("b", 1.0, Some(0.0))];
        let found = weakest(&path).unwrap().value;
        assert_eq!((found.place, found.ratio), (1, Some(f64::INFINITY)));
        assert!(weakest(&[]).is_err());
        assert_eq!(weakest(&[link("idle", 0.0, None)]).unwrap().value.ratio, Some(0.0));
    }
}

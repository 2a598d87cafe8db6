//! Concrete by the bag: what each size yields, in `tables/bags.csv`.
use std::sync::OnceLock;

use super::Refused;
use super::refused::above_zero;
use super::table::{confidence, rows};
use crate::materials::Confidence;
use crate::units::{Volume, Weight};
use crate::working::{Citation, Step, Worked};

/// One size of bag.
#[derive(Clone, Debug, PartialEq)]
pub struct Bag {
    /// Name in project files.
    pub key: String,
    /// What it weighs.
    pub weight: Weight,
    /// What it yields, mixed.
    pub volume: Volume,
    /// Where the yield comes from.
    pub source: String,
    /// How far it can be trusted.
    pub confidence: Confidence,
}

/// Every size.
#[must_use]
pub fn bags() -> &'static [Bag] {
    static TABLE: OnceLock<Vec<Bag>> = OnceLock::new();
    TABLE.get_or_init(|| {
        let read = |cells: &[&str]| {
            let &[key, weight, volume, source, trust] = cells else { return None };
            Some(Bag {
                key: key.to_owned(),
                weight: Weight::try_pounds(weight.parse().ok()?)?,
                volume: Volume::try_cubic_feet(volume.parse().ok()?)?,
                source: source.to_owned(),
                confidence: confidence(trust),
            })
        };
        rows(include_str!("tables/bags.csv")).filter_map(|cells| read(&cells)).collect()
    })
}

/// How many bags of one size.
#[derive(Clone, Debug, PartialEq)]
pub struct BagCount {
    /// The size.
    pub bag: &'static Bag,
    /// Before rounding up.
    pub exact: f64,
    /// Bags to buy.
    pub whole: u32,
}

/// Bags of every size for a volume, with a share added for waste (0.10 by common practice, 0 for none).
///
/// # Errors
/// For no volume, more than a truck should bring, or a share outside 0 to 1.
pub fn bag_counts(volume: Volume, waste: f64) -> Result<Worked<Vec<BagCount>>, Refused> {
    above_zero("the volume of concrete", volume.to_cubic_feet())?;
    if !(0.0..=1.0).contains(&waste) {
        return Err(Refused::because("What is added for waste lies between nothing and as much again."));
    }
    if volume > Volume::cubic_feet(2700.0) {
        return Err(Refused::because("That is more than 100 cubic yards: order ready-mixed concrete, not bags."));
    }
    let with_waste = volume * (1.0 + waste);
    let (mut counts, mut steps) = (Vec::new(), Vec::new());
    for bag in bags() {
        let exact = with_waste / bag.volume;
        let whole = (exact - 1e-9).ceil() as u32;
        let says = format!(
            "{:.2} ft³·{:.2}/{:.3} ft³ = {exact:.1} → {whole} bags of {:.0} lb",
            volume.to_cubic_feet(),
            1.0 + waste,
            bag.volume.to_cubic_feet(),
            bag.weight.to_pounds()
        );
        let citation = Citation { document: "bagged concrete", clause: "yield of a bag", confidence: bag.confidence };
        steps.push(Step::new("bags", says, citation));
        counts.push(BagCount { bag, exact, whole });
    }
    Ok(Worked::new(counts, steps))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    #[test]
    fn every_row_is_read() {
        assert_eq!(bags().len(), include_str!("tables/bags.csv").lines().count() - 1);
    }

    /// A cubic yard: 45 bags of 80 lb or 60 of 60 lb, as the pages on bagged concrete agree.
    #[test]
    fn a_yard() {
        let counts = bag_counts(Volume::cubic_feet(27.0), 0.0).unwrap().value;
        let of = |pounds: f64| counts.iter().find(|count| count.bag.weight.to_pounds() == pounds).unwrap().whole;
        assert_eq!([of(40.0), of(50.0), of(60.0), of(80.0)], [90, 72, 60, 45]);
        let more = bag_counts(Volume::cubic_feet(27.0), 0.10).unwrap().value;
        assert_eq!(more[3].whole, 50);
    }

    #[test]
    fn limits() {
        assert!(bag_counts(Volume::ZERO, 0.1).is_err());
        assert!(bag_counts(Volume::cubic_feet(1.0), -0.1).is_err());
        assert!(bag_counts(Volume::cubic_feet(1.0), 1.1).is_err());
        assert!(bag_counts(Volume::cubic_feet(2701.0), 0.1).is_err());
    }
}

//! Combinations with each of their loads chosen: one snow case, one wind case at a time.
use super::origin::Origin;
use super::roof_cases::RoofCase;
use crate::loads::{Action, Combination, Duration, Edition, combinations};
use crate::working::Confidence;

/// One combination of one choice of cases.
#[derive(Clone, Debug, PartialEq)]
pub struct Loading {
    /// `D + 0.75S + 0.45W: leeward drift, wind from the eave`.
    pub name: String,
    /// Factor of the dead load.
    pub dead: f64,
    /// It is there to find uplift: the dead load is the light one.
    pub is_uplift: bool,
    /// Factor and place in the list of each case that takes part.
    pub parts: Vec<(f64, usize)>,
    /// Sets C_D.
    pub duration: Duration,
    /// Of the weakest of its cases and of the combination itself; where the wood's weight is all that presses, or holds down, of
    /// that too.
    pub confidence: Confidence,
}

impl Loading {
    /// What the combination takes of one action; nothing where none of its cases is of it.
    #[must_use]
    pub fn factor(&self, cases: &[RoofCase], action: Action) -> f64 {
        let is_of = |index: usize| cases.get(index).is_some_and(|case| case.action == action);
        self.parts.iter().filter(|(_, index)| is_of(*index)).map(|(factor, _)| *factor).sum()
    }
}

/// A value with the combination that makes it.
#[derive(Clone, Debug, PartialEq)]
pub struct Demand<Q> {
    /// The value.
    pub value: Q,
    /// The combination.
    pub combination: String,
    /// Sets C_D.
    pub duration: Duration,
    /// Where it comes from.
    pub origin: Origin,
}

/// Every combination of the edition with every choice of the cases; `weight`: how sure the wood's weight is.
#[must_use]
pub fn loadings(edition: Edition, cases: &[RoofCase], weight: Confidence) -> Vec<Loading> {
    let mut present: Vec<Action> = Vec::new();
    for case in cases {
        if !present.contains(&case.action) {
            present.push(case.action);
        }
    }
    let all = combinations(edition, &present);
    let worth = all.iter().filter(|combination| !all.iter().any(|other| lies_within(combination, other)));
    let mut found: Vec<Loading> = worth.flat_map(|combination| chosen(combination, cases)).collect();
    for loading in found.iter_mut().filter(|loading| hangs_on_weight(loading.is_uplift, &loading.parts)) {
        loading.confidence = loading.confidence.max(weight);
    }
    found
}

/// Whether a combination is of the weight alone, or has it hold down what wind lifts; beside snow or people a placeholder of a
/// weight changes little.
fn hangs_on_weight(is_uplift: bool, parts: &[(f64, usize)]) -> bool {
    is_uplift || parts.is_empty()
}

/// The same loads with none of them larger: what it makes lies between dead load alone and the other combination.
pub(super) fn lies_within(combination: &Combination, other: &Combination) -> bool {
    let (own, theirs) = (&combination.factors, &other.factors);
    let alike =
        own.len() == theirs.len() && own.iter().all(|(action, _)| theirs.iter().any(|(theirs, _)| theirs == action));
    let dead = combination.factor(Action::Dead) == other.factor(Action::Dead);
    let smaller = own.iter().all(|(action, factor)| factor.abs() <= other.factor(*action).abs());
    own != theirs && alike && dead && smaller
}

fn chosen(combination: &Combination, cases: &[RoofCase]) -> Vec<Loading> {
    let mut choices: Vec<Vec<(f64, usize)>> = vec![Vec::new()];
    for (action, factor) in combination.factors.iter().filter(|(action, _)| *action != Action::Dead) {
        let of_action = || (0..cases.len()).filter(|index| cases[*index].action == *action);
        let with = |so_far: &Vec<(f64, usize)>, index| {
            let mut next = Vec::with_capacity(so_far.len() + 1);
            next.extend_from_slice(so_far);
            next.push((*factor, index));
            next
        };
        choices = choices.iter().flat_map(|so_far| of_action().map(move |index| with(so_far, index))).collect();
    }
    let loading = |parts: Vec<(f64, usize)>| Loading {
        name: named(combination, &parts, cases),
        dead: combination.factor(Action::Dead),
        is_uplift: combination.is_uplift(),
        duration: combination.duration,
        confidence: parts
            .iter()
            .map(|(_, index)| cases[*index].confidence)
            .fold(combination.citation.confidence, Confidence::max),
        parts,
    };
    choices.into_iter().map(loading).collect()
}

/// `D + 0.75S + 0.45W: leeward drift, wind from the eave`.
fn named(combination: &Combination, parts: &[(f64, usize)], cases: &[RoofCase]) -> String {
    let of_parts = || parts.iter().map(|(_, index)| cases[*index].name.as_str());
    let mut name = String::with_capacity(of_parts().map(|name| name.len() + 2).sum::<usize>() + combination.name.len());
    name.push_str(&combination.name);
    for (place, part) in of_parts().enumerate() {
        name.push_str(if place == 0 { ": " } else { ", " });
        name.push_str(part);
    }
    name
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_snow_with_every_wind() {
        let case = |name: &str, action| RoofCase {
            confidence: if name == "wall" { Confidence::Low } else { Confidence::Medium },
            ..RoofCase::new(name, action, Vec::new())
        };
        let cases = [
            case("balanced", Action::Snow),
            case("drift", Action::Snow),
            case("eave", Action::Wind),
            case("wall", Action::Wind),
        ];
        let found = loadings(Edition::Asce7_16, &cases, Confidence::Medium);
        let names: Vec<&str> = found.iter().map(|loading| loading.name.as_str()).collect();
        // D; D + S twice; D + 0.6W twice; D + 0.75S + 0.45W four times; 0.6D + 0.6W twice.
        assert_eq!(names.len(), 11, "{names:?}");
        assert!(names.contains(&"D + 0.75S + 0.45W: drift, wall"));
        let uplift = found.iter().filter(|loading| loading.is_uplift).count();
        assert_eq!(uplift, 2);
        // The wind on the wall is a placeholder here: what it takes part in is no surer, and nothing else falls with it.
        for loading in &found {
            let has_wall = loading.name.ends_with("wall");
            assert_eq!(loading.confidence == Confidence::Low, has_wall, "{}", loading.name);
        }
        // A weight that is a placeholder: of D alone and of both that lift, and of no other.
        let unsure = loadings(Edition::Asce7_16, &cases, Confidence::Low);
        for (before, after) in found.iter().zip(&unsure) {
            let hangs = after.is_uplift || after.name == "D";
            let expected = if hangs { Confidence::Low } else { before.confidence };
            assert_eq!(after.confidence, expected, "{}", after.name);
        }
    }
}

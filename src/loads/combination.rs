//! Allowable-stress combinations of the actions, each with its own load duration.
use super::{Duration, Edition};
use crate::working::{Citation, Confidence};

/// What pushes on the frame.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Action {
    /// D: own weight.
    Dead,
    /// L: use of a floor; an open lean-to has none.
    Live,
    /// L_r: roof live load.
    RoofLive,
    /// S: snow, each of its cases by itself.
    Snow,
    /// W: wind, each of its cases by itself; along the wall both ways.
    Wind,
    /// E_h: earthquake, sideways, both ways.
    SeismicSideways,
    /// E_v: earthquake, downward.
    SeismicDown,
    /// A person at upkeep work.
    Person,
}

impl Action {
    /// The letters it has in a combination.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Dead => "D",
            Self::Live => "L",
            Self::RoofLive => "L_r",
            Self::Snow => "S",
            Self::Wind => "W",
            Self::SeismicSideways => "E_h",
            Self::SeismicDown => "E_v",
            Self::Person => "P",
        }
    }

    /// How long, added up, it acts at full strength.
    #[must_use]
    pub const fn duration(self) -> Duration {
        match self {
            Self::Dead => Duration::Permanent,
            Self::Live => Duration::TenYears,
            Self::Snow => Duration::TwoMonths,
            Self::RoofLive | Self::Person => Duration::SevenDays,
            Self::Wind | Self::SeismicSideways | Self::SeismicDown => Duration::TenMinutes,
        }
    }
}

/// Actions that are taken to act together.
#[derive(Clone, Debug, PartialEq)]
pub struct Combination {
    /// `D + 0.75S + 0.45W`.
    pub name: String,
    /// Each action with its factor.
    pub factors: Vec<(Action, f64)>,
    /// Set by the action that lasts shortest.
    pub duration: Duration,
    /// Where it is printed.
    pub citation: Citation,
}

impl Combination {
    fn of(factors: Vec<(Action, f64)>, citation: Citation) -> Self {
        let duration = factors.iter().map(|(action, _)| action.duration()).max().unwrap_or(Duration::Permanent);
        Self { name: name(&factors), factors, duration, citation }
    }

    /// The factor of an action; zero when it takes no part.
    #[must_use]
    pub fn factor(&self, action: Action) -> f64 {
        self.factors.iter().filter(|(own, _)| *own == action).map(|(_, factor)| factor).sum()
    }

    /// Whether it is there to find uplift or overturning: little dead load holds the frame down.
    #[must_use]
    pub fn is_uplift(&self) -> bool {
        self.factor(Action::Dead) < 1.0
    }
}

fn name(factors: &[(Action, f64)]) -> String {
    let mut text = String::new();
    for (action, factor) in factors {
        let size = factor.abs();
        let sign = match (text.is_empty(), *factor < 0.0) {
            (true, false) => "",
            (true, true) => "−",
            (false, false) => " + ",
            (false, true) => " − ",
        };
        text.push_str(sign);
        if size != 1.0 {
            text.push_str(&size.to_string());
        }
        text.push_str(action.symbol());
    }
    text
}

type Row = (&'static str, Vec<(Action, f64)>, Confidence);

/// The printed list. `snow` is 1 by 7-16 and 0.7 by 7-22, where snow is given at strength level.
fn printed(edition: Edition) -> Vec<Row> {
    use Action::{
        Dead as D, Live as L, RoofLive as Lr, SeismicDown as Ev, SeismicSideways as Eh, Snow as S, Wind as W,
    };
    // 0.7 of 0.75 is 0.525, written out so that the name shows no noise of the arithmetic.
    let known = Confidence::Medium;
    let (snow, part, with_seismic, of_it) = match edition {
        Edition::Asce7_16 => (1.0, 0.75, 0.75, known),
        Edition::Asce7_22 => (0.7, 0.525, 0.1, Confidence::Low),
    };
    vec![
        ("2.4.1 (1)", vec![(D, 1.0)], known),
        ("2.4.1 (2)", vec![(D, 1.0), (L, 1.0)], known),
        ("2.4.1 (3)", vec![(D, 1.0), (Lr, 1.0)], known),
        ("2.4.1 (3)", vec![(D, 1.0), (S, snow)], known),
        ("2.4.1 (4)", vec![(D, 1.0), (L, 0.75), (Lr, 0.75)], known),
        ("2.4.1 (4)", vec![(D, 1.0), (L, 0.75), (S, part)], known),
        ("2.4.1 (5)", vec![(D, 1.0), (W, 0.6)], known),
        ("2.4.1 (6)", vec![(D, 1.0), (L, 0.75), (Lr, 0.75), (W, 0.45)], known),
        ("2.4.1 (6)", vec![(D, 1.0), (L, 0.75), (S, part), (W, 0.45)], known),
        ("2.4.1 (7)", vec![(D, 0.6), (W, 0.6)], known),
        ("2.4.5 (8)", vec![(D, 1.0), (Ev, 0.7), (Eh, 0.7)], known),
        ("2.4.5 (9)", vec![(D, 1.0), (Ev, 0.525), (Eh, 0.525), (L, 0.75), (S, with_seismic)], of_it),
        ("2.4.5 (10)", vec![(D, 0.6), (Ev, -0.7), (Eh, 0.7)], known),
        ("4.8, maintenance load", vec![(D, 1.0), (Action::Person, 1.0)], known),
    ]
}

/// The share of a snow load under which movements are judged: what it is at the level of allowable stress. By 7-22 snow is given
/// at strength level.
#[must_use]
pub const fn passing_snow(edition: Edition) -> f64 {
    match edition {
        Edition::Asce7_16 => 1.0,
        Edition::Asce7_22 => 0.7,
    }
}

/// The share of a wind of strength level that stresses are judged with (ASCE 7-16, 2.4.1), and movements where no rule names
/// another.
pub const ALLOWABLE_WIND: f64 = 0.6;

/// All combinations in which the given actions take part; dead load always does.
///
/// An action that is not there drops out of the printed combination, and what is then said twice is said once. Rain on
/// the roof (R) is left out: a sloping roof with a free eave holds none.
/// ASCE 7, 2.4.1 and 2.4.5, from memory; 0.1S beside an earthquake by 7-22 is a placeholder.
#[must_use]
pub fn combinations(edition: Edition, present: &[Action]) -> Vec<Combination> {
    let mut found: Vec<Combination> = Vec::new();
    for (clause, mut factors, confidence) in printed(edition) {
        factors.retain(|(action, _)| *action == Action::Dead || present.contains(action));
        let is_short_dead = matches!(factors[..], [(Action::Dead, factor)] if factor < 1.0);
        if is_short_dead || found.iter().any(|other| other.factors == factors) {
            continue;
        }
        found.push(Combination::of(factors, Citation { document: edition.name(), clause, confidence }));
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn names(edition: Edition, present: &[Action]) -> Vec<String> {
        combinations(edition, present).into_iter().map(|combination| combination.name).collect()
    }

    const OPEN_ROOF: [Action; 4] = [Action::RoofLive, Action::Snow, Action::Wind, Action::Person];

    #[test]
    fn an_open_roof() {
        let expected = [
            "D",
            "D + L_r",
            "D + S",
            "D + 0.75L_r",
            "D + 0.75S",
            "D + 0.6W",
            "D + 0.75L_r + 0.45W",
            "D + 0.75S + 0.45W",
            "0.6D + 0.6W",
            "D + P",
        ];
        assert_eq!(names(Edition::Asce7_16, &OPEN_ROOF), expected);
        let later = names(Edition::Asce7_22, &OPEN_ROOF);
        assert_eq!(later[2], "D + 0.7S");
        assert_eq!(later[7], "D + 0.525S + 0.45W");
    }

    #[test]
    fn dead_alone_once_and_never_less_of_it() {
        assert_eq!(names(Edition::Asce7_16, &[]), ["D"]);
    }

    #[test]
    fn earthquake() {
        let quake = [Action::SeismicSideways, Action::SeismicDown, Action::Snow];
        let found = names(Edition::Asce7_16, &quake);
        assert!(found.contains(&"D + 0.525E_v + 0.525E_h + 0.75S".to_owned()));
        assert!(found.contains(&"0.6D − 0.7E_v + 0.7E_h".to_owned()));
        assert!(names(Edition::Asce7_22, &quake).contains(&"D + 0.525E_v + 0.525E_h + 0.1S".to_owned()));
    }

    #[test]
    fn the_shortest_load_sets_the_duration() {
        let duration = |name: &str| {
            let all = combinations(Edition::Asce7_16, &[Action::Live, Action::RoofLive, Action::Snow, Action::Wind]);
            all.into_iter().find(|combination| combination.name == name).map(|combination| combination.duration)
        };
        assert_eq!(duration("D"), Some(Duration::Permanent));
        assert_eq!(duration("D + L"), Some(Duration::TenYears));
        assert_eq!(duration("D + S"), Some(Duration::TwoMonths));
        assert_eq!(duration("D + 0.75L + 0.75L_r"), Some(Duration::SevenDays));
        assert_eq!(duration("D + 0.75L + 0.75S + 0.45W"), Some(Duration::TenMinutes));
    }

    #[test]
    fn factors_and_uplift() {
        let all = combinations(Edition::Asce7_16, &OPEN_ROOF);
        let uplift: Vec<&Combination> = all.iter().filter(|combination| combination.is_uplift()).collect();
        assert_eq!(uplift.len(), 1);
        assert_eq!(uplift[0].factor(Action::Wind), 0.6);
        assert_eq!(uplift[0].factor(Action::Snow), 0.0);
    }
}

//! Which datum a check waits for: what only the user, the authority or a maker can say.
use super::check::Check;

/// A datum that is not there.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Input {
    /// Ground snow of the place.
    GroundSnow,
    /// Wind speed of the place.
    WindSpeed,
    /// Winter wind parameter of the place (ASCE 7-22).
    WinterWind,
    /// Force coefficient of the frame's parts.
    ForceCoefficient,
    /// From the eave of the roof above to its ridge.
    EaveToRidge,
    /// Length of the roof above, square to the wall.
    RoofAbove,
    /// The soil.
    Soil,
    /// The depth of frost.
    FrostDepth,
    /// Where the posts of the wall stand.
    WallPosts,
    /// The wood of the wall's posts.
    WallWood,
    /// What fixes the ledger.
    LedgerFixing,
    /// How many rows of it.
    LedgerRows,
    /// The washers of the ledger's fixings.
    LedgerWasher,
    /// What a maker states of its own screw through the ledger.
    MakersScrew,
    /// The screw of the purlins.
    PurlinScrew,
    /// The screw of the sheets.
    SheetScrew,
    /// What the sheet carries at a washer.
    SheetPullOver,
    /// The tie of a rafter to the ledger.
    RafterHead,
    /// The tie of a rafter to the beam.
    RafterSeat,
    /// The screws or bolts of the scarfs.
    Scarf,
    /// The anchor of a post.
    PostBase,
}

/// Each with the words the sentences of the checks name it by, what it is called, and its field in a project file.
const INPUTS: [(Input, &str, &str, &str); 21] = [
    (Input::GroundSnow, "ground snow is missing", "ground snow", "place.ground_snow"),
    (Input::WindSpeed, "wind speed is missing", "wind speed", "place.wind_speed"),
    (Input::WinterWind, "the winter wind parameter W2 is missing", "the winter wind parameter W2", "place.winter_wind"),
    (
        Input::ForceCoefficient,
        "the force coefficient C_f of beam",
        "the force coefficient C_f",
        "place.member_force_coefficient",
    ),
    (
        Input::EaveToRidge,
        "the distance from the eave above to its ridge is missing",
        "the distance from the eave above to its ridge",
        "above.eave_to_ridge",
    ),
    (Input::RoofAbove, "the length of the roof above", "the length of the roof above", "above.whole_length"),
    (Input::Soil, "the soil is missing", "the soil", "ground.soil"),
    (Input::FrostDepth, "The frost depth is not given", "the frost depth", "ground.frost_depth"),
    (
        Input::WallPosts,
        "the posts of the wall are missing",
        "where the posts of the wall stand",
        "site.wall_post_spacing",
    ),
    (
        Input::WallWood,
        "the wood of the wall's posts is missing",
        "the wood of the wall’s posts",
        "fixings.ledger.wall_species",
    ),
    (Input::LedgerFixing, "the screw of the ledger is missing", "what fixes the ledger", "fixings.ledger.fastener"),
    (
        Input::LedgerRows,
        "the rows of the ledger's fixings are missing",
        "the rows of the ledger’s fixings",
        "fixings.ledger.rows",
    ),
    (
        Input::LedgerWasher,
        "the washers of the ledger's fixings are missing",
        "the washers of the ledger’s fixings",
        "fixings.ledger.washer",
    ),
    (
        Input::MakersScrew,
        "of the maker's screw",
        "what the maker states of the ledger’s screw",
        "fixings.ledger.makers",
    ),
    (Input::PurlinScrew, "the screw of the purlins is missing", "the screw of the purlins", "fixings.purlin.fastener"),
    (Input::SheetScrew, "the sheets' screw is missing", "the screw of the sheets", "fixings.sheet.screw.fastener"),
    (
        Input::SheetPullOver,
        "the load at which the sheet pulls over",
        "what the sheet holds at a washer",
        "fixings.sheet.pull_over",
    ),
    (Input::RafterHead, "tie of a rafter to the ledger", "the tie of a rafter to the ledger", "fixings.rafter_head"),
    (Input::RafterSeat, "tie of a rafter to the beam", "the tie of a rafter to the beam", "fixings.rafter_seat"),
    (
        Input::Scarf,
        "the screws or bolts that must hold it are missing",
        "the screws or bolts of the scarfs",
        "fixings.scarf",
    ),
    (Input::PostBase, "base of a post", "the anchor of a post", "fixings.post_base"),
];

impl Input {
    /// The datum a sentence waits for; nothing where it says something else.
    #[must_use]
    pub fn named_in(sentence: &str) -> Option<Self> {
        INPUTS.iter().find(|(_, phrase, ..)| sentence.contains(phrase)).map(|(input, ..)| *input)
    }

    /// What it is called.
    #[must_use]
    pub fn name(self) -> &'static str {
        self.row().0
    }

    /// Its field in a project file.
    #[must_use]
    pub fn field(self) -> &'static str {
        self.row().1
    }

    /// Its names are one or many.
    fn verb(self) -> &'static str {
        match self {
            Self::LedgerRows | Self::LedgerWasher | Self::Scarf => "are missing",
            Self::WallPosts | Self::LedgerFixing | Self::MakersScrew | Self::SheetPullOver => "is not said",
            _ => "is missing",
        }
    }

    fn row(self) -> (&'static str, &'static str) {
        let found = INPUTS.iter().find(|(input, ..)| *input == self);
        found.map_or(("", ""), |(_, _, name, field)| (*name, *field))
    }
}

/// Checks that wait for the same datum.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Waiting {
    /// What they wait for.
    pub input: Input,
    /// Their places in the list they were taken from.
    pub places: Vec<usize>,
}

impl Waiting {
    /// `not judged for 14 checks: ground snow is missing`.
    #[must_use]
    pub fn says(&self) -> String {
        let (n, name) = (self.places.len(), self.input.name());
        format!("not judged for {n} {}: {name} {}", if n == 1 { "check" } else { "checks" }, self.input.verb())
    }
}

/// The checks that were not made, by the datum they wait for, in the order in which they stand; those that wait for none of ours
/// are left out.
#[must_use]
pub fn waiting<'a>(checks: impl IntoIterator<Item = (usize, &'a Check)>) -> Vec<Waiting> {
    let mut found: Vec<Waiting> = Vec::new();
    for (place, check) in checks {
        let Some(input) = check.missing() else { continue };
        match found.iter_mut().find(|waiting| waiting.input == input) {
            Some(waiting) => waiting.places.push(place),
            None => found.push(Waiting { input, places: vec![place] }),
        }
    }
    found
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::checks::strength;
    use crate::evaluate;
    use crate::loads::Edition;
    use crate::project::{MAKERS_OWN, Project, demo};
    use crate::units::{Force, Length};

    type Change = fn(&mut Project);

    /// Where snow drifts and slides from the roof above.
    fn under_a_high_eave(project: &mut Project) {
        project.site.eave_edge += Length::inches(60.0);
        project.above.snow_guards = false;
    }

    /// Each datum taken from the barn alone leaves checks that wait for it, and they say so as data.
    #[test]
    fn every_datum_is_told_from_its_sentence() {
        let all: [(Input, Change); 21] = [
            (Input::GroundSnow, |p| p.place.ground_snow = None),
            (Input::WindSpeed, |p| p.place.wind_speed = None),
            (Input::WinterWind, |p| {
                under_a_high_eave(p);
                (p.place.edition, p.place.winter_wind) = (Edition::Asce7_22, None);
            }),
            (Input::ForceCoefficient, |p| p.place.member_force_coefficient = None),
            (Input::EaveToRidge, |p| {
                under_a_high_eave(p);
                p.above.eave_to_ridge = None;
            }),
            (Input::RoofAbove, |p| {
                under_a_high_eave(p);
                p.above.whole_length = None;
            }),
            (Input::Soil, |p| p.ground.soil.clear()),
            (Input::FrostDepth, |p| p.ground.frost_depth = None),
            (Input::WallPosts, |p| p.site.wall_post_spacing = Length::ZERO),
            (Input::WallWood, |p| p.fixings.ledger.wall_species.clear()),
            (Input::LedgerFixing, |p| p.fixings.ledger.fastener.clear()),
            (Input::LedgerRows, |p| p.fixings.ledger.rows = 0),
            (Input::LedgerWasher, |p| p.fixings.ledger.washer = Length::ZERO),
            (Input::MakersScrew, |p| p.fixings.ledger.fastener = MAKERS_OWN.to_owned()),
            (Input::PurlinScrew, |p| p.fixings.purlin.fastener.clear()),
            (Input::SheetScrew, |p| p.fixings.sheet.screw.fastener.clear()),
            (Input::SheetPullOver, |p| p.fixings.sheet.pull_over = Force::ZERO),
            (Input::RafterHead, |p| p.fixings.rafter_head.count = 0),
            (Input::RafterSeat, |p| p.fixings.rafter_seat.count = 0),
            (Input::Scarf, |p| p.fixings.scarf.count = 0),
            (Input::PostBase, |p| p.fixings.post_base.count = 0),
        ];
        let shape = &evaluate(&demo::wool_barn()).built.unwrap().shape;
        for (input, change) in all {
            let mut project = demo::wool_barn();
            change(&mut project);
            let found = strength(&project, shape);
            let waiting = waiting(found.checks.iter().enumerate());
            let open: Vec<&str> =
                found.checks.iter().filter(|check| check.ratio().is_none()).map(|check| check.name.as_str()).collect();
            assert!(waiting.iter().any(|group| group.input == input), "{input:?}: {waiting:?} {open:?}");
            assert!(
                waiting.iter().all(|group| group.places.iter().all(|place| found.checks[*place].ratio().is_none()))
            );
        }
    }

    #[test]
    fn every_input_has_a_name_and_a_field() {
        assert!(INPUTS.iter().all(|(input, ..)| !input.name().is_empty() && input.field().contains('.')));
        assert_eq!(Input::named_in("the ledger reaches fewer than two posts of the wall"), None);
    }

    #[test]
    fn groups_speak_plainly() {
        let check = |why: &str| Check::not_judged("B1", "bends", why);
        let all = [
            check("ground snow is missing; ask"),
            check("soil of clay"),
            check("ground snow is missing"),
            check("the soil is missing: ask"),
        ];
        let found = waiting(all.iter().enumerate());
        assert_eq!(found.len(), 2);
        assert_eq!(found[0].places, [0, 2]);
        assert_eq!(found[0].says(), "not judged for 2 checks: ground snow is missing");
        assert_eq!(found[1].says(), "not judged for 1 check: the soil is missing");
        let rows = Waiting { input: Input::LedgerRows, places: vec![1, 2] };
        assert!(rows.says().ends_with("the rows of the ledger’s fixings are missing"));
    }
}

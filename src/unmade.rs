//! Why something was not worked out: the sentence, and the datum it waits for, where it is one the user can give.
use std::fmt;

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
    /// What its maker states of it.
    RafterHeadValues,
    /// The tie of a rafter to the beam.
    RafterSeat,
    /// What its maker states of it.
    RafterSeatValues,
    /// The screws or bolts of the scarfs.
    Scarf,
    /// The anchor of a post.
    PostBase,
    /// What its maker states of it.
    PostBaseValues,
    /// How deep the anchor of a post is cast in.
    AnchorDepth,
    /// The bars from a pier to its footing.
    PierBars,
}

impl Input {
    /// What it is called.
    #[must_use]
    pub const fn name(self) -> &'static str {
        self.row().0
    }

    /// Its field in a project file.
    #[must_use]
    pub const fn field(self) -> &'static str {
        self.row().1
    }

    /// Its names are one or many.
    #[must_use]
    pub const fn verb(self) -> &'static str {
        match self {
            Self::LedgerRows | Self::LedgerWasher | Self::Scarf | Self::PierBars => "are missing",
            Self::WallPosts
            | Self::LedgerFixing
            | Self::MakersScrew
            | Self::SheetPullOver
            | Self::RafterHeadValues
            | Self::RafterSeatValues
            | Self::PostBaseValues
            | Self::AnchorDepth => "is not said",
            _ => "is missing",
        }
    }

    const fn row(self) -> (&'static str, &'static str) {
        match self {
            Self::GroundSnow => ("ground snow", "place.ground_snow"),
            Self::WindSpeed => ("wind speed", "place.wind_speed"),
            Self::WinterWind => ("the winter wind parameter W2", "place.winter_wind"),
            Self::ForceCoefficient => ("the force coefficient C_f", "place.member_force_coefficient"),
            Self::EaveToRidge => ("the distance from the eave above to its ridge", "above.eave_to_ridge"),
            Self::RoofAbove => ("the length of the roof above", "above.whole_length"),
            Self::Soil => ("the soil", "ground.soil"),
            Self::FrostDepth => ("the frost depth", "ground.frost_depth"),
            Self::WallPosts => ("where the posts of the wall stand", "site.wall_post_spacing"),
            Self::WallWood => ("the wood of the wall’s posts", "fixings.ledger.wall_species"),
            Self::LedgerFixing => ("what fixes the ledger", "fixings.ledger.fastener"),
            Self::LedgerRows => ("the rows of the ledger’s fixings", "fixings.ledger.rows"),
            Self::LedgerWasher => ("the washers of the ledger’s fixings", "fixings.ledger.washer"),
            Self::MakersScrew => ("what the maker states of the ledger’s screw", "fixings.ledger.makers"),
            Self::PurlinScrew => ("the screw of the purlins", "fixings.purlin.fastener"),
            Self::SheetScrew => ("the screw of the sheets", "fixings.sheet.screw.fastener"),
            Self::SheetPullOver => ("what the sheet holds at a washer", "fixings.sheet.pull_over"),
            Self::RafterHead => ("the tie of a rafter to the ledger", "fixings.rafter_head"),
            Self::RafterHeadValues => {
                ("what the maker states of the tie of a rafter to the ledger", "fixings.rafter_head")
            }
            Self::RafterSeat => ("the tie of a rafter to the beam", "fixings.rafter_seat"),
            Self::RafterSeatValues => {
                ("what the maker states of the tie of a rafter to the beam", "fixings.rafter_seat")
            }
            Self::Scarf => ("the screws or bolts of the scarfs", "fixings.scarf"),
            Self::PostBase => ("the anchor of a post", "fixings.post_base"),
            Self::PostBaseValues => ("what the maker states of the anchor of a post", "fixings.post_base"),
            Self::AnchorDepth => ("how deep the anchors of the posts are cast in", "fixings.pier.anchor_depth"),
            Self::PierBars => ("the bars from the piers to their footings", "fixings.pier.bars"),
        }
    }
}

/// Why there is no answer. It is set where the datum is found missing, and handed on: nobody reads it out of the words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unmade {
    /// A sentence that reads on after `not judged: `.
    pub says: String,
    /// The datum that is missing; nothing where it is something else.
    pub missing: Option<Input>,
}

impl Unmade {
    /// For want of that datum.
    #[must_use]
    pub fn missing(input: Input, says: impl Into<String>) -> Self {
        Self { says: says.into(), missing: Some(input) }
    }

    /// The same reason with more words.
    #[must_use]
    pub fn saying(self, says: impl Into<String>) -> Self {
        Self { says: says.into(), ..self }
    }
}

impl fmt::Display for Unmade {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.says)
    }
}

impl From<String> for Unmade {
    fn from(says: String) -> Self {
        Self { says, missing: None }
    }
}

impl From<&str> for Unmade {
    fn from(says: &str) -> Self {
        says.to_owned().into()
    }
}

impl From<&Self> for Unmade {
    fn from(own: &Self) -> Self {
        own.clone()
    }
}

//! What the building authority, the maps and the ground around say about the site.
use super::{Refused, WindSpeed};
use crate::units::{AreaLoad, Length};
use crate::unmade::Input;
use crate::working::Citation;

/// Which printing of the load standard is worked by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Edition {
    /// ASCE 7-16: snow at service level, times an importance factor.
    Asce7_16,
    /// ASCE 7-22: ground snow by risk category, at strength level.
    Asce7_22,
}

impl Edition {
    /// `ASCE 7-16`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Asce7_16 => "ASCE 7-16",
            Self::Asce7_22 => "ASCE 7-22",
        }
    }

    /// Compared with a published text that prints this clause.
    pub(super) const fn seen(self, clause: &'static str) -> Citation {
        Citation::seen(self.name(), clause)
    }

    /// Recalled, not compared.
    pub(super) const fn recalled(self, clause: &'static str) -> Citation {
        Citation::from_memory(self.name(), clause)
    }

    /// A placeholder.
    pub(super) const fn unsure(self, clause: &'static str) -> Citation {
        Citation::placeholder(self.name(), clause)
    }
}

/// Risk category: what hangs on the building's standing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RiskCategory {
    /// Low hazard to people: sheds, farm buildings.
    I,
    /// Houses and most else.
    II,
    /// Many people.
    III,
    /// Essential in an emergency.
    IV,
}

impl RiskCategory {
    /// As the standard writes it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::I => "I",
            Self::II => "II",
            Self::III => "III",
            Self::IV => "IV",
        }
    }
}

/// The ground around, for snow.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Terrain {
    /// Town, suburb, wood.
    B,
    /// Open country.
    C,
    /// Flat and open, water.
    D,
    /// Above the tree line in windswept mountains.
    AboveTreeLine,
    /// Alaska without trees.
    AlaskaTreeless,
}

impl Terrain {
    /// With its letter, where it has one.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::B => WindExposure::B.words(),
            Self::C => WindExposure::C.words(),
            Self::D => WindExposure::D.words(),
            Self::AboveTreeLine => "above the tree line, windswept",
            Self::AlaskaTreeless => "Alaska, without trees",
        }
    }
}

/// How the wind reaches the roof, for snow.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SnowExposure {
    /// No shelter on any side.
    Full,
    /// Neither of the others.
    Partial,
    /// Close among conifers or taller buildings.
    Sheltered,
}

impl SnowExposure {
    /// What stands around.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Full => "no shelter on any side",
            Self::Partial => "in between",
            Self::Sheltered => "close among conifers or taller buildings",
        }
    }
}

/// What is warm under a roof.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Thermal {
    /// A heated building.
    Heated,
    /// Kept just above freezing.
    JustAboveFreezing,
    /// Unheated, or open to the air.
    OpenAir,
    /// Kept below freezing.
    BelowFreezing,
    /// A greenhouse that is always heated.
    HeatedGreenhouse,
    /// A thermal factor from the standard's table, as stated by the user.
    Stated(f64),
}

impl Thermal {
    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Heated => "heated",
            Self::JustAboveFreezing => "just above freezing",
            Self::OpenAir => "unheated, open air",
            Self::BelowFreezing => "below freezing",
            Self::HeatedGreenhouse => "a heated greenhouse",
            Self::Stated(_) => "as my own C_t says",
        }
    }
}

/// The ground around, for wind.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WindExposure {
    /// Town, suburb, wood.
    B,
    /// Open country.
    C,
    /// Flat and open, water.
    D,
}

impl WindExposure {
    /// With its letter.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::B => "B: town, suburb, wood",
            Self::C => "C: open country",
            Self::D => "D: flat and open, water",
        }
    }
}

/// Seismic design category.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DesignCategory {
    /// Least.
    A,
    /// Low.
    B,
    /// Moderate.
    C,
    /// High.
    D,
    /// Near a great fault.
    E,
    /// Near a great fault, essential.
    F,
}

impl DesignCategory {
    /// Its letter.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::A => "A",
            Self::B => "B",
            Self::C => "C",
            Self::D => "D",
            Self::E => "E",
            Self::F => "F",
        }
    }
}

/// What the map says about earthquakes here.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seismic {
    /// S_DS: design acceleration at short periods, as a share of gravity.
    pub s_ds: f64,
    /// Design category.
    pub category: DesignCategory,
    /// I_e: importance factor for earthquakes.
    pub importance: f64,
}

/// The site.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// Which printing is worked by.
    pub edition: Edition,
    /// Risk category.
    pub risk: RiskCategory,
    /// p_g, from the authority: service level by 7-16, by risk category by 7-22.
    pub ground_snow: Option<AreaLoad>,
    /// The ground around, for snow.
    pub terrain: Terrain,
    /// How the wind reaches the lean-to, for snow.
    pub snow_exposure: SnowExposure,
    /// W2, the share of winter with wind above 10 mph, mapped; 7-22 drifts need it.
    pub winter_wind: Option<f64>,
    /// V, from the authority.
    pub wind_speed: Option<WindSpeed>,
    /// The ground around, for wind.
    pub wind_exposure: WindExposure,
    /// Ground above sea level.
    pub ground_elevation: Length,
    /// K_zt: 1 on level ground, more on hills and ridges.
    pub topography: f64,
    /// C_f of beam, posts and roof edge for wind along the wall.
    pub member_force_coefficient: Option<f64>,
    /// Earthquake values; none leaves earthquakes out.
    pub seismic: Option<Seismic>,
}

impl Place {
    /// Works by that edition. Ground snow of one is not that of the other: by 7-16 it is what falls once in fifty years, by 7-22
    /// what the frame must just bear, by risk category. What was given is not kept.
    pub fn work_by(&mut self, edition: Edition) {
        if self.edition != edition {
            self.ground_snow = None;
        }
        self.edition = edition;
    }

    /// p_g, or the sentence that says it is missing.
    ///
    /// # Errors
    /// When it is not given, or below zero.
    pub fn ground_snow(&self) -> Result<AreaLoad, Refused> {
        let snow = self.ground_snow.ok_or_else(|| {
            let says = format!(
                "ground snow by {} is missing; the local building authority gives it (enter 0 where none falls)",
                self.edition.name()
            );
            Refused::missing(Input::GroundSnow, says)
        })?;
        if snow.is_negative() {
            return Err(Refused::because("ground snow is below zero; enter 0 or more"));
        }
        Ok(snow)
    }

    /// V, or the sentence that says it is missing.
    ///
    /// # Errors
    /// When it is not given.
    pub fn wind_speed(&self) -> Result<WindSpeed, Refused> {
        self.wind_speed.ok_or_else(|| {
            Refused::missing(Input::WindSpeed, "wind speed is missing; the local building authority gives it")
        })
    }

    /// W2, or the sentence that says it is missing.
    pub(super) fn winter_wind(&self) -> Result<f64, Refused> {
        let share = self.winter_wind.ok_or_else(|| {
            Refused::missing(
                Input::WinterWind,
                "the winter wind parameter W2 is missing; ASCE 7-22 maps it and drifts need it",
            )
        })?;
        if share.is_finite() && share > 0.0 && share <= 1.0 {
            Ok(share)
        } else {
            Err(Refused::because("the winter wind parameter W2 is a share of the winter: above 0 and at most 1"))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::demo;

    #[test]
    fn another_edition_asks_for_its_own_ground_snow() {
        let mut place = demo::wool_barn().place;
        let known = place.ground_snow;
        place.work_by(place.edition);
        assert!(known.is_some() && place.ground_snow == known);
        place.work_by(Edition::Asce7_22);
        let says = place.ground_snow().err().map(|refused| refused.to_string()).unwrap_or_default();
        assert!(says.starts_with("not judged: ground snow by ASCE 7-22 is missing"), "{says}");
    }
}

//! Quantities that may not be known yet: an empty field says so. All of them are shown by the one [`super::EntryField`].
use super::entry::Entry;
use super::reading::{long_length, show_length_fine};
use crate::app::cached::text_of;
use crate::app::{Lens, use_store};
use crate::frame::Spring;
use crate::loads::WindSpeed;
use crate::ordering::LITRES_A_GALLON as LITRES;
use crate::project::{Nearest, Project};
use crate::units::{
    AreaLoad, Force, Length, Money, Speed, Stiffness, Stress, UnitSystem, parse_area_load, parse_count,
    parse_elevation, parse_force, parse_length_not_negative, parse_money, parse_number, parse_speed, parse_stiffness,
    parse_stress, show_area_load, show_elevation, show_force, show_speed, show_stiffness, show_stress,
};
use leptos::prelude::*;

/// What stands in an empty field, and in the heading of what is folded away.
pub const NOT_KNOWN: &str = "not known yet";

/// One kind of quantity: how it is printed and read.
pub struct Measure<T: 'static> {
    print: fn(T, UnitSystem) -> String,
    parse: fn(&str, UnitSystem) -> Result<T, String>,
    /// The value in words beside the field.
    reading: fn(T, UnitSystem) -> Option<String>,
    take: fn(Nearest) -> Option<T>,
}

/// A load over an area.
pub const AREA_LOAD: Measure<AreaLoad> = Measure {
    print: |load, units| show_area_load(load, units).without_zeros().to_string(),
    parse: |text, units| parse_area_load(text, units).map_err(|why| why.to_string()),
    reading: |load, units| both(|in_units| show_area_load(load, in_units).to_string(), units),
    take: |_| None,
};

/// A wind speed.
pub const WIND_SPEED: Measure<WindSpeed> = Measure {
    print: |wind, units| show_wind(wind, units),
    parse: |text, units| {
        let speed = parse_speed(text, units).map_err(|why| why.to_string())?;
        WindSpeed::try_mph(speed.to_mph()).ok_or_else(|| "No map says that no wind blows.".to_owned())
    },
    reading: |wind, units| both(|in_units| show_wind(wind, in_units), units),
    take: |_| None,
};

/// A force.
pub const FORCE: Measure<Force> = Measure {
    print: |force, units| show_force(force, units).to_string(),
    parse: |text, units| parse_force(text, units).map_err(|why| why.to_string()),
    reading: |force, units| both(|in_units| show_force(force, in_units).to_string(), units),
    take: |_| None,
};

/// A design value of wood.
pub const STRESS: Measure<Stress> = Measure {
    print: |stress, units| show_stress(stress, units).to_string(),
    parse: |text, units| parse_stress(text, units).map_err(|why| why.to_string()),
    reading: |stress, units| both(|in_units| show_stress(stress, in_units).to_string(), units),
    take: |_| None,
};

/// How stiff a joint is.
pub const SPRING: Measure<Spring> = Measure {
    print: |spring, units| show_spring(spring, units),
    parse: |text, units| {
        let stiffness = parse_stiffness(text, units).map_err(|why| why.to_string())?;
        Ok(Spring::pounds_per_inch(stiffness.to_pounds_per_inch()))
    },
    reading: |spring, units| both(|in_units| show_spring(spring, in_units), units),
    take: |_| None,
};

/// A height above the sea, in feet or metres.
pub const ELEVATION: Measure<Length> = Measure {
    print: |height, units| show_elevation(height, units).to_string(),
    parse: |text, units| parse_elevation(text, units).map_err(|why| why.to_string()),
    reading: |height, units| both(|in_units| show_elevation(height, in_units).to_string(), units),
    take: nearest_length,
};

/// A length.
pub const LENGTH: Measure<Length> = Measure {
    print: show_length_fine,
    parse: |text, units| parse_length_not_negative(text, units).map_err(|why| why.to_string()),
    reading: |length, units| Some(long_length(length, units)),
    take: nearest_length,
};

/// A price.
pub const PRICE: Measure<Money> = Measure {
    print: |price, _| format!("{:.2}", price.to_f64()),
    parse: |text, _| parse_money(text).map_err(|why| why.to_string()),
    reading: |_, _| None,
    take: |_| None,
};

/// A price of a hundred feet, said by the foot or by the metre.
pub const RUN_PRICE: Measure<Money> = Measure {
    print: |price, units| format!("{:.2}", price.to_f64() / runs(units)),
    parse: |text, units| priced(text, runs(units)),
    reading: |price, _| {
        let (foot, metre) = (price.to_f64() / runs(UnitSystem::Imperial), price.to_f64() / runs(UnitSystem::Metric));
        Some(format!("{foot:.2} a foot · {metre:.2} a metre"))
    },
    take: |_| None,
};

/// A price of a gallon, said by the gallon or by the litre.
pub const GALLON_PRICE: Measure<Money> = Measure {
    print: |price, units| format!("{:.2}", price.to_f64() / gallon(units)),
    parse: |text, units| priced(text, gallon(units)),
    reading: |price, _| Some(format!("{:.2} a gallon · {:.2} a litre", price.to_f64(), price.to_f64() / LITRES)),
    take: |_| None,
};

/// What a gallon covers, in square feet; said in square metres a litre.
pub const COVERAGE: Measure<f64> = Measure {
    print: |cover, units| match units {
        UnitSystem::Imperial => format!("{cover:.0}"),
        UnitSystem::Metric => format!("{:.1}", cover * SQUARE_METRES / LITRES),
    },
    parse: |text, units| {
        let cover = parse_number(text).map_err(|why| why.to_string())?;
        Ok(if units == UnitSystem::Metric { cover * LITRES / SQUARE_METRES } else { cover })
    },
    reading: |cover, _| Some(format!("{cover:.0} ft² a gallon · {:.1} m² a litre", cover * SQUARE_METRES / LITRES)),
    take: |_| None,
};

/// Square metres in a square foot, exactly.
const SQUARE_METRES: f64 = 0.092_903_04;

/// Feet, or metres, in a hundred feet.
const fn runs(units: UnitSystem) -> f64 {
    match units {
        UnitSystem::Imperial => 100.0,
        UnitSystem::Metric => 30.48,
    }
}

const fn gallon(units: UnitSystem) -> f64 {
    match units {
        UnitSystem::Imperial => 1.0,
        UnitSystem::Metric => LITRES,
    }
}

fn priced(text: &str, times: f64) -> Result<Money, String> {
    let one = parse_money(text).map_err(|why| why.to_string())?;
    Money::try_of(one.to_f64() * times).ok_or_else(|| "That is more than anything costs.".to_owned())
}

/// A plain number.
pub const NUMBER: Measure<f64> = Measure {
    print: |number, _| number.to_string(),
    parse: |text, _| parse_number(text).map_err(|why| why.to_string()),
    reading: |_, _| None,
    take: |_| None,
};

/// How many.
pub const COUNT: Measure<usize> = Measure {
    print: |count, _| count.to_string(),
    parse: |text, _| parse_count(text, 999).map(|count| count as usize).map_err(|why| why.to_string()),
    reading: |_, _| None,
    take: |nearest| match nearest {
        Nearest::Count(count) => Some(count),
        _ => None,
    },
};

/// A few words.
pub const WORDS: Measure<String> = Measure {
    print: |words, _| words,
    parse: |text, _| {
        let n_letters = text.trim().chars().count();
        if n_letters > MOST_LETTERS {
            return Err(format!("At most {MOST_LETTERS} characters; this has {n_letters}."));
        }
        Ok(text.trim().to_owned())
    },
    reading: |_, _| None,
    take: |_| None,
};

const MOST_LETTERS: usize = 120;

impl<T: Clone + 'static> Measure<T> {
    /// The entry of a value that is always there.
    #[must_use]
    pub fn entry(&self, lens: &Lens<T>) -> Entry {
        let (shown, reading) = (lens.clone(), self.reading);
        Entry::new(lens, self.print, self.parse)
            .reading(move |project| reading(shown.get(project)?, project.units))
            .take(lens, self.take)
    }

    /// The entry of a value that may not be known yet.
    #[must_use]
    pub fn open(&self, lens: &Lens<Option<T>>) -> Entry {
        let (shown, print, parse, reading, take) = (lens.clone(), self.print, self.parse, self.reading, self.take);
        let print = move |value: Option<T>, units| value.map_or_else(String::new, |value| print(value, units));
        let parse = move |text: &str, units| {
            if text.trim().is_empty() { Ok(None) } else { parse(text, units).map(Some) }
        };
        Entry::new(lens, print, parse)
            .reading(move |project| reading(shown.get(project)??, project.units))
            .take(lens, move |nearest| take(nearest).map(Some))
            .may_be_empty(NOT_KNOWN)
    }
}

/// A field whose nothing (no pounds, no pieces, no words) means that it is not known yet.
#[must_use]
pub fn nothing_is_open<T: Clone + Default + PartialEq + 'static>(lens: &Lens<T>) -> Lens<Option<T>> {
    let (read, write) = (lens.clone(), lens.clone());
    Lens::maybe(
        lens.path(),
        move |project| read.get(project).map(|value| (value != T::default()).then_some(value)),
        move |project: &mut Project, value: Option<T>| write.set(project, value.unwrap_or_default()),
    )
}

/// What a part of the project comes to in a few words, or that it is not known yet: for the heading of a fold.
pub fn known(part: impl Fn(&Project) -> Option<String> + Send + Sync + 'static) -> Signal<String> {
    let store = use_store();
    text_of(move || part(&store.project()).unwrap_or_else(|| NOT_KNOWN.to_owned()))
}

/// In both systems, the user's own first.
fn both(print: impl Fn(UnitSystem) -> String, units: UnitSystem) -> Option<String> {
    let (inches, metres) = (print(UnitSystem::Imperial), print(UnitSystem::Metric));
    Some(match units {
        UnitSystem::Imperial => format!("{inches} · {metres}"),
        UnitSystem::Metric => format!("{metres} · {inches}"),
    })
}

fn show_wind(wind: WindSpeed, units: UnitSystem) -> String {
    show_speed(Speed::mph(wind.to_mph()), units).to_string()
}

fn show_spring(spring: Spring, units: UnitSystem) -> String {
    show_stiffness(Stiffness::pounds_per_inch(spring.to_pounds_per_inch()), units).to_string()
}

const fn nearest_length(nearest: Nearest) -> Option<Length> {
    match nearest {
        Nearest::Length(length) => Some(length),
        _ => None,
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::lens;
    use crate::project::demo;

    /// Typed text goes in, the printed value comes out; nothing typed makes it unknown again.
    #[test]
    fn an_open_value_comes_and_goes() {
        for (units, typed, shown) in [(UnitSystem::Imperial, "45", "45 psf"), (UnitSystem::Metric, "2,5", "2.50 kPa")] {
            let mut project = demo::empty(units);
            let entry = AREA_LOAD.open(&lens!(place.ground_snow));
            assert_eq!((entry.print)(&project).unwrap(), "");
            assert_eq!((entry.reading)(&project), None);
            (entry.parse)(typed, units).unwrap_or_else(|_| unreachable!())(&mut project);
            assert_eq!((entry.print)(&project).unwrap(), shown);
            assert!((entry.reading)(&project).unwrap().contains(" · "));
            assert!((entry.parse)("much", units).is_err());
            (entry.parse)("  ", units).unwrap_or_else(|_| unreachable!())(&mut project);
            assert_eq!(project.place.ground_snow, None);
        }
    }

    #[test]
    fn nothing_of_a_force_is_not_known() {
        let mut project = demo::empty(UnitSystem::Imperial);
        let lens = nothing_is_open(&lens!(fixings.scarf.pull));
        assert_eq!(lens.get(&project), Some(None));
        lens.set(&mut project, Some(Force::pounds(350.0)));
        assert_eq!(project.fixings.scarf.pull, Force::pounds(350.0));
        lens.set(&mut project, None);
        assert_eq!(project.fixings.scarf.pull, Force::ZERO);
    }
}

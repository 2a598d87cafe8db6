//! The factors of a connection that need no geometry (NDS 2015 11.3 and 12.5): time, wet, heat, end grain, slant.
use super::Refused;
use super::fastener::{Fastener, FastenerKind};
use super::written::number;
use crate::working::{Citation, Step, Worked};

/// A connection takes no more than this of a short load: impact is not for connections.
const MOST_DURATION: f64 = 1.6;

fn given(value: f64, gives: &'static str, says: String, citation: Citation) -> Worked<f64> {
    Worked::new(value, vec![Step::new(gives, says, citation)])
}

/// C_D of a connection: the combination's, at most 1.6.
///
/// # Errors
/// For a factor that is not above zero.
pub fn load_duration(of_combination: f64) -> Result<Worked<f64>, Refused> {
    super::refused::above_zero("the load duration factor", of_combination)?;
    let value = of_combination.min(MOST_DURATION);
    let says = format!("C_D = min({}, 1.6) = {}", number(of_combination), number(value));
    Ok(given(value, "C_D, load duration", says, Citation::seen("NDS 2015", "2.3.2 and 11.3.2")))
}

/// Wood at or below 19 % moisture, or above.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wetness {
    /// 19 % or less.
    Dry,
    /// More than 19 %: green, or in the weather.
    Wet,
}

/// Moisture of the wood when the joint is made and while it serves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Moisture {
    /// When the joint is made.
    pub when_made: Wetness,
    /// While it serves.
    pub in_use: Wetness,
}

/// How fasteners of ¼ in and more stand in wood that dries around them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RowLayout {
    /// One fastener alone.
    One,
    /// One row along the grain.
    OneRowAlongGrain,
    /// Rows along the grain, each with its own splice plate.
    SeparatePlates,
    /// Anything else: shrinkage across the grain is held and splits the wood.
    Other,
}

/// C_M of a lateral value (Table 11.3.3).
#[must_use]
pub fn wet_lateral(fastener: &Fastener, moisture: Moisture, layout: RowLayout) -> Worked<f64> {
    let (value, why) = match (moisture.when_made, moisture.in_use) {
        (_, Wetness::Wet) => (0.7, "wet in use"),
        (Wetness::Dry, Wetness::Dry) => (1.0, "dry throughout"),
        (Wetness::Wet, Wetness::Dry) if fastener.is_slender() => (0.7, "green when made, dry in use, D < ¼ in"),
        (Wetness::Wet, Wetness::Dry) => match layout {
            RowLayout::One => (1.0, "green when made, dry in use, one fastener"),
            RowLayout::OneRowAlongGrain => (1.0, "green when made, dry in use, one row along the grain"),
            RowLayout::SeparatePlates => (1.0, "green when made, dry in use, a plate for each row"),
            RowLayout::Other => (0.4, "green when made, dry in use, several rows held together"),
        },
    };
    let says = format!("C_M = {} ({why})", number(value));
    given(value, "C_M, wet service", says, Citation::from_memory("NDS 2015", "Table 11.3.3"))
}

/// C_M of a withdrawal value (Table 11.3.3).
///
/// # Errors
/// For a bolt.
pub fn wet_withdrawal(kind: FastenerKind, moisture: Moisture) -> Result<Worked<f64>, Refused> {
    let (value, why) = match kind {
        FastenerKind::Bolt => return Err(Refused::because("A bolt has no withdrawal value to adjust.")),
        FastenerKind::LagScrew | FastenerKind::WoodScrew if moisture.in_use == Wetness::Wet => (0.7, "wet in use"),
        FastenerKind::Nail if moisture.when_made != moisture.in_use => (0.25, "the wood changes between wet and dry"),
        FastenerKind::LagScrew | FastenerKind::WoodScrew => (1.0, "dry in use"),
        FastenerKind::Nail => (1.0, "the wood stays as it is"),
    };
    let says = format!("C_M = {} ({why})", number(value));
    Ok(given(value, "C_M, wet service", says, Citation::from_memory("NDS 2015", "Table 11.3.3")))
}

/// How warm the joint gets for long.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Heat {
    /// Up to 100 °F (38 °C).
    Usual,
    /// Over 100 up to 125 °F (52 °C).
    Warm,
    /// Over 125 up to 150 °F (66 °C).
    Hot,
}

/// C_t of a connection (Table 11.3.4).
#[must_use]
pub fn temperature(heat: Heat, in_use: Wetness) -> Worked<f64> {
    let (value, why) = match (heat, in_use) {
        (Heat::Usual, _) => (1.0, "up to 100 °F"),
        (Heat::Warm, Wetness::Dry) => (0.8, "100–125 °F, dry"),
        (Heat::Warm, Wetness::Wet) => (0.7, "100–125 °F, wet"),
        (Heat::Hot, Wetness::Dry) => (0.7, "125–150 °F, dry"),
        (Heat::Hot, Wetness::Wet) => (0.5, "125–150 °F, wet"),
    };
    let says = format!("C_t = {} ({why})", number(value));
    given(value, "C_t, temperature", says, Citation::from_memory("NDS 2015", "Table 11.3.4"))
}

/// C_eg of a lateral value in end grain.
#[must_use]
pub fn end_grain_lateral() -> Worked<f64> {
    let says = "C_eg = 0.67 (lateral load in end grain)".to_owned();
    given(0.67, "C_eg, end grain", says, Citation::from_memory("NDS 2015", "12.5.2"))
}

/// C_eg of a withdrawal value in end grain: lag screws 0.75; nothing else may be trusted there.
///
/// # Errors
/// For all but lag screws.
pub fn end_grain_withdrawal(kind: FastenerKind) -> Result<Worked<f64>, Refused> {
    match kind {
        FastenerKind::LagScrew => {
            let says = "C_eg = 0.75 (lag screw pulled from end grain)".to_owned();
            Ok(given(0.75, "C_eg, end grain", says, Citation::seen("NDS 2015", "12.2.1 and 12.5.2")))
        }
        FastenerKind::WoodScrew => {
            Err(Refused::because("A wood screw may not be loaded in withdrawal from end grain."))
        }
        FastenerKind::Nail => Err(Refused::because("A nail in end grain has no withdrawal value.")),
        FastenerKind::Bolt => Err(Refused::because("A bolt has no withdrawal value to adjust.")),
    }
}

/// C_tn of a lateral value, driven on a slant through the side of the end: nails from the NDS, screws alike by common practice.
///
/// # Errors
/// For bolts and lag screws.
pub fn toe_driven_lateral(kind: FastenerKind) -> Result<Worked<f64>, Refused> {
    let citation = slant_citation(kind)?;
    Ok(given(0.83, "C_tn, driven on a slant", "C_tn = 0.83 (lateral)".to_owned(), citation))
}

/// C_tn of a withdrawal value of a nail driven on a slant; screws alike by common practice.
///
/// # Errors
/// For bolts and lag screws.
pub fn toe_driven_withdrawal(kind: FastenerKind) -> Result<Worked<f64>, Refused> {
    let citation = slant_citation(kind)?;
    Ok(given(0.67, "C_tn, driven on a slant", "C_tn = 0.67 (withdrawal)".to_owned(), citation))
}

fn slant_citation(kind: FastenerKind) -> Result<Citation, Refused> {
    match kind {
        FastenerKind::Nail => Ok(Citation::from_memory("NDS 2015", "12.5.4")),
        FastenerKind::WoodScrew => Ok(Citation::common_practice("a screw on a slant counted as a nail on a slant")),
        FastenerKind::Bolt | FastenerKind::LagScrew => Err(Refused::because(
            "Only nails and wood screws are driven on a slant; bolts and lag screws go in square.",
        )),
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::fastening::fastener;

    const WET: Wetness = Wetness::Wet;
    const DRY: Wetness = Wetness::Dry;

    const fn moisture(when_made: Wetness, in_use: Wetness) -> Moisture {
        Moisture { when_made, in_use }
    }

    #[test]
    fn duration_is_capped() {
        assert_eq!(load_duration(2.0).unwrap().value, 1.6);
        assert_eq!(load_duration(1.15).unwrap().value, 1.15);
        assert!(load_duration(0.0).is_err());
    }

    /// NDS Table 11.3.3, from memory.
    #[test]
    fn wet_service() {
        let lateral =
            |key: &str, made, used, layout| wet_lateral(fastener(key).unwrap(), moisture(made, used), layout).value;
        assert_eq!(lateral("bolt_1_2", DRY, DRY, RowLayout::Other), 1.0);
        assert_eq!(lateral("bolt_1_2", WET, WET, RowLayout::One), 0.7);
        assert_eq!(lateral("bolt_1_2", DRY, WET, RowLayout::One), 0.7);
        assert_eq!(lateral("bolt_1_2", WET, DRY, RowLayout::Other), 0.4);
        for layout in [RowLayout::One, RowLayout::OneRowAlongGrain, RowLayout::SeparatePlates] {
            assert_eq!(lateral("lag_1_2", WET, DRY, layout), 1.0);
        }
        assert_eq!(lateral("nail_162", WET, DRY, RowLayout::One), 0.7);

        let out = |kind, made, used| wet_withdrawal(kind, moisture(made, used)).map(|found| found.value);
        assert_eq!(out(FastenerKind::LagScrew, WET, WET), Ok(0.7));
        assert_eq!(out(FastenerKind::WoodScrew, WET, DRY), Ok(1.0));
        assert_eq!(out(FastenerKind::Nail, WET, DRY), Ok(0.25));
        assert_eq!(out(FastenerKind::Nail, WET, WET), Ok(1.0));
        assert!(out(FastenerKind::Bolt, DRY, DRY).is_err());
    }

    #[test]
    fn heat() {
        let of = |heat, wetness| temperature(heat, wetness).value;
        assert_eq!([of(Heat::Usual, WET), of(Heat::Warm, DRY), of(Heat::Warm, WET)], [1.0, 0.8, 0.7]);
        assert_eq!([of(Heat::Hot, DRY), of(Heat::Hot, WET)], [0.7, 0.5]);
    }

    #[test]
    fn end_grain_and_slant() {
        assert_eq!(end_grain_lateral().value, 0.67);
        assert_eq!(end_grain_withdrawal(FastenerKind::LagScrew).unwrap().value, 0.75);
        for kind in [FastenerKind::WoodScrew, FastenerKind::Nail, FastenerKind::Bolt] {
            assert!(end_grain_withdrawal(kind).is_err());
        }
        assert_eq!(toe_driven_lateral(FastenerKind::Nail).unwrap().value, 0.83);
        let screw = toe_driven_withdrawal(FastenerKind::WoodScrew).unwrap();
        assert_eq!((screw.value, screw.steps[0].citation.document), (0.67, "common practice"));
        assert!(toe_driven_lateral(FastenerKind::LagScrew).is_err());
    }
}

//! What drying does, as text.
use std::fmt::Write;

use super::{Seasoning, YEARS};
use crate::project::Project;
use crate::units::{Fineness, Length, UnitSystem, show_slope};
use crate::wording::tape;

/// A small length: to the thirty-second, or half a millimetre.
#[must_use]
pub fn small_length(value: Length, units: UnitSystem) -> String {
    tape(value, units, Fineness::ThirtySecond)
}

/// The movements as text, with what to do in year one.
#[must_use]
pub fn seasoning_text(project: &Project, found: &Seasoning) -> String {
    let mut out = String::new();
    // Writing to a String cannot fail.
    let _ = write_text(&mut out, project, found);
    out
}

fn write_text(out: &mut String, project: &Project, found: &Seasoning) -> std::fmt::Result {
    let units = project.units;
    let say = |value: Length| small_length(value, units);
    writeln!(out, "{}: {} drying to {} %", project.name, found.wood.name, found.service_percent)?;
    writeln!(
        out,
        "Roof {} when raised, {} when dry",
        show_slope(found.pitch[0], units),
        show_slope(found.pitch[YEARS], units)
    )?;
    for movement in &found.movements {
        let [_, one, .., five, last] = movement.sizes;
        writeln!(out, "\n{}: year one {}, year five {}, in the end {}", movement.what, say(one), say(five), say(last))?;
        writeln!(out, "{} {}", movement.means, movement.advice)?;
    }
    Ok(())
}

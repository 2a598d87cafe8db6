//! How far the ledger sags between the posts of the wall.
use super::check::Check;
use super::ledger::{Ledger, mark};
use super::purlin::most;
use crate::analysis::{LedgerLoads, LedgerSpan};
use crate::frame::Solution;
use crate::loads::{Action, Edition};
use crate::members::{
    Ceiling, DeflectionCase, Drying, RoofMember, check_deflection, deflection_for_dead_and_live, deflection_limit,
};
use crate::units::{Length, LineLoad};
use crate::working::{Citation, Step, Worked};

/// How far each stretch bends off the line of its held ends, or its free end moves; the larger way, with its sign.
fn bent(spans: &[LedgerSpan], solution: &Solution) -> Vec<Length> {
    let of = |(index, span): (usize, &LedgerSpan)| {
        if span.is_overhang() {
            let free = if span.held_left { span.length() } else { Length::ZERO };
            return solution.deflection(index).at(free);
        }
        let found = solution.deflection_from_chord(index).extremes();
        if found.max.abs() > found.min.abs() { found.max } else { found.min }
    };
    spans.iter().enumerate().map(of).collect()
}

fn limit(span: &LedgerSpan, case: DeflectionCase) -> Worked<Length> {
    deflection_limit(span.length(), span.is_overhang(), RoofMember::Main, Ceiling::None, case)
}

/// Limits as shares of a length, so that many stretches are compared without their text.
struct Shares([[f64; 3]; 2]);

impl Shares {
    fn new() -> Self {
        let one = Length::inches(1.0);
        let of = |is_overhang: bool, case| {
            deflection_limit(one, is_overhang, RoofMember::Main, Ceiling::None, case).value.to_inches()
        };
        let row = |is_overhang| {
            let cases = [DeflectionCase::Live, DeflectionCase::SnowOrWind, DeflectionCase::DeadAndLive];
            cases.map(|case| of(is_overhang, case))
        };
        Self([row(false), row(true)])
    }

    fn of(&self, span: &LedgerSpan, case: DeflectionCase) -> f64 {
        let place = match case {
            DeflectionCase::Live => 0,
            DeflectionCase::SnowOrWind => 1,
            DeflectionCase::DeadAndLive => 2,
        };
        self.0[usize::from(span.is_overhang())][place] * span.length().to_inches()
    }
}

/// Largest strip of each kind of passing load, on the ledger: roof live, and snow or wind. By 7-22 snow is given at strength
/// level.
fn passing<'a>(ledger: &'a Ledger) -> Vec<(DeflectionCase, &'a str, LineLoad)> {
    let edition = ledger.project.place.edition;
    let all = ledger.roof.cases.iter().filter_map(|case| {
        let strip = ledger.line.reactions(&case.down, &case.square).ledger;
        let (kind, factor) = match case.action {
            Action::RoofLive => (DeflectionCase::Live, 1.0),
            Action::Snow if edition == Edition::Asce7_22 => (DeflectionCase::SnowOrWind, 0.7),
            Action::Snow => (DeflectionCase::SnowOrWind, 1.0),
            // Wind at the level of allowable stress.
            Action::Wind => (DeflectionCase::SnowOrWind, 0.6),
            _ => return None,
        };
        Some((kind, case.name.as_str(), strip * factor))
    });
    let all: Vec<_> = all.collect();
    let largest = |kind| most(all.iter().copied().filter(|case| case.0 == kind), |case| case.2.abs().to_plf());
    [DeflectionCase::Live, DeflectionCase::SnowOrWind].into_iter().filter_map(largest).collect()
}

/// Under a passing load by itself, and with the weight it always carries.
pub(super) fn sags(ledger: &Ledger) -> Result<Vec<Check>, String> {
    let spans = &ledger.frame.spans;
    let solve = |loads: &LedgerLoads| {
        let solution = ledger.solved.solve(&ledger.frame.case(loads)).map_err(|error| error.to_string())?;
        Ok::<Vec<Length>, String>(bent(spans, &solution))
    };
    let one = LedgerLoads { strip: LineLoad::pounds_per_inch(1.0), ..LedgerLoads::default() };
    let unit = solve(&one)?;
    let dead = ledger.asked.iter().find(|asked| asked.loading.parts.is_empty()).map(|asked| asked.loads);
    let dead = solve(&dead.unwrap_or_default())?;
    let passing = passing(ledger);
    let drying = if ledger.project.wood.is_dry { Drying::SeasonedDry } else { Drying::GreenOrWet };
    let under = |span: usize, strip: LineLoad| unit[span] * strip.to_pounds_per_inch();
    let places = || passing.iter().flat_map(|case| (0..spans.len()).map(move |span| (*case, span)));
    let share = Shares::new();
    let alone = most(places(), |((kind, _, strip), span)| {
        under(*span, *strip).abs().to_inches() / share.of(&spans[*span], *kind)
    });
    let in_all =
        |span: usize, strip: LineLoad| deflection_for_dead_and_live(dead[span].abs(), under(span, strip).abs(), drying);
    let downward = places().filter(|((_, _, strip), _)| *strip > LineLoad::ZERO);
    let total = most(downward, |((_, _, strip), span)| {
        let both = dead[*span].abs() + under(*span, *strip).abs();
        both.to_inches() / share.of(&spans[*span], DeflectionCase::DeadAndLive)
    });
    let mut checks = Vec::new();
    if let Some(((kind, name, strip), span)) = alone {
        let made = check_deflection(under(span, strip), limit(&spans[span], kind)).map(|mut made| {
            made.steps.insert(0, step(&spans[span], under(span, strip), name));
            made
        });
        let check = Check::new(mark(spans[span].piece), "sags under a passing load", at(&spans[span]), name, made);
        checks.push(check.at_x((spans[span].from + spans[span].to) / 2.0));
    }
    if let Some(((_, name, strip), span)) = total {
        let sum = in_all(span, strip);
        let made = check_deflection(sum.value, limit(&spans[span], DeflectionCase::DeadAndLive)).map(|mut made| {
            let both = [step(&spans[span], dead[span], "dead load"), step(&spans[span], under(span, strip), name)];
            made.steps.splice(0..0, both.into_iter().chain(sum.steps));
            made
        });
        let check = Check::new(mark(spans[span].piece), "sags in all", at(&spans[span]), format!("D + {name}"), made);
        checks.push(check.at_x((spans[span].from + spans[span].to) / 2.0));
    }
    Ok(checks)
}

const fn at(span: &LedgerSpan) -> &'static str {
    if span.is_overhang() { "past the outer post of the wall" } else { "between posts of the wall" }
}

fn step(span: &LedgerSpan, sag: Length, under: &str) -> Step {
    let says = format!("Δ = {:.3} in on {:.1} in, {under}", sag.abs().to_inches(), span.length().to_inches());
    Step::new("sag of the ledger", says, Citation::from_memory("statics", "stiffness method, rafters at their places"))
}

//! How far the ledger sags between the posts of the wall.
use super::check::{Check, Under};
use super::governing::most;
use super::ledger::{CONTINUOUS, Ledger, mark};
use crate::analysis::{Found, LedgerLoads, LedgerSpan, RoofCase};
use crate::frame::Solution;
use crate::loads::{ALLOWABLE_WIND, Action, passing_snow};
use crate::members::{
    Ceiling, DeflectionCase, Drying, RoofMember, check_deflection, deflection_for_dead_and_live, deflection_limit,
    stiffness,
};
use crate::units::{Length, LineLoad};
use crate::working::{Citation, Confidence, Step, Worked};

/// How far each stretch bends off the line of its held ends, or its free end moves; the larger way, with its sign.
fn bent(spans: &[LedgerSpan], solution: &Solution) -> Vec<Length> {
    let of = |(index, span): (usize, &LedgerSpan)| {
        if span.is_overhang() {
            let free = if span.held_left { span.length() } else { Length::ZERO };
            return solution.deflection(index).at(free);
        }
        solution.deflection_from_chord(index).extremes().farthest()
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
fn passing<'a>(ledger: &'a Ledger) -> Vec<(DeflectionCase, &'a RoofCase, LineLoad)> {
    let edition = ledger.project.place.edition;
    let all = ledger.roof.cases.iter().filter_map(|case| {
        let strip = ledger.line.reactions(&case.down, &case.square).ledger;
        let (kind, factor) = match case.action {
            Action::RoofLive => (DeflectionCase::Live, 1.0),
            Action::Snow => (DeflectionCase::SnowOrWind, passing_snow(edition)),
            Action::Wind => (DeflectionCase::SnowOrWind, ALLOWABLE_WIND),
            _ => return None,
        };
        Some((kind, case, strip * factor))
    });
    let all: Vec<_> = all.collect();
    let largest = |kind| most(all.iter().copied().filter(|case| case.0 == kind), |case| case.2.abs().to_plf());
    [DeflectionCase::Live, DeflectionCase::SnowOrWind].into_iter().filter_map(largest).collect()
}

/// What a passing load does to one stretch.
struct Sag {
    kind: DeflectionCase,
    name: String,
    sure: Confidence,
    span: usize,
    by: Length,
    is_down: bool,
}

/// Every passing load on every stretch, and the balanced snow half gone from some of them.
fn all_sags(ledger: &Ledger, unit: &[Length]) -> Vec<Sag> {
    let mut all = Vec::new();
    for (kind, case, strip) in passing(ledger) {
        for (span, unit) in unit.iter().enumerate() {
            let by = *unit * strip.to_pounds_per_inch();
            let (name, sure) = (case.name.clone(), case.confidence);
            all.push(Sag { kind, name, sure, span, by, is_down: strip > LineLoad::ZERO });
        }
    }
    let snow = ledger.roof.cases.iter().find(|case| case.action == Action::Snow);
    if let (Some(patches), Some(snow)) = (&ledger.patches, snow) {
        let size = ledger.member.section();
        let inertia = size.breadth.to_inches() * size.depth.to_inches().powi(3) / 12.0;
        let stiff = stiffness(&ledger.member).value.to_psi() * inertia;
        // Of all ways it may lie, the worst for each stretch.
        let mut worst: Vec<(Length, &str)> = vec![(Length::ZERO, ""); unit.len()];
        for (pattern, strip) in patches.patterns() {
            for (span, by) in pattern.sags(ledger.frame, stiff).into_iter().enumerate() {
                if (by * strip).abs() > worst[span].0.abs() {
                    worst[span] = (by * strip, &pattern.name);
                }
            }
        }
        for (span, (by, pattern)) in worst.into_iter().enumerate() {
            let name = format!("{}, {pattern}", snow.name);
            let sure = snow.confidence;
            all.push(Sag { kind: DeflectionCase::SnowOrWind, name, sure, span, by, is_down: true });
        }
    }
    all
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
    let drying = if ledger.project.wood.is_dry { Drying::SeasonedDry } else { Drying::GreenOrWet };
    let all = all_sags(ledger, &unit);
    let share = Shares::new();
    let alone = most(all.iter(), |sag| sag.by.abs().to_inches() / share.of(&spans[sag.span], sag.kind));
    let total = most(all.iter().filter(|sag| sag.is_down), |sag| {
        let both = dead[sag.span].abs() + sag.by.abs();
        both.to_inches() / share.of(&spans[sag.span], DeflectionCase::DeadAndLive)
    });
    let mut checks = Vec::new();
    if let Some(sag) = alone {
        let span = &spans[sag.span];
        let made = check_deflection(sag.by, limit(span, sag.kind)).map(|mut made| {
            made.steps.insert(0, step(span, sag.by, &sag.name));
            made
        });
        let under = Under::alone(&*sag.name, sag.sure, Found::Formula(CONTINUOUS)).asks("Δ", sag.by.abs());
        let check = Check::new(mark(span.piece), "sags under a passing load", at(span), under, made);
        checks.push(check.at_x((span.from + span.to) / 2.0));
    }
    if let Some(sag) = total {
        let span = &spans[sag.span];
        let sum = deflection_for_dead_and_live(dead[sag.span].abs(), sag.by.abs(), drying);
        let made = check_deflection(sum.value, limit(span, DeflectionCase::DeadAndLive)).map(|mut made| {
            let both = [step(span, dead[sag.span], "dead load"), step(span, sag.by, &sag.name)];
            made.steps.splice(0..0, both.into_iter().chain(sum.steps));
            made
        });
        let under =
            Under::alone(format!("D + {}", sag.name), sag.sure, Found::Formula(CONTINUOUS)).asks("Δ", sum.value);
        let check = Check::new(mark(span.piece), "sags in all", at(span), under, made);
        checks.push(check.at_x((span.from + span.to) / 2.0));
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

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use crate::checks::{Check, strength};
    use crate::evaluate;
    use crate::project::{Project, demo};

    fn sag(project: &Project) -> Check {
        let shape = &evaluate(project).built.unwrap().shape;
        let found = strength(project, shape);
        found
            .checks
            .into_iter()
            .find(|check| check.name == "sags under a passing load" && check.member.starts_with('L'))
            .unwrap()
    }

    /// On posts far apart the snow that stays on one bay bends it more than snow that lies everywhere.
    #[test]
    fn snow_half_gone_can_govern() {
        let mut barn = demo::wool_barn();
        (barn.site.first_wall_post, barn.site.wall_post_spacing) =
            (crate::units::Length::inches(12.0), crate::units::Length::inches(96.0));
        let found = sag(&barn);
        assert!(
            found.combination.contains("half elsewhere") || found.combination.contains("full elsewhere"),
            "{}",
            found.combination
        );
    }
}

//! Purlins: bent two ways, since the roof slopes; sheared; sagging under the sheets.
use super::check::{Check, Under, Way};
use super::governing::most;
use super::known::known_loads;
use super::purlin_sag::sags;
use super::wood::{Woods, load_duration};
use crate::analysis::{
    Found, Loading, PurlinBeam, PurlinLoad, PurlinStrip, RoofCase, RoofLoads, StripLines, component_cases, loadings,
    person_at, purlin_beams, purlin_strips,
};
use crate::design::Shape;
use crate::loads::wind::effective_area;
use crate::loads::{Action, Duration};
use crate::members::{
    BeamColumn, Bracing, ColumnAxis, ColumnLengths, EndFixity, Member, NetSection, ShearPlace, UnbracedCase, Verdict,
    bending_strength, check_bending_and_compression, check_shear,
};
use crate::project::{Project, Used};
use crate::units::{Force, Length};
use crate::unmade::Unmade;
use crate::working::{Citation, Step, Worked};

/// Names of the checks the ways of lift and weight find.
pub(super) const BENDS_BOTH_WAYS: &str = "bends both ways";
pub(super) const SHEARS: &str = "shears";

/// Everything the purlins need.
pub(super) struct Purlins {
    pub(super) beams: Vec<PurlinBeam>,
    pub(super) rows: Vec<StripLines>,
    pub(super) cases: Vec<RoofCase>,
    pub(super) loadings: Vec<Loading>,
}

impl Purlins {
    /// Of a project whose loads are all known.
    pub(super) fn new(project: &Project, shape: &Shape, loads: &RoofLoads) -> Result<Self, Unmade> {
        known_loads(loads)?;
        let beams = purlin_beams(&shape.purlins, &shape.rafters);
        let length = loads.lean_to.roof_length().length();
        let strips = purlin_strips(project, shape, &loads.dead, length);
        // The smallest area gathers the hardest wind.
        let span = beams.iter().map(|beam| beam.span).reduce(Length::min);
        let span = span.ok_or("a purlin lies on fewer than two rafters")?;
        let width = strips.iter().map(PurlinStrip::width).reduce(Length::min).unwrap_or(span);
        let known = loads.cases.iter().filter(|case| case.action != Action::Wind);
        let mut cases: Vec<RoofCase> = known.map(RoofCase::without_steps).collect();
        let area = effective_area(span, width);
        cases.extend(component_cases(&project.place, &loads.lean_to, area)?);
        cases.push(person_at(&project.place, Length::ZERO, "on one purlin"));
        let loadings = loadings(project.place.edition, &cases, loads.dead.sure);
        let rows = strips.iter().map(|strip| strip.lines(&cases, &loads.dead)).collect();
        Ok(Self { beams, rows, cases, loadings })
    }
}

/// One purlin under one combination.
#[derive(Clone, Copy)]
struct Asked<'a> {
    strip: &'a PurlinStrip,
    beam: &'a PurlinBeam,
    loading: &'a Loading,
    load: PurlinLoad,
}

impl Asked<'_> {
    fn mark(&self) -> String {
        format!("N{}", self.strip.number)
    }

    fn under(&self) -> Under {
        let formula =
            if self.beam.is_continuous { "two equal spans and their overhang" } else { "one span and its overhang" };
        Under::of(self.loading, Found::Formula(formula))
    }

    /// Loads as a step.
    fn step(&self) -> Step {
        let pounds = self.load.person.to_pounds();
        let person = if pounds > 0.0 { format!(" and {pounds:.0} lb at one place") } else { String::new() };
        let says = format!(
            "{:.1} plf square to the roof, {:.1} plf down the slope{person}; L = {:.1} in, {:.1} in at the rake",
            self.load.across.to_plf(),
            self.load.along.to_plf(),
            self.beam.span.to_inches(),
            self.beam.overhang.to_inches()
        );
        Step::new("load of the row", says, Citation::from_memory("statics", "w·cos θ and w·sin θ"))
    }

    /// A person's weight across and along.
    fn person(&self) -> (Force, Force) {
        (self.load.person * self.strip.pitch.cos(), self.load.person * self.strip.pitch.sin())
    }

    fn shear(&self) -> Force {
        let (across, along) = self.person();
        let beam = self.beam;
        let (across, along) = (beam.shear(self.load.across, across), beam.shear(self.load.along, along));
        Force::pounds(across.to_pounds().hypot(along.to_pounds()))
    }
}

/// Every check of the purlins: the worst row and piece of each.
#[must_use]
pub fn check_purlins(project: &Project, shape: &Shape, loads: &RoofLoads) -> Vec<Check> {
    let missing = |why: Unmade| vec![Check::not_judged("purlins", "bend, shear and sag", why)];
    let made = Purlins::new(project, shape, loads)
        .and_then(|purlins| Ok((Woods::new(project).member(Used::Purlin, Duration::TenYears)?, purlins)))
        .and_then(|(member, purlins)| judge(project, &purlins, &member));
    made.unwrap_or_else(missing)
}

fn judge(project: &Project, purlins: &Purlins, member: &Member) -> Result<Vec<Check>, Unmade> {
    let bracing = |beam: &PurlinBeam| Bracing::Free { length: beam.span, case: UnbracedCase::SpanUniform };
    let strength = bending_strength(member, Bracing::Held)?.value;
    let turned = bending_strength(&member.turned(), Bracing::Held)?.value;
    let whole = NetSection::whole(member.section())?;
    let (flat, edge) = (whole.least_modulus(), whole.turned().least_modulus());
    // What lifts a row off its rafters, and what presses it on them.
    let asked = |way: Way| {
        let all = purlins.rows.iter().flat_map(|row| {
            purlins.loadings.iter().flat_map(move |loading| {
                let load = row.load(loading);
                purlins.beams.iter().map(move |beam| Asked { strip: &row.strip, beam, loading, load })
            })
        });
        all.filter(move |asked| asked.load.across.is_negative() == (way == Way::Up))
    };
    let bending = |asked: &Asked| {
        let (across, along) = asked.person();
        let (m, _) = asked.beam.moment(asked.load.across, across);
        let (n, _) = asked.beam.moment(asked.load.along, along);
        (m / flat / strength + n / edge / turned) / asked.loading.duration.factor()
    };
    let of = |way: Way| {
        let bent = most(asked(way), bending).map(|worst| bends(member, &worst, &whole, bracing(worst.beam)));
        let shear = |asked: &Asked| asked.shear().to_pounds() / asked.loading.duration.factor();
        let sheared = most(asked(way), shear).map(|worst| shears(member, &worst));
        [bent, sheared]
    };
    let [down, up] = [of(Way::Down), of(Way::Up)];
    let mut checks = Vec::new();
    for (pressed, lifted) in down.into_iter().zip(up) {
        let both = [pressed.map(|check| check.going(Way::Down)), lifted.map(|check| check.going(Way::Up))];
        checks.extend(harder_first(both));
    }
    checks.extend(sags(project, purlins, member));
    Ok(checks)
}

/// One check asked both ways: the harder, then the other as a link alone.
pub(super) fn harder_first([one, other]: [Option<Check>; 2]) -> impl Iterator<Item = Check> {
    let is_other = other.as_ref().map(Check::rank) > one.as_ref().map(Check::rank);
    let (first, second) = if is_other { (other, one) } else { (one, other) };
    first.into_iter().chain(second.map(|check| Check { is_link: true, ..check }))
}

fn shears(member: &Member, asked: &Asked) -> Check {
    let member = member.during(load_duration(asked.loading.duration));
    let made = check_shear(&member, asked.shear(), &ShearPlace::Whole).map(|made| first(asked.step(), made));
    Check::new(asked.mark(), SHEARS, "beside a rafter", asked.under().asks("V", asked.shear()), made)
}

fn first(step: Step, mut made: Worked<Verdict>) -> Worked<Verdict> {
    made.steps.insert(0, step);
    made
}

fn bends(member: &Member, asked: &Asked, whole: &NetSection, bracing: Bracing) -> Check {
    let (across, along) = asked.person();
    let (depthwise, at) = asked.beam.moment(asked.load.across, across);
    let (breadthwise, _) = asked.beam.moment(asked.load.along, along);
    let held = ColumnAxis { length: Length::ZERO, ends: EndFixity::PinnedPinned };
    let demand = BeamColumn {
        push: Force::ZERO,
        moment_depthwise: depthwise,
        moment_breadthwise: breadthwise,
        off_centre_depthwise: Length::ZERO,
        off_centre_breadthwise: Length::ZERO,
        net: whole.clone(),
        lengths: ColumnLengths { depthwise: held, breadthwise: held, is_raising: false },
        bracing,
    };
    let member = member.during(load_duration(asked.loading.duration));
    let made = check_bending_and_compression(&member, &demand).map(|made| first(asked.step(), made));
    let under = asked.under().asks("M square to the roof", depthwise.abs()).asks("M down the slope", breadthwise.abs());
    Check::new(asked.mark(), BENDS_BOTH_WAYS, at, under, made)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::analysis::roof_loads;
    use crate::evaluate;
    use crate::members::Amount;
    use crate::project::demo;
    use crate::units::{AreaLoad, UnitSystem};

    fn checks(project: &Project) -> Vec<Check> {
        // The barn's geometry: a wind under what a project may hold is stopped before it is checked.
        let built = evaluate(&demo::wool_barn()).built.unwrap();
        check_purlins(project, &built.shape, &roof_loads(project, &built.shape))
    }

    fn ratio(checks: &[Check], name: &str) -> f64 {
        checks.iter().find(|check| check.name == name).and_then(Check::ratio).unwrap()
    }

    /// Eastern hemlock No.2, 4x2 laid flat, 24 in over rafters. A person at the end of the rake, 8 in from the outer
    /// rafter: 300·8 = 2400 lb-in, and the dead load's a²/2 = 32 in². Across 4·4/6 = 2.667 in³, along 2·16/6 = 5.333 in³;
    /// F_b = 575·1.25·1.5 (C_F of 4 in), flat use 1.1.
    #[test]
    fn a_person_at_the_rake_by_hand() {
        let mut barn = demo::wool_barn();
        barn.place.ground_snow = Some(AreaLoad::ZERO);
        barn.place.wind_speed = crate::loads::WindSpeed::try_mph(20.0);
        let found = checks(&barn);
        let bends = found.iter().find(|check| check.name == "bends both ways").unwrap();
        assert_eq!((bends.at.as_str(), bends.combination.as_str()), ("at the rake", "D + P: a person on one purlin"));
        let (cos, sin) = (0.970_142_5, 0.242_535_6);
        let fb = 575.0 * 1.25 * 1.5;
        let bare = 2400.0 * cos / (8.0 / 3.0) / (fb * 1.1) + 2400.0 * sin / (16.0 / 3.0) / fb;
        let ratio = bends.ratio().unwrap();
        // The dead load of about 5 plf adds 13 lb-in; rolling over takes up to 1 % off the smaller share.
        assert!(ratio > bare && ratio < bare * 1.02, "{ratio} is not a little over {bare}");
    }

    /// Twice the snow is nearly twice the sag, and a purlin of half the depth sags eight times as much.
    #[test]
    fn sags_grow_as_they_must() {
        let mut barn = demo::wool_barn();
        barn.place.wind_speed = crate::loads::WindSpeed::try_mph(20.0);
        let one = ratio(&checks(&barn), "sags under a passing load");
        barn.place.ground_snow = barn.place.ground_snow.map(|snow| snow * 2.0);
        let two = ratio(&checks(&barn), "sags under a passing load");
        assert!((two / one - 2.0).abs() < 1e-6, "{one} {two}");
        let purlin = &mut barn.frame.timbers.purlin;
        (purlin.sawn.depth, purlin.ordered.depth) = (Length::inches(1.0), Length::inches(1.0));
        barn.frame.timbers.purlin.ordered.depth = Length::inches(2.0);
        let thin = ratio(&checks(&barn), "sags under a passing load");
        assert!((thin / two - 8.0).abs() < 1e-6, "{two} {thin}");
    }

    #[test]
    fn both_sides_of_the_limit() {
        let mut barn = demo::wool_barn();
        let plenty = checks(&barn);
        assert_eq!(plenty.iter().filter(|check| !check.is_link).count(), 4);
        assert!(plenty.iter().all(|check| check.ratio().is_some()));
        barn.place.ground_snow = Some(AreaLoad::psf(600.0));
        assert!(checks(&barn).iter().any(|check| check.ratio().unwrap() > 1.0 && !check.passes()));
        let shears = checks(&barn).into_iter().find(|check| check.name == "shears").unwrap();
        let crate::checks::Outcome::Judged(made) = shears.outcome else { unreachable!("judged") };
        assert!(matches!(made.value.demand, Amount::Force(_)));
    }

    #[test]
    fn a_missing_load_is_said() {
        let mut barn = demo::wool_barn();
        barn.place.ground_snow = None;
        let found = checks(&barn);
        assert_eq!(found.len(), 1);
        assert!(found[0].says(UnitSystem::Imperial).contains("not judged: ground snow by ASCE 7-16 is missing"));
    }
}

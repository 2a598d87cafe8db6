//! How far purlins sag under the sheets.
use super::check::{Check, Under};
use super::governing::most;
use super::purlin::Purlins;
use crate::analysis::{Found, PurlinBeam, RoofCase, StripLines};
use crate::frame::Inertia;
use crate::loads::{Action, Edition, passing_snow};
use crate::members::{
    Ceiling, DeflectionCase, Drying, Member, RoofMember, check_deflection, deflection_for_dead_and_live,
    deflection_limit, stiffness,
};
use crate::project::Project;
use crate::units::{Length, LineLoad, Stress};
use crate::working::{Citation, Confidence, Step, Worked};

/// Wind on components, for sag only, against its full value (IBC Table 1604.3 note f, from memory).
pub(super) const WIND_FOR_SAG: f64 = 0.42;

/// A load of one row square to the roof.
#[derive(Clone, Copy)]
struct Load<'a> {
    row: &'a StripLines,
    name: &'a str,
    sure: Confidence,
    case: DeflectionCase,
    value: LineLoad,
}

/// One place that bends under it: between two rafters, or past the outer one.
#[derive(Clone, Copy)]
struct Sag<'a> {
    load: Load<'a>,
    beam: &'a PurlinBeam,
    is_rake: bool,
    modulus: Stress,
    inertia: Inertia,
}

impl Sag<'_> {
    fn under(&self, load: LineLoad) -> Length {
        let of = if self.is_rake { PurlinBeam::rake_sag } else { PurlinBeam::sag };
        of(self.beam, load, self.modulus, self.inertia)
    }

    fn limit(&self, case: DeflectionCase) -> Worked<Length> {
        let length = if self.is_rake { self.beam.overhang } else { self.beam.span };
        deflection_limit(length, self.is_rake, RoofMember::UnderMetalSheets, Ceiling::None, case)
    }

    fn asked(&self, name: String, sag: Length) -> Under {
        Under::alone(name, self.load.sure, Found::Formula("sag of a purlin over its rafters")).asks("Δ", sag.abs())
    }

    const fn at(&self) -> &'static str {
        if self.is_rake { "at the rake" } else { "between rafters" }
    }

    fn step(&self, load: LineLoad) -> Step {
        let (formula, citation) = match (self.is_rake, self.beam.is_continuous) {
            (true, _) => ("w·a³·(L/6 + a/8)/(E'·I)", Citation::from_memory("statics", "overhang, its span unloaded")),
            (false, true) => ("w·L⁴/(185·E'·I)", Citation::from_memory("beam formulas", "two equal spans, even load")),
            (false, false) => ("5·w·L⁴/(384·E'·I)", Citation::seen("beam formula pages", "one span, even load")),
        };
        let says = format!(
            "Δ = {formula} with w = {:.1} plf, L = {:.1} in, a = {:.1} in, E' = {:.0} psi, I = {:.2} in⁴: {:.3} in",
            load.to_plf(),
            self.beam.span.to_inches(),
            self.beam.overhang.to_inches(),
            self.modulus.to_psi(),
            self.inertia.to_inches_4(),
            self.under(load).to_inches()
        );
        Step::new("sag square to the roof", says, citation)
    }
}

/// Under each passing load by itself, and with the weight it always carries. A sag grows with its load, so of each kind
/// of load only the largest is worked out.
pub(super) fn sags(project: &Project, purlins: &Purlins, member: &Member) -> Vec<Check> {
    let section = member.section();
    let (modulus, inertia) = (stiffness(member).value, Inertia::rectangle(section.breadth, section.depth));
    let places = |load| {
        let all = purlins
            .beams
            .iter()
            .flat_map(move |beam| [false, true].map(|is_rake| Sag { load, beam, is_rake, modulus, inertia }));
        all.filter(|sag| !sag.is_rake || sag.beam.overhang > Length::ZERO).collect::<Vec<_>>()
    };
    let all = passing_loads(project.place.edition, purlins);
    let of = |case: DeflectionCase| all.iter().copied().filter(move |load| load.case == case);
    let largest = [DeflectionCase::Live, DeflectionCase::SnowOrWind]
        .into_iter()
        .filter_map(|case| most(of(case), |load| load.value.abs().to_plf()));
    let passing = most(largest.flat_map(places), |sag| sag.under(sag.load.value) / sag.limit(sag.load.case).value);
    let dead = |row: &StripLines| row.dead.heavy * row.strip.pitch.cos();
    let heaviest = most(all.iter().copied(), |load| (load.value + dead(load.row)).to_plf());
    let kept = heaviest.into_iter().flat_map(places);
    let total =
        most(kept, |sag| sag.under(sag.load.value + dead(sag.load.row)) / sag.limit(DeflectionCase::DeadAndLive).value);
    let drying = if project.wood.is_dry { Drying::SeasonedDry } else { Drying::GreenOrWet };
    let of_total = total.map(|sag| in_all(&sag, dead(sag.load.row), drying));
    passing.map(|sag| by_itself(&sag)).into_iter().chain(of_total).collect()
}

/// Of every row under every load but a person's and the weight it always carries.
fn passing_loads(edition: Edition, purlins: &Purlins) -> Vec<Load<'_>> {
    let kinds = purlins.cases.iter().enumerate();
    let kinds = kinds.filter_map(|(index, case)| Some((index, case, passing(case, edition)?)));
    kinds
        .flat_map(|(index, of, (factor, case))| {
            let (name, sure) = (of.name.as_str(), of.confidence);
            purlins.rows.iter().map(move |row| Load { row, name, sure, case, value: row.across(index) * factor })
        })
        .collect()
}

fn by_itself(sag: &Sag) -> Check {
    let made = check_deflection(sag.under(sag.load.value), sag.limit(sag.load.case)).map(|mut made| {
        made.steps.insert(0, sag.step(sag.load.value));
        made
    });
    let under = sag.asked(sag.load.name.to_owned(), sag.under(sag.load.value));
    Check::new(format!("N{}", sag.load.row.strip.number), "sags under a passing load", sag.at(), under, made)
}

fn in_all(sag: &Sag, dead: LineLoad, drying: Drying) -> Check {
    let passing = sag.load.value.max(LineLoad::ZERO);
    let total = deflection_for_dead_and_live(sag.under(dead), sag.under(passing), drying);
    let made = check_deflection(total.value, sag.limit(DeflectionCase::DeadAndLive)).map(|mut made| {
        made.steps.splice(0..0, [sag.step(dead), sag.step(passing)].into_iter().chain(total.steps));
        made
    });
    let under = sag.asked(format!("D + {}", sag.load.name), total.value);
    Check::new(format!("N{}", sag.load.row.strip.number), "sags in all", sag.at(), under, made)
}

/// Share of a case that counts for sag, and its row in the table of limits. By 7-22 snow is given at strength level.
fn passing(case: &RoofCase, edition: Edition) -> Option<(f64, DeflectionCase)> {
    match case.action {
        Action::RoofLive => Some((1.0, DeflectionCase::Live)),
        Action::Snow => Some((passing_snow(edition), DeflectionCase::SnowOrWind)),
        Action::Wind => Some((WIND_FOR_SAG, DeflectionCase::SnowOrWind)),
        _ => None,
    }
}

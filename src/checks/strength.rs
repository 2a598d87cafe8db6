//! All checks of one frame, joined.
use super::beam::{BeamChecks, check_beam};
use super::brace::check_braces;
use super::check::Check;
use super::post::check_posts;
use super::rafter::{check_rafters, rafter_work};
use super::scarf::check_scarfs;
use super::wood::Woods;
use crate::analysis::{BeamLine, RoofLoads, Stiffnesses, beam_line, roof_loads};
use crate::design::Shape;
use crate::loads::Duration;
use crate::members::stiffness;
use crate::project::{Project, Used};

/// Whether the frame carries, and all that led there.
#[derive(Clone, Debug, PartialEq)]
pub struct Strength {
    /// What acts on the roof.
    pub loads: RoofLoads,
    /// The beam line; nothing where its wood has no values.
    pub line: Option<BeamLine>,
    /// Every check, worst first.
    pub checks: Vec<Check>,
}

impl Strength {
    /// The check that asks most; one that could not be made counts as just failing.
    #[must_use]
    pub fn worst(&self) -> Option<&Check> {
        self.checks.first()
    }

    /// The worst check of a stick.
    #[must_use]
    pub fn worst_of(&self, mark: &str) -> Option<&Check> {
        self.checks.iter().find(|check| check.member == mark)
    }

    /// What could not be judged.
    pub fn not_judged(&self) -> impl Iterator<Item = &Check> {
        self.checks.iter().filter(|check| check.ratio().is_none())
    }
}

/// Works out loads, forces and checks.
#[must_use]
pub fn strength(project: &Project, shape: &Shape) -> Strength {
    let woods = Woods::new(project);
    let loads = roof_loads(project, shape);
    let mut checks = Vec::new();
    let mut missing = loads.not_judged.clone();
    match rafter_work(project, shape, &loads, &woods) {
        Ok(work) => {
            checks.extend(withheld(check_rafters(project, shape, &woods, &work), &work.missing));
            missing.extend(work.missing);
        }
        Err(why) => missing.push(why),
    }
    let line = match stiffnesses(&woods) {
        Ok(stiffness) => Some(beam_line(project, shape, &loads, &stiffness)),
        Err(why) => {
            missing.push(why);
            None
        }
    };
    if let Some(line) = &line {
        let with = BeamChecks { project, shape, line, woods: &woods };
        let made = [check_beam(&with), check_scarfs(&with), check_posts(&with), check_braces(&with)].concat();
        let unknown = [loads.not_judged.as_slice(), &line.not_judged].concat();
        checks.extend(withheld(made, &unknown));
        missing.extend(line.not_judged.iter().cloned());
    }
    let mut said: Vec<String> = Vec::new();
    for why in missing {
        if !said.contains(&why) {
            checks.push(Check::not_judged("The frame", "is loaded", &why));
            said.push(why);
        }
    }
    checks.sort_by(|a, b| b.rank().total_cmp(&a.rank()));
    Strength { loads, line, checks }
}

/// A check that passes while a load is missing has not been made; one that fails without it stands, and so does what
/// follows from no combination.
fn withheld(mut checks: Vec<Check>, missing: &[String]) -> Vec<Check> {
    let Some(why) = missing.first() else { return checks };
    for check in checks.iter_mut().filter(|check| !check.combination.is_empty() && check.passes()) {
        let share = check.ratio().unwrap_or_default() * 100.0;
        let says = format!("{}. The loads that are known ask {share:.0} % of what it may", why.trim_end_matches('.'));
        *check = Check { x: check.x, ..Check::new(&check.member, &check.name, &check.at, "", Err::<_, String>(says)) };
    }
    checks
}

fn stiffnesses(woods: &Woods) -> Result<Stiffnesses, String> {
    let of = |used| woods.member(used, Duration::TwoMonths).map(|wood| stiffness(&wood).value);
    Ok(Stiffnesses { beam: of(Used::Beam)?, post: of(Used::Post)?, brace: of(Used::Brace)? })
}

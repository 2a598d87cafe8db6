//! The wood of each kind of stick, ready to be checked.
use std::cell::RefCell;

use crate::loads::Duration;
use crate::materials::{Section, Species, Timber, species};
use crate::members::{Conditions, Grade, LoadDuration, Member, specific_gravity};
use crate::project::{Project, Used};
use crate::units::{Length, Stress};

/// The thinnest stick that counts as a timber.
const TIMBER_FROM: Length = Length::inches(4.5);

/// The sticks of a project as the checks see them; a sentence where the tables list no value.
pub struct Woods<'a> {
    project: &'a Project,
    /// What the tables gave, so that each kind of stick is looked up once.
    known: RefCell<Vec<(Used, Result<Member, String>)>>,
}

impl<'a> Woods<'a> {
    /// Of this project.
    #[must_use]
    pub const fn new(project: &'a Project) -> Self {
        Self { project, known: RefCell::new(Vec::new()) }
    }

    /// The size of that kind of stick.
    #[must_use]
    pub const fn timber(&self, used: Used) -> Timber {
        let timbers = &self.project.frame.timbers;
        match used {
            Used::Post => timbers.post,
            Used::Beam => timbers.beam,
            Used::Brace => timbers.brace,
            Used::Rafter => timbers.rafter,
            Used::Ledger => timbers.ledger,
            Used::Purlin => timbers.purlin,
        }
    }

    /// The stick with its design values and the user's own in their place, under a load of that duration.
    ///
    /// Green timbers 5 in and thicker are taken as wet in service until they are declared dry; thinner sticks dry first.
    ///
    /// # Errors
    /// The sentence that names the nearest row, where none is listed.
    pub fn member(&self, used: Used, duration: Duration) -> Result<Member, String> {
        let known = self.known.borrow().iter().find(|(of, _)| *of == used).map(|(_, member)| member.clone());
        let member = known.unwrap_or_else(|| {
            let found = self.look_up(used);
            self.known.borrow_mut().push((used, found.clone()));
            found
        });
        member.map(|member| member.during(load_duration(duration)))
    }

    fn look_up(&self, used: Used) -> Result<Member, String> {
        let (wood, timber) = (&self.project.wood, self.timber(used));
        let kind = species(&self.project.frame.species)
            .ok_or_else(|| format!("no design values for the wood \u{201c}{}\u{201d}", self.project.frame.species))?;
        let is_timber = is_timber(&timber);
        let grade = if is_timber { wood.timber_grade } else { wood.lumber_grade };
        let conditions = Conditions { wet_service: is_timber && !wood.is_dry, ..Conditions::default() };
        let mut member = if is_timber {
            listed(&kind.design_class, grade, timber, conditions)?
        } else {
            lumber(kind, grade, timber)?
        };
        // A value that was only begun is not one yet.
        for own in wood.own.iter().filter(|own| own.used == used && own.value > Stress::ZERO) {
            member.values =
                member.values.with_override(own.property, own.value, &own.source).map_err(|refused| refused.0)?;
        }
        Ok(member)
    }
}

/// The name a wood is graded under when it is sawn 2 to 4 in thick: eastern spruces then belong to Spruce-Pine-Fir (South),
/// northern pines to Eastern Softwoods, and eastern hemlock to its group with tamarack (NDS Supplement, Table 4A, from memory).
fn lumber_class(class: &str) -> &str {
    match class {
        "Eastern Spruce" => "Spruce-Pine-Fir (South)",
        "Northern Pine" => "Eastern Softwoods",
        "Eastern Hemlock" => "Eastern Hemlock-Tamarack",
        own => own,
    }
}

fn listed(class: &str, grade: Grade, timber: Timber, conditions: Conditions) -> Result<Member, String> {
    Member::listed(class, grade, timber, conditions).map_err(|missing| missing.sentence)
}

/// A stick sawn 2 to 4 in thick, dry in use.
fn lumber(kind: &Species, grade: Grade, timber: Timber) -> Result<Member, String> {
    let class = lumber_class(&kind.design_class);
    let member = listed(class, grade, timber, Conditions::default())?;
    let is_own = class == kind.design_class;
    Ok(if is_own { member } else { Member { values: member.values.taken_for(&kind.design_class), ..member } })
}

/// Specific gravity for fasteners in a stick sawn 2 to 4 in thick: where it is graded with lighter woods, theirs, for nobody
/// knows which of them it is.
pub(super) fn lumber_gravity(kind: &Species) -> f64 {
    let group = specific_gravity(lumber_class(&kind.design_class));
    group.map_or(kind.specific_gravity, |found| found.value.min(kind.specific_gravity))
}

/// Whether a stick of that size counts as a timber.
pub(super) fn is_timber(timber: &Timber) -> bool {
    timber.ordered.breadth.min(timber.ordered.depth) >= TIMBER_FROM
}

/// A post or stud of the existing wall, dry, as a 2x6 of No.2: what presses across its grain asks no more of it.
///
/// # Errors
/// Where its species is not known or has no design values.
pub(super) fn wall_post(key: &str) -> Result<Member, String> {
    let kind =
        species(key).ok_or_else(|| format!("no design values for the wood \u{201c}{key}\u{201d} of the wall"))?;
    let size = |breadth: f64, depth: f64| Section::new(Length::inches(breadth), Length::inches(depth));
    let timber = Timber { ordered: size(2.0, 6.0), sawn: size(1.5, 5.5) };
    lumber(kind, Grade::No2, timber)
}

/// The same duration as the wood tables name it.
#[must_use]
pub const fn load_duration(duration: Duration) -> LoadDuration {
    match duration {
        Duration::Permanent => LoadDuration::Permanent,
        Duration::TenYears => LoadDuration::TenYears,
        Duration::TwoMonths => LoadDuration::TwoMonths,
        Duration::SevenDays => LoadDuration::SevenDays,
        Duration::TenMinutes => LoadDuration::TenMinutes,
    }
}

//! The wood of each kind of stick, ready to be checked.
use std::cell::RefCell;

use crate::loads::Duration;
use crate::materials::{Section, Timber, species};
use crate::members::{Conditions, Grade, LoadDuration, Member};
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
        let is_timber = timber.ordered.breadth.min(timber.ordered.depth) >= TIMBER_FROM;
        let grade = if is_timber { wood.timber_grade } else { wood.lumber_grade };
        let conditions = Conditions { wet_service: is_timber && !wood.is_dry, ..Conditions::default() };
        let class = if is_timber { &kind.design_class } else { lumber_class(&kind.design_class) };
        let mut member = Member::listed(class, grade, timber, conditions).map_err(|missing| missing.sentence)?;
        // A value that was only begun is not one yet.
        for own in wood.own.iter().filter(|own| own.used == used && own.value > Stress::ZERO) {
            member.values =
                member.values.with_override(own.property, own.value, &own.source).map_err(|refused| refused.0)?;
        }
        Ok(member)
    }
}

/// The name a wood is graded under when it is sawn 2 to 4 in thick: eastern spruces then belong to Spruce-Pine-Fir (South)
/// (NDS Supplement, Table 4A, from memory).
fn lumber_class(class: &str) -> &str {
    if class == "Eastern Spruce" { "Spruce-Pine-Fir (South)" } else { class }
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
    Member::listed(lumber_class(&kind.design_class), Grade::No2, timber, Conditions::default())
        .map_err(|missing| missing.sentence)
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

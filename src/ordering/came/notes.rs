//! What is known of the piece a stick is cut from, in words for its sheet and its card.
use super::look::DRY_PERCENT;
use crate::materials::{Section, species};
use crate::members::density;
use crate::project::{Piece, Project, Role};
use crate::tickets::Stick;
use crate::units::{Length, UnitSystem, Weight};
use crate::wording::{length, weight};

/// The moisture that timber of an open shed comes to (12 to 16 %: Wood Handbook ch. 13, from memory).
const IN_SERVICE_PERCENT: f64 = 15.0;

/// The kept piece that was given to a stick.
#[must_use]
pub fn piece_for<'a>(project: &'a Project, mark: &str) -> Option<&'a Piece> {
    let mut kept = project.progress.pieces.values().filter(|piece| piece.is_kept());
    kept.find(|piece| piece.place.split(" + ").any(|known| known == mark))
}

/// How far a stick crowns by the piece it was given.
#[must_use]
pub fn crown_of(project: &Project, stick: &Stick) -> Option<Length> {
    let piece = piece_for(project, &stick.mark)?;
    let long = piece.real_length.unwrap_or(piece.length);
    let crown = piece.crown.filter(|crown| *crown > Length::ZERO && long > Length::ZERO)?;
    Some(crown * (stick.net_length() / long).min(1.0).powi(2))
}

/// What the sheet of a stick should say of its piece: its crown, what was found on it, what was noted.
#[must_use]
pub fn note_on(project: &Project, stick: &Stick) -> Option<String> {
    let piece = piece_for(project, &stick.mark)?;
    let mut says = Vec::new();
    if let Some(crown) = crown_of(project, stick) {
        let bow = length(crown, project.units);
        says.push(match stick.role {
            Role::Rafter | Role::Beam | Role::Ledger | Role::Purlin => format!("crown up: this piece crowns {bow}"),
            _ => format!("this piece bows {bow}"),
        });
    }
    let wish = project.buying.heart_of(stick.role);
    if !piece.heart.may_serve(wish) {
        says.push(format!("{}, where {} was asked", piece.heart.name(), wish.name()));
    }
    says.extend(piece.defects.iter().map(|defect| defect.name().to_owned()));
    if !piece.remark.is_empty() {
        says.push(piece.remark.clone());
    }
    if says.is_empty() {
        return None;
    }
    let text = says.join("; ");
    let mut letters = text.chars();
    let first: String = letters.next().into_iter().flat_map(char::to_uppercase).collect();
    Some(format!("{first}{}.", letters.as_str().trim_end_matches('.')))
}

/// What a piece weighs at the moisture a meter found, and what that moisture means.
///
/// Weight by the wood's specific gravity: `62.4·G/(1 + 0.009·G·min(m, 30))·(1 + m/100)` (NDS Supplement 3.1.3, from memory).
#[must_use]
pub fn wet_words(project: &Project, piece: &Piece) -> Option<String> {
    let wet = piece.moisture_percent?;
    let wood = species(&project.frame.species)?;
    let size = piece.near.unwrap_or(piece.section);
    let volume = size.area() * piece.real_length.unwrap_or(piece.length);
    let Ok(worked) = density(wood.specific_gravity, wet) else {
        return Some(format!("At {wet:.0} % it is wetter than the formula for its weight goes: weigh it."));
    };
    let heavy: Weight = worked.value * volume;
    let about = format!("At {wet:.0} % it weighs about {}", weight(heavy, project.units));
    let larger = piece.section.breadth.max(piece.section.depth);
    let rest = length(wood.shrinkage(larger, IN_SERVICE_PERCENT), project.units);
    Some(if wet <= DRY_PERCENT {
        format!(
            "{about}. It is dry already: a green one beside it will shrink {rest} across {}, it will not.",
            length(larger, project.units)
        )
    } else {
        format!("{about}; across {} a green one shrinks about {rest} until it is dry.", length(larger, project.units))
    })
}

/// The sizes a piece was measured at, in words; nothing where it is as ordered.
#[must_use]
pub fn as_measured(piece: &Piece, units: UnitSystem) -> String {
    let size = |section: Section| {
        let fine = |value: Length| length(value, units);
        format!("{} × {}", fine(section.breadth), fine(section.depth))
    };
    let mut says = Vec::new();
    match (piece.near, piece.far) {
        (Some(near), Some(far)) if near != far => says.push(format!("{} to {}", size(near), size(far))),
        (Some(one), _) | (None, Some(one)) => says.push(size(one)),
        (None, None) => (),
    }
    if let Some(long) = piece.real_length {
        says.push(format!("{} long", length(long, units)));
    }
    if let Some(crown) = piece.crown.filter(|crown| *crown > Length::ZERO) {
        says.push(format!("crown {}", length(crown, units)));
    }
    says.extend(piece.defects.iter().map(|defect| defect.name().to_owned()));
    says.join(", ")
}

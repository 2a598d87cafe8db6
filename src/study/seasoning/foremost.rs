//! Which of the movements matter most: those by the kind of joint they are in.
use super::{Movement, Seasoning};
use crate::units::{Length, sort_with};

/// The kind of joint a movement is in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum JointKind {
    /// A post's head in the beam.
    Post,
    /// A brace's ends.
    Brace,
    /// The beam's scarfs.
    Scarf,
    /// A rafter's seats, on the beam and on the ledger.
    Rafter,
    /// What is screwed on: ledger, sheets, flashing.
    Fixing,
}

impl JointKind {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::Post, Self::Brace, Self::Scarf, Self::Rafter, Self::Fixing];

    /// In words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Post => "Posts in the beam",
            Self::Brace => "Braces",
            Self::Scarf => "Scarfs",
            Self::Rafter => "Rafters’ seats",
            Self::Fixing => "Ledger, sheets and their screws",
        }
    }
}

/// Movements that want a hand in the first year.
const FIRST_YEAR: [&str; 6] = ["ledger_heads", "purlin_heads", "wedges", "brace_slack", "drawbore", "metal_at_wall"];

impl Movement {
    /// The kind of joint it is in.
    #[must_use]
    pub fn joint(&self) -> JointKind {
        match self.key {
            "brace_slack" | "brace_in_pocket" => JointKind::Brace,
            "scarf_gap" | "wedges" => JointKind::Scarf,
            "ledger_heads" | "purlin_heads" | "metal_at_wall" => JointKind::Fixing,
            "post_in_housing" | "tenon_in_mortise" | "tenon_cheeks" | "room_over_tenon" | "drawbore" => JointKind::Post,
            _ => JointKind::Rafter,
        }
    }

    /// It wants a hand in the first year.
    #[must_use]
    pub fn is_for_year_one(&self) -> bool {
        FIRST_YEAR.contains(&self.key)
    }
}

impl Seasoning {
    /// What to do in year one.
    pub fn in_year_one(&self) -> impl Iterator<Item = &Movement> {
        FIRST_YEAR.iter().filter_map(|key| self.movement(key))
    }

    /// Movements of a kind of joint.
    pub fn of_joint(&self, joint: JointKind) -> impl Iterator<Item = &Movement> {
        self.movements.iter().filter(move |movement| movement.joint() == joint)
    }

    /// The three that matter most, each of another kind of joint: where a margin does not last first, then what wants a hand in
    /// year one, then the largest.
    #[must_use]
    pub fn foremost(&self) -> Vec<&Movement> {
        let weight = |one: &Movement| (one.is_short, one.is_for_year_one(), one.last());
        let heavier = |a: &&Movement, b: &&Movement| {
            let (a, b) = (weight(a), weight(b));
            (a.0, a.1).cmp(&(b.0, b.1)).then(a.2.to_inches().total_cmp(&b.2.to_inches()))
        };
        let of_kind = |joint: JointKind| self.of_joint(joint).filter(|one| one.last() > Length::ZERO).max_by(heavier);
        let mut all: Vec<&Movement> = JointKind::ALL.into_iter().filter_map(of_kind).collect();
        sort_with(&mut all, |a, b| heavier(b, a));
        all.truncate(3);
        all
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::lay_out;
    use crate::project::demo;
    use crate::study::seasoning;

    /// Each of another joint and never more than three; with no clearance left over the tenon, the posts come first.
    #[test]
    fn three_of_three_kinds() {
        for mut project in [demo::wool_barn(), demo::log_store()] {
            let built = lay_out(&project).built.unwrap();
            let found = seasoning(&project, &built).unwrap();
            let all = found.foremost();
            assert_eq!(all.len(), 3);
            assert!(all.windows(2).all(|pair| pair[0].joint() != pair[1].joint()) && all[0].joint() != all[2].joint());
            assert!(all.iter().all(|one| one.is_for_year_one() || one.is_short));
            let n_sorted: usize = JointKind::ALL.into_iter().map(|joint| found.of_joint(joint).count()).sum();
            assert_eq!(n_sorted, found.movements.len());
            project.joinery.blind_clearance = Length::ZERO;
            let tight = seasoning(&project, &built).unwrap();
            assert_eq!(tight.foremost()[0].key, "room_over_tenon");
        }
    }
}

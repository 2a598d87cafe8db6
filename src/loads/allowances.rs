//! Loads set by rule: a person on the roof, a frame out of plumb, a post that sinks.
use super::Edition;
use super::say::pounds;
use crate::units::{Force, Length};
use crate::working::{Citation, Step, Worked};

/// One person at upkeep work, on one rafter or purlin, unshared.
pub const MAINTENANCE_PERSON: Force = Force::pounds(300.0);

/// Share of the gravity load that pushes sideways on a frame that was not raised quite plumb.
const OUT_OF_PLUMB: f64 = 0.005;

/// A person on a roof member.
#[must_use]
pub fn person_load(edition: Edition) -> Worked<Force> {
    let says = format!("P = {} at the worst place of one rafter or one purlin", pounds(MAINTENANCE_PERSON));
    let step = Step::new("P, a person at upkeep work", says, edition.recalled("4.8, maintenance load"));
    Worked::new(MAINTENANCE_PERSON, vec![step])
}

/// The sideways push for a frame out of plumb: 0.5 % of the gravity load of the same combination.
#[must_use]
pub fn notional_force(gravity: Force) -> Worked<Force> {
    let force = gravity * OUT_OF_PLUMB;
    let says = format!("N = 0.005·G = 0.005·{} = {} lb", pounds(gravity), super::say::num(force.to_pounds(), 1));
    let step = Step::new("N, out-of-plumb force", says, Citation::common_practice("0.5 % of the gravity load"));
    Worked::new(force, vec![step])
}

/// How far each post in turn is taken to sink.
#[must_use]
pub fn settlement(frost_prone: bool) -> Worked<Length> {
    let (sinks, says) = if frost_prone {
        (Length::inches(0.5), "each post in turn down 1/2 in, frost-prone soil")
    } else {
        (Length::inches(0.25), "each post in turn down 1/4 in")
    };
    let step = Step::new("settlement of one post", says, Citation::common_practice("settlement of one post"));
    Worked::new(sinks, vec![step])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn by_rule() {
        assert_eq!(person_load(Edition::Asce7_16).value.to_pounds(), 300.0);
        let push = notional_force(Force::pounds(9000.0));
        assert!((push.value.to_pounds() - 45.0).abs() < 1e-9);
        assert_eq!(push.steps[0].says, "N = 0.005·G = 0.005·9000 lb = 45.0 lb");
        assert_eq!(settlement(false).value.to_inches(), 0.25);
        assert_eq!(settlement(true).value.to_inches(), 0.5);
    }
}

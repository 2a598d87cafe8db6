//! A structural screw whose values come from its maker: nothing is computed that the maker has not stated.
use super::Refused;
use super::combined::{LoadOnOne, Pull, combined_check};
use super::fastener::FastenerKind;
use super::refused::above_zero;
use super::written::{inches, number, pounds};
use crate::units::{Force, Length, LineLoad};
use crate::working::{Citation, Step, Worked};

/// What the maker's report states, as the user copied it.
#[derive(Clone, Debug, PartialEq)]
pub struct MakerScrew {
    /// Name of the screw.
    pub name: String,
    /// The report the values stand in, with its date.
    pub source: String,
    /// The specific gravity the values are for.
    pub gravity: f64,
    /// Allowable lateral load of one, before C_D.
    pub lateral: Force,
    /// Allowable withdrawal, a length of thread, before C_D.
    pub withdrawal: LineLoad,
    /// Allowable head pull-through, before C_D.
    pub head_pull_through: Force,
    /// Allowable tension of the steel; no factor.
    pub steel_tension: Force,
    /// The least thread in the main member.
    pub least_thread: Length,
}

/// What one such screw may carry.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MakerValues {
    /// Aside.
    pub lateral: Force,
    /// Along its axis: thread, head or steel, the least.
    pub axial: Force,
}

impl MakerScrew {
    /// What one screw may carry with this much thread in wood of this gravity, C_D and C_M from the combination.
    ///
    /// # Errors
    /// Without a source, in wood lighter than the maker's, with too little thread, with factors outside their limits.
    pub fn values(
        &self,
        gravity: f64,
        thread: Length,
        duration: f64,
        wet: f64,
    ) -> Result<Worked<MakerValues>, Refused> {
        if self.source.trim().is_empty() {
            return Err(Refused::because(format!(
                "Say where the values of {} stand: the maker's report and its date.",
                self.name
            )));
        }
        if gravity + 1e-9 < self.gravity {
            return Err(Refused::because(format!(
                "The maker's values of {} are for wood of G {:.2}; this wood has {gravity:.2}. Take the values for it.",
                self.name, self.gravity
            )));
        }
        if thread + Length::inches(1e-9) < self.least_thread {
            return Err(Refused::because(format!(
                "{} has {} in of thread in the main member; its maker asks for {} in.",
                self.name,
                inches(thread),
                inches(self.least_thread)
            )));
        }
        above_zero("the load duration factor", duration)?;
        if duration > 1.6 || !(wet > 0.0 && wet <= 1.0) {
            return Err(Refused::because("C_D of a connection is at most 1.6, and C_M lies between 0 and 1."));
        }
        let factor = duration * wet;
        let (out, head) = (self.withdrawal * thread * factor, self.head_pull_through * factor);
        let lateral = self.lateral * factor;
        let axial = out.min(head).min(self.steel_tension);
        above_zero("the maker's lateral value", lateral.to_pounds())?;
        above_zero("the maker's withdrawal, head and tension values", axial.to_pounds())?;
        Ok(Worked::new(
            MakerValues { lateral, axial },
            self.steps(thread, [duration, wet], [lateral, out, head, axial]),
        ))
    }

    /// As the maker's paper, which we have not seen.
    fn steps(&self, thread: Length, factors: [f64; 2], [lateral, out, head, axial]: [Force; 4]) -> Vec<Step> {
        let citation = Citation::given("the maker's report", "as the user gave it");
        let factors = factors.map(number).join("·");
        vec![
            Step::new("where the values stand", format!("{}: {}", self.name, self.source), citation),
            Step::new(
                "lateral load of one",
                format!("Z·C_D·C_M = {}·{factors} = {} lb", pounds(self.lateral), pounds(lateral)),
                citation,
            ),
            Step::new(
                "axial load of one",
                format!(
                    "least of thread {}·{}·{factors} = {}, head {}, steel {} = {} lb",
                    number(self.withdrawal.to_pounds_per_inch()),
                    inches(thread),
                    pounds(out),
                    pounds(head),
                    pounds(self.steel_tension),
                    pounds(axial)
                ),
                citation,
            ),
        ]
    }
}

impl MakerValues {
    /// Load by capacity with both at once, by the rule for screws (NDS 12.4-1); the maker's own rule goes first.
    ///
    /// # Errors
    /// Without a load.
    pub fn check(self, load: LoadOnOne) -> Result<Worked<f64>, Refused> {
        combined_check(FastenerKind::WoodScrew, Pull { withdrawal: self.axial, lateral: self.lateral }, load)
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    /// Invented values.
    fn screw() -> MakerScrew {
        MakerScrew {
            name: "long screw".to_owned(),
            source: "invented report, page 3".to_owned(),
            gravity: 0.42,
            lateral: Force::pounds(300.0),
            withdrawal: LineLoad::pounds_per_inch(200.0),
            head_pull_through: Force::pounds(500.0),
            steel_tension: Force::pounds(700.0),
            least_thread: Length::inches(2.0),
        }
    }

    fn axial(thread: f64, duration: f64) -> f64 {
        screw().values(0.42, Length::inches(thread), duration, 1.0).unwrap().value.axial.to_pounds()
    }

    #[test]
    fn the_least_of_thread_head_and_steel() {
        assert_eq!(axial(2.0, 1.0), 400.0);
        assert_eq!(axial(3.0, 1.0), 500.0);
        assert_eq!(axial(6.0, 1.6), 700.0);
        let wet = screw().values(0.5, Length::inches(2.0), 1.0, 0.7).unwrap().value;
        assert!((wet.lateral.to_pounds() - 210.0).abs() < 1e-9);
        let load = LoadOnOne { withdrawal: Force::ZERO, lateral: Force::pounds(105.0) };
        assert!((wet.check(load).unwrap().value - 0.5).abs() < 1e-9);
    }

    #[test]
    fn what_the_maker_has_not_stated_is_refused() {
        let two = Length::inches(2.0);
        assert!(MakerScrew { source: " ".to_owned(), ..screw() }.values(0.5, two, 1.0, 1.0).is_err());
        assert!(screw().values(0.41, two, 1.0, 1.0).is_err());
        assert!(screw().values(0.5, Length::inches(1.9), 1.0, 1.0).is_err());
        assert!(screw().values(0.5, two, 2.0, 1.0).is_err());
        assert!(screw().values(0.5, two, 1.0, 1.1).is_err());
        assert!(MakerScrew { lateral: Force::ZERO, ..screw() }.values(0.5, two, 1.0, 1.0).is_err());
    }
}

//! How the line leans along the wall before its braces touch, and what its weight adds to a push.
use crate::frame::{SecondOrder, Storey};
use crate::geometry::BraceLine;
use crate::materials::species;
use crate::project::Project;
use crate::units::{Force, Length};
use crate::working::{Citation, Step, Worked};

/// The beam line as a storey: what its sway along the wall hangs on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leaning {
    /// What is tried, and how far the line sways under it alone: to the left, then to the right.
    pub tried: Force,
    /// See [`Self::tried`].
    pub sways: [Length; 2],
    /// How far it leans before the braces touch.
    pub slack: Length,
    /// Foot to shoulder, of its shortest post: there a sway makes the steepest lean.
    pub height: Length,
}

/// A push along the line with what the weight on it adds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pushed {
    /// In all, plus to the right.
    pub push: Force,
    /// What the sway adds, as a factor.
    pub found: SecondOrder,
    storey: Storey,
    slack: Length,
    /// The further push of slack joints.
    lean: Force,
}

impl Leaning {
    /// A push (plus to the right) with what the weight on the line adds to it.
    ///
    /// Level: V + P·(δ + Δ)/h = Δ/f, with δ the lean of slack joints and f = Δ/V of the push alone. So the lean is a further
    /// push P·δ/h, and 1/(1 − θ) with θ = P·f/h is what the sway adds to both. A gravity sway of an uneven frame is no part of f.
    ///
    /// # Errors
    /// As [`Storey::second_order`].
    pub fn pushed(&self, push: Force, weight: Force) -> Result<Pushed, String> {
        let sway = if push.is_negative() { self.sways[0] } else { self.sways[1] } * (push.abs() / self.tried);
        let storey = Storey { weight, sway, shear: push, height: self.height };
        let found = storey.second_order()?;
        let lean = weight.max(Force::ZERO) * (self.slack / self.height);
        let whole = (push.abs() + lean) * found.factor;
        let push = if push.is_negative() { -whole } else { whole };
        Ok(Pushed { push, found, storey, slack: self.slack, lean })
    }
}

impl Pushed {
    /// How it came about.
    #[must_use]
    pub fn working(&self) -> Worked<SecondOrder> {
        let Storey { weight, shear, height, .. } = self.storey;
        let mut worked = self.storey.working(self.found);
        let says = format!(
            "P·δ/h = {:.0}·{:.3}/{:.1} = {:.1} lb; (V + P·δ/h)·factor = ({:.1} + {:.1})·{:.4} = {:.1} lb",
            weight.max(Force::ZERO).to_pounds(),
            self.slack.to_inches(),
            height.to_inches(),
            self.lean.to_pounds(),
            shear.abs().to_pounds(),
            self.lean.to_pounds(),
            self.found.factor,
            self.push.abs().to_pounds()
        );
        let source = Citation::from_memory("statics", "a leaning storey");
        worked.steps.push(Step::new("push with the lean of slack joints", says, source));
        worked
    }
}

/// What the line sways before its braces touch: δ·H/(a·cos φ) with δ the gap along the brace, a its foot below the beam. The
/// post's face draws back by half of what the post shrinks as it dries; the beam's underside stays on the shoulders.
#[must_use]
pub fn slack_sway(project: &Project, height: Length) -> Worked<Length> {
    let line = BraceLine::of(&project.frame);
    let moisture = project.site.service_moisture_percent;
    let wood = species(&project.frame.species);
    let breadth = project.frame.timbers.post.sawn.breadth;
    let back = wood.map_or(Length::ZERO, |wood| wood.shrinkage(breadth, moisture) / 2.0);
    let gap = back * line.cos;
    let sway = gap * (height / (line.foot * line.cos));
    let says = format!(
        "δ·H/(a·cos φ) = {:.3}·{:.1}/({:.1}·{:.3}) = {:.3} in, the joints dried to {moisture:.0} %",
        gap.to_inches(),
        height.to_inches(),
        line.foot.to_inches(),
        line.cos,
        sway.to_inches()
    );
    Worked::new(sway, vec![Step::new("sway from slack joints", says, Citation::common_practice("dried joints open"))])
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    fn line() -> Leaning {
        let sways = [0.25, 0.20].map(Length::inches);
        Leaning { tried: Force::pounds(1000.0), sways, slack: Length::inches(0.3), height: Length::inches(100.0) }
    }

    /// By hand: 10 kip on a line that sways 0.0002 in a pound, 100 in high: θ = 10000·0.0002/100 = 0.02, left out; the lean
    /// pushes 10000·0.3/100 = 30 lb. With 60 kip θ = 0.12, 1/0.88: (500 + 180)/0.88 = 772.7 lb.
    #[test]
    fn a_lean_pushes() {
        let found = |push: f64, weight: f64| {
            let pushed = line().pushed(Force::pounds(push), Force::pounds(weight)).unwrap();
            (pushed.push.to_pounds(), pushed.found.theta, pushed.working().steps[2].says.clone())
        };
        let (push, theta, _) = found(500.0, 10_000.0);
        assert!((push - 530.0).abs() < 1e-9 && (theta - 0.02).abs() < 1e-12);
        let (push, theta, says) = found(500.0, 60_000.0);
        assert!((push - 680.0 / 0.88).abs() < 1e-9 && (theta - 0.12).abs() < 1e-12);
        assert!(says.ends_with("(500.0 + 180.0)·1.1364 = 772.7 lb"), "{says}");
        // To the left it is softer: θ = 60000·0.00025/100 = 0.15.
        let (push, theta, says) = found(-500.0, 60_000.0);
        assert!((push + 680.0 / 0.85).abs() < 1e-9 && (theta - 0.15).abs() < 1e-12);
        assert!(says.ends_with("(500.0 + 180.0)·1.1765 = 800.0 lb"), "{says}");
    }

    #[test]
    fn a_small_push_makes_no_larger_share_and_a_lift_adds_nothing() {
        let theta = |push: f64| line().pushed(Force::pounds(push), Force::pounds(60_000.0)).unwrap().found.theta;
        assert!((theta(5.0) - theta(5000.0)).abs() < 1e-12);
        let lifted = line().pushed(Force::pounds(500.0), Force::pounds(-10_000.0)).unwrap();
        assert!(lifted.push == Force::pounds(500.0) && lifted.found.factor == 1.0);
    }
}

//! The concrete that a post's base presses on, at the top of its pier.
//!
//! A project says neither what its concrete is nor how large the base's plate is. The least concrete that the code lets carry
//! is taken, and a plate as large as the post's foot: both are said in the working, which is no surer than a placeholder.
use crate::analysis::Demand;
use crate::fastening::{Refused, concrete_bearing_service, concrete_bearing_strength};
use crate::materials::Section;
use crate::members::Verdict;
use crate::project::{Pier, Project};
use crate::units::{Area, Fixed, Force, Stress};
use crate::working::{Citation, Step, Worked};

/// Name of the check the path of the weight finds.
pub(super) const CARRIES_BASE: &str = "bears the post's base on its concrete";

/// f′c of the weakest concrete that may carry (ACI 318 19.2.1.1 and IRC R402.2, from memory).
pub(super) const LEAST_CONCRETE: Stress = Stress::psi(2500.0);
/// The largest factor of a load at strength level: what is allowed at service level is at most that much less (ACI 318 5.3.1,
/// from memory: 1.6 on snow by 7-16, and on what people do; dead load has 1.2 and 1.4).
const LOAD_FACTOR: f64 = 1.6;

/// What is said of the concrete that carries.
pub(super) fn assumed_concrete() -> Step {
    let says = format!(
        "f′c = {} psi assumed, the least that may carry; where it freezes wet 3,000 psi is asked",
        Fixed(LEAST_CONCRETE.to_psi(), 0)
    );
    Step::new("concrete, assumed", says, Citation::from_memory("ACI 318 and IRC", "19.2.1.1, R402.2"))
}

/// Load on the plate against the concrete under it, for the heaviest load: concrete knows no load duration.
pub(super) fn bears(project: &Project, down: &Demand<Force>) -> Result<Worked<Verdict>, Refused> {
    let pier = &project.fixings.pier;
    let foot = project.frame.timbers.post.sawn;
    let (plate, top) = (on_top(&foot, pier), area(pier));
    let says = format!(
        "A₁ = {} in² of the foot's {} in² lie on the pier: the plate is assumed as large as the foot, since its size is not \
         known; a smaller one presses harder, and its maker's sheet says how large it is",
        Fixed(plate.to_square_inches(), 1),
        Fixed(foot.area().to_square_inches(), 1)
    );
    let sized = Step::new(
        "plate of the base, assumed",
        says,
        Citation::placeholder("common practice", "a base as wide as its post"),
    );
    let customary = concrete_bearing_service(plate, LEAST_CONCRETE)?;
    let factored = concrete_bearing_strength(plate, top.max(plate), LEAST_CONCRETE)?;
    let allowed = customary.value.min(factored.value / LOAD_FACTOR);
    let says = format!(
        "the lesser of {} lb and {}/1.6 = {} lb",
        Fixed(customary.value.to_pounds(), 0),
        Fixed(factored.value.to_pounds(), 0),
        Fixed((factored.value / LOAD_FACTOR).to_pounds(), 0)
    );
    let least =
        Step::new("what the concrete bears", says, Citation::from_memory("ACI 318", "22.8 by the largest load factor"));
    let steps = [vec![assumed_concrete(), sized], customary.steps, factored.steps, vec![least]].concat();
    Ok(Worked::new(Verdict::force(down.value, allowed), steps))
}

/// Top of the pier.
pub(super) fn area(pier: &Pier) -> Area {
    let square = pier.pier_width * pier.pier_width;
    if pier.is_round { square * std::f64::consts::FRAC_PI_4 } else { square }
}

/// What of a foot on the middle of the pier lies on concrete. A quarter of what a circle of radius r shares with a foot of
/// half sides a and h is h·x₁ + ∫√(r² − x²) from x₁ to a, the arc cutting the foot's edge at x₁ = √(r² − h²).
pub(super) fn on_top(foot: &Section, pier: &Pier) -> Area {
    let wide = pier.pier_width;
    if !pier.is_round {
        return foot.breadth.min(wide) * foot.depth.min(wide);
    }
    let [a, h, r] = [foot.breadth, foot.depth, wide].map(|size| size.to_inches() / 2.0);
    let (a, h) = (a.min(r), h.min(r));
    let under = |x: f64| (x * (r * r - x * x).max(0.0).sqrt() + r * r * (x / r).clamp(-1.0, 1.0).asin()) / 2.0;
    let cut = (r * r - h * h).max(0.0).sqrt().min(a);
    Area::square_inches(4.0 * (h * cut + under(a) - under(cut)))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::checks::asked::given;
    use crate::loads::Duration;
    use crate::project::demo;
    use crate::units::Length;
    use crate::working::Confidence;

    fn project(foot: [f64; 2], pier: f64, is_round: bool) -> Project {
        let mut project = demo::wool_barn();
        let [breadth, depth] = foot.map(Length::inches);
        project.frame.timbers.post.sawn = Section::new(breadth, depth);
        (project.fixings.pier.pier_width, project.fixings.pier.is_round) = (Length::inches(pier), is_round);
        project
    }

    fn bearing(project: &Project, pounds: f64) -> Worked<Verdict> {
        bears(project, &given(Force::pounds(pounds), "D + S", Duration::TwoMonths)).unwrap()
    }

    fn on(foot: [f64; 2], pier: f64, is_round: bool) -> f64 {
        let project = project(foot, pier, is_round);
        on_top(&project.frame.timbers.post.sawn, &project.fixings.pier).to_square_inches()
    }

    /// By hand: 6 in square is 36 in², 0.3·2500·36 = 27,000 lb; by ACI 0.65·0.85·2500·36·√(113.1/36 = 1.772)/1.6 is more.
    #[test]
    fn both_sides_of_what_it_bears() {
        let whole = project([6.0, 6.0], 12.0, true);
        let (under, over) = (bearing(&whole, 26_990.0), bearing(&whole, 27_010.0));
        assert!((under.value.ratio - 26_990.0 / 27_000.0).abs() < 1e-12 && under.value.passes());
        assert!(!over.value.passes());
        // What is assumed is said, and lowers the trust.
        assert_eq!(under.confidence(), Confidence::Low);
        assert_eq!(under.steps.iter().filter(|step| step.gives.contains("assumed")).count(), 2);
        let factored = under.steps.iter().find(|step| step.gives == "what the concrete bears").unwrap();
        let allowed = 0.65 * 0.85 * 2500.0 * 36.0 * (36.0 * std::f64::consts::PI / 36.0).sqrt() / 1.6;
        assert!(factored.says.contains(&format!("{allowed:.0} lb")), "{}", factored.says);
    }

    /// A foot of 8 by 10 on a square pier of 9 lies on 8·9; on a round one of 8 across, which it covers, on 16π. On a round one of
    /// 10 the corners of 8 in square hang over (5.66 > 5): x₁ = 3, 4·(4·3 + ½(4·3 + 25·(asin 0.8 − asin 0.6) − 3·4)) = 62.19 in².
    #[test]
    fn what_hangs_over_bears_nothing() {
        let close =
            |found: f64, expected: f64| assert!((found - expected).abs() < 1e-9 * expected, "{found} {expected}");
        close(on([8.0, 10.0], 9.0, false), 72.0);
        close(on([8.0, 10.0], 8.0, true), 16.0 * std::f64::consts::PI);
        close(on([8.0, 8.0], 10.0, true), 4.0 * (12.0 + 12.5 * (0.8_f64.asin() - 0.6_f64.asin())));
        close(on([8.0, 6.0], 10.0, true), 48.0);
        // By squares of a hundredth of an inch.
        let n =
            (0..1000).flat_map(|x| (0..1000).map(move |y| (f64::from(x) * 0.01 - 4.995, f64::from(y) * 0.01 - 4.995)));
        let counted = n.filter(|(x, y)| x.abs() < 4.0 && y.abs() < 4.5 && x.hypot(*y) < 5.0).count() as f64 * 1e-4;
        assert!((on([8.0, 9.0], 10.0, true) - counted).abs() < 0.05, "{counted}");
    }
}

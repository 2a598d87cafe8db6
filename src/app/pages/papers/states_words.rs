//! What a kept state came to, in words beside what the frame comes to now.
use crate::app::figures::Sums;
use crate::units::{Money, UnitSystem, Weight, show_money, show_weight};

/// Of a state that had nothing to show.
pub fn not_built() -> String {
    "A problem stopped the frame when this was kept.".to_owned()
}

/// Sticks, weight, price and worst check; each with the difference, where there is a frame now.
pub fn beside(then: &Sums, now: Option<&Sums>, units: UnitSystem, currency: &str) -> String {
    let weigh =
        |pounds: f64| Weight::try_pounds(pounds).map_or_else(String::new, |it| show_weight(it, units).to_string());
    let pay = |price: f64| Money::try_of(price).map_or_else(String::new, |it| show_money(it, currency).to_string());
    let count = |count: f64| format!("{count:.0}");
    let of = |say: &dyn Fn(f64) -> String, part: fn(&Sums) -> f64, few: &str| {
        let difference = now.map(|now| compared(say, part(then), part(now), few));
        (say(part(then)), difference.unwrap_or_default())
    };
    let (sticks, than_sticks) = of(&count, |sums| sums.n_sticks as f64, "fewer");
    let (weight, than_weight) = of(&weigh, |sums| sums.weight_lb, "less");
    let (price, than_price) = of(&pay, |sums| sums.price, "less");
    format!("{sticks} sticks{than_sticks}; {weight}{than_weight}; {price}{than_price}{}", worst(then, now))
}

/// `, 3 fewer than now`; alike is what is shown alike.
fn compared(say: &dyn Fn(f64) -> String, then: f64, now: f64, few: &str) -> String {
    if say(then) == say(now) {
        return ", as now".to_owned();
    }
    let word = if then < now { few } else { "more" };
    format!(", {} {word} than now", say((then - now).abs()))
}

fn worst(then: &Sums, now: Option<&Sums>) -> String {
    let known = |sums: &Sums| if sums.worst.is_empty() { "not worked out".to_owned() } else { sums.worst.clone() };
    let beside = match now {
        None => String::new(),
        Some(now) if now.worst == then.worst => ", as now".to_owned(),
        Some(now) => format!(", now {}", known(now)),
    };
    format!(". Worst check: {}{beside}.", known(then))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sums(n_sticks: usize, weight_lb: f64, price: f64, worst: &str) -> Sums {
        Sums { n_sticks, weight_lb, price, worst: worst.to_owned() }
    }

    fn check(then: &Sums, now: Option<&Sums>, units: UnitSystem, expected: &str) {
        assert_eq!(beside(then, now, units, "$").replace('\u{a0}', " ").replace('\u{202f}', " "), expected);
    }

    #[test]
    fn differences_are_said_the_way_round_they_are() {
        let then = sums(38, 2400.0, 1000.0, "R7 bends 84 %");
        let now = sums(41, 2300.0, 1000.2, "B2 bends 91 %");
        check(
            &then,
            Some(&now),
            UnitSystem::Imperial,
            "38 sticks, 3 fewer than now; 2400 lb, 100 lb more than now; $1,000, as now. Worst check: R7 bends 84 %, \
             now B2 bends 91 %.",
        );
        check(&then, None, UnitSystem::Metric, "38 sticks; 1089 kg; $1,000. Worst check: R7 bends 84 %.");
    }

    #[test]
    fn strength_that_was_not_worked_out_is_said() {
        let then = sums(1, 10.0, 2.0, "");
        check(
            &then,
            Some(&then),
            UnitSystem::Imperial,
            "1 sticks, as now; 10 lb, as now; $2.00, as now. Worst check: not worked out, as now.",
        );
    }
}

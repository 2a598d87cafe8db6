//! The screws at each crossing of purlin and rafter: pulled out, pulled through by their heads, pushed down the slope.
use super::check::{Check, Under};
use super::governing::most;
use super::known::{chosen, gravity, moisture};
use super::purlin::Purlins;
use crate::analysis::{Found, Loading, PurlinBeam, RoofLoads, StripLines};
use crate::design::Shape;
use crate::fastening::{
    Factors, Fastener, FastenerKind, LoadOnOne, Member, Moisture, Pull, Refused, RowLayout, adjusted_lateral,
    adjusted_withdrawal, combined_check, head_pull_through, lag_thread_in_main, load_duration, penetration,
    single_shear, wet_lateral, wet_withdrawal, withdrawal,
};
use crate::loads::Duration;
use crate::members::Verdict;
use crate::project::{Project, Used};
use crate::units::{Angle, Fixed, Force, Length};
use crate::unmade::{Input, Unmade};
use crate::working::{Citation, Step, Worked};

pub(super) const SCREWS: &str = "purlin screws";
/// Names of the checks against uplift: the path of the uplift finds them by these.
pub(super) const PULL_OUT: &str = "pull out of the rafter";
pub(super) const HEADS_PULL: &str = "pull their heads through the purlin";
const SLIDE: &str = "hold the purlin on the slope";
/// A flat head is a little over twice the screw across (ASME B18.6.1, from memory).
const HEAD: f64 = 2.0;
/// A wood screw is threaded over two thirds of its length (NDS App. L, from memory).
const THREADED: f64 = 2.0 / 3.0;

/// The three checks of the screws that hold the purlins on the rafters: the worst row of each.
#[must_use]
pub fn check_purlin_screws(project: &Project, shape: &Shape, loads: &RoofLoads) -> Vec<Check> {
    let names = [PULL_OUT, HEADS_PULL, SLIDE];
    let found = Purlins::new(project, shape, loads).and_then(|purlins| {
        let crossing = Crossing::new(project)?;
        Ok(worst(&purlins, crossing.count).map(|asked| crossing.judge(&asked)))
    });
    match found {
        Ok(checks) => checks.into(),
        Err(why) => names.map(|name| Check::not_judged(SCREWS, name, &why)).into(),
    }
}

/// One screw under one combination, for the check that it governs.
struct Asked {
    name: &'static str,
    row: usize,
    out: Force,
    aside: Force,
    under: Under,
    duration: Duration,
}

/// Of every row and combination what asks most of one screw: the pull twice, for thread and head, and the push aside.
fn worst(purlins: &Purlins, count: f64) -> [Asked; 3] {
    let all = || {
        purlins.rows.iter().flat_map(|row| {
            purlins.loadings.iter().map(move |loading| (&row.strip, loading, on_one(purlins, row, loading, count)))
        })
    };
    let by = |of: fn(&LoadOnOne) -> Force| {
        most(all(), |(_, loading, load)| of(load).to_pounds() / loading.duration.factor())
    };
    let asked = |name, of: fn(&LoadOnOne) -> Force| {
        by(of).map_or_else(
            || nothing(name),
            |(strip, loading, load)| Asked {
                name,
                row: strip.number,
                out: load.withdrawal,
                aside: load.lateral,
                under: Under::of(loading, Found::Formula("largest reaction of a purlin"))
                    .asks("out of one screw", load.withdrawal.max(Force::ZERO))
                    .asks("aside", load.lateral),
                duration: loading.duration,
            },
        )
    };
    let (pulled, pushed) = (|load: &LoadOnOne| load.withdrawal, |load: &LoadOnOne| load.lateral);
    [asked(PULL_OUT, pulled), asked(HEADS_PULL, pulled), asked(SLIDE, pushed)]
}

fn nothing(name: &'static str) -> Asked {
    let none = Force::ZERO;
    Asked { name, row: 0, out: none, aside: none, under: Under::default(), duration: Duration::Permanent }
}

/// A crossing takes the largest reaction of the row.
fn on_one(purlins: &Purlins, row: &StripLines, loading: &Loading, count: f64) -> LoadOnOne {
    let (load, strip) = (row.load(loading), &row.strip);
    let largest = |of: &dyn Fn(&PurlinBeam) -> Force| purlins.beams.iter().map(of).fold(Force::ZERO, Force::max);
    let out = largest(&|beam| beam.reaction(-load.across) - load.person * strip.pitch.cos());
    let aside = largest(&|beam| beam.reaction(load.along) + load.person * strip.pitch.sin());
    LoadOnOne { withdrawal: out / count, lateral: aside / count }
}

/// The screws of one crossing and what they stand in.
struct Crossing {
    screw: &'static Fastener,
    length: Length,
    count: f64,
    gravity: f64,
    moisture: Moisture,
    purlin: Length,
    rafter: Length,
}

impl Crossing {
    fn new(project: &Project) -> Result<Self, Unmade> {
        let (screws, timbers) = (&project.fixings.purlin, &project.frame.timbers);
        let screw = chosen(&screws.fastener, "screw of the purlins", Input::PurlinScrew)?;
        if screws.count == 0 {
            return Err("the number of screws at a crossing of purlin and rafter is missing".into());
        }
        Ok(Self {
            screw,
            length: screws.length,
            count: screws.count as f64,
            gravity: gravity(&project.frame.species, Some(&timbers.rafter), "the rafters")?,
            moisture: moisture(project, Used::Rafter)?,
            purlin: timbers.purlin.sawn.depth,
            rafter: timbers.rafter.sawn.depth,
        })
    }

    fn judge(&self, asked: &Asked) -> Check {
        let made = match asked.name {
            PULL_OUT => self.pulled_out(asked).map_err(Unmade::from),
            HEADS_PULL => self.head_through(asked),
            _ => self.pushed(asked).map_err(Unmade::from),
        };
        let made = made.map(|mut made| {
            made.steps.insert(0, self.step(asked));
            made
        });
        let at = if asked.row == 0 { String::new() } else { format!("in row N{}", asked.row) };
        Check::new(SCREWS, asked.name, at, asked.under.clone(), made)
    }

    fn step(&self, asked: &Asked) -> Step {
        let says = format!(
            "{} lb out, {} lb down the slope on one of {}",
            Fixed(asked.out.to_pounds(), 0),
            Fixed(asked.aside.to_pounds(), 0),
            Fixed(self.count, 0)
        );
        Step::new("load on one screw", says, Citation::from_memory("statics", "largest reaction of a two-span purlin"))
    }

    fn pulled_out(&self, asked: &Asked) -> Result<Worked<Verdict>, Refused> {
        if asked.out <= Force::ZERO {
            return Ok(Worked::new(Verdict::force(Force::ZERO, Force::ZERO), Vec::new()));
        }
        let out = self.withdrawal(asked.duration)?;
        let aside = self.lateral(asked.duration)?;
        let load = LoadOnOne { withdrawal: asked.out, lateral: asked.aside };
        let values = Pull { withdrawal: out.value, lateral: aside.value };
        let ratio = combined_check(self.screw.kind, values, load)?;
        let total = Force::pounds(asked.out.to_pounds().hypot(asked.aside.to_pounds()));
        let steps = out.steps.into_iter().chain(aside.steps).chain(ratio.steps).collect();
        Ok(Worked::new(Verdict::force(total, total / ratio.value), steps))
    }

    fn head_through(&self, asked: &Asked) -> Result<Worked<Verdict>, Unmade> {
        if self.screw.kind != FastenerKind::WoodScrew {
            return Err(format!("the size of the head of a {} is missing", self.screw.name).into());
        }
        let found = head_pull_through(self.screw.diameter * HEAD, self.gravity, self.purlin)?;
        let duration = load_duration(asked.duration.factor())?;
        let wet = wet_withdrawal(self.screw.kind, self.moisture)?;
        let allowed = found.value * duration.value * wet.value;
        let head = Step::new(
            "D_H, head",
            format!("D_H = 2·D = {} in", Fixed((self.screw.diameter * HEAD).to_inches(), 3)),
            Citation::placeholder("ASME B18.6.1", "flat heads, a little over twice the screw"),
        );
        let says = format!("W_H·C_D·C_M = {} lb", Fixed(allowed.to_pounds(), 0));
        let last = Step::new("allowed of one head", says, Citation::from_memory("NDS 2018", "Table 11.3.1"));
        let all = [vec![head], found.steps, duration.steps, wet.steps, vec![last]];
        Ok(Worked::new(Verdict::force(asked.out, allowed), all.into_iter().flatten().collect()))
    }

    fn pushed(&self, asked: &Asked) -> Result<Worked<Verdict>, Refused> {
        let aside = self.lateral(asked.duration)?;
        Ok(Worked::new(Verdict::force(asked.aside, aside.value), aside.steps))
    }

    /// How far the point stands in the rafter.
    fn depth(&self) -> Length {
        (self.length - self.purlin).min(self.rafter)
    }

    fn withdrawal(&self, duration: Duration) -> Result<Worked<Force>, Refused> {
        let reference = withdrawal(self.screw, self.gravity)?;
        let thread = self.thread()?;
        let duration = load_duration(duration.factor())?;
        let wet = wet_withdrawal(self.screw.kind, self.moisture)?;
        let factors = Factors { load_duration: duration.value, wet: wet.value, ..Factors::default() };
        let allowed = adjusted_withdrawal(reference.value, thread.value, &factors)?;
        let all = [reference.steps, thread.steps, duration.steps, wet.steps, allowed.steps];
        Ok(Worked::new(allowed.value, all.into_iter().flatten().collect()))
    }

    fn thread(&self) -> Result<Worked<Length>, Refused> {
        if self.screw.kind == FastenerKind::LagScrew {
            let found = lag_thread_in_main(self.screw, self.length, self.purlin)?;
            return Ok(Worked::new(found.value.min(self.rafter), found.steps));
        }
        let is_screw = self.screw.kind == FastenerKind::WoodScrew;
        let held = if is_screw { self.depth().min(self.length * THREADED) } else { self.depth() };
        let says = format!(
            "p = {} in past the purlin of {} in",
            Fixed(held.to_inches(), 2),
            Fixed(self.purlin.to_inches(), 2)
        );
        let citation = Citation::from_memory("NDS 2015", "App. L, thread two thirds of the length");
        Ok(Worked::new(held, vec![Step::new("p, thread in the rafter", says, citation)]))
    }

    fn lateral(&self, duration: Duration) -> Result<Worked<Force>, Refused> {
        let depth = penetration(self.screw, self.depth() - self.screw.tip)?;
        let main = Member::wood(self.gravity, depth.value.bearing_length, Angle::ZERO);
        let side = Member::wood(self.gravity, self.purlin, Angle::RIGHT);
        let reference = single_shear(self.screw, &main, &side)?;
        let layout = if self.count > 1.0 { RowLayout::Other } else { RowLayout::One };
        let wet = wet_lateral(self.screw, self.moisture, layout);
        let duration = load_duration(duration.factor())?;
        let factors = Factors {
            load_duration: duration.value,
            wet: wet.value,
            penetration: depth.value.factor,
            ..Factors::default()
        };
        let allowed = adjusted_lateral(reference.value.reference, &factors)?;
        let all = [depth.steps, reference.steps, duration.steps, wet.steps, allowed.steps];
        Ok(Worked::new(allowed.value, all.into_iter().flatten().collect()))
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::analysis::roof_loads;
    use crate::evaluate;
    use crate::project::demo;
    use crate::units::UnitSystem;

    fn checks(project: &Project) -> [Check; 3] {
        let built = evaluate(project).built.unwrap();
        check_purlin_screws(project, &built.shape, &roof_loads(project, &built.shape)).try_into().unwrap()
    }

    /// A row in the middle: 22.789 in of slope. 24 in by it gather 3.80 ft²: the corner's −80.23 psf. 0.6 of it by 1.8990 ft
    /// = 91.42 plf up. Dead 0.6·(0.6·1.8990 + 27.439·8/144) = 1.598 plf upright, ·cos θ = 1.551. 1.25·2 ft of (91.42 − 1.55):
    /// 224.7 lb on two screws, 112.3 each; heads of 0.484 in in hemlock: 1725·π·0.484²·0.41² = 213.4 lb, ·1.6.
    #[test]
    fn a_pull_on_the_heads_by_hand() {
        let [out, heads, slide] = checks(&demo::wool_barn());
        let width = 22.788_626 / 12.0;
        let up = 0.6 * 80.227_827 * width;
        let cos = 0.970_142_5;
        let dead = 0.6 * (0.6 * width + 27.439_078 * 8.0 / 144.0) * cos;
        let pull = 1.25 * 2.0 * (up - dead) / 2.0;
        let holds = 1725.0 * std::f64::consts::PI * 0.484 * 0.484 * 0.41 * 0.41 * 1.6;
        assert!((heads.ratio().unwrap() - pull / holds).abs() < 1e-5, "{heads:?} {}", pull / holds);
        assert_eq!(heads.combination, "0.6D + 0.6W: wind on components, lifting");
        // Thread 2.5 in of 2850·0.41²·0.242 = 115.9 lb/in at 1.6: 463.8 lb; the little push aside adds to it.
        let bare = pull / (2850.0 * 0.41 * 0.41 * 0.242 * 2.5 * 1.6);
        assert!(out.ratio().unwrap() > bare && out.ratio().unwrap() < bare * 1.01, "{out:?} {bare}");
        assert!(slide.passes() && slide.combination.starts_with("D + "));
    }

    #[test]
    fn short_or_few_screws_fail() {
        let mut barn = demo::wool_barn();
        barn.fixings.purlin.count = 1;
        barn.fixings.purlin.length = Length::inches(3.5);
        let [out, ..] = checks(&barn);
        let single = out.ratio().unwrap();
        barn.fixings.purlin.count = 2;
        assert!(single > 0.8 && checks(&barn)[0].ratio().unwrap() < single);
        barn.fixings.purlin.fastener = "wood_screw_8".to_owned();
        barn.fixings.purlin.count = 1;
        assert!(!checks(&barn)[0].passes() && checks(&barn)[0].ratio().unwrap() > 1.0);
    }

    /// The point must reach six diameters into the rafter.
    #[test]
    fn a_screw_that_does_not_reach_is_refused() {
        let mut barn = demo::wool_barn();
        barn.fixings.purlin.length = Length::inches(3.0);
        let [out, _, slide] = checks(&barn);
        assert!(slide.says(UnitSystem::Imperial).contains("it needs at least 6 diameters"), "{slide:?}");
        assert!(out.ratio().is_none());
    }

    #[test]
    fn what_is_missing_is_said() {
        let says = |change: &dyn Fn(&mut Project)| {
            let mut barn = demo::wool_barn();
            change(&mut barn);
            checks(&barn).map(|check| check.says(UnitSystem::Imperial))
        };
        let all = says(&|barn| barn.fixings.purlin.fastener.clear());
        assert!(all.iter().all(|says| says.contains("not judged: the screw of the purlins is missing")), "{all:?}");
        let all = says(&|barn| barn.fixings.purlin.count = 0);
        assert!(all.iter().all(|says| says.contains("the number of screws at a crossing")), "{all:?}");
        let [_, heads, _] = says(&|barn| {
            barn.fixings.purlin.fastener = "lag_1_4".to_owned();
            barn.fixings.purlin.length = Length::inches(6.0);
        });
        assert!(heads.contains("not judged: the size of the head of a 1/4 in lag screw is missing"), "{heads}");
        let all = says(&|barn| barn.place.wind_speed = None);
        assert!(all.iter().all(|says| says.contains("wind speed is missing")));
    }
}

//! What the whole job costs, part by part.
use std::borrow::Cow;

use super::hauling::Hauling;
use super::takeoff::{Pegs, Takeoff};
use crate::design::Built;
use crate::project::Project;
use crate::units::{Length, Money, UnitSystem, Volume};
use crate::wording::length;

/// Litres in a gallon of 231 in³, exactly.
pub const LITRES_A_GALLON: f64 = 3.785_411_784;

/// Where money goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CostPart {
    /// Sticks from the mill.
    Timber,
    /// Sheets, trims and their screws.
    Roof,
    /// Screws, bolts, ties, pegs, bases.
    Fasteners,
    /// Piers and footings.
    Concrete,
    /// Oil or stain.
    Finish,
    /// Loads brought.
    Hauling,
}

impl CostPart {
    /// All of them.
    pub const ALL: [Self; 6] = [Self::Timber, Self::Roof, Self::Fasteners, Self::Concrete, Self::Finish, Self::Hauling];

    /// In words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Timber => "timber",
            Self::Roof => "roof",
            Self::Fasteners => "fasteners",
            Self::Concrete => "concrete",
            Self::Finish => "finish",
            Self::Hauling => "hauling",
        }
    }
}

/// How much of a thing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Amount {
    /// So many.
    Each(usize),
    /// So long, end to end; priced by the hundred feet.
    Run(Length),
    /// A volume, priced by the cubic yard.
    Volume(Volume),
    /// Gallons.
    Gallons(f64),
}

impl Amount {
    /// In the measure it is priced by.
    #[must_use]
    pub fn to_f64(self) -> f64 {
        match self {
            Self::Each(count) => count as f64,
            Self::Run(length) => length.to_feet() / 100.0,
            Self::Volume(volume) => volume.to_cubic_feet() / 27.0,
            Self::Gallons(gallons) => gallons,
        }
    }
}

/// One thing to buy.
#[derive(Clone, Debug, PartialEq)]
pub struct CostLine {
    /// The part of the job.
    pub part: CostPart,
    /// What it is.
    pub what: Cow<'static, str>,
    /// How much.
    pub amount: Amount,
    /// What one of it costs; nothing where that was not asked yet.
    pub price: Option<Money>,
}

impl CostLine {
    /// What it comes to.
    #[must_use]
    pub fn cost(&self) -> Option<Money> {
        self.price.map(|price| price * self.amount.to_f64())
    }
}

/// The whole job.
#[derive(Clone, Debug, PartialEq)]
pub struct Costs {
    /// The order from the mill.
    pub timber: Money,
    /// Everything else; what the job takes none of is left out.
    pub lines: Vec<CostLine>,
    /// What they are counted from.
    pub takeoff: Takeoff,
}

impl Costs {
    /// Adds up what the job takes, hauled so.
    #[must_use]
    pub fn of(project: &Project, built: &Built, hauling: &Hauling) -> Self {
        let n_loads = hauling.loads.len();
        let takeoff = Takeoff::of(project, built);
        let prices = &project.buying.prices;
        let line = |part, what: &'static str, amount, price| CostLine { part, what: what.into(), amount, price };
        let each = |part, what, count: usize, price| line(part, what, Amount::Each(count), price);
        let run = |what, length, price| line(CostPart::Roof, what, Amount::Run(length), price);
        let bags = takeoff.bags.as_ref().map_or(0, |count| count.whole as usize);
        let gallons = Amount::Gallons(whole_tins(takeoff.finish_gallons(project), project.units));
        let mut lines = vec![
            run("roof sheets", takeoff.sheet_run, prices.sheet_100_feet),
            run("trims of eave, wall and rakes", takeoff.trim_run, prices.trim_100_feet),
            each(CostPart::Roof, "screws into purlins", takeoff.sheet_screws, prices.roof_screw),
            each(CostPart::Roof, "screws along the laps", takeoff.stitch_screws, prices.roof_screw),
            each(CostPart::Roof, "screws of the trims", takeoff.trim_screws, prices.roof_screw),
            each(CostPart::Fasteners, "purlin screws", takeoff.purlin_screws, prices.purlin_screw),
            each(CostPart::Fasteners, "ledger fixings", takeoff.ledger_fixings, prices.ledger_fixing),
            each(CostPart::Fasteners, "ties of rafters and scarfs", takeoff.ties, prices.tie),
            each(CostPart::Fasteners, "post bases", takeoff.post_bases, prices.post_base),
            each(CostPart::Concrete, "bags of concrete", bags, prices.concrete_bag),
            each(CostPart::Concrete, "bars of the piers", takeoff.pier_bars, prices.pier_bar),
            line(CostPart::Finish, "finish", gallons, prices.finish_gallon),
            each(CostPart::Hauling, "loads", n_loads, prices.load),
        ];
        lines.splice(8..8, pegs(project, &takeoff));
        if let Some(volume) = takeoff.ready_mixed(project.units) {
            let what = "ready-mixed concrete: too much for bags";
            lines.push(line(CostPart::Concrete, what, Amount::Volume(volume), prices.concrete_yard));
        }
        lines.retain(|line| line.amount.to_f64() > 0.0);
        Self { timber: built.order.price, lines, takeoff }
    }

    /// What a part comes to, as far as its prices are known.
    #[must_use]
    pub fn of_part(&self, part: CostPart) -> Money {
        let own = if part == CostPart::Timber { self.timber } else { Money::cents(0) };
        let lines = self.lines.iter().filter(|line| line.part == part).filter_map(CostLine::cost);
        own + lines.sum::<Money>()
    }

    /// What everything comes to, as far as its prices are known.
    #[must_use]
    pub fn total(&self) -> Money {
        CostPart::ALL.into_iter().map(|part| self.of_part(part)).sum()
    }

    /// Things whose price was not asked yet.
    #[must_use]
    pub fn n_unpriced(&self) -> usize {
        self.lines.iter().filter(|line| line.price.is_none()).count()
    }
}

/// A line for each diameter; the diameter is said where there are several.
fn pegs(project: &Project, takeoff: &Takeoff) -> Vec<CostLine> {
    let line = |kind: &Pegs| CostLine {
        part: CostPart::Fasteners,
        what: match takeoff.pegs.len() {
            1 => "pegs, with spares".into(),
            _ => format!("pegs of {}, with spares", length(kind.diameter, project.units)).into(),
        },
        amount: Amount::Each(kind.to_make()),
        price: project.buying.prices.peg,
    };
    takeoff.pegs.iter().map(line).collect()
}

/// Whole gallons, or whole litres.
fn whole_tins(gallons: f64, units: UnitSystem) -> f64 {
    match units {
        UnitSystem::Imperial => gallons.ceil(),
        UnitSystem::Metric => (gallons * LITRES_A_GALLON).ceil() / LITRES_A_GALLON,
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::lay_out;
    use crate::ordering::hauling::haul;
    use crate::project::{JointException, Prices, demo};
    use crate::units::Area;

    fn barn() -> (Project, std::sync::Arc<Built>) {
        let project = demo::wool_barn();
        let built = lay_out(&project).built.unwrap();
        (project, built)
    }

    /// By hand: 18 rafters (404 in at 24 in: 17 bays), sheets over 408 + 2·6 = 420 in in twelve covers of 36 in, the first and
    /// last ripped to 30; 4 screws in a sheet at 9 in (30/9 → 4), 48 in a row.
    #[test]
    fn screws_and_pegs_of_the_barn() {
        let (project, built) = barn();
        let takeoff = Takeoff::of(&project, &built);
        assert_eq!(takeoff.n_sheets, 12);
        let n_rows = built.shape.purlins.len();
        assert_eq!(takeoff.sheet_screws, 48 * (n_rows + 2));
        let butts: usize = built.shape.purlins.iter().map(|row| row.pieces.len() - 1).sum();
        assert_eq!(takeoff.purlin_screws, 2 * (18 * n_rows + butts));
        // Two pegs in each end and inner post's head, one in each end of six braces (sheets of such frames: 8 + 12).
        let [pegs] = takeoff.pegs[..] else { unreachable!("one diameter") };
        assert_eq!((pegs.diameter, pegs.driven, pegs.to_make()), (Length::inches(1.0), 20, 25));
        // Posts of the wall at 4 in and every 16 in to 404: 26, in one column.
        let ledger = &project.fixings.ledger;
        assert_eq!(takeoff.ledger_fixings, 26 * ledger.rows * ledger.columns);
        assert_eq!(takeoff.ties, 18 * 4 + 2 * 2 * 2);
    }

    /// By hand: P2's head of its own with two pegs of 3/4 in leaves 18 of an inch: 3 and 23 to make, each its own line.
    #[test]
    fn pegs_of_their_own_diameter_are_counted_apart() {
        let (mut project, _) = barn();
        let own = JointException { peg: Some(Length::inches(0.75)), ..JointException::default() };
        project.exceptions.insert("P2".to_owned(), own);
        let built = lay_out(&project).built.unwrap();
        let takeoff = Takeoff::of(&project, &built);
        let counts: Vec<(f64, usize, usize)> =
            takeoff.pegs.iter().map(|kind| (kind.diameter.to_inches(), kind.driven, kind.to_make())).collect();
        assert_eq!(counts, [(1.0, 18, 23), (0.75, 2, 3)]);
        let costs = Costs::of(&project, &built, &haul(&project, &built, &built.order.lines));
        let lines: Vec<&CostLine> = costs.lines.iter().filter(|line| line.what.starts_with("pegs of")).collect();
        assert_eq!(lines.len(), 2);
        assert_eq!(lines[1].cost(), Some(Money::of(3.30)));
        assert!(lines[1].what.contains("3⁄4″"), "{}", lines[1].what);
    }

    /// By hand: 2,701 ft³ are past what bags are for; with a tenth more 2,971.1 ft³ = 110.04 yd³, ordered as 110.25.
    #[test]
    fn too_much_for_bags_is_ready_mixed_and_said() {
        let (mut project, built) = barn();
        let mut takeoff = Takeoff::of(&project, &built);
        assert_eq!(takeoff.ready_mixed(project.units), None);
        (takeoff.concrete, takeoff.bags) = (Volume::cubic_feet(2701.0), None);
        let ordered = takeoff.ready_mixed(project.units).unwrap();
        assert!((ordered.to_cubic_feet() - 110.25 * 27.0).abs() < 1e-6);
        // 84.13 m³ with the tenth: 84.25.
        let metric = takeoff.ready_mixed(UnitSystem::Metric).unwrap();
        assert!((metric.to_cubic_metres() - 84.25).abs() < 1e-9);
        // The widest footings and piers under every post: no bags, a line without a price, then with one.
        project.fixings.pier.footing_width = Length::feet(20.0);
        project.fixings.pier.footing_thickness = Length::feet(4.0);
        let hauling = haul(&project, &built, &built.order.lines);
        let open = Costs::of(&project, &built, &hauling);
        let is_it = |line: &&CostLine| line.part == CostPart::Concrete && line.what.contains("ready-mixed");
        let find = |costs: &Costs| costs.lines.iter().find(is_it).cloned().unwrap();
        let bars = open.lines.iter().find(|line| line.what == "bars of the piers").unwrap();
        assert_eq!(bars.cost(), Some(Money::of(4.5) * 16.0), "four in each of four piers");
        assert_eq!((find(&open).price, open.n_unpriced()), (None, 1));
        project.buying.prices.concrete_yard = Some(Money::of(180.0));
        let line = find(&Costs::of(&project, &built, &hauling));
        assert!(line.what.contains("too much for bags"));
        assert_eq!(line.cost(), Some(Money::of(180.0) * line.amount.to_f64()));
    }

    /// By hand: a 42 in round footing 15 in thick is π·21²·15 = 20,782 in³; a 16 in shaft π·8² = 201.06 in² stands 60 − 15 in
    /// below the ground and from it up to the pier's top: 4 in at the left; the ground falls by 4 in along 408.
    #[test]
    fn concrete_of_the_barn() {
        let (project, built) = barn();
        let tall = |x: f64, top: f64| 45.0 + top + 4.0 * x / 408.0;
        let shafts: f64 =
            [(6.0, 4.0), (138.0, 4.0), (270.0, 3.5), (402.0, 3.5)].map(|(x, top)| tall(x, top)).iter().sum();
        let expected = 4.0 * 20_781.63 + 201.062 * shafts;
        let found = Takeoff::of(&project, &built).concrete.to_cubic_feet() * 1728.0;
        assert!((found - expected).abs() < 1.0, "{found} {expected}");
    }

    /// An 8x8 post 7 ft long: 4 faces of ⅔ ft · 7 ft = 18.67 ft², and two ends of 0.444.
    #[test]
    fn a_post_is_finished_on_six_sides() {
        let (project, built) = barn();
        let mut one = Built::clone(&built);
        one.sticks.retain(|stick| stick.mark == "P1");
        let long = one.sticks[0].net_length().to_feet();
        let expected = 4.0 * (2.0 / 3.0) * long + 2.0 * 4.0 / 9.0;
        let takeoff = Takeoff::of(&project, &one);
        assert!((takeoff.finished / Area::square_feet(1.0) - expected).abs() < 1e-9);
        // One coat at 100 ft² a gallon and a tenth more.
        assert!((takeoff.finish_gallons(&project) - expected * 0.011).abs() < 1e-9);
    }

    /// Magnitudes of the trade for such a roof with seven rows: about 430 screws into wood, 80 along laps, 90 in trims;
    /// purlin screws 252 and rafter ties 72 (common practice).
    #[test]
    fn counts_are_near_what_such_a_roof_takes() {
        let (project, built) = barn();
        let takeoff = Takeoff::of(&project, &built);
        let near = |found: usize, about: f64| (found as f64 / about - 1.0).abs() < 0.15;
        assert!(near(takeoff.sheet_screws, 430.0) && near(takeoff.stitch_screws, 80.0), "{takeoff:?}");
        assert!(near(takeoff.trim_screws, 90.0) && near(takeoff.purlin_screws, 262.0), "{takeoff:?}");
    }

    #[test]
    fn the_parts_add_up_and_open_prices_are_counted() {
        let (mut project, built) = barn();
        let hauling = haul(&project, &built, &built.order.lines);
        let costs = Costs::of(&project, &built, &hauling);
        let parts: Money = CostPart::ALL.into_iter().map(|part| costs.of_part(part)).sum();
        assert_eq!(costs.total(), parts);
        assert_eq!(costs.n_unpriced(), 0);
        assert_eq!(costs.of_part(CostPart::Timber), built.order.price);
        let n_loads = hauling.loads.len();
        assert!(n_loads > 1);
        assert_eq!(costs.of_part(CostPart::Hauling), Money::of(60.0) * n_loads as f64);
        project.buying.prices = Prices::default();
        let open = Costs::of(&project, &built, &hauling);
        assert_eq!(open.n_unpriced(), open.lines.len());
        assert_eq!(open.total(), built.order.price);
    }
}

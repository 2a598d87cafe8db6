//! The loads of a job.
use super::balance::Balance;
use super::cargo::{Cargo, LeftBehind, cargoes, left_behind};
use super::carry::{Carry, carries};
use super::share_out::share_out;
use super::stack::{Laid, heavy_over_light, layers, stack};
use crate::design::Built;
use crate::ordering::OrderLine;
use crate::project::Project;
use crate::units::{Length, Weight};

/// One load.
#[derive(Clone, Debug, PartialEq)]
pub struct Load {
    /// Its number, from 1, in the order they are brought.
    pub number: usize,
    /// The delivery it belongs to, 1 or 2.
    pub delivery: usize,
    /// Sticks in the order they are loaded: the first lies on the bed.
    pub pieces: Vec<Laid>,
    /// Underside and top of each layer above the bed.
    pub layers: Vec<(Length, Length)>,
    /// Green weight.
    pub weight: Weight,
    /// Where that weight falls.
    pub balance: Balance,
    /// The largest section over a smaller one, and that one, as places in the pieces: here weight gave way to the order of
    /// raising.
    pub heavy_over_light: Option<(usize, usize)>,
    /// Sticks of this load that are needed after a stick of a later one.
    pub before_their_turn: usize,
}

/// All loads, and what goes with none of them.
#[derive(Clone, Debug, PartialEq)]
pub struct Hauling {
    /// Loads, in the order they are brought.
    pub loads: Vec<Load>,
    /// No way of loading takes fewer.
    pub least: usize,
    /// Sticks the truck cannot bring.
    pub left_behind: Vec<LeftBehind>,
    /// How each size is carried.
    pub carries: Vec<Carry>,
}

impl Hauling {
    /// No way of loading takes fewer than these.
    #[must_use]
    pub fn is_proven(&self) -> bool {
        self.loads.len() <= self.least
    }
}

impl Load {
    /// How far the longest stands out past the bed.
    #[must_use]
    pub fn stands_out(&self) -> Length {
        self.pieces.iter().map(|one| one.stands_out).fold(Length::ZERO, Length::max)
    }

    /// The longest stick.
    #[must_use]
    pub fn longest(&self) -> Length {
        self.pieces.iter().map(|one| one.cargo.length).fold(Length::ZERO, Length::max)
    }

    /// Height of the load above the bed.
    #[must_use]
    pub fn height(&self) -> Length {
        self.layers.last().map_or(Length::ZERO, |(_, top)| *top)
    }
}

/// Works out how those lines of an order come home: the fewest loads of each delivery, in the order of raising.
#[must_use]
pub fn haul(project: &Project, built: &Built, lines: &[OrderLine]) -> Hauling {
    let all = cargoes(built, lines);
    let carries = carries(project, &all);
    let (goes, left_behind) = left_behind(project, all);
    let mut hauling = Hauling { loads: Vec::new(), least: 0, left_behind, carries };
    for delivery in [1, 2] {
        let cargo: Vec<&Cargo> = goes.iter().filter(|cargo| cargo.delivery == delivery).collect();
        let weights: Vec<Weight> = cargo.iter().map(|cargo| cargo.weight).collect();
        let turns = turns(&cargo);
        let shares = share_out(&weights, &turns, project.truck.payload);
        hauling.least += shares.least;
        for (at, places) in shares.loads.iter().enumerate() {
            let later = shares.loads[at + 1..].iter().flatten().map(|place| turns[*place]).min();
            let early = places.iter().filter(|place| later.is_some_and(|later| turns[**place] > later)).count();
            let own = places.iter().map(|place| cargo[*place].clone()).collect();
            let number = hauling.loads.len() + 1;
            hauling.loads.push(load(project, number, delivery, own, early));
        }
    }
    hauling
}

/// The turn of each: sticks of one stage share theirs.
fn turns(cargo: &[&Cargo]) -> Vec<usize> {
    let mut turn = 0;
    let mut all = Vec::with_capacity(cargo.len());
    for (at, one) in cargo.iter().enumerate() {
        if at > 0 && cargo[at - 1].stage != one.stage {
            turn += 1;
        }
        all.push(turn);
    }
    all
}

fn load(project: &Project, number: usize, delivery: usize, own: Vec<Cargo>, before_their_turn: usize) -> Load {
    let pieces = stack(own, &project.truck);
    let place = |laid: &Laid| pieces.iter().position(|one| std::ptr::eq(one, laid));
    let heavy = heavy_over_light(&pieces).and_then(|(upper, lower)| Some((place(upper)?, place(lower)?)));
    Load {
        number,
        delivery,
        layers: layers(&pieces),
        weight: pieces.iter().map(|one| one.cargo.weight).sum(),
        balance: Balance::of(&pieces, &project.truck),
        heavy_over_light: heavy,
        before_their_turn,
        pieces,
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::super::cargo::Stage;
    use super::super::words::{hauling_notes, hauling_problems, load_words};
    use super::*;
    use crate::lay_out;
    use crate::materials::Section;
    use crate::project::{Heart, demo};
    use crate::units::{Money, Volume};

    fn barn() -> (Project, std::sync::Arc<Built>) {
        let project = demo::wool_barn();
        let built = lay_out(&project).built.unwrap();
        (project, built)
    }

    fn line(breadth: f64, depth: f64, feet: f64, pounds: f64, holds: &[&str]) -> OrderLine {
        OrderLine {
            section: Section::new(Length::inches(breadth), Length::inches(depth)),
            heart: Heart::Either,
            delivery: 1,
            n_spare: 0,
            before: 0,
            words: Vec::new(),
            length: Length::feet(feet),
            count: holds.len(),
            holds: holds.iter().map(|mark| vec![(*mark).to_owned()]).collect(),
            volume: Volume::ZERO,
            weight: Weight::pounds(pounds * holds.len() as f64),
            price: Money::cents(0),
        }
    }

    /// Nothing is lost, nothing weighs too much, and what is needed first lies on top.
    #[test]
    fn the_barns_loads_hold_its_order() {
        for (project, payload) in [(demo::wool_barn(), 2000.0), (demo::log_store(), 1500.0), (demo::wool_barn(), 900.0)]
        {
            let mut project = project;
            project.truck.payload = Weight::pounds(payload);
            let built = lay_out(&project).built.unwrap();
            let hauling = haul(&project, &built, &built.order.lines);
            let n_hauled: usize = hauling.loads.iter().map(|load| load.pieces.len()).sum();
            assert_eq!(n_hauled + hauling.left_behind.len(), crate::ordering::n_pieces(&built.order));
            for load in &hauling.loads {
                assert!(load.weight <= project.truck.payload);
                assert!(load.pieces.windows(2).all(|pair| pair[0].cargo.stage >= pair[1].cargo.stage));
                assert!(load.pieces.windows(2).all(|pair| pair[0].layer <= pair[1].layer));
            }
            let all: Weight = hauling.loads.iter().map(|load| load.weight).sum();
            assert!(hauling.least as f64 >= all / project.truck.payload);
            assert!(hauling.is_proven(), "{} loads, at least {}", hauling.loads.len(), hauling.least);
        }
    }

    /// By hand: trailer 4 ft from coupling to bed, axles 9 ft back. Two of 400 lb × 16 ft and one of 200 lb × 8 ft: the middle is
    /// (800·8 + 200·4)/1000 = 7.2 ft back, T/W = (9 − 7.2)/13 = 13.8 %: 138 lb, and it lies well. The 16 ft sticks alone:
    /// 1/13 = 7.7 %, wanted at 9 − 1.3 = 7.7 ft or before: 0.3 ft too far back, and nothing goes forward. The 8 ft one alone:
    /// 5/13 = 38 %, 3.05 ft farther back for 15 %.
    #[test]
    fn the_load_on_the_coupling_by_hand() {
        let (project, built) = barn();
        let long = line(8.0, 10.0, 16.0, 400.0, &["B1", "B2"]);
        let short = line(8.0, 8.0, 8.0, 200.0, &["P1"]);
        let balance = |lines: &[OrderLine]| haul(&project, &built, lines).loads.remove(0).balance;
        let near = |found: f64, expected: f64| assert!((found - expected).abs() < 1e-9, "{found} is not {expected}");
        let both = balance(&[long.clone(), short.clone()]);
        near(both.middle.to_feet(), 7.2);
        near(both.on_coupling.unwrap().to_pounds(), 1000.0 * 1.8 / 13.0);
        assert_eq!(both.shift, Some(Length::ZERO));
        let behind = balance(std::slice::from_ref(&long));
        near(behind.share.unwrap(), 1.0 / 13.0);
        near(behind.shift.unwrap().to_feet(), -0.3);
        assert!(!behind.can_shift);
        let before = balance(std::slice::from_ref(&short));
        near(before.shift.unwrap().to_feet(), 9.0 - 0.15 * 13.0 - 4.0);
        assert!(before.can_shift);
        let mut truck = project.clone();
        truck.truck.is_trailer = false;
        assert_eq!(haul(&truck, &built, &[long]).loads[0].balance.share, None);
    }

    /// A 30 ft stick on a bed of 16 with 4 ft of overhang is 10 ft too long, and the sentence names three ways out; one that is
    /// too heavy alone says so.
    #[test]
    fn what_cannot_go_says_why() {
        let (mut project, built) = barn();
        let lines = [line(8.0, 10.0, 30.0, 833.0, &["B1"]), line(8.0, 8.0, 8.0, 178.0, &["P1"])];
        let hauling = haul(&project, &built, &lines);
        assert_eq!(hauling.loads.len(), 1);
        let [stays] = &hauling.left_behind[..] else { unreachable!("one stays") };
        assert_eq!(stays.too_long, Some(Length::feet(10.0)));
        assert!(stays.says.contains("10′") && stays.says.contains("longer trailer") && stays.says.contains("scarf"));
        project.truck.payload = Weight::pounds(150.0);
        let hauling = haul(&project, &built, &lines);
        assert_eq!((hauling.loads.len(), hauling.left_behind.len()), (0, 2));
        assert!(hauling.left_behind[1].says.contains("payload") && hauling.is_proven());
        assert!(haul(&project, &built, &[]).loads.is_empty());
        project.truck.bed = Length::feet(10.0);
        let problem = hauling_problems(&project, &built.order).unwrap();
        let longest = built.order.lines.iter().map(|line| line.length).fold(Length::ZERO, Length::max);
        assert_eq!(problem.nearest, Some(crate::project::Nearest::Length(longest - Length::feet(4.0))));
    }

    /// Posts before rafters, rafters before purlins; the second delivery apart; what no stick comes out of last of all.
    #[test]
    fn loads_follow_the_raising_and_the_deliveries() {
        let (mut project, built) = barn();
        project.truck.payload = Weight::pounds(500.0);
        let mut lines = [
            line(4.0, 8.0, 12.0, 130.0, &["R1", "R2", "R3"]),
            line(8.0, 8.0, 8.0, 180.0, &["P1", "P2"]),
            line(4.0, 10.0, 12.0, 160.0, &["L1"]),
            OrderLine { holds: Vec::new(), ..line(8.0, 8.0, 8.0, 180.0, &["P9"]) },
        ];
        let hauling = haul(&project, &built, &lines);
        let stages: Vec<Vec<Stage>> =
            hauling.loads.iter().map(|load| load.pieces.iter().map(|one| one.cargo.stage).collect()).collect();
        assert_eq!(stages[0].last(), Some(&Stage::Ledger));
        assert_eq!(stages.last().unwrap()[0], Stage::Spare);
        assert!(hauling.is_proven());
        lines[1].delivery = 2;
        let hauling = haul(&project, &built, &lines);
        let later: Vec<&Load> = hauling.loads.iter().filter(|load| load.delivery == 2).collect();
        assert_eq!(later.len(), 1);
        assert!(later[0].number > 1 && later[0].pieces.iter().all(|one| one.cargo.stage == Stage::Beam(1)));
    }

    /// By hand: 75 lb each: 42 lb is one's, 150 lb two's, 160 lb three's and so four's with carriers, 320 lb five's and so six's,
    /// more than the crew of four: a machine. At the ergonomic 35 lb: 2, 5, 5 and 10. A light stick of 14 ft takes two.
    #[test]
    fn hands_by_weight() {
        let (project, built) = barn();
        let lines = [
            line(4.0, 6.0, 5.0, 42.0, &["K1R"]),
            line(4.0, 8.0, 14.0, 150.0, &["R1"]),
            line(4.0, 10.0, 12.0, 160.0, &["L1"]),
            line(8.0, 10.0, 16.0, 320.0, &["B1"]),
            line(4.0, 2.0, 14.0, 39.0, &["N1a"]),
        ];
        let carries = haul(&project, &built, &lines).carries;
        let words: Vec<String> = carries.iter().map(Carry::words).collect();
        assert_eq!(words, ["machine", "four with carriers", "two people", "one person", "two people"]);
        assert_eq!(carries.iter().map(|carry| carry.ergonomic).collect::<Vec<_>>(), [10, 5, 5, 2, 2]);
    }

    /// Everything a driver must know is said once, in either system.
    #[test]
    fn a_load_says_what_matters() {
        for mut project in [demo::wool_barn(), demo::log_store()] {
            project.truck.bed = Length::feet(12.0);
            project.truck.overhang = Length::feet(8.0);
            let built = lay_out(&project).built.unwrap();
            let hauling = haul(&project, &built, &built.order.lines);
            let load = hauling.loads.iter().find(|load| load.stands_out() > Length::feet(4.0)).unwrap();
            let says = [load_words(&project, load), hauling_notes(&project, &hauling)].concat().join(" ");
            for word in ["red flag", "law of your road", "coupling", "straps"] {
                assert_eq!(says.matches(word).count().min(1), 1, "{word}: {says}");
            }
        }
    }
}

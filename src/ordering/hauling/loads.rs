//! The loads of a job.
use super::balance::Balance;
use super::cargo::{Cargo, LeftBehind, cargoes, left_behind};
use super::carry::{Carry, carries};
use super::even_out::even_out;
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
    /// What was exchanged with other loads for the weight on the coupling.
    pub exchanged: Vec<Exchanged>,
}

/// Sticks that a load exchanged with another.
#[derive(Clone, Debug, PartialEq)]
pub struct Exchanged {
    /// Number of the other load.
    pub with: usize,
    /// What came from there.
    pub came: Vec<Cargo>,
    /// What went there.
    pub went: Vec<Cargo>,
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

/// Works out how those lines of an order come home: the fewest loads of each delivery, in the order of raising as far as the
/// weight on a trailer's coupling allows.
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
        let loads = even_out(shares.loads.clone(), &cargo, &turns, &project.truck);
        let before = hauling.loads.len();
        for (at, places) in loads.iter().enumerate() {
            let later = loads[at + 1..].iter().flatten().map(|place| turns[*place]).min();
            let early = places.iter().filter(|place| later.is_some_and(|later| turns[**place] > later)).count();
            let own = places.iter().map(|place| cargo[*place].clone()).collect();
            let exchanged = exchanged((&shares.loads, &loads), at, &cargo, before);
            let load = load(project, before + at + 1, delivery, own);
            hauling.loads.push(Load { before_their_turn: early, exchanged, ..load });
        }
    }
    hauling
}

/// What a load holds for other sticks than before, by the load they were exchanged with.
fn exchanged((old, new): (&[Vec<usize>], &[Vec<usize>]), at: usize, cargo: &[&Cargo], before: usize) -> Vec<Exchanged> {
    let both = |from: &[usize], to: &[usize]| -> Vec<Cargo> {
        from.iter().filter(|place| to.contains(place)).map(|place| cargo[*place].clone()).collect()
    };
    let mut all = Vec::new();
    for other in (0..old.len()).filter(|other| *other != at) {
        let (came, went) = (both(&old[other], &new[at]), both(&old[at], &new[other]));
        if came.len() + went.len() > 0 {
            all.push(Exchanged { with: before + other + 1, came, went });
        }
    }
    all
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

fn load(project: &Project, number: usize, delivery: usize, own: Vec<Cargo>) -> Load {
    let mut pieces = stack(own, &project.truck);
    let balance = Balance::lay(&mut pieces, project);
    let place = |laid: &Laid| pieces.iter().position(|one| std::ptr::eq(one, laid));
    let heavy = heavy_over_light(&pieces).and_then(|(upper, lower)| Some((place(upper)?, place(lower)?)));
    Load {
        number,
        delivery,
        layers: layers(&pieces),
        weight: pieces.iter().map(|one| one.cargo.weight).sum(),
        balance,
        heavy_over_light: heavy,
        before_their_turn: 0,
        exchanged: Vec::new(),
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
    /// 5/13 = 38 %, 3.05 ft farther back for 15 %: 37 in to the whole inch, then (108 − 85)/156. With a trailer of 1000 lb, 125 of
    /// them on the coupling, the first is (138.46 + 125)/2000.
    #[test]
    fn the_load_on_the_coupling_by_hand() {
        let (project, built) = barn();
        let long = line(8.0, 10.0, 16.0, 400.0, &["B1", "B2"]);
        let short = line(8.0, 8.0, 8.0, 200.0, &["P1"]);
        let balance = |lines: &[OrderLine]| haul(&project, &built, lines).loads.remove(0).balance;
        let near = |found: f64, expected: f64| assert!((found - expected).abs() < 1e-9, "{found} is not {expected}");
        let lines = [long.clone(), short.clone()];
        let both = balance(&lines);
        near(both.middle.to_feet(), 7.2);
        near(both.on_coupling.unwrap().to_pounds(), 1000.0 * 1.8 / 13.0);
        assert_eq!((both.shift, both.behind), (Some(Length::ZERO), Length::ZERO));
        let behind = balance(std::slice::from_ref(&long));
        near(behind.share.unwrap(), 1.0 / 13.0);
        near(behind.shift.unwrap().to_feet(), -0.3);
        assert_eq!(behind.behind, Length::ZERO);
        let before = balance(std::slice::from_ref(&short));
        near(before.share_butted.unwrap(), 5.0 / 13.0);
        near(before.behind.to_inches(), 37.0);
        near(before.share.unwrap(), 23.0 / 156.0);
        assert_eq!(before.shift, Some(Length::ZERO));
        let mut truck = project.clone();
        truck.truck.own_weight = Some(Weight::pounds(1000.0));
        let loaded = haul(&truck, &built, &lines).loads.remove(0).balance;
        near(loaded.share.unwrap(), (1800.0 / 13.0 + 125.0) / 2000.0);
        near(loaded.on_coupling.unwrap().to_pounds(), 1800.0 / 13.0 + 125.0);
        truck.truck.is_trailer = false;
        assert_eq!(haul(&truck, &built, &[long]).loads[0].balance.share, None);
    }

    /// By hand: 100 lb × 20 ft ends where the overhang ends and stays at the headboard; four of 100 lb × 8 ft must bring the
    /// middle from (100·10 + 400·4)/500 = 5.2 ft to 7.05: 1.85·500/400 = 2.3125 ft, 28 in. Then (108 − 62.4 − 22.4)/156.
    #[test]
    fn what_reaches_far_enough_stays_at_the_headboard() {
        let (project, built) = barn();
        let lines = [line(4.0, 8.0, 20.0, 100.0, &["R1"]), line(4.0, 8.0, 8.0, 100.0, &["K1R", "K2L", "K2R", "K3L"])];
        let load = haul(&project, &built, &lines).loads.remove(0);
        assert_eq!(load.balance.behind, Length::inches(28.0));
        assert!((load.balance.share.unwrap() - 23.2 / 156.0).abs() < 1e-9);
        let [long] = &load.pieces.iter().filter(|one| one.behind == Length::ZERO).collect::<Vec<_>>()[..] else {
            unreachable!("one stays")
        };
        assert_eq!((long.cargo.length, long.stands_out), (Length::feet(20.0), Length::feet(4.0)));
        let says = load_words(&project, &load).join(" ");
        assert!(says.contains("2′ 4″ behind the headboard") && says.contains("those of 20′ against it"), "{says}");
    }

    /// By hand, payload 850 lb: the ledger's two of 400 lb × 16 ft put 7.7 % on the coupling, four posts of 200 lb × 8 ft come
    /// second. One stick for two posts: 800 lb each, middle 6 ft, and the posts 2.1 ft back, 26 in: (108 − 72 − 13)/156 = 14.7 %.
    #[test]
    fn sticks_are_exchanged_for_the_coupling() {
        let (mut project, built) = barn();
        project.truck.payload = Weight::pounds(850.0);
        let lines =
            [line(4.0, 10.0, 16.0, 400.0, &["L1", "L2"]), line(8.0, 8.0, 8.0, 200.0, &["P1", "P2", "P3", "P4"])];
        let loads = haul(&project, &built, &lines).loads;
        assert_eq!(loads.len(), 2);
        for load in &loads {
            assert_eq!(load.pieces.len(), 3);
            assert!((load.balance.share.unwrap() - 23.0 / 156.0).abs() < 1e-9);
            assert_eq!(load.balance.behind, Length::inches(26.0));
        }
        assert_eq!((loads[0].before_their_turn, loads[1].before_their_turn), (2, 0));
        let [one] = &loads[0].exchanged[..] else { unreachable!("one exchange") };
        assert_eq!((one.with, one.came.len(), one.went.len()), (2, 2, 1));
        let says = load_words(&project, &loads[0]).join(" ");
        assert!(says.contains("came here from load 2, and L1 went there") && says.contains("steady trailer"), "{says}");
    }

    /// How far a share is outside the usual.
    fn off(share: Option<f64>) -> f64 {
        share.map_or(0.0, |share| (0.10 - share).max(share - 0.15).max(0.0))
    }

    /// Sticks and trailers at random, own weight known or not: every stick goes once, no load is over the payload, nothing stands
    /// out farther than it may, and no load hangs worse on the coupling than in the order of raising, butted.
    #[test]
    fn no_load_is_laid_worse_than_before() {
        let (mut project, built) = barn();
        let mut seed = 11_u64;
        let mut next = |low: f64, high: f64| {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            low + (high - low) * ((seed >> 40) as f64 / f64::from(1 << 24))
        };
        let (mut n_bad, mut n_mended) = (0, 0);
        for case in 0..200 {
            let truck = &mut project.truck;
            truck.bed = Length::feet(next(8.0, 20.0).round());
            truck.bed_to_axle = truck.bed * next(0.45, 0.7);
            truck.payload = Weight::pounds(next(900.0, 3000.0));
            truck.own_weight = (case % 2 == 0).then(|| Weight::pounds(next(300.0, 1500.0)));
            let marks: &[&[&str]] =
                &[&["L1", "L2"], &["B1", "P1", "P2", "K1R"], &["R1", "R2", "R3", "R4", "R5"], &["N1a"]];
            let lines: Vec<OrderLine> = marks
                .iter()
                .flat_map(|marks| [next(6.0, 22.0).round(), next(4.0, 12.0).round()].map(|feet| (feet, *marks)))
                .map(|(feet, marks)| line(4.0, 8.0, feet, feet * 10.0, marks))
                .collect();
            let loads = haul(&project, &built, &lines);
            let n_hauled: usize = loads.loads.iter().map(|load| load.pieces.len()).sum();
            assert_eq!(n_hauled + loads.left_behind.len(), 24);
            let (cargo, _) = left_behind(&project, cargoes(&built, &lines));
            let cargo: Vec<&Cargo> = cargo.iter().collect();
            let weights: Vec<Weight> = cargo.iter().map(|cargo| cargo.weight).collect();
            let before = share_out(&weights, &turns(&cargo), project.truck.payload);
            assert_eq!(before.loads.len(), loads.loads.len());
            for (places, new) in before.loads.iter().zip(&loads.loads) {
                let own = places.iter().map(|place| cargo[*place].clone()).collect();
                let old = off(load(&project, 1, 1, own).balance.share);
                assert!(new.weight <= project.truck.payload + Weight::pounds(1e-6));
                assert!(new.pieces.iter().all(|one| !one.behind.is_negative()
                    && one.stands_out <= project.truck.overhang + crate::project::HAIR
                    && one.behind <= new.balance.behind));
                assert!(off(new.balance.share) <= old + 1e-9);
                assert!(off(new.balance.share) <= off(new.balance.share_butted) + 1e-9);
                assert_eq!(new.balance.shift == Some(Length::ZERO), off(new.balance.share) < 1e-9);
                n_bad += usize::from(old > 1e-9);
                n_mended += usize::from(old > 1e-9 && off(new.balance.share) < 1e-9);
            }
        }
        assert!(n_bad > 40 && n_mended > 10, "{n_mended} of {n_bad}");
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

//! Sticks exchanged between loads, so that each puts its usual share on a trailer's coupling.
use super::balance::{Lever, Sums};
use super::cargo::Cargo;
use crate::project::Truck;

/// Rounding that a sum of weights may carry, lb, and a share.
const HAIR: f64 = 1e-6;
/// A smaller gain of share is not worth an exchange.
const LEAST_GAIN: f64 = 0.002;
/// Exchanges after which it is let be.
const MOST: usize = 40;

/// Sticks that two loads exchange, as places in the list of sticks.
struct Exchange {
    /// The loads.
    pub loads: (usize, usize),
    /// What the first gave to the second.
    pub gave: Vec<usize>,
    /// What it took for it.
    pub took: Vec<usize>,
}

/// The loads of one delivery while sticks are exchanged.
struct Loads<'a> {
    cargo: &'a [&'a Cargo],
    turns: &'a [usize],
    truck: &'a Truck,
    lever: Lever,
    loads: Vec<Vec<usize>>,
}

/// One or two sticks of a load, or none, and what they weigh.
type Handful = (Vec<usize>, Sums);

/// An exchange, and how good it is: less is better, the first number first.
type Ranked = ((bool, f64, usize, f64), Exchange);

/// Exchanges up to two sticks for up to two, again and again, while a load that lies badly comes to lie better and no other
/// worse. Where one exchange mends a load, that which leaves the order of raising least is taken, else that which gains most.
pub(super) fn even_out(loads: Vec<Vec<usize>>, cargo: &[&Cargo], turns: &[usize], truck: &Truck) -> Vec<Vec<usize>> {
    let Some(lever) = Lever::of(truck) else { return loads };
    let mut held = Loads { cargo, turns, truck, lever, loads };
    for _ in 0..MOST {
        let Some(exchange) = held.next() else { break };
        held.apply(&exchange);
    }
    held.loads
}

impl Loads<'_> {
    fn sums(&self, places: &[usize]) -> Sums {
        places.iter().fold(Sums::default(), |sum, place| sum.with(Sums::of(self.cargo[*place], self.truck), 1.0))
    }

    fn miss(&self, sums: &Sums) -> f64 {
        self.lever.miss(sums).abs()
    }

    /// The best exchange for the load that lies worst and can be helped.
    fn next(&self) -> Option<Exchange> {
        let sums: Vec<Sums> = self.loads.iter().map(|load| self.sums(load)).collect();
        let mut bad: Vec<(usize, f64)> = sums.iter().map(|sums| self.miss(sums)).enumerate().collect();
        bad.retain(|(_, miss)| *miss > HAIR);
        crate::units::sort_by_number(&mut bad, |one| -one.1);
        let handfuls: Vec<Vec<Handful>> = self.loads.iter().map(|load| self.handfuls(load)).collect();
        bad.into_iter().find_map(|(load, _)| {
            let mut best: Option<Ranked> = None;
            for other in (0..self.loads.len()).filter(|other| *other != load) {
                for gave in &handfuls[load] {
                    for took in &handfuls[other] {
                        self.weigh((load, other), (gave, took), &sums, &mut best);
                    }
                }
            }
            best.map(|(_, exchange)| exchange)
        })
    }

    /// Takes an exchange for the best so far, where it is better.
    fn weigh(&self, at: (usize, usize), (gave, took): (&Handful, &Handful), sums: &[Sums], best: &mut Option<Ranked>) {
        let (here, there) = (sums[at.0], sums[at.1]);
        let new_here = here.with(gave.1, -1.0).with(took.1, 1.0);
        let new_there = there.with(took.1, -1.0).with(gave.1, 1.0);
        let payload = self.truck.payload.to_pounds() + HAIR;
        let heavier = |new: Sums, old: Sums| new.weight > payload && new.weight > old.weight;
        let is_emptied =
            |load: usize, out: &Handful, into: &Handful| self.loads[load].len() + into.0.len() <= out.0.len();
        if heavier(new_here, here)
            || heavier(new_there, there)
            || is_emptied(at.0, gave, took)
            || is_emptied(at.1, took, gave)
        {
            return;
        }
        let (old, new) = ((self.miss(&here), self.miss(&there)), (self.miss(&new_here), self.miss(&new_there)));
        let gain = old.0 - new.0;
        if gain < LEAST_GAIN.min(old.0) || new.1 > old.1 + HAIR * HAIR {
            return;
        }
        let is_left = new.0 > HAIR;
        let size = gave.0.len() + took.0.len();
        let gain = -(gain + old.1 - new.1);
        // What mends nothing whole is no longer looked at where it gains less.
        if is_left && best.as_ref().is_some_and(|(rank, _)| (rank.0, rank.3) < (true, gain)) {
            return;
        }
        let exchange = Exchange { loads: at, gave: gave.0.clone(), took: took.0.clone() };
        let first = if is_left { gain } else { self.early_after(&exchange) as f64 };
        let rank = (is_left, first, size, gain);
        if best.as_ref().is_none_or(|(known, _)| rank.partial_cmp(known).is_some_and(std::cmp::Ordering::is_lt)) {
            *best = Some((rank, exchange));
        }
    }

    /// None, one or two sticks of a load; of those alike the first only.
    fn handfuls(&self, load: &[usize]) -> Vec<Handful> {
        let alike = |a: usize, b: usize| {
            let (one, other) = (self.cargo[a], self.cargo[b]);
            self.turns[a] == self.turns[b] && one.length == other.length && one.weight == other.weight
        };
        let mut kinds: Vec<Vec<usize>> = Vec::new();
        for place in load {
            match kinds.iter_mut().find(|kind| alike(kind[0], *place)) {
                Some(kind) => kind.push(*place),
                None => kinds.push(vec![*place]),
            }
        }
        let mut all = vec![Vec::new()];
        for (at, kind) in kinds.iter().enumerate() {
            all.push(vec![kind[0]]);
            all.extend(kind.get(1).map(|second| vec![kind[0], *second]));
            all.extend(kinds[at + 1..].iter().map(|other| vec![kind[0], other[0]]));
        }
        all.into_iter().map(|places| (places.clone(), self.sums(&places))).collect()
    }

    fn apply(&mut self, exchange: &Exchange) {
        let (here, there) = exchange.loads;
        self.loads[here].retain(|place| !exchange.gave.contains(place));
        self.loads[there].retain(|place| !exchange.took.contains(place));
        self.loads[here].extend(&exchange.took);
        self.loads[there].extend(&exchange.gave);
        self.loads[here].sort_unstable();
        self.loads[there].sort_unstable();
    }

    /// Sticks that would come before their turn.
    fn early_after(&self, exchange: &Exchange) -> usize {
        let goes = |load: usize, place: usize| {
            (load == exchange.loads.0 && exchange.gave.contains(&place))
                || (load == exchange.loads.1 && exchange.took.contains(&place))
        };
        let (mut first_later, mut n_early) = (usize::MAX, 0);
        for load in (0..self.loads.len()).rev() {
            let stays = self.loads[load].iter().copied().filter(|place| !goes(load, *place));
            let comes: &[usize] = match load {
                load if load == exchange.loads.0 => &exchange.took,
                load if load == exchange.loads.1 => &exchange.gave,
                _ => &[],
            };
            let mut first = usize::MAX;
            for place in stays.chain(comes.iter().copied()) {
                let turn = self.turns[place];
                n_early += usize::from(turn > first_later);
                first = first.min(turn);
            }
            first_later = first_later.min(first);
        }
        n_early
    }
}

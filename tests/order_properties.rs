//! What holds for every order, over frames drawn at random and whatever the mill has and the builder wishes.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]

mod drawn_frames;

use drawn_frames::projects;
use outshot::lay_out;
use outshot::materials::Section;
use outshot::ordering::{Order, n_pieces, order};
use outshot::project::{Heart, LengthLimit, LongPrice, OrderAim, Project, Role, Spares};
use outshot::tickets::Stick;
use outshot::units::{Length, Money, Weight};
use proptest::prelude::*;

const HAIR: Length = Length::inches(0.001);

/// What is wished beside the usual.
#[derive(Clone, Debug)]
struct Wishes {
    aim: usize,
    hearts: [usize; 7],
    later: [bool; 7],
    spares: (usize, usize),
    long: Vec<(u8, i64)>,
    limits: Vec<(usize, usize, usize)>,
    /// Braces, rafters and ledger are of one section.
    is_alike: bool,
}

fn wishes() -> impl Strategy<Value = Wishes> {
    let one = (0..3usize, proptest::array::uniform7(0..3usize), any::<[bool; 7]>(), (0..3usize, 0..8usize));
    let mill = (
        proptest::collection::vec((6..22u8, 0..90i64), 0..3),
        proptest::collection::vec((0..7usize, 0..8usize, 0..4usize), 0..4),
        any::<bool>(),
    );
    (one, mill).prop_map(|((aim, hearts, later, spares), (long, limits, is_alike))| Wishes {
        aim,
        hearts,
        later,
        spares,
        long,
        limits,
        is_alike,
    })
}

fn section_of(project: &Project, role: usize) -> Section {
    project.frame.timbers.of(Role::ALL[role]).ordered
}

fn wish(project: &mut Project, wishes: &Wishes) {
    let buying = &mut project.buying;
    buying.aim = OrderAim::ALL[wishes.aim];
    buying.spares = Spares { each_section: wishes.spares.0, one_in: wishes.spares.1 };
    for (role, (heart, later)) in Role::ALL.into_iter().zip(wishes.hearts.into_iter().zip(wishes.later)) {
        buying.wish_heart(role, Heart::ALL[heart]);
        buying.bring_later(role, later);
    }
    let price =
        |(feet, more): &(u8, i64)| LongPrice { over: Length::feet(f64::from(*feet)), more: Money::cents(*more) };
    project.mill.long_prices = wishes.long.iter().map(price).collect();
    let limit = |(role, place, count): &(usize, usize, usize)| LengthLimit {
        section: section_of(project, *role),
        length: project.mill.lengths[place % project.mill.lengths.len()],
        count: *count,
    };
    project.mill.limits = wishes.limits.iter().map(limit).collect();
}

/// Every stick once, in stock long enough, of its own kind; no more of a length than there are; sums are sums.
fn check(project: &Project, sticks: &[Stick], order: &Order) {
    let mut marks: Vec<&String> = order.lines.iter().flat_map(|line| line.holds.iter().flatten()).collect();
    marks.extend(order.unplaced.iter().chain(&order.lacking).map(|(mark, _)| mark));
    marks.sort_unstable();
    let mut all: Vec<&String> = sticks.iter().map(|stick| &stick.mark).collect();
    all.sort_unstable();
    assert_eq!(marks, all);
    for line in &order.lines {
        assert_eq!(line.holds.len() + line.n_spare, line.count);
        for bar in &line.holds {
            let of = |mark: &String| order.sticks.iter().find(|stick| stick.mark == *mark).unwrap();
            let needed: Length = bar.iter().map(of).map(|stick| stick.net + stick.allowance).sum();
            let cuts = project.mill.kerf * (bar.len() - 1) as f64;
            assert!(needed + cuts <= line.length + HAIR, "{bar:?} in {:?}", line.length);
            let kinds = bar.iter().map(of).map(|stick| (stick.kind.section, stick.kind.heart, stick.kind.delivery));
            kinds.for_each(|kind| assert_eq!(kind, (line.section, line.heart, line.delivery)));
        }
        let alike = order.lines.iter().filter(|other| other.section == line.section && other.length == line.length);
        let n: usize = alike.map(|line| line.count).sum();
        assert!(project.mill.limit_of(line.section, line.length).is_none_or(|limit| n <= limit), "{n} are too many");
    }
    let deliveries = order.deliveries();
    assert_eq!(deliveries.iter().map(|delivery| delivery.n_pieces).sum::<usize>(), n_pieces(order));
    assert_eq!(deliveries.iter().map(|delivery| delivery.price).sum::<Money>(), order.price);
    assert_eq!(order.buying.iter().map(|buying| buying.price).sum::<Money>(), order.price);
    assert!(order.least_price() <= order.price);
}

fn heaviest(order: &Order) -> Weight {
    let each = order.lines.iter().map(|line| line.weight / line.count as f64);
    each.fold(Weight::ZERO, |most, weight| if weight > most { weight } else { most })
}

fn sticks_of(project: &Project) -> Option<Vec<Stick>> {
    lay_out(project).built.map(|built| built.sticks.clone())
}

/// As they are, or braces, rafters and ledger of one section, so that kinds share their stock.
fn sticks_for(project: &Project, wishes: &Wishes) -> Option<Vec<Stick>> {
    let mut sticks = sticks_of(project)?;
    let alike = |stick: &&mut Stick| matches!(stick.role, Role::Brace | Role::Rafter | Role::Ledger);
    if wishes.is_alike {
        let section = project.frame.timbers.brace.ordered;
        sticks.iter_mut().filter(alike).for_each(|stick| stick.timber.ordered = section);
    }
    Some(sticks)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 150, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn every_order_adds_up(mut project in projects(), wishes in wishes()) {
        if let Some(sticks) = sticks_for(&project, &wishes) {
            wish(&mut project, &wishes);
            check(&project, &sticks, &order(&project, &sticks));
        }
    }

    /// Each aim is best at its own: nothing proven cheapest is beaten, none has fewer sticks, none is lighter.
    #[test]
    fn every_aim_is_best_at_its_own(mut project in projects(), wishes in wishes()) {
        if let Some(sticks) = sticks_for(&project, &wishes) {
            wish(&mut project, &Wishes { spares: (0, 0), limits: Vec::new(), ..wishes });
            let [cheap, few, light] = OrderAim::ALL.map(|aim| {
                project.buying.aim = aim;
                order(&project, &sticks)
            });
            for other in [&cheap, &few, &light] {
                // Each kind's price is rounded to the cent.
                let cents = Money::cents(other.lines.len() as i64);
                prop_assert!(!cheap.is_proven() || cheap.price <= other.price + cents);
                prop_assert!(cheap.least_price() <= other.price + cents);
                prop_assert!(n_pieces(&few) <= n_pieces(other));
                prop_assert!(few.buying.iter().map(|buying| buying.least_pieces).sum::<usize>() <= n_pieces(other));
                prop_assert!(heaviest(&light).to_pounds() <= heaviest(other).to_pounds() + 1e-6);
            }
            prop_assert_eq!(n_pieces(&light) + light.unplaced.len(), sticks.len());
        }
    }

    /// One length more never makes the sticks dearer, one length that runs out never cheaper, where both are proven.
    #[test]
    fn more_stock_is_never_dearer(mut project in projects(), wishes in wishes(), feet in 6..24u8) {
        if let Some(sticks) = sticks_for(&project, &wishes) {
            wish(&mut project, &Wishes { aim: 0, spares: (0, 0), limits: Vec::new(), ..wishes.clone() });
            let before = order(&project, &sticks);
            let mut richer = project.clone();
            richer.mill.lengths.push(Length::feet(f64::from(feet)));
            let after = order(&richer, &sticks);
            let cents = Money::cents(1 + (before.lines.len() + after.lines.len()) as i64);
            if after.is_proven() && after.unplaced == before.unplaced {
                prop_assert!(after.price <= before.price + cents, "{:?} after {:?}", after.price, before.price);
            }
            wish(&mut project, &Wishes { aim: 0, spares: (0, 0), ..wishes });
            let poorer = order(&project, &sticks);
            if before.is_proven() && poorer.lacking.is_empty() {
                prop_assert!(before.price <= poorer.price + cents);
            }
        }
    }
}

/// By hand: without a wish for the heart, a price for long sticks or spares, each line is its board feet at the mill's price.
#[test]
fn a_plain_order_is_board_feet_at_the_price() {
    let mut project = outshot::project::demo::wool_barn();
    project.buying.hearts.clear();
    let sticks = sticks_of(&project).unwrap();
    let plain = order(&project, &sticks);
    for line in &plain.lines {
        assert_eq!(line.price, Money::of(1.4) * line.volume.to_board_feet());
    }
    // 2,132.66 in all; the six braces are 60 board feet, 84.00, and 30 % more free of heart.
    assert_eq!(plain.price, Money::of(2132.66));
    project.buying = outshot::project::Buying::usual();
    assert_eq!(order(&project, &sticks).price, Money::of(2132.66 + 84.0 * 0.3));
    // Of each of seven sections one more, of the longest ordered: 8, 18, 20, 14, 18, 20 and 20 ft.
    project.buying.spares = Spares { each_section: 1, one_in: 0 };
    let spared = order(&project, &sticks);
    let longest = [59.73, 168.0, 72.8, 52.27, 84.0, 18.67, 28.0];
    let more = (spared.price - Money::of(2157.86)).to_f64() - longest.iter().sum::<f64>();
    assert!(more.abs() < 0.05, "{more}");
    assert_eq!((spared.n_spare(), n_pieces(&spared)), (7, n_pieces(&plain) + 7));
}

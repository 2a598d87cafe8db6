//! What the sawyer's pile gives, against every way of sharing few sticks out, and what more of a pile never does.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use outshot::materials::Section;
use outshot::ordering::{Kind, PileAnswer, StickOrder, from_yard};
use outshot::project::{Heart, Lot, Project, Role, demo};
use outshot::units::Length;
use proptest::prelude::*;

const KERF: f64 = 0.25;

fn section() -> Section {
    Section::new(Length::inches(4.0), Length::inches(8.0))
}

fn eighths(n: u32) -> f64 {
    f64::from(n) / 8.0
}

fn answer(pile: &[u32], sticks: &[u32]) -> PileAnswer {
    let any = |long: &u32| (*long, Heart::Either);
    of_hearts(&pile.iter().map(any).collect::<Vec<_>>(), &sticks.iter().map(any).collect::<Vec<_>>())
}

fn of_hearts(pile: &[(u32, Heart)], sticks: &[(u32, Heart)]) -> PileAnswer {
    let yard = pile.iter().map(|(long, heart)| Lot {
        section: section(),
        length: Length::inches(eighths(*long)),
        count: 1,
        heart: *heart,
        remark: String::new(),
    });
    let project = Project { yard: yard.collect(), ..demo::wool_barn() };
    assert_eq!(project.mill.kerf, Length::inches(KERF));
    let asked = sticks.iter().enumerate().map(|(place, (long, heart))| {
        let net = Length::inches(eighths(*long));
        let kind = Kind { section: section(), heart: *heart, delivery: 1 };
        StickOrder { mark: place.to_string(), role: Role::Rafter, kind, net, allowance: Length::ZERO, ordered: net }
    });
    from_yard(&project, &asked.collect::<Vec<_>>())
}

/// The greatest length there is among all ways to put each stick into one of the pile's or nowhere.
fn greatest(sticks: &[u32], room: &mut [f64]) -> f64 {
    let Some((first, rest)) = sticks.split_first() else { return 0.0 };
    let long = eighths(*first);
    let mut best = greatest(rest, room);
    for at in 0..room.len() {
        // Every stick takes its cut with it, and every bar has room for one cut more than it has sticks.
        if room[at] + 1e-9 >= long + KERF {
            room[at] -= long + KERF;
            best = best.max(long + greatest(rest, room));
            room[at] += long + KERF;
        }
    }
    best
}

/// The same where each stick of the pile has one heart, and each of the frame may wish for one: a bar nobody looked at has the
/// heart of the first that wishes for one.
fn greatest_of_hearts(sticks: &[(u32, Heart)], room: &mut [(f64, Heart)]) -> f64 {
    let Some(((first, wish), rest)) = sticks.split_first() else { return 0.0 };
    let long = eighths(*first);
    let mut best = greatest_of_hearts(rest, room);
    for at in 0..room.len() {
        let (was, heart) = room[at];
        if was + 1e-9 >= long + KERF && heart.may_serve(*wish) {
            room[at] = (was - long - KERF, if *wish == Heart::Either { heart } else { *wish });
            best = best.max(long + greatest_of_hearts(rest, room));
            room[at] = (was, heart);
        }
    }
    best
}

fn any_heart() -> impl Strategy<Value = Heart> {
    prop::sample::select(Heart::ALL.to_vec())
}

fn placed(sticks: &[u32], answer: &PileAnswer) -> f64 {
    sticks.iter().map(|long| eighths(*long)).sum::<f64>() - answer.missing_length().to_inches()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, ..ProptestConfig::default() })]

    /// Up to seven sticks out of up to five: no way of sharing them out places more; what is placed fits.
    #[test]
    fn nothing_more_comes_out(
        sticks in prop::collection::vec(200_u32..1400, 1..=7),
        pile in prop::collection::vec(400_u32..1600, 1..=5),
    ) {
        let found = answer(&pile, &sticks);
        let mut room: Vec<f64> = pile.iter().map(|long| eighths(*long) + KERF).collect();
        let best = greatest(&sticks, &mut room);
        let most = placed(&sticks, &found);
        prop_assert!(most <= best + 0.01);
        if found.is_proven() {
            prop_assert!(most >= best - 0.01, "{most} of {best}");
        } else {
            prop_assert!(most + found.at_most_more.to_inches() >= best - 0.01);
        }
        let mut marks: Vec<&String> = found.bars.iter().flat_map(|bar| &bar.sticks).collect();
        marks.extend(found.missing.iter().map(|stick| &stick.mark));
        marks.sort();
        marks.dedup();
        prop_assert_eq!(marks.len(), sticks.len());
        let mut begun: Vec<usize> = found.bars.iter().map(|bar| bar.lot).collect();
        begun.dedup();
        prop_assert_eq!(begun.len(), found.bars.len());
        for bar in &found.bars {
            let wood: f64 = bar.sticks.iter().map(|mark| eighths(sticks[mark.parse::<usize>().unwrap()])).sum();
            let cuts = KERF * (bar.sticks.len() as f64 - 1.0);
            prop_assert!((wood + cuts + bar.left.to_inches() - eighths(pile[bar.lot])).abs() < 0.01);
        }
    }

    /// Up to six sticks out of up to four, hearts wished for and known or not: never more than there is, never called proven
    /// where it is less, no stick in wood of another heart, none of two hearts, and what must be looked at is said.
    #[test]
    fn hearts_are_kept_to(
        sticks in prop::collection::vec((200_u32..1400, any_heart()), 1..=6),
        pile in prop::collection::vec((400_u32..1600, any_heart()), 1..=4),
    ) {
        let found = of_hearts(&pile, &sticks);
        let mut room: Vec<(f64, Heart)> = pile.iter().map(|(long, heart)| (eighths(*long) + KERF, *heart)).collect();
        let best = greatest_of_hearts(&sticks, &mut room);
        let most = placed(&sticks.iter().map(|stick| stick.0).collect::<Vec<_>>(), &found);
        prop_assert!(most <= best + 0.01, "{most} of {best}");
        prop_assert!(most + found.at_most_more.to_inches() >= best - 0.01, "{most} of {best}");
        for bar in &found.bars {
            let of = |mark: &String| sticks[mark.parse::<usize>().unwrap()];
            let wood: f64 = bar.sticks.iter().map(|mark| eighths(of(mark).0)).sum();
            let cuts = KERF * (bar.sticks.len() as f64 - 1.0);
            prop_assert!((wood + cuts + bar.left.to_inches() - eighths(pile[bar.lot].0)).abs() < 0.02);
            let mut wishes: Vec<Heart> = bar.sticks.iter().map(|mark| of(mark).1).collect();
            wishes.retain(|wish| *wish != Heart::Either);
            let heart = pile[bar.lot].1;
            prop_assert!(wishes.iter().all(|wish| heart.may_serve(*wish) && *wish == wishes[0]));
            let look = if heart == Heart::Either { wishes.first().copied() } else { None };
            prop_assert_eq!(bar.look, look);
        }
        let n_placed: usize = found.bars.iter().map(|bar| bar.sticks.len()).sum();
        prop_assert_eq!(n_placed + found.missing.len(), sticks.len());
    }

    /// A stick more in the pile, or a stick less in the frame, never makes more missing.
    #[test]
    fn more_of_a_pile_never_gives_less(
        sticks in prop::collection::vec(200_u32..1400, 2..=12),
        pile in prop::collection::vec(400_u32..1600, 1..=8),
        more in 400_u32..1600,
    ) {
        let before = answer(&pile, &sticks);
        let after = answer(&[&pile[..], &[more]].concat(), &sticks);
        let slack = if after.is_proven() { 0.01 } else { after.at_most_more.to_inches() + 0.01 };
        prop_assert!(after.missing_length().to_inches() <= before.missing_length().to_inches() + slack);
        let fewer = answer(&pile, &sticks[1..]);
        let slack = if fewer.is_proven() { 0.01 } else { fewer.at_most_more.to_inches() + 0.01 };
        prop_assert!(fewer.missing_length().to_inches() <= before.missing_length().to_inches() + slack);
    }
}

/// How often small piles are proven: nearly always.
#[test]
fn small_piles_are_proven() {
    let mut state = 7_u32;
    let mut next = |low: u32, high: u32| {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        low + (state >> 8) % (high - low)
    };
    let proven = (0..100).filter(|_| {
        let sticks: Vec<u32> = (0..next(3, 25)).map(|_| next(200, 1500)).collect();
        let pile: Vec<u32> = (0..next(2, 15)).map(|_| next(700, 1600)).collect();
        answer(&pile, &sticks).is_proven()
    });
    let n = proven.count();
    assert!(n >= 60, "{n} of 100 are proven");
}

//! Short sticks out of long stock: a plain packing, longest stick first into the fullest stock it fits.
//!
//! It keeps to what a sawyer would do by eye; `least` says whether it is the cheapest, and has a cheaper one where it is not.
use crate::project::{HAIR, shortest_holding};
use crate::units::{Length, sort_by_number};

/// One stick of stock and what comes out of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Bar {
    /// Its length.
    pub length: Length,
    /// Marks of the sticks that come out of it.
    pub sticks: Vec<String>,
    /// What is left over.
    pub left: Length,
}

/// Packs sticks, each with its length (allowance included), into stock; also returns those too long
/// for any.
#[must_use]
pub fn pack(wanted: &[(String, Length)], stock: &[Length], kerf: Length) -> (Vec<Bar>, Vec<(String, Length)>) {
    let longest = stock.iter().copied().fold(Length::ZERO, Length::max);
    let mut sticks: Vec<&(String, Length)> = wanted.iter().collect();
    // Stable: equal sticks stay in the order of the frame.
    sort_by_number(&mut sticks, |stick| -stick.1.to_inches());
    let mut bars: Vec<Bar> = Vec::new();
    let mut unplaced = Vec::new();
    for (mark, length) in sticks {
        if *length > longest + HAIR {
            unplaced.push((mark.clone(), *length));
            continue;
        }
        let fitting = bars.iter_mut().filter(|bar| bar.left + HAIR >= *length + kerf);
        match fitting.min_by(|a, b| a.left.to_inches().total_cmp(&b.left.to_inches())) {
            Some(bar) => {
                bar.left = bar.left - *length - kerf;
                bar.sticks.push(mark.clone());
            }
            None => bars.push(open(mark, *length, stock, longest)),
        }
    }
    for bar in &mut bars {
        shorten(bar, stock);
    }
    let lengths =
        |mark: &str| wanted.iter().find(|(known, _)| known == mark).map_or(Length::ZERO, |(_, length)| *length);
    let wood = |length: Length| (length / HAIR).round() as i64;
    // One alone is in its shortest length already.
    if bars.iter().any(|bar| bar.sticks.len() > 1) {
        bars = bars.into_iter().flat_map(|bar| part(bar, stock, lengths, wood)).collect();
    }
    (bars, unplaced)
}

/// A stick of which two come out of the longest stock opens that; a longer one gets its own length.
fn open(mark: &str, length: Length, stock: &[Length], longest: Length) -> Bar {
    let own = shortest_holding(stock, length).unwrap_or(longest);
    let opened = if length * 2.0 > longest { own } else { longest };
    Bar { length: opened, sticks: vec![mark.to_owned()], left: opened - length }
}

/// The shortest stock that still holds what is in it.
fn shorten(bar: &mut Bar, stock: &[Length]) {
    let used = bar.length - bar.left;
    let least = shortest_holding(stock, used).unwrap_or(bar.length);
    bar.left = least - used;
    bar.length = least;
}

/// Sticks that count for no more one by one are ordered one by one: they are lighter to haul.
pub(super) fn part(
    bar: Bar,
    stock: &[Length],
    length_of: impl Fn(&str) -> Length,
    cost: impl Fn(Length) -> i64,
) -> Vec<Bar> {
    let singles: Option<Vec<Bar>> = bar
        .sticks
        .iter()
        .map(|mark| {
            let needed = length_of(mark);
            shortest_holding(stock, needed).map(|length| Bar {
                length,
                sticks: vec![mark.clone()],
                left: length - needed,
            })
        })
        .collect();
    match singles {
        Some(singles) if singles.iter().map(|single| cost(single.length)).sum::<i64>() <= cost(bar.length) => singles,
        _ => vec![bar],
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(wanted: &[(f64, usize)], expected: &[(f64, usize)], n_unplaced: usize) {
        let wanted: Vec<(String, Length)> = wanted
            .iter()
            .flat_map(|(length, count)| (0..*count).map(move |n| (format!("{length}-{n}"), Length::inches(*length))))
            .collect();
        let stock = [96.0, 120.0, 144.0, 168.0, 192.0].map(Length::inches);
        let (bars, unplaced) = pack(&wanted, &stock, Length::inches(0.25));
        let found: Vec<(f64, usize)> = bars.iter().map(|bar| (bar.length.to_inches(), bar.sticks.len())).collect();
        assert_eq!(found, expected);
        assert_eq!(unplaced.len(), n_unplaced);
        assert!(bars.iter().all(|bar| !bar.left.is_negative()));
        assert_eq!(bars.iter().map(|bar| bar.sticks.len()).sum::<usize>() + unplaced.len(), wanted.len());
    }

    #[test]
    fn short_sticks_share_and_long_ones_do_not() {
        // Six of 60 in: three to a 192 (3·60 + 2·¼ = 180.5).
        check(&[(60.0, 6)], &[(192.0, 3), (192.0, 3)], 0);
        check(&[(60.0, 4)], &[(192.0, 3), (96.0, 1)], 0);
        check(&[(150.0, 2)], &[(168.0, 1), (168.0, 1)], 0);
        // Two of 95 in: one 192 or two 96, the same wood.
        check(&[(95.0, 2)], &[(96.0, 1), (96.0, 1)], 0);
        check(&[(200.0, 1), (192.0, 1)], &[(192.0, 1)], 1);
    }
}

//! Order of lists: few sorts for all lists, since each kind of list that sorts itself costs the download some kilobytes; and the
//! largest of many.
use std::cmp::Ordering;

use super::Length;

/// Places from the first to the last in order; equal ones stay as they were.
fn in_order(n: usize, compare: &mut dyn FnMut(usize, usize) -> Ordering) -> Vec<usize> {
    let mut places: Vec<usize> = (0..n).collect();
    // The place decides between equals, so the smaller, unstable sort does.
    places.sort_unstable_by(|a, b| compare(*a, *b).then(a.cmp(b)));
    places
}

/// Places of the keys from the least to the largest; equal ones stay in order.
#[must_use]
pub fn order_of(keys: &[f64]) -> Vec<usize> {
    in_order(keys.len(), &mut |a, b| keys[a].total_cmp(&keys[b]))
}

fn arrange<T>(list: &mut Vec<T>, places: Vec<usize>) {
    let mut old: Vec<Option<T>> = std::mem::take(list).into_iter().map(Some).collect();
    list.extend(places.into_iter().filter_map(|place| old[place].take()));
}

/// Sorts a list by a number, least first; equal ones stay in order. A negative key sorts the largest first.
pub fn sort_by_number<T>(list: &mut Vec<T>, key: impl FnMut(&T) -> f64) {
    let keys: Vec<f64> = list.iter().map(key).collect();
    if !keys.is_sorted() {
        arrange(list, order_of(&keys));
    }
}

/// Sorts a list as two of it compare; equal ones stay in order.
pub fn sort_with<T>(list: &mut Vec<T>, mut compare: impl FnMut(&T, &T) -> Ordering) {
    let places = in_order(list.len(), &mut |a, b| compare(&list[a], &list[b]));
    arrange(list, places);
}

/// Sorts lengths, least first.
pub fn sort_lengths(list: &mut [Length]) {
    let mut inches: Vec<f64> = list.iter().map(|length| length.to_inches()).collect();
    inches.sort_unstable_by(f64::total_cmp);
    for (length, inches) in list.iter_mut().zip(inches) {
        *length = Length::inches(inches);
    }
}

/// Beyond a larger number by no more than this share, another is the same: rounding alone tells them apart, and must not choose
/// the one that is named.
const SAME: f64 = 1e-7;

/// Whether a number is no larger than another, or by no more than rounding.
#[must_use]
pub fn same_or_less(small: f64, large: f64) -> bool {
    small <= large + SAME * large.abs()
}

/// The one with the largest number; the first of those that have the same.
#[must_use]
pub fn most<T>(mut all: impl Iterator<Item = T>, of: impl Fn(&T) -> f64) -> Option<T> {
    let first = all.next()?;
    let mut known = (of(&first), first);
    for one in all {
        let size = of(&one);
        // Not a number must not pass as small.
        let is_more = size > known.0 && size - known.0 > SAME * known.0.abs().min(size.abs());
        if is_more || size.is_nan() && !known.0.is_nan() {
            known = (size, one);
        }
    }
    Some(known.1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn equal_ones_stay_in_order() {
        let mut list = vec![(2.0, "a"), (1.0, "b"), (2.0, "c"), (-1.0, "d"), (1.0, "e")];
        sort_by_number(&mut list, |item| item.0);
        assert_eq!(list.iter().map(|item| item.1).collect::<String>(), "dbeac");
        sort_by_number(&mut list, |item| -item.0);
        assert_eq!(list.iter().map(|item| item.1).collect::<String>(), "acbed");
        sort_with(&mut list, |a, b| b.1.cmp(a.1).then(a.0.total_cmp(&b.0)));
        assert_eq!(list.iter().map(|item| item.1).collect::<String>(), "edcba");
        sort_by_number(&mut Vec::new(), |item: &f64| *item);
        let mut lengths = [2.0, -1.0, 0.5].map(Length::inches);
        sort_lengths(&mut lengths);
        assert_eq!(lengths, [-1.0, 0.5, 2.0].map(Length::inches));
    }

    #[test]
    fn rounding_chooses_nothing() {
        let of = |sizes: &[f64]| most(sizes.iter().enumerate(), |(_, size)| **size).map(|(place, _)| place);
        assert_eq!(of(&[5.0, 7.0, 7.0 * (1.0 + 1e-10), 7.0 * (1.0 - 1e-10)]), Some(1));
        assert_eq!(of(&[7.0, 7.0 * (1.0 + 1e-6)]), Some(1));
        assert_eq!(of(&[-7.0, -7.0 * (1.0 - 1e-10), -6.0]), Some(2));
        assert_eq!(of(&[f64::NEG_INFINITY, 0.0, f64::INFINITY, f64::INFINITY]), Some(2));
        assert_eq!(of(&[1.0, f64::NAN, f64::NAN, 2.0]), Some(1));
        assert_eq!(of(&[]), None);
    }
}

//! Order of lists: few sorts for all lists, since each kind of list that sorts itself costs the download some kilobytes.
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
    arrange(list, order_of(&keys));
}

/// Sorts a list as two of it compare; equal ones stay in order.
pub fn sort_with<T>(list: &mut Vec<T>, mut compare: impl FnMut(&T, &T) -> Ordering) {
    let places = in_order(list.len(), &mut |a, b| compare(&list[a], &list[b]));
    arrange(list, places);
}

/// Sorts lengths, least first.
pub fn sort_lengths(list: &mut [Length]) {
    list.sort_unstable_by(|a, b| a.to_inches().total_cmp(&b.to_inches()));
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
}

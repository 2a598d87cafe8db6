//! Order by a number: one sort for every list, since each kind of list that sorts itself costs the download some kilobytes.

/// Places of the keys from the least to the largest; equal ones stay in order.
#[must_use]
pub fn order_of(keys: &[f64]) -> Vec<usize> {
    let mut places: Vec<(f64, usize)> = keys.iter().copied().zip(0..).collect();
    // The place decides between equals, so the smaller, unstable sort does.
    places.sort_unstable_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    places.into_iter().map(|(_, place)| place).collect()
}

/// Sorts a list by a number, least first; equal ones stay in order. A negative key sorts the largest first.
pub fn sort_by_number<T>(list: &mut Vec<T>, key: impl FnMut(&T) -> f64) {
    let keys: Vec<f64> = list.iter().map(key).collect();
    let mut old: Vec<Option<T>> = std::mem::take(list).into_iter().map(Some).collect();
    for place in order_of(&keys) {
        list.extend(old.get_mut(place).and_then(Option::take));
    }
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
        sort_by_number(&mut Vec::new(), |item: &f64| *item);
    }
}

//! A symmetric matrix kept by row from its first entry to the diagonal, and its factors L·D·Lᵀ in the same room.

/// A pivot below this share of its diagonal is a movement nothing resists. Rounding leaves about 1e-15 of the diagonal
/// in such a place; slender but sound frames of a thousand members stay above 1e-10.
const NO_RESISTANCE: f64 = 1e-11;

/// The lower half of a symmetric matrix of n × n, row by row.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Skyline {
    /// Column of the first entry of each row.
    first: Vec<usize>,
    /// Where each row's entries begin in `entries`; one more for the end.
    begins: Vec<usize>,
    entries: Vec<f64>,
}

/// The equation whose pivot vanished, and the movement that nothing resists, largest part 1.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Loose {
    pub(super) mode: Vec<f64>,
}

impl Skyline {
    /// An empty matrix whose rows begin at these columns.
    pub(super) fn new(first: Vec<usize>) -> Self {
        let mut begins = Vec::with_capacity(first.len() + 1);
        let mut total = 0;
        for (row, column) in first.iter().enumerate() {
            begins.push(total);
            total += row + 1 - column;
        }
        begins.push(total);
        Self { first, begins, entries: vec![0.0; total] }
    }

    /// Number of equations.
    pub(super) fn order(&self) -> usize {
        self.first.len()
    }

    /// Adds to one entry of the lower half; the caller keeps `column ≤ row` and inside the row.
    #[inline(always)]
    pub(super) fn add(&mut self, row: usize, column: usize, value: f64) {
        let (first, begins) = (self.first.as_slice(), self.begins.as_slice());
        self.entries.as_mut_slice()[begins[row] + column - first[row]] += value;
    }

    #[inline(always)]
    fn row(&self, row: usize) -> &[f64] {
        let begins = self.begins.as_slice();
        &self.entries.as_slice()[begins[row]..begins[row + 1]]
    }

    /// Splits it in place: afterwards the diagonal holds D and the rest L.
    pub(super) fn factorise(mut self) -> Result<Factors, Loose> {
        let (firsts, begins) = (self.first.as_slice(), self.begins.as_slice());
        let entries = self.entries.as_mut_slice();
        for row in 0..firsts.len() {
            let (first, begin) = (firsts[row], begins[row]);
            let (done, rest) = entries.split_at_mut(begin);
            for column in first + 1..row {
                let (other_first, other_begin) = (firsts[column], begins[column]);
                let start = first.max(other_first);
                if start >= column {
                    continue;
                }
                let here = &rest[start - first..column - first];
                let there = &done[other_begin + start - other_first..other_begin + column - other_first];
                rest[column - first] -= dot(here, there);
            }
            let stiffness = rest[row - first];
            let mut pivot = stiffness;
            for column in first..row {
                let unscaled = rest[column - first];
                let scaled = unscaled / done[begins[column + 1] - 1];
                pivot -= unscaled * scaled;
                rest[column - first] = scaled;
            }
            if pivot.is_nan() || pivot <= NO_RESISTANCE * stiffness {
                return Err(self.loose(row));
            }
            rest[row - first] = pivot;
        }
        Ok(Factors { matrix: self })
    }

    /// The movement with 1 in the failed row that leaves every earlier row without force.
    fn loose(&self, row: usize) -> Loose {
        let mut mode = vec![0.0; self.order()];
        mode[row] = 1.0;
        for (column, scaled) in (self.first[row]..row).zip(self.row(row)) {
            mode[column] = -scaled;
        }
        self.back_substitute(&mut mode[..row]);
        Loose { mode }
    }

    /// Lᵀ·x = given, in place, for the leading rows.
    fn back_substitute(&self, x: &mut [f64]) {
        let first = self.first.as_slice();
        for row in (0..x.len()).rev() {
            let value = x[row];
            for (x, scaled) in x[first[row]..row].iter_mut().zip(self.row(row)) {
                *x -= scaled * value;
            }
        }
    }
}

/// A matrix split into L·D·Lᵀ.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Factors {
    matrix: Skyline,
}

impl Factors {
    /// Solves for one right-hand side, in place.
    pub(super) fn solve(&self, x: &mut [f64]) {
        let matrix = &self.matrix;
        let (first, begins, entries) = (matrix.first.as_slice(), matrix.begins.as_slice(), matrix.entries.as_slice());
        for row in 0..x.len() {
            let columns = &x[first[row]..row];
            x[row] -= dot(columns, matrix.row(row));
        }
        for (row, value) in x.iter_mut().enumerate() {
            *value /= entries[begins[row + 1] - 1];
        }
        matrix.back_substitute(x);
    }

    /// Number of equations.
    pub(super) fn order(&self) -> usize {
        self.matrix.order()
    }
}

/// Σ a·b over the shorter of both.
#[inline(always)]
fn dot(a: &[f64], b: &[f64]) -> f64 {
    let mut sum = -0.0;
    for (a, b) in a.iter().zip(b) {
        sum += a * b;
    }
    sum
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    fn filled(first: Vec<usize>, rows: &[&[f64]]) -> Skyline {
        let mut matrix = Skyline::new(first.clone());
        for (row, values) in rows.iter().enumerate() {
            for (index, value) in values.iter().enumerate() {
                matrix.add(row, first[row] + index, *value);
            }
        }
        matrix
    }

    #[test]
    fn a_small_system() {
        // [4 1 0; 1 3 2; 0 2 5]·[1, -2, 3] = [2, 1, 11].
        let factors = filled(vec![0, 0, 1], &[&[4.0], &[1.0, 3.0], &[2.0, 5.0]]).factorise().unwrap();
        let mut x = vec![2.0, 1.0, 11.0];
        factors.solve(&mut x);
        for (found, expected) in x.iter().zip([1.0, -2.0, 3.0]) {
            assert!((found - expected).abs() < 1e-14, "{found} is not {expected}");
        }
    }

    #[test]
    fn a_singular_one_gives_its_free_movement() {
        // Two springs in a row held nowhere: both ends move alike.
        let loose = filled(vec![0, 0, 1], &[&[1.0], &[-1.0, 2.0], &[-1.0, 1.0]]).factorise().unwrap_err();
        assert_eq!(loose.mode, vec![1.0, 1.0, 1.0]);
        let empty = filled(vec![0], &[&[0.0]]).factorise().unwrap_err();
        assert_eq!(empty.mode, vec![1.0]);
    }

    #[test]
    fn a_matrix_that_is_not_positive_is_refused() {
        assert!(filled(vec![0, 0], &[&[1.0], &[2.0, 1.0]]).factorise().is_err());
        assert!(filled(vec![0], &[&[f64::NAN]]).factorise().is_err());
    }
}

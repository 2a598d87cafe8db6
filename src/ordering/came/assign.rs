//! Who goes where at the least cost: the assignment problem, solved exactly.
//!
//! Shortest augmenting paths with potentials (H. W. Kuhn 1955, R. Jonker and A. Volgenant 1987, from memory), O(n²·m) steps,
//! in whole numbers: the same costs have the same answer everywhere.

/// The dearest cost, above or below nothing, that is told from a dearer one.
pub const MOST_COST: i64 = 1_000_000_000;

/// For each row the column it is given, or nothing. `costs` has a row for each one to be placed and in it a cost for each
/// place; nothing is a pair that must not be. As many rows as can be are placed; of all ways to do that the cheapest is taken.
#[must_use]
pub fn assign(costs: &[Vec<Option<i64>>]) -> Vec<Option<usize>> {
    let table = Table::new(costs);
    let mut work = Work::new(costs.len(), table.width());
    for row in 0..costs.len() {
        work.place(row, &table);
    }
    let mut placed = vec![None; costs.len()];
    for (column, row) in work.taken_by.iter().enumerate().take(table.n_columns) {
        if let Some(place) = row.and_then(|row| placed.get_mut(row)) {
            *place = Some(column);
        }
    }
    placed
}

/// The costs, with a way out beside the real columns for each row.
struct Table<'a> {
    costs: &'a [Vec<Option<i64>>],
    n_columns: usize,
    least: i64,
    /// Being left out: dearer than any difference among the real costs together.
    out: i64,
    /// A pair that must not be: dearer than leaving all out, so that no answer holds one.
    barred: i64,
}

impl<'a> Table<'a> {
    fn new(costs: &'a [Vec<Option<i64>>]) -> Self {
        let n_columns = costs.iter().map(Vec::len).max().unwrap_or(0);
        let known = costs.iter().flatten().flatten().map(|cost| held(*cost));
        let (least, most) = known.fold((MOST_COST, -MOST_COST), |(low, high), cost| (low.min(cost), high.max(cost)));
        let many = |count: usize| i64::try_from(count).unwrap_or(i64::MAX / 4).saturating_add(1);
        let out = (most - least).max(0).saturating_add(1).saturating_mul(many(costs.len().min(n_columns)));
        Self { costs, n_columns, least, out, barred: out.saturating_mul(many(costs.len())) }
    }

    fn width(&self) -> usize {
        self.n_columns + self.costs.len()
    }

    fn cost(&self, row: usize, column: usize) -> i64 {
        if column >= self.n_columns {
            return self.out;
        }
        let cost = self.costs.get(row).and_then(|row| row.get(column)).copied().flatten();
        cost.map_or(self.barred, |cost| held(cost) - self.least)
    }
}

fn held(cost: i64) -> i64 {
    cost.clamp(-MOST_COST, MOST_COST)
}

/// Prices of rows and columns under which no pair costs less than nothing, and the pairs so far, which cost nothing.
struct Work {
    of_row: Vec<i64>,
    of_column: Vec<i64>,
    taken_by: Vec<Option<usize>>,
}

/// The cheapest known way from the new row to every column.
struct Reach {
    far: Vec<i64>,
    /// The column passed before.
    from: Vec<Option<usize>>,
    is_done: Vec<bool>,
}

impl Work {
    fn new(n_rows: usize, width: usize) -> Self {
        Self { of_row: vec![0; n_rows], of_column: vec![0; width], taken_by: vec![None; width] }
    }

    /// Gives a row a column; others move over where that is cheaper.
    fn place(&mut self, row: usize, table: &Table) {
        let width = self.taken_by.len();
        let mut reach = Reach { far: vec![i64::MAX; width], from: vec![None; width], is_done: vec![false; width] };
        let (mut at, mut by) = (None, row);
        let end = loop {
            self.look_from((at, by), &mut reach, table);
            let open = (0..width).filter(|column| !reach.is_done[*column]);
            let Some(next) = open.min_by_key(|column| reach.far[*column]) else { return };
            self.reprice(row, reach.far[next], &mut reach);
            reach.is_done[next] = true;
            match self.taken_by[next] {
                None => break next,
                Some(other) => (at, by) = (Some(next), other),
            }
        };
        self.hand_on(row, end, &reach.from);
    }

    /// What can be reached from a row, entered by the column it has.
    fn look_from(&self, (at, by): (Option<usize>, usize), reach: &mut Reach, table: &Table) {
        for column in 0..self.taken_by.len() {
            let more = table.cost(by, column) - self.of_row[by] - self.of_column[column];
            if !reach.is_done[column] && more < reach.far[column] {
                reach.far[column] = more;
                reach.from[column] = at;
            }
        }
    }

    /// All that was reached is brought so much nearer: its rows pay more, its columns less.
    fn reprice(&mut self, row: usize, by: i64, reach: &mut Reach) {
        self.of_row[row] += by;
        for column in 0..self.taken_by.len() {
            if !reach.is_done[column] {
                reach.far[column] -= by;
                continue;
            }
            self.of_column[column] -= by;
            if let Some(owner) = self.taken_by[column] {
                self.of_row[owner] += by;
            }
        }
    }

    /// Along the way back every row takes the column that was reached from it.
    fn hand_on(&mut self, row: usize, end: usize, from: &[Option<usize>]) {
        let mut column = end;
        while let Some(before) = from[column] {
            self.taken_by[column] = self.taken_by[before];
            column = before;
        }
        self.taken_by[column] = Some(row);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// How many are placed, and at what cost.
    fn worth(costs: &[Vec<Option<i64>>], placed: &[Option<usize>]) -> (usize, i64) {
        let pairs = placed.iter().enumerate().filter_map(|(row, column)| Some((row, (*column)?)));
        pairs.fold((0, 0), |(count, cost), (row, column)| {
            let Some(more) = costs[row][column] else { unreachable!("row {row} has a place it must not have") };
            (count + 1, cost + more)
        })
    }

    /// Every way there is, the best of them.
    fn by_trying_all(costs: &[Vec<Option<i64>>], row: usize, taken: &mut Vec<bool>) -> (usize, i64) {
        if row == costs.len() {
            return (0, 0);
        }
        let mut best = by_trying_all(costs, row + 1, taken);
        for column in 0..taken.len() {
            let Some(cost) = costs[row][column].filter(|_| !taken[column]) else { continue };
            taken[column] = true;
            let (count, rest) = by_trying_all(costs, row + 1, taken);
            taken[column] = false;
            let found = (count + 1, rest + cost);
            if (found.0, -found.1) > (best.0, -best.1) {
                best = found;
            }
        }
        best
    }

    fn check(costs: &[Vec<Option<i64>>]) {
        let placed = assign(costs);
        let mut columns: Vec<usize> = placed.iter().copied().flatten().collect();
        columns.sort_unstable();
        let n_given = columns.len();
        columns.dedup();
        assert_eq!(columns.len(), n_given, "one place is given twice");
        let n_columns = costs.first().map_or(0, Vec::len);
        assert_eq!(worth(costs, &placed), by_trying_all(costs, 0, &mut vec![false; n_columns]), "{costs:?}");
        assert_eq!(placed, assign(costs));
    }

    /// By hand: 1 + 2 = 3 beats 4 + 0 = 4; one that nobody else can take goes to who can.
    #[test]
    fn small_ones_by_hand() {
        check(&[vec![Some(1), Some(0)], vec![Some(4), Some(2)]]);
        assert_eq!(assign(&[vec![Some(1), Some(0)], vec![Some(4), Some(2)]]), [Some(0), Some(1)]);
        assert_eq!(assign(&[vec![Some(1), Some(9)], vec![Some(0), None]]), [Some(1), Some(0)]);
        assert_eq!(assign(&[vec![Some(5)], vec![Some(3)]]), [None, Some(0)]);
        assert_eq!(assign(&[vec![None], vec![None]]), [None, None]);
        assert_eq!(assign(&[]), []);
        assert_eq!(assign(&[Vec::new()]), [None]);
    }

    prop_compose! {
        fn tables()(rows in 1..=8_usize, columns in 1..=8_usize)
            (costs in proptest::collection::vec(
                proptest::collection::vec(proptest::option::weighted(0.75, -20..1000_i64), columns), rows))
            -> Vec<Vec<Option<i64>>> { costs }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(300))]
        /// Up to eight by eight, a quarter of the pairs barred: the same as trying every way.
        #[test]
        fn none_is_better(costs in tables()) {
            check(&costs);
        }
    }
}

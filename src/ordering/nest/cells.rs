//! The bounded knapsack by a table over room: steady where many ways to cut are worth nearly the same.
//!
//! Dynamic programming as in S. Martello and P. Toth, Knapsack Problems, Wiley 1990, ch. 3: a count is split into
//! ones, twos, fours, so that every number up to it is a sum of parts taken or left.
use super::pricing::Item;

/// Most cells a table may have.
const MOST_CELLS: i64 = 40_000;

/// So many of an item together.
#[derive(Clone, Debug)]
struct Part {
    place: usize,
    n: u32,
    wide: usize,
    /// A bit for each cell: the part is taken there.
    taken: Vec<u64>,
}

/// What every room is worth at most.
#[derive(Debug, Default)]
pub(super) struct Cells {
    worth: Vec<f64>,
    parts: Vec<Part>,
}

/// Whether a table of that room in those units is small enough.
pub(super) fn is_small(room: i64, unit: i64) -> bool {
    room / unit <= MOST_CELLS
}

impl Cells {
    /// The table for rooms up to the largest, sizes being whole multiples of the unit; also the work it took.
    pub fn new(items: &[Item], largest: i64, unit: i64) -> (Self, u64) {
        let n = (largest / unit).max(0) as usize;
        let mut cells = Self { worth: vec![0.0; n + 1], parts: Vec::new() };
        for (place, item) in items.iter().enumerate() {
            let size = (item.size / unit) as usize;
            let mut left = item.most.min((n / size.max(1)) as u32);
            let mut n_part = 1;
            while left > 0 {
                let n = n_part.min(left);
                cells.add(place, n, size * n as usize, item.worth * f64::from(n));
                left -= n;
                n_part *= 2;
            }
        }
        let work = (n * cells.parts.len() / 16) as u64;
        (cells, work)
    }

    fn add(&mut self, place: usize, n: u32, wide: usize, worth: f64) {
        let mut taken = vec![0_u64; self.worth.len() / 64 + 1];
        for cell in (wide..self.worth.len()).rev() {
            let with = self.worth[cell - wide] + worth;
            if with > self.worth[cell] {
                self.worth[cell] = with;
                taken[cell / 64] |= 1 << (cell % 64);
            }
        }
        self.parts.push(Part { place, n, wide, taken });
    }

    /// What that room is worth, and how many of each item make it so.
    pub fn best(&self, room: i64, unit: i64, n_items: usize) -> (f64, Vec<u32>) {
        let mut counts = vec![0; n_items];
        let mut cell = ((room / unit).max(0) as usize).min(self.worth.len() - 1);
        let worth = self.worth[cell];
        for part in self.parts.iter().rev() {
            if part.taken[cell / 64] & (1 << (cell % 64)) != 0 {
                counts[part.place] += part.n;
                cell -= part.wide;
            }
        }
        (worth, counts)
    }
}

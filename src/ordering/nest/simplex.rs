//! The revised simplex method on a small dense inverse: least cost of columns that meet rows, all values not negative.
//!
//! The inverse is kept whole (rows × rows, a few dozen each way). Duals are worked out anew before a basis is called
//! best, so that they carry no rounding from the way there.

/// A value of the program.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Variable {
    /// A column of the pool.
    Column(usize),
    /// What a row has over or under.
    Slack(usize),
    /// What a row lacks.
    Lack(usize),
}

impl Variable {
    /// The column it is.
    pub fn column(self) -> Option<usize> {
        match self {
            Self::Column(at) => Some(at),
            _ => None,
        }
    }
}

/// A row: at least, or at most, so much.
#[derive(Clone, Copy, Debug)]
pub(super) struct Limit {
    pub is_least: bool,
    pub amount: f64,
    /// Cost of each unit lacking in a row with a least.
    pub lack: f64,
}

/// Smallest number that still counts as a step.
const SMALL: f64 = 1e-9;
/// Steps that gain nothing before the first rather than the best gain is taken, which cannot go in circles.
const PATIENCE: u32 = 60;

/// A basis and its inverse.
#[derive(Debug)]
pub(super) struct Basis {
    n: usize,
    inverse: Vec<f64>,
    pub held: Vec<f64>,
    pub variables: Vec<Variable>,
    costs: Vec<f64>,
    pub duals: Vec<f64>,
    idle: u32,
}

impl Basis {
    /// Nothing chosen yet: every least is lacking, every most is free.
    pub fn new(limits: &[Limit]) -> Self {
        let n = limits.len();
        let mut inverse = vec![0.0; n * n];
        (0..n).for_each(|row| inverse[row * n + row] = 1.0);
        let costs: Vec<f64> = limits.iter().map(|limit| if limit.is_least { limit.lack } else { 0.0 }).collect();
        let variable = |row: usize| if limits[row].is_least { Variable::Lack(row) } else { Variable::Slack(row) };
        Self {
            n,
            inverse,
            held: limits.iter().map(|limit| limit.amount).collect(),
            variables: (0..n).map(variable).collect(),
            duals: costs.clone(),
            costs,
            idle: 0,
        }
    }

    /// Many steps have gained nothing.
    pub fn is_stuck(&self) -> bool {
        self.idle > PATIENCE
    }

    /// Cost of the basis.
    pub fn cost(&self) -> f64 {
        self.costs.iter().zip(&self.held).map(|(cost, held)| cost * held).sum()
    }

    /// The duals without the rounding of the steps.
    pub fn refresh(&mut self) {
        self.duals.fill(0.0);
        for (row, cost) in self.costs.iter().enumerate().filter(|(_, cost)| **cost != 0.0) {
            let inverse = &self.inverse[row * self.n..(row + 1) * self.n];
            self.duals.iter_mut().zip(inverse).for_each(|(dual, entry)| *dual += cost * entry);
        }
    }

    /// Brings a variable in: `column` its entries, `cost` its cost, `gain` its reduced cost (negative). False where
    /// nothing stops it, or the numbers are too small to step.
    pub fn enter(&mut self, variable: Variable, column: &[(usize, f64)], cost: f64, gain: f64) -> bool {
        let n = self.n;
        let mut step = vec![0.0; n];
        for (at, entry) in column {
            for (row, step) in step.iter_mut().enumerate() {
                *step += self.inverse[row * n + at] * entry;
            }
        }
        let Some(leaving) = self.leaving(&step) else { return false };
        let amount = self.held[leaving] / step[leaving];
        self.idle = if amount * -gain > 1e-12 { 0 } else { self.idle + 1 };
        let pivot = step[leaving];
        let (before, rest) = self.inverse.split_at_mut(leaving * n);
        let (own, after) = rest.split_at_mut(n);
        own.iter_mut().for_each(|entry| *entry /= pivot);
        let others = before.chunks_exact_mut(n).zip(0..).chain(after.chunks_exact_mut(n).zip(leaving + 1..));
        for (row, at) in others {
            let factor = step[at];
            if factor != 0.0 {
                for (entry, own) in row.iter_mut().zip(&*own) {
                    *entry -= factor * own;
                }
            }
        }
        self.duals.iter_mut().zip(&*own).for_each(|(dual, own)| *dual += gain * own);
        for (row, held) in self.held.iter_mut().enumerate() {
            *held = if row == leaving { amount } else { (*held - amount * step[row]).max(0.0) };
        }
        self.variables[leaving] = variable;
        self.costs[leaving] = cost;
        true
    }

    /// The row that limits the step: among equals a lack goes first, then the largest pivot, or the first variable
    /// where the steps are stuck.
    fn leaving(&self, step: &[f64]) -> Option<usize> {
        let mut best: Option<(usize, f64)> = None;
        for (row, entry) in step.iter().enumerate().filter(|(_, entry)| **entry > SMALL) {
            let ratio = self.held[row] / entry;
            let is_better = match best {
                None => true,
                Some((known, least)) if ratio < least + 1e-12 => {
                    ratio < least - 1e-12 || self.goes_before(row, known, step)
                }
                Some(_) => false,
            };
            if is_better {
                best = Some((row, ratio));
            }
        }
        best.map(|(row, _)| row)
    }

    fn goes_before(&self, row: usize, known: usize, step: &[f64]) -> bool {
        let rank = |row: usize| match self.variables[row] {
            Variable::Lack(at) => (0, at),
            Variable::Slack(at) => (1, at),
            Variable::Column(at) => (2, at),
        };
        if self.is_stuck() {
            return rank(row) < rank(known);
        }
        let (own, other) = (rank(row).0 == 0, rank(known).0 == 0);
        if own == other { step[row] > step[known] } else { own }
    }
}

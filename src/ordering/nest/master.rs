//! The least cost when bars may be cut in parts: the bound of the search, by column generation.
//!
//! P. C. Gilmore and R. E. Gomory, "A linear programming approach to the cutting-stock problem", Operations Research 9
//! (1961) 849-859: rows are kinds of sticks, columns are ways to cut a bar, and the next column is the best knapsack at
//! the rows' duals. Rows here also hold limits on how many bars of some lengths are taken.
use super::model::{Model, Pattern, gcd};
use super::pricing::{Item, Knapsack};
use super::simplex::{Basis, Limit, Variable};
use crate::units::order_of;

/// Reduced costs smaller than this count as nothing; costs are scaled so that the dearest bar counts one.
const NOTHING: f64 = 1e-9;

/// Columns looked through at every step.
const SHORT: usize = 12;

/// How many bars of the stock in `mask` are taken, together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct BarLimit {
    pub mask: u64,
    pub is_least: bool,
    pub amount: u32,
}

/// What is minimised.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Measure {
    /// Prices.
    Price,
    /// Sticks that find no place: nothing where the bars allowed hold them all, in parts.
    Lacking,
}

/// The answer in parts.
#[derive(Clone, Debug)]
pub(super) struct Relaxed {
    /// No whole answer is below this, in units of price, or of sticks.
    pub bound: f64,
    /// Columns taken and how much of each.
    pub taken: Vec<(usize, f64)>,
    /// Some row is not met.
    pub lacks: bool,
}

/// The columns found so far, kept through the whole search.
pub(super) struct Master<'a> {
    pub model: &'a Model,
    pub columns: Vec<Pattern>,
    /// Columns of the last answer: the next one likely takes many of them.
    last: Vec<usize>,
    knapsack: Knapsack,
    /// What the dearest bar costs.
    scale: f64,
    steps: u64,
    /// Work it may do; an answer cut short bounds nothing.
    pub most_work: u64,
}

/// One run of the method.
struct Run<'r> {
    demand: &'r [u32],
    limits: &'r [BarLimit],
    measure: Measure,
    /// Row of each kind with demand.
    rows: Vec<Option<usize>>,
    n_kinds: usize,
    /// Columns that take no more of any kind than is wanted.
    active: Vec<usize>,
    is_active: Vec<bool>,
}

impl<'a> Master<'a> {
    pub fn new(model: &'a Model, most_work: u64) -> Self {
        let real = model.stock.iter().filter(|stock| !stock.is_lack).map(|stock| stock.price).max();
        let scale = real.unwrap_or(1).max(1) as f64;
        let unit = model.kinds.iter().fold(0, |unit, kind| gcd(unit, kind.size));
        let rooms = model.stock.iter().filter(|stock| !stock.is_lack).map(|stock| stock.room);
        let largest = rooms.max().unwrap_or(0);
        Self {
            model,
            columns: Vec::new(),
            last: Vec::new(),
            knapsack: Knapsack::new(unit, largest),
            scale,
            steps: 0,
            most_work,
        }
    }

    /// Steps of work so far.
    pub fn work(&self) -> u64 {
        self.steps + self.knapsack.work / 2
    }

    /// The least in parts; `ceiling` is the cost of a whole answer, in the measure's units.
    pub fn solve(&mut self, demand: &[u32], limits: &[BarLimit], measure: Measure, ceiling: f64) -> Relaxed {
        let mut run = self.run(demand, limits, measure);
        let lack = if measure == Measure::Price { 10.0 * (ceiling / self.scale + 1.0) } else { 1.0 };
        let wanted = demand.iter().filter(|n| **n > 0);
        let kinds = wanted.map(|n| Limit { is_least: true, amount: f64::from(*n), lack });
        let bars = limits.iter().map(|limit| Limit { is_least: limit.is_least, amount: f64::from(limit.amount), lack });
        let all: Vec<Limit> = kinds.chain(bars).collect();
        let mut basis = Basis::new(&all);
        self.knapsack.is_cut = false;
        self.knapsack.is_slow = false;
        self.knapsack.most_work = self.knapsack.work + 2 * self.most_work.saturating_sub(self.work());
        loop {
            let is_met = measure == Measure::Lacking && basis.cost() < NOTHING;
            self.knapsack.is_cut |= self.work() > self.most_work;
            if is_met
                || self.knapsack.is_cut
                || !(self.improve(&run, &mut basis, &all) || self.generate(&mut run, &basis))
            {
                break;
            }
        }
        self.answer(&basis, &run, &all)
    }

    fn run<'r>(&self, demand: &'r [u32], limits: &'r [BarLimit], measure: Measure) -> Run<'r> {
        let mut n_kinds = 0;
        let number = |n: &u32| {
            n_kinds += usize::from(*n > 0);
            (*n > 0).then(|| n_kinds - 1)
        };
        let rows: Vec<Option<usize>> = demand.iter().map(number).collect();
        let fits = |column: &Pattern| column.cuts.iter().all(|(kind, n)| *n <= demand[*kind]);
        let is_active: Vec<bool> = self.columns.iter().map(fits).collect();
        let active = (0..self.columns.len()).filter(|at| is_active[*at]).collect();
        Run { demand, limits, measure, rows, n_kinds, active, is_active }
    }

    fn cost(&self, run: &Run<'_>, stock: usize) -> f64 {
        match run.measure {
            Measure::Price => self.model.stock[stock].price as f64 / self.scale,
            Measure::Lacking => 0.0,
        }
    }

    /// Cost of a bar of that stock after the duals of the limits it counts under.
    fn bar_cost(&self, run: &Run<'_>, stock: usize, duals: &[f64]) -> f64 {
        let under = run.limits.iter().enumerate().filter(|(_, limit)| limit.mask & (1 << stock) != 0);
        self.cost(run, stock) - under.map(|(at, _)| duals[run.n_kinds + at]).sum::<f64>()
    }

    /// Steps with known columns until none gains; false where none did.
    ///
    /// Only a short list of the columns with the largest gains is looked through at every step.
    fn improve(&mut self, run: &Run<'_>, basis: &mut Basis, limits: &[Limit]) -> bool {
        let mut has_moved = false;
        let mut short = std::mem::take(&mut self.last);
        short.retain(|at| run.is_active[*at]);
        loop {
            while let Some((variable, gain)) = self.gaining(run, basis, limits, &short) {
                let (column, cost) = self.entries(run, variable, limits);
                self.steps += (limits.len() * limits.len()) as u64 / 16 + 1;
                if !basis.enter(variable, &column, cost, gain) || self.work() > self.most_work {
                    return has_moved;
                }
                has_moved = true;
            }
            basis.refresh();
            self.steps += run.active.len() as u64 / 8;
            short = self.shortlist(run, basis);
            if short.is_empty() && self.gaining(run, basis, limits, &short).is_none() {
                return has_moved;
            }
        }
    }

    /// What each stick of a kind is worth at the duals, and what a bar of each stock costs.
    fn prices(&self, run: &Run<'_>, duals: &[f64]) -> (Vec<f64>, Vec<f64>) {
        let worths = run.rows.iter().map(|row| row.map_or(0.0, |row| duals[row])).collect();
        let bars = (0..self.model.stock.len()).map(|stock| self.bar_cost(run, stock, duals)).collect();
        (worths, bars)
    }

    fn reduced(&self, at: usize, worths: &[f64], bars: &[f64]) -> f64 {
        let column = &self.columns[at];
        let mut reduced = bars[column.stock];
        for (kind, n) in &column.cuts {
            reduced -= worths[*kind] * f64::from(*n);
        }
        reduced
    }

    /// The columns that gain most.
    fn shortlist(&self, run: &Run<'_>, basis: &Basis) -> Vec<usize> {
        let (worths, bars) = self.prices(run, &basis.duals);
        let reduced = run.active.iter().map(|at| (self.reduced(*at, &worths, &bars), *at));
        let (gains, found): (Vec<f64>, Vec<usize>) = reduced.filter(|(reduced, _)| *reduced < -NOTHING).unzip();
        order_of(&gains).into_iter().take(SHORT).map(|place| found[place]).collect()
    }

    /// The variable with the largest gain, or the first one where steps are stuck.
    fn gaining(&self, run: &Run<'_>, basis: &Basis, limits: &[Limit], short: &[usize]) -> Option<(Variable, f64)> {
        let mut best: Option<(Variable, f64)> = None;
        let mut most = -NOTHING;
        let is_stuck = basis.is_stuck();
        for (row, limit) in limits.iter().enumerate() {
            let reduced = if limit.is_least { basis.duals[row] } else { -basis.duals[row] };
            if reduced < most && !(is_stuck && best.is_some()) {
                (best, most) = (Some((Variable::Slack(row), reduced)), reduced);
            }
        }
        let (worths, bars) = self.prices(run, &basis.duals);
        for at in short {
            let reduced = self.reduced(*at, &worths, &bars);
            if reduced < most && !(is_stuck && best.is_some()) {
                (best, most) = (Some((Variable::Column(*at), reduced)), reduced);
            }
        }
        best
    }

    fn entries(&self, run: &Run<'_>, variable: Variable, limits: &[Limit]) -> (Vec<(usize, f64)>, f64) {
        match variable {
            Variable::Column(at) => {
                let column = &self.columns[at];
                let kinds = column.cuts.iter().filter_map(|(kind, n)| Some((run.rows[*kind]?, f64::from(*n))));
                let under = run.limits.iter().enumerate().filter(|(_, limit)| limit.mask & (1 << column.stock) != 0);
                let bars = under.map(|(at, _)| (run.n_kinds + at, 1.0));
                (kinds.chain(bars).collect(), self.cost(run, column.stock))
            }
            Variable::Slack(row) => (vec![(row, if limits[row].is_least { -1.0 } else { 1.0 })], 0.0),
            Variable::Lack(row) => (vec![(row, 1.0)], limits[row].lack),
        }
    }

    /// New columns at the duals as they are, the best of each stock; false where no way to cut gains.
    fn generate(&mut self, run: &mut Run<'_>, basis: &Basis) -> bool {
        let rows = run.rows.iter().enumerate().filter_map(|(kind, row)| Some((kind, (*row)?)));
        let item = |(kind, row): (usize, usize)| {
            let most = run.demand[kind];
            Item { kind, size: self.model.kinds[kind].size, worth: basis.duals[row], most }
        };
        self.knapsack.offer(rows.map(item));
        let n_before = self.columns.len();
        for (place, stock) in self.model.stock.iter().enumerate() {
            let is_shut = run.limits.iter().any(|l| !l.is_least && l.amount == 0 && l.mask & (1 << place) != 0);
            if is_shut {
                continue;
            }
            let floor = self.bar_cost(run, place, &basis.duals) + NOTHING;
            let found = if stock.is_lack { self.knapsack.single(floor) } else { self.knapsack.best(stock.room, floor) };
            if let Some((_, cuts)) = found {
                run.active.push(self.columns.len());
                run.is_active.push(true);
                self.columns.push(Pattern { stock: place, cuts });
            }
        }
        self.columns.len() > n_before
    }

    fn answer(&mut self, basis: &Basis, run: &Run<'_>, limits: &[Limit]) -> Relaxed {
        let pairs = limits.iter().zip(&basis.duals);
        let dual_cost: f64 = pairs.map(|(limit, dual)| limit.amount * dual).sum();
        let n: u32 = run.demand.iter().sum();
        let scale = if run.measure == Measure::Price { self.scale } else { 1.0 };
        let mut taken = Vec::new();
        let mut lacks = false;
        self.last = basis.variables.iter().filter_map(|variable| variable.column()).collect();
        for (variable, held) in basis.variables.iter().zip(&basis.held).filter(|(_, held)| **held > 1e-7) {
            match variable {
                Variable::Column(at) => taken.push((*at, *held)),
                Variable::Lack(_) => lacks = true,
                Variable::Slack(_) => {}
            }
        }
        // Every bar may gain what counts as nothing, and there are no more bars than sticks.
        let bound = (dual_cost - 2.0 * NOTHING * f64::from(n + 1)) * scale;
        Relaxed { bound: if self.knapsack.is_cut { 0.0 } else { bound }, taken, lacks }
    }
}

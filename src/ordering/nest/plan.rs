//! From a task to its plan.
use super::model::{Model, Pattern, room, whole};
use super::search::{Found, search};
use super::task::{Aim, CutBar, Plan, Progress, Refused, Task, Unplaced};
use crate::units::{Length, Money, sort_lengths, sort_with};

/// Steps of work a search may do where nothing else is said: about a second on a desk.
pub const MOST_WORK: u64 = 20_000_000;

/// The plan of a task, proven or with its bound.
///
/// # Errors
/// A sentence on what cannot be worked on.
pub fn nest(task: &Task) -> Result<Plan, Refused> {
    nest_watched(task, MOST_WORK, &mut |_| true)
}

/// As [`nest`], with at most so much work, telling `watch` how far it has come; the search stops where that says false.
///
/// # Errors
/// A sentence on what cannot be worked on.
pub fn nest_watched(task: &Task, most_work: u64, watch: &mut dyn FnMut(&Progress) -> bool) -> Result<Plan, Refused> {
    task.check()?;
    let (model, found, is_least) = match task.aim {
        Aim::ShortestBars => shortest(task, most_work, watch),
        _ => {
            let model = Model::new(task, None);
            let found = watched(&model, most_work, watch);
            (model, found, true)
        }
    };
    Ok(plan(task, &model, found, is_least))
}

fn watched(model: &Model, most_work: u64, watch: &mut dyn FnMut(&Progress) -> bool) -> Found {
    let money = |price| money(model, price);
    search(model, most_work, &mut |work, best, bound| {
        watch(&Progress { work, most_work, best: money(best), bound: money(bound) })
    })
}

/// Each stock length in turn as the longest, until as many sticks are placed as with all of them.
fn shortest(task: &Task, most_work: u64, watch: &mut dyn FnMut(&Progress) -> bool) -> (Model, Found, bool) {
    let n_lacking =
        |model: &Model, found: &Found| found.bars.iter().filter(|bar| model.stock[bar.stock].is_lack).count();
    let all = Model::new(task, None);
    let longest = task
        .sticks
        .iter()
        .map(|stick| whole(stick.length) + whole(task.kerf))
        .filter(|size| task.stock.iter().any(|stock| stock.count != Some(0) && room(task, stock.length) >= *size));
    let longest = longest.max().unwrap_or(0);
    let with_all = watched(&all, most_work, watch);
    let least = n_lacking(&all, &with_all);
    let mut is_least = with_all.bound >= with_all.price || least == 0;
    let mut lengths: Vec<Length> =
        task.stock.iter().map(|stock| stock.length).filter(|length| room(task, *length) >= longest).collect();
    sort_lengths(&mut lengths);
    for length in lengths {
        let model = Model::new(task, Some(length));
        let found = watched(&model, most_work, watch);
        if n_lacking(&model, &found) <= least {
            return (model, found, is_least);
        }
        is_least &= found.bound >= found.price;
    }
    (all, with_all, is_least)
}

/// The money in a price.
fn money(model: &Model, price: i64) -> Money {
    Money::cents(if model.per_bar > 0 { price % model.per_bar } else { price })
}

fn plan(task: &Task, model: &Model, found: Found, is_least: bool) -> Plan {
    let mut marks: Vec<std::vec::IntoIter<usize>> = model.marks.iter().map(|marks| marks.clone().into_iter()).collect();
    let mut unplaced: Vec<(usize, Unplaced)> = too_long(task);
    let mut order = found.bars;
    sort_with(&mut order, |a, b| b.stock.cmp(&a.stock).then_with(|| a.cuts.cmp(&b.cuts)));
    let (lacking, whole_bars): (Vec<Pattern>, Vec<Pattern>) =
        order.into_iter().partition(|bar| model.stock[bar.stock].is_lack);
    let mut bars = Vec::new();
    for bar in &whole_bars {
        let mut sticks = Vec::new();
        bar.cuts.iter().for_each(|(kind, n)| sticks.extend(marks[*kind].by_ref().take(*n as usize)));
        if let Some(stock) = model.sources[bar.stock].filter(|_| !sticks.is_empty()) {
            let left = left(task, stock, &sticks);
            bars.push(CutBar { stock, sticks, left });
        }
    }
    for (kind, n) in lacking.iter().flat_map(|bar| &bar.cuts) {
        unplaced.extend(marks[*kind].by_ref().take(*n as usize).map(|place| (place, Unplaced::NoneLeft)));
    }
    sort_with(&mut unplaced, |a, b| a.0.cmp(&b.0));
    let cost: Money = bars.iter().map(|bar| task.stock[bar.stock].price).sum();
    let gap = found.price - found.bound;
    let is_proven = gap <= 0 && is_least;
    let bound = if is_proven { cost } else { bound(task, model, cost, gap) };
    Plan { bars, cost, bound, is_proven, unplaced, work: found.work }
}

/// What every plan with as many sticks placed costs at least.
fn bound(task: &Task, model: &Model, cost: Money, gap: i64) -> Money {
    match task.aim {
        Aim::LeastCost => Money::cents((cost.to_cents() - gap).max(0)),
        // Fewer bars may cost more or less: nothing is said of their money.
        Aim::FewestBars if gap < model.per_bar => Money::cents((cost.to_cents() - gap).max(0)),
        Aim::FewestBars | Aim::ShortestBars => Money::ZERO,
    }
}

fn too_long(task: &Task) -> Vec<(usize, Unplaced)> {
    let longest = task.stock.iter().filter(|stock| stock.count != Some(0)).map(|stock| stock.length);
    let longest = longest.fold(Length::ZERO, Length::max);
    let most = room(task, longest) - whole(task.kerf);
    let over = |place: usize| {
        let stick = &task.sticks[place];
        let reason = Unplaced::TooLong(stick.length - (longest - task.trim));
        (whole(stick.length) > most).then(|| (0..stick.count).map(move |_| (place, reason)))
    };
    (0..task.sticks.len()).filter_map(over).flatten().collect()
}

/// What is left of a bar.
fn left(task: &Task, stock: usize, sticks: &[usize]) -> Length {
    let wood: Length = sticks.iter().map(|place| task.sticks[*place].length).sum();
    let cuts = task.kerf * sticks.len().saturating_sub(1) as f64;
    // What fits to the nanometre may miss by rounding.
    (task.stock[stock].length - task.trim - wood - cuts).max(Length::ZERO)
}

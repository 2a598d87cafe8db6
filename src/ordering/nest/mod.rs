//! Cutting stock in one dimension: sticks of many lengths out of stock of several, at least cost, with the proof.
//!
//! The bound is the least cost with bars cut in parts (`master`), rounded up to the next price there can be; the plan
//! comes from a search over the numbers of bars (`search`) and a packing of each lot (`packing`). Work is counted in
//! steps, not in time, so that the same task always gets the same answer.
mod cells;
pub mod exchange;
mod greedy;
mod master;
mod model;
mod packing;
mod plan;
mod pricing;
mod search;
mod simplex;
mod task;

pub use plan::{MOST_WORK, nest, nest_watched};
pub use task::{
    Aim, CutBar, MOST_LENGTHS, MOST_STICKS, MOST_STOCK, Offered, Plan, Progress, Refused, Task, Unplaced, Wanted,
};

//! What to buy: timber in the mill's lengths, sheets, and what it all weighs and costs.
mod order;
mod roof_sheets;
mod stock;

pub use order::{Order, OrderLine, StickOrder, order};
pub use roof_sheets::{Sheet, SheetPlan, sheet_plan};
pub use stock::{Bar, pack};

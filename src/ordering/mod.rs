//! What to buy: timber in the mill's lengths, sheets, and what it all weighs and costs.
pub mod came;
mod costs;
pub mod hauling;
mod least;
pub mod nest;
mod order;
mod order_text;
mod received;
mod roof_sheets;
mod stock;
mod supply;
mod takeoff;
mod yard;

pub use costs::{Amount, CostLine, CostPart, Costs, LITRES_A_GALLON};
pub use order::{Buying, Order, OrderLine, StickOrder, order};
pub use order_text::{Cells, asked_length, n_pieces, order_csv, order_text, per_cubic_metre};
pub use received::{as_ordered, piece_name};
pub use roof_sheets::{Sheet, SheetPlan, sheet_plan};
pub use stock::{Bar, pack};
pub use supply::{supply_problems, ways_out};
pub use takeoff::Takeoff;
pub use yard::{Missing, PileAnswer, PileBar, from_yard, same_section};

//! What to buy: timber in the mill's lengths, sheets, and what it all weighs and costs.
mod grade;
mod least;
mod limited;
pub mod nest;
mod offers;
mod order;
mod order_text;
mod proof;
mod received;
mod roof_sheets;
mod spare;
mod stock;
mod supply;

pub use grade::{full_words, sawn_words};
pub use order::{Buying, Kind, Order, OrderLine, StickOrder, order};
pub use order_text::{Cells, asked_length, n_pieces, order_csv, order_text, per_cubic_metre};
pub use proof::{Delivery, WHY_TWICE};
pub use received::{as_ordered, piece_name};
pub use roof_sheets::{Sheet, SheetPlan, sheet_plan};
pub use stock::{Bar, pack};
pub use supply::{supply_problems, ways_out};

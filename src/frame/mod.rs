//! Plane frames by the stiffness method: exact for straight elastic members, small movements, no shear flexibility.
//!
//! ```text
//!   z up                      a member, from → to            inside it, seen with from on the left
//!   |     ↺ rotation            to ●                          N  tension positive
//!   |                             ╱  s: distance from `from`  V  = dM/ds: the left part pushes the right part up
//!   +------ x                   ╱    y: to the left of it      M  positive when it stretches the right-hand side
//!                          from ●                             δ  positive toward y (up, drawn left to right)
//! ```
//! Unknowns of a node, in this order: movement along x, along z, rotation (counter-clockwise). A node on which every
//! member end is hinged has no rotation of its own and no equation for it. Fixed directions have no equation; their
//! movement is imposed (zero, or a settlement of the load case). Nodes joined by rigid links move as one body: its
//! leading node keeps the unknowns. The stiffness matrix is symmetric, one row an equation, stored by row from its
//! first entry to the diagonal, in reverse Cuthill–McKee order, and split as L·D·Lᵀ once for many load cases.
//!
//! Loads on members are worked exactly: between two breaks of the load M is a cubic and δ a polynomial of the fifth
//! degree, so extremes are roots of a derivative, not the largest of some samples.
//!
//! A member that acts one way only is dropped or taken back for each load case by itself ([`Solver`]). A joint with
//! one stiffness in compression and another in tension is two such members side by side.
mod assembly;
mod diagram;
mod element;
mod envelope;
mod error;

pub mod exchange;
mod load;
mod loaded;
mod model;
mod narrow;
mod numbering;
mod polynomial;
mod quantities;
mod rigid;
mod second_order;
mod simple_beam;
mod skyline;
mod solution;
mod solve;
mod unilateral;
mod validate;

pub use assembly::Factorised;
pub use diagram::{Diagram, Extremes};
pub use envelope::{Envelope, Governing, Range, Ruling, range_at};
pub use error::{FrameError, Mechanism};
pub use load::{LoadCase, MemberLoad, NodeLoad, Settlement};
pub use loaded::PlacedLoads;
pub use model::{ActsIn, Frame, Member, Node, NodeSpring, Stiffness, Support};
pub use quantities::{Inertia, Measured, Spring, TurnSpring};
pub use second_order::{SecondOrder, Storey};
pub use solution::{Movement, Reaction, Solution};
pub use unilateral::Solver;

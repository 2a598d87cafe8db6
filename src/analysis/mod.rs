//! What the loads do to the frame: forces in rafters, beam line and supports, before anything is judged.
//!
//! ```text
//!   wall                     z          seen from outside:
//!    |\__                    |            z
//!    |   \__ rafter          |            |   P1      P2      P3
//!   ledger  \__beam__ eave   +---- y      +---------------------- x
//! ```
//! Loads on the roof are [`RoofCase`]s against y, out from the wall face. A rafter is a beam on two seats; it hands each
//! case to ledger and beam by statics ([`RafterLine`]). The beam line is a plane frame, worked with several models of its
//! braces and enveloped ([`beam_line`]). Weights pull with the green density of the wood, against uplift with the dry one.
mod along_wall;
mod beam_answer;
mod beam_cases;
mod beam_line;
mod beam_model;
mod diagram;
mod earthquake;
mod elevation_loads;
mod lean_to;
mod ledger;
mod loading;
mod origin;
mod partial_sag;
mod partial_snow;
mod post_demands;
mod purlin;
mod rafter;
mod rafter_hand;
mod rafter_line;
mod roof_cases;
mod roof_dead;
mod sway;

pub use along_wall::{AlongCases, along_cases, side_wind_on_roof, wind_on_ledger};
pub use beam_answer::{BeamPart, Passed, PostPart, Solved, Uncut};
pub use beam_cases::{BeamCase, BeamLoads, Purpose};
pub use beam_line::{BeamLine, beam_line};
pub use beam_model::{BeamModel, BraceModel, PostParts, Stiffnesses, Stretch, Unbraced};
pub use diagram::{Band, Drawn, Quantity, band};
pub use earthquake::{Shaking, earthquake_on_line, earthquake_on_roof};
pub use elevation_loads::{ElevationLoad, PlacedForce, elevation_loads};
pub use lean_to::lean_to;
pub use ledger::{LedgerFrame, LedgerLoads, LedgerSpan, WallPost, WallShares};
pub use loading::{Demand, Loading, loadings};
pub use origin::{Found, Origin};
pub use partial_snow::{HALF_ON_TAIL, LedgerPattern, SpanEffect, partial_on_rafters};
pub use post_demands::{FootForces, PostDemands};
pub use purlin::{PurlinBeam, PurlinLoad, PurlinStrip, StripLines, purlin_beams, purlin_strips};
pub use rafter::{RafterBeam, RafterForces, rafter_frame};
pub use rafter_hand::{OwnWeight, RafterHand};
pub use rafter_line::{RafterLine, StripReactions, carried_widths};
pub use roof_cases::{RoofCase, RoofLoads, component_cases, person_at, roof_loads, section_loads};
pub use roof_dead::{Pair, RoofDead};
pub use sway::slack_sway;

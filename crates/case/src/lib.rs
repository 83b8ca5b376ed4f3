//! The client's case as values: measures, chair, cushion, wanted changes, plan and record.
//!
//! Left and right are always the client's. Nothing here knows how a plan is found, how a file is
//! written or how a page is drawn.

mod caution;
mod client;
mod goal;
mod moves;
mod plan;
mod prediction;
mod record;
mod site;

pub use jiff::civil::Date;

pub use crate::caution::{Caution, Weight};
pub use crate::client::{
    Amount, Base, Chair, Change, Client, ClientCode, Contact, CushionChoice, LayoutRef, Measures,
    Sides, Taken, Weighing,
};
pub use crate::goal::{FrontSides, Goal, Want};
pub use crate::moves::{Move, Place};
pub use crate::plan::{GoalOutcome, Plan, PlannedCount};
pub use crate::prediction::{
    PredictedCompartment, PredictedOutcome, PredictedSeat, PredictedSite, Prediction, Spread,
};
pub use crate::record::{Digest, Entry, FittingCheck, RecordedCount, RecordedPlan};
pub use crate::site::SiteName;

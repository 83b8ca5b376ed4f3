//! The client's case as values: measures, chair, cushion, wanted changes, plan and record.
//!
//! Left and right are always the client's. Nothing here knows how a plan is found, how a file is
//! written or how a page is drawn.

mod client;
mod plan;
mod prediction;
mod record;

pub use jiff::civil::Date;

pub use crate::client::{
    Amount, Base, Chair, Change, Client, ClientCode, Contact, CushionChoice, LayoutRef, Measures,
    Sides, Taken, Weighing,
};
pub use crate::plan::{Plan, PlannedCount};
pub use crate::prediction::{
    PredictedCompartment, PredictedOutcome, PredictedSeat, PredictedSite, Prediction, Spread,
};
pub use crate::record::{Digest, Entry, FittingCheck, RecordedCount, RecordedPlan};

//! From what is wanted for a client to whole counts of cells, with what must be said about them.
//!
//! Start at [`plan`]. Nothing here reads files or knows pages.

mod cautions;
mod plan;

pub use crate::cautions::cautions;
pub use crate::plan::{PlanInput, Refusal, RefusalKind, plan};

//! From what is wanted for a client to whole counts of cells, with what must be said about them.
//!
//! Start at [`plan`]. Nothing here reads files or knows pages.

mod aims;
pub mod altitude;
mod cautions;
mod contour;
mod goals;
mod limits;
mod moves;
mod needs;
mod plan;
mod planner;
mod prediction;
mod prepared;
mod search;
mod seated;
mod sitting;
mod unknowns;
mod whole;

pub use crate::cautions::cautions;
pub use crate::contour::{ContourFound, ContourTest};
pub use crate::plan::{PlanInput, Refusal, RefusalKind, plan, with_changes};
pub use crate::prepared::{CutThrough, PreparedCushion, SiteCut, Spacings};
pub use crate::seated::Profile;

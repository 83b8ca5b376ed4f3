//! From what is wanted for a client to whole counts of cells, with what must be said about them.
//!
//! Start at [`plan`]. Nothing here reads files or knows pages.

mod cautions;
mod contour;
mod plan;
mod prediction;
mod prepared;
mod seated;
mod sitting;
mod unknowns;

pub use crate::cautions::cautions;
pub use crate::contour::{ContourFound, ContourTest};
pub use crate::plan::{PlanInput, Refusal, RefusalKind, plan};
pub use crate::prepared::{CutThrough, PreparedCushion, SiteCut, Spacings};
pub use crate::seated::Profile;

//! From what is wanted for a client to whole counts of cells, with what must be said about them.
//!
//! Start at [`plan`]. Nothing here reads files or knows pages.

mod adjust;
mod aims;
pub mod altitude;
mod board;
mod cautions;
mod code_group;
mod contour;
pub mod counting;
mod drift;
mod estimate;
mod goals;
mod limits;
mod mistakes;
mod moves;
mod needs;
mod observe;
mod plan;
mod planner;
mod prediction;
mod prepared;
mod reference;
mod search;
mod seated;
mod sitting;
mod sizing;
mod survey;
mod unknowns;
mod whole;

#[cfg(test)]
mod brute;
#[cfg(test)]
mod witness;

pub use crate::adjust::{AdjustInput, AdjustRefusal, Adjusted, adjust};
pub use crate::board::{BoardTest, BoardTilt};
pub use crate::cautions::cautions;
pub use crate::code_group::{CodeGroup, VERIFICATION, WIDE_FROM, code_group};
pub use crate::contour::{ContourFound, ContourTest};
pub use crate::drift::{ReCheck, re_check};
pub use crate::limits::broken;
pub use crate::mistakes::{Mistake, mistakes};
pub use crate::plan::{FOR_THE_GOALS, PlanInput, Refusal, RefusalKind, plan, with_changes};
pub use crate::prepared::{CutSite, CutThrough, PreparedCushion, SiteCut, Spacings};
pub use crate::reference::{Finding, Reference, reference};
pub use crate::seated::Profile;
pub use crate::sizing::{DEPTH_ROOM, Sizing, SizingRule, WIDTH_ROOM, consequences, sizing};
pub use crate::survey::{Cushions, size_for, survey};

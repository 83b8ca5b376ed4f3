//! From what is wanted for a client to whole counts of cells, with what must be said about them.
//!
//! Start at [`plan`]. Nothing here reads files or knows pages. Each folder is a question:
//! `goals`, what is wanted; `search`, which counts reach it; `checks`, what hands found and what
//! follows; `prediction`, what counts would do; `advice`, what else is to be said.

mod advice;
mod checks;
mod goals;
mod image;
mod prediction;
mod search;

#[cfg(test)]
mod tests;

pub use crate::advice::cautions::{cautions, too_few_spares};
pub use crate::advice::code_group::{CodeGroup, WIDE_FROM, code_group};
pub use crate::advice::comparison::{compared_seat, counts_at_pressure, is_a_body, least_told};
pub use crate::advice::drift::{look_again, re_check};
pub use crate::advice::review::{
    bones_and_seams, cells_do, client_of_body, ranked_bodies, reviewed_seat, stock_counts,
};
pub use crate::advice::setup_card::{CardAdvice, card_advice};
pub use crate::advice::sizing::{
    DEPTH_ROOM, Sizing, WIDTH_ROOM, height_effects, size_to_make, sized_by, sizing,
    thigh_not_counted,
};
pub use crate::advice::small_moves::small_moves;
pub use crate::advice::survey::{Cushions, SurveyedCushion, size_for, survey};
pub use crate::advice::{altitude, counting};
pub use crate::checks::adjust::{AdjustInput, Adjusted, adjust};
pub use crate::checks::meaning::at_seat_bones;
pub use crate::checks::mistakes::{Explanation, mistakes};
pub use crate::checks::passed::passed_counts;
pub use crate::checks::taught::taught;
pub use crate::goals::limits::broken;
pub use crate::prediction::board::{BoardTest, BoardTilt};
pub use crate::prediction::client_on_cushion::Profile;
pub use crate::prediction::contour::{ContourFound, ContourTest};
pub use crate::prediction::live::LivePredictor;
pub use crate::prediction::prepared::{CutSite, CutThrough, PreparedCushion, SiteCut, Spacings};
pub use crate::search::moves::moves;
pub use crate::search::plan::{PlanInput, plan, with_changes};
pub use crate::search::progress::{PlanStep, Progress};
pub use crate::search::seen::costs;

//! Which counts reach it: the search for whole counts, the plan, and the handfuls to move.

mod ahead;
pub(crate) mod decision;
pub(crate) mod effects;
pub(crate) mod few_out;
pub(crate) mod judge;
mod levels;
pub(crate) mod moves;
pub(crate) mod plan;
pub(crate) mod planner;
pub(crate) mod program;
pub(crate) mod progress;
pub(crate) mod seen;
pub(crate) mod side_by_side;
pub(crate) mod steps;
pub(crate) mod task;
pub(crate) mod whole_counts;

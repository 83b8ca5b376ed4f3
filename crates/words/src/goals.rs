//! What is said of goals and counts.

use case::{CountReason, GoalOutcome, Shortfall, SinceRecorded, Want};

/// What is said of goals and counts.
pub trait GoalWords {
    /// A goal, as what is to be done: a clause.
    fn goal(&self, want: &Want) -> String;

    /// What becomes of a goal: sentences.
    fn goal_outcome(&self, outcome: &GoalOutcome) -> String;

    /// Why a goal is not reached: a clause.
    fn shortfall(&self, why: Shortfall) -> String;

    /// Why a count differs from the stock fill: a few words.
    fn count_reason<'a>(&self, reason: &'a CountReason) -> &'a str;

    /// What changed since a plan was recorded: a clause.
    fn since_recorded(&self, since: &SinceRecorded) -> String;

    /// Why a plan has its counts, for the record: its goals and the wishes behind its fixed
    /// changes; none where there are none.
    fn plan_reason(&self, goals: &[GoalOutcome], wishes: &[&str]) -> Option<String>;
}

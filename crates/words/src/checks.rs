//! What is said of checks, and of what follows from them.

use case::{
    AdjustRefusal, Alarm, BodyError, BrokenLimit, Check, Doubt, LookAt, Mistake, NextStep, Verdict,
    WhyNoPlan,
};

use crate::Said;

/// What is said of checks, and of what follows from them.
pub trait CheckWords {
    /// What brings the client off the cushion: a clause.
    fn alarm(&self, alarm: &Alarm) -> String;

    /// A limit that is not kept: a clause.
    fn limit(&self, limit: &BrokenLimit) -> String;

    /// What checks come to, where more is to be said than moves say: sentences.
    fn verdict(&self, verdict: Verdict, cells_move: bool) -> Option<&'static str>;

    /// Where to look in the set-up: sentences.
    fn look_at(&self, look: LookAt) -> &'static str;

    /// An answer that is asked again: sentences.
    fn doubt(&self, doubt: &Doubt) -> String;

    /// An answer that was left out, since it does not go with what else is known: sentences.
    fn left_out(&self, check: &Check) -> String;

    /// What is next: sentences.
    fn next_step(&self, step: NextStep) -> String;

    /// A mistake in the set-up, and how to look for it: sentences.
    fn mistake(&self, mistake: &Mistake) -> String;

    /// Why a plan that was recorded after checks has its counts.
    fn after_checks(&self, checks: &[Check]) -> String;

    /// Values of which no body is made: a clause.
    fn body_error(&self, error: &BodyError) -> String;

    /// Why no plan is made, and what to do.
    fn plan_refusal(&self, why: &WhyNoPlan) -> Said;

    /// Why nothing can be said about checks, and what to do.
    fn adjust_refusal(&self, refusal: &AdjustRefusal) -> Said;
}

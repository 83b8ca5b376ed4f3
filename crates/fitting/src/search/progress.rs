//! Telling how far a plan is, as it is made.

/// A stage of a plan, told when it begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PlanStep {
    /// The client is placed on the stock fill, and how sure its numbers are is found.
    Stock,
    /// Counts are looked for: the first time, or again because the last ones were too low.
    Search {
        /// From 1.
        time: u8,
    },
    /// The counts that were found are verified on the fine mesh.
    Verification,
    /// What the counts would do is predicted, with its spread.
    Prediction,
}

/// Whom a plan tells at which stage it is; it makes no difference to the plan.
#[derive(Clone, Copy, Default)]
pub struct Progress<'a> {
    told: Option<&'a dyn Fn(PlanStep)>,
}

impl<'a> Progress<'a> {
    /// Nobody.
    #[must_use]
    pub const fn none() -> Self {
        Self { told: None }
    }

    /// Whoever is to be told.
    #[must_use]
    pub const fn to(told: &'a dyn Fn(PlanStep)) -> Self {
        Self { told: Some(told) }
    }

    /// Tells that a stage begins.
    pub(crate) fn tell(self, step: PlanStep) {
        if let Some(told) = self.told {
            told(step);
        }
    }
}

impl std::fmt::Debug for Progress<'_> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(if self.told.is_some() { "Progress::to(..)" } else { "Progress::none()" })
    }
}

//! The plan: how many cells go into each compartment for this client.

use cushion::Name;

use crate::{Caution, Move, Prediction};

/// What is planned for one compartment.
#[derive(Clone, Debug, PartialEq)]
pub struct PlannedCount {
    /// The compartment.
    pub id: Name,
    /// The number sewn at its opening.
    pub number: u8,
    /// Cells as supplied.
    pub stock: u32,
    /// Cells for this client.
    pub planned: u32,
    /// Why it differs from the stock fill, where it does.
    pub reason: Option<String>,
}

/// What became of a goal.
#[derive(Clone, Debug, PartialEq)]
pub struct GoalOutcome {
    /// How reports call the goal.
    pub id: String,
    /// How people call it.
    pub words: String,
    /// The number that is wanted, in `unit`.
    pub wanted: f64,
    /// The number that the plan reaches; none where the goal was refused.
    pub reached: Option<f64>,
    /// The unit of both.
    pub unit: &'static str,
    /// Whether that is near enough.
    pub met: bool,
    /// Why it is not met, or was refused.
    pub why: Option<String>,
}

/// Counts for a client, in the order of the compartments' numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// One for each compartment.
    pub counts: Vec<PlannedCount>,
    /// What became of the goals, the most important first.
    pub goals: Vec<GoalOutcome>,
    /// Which limits are not kept, in sentences; the client is not to be seated then.
    pub not_safe: Vec<String>,
    /// What the plan is expected to do; none without the client's weight.
    pub prediction: Option<Prediction>,
    /// From the cushion as it is to the plan.
    pub moves: Vec<Move>,
    /// What whoever reads the plan should know.
    pub cautions: Vec<Caution>,
}

impl Plan {
    /// Returns the cells in the whole cushion as supplied.
    #[must_use]
    pub fn total_stock(&self) -> u32 {
        self.counts.iter().map(|count| count.stock).sum()
    }

    /// Returns the cells in the whole cushion as planned.
    #[must_use]
    pub fn total_planned(&self) -> u32 {
        self.counts.iter().map(|count| count.planned).sum()
    }

    /// Whether all limits are kept and all goals met.
    #[must_use]
    pub fn is_all_that_was_wanted(&self) -> bool {
        self.not_safe.is_empty() && self.goals.iter().all(|goal| goal.met)
    }
}

//! The plan: how many cells go into each compartment for this client.

use cushion::Name;

use crate::{BrokenLimit, Caution, Costs, GoalOutcome, Move, Prediction};

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
    pub reason: Option<CountReason>,
}

/// Why a count differs from the stock fill.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CountReason {
    /// A change was asked for, for this reason in the words of whoever asked.
    Wish(String),
    /// It was chosen for the goals and the limits.
    Goals,
}

/// Counts for a client, in the order of the compartments' numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// One for each compartment.
    pub counts: Vec<PlannedCount>,
    /// What became of the goals, the most important first.
    pub goals: Vec<GoalOutcome>,
    /// Which limits are not kept; the client is not to be seated then.
    pub not_safe: Vec<BrokenLimit>,
    /// What the plan is expected to do; none without the client's weight.
    pub prediction: Option<Prediction>,
    /// What it changes for the client, wanted or not; none without the client's weight, or where the
    /// client does not come to rest.
    pub costs: Option<Costs>,
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

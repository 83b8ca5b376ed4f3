//! The plan: how many cells go into each compartment for this client.

use cushion::Name;

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

/// Counts for a client, in the order of the compartments' numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// One for each compartment.
    pub counts: Vec<PlannedCount>,
    /// What whoever reads the plan should know, in sentences.
    pub cautions: Vec<String>,
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
}

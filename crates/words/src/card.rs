//! What is said in the table that works without the program.

use case::{CardFinding, Remedy, RemedyCost};

/// What is said in the table that works without the program.
pub trait CardWords {
    /// What is found.
    fn card_finding(&self, found: &CardFinding) -> String;

    /// What to do: sentences.
    fn remedy(&self, remedy: &Remedy) -> String;

    /// What it does to both sides: sentences.
    fn remedy_cost(&self, cost: &RemedyCost) -> String;
}

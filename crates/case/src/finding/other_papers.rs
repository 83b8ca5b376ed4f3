//! Papers of a client that lie beside those that are written, and are of other counts.

use crate::{ClientCode, PlanMark};

/// Papers of one client in a folder into which others are written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OtherPapers {
    /// Whose they are.
    pub code: ClientCode,
    /// The plan whose papers are written now.
    pub printed: PlanMark,
    /// The papers of other plans or other counts, by their plans; may be none.
    pub others: Vec<PapersOfPlan>,
}

/// Files of the papers of one plan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PapersOfPlan {
    /// The plan; none where the names do not say it.
    pub mark: Option<PlanMark>,
    /// The names of the files, in byte order.
    pub files: Vec<String>,
}

impl OtherPapers {
    /// How reports call it.
    pub const ID: &'static str = "other-papers";

    /// Whether there are papers of a later plan than the one that is printed: then nobody knows from
    /// here which of them hold.
    #[must_use]
    pub fn has_later(&self) -> bool {
        self.others.iter().any(|own| self.is_later(own))
    }

    /// Whether papers are of a later plan than the one that is printed.
    #[must_use]
    pub fn is_later(&self, own: &PapersOfPlan) -> bool {
        own.mark.as_ref().is_some_and(|mark| mark.number > self.printed.number)
    }
}

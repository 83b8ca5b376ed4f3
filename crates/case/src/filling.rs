//! A fill that is going on: what was counted into a cushion so far. The record has none of it, so
//! it is never taken for what is in the cushion.

use crate::{Client, Date, Entry, RecordedPlan, withdrawn};

/// A cushion that is being filled, compartment by compartment.
#[derive(Clone, Debug, PartialEq)]
pub struct Filling {
    /// The day on which it was begun.
    pub on: Date,
    /// Who fills and counts.
    pub by: String,
    /// How many entries the record had when it was begun.
    pub after: usize,
    /// All compartments, in the order in which they are filled.
    pub counts: Vec<FillingCount>,
}

/// One compartment of a cushion that is being filled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FillingCount {
    /// The number sewn at its opening.
    pub number: u8,
    /// Cells that are to be put in.
    pub planned: u32,
    /// Cells that were put in and counted twice; none where it is not filled yet.
    pub put: Option<u32>,
}

/// Why a fill that was begun is not gone on with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StaleFilling {
    /// Other counts are planned for the cushion by now, or none.
    OtherCounts,
    /// What was done with the cushion since is in the record.
    Since,
}

impl StaleFilling {
    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::OtherCounts => "other-counts",
            Self::Since => "since",
        }
    }
}

/// How far a fill is that was begun.
#[derive(Clone, Debug, PartialEq)]
pub struct FillingSoFar {
    /// The day on which it was begun.
    pub on: Date,
    /// Who fills and counts.
    pub by: String,
    /// Compartments that were filled and counted.
    pub counted: usize,
    /// Compartments in all.
    pub of: usize,
    /// Why it is not gone on with; none where it is.
    pub stale: Option<StaleFilling>,
}

impl Filling {
    /// A fill of a plan in which nothing is counted yet.
    #[must_use]
    pub fn of(plan: &RecordedPlan, on: Date, by: String, after: usize) -> Self {
        let count = |own: &crate::RecordedCount| FillingCount {
            number: own.number,
            planned: own.planned,
            put: None,
        };
        Self { on, by, after, counts: plan.counts.iter().map(count).collect() }
    }

    /// Number and cells of each compartment that was filled and counted, in the order of filling.
    #[must_use]
    pub fn put(&self) -> Vec<(u8, u32)> {
        self.counts.iter().filter_map(|own| Some((own.number, own.put?))).collect()
    }

    /// Whether it is for the counts of a plan.
    fn is_for(&self, plan: &RecordedPlan) -> bool {
        let sorted = |counts: &mut dyn Iterator<Item = (u8, u32)>| {
            let mut counts: Vec<(u8, u32)> = counts.collect();
            counts.sort_unstable();
            counts
        };
        let own = sorted(&mut self.counts.iter().map(|own| (own.number, own.planned)));
        own == sorted(&mut plan.counts.iter().map(|own| (own.number, own.planned)))
    }
}

impl Client {
    /// Returns how far the fill is that was begun and is not recorded yet.
    #[must_use]
    pub fn filling_so_far(&self) -> Option<FillingSoFar> {
        let own = self.filling.as_ref()?;
        let (counted, of) = (own.put().len(), own.counts.len());
        let stale = self.why_stale(own);
        Some(FillingSoFar { on: own.on, by: own.by.clone(), counted, of, stale })
    }

    /// Returns the fill that is going on, where it is for the counts that are planned for a cushion of
    /// this size and nothing was done with the cushion since.
    #[must_use]
    pub fn filling_goes_on(&self) -> Option<&Filling> {
        self.filling.as_ref().filter(|own| self.why_stale(own).is_none())
    }

    fn why_stale(&self, own: &Filling) -> Option<StaleFilling> {
        // A plan says what to do, a weight and a look at the skin leave the cells where they are.
        let touches = |entry: &Entry| {
            !matches!(
                entry,
                Entry::Plan(_) | Entry::Weighed(_) | Entry::Skin(_) | Entry::Withdrawn(_)
            )
        };
        let withdrawn = withdrawn(&self.record);
        let since = self.record.iter().zip(withdrawn).skip(own.after);
        if since.into_iter().any(|(entry, withdrawn)| !withdrawn && touches(entry)) {
            return Some(StaleFilling::Since);
        }
        // Whether it is the same layout, whoever has its text knows.
        let size = self.cushion.size.to_string();
        let plan = self.latest_plan().filter(|plan| plan.size.to_string() == size);
        (!plan.is_some_and(|plan| own.is_for(plan))).then_some(StaleFilling::OtherCounts)
    }
}

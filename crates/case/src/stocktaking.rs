//! Where the cells are, by the record: what lay in the cushion before a plan, and what is left in
//! the spare bag after it.

use crate::{Client, Date, Entry, RecordedPlan, Recount};

/// What lay in a cushion before its latest plan, and how that is known.
#[derive(Clone, Debug, PartialEq)]
pub struct Before {
    /// How it is known.
    pub from: CountedFrom,
    /// Cells, in the order of the plan's counts.
    pub counts: Vec<u32>,
}

/// How the counts before a plan are known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CountedFrom {
    /// Nothing was recorded: the cushion as supplied.
    Stock,
    /// By the plan of that day.
    Plan(Date),
    /// By the recount of that day, and the plan before it where not all was counted.
    Recount(Date),
}

impl Client {
    /// Returns what lay in the cushion before the latest plan was carried out.
    #[must_use]
    pub fn before_latest_plan(&self) -> Option<Before> {
        let mut cells = Stocktaking::default();
        let mut before = None;
        for entry in &self.record {
            if let Entry::Plan(plan) = entry {
                before = Some(cells.before(plan));
            }
            cells.follow(entry, 0);
        }
        before
    }

    /// Returns how many cells are in the spare bag once the latest plan is carried out: those that
    /// came with the cushion as supplied, less what plans put in, and more what they took out.
    /// Below zero where more are needed than there are. Cells that a recount no longer found are
    /// lost, not in the bag.
    #[must_use]
    pub fn spare_cells_left(&self) -> i64 {
        let mut cells = Stocktaking { bag: i64::from(self.cushion.spare_cells), ..<_>::default() };
        for entry in &self.record {
            cells.follow(entry, self.cushion.spare_cells);
        }
        cells.bag
    }
}

/// Where the cells are at one point of the record.
#[derive(Default)]
struct Stocktaking<'a> {
    plan: Option<&'a RecordedPlan>,
    recount: Option<Recount>,
    bag: i64,
}

impl<'a> Stocktaking<'a> {
    /// What lies in the cushion, as far as it is the one that `plan` is for.
    fn before(&self, plan: &RecordedPlan) -> Before {
        let stock = plan.counts.iter().map(|own| own.stock).collect();
        let Some(last) = self.plan.filter(|last| same_cushion(last, plan)) else {
            return Before { from: CountedFrom::Stock, counts: stock };
        };
        let counted = |number: u8| {
            let counts = &self.recount.as_ref()?.counts;
            counts.iter().find(|own| own.0 == number).map(|own| own.1)
        };
        let of = |own: &crate::RecordedCount| counted(own.number).unwrap_or(own.planned);
        let recount = self.recount.as_ref().map(|own| CountedFrom::Recount(own.on));
        Before {
            from: recount.unwrap_or(CountedFrom::Plan(last.on)),
            counts: last.counts.iter().map(of).collect(),
        }
    }

    fn follow(&mut self, entry: &'a Entry, supplied: u32) {
        match entry {
            Entry::Plan(plan) => {
                if self.plan.is_some_and(|last| !same_cushion(last, plan)) {
                    self.bag = i64::from(supplied);
                }
                let before: i64 = self.before(plan).counts.into_iter().map(i64::from).sum();
                self.bag += before - i64::from(plan.total());
                (self.plan, self.recount) = (Some(plan), None);
            }
            Entry::Recount(own) => {
                // What an earlier recount counted and this one did not still holds.
                let earlier = self.recount.take().map_or_else(Vec::new, |it| it.counts);
                let counted = |number: u8| own.counts.iter().any(|it| it.0 == number);
                let kept = earlier.into_iter().filter(|it| !counted(it.0));
                let counts = own.counts.iter().copied().chain(kept).collect();
                self.recount = Some(Recount { counts, ..own.clone() });
            }
            Entry::FittingCheck(_) | Entry::Adjustment(_) | Entry::Weighed(_) => {}
        }
    }
}

/// Whether two plans are for the same compartments.
fn same_cushion(a: &RecordedPlan, b: &RecordedPlan) -> bool {
    let places = |plan: &RecordedPlan| -> Vec<_> {
        plan.counts.iter().map(|own| (own.id.clone(), own.number)).collect()
    };
    a.size.to_string() == b.size.to_string() && places(a) == places(b)
}

//! What is proposed and not done yet: the moves from what is in the cushion to the plan.

use case::{Caution, Costs, Move};
use mechanics::Stop;

use crate::open_case::OpenCase;

impl OpenCase {
    /// What was recorded last as being in this cushion, in the pattern's order; none where nothing
    /// says so.
    #[must_use]
    pub fn recorded_now(&self) -> Option<Vec<u32>> {
        self.recorded_counts()
    }

    /// The counts of the plan that is proposed, in the pattern's order, with those that somebody
    /// recorded to be in the cushion; none where nothing is proposed, or nobody said what is in it.
    fn now_and_planned(&self) -> Option<(Vec<u32>, Vec<u32>)> {
        let client = &self.client.value;
        let (now, counts) = self.counted().filter(|own| own.0.from.is_told())?;
        let plan = client.latest_plan().filter(|plan| self.is_for_this_cushion(plan).is_ok())?;
        if !client.moves_are_left() && now.to_put_back().is_empty() {
            return None;
        }
        let planned = self.pattern.compartments().iter().map(|own| {
            plan.counts.iter().find(|count| count.number == own.number).map(|count| count.planned)
        });
        Some((counts, planned.collect::<Option<_>>()?))
    }

    /// The moves that lead from what is in the cushion to the plan, in their order; none where
    /// nothing is proposed.
    #[must_use]
    pub fn proposed_moves(&self) -> Vec<Move> {
        let both = self.now_and_planned();
        both.map_or_else(Vec::new, |(now, wanted)| fitting::moves(&self.pattern, &now, &wanted))
    }

    /// Whether the bag holds too few cells for what is proposed and not done yet.
    #[must_use]
    pub fn too_few_spares_for_proposed(&self) -> Option<Caution> {
        let (_, wanted) = self.now_and_planned()?;
        let stock = self.cushion.stock().total();
        fitting::too_few_spares(&self.client.value, stock, wanted.iter().sum())
    }

    /// The moves by which counts came from what somebody recorded to be in the cushion, in their
    /// order; none where nobody did.
    #[must_use]
    pub fn moves_to(&self, counts: &[u32]) -> Option<Vec<Move>> {
        let now = self.counted().filter(|own| own.0.from.is_told())?.1;
        Some(fitting::moves(&self.pattern, &now, counts))
    }

    /// What the proposed moves change for the client, all of them together; none where nothing is
    /// proposed, the client does not come to rest, or it was told to stop.
    #[must_use]
    pub fn proposed_costs(&self, stop: Stop<'_>) -> Option<Costs> {
        let (now, wanted) = self.now_and_planned()?;
        if now == wanted {
            return None;
        }
        let found = self.as_found(stop);
        let (prediction, _) = found.predict(&wanted, stop).ok()?;
        found.costs(&wanted, &prediction, stop).ok()?
    }
}

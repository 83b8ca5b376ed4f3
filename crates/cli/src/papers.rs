//! Not yet.
pub(crate) fn as_planned(recorded: &case::RecordedPlan) -> Vec<case::PlannedCount> {
    let count = |count: &case::RecordedCount| case::PlannedCount {
        id: count.id.clone(),
        number: count.number,
        stock: count.stock,
        planned: count.planned,
        reason: None,
    };
    recorded.counts.iter().map(count).collect()
}

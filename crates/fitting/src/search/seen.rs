//! What is expected of counts, what becomes of the goals on them, and what they change.

use case::{BodyError, BrokenLimit, Client, Costs, GoalOutcome, Prediction, Shortfall, ToldFrom};
use cushion::Mass;
use mechanics::Stop;

use crate::goals::aims::{Filling, real};
use crate::goals::limits::{Reference, broken, overloaded};
use crate::goals::wanted::GoalReader;
use crate::prediction::assumptions::assumptions_of;
use crate::prediction::client_on_cushion::SearchMeshes;
use crate::prediction::costs::Compared;
use crate::prediction::predictor::{AlreadySolved, Predictor};
use crate::prediction::prepared::PreparedCushion;
use crate::search::judge::{Judge, refused};
use crate::search::planner::{FoundPlan, Planner, stock_counts};

/// What counts, of which so much is expected, change for a client: from `recorded`, or from the stock
/// fill where there are none. None where the client does not come to rest.
///
/// # Errors
///
/// Returns what in the client's measures is no body's.
pub fn costs(
    client: &Client,
    cushion: &PreparedCushion,
    weight: Mass,
    recorded: Option<&[u32]>,
    (counts, prediction): (&[u32], &Prediction),
    stop: Stop<'_>,
) -> Result<Option<Costs>, BodyError> {
    let assumptions = assumptions_of(client, cushion, weight, stop)?;
    let meshes = SearchMeshes::new(cushion, &assumptions, stop)?;
    let (reference, from) = match recorded {
        Some(recorded) => (real(recorded), ToldFrom::Present),
        None => (stock_counts(cushion), ToldFrom::Stock),
    };
    let planner = Planner::judging(cushion, client, assumptions, reference, from, stop);
    let Some(stock) = planner.search(&meshes, Vec::new()).filled(&stock_counts(cushion), None)
    else {
        return Ok(None);
    };
    let pattern = cushion.pattern();
    let reader = GoalReader { needs: &planner.needs, pattern, meshes: &meshes, stock: &stock };
    let goals = planner.outcomes(&reader, counts);
    Ok(planner.weighed(&reader, counts, &goals, prediction).1)
}

impl Planner<'_> {
    /// What is expected of counts, without looking for others.
    pub(crate) fn seen(&self, counts: &[u32]) -> Result<FoundPlan, BodyError> {
        let pattern = self.cushion.pattern();
        let predictor = Predictor::new(self.cushion, &self.assumptions, self.stop)?;
        let (prediction, _) = predictor.predict(pattern, counts, AlreadySolved::default());
        let meshes = SearchMeshes::new(self.cushion, &self.assumptions, self.stop)?;
        let stock = self.search(&meshes, Vec::new()).filled(&stock_counts(self.cushion), None);
        let (goals, (not_safe, costs)) = match &stock {
            Some(stock) => {
                let reader = GoalReader { needs: &self.needs, pattern, meshes: &meshes, stock };
                let goals = self.outcomes(&reader, counts);
                let weighed = self.weighed(&reader, counts, &goals, &prediction);
                (goals, weighed)
            }
            None => (self.refused_all(Shortfall::NoRestOnStock), (broken(&prediction), None)),
        };
        Ok(FoundPlan { counts: counts.to_vec(), goals, prediction, not_safe, costs })
    }

    /// Which limits counts do not keep, and what they change, from those that are told from.
    pub(super) fn weighed(
        &self,
        reader: &GoalReader<'_>,
        counts: &[u32],
        goals: &[GoalOutcome],
        prediction: &Prediction,
    ) -> (Vec<BrokenLimit>, Option<Costs>) {
        let mut not_safe = broken(prediction);
        let search = self.search(reader.meshes, Vec::new());
        let filled = |counts: &[f64]| search.filled(counts, Some(reader.stock));
        let (Some(seat), Some(after), Some(before)) =
            (prediction.seated.as_ref(), filled(&real(counts)), filled(&self.reference))
        else {
            return (not_safe, None);
        };
        let passed = self.passed.as_deref().and_then(filled);
        let reference = Reference { now: &before, passed: passed.as_ref() };
        not_safe.extend(overloaded(&self.needs, reference, self.told_from, &after));
        let was = self.judged(reader, &before);
        let compared = Compared { before: &before, after: &after, goals: [&was, goals] };
        (not_safe, Some(compared.costs(self.told_from, &self.needs, seat)))
    }

    /// What became of the goals: on the coarse mesh, as the stock fill that they are counted from.
    pub(super) fn outcomes(&self, reader: &GoalReader<'_>, counts: &[u32]) -> Vec<GoalOutcome> {
        let real = real(counts);
        let search = self.search(reader.meshes, Vec::new());
        match search.filled(&real, Some(reader.stock)) {
            Some(filling) => self.judged(reader, &filling),
            None => self.refused_all(Shortfall::NoRest),
        }
    }

    pub(super) fn refused_all(&self, why: Shortfall) -> Vec<GoalOutcome> {
        self.needs.goals.iter().map(|goal| refused(goal.want, why)).collect()
    }

    /// What becomes of the goals on a filling.
    pub(crate) fn judged(&self, reader: &GoalReader<'_>, filling: &Filling) -> Vec<GoalOutcome> {
        let (needs, cushion, fixed) = (&self.needs, self.cushion, self.fixed.as_slice());
        let searched = self.adjusting.is_none() && !fixed.iter().all(|fixed| *fixed);
        let judge = Judge { needs, cushion, fixed, searched, stock: reader.stock, filling };
        reader.wanted().iter().map(|goal| judge.outcome(goal)).collect()
    }
}

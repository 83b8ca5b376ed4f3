//! The client as what hands found on this cushion says that they sit: predictions begin from it.

use case::{Check, Client, Costs, CushionIdentity, Likeness, Prediction, Taught};
use cushion::Pattern;
use fitting::CutThrough;
use mechanics::Stop;

use crate::error::WorkError;
use crate::open_case::OpenCase;
use crate::stopping::unless_stopped;

/// An open case with its client as they were found to sit.
pub struct AsFound<'a> {
    case: &'a OpenCase,
    /// The client, with what was learnt.
    pub(crate) client: Client,
}

impl OpenCase {
    /// Learns from all that was found on this cushion, by the record; where nothing was, the client is
    /// as the file says.
    #[must_use]
    pub fn as_found(&self, stop: Stop<'_>) -> AsFound<'_> {
        let mut client = self.client.value.clone();
        client.taught.extend(self.learnt(stop));
        AsFound { case: self, client }
    }

    /// What was found on this cushion teaches; worked out once, unless it is told to stop.
    fn learnt(&self, stop: Stop<'_>) -> Option<Taught> {
        if let Some(known) = self.learnt.get() {
            return *known;
        }
        let learnt = unless_stopped(stop, |stop| {
            let client = &self.client.value;
            let found = found_on(client, &self.pattern, &self.identity());
            let weight = self.weight().ok().filter(|_| !found.is_empty())?;
            fitting::taught(client, &self.cushion, weight, &found, stop).ok()
        });
        // What was told to stop is thrown away by whoever asked.
        learnt.ok().and_then(|own| *self.learnt.get_or_init(|| own))
    }
}

impl AsFound<'_> {
    /// Predicts what counts would do, with the cuts through the cushion that show it.
    ///
    /// # Errors
    ///
    /// Fails where the client was not weighed, the measures make no body, or it was told to stop.
    pub fn predict(
        &self,
        counts: &[u32],
        stop: Stop<'_>,
    ) -> Result<(Prediction, Vec<CutThrough>), WorkError> {
        let weight = self.case.weight()?;
        let predicted = unless_stopped(stop, |stop| {
            self.case.cushion.predict(&self.client, weight, counts, stop)
        })?;
        predicted.map_err(|error| self.case.no_body(error))
    }

    /// What counts change for the client: from those recorded last for this cushion where these are
    /// others, else from the stock fill. None where the client does not come to rest.
    ///
    /// # Errors
    ///
    /// As [`Self::predict`].
    pub fn costs(
        &self,
        counts: &[u32],
        prediction: &Prediction,
        stop: Stop<'_>,
    ) -> Result<Option<Costs>, WorkError> {
        let case = self.case;
        let recorded = case.recorded_counts().filter(|recorded| recorded != counts);
        let weight = case.weight()?;
        let costs = unless_stopped(stop, |stop| {
            let (recorded, told) = (recorded.as_deref(), (counts, prediction));
            fitting::costs(&self.client, &case.cushion, weight, recorded, told, stop)
        })?;
        costs.map_err(|error| case.no_body(error))
    }
}

/// What hands found on a cushion, by a client's record: each round with the cells that lay in it then,
/// in the pattern's order. What was found before the layout or the cell was changed says nothing.
pub(crate) fn found_on(
    client: &Client,
    pattern: &Pattern,
    identity: &CushionIdentity,
) -> Vec<(Vec<u32>, Vec<Check>)> {
    let rounds = client.rounds_found().into_iter();
    let rounds = rounds
        .filter(|own| identity.likeness(own.plan) == Likeness::Same && !own.checks.is_empty());
    let round = |own: case::RoundFound<'_>| {
        let cells = pattern.compartments().iter().map(|at| own.cells.get(&at.number));
        let counts: Option<Vec<u32>> = cells.map(|count| count.copied()).collect();
        Some((counts?, own.checks.to_vec()))
    };
    rounds.filter_map(round).collect()
}

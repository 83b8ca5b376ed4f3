//! One client's case, opened: the file with everything that it names.

use std::sync::{Arc, OnceLock};

use case::text::TextFinding;
use case::{
    Amount, BodyError, Caution, Change, Client, CountedFrom, CushionIdentity, Date, Likeness,
    OtherCushion, Plan, PlanRefusal, PlannedCount, Prediction, RecordedPlan, Taught, Trouble,
};
use cushion::{Cell, Layout, Mass, Pattern};
use files::{Remark, Severity};
use fitting::{CutThrough, PlanInput, PreparedCushion, Progress};
use mechanics::Stop;

use crate::error::{Whose, WorkError};
use crate::prepared_cushions::PreparedCushions;
use crate::sourced::{Sourced, pattern};
use crate::stock::no_stock;
use crate::stopping::unless_stopped;
use crate::surroundings::Surroundings;

/// A client's case, ready to be planned.
pub struct OpenCase {
    /// The client's file.
    pub client: Sourced<Client>,
    /// The layout that it names.
    pub layout: Sourced<Layout>,
    /// The cell that it names.
    pub cell: Sourced<Cell>,
    /// The layout at the client's size.
    pub pattern: Pattern,
    /// The pattern with its stock fill and meshes.
    pub cushion: Arc<PreparedCushion>,
    /// The cushion that the client sat on before, or sits on beside this one.
    pub other: Option<OtherCushion>,
    /// The file that the client's file names as that of the first cushion, as it was read.
    pub first_file: Option<String>,
    /// What hands found on this cushion teaches, once it was worked out.
    pub(crate) learnt: OnceLock<Option<Taught>>,
}

/// The counts that the cushion has now.
#[derive(Clone, Debug, PartialEq)]
pub struct CountsNow {
    /// One for each compartment, in the pattern's order.
    pub counts: Vec<u32>,
    /// The day on which they were recorded; none where a fresh plan has them.
    pub recorded_on: Option<Date>,
    /// How they are known; none where a fresh plan has them.
    pub from: Option<CountedFrom>,
}

impl OpenCase {
    /// Reads a client's file and what it names, and finds the stock fill.
    ///
    /// # Errors
    ///
    /// Fails where one of the files cannot be used.
    pub fn open(surroundings: Surroundings<'_>, name: &str) -> Result<Self, WorkError> {
        Self::of(surroundings, surroundings.client(name)?)
    }

    /// The same with cushions that were prepared before.
    ///
    /// # Errors
    ///
    /// As [`Self::open`].
    pub fn open_with(
        cushions: &PreparedCushions,
        surroundings: Surroundings<'_>,
        name: &str,
    ) -> Result<Self, WorkError> {
        Self::made(cushions, surroundings, surroundings.client(name)?)
    }

    /// The same for a client that was read already.
    ///
    /// # Errors
    ///
    /// As [`Self::open`].
    pub fn of(surroundings: Surroundings<'_>, client: Sourced<Client>) -> Result<Self, WorkError> {
        Self::made(&PreparedCushions::default(), surroundings, client)
    }

    /// The same where cushions are kept.
    pub(crate) fn made(
        cushions: &PreparedCushions,
        surroundings: Surroundings<'_>,
        client: Sourced<Client>,
    ) -> Result<Self, WorkError> {
        let mut layout = surroundings.layout_of(&client)?;
        let cell = surroundings.cell_of(&client)?;
        let pattern = pattern(&mut layout, client.value.cushion.size, &cell.value)?;
        let cushion = cushions
            .prepared(&pattern, &cell.value)
            .map_err(|error| no_stock(&layout, &pattern, error))?;
        let (other, first_file, learnt) = (None, None, OnceLock::new());
        let mut case = Self { client, layout, cell, pattern, cushion, other, first_file, learnt };
        case.learn_elsewhere(surroundings)?;
        Ok(case)
    }

    /// The names of the files that were read for it; what is built in has a name that is no
    /// file's.
    #[must_use]
    pub fn inputs(&self) -> Vec<&str> {
        let own = [&self.client.file.path, &self.layout.file.path, &self.cell.file.path];
        own.into_iter().chain(&self.first_file).map(String::as_str).collect()
    }

    /// By which the cushion is known again.
    #[must_use]
    pub fn identity(&self) -> CushionIdentity {
        let named = self.client.value.cushion.layout.to_string();
        identity_of(&named, &self.layout, &self.cell, &self.pattern)
    }

    /// Refuses a recorded plan that is for another cushion than the file now names.
    ///
    /// # Errors
    ///
    /// Fails where layout, size or compartments are others.
    pub fn is_for_this_cushion(&self, plan: &RecordedPlan) -> Result<(), WorkError> {
        let file = self.client.file.path.clone();
        let chosen = &self.client.value.cushion;
        let what = match self.identity().likeness(plan) {
            Likeness::Same | Likeness::Edited { .. } => return Ok(()),
            Likeness::OtherCompartments => Trouble::OtherCompartments { file },
            Likeness::Other => Trouble::OtherCushion {
                file,
                on: plan.on,
                was: (plan.layout.clone(), plan.size),
                now: (chosen.layout.to_string(), chosen.size),
            },
        };
        Err(WorkError::file(what))
    }

    /// Plans the counts for the client as hands found them to sit on this cushion, where they did,
    /// from what is in the cushion: what was recorded last for it, or the stock fill.
    ///
    /// # Errors
    ///
    /// Fails where a wanted change cannot be made, nothing is safe, or it was told to stop.
    pub fn plan(&self, on: Date, stop: Stop<'_>) -> Result<Plan, WorkError> {
        self.plan_and_tell(on, stop, Progress::none())
    }

    /// The same, telling at which stage it is.
    ///
    /// # Errors
    ///
    /// As [`Self::plan`].
    pub fn plan_and_tell(
        &self,
        on: Date,
        stop: Stop<'_>,
        progress: Progress<'_>,
    ) -> Result<Plan, WorkError> {
        let now = self.recorded_counts().unwrap_or_else(|| self.stock());
        self.decided(self.client.value.changes.clone(), &now, on, (stop, progress))
    }

    /// The plan with these changes wanted, for the client as found on this cushion.
    fn decided(
        &self,
        changes: Vec<Change>,
        now: &[u32],
        on: Date,
        (stop, progress): (Stop<'_>, Progress<'_>),
    ) -> Result<Plan, WorkError> {
        let plan = unless_stopped(stop, |stop| {
            let client = Client { changes, ..self.as_found(stop).client };
            let passed = fitting::passed_counts(&client, &self.pattern, &self.identity());
            let passed = passed.as_deref();
            let input = PlanInput { client: &client, stop, progress, passed, ..self.input(on) };
            fitting::plan(&input, now)
        })?;
        plan.map_err(|refusals| self.refused(&refusals))
    }

    fn stock(&self) -> Vec<u32> {
        self.cushion.stock().compartments.iter().map(|own| own.cells.stock).collect()
    }

    /// Judges counts of one's own as [`Self::plan`] judges those that it finds: by the same limits,
    /// goals and costs. One for each compartment, in the pattern's order.
    ///
    /// # Errors
    ///
    /// Fails where there is not one count for each compartment, where no such counts can be
    /// wanted, or it was told to stop.
    pub fn judged(&self, counts: &[u32], on: Date, stop: Stop<'_>) -> Result<Plan, WorkError> {
        let wanted = self.pattern.compartments().len();
        if counts.len() != wanted {
            return Err(WorkError::asked(Trouble::OtherCounts { given: counts.len(), wanted }));
        }
        let stock = self.stock();
        let fixed = self.pattern.compartments().iter().zip(&stock).zip(counts);
        let fixed = fixed.map(|((own, stock), count)| Change {
            compartment: own.id.clone(),
            amount: Amount::Cells((i64::from(*count) - i64::from(*stock)) as i32),
            reason: String::new(),
        });
        let now = self.recorded_counts().unwrap_or_else(|| stock.clone());
        let mut plan = self.decided(fixed.collect(), &now, on, (stop, Progress::none()))?;
        plan.counts.iter_mut().for_each(|count| count.reason = None);
        Ok(plan)
    }

    /// Returns the stock fill with the wanted changes, which takes no mechanics.
    ///
    /// # Errors
    ///
    /// As [`Self::plan`].
    pub fn with_changes(&self, on: Date) -> Result<Vec<PlannedCount>, WorkError> {
        fitting::with_changes(&self.input(on)).map_err(|refusals| self.refused(&refusals))
    }

    /// Returns what whoever sets the cushion up by a recorded plan should know.
    #[must_use]
    pub fn cautions(&self, plan: &RecordedPlan, on: Date) -> Vec<Caution> {
        fitting::cautions(&self.input(on), &as_planned(plan))
    }

    /// What was recorded last for this cushion, in the pattern's order.
    pub(crate) fn recorded_counts(&self) -> Option<Vec<u32>> {
        if let Some(plan) = self.client.value.latest_plan() {
            self.is_for_this_cushion(plan).ok()?;
        }
        self.counted().map(|own| own.1)
    }

    /// Returns the counts that the cushion has now: those that were put in, counted or moved last
    /// by the record, or those of a fresh plan where it has none.
    ///
    /// # Errors
    ///
    /// Fails where the record is about another cushion, or there is no fresh plan.
    pub fn counts_now(&self, on: Date, stop: Stop<'_>) -> Result<CountsNow, WorkError> {
        let client = &self.client.value;
        if let Some(recorded) = client.latest_plan() {
            self.is_for_this_cushion(recorded)?;
        }
        if let Some((now, counts)) = self.counted() {
            return Ok(CountsNow { counts, recorded_on: now.from.on(), from: Some(now.from) });
        }
        if let Some(now) = client.cushion_now() {
            return Err(self.is_in_another_cushion(&now));
        }
        let plan = self.plan(on, stop)?;
        let counts = plan.counts.iter().map(|count| count.planned).collect();
        Ok(CountsNow { counts, recorded_on: None, from: None })
    }

    /// What the record knows is in a cushion that is not this one.
    fn is_in_another_cushion(&self, now: &case::CushionNow) -> WorkError {
        let file = self.client.file.path.clone();
        let chosen = &self.client.value.cushion;
        let what = match (&now.cushion, now.from.on()) {
            (Some(was), Some(on)) if !now.is_in(chosen) => Trouble::OtherCushion {
                file,
                on,
                was: was.clone(),
                now: (chosen.layout.to_string(), chosen.size),
            },
            _ => Trouble::OtherCompartments { file },
        };
        WorkError::file(what)
    }

    /// Predicts what counts would do, as [`crate::AsFound::predict`] does.
    ///
    /// # Errors
    ///
    /// As there.
    pub fn predict(
        &self,
        counts: &[u32],
        stop: Stop<'_>,
    ) -> Result<(Prediction, Vec<CutThrough>), WorkError> {
        self.as_found(stop).predict(counts, stop)
    }

    /// Returns the client's weight.
    ///
    /// # Errors
    ///
    /// Fails where the file has none: nothing can be predicted without it.
    pub fn weight(&self) -> Result<Mass, WorkError> {
        let weighing = self.client.value.latest_weighing();
        let weight = weighing.map(|weighing| weighing.weight);
        weight.ok_or_else(|| WorkError::file(self.no_weight()))
    }

    /// The client has no weight.
    pub(crate) fn no_weight(&self) -> Trouble {
        Trouble::NoWeight { file: self.client.file.path.clone() }
    }

    /// Why the client's measures make no body.
    pub(crate) fn no_body(&self, error: BodyError) -> WorkError {
        WorkError::file(Trouble::NoBody { file: self.client.file.path.clone(), error })
    }

    /// What a plan is made from.
    fn input(&self, on: Date) -> PlanInput<'_> {
        PlanInput {
            client: &self.client.value,
            cushion: &self.cushion,
            passed: None,
            on,
            stop: Stop::never(),
            progress: Progress::none(),
        }
    }

    /// Why there is no plan: unsafe wishes first, else remarks on the client's file.
    fn refused(&self, refusals: &[PlanRefusal]) -> WorkError {
        if let Some(refusal) = refusals.iter().find(|refusal| refusal.why.is_unsafe()) {
            return WorkError::new(Whose::Clinician, Trouble::NotSafe(refusal.why.clone()));
        }
        let text = &self.client.file.text;
        let remark = |refusal: &PlanRefusal| {
            let place =
                refusal.compartment.as_ref().and_then(|id| files::place_of_change(text, id));
            Remark {
                severity: Severity::Error,
                span: place.unwrap_or_else(|| self.client.file.first_line()),
                finding: TextFinding::Trouble(Box::new(Trouble::NoPlan(refusal.why.clone()))),
            }
        };
        let mut file = self.client.file.clone();
        file.remarks.extend(refusals.iter().map(remark));
        WorkError::wrong_file(file)
    }
}

/// By which a cushion is known again, whose layout is named so.
pub(crate) fn identity_of(
    named: &str,
    layout: &Sourced<Layout>,
    cell: &Sourced<Cell>,
    pattern: &Pattern,
) -> CushionIdentity {
    let compartments = pattern.compartments().iter();
    CushionIdentity {
        layout: named.to_owned(),
        layout_digest: layout.digest(),
        cell_digest: cell.digest(),
        size: pattern.size(),
        compartments: compartments.map(|own| (own.id.clone(), own.number)).collect(),
    }
}

/// The counts of a recorded plan as a plan has them.
fn as_planned(recorded: &RecordedPlan) -> Vec<PlannedCount> {
    let count = |count: &case::RecordedCount| PlannedCount {
        id: count.id.clone(),
        number: count.number,
        stock: count.stock,
        planned: count.planned,
        reason: None,
    };
    recorded.counts.iter().map(count).collect()
}

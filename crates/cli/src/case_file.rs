//! A client's file with everything that it names: layout, cell, pattern, stock fill.

use std::path::Path;

use case::{Caution, Client, Date, Plan, PlannedCount, RecordedCount, RecordedPlan};
use cushion::{Cell, Layout, Mass, Pattern};
use files::{Finding, Remark, Severity};
use fitting::{FOR_THE_GOALS, PlanInput, PreparedCushion, Refusal, Spacings};
use mechanics::BodyError;

use crate::failure::{Failure, Kind};
use crate::papers;
use crate::plugins::Session;
use crate::resolve::{self, Sourced};
use crate::run::PROGRAM;
use crate::stock;

/// A client's case, ready to be planned.
pub(crate) struct CaseFile {
    pub(crate) client: Sourced<Client>,
    pub(crate) layout: Sourced<Layout>,
    pub(crate) cell: Sourced<Cell>,
    pub(crate) pattern: Pattern,
    pub(crate) cushion: PreparedCushion,
}

impl CaseFile {
    /// Reads a client's file and what it names, and finds the stock fill.
    ///
    /// # Errors
    ///
    /// Fails where one of the files cannot be used.
    pub(crate) fn open(path: &Path, session: &Session<'_>) -> Result<Self, Failure> {
        let folder = path.parent().unwrap_or(Path::new(""));
        Self::of(resolve::client(path)?, folder, session)
    }

    /// The same for a client that was read already, and names its files from `folder`.
    pub(crate) fn of(
        client: Sourced<Client>,
        folder: &Path,
        session: &Session<'_>,
    ) -> Result<Self, Failure> {
        let mut layout = resolve::layout_of(&client, folder, session)?;
        let cell = resolve::cell_of(&client, folder)?;
        let pattern = resolve::pattern(&mut layout, client.value.cushion.size)?;
        let cushion = PreparedCushion::new(&pattern, &cell.value, Spacings::default())
            .map_err(|error| stock::none(&layout, &pattern, &error))?;
        Ok(Self { client, layout, cell, pattern, cushion })
    }

    /// Plans the counts for the client, from what is in the cushion: what was recorded last for
    /// it, or the stock fill.
    ///
    /// # Errors
    ///
    /// Fails where a wanted change cannot be made, or nothing is safe.
    pub(crate) fn plan(&self, on: Date) -> Result<Plan, Failure> {
        let recorded = self.recorded_counts();
        let stock = || {
            let all = self.pattern.indices();
            all.map(|ix| self.cushion.stock()[ix].cells.stock).collect()
        };
        let now: Vec<u32> = recorded.unwrap_or_else(stock);
        fitting::plan(&self.input(on), &now).map_err(|refusals| self.refused(&refusals))
    }

    /// Returns the stock fill with the wanted changes, which takes no mechanics.
    ///
    /// # Errors
    ///
    /// As [`Self::plan`].
    pub(crate) fn with_changes(&self, on: Date) -> Result<Vec<PlannedCount>, Failure> {
        fitting::with_changes(&self.input(on)).map_err(|refusals| self.refused(&refusals))
    }

    /// Returns what whoever sets the cushion up by a recorded plan should know.
    pub(crate) fn cautions(&self, plan: &RecordedPlan, on: Date) -> Vec<Caution> {
        fitting::cautions(&self.input(on), &papers::as_planned(plan))
    }

    /// What the setup card says beyond counts and checks, for the counts that were recorded.
    pub(crate) fn extras(&self, plan: &RecordedPlan) -> sheets::SetupExtras {
        let Ok(weight) = self.weight() else { return sheets::SetupExtras::default() };
        let counts: Vec<u32> = plan.counts.iter().map(|own| own.planned).collect();
        let reference = fitting::reference(&self.client.value, &self.cushion, weight, &counts);
        let Some(reference) = reference else { return sheets::SetupExtras::default() };
        let if_then = reference.if_then.into_iter().map(|own| sheets::IfThen {
            finding: own.finding,
            then: own.then,
            cost: own.cost,
        });
        sheets::SetupExtras {
            goals: reference.goals,
            moves: reference.moves,
            if_then: if_then.collect(),
        }
    }

    /// The counts of the plan recorded last, in the pattern's order, where it is for this cushion.
    fn recorded_counts(&self) -> Option<Vec<u32>> {
        let recorded = self.client.value.latest_plan()?;
        papers::is_for_this_cushion(self, recorded).ok()?;
        let of = |id| recorded.counts.iter().find(|own| own.id == id).map(|own| own.planned);
        self.pattern.compartments().iter().map(|own| of(own.id.clone())).collect()
    }

    /// Returns the counts that the cushion has now, in the pattern's order, and whence: those
    /// recorded last, or those of a fresh plan where none are.
    ///
    /// # Errors
    ///
    /// Fails where the recorded plan is for another cushion, or there is no fresh plan.
    pub(crate) fn counts_now(&self, on: Date) -> Result<(Vec<u32>, String), Failure> {
        if let Some(recorded) = self.client.value.latest_plan() {
            papers::is_for_this_cushion(self, recorded)?;
            if let Some(counts) = self.recorded_counts() {
                return Ok((counts, format!("counts recorded on {}", recorded.on)));
            }
            let shown = self.client.file.shown();
            return Err(Failure::file(format!(
                "the plan recorded last in {shown} has other compartments than its layout"
            ))
            .hint("the layout was changed; record a new plan"));
        }
        let plan = self.plan(on)?;
        let counts = plan.counts.iter().map(|count| count.planned).collect();
        Ok((counts, "counts of a plan that is not recorded".to_owned()))
    }

    /// Returns the client's weight.
    ///
    /// # Errors
    ///
    /// Fails where the file has none: nothing can be predicted without it.
    pub(crate) fn weight(&self) -> Result<Mass, Failure> {
        let weighing = self.client.value.latest_weighing();
        weighing.map(|weighing| weighing.weight).ok_or_else(|| {
            let shown = self.client.file.shown();
            Failure::file(format!(
                "{shown} has no body weight, and nothing can be predicted without it"
            ))
            .hint("weigh the client and add [weight] with `kg = ...` and `weighed_on = ...`")
        })
    }

    /// Why the client's measures make no body.
    pub(crate) fn no_body(&self, error: &BodyError) -> Failure {
        Failure::file(format!("the measures in {} make no body: {error}", self.client.file.shown()))
            .hint("check that measure, and those near it")
    }

    /// What a plan is made from.
    fn input(&self, on: Date) -> PlanInput<'_> {
        PlanInput { client: &self.client.value, cushion: &self.cushion, on }
    }

    /// Why there is no plan: unsafe wishes first, else remarks on the client's file.
    fn refused(&self, refusals: &[Refusal]) -> Failure {
        if let Some(refusal) = refusals.iter().find(|refusal| refusal.kind.is_unsafe()) {
            return Failure::new(Kind::NotSafe, format!("not safely possible: {}", refusal.kind))
                .hint(refusal.kind.advice());
        }
        let text = &self.client.file.text;
        let remark = |refusal: &Refusal| {
            let place =
                refusal.compartment.as_ref().and_then(|id| files::place_of_change(text, id));
            Remark {
                severity: Severity::Error,
                span: place.unwrap_or_else(|| self.client.file.first_line()),
                finding: Finding::Said {
                    message: refusal.kind.to_string(),
                    hint: Some(refusal.kind.advice()),
                },
            }
        };
        let mut file = self.client.file.clone();
        file.remarks.extend(refusals.iter().map(remark));
        Failure::wrong_file(file)
    }

    /// Returns the entry by which a plan is recorded.
    pub(crate) fn recorded(&self, plan: &Plan, on: Date, by: &str) -> RecordedPlan {
        let count = |count: &PlannedCount| RecordedCount {
            id: count.id.clone(),
            number: count.number,
            stock: count.stock,
            planned: count.planned,
        };
        let chosen = &self.client.value.cushion;
        RecordedPlan {
            on,
            by: by.to_owned(),
            layout: chosen.layout.to_string(),
            size: chosen.size,
            counts: plan.counts.iter().map(count).collect(),
            program: PROGRAM.to_owned(),
            layout_digest: self.layout.digest(),
            cell_digest: self.cell.digest(),
            parameters_digest: stock::parameters_digest(),
            drawn_by: self.layout.drawn_by.clone(),
            why: why(plan),
        }
    }
}

/// Why a plan has its counts: its goals and changes, in a sentence.
fn why(plan: &Plan) -> Option<String> {
    let goals = plan.goals.iter().map(|goal| {
        let met = if goal.met { "" } else { " (not reached)" };
        format!("{}{met}", goal.words)
    });
    let changes = plan.counts.iter().filter_map(|count| count.reason.clone());
    let changes = changes.filter(|reason| reason != FOR_THE_GOALS);
    let all: Vec<String> = goals.chain(changes).collect();
    (!all.is_empty()).then(|| all.join("; "))
}

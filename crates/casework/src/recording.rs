//! The record: what is added to a client's file, by one policy for all commands.
//!
//! Plans and moves are proposals; `done` adds what was done. What is not safe is never recorded as a
//! plan. What hands found is a fact and always recorded, but for answers that do not go together.

use case::{
    Adjustment, BrokenLimit, Check, Client, CountReason, Date, Drawn, Entry, Expected, GoalOutcome,
    NotDrawn, Plan, PlannedCount, Prediction, RecordedCount, RecordedPlan, Sides, Trouble, Want,
};
use fitting::Adjusted;
use words::Language;

use crate::PROGRAM;
use crate::error::WorkError;
use crate::open_case::OpenCase;
use crate::shelf::{Change, Shelf};
use crate::stock::parameters_digest;

/// Who records, and why, in their own words.
#[derive(Clone, Copy, Debug)]
pub struct Recorder<'a> {
    /// Who: initials or a role.
    pub by: &'a str,
    /// Why, in a sentence.
    pub because: Option<&'a str>,
    /// The day.
    pub on: Date,
    /// The language in which reasons are written down.
    pub language: &'a dyn Language,
}

/// Whether a plan may be recorded: all limits are kept, and no unhealed site gets more, or waits for
/// relief that the plan does not bring; unless that was taken by name. Other goals may fall short, and
/// are told.
#[must_use]
pub fn plan_stands(plan: &Plan, client: &Client, nearest_safe: bool) -> bool {
    limits_stand(&plan.not_safe, nearest_safe)
        && (nearest_safe || short_for_injuries(plan, client).is_empty())
}

/// The goals that are to take load off an unhealed site, and are not met.
#[must_use]
pub fn short_for_injuries(plan: &Plan, client: &Client) -> Vec<GoalOutcome> {
    let unhealed = client.skin.unhealed();
    let waits = |goal: &&GoalOutcome| match goal.want {
        Want::OffLoad { site, .. } => !goal.met && unhealed.contains(&site),
        _ => false,
    };
    plan.goals.iter().filter(waits).cloned().collect()
}

/// Whether the counts of an adjustment may be recorded as a plan; `nearest_safe` takes by name what an
/// unhealed site gets more.
#[must_use]
pub fn adjustment_stands(adjusted: &Adjusted, nearest_safe: bool) -> bool {
    limits_stand(&adjusted.not_safe, nearest_safe)
}

fn limits_stand(not_safe: &[BrokenLimit], nearest_safe: bool) -> bool {
    not_safe.iter().all(|limit| nearest_safe && limit.may_be_taken())
}

impl OpenCase {
    /// Whether there are goals and no weight: nothing was planned for them then, and a plan is
    /// not for what is wanted.
    #[must_use]
    pub fn has_goals_and_no_weight(&self) -> bool {
        let client = &self.client.value;
        !client.goals.is_empty() && client.latest_weighing().is_none()
    }

    /// Adds a plan to the end of the client's file; returns whether it stands, and so was added.
    ///
    /// # Errors
    ///
    /// Fails where nobody signs it, or the file cannot be written, or was changed since it was
    /// read; nothing is written then.
    pub fn record_plan(
        &self,
        shelf: &dyn Shelf,
        plan: &Plan,
        nearest_safe: bool,
        recorder: &Recorder<'_>,
    ) -> Result<bool, WorkError> {
        recorder.signed()?;
        if self.has_goals_and_no_weight() || !plan_stands(plan, &self.client.value, nearest_safe) {
            return Ok(false);
        }
        let recorded =
            RecordedPlan { why: self.why(plan, recorder), ..self.recorded(&plan.counts, recorder) };
        let recorded =
            RecordedPlan { expected: self.expected(plan.prediction.as_ref()), ..recorded };
        let text = self.with(&self.client.file.text, &Entry::Plan(recorded))?;
        self.put(shelf, text).map(|()| true)
    }

    /// Adds what was found and moved to the end of the client's file, and the counts after it as a
    /// plan, where they are safe and others; returns whether anything was added.
    ///
    /// # Errors
    ///
    /// As [`Self::record_plan`].
    pub fn record_adjustment(
        &self,
        shelf: &dyn Shelf,
        checks: &[Check],
        adjusted: &Adjusted,
        nearest_safe: bool,
        recorder: &Recorder<'_>,
    ) -> Result<bool, WorkError> {
        recorder.signed()?;
        if !adjusted.doubts.is_empty() && adjusted.alarms.is_empty() {
            return Ok(false);
        }
        let stands = adjustment_stands(adjusted, nearest_safe);
        let moves = if stands { adjusted.moves.clone() } else { Vec::new() };
        let first = self.client.value.latest_plan().is_none();
        let adjustment = Adjustment {
            on: recorder.on,
            by: recorder.by.trim().to_owned(),
            checks: checks.to_vec(),
            moves,
            why: recorder.because.map(str::to_owned),
        };
        let mut text = self.with(&self.client.file.text, &Entry::Adjustment(adjustment))?;
        if stands && (first || !adjusted.moves.is_empty()) {
            let language = recorder.language.with_lengths_in(self.client.value.lengths);
            let why = Some(language.after_checks(checks));
            let counts = self.counts_after(adjusted);
            let expected = self.expected(Some(&adjusted.prediction));
            let recorded = RecordedPlan { why, expected, ..self.recorded(&counts, recorder) };
            text = self.with(&text, &Entry::Plan(recorded))?;
        }
        self.put(shelf, text).map(|()| true)
    }

    /// Replaces the client's file by a text that was made from it, unless it was changed meanwhile.
    fn put(&self, shelf: &dyn Shelf, text: String) -> Result<(), WorkError> {
        let file = &self.client.file;
        let change = Change::of(&file.path, file.text.as_bytes(), text.into_bytes());
        Ok(shelf.put(&[change])?)
    }

    /// A text with one more entry in its record.
    fn with(&self, text: &str, entry: &Entry) -> Result<String, WorkError> {
        let file = || self.client.file.path.clone();
        let failed = |why| WorkError::file(Trouble::NotAppended { file: file(), why });
        files::append_entry(text, entry).map_err(failed)
    }

    /// What a prediction expects, for the checks after it; none without one at rest.
    #[must_use]
    pub fn expected(&self, prediction: Option<&Prediction>) -> Option<Expected> {
        let seat = prediction?.seated.as_ref()?;
        let under =
            Sides { left: seat.clearance.left.central, right: seat.clearance.right.central };
        let lower = seat.lower_side.map(|side| (side, seat.lower_by));
        let weight = self.client.value.latest_weighing()?.weight;
        Some(Expected { under, lower, weight })
    }

    fn counts_after(&self, adjusted: &Adjusted) -> Vec<PlannedCount> {
        let counts = self.pattern.indices().zip(&adjusted.counts);
        let count = |(ix, count): (cushion::CompartmentIx, &u32)| PlannedCount {
            id: self.pattern[ix].id.clone(),
            number: self.pattern[ix].number,
            stock: self.cushion.stock()[ix].cells.stock,
            planned: *count,
            reason: None,
        };
        counts.map(count).collect()
    }

    /// Why a plan has its counts: as whoever records it says, or else its goals and changes.
    fn why(&self, plan: &Plan, recorder: &Recorder<'_>) -> Option<String> {
        let language = recorder.language.with_lengths_in(self.client.value.lengths);
        let said = recorder.because.map(str::to_owned);
        said.or_else(|| language.plan_reason(&plan.goals, &wishes(plan)))
    }

    /// The entry by which counts are recorded as a plan.
    fn recorded(&self, counts: &[PlannedCount], recorder: &Recorder<'_>) -> RecordedPlan {
        let count = |count: &PlannedCount| RecordedCount {
            id: count.id.clone(),
            number: count.number,
            stock: count.stock,
            planned: count.planned,
        };
        let identity = self.identity();
        RecordedPlan {
            on: recorder.on,
            by: recorder.by.trim().to_owned(),
            layout: identity.layout,
            size: identity.size,
            counts: counts.iter().map(count).collect(),
            program: PROGRAM.to_owned(),
            layout_digest: identity.layout_digest,
            cell_digest: identity.cell_digest,
            parameters_digest: parameters_digest(),
            drawn_by: self.layout.drawn_by.clone(),
            why: None,
            expected: None,
        }
    }
}

impl Recorder<'_> {
    /// Refuses a name or a reason that is empty, has a line break, or cannot be printed.
    pub(crate) fn signed(&self) -> Result<(), WorkError> {
        let spoilt = |words: &str| words.trim().is_empty() || words.chars().any(char::is_control);
        if spoilt(self.by) || self.because.is_some_and(spoilt) {
            return Err(WorkError::asked(Trouble::NotSigned));
        }
        // What was recorded stands for good: what papers cannot show is told before.
        for words in std::iter::once(self.by).chain(self.because) {
            if let Some(character) = words.chars().find(|own| !sheets::is_printable(*own)) {
                let why = NotDrawn::Missing { character, text: words.to_owned() };
                return Err(WorkError::asked(Trouble::NotDrawn { what: Drawn::Words, why }));
            }
        }
        Ok(())
    }
}

/// The wishes behind the fixed changes of a plan.
fn wishes(plan: &Plan) -> Vec<&str> {
    let reasons = plan.counts.iter().filter_map(|count| count.reason.as_ref());
    reasons
        .filter_map(|reason| match reason {
            CountReason::Wish(wish) => Some(wish.as_str()),
            CountReason::Goals => None,
        })
        .collect()
}

//! How far a cushion is filled: kept in the client's file, compartment by compartment, until the
//! fill is recorded or given up.

use case::{Filling, Likeness, RecordedPlan, Trouble};

use crate::error::WorkError;
use crate::open_case::OpenCase;
use crate::recording::Recorder;
use crate::shelf::{Change, Shelf};

impl OpenCase {
    /// The plan that was recorded last, where its counts can be put into this cushion.
    #[must_use]
    pub fn fillable_plan(&self) -> Option<&RecordedPlan> {
        let plan = self.client.value.latest_plan()?;
        let likeness = self.identity().likeness(plan);
        matches!(likeness, Likeness::Same | Likeness::Edited { .. }).then_some(plan)
    }

    /// Whether somebody recorded what is in this cushion.
    #[must_use]
    pub fn is_filled(&self) -> bool {
        let now = self.client.value.cushion_now();
        now.is_some_and(|now| now.from.is_told() && now.is_in(&self.client.value.cushion))
    }

    /// Keeps how many cells were put into the next compartment and counted twice; returns whether
    /// `number` is the next. The first begins the fill, in place of one that is not gone on with.
    ///
    /// # Errors
    ///
    /// Fails where nobody signs a fill that begins, or the file cannot be written, or was changed
    /// since it was read; nothing is written then.
    pub fn keep_counted(
        &self,
        shelf: &dyn Shelf,
        number: u8,
        cells: u32,
        recorder: &Recorder<'_>,
    ) -> Result<bool, WorkError> {
        let Some(plan) = self.fillable_plan() else { return Ok(false) };
        let mut filling = match self.client.value.filling_goes_on() {
            Some(own) => own.clone(),
            None => {
                recorder.signed()?;
                let by = recorder.by.trim().to_owned();
                Filling::of(plan, recorder.on, by, self.client.value.record.len())
            }
        };
        let next = filling.counts.iter_mut().find(|own| own.put.is_none());
        let Some(next) = next.filter(|own| own.number == number) else { return Ok(false) };
        next.put = Some(cells);
        self.put_filling(shelf, Some(&filling)).map(|()| true)
    }

    /// Takes back the count of one compartment, which is the next then; without any count, the fill is
    /// given up. The others stay.
    ///
    /// # Errors
    ///
    /// Fails where the file cannot be written, or was changed since it was read.
    pub fn count_again(&self, shelf: &dyn Shelf, number: u8) -> Result<(), WorkError> {
        let Some(mut filling) = self.client.value.filling_goes_on().cloned() else { return Ok(()) };
        if let Some(own) = filling.counts.iter_mut().find(|own| own.number == number) {
            own.put = None;
        }
        let is_begun = filling.counts.iter().any(|own| own.put.is_some());
        self.put_filling(shelf, is_begun.then_some(&filling))
    }

    /// Takes away what the file says of a fill that was begun.
    ///
    /// # Errors
    ///
    /// As [`Self::count_again`].
    pub fn give_fill_up(&self, shelf: &dyn Shelf) -> Result<(), WorkError> {
        self.put_filling(shelf, None)
    }

    fn put_filling(&self, shelf: &dyn Shelf, filling: Option<&Filling>) -> Result<(), WorkError> {
        let file = &self.client.file;
        let failed = |why| WorkError::file(Trouble::NotAppended { file: file.path.clone(), why });
        let text = files::with_filling(&file.text, filling).map_err(failed)?;
        let change = Change::of(&file.path, file.text.as_bytes(), text.into_bytes());
        Ok(shelf.put(&[change])?)
    }
}

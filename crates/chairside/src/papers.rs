//! Papers that were composed last, so that a page of one is not made anew for each look.

use std::sync::{Arc, Mutex, PoisonError};

use case::{Date, SinceRecorded};
use casework::{Edition, Exported, OpenCase, Wanted, WorkError};

use crate::house::House;

/// What papers were made from.
#[derive(Clone, PartialEq, Eq)]
struct Of {
    name: String,
    digest: case::Digest,
    layout: case::Digest,
    on: Date,
}

/// The papers that were made last.
#[derive(Default)]
pub(crate) struct PaperStore(Mutex<Option<(Of, Arc<Made>)>>);

/// Papers as files, with what is to be said of them.
pub(crate) struct Made {
    /// All files: PDFs and drawings of pages.
    pub(crate) files: Vec<Exported>,
    /// What changed since the counts were recorded.
    pub(crate) since: Vec<SinceRecorded>,
    /// By what they are known again.
    pub(crate) mark: case::PlanMark,
    /// Why some could not be made.
    pub(crate) not_made: Vec<WorkError>,
}

impl PaperStore {
    /// The papers of a case on a day.
    pub(crate) fn of(
        &self,
        house: &House,
        case: &OpenCase,
        on: Date,
    ) -> Result<Arc<Made>, WorkError> {
        let of = Of {
            name: case.client.file.path.clone(),
            digest: case.client.digest(),
            layout: case.layout.digest(),
            on,
        };
        let known = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some((_, made)) = known.as_ref().filter(|own| own.0 == of) {
            return Ok(Arc::clone(made));
        }
        drop(known);
        let (language, paper) = (house.language(), house.settings.paper);
        let edition = Edition { language, on, paper, large_print: false, client_in_code: false };
        let papers = case.papers(edition)?;
        let (mark, since) = (papers.mark.clone(), papers.since_recorded.clone());
        let prefix = casework::prefix(&case.client.value.code, &mark);
        let named = papers.papers.with_prefix(&prefix);
        let files = casework::export(&named.made, Wanted::default())?;
        let made = Arc::new(Made { files, since, mark, not_made: named.not_made });
        *self.0.lock().unwrap_or_else(PoisonError::into_inner) = Some((of, Arc::clone(&made)));
        Ok(made)
    }
}

//! Work that is told to stop has no result.

use std::sync::atomic::{AtomicBool, Ordering};

use case::Trouble;
use mechanics::Stop;

use crate::error::WorkError;

/// Does work that may be told to stop. Of what it has by then nothing is handed on: a spread that
/// was broken off would look surer than it is.
///
/// Once the answer was to stop it stays so, whatever the question is answered with later.
///
/// # Errors
///
/// Fails where it was told to stop.
pub(crate) fn unless_stopped<T>(
    stop: Stop<'_>,
    work: impl FnOnce(Stop<'_>) -> T,
) -> Result<T, WorkError> {
    let stopped = AtomicBool::new(false);
    let question = || {
        // A flag that is only ever set needs no order among threads.
        if stop.is_wanted() {
            stopped.store(true, Ordering::Relaxed);
        }
        stopped.load(Ordering::Relaxed)
    };
    let done = work(Stop::when(&question));
    if stopped.into_inner() {
        return Err(WorkError::asked(Trouble::Stopped));
    }
    Ok(done)
}

//! What is asked of every command alike: where and how to answer, and as of which day.

use case::Date;

use crate::failure::Failure;
use crate::terminal::Terminal;
use crate::today;

/// What is asked of every command alike.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Setting {
    /// Where and how to answer.
    pub(crate) terminal: Terminal,
    /// The day that was asked for, if any.
    pub(crate) date: Option<Date>,
}

impl Setting {
    /// The day that is printed, recorded and judged by.
    ///
    /// # Errors
    ///
    /// As [`today::today`].
    pub(crate) fn today(self) -> Result<Date, Failure> {
        today::today(self.date)
    }
}

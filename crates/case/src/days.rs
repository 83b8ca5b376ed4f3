//! Days between dates.

use jiff::ToSpan as _;

use crate::Date;

/// Returns the days from one date to another; negative where the other is earlier.
#[must_use]
pub fn days_between(from: Date, to: Date) -> i32 {
    (to - from).get_days()
}

/// Returns the date so many days after another; the same where no date holds it.
#[must_use]
pub fn day_after(date: Date, days: i32) -> Date {
    date.checked_add(days.days()).unwrap_or(date)
}

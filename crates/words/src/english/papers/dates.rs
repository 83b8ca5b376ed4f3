//! English: days.

use case::Date;

const MONTHS: [&str; 12] = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];

/// A day as people say it.
pub(in crate::english) fn day(date: Date) -> String {
    let month = MONTHS[date.month().unsigned_abs() as usize - 1];
    format!("{}\u{a0}{month}\u{a0}{}", date.day(), date.year())
}

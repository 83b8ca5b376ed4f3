//! Spanish: days.

use case::Date;

const MONTHS: [&str; 12] = [
    "enero",
    "febrero",
    "marzo",
    "abril",
    "mayo",
    "junio",
    "julio",
    "agosto",
    "septiembre",
    "octubre",
    "noviembre",
    "diciembre",
];

/// A day as people say it.
pub(in crate::spanish) fn day(date: Date) -> String {
    let month = MONTHS[date.month().unsigned_abs() as usize - 1];
    format!("{}\u{a0}de\u{a0}{month}\u{a0}de\u{a0}{}", date.day(), date.year())
}

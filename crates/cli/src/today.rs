//! Today: the only place in the program that asks a clock.

use case::Date;
use jiff::{Timestamp, ZonedDateTime, tz::TimeZone};
use words::CallFault;

use crate::failure::Failure;

/// Returns the date to print and record: the one asked for, else that of `SOURCE_DATE_EPOCH`
/// (seconds since 1970, read in UTC, as reproducible builds set it), else today's.
///
/// # Errors
///
/// Fails where `SOURCE_DATE_EPOCH` is set and is no such number.
pub(crate) fn today(asked: Option<Date>) -> Result<Date, Failure> {
    match (asked, std::env::var_os("SOURCE_DATE_EPOCH")) {
        (Some(date), _) => Ok(date),
        (None, Some(epoch)) => {
            let epoch = epoch.to_string_lossy();
            of_epoch(&epoch).ok_or_else(|| Failure::call(&CallFault::NoEpoch { epoch: &epoch }))
        }
        (None, None) => Ok(ZonedDateTime::now().date()),
    }
}

/// Reads seconds since 1970 as a day in UTC.
fn of_epoch(text: &str) -> Option<Date> {
    let seconds: i64 = text.parse().ok()?;
    Some(TimeZone::UTC.to_datetime(Timestamp::from_second(seconds).ok()?).date())
}

/// Reads a day written as `2026-03-01`, for the argument parser.
pub(crate) fn day(text: &str) -> Result<Date, String> {
    let rule = || "a day is written as year, month and day: 2026-03-01".to_owned();
    let plain = text.len() == 10 && text.bytes().all(|byte| byte.is_ascii_digit() || byte == b'-');
    if plain { text.parse().map_err(|_| rule()) } else { Err(rule()) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_epoch_is_a_day_in_utc() {
        // 86 399 s is the last second of the first day, by the definition of the epoch.
        assert_eq!(of_epoch("86399"), "1970-01-01".parse().ok());
        assert_eq!(of_epoch("86400"), "1970-01-02".parse().ok());
        assert_eq!(of_epoch("soon"), None);
        assert_eq!(of_epoch("99999999999999999"), None);
    }

    #[test]
    fn a_day_is_written_in_one_way() {
        assert_eq!(day("2026-03-01").map(|date| date.to_string()), Ok("2026-03-01".into()));
        for bad in ["2026-02-30", "1.3.2026", "2026-3-1", "2026-03-01T10:00", ""] {
            assert!(day(bad).is_err(), "{bad}");
        }
    }
}

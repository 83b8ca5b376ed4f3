//! English: why a text is no check.

use case::{CHECK_KINDS, CheckError, Said, SiteName};

use super::said;

/// Why a text is no check, and what to write.
pub(super) fn no_check(error: &CheckError) -> Said {
    match error {
        CheckError::NotACheck(written) => said(
            format!("`{written}` is no check"),
            format!("write {} and {}", CHECK_KINDS[0], example(CHECK_KINDS[0])),
        ),
        CheckError::NoSuchCheck(written) => said(
            format!("no check is called `{written}`"),
            format!("there are {}", CHECK_KINDS.join(", ")),
        ),
        CheckError::NotAnAnswer { kind, written } => said(
            match *kind {
                "skin" => format!("`{written}` is no answer to a look at the skin"),
                kind => format!("`{written}` is no answer to a {kind} check"),
            },
            format!("write {}", example(kind)),
        ),
        CheckError::NotASide(written) => {
            said(format!("`{written}` is no side"), "write left or right")
        }
        CheckError::NotALandmark(written) => said(
            format!("`{written}` is no place at which the lower side is found"),
            "write asis, for the front of the pelvis, or seat-bones",
        ),
        CheckError::NotANumber(written) => said(
            format!("`{written}` is not the number of a compartment"),
            format!("write {}", example("press")),
        ),
        CheckError::NotASite(written) => {
            let known: Vec<&str> = SiteName::ALL.iter().map(|site| site.id()).collect();
            said(format!("`{written}` is no site"), format!("there are {}", known.join(", ")))
        }
        CheckError::LengthWithoutUnit(written) => {
            said(format!("`{written}` has no unit"), "write it as 25mm or 1in")
        }
        CheckError::LengthRange { written, most_mm } => said(
            format!("`{written}` cannot be right"),
            format!("it lies between 0 and {most_mm:.0} mm"),
        ),
        CheckError::PressureWithoutUnit(written) => {
            said(format!("`{written}` has no unit"), "write it as 48mmHg or 6.4kPa")
        }
        CheckError::PressureRange { written, least_mmhg, most_mmhg } => said(
            format!("`{written}` cannot be right"),
            format!("it lies between {least_mmhg} and {most_mmhg} mmHg"),
        ),
    }
}

/// How an answer is written, by the word of its check.
fn example(kind: &str) -> &'static str {
    match kind {
        "top" => "left=safe, tight or pinched",
        "under" => "left=25mm, left=bone-felt or left=not-found",
        "press" => "3=slack, like or tight, with the compartment's number",
        "lower" => "left=8mm, or level",
        "skin" => "left-seat-bone=clear, fades, stays, open or worse",
        _ => "left-seat-bone=48mmHg or 6.4kPa",
    }
}

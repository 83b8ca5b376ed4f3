//! English: why what was done is not recorded.

use case::{NotDone, Said};

use super::said;
use crate::english::parts::{cells, list};

/// Why what was done is not recorded, and what to do.
pub(super) fn about(file: &str, why: &NotDone) -> Said {
    match why {
        NotDone::NoCountFor(numbers) => said(
            format!("no count is given for number {}", list(&words(numbers))),
            "count each compartment, and give 0 where it is empty",
        ),
        NotDone::CountedTwice(number) => {
            said(format!("number {number} is counted twice"), "give one count for each compartment")
        }
        NotDone::NoSuchNumber { number, known } => said(
            format!("the cushion has no compartment number {number}"),
            format!("it has {}", list(&words(known))),
        ),
        NotDone::NothingPlanned => said(
            format!("`{file}` has no recorded plan for this cushion, so nothing can be as planned"),
            "say the count of each compartment, or record a plan first",
        ),
        NotDone::NothingProposed => said(
            format!("nothing is proposed in `{file}` that was not recorded as done"),
            "say which cells were moved",
        ),
        NotDone::FillGoesOn { counted, of } => fill_goes_on(file, [*counted, *of]),
        NotDone::NothingPutIn => said(
            format!("nobody recorded in `{file}` what was put into the cushion"),
            "record first what was filled in, counted, or as planned",
        ),
        NotDone::TooMany { number, there, moved } => said(
            format!(
                "{} cannot come out of number {number}: by the record it holds {}",
                cells(*moved),
                cells(*there)
            ),
            "count it again and record the recount first",
        ),
        NotDone::Nothing => said("nothing is said to have been done", "say what was done"),
        NotDone::NoSuchEntry { entry, there: 0 } => {
            said(format!("there is no entry {entry}: the record of `{file}` is empty"), "")
        }
        NotDone::NoSuchEntry { entry, there } => said(
            format!("there is no entry {entry} in the record of `{file}`"),
            format!("entries are counted from 1, the oldest first; the last is {there}"),
        ),
        NotDone::IsWithdrawn(entry) => said(format!("entry {entry} is withdrawn already"), ""),
        NotDone::HasNoCounts(entry) => said(
            format!("after entry {entry} it is not known what was in this cushion"),
            "take an entry of a fill, a recount, moves or a plan",
        ),
        NotDone::NoReason => said(
            "no reason was given, and so the entry was not withdrawn",
            "say why in one line: nothing is ever deleted, and somebody will ask",
        ),
    }
}

/// A check cannot pass while so many of all compartments are filled.
fn fill_goes_on(file: &str, [counted, of]: [usize; 2]) -> Said {
    said(
        format!("a fill was begun and is not recorded in `{file}`: {counted} of {of} compartments"),
        "record what is in the cushion before a check of it passes, or give the fill up",
    )
}

fn words(numbers: &[u8]) -> Vec<String> {
    numbers.iter().map(ToString::to_string).collect()
}

//! English: what is wrong with tables of bodies and parts of surveys.

use case::{Said, TableFault};

use super::said;
use crate::english::parts;

pub(super) fn table(file: &str, line: u64, fault: &TableFault) -> Said {
    let Said { message, hint } = fault_of_table(fault);
    Said { message: format!("{file}, line {line}: {message}"), hint }
}

pub(super) fn other_surveys(file: &str, first: &str) -> Said {
    said(
        format!(
            "`{file}` and `{first}` are of different surveys: of another layout, cell, table or options, or in another number of parts"
        ),
        "merge parts of one survey",
    )
}

pub(super) fn part_twice(file: &str, first: &str, part: usize) -> Said {
    said(format!("`{file}` and `{first}` are both part {part}"), "name each part once")
}

pub(super) fn parts_missing(missing: &[usize], of: usize) -> Said {
    let missing: Vec<String> = missing.iter().map(usize::to_string).collect();
    let noun = if missing.len() == 1 { "part" } else { "parts" };
    said(
        format!("of {of} parts, {noun} {} cannot be found in these tables", parts::list(&missing)),
        "name all parts; a survey is whole or not at all",
    )
}

pub(super) fn empty_part(file: &str) -> Said {
    said(format!("`{file}` has no rows, so nobody knows which part it is"), "run that part again")
}

pub(super) fn other_survey(file: &str) -> Said {
    said(
        format!(
            "`{file}` is of another survey: of another layout, cell, table or options, or another part"
        ),
        "name another file for the answer, or move that one away first",
    )
}

pub(super) fn body_twice(row: u32) -> Said {
    said(format!("body {row} is in two of the parts"), "name each part once")
}

pub(super) fn no_parts() -> Said {
    said("there is nothing in these parts", "name tables that a survey wrote")
}

fn fault_of_table(fault: &TableFault) -> Said {
    match fault {
        TableFault::NoColumn { name, wanted } => said(
            format!("there is no column `{name}`"),
            format!("a table of bodies has {}", wanted.join(", ")),
        ),
        TableFault::Cell { written, column, least, most } => said(
            format!("`{written}` cannot be right under {column}"),
            format!("it lies between {least} and {most}"),
        ),
        TableFault::NotARow(why) => said(
            format!("this is no row of the table: {why}"),
            "every row has as many cells as the heading",
        ),
        TableFault::NoSurvey => said(
            "this is no survey of this version",
            "name a table that a survey wrote, or another for the answer",
        ),
        TableFault::SurveyRow => {
            said("this row cannot be read", "it was changed by hand; run this part again")
        }
    }
}

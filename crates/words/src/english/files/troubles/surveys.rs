//! English: what is wrong with tables of bodies and parts of surveys.

use case::{Said, TableFault};

use super::said;

pub(super) fn table(file: &str, line: u64, fault: &TableFault) -> Said {
    let Said { message, hint } = fault_of_table(fault);
    Said { message: format!("{file}, line {line}: {message}"), hint }
}

pub(super) fn other_layouts(file: &str, layout: &str, others: &str) -> Said {
    said(
        format!("`{file}` is a survey of {layout}, the others are of {others}"),
        "merge parts of one survey",
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

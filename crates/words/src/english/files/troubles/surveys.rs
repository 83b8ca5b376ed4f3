//! English: what is wrong with tables of bodies and parts of surveys.

use case::{Said, TableFault, Trouble};

use super::{about as other, said};

pub(super) fn about(trouble: &Trouble) -> Said {
    match trouble {
        Trouble::Table { file, line, fault } => {
            let Said { message, hint } = table(fault);
            Said { message: format!("{file}, line {line}: {message}"), hint }
        }
        Trouble::PartsOfOtherLayouts { file, layout, others } => said(
            format!("`{file}` is a survey of {layout}, the others are of {others}"),
            "merge parts of one survey",
        ),
        Trouble::BodyTwice { row } => {
            said(format!("body {row} is in two of the parts"), "name each part once")
        }
        Trouble::NoParts => {
            said("there is nothing in these parts", "name tables that a survey wrote")
        }
        unlike => other(unlike),
    }
}

fn table(fault: &TableFault) -> Said {
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

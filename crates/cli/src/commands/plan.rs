//! `plan`: counts for a client, shown and perhaps recorded.

use case::{Date, Plan as Counts};

use crate::arguments::Plan;
use crate::case_file::CaseFile;
use crate::failure::Failure;
use crate::plugins::Session;
use crate::run::PROGRAM;
use crate::terminal::Terminal;
use crate::{tables, today, write};

/// Shows the plan for a client, as a table or in JSON, and records it where asked.
pub(crate) fn run(arguments: &Plan, terminal: Terminal) -> Result<(), Failure> {
    let on = today::today(arguments.day.date)?;
    let case = CaseFile::open(&arguments.client, &Session::new(&arguments.plugins))?;
    let plan = case.plan(on)?;
    if let Some(by) = &arguments.by {
        record(arguments, &case, &plan, on, by)?;
    }
    if arguments.json.json {
        let code = case.client.value.code.as_str();
        let report = files::report::plan(PROGRAM, code, &plan, arguments.record);
        return terminal.answer(&report);
    }
    terminal.warn(&plan.cautions);
    terminal.answer(&words(arguments, &case, &plan, terminal))
}

/// Adds the plan to the end of the client's file.
fn record(
    arguments: &Plan,
    case: &CaseFile,
    plan: &Counts,
    on: Date,
    by: &str,
) -> Result<(), Failure> {
    if by.trim().is_empty() || by.chars().any(char::is_control) {
        return Err(Failure::call("--by is empty, or has a line break in it")
            .hint("name who records the plan, by initials or role"));
    }
    let recorded = case.recorded(plan, on, by.trim());
    let text = files::append_plan(&case.client.file.text, &recorded)
        .map_err(|error| Failure::file(format!("{}: {error}", case.client.file.shown())))?;
    write::one(&arguments.client, text.into_bytes())
}

/// The plan as a table, with what to do next.
fn words(arguments: &Plan, case: &CaseFile, plan: &Counts, terminal: Terminal) -> String {
    let client = &case.client.value;
    let file = arguments.client.display();
    let mut words = format!(
        "{}: {}, {}\n\n{}\nSpare cells in the bag: {}.\n{}",
        client.code,
        case.pattern.title(),
        case.pattern.size(),
        tables::plan(plan),
        client.cushion.spare_cells,
        tables::ESTIMATE
    );
    words += &match (&arguments.by, terminal.is_read_by_a_person()) {
        (Some(by), _) => format!("Recorded in {file} by {}.\n", by.trim()),
        (None, true) => format!("Not recorded: seatwright plan {file} --record --by WHO\n"),
        (None, false) => String::new(),
    };
    words
}

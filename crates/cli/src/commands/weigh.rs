//! `weigh`: counting by weight, from a batch that was counted by hand and weighed that day.

use fitting::counting::Batch;

use crate::arguments::Weigh;
use crate::case_file::CaseFile;
use crate::failure::Failure;
use crate::plugins::Session;
use crate::tables;
use crate::terminal::Terminal;
use crate::today;

/// Shows the grams of each compartment's cells, with how sure a count by them is.
pub(crate) fn run(arguments: &Weigh, terminal: Terminal) -> Result<(), Failure> {
    let batch =
        Batch { cells: arguments.batch, grams: arguments.grams, division: arguments.division };
    let batch = batch.checked().map_err(|error| Failure::call(error.to_string()))?;
    let on = today::today(arguments.day.date)?;
    let case = CaseFile::open(&arguments.client, &Session::new(&arguments.plugins))?;
    let (counts, whence) = case.counts_now(on)?;
    let mut words = format!(
        "{}: {whence}; cells of {:.2} g by a batch of {}\n\n",
        case.client.value.code,
        batch.cell(),
        batch.cells
    );
    words += &tables::weighed(&case.pattern, &counts, &batch);
    words += "\nFor this batch, scale and day only: weigh a new batch another day. Weigh cells \
              without bag and vessel. Where a count matters, count.\n";
    terminal.answer(&words)
}

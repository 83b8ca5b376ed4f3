//! `weigh`: counting by weight, from a batch that was counted by hand and weighed that day.

use casework::OpenCase;
use fitting::counting::Batch;
use mechanics::Stop;

use crate::arguments::Weigh;
use crate::failure::Failure;
use crate::outside::{Outside, name};
use crate::tables;
use crate::terminal::Terminal;
use crate::today;

/// Shows the grams of each compartment's cells, with how sure a count by them is.
pub(crate) fn run(arguments: &Weigh, terminal: Terminal) -> Result<(), Failure> {
    let batch =
        Batch { cells: arguments.batch, grams: arguments.grams, division: arguments.division };
    let batch = batch.checked().map_err(|error| Failure::call(error.to_string()))?;
    let on = today::today(arguments.day.date)?;
    let outside = Outside::new(&arguments.plugins);
    let case = OpenCase::open(outside.surroundings(), &name(&arguments.client))?;
    let now = case.counts_now(on, Stop::never())?;
    let mut words = format!(
        "{}: {}; cells of {:.2} g by a batch of {}\n\n",
        case.client.value.code,
        words::ENGLISH.whence(now.recorded_on),
        batch.cell(),
        batch.cells
    );
    words += &tables::weighed(&case.weigh(&now, &batch));
    words += "\nFor this batch, scale and day only: weigh a new batch another day. Weigh cells \
              without bag and vessel. Where a count matters, count.\n";
    terminal.answer(&words)
}

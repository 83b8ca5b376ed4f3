//! `weigh`: counting by weight, from a batch that was counted by hand and weighed that day.

use case::Trouble;
use casework::{OpenCase, WorkError};
use fitting::counting::Batch;
use mechanics::Stop;
use words::ENGLISH;

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
    let batch = batch.checked().map_err(|error| WorkError::asked(Trouble::Batch(error)))?;
    let on = today::today(arguments.day.date)?;
    let outside = Outside::new(&arguments.plugins);
    let case = OpenCase::open(outside.surroundings(), &name(&arguments.client))?;
    let now = case.counts_now(on, Stop::never())?;
    let lines = [
        format!(
            "{}: {}; {}\n",
            case.client.value.code,
            ENGLISH.whence(now.recorded_on),
            ENGLISH.batch(batch.cells, batch.cell())
        ),
        tables::weighed(&case.weigh(&now, &batch)),
        ENGLISH.lines().grams_of_today.to_owned(),
    ];
    terminal.answer(&(lines.join("\n") + "\n"))
}

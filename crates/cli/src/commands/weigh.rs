//! `weigh`: counting by weight, from a batch that was counted by hand and weighed that day.

use case::Trouble;
use casework::{OpenCase, PROGRAM, WorkError};
use files::report::{self, WeighReport, WeighedCompartment};
use fitting::counting::Batch;
use mechanics::Stop;

use crate::arguments::Weigh;
use crate::failure::Failure;
use crate::outside::{Outside, name};
use crate::say;
use crate::setting::Setting;
use crate::tables;

/// Shows the grams of each compartment's cells, with how sure a count by them is.
pub(crate) fn run(arguments: &Weigh, setting: Setting) -> Result<(), Failure> {
    let batch =
        Batch { cells: arguments.batch, grams: arguments.grams, division: arguments.division };
    let batch = batch.checked().map_err(|error| WorkError::asked(Trouble::Batch(error)))?;
    let terminal = setting.terminal;
    let on = setting.today()?;
    let outside = Outside::new(&arguments.plugins);
    let case = OpenCase::open(outside.surroundings(), &name(&arguments.client))?;
    let now = case.counts_now(on, Stop::never())?;
    let weighed = case.weigh(&now, &batch);
    if terminal.is_json() {
        let compartments = weighed.iter().map(|own| WeighedCompartment {
            id: own.id.as_str(),
            number: own.number,
            cells: own.cells,
            grams: own.grams,
            plus_minus_cells: own.plus_minus,
        });
        let report = WeighReport {
            client: case.client.value.code.as_str(),
            recorded_on: now.recorded_on,
            batch: batch.cells,
            grams_of_one: batch.cell(),
            compartments: compartments.collect(),
        };
        return terminal.answer(&report::weigh(PROGRAM, report));
    }
    let lines = [
        format!(
            "{}: {}; {}\n",
            case.client.value.code,
            say::language().whence(now.recorded_on),
            say::language().batch(batch.cells, batch.cell())
        ),
        tables::weighed(&weighed),
        say::language().lines().grams_of_today.to_owned(),
    ];
    terminal.answer(&(lines.join("\n") + "\n"))
}

//! `weigh`: counting by weight, from a batch that was counted by hand and weighed that day.

use std::path::Path;

use case::Trouble;
use casework::{OpenCase, PROGRAM, WorkError};
use cushion::Size;
use files::report::{self, WeighReport, WeighedCompartment};
use fitting::counting::Batch;
use mechanics::Stop;
use words::CallFault;

use crate::arguments::Weigh;
use crate::failure::Failure;
use crate::outside::{Outside, name};
use crate::say;
use crate::setting::Setting;
use crate::tables;
use crate::terminal::Terminal;

/// Shows the grams of each compartment's cells, with how sure a count by them is.
pub(crate) fn run(arguments: &Weigh, setting: Setting) -> Result<(), Failure> {
    let batch =
        Batch { cells: arguments.batch, grams: arguments.grams, division: arguments.division };
    let batch = batch.checked().map_err(|error| WorkError::asked(Trouble::Batch(error)))?;
    let outside = Outside::new(&arguments.plugins);
    match (&arguments.client, &arguments.stock, arguments.size) {
        (Some(client), ..) => of_client(client, &batch, &outside, setting),
        (None, Some(layout), Some(size)) => {
            let cell = arguments.cell.as_deref();
            of_stock((layout, size, cell), &batch, &outside, setting.terminal)
        }
        _ => Err(Failure::call(&CallFault::NothingToWeigh)),
    }
}

fn of_client(
    client: &Path,
    batch: &Batch,
    outside: &Outside,
    setting: Setting,
) -> Result<(), Failure> {
    let on = setting.today()?;
    let case = OpenCase::open(outside.surroundings(), &name(client))?;
    let now = case.counts_now(on, Stop::never())?;
    let weighed = case.weigh(&now, batch);
    let code = case.client.value.code.as_str();
    let said = format!("{code}: {}", say::language().whence(now.recorded_on));
    let report = WeighReport {
        client: Some(code),
        stock: None,
        recorded_on: now.recorded_on,
        batch: batch.cells,
        grams_of_one: batch.cell(),
        compartments: reported(&weighed),
    };
    tell(setting.terminal, &said, report, (batch, &weighed))
}

fn of_stock(
    (layout, size, cell): (&str, Size, Option<&str>),
    batch: &Batch,
    outside: &Outside,
    terminal: Terminal,
) -> Result<(), Failure> {
    let mut layout = outside.surroundings().layout(layout, size)?;
    let cell = outside.surroundings().cell(cell)?;
    let pattern = casework::pattern(&mut layout, size, &cell.value)?;
    let fill = casework::stock_fill(&mut layout, &pattern, &cell.value)?;
    let weighed = casework::weigh_stock(&pattern, &fill, batch);
    terminal.warn(&say::not_rated(&pattern).iter().map(say::finding).collect::<Vec<_>>());
    let known = layout.digest();
    let (own, revision) = (layout.value.name.as_str(), layout.value.revision);
    let said =
        format!("{size} mm, {}", say::language().layout_known_by(own, revision, known.as_str()));
    let report = WeighReport {
        client: None,
        stock: Some((own, size.to_string())),
        recorded_on: None,
        batch: batch.cells,
        grams_of_one: batch.cell(),
        compartments: reported(&weighed),
    };
    tell(terminal, &said, report, (batch, &weighed))
}

fn reported(weighed: &[casework::WeighedCompartment]) -> Vec<WeighedCompartment<'_>> {
    weighed
        .iter()
        .map(|own| WeighedCompartment {
            id: own.id.as_str(),
            number: own.number,
            cells: own.cells,
            grams: own.grams,
            plus_minus_cells: own.plus_minus,
        })
        .collect()
}

/// Tells it in words, or as a report in JSON.
fn tell(
    terminal: Terminal,
    said: &str,
    report: WeighReport<'_>,
    (batch, weighed): (&Batch, &[casework::WeighedCompartment]),
) -> Result<(), Failure> {
    if terminal.is_json() {
        return terminal.answer(&report::weigh(PROGRAM, report));
    }
    let lines = [
        format!("{said}; {}\n", say::language().batch(batch.cells, batch.cell())),
        tables::weighed(weighed),
        say::language().lines().grams_of_today.to_owned(),
    ];
    terminal.answer(&(lines.join("\n") + "\n"))
}

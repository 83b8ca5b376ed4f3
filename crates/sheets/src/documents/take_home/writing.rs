//! Room to write: marks that were seen, cells that were lost, washes, who was shown what.

use super::super::look::PALE;
use super::{GAP, Sheet, written_line};
use crate::flow::Flow;
use crate::page::Align;
use crate::table::{Column, Table};
use crate::text::{SetError, measure};

/// Height of a row to write in, in millimetres.
const ROW: f64 = 10.5;
/// Rows of each table.
const ROWS: usize = 6;

pub(super) fn set(flow: &mut Flow<'_>, sheet: Sheet<'_>) -> Result<(), SetError> {
    let (print, texts) = (sheet.print, sheet.papers.language.take_home());
    for own in texts.tables {
        let table = blank(own.columns, flow.width(), sheet)?;
        // A table to write in is not parted.
        flow.need(table.height()? + print.head().line_height())?;
        flow.headed_table(own.heading, &print.head(), &table, |_, _, _| {})?;
        flow.space(GAP);
    }
    flow.put(|frame| {
        frame.paragraph(texts.shown, &print.firmly())?;
        for line in texts.signed {
            for name in *line {
                written_line(frame, name, print)?;
            }
        }
        Ok(())
    })
}

/// An empty table, whose columns are as wide as their heads in proportion.
fn blank(heads: &[&str], wide: f64, sheet: Sheet<'_>) -> Result<Table, SetError> {
    /// Room to write beyond the head, in millimetres.
    const BESIDE: f64 = 6.0;
    let style = sheet.print.label();
    let needs = heads.iter().map(|head| Ok(measure(head, &style)? + BESIDE));
    let needs = needs.collect::<Result<Vec<f64>, SetError>>()?;
    let all: f64 = needs.iter().sum();
    let columns = heads.iter().zip(&needs);
    let columns = columns.map(|(head, need)| Column::new(*head, wide * need / all, Align::Left));
    let mut table = Table::new(columns.collect(), style, sheet.print.words());
    table.head_ground = Some(PALE);
    table.named_rows = false;
    table.least_row = ROW;
    for _ in 0..ROWS {
        table.row(vec![String::new(); heads.len()]);
    }
    Ok(table)
}

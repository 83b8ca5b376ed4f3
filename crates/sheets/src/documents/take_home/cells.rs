//! The cells: how many in each pocket, what to do on the day of a wash, of a flight, of a burst cell.

use cushion::CompartmentIx;
use kurbo::Rect;

use super::super::code::Code;
use super::super::look::{ACCENT, FIRM, PALE};
use super::super::of_clients_left;
use super::super::views::{Letters, View, draw_named, height_of};
use super::{GAP, Sheet, section, side_by_side, writing};
use crate::flow::Flow;
use crate::frame::Frame;
use crate::page::{Align, Role};
use crate::table::{Column, Table};
use crate::text::SetError;

/// The tallest drawing of the pockets, in millimetres.
const TALLEST: f64 = 84.0;

pub(super) fn set(flow: &mut Flow<'_>, sheet: Sheet<'_>) -> Result<(), SetError> {
    let texts = sheet.papers.language.take_home();
    let print = sheet.print;
    let narrow = counts(sheet, 0.36 * flow.width());
    // Beside the drawing where the table is short enough for a page.
    if narrow.height()? < 100.0 {
        flow.put(|frame| {
            side_by_side(
                frame,
                0.62,
                |frame| where_pockets_are(frame, sheet),
                |frame| {
                    let table = counts(sheet, frame.area().width());
                    let rows = frame.table(&table)?;
                    frame_counts(frame, &rows, column_of(&table));
                    Ok(())
                },
            )
        })?;
    } else {
        flow.put(|frame| where_pockets_are(frame, sheet))?;
        flow.space(GAP);
        let table = counts(sheet, flow.width());
        flow.headed_table("", &print.head(), &table, |frame, rows, _| {
            frame_counts(frame, rows, column_of(&table));
        })?;
    }
    flow.space(1.0);
    flow.put(|frame| in_all(frame, sheet))?;
    flow.space(GAP);
    flow.need(print.head().line_height() + 3.0 * print.words().line_height())?;
    flow.put(|frame| frame.heading(2, texts.washing, &print.head()))?;
    for (step, sentence) in texts.washing_steps.iter().enumerate() {
        flow.item(&format!("{}", step + 1), 6.0, sentence, &print.words())?;
    }
    for passage in texts.about_cells {
        flow.space(GAP);
        flow.put(|frame| section(frame, *passage, print))?;
    }
    flow.space(GAP);
    writing::set(flow, sheet)
}

/// Where the pockets are, with their numbers.
fn where_pockets_are(frame: &mut Frame<'_>, sheet: Sheet<'_>) -> Result<(), SetError> {
    let papers = sheet.papers;
    let (texts, shared) = (papers.language.take_home(), papers.language.shared());
    frame.heading(2, texts.cells_in_each_pocket, &sheet.print.head())?;
    frame.paragraph(texts.openings_up, &sheet.print.words())?;
    let height = height_of(papers.pattern, frame.area().width()).min(TALLEST);
    let (area, block) = frame.figure(height, shared.numbers_from_below)?;
    let letters = Letters { numbers: sheet.print.words + 2.0, edges: sheet.print.label };
    let numbers = |ix: CompartmentIx| (papers.pattern[ix].number.to_string(), None);
    draw_named(block, shared, papers.pattern, View::Below, area, numbers, letters)
}

/// The counts, pocket by pocket.
fn counts(sheet: Sheet<'_>, wide: f64) -> Table {
    let texts = sheet.papers.language.take_home();
    let columns = [texts.pocket, texts.cells];
    let [pocket, cells] = columns.map(|head| Column::new(head, wide / 2.0, Align::Centre));
    let columns = vec![pocket.of_compartments(), cells];
    let mut table = Table::new(columns, sheet.print.firmly(), sheet.print.words());
    table.head_ground = Some(PALE);
    table.margin = 0.6;
    table.mark = ACCENT;
    table.of_clients_left = of_clients_left(sheet.papers.pattern);
    for count in &sheet.papers.plan.counts {
        table.row([count.number.to_string(), count.planned.to_string()]);
    }
    table
}

/// Where the column of the counts begins, from the table's left edge.
fn column_of(table: &Table) -> f64 {
    table.columns[0].width
}

/// The sum of the counts, whether they were checked, and the bag; beside it the code.
fn in_all(frame: &mut Frame<'_>, sheet: Sheet<'_>) -> Result<(), SetError> {
    let Some(code) = Code::of(sheet.papers) else { return sums(frame, sheet) };
    let (start, whole) = (frame.y(), frame.area());
    let left = Rect { y0: start, x1: whole.x1 - code.width(), ..whole };
    let end = {
        let mut column = Frame::new(frame.page(), left);
        sums(&mut column, sheet)?;
        let texts = sheet.papers.language.take_home();
        column.paragraph(texts.code_is_for, &sheet.print.words())?;
        column.y()
    };
    let place = frame.take((end - start).max(code.width()), code.text())?;
    code.in_corner(frame.page(), place);
    Ok(())
}

fn sums(frame: &mut Frame<'_>, sheet: Sheet<'_>) -> Result<(), SetError> {
    let (papers, print) = (sheet.papers, sheet.print);
    let (language, texts) = (papers.language, papers.language.take_home());
    frame.paragraph(&language.all_pockets(papers.plan.total()), &print.firmly())?;
    if papers.is_estimate() {
        frame.paragraph(texts.counts_are_an_estimate, &print.firmly())?;
    }
    frame.paragraph(&language.keep_the_bag(papers.spares()), &print.words())
}

/// A firm frame around the counts, so that they are not read as numbers of pockets.
fn frame_counts(frame: &mut Frame<'_>, rows: &[Rect], column: f64) {
    let (Some(first), Some(last)) = (rows.first(), rows.last()) else { return };
    let around = Rect::new(first.x0 + column, first.y0, last.x1, last.y1);
    frame.page().block(Role::Artifact).rect(around, None, Some(FIRM));
}

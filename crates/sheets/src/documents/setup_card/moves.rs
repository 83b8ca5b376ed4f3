//! Third part of the setup card: the moves, from below, as the openings face whoever makes them.

use case::{CountedFrom, Place};
use cushion::CompartmentIx;
use kurbo::{Point, Rect};

use super::super::ClientPapers;
use super::super::look::{BODY, FIRM, LESSER_HEADING, field_rows, first_within};
use super::super::views::{View, draw_named, height_of};
use super::{Part, flowed, table_with};
use crate::flow::Flow;
use crate::frame::Frame;
use crate::page::{Page, Pen, Role};
use crate::paper::Paper;
use crate::table::Table;
use crate::text::SetError;

/// Heights of the drawing, as shares of the page: the more, the better.
const HEIGHTS: [f64; 4] = [0.40, 0.36, 0.32, 0.28];

/// The pages of the part.
pub(super) fn pages(papers: &ClientPapers<'_>, paper: Paper) -> Result<Vec<Page>, SetError> {
    first_within(1, &HEIGHTS, |share| {
        flowed(papers, paper, Part::Move, |flow| moves(flow, papers, share * paper.height()))
    })
}

fn moves(flow: &mut Flow<'_>, papers: &ClientPapers<'_>, height: f64) -> Result<(), SetError> {
    let (language, texts) = (papers.language, papers.language.setup_card());
    let from = papers.extras.moves_from.unwrap_or(CountedFrom::Stock);
    flow.put(|frame| {
        frame.heading(3, &language.moves_from(from), &LESSER_HEADING)?;
        frame.paragraph(texts.moves_from_below, &BODY)
    })?;
    flow.space(1.5);
    let table = table_of(papers, 0.36 * flow.width());
    // Beside the drawing where it is short enough, else below it.
    let is_short = table.height()? + LESSER_HEADING.line_height() <= height;
    let wide = flow.width() * if is_short { 0.60 } else { 1.0 };
    let height = height.min(height_of(papers.pattern, wide - 4.0).max(if is_short {
        table.height()? + LESSER_HEADING.line_height()
    } else {
        0.0
    }));
    flow.put(|frame| {
        let place = frame.take(height, texts.moves_drawing)?;
        changes(frame.page(), papers, Rect { x1: place.x0 + wide - 4.0, ..place })?;
        if is_short {
            let mut column =
                Frame::new(frame.page(), Rect { x0: place.x1 - table.width(), ..place });
            column.heading(3, texts.moves, &LESSER_HEADING)?;
            let rows = column.table(&table)?;
            boxes(&mut column, &rows, &table);
        }
        Ok(())
    })?;
    if !is_short {
        flow.space(2.0);
        let table = table_of(papers, flow.width());
        flow.headed_table(texts.moves, &LESSER_HEADING, &table, |frame, rows, _| {
            boxes(frame, rows, &table);
        })?;
    }
    flow.space(3.0);
    flow.put(|frame| {
        frame.heading(3, texts.while_you_move, &LESSER_HEADING)?;
        for (at, step) in texts.move_steps.iter().enumerate() {
            frame.item(&format!("{}", at + 1), 5.0, step, &BODY)?;
        }
        Ok(())
    })?;
    flow.space(3.0);
    flow.put(|frame| bag(frame, papers))?;
    flow.space(2.0);
    flow.put(|frame| field_rows(frame, texts.move_fields, 9.0))
}

/// By how many cells each compartment changes, in a drawing from below.
fn changes(page: &mut Page, papers: &ClientPapers<'_>, area: Rect) -> Result<(), SetError> {
    let language = papers.language;
    let alt = language.setup_card().moves_drawing.to_owned();
    let block = page.block(Role::Figure { alt });
    let labels = |ix: CompartmentIx| {
        let number = papers.pattern[ix].number;
        let by = change(&papers.extras.moves, Place::Compartment(number));
        (number.to_string(), (by != 0).then(|| language.change(by)))
    };
    draw_named(block, language.shared(), papers.pattern, View::Below, area, labels, 14.0)
}

/// The moves in their order.
fn table_of(papers: &ClientPapers<'_>, wide: f64) -> Table {
    let heads = papers.language.setup_card().move_columns;
    let mut table = table_with(&heads, &[wide / 4.0; 4], 0);
    table.least_row = 6.4;
    for at in [1, 2] {
        table.columns[at] = table.columns[at].clone().of_compartments();
    }
    for own in &papers.extras.moves {
        let [from, to] = [own.from, own.to].map(|place| papers.language.place(place));
        table.row([own.cells.to_string(), from, to, String::new()]);
    }
    table
}

/// Boxes to tick in the last column.
fn boxes(frame: &mut Frame<'_>, rows: &[Rect], table: &Table) {
    const SIDE: f64 = 3.6;
    let block = frame.page().block(Role::Artifact);
    for row in rows.iter().skip(1) {
        let middle = Point::new(row.x1 - table.width() / 8.0, row.center().y);
        let corner = middle - (SIDE / 2.0, SIDE / 2.0);
        block.check_box(corner, SIDE, &Pen::solid(0.4, FIRM.color));
    }
}

/// What the spare bag holds before and after.
fn bag(frame: &mut Frame<'_>, papers: &ClientPapers<'_>) -> Result<(), SetError> {
    let texts = papers.language.setup_card();
    let into = change(&papers.extras.moves, Place::Spare);
    // Where somebody said what is there, the moves are still to be made; else the plan is taken to
    // have been carried out, and they with it.
    let now = papers.client.cushion_now().filter(|now| now.from.is_told());
    let before = now.map_or(i64::from(papers.spares()) - into, |now| now.bag);
    let quarter = frame.area().width() / 4.0;
    frame.heading(3, texts.spare_bag, &LESSER_HEADING)?;
    let mut table = table_with(&texts.bag_rows, &[quarter; 4], 0);
    table.named_rows = false;
    table.least_row = 7.0;
    let [before, after] = [before, before + into].map(|cells| cells.max(0).to_string());
    table.row([before, papers.language.change(into), after, String::new()]);
    frame.table(&table).map(drop)
}

/// By how many cells the moves change a place.
fn change(moves: &[case::Move], own: Place) -> i64 {
    let sum = |of: fn(&case::Move) -> Place| -> i64 {
        moves.iter().filter(|step| of(step) == own).map(|step| i64::from(step.cells)).sum()
    };
    sum(|step| step.to) - sum(|step| step.from)
}

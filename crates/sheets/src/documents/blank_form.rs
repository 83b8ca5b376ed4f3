//! The blank measuring form: filled in beside the client, in the order of the client's file.

use case::Date;
use kurbo::{Point, Rect};

use super::look::{
    BODY, FIRM, HEADING, INK, PALE, SMALL, STRONG, field_rows, foot, inside, text, title_line,
};
use super::pictures::where_to_measure;
use super::{DocumentError, document};
use crate::color::Color;
use crate::font::Weight;
use crate::frame::Frame;
use crate::page::{Align, Document, Fill, Page, Pen, Role};
use crate::paper::Paper;
use crate::table::{Column, Table};
use crate::text::SetError;
use crate::words::english as words;

/// Composes the blank measuring form, two pages, with a square of 100 mm by which a print shows
/// its scale.
///
/// # Errors
///
/// Fails where something finds no room.
pub fn blank_form(paper: Paper, date: Date, program: &str) -> Result<Document, DocumentError> {
    let mut document = document(words::BLANK_FORM, words::BLANK_FORM_SUBJECT, date, program);
    document.pages.push(first_page(paper, program)?);
    document.pages.push(second_page(paper, program)?);
    Ok(document)
}

fn first_page(paper: Paper, program: &str) -> Result<Page, SetError> {
    let mut page = Page::new(paper, words::BLANK_FORM);
    let mut frame = start(&mut page, program)?;
    title_line(&mut frame, words::BLANK_FORM, words::SIDES_ARE_THE_CLIENTS, false)?;
    rows(&mut frame, &[&[words::FORM_CODE], &[words::FORM_DATE, words::FORM_BY]])?;
    frame.space(1.0);
    frame.heading(2, words::FORM_MEASURES, &HEADING)?;
    boxed_choice(&mut frame, words::FORM_UNITS, &["mm", "in"])?;
    frame.paragraph(words::FORM_POSTURE, &SMALL)?;
    measures(&mut frame)?;
    frame.space(2.0);
    frame.heading(2, words::FORM_WEIGHT, &HEADING)?;
    rows(&mut frame, &[&[words::FORM_WEIGHT_KG, words::FORM_WEIGHED_ON]])?;
    frame.space(2.0);
    frame.heading(2, words::FORM_CHAIR, &HEADING)?;
    rows(&mut frame, &[&[words::FORM_INSIDE_WIDTH, words::FORM_INSIDE_DEPTH]])?;
    boxed_choice(&mut frame, words::FORM_BASE, &[words::SOLID, words::SLING])?;
    rows(&mut frame, &[&[words::FORM_CHAIR_NOTES]])?;
    frame.space(3.0);
    let (area, block) = frame.figure(64.0, words::FORM_FIGURE_ALT)?;
    where_to_measure(block, area)?;
    Ok(page)
}

fn second_page(paper: Paper, program: &str) -> Result<Page, SetError> {
    let mut page = Page::new(paper, words::BLANK_FORM_2);
    let mut frame = start(&mut page, program)?;
    title_line(&mut frame, words::BLANK_FORM_2, words::SIDES_ARE_THE_CLIENTS, false)?;
    rows(&mut frame, &[&[words::FORM_CODE]])?;
    frame.heading(2, words::FORM_CUSHION, &HEADING)?;
    let cushion: [&[&str]; 2] =
        [&[words::FORM_LAYOUT, words::FORM_SIZE], &[words::FORM_CELL, words::SPARE_CELLS]];
    rows(&mut frame, &cushion)?;
    frame.space(2.0);
    frame.heading(2, words::FORM_CHANGES, &HEADING)?;
    changes(&mut frame)?;
    frame.space(2.0);
    frame.heading(2, words::FORM_CARER, &HEADING)?;
    rows(&mut frame, &[&[words::FORM_NOTES], &[""], &[words::MEANWHILE]])?;
    let calls: [&[&str]; 3] = [
        &[words::FORM_WHO, words::FORM_PHONE],
        &[words::FORM_WHO, words::FORM_PHONE],
        &[words::FORM_REVIEW],
    ];
    rows(&mut frame, &calls)?;
    frame.space(1.0);
    sketch(&mut frame).map(|()| page)
}

fn start<'p>(page: &'p mut Page, program: &str) -> Result<Frame<'p>, SetError> {
    let end = foot(page, &[&format!("{program}. {}", words::FORM_FOOT), words::DEFER_FORM])?;
    let area = inside(page);
    Ok(Frame::new(page, Rect::new(area.x0, area.y0, area.x1, end - 2.0)))
}

/// Rows of fields to write in.
fn rows(frame: &mut Frame<'_>, rows: &[&[&str]]) -> Result<(), SetError> {
    field_rows(frame, rows, 8.6)
}

/// A question with boxes to tick.
fn boxed_choice(frame: &mut Frame<'_>, question: &str, answers: &[&str]) -> Result<(), SetError> {
    let place = frame.take(7.6, question)?;
    let block = frame.page().block(Role::Paragraph);
    let baseline = place.y1 - 1.8;
    let mut x = place.x0 + 2.0;
    x += block.text(Point::new(place.x0, baseline), question, &BODY, Align::Left)? + 4.0;
    for answer in answers {
        block.check_box(Point::new(x, baseline - 3.4), 3.8, &Pen::solid(0.4, INK));
        x += 5.6;
        x += block.text(Point::new(x, baseline), answer, &BODY, Align::Left)? + 8.0;
    }
    Ok(())
}

/// The body measures, each with how it is taken, and room for the client's left and right.
fn measures(frame: &mut Frame<'_>) -> Result<(), SetError> {
    let wide = frame.area().width();
    let columns = vec![
        Column::new(words::FORM_MEASURE, 44.0, Align::Left),
        Column::new(words::FORM_HOW, wide - 44.0 - 58.0, Align::Left),
        Column::new(words::CLIENTS_LEFT_SHORT, 29.0, Align::Centre),
        Column::new(words::CLIENTS_RIGHT_SHORT, 29.0, Align::Centre),
    ];
    let mut table = Table::new(columns, STRONG, BODY);
    table.head_ground = Some(PALE);
    table.least_row = 9.0;
    for (name, how) in words::FORM_MEASURE_ROWS {
        table.row([name, how, "", ""]);
    }
    let placed = frame.table(&table)?;
    // Measures that are taken once have one box over both columns: the rule between is covered.
    let rule = table.rule.width;
    let block = frame.page().block(Role::Artifact);
    for (row, (name, _)) in placed.iter().skip(1).zip(words::FORM_MEASURE_ROWS) {
        if !words::FORM_TWO_SIDED.contains(&name) {
            let between = row.x1 - 29.0;
            let cover = Rect::new(between - rule, row.y0, between + rule, row.y1);
            let cover = cover.inset((0.0, -rule / 2.0));
            block.rect(cover, Some(Fill::solid(Color::WHITE)), None);
        }
    }
    Ok(())
}

/// The wanted changes, with room for the reason.
fn changes(frame: &mut Frame<'_>) -> Result<(), SetError> {
    let wide = frame.area().width();
    let widths = [34.0, 34.0, 34.0, wide - 102.0];
    let columns = words::FORM_CHANGE_COLUMNS.iter().zip(widths);
    let columns = columns.map(|(head, width)| Column::new(*head, width, Align::Left)).collect();
    let mut table = Table::new(columns, STRONG, BODY);
    table.head_ground = Some(PALE);
    table.named_rows = false;
    table.least_row = 7.0;
    for _ in 0..3 {
        table.row(["", "", "", ""]);
    }
    frame.table(&table)?;
    Ok(())
}

/// A square of 100 mm to sketch in, by which one also sees whether the page was printed at its
/// size; beside it, lines for notes.
fn sketch(frame: &mut Frame<'_>) -> Result<(), SetError> {
    const SIDE: f64 = 100.0;
    const WORDS: f64 = 5.0;
    frame.heading(2, words::FORM_SKETCH, &HEADING)?;
    let (place, block) = frame.figure(SIDE + WORDS, words::SQUARE_ALT)?;
    let square = Rect::from_origin_size((place.x0 + WORDS, place.y0 + WORDS), (SIDE, SIDE));
    block.rect(square, None, Some(Pen::solid(FIRM.width / 2.0, INK)));
    let (style, gap) = (text(8.0, Weight::Bold, INK), 1.5);
    let middle = square.center();
    let front = Point::new(middle.x, square.y0 - gap);
    block.text(front, words::FRONT_EDGE, &style, Align::Centre)?;
    let left = Point::new(square.x0 - gap, middle.y);
    block.turned_text(left, -90.0, words::CLIENTS_LEFT, &style, Align::Centre)?;
    let right = Point::new(square.x1 + gap, middle.y);
    block.turned_text(right, 90.0, words::CLIENTS_RIGHT, &style, Align::Centre)?;
    let beside = Rect::new(square.x1 + 10.0, square.y0, place.x1, square.y1);
    let mut column = Frame::new(frame.page(), beside);
    column.paragraph(words::PRINT_AT_FULL_SIZE, &BODY)?;
    column.space(1.0);
    let blank: [&[&str]; 6] = [&[words::SKETCH_NOTES], &[""], &[""], &[""], &[""], &[""]];
    rows(&mut column, &blank)
}

//! The blank measuring form: filled in beside the client, in the order of the client's file.

use case::Date;
use kurbo::{Point, Rect};
use words::{Language, MeasuringFormTexts};

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

/// Composes the blank measuring form, two pages, with a square of 100 mm by which a print shows
/// its scale.
///
/// # Errors
///
/// Fails where something finds no room.
pub fn blank_form(
    language: &dyn Language,
    paper: Paper,
    date: Date,
    program: &str,
) -> Result<Document, DocumentError> {
    let texts = language.measuring_form();
    let mut document = document(language, texts.title, texts.subject, date, program);
    document.pages.push(first_page(language, paper, program)?);
    document.pages.push(second_page(language, paper, program)?);
    Ok(document)
}

fn first_page(language: &dyn Language, paper: Paper, program: &str) -> Result<Page, SetError> {
    let texts = language.measuring_form();
    let mut page = Page::new(language, paper, texts.title);
    let mut frame = start(&mut page, texts, program)?;
    title_line(&mut frame, texts.title, texts.sides_are_the_clients, false)?;
    rows(&mut frame, &[&[texts.code], &[texts.date, texts.measured_by]])?;
    frame.space(1.0);
    frame.heading(2, texts.measures, &HEADING)?;
    boxed_choice(&mut frame, texts.units, &["mm", "in"])?;
    frame.paragraph(texts.how_to_sit, &SMALL)?;
    measures(&mut frame, language)?;
    frame.space(2.0);
    frame.heading(2, texts.weight, &HEADING)?;
    rows(&mut frame, &[&[texts.weight_in, texts.weighed_on]])?;
    frame.space(2.0);
    frame.heading(2, texts.chair, &HEADING)?;
    rows(&mut frame, &[&[texts.inside_width, texts.inside_depth]])?;
    boxed_choice(&mut frame, texts.seat_base, &[texts.solid, texts.sling])?;
    rows(&mut frame, &[&[texts.chair_notes]])?;
    frame.space(3.0);
    let (area, block) = frame.figure(64.0, texts.drawing)?;
    where_to_measure(block, language, area)?;
    Ok(page)
}

fn second_page(language: &dyn Language, paper: Paper, program: &str) -> Result<Page, SetError> {
    let texts = language.measuring_form();
    let mut page = Page::new(language, paper, texts.second_title);
    let mut frame = start(&mut page, texts, program)?;
    title_line(&mut frame, texts.second_title, texts.sides_are_the_clients, false)?;
    rows(&mut frame, &[&[texts.code]])?;
    frame.heading(2, texts.cushion, &HEADING)?;
    let cushion: [&[&str]; 2] =
        [&[texts.layout, texts.size], &[language.shared().cell, language.shared().spare_cells]];
    rows(&mut frame, &cushion)?;
    frame.space(2.0);
    frame.heading(2, texts.changes, &HEADING)?;
    changes(&mut frame, texts)?;
    frame.space(2.0);
    frame.heading(2, texts.for_the_carer, &HEADING)?;
    rows(&mut frame, &[&[texts.notes], &[""], &[texts.meanwhile]])?;
    let calls: [&[&str]; 3] =
        [&[texts.call, texts.phone], &[texts.call, texts.phone], &[texts.next_review]];
    rows(&mut frame, &calls)?;
    frame.space(1.0);
    sketch(&mut frame, language).map(|()| page)
}

fn start<'p>(
    page: &'p mut Page,
    texts: &MeasuringFormTexts,
    program: &str,
) -> Result<Frame<'p>, SetError> {
    let end =
        foot(page, &[&format!("{program}. {}", texts.copy_the_answers), texts.clinician_decides])?;
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
fn measures(frame: &mut Frame<'_>, language: &dyn Language) -> Result<(), SetError> {
    let texts = language.measuring_form();
    let wide = frame.area().width();
    let columns = vec![
        Column::new(texts.measure, 44.0, Align::Left),
        Column::new(texts.from_where_to_where, wide - 44.0 - 58.0, Align::Left),
        Column::new(language.shared().clients_left_short, 29.0, Align::Centre),
        Column::new(language.shared().clients_right_short, 29.0, Align::Centre),
    ];
    let mut table = Table::new(columns, STRONG, BODY);
    table.head_ground = Some(PALE);
    table.least_row = 9.0;
    for (name, how) in texts.measure_rows {
        table.row([name, how, "", ""]);
    }
    let placed = frame.table(&table)?;
    // Measures that are taken once have one box over both columns: the rule between is covered.
    let rule = table.rule.width;
    let block = frame.page().block(Role::Artifact);
    for (row, (name, _)) in placed.iter().skip(1).zip(texts.measure_rows) {
        if !texts.two_sided.contains(&name) {
            let between = row.x1 - 29.0;
            let cover = Rect::new(between - rule, row.y0, between + rule, row.y1);
            let cover = cover.inset((0.0, -rule / 2.0));
            block.rect(cover, Some(Fill::solid(Color::WHITE)), None);
        }
    }
    Ok(())
}

/// The wanted changes, with room for the reason.
fn changes(frame: &mut Frame<'_>, texts: &MeasuringFormTexts) -> Result<(), SetError> {
    let wide = frame.area().width();
    let widths = [34.0, 34.0, 34.0, wide - 102.0];
    let columns = texts.change_columns.iter().zip(widths);
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
fn sketch(frame: &mut Frame<'_>, language: &dyn Language) -> Result<(), SetError> {
    const SIDE: f64 = 100.0;
    const WORDS: f64 = 5.0;
    let texts = language.measuring_form();
    frame.heading(2, texts.sketch, &HEADING)?;
    let (place, block) = frame.figure(SIDE + WORDS, texts.square)?;
    let square = Rect::from_origin_size((place.x0 + WORDS, place.y0 + WORDS), (SIDE, SIDE));
    block.rect(square, None, Some(Pen::solid(FIRM.width / 2.0, INK)));
    let (style, gap) = (text(8.0, Weight::Bold, INK), 1.5);
    let middle = square.center();
    let front = Point::new(middle.x, square.y0 - gap);
    block.text(front, language.shared().front_edge, &style, Align::Centre)?;
    let left = Point::new(square.x0 - gap, middle.y);
    block.turned_text(left, -90.0, language.shared().clients_left, &style, Align::Centre)?;
    let right = Point::new(square.x1 + gap, middle.y);
    block.turned_text(right, 90.0, language.shared().clients_right, &style, Align::Centre)?;
    let beside = Rect::new(square.x1 + 10.0, square.y0, place.x1, square.y1);
    let mut column = Frame::new(frame.page(), beside);
    column.paragraph(texts.print_at_full_size, &BODY)?;
    column.space(1.0);
    let blank: [&[&str]; 6] = [&[texts.notes], &[""], &[""], &[""], &[""], &[""]];
    rows(&mut column, &blank)
}

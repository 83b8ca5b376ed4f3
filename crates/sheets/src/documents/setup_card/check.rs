//! Second part of the setup card: the checks by hand, and what to change when they find something.

use case::IfThen;
use cushion::Side;
use words::{DefinedCheckTexts, Foretold, Language};

use super::super::ClientPapers;
use super::super::look::{BODY, LESSER_HEADING, PALE, STRONG, first_within};
use super::{Part, flowed, table_with};
use crate::flow::Flow;
use crate::frame::Frame;
use crate::page::{Align, Page, Role};
use crate::paper::Paper;
use crate::table::{Column, Table};
use crate::text::{SetError, wrap};

/// Least heights of a row, in millimetres, from the most room to the least in which one can write.
const ROWS: [f64; 4] = [7.4, 6.6, 5.8, 5.0];

/// The pages of the part.
pub(super) fn pages(papers: &ClientPapers<'_>, paper: Paper) -> Result<Vec<Page>, SetError> {
    first_within(1, &ROWS, |row| {
        flowed(papers, paper, Part::Check, |flow| {
            let texts = papers.language.setup_card();
            flow.put(|frame| defined(frame, papers.language))?;
            flow.space(2.0);
            checks(flow, papers, row)?;
            flow.space(1.5);
            flow.put(|frame| frame.paragraph(texts.order_of_a_fitting, &BODY))?;
            flow.space(2.5);
            if_then(flow, papers.language, &papers.extras.if_then)
        })
    })
}

/// How each check is made, and what its words mean.
fn defined(frame: &mut Frame<'_>, language: &dyn Language) -> Result<(), SetError> {
    const NAME: f64 = 26.0;
    let texts = language.setup_card();
    frame.paragraph(texts.how_to_check, &STRONG)?;
    frame.space(1.0);
    for DefinedCheckTexts { name, how, words } in texts.defined {
        let start = frame.y();
        let whole = frame.area();
        let mut names = Frame::new(frame.page(), kurbo::Rect { y0: start, ..whole });
        names.words(Role::Paragraph, 0.0, name, &STRONG, Align::Left)?;
        frame.words(Role::Paragraph, NAME, how, &BODY, Align::Left)?;
        frame.words(Role::Paragraph, NAME, words, &STRONG, Align::Left)?;
        frame.space(0.6);
    }
    Ok(())
}

/// The checks by hand, with what is expected and the words in which they are answered.
fn checks(flow: &mut Flow<'_>, papers: &ClientPapers<'_>, row: f64) -> Result<(), SetError> {
    let (language, texts) = (papers.language, papers.language.setup_card());
    let answer = 35.0;
    let expected = 27.0;
    let wide = flow.width() - 3.0 * answer - expected;
    let widths = [wide, expected, answer, answer, answer];
    let mut table = table_with(&texts.check_columns, &widths, 1);
    table.columns[0] = table.columns[0].clone().beside_bars();
    table.least_row = row;
    let blank = String::new();
    table.row([texts.signed.to_owned(), blank.clone(), blank.clone(), blank.clone(), blank]);
    for own in texts.check_rows {
        if own.side == Some(Side::Left) {
            table.of_clients_left.push(table.rows.len());
        }
        let expected = papers.extras.expected.as_ref().map(|expected| match own.foretold {
            Foretold::Nothing => String::new(),
            Foretold::LeftUnder(side) => language.left_under_bone(&expected.left_under[side]),
            Foretold::LowerSide => language.lower_in_short(expected.lower_side, expected.lower_by),
        });
        let answers = own.answers.to_owned();
        table.row([
            own.check.to_owned(),
            expected.unwrap_or_default(),
            answers.clone(),
            answers.clone(),
            answers,
        ]);
    }
    flow.headed_table(texts.checks, &LESSER_HEADING, &table, |_, _, _| {})
}

/// The table that works without the program.
fn if_then(flow: &mut Flow<'_>, language: &dyn Language, rows: &[IfThen]) -> Result<(), SetError> {
    if rows.is_empty() {
        return Ok(());
    }
    let texts = language.setup_card();
    let wide = flow.width();
    let widths = [wide * 0.36, wide * 0.36, wide * 0.28];
    let columns = texts.if_then_columns.iter().zip(widths);
    let columns = columns.map(|(head, width)| Column::new(*head, width, Align::Left)).collect();
    let mut table = Table::new(columns, STRONG, BODY);
    table.head_ground = Some(PALE);
    table.margin = 0.8;
    for row in rows {
        let cost = row.cost.map_or_else(String::new, |cost| language.remedy_cost(&cost));
        table.row([language.card_finding(&row.found), language.remedy(&row.then), cost]);
    }
    // One looks for a finding in one place: what does not fit under the checks has a page of its own.
    let (head, heights) = table.head_and_rows()?;
    let note = wrap(texts.if_then_note, &BODY, wide)?.len() as f64 * BODY.line_height();
    let above = LESSER_HEADING.line_height() + head;
    flow.need(above + heights.iter().sum::<f64>() + 1.0 + note)?;
    flow.headed_table(texts.if_then, &LESSER_HEADING, &table, |_, _, _| {})?;
    flow.space(1.0);
    flow.put(|frame| frame.paragraph(texts.if_then_note, &BODY))
}

//! The measures of the body: a table with how each is taken, and a drawing of them.

use case::question::{Kind, Question};
use kurbo::Rect;

use super::answer::unit;
use super::figure::{HEIGHT, drawn, where_to_measure};
use super::{BlankForm, Part, fields, grid};
use crate::color::Color;
use crate::documents::look::{BODY, PALE, SMALL, STRONG};
use crate::flow::Flow;
use crate::frame::Frame;
use crate::page::{Align, Fill, Role};
use crate::table::{Column, Table};
use crate::text::SetError;

/// Width of the room for one number, mm.
const NUMBER: f64 = 29.0;

/// Sets the group of the measures.
pub(super) fn measures(
    flow: &mut Flow<'_>,
    form: &BlankForm<'_>,
    part: &Part,
    lead: &grid::Lead,
) -> Result<(), SetError> {
    let is_length = |question: &Question| matches!(question.row().kind, Kind::Length(_));
    let (lengths, others): (Vec<Question>, Vec<Question>) =
        part.questions.iter().copied().partition(is_length);
    // How to sit is said in full.
    let lead = grid::Lead { comment: "", ..*lead };
    grid::fields(flow, &lead, &fields(form, &others))?;
    flow.put(|frame| {
        frame.paragraph(form.language.measuring_form().how_to_sit, &SMALL)?;
        frame.space(1.0);
        table(frame, form, &lengths)
    })?;
    flow.space(1.5);
    let names: Vec<String> =
        drawn(&lengths).map(|own| form.language.label(own).to_owned()).collect();
    let names: Vec<&str> = names.iter().map(String::as_str).collect();
    let shows = form.language.measures_drawn(&names);
    flow.put(|frame| {
        let (area, block) = frame.figure(HEIGHT, &shows)?;
        where_to_measure(block, form.language, &lengths, area)
    })
}

/// Each measure with how it is taken, and room for the client's left and right.
fn table(
    frame: &mut Frame<'_>,
    form: &BlankForm<'_>,
    measures: &[Question],
) -> Result<(), SetError> {
    let (language, texts) = (form.language, form.language.measuring_form());
    let wide = frame.area().width();
    let columns = vec![
        Column::new(texts.measure, 44.0, Align::Left),
        Column::new(texts.from_where_to_where, wide - 44.0 - 2.0 * NUMBER, Align::Left),
        Column::new(language.shared().clients_left_short, NUMBER, Align::Right),
        Column::new(language.shared().clients_right_short, NUMBER, Align::Right),
    ];
    let mut table = Table::new(columns, STRONG, BODY);
    table.head_ground = Some(PALE);
    table.least_row = 7.6;
    for question in measures {
        let label = language.label_on_form(*question);
        let unit = unit(form, *question);
        let left = if question.row().each_side { unit } else { "" };
        table.row([label.as_str(), language.comment_on_form(*question), left, unit]);
    }
    let rows = frame.table(&table)?;
    let rule = table.rule.width;
    for (row, question) in rows.iter().skip(1).zip(measures) {
        if !question.row().each_side {
            // One box over both columns: the rule between is covered.
            let middle = row.x1 - NUMBER;
            let cover = Rect::new(middle - rule, row.y0, middle + rule, row.y1);
            let cover = cover.inset((0.0, -rule / 2.0));
            let block = frame.page().block(Role::Artifact);
            block.rect(cover, Some(Fill::solid(Color::WHITE)), None);
        }
    }
    Ok(())
}

//! The blank measuring form: filled in beside the client, in the order of the client's file.
//!
//! It is made from the table of questions, so that a question of the file is a question of the
//! form. It asks no counts.

mod answer;
mod figure;
mod grid;
mod lists;
mod measures;
mod sketch;

pub(super) use self::figure::person_from_above;

use case::Date;
use case::question::{Form, Group, Question};
use case::text::LengthUnit;
use kurbo::Rect;
use words::Language;

use self::answer::Field;
use super::look::{BODY, field_rows, foot, inside, title_line, unreviewed};
use super::{DocumentError, document};
use crate::flow::Flow;
use crate::frame::Frame;
use crate::page::{Document, Page};
use crate::paper::Paper;
use crate::text::SetError;

/// What stands for a unit, as the client's file has it.
fn symbol(unit: LengthUnit) -> &'static str {
    match unit {
        LengthUnit::Millimetres => "mm",
        LengthUnit::Inches => "in",
    }
}

/// What the blank form is made from.
#[derive(Clone, Copy)]
pub struct BlankForm<'a> {
    /// In which language it is.
    pub language: &'a dyn Language,
    /// In which unit it asks lengths.
    pub unit: LengthUnit,
    /// The day that it bears.
    pub date: Date,
    /// Program and version.
    pub program: &'a str,
}

/// Composes the blank measuring form, with a square of 100 mm by which a print shows its scale.
///
/// # Errors
///
/// Fails where something finds no room.
pub fn blank_form(form: &BlankForm<'_>, paper: Paper) -> Result<Document, DocumentError> {
    let texts = form.language.measuring_form();
    let mut document = document(form.language, texts.title, texts.subject, form.date, form.program);
    // The pages say how many there are.
    let pages = pages(form, paper, 1)?.len();
    document.pages = self::pages(form, paper, pages)?;
    Ok(document)
}

/// Questions that follow each other in the table and are of one group.
struct Part {
    group: Group,
    questions: Vec<Question>,
}

/// The parts of the form: those of the client's file, without the record.
fn parts() -> Vec<Part> {
    let mut parts: Vec<Part> = Vec::new();
    for question in Question::ALL {
        let group = question.row().group;
        if !question.is_on_form() {
            continue;
        }
        match parts.last_mut().filter(|part| part.group == group) {
            Some(part) => part.questions.push(*question),
            None => parts.push(Part { group, questions: vec![*question] }),
        }
    }
    parts
}

/// The pages, whose feet say that there are so many.
fn pages(form: &BlankForm<'_>, paper: Paper, of: usize) -> Result<Vec<Page>, SetError> {
    let begin = |number| begin(form, paper, number, of);
    let mut flow = Flow::new(&begin)?;
    let parts = parts();
    for (at, part) in parts.iter().enumerate() {
        let before = &parts[..at];
        let lead = lead(form.language, part.group, before);
        match part.group.form() {
            Form::List => lists::list(&mut flow, form, part)?,
            _ if part.group == Group::Measures => {
                measures::measures(&mut flow, form, part, &lead)?;
            }
            _ => grid::fields(&mut flow, &lead, &fields(form, &part.questions))?,
        }
    }
    flow.space(1.5);
    flow.put(|frame| sketch::sketch(frame, form.language))?;
    Ok(flow.pages())
}

/// Begins a page: each says whose it is.
fn begin(
    form: &BlankForm<'_>,
    paper: Paper,
    number: usize,
    of: usize,
) -> Result<(Page, Rect), SetError> {
    let (language, texts) = (form.language, form.language.measuring_form());
    let mut page = Page::new(language, paper, texts.title);
    let copy = language.form_foot(number, of, form.program, form.date);
    unreviewed(&mut page, language)?;
    let end = foot(&mut page, &[&copy, texts.clinician_decides])?;
    let area = inside(&page);
    let mut frame = Frame::new(&mut page, Rect { y1: end - 2.0, ..area });
    title_line(&mut frame, texts.title, texts.sides_are_the_clients, false)?;
    if number == 1 {
        frame.paragraph(texts.how_to_answer, &BODY)?;
        frame.space(1.0);
    } else {
        field_rows(&mut frame, &[&[&language.label_on_form(Question::Code)]], 8.6)?;
    }
    frame.space(1.0);
    let left = Rect { y0: frame.y(), ..frame.area() };
    Ok((page, left))
}

/// What stands beside the first fields of a group: of the group that it is in too, where that has
/// not been said yet.
fn lead(language: &dyn Language, group: Group, before: &[Part]) -> grid::Lead {
    let said = |group: Group| {
        before.iter().any(|part| part.group == group || part.group.parent() == group)
    };
    let heading = |group| Some(language.group_heading(group));
    let parent = group.parent();
    if group == Group::Client {
        return grid::Lead::default();
    }
    let top = if parent == Group::Client { group } else { parent };
    let mut lead = grid::Lead { above: heading(top), ..grid::Lead::default() };
    if !said(group) {
        lead.group = heading(top).filter(|_| !said(top));
        lead.within = heading(group).filter(|_| group != top);
        lead.comment = language.group_comment_on_form(group);
    }
    lead
}

/// The fields of questions; a question that only says the same in another unit is none of its own.
fn fields(form: &BlankForm<'_>, questions: &[Question]) -> Vec<Field> {
    questions.iter().filter_map(|question| Field::of(form, *question)).collect()
}

//! What there may be several of: a table with a few empty rows.

use case::question::{Group, Kind};
use kurbo::Point;
use words::Language;

use super::answer::{Answer, Field};
use super::{BlankForm, Part, fields, grid};
use crate::documents::look::{INK, LESSER_HEADING, PALE, SMALL, STRONG, text};
use crate::flow::Flow;
use crate::font::Weight;
use crate::page::{Align, Role};
use crate::table::{Column, Table};
use crate::text::{SetError, Style, measure};

const HEAD: Style = text(8.0, Weight::SemiBold, INK);
const CHOICES: Style = text(8.0, Weight::Regular, INK);

/// How many entries of a list find room on the form.
fn entries(group: Group) -> usize {
    match group {
        Group::LimbLoss | Group::Injury => 2,
        _ => 3,
    }
}

/// Sets a list as a table: a column for each question, a row for each entry.
pub(super) fn list(flow: &mut Flow<'_>, form: &BlankForm<'_>, part: &Part) -> Result<(), SetError> {
    let fields = fields(form, &part.questions);
    let table = table(form, &fields, entries(part.group), flow.width())?;
    let (heading, comment) =
        (form.language.group_heading(part.group), form.language.group_comment_on_form(part.group));
    let top = part.group.parent() == Group::Client;
    flow.put(|frame| {
        if top {
            grid::rule(frame);
        }
        let (level, style) = if top { (2, &LESSER_HEADING) } else { (3, &STRONG) };
        let from = frame.y();
        frame.heading(level, heading, style)?;
        if !comment.is_empty() {
            let beside = frame.area().x0 + measure(heading, style)? + 3.0;
            let baseline = Point::new(beside, from + style.first_baseline());
            frame.page().block(Role::Paragraph).text(baseline, comment, &SMALL, Align::Left)?;
        }
        frame.space(0.6);
        frame.table(&table)?;
        Ok(())
    })?;
    flow.space(0.7);
    Ok(())
}

fn table(
    form: &BlankForm<'_>,
    fields: &[Field],
    entries: usize,
    wide: f64,
) -> Result<Table, SetError> {
    let widths = |lines: f64| -> Result<Vec<f64>, SetError> {
        fields.iter().map(|field| field.width(form.language, lines)).collect()
    };
    // Notes in one line where that leaves room, else in about two.
    let mut own = widths(1.0)?;
    if own.iter().sum::<f64>() > wide {
        own = widths(1.8)?;
    }
    let mut widths = own;
    // What is written in words gets what is left over.
    let left = wide - widths.iter().sum::<f64>();
    let words: Vec<usize> = (0..fields.len()).filter(|at| fields[*at].is_words()).collect();
    let share = if words.is_empty() { (0..fields.len()).collect() } else { words };
    if left < 0.0 {
        // All give way alike; words break where they must.
        widths.iter_mut().for_each(|width| *width *= wide / (wide - left));
    } else {
        share.iter().for_each(|at| widths[*at] += left / share.len() as f64);
    }
    let columns = fields.iter().zip(&widths).map(|(field, width)| {
        let column = Column::new(field.head(form.language), *width, Align::Left);
        Column { note: field.comment.to_owned(), ..column }
    });
    let mut table = Table::new(columns.collect(), HEAD, CHOICES);
    table.head_ground = Some(PALE);
    table.named_rows = false;
    let is_ring = |field: &Field| matches!(field.answer, Answer::Ring(_));
    table.least_row = if fields.iter().all(is_ring) { 5.4 } else { 7.0 };
    table.margin = 1.0;
    let row: Vec<String> = fields.iter().map(Field::in_a_row).collect();
    (0..entries).for_each(|_| {
        table.row(row.clone());
    });
    Ok(table)
}

impl Field {
    fn is_words(&self) -> bool {
        matches!(self.answer, Answer::Words(_)) && self.question.row().kind != Kind::Name
    }

    /// The least width of its column, mm, where its note has about so many lines.
    fn width(&self, language: &dyn Language, lines: f64) -> Result<f64, SetError> {
        let longest = |text: &str, style: &Style| -> Result<f64, SetError> {
            let words = text.split(' ').map(|word| measure(word, style));
            Ok(words.collect::<Result<Vec<_>, _>>()?.into_iter().fold(0.0, f64::max))
        };
        let least = match &self.answer {
            Answer::Ring(_) => {
                let all = self.in_a_row();
                let whole = measure(&all, &CHOICES)?;
                longest(&all, &CHOICES)?.max(whole / 3.8).max(whole.min(12.0))
            }
            Answer::Words(_) => 24.0,
            Answer::Lines(_) | Answer::Known(_) => 17.0,
        };
        let note = measure(self.comment, &CHOICES)? / lines;
        let note = note.max(longest(self.comment, &CHOICES)?);
        Ok(least.max(longest(&self.head(language), &HEAD)?).max(note) + 2.4)
    }

    fn head(&self, language: &dyn Language) -> String {
        match &self.answer {
            Answer::Lines(lines) if !lines[0].unit.is_empty() => {
                language.label_with_unit(&self.label, lines[0].unit)
            }
            _ => self.label.clone(),
        }
    }

    /// What stands in each row: the words of which one is ringed.
    fn in_a_row(&self) -> String {
        match &self.answer {
            Answer::Ring(words) => {
                words.join(" / ").replace(' ', "\u{a0}").replace("/\u{a0}", "/ ")
            }
            _ => String::new(),
        }
    }
}

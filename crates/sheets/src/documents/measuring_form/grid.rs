//! Fields side by side, in columns that are the same on all pages; at the left, what they are
//! about.

use case::question::Kind;
use kurbo::{Point, Rect};

use super::answer::{Answer, Field, Line};
use crate::documents::look::{INK, LESSER_HEADING, SMALL, STRONG, THIN, text};
use crate::flow::Flow;
use crate::font::Weight;
use crate::frame::Frame;
use crate::page::{Align, Block, Page, Role};
use crate::text::{SetError, Style, measure, wrap};

/// Width of what stands at the left, mm.
const LEAD: f64 = 32.0;
/// Between two fields, mm.
const BETWEEN: f64 = 4.0;
/// Columns of the grid.
const COLUMNS: usize = 12;
/// Columns that a field may take.
const SPANS: [usize; 8] = [2, 3, 4, 5, 6, 8, 10, 12];
/// Height of a line to write on, mm.
const WRITE: f64 = 6.6;
/// Height of a line of words of which one is ringed, and the room between two of them, mm.
const RING: (f64, f64) = (6.0, 5.0);

/// The height of a group that stays on one page, mm.
const SMALL_GROUP: f64 = 50.0;
/// Room above and below a line over the whole width, mm.
const RULE: (f64, f64) = (1.2, 1.5);

const LABEL: Style = text(8.0, Weight::SemiBold, INK);
const CHOICE: Style = text(9.5, Weight::Regular, INK);

/// What stands at the left of the first row of a group.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Lead {
    /// The group at the head of what follows, for a page that begins within it.
    pub(super) above: Option<&'static str>,
    /// The group.
    pub(super) group: Option<&'static str>,
    /// A group that is in another.
    pub(super) within: Option<&'static str>,
    /// In small print.
    pub(super) comment: &'static str,
}

/// Sets the fields of a group, row by row; a small group stays on one page.
pub(super) fn fields(flow: &mut Flow<'_>, lead: &Lead, fields: &[Field]) -> Result<(), SetError> {
    let wide = flow.width();
    let mut rows = Vec::new();
    let mut from = 0;
    while from < fields.len() {
        let to = from + fill(&fields[from..], wide)?.len();
        rows.push((from, to, height(&fields[from..to], lead, wide)? + RULE.0 + RULE.1));
        from = to;
    }
    let whole: f64 = rows.iter().map(|row| row.2).sum();
    for (from, to, height) in rows {
        let turned = flow.need(if from == 0 && whole <= SMALL_GROUP { whole } else { height })?;
        let lead = match from {
            0 if turned => Lead { group: lead.group.or(lead.above), ..*lead },
            0 => *lead,
            _ if turned => Lead { group: lead.above, within: lead.within, ..Lead::default() },
            _ => Lead::default(),
        };
        flow.put(|frame| {
            if lead.group.is_some() {
                rule(frame);
            }
            row(frame, &lead, &fields[from..to])
        })?;
        flow.space(0.7);
    }
    Ok(())
}

/// A line over the whole width, above a group.
pub(super) fn rule(frame: &mut Frame<'_>) {
    frame.space(RULE.0);
    let (area, y) = (frame.area(), frame.y());
    let block = frame.page().block(Role::Artifact);
    block.line(Point::new(area.x0, y), Point::new(area.x1, y), &THIN);
    frame.space(RULE.1);
}

/// Sets one row of fields, with what stands at their left.
fn row(frame: &mut Frame<'_>, lead: &Lead, fields: &[Field]) -> Result<(), SetError> {
    let wide = frame.area().width();
    let (spans, step, height) = (fill(fields, wide)?, step(wide), height(fields, lead, wide)?);
    let width = |span: usize| span as f64 * step - BETWEEN;
    let what = fields.first().map_or("", |field| &field.label);
    let place = frame.take(height, what)?;
    let page = frame.page();
    lead.set(page, place)?;
    let mut x = place.x0 + LEAD + BETWEEN;
    for (field, span) in fields.iter().zip(&spans) {
        let own = Rect::new(x, place.y0, x + width(*span), place.y1);
        field.set(page.block(Role::Paragraph), own)?;
        x += *span as f64 * step;
    }
    Ok(())
}

/// Height of a row of fields.
fn height(fields: &[Field], lead: &Lead, wide: f64) -> Result<f64, SetError> {
    let mut height = lead.height()?;
    for (field, span) in fields.iter().zip(fill(fields, wide)?) {
        let width = span as f64 * step(wide) - BETWEEN;
        height = height.max(field.words_height(width)? + field.answer_height(width)?);
    }
    Ok(height)
}

/// Width of one column with the room beside it.
fn step(wide: f64) -> f64 {
    (wide - LEAD) / COLUMNS as f64
}

/// How many columns each of the first fields takes that find room in one row; the last of them
/// takes what is left, where it is answered in words.
fn fill(fields: &[Field], wide: f64) -> Result<Vec<usize>, SetError> {
    let mut spans: Vec<usize> = Vec::new();
    for field in fields {
        let span = field.span(step(wide))?;
        if spans.iter().sum::<usize>() + span > COLUMNS && !spans.is_empty() {
            break;
        }
        spans.push(span);
    }
    let left = COLUMNS - spans.iter().sum::<usize>().min(COLUMNS);
    let is_words = |field: &Field| matches!(field.answer, Answer::Words(_));
    if let Some((last, field)) = spans.iter_mut().zip(fields).last()
        && is_words(field)
    {
        *last += left;
    }
    Ok(spans)
}

impl Lead {
    /// What is said, in its order.
    fn lines(&self) -> [(Role, &'static str, Style); 3] {
        [
            (Role::Heading(2), self.group.unwrap_or_default(), LESSER_HEADING),
            (Role::Heading(3), self.within.unwrap_or_default(), STRONG),
            (Role::Paragraph, self.comment, SMALL),
        ]
    }

    fn height(&self) -> Result<f64, SetError> {
        let mut height = 0.0;
        for (_, said, style) in self.lines() {
            if !said.is_empty() {
                height += wrap(said, &style, LEAD)?.len() as f64 * style.line_height();
            }
        }
        Ok(height)
    }

    fn set(&self, page: &mut Page, place: Rect) -> Result<(), SetError> {
        let mut y = place.y0;
        for (role, said, style) in self.lines() {
            if said.is_empty() {
                continue;
            }
            let at = Point::new(place.x0, y);
            page.block(role).paragraph(at, LEAD, said, &style, Align::Left)?;
            y += wrap(said, &style, LEAD)?.len() as f64 * style.line_height();
        }
        Ok(())
    }
}

impl Field {
    /// The fewest columns in which its label has one line, its comment two, and words to be ringed
    /// one.
    fn span(&self, step: f64) -> Result<usize, SetError> {
        let least = match &self.answer {
            Answer::Words(1) => 4,
            Answer::Words(_) => COLUMNS,
            Answer::Lines(lines) if lines.len() > 1 => 4,
            Answer::Lines(lines) if lines[0].unit.is_empty() && !self.is_whole() => 3,
            _ => 0,
        };
        for span in SPANS.into_iter().filter(|span| *span >= least) {
            let width = span as f64 * step - BETWEEN;
            let label = measure(&self.label, &LABEL)? <= width;
            let comment = wrap(self.comment, &SMALL, width)?.len() <= 1;
            let ring = match &self.answer {
                Answer::Ring(words) => rows_of_words(words, width)?.len() == 1,
                _ => true,
            };
            if label && comment && ring {
                return Ok(span);
            }
        }
        Ok(COLUMNS)
    }

    fn is_whole(&self) -> bool {
        matches!(self.question.row().kind, Kind::Whole { .. })
    }

    /// Height of label and comment.
    fn words_height(&self, width: f64) -> Result<f64, SetError> {
        let label = wrap(&self.label, &LABEL, width)?.len() as f64 * LABEL.line_height();
        let lines =
            if self.comment.is_empty() { 0 } else { wrap(self.comment, &SMALL, width)?.len() };
        Ok(label + lines as f64 * SMALL.line_height())
    }

    /// Height of the room for the answer.
    fn answer_height(&self, width: f64) -> Result<f64, SetError> {
        Ok(match &self.answer {
            Answer::Lines(_) => WRITE,
            Answer::Words(lines) => *lines as f64 * WRITE,
            Answer::Ring(words) => rows_of_words(words, width)?.len() as f64 * RING.0,
            Answer::Known(_) => RING.0,
        })
    }

    fn set(&self, block: &mut Block, place: Rect) -> Result<(), SetError> {
        let wide = place.width();
        block.paragraph(place.origin(), wide, &self.label, &LABEL, Align::Left)?;
        if !self.comment.is_empty() {
            let label = wrap(&self.label, &LABEL, wide)?.len() as f64 * LABEL.line_height();
            let at = place.origin() + (0.0, label);
            block.paragraph(at, wide, self.comment, &SMALL, Align::Left)?;
        }
        let room = Rect { y0: place.y1 - self.answer_height(wide)?, ..place };
        match &self.answer {
            Answer::Lines(lines) => {
                let step = (wide + BETWEEN) / lines.len() as f64;
                for (at, line) in lines.iter().enumerate() {
                    let x0 = room.x0 + at as f64 * step;
                    line.set(block, Rect { x0, x1: x0 + step - BETWEEN, ..room })?;
                }
            }
            Answer::Words(lines) => {
                for line in 1..=*lines {
                    let y = room.y0 + line as f64 * WRITE - 1.0;
                    block.line(Point::new(room.x0, y), Point::new(room.x1, y), &THIN);
                }
            }
            Answer::Ring(words) => {
                for (row, words) in rows_of_words(words, wide)?.iter().enumerate() {
                    let baseline = room.y0 + (row + 1) as f64 * RING.0 - 2.0;
                    let mut x = room.x0;
                    for word in words {
                        let at = Point::new(x, baseline);
                        x += block.text(at, word, &CHOICE, Align::Left)? + RING.1;
                    }
                }
            }
            Answer::Known(said) => {
                let at = Point::new(room.x0, room.y1 - 2.0);
                block.text(at, said, &STRONG, Align::Left)?;
            }
        }
        Ok(())
    }
}

impl Line {
    /// Sets the words before and after it, and the line between them.
    pub(super) fn set(&self, block: &mut Block, place: Rect) -> Result<(), SetError> {
        let y = place.y1 - 1.0;
        let (mut from, mut to) = (place.x0, place.x1);
        if !self.before.is_empty() {
            let at = Point::new(from, y - 0.4);
            from += block.text(at, self.before, &SMALL, Align::Left)? + 1.2;
        }
        if !self.unit.is_empty() {
            let at = Point::new(to, y - 0.4);
            to -= block.text(at, self.unit, &SMALL, Align::Right)? + 1.0;
        }
        block.line(Point::new(from, y), Point::new(to, y), &THIN);
        Ok(())
    }
}

/// Words to be ringed, broken into lines with room around each.
fn rows_of_words(words: &[String], width: f64) -> Result<Vec<Vec<&str>>, SetError> {
    let mut rows: Vec<Vec<&str>> = vec![Vec::new()];
    let mut x = 0.0;
    for word in words {
        let own = measure(word, &CHOICE)?;
        let row = rows.len() - 1;
        if x + own > width && !rows[row].is_empty() {
            rows.push(vec![word]);
            x = own + RING.1;
        } else {
            rows[row].push(word);
            x += own + RING.1;
        }
    }
    Ok(rows)
}

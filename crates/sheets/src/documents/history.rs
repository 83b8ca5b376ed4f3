//! The record of one client as pages: each entry with a small drawing of the cells after it.

use case::text::LengthUnit;
use case::{Cells, Entry, Moment};
use cushion::{CompartmentIx, Pattern};
use kurbo::{Point, Rect};

use super::look::{BODY, SMALL, STRONG};
use super::views::{View, draw, mark_clients_left};
use super::{ClientPapers, DocumentError};
use crate::frame::Frame;
use crate::page::{Align, Document, Role};
use crate::paper::Paper;
use crate::text::{SetError, Style, wrap};

/// Width and height of a drawing, in millimetres.
const DRAWING: [f64; 2] = [46.0, 40.0];
/// Between drawing and words, in millimetres.
const GAP: f64 = 5.0;
/// Between entries, in millimetres.
const APART: f64 = 4.0;

/// Composes the pages of a client's record, oldest entry first.
///
/// # Errors
///
/// Fails where a character has no glyph.
pub fn history_pages(
    papers: &ClientPapers<'_>,
    moments: &[Moment<'_>],
    paper: Paper,
) -> Result<Document, DocumentError> {
    let texts = papers.language.history();
    let origin = papers.language.fill_card_origin(papers.plan, papers.date);
    let foot = [texts.drawings, &origin];
    papers.flowing(paper, [texts.title, texts.subject], &foot, |flow| {
        let (mut drawn, mut same): (Option<&Cells>, bool) = (None, true);
        for moment in moments {
            if let Entry::Plan(plan) = moment.entry {
                same = plan.layout == papers.plan.layout && plan.size == papers.plan.size;
            }
            let cells = moment.cells.as_ref().filter(|cells| same && is_of(papers.pattern, cells));
            let changed = cells.filter(|cells| drawn != Some(*cells));
            drawn = cells.or(drawn);
            flow.put(|frame| entry(frame, papers, moment, changed))?;
            flow.space(APART);
        }
        Ok(())
    })
}

/// Whether there is a count for each compartment of a pattern, and no other.
fn is_of(pattern: &Pattern, cells: &Cells) -> bool {
    let mut all = pattern.compartments().iter();
    cells.len() == pattern.compartments().len() && all.all(|own| cells.contains_key(&own.number))
}

/// One entry: its drawing at the left where the cells changed, its words beside it.
fn entry(
    frame: &mut Frame<'_>,
    papers: &ClientPapers<'_>,
    moment: &Moment<'_>,
    cells: Option<&Cells>,
) -> Result<(), SetError> {
    let indent = DRAWING[0] + GAP;
    let words = words(papers, moment);
    let width = frame.area().width() - indent;
    let mut height = 0.0;
    for (text, style) in &words {
        height += wrap(text, style, width)?.len() as f64 * style.line_height();
    }
    let least = if cells.is_some() { DRAWING[1] } else { 0.0 };
    let place = frame.take(f64::max(height, least), &words[0].0)?;
    if let Some(cells) = cells {
        drawing(
            frame,
            papers,
            cells,
            Rect::new(place.x0 + 3.0, place.y0, place.x0 + DRAWING[0], place.y0 + DRAWING[1]),
        )?;
    }
    let mut y = place.y0;
    for (text, style) in &words {
        let at = Point::new(place.x0 + indent, y);
        let block = frame.page().block(Role::Paragraph);
        block.paragraph(at, width, text, style, Align::Left)?;
        y += wrap(text, style, width)?.len() as f64 * style.line_height();
    }
    Ok(())
}

/// What is said of an entry, a paragraph each; there is always one.
fn words(papers: &ClientPapers<'_>, moment: &Moment<'_>) -> Vec<(String, Style)> {
    let (language, texts) = (papers.language, papers.language.history());
    let own = moment.entry;
    let mark = if moment.withdrawn { language.lines().withdrawn } else { "" };
    let mut all = vec![
        (format!("{}. {mark}{}, {}", moment.number, own.on(), own.by()), STRONG),
        (language.entry(own), BODY),
    ];
    let of_plan = matches!(own, Entry::Plan(_));
    let expected = moment.expected.filter(|_| of_plan);
    all.extend(
        expected.map(|own| (format!("{}: {}", texts.expected, language.expected(own)), BODY)),
    );
    let mut last = Vec::new();
    let in_pounds = papers.client.lengths == LengthUnit::Inches;
    last.extend(
        moment
            .weight
            .map(|own| format!("{}: {}.", texts.weight, language.body_weight(own, in_pounds))),
    );
    last.extend(moment.bag.map(|own| language.bag(own)));
    if !last.is_empty() {
        all.push((last.join(" "), SMALL));
    }
    all
}

fn drawing(
    frame: &mut Frame<'_>,
    papers: &ClientPapers<'_>,
    cells: &Cells,
    area: Rect,
) -> Result<(), SetError> {
    let pattern = papers.pattern;
    let counts: Vec<(u8, u32)> = cells.iter().map(|(number, count)| (*number, *count)).collect();
    let block = frame.page().block(Role::Figure { alt: papers.language.counts(&counts) });
    let label = |ix: CompartmentIx| {
        let count = cells.get(&pattern[ix].number).copied().unwrap_or(0);
        (pattern[ix].number.to_string(), Some(count.to_string()))
    };
    draw(block, pattern, View::Above, area, label, 9.5, 0.0)?;
    mark_clients_left(block, pattern, View::Above, area);
    Ok(())
}

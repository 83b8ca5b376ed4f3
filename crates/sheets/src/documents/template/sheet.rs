//! The one large page of a template: every piece at true size.

use kurbo::{Affine, Point, Rect};

use super::super::look::{BODY, INK, SMALL, STRONG, facts, title_line};
use super::super::{DocumentError, document};
use super::TemplatePapers;
use super::drawing::{Window, draw_piece, pen};
use crate::frame::Frame;
use crate::page::{Align, Document, Page, Pen, Role};
use crate::paper::Paper;
use crate::text::{SetError, measure};

/// White around the sheet, in millimetres.
const MARGIN: f64 = 12.0;
/// Room for title, facts and notes above the pieces, in millimetres.
const HEAD: f64 = 92.0;
/// The scale bar, in millimetres.
const BAR: f64 = 100.0;

/// Composes the page, as large as the pieces need.
///
/// # Errors
///
/// Fails where something finds no room.
pub fn template_sheet(own: &TemplatePapers<'_>) -> Result<Document, DocumentError> {
    let (language, template) = (own.language, own.template);
    let texts = language.template();
    let (width, height) = (template.sheet.width(), template.sheet.height());
    let paper = Paper::Custom { width: width + 2.0 * MARGIN, height: height + HEAD + 2.0 * MARGIN };
    let mut page = Page::new(language, paper, texts.title);
    let head = Rect::new(MARGIN, MARGIN, width + MARGIN, MARGIN + HEAD);
    head_of(&mut page, own, head)?;
    let place = Affine::new([1.0, 0.0, 0.0, -1.0, MARGIN, MARGIN + HEAD + height]);
    for piece in &template.pieces {
        draw_piece(&mut page, language, piece, Window { place, seen: None })?;
    }
    let foot = format!("{}, {}", own.program, own.date);
    let at = Point::new(MARGIN, page.bounds().y1 - 4.0);
    let foot = language.unreviewed().map_or_else(|| foot.clone(), |own| format!("{foot}. {own}"));
    page.block(Role::Foot).text(at, &foot, &SMALL, Align::Left)?;
    let mut made = document(language, texts.title, texts.subject, own.date, own.program);
    made.pages.push(page);
    Ok(made)
}

/// Title, facts, notes in two columns, the lines and the scale bar.
fn head_of(page: &mut Page, own: &TemplatePapers<'_>, area: Rect) -> Result<(), SetError> {
    let texts = own.language.template();
    // A narrow sheet has all in a column as wide as a page of paper.
    let mut frame = Frame::new(page, Rect { x1: area.x1.min(area.x0 + 420.0), ..area });
    title_line(&mut frame, texts.title, texts.untested, true)?;
    facts(&mut frame, &own.facts())?;
    frame.paragraph(texts.full_size, &STRONG)?;
    let (top, wide) = (frame.y() + 1.0, frame.area().width());
    let mut notes = own.notes().into_iter().peekable();
    for column in 0..2 {
        let x = area.x0 + column as f64 * (wide / 2.0 + 3.0);
        let place = Rect::new(x, top, x + wide / 2.0 - 3.0, area.y1 - 12.0);
        let mut frame = Frame::new(page, place);
        // What finds no room in the first column stands in the second.
        while let Some(note) = notes.peek() {
            match frame.paragraph(note, &BODY) {
                Err(SetError::Overflow { .. }) if column == 0 => break,
                other => other?,
            }
            frame.space(0.8);
            notes.next();
        }
    }
    scale_and_lines(page, own, Point::new(area.x0, area.y1 - 5.0))
}

/// The scale bar, and beside it a piece of each line with its name.
fn scale_and_lines(page: &mut Page, own: &TemplatePapers<'_>, at: Point) -> Result<(), SetError> {
    let texts = own.language.template();
    let block = page.block_called("scale-bar", Role::Figure { alt: texts.scale_bar.to_owned() });
    block.line(at, at + (BAR, 0.0), &Pen::solid(0.4, INK));
    for step in 0..=10 {
        let x = BAR / 10.0 * f64::from(step);
        let high = if step % 5 == 0 { 3.0 } else { 1.6 };
        block.line(at + (x, 0.0), at + (x, -high), &Pen::solid(0.3, INK));
    }
    block.text(at + (BAR + 2.0, 0.0), texts.scale_bar, &SMALL, Align::Left)?;
    lines(page, own, at + (BAR + 25.0, 0.0))
}

/// A piece of each line, with its name beside it.
pub(super) fn lines(page: &mut Page, own: &TemplatePapers<'_>, at: Point) -> Result<(), SetError> {
    use templates::Layer;
    let texts = own.language.template();
    let named = [
        (Layer::Cut, texts.cut),
        (Layer::Stitch, texts.stitch),
        (Layer::Notch, texts.notch),
        (Layer::Opening, texts.opening),
        (Layer::Grain, texts.grain),
    ];
    let block = page.block(Role::Paragraph);
    let mut x = at.x;
    for (layer, name) in named {
        let from = Point::new(x, at.y - 1.0);
        let to = if layer == Layer::Notch { from + (0.0, -3.0) } else { from + (12.0, 0.0) };
        block.line(from, to, &pen(layer));
        let beside = if layer == Layer::Notch { 2.0 } else { 14.0 };
        block.text(Point::new(x + beside, at.y), name, &SMALL, Align::Left)?;
        x += beside + measure(name, &SMALL)? + 6.0;
    }
    Ok(())
}

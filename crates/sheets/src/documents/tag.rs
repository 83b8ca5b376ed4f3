//! The tag that is sewn to the cover: which way round, and the numbers. Never a count.

use case::Date;
use cushion::{CompartmentIx, Pattern};
use kurbo::{Point, Rect};
use words::Language;

use super::look::{ACCENT, INK, SOFT, text};
use super::views::{View, draw};
use super::{DocumentError, DrawnBy, document};
use crate::font::Weight;
use crate::frame::Frame;
use crate::page::{Align, Document, Page, Pen, Role};
use crate::paper::Paper;
use crate::text::beginning;

/// How much of a plugin and its parameters there is room for, in characters; the digest, by which
/// all is known again, is whole.
const MOST_OF_A_PLUGIN: usize = 60;

/// How much of a serial there is room for, in characters.
const MOST_OF_A_SERIAL: usize = 40;

/// Composes the sewn-in tag of a cushion that has no serial, 100 x 60 mm.
///
/// # Errors
///
/// As [`tag_with_serial`].
pub fn tag(
    language: &dyn Language,
    pattern: &Pattern,
    drawn_by: Option<DrawnBy<'_>>,
    date: Date,
    program: &str,
) -> Result<Document, DocumentError> {
    tag_with_serial(language, pattern, (drawn_by, None), date, program)
}

/// Composes the sewn-in tag, 100 x 60 mm, with the serial of the cushion.
///
/// A tag outlives every plan, so it bears no counts: after a wash they would undo a set-up.
/// `drawn_by` is the plugin that drew the pattern, where one did.
///
/// # Errors
///
/// Fails where something finds no room.
pub fn tag_with_serial(
    language: &dyn Language,
    pattern: &Pattern,
    (drawn_by, serial): (Option<DrawnBy<'_>>, Option<&str>),
    date: Date,
    program: &str,
) -> Result<Document, DocumentError> {
    let texts = language.sewn_in_tag();
    let mut page = Page::new(language, Paper::Tag, texts.title);
    let bounds = page.bounds();
    let drawing = Rect::new(4.0, 11.0, 50.0, 55.0);
    let block = page.block(Role::Figure { alt: texts.drawing.to_owned() });
    let large = text(13.0, Weight::Bold, ACCENT);
    let (x, tip) = (drawing.center().x, 2.6);
    let width = block.text(Point::new(x, 8.4), language.shared().front, &large, Align::Centre)?;
    for side in [-1.0, 1.0] {
        let at = x + side * (width / 2.0 + 5.0);
        block.arrow(Point::new(at, 9.0), Point::new(at, tip), 3.0, &Pen::solid(0.9, ACCENT));
    }
    let numbers = |ix: CompartmentIx| (pattern[ix].number.to_string(), None);
    draw(block, pattern, View::Below, drawing, numbers, 12.0, 0.0)?;
    let mut frame = Frame::new(&mut page, Rect::new(54.0, 4.0, bounds.x1 - 3.0, bounds.y1 - 3.0));
    frame.heading(1, texts.this_side_down, &text(12.0, Weight::Bold, INK))?;
    frame.space(1.0);
    frame.paragraph(texts.sides, &text(8.0, Weight::Regular, INK))?;
    frame.space(1.2);
    frame.paragraph(texts.fill_by_the_card, &text(9.5, Weight::Bold, INK))?;
    frame.space(1.2);
    let what = format!("{}, {}", pattern.layout(), language.size(pattern.size()));
    frame.paragraph(&what, &text(8.5, Weight::SemiBold, INK))?;
    if let Some(serial) = serial {
        let serial = language.serial(&beginning(serial, MOST_OF_A_SERIAL));
        frame.paragraph(&serial, &text(8.5, Weight::SemiBold, INK))?;
    }
    let small = text(6.5, Weight::Regular, SOFT);
    frame.paragraph(&format!("{program}, {date}"), &small)?;
    if let Some(DrawnBy { plugin, layout }) = drawn_by {
        let plugin = &beginning(plugin, MOST_OF_A_PLUGIN);
        frame.paragraph(&DrawnBy { plugin, layout }.said(language), &small)?;
    }
    let mut document = document(language, texts.title, texts.subject, date, program);
    document.pages.push(page);
    Ok(document)
}

//! A square of 100 mm to sketch in, by which one also sees whether the page was printed at its
//! size; beside it, lines for notes.

use kurbo::{Point, Rect};
use words::Language;

use crate::documents::look::{BODY, FIRM, INK, LESSER_HEADING, field_rows, text};
use crate::font::Weight;
use crate::frame::Frame;
use crate::page::{Align, Pen};
use crate::text::SetError;

const SIDE: f64 = 100.0;
/// Room for the words at the edges, mm.
const WORDS: f64 = 5.0;

/// Sets the square under its heading.
pub(super) fn sketch(frame: &mut Frame<'_>, language: &dyn Language) -> Result<(), SetError> {
    let (texts, shared) = (language.measuring_form(), language.shared());
    frame.heading(2, texts.sketch, &LESSER_HEADING)?;
    let (place, block) = frame.figure(SIDE + WORDS, texts.square)?;
    let square = Rect::from_origin_size((place.x0 + WORDS, place.y0 + WORDS), (SIDE, SIDE));
    block.rect(square, None, Some(Pen::solid(FIRM.width / 2.0, INK)));
    let (style, gap) = (text(8.0, Weight::Bold, INK), 1.5);
    let middle = square.center();
    let front = Point::new(middle.x, square.y0 - gap);
    block.text(front, shared.front_edge, &style, Align::Centre)?;
    let left = Point::new(square.x0 - gap, middle.y);
    block.turned_text(left, -90.0, shared.clients_left, &style, Align::Centre)?;
    let right = Point::new(square.x1 + gap, middle.y);
    block.turned_text(right, 90.0, shared.clients_right, &style, Align::Centre)?;
    let beside = Rect::new(square.x1 + 10.0, square.y0, place.x1, square.y1);
    let mut column = Frame::new(frame.page(), beside);
    column.paragraph(texts.print_at_full_size, &BODY)?;
    column.space(1.0);
    let blank: [&[&str]; 6] = [&[texts.notes], &[""], &[""], &[""], &[""], &[""]];
    field_rows(&mut column, &blank, 8.6)
}

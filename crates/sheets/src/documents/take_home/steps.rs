//! The steps of each day, numbered, a picture and one action a line.

use kurbo::{Point, Rect};
use words::StepTexts;

use super::super::look::{ACCENT, INK, PALE, THIN};
use super::pictures::{self, Picture};
use super::{GAP, LINE, Sheet, section, side_by_side};
use crate::color::Color;
use crate::flow::Flow;
use crate::frame::Frame;
use crate::page::{Align, Fill, Pen, Role};
use crate::text::{SetError, measure};

pub(super) fn set(flow: &mut Flow<'_>, sheet: Sheet<'_>) -> Result<(), SetError> {
    let texts = sheet.papers.language.take_home();
    flow.put(|frame| how_often(frame, sheet))?;
    flow.space(GAP);
    flow.put(|frame| section(frame, texts.before_the_steps, sheet.print))?;
    flow.space(GAP);
    for (row, pair) in Picture::STEPS.chunks(2).enumerate() {
        let [left, right] = [(2 * row, pair[0]), (2 * row + 1, pair[1])];
        flow.put(|frame| {
            side_by_side(
                frame,
                0.5,
                |frame| step(frame, sheet, left),
                |frame| step(frame, sheet, right),
            )?;
            match pair[0] {
                Picture::LeftBone => thumb(frame, sheet),
                Picture::Mirror => frame.paragraph(texts.dark_skin, &sheet.print.words()),
                _ => Ok(()),
            }
        })?;
        flow.space(GAP);
    }
    flow.put(|frame| section(frame, texts.after_the_steps, sheet.print))
}

/// Which steps are made how often; what nobody can say for all is filled in.
fn how_often(frame: &mut Frame<'_>, sheet: Sheet<'_>) -> Result<(), SetError> {
    let (print, texts) = (sheet.print, sheet.papers.language.take_home());
    let said = texts.how_often.map(|(steps, when)| match when {
        Some(when) => (format!("{steps} {when}"), false),
        None => (steps.to_owned(), true),
    });
    // Side by side where they find room, else one under the other.
    let mut x = 0.0;
    for (words, is_blank) in &said {
        let wide = measure(words, &print.words())? + if *is_blank { LINE } else { 0.0 } + 8.0;
        if x > 0.0 && x + wide > frame.area().width() {
            x = 0.0;
        }
        if x == 0.0 {
            frame.take(print.words().line_height() + 1.0, words)?;
        }
        let at = Point::new(frame.area().x0 + x, frame.y() - 2.4);
        let block = frame.page().block(Role::Paragraph);
        let end = at.x + block.text(at, words, &print.words(), Align::Left)? + 2.0;
        if *is_blank {
            block.line(Point::new(end, at.y + 0.8), Point::new(end + LINE, at.y + 0.8), &THIN);
        }
        x += wide;
    }
    Ok(())
}

/// A step: its number in a square, what it is, who makes it, the picture, the actions.
fn step(
    frame: &mut Frame<'_>,
    sheet: Sheet<'_>,
    (at, which): (usize, Picture),
) -> Result<(), SetError> {
    let (print, texts) = (sheet.print, sheet.papers.language.take_home());
    let StepTexts { heading, is_for_a_helper, picture, actions } = texts.steps[at];
    let style = print.step();
    let who = if is_for_a_helper { texts.helper } else { texts.you };
    let label = print.label();
    let number = format!("{}", at + 1);
    let radius = style.size_mm() * 0.62;
    let indent = 2.0 * radius + 2.0;
    let pill = measure(who, &label)? + 4.0;
    let place = frame.take(style.line_height().max(2.0 * radius), heading)?;
    let middle = place.center().y;
    let block = frame.page().block(Role::Heading(2));
    // A square: a disc would be a pocket.
    let square = Point::new(place.x0 + radius, middle);
    let around = Rect::from_center_size(square, (2.0 * radius, 2.0 * radius));
    let path = kurbo::Shape::to_path(&around.to_rounded_rect(1.2), 1e-2);
    block.path(path, Some(Fill::solid(ACCENT)), None);
    let on = |style: &crate::text::Style, x: f64| Point::new(x, middle + style.cap_height() / 2.0);
    block.text(on(&style, square.x), &number, &style.colored(Color::WHITE), Align::Centre)?;
    block.text(on(&style, place.x0 + indent), heading, &style, Align::Left)?;
    // Beside the heading where there is room, else under it.
    let beside = indent + measure(heading, &style)? + 2.0 + pill <= place.width();
    let line = if beside { place } else { frame.take(label.line_height() + 1.0, who)? };
    let right = if beside { line.x1 } else { line.x0 + indent + pill };
    let around = Rect::new(right - pill, line.y0 + 0.3, right, line.y1 - 0.3);
    let block = frame.page().block(Role::Paragraph);
    let round = around.to_rounded_rect(around.height() / 2.0);
    let ground = if is_for_a_helper { PALE } else { Color::WHITE };
    let path = kurbo::Shape::to_path(&round, 1e-2);
    block.path(path, Some(Fill::solid(ground)), Some(Pen::solid(0.4, INK)));
    let baseline = Point::new(around.center().x, around.center().y + label.cap_height() / 2.0);
    block.text(baseline, who, &label, Align::Centre)?;
    frame.space(1.0);
    let (place, block) = frame.figure(pictures::HEIGHT, picture)?;
    pictures::draw(block, sheet.papers.language, which, place, &label)?;
    frame.space(1.0);
    // What the therapist allowed on the cushion is told in the file.
    let layers = &sheet.papers.client.layers;
    let allowed = if layers.pad || layers.sling { texts.nothing_on_it } else { "" };
    for action in actions.iter().filter(|own| **own != allowed) {
        frame.item("•", 5.0, action, &print.words())?;
    }
    Ok(())
}

/// A bar as long as a thumb is wide, and what the hand should find.
fn thumb(frame: &mut Frame<'_>, sheet: Sheet<'_>) -> Result<(), SetError> {
    /// A thumb's width, in millimetres: common practice, no source.
    const THUMB: f64 = 25.0;
    let (print, texts) = (sheet.print, sheet.papers.language.take_home());
    frame.space(1.0);
    let style = print.words();
    let indent = THUMB + 4.0;
    let start = frame.y();
    frame.words(Role::Paragraph, indent, texts.thumb, &style, Align::Left)?;
    let bar = Rect::new(frame.area().x0, start + 1.0, frame.area().x0 + THUMB, start + 5.0);
    frame.page().block(Role::Artifact).rect(bar, Some(Fill::solid(ACCENT)), None);
    frame.paragraph(texts.after_the_hand, &print.firmly())
}

//! Axes with their units, and legends: what drawings of numbers need to be read.

use case::text::LengthUnit;
use kurbo::{Point, Rect};

use super::look::{INK, SMALL, SOFT};
use crate::frame::Frame;
use crate::page::{Align, Block, Pen, Role};
use crate::text::{SetError, measure};

/// The line of an axis and its marks.
pub(super) const AXIS: Pen = Pen::solid(0.3, SOFT);
/// Length of a mark, mm.
pub(super) const MARK: f64 = 1.0;

/// An axis of lengths, with a mark at each round length.
pub(super) struct Axis<'a> {
    /// What it measures, with the unit.
    pub(super) words: &'a str,
    /// In what lengths are read.
    pub(super) unit: LengthUnit,
    /// Where it begins, mm.
    pub(super) from: f64,
    /// Where it ends, mm.
    pub(super) to: f64,
}

impl Axis<'_> {
    /// The round lengths within it, so many of the unit apart: where each is, mm, and its number.
    fn marks(&self, apart: f64) -> impl Iterator<Item = (f64, String)> {
        let step = apart * self.unit.in_mm();
        // A micrometre for the rounding of sums.
        let first = ((self.from - 1e-3) / step).ceil() as i64;
        let last = ((self.to + 1e-3) / step).floor() as i64;
        (first..=last).map(move |at| (at as f64 * step, (at as f64 * apart).to_string()))
    }

    /// Draws it upright with its foot at a point, so many mm of the page to a mm.
    pub(super) fn beside(
        &self,
        block: &mut Block,
        foot: Point,
        scale: f64,
    ) -> Result<(), SetError> {
        let at = |height: f64| foot - (0.0, (height - self.from) * scale);
        block.line(foot, at(self.to), &AXIS);
        let apart = match self.unit {
            LengthUnit::Millimetres => 20.0,
            LengthUnit::Inches => 1.0,
        };
        for (height, number) in self.marks(apart) {
            let right = at(height);
            block.line(right - (MARK, 0.0), right, &AXIS);
            let baseline = right + (-MARK - 1.0, SMALL.cap_height() / 2.0);
            block.text(baseline, &number, &SMALL, Align::Right)?;
        }
        let middle = at(f64::midpoint(self.from, self.to)) - (MARK + 8.0, 0.0);
        block.turned_text(middle, -90.0, self.words, &SMALL, Align::Centre)?;
        Ok(())
    }

    /// Draws it under a drawing; `on_page` gives the place of a length on its line. Words name its
    /// two ends.
    pub(super) fn under(
        &self,
        block: &mut Block,
        on_page: impl Fn(f64) -> Point,
        ends: [&str; 2],
    ) -> Result<(), SetError> {
        let (from, to) = (on_page(self.from), on_page(self.to));
        block.line(from, to, &AXIS);
        let apart = match self.unit {
            LengthUnit::Millimetres => 50.0,
            LengthUnit::Inches => 2.0,
        };
        let line = SMALL.line_height();
        for (at, number) in self.marks(apart) {
            let top = on_page(at);
            block.line(top, top + (0.0, MARK), &AXIS);
            block.text(top + (0.0, MARK + line - 0.4), &number, &SMALL, Align::Centre)?;
        }
        let down = MARK + 2.0 * line;
        let words = SMALL.colored(INK);
        block.text(from + (0.0, down), ends[0], &words, Align::Left)?;
        block.text(to + (0.0, down), ends[1], &words, Align::Right)?;
        block.text(from.midpoint(to) + (0.0, down), self.words, &SMALL, Align::Centre)?;
        Ok(())
    }
}

/// Draws a piece of what a legend explains into a box.
pub(super) type Sample = fn(&mut Block, Rect);

/// Width and height of a piece of what a legend explains, mm.
const SAMPLE: [f64; 2] = [8.0, 3.0];
/// Between a piece and its words, and between two entries, mm.
const GAPS: [f64; 2] = [1.5, 5.0];

/// Sets a legend, as many entries in a row as find room: a piece of what is drawn, and what it is.
pub(super) fn legend(frame: &mut Frame<'_>, entries: &[(&str, Sample)]) -> Result<(), SetError> {
    const ROW: f64 = 4.6;
    let style = SMALL.colored(INK);
    let mut row: Option<Rect> = None;
    for (words, sample) in entries {
        let wide = SAMPLE[0] + GAPS[0] + measure(words, &style)?;
        let place = match row.filter(|own| own.width() >= wide) {
            Some(own) => own,
            None => frame.take(ROW, words)?,
        };
        let block = frame.page().block(Role::Paragraph);
        let middle = place.center().y;
        let top = middle - SAMPLE[1] / 2.0;
        sample(block, Rect::new(place.x0, top, place.x0 + SAMPLE[0], top + SAMPLE[1]));
        let at = Point::new(place.x0 + SAMPLE[0] + GAPS[0], middle + style.cap_height() / 2.0);
        block.text(at, words, &style, Align::Left)?;
        row = Some(Rect { x0: (place.x0 + wide + GAPS[1]).min(place.x1), ..place });
    }
    Ok(())
}

/// The least of 1, 2 and 5 times the powers of ten of which a number has at most five.
pub(super) fn round_step(most: u32) -> u64 {
    let powers = (0..10).map(|power| 10_u64.pow(power));
    let mut steps = powers.flat_map(|power| [power, 2 * power, 5 * power]);
    steps.find(|step| u64::from(most) <= 5 * step).unwrap_or(u64::from(most))
}

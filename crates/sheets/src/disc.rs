//! The disc with a number in it, which stands for a compartment in drawings and in tables.

use kurbo::{Point, Vec2};

use crate::color::Color;
use crate::font::Weight;
use crate::page::{Align, Block, Fill};
use crate::text::{SetError, Style, measure};

/// A disc as large as its number needs.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Disc {
    style: Style,
    /// Its radius, in millimetres.
    pub(crate) radius: f64,
}

impl Disc {
    /// The disc for a number in print of a size in points; those for one digit are as large as
    /// those for two.
    pub(crate) fn of(number: &str, size_pt: f64) -> Result<Self, SetError> {
        let style = Style::new(size_pt, Weight::Bold).colored(Color::WHITE);
        let corner = Vec2::new(measure(number, &style)?, style.cap_height()).hypot() / 2.0;
        let size = style.size_mm();
        Ok(Self { style, radius: (corner + 0.1 * size).max(0.7 * size) })
    }

    /// Draws it around a point.
    pub(crate) fn draw(
        self,
        block: &mut Block,
        middle: Point,
        number: &str,
        ground: Color,
    ) -> Result<(), SetError> {
        block.circle(middle, self.radius, Some(Fill::solid(ground)), None);
        let baseline = Point::new(middle.x, middle.y + self.style.cap_height() / 2.0);
        block.text(baseline, number, &self.style, Align::Centre).map(drop)
    }
}

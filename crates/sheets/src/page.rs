//! A finished page: everything placed, nothing left to decide.
//!
//! Millimetres from the top left corner, x to the right, y down. A page is a list of blocks in
//! reading order; a block is what a reader hears as one thing, and holds the marks that show it.
//! Exporters draw the marks in order and decide nothing.

use kurbo::{BezPath, Point, Rect, Shape as _};
use words::Language;

use crate::color::Color;
use crate::paper::Paper;
use crate::text::{SetError, Shaped, Style, wrap};

/// Pages that belong together, with what a file says of itself.
#[derive(Clone, Debug, PartialEq)]
pub struct Document {
    /// The title that a reader's window shows. Never the client's code.
    pub title: String,
    /// One sentence on what the document is for. Never the client's code.
    pub subject: String,
    /// The language as a BCP 47 tag, `en`.
    pub language: String,
    /// The date that the document bears, midnight UTC in the file.
    pub date: case::Date,
    /// Program and version, `seatwright 0.1.0`.
    pub program: String,
    /// The pages, in order.
    pub pages: Vec<Page>,
    /// A text that a PDF carries beside its pages.
    pub attached: Option<Attached>,
}

/// A text that a PDF carries as a file of its own.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Attached {
    /// What it is, in a few words. Never the client's code.
    pub about: String,
    /// The text, in ASCII.
    pub text: String,
}

/// One side of paper, finished.
#[derive(Clone, Debug, PartialEq)]
pub struct Page {
    /// What it is printed on.
    pub paper: Paper,
    /// The tag of its language by BCP 47.
    pub language: &'static str,
    /// What the page is, in a few words. Never the client's code: it becomes metadata.
    pub title: String,
    /// What is on it, in reading order; later blocks are drawn over earlier ones.
    pub blocks: Vec<Block>,
}

/// Marks that are read as one thing.
#[derive(Clone, Debug, PartialEq)]
pub struct Block {
    /// What it is to a reader.
    pub role: Role,
    /// By which programs find it again in an SVG: letters, digits and hyphens; unique on its page.
    pub id: Option<String>,
    /// What shows it; later marks are drawn over earlier ones.
    pub marks: Vec<Mark>,
}

/// What a block is to a reader who cannot see the page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Role {
    /// A heading; 1 is the title of the page, 6 the lowest.
    Heading(u8),
    /// Words.
    Paragraph,
    /// One entry of a list. Neighbours make one list.
    ListItem,
    /// One cell of a table. Neighbours of the same table make one table.
    Cell {
        /// Which table of the page.
        table: usize,
        /// Which row of the table.
        row: usize,
        /// Whether it heads a row or a column.
        header: Option<Heads>,
    },
    /// A drawing, with the words that stand for it.
    Figure {
        /// What the drawing says, as a sentence.
        alt: String,
    },
    /// The words at the foot of the page, which are read after all others.
    Foot,
    /// Rules, frames: nothing that must be read.
    Artifact,
}

/// What a heading cell of a table heads.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Heads {
    /// The cells below it.
    Column,
    /// The cells beside it.
    Row,
}

/// One mark on the paper.
#[derive(Clone, Debug, PartialEq)]
pub enum Mark {
    /// A path, filled or stroked.
    Shape(Shape),
    /// One run of text on a straight baseline.
    Text(TextRun),
}

/// A path with fill and pen; the fill is drawn first.
#[derive(Clone, Debug, PartialEq)]
pub struct Shape {
    /// The path, in millimetres. Every coordinate is finite.
    pub path: BezPath,
    /// The fill; `None` leaves the inside open.
    pub fill: Option<Fill>,
    /// The pen; `None` draws no line.
    pub pen: Option<Pen>,
}

/// A fill of one colour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fill {
    /// Its colour.
    pub color: Color,
    /// What counts as inside.
    pub rule: FillRule,
}

/// What counts as the inside of a path that crosses itself or has several rings.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FillRule {
    /// Winding number other than zero.
    NonZero,
    /// Odd number of crossings, so that inner rings are holes.
    EvenOdd,
}

/// A pen with round ends and joins.
#[derive(Clone, Debug, PartialEq)]
pub struct Pen {
    /// Width of the line, in millimetres, positive.
    pub width: f64,
    /// Its colour.
    pub color: Color,
    /// Lengths of dash and gap in turn, in millimetres; empty for an unbroken line.
    /// Round ends lengthen each dash by the width.
    pub dash: Vec<f64>,
}

/// Shaped text with its place.
#[derive(Clone, Debug, PartialEq)]
pub struct TextRun {
    /// Left end of the baseline, in millimetres.
    pub at: Point,
    /// Turn of the baseline about `at`, in degrees, clockwise on the page.
    pub angle: f64,
    /// Size, in points.
    pub size_pt: f64,
    /// Its colour.
    pub color: Color,
    /// The glyphs, with the text that they stand for.
    pub shaped: Shaped,
}

impl Block {
    /// Whether the block is an entry of a list that begins with a mark of its own: a number, a
    /// dash, a dot.
    pub(crate) fn has_label(&self) -> bool {
        match (&self.role, self.marks.as_slice()) {
            (Role::ListItem, [Mark::Text(mark), Mark::Text(words), ..]) => mark.at.y == words.at.y,
            _ => false,
        }
    }
}

impl Page {
    /// An empty page.
    pub fn new(language: &dyn Language, paper: Paper, title: impl Into<String>) -> Self {
        Self { paper, language: language.tag(), title: title.into(), blocks: Vec::new() }
    }

    /// Begins a block after the others and hands it out to be filled.
    pub fn block(&mut self, role: Role) -> &mut Block {
        self.blocks.push(Block { role, id: None, marks: Vec::new() });
        self.blocks.last_mut().expect("a block was just pushed")
    }

    /// Begins a block that programs find again by its id.
    pub fn block_called(&mut self, id: impl Into<String>, role: Role) -> &mut Block {
        let block = self.block(role);
        block.id = Some(id.into());
        block
    }

    /// The whole paper as a rectangle.
    pub fn bounds(&self) -> Rect {
        Rect::new(0.0, 0.0, self.paper.width(), self.paper.height())
    }

    /// The blocks in the order in which they are read: the foot last.
    pub fn in_order(&self) -> impl Iterator<Item = &Block> {
        let foot = |block: &&Block| block.role == Role::Foot;
        let others = self.blocks.iter().filter(move |block| !foot(block));
        others.chain(self.blocks.iter().filter(foot))
    }

    /// Every run of text, in reading order.
    pub fn texts(&self) -> impl Iterator<Item = &TextRun> {
        self.in_order().flat_map(|block| &block.marks).filter_map(|mark| match mark {
            Mark::Text(run) => Some(run),
            Mark::Shape(_) => None,
        })
    }
}

impl Fill {
    /// A fill under the nonzero rule.
    pub const fn solid(color: Color) -> Self {
        Self { color, rule: FillRule::NonZero }
    }

    /// A fill under the even-odd rule.
    pub const fn even_odd(color: Color) -> Self {
        Self { color, rule: FillRule::EvenOdd }
    }
}

impl Pen {
    /// An unbroken line of a width in millimetres.
    pub const fn solid(width: f64, color: Color) -> Self {
        Self { width, color, dash: Vec::new() }
    }

    /// A broken line: lengths of dash and gap, in millimetres.
    pub fn dashed(width: f64, color: Color, dash: f64, gap: f64) -> Self {
        Self { width, color, dash: vec![dash, gap] }
    }
}

/// Where text stands to the point or the width that it is given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Align {
    /// Begins at the point.
    Left,
    /// Its middle is at the point.
    Centre,
    /// Ends at the point.
    Right,
}

impl Align {
    /// How far left of its point a text of this width begins, in millimetres.
    pub const fn shift(self, width: f64) -> f64 {
        match self {
            Self::Left => 0.0,
            Self::Centre => width / 2.0,
            Self::Right => width,
        }
    }
}

impl Block {
    /// Draws a path.
    pub fn path(
        &mut self,
        path: impl Into<BezPath>,
        fill: Option<Fill>,
        pen: Option<Pen>,
    ) -> &mut Self {
        self.marks.push(Mark::Shape(Shape { path: path.into(), fill, pen }));
        self
    }

    /// Draws a rectangle.
    pub fn rect(&mut self, rect: Rect, fill: Option<Fill>, pen: Option<Pen>) -> &mut Self {
        self.path(rect.to_path(0.0), fill, pen)
    }

    /// Draws a straight line.
    pub fn line(&mut self, from: Point, to: Point, pen: &Pen) -> &mut Self {
        let mut path = BezPath::new();
        path.move_to(from);
        path.line_to(to);
        self.path(path, None, Some(pen.clone()))
    }

    /// Draws a circle, its radius in millimetres.
    pub fn circle(
        &mut self,
        centre: Point,
        radius: f64,
        fill: Option<Fill>,
        pen: Option<Pen>,
    ) -> &mut Self {
        let circle = kurbo::Circle::new(centre, radius);
        self.path(circle.to_path(1e-4), fill, pen)
    }

    /// Sets one line of text with its baseline at a point; returns its width in millimetres.
    pub fn text(
        &mut self,
        at: Point,
        text: &str,
        style: &Style,
        align: Align,
    ) -> Result<f64, SetError> {
        self.turned_text(at, 0.0, text, style, align)
    }

    /// Sets one line of text whose baseline is turned about the point by an angle in degrees,
    /// clockwise on the page; returns its width in millimetres.
    pub fn turned_text(
        &mut self,
        at: Point,
        angle: f64,
        text: &str,
        style: &Style,
        align: Align,
    ) -> Result<f64, SetError> {
        let shaped = Shaped::new(text, style)?;
        let width = shaped.width(style.size_pt);
        let (sin, cos) = turn(angle);
        let shift = align.shift(width);
        let at = Point::new(at.x - shift * cos, at.y - shift * sin);
        let (size_pt, color) = (style.size_pt, style.color);
        self.marks.push(Mark::Text(TextRun { at, angle, size_pt, color, shaped }));
        Ok(width)
    }

    /// Sets a paragraph whose top left corner is at a point, broken to a width in millimetres;
    /// returns its height in millimetres. `\n` begins a new line.
    ///
    /// A character that is wider than the width is an error; the height is not limited here.
    pub fn paragraph(
        &mut self,
        at: Point,
        width: f64,
        text: &str,
        style: &Style,
        align: Align,
    ) -> Result<f64, SetError> {
        // All lines in one family, as they were broken.
        let style = &style.for_text(text);
        let lines = wrap(text, style, width)?;
        let x = at.x + align.shift(width);
        for (index, line) in lines.iter().enumerate() {
            let y = at.y + style.first_baseline() + index as f64 * style.line_height();
            self.text(Point::new(x, y), line, style, align)?;
        }
        Ok(lines.len() as f64 * style.line_height())
    }
}

/// Sine and cosine of an angle in degrees, exact at quarter turns.
pub(crate) fn turn(degrees: f64) -> (f64, f64) {
    match degrees.rem_euclid(360.0) {
        0.0 => (0.0, 1.0),
        90.0 => (1.0, 0.0),
        180.0 => (0.0, -1.0),
        270.0 => (-1.0, 0.0),
        other => other.to_radians().sin_cos(),
    }
}

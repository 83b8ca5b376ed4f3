//! Tables: columns, a head, rows with rules between them.

use kurbo::{Point, Rect};

use crate::color::Color;
use crate::disc::Disc;
use crate::frame::Frame;
use crate::page::{Align, Fill, Heads, Page, Pen, Role};
use crate::text::{SIZES, SetError, Style, wrap};

/// One column of a table.
#[derive(Clone, Debug, PartialEq)]
pub struct Column {
    /// Its heading; may be empty in the first column only where rows need no name.
    pub head: String,
    /// Its width, in millimetres, margins included.
    pub width: f64,
    /// Where the text of its cells stands.
    pub align: Align,
    /// Under the heading, as cells look; may be empty.
    pub note: String,
    /// Whether numbers in its cells are those of compartments, which stand in discs.
    pub discs: bool,
    /// How its cells look, where not as those of the table.
    pub style: Option<Style>,
    /// Left free before its texts, for a bar, in millimetres.
    pub indent: f64,
}

/// A table, to be set in a [`Frame`].
#[derive(Clone, Debug, PartialEq)]
pub struct Table {
    /// The columns, left to right.
    pub columns: Vec<Column>,
    /// The rows, top to bottom; each has a text for each column, empty where one writes by hand.
    pub rows: Vec<Vec<String>>,
    /// Whether the first cell of each row names it.
    pub named_rows: bool,
    /// How headings look.
    pub head: Style,
    /// How cells look.
    pub body: Style,
    /// Least height of a row, in millimetres: room to write.
    pub least_row: f64,
    /// Between text and rules, in millimetres.
    pub margin: f64,
    /// The lines between rows and columns.
    pub rule: Pen,
    /// The ground of the head row.
    pub head_ground: Option<Color>,
    /// The colour of discs and bars.
    pub mark: Color,
    /// The rows that are of the client's left, which have a bar at their left edge.
    pub of_clients_left: Vec<usize>,
}

/// Width of the bar that marks a row, in millimetres.
const BAR: f64 = 1.8;

/// The disc in a cell: print a size smaller than that of words, so that rows stay as high.
fn in_table(number: &str, style: &Style) -> Result<Disc, SetError> {
    let smaller = SIZES.iter().rfind(|size| **size < style.size_pt);
    Disc::of(number, *smaller.unwrap_or(&SIZES[0]))
}

impl Column {
    /// A column of a width in millimetres.
    pub fn new(head: impl Into<String>, width: f64, align: Align) -> Self {
        Self {
            head: head.into(),
            width,
            align,
            note: String::new(),
            discs: false,
            style: None,
            indent: 0.0,
        }
    }

    /// The same column, whose texts leave room for the bars of rows.
    pub(crate) fn beside_bars(self) -> Self {
        Self { indent: BAR, ..self }
    }

    /// The room for texts, in millimetres, where so much is left free around them.
    fn room(&self, margin: f64) -> f64 {
        self.width - self.indent - 2.0 * margin
    }

    /// The same column, whose cells look otherwise than those of the table.
    pub(crate) fn with(self, style: Style) -> Self {
        Self { style: Some(style), ..self }
    }

    /// Whether a cell is the number of a compartment.
    fn has_disc(&self, cell: &str) -> bool {
        self.discs && cell.parse::<u8>().is_ok()
    }

    /// The same column, in which numbers are those of compartments.
    pub(crate) fn of_compartments(self) -> Self {
        Self { discs: true, align: Align::Centre, ..self }
    }
}

impl Column {
    /// Height of the note under its heading, in millimetres.
    fn note_height(&self, width: f64, style: &Style) -> Result<f64, SetError> {
        if self.note.is_empty() {
            return Ok(0.0);
        }
        Ok(wrap(&self.note, style, width)?.len() as f64 * style.line_height())
    }
}

impl Table {
    /// A table without rows: thin grey rules, a light head.
    pub const fn new(columns: Vec<Column>, head: Style, body: Style) -> Self {
        Self {
            columns,
            rows: Vec::new(),
            named_rows: true,
            head,
            body,
            least_row: 0.0,
            margin: 1.2,
            rule: Pen::solid(0.2, Color::grey(110)),
            head_ground: Some(Color::grey(232)),
            mark: Color::BLACK,
            of_clients_left: Vec::new(),
        }
    }

    /// Adds a row. A row must have a text for each column.
    pub fn row<S: Into<String>>(&mut self, cells: impl IntoIterator<Item = S>) -> &mut Self {
        self.rows.push(cells.into_iter().map(Into::into).collect());
        self
    }

    /// The same table with some of its rows.
    pub(crate) fn part(&self, rows: std::ops::Range<usize>) -> Self {
        let marked = self.of_clients_left.iter().filter(|at| rows.contains(*at));
        let of_clients_left = marked.map(|at| at - rows.start).collect();
        Self { rows: self.rows[rows].to_vec(), of_clients_left, ..self.clone() }
    }

    /// Width of all columns, in millimetres.
    pub fn width(&self) -> f64 {
        self.columns.iter().map(|column| column.width).sum()
    }

    /// Height of head and rows, in millimetres.
    pub fn height(&self) -> Result<f64, SetError> {
        Ok(self.heights()?.iter().sum())
    }

    /// Height of the head, none where there is no head, and of each row, in millimetres.
    pub(crate) fn head_and_rows(&self) -> Result<(f64, Vec<f64>), SetError> {
        let mut heights = self.heights()?;
        let head = if self.has_head() { heights.remove(0) } else { 0.0 };
        Ok((head, heights))
    }

    fn heads(&self) -> Vec<String> {
        self.columns.iter().map(|column| column.head.clone()).collect()
    }

    fn has_head(&self) -> bool {
        self.columns.iter().any(|column| !column.head.is_empty())
    }

    /// Head, if there is one, and rows, with their styles.
    fn lines(&self) -> Vec<(Vec<String>, Style, bool)> {
        let head = self.has_head().then(|| (self.heads(), self.head, true));
        let rows = self.rows.iter().map(|row| (row.clone(), self.body, false));
        head.into_iter().chain(rows).collect()
    }

    fn heights(&self) -> Result<Vec<f64>, SetError> {
        self.lines()
            .iter()
            .map(|(cells, style, is_head)| {
                assert_eq!(cells.len(), self.columns.len(), "a row has a text for each column");
                let least = if *is_head { 0.0 } else { self.least_row };
                let mut height = least;
                for (cell, column) in cells.iter().zip(&self.columns) {
                    let style = &column.style.filter(|_| !is_head).unwrap_or(*style);
                    let width = column.room(self.margin);
                    let lines = wrap(cell, style, width)?.len() as f64 * style.line_height();
                    let note = if *is_head { column.note_height(width, &self.body)? } else { 0.0 };
                    let disc = if !is_head && column.has_disc(cell) {
                        2.0 * in_table(cell, style)?.radius + 0.6
                    } else {
                        0.0
                    };
                    let needed = (lines + note + 2.0 * self.margin).max(disc);
                    height = height.max(needed);
                }
                Ok(height)
            })
            .collect()
    }

    /// Draws grounds and rules, and the texts of all cells, with its corner at a point.
    fn draw(&self, page: &mut Page, table: usize, at: Point) -> Result<Vec<Rect>, SetError> {
        let heights = self.heights()?;
        self.draw_rules(page, at, &heights);
        let mut rows = Vec::new();
        let mut y = at.y;
        for (row, ((cells, style, is_head), height)) in
            self.lines().iter().zip(&heights).enumerate()
        {
            let mut x = at.x;
            for (index, (cell, column)) in cells.iter().zip(&self.columns).enumerate() {
                let style = &column.style.filter(|_| !is_head).unwrap_or(*style);
                let header = if *is_head {
                    Some(Heads::Column)
                } else {
                    (self.named_rows && index == 0).then_some(Heads::Row)
                };
                let width = column.room(self.margin);
                let lines = wrap(cell, style, width)?.len() as f64 * style.line_height();
                let note = if *is_head { column.note_height(width, &self.body)? } else { 0.0 };
                let top = y + (height - lines - note) / 2.0;
                let block = page.block(Role::Cell { table, row, header });
                let corner = Point::new(x + column.indent + self.margin, top);
                if !is_head && column.has_disc(cell) {
                    let middle = Point::new(x + column.width / 2.0, y + height / 2.0);
                    in_table(cell, style)?.draw(block, middle, cell, self.mark)?;
                } else if !cell.is_empty() {
                    block.paragraph(corner, width, cell, style, column.align)?;
                }
                if note > 0.0 {
                    let below = corner + (0.0, lines);
                    block.paragraph(below, width, &column.note, &self.body, column.align)?;
                }
                x += column.width;
            }
            rows.push(Rect::new(at.x, y, x, y + height));
            y += height;
        }
        self.draw_bars(page, &rows);
        Ok(rows)
    }

    /// Bars at the rows of the client's left, inside their left edge.
    fn draw_bars(&self, page: &mut Page, rows: &[Rect]) {
        if self.of_clients_left.is_empty() {
            return;
        }
        let rows = &rows[usize::from(self.has_head())..];
        let block = page.block(Role::Artifact);
        for row in self.of_clients_left.iter().filter_map(|at| rows.get(*at)) {
            let bar = Rect { x1: row.x0 + BAR, ..*row };
            block.rect(bar, Some(Fill::solid(self.mark)), None);
        }
    }

    fn draw_rules(&self, page: &mut Page, at: Point, heights: &[f64]) {
        let width = self.width();
        let bottom = at.y + heights.iter().sum::<f64>();
        let block = page.block(Role::Artifact);
        if let (Some(ground), true, Some(height)) =
            (self.head_ground, self.has_head(), heights.first())
        {
            let place = Rect::from_origin_size(at, (width, *height));
            block.rect(place, Some(Fill::solid(ground)), None);
        }
        let mut y = at.y;
        for height in std::iter::once(&0.0).chain(heights) {
            y += height;
            block.line(Point::new(at.x, y), Point::new(at.x + width, y), &self.rule);
        }
        let mut x = at.x;
        for step in std::iter::once(0.0).chain(self.columns.iter().map(|column| column.width)) {
            x += step;
            block.line(Point::new(x, at.y), Point::new(x, bottom), &self.rule);
        }
    }
}

impl Frame<'_> {
    /// Sets a table at the left edge; returns the places of its rows, the head first if it has
    /// one.
    pub fn table(&mut self, table: &Table) -> Result<Vec<Rect>, SetError> {
        let width = table.width();
        if width > self.area().width() + 1e-3 {
            let word = table.columns.first().map_or_else(String::new, |c| c.head.clone());
            return Err(SetError::TooWide { word, width, room: self.area().width() });
        }
        let what = table.columns.iter().map(|c| c.head.as_str()).collect::<Vec<_>>().join(" | ");
        let place = self.take(table.height()?, &what)?;
        let number = self.next_table();
        table.draw(self.page(), number, place.origin())
    }
}

//! The two drawings of a pattern: from above, as the client sits, and from below, as it is
//! filled. The front edge is up in both, so the sides change places.

use cushion::{CompartmentIx, Pattern};
use kurbo::{Affine, Point, Rect};
use words::SharedTexts;

use super::labels::{Ground, LEAST_PT, Label, Led, Outside};
use super::look::{ACCENT, INK, text};
use crate::font::Weight;
use crate::page::{Align, Block, Pen};
use crate::text::{SetError, Style, measure};

/// From which side a pattern is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum View {
    /// As the client sits: the client's left is on the left of the page.
    Above,
    /// As it is filled, turned over sideways: the client's left is on the right of the page.
    Below,
}

/// Returns the place on the page of a point of the pattern, for a drawing that fills `area`.
#[must_use]
pub fn place_on_page(pattern: &Pattern, view: View, area: Rect) -> Affine {
    let (width, depth) = (pattern.size().width().to_mm(), pattern.size().depth().to_mm());
    let scale = (area.width() / width).min(area.height() / depth);
    let across = match view {
        View::Above => scale,
        View::Below => -scale,
    };
    let rear = Point::new(area.center().x, area.center().y + depth * scale / 2.0);
    Affine::new([across, 0.0, 0.0, -scale, rear.x, rear.y])
}

/// Draws the seams and, in each compartment where it has most room, its number in a disc, with
/// what is said of its cells below or beside.
///
/// Where both have no room at a size that can be read, the cells are left out; where the number
/// has none, it stands outside with a line to its compartment, beside the words in the middle of
/// the sides, which are so long.
pub(super) fn draw(
    block: &mut Block,
    pattern: &Pattern,
    view: View,
    area: Rect,
    label: impl Fn(CompartmentIx) -> (String, Option<String>),
    size_pt: f64,
    words_at_sides: f64,
) -> Result<(), SetError> {
    let place = place_on_page(pattern, view, area);
    draw_seams(block, pattern, place);
    let labels = place_labels(pattern, place, label, size_pt, words_at_sides)?;
    for own in &labels {
        if let Placed::Inside(own, middle) = own {
            own.set(block, *middle)?;
        }
    }
    for own in &labels {
        if let Placed::Outside(own) = own {
            own.line(block);
            own.disc(block)?;
        }
    }
    Ok(())
}

/// Draws all seams, the outer one thicker.
pub(super) fn draw_seams(block: &mut Block, pattern: &Pattern, place: Affine) {
    for edge in pattern.edges() {
        let pen = Pen::solid(if edge.is_outer() { 0.9 } else { 0.5 }, INK);
        block.path(place * edge.chain.to_path(), None, Some(pen));
    }
}

/// A label with its place.
pub(super) enum Placed {
    /// In its compartment, around a point.
    Inside(Label, Point),
    /// Beside the drawing.
    Outside(Led),
}

/// Finds the places of all labels, in the order of the compartments.
pub(super) fn place_labels(
    pattern: &Pattern,
    place: Affine,
    label: impl Fn(CompartmentIx) -> (String, Option<String>),
    size_pt: f64,
    words_at_sides: f64,
) -> Result<Vec<Placed>, SetError> {
    let grounds: Vec<Ground> = pattern.indices().map(|ix| Ground::of(pattern, ix, place)).collect();
    let fitted = |size_pt: f64| {
        let one = |(ix, ground)| {
            let (number, cells) = label(ix);
            Label::fitted(&number, cells.as_deref(), size_pt, ground)
        };
        pattern.indices().zip(&grounds).map(one).collect::<Result<Vec<_>, SetError>>()
    };
    let labels = fitted(size_pt)?;
    // One size for all, unless that would make most of them small for the sake of one.
    let least = labels.iter().flatten().map(|(own, _)| own.size_pt()).fold(size_pt, f64::min);
    let labels = if least < ALIKE * size_pt { labels } else { fitted(least)? };
    let inside = labels.iter().flatten().map(|(own, middle)| own.place(*middle));
    let inside = inside.collect::<Result<Vec<_>, SetError>>()?;
    let mut outside = Outside::new(drawn(pattern, place), words_at_sides, inside);
    let each = pattern.indices().zip(&grounds).zip(labels);
    each.map(|((ix, ground), own)| match own {
        Some((own, middle)) => Ok(Placed::Inside(own, middle)),
        None => outside.find(&label(ix).0, ground).map(Placed::Outside),
    })
    .collect()
}

/// How much smaller labels may be made for all to have one size.
const ALIKE: f64 = 0.5;

/// Where a pattern is drawn.
fn drawn(pattern: &Pattern, place: Affine) -> Rect {
    let half = pattern.size().width().to_mm() / 2.0;
    let depth = pattern.size().depth().to_mm();
    Rect::from_points(place * Point::new(-half, 0.0), place * Point::new(half, depth))
}

/// White kept around a drawing for the bar and the words at its edges, in millimetres.
pub(super) const EDGE_WORDS: f64 = 6.4;

/// The height of a drawing with its edges named, as wide as this, all in millimetres.
pub(super) fn height_of(pattern: &Pattern, wide: f64) -> f64 {
    let size = pattern.size();
    let share = size.depth().to_mm() / size.width().to_mm();
    (wide - 2.0 * EDGE_WORDS) * share + 2.0 * EDGE_WORDS
}

/// How large the print of a drawing is, in points.
#[derive(Clone, Copy)]
pub(super) struct Letters {
    /// The numbers, where they have room.
    pub(super) numbers: f64,
    /// The names of the edges.
    pub(super) edges: f64,
}

impl From<f64> for Letters {
    /// Names of edges as befits numbers of this size.
    fn from(numbers: f64) -> Self {
        Self { numbers, edges: if numbers > 12.0 { 9.5 } else { LEAST_PT } }
    }
}

/// Draws the pattern with all four edges named in words.
pub(super) fn draw_named(
    block: &mut Block,
    texts: &SharedTexts,
    pattern: &Pattern,
    view: View,
    area: Rect,
    label: impl Fn(CompartmentIx) -> (String, Option<String>),
    letters: impl Into<Letters>,
) -> Result<(), SetError> {
    let letters = letters.into();
    let named = Named::of(texts, pattern, view, area, letters.edges)?;
    draw(block, pattern, view, named.inner, label, letters.numbers, named.bar)?;
    named.draw(block, texts)
}

/// The names of a drawing's edges, with the bar at the client's left.
pub(super) struct Named {
    view: View,
    /// The area within the names, which the drawing fills.
    pub(super) inner: Rect,
    /// The drawing itself, round which the names stand.
    pub(super) drawn: Rect,
    /// The length of the bar, and of the room that the words at the sides need, in millimetres.
    pub(super) bar: f64,
    /// What stands at the left and at the right.
    sides: [&'static str; 2],
    style: Style,
}

impl Named {
    /// Those of a pattern that is drawn into an area with its names, in a size in points.
    pub(super) fn of(
        texts: &SharedTexts,
        pattern: &Pattern,
        view: View,
        area: Rect,
        size_pt: f64,
    ) -> Result<Self, SetError> {
        let inner = area.inset(-EDGE_WORDS);
        let style = text(size_pt, Weight::Bold, INK);
        let drawn = drawn(pattern, place_on_page(pattern, view, inner));
        // Beside a small drawing, words as long as its side would leave no room for a number.
        let long = measure(texts.clients_right, &style)? > 0.75 * drawn.height();
        let [left, right] = if long {
            [texts.clients_left_short, texts.clients_right_short]
        } else {
            [texts.clients_left, texts.clients_right]
        };
        let bar = measure(right, &style)?.max(0.4 * drawn.height());
        let sides = match view {
            View::Above => [left, right],
            View::Below => [right, left],
        };
        Ok(Self { view, inner, drawn, bar, sides, style })
    }

    /// Draws the bar, and writes the names.
    pub(super) fn draw(&self, block: &mut Block, texts: &SharedTexts) -> Result<(), SetError> {
        bar_at_clients_left(block, self.drawn, self.view, self.bar);
        name_edges(block, texts, self.drawn, self.sides, &self.style)
    }
}

/// From a drawing to the bar beside it, to its middle, in millimetres.
pub(super) const TO_BAR: f64 = 1.5;
/// Width of the bar that marks the client's left, in millimetres.
pub(super) const BAR: f64 = 1.4;

/// Draws the thick bar beside a drawing that fills an area and has no words at its sides.
pub(super) fn mark_clients_left(block: &mut Block, pattern: &Pattern, view: View, area: Rect) {
    let drawn = drawn(pattern, place_on_page(pattern, view, area));
    bar_at_clients_left(block, drawn, view, 0.5 * drawn.height());
}

/// Draws the thick bar that marks the client's left, beside the words for it.
fn bar_at_clients_left(block: &mut Block, drawn: Rect, view: View, length: f64) {
    let x = match view {
        View::Above => drawn.x0 - TO_BAR,
        View::Below => drawn.x1 + TO_BAR,
    };
    let (half, middle) = ((length - BAR) / 2.0, drawn.center().y);
    block.line(
        Point::new(x, middle - half),
        Point::new(x, middle + half),
        &Pen::solid(BAR, ACCENT),
    );
}

/// Writes the names of all four edges around a drawing; `sides` are left and right of it.
pub(super) fn name_edges(
    block: &mut Block,
    texts: &SharedTexts,
    drawn: Rect,
    [left, right]: [&str; 2],
    style: &Style,
) -> Result<(), SetError> {
    let (gap, middle) = (1.8, drawn.center());
    // The bar has its place between the drawing and the words at its side.
    let beside = TO_BAR + BAR / 2.0 + 0.7;
    block.text(Point::new(middle.x, drawn.y0 - gap), texts.front_edge, style, Align::Centre)?;
    let below = drawn.y1 + gap + style.cap_height();
    block.text(Point::new(middle.x, below), texts.rear_edge, style, Align::Centre)?;
    let at_left = Point::new(drawn.x0 - beside, middle.y);
    block.turned_text(at_left, -90.0, left, style, Align::Centre)?;
    let at_right = Point::new(drawn.x1 + beside, middle.y);
    block.turned_text(at_right, 90.0, right, style, Align::Centre)?;
    Ok(())
}

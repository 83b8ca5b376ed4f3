//! Labels in a drawing of compartments: each where it has most room, with white around it.

use cushion::{CompartmentIx, Pattern};
use kurbo::{Affine, Point, Rect, Vec2};

use super::look::{ACCENT, INK, text};
use crate::color::Color;
use crate::font::Weight;
use crate::page::{Align, Block, Fill, Pen};
use crate::text::{SetError, Style, measure};

/// The least size of print in a drawing, in points.
pub(super) const LEAST_PT: f64 = 8.0;
/// The size of the lesser lines, as a share of the number's.
const LESSER: f64 = 0.72;
/// White between a label and the nearest seam, at least, in millimetres; a seam is 0.5 mm wide.
const CLEAR: f64 = 0.8;
/// Between the lines of a label, as a share of the number's size.
const BETWEEN: f64 = 0.38;
/// Places that are tried, across and along a compartment.
const TRIED: usize = 15;

/// The area of a compartment on the page.
pub(super) struct Ground {
    sides: Vec<[Point; 2]>,
    /// Where the label stands if there is room enough.
    wanted: Point,
}

impl Ground {
    pub(super) fn of(pattern: &Pattern, ix: CompartmentIx, place: Affine) -> Self {
        let around = |edge: &&cushion::Edge| edge.left == Some(ix) || edge.right == Some(ix);
        let sides = pattern.edges().iter().filter(around).flat_map(|edge| {
            let points = edge.chain.flatten(0.5);
            points.windows(2).map(|two| [place * two[0], place * two[1]]).collect::<Vec<_>>()
        });
        Self { sides: sides.collect(), wanted: place * pattern[ix].seed }
    }

    fn bounds(&self) -> Rect {
        let first = Rect::from_points(self.wanted, self.wanted);
        self.sides.iter().flatten().fold(first, |all, point| all.union_pt(*point))
    }

    /// Whether a point lies inside: an odd number of sides on the way out.
    fn holds(&self, at: Point) -> bool {
        let crossed = self.sides.iter().filter(|[from, to]| {
            (from.y > at.y) != (to.y > at.y) && {
                let share = (at.y - from.y) / (to.y - from.y);
                from.x + share * (to.x - from.x) > at.x
            }
        });
        crossed.count() % 2 == 1
    }

    /// How many times a box with these half sides could stand around a point.
    fn room(&self, at: Point, half: Vec2) -> f64 {
        let scaled = |point: Point| Vec2::new((point.x - at.x) / half.x, (point.y - at.y) / half.y);
        let sides = self.sides.iter().map(|[from, to]| nearest(scaled(*from), scaled(*to)));
        sides.fold(f64::INFINITY, f64::min)
    }

    /// The place for a box with these half sides: the wanted one where it has room and a little
    /// more, else where it has most; with how many times it could stand there.
    fn place_for(&self, half: Vec2) -> (Point, f64) {
        /// More room than so many times is no better: then the label stays near its place.
        const AMPLE: f64 = 1.05;
        let bounds = self.bounds();
        let step = Vec2::new(bounds.width(), bounds.height()) / TRIED as f64;
        let tried = (0..TRIED * TRIED).map(|at| {
            let (row, column) = ((at / TRIED) as f64 + 0.5, (at % TRIED) as f64 + 0.5);
            bounds.origin() + Vec2::new(column * step.x, row * step.y)
        });
        let mut best = (self.wanted, self.room(self.wanted, half));
        for at in tried.filter(|at| self.holds(*at)) {
            let room = self.room(at, half);
            let better = room.min(AMPLE) - best.1.min(AMPLE);
            let nearer = at.distance(self.wanted) < best.0.distance(self.wanted);
            // What is left of rounding is no gain.
            if better > 1e-6 || (better > -1e-6 && nearer) {
                best = (at, room);
            }
        }
        best
    }
}

/// The distance of a side from the origin, as the greater of across and along.
fn nearest(from: Vec2, to: Vec2) -> f64 {
    let way = to - from;
    let size = |share: f64| {
        let at = from + way * share.clamp(0.0, 1.0);
        at.x.abs().max(at.y.abs())
    };
    // It is least at an end, or where the greater of the two changes, or where one is none.
    let zero = |value: f64, slope: f64| if slope == 0.0 { 0.0 } else { -value / slope };
    let shares = [
        0.0,
        1.0,
        zero(from.x, way.x),
        zero(from.y, way.y),
        zero(from.x - from.y, way.x - way.y),
        zero(from.x + from.y, way.x + way.y),
    ];
    shares.into_iter().map(size).fold(f64::INFINITY, f64::min)
}

/// A label as lines: the number, and what stands below it.
#[derive(Clone, Debug)]
pub(super) struct Label {
    lines: Vec<String>,
    size_pt: f64,
}

impl Label {
    /// The ways in which a label can be said, the fullest first.
    pub(super) fn ways(large: &str, small: Option<&str>, size_pt: f64) -> Vec<Self> {
        let way = |lines: Vec<&str>| Self {
            lines: lines.into_iter().map(str::to_owned).collect(),
            size_pt,
        };
        let mut ways = Vec::new();
        if let Some(small) = small {
            ways.push(way(vec![large, small]));
            if let Some((count, unit)) = small.split_once('\u{a0}') {
                ways.push(way(vec![large, count, unit]));
            }
        }
        ways.push(way(vec![large]));
        ways
    }

    /// The least size at which every line can be read.
    fn least(&self) -> f64 {
        if self.lines.len() > 1 { LEAST_PT / LESSER } else { LEAST_PT }.min(self.size_pt)
    }

    fn style(&self, line: usize) -> Style {
        if line == 0 {
            text(self.size_pt, Weight::Bold, ACCENT)
        } else {
            text(self.size_pt * LESSER, Weight::SemiBold, INK)
        }
    }

    /// Half of width and height, in millimetres, without white around it.
    fn half(&self) -> Result<Vec2, SetError> {
        let mut size = Vec2::ZERO;
        for (at, line) in self.lines.iter().enumerate() {
            let style = self.style(at);
            size.x = size.x.max(measure(line, &style)?);
            size.y += style.cap_height();
        }
        let between = BETWEEN * self.style(0).size_mm();
        size.y += between * (self.lines.len() - 1) as f64;
        Ok(size / 2.0)
    }

    /// The label in a size that fits, and the middle of its place; none where none can be read.
    pub(super) fn within(&self, ground: &Ground) -> Result<Option<(Self, Point)>, SetError> {
        let half = self.half()? + Vec2::new(CLEAR, CLEAR);
        let (middle, room) = ground.place_for(half);
        if room >= 1.0 {
            return Ok(Some((self.clone(), middle)));
        }
        // Print shrinks, the white around it does not.
        let text = self.half()?;
        let shrunk = |share: f64| {
            let half = text * share + Vec2::new(CLEAR, CLEAR);
            let (middle, room) = ground.place_for(half);
            (room >= 1.0)
                .then_some((Self { size_pt: self.size_pt * share, ..self.clone() }, middle))
        };
        let least = self.least() / self.size_pt;
        let steps = (0..5).map(|at| 1.0 + (least - 1.0) * f64::from(at) / 4.0);
        Ok(steps.skip(1).find_map(shrunk))
    }

    /// Sets the label around a point, on white.
    pub(super) fn set(&self, block: &mut Block, middle: Point) -> Result<(), SetError> {
        let half = self.half()?;
        halo(block, middle, half);
        let mut y = middle.y - half.y;
        for (at, line) in self.lines.iter().enumerate() {
            let style = self.style(at);
            y += style.cap_height();
            block.text(Point::new(middle.x, y), line, &style, Align::Centre)?;
            y += BETWEEN * self.style(0).size_mm();
        }
        Ok(())
    }
}

/// White under a label.
fn halo(block: &mut Block, middle: Point, half: Vec2) {
    let size = 2.0 * (half + Vec2::new(0.3, 0.3));
    let around = Rect::from_center_size(middle, (size.x, size.y)).to_rounded_rect(0.6);
    let path = kurbo::Shape::to_path(&around, 1e-2);
    block.path(path, Some(Fill::solid(Color::WHITE)), None);
}

/// Labels that stand outside the drawing, beside its left and right edges.
pub(super) struct Outside {
    drawn: Rect,
    /// Heights that are taken, at the left and at the right: first the words in the middle.
    taken: [Vec<[f64; 2]>; 2],
}

impl Outside {
    /// Around a drawing, whose left and right edges have words that long in their middle.
    pub(super) fn new(drawn: Rect, words: f64) -> Self {
        let middle = drawn.center().y;
        let taken = vec![[middle - words / 2.0, middle + words / 2.0]];
        Self { drawn, taken: [taken.clone(), taken] }
    }

    /// Sets a label outside, with a line to its compartment.
    pub(super) fn set(
        &mut self,
        block: &mut Block,
        label: &str,
        ground: &Ground,
    ) -> Result<(), SetError> {
        let style = text(LEAST_PT, Weight::Bold, ACCENT);
        let width = measure(label, &style)?;
        let high = style.cap_height() + 1.0;
        let (target, _) = ground.place_for(Vec2::new(1.0, 1.0));
        let side = usize::from(target.x > self.drawn.center().x);
        let free = |y: f64| {
            let clear = |[from, to]: &[f64; 2]| y + high / 2.0 <= *from || *to <= y - high / 2.0;
            self.taken[side].iter().all(clear)
        };
        // The nearest free height beside the drawing, in steps of half a millimetre.
        let steps = (0..=2 * self.drawn.height() as u32).map(|at| f64::from(at) / 2.0);
        let nearer = |a: &f64, b: &f64| (a - target.y).abs().total_cmp(&(b - target.y).abs());
        let heights = steps.map(|by| self.drawn.y0 + by).filter(|y| free(*y));
        let y = heights.min_by(nearer).unwrap_or(target.y);
        self.taken[side].push([y - high / 2.0, y + high / 2.0]);
        let (x, out) = [(self.drawn.x0, -1.0), (self.drawn.x1, 1.0)][side];
        let near = Point::new(x + out * 1.4, y);
        block.line(near, target, &Pen::solid(0.25, INK));
        block.circle(target, 0.5, Some(Fill::solid(INK)), None);
        let middle = Point::new(near.x + out * (0.6 + width / 2.0), y);
        let baseline = Point::new(middle.x, y + style.cap_height() / 2.0);
        block.text(baseline, label, &style, Align::Centre)?;
        Ok(())
    }
}

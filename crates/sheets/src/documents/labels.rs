//! Labels in a drawing of compartments: each where it has most room, with white around it.

use cushion::{CompartmentIx, Pattern};
use kurbo::{Affine, Point, Rect, Vec2};

use super::look::{ACCENT, INK, text};
use crate::color::Color;
use crate::disc::Disc;
use crate::font::Weight;
use crate::page::{Align, Block, Fill, Pen};
use crate::text::{SetError, Style, measure};

/// The least size of print in a drawing, in points.
pub(super) const LEAST_PT: f64 = 8.0;
/// The size of the number in its disc, as a share of that of the cells beside it.
const LESSER: f64 = 0.72;
/// White between a label and the nearest seam, at least, in millimetres; a seam is 0.5 mm wide.
const CLEAR: f64 = 0.8;
/// The same where a disc stands alone, which is its own ground.
const AROUND_DISC: f64 = 0.5;
/// Between disc and cells, as a share of the size of the cells.
const BETWEEN: f64 = 0.22;
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

    /// Where there is most room for a box so many times as wide as high, and its width there.
    pub(super) fn widest(&self, wide: f64) -> (Point, f64) {
        // Larger than any compartment, so that more room is always better.
        let half = Vec2::new(wide, 1.0) * self.bounds().size().max_side();
        let (middle, room) = self.place_for(half);
        (middle, 2.0 * half.x * room)
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

    /// Places where a box with these half sides stands inside, the best of them first.
    fn places_for(&self, half: Vec2) -> Vec<Point> {
        let best = self.place_for(half).0;
        let others = self.tried().filter(|at| self.holds(*at) && self.room(*at, half) >= 1.0);
        std::iter::once(best).chain(others).collect()
    }

    /// Places all over its bounds.
    fn tried(&self) -> impl Iterator<Item = Point> {
        let bounds = self.bounds();
        let step = Vec2::new(bounds.width(), bounds.height()) / TRIED as f64;
        (0..TRIED * TRIED).map(move |at| {
            let (row, column) = ((at / TRIED) as f64 + 0.5, (at % TRIED) as f64 + 0.5);
            bounds.origin() + Vec2::new(column * step.x, row * step.y)
        })
    }

    /// The place for a box with these half sides: the wanted one where it has room and a little
    /// more, else where it has most; with how many times it could stand there.
    pub(super) fn place_for(&self, half: Vec2) -> (Point, f64) {
        /// More room than so many times is no better: then the label stays near its place.
        const AMPLE: f64 = 1.05;
        let mut best = (self.wanted, self.room(self.wanted, half));
        for at in self.tried().filter(|at| self.holds(*at)) {
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

/// A label: the number of a compartment in a disc, and how many cells it holds, plain.
#[derive(Clone, Debug)]
pub(super) struct Label {
    number: String,
    cells: Option<String>,
    /// Whether the cells stand beside the disc; else they stand below it.
    beside: bool,
    /// Size of the number, in points.
    size_pt: f64,
}

impl Label {
    /// The ways in which a label can be said, the fullest first; the number has a size in points.
    fn ways(number: &str, cells: Option<&str>, size_pt: f64) -> Vec<Self> {
        let number = number.to_owned();
        let Some(cells) = cells.map(str::to_owned) else {
            return vec![Self { number, cells: None, beside: false, size_pt }];
        };
        let with =
            |beside| Self { number: number.clone(), cells: Some(cells.clone()), beside, size_pt };
        vec![with(false), with(true), Self { cells: None, ..with(false) }]
    }

    /// The fullest way that fits a compartment, and the middle of its place; none where not even
    /// the number can be read there.
    pub(super) fn fitted(
        number: &str,
        cells: Option<&str>,
        size_pt: f64,
        ground: &Ground,
    ) -> Result<Option<(Self, Point)>, SetError> {
        let ways = Self::ways(number, cells, size_pt);
        ways.iter().find_map(|own| own.within(ground).transpose()).transpose()
    }

    /// The size of the number, in points.
    pub(super) const fn size_pt(&self) -> f64 {
        self.size_pt
    }

    fn of_cells(&self) -> Style {
        text(self.size_pt / LESSER, Weight::Bold, INK)
    }

    fn disc(&self) -> Result<Disc, SetError> {
        Disc::of(&self.number, self.size_pt)
    }

    /// Half of width and height, in millimetres, without white around it.
    fn half(&self) -> Result<Vec2, SetError> {
        let radius = self.disc()?.radius;
        let Some(cells) = &self.cells else { return Ok(Vec2::new(radius, radius)) };
        let style = self.of_cells();
        let (wide, high) = (measure(cells, &style)?, style.cap_height());
        let between = BETWEEN * style.size_mm();
        let size = if self.beside {
            Vec2::new(2.0 * radius + between + wide, high.max(2.0 * radius))
        } else {
            Vec2::new(wide.max(2.0 * radius), 2.0 * radius + between + high)
        };
        Ok(size / 2.0)
    }

    /// The label in a size that fits, and the middle of its place; none where none can be read.
    fn within(&self, ground: &Ground) -> Result<Option<(Self, Point)>, SetError> {
        let clear = if self.cells.is_some() { CLEAR } else { AROUND_DISC };
        let half = self.half()? + Vec2::new(clear, clear);
        let (middle, room) = ground.place_for(half);
        if room >= 1.0 {
            return Ok(Some((self.clone(), middle)));
        }
        // Print shrinks, the white around it does not.
        let text = self.half()?;
        let shrunk = |share: f64| {
            let half = text * share + Vec2::new(clear, clear);
            let (middle, room) = ground.place_for(half);
            (room >= 1.0)
                .then_some((Self { size_pt: self.size_pt * share, ..self.clone() }, middle))
        };
        let least = (LEAST_PT / self.size_pt).min(1.0);
        let steps = (0..5).map(|at| 1.0 + (least - 1.0) * f64::from(at) / 4.0);
        Ok(steps.skip(1).find_map(shrunk))
    }

    /// Its place around a point.
    pub(super) fn place(&self, middle: Point) -> Result<Rect, SetError> {
        let half = self.half()?;
        Ok(Rect::from_points(middle - half, middle + half))
    }

    /// Sets the label around a point, on white.
    pub(super) fn set(&self, block: &mut Block, middle: Point) -> Result<(), SetError> {
        let (half, disc, style) = (self.half()?, self.disc()?, self.of_cells());
        halo(block, middle, half);
        let first = middle - half + Vec2::new(disc.radius, disc.radius);
        let (at, baseline, align) = if self.beside {
            let right = Point::new(middle.x + half.x, middle.y + style.cap_height() / 2.0);
            (Point::new(first.x, middle.y), right, Align::Right)
        } else {
            let below = Point::new(middle.x, middle.y + half.y);
            (Point::new(middle.x, first.y), below, Align::Centre)
        };
        disc.draw(block, at, &self.number, ACCENT)?;
        if let Some(cells) = &self.cells {
            block.text(baseline, cells, &style, align)?;
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

/// Whether a straight line goes through a box, at one of many places along it.
fn crosses(place: Rect, from: Point, to: Point) -> bool {
    const ALONG: u32 = 100;
    (0..=ALONG).any(|at| place.contains(from.lerp(to, f64::from(at) / f64::from(ALONG))))
}

/// Labels that stand outside the drawing, beside its left and right edges.
pub(super) struct Outside {
    drawn: Rect,
    /// Heights that are taken, at the left and at the right: first the words in the middle.
    taken: [Vec<[f64; 2]>; 2],
    /// The labels inside the drawing, which no line goes through.
    inside: Vec<Rect>,
}

impl Outside {
    /// Around a drawing with labels inside, whose left and right edges have words that long in
    /// their middle.
    pub(super) fn new(drawn: Rect, words: f64, inside: Vec<Rect>) -> Self {
        let middle = drawn.center().y;
        let taken = vec![[middle - words / 2.0, middle + words / 2.0]];
        Self { drawn, taken: [taken.clone(), taken], inside }
    }

    /// Finds a place outside for a number, with a line to its compartment.
    pub(super) fn find(&mut self, number: &str, ground: &Ground) -> Result<Led, SetError> {
        let disc = Disc::of(number, LEAST_PT)?;
        let high = 2.0 * disc.radius + 0.6;
        let side = usize::from(ground.wanted.x > self.drawn.center().x);
        let free = |y: f64| {
            let clear = |[from, to]: &[f64; 2]| y + high / 2.0 <= *from || *to <= y - high / 2.0;
            self.taken[side].iter().all(clear)
        };
        // Free heights beside the drawing, in steps of half a millimetre.
        let steps = (0..=2 * self.drawn.height() as u32).map(|at| f64::from(at) / 2.0);
        let heights: Vec<f64> = steps.map(|by| self.drawn.y0 + by).filter(|y| free(*y)).collect();
        let (x, out) = [(self.drawn.x0, -1.0), (self.drawn.x1, 1.0)][side];
        let beside = |y: &f64| Point::new(x + out * 1.4, *y);
        // The shortest line that goes through no label; the first of the targets is the best.
        let targets = ground.places_for(Vec2::new(0.8, 0.8));
        let lines = targets.iter().flat_map(|to| heights.iter().map(move |y| (beside(y), *to)));
        let clear =
            |(from, to): &(Point, Point)| self.inside.iter().all(|own| !crosses(*own, *from, *to));
        let length = |(from, to): &(Point, Point)| from.distance(*to);
        let shortest = lines.filter(clear).min_by(|a, b| length(a).total_cmp(&length(b)));
        let (near, target) = shortest.unwrap_or((beside(&targets[0].y), targets[0]));
        let y = near.y;
        self.taken[side].push([y - high / 2.0, y + high / 2.0]);
        let middle = Point::new(near.x + out * disc.radius, y);
        Ok(Led { disc, number: number.to_owned(), middle, near, target })
    }
}

/// A number that stands outside, led to its compartment.
pub(super) struct Led {
    disc: Disc,
    number: String,
    middle: Point,
    near: Point,
    target: Point,
}

impl Led {
    /// Draws the line to the compartment.
    pub(super) fn line(&self, block: &mut Block) {
        block.line(self.near, self.target, &Pen::solid(0.25, INK));
        block.circle(self.target, 0.5, Some(Fill::solid(INK)), None);
    }

    /// Draws the number.
    pub(super) fn disc(&self, block: &mut Block) -> Result<(), SetError> {
        self.disc.draw(block, self.middle, &self.number, ACCENT)
    }
}

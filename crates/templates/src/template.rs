//! The whole template: all pieces on one sheet, and what is sewn to what.

use cushion::{Length, Pattern, Size, StockFill};
use kurbo::{Rect, Vec2};

use crate::crown::{Crown, crowns, ease};
use crate::opening::Opening;
use crate::pieces::{Piece, base, stitched, top, wall};
use crate::strips::{Strip, strips};

/// How a template is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Options {
    /// Cloth left outside of a stitch line, 0 to 40 mm.
    pub allowance: Length,
    /// Whether the top is enlarged so that crowns have their cloth; else the cloth must stretch.
    pub eased: bool,
}

/// A stretch of seam, as long as it is on each of the pieces that are sewn together there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Join {
    /// The number of the wall strip.
    pub wall: usize,
    /// Along the strip.
    pub on_wall: Length,
    /// Along the base.
    pub on_base: Length,
    /// Along the top; more than along the strip by what is eased in.
    pub on_top: Length,
}

impl Join {
    /// What is eased in between top and wall.
    #[must_use]
    pub fn eased_in(&self) -> Length {
        self.on_top - self.on_wall
    }
}

/// The template of a cover at one size.
#[derive(Clone, Debug, PartialEq)]
pub struct Template {
    /// The size.
    pub size: Size,
    /// How it was drawn.
    pub options: Options,
    /// The pieces, each at its place on the sheet: the top, the base, the walls by their numbers.
    pub pieces: Vec<Piece>,
    /// The wall strips, by their numbers.
    pub strips: Vec<Strip>,
    /// What is sewn to what, by the numbers of the walls.
    pub joins: Vec<Join>,
    /// What each crown asks, by the numbers of the compartments.
    pub crowns: Vec<Crown>,
    /// By how much the top is enlarged, as a share; 0 where the cloth must stretch.
    pub ease: f64,
    /// The openings, by the numbers of the compartments.
    pub openings: Vec<Opening>,
    /// The sheet, from 0, 0.
    pub sheet: Rect,
}

/// Between pieces on the sheet, in millimetres.
const GAP: f64 = 12.0;

impl Template {
    /// Draws the pieces of a pattern with its stock fill, and lays them out.
    ///
    /// # Panics
    ///
    /// Panics where the fill is not of the pattern.
    #[must_use]
    pub fn new(pattern: &Pattern, fill: &StockFill, options: Options) -> Self {
        let allowance = options.allowance.to_mm();
        let strips = strips(pattern);
        let crowns = crowns(pattern, fill);
        let ease = if options.eased { ease(&crowns) } else { 0.0 };
        let openings: Vec<Opening> = pattern.indices().map(|ix| Opening::of(pattern, ix)).collect();
        let mut pieces = vec![
            top(pattern, &strips, allowance, 1.0 + ease),
            base(pattern, &strips, allowance, &openings),
        ];
        pieces.extend(strips.iter().map(|strip| wall(pattern, strip, allowance)));
        let join = |strip: &Strip| {
            let on = strip.length();
            Join { wall: strip.number, on_wall: on, on_base: on, on_top: on * (1.0 + ease) }
        };
        let joins = strips.iter().map(join).collect();
        let (pieces, sheet) = laid_out(pieces);
        let size = pattern.size();
        Self { size, options, pieces, strips, joins, crowns, ease, openings, sheet }
    }

    /// Length of all lines that are sewn: each wall along the top and along the base, and its ends.
    #[must_use]
    pub fn sewn(&self) -> Length {
        self.pieces[2..].iter().map(stitched).sum()
    }
}

/// Puts pieces beside and above each other, the first two side by side on top.
fn laid_out(pieces: Vec<Piece>) -> (Vec<Piece>, Rect) {
    let sizes: Vec<Rect> = pieces.iter().map(Piece::bounds).collect();
    let row = sizes[0].width() + GAP + sizes[1].width();
    let wide = sizes.iter().map(Rect::width).fold(row, f64::max);
    // From the upper edge down, y below zero; then all is moved up.
    let (mut x, mut y, mut high) = (0.0, 0.0, 0.0f64);
    let mut corners = Vec::new();
    for size in &sizes {
        if x > 0.0 && x + size.width() > wide + 1e-9 {
            (x, y, high) = (0.0, y - high - GAP, 0.0);
        }
        corners.push((x, y));
        x += size.width() + GAP;
        high = high.max(size.height());
    }
    let bottom = y - high;
    let placed =
        pieces.into_iter().zip(&sizes).zip(corners).map(|((piece, size), (x, y))| {
            piece.moved(Vec2::new(x - size.x0, y - size.y1 - bottom))
        });
    (placed.collect(), Rect::new(0.0, 0.0, wide, -bottom))
}

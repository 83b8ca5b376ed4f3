//! Cutting and sewing templates of a cushion's cover, at true size.
//!
//! A [`Template`] is made from a pattern and its stock fill: the top, the base and a wall strip for
//! each stretch of seam between two junctions, with stitch lines, allowances, notches, grain and
//! openings, laid out on one sheet. Millimetres, x to the right, y up; what has to be said is a
//! value, [`Says`], which others put into words. [`dxf`] writes the sheet for a cutting table.
//!
//! Nothing here knows a client, the solver, a page or a language.

mod chains;
mod crown;
mod cut;
mod dxf;
mod layers;
mod opening;
mod pieces;
mod strips;
mod template;

pub use crate::chains::{moved, straight_and_arcs};
pub use crate::crown::{Crown, crowns, ease};
pub use crate::cut::cut_line;
pub use crate::dxf::dxf;
pub use crate::layers::{Drawn, Label, Layer, Says};
pub use crate::opening::Opening;
pub use crate::pieces::{Piece, PieceKind};
pub use crate::strips::{Strip, strips};
pub use crate::template::{Join, Options, Template};

//! The cushion as values: sizes, layouts, patterns, cells, and the areas and lengths that follow.
//!
//! A [`Layout`] holds the rules of a family of cushions, a [`Pattern`] is a layout at one
//! [`Size`], made by [`arrange`]: the faces that the seams cut out are the compartments, so there
//! can be no gap and no overlap. Points are in millimetres, x to the client's right, y forward
//! from the rear edge; quantities carry their units.
//!
//! Nothing here reads a file, solves anything, draws a page or knows where layouts come from.

mod arrange;
mod cell;
mod checks;
mod claim;
mod crossing;
mod curve;
mod draw;
mod faces;
mod fault;
mod fill;
mod layout;
mod name;
mod narrow;
mod pattern;
mod quantity;
mod range;
mod round;
mod size;
mod sketch;
mod vector;
mod width;
mod words;

pub use kurbo::Point;

pub use crate::arrange::arrange;
pub use crate::cell::{Cell, Packing, most_pillow_volume, square_pillow_volume};
pub use crate::checks::{check_layout, rule_of};
pub use crate::curve::{Chain, Piece};
pub use crate::fault::{Fault, FaultKind, Listed, Severity, Subject};
pub use crate::fill::{CompartmentFill, CountRange, StockFill};
pub use crate::layout::{
    CompartmentRule, Layout, MadeSize, Measure, Numbers, PointRule, SeamRule, SeamShape, Spot,
};
pub use crate::name::Name;
pub use crate::narrow::{AcuteCorner, NarrowPlace, acute_corners, narrow_places};
pub use crate::pattern::{
    Class, Compartment, CompartmentIx, Edge, EdgeIx, NodeIx, Pattern, Purpose, Rim, Ring, Side,
};
pub use crate::quantity::{Area, Force, Length, Mass, Pressure, Volume};
pub use crate::range::{CountColumn, Jump, RangeRow, columns_of_counts, jumps};
pub use crate::size::{Size, SizeError};
pub use crate::sketch::{Sketch, sketch};
pub use crate::width::{greatest_width, widest_place};
pub use crate::words::Words;

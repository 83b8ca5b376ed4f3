//! Mechanics: how compartments hold their cells, and how the filled cushion carries a body.
//!
//! Works in SI units. Knows no file, page, clock or plugin.

mod fill;
mod linear;
mod membrane;
mod mesh;
mod parameters;
mod stock;

pub use crate::fill::{FillLaw, PressureAt};
pub use crate::membrane::{Element, UnitSheet, UnitSheets, unit_sheets};
pub use crate::mesh::{
    DEFAULT_SPACING, Mesh, MeshError, NestedMeshes, NetEdge, Node, SeamNet, SeamSegment, Triangle,
};
pub use crate::parameters::{ParameterFacts, Parameters};
pub use crate::stock::{StockError, UnloadedCompartment, UnloadedCushion, stock_fill};

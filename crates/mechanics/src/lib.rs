//! Mechanics: how compartments hold their cells, and how the filled cushion carries a body.
//!
//! Works in SI units. Knows no file, page, clock or plugin.

mod body;
mod cover;
mod equilibrium;
mod fill;
mod linear;
mod membrane;
mod mesh;
mod numerics;
mod parameters;
mod stock;
mod stop;

pub use crate::body::{
    ASIS_SPACING, Board, Body, DEFAULT_SEAT_SHARE, GRAVITY, Jig, Load, Obliquity, SEAT_SHARES,
    SeatedClient, Site, SiteName, ThighPose,
};
pub use crate::equilibrium::{
    Bare, BareSheet, CellEffect, Cells, CompartmentRest, Cut, Evidence, Outcome, Regions, Rest,
    Resting, SeatedBody, SheetModel, SiteRest, Start, TurnStiffness, bare_sheet, come_to_rest,
    come_to_rest_from, come_to_rest_slowly, effects_of_a_cell, unloaded_heights,
};
pub use crate::fill::{FillLaw, PressureAt};
pub use crate::membrane::{Element, UnitSheet, UnitSheets, unit_sheets};
pub use crate::mesh::{
    DEFAULT_SPACING, Mesh, NestedMeshes, NetEdge, Node, SeamNet, SeamSegment, Triangle,
};
pub use crate::numerics::{SmallMatrix, mixed};
pub use crate::parameters::{ParameterFacts, Parameters};
pub use crate::stock::{UnloadedCompartment, UnloadedCushion, stock_fill};
pub use crate::stop::Stop;

//! Where the filled cushion and the body on it come to rest.

mod barrier;
mod bow;
mod disc_bins;
mod effects;
mod energy;
mod equations;
mod heights;
mod level;
mod model;
mod nested;
mod newton;
mod problem;
mod regions;
mod rest;
mod results;
mod section;
mod smooth;
mod step;
mod stopped_walls;
mod turning;
mod unit;
mod unloaded;

pub use self::effects::{CellEffect, effects_of_a_cell};
pub use self::heights::unloaded_heights;
pub use self::model::SheetModel;
pub use self::regions::Regions;
pub use self::rest::{
    Bare, BareSheet, Cells, SeatedBody, Start, bare_sheet, come_to_rest, come_to_rest_from,
    come_to_rest_slowly,
};
pub use self::results::{
    CompartmentRest, Evidence, Outcome, Rest, Resting, SiteRest, TurnStiffness,
};
pub use self::section::Cut;

#[cfg(test)]
mod tests;
